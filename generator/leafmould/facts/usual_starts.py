"""When gardeners commonly begin a crop of which nobody we read has published it: common practice, no source.

Days are counted from the last frost of spring ("put out") or from the first of autumn ("in autumn"), weeks back from
the day out ("raised indoors"). Read once, on first use.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from leafmould.facts.tables import DATA, CropFact

WITHOUT_A_ROW = {True: "*tender", False: "*hardy"}
"""The rows for every other annual vegetable and herb, by whether frost kills it."""

GROWN_INDOORS = frozenset({"mushroom", "microgreens"})
"""What no season closes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualStart:
    """One way of beginning a crop, and when."""

    low: int
    high: int
    how: str  # "sow", "plant", "plant sets", "set out"; "" as the crop is usually begun
    coldest: float | None  # usual low of the coldest month below which it is lost in the open [°C]


def usual_start(fact: CropFact, what: str) -> UsualStart | None:
    """When a crop is commonly "put out", "raised indoors" or begun "in autumn"; None where that is not usual."""
    found = _starts().get((fact.key, what))
    is_any = (
        fact.grown_as == "annual" and fact.sort in ("vegetable", "herb") and fact.key not in GROWN_INDOORS
    )
    return found or (_starts().get((WITHOUT_A_ROW[fact.is_tender], what)) if is_any else None)


@cache
def _starts() -> Mapping[tuple[str, str], UsualStart]:
    rows = csv.DictReader((DATA / "usual_starts.csv").read_text(encoding="utf-8").splitlines())
    return {
        (row["crop"], row["what"]): UsualStart(
            low=int(row["low"]),
            high=int(row["high"]),
            how=row["how"],
            coldest=float(row["coldest"]) if row["coldest"] else None,
        )
        for row in rows
    }
