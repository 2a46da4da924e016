"""Puts the frozen garden together, with every look-up the pages need."""

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
    beds_of, crops_of = _entry_names(ground, entries)
    return Garden(
        name=settings.name,
        on=calendar.on,
        people=settings.people,
        units=settings.units,
        is_southern=calendar.is_southern,
        beds={key: ground.lines.beds[key] for key in sorted(ground.lines.beds)},
        crops=_crops(ground, plantings, events, crops_of),
        plantings=tuple(plantings),
        pickings=tuple(pickings),
        events=tuple(events),
        entries=entries,
        planting_by_id={p.id: p for p in plantings},
        picking_by_id={p.id: p for p in pickings},
        event_by_id={e.id: e for e in events},
        entry_by_id={e.id: e for e in entries},
        plantings_by_bed=_index((p.id, {*p.beds, p.bed, p.bed_now}) for p in plantings),
        plantings_by_crop=_index((p.id, p.crops) for p in plantings),
        plantings_by_group=_index((p.id, (p.group,) if p.group else ()) for p in plantings),
        pickings_by_bed=_index((p.id, (p.bed,) if p.bed else ()) for p in pickings),
        pickings_by_crop=_index((p.id, p.crops) for p in pickings),
        events_by_bed=_index((e.id, e.beds) for e in events),
        events_by_crop=_index((e.id, e.crops) for e in events),
        entries_by_bed=_index(_with_events(entries, events, beds_of, "beds")),
        entries_by_crop=_index(_with_events(entries, events, crops_of, "crops")),
        events_by_entry=_index((e.id, (e.entry,)) for e in sorted(events, key=_event_number)),
    )


def _index(pairs: Iterable[tuple[str, Iterable[str]]]) -> Mapping[str, tuple[str, ...]]:
    found: dict[str, list[str]] = defaultdict(list)
    for id, keys in pairs:
        for key in set(keys):
            found[key].append(id)
    return {key: tuple(found[key]) for key in sorted(found)}


def _with_events(
    entries: Iterable[Entry], events: Iterable[Event], headers: Mapping[str, set[str]], names: str
) -> list[tuple[str, set[str]]]:
    """What each entry is about: its header's names and those of its events."""
    about: dict[str, set[str]] = defaultdict(set)
    for event in events:
        about[event.entry].update(getattr(event, names))
    return [(entry.id, about.get(entry.id, set()) | headers.get(entry.id, set())) for entry in entries]


def _entry_names(ground: Ground, entries: Iterable[Entry]) -> tuple[dict[str, set[str]], dict[str, set[str]]]:
    """Bed and crop keys that stand in the headers of notes."""
    beds: dict[str, set[str]] = {}
    crops: dict[str, set[str]] = {}
    for entry in entries:
        if entry.beds:
            day = entry.when.last if entry.when else date.max
            keys = [ground.lines.key_of(named) for named in entry.beds]
            beds[entry.id] = set(ground.beds_on(keys, day, entry.part)) & set(ground.lines.beds)
        if entry.crops:
            crops[entry.id] = {key for n in entry.crops if (key := ground.kinds.key_of(n)) is not None}
    return beds, crops


def _crops(
    ground: Ground, plantings: Iterable[Planting], events: Iterable[Event], headers: Mapping[str, set[str]]
) -> dict[str, Crop]:
    keys = {key for p in plantings for key in p.crops} | {key for e in events for key in e.crops}
    keys = keys.union(*headers.values())
    return {key: ground.kinds.named(key) for key in sorted(keys)}


def _planting_order(planting: Planting) -> tuple[date, str]:
    start = planting.start
    if start is not None:
        return (start.first, planting.id)
    return (date(planting.year, 1, 1) if planting.year else date.min, planting.id)


def _order(dated: Dated) -> tuple[date, date, str]:
    return (dated.when.first, dated.when.last, dated.id)


def _event_number(event: Event) -> tuple[str, int]:
    return (event.entry, int(event.id.rsplit(":", 1)[1]))
