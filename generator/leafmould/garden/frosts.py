"""The frosts of a garden, spring by spring and autumn by autumn, beside the averages of garden.yaml.

A frost nobody noted may still have been, so noted frosts narrow the season and never widen it; nights at or below
0 °C in the table of weather count as noted. The last frost of a spring is one only after a month without. Where they
lie far from the averages it is told, since every sowing date rests on these.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from statistics import median_low
from typing import Literal

from leafmould.garden.model import Event, Garden
from leafmould.notes.setting_values import Settings, WeatherDay
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.wording import MONTHS, counted

FAR_APART = 10
"""Days between the average and the middle of the noted frosts from which on it is said. Our own choice."""
SETTLED = 30
"""Days without frost after which the last one of a spring is taken to be that. Common practice."""
ENOUGH = 3
"""Years with a noted frost from which on the two are compared."""
LEAP = 2024
"""A year with every day in it, to count days of any year."""

Turn = Literal["last frost of spring", "first frost of autumn"]
TURNS: tuple[Turn, Turn] = ("last frost of spring", "first frost of autumn")
Day = tuple[int, int]
"""Month and day of any year."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotedFrost:
    """The frost that closed or opened one year's season, as far as noted."""

    year: int
    day: date
    event: str  # event id; "" where the table of weather tells it


def is_frost(event: Event) -> bool:
    """Whether a frost was noted."""
    return event.verb == "noted weather" and "frost" in (event.action.subject or "").split()


def noted_frosts(
    garden: Garden, weather: Iterable[WeatherDay]
) -> tuple[tuple[NotedFrost, ...], tuple[NotedFrost, ...]]:
    """The last frost of every spring and the first of every autumn, oldest first."""
    spring, autumn = _by_turn(_frosts(garden, weather), is_southern=garden.is_southern)
    last = [max(found) for found in spring]
    return (
        tuple(_noted(*one) for one in last if (garden.on - one[0]).days >= SETTLED),
        tuple(_noted(*min(found)) for found in autumn),
    )


def days_worse(turn: Turn, average: Day | None, noted: Iterable[NotedFrost]) -> int:
    """By how many days the middle of the noted frosts makes the season shorter than the average; 0 unless far."""
    days = [_number((frost.day.month, frost.day.day)) for frost in noted]
    if average is None or len(days) < ENOUGH:
        return 0
    off = median_low(days) - _number(average)
    worse = off if turn == "last frost of spring" else -off
    return worse if worse >= FAR_APART else 0


def span_words(noted: Iterable[NotedFrost]) -> str:
    """ "1 June to 3 June"."""
    days = sorted((frost.day.month, frost.day.day) for frost in noted)
    return _day(days[0]) if days[0] == days[-1] else f"{_day(days[0])} to {_day(days[-1])}"


def frosts_apart(garden: Garden, settings: Settings) -> Iterator[Problem]:
    """A warning for each turn of the season whose noted frosts lie far from the average of garden.yaml."""
    noted = noted_frosts(garden, settings.weather)
    for turn, average, found in zip(TURNS, (settings.last_frost, settings.first_frost), noted, strict=True):
        worse = days_worse(turn, average, found)
        if average is None or not worse:
            continue
        side = "later" if turn == "last frost of spring" else "earlier"
        yield Problem(
            at=settings.frost_at or Location(file="garden.yaml"),
            level=Level.WARNING,
            message=(
                f"The {turn} was noted {span_words(found)}, in {counted(len(found), 'year')}: in the middle of "
                f"them {worse} days {side} than {_day(average)}, which sowing dates are reckoned from."
            ),
        )


def _frosts(garden: Garden, weather: Iterable[WeatherDay]) -> dict[date, str]:
    """The days of frost, each with the note that tells of it first; measured ones without."""
    measured = {row.on: "" for row in weather if row.low is not None and row.low <= 0}
    noted = {
        event.when.day: event.id
        for event in reversed(garden.events)
        if event.when.day is not None and is_frost(event)
    }
    return measured | noted


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


def _noted(day: date, event: str) -> NotedFrost:
    return NotedFrost(year=day.year, day=day, event=event)


def _number(day: Day) -> int:
    return date(LEAP, *day).timetuple().tm_yday


def _day(day: Day) -> str:
    return f"{day[1]} {MONTHS[day[0] - 1]}"
