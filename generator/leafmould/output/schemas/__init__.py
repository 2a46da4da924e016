"""JSON Schemas of the data files; offered in the site beside them."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

HERE = Path(__file__).parent
ENDING = ".schema.json"


def schema_files(names: Iterable[str]) -> dict[str, bytes]:
    """The schema of each data file among the names: "data/plantings.schema.json"."""
    found = {f"{name.removesuffix('.json')}{ENDING}" for name in names if name.endswith(".json")}
    known = {f"data/{path.name}": path for path in sorted(HERE.glob(f"*{ENDING}"))}
    return {name: path.read_bytes() for name, path in known.items() if name in found}
