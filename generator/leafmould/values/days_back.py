"""Spans counted back from a day: last week, the weekend, the other day, the 4th.

Settled for `dates`; the words are read in `day_phrases`.
"""

from __future__ import annotations

from datetime import date, timedelta


def span_back(near: str, base: date) -> tuple[date, date]:
    """First and last day of "last week", "weekend", "last weekend", "last month", "other day", "other week".

    Weeks begin on Monday (ISO 8601). "The other day" is one of the seven before; that is our choice.
    """
    monday = base - timedelta(days=base.weekday())
    if near == "last week":
        return monday - timedelta(days=7), monday - timedelta(days=1)
    if near == "last month":
        last = base.replace(day=1) - timedelta(days=1)
        return last.replace(day=1), last
    if near in ("weekend", "last weekend"):
        saturday = base - timedelta(days=(base.weekday() - 5) % 7)
        if near == "last weekend" and base - saturday <= timedelta(days=1):
            saturday -= timedelta(days=7)
        return saturday, min(saturday + timedelta(days=1), base)
    return base - timedelta(days=21 if near == "other week" else 7), base - timedelta(days=1)


def day_back(day: int, base: date) -> date:
    """The nearest day of that number not after the base: the 4th of this month or an earlier one."""
    back = base
    while back.day != day:
        back -= timedelta(days=1)
    return back
