"""How warm the soil was, where a note says so: "soil 9 °C", in a line or in a note's own words.

Only what speaks of soil counts: a bare temperature is the air's. Runs on an assembled garden. Pure.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.garden.model import Entry, Event, Garden, Planting

SOIL = re.compile(
    r"\b(?:soil|ground|seed ?bed)\b(?:\s+(?:temperature|temp|warmth|is|was|at|of|now|still|only|already|about|reads?))*"
    r"\s*[:,]?\s*(?P<number>-?\d{1,2}(?:[.,]\d)?)\s*(?:°\s?|deg(?:rees)?\s+)?(?P<unit>[CF])\b",
    re.IGNORECASE,
)
SPEAKS_OF_SOIL = re.compile(r"\b(?:soil|ground|seed ?bed)\b", re.IGNORECASE)
NEAR = 4
"""Days between a reading and a sowing in which the one tells of the other. Common practice."""
BELIEVED = (-5.0, 45.0)
"""What soil may be [°C]: beyond it a reading is a slip."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Warm:
    """One reading."""

    on: date
    celsius: float
    beds: frozenset[str]  # bed keys; empty: the note names no bed
    entry: str
    event: str | None  # id; None: it stands in the note's own words


class SoilWarmth:
    """The readings of a garden, asked by planting."""

    def __init__(self, readings: Iterable[Warm]) -> None:
        self.readings: Sequence[Warm] = tuple(readings)

    def at(self, planting: Planting, sown: date) -> Warm | None:
        """The reading that tells of a sowing: from its own note, or of its bed within a few days; the nearest."""
        found = [
            warm
            for warm in self.readings
            if abs((warm.on - sown).days) <= NEAR
            and (planting.bed in warm.beds or (not warm.beds and warm.entry in planting.entries))
        ]
        return min(found, key=lambda warm: (abs((warm.on - sown).days), warm.on), default=None)


def noted_warmth(garden: Garden, *, since: date = date.min) -> SoilWarmth:
    """Every reading of the soil, by day.

    Args:
        since: the first sowing anybody asks about.
    """
    first = date.min if since == date.min else since - timedelta(days=NEAR)
    found = [*_in_lines(garden, first), *_in_words(garden, first)]
    return SoilWarmth(sorted(found, key=lambda warm: (warm.on, warm.entry)))


def _in_lines(garden: Garden, first: date) -> Iterator[Warm]:
    for event in garden.events:
        if (
            event.when.day
            and event.when.day >= first
            and event.action.readings
            and (celsius := _of_line(event)) is not None
        ):
            yield Warm(
                on=event.when.day,
                celsius=celsius,
                beds=frozenset(event.beds),
                entry=event.entry,
                event=event.id,
            )


def _of_line(event: Event) -> float | None:
    """The warmth of the soil in a line that gives one."""
    if event.verb != "tested soil" and not SPEAKS_OF_SOIL.search(event.action.text):
        return None
    read = (amount for name, amount in event.action.readings if name == "temperature")
    return next((_believed(a.value, a.unit) for a in read if a.value is not None), None)


def _in_words(garden: Garden, first: date) -> Iterator[Warm]:
    """What a note says in its own words, of the beds it is about."""
    for entry in garden.entries:
        if entry.when and entry.when.day and entry.when.day >= first and (m := SOIL.search(_words(entry))):
            celsius = _celsius(m)
            if celsius is not None:
                beds = frozenset(bed.key for bed in entry.beds)
                yield Warm(on=entry.when.day, celsius=celsius, beds=beds, entry=entry.id, event=None)


def _words(entry: Entry) -> str:
    """A note's own words, without its lines of work: those speak for themselves."""
    if "soil" not in entry.body.casefold() and "ground" not in entry.body.casefold():
        return ""
    told = {action.text.strip() for action in entry.actions}
    lines = (line.strip().lstrip("-*+•– ").strip() for line in entry.body.splitlines())
    return " ".join(line for line in lines if line not in told)


def _celsius(found: re.Match[str]) -> float | None:
    return _believed(float(found["number"].replace(",", ".")), found["unit"].upper())


def _believed(value: float, unit: str) -> float | None:
    celsius = (value - 32) / 1.8 if unit.endswith("F") else value
    return celsius if BELIEVED[0] <= celsius <= BELIEVED[1] else None
