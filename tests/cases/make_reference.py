"""Writes the gardener's page on how lines are read, from the case files.

Run `python tests/cases/make_reference.py` after changing a case; a test checks that the page is up to date.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from line_cases import Case, groups

PAGE = Path(__file__).parents[2] / "content" / "pages" / "how-lines-are-read.md"
OPENING = """\
---
title: How lines are read
---

Write one thing done per line, in a past form: *sowed*, *picked*, *cleared*. Names of beds and crops count
whole, in any case, singular or plural. Put a variety in quotes. What is not understood is kept as you wrote
it. What could mean two things is asked about, never guessed in silence.

The left column is what was typed; the right is what is understood. The garden behind these lines has beds
called Long border, Top bed, Hoop bed, Arch, Bag row, Tub 1 to Tub 3 and so on, and the notes are dated
20 June 2026.
"""


def reference() -> str:
    """The whole page."""
    rows = [OPENING]
    for group in groups():
        rows += [f"## {group.title}", "", group.about, "", "| you write | it is read as |", "|---|---|"]
        rows += [f"| {_typed(case)} | {_meant(case)} |" for case in _telling(group.cases)]
        rows.append("")
    return "\n".join(rows)


MOST_ROWS = 36
"""A table longer than this is no longer read: of a longer file every second or third case is shown."""


def _telling(cases: list[Case]) -> list[Case]:
    """The cases a gardener learns from: short lines, spread evenly over the file."""
    fitting = [case for case in cases if _fits_a_row(case)]
    step = max(1, -(-len(fitting) // MOST_ROWS))
    return fitting if cases and cases[0].place.startswith("00-") else fitting[::step]


def _fits_a_row(case: Case) -> bool:
    return "|" not in case.typed and len(case.typed) < 100


def _typed(case: Case) -> str:
    note = "; ".join(f"{key}: {value}" for key, value in case.settings.items())
    return f"`{case.typed}`" + (f" *(note with {note})*" if note else "")


def _meant(case: Case) -> str:
    rows = [_escaped(row.replace(" · loose", "")) for row in case.expected if not row.startswith("  ")]
    return " — ".join(_marked(row) for row in rows)


def _marked(row: str) -> str:
    """The action in bold, what is asked in italics."""
    level, found, rest = row.partition(": ")
    if found and level in ("question", "hint", "warning", "error"):
        return f"*{level}: {rest}*"
    verb, dot, rest = row.partition(" · ")
    return f"**{verb}**{dot}{rest}"


def _escaped(row: str) -> str:
    return re.sub(r"([|*_`<>\[\]])", r"\\\1", row)


if __name__ == "__main__":
    PAGE.parent.mkdir(parents=True, exist_ok=True)
    PAGE.write_text(reference(), encoding="utf-8")
