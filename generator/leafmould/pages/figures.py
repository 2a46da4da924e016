"""Dates, weights and counts as figures that can be followed home.

Turns values of the garden into what a page shows: words for the reader, a value for machines, and the
address of the note it came from. Anything reckoned or inferred says so.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta
from functools import lru_cache

from leafmould.pages.page import Figure
from leafmould.values.quantities import Amount
from leafmould.values.when import When
from leafmould.values.wording import MONTHS, counted, number_words, plural, weight
from leafmould.values.wording import day as day_words


def day_figure(on: date, *, to: str = "", short: bool = False, why: str = "") -> Figure:
    """One calendar day; short leaves the year to the heading it stands under."""
    if why:
        return replace(_day(on, to, short), is_estimated=True, why=why)
    return _day(on, to, short)


@lru_cache(maxsize=1 << 15)
def _day(on: date, to: str, short: bool) -> Figure:
    """Kept, because the lines of a note share its day."""
    text = day_words(on, on.year if short else None)
    return Figure(text=text, value=on.isoformat(), is_time=True, to=to)


def when_figure(when: When, *, to: str = "", short: bool = False) -> Figure:
    """A day, or a coarse date as it was written."""
    if when.is_exact:
        return _day(when.first, to, short)
    value, is_time = _machine_span(when)
    return Figure(text=coarse_words(when), value=value, is_time=is_time, to=to)


def day_text(when: When) -> str:
    """A day with its year, or a coarse date as it was written."""
    return day_words(when.first) if when.is_exact else coarse_words(when)


def coarse_words(when: When) -> str:
    """A coarse date in the gardener's words, with its year where they left it out."""
    if _is_month(when):
        return f"{MONTHS[when.first.month - 1]} {when.first.year}"
    year = str(when.last.year)
    return when.written if year in when.written else f"{when.written} {year}"


def _is_month(when: When) -> bool:
    return when.first.day == 1 and when.last == _month_end(when.first)


def _month_end(first: date) -> date:
    return (first.replace(day=28) + timedelta(days=4)).replace(day=1) - timedelta(days=1)


def _machine_span(when: When) -> tuple[str, bool]:
    """A month or a year as HTML knows them; any other span as its two days."""
    if _is_month(when):
        return f"{when.first:%Y-%m}", True
    year = when.first.year
    if (when.first, when.last) == (date(year, 1, 1), date(year, 12, 31)):
        return f"{year:04}", True
    return f"{when.first.isoformat()}/{when.last.isoformat()}", False


def weight_figure(grams: float, units: str, *, to: str = "", is_estimated: bool = False) -> Figure:
    """A weight in the garden's units, its value in grams."""
    why = "from an estimate or the garden's own measure" if is_estimated else ""
    return Figure(text=weight(grams, units), value=f"{grams:.0f}", to=to, is_estimated=is_estimated, why=why)


def count_figure(count: int, text: str, *, to: str = "") -> Figure:
    """A whole number in words of its own."""
    return Figure(text=text, value=str(count), to=to)


def total_figures(amounts: Iterable[Amount], units: str, *, to: str = "") -> tuple[Figure, ...]:
    """The sum of like amounts: one weight, then one line per unit that can be added, then words."""
    grams, guessed, by_unit, in_words = _sorted_out(amounts)
    figures = [] if grams is None else [weight_figure(grams, units, to=to, is_estimated=guessed)]
    figures += [
        Figure(text=_counted(total, unit), value=f"{total:g}", to=to, is_estimated=about)
        for unit, (total, about) in sorted(by_unit.items())
    ]
    figures += [Figure(text=words, value=words, to=to) for words in dict.fromkeys(in_words)]
    return tuple(figures)


def _sorted_out(
    amounts: Iterable[Amount],
) -> tuple[float | None, bool, dict[str, tuple[float, bool]], list[str]]:
    grams: float | None = None
    guessed = False
    by_unit: dict[str, tuple[float, bool]] = {}
    in_words: list[str] = []
    for amount in amounts:
        weight_g, value = amount.grams, amount.value
        if weight_g is not None:
            grams = (grams or 0.0) + weight_g
            guessed = guessed or amount.is_estimated
        elif value is not None:
            total, about = by_unit.get(amount.unit, (0.0, False))
            by_unit[amount.unit] = (total + value, about or amount.is_estimated)
        elif amount.whole in (None, "some", "a few") and amount.written:
            in_words.append(amount.written)  # "all" and "the rest" say nothing of how much
    return grams, guessed, by_unit, in_words


def _counted(total: float, unit: str) -> str:
    number = number_words(total)
    if unit == "piece":
        return f"{number} counted"
    return f"{number} {unit if total == 1 else plural(unit)}"


def how_long(days: int) -> str:
    """A count of days: "1 day", "94 days"."""
    return counted(days, "day")
