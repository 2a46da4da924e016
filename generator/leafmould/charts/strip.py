"""Days along a strip of twelve equal months, so that years line up under each other.

Pure geometry: tenths of a month from the left end, 0 to 120. Used when pages are made; drawing is left to
the templates.
"""

from __future__ import annotations

from calendar import monthrange
from datetime import date
from functools import lru_cache

LENGTH = 120.0
LEAST = 0.6
"""The narrowest stretch still seen on a phone [tenths of a month]."""


def place(day: date, begins: date) -> float:
    """Where a day starts on the strip that begins on a first of a month; 0 to 120, cut at both ends."""
    months = (day.year - begins.year) * 12 + day.month - begins.month
    part = (day.day - 1) / _days_in(day.year, day.month)
    return min(LENGTH, max(0.0, 10 * (months + part)))


@lru_cache(maxsize=2048)
def _days_in(year: int, month: int) -> int:
    return monthrange(year, month)[1]


def stretch(first: date, last: date, begins: date) -> tuple[float, float] | None:
    """Left end and width of a span of days, both ends counted; None where it misses the strip."""
    left = place(first, begins)
    right = place(date.fromordinal(min(last.toordinal() + 1, date.max.toordinal())), begins)
    if left >= LENGTH or right <= 0 or right < left:
        return None
    width = max(LEAST, right - left)
    return round(min(left, LENGTH - width), 1), round(width, 1)
