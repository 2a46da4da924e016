"""Lessons of earlier seasons whose time of the year comes next: for the head of the page of lessons.

Due when a month it names is over, else at the time of the year it was written at.
"""

from __future__ import annotations

import calendar
import re
from datetime import date, timedelta

from leafmould.garden.model import Entry
from leafmould.pages.doings import about, entry_day
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Lesson
from leafmould.values.wording import MONTHS

MOST_DUE = 7
SOON = timedelta(days=60)
"""How far ahead a lesson is due next: time enough to get seed, glass or bags."""
LATE = timedelta(days=14)
"""How long after its time of the year one that names no month is still told."""
NAMED = re.compile(rf"(?<=\s)({'|'.join(MONTHS)})\b")


def lessons_due(ledger: Ledger) -> tuple[Lesson, ...]:
    """What earlier seasons said of the weeks to come, what is due soonest first."""
    on = ledger.garden.on
    found = [
        (due, place, text, entry)
        for place, entry in enumerate(ledger.lessons(before=ledger.this_year))
        for text in entry.lesson
        if (due := due_on(text, entry, on)) and due <= on + SOON
    ]
    return tuple(
        Lesson(text=text, on=entry_day(entry, ledger), about=about(entry, ledger))
        for _, _, text, entry in sorted(found, key=lambda one: one[:2])[:MOST_DUE]
    )


def due_on(text: str, entry: Entry, on: date) -> date | None:
    """The next day from a day on, or a little before it, at which a lesson is due."""
    named = [MONTHS.index(m[1]) + 1 for m in NAMED.finditer(text)]
    if named:
        return min(_next_end(month, on) for month in named)
    if entry.when is None:
        return None
    said = entry.when.first
    days = (_in_year(said, year) for year in (on.year - 1, on.year, on.year + 1))
    return next(day for day in days if day >= on - LATE)


def _next_end(month: int, on: date) -> date:
    year = on.year if month >= on.month else on.year + 1
    return date(year, month, calendar.monthrange(year, month)[1])


def _in_year(day: date, year: int) -> date:
    return date(year, day.month, min(day.day, calendar.monthrange(year, day.month)[1]))
