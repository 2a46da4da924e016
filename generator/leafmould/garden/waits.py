"""Waits before picking that the notes give cause for: raw manure, animals let onto a bed, treatments.

Raw manure is counted from the day it was brought out, animals from their last day in the bed, as one
application of raw manure (common practice: the rule names manure, not hens). Manure counts as raw unless it is
told to be composted and a note has the heat that compost grew to, or it is pellets, whose bag has the say. A
treatment's days are those the note gives, never ours. Runs on an assembled garden; reads what is there and changes nothing.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from leafmould.facts.manure import days_after_manure
from leafmould.garden.model import Event, Garden, Picking, Planting
from leafmould.garden.queries import lineage
from leafmould.values.names import fold

Cause = Literal["manure", "animals", "treatment"]

MANURES = frozenset({"manure", "muck", "dung", "droppings", "poo"})
MAY_BE_MANURE = frozenset({"mulched", "fed", "dug in"})
HEAP = re.compile(
    r"\b(?:heap|compost)\b[^.;\n]{0,40}?\b(?P<degrees>\d{2,3})\s*(?:°\s?|deg(?:rees)?\s+)?(?P<unit>[CF])\b",
    re.IGNORECASE,
)
DAYS_HOT = 3
"""Days a compost must have been hot; in a vessel or a heap blown through, by 7 CFR 205.203(c)(2)."""
RECORD_HOLDS = timedelta(days=365)
"""How long before it was spread the heat may have been noted. Common practice."""
LABEL_ASKED = timedelta(days=120)
"""How long a treatment without its days is told of: as long as the longest wait here. Common practice."""
HOT = 55.0
"""°C a compost of manure must have reached; 131 °F in 7 CFR 205.203(c)(2)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """One cause to wait, in one bed."""

    event: Event
    cause: Cause
    bed: str
    last: date  # the day the count starts from
    is_going_on: bool = False  # the animals are still there
    is_raw: bool = True  # of manure: no record of a hot compost, and no pellets


@dataclass(frozen=True, slots=True, kw_only=True)
class SafeDay:
    """The first day a planting may be picked again."""

    day: date
    days: int  # of the wait
    wait: Wait


class Waits:
    """All the waits of a garden, asked by planting and by picking."""

    def __init__(self, garden: Garden) -> None:
        self.garden = garden
        self.by_bed: Mapping[str, Sequence[Wait]] = _by_bed(garden)

    def safe_day(self, planting: Planting) -> SafeDay | None:
        """The first day a standing planting may be picked, if that is still to come."""
        if not planting.is_open:
            return None
        found = [safe for safe in self._after(planting) if safe.day > self.garden.on]
        return max(found, key=lambda safe: safe.day, default=None)

    def unrecorded(self, planting: Planting) -> Wait | None:
        """The latest treatment of a standing planting of which nobody wrote how long to wait."""
        if not planting.is_open:
            return None
        since = self.garden.on - LABEL_ASKED
        found = [
            wait
            for wait in self._of(planting)
            if wait.cause == "treatment" and not wait.event.action.wait_days and wait.last >= since
        ]
        return max(found, key=lambda wait: wait.last, default=None)

    def picked_inside(self, picking: Picking) -> SafeDay | None:
        """The wait inside which something was picked; None if it was safe or its day is not known."""
        planting = self.garden.planting_by_id.get(picking.planting or "")
        on = picking.when.day
        if planting is None or on is None:
            return None
        found = [s for s in self._after(planting) if s.wait.last <= on < s.day]
        return max(found, key=lambda safe: safe.day, default=None)

    def _after(self, planting: Planting) -> Iterator[SafeDay]:
        for wait in self._of(planting):
            if days := _days(wait, planting):
                yield SafeDay(day=wait.last + timedelta(days=days), days=days, wait=wait)

    def _of(self, planting: Planting) -> Iterator[Wait]:
        """What reaches a planting, in its beds and in those they were before."""
        if not self.by_bed:
            return
        stood = dict.fromkeys((*planting.beds, planting.bed_now))
        for older in dict.fromkeys(older for bed in stood for older in lineage(self.garden, bed)):
            for wait in self.by_bed.get(older, ()):
                if _reaches(wait, planting):
                    yield wait


