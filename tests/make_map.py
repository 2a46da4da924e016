"""Writes the map of the modules in DEVELOPERS.md from the first lines of their docstrings.

Run: python tests/make_map.py
"""

from __future__ import annotations

import ast
from pathlib import Path

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "generator" / "leafmould"
START, END = "<!-- map: made by tests/make_map.py -->\n", "<!-- end of map -->\n"


def purpose(module: Path) -> str:
    """The first sentence of a module's docstring."""
    text = ast.get_docstring(ast.parse(module.read_text(encoding="utf-8"))) or ""
    return " ".join(text.split("\n\n")[0].split())


def rooms() -> list[Path]:
    """The package's folders and single modules, as the map names them."""
    return sorted(p for p in PACKAGE.iterdir() if p.suffix == ".py" or (p / "__init__.py").exists())


def module_map() -> str:
    """Every room with what it is for, and every module in it."""
    lines = []
    for room in rooms():
        if room.suffix == ".py":
            lines.append(f"- `{room.name}` {purpose(room)}")
            continue
        lines.append(f"- **`{room.name}/`** {purpose(room / '__init__.py')}")
        modules = sorted(p for p in room.rglob("*.py") if p != room / "__init__.py")
        lines += [f"  - `{p.relative_to(PACKAGE).as_posix()}` {purpose(p)}" for p in modules]
    return "\n".join(lines) + "\n"


def with_map(text: str) -> str:
    """The text with the part between the marks made anew."""
    before, rest = text.split(START)
    after = rest.split(END)[1]
    return f"{before}{START}\n{module_map()}\n{END}{after}"


if __name__ == "__main__":
    developers = ROOT / "DEVELOPERS.md"
    developers.write_text(with_map(developers.read_text(encoding="utf-8")), encoding="utf-8")
