"""Writes the gardener's pages on how lines are read, from the case files.

Run `python tests/cases/make_reference.py` after changing a case; a test checks that the pages are up to date.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from line_cases import Case, groups

PAGES = Path(__file__).parents[2] / "content" / "pages"
PAGE, MORE = PAGES / "how-lines-are-read.md", PAGES / "many-lines.md"
OPENING = """\
---
title: How lines are read
---

Write one thing done per line, in a past form: *sowed*, *picked*, *cleared*. Names of beds and crops count
whole, in any case, singular or plural. Put a variety in quotes. What is not understood is kept as you wrote
it. What could mean two things is asked about, never guessed in silence.

Ten lines as they were typed, and what is understood:

"""
MORE_OPENING = """\
---
title: Many lines, and how they are read
---

What was typed, and what is understood; the [ten lines to begin with](how-lines-are-read.md) stand by themselves.
The garden behind these lines is another one: it has beds called Long border, Top bed, Hoop bed, Arch, Bag row,
Trough 1 to Trough 3 and so on, and its notes are dated 20 June 2026.

"""
TEN = (
    "sowed pea 'Hurst's Green Shaft' in Arch",
    "planted 12 leek in Long border, south half, 15 cm apart, from the cold frame",
    "picked 2 kg tomatoes 'Stupice' and 'Black Krim' from Hoop bed",
    "picked a colander of beans, ate the lot",
    "lost 4 of 12 cabbage to pigeons in Arch",
    "cleared half of Arch",
    "penned 4 hens on Top bed from 3 to 20 May",
    "tested 10 seeds beetroot, 8 came up",
    "put up 6 jars tomato sauce from 4 kg tomatoes",
    "sow beetroot",
)
"""A line of each kind, from the lines that settled the rules."""
SUBJECTS = {
    "0": "Lines that settle it",
    "1": "Sowing, and coming up",
    "2": "Raising, planting and moving",
    "3": "Picking, and how much",
    "4": "Tending, days, and words in short",
    "5": "Soil, feeding and treating",
    "6": "Cleared, finished and lost",
    "7": "Given away, eaten, stored and put up",
    "8": "Seen, animals and weather",
    "9": "Seed, and everything else",
}
"""What the case files are about, by what their names begin with."""
MOST_ROWS = 24
"""A table longer than this is no longer read: of more cases only some are shown, spread evenly."""


def reference() -> str:
    """The page of ten lines, and where the others stand."""
    by_typed = {case.typed: case for group in reversed(groups()) for case in reversed(group.cases)}
    kinds = ", ".join(
        f"[{name[:1].lower()}{name[1:]}]({MORE.name}#part-{number})"
        for number, name in enumerate(SUBJECTS.values(), start=1)
    )
    more = f"[Many more lines]({MORE.name}) stand by what they are about: {kinds}."
    return _as_another_garden("\n".join([OPENING + _table([by_typed[typed] for typed in TEN]), more, ""]))


def more() -> str:
    """The page of many lines, by subject."""
    rows = []
    for digit, name in SUBJECTS.items():
        cases = [case for group in groups() if group.path.name.startswith(digit) for case in group.cases]
        rows += [f"## {name}", "", _table(_telling(cases))]
    return _as_another_garden(MORE_OPENING + "\n".join(rows))


def _table(cases: list[Case]) -> str:
    rows = ["| you write | it is read as |", "|---|---|"]
    return "\n".join([*rows, *(f"| {_typed(case)} | {_meant(case)} |" for case in cases), ""])


def _as_another_garden(text: str) -> str:
    """No bed of these lines is called like one of the garden the page stands in, where it would be linked."""
    text = re.sub(r"\b[Ff]rame\b", lambda found: "Box" if found[0] == "Frame" else "box", text)
    return re.sub(r"\b([Tt])ub(?=s? #?\d)", r"\1rough", text)


def _telling(cases: list[Case]) -> list[Case]:
    """The cases a gardener learns from: short lines, spread evenly over all."""
    fitting = [case for case in cases if _fits_a_row(case)]
    step = max(1, -(-len(fitting) // MOST_ROWS))
    return fitting[::step]


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
    MORE.write_text(more(), encoding="utf-8")
