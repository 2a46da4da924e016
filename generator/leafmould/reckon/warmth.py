"""How warm it is here: a day's lows and highs from the garden's own table of weather, else from the months' usual ones.

Monthly means become daily values by the harmonic curve that keeps every month's mean (Epstein, "On obtaining daily
climatological values from monthly means", Journal of Climate 4, 1991, 365–368). Heat sums are degree days
by a single sine between low and high (Baskerville and Emin, "Rapid estimation of heat accumulation from maximum and
minimum temperatures", Ecology 50, 1969, 514–517): with usual values it comes nearest to official sums. Pure.
"""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from math import asin, cos, pi, sin

from leafmould.notes.setting_values import MonthNormal, WeatherDay

HARMONICS = 6
BASE = 10.0
"""The warmth above which heat is summed [°C]: that of maize and beans, which most published sums use."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DayWarmth:
    """One day's low and high [°C]."""

    low: float
    high: float
    is_usual: bool  # not measured: what is usual on such a day

    @property
    def mean(self) -> float:
        """The middle of low and high [°C]."""
        return (self.low + self.high) / 2


class Curve:
    """A year's course through twelve monthly means, keeping each of them."""

    def __init__(self, means: Sequence[float]) -> None:
        """Take the means of January to December."""
        self._waves = _waves(tuple(means))

    def on(self, day: date) -> float:
        """The value in the middle of a day."""
        month_length = monthrange(day.year, day.month)[1]
        t = day.month - 0.5 + (day.day - 0.5) / month_length
        return sum(a * cos(pi * j * t / 6) + b * sin(pi * j * t / 6) for j, (a, b) in enumerate(self._waves))


class Warmth:
    """The warmth of one garden, measured as far as it was written down, else usual."""

    def __init__(self, months: Sequence[MonthNormal], weather: Sequence[WeatherDay]) -> None:
        """Take twelve months or none, and the measured days."""
        self.months = tuple(months)
        self.weather = tuple(weather)
        self.has_usual = len(months) == 12
        self._low = Curve([m.low for m in months]) if self.has_usual else None
        self._high = Curve([m.high for m in months]) if self.has_usual else None
        self._measured: Mapping[date, WeatherDay] = {row.on: row for row in weather}
        self._kept: dict[tuple[int, int, bool], DayWarmth] = {}

    def on(self, day: date) -> DayWarmth | None:
        """A day's low and high; None where neither table tells."""
        row = self._measured.get(day)
        if row is not None and row.low is not None and row.high is not None:
            return DayWarmth(low=row.low, high=row.high, is_usual=False)
        return self.usual(day)

    def usual(self, day: date) -> DayWarmth | None:
        """What is usual on such a day; None without a table of the months."""
        if self._low is None or self._high is None:
            return None
        key = (day.month, day.day, monthrange(day.year, day.month)[1] == 29)
        if key not in self._kept:
            low, high = self._low.on(day), self._high.on(day)
            self._kept[key] = DayWarmth(low=min(low, high), high=max(low, high), is_usual=True)
        return self._kept[key]

    def mean(self, day: date) -> float | None:
        """A day's mean [°C]; None where nothing tells."""
        found = self.on(day)
        return found.mean if found else None

    def has_measured(self, first: date, last: date) -> bool:
        """Whether any day of a span was measured."""
        return any(first <= day <= last for day in self._measured)

    def mean_known(self, day: date, until: date) -> float | None:
        """A day's mean as it was measured up to a day, else the usual one [°C]; None where neither tells."""
        found = self.on(day) if day <= until else self.usual(day)
        return found.mean if found else None

    def heat(self, first: date, last: date, base: float = BASE) -> float | None:
        """Degree days of a span, both ends counted [°C d]; None where a day of it is not known."""
        return _heat(map(self.on, _days(first, last)), base)

    def usual_heat(self, first: date, last: date, base: float = BASE) -> float | None:
        """The usual degree days of such a span [°C d]."""
        return _heat(map(self.usual, _days(first, last)), base)


def degree_days(low: float, high: float, base: float) -> float:
    """The degree days of one day above a base, by a single sine between its low and high [°C d]."""
    middle, half = (high + low) / 2, (high - low) / 2
    if low >= base:
        return middle - base
    if high <= base:
        return 0.0
    angle = asin((base - middle) / half)
    return ((middle - base) * (pi / 2 - angle) + half * cos(angle)) / pi


def _heat(days: Iterable[DayWarmth | None], base: float) -> float | None:
    total = 0.0
    for day in days:
        if day is None:
            return None
        total += degree_days(day.low, day.high, base)
    return total


def _days(first: date, last: date) -> list[date]:
    return [first + timedelta(days=n) for n in range((last - first).days + 1)]


@lru_cache(maxsize=64)
def _waves(means: tuple[float, ...]) -> tuple[tuple[float, float], ...]:
    """The harmonics of the curve, the constant first, each stretched by what averaging over a month takes from it."""
    assert len(means) == 12
    waves = [(sum(means) / 12, 0.0)]
    for j in range(1, HARMONICS):
        x = pi * j / 12
        stretch = x / sin(x)
        a = stretch / 6 * sum(mean * cos(pi * j * t / 6) for t, mean in enumerate(means, start=1))
        b = stretch / 6 * sum(mean * sin(pi * j * t / 6) for t, mean in enumerate(means, start=1))
        waves.append((a, b))
    x = pi / 2
    waves.append((x / sin(x) / 12 * sum(mean * cos(pi * t) for t, mean in enumerate(means, start=1)), 0.0))
    return tuple(waves)
