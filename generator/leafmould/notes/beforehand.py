"""records/beforehand.csv: what grew where in the years before the notes began.

Columns year, bed and crop, in any order. Read once with the settings; the names are matched later.
"""

from __future__ import annotations

import re

from leafmould.notes.setting_values import Beforehand
from leafmould.notes.tables import Row, read_table
from leafmould.values.problems import Level, Location, Problem, in_file_order

BEFOREHAND = "records/beforehand.csv"

COLUMNS = {
    "year": ("year", "season", "yr", "jahr", "année", "annee", "año", "anno", "jaar"),
    "bed": ("bed", "place", "plot", "where", "container", "beet", "planche", "bancal"),
    "crop": ("crop", "crops", "vegetable", "plant", "what", "kultur", "culture", "cultivo"),
}

YEAR = re.compile(r"(?:1[89]|20|21)\d\d")
TOTAL = re.compile(r"(?:grand )?(?:total|sum)s?:?", re.IGNORECASE)


def read_beforehand(text: str, file: str = BEFOREHAND) -> tuple[tuple[Beforehand, ...], tuple[Problem, ...]]:
    """The rows that can be used, and what is wrong with the others."""
    table = read_table(text, file, COLUMNS)
    problems = list(table.problems)
    found: list[Beforehand] = []
    for row in table.rows:
        at = Location(file=file, line=row.line)
        if any(TOTAL.fullmatch(cell) for cell in row.cells.values()):
            continue
        if (fault := _fault(row)) is not None:
            problems.append(Problem(at=at, level=Level.ERROR, message=fault))
            continue
        for crop in _crops(row.cells["crop"]):
            found.append(Beforehand(year=int(row.cells["year"]), bed=row.cells["bed"], crop=crop, at=at))
    return tuple(found), in_file_order(problems)


def _fault(row: Row) -> str | None:
    """What keeps a row from being used."""
    missing = [name for name in COLUMNS if not row.cells.get(name)]
    if missing:
        return f"This row has no {' and no '.join(missing)}, so it is not used."
    if not YEAR.fullmatch(row.cells["year"]):
        return f'"{row.cells["year"]}" is no year. Write it in four figures, such as 2021.'
    return None


def _crops(cell: str) -> list[str]:
    """Several crops in one cell, parted by commas, semicolons, plus or ampersand."""
    return [crop for part in re.split(r"[,;+&]", cell) if (crop := part.strip())] or [cell]
