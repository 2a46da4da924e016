"""Frost and short days in this garden: the dates of garden.yaml beside what the notes say, and the winter's dark weeks.

A frost nobody noted may still have been, so noted frosts narrow the season and never widen it; nights at or below
0 °C in the table of weather count as noted. The last frost of a spring is one only after a month without. Dates reckoned
from the latitude are given to the week only: to the day they would tell where the garden lies. Pure.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import median_low
from typing import Literal

from leafmould.garden.model import Event, Garden
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.daylight import TEN_HOURS, ShortDays, day_length, midwinter, short_days
from leafmould.values.wording import MONTHS, counted

FAR_APART = 10
"""Days between the average and the middle of the noted frosts from which on it is said. Our own choice."""
SETTLED = 30
"""Days without frost after which the last one of a spring is taken to be that. Common practice."""
ENOUGH = 3
"""Years with a noted frost from which on the two are compared."""
COMMON_YEAR = 2025
"""Any year without a 29 February."""
LEAP = 2024
"""A year with every day in it, to count days of any year."""

Chances = tuple[tuple[int, tuple[int, int]], ...]
"""Per cent of years, and month and day."""
Turn = Literal["last frost of spring", "first frost of autumn"]


@dataclass(frozen=True, slots=True, kw_only=True)
class NotedFrost:
    """The frost that closed or opened one year's season, as far as noted."""

    year: int
    day: date
    event: str  # event id; "" where the table of weather tells it


@dataclass(frozen=True, slots=True, kw_only=True)
class FrostLine:
    """One turn of the season."""

    turn: Turn
    average: tuple[int, int] | None  # month, day, as garden.yaml says
    noted: tuple[NotedFrost, ...]  # oldest first
    words: str  # one or two sentences


def frost_lines(garden: Garden, almanac: Almanac) -> tuple[FrostLine, ...]:
    """Both turns of the season; of each what is known."""
    spring, autumn = _by_turn(_frosts(garden, almanac), is_southern=garden.is_southern)
    spring = [found for found in spring if (garden.on - max(found)[0]).days >= SETTLED]
    return (
        _line(
            "last frost of spring",
            almanac.last_frost,
            almanac.last_chances,
            [max(found) for found in spring],
        ),
        _line(
            "first frost of autumn",
            almanac.first_frost,
            almanac.first_chances,
            [min(found) for found in autumn],
        ),
    )


def _frosts(garden: Garden, almanac: Almanac) -> dict[date, str]:
    """The days of frost, each with the note that tells of it first; measured ones without."""
    measured = {row.on: "" for row in almanac.warmth.weather if row.low is not None and row.low <= 0}
    noted = {
        event.when.day: event.id
        for event in reversed(garden.events)
        if event.when.day is not None and is_frost(event)
    }
    return measured | noted


def is_frost(event: Event) -> bool:
    """Whether a frost was noted."""
    return event.verb == "noted weather" and "frost" in (event.action.subject or "").split()


def _by_turn(
    frosts: Mapping[date, str], *, is_southern: bool
) -> tuple[list[list[tuple[date, str]]], list[list[tuple[date, str]]]]:
    """Frosts by spring and by autumn, a list a year. A half-year runs from midsummer or midwinter on."""
    spring: defaultdict[int, list[tuple[date, str]]] = defaultdict(list)
    autumn: defaultdict[int, list[tuple[date, str]]] = defaultdict(list)
    for day, event in frosts.items():
        half = spring if (day.month <= 6) is not is_southern else autumn
        half[day.year].append((day, event))
    return [spring[y] for y in sorted(spring)], [autumn[y] for y in sorted(autumn)]


def _line(
    turn: Turn, average: tuple[int, int] | None, chances: Chances, found: list[tuple[date, str]]
) -> FrostLine:
    noted = tuple(NotedFrost(year=day.year, day=day, event=event) for day, event in found)
    return FrostLine(turn=turn, average=average, noted=noted, words=_words(turn, average, chances, noted))


def _words(
    turn: Turn, average: tuple[int, int] | None, chances: Chances, noted: tuple[NotedFrost, ...]
) -> str:
    said = [
        _by_chance(turn, average, chances)
        if average and chances
        else f"{_day(average)} on average, as garden.yaml says."
        if average
        else "No average stands in garden.yaml."
    ]
    if noted:
        days = sorted((n.day.month, n.day.day) for n in noted)
        span = _day(days[0]) if days[0] == days[-1] else f"{_day(days[0])} to {_day(days[-1])}"
        said.append(f"Noted here: {span}, in {counted(len(noted), 'year')}.")
        said.extend(_apart(turn, average, [_number(day) for day in days]))
    return " ".join(said)


def _by_chance(turn: Turn, average: tuple[int, int], chances: Chances) -> str:
    """The day of half of all years, and the others with their share of years."""
    side = "after" if turn == "last frost of spring" else "before"
    others = [f"{side} {_day(day)} in {percent}%" for percent, day in chances if day != average]
    return (
        f"{_day(average)} in half of all years, as garden.yaml says; frost comes {' of years, '.join(others[:1])}"
        f"{' of years' if others else ''}{''.join(f', {other}' for other in others[1:])}."
    )


def _apart(turn: Turn, average: tuple[int, int] | None, noted: list[int]) -> Iterable[str]:
    """A word of warning where notes and average lie far apart; only later in spring, earlier in autumn."""
    if average is None or len(noted) < ENOUGH:
        return
    middle = median_low(noted)
    worse = middle - _number(average) if turn == "last frost of spring" else _number(average) - middle
    if worse >= FAR_APART:
        side = "later" if turn == "last frost of spring" else "earlier"
        yield (
            f"That is {worse} days {side} in the middle of the years: "
            f"change garden.yaml, or go by the {side} date."
        )


def _number(day: tuple[int, int]) -> int:
    return date(LEAP, *day).timetuple().tm_yday


def _day(day: tuple[int, int]) -> str:
    return f"{day[1]} {MONTHS[day[0] - 1]}"


def cover_words(almanac: Almanac) -> str:
    """What covers gain, and who says so; empty without any, or without a frost to go by."""
    if not almanac.cover or almanac.last_frost is None:
        return ""
    gains = [f"{cover.name} {_gain(cover.days)}" for cover in almanac.cover]
    who = (
        "common practice, as garden.yaml says nothing of cover"
        if almanac.is_usual_cover
        else "as garden.yaml says"
    )
    return f"{', '.join(gains)} at either end of the season: {who}. Light stays what it is."


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
