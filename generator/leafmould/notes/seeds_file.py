"""records/seeds.csv: the seed tin. What seed there is, since when, and what came up of it on trial.

Only the crop is needed; a cell that cannot be used costs only itself. Read once with the settings; crops are
matched later. Amounts, prices and remarks are kept as written.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date

from leafmould.notes.setting_values import KeptSeed
from leafmould.notes.tables import Row, read_table
from leafmould.values.problems import Level, Location, Problem, in_file_order

SEEDS = "records/seeds.csv"

COLUMNS = {"crop": ("crop", "crops", "vegetable", "plant", "what", "seed", "kultur", "culture", "cultivo")}
OTHERS = {
    "variety": ("variety", "varieties", "cultivar", "kind", "name", "sorte", "variété", "variedad"),
    "year": ("year", "got", "bought", "saved", "packed", "since", "yr", "jahr", "année", "año", "anno", "jaar"),
    "amount": ("amount", "how much", "quantity", "left", "how many", "menge", "quantité", "cantidad"),
    "counted": ("counted", "counted on", "weighed", "weighed on", "as of", "gezählt", "compté", "contado"),
    "from": ("from", "source", "seller", "shop", "supplier", "where from", "von", "de"),
    "price": ("price", "cost", "paid", "preis", "prix", "precio"),
    "tried": ("tried", "test", "tested", "trial", "germination", "came up", "keimprobe"),
    "tried in": ("tried in", "tried on", "tested in", "tested on", "year tried"),
    "note": ("note", "notes", "remark", "remarks", "comment"),
}  # fmt: skip
"""Columns a table may leave out."""

YEAR = re.compile(r"((?:19|20)\d\d)(?:-\d\d(?:-\d\d)?)?")
DAY = re.compile(r"(?:19|20)\d\d-\d\d-\d\d")
LATER = re.compile(r"(?:,|in|on)?\s*((?:19|20)\d\d)(?:-\d\d(?:-\d\d)?)?\s*$")
OF = re.compile(r"(\d{1,4})\s*(?:of|out of|/|von|sur|de)\s*(\d{1,4})(?:\s+(?:came up|up|sprouted))?")
SHARE = re.compile(r"(\d{1,3})\s*(?:%|per ?cent)")
HOW_MANY = re.compile(
    r"(?:about |ca\.? |~|some )?(\d{1,6})\s*(?:seeds?|beans?|peas?|grains?)?", re.IGNORECASE
)
GRAMS = re.compile(r"(?:about |ca\.? |~)?(\d{1,5}(?:[.,]\d{1,3})?)\s*(g|grams?|kg|oz)", re.IGNORECASE)
IN_GRAMS = {"g": 1.0, "gram": 1.0, "grams": 1.0, "kg": 1000.0, "oz": 28.349523125}
NONE_LEFT = re.compile(
    r"(?:all |now )?(?:0|none|nothing|empty|used up|used|gone|finished)(?: left)?", re.IGNORECASE
)
ALL_USED = re.compile(r"\b(?:all used|used up|none left|all gone|all sown|empty)\b", re.IGNORECASE)
TOTAL = re.compile(r"(?:grand )?(?:total|sum)s?:?", re.IGNORECASE)


def read_seeds(text: str, file: str = SEEDS) -> tuple[tuple[KeptSeed, ...], tuple[Problem, ...]]:
    """What lies in the tin, as the table has it, and what is wrong with it."""
    table = read_table(text, file, COLUMNS, OTHERS)
    problems = list(table.problems)
    found: list[KeptSeed] = []
    for row in table.rows:
        if TOTAL.fullmatch(row.cells.get("crop", "")):
            continue
        at = Location(file=file, line=row.line)
        problems += [
            Problem(at=at, level=Level.ERROR, message=fault, field=field) for field, fault in _faults(row)
        ]
        if "crop" in row.cells:
            found.append(_seed(row, at))
    return tuple(found), in_file_order(problems)


def _faults(row: Row) -> Iterator[tuple[str | None, str]]:
    """What of a row cannot be used, with its column."""
    cells = row.cells
    if "crop" not in cells:
        yield None, "This row has no crop, so it is not used."
        return
    for column in ("year", "tried in"):
        if (cell := cells.get(column)) and not YEAR.fullmatch(cell):
            yield column, f'"{cell}" is no year. Write it in four figures, such as 2024.'
    if (cell := cells.get("counted")) and _day(cell) is None:
        yield "counted", f'"{cell}" is no day. Write it such as 2026-03-21.'
    if (cell := cells.get("tried")) and _tried(cell)[0] is None:
        yield "tried", f'"{cell}" is no trial. Write how many came up of how many, such as "8 of 10".'


def _seed(row: Row, at: Location) -> KeptSeed:
    cells = row.cells
    amount, note = cells.get("amount", ""), cells.get("note", "")
    came_up, of, year_of_trial = _tried(cells.get("tried", ""))
    return KeptSeed(
        crop=cells["crop"],
        variety=cells.get("variety"),
        year=_year(cells.get("year", "")),
        amount=amount,
        seeds=_count(amount),
        grams=_grams(amount),
        counted=_day(cells.get("counted", "")),
        is_used_up=bool(NONE_LEFT.fullmatch(amount) or ALL_USED.search(note)),
        source=cells.get("from"),
        price=cells.get("price"),
        came_up=came_up,
        tried=of,
        tried_year=_year(cells.get("tried in", "")) or year_of_trial,
        note=note,
        at=at,
    )


def _day(cell: str) -> date | None:
    try:
        return date.fromisoformat(cell) if DAY.fullmatch(cell) else None
    except ValueError:
        return None


def _year(cell: str) -> int | None:
    m = YEAR.fullmatch(cell)
    return int(m[1]) if m else None


def _tried(cell: str) -> tuple[int | None, int | None, int | None]:
    """How many came up, of how many, and in which year, as far as it was written: "8 of 10, 2026"."""
    later = LATER.search(cell)
    plain = cell[: later.start()].strip() if later and later.start() else cell.strip()
    year = int(later[1]) if later and later.start() else None
    if m := OF.fullmatch(plain):
        up, of = int(m[1]), int(m[2])
    elif m := SHARE.fullmatch(plain):
        up, of = int(m[1]), 100
    else:
        return None, None, None
    return (up, of, year) if of > 0 and up <= of else (None, None, None)


def _count(amount: str) -> int | None:
    m = HOW_MANY.fullmatch(amount)
    return int(m[1]) if m and int(m[1]) else None


def _grams(amount: str) -> float | None:
    m = GRAMS.fullmatch(amount)
    return float(m[1].replace(",", ".")) * IN_GRAMS[m[2].lower()] if m else None
