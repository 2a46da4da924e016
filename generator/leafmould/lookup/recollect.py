"""A loaded garden to what it remembers, in rows; and the rows of the last time, where nothing has changed.

Runs for `find`. Loads the garden only if it must: what was kept holds for the same notes, settings, program
and day.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from leafmould.inputs import TOLD, keep, kept, made_from
from leafmould.lookup.recollection import EventRow, Name, NoteRow, PlantingRow, Recollection, from_rows
from leafmould.values.family_words import TRADE_WORDS
from leafmould.values.names import Kind, Known, fold

if TYPE_CHECKING:
    from leafmould.garden.load import Loaded
    from leafmould.garden.model import Entry, Event, Garden, Planting
    from leafmould.lookup.teller import Teller

KEPT = "memory.json"

ASKED_BY = (Kind.BED, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)


def recalled(folder: Path, on: date, load: Callable[[], Loaded]) -> Recollection:
    """What a garden remembers on a day, private things too.

    Args:
        load: reads the garden, where nothing was kept of it or something has changed.
    """
    name = made_from(folder, TOLD, "memory", on)
    held = kept(folder, KEPT)
    try:
        if name and held["made from"] == name:
            return from_rows(held["rows"])
    except (LookupError, TypeError, ValueError):
        pass  # it is none of ours
    found = recollect(load())
    if name:
        keep(folder, KEPT, {"made from": name, "rows": found})
    return found


def recollect(loaded: Loaded) -> Recollection:
    """The rows of a loaded garden."""
    from leafmould.facts.tables import families
    from leafmould.garden.queries import Past, kin
    from leafmould.lookup.teller import teller_of

    garden, teller, past = loaded.garden, teller_of(loaded), Past(loaded.garden)
    places = {event.id: place for place, event in enumerate(garden.events)}
    by_entry = past.events_by_entry
    return Recollection(
        on=garden.on.isoformat(),
        names=_names(loaded),
        families={" ".join(fold(name)): family for name, family in TRADE_WORDS.items()}
        | {" ".join(fold(n)): fact.family for fact in families().values() for n in (fact.name, fact.family)},
        family_by_crop={key: crop.family for key, crop in garden.crops.items() if crop.family},
        kin={bed: list(kin(garden, (bed,))) for bed in garden.beds},
        plantings=[_planting(planting, teller, places) for planting in garden.plantings],
        events=[_event(event, garden) for event in garden.events],
        notes=[
            _note(entry, [places[event.id] for event in by_entry.get(entry.id, ())])
            for entry in garden.entries
        ],
    )


def _names(loaded: Loaded) -> list[Name]:
    """The names of the vocabulary, and those that only the notes gave."""
    known = loaded.vocabulary.with_names(_own_names(loaded.garden)).pairs
    return [
        Name(" ".join(words), k.kind.value, k.key, k.name, list(k.of))
        for words, k in known
        if k.kind in ASKED_BY
    ]


def _own_names(garden: Garden) -> Iterator[tuple[str, Known]]:
    """Names that only the notes gave: beds and crops no setting and no table has, and varieties."""
    for bed in garden.beds.values():
        for name in (bed.name, *bed.also):
            yield name, Known(kind=Kind.BED, key=bed.key, name=bed.name)
    for crop in garden.crops.values():
        yield crop.name, Known(kind=Kind.CROP, key=crop.key, name=crop.name)
    for planting in garden.plantings:
        for variety in planting.varieties:
            yield variety, Known(kind=Kind.VARIETY, key=variety, name=variety, of=planting.crops)


def _planting(planting: Planting, teller: Teller, places: Mapping[str, int]) -> PlantingRow:
    from leafmould.garden.queries import years_in_bed

    garden = teller.garden
    return PlantingRow(
        id=planting.id,
        bed=planting.bed,
        bed_now=planting.bed_now,
        beds=list(planting.beds),
        crops=list(planting.crops),
        varieties=list(planting.varieties),
        years=list(years_in_bed(planting, garden)),
        ended_on=_iso(planting.ended_on),
        line=teller.line(planting),
        files=sorted({garden.entry_by_id[id_].at.file for id_ in planting.entries}),
        events=[places[id_] for id_ in planting.events],
    )


def _event(event: Event, garden: Garden) -> EventRow:
    return EventRow(
        verb=event.verb,
        beds=list(event.beds),
        crops=list(event.crops),
        varieties=list(event.varieties),
        first=event.when.first.isoformat(),
        last=event.when.last.isoformat(),
        subject=", ".join(filter(None, (event.action.subject, event.action.cause))),
        text=event.action.text,
        told=_told(event, garden),
        line=event.action.at.line,
    )


def _told(event: Event, garden: Garden) -> str:
    """The line as written; a bare "sowed" from a header with what the rest of the header says."""
    text = event.action.text
    if len(fold(text)) > 1:
        return text
    crops = [named.name for named in event.action.crops]
    beds = [garden.beds[key].name for key in event.beds if key in garden.beds]
    named = ", ".join(" and ".join(names) for names in (crops, beds) if names)
    return f"{text}: {named}" if named else text


def _note(entry: Entry, events: Iterable[int]) -> NoteRow:
    from leafmould.notes.pictured import without_pictures

    when = entry.when
    body = without_pictures(entry.body).splitlines()
    texts = [entry.title or "", *body, *(w.text for w in entry.words), *entry.lesson]
    return NoteRow(
        id=entry.id,
        file=entry.at.file,
        line=entry.at.line,
        day=_iso(when.day) if when else None,
        written=when.written if when else "",
        span=[when.first.isoformat(), when.last.isoformat()] if when else [],
        beds=[named.key for named in entry.beds],
        crops=[named.key for named in entry.crops],
        varieties=[named.key for named in entry.varieties],
        texts=[*texts, *entry.tags, *(f"{key}: {value}" for key, value in entry.extra)],
        events=list(events),
    )


def _iso(on: date | None) -> str | None:
    return on.isoformat() if on else None
