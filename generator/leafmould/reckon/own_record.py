"""What this garden has seen of a crop itself: days to come up, to the first picking, weeks of picking.

Only plantings with both days exact count; perennials are left out where a year's own start is not known.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from leafmould.garden.model import Planting
from leafmould.values.when import When
from leafmould.values.wording import counted


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """A range the garden's own plantings span."""

    words: str  # "9–14 days"
    low: int
    high: int
    plantings: tuple[str, ...]  # ids of all that count, from the lowest figure up


def days_to_come_up(plantings: Iterable[Planting]) -> Seen | None:
    """Days from sowing to seedlings seen."""
    return _seen(plantings, lambda p: _days(p.sown or p.started, p.came_up), "day")


def days_to_first_picking(plantings: Iterable[Planting]) -> Seen | None:
    """Days from the start to the first picking."""
    return _seen(plantings, lambda p: None if p.is_perennial else _days(p.start, p.first_picked), "day")


def weeks_of_picking(plantings: Iterable[Planting]) -> Seen | None:
    """Weeks from the first to the last picking of plantings that have ended, begun weeks counted whole."""
    return _seen(plantings, _weeks_picked, "week")


def _weeks_picked(planting: Planting) -> int | None:
    if planting.is_perennial or planting.is_open:
        return None
    days = _days(planting.first_picked, planting.last_picked)
    return None if not days else (days + 6) // 7


def _days(first: When | None, last: When | None) -> int | None:
    if first is None or last is None or not (first.day and last.day) or last.day < first.day:
        return None
    return (last.day - first.day).days


def _seen(plantings: Iterable[Planting], measure: Callable[[Planting], int | None], unit: str) -> Seen | None:
    found = sorted((value, p.id) for p in plantings if (value := measure(p)) is not None)
    if not found:
        return None
    low, high = found[0][0], found[-1][0]
    words = counted(low, unit) if low == high else f"{low}–{counted(high, unit)}"
    return Seen(words=words, low=low, high=high, plantings=tuple(key for _, key in found))
