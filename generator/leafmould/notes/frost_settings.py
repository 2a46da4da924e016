"""The frosts of garden.yaml: an average day for spring and autumn, or several days with their chances.

"50%" of `last` is the day after which frost comes in half of all years, "50%" of `first` the day before which it
has come in half of them: so climate tables print it. Read with garden.yaml; days that contradict each other are
told of and not used.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date
from itertools import pairwise

from leafmould.notes.fields import Fields, is_blank, nearest
from leafmould.notes.tree import Branch, Key, Leaf
from leafmould.values.dates import resolve_date, scan_date
from leafmould.values.problems import Level, Location
from leafmould.values.when import When
from leafmould.values.wording import MONTHS

KEYS = ("last", "first", "normals")
NO_FROST = frozenset({"none", "no", "never", "frost free", "frost-free", "no frost"})
LEAP_YEAR = When(first=date(2024, 1, 1), last=date(2024, 12, 31), written="2024")
"""Any year with a 29 February: only day and month are kept."""
MONTH_DAY = re.compile(r"(0[1-9]|1[0-2])-([0-3]\d)")
PERCENT = re.compile(r"([1-9]\d?)\s*(?:%|per ?cent|in 100)?(?:\s+of (?:all )?years)?", re.IGNORECASE)
ONE_IN = re.compile(r"(?:one|1) (?:year )?in (two|three|four|five|ten|[2-9]|10)(?: years)?", re.IGNORECASE)
IN_WORDS = {"two": 2, "three": 3, "four": 4, "five": 5, "ten": 10}
AVERAGE = frozenset({"average", "mean", "usual", "usually", "median", "half", "half of all years"})
HALF = 50
MIDWINTER = (15, 197)
"""The day of the year from which a season is counted, north and south: a first frost may come after New Year."""

Day = tuple[int, int]
"""Month and day of any year."""
Chances = tuple[tuple[int, Day], ...]
"""Per cent and the day it holds for, the smallest chance first."""


def read_frosts(fields: Fields) -> dict[str, object]:
    """Frost days with their chances, and where the table of normals is."""
    normals = fields.text("normals")
    key = fields.key("frost")
    if key is None or is_blank(key.value) or _says_none(key):
        return {"normals": normals}
    frost = fields.branch_of("frost")
    if frost is None:
        return {"normals": normals}
    for unknown in frost.unused(KEYS):
        near = nearest(unknown.name, KEYS)
        frost.tell(Level.WARNING, f'"{unknown.written}" is not used here.', unknown, unknown.name, near)
    order = fields.text("dates")
    last, first = _chances(frost, "last", order), _chances(frost, "first", order)
    return {
        "normals": normals or frost.text("normals"),
        "last_frost": _middle(last),
        "first_frost": _middle(first),
        "last_chances": last if len(last) > 1 else (),
        "first_chances": first if len(first) > 1 else (),
        "frost_at": Location(file=fields.file, line=key.line, column=key.column),
    }


def in_order(fields: Fields, last: Day, first: Day, *, is_southern: bool) -> bool:
    """Whether the last frost of spring comes before the first of autumn; told of if it does not.

    Both are counted from the middle of winter, so that a season over the new year is one season too.
    """
    if _since_midwinter(last, is_southern=is_southern) < _since_midwinter(first, is_southern=is_southern):
        return True
    key = fields.key("frost")
    message = (
        f"The last frost of spring ({_words(last)}) comes after the first of autumn ({_words(first)}), so "
        "neither is used. Are they the wrong way round?"
    )
    if not is_southern and last[0] >= 7:
        message += ' South of the equator garden.yaml says so: "place: {latitude: -42}".'
    fields.tell(Level.ERROR, message, key or fields.branch, "frost")
    return False


def _says_none(key: Key) -> bool:
    """Whether the garden has no frost, in words."""
    return isinstance(key.value, Leaf) and key.value.text.strip().casefold() in NO_FROST


def _chances(frost: Fields, name: str, order: str | None) -> Chances:
    """The days of one turn: one day alone is that of half of all years."""
    key = frost.key(name)
    if key is not None and isinstance(key.value, Branch):
        return _several(frost, name, order)
    leaf = frost.leaf(name)
    if leaf is None or leaf.text.strip().casefold() in NO_FROST:
        return ()
    day = _month_day(frost, name, leaf, order)
    return ((HALF, day),) if day else ()


def _several(frost: Fields, name: str, order: str | None) -> Chances:
    """Days with their chances, as keys: "10%: 24 May"."""
    under = frost.branch_of(name)
    found: dict[int, Day] = {}
    for key in under.by_name.values() if under else ():
        assert under is not None
        percent = _percent(key.written)
        if percent is None:
            message = f'"{key.written}" is no chance. Write a part of all years, such as "10%" or "50%".'
            under.tell(Level.ERROR, message, key, key.name)
            continue
        leaf = under.leaf(key.name)
        day = _month_day(under, key.name, leaf, order) if leaf else None
        if day is not None:
            found.setdefault(percent, day)
    chances = tuple(sorted(found.items()))
    if under and _runs_back(name, [day for _, day in chances]):
        message = "The days do not follow their chances, so none is used. " + (
            "The later a day of spring, the fewer years have frost after it."
            if name == "last"
            else "The later a day of autumn, the more years have had frost before it."
        )
        under.tell(Level.ERROR, message, under.branch)
        return ()
    return chances


def _percent(written: str) -> int | None:
    text = " ".join(written.strip().casefold().split())
    if text in AVERAGE:
        return HALF
    if m := ONE_IN.fullmatch(text):
        return round(100 / (IN_WORDS.get(m[1]) or int(m[1])))
    m = PERCENT.fullmatch(text)
    return int(m[1]) if m else None


def _runs_back(name: str, days: Sequence[Day]) -> bool:
    """Whether days, the smallest chance first, run the wrong way: none may jump by more than half a year."""
    numbers = [_number(day) for day in days]
    steps = [(after - before + 183) % 366 - 183 for before, after in pairwise(numbers)]
    return any(step > 0 if name == "last" else step < 0 for step in steps)


def _middle(chances: Chances) -> Day | None:
    """The day of half of all years: as given, else between the chances around it, else the one nearest to it."""
    if not chances:
        return None
    below = [(percent, day) for percent, day in chances if percent <= HALF]
    above = [(percent, day) for percent, day in chances if percent >= HALF]
    if not below or not above:
        return min(chances, key=lambda chance: abs(chance[0] - HALF))[1]
    (low, before), (high, after) = below[-1], above[0]
    if low == high:
        return before
    step = (_number(after) - _number(before) + 183) % 366 - 183
    number = (_number(before) + round(step * (HALF - low) / (high - low)) - 1) % 366 + 1
    middle = date.fromordinal(LEAP_YEAR.first.toordinal() + number - 1)
    return middle.month, middle.day


def _month_day(fields: Fields, name: str, leaf: Leaf, order: str | None) -> Day | None:
    """A day of every year: "22 May", "May 22", "05-22"; "5/10" where the garden says which comes first."""
    text = leaf.text.strip()
    message = f'"{leaf.text}" is no day of the year. Write it such as "22 May".'
    if MONTH_DAY.fullmatch(text):
        text = f"2024-{text}"
    found = scan_date(text)
    if found is not None and not text[found[1] :].strip(" .") and found[0].day is not None:
        reading = resolve_date(found[0], order=order, base=LEAP_YEAR, is_southern=False)
        if reading.when is not None and reading.other is None:
            return reading.when.first.month, reading.when.first.day
        if reading.when is not None and reading.other is not None:
            days = [_words((when.first.month, when.first.day)) for when in (reading.when, reading.other)]
            message = (
                f'"{leaf.text}" may be {days[0]} or {days[1]}. Write it such as "{days[0]}", '
                'or say "dates: day first" or "dates: month first".'
            )
    fields.tell(Level.ERROR, message, leaf, name)
    return None


def _number(day: Day) -> int:
    return date(2024, *day).timetuple().tm_yday


def _since_midwinter(day: Day, *, is_southern: bool) -> int:
    return (_number(day) - MIDWINTER[is_southern]) % 366


def _words(day: Day) -> str:
    return f"{day[1]} {MONTHS[day[0] - 1]}"
