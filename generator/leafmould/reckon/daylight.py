"""How long the day is, for any date and latitude, and when it is shorter than ten hours.

A day runs from sunrise to sunset: upper edge of the sun on the horizon, its centre 50 minutes of arc below
(United States Naval Observatory). The sun's declination is that of noon at Greenwich by the low-precision
formulas of the Astronomical Almanac (from memory; checked against ephem and the published tables in the tests),
so that a result is good to about two minutes below 60 degrees. Pure; near the poles days of 0 and 24 hours.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from math import acos, asin, cos, degrees, radians, sin

ALTITUDE = -50 / 60
"""Of the sun's centre at sunrise and sunset [degrees]; source: United States Naval Observatory, definitions."""
TEN_HOURS = 10.0
"""Below this growth is very slow, though never nothing. An extension rule of thumb: Michigan State University
Extension, 2018, on days shorter than ten hours."""
EPOCH = date(2000, 1, 1)


def day_length(latitude: float, on: date) -> float:
    """Hours from sunrise to sunset, 0 to 24.

    Args:
        latitude: degrees, north positive, -90 to 90.
    """
    declination, here = _declination(on), radians(max(-89.99, min(89.99, latitude)))
    cosine = (sin(radians(ALTITUDE)) - sin(here) * sin(declination)) / (cos(here) * cos(declination))
    return degrees(acos(max(-1.0, min(1.0, cosine)))) / 7.5


def _declination(on: date) -> float:
    """Of the sun at noon, in radians."""
    days = (on - EPOCH).days
    anomaly = radians(357.528 + 0.9856003 * days)
    longitude = radians(280.460 + 0.9856474 * days + 1.915 * sin(anomaly) + 0.020 * sin(2 * anomaly))
    return asin(sin(radians(23.439 - 0.0000004 * days)) * sin(longitude))


@dataclass(frozen=True, slots=True, kw_only=True)
class ShortDays:
    """One winter's days of less than ten hours."""

    first: date
    last: date

    @property
    def days(self) -> int:
        """How many there are."""
        return (self.last - self.first).days + 1


@lru_cache(maxsize=64)
def short_days(latitude: float, around: date) -> ShortDays | None:
    """The winter's short days around a midwinter: None where no day is that short, as in the tropics.

    Args:
        around: a day near the middle of that winter. The stretch is looked for half a year to either side.
    """
    short = [
        day
        for offset in range(-182, 183)
        if day_length(latitude, day := around + timedelta(days=offset)) < TEN_HOURS
    ]
    return ShortDays(first=short[0], last=short[-1]) if short else None


def midwinter(year: int, *, is_southern: bool) -> date:
    """The middle of the winter that begins in a year."""
    return date(year, 6, 21) if is_southern else date(year, 12, 21)
