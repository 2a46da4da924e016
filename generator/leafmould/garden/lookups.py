"""Puts the frozen garden together, each thing to be found by its id; `indexes` has all other look-ups."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Protocol

from leafmould.garden.frozen import Calendar
from leafmould.garden.ground import Ground
from leafmould.garden.model import Crop, Event, Garden, Picking, Planting
from leafmould.notes.entries import Entry
from leafmould.notes.settings import Settings
from leafmould.values.when import When


class Dated(Protocol):
    """Anything with an id and a When."""

    @property
    def id(self) -> str: ...
    @property
    def when(self) -> When: ...


def garden_of(
    *,
    settings: Settings,
    entries: tuple[Entry, ...],
    ground: Ground,
    calendar: Calendar,
    plantings: Sequence[Planting],
    pickings: Sequence[Picking],
    events: Sequence[Event],
) -> Garden:
    """The garden, sorted and indexed; its problems are still to come."""
    plantings = sorted(plantings, key=_planting_order)
    pickings, events = sorted(pickings, key=_order), sorted(events, key=_order)
    return Garden(
        name=settings.name,
        address=settings.address or "",
        on=calendar.on,
        people=settings.people,
        plan=settings.plan,
        units=settings.units,
        is_southern=calendar.is_southern,
        beds={key: ground.lines.beds[key] for key in sorted(ground.lines.beds)},
        crops=_crops(ground, plantings, events, entries),
        plantings=tuple(plantings),
        pickings=tuple(pickings),
        events=tuple(events),
        entries=entries,
        planting_by_id={p.id: p for p in plantings},
        picking_by_id={p.id: p for p in pickings},
        event_by_id={e.id: e for e in events},
        entry_by_id={e.id: e for e in entries},
        plantings_by_group=_index((p.id, (p.group,) if p.group else ()) for p in plantings),
    )


def _index(pairs: Iterable[tuple[str, Iterable[str]]]) -> Mapping[str, tuple[str, ...]]:
    found: dict[str, list[str]] = defaultdict(list)
    for id, keys in pairs:
        for key in set(keys):
            found[key].append(id)
    return {key: tuple(found[key]) for key in sorted(found)}


def _header_crops(ground: Ground, entries: Iterable[Entry]) -> set[str]:
    """Crops that stand in the headers of notes."""
    keys = (ground.kinds.key_of(named) for entry in entries for named in entry.crops)
    return {key for key in keys if key is not None}


def _crops(
    ground: Ground, plantings: Iterable[Planting], events: Iterable[Event], entries: Iterable[Entry]
) -> dict[str, Crop]:
    keys = {key for p in plantings for key in p.crops} | {key for e in events for key in e.crops}
    keys |= _header_crops(ground, entries)
    return {key: ground.kinds.named(key) for key in sorted(keys)}


def _planting_order(planting: Planting) -> tuple[date, str]:
    start = planting.start
    if start is not None:
        return (start.first, planting.id)
    return (date(planting.year, 1, 1) if planting.year else date.min, planting.id)


def _order(dated: Dated) -> tuple[date, date, str]:
    return (dated.when.first, dated.when.last, dated.id)
