"""The other ways of counting heat: figures of elsewhere hold only for the one they were made by.

The site counts by the single sine (`warmth.degree_days`) and shows beside it what these make of the same days, so
that a gardener can tell how far a printed figure may be off. Pure.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from leafmould.reckon.warmth import DayWarmth

MAIZE_UPPER = 30.0
"""Warmth above this does not count for maize [°C], 86 °F. Source: American Meteorological Society, glossary."""


def from_mean(low: float, high: float, base: float) -> float:
    """The mean less the base, never below nothing (McMaster and Wilhelm 1997, first reading)."""
    return max(0.0, (low + high) / 2 - base)


def from_clipped(low: float, high: float, base: float, upper: float = MAIZE_UPPER) -> float:
    """The mean of low and high, each kept within bounds, less the base (their second reading, as for maize)."""
    return (min(upper, max(base, low)) + min(upper, max(base, high))) / 2 - base


def from_four_cases(low: float, high: float, base: float) -> float:
    """As British and Irish weather services reckon it (Met Éireann, degree days)."""
    if low >= base:
        return (low + high) / 2 - base
    if high <= base:
        return 0.0
    if (low + high) / 2 > base:
        return (high - base) / 2 - (base - low) / 4
    return (high - base) / 4


OTHERS: tuple[tuple[str, Callable[[float, float, float], float]], ...] = (
    ("by the mean of low and high alone", from_mean),
    ("with the low raised to the base and the high cut at {upper}, as for maize", from_clipped),
    ("by the four cases of the British and Irish weather services", from_four_cases),
)
"""How each is named on a page, and the reckoning."""


def counted_otherwise(days: Iterable[DayWarmth], base: float) -> tuple[tuple[str, float], ...]:
    """What each of the others makes of the same days."""
    days = tuple(days)
    return tuple((name, sum(of(day.low, day.high, base) for day in days)) for name, of in OTHERS)
