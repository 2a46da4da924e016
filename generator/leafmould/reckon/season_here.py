"""Frost and short days in this garden: the dates of garden.yaml beside what the notes say, and the winter's dark weeks.

Which frosts count as noted, `garden.frosts` says. Dates reckoned from the latitude are given to the week only: to the
day they would tell where the garden lies. Pure.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.garden.frosts import NotedFrost, Turn, days_worse, noted_frosts, span_words
from leafmould.garden.model import Garden
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.daylight import TEN_HOURS, ShortDays, day_length, midwinter, short_days
from leafmould.values.wording import MONTHS, counted

COMMON_YEAR = 2025
"""Any year without a 29 February."""
Chances = tuple[tuple[int, tuple[int, int]], ...]
"""Per cent of years, and month and day."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FrostLine:
    """One turn of the season."""

    turn: Turn
    average: tuple[int, int] | None  # month, day, as garden.yaml says
    noted: tuple[NotedFrost, ...]  # oldest first
    words: str  # one or two sentences


def frost_lines(garden: Garden, almanac: Almanac) -> tuple[FrostLine, ...]:
    """Both turns of the season; of each what is known."""
    spring, autumn = noted_frosts(garden, almanac.warmth.weather)
    return (
        _line("last frost of spring", almanac.last_frost, almanac.last_chances, spring),
        _line("first frost of autumn", almanac.first_frost, almanac.first_chances, autumn),
    )


def _line(
    turn: Turn, average: tuple[int, int] | None, chances: Chances, noted: tuple[NotedFrost, ...]
) -> FrostLine:
    return FrostLine(turn=turn, average=average, noted=noted, words=_words(turn, average, chances, noted))


def _words(
    turn: Turn, average: tuple[int, int] | None, chances: Chances, noted: tuple[NotedFrost, ...]
) -> str:
    said = [
        _by_chance(turn, average, chances)
        if average and chances
        else f"{_day(average)} on average, as set down for this garden."
        if average
        else "No average is set down for this garden."
    ]
    if noted:
        said.append(f"Noted here: {span_words(noted)}, in {counted(len(noted), 'year')}.")
        said.extend(_apart(turn, average, noted))
    return " ".join(said)


def _by_chance(turn: Turn, average: tuple[int, int], chances: Chances) -> str:
    """The day of half of all years, and the others with their share of years."""
    side = "after" if turn == "last frost of spring" else "before"
    others = [f"{side} {_day(day)} in {percent}%" for percent, day in chances if day != average]
    return (
        f"{_day(average)} in half of all years, as set down for this garden; frost comes {' of years, '.join(others[:1])}"
        f"{' of years' if others else ''}{''.join(f', {other}' for other in others[1:])}."
    )


def _apart(turn: Turn, average: tuple[int, int] | None, noted: Sequence[NotedFrost]) -> Iterable[str]:
    """A word of warning where notes and average lie far apart; only later in spring, earlier in autumn."""
    if worse := days_worse(turn, average, noted):
        side = "later" if turn == "last frost of spring" else "earlier"
        yield (
            f"That is {worse} days {side} in the middle of the years: "
            f"the {side} date is the one to go by until the average is set down anew."
        )


def _day(day: tuple[int, int]) -> str:
    return f"{day[1]} {MONTHS[day[0] - 1]}"


def cover_words(almanac: Almanac) -> str:
    """What covers gain, and who says so; empty without any, or without a frost to go by."""
    if not almanac.cover or almanac.last_frost is None:
        return ""
    gains = [f"{cover.name} {_gain(cover.days)}" for cover in almanac.cover]
    who = (
        "common practice, as nothing of cover is set down for this garden"
        if almanac.is_usual_cover
        else "as set down for this garden"
    )
    return f"{', '.join(gains)} at either end of the season: {who}. A cover adds no light: in the darkest weeks little grows under it either."


def _gain(days: int) -> str:
    return counted(days, "day") if days % 7 else counted(days // 7, "week")


def dark_by_month(almanac: Almanac) -> tuple[int, ...]:
    """How many weeks of each month, January first, have days under ten hours; empty where none has.

    To the week only: to the day they would tell where the garden lies.
    """
    latitude = almanac.latitude
    if latitude is None:
        return ()
    dark = Counter(
        day.month
        for offset in range(365)
        if day_length(latitude, day := date(COMMON_YEAR, 1, 1) + timedelta(days=offset)) < TEN_HOURS
    )
    return tuple(round(dark[month] / 7) for month in range(1, 13)) if dark else ()


def dark_weeks(almanac: Almanac) -> ShortDays | None:
    """The coming or present winter's days under ten hours; None without a latitude, or near the equator."""
    if almanac.latitude is None:
        return None
    for year in (almanac.on.year - 1, almanac.on.year):
        middle = midwinter(year, is_southern=almanac.is_southern)
        if middle + timedelta(days=182) >= almanac.on:
            return short_days(almanac.latitude, middle)
    return None
