"""A season's weather month by month: warmth summed, lowest and highest, nights of frost, rain, beside what is usual.

A month is told as far as its days were measured; where days are missing the usual warmth stands in for the sum,
and for nothing else. Pure.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.garden.indexes import grouped
from leafmould.notes.setting_values import WeatherDay
from leafmould.reckon.warmth import Warmth


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthWeather:
    """One month of a season, up to today."""

    first: date
    last: date  # its last day, or today
    heat: float | None  # degree days [°C d]; None where a day is known by nothing
    usual_heat: float | None  # of the same days
    lowest: float | None  # [°C]
    highest: float | None
    frosts: int  # nights at or below 0 °C, of those measured
    rain: float | None  # [mm]; None where none was measured
    measured: int  # days with a low and a high


def season_weather(
    warmth: Warmth, weather: Sequence[WeatherDay], begins: date, on: date
) -> tuple[MonthWeather, ...]:
    """The months of a season from its first day to today, or to its end; all months of a year where only the usual is known."""
    by_month: Mapping[tuple[int, int], Sequence[WeatherDay]] = grouped(
        ((row.on.year, row.on.month), row) for row in weather
    )
    found = []
    first = begins
    for _ in range(12):
        after = (first + timedelta(days=32)).replace(day=1)
        if first > on:
            break
        last = min(after - timedelta(days=1), on)
        found.append(_month(warmth, by_month.get((first.year, first.month), ()), first, last))
        first = after
    return tuple(found)


def usual_sums(warmth: Warmth, begins: date) -> tuple[float, ...]:
    """The usual heat of a season summed up to the end of each of its twelve months; empty where it is not known."""
    sums: list[float] = []
    first, total = begins, 0.0
    for _ in range(12):
        after = (first + timedelta(days=32)).replace(day=1)
        heat = warmth.usual_heat(first, after - timedelta(days=1))
        if heat is None:
            return ()
        total += heat
        sums.append(total)
        first = after
    return tuple(sums)


def _month(warmth: Warmth, rows: Iterable[WeatherDay], first: date, last: date) -> MonthWeather:
    rows = list(rows)
    lows = [row.low for row in rows if row.low is not None]
    highs = [row.high for row in rows if row.high is not None]
    rain = [row.rain for row in rows if row.rain is not None]
    return MonthWeather(
        first=first,
        last=last,
        heat=warmth.heat(first, last),
        usual_heat=warmth.usual_heat(first, last),
        lowest=min(lows, default=None),
        highest=max(highs, default=None),
        frosts=sum(1 for low in lows if low <= 0),
        rain=sum(rain) if rain else None,
        measured=sum(1 for row in rows if row.low is not None and row.high is not None),
    )