def _by_bed(garden: Garden) -> Mapping[str, Sequence[Wait]]:
    found: defaultdict[str, list[Wait]] = defaultdict(list)
    hot: tuple[date, ...] | None = None
    for event in garden.events:
        cause = cause_of(event)
        for bed in beds_of(event, garden) if cause else ():
            if cause == "animals":
                last, is_going_on = _last_day_of_animals(event, bed, garden)
                found[bed].append(Wait(event=event, cause=cause, bed=bed, last=last, is_going_on=is_going_on))
            elif cause:
                if hot is None:
                    hot = hot_days(garden)
                last = last_day(event, garden.on)
                found[bed].append(
                    Wait(event=event, cause=cause, bed=bed, last=last, is_raw=is_raw(event, hot))
                )
    return found


def cause_of(event: Event) -> Cause | None:
    """What an event gives cause to wait for."""
    if event.verb == "penned":
        return "animals"
    if event.verb == "treated":
        return "treatment"
    if event.verb == "manured" or (event.verb in MAY_BE_MANURE and _words(event) & MANURES):
        return "manure"
    return None


def _words(event: Event) -> set[str]:
    return set(fold(f"{event.action.subject or ''} {event.action.remark or ''}"))


def is_raw(event: Event, hot: Sequence[date]) -> bool:
    """Whether manure counts as raw: no record of heat in its line or in the year before, and no pellets.

    Args:
        hot: the days on which a heap was noted to be hot (`hot_days`); three are a record.
    """
    words = _words(event)
    if "pellet" in words or "pelleted" in words:
        return False
    if not words & {"compost", "composted"}:
        return True
    day = event.when.first
    before = [one for one in hot if day - RECORD_HOLDS <= one <= day]
    return not (any(_is_hot(event)) or len(before) >= DAYS_HOT)


def hot_days(garden: Garden) -> tuple[date, ...]:
    """The days on which a note gives a heap the heat that makes manure compost, each once."""
    found = set()
    for entry in garden.entries:
        told = [
            *(action.text for action in entry.actions),
            *(words.text for words in entry.words),
            entry.body,
        ]
        if entry.when and entry.when.day and any(_tells_heat(text) for text in told):
            found.add(entry.when.day)
    return tuple(sorted(found))


def _tells_heat(text: str) -> bool:
    if "heap" not in text.casefold() and "compost" not in text.casefold():
        return False
    read = ((int(m["degrees"]), m["unit"].upper()) for m in HEAP.finditer(text))
    return any((value if unit == "C" else (value - 32) / 1.8) >= HOT - 0.01 for value, unit in read)


def _is_hot(event: Event) -> Iterator[bool]:
    for _, amount in event.action.readings:
        if amount.value is not None and amount.unit in ("°C", "°F"):
            yield (amount.value if amount.unit == "°C" else (amount.value - 32) / 1.8) >= HOT - 0.01


def last_day(event: Event, on: date) -> date:
    """The day a count starts from; of a coarse date its end, the careful side, but never a day to come."""
    until = event.action.until
    return min(on, max(event.when.last, until.last if until else event.when.last))


def _last_day_of_animals(event: Event, bed: str, garden: Garden) -> tuple[date, bool]:
    """Until when animals were in a bed: as written, let out, or the day before something was started there."""
    if event.action.until:
        return last_day(event, garden.on), event.action.until.last >= garden.on
    begun = event.when.last
    ends = [
        *(e.when.last for e in garden.events if e.verb == "let out" and bed in beds_of(e, garden)),
        *(
            p.in_bed_from.first - timedelta(days=1)
            for p in garden.plantings
            if p.bed == bed and p.in_bed_from and p.events
        ),
    ]
    after = [end for end in ends if end >= begun]
    return (min(after), False) if after else (max(begun, garden.on), True)


def beds_of(event: Event, garden: Garden) -> tuple[str, ...]:
    """The beds it was done in; where only plants are named, the beds they stand in."""
    plantings = garden.planting_by_id
    return event.beds or tuple(
        dict.fromkeys(plantings[key].bed_now for key in event.plantings if key in plantings)
    )


def _reaches(wait: Wait, planting: Planting) -> bool:
    """Whether a planting stood there then or came later, in that part; plants named alone are alone meant."""
    action = wait.event.action
    if wait.cause != "animals" and not action.places and wait.event.plantings:
        return planting.id in wait.event.plantings
    if wait.cause == "treatment" and action.crops and planting.id not in wait.event.plantings:
        return False
    if wait.event.part and planting.part and wait.event.part != planting.part:
        return False
    return planting.ended_on is None or planting.ended_on >= wait.event.when.first


def _days(wait: Wait, planting: Planting) -> int:
    if wait.cause == "treatment":
        return wait.event.action.wait_days or 0
    if wait.cause == "manure" and not wait.is_raw:
        return 0
    return max((days_after_manure(crop) for crop in planting.crops), default=days_after_manure(""))
