"""Seasons: which one a day falls in, how it is written, and when it begins and ends.

A season is a calendar year; in the south it runs from July to June and goes by the year it begins in.
"""

from __future__ import annotations

from datetime import date, timedelta


def first_month(*, is_southern: bool) -> int:
    """The month a garden's seasons begin in."""
    return 7 if is_southern else 1


def season_of(day: date, begins: int) -> int:
    """The season a day falls in, by the year it begins in; `begins` is the month."""
    return day.year - 1 if day.month < begins else day.year


def season_name(season: int, begins: int) -> str:
    """How a season is written: "2026", or "2026/27" where it spans two years."""
    return f"{season}/{(season + 1) % 100:02}" if begins > 1 else str(season)


def season_begins(season: int, begins: int) -> date:
    """The first day of a season."""
    return date(season, begins, 1)


def season_ends(season: int, begins: int) -> date:
    """The last day of a season."""
    return date(season + 1, begins, 1) - timedelta(days=1)
