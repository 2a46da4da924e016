"""Looking back: pure questions to an assembled garden.

What stood where in which year, what the notes say about this week in earlier years, what is in the ground
and what is empty. Silence is never taken for emptiness: where no note tells, the answer says so.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from leafmould.garden.model import NOWHERE, Event, Garden, Picking, Planting
from leafmould.garden.totals import add_up
from leafmould.notes.entries import Entry
from leafmould.values.names import fold
from leafmould.values.quantities import Amount

Told = Literal["grown", "nothing grown", "no record"]
"""What the notes say of a bed in a year: plantings, notes without any, or nothing at all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BedYear:
    """One bed in one year."""

    bed: str
    year: int
    told: Told
    plantings: tuple[str, ...]  # ids, by start
    families: tuple[str | None, ...]  # botanical, in the order of the plantings; None: not known


@dataclass(frozen=True, slots=True, kw_only=True)
class EmptyBed:
    """A bed in which nothing is known to stand."""

    bed: str
    told: Literal["empty", "no record"]  # empty: its last planting ended
    since: date | None  # None: no record
    is_estimated: bool  # the end was only presumed


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """A stretch of months without a single note."""

    first: date  # first day without notes
    last: date

    @property
    def days(self) -> int:
        return (self.last - self.first).days + 1


@dataclass(frozen=True, slots=True, kw_only=True)
class CropYear:
    """What one crop gave in one year."""

    crop: str
    year: int
    picked: tuple[Amount, ...]  # one for each unit that can be added
    picked_g: float | None
    is_estimated: bool
    pickings: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """A line to meet again when planning."""

    text: str
    entry: str
    year: int | None


def lineage(garden: Garden, bed: str) -> tuple[str, ...]:
    """A bed, the beds it came from and the ones it became, so that history stays joined."""
    return tuple(dict.fromkeys((*_along(garden, bed, "came_from"), *_along(garden, bed, "became"))))


def plantings_of_bed(garden: Garden, bed: str, *, part: str | None = None) -> tuple[Planting, ...]:
    """All that stood in a bed, under any of its names; in a part, also what names none."""
    ids = dict.fromkeys(id for key in lineage(garden, bed) for id in garden.plantings_by_bed.get(key, ()))
    found = [garden.planting_by_id[id] for id in ids]
    if part is not None:
        found = [p for p in found if p.part is None or fold(p.part) == fold(part)]
    return tuple(sorted(found, key=_by_start))


def bed_history(garden: Garden, bed: str, *, part: str | None = None) -> tuple[BedYear, ...]:
    """A bed year by year, newest first, from its first note or start to today."""
    by_year: dict[int, list[Planting]] = defaultdict(list)
    for planting in plantings_of_bed(garden, bed, part=part):
        for year in years_of(garden, planting):
            by_year[year].append(planting)
    noted = _noted_years(garden, bed)
    first = min((*by_year, *noted), default=None)
    if first is None:
        return ()
    years = range(garden.on.year, first - 1, -1)
    return tuple(_bed_year(garden, bed, year, by_year.get(year, []), year in noted) for year in years)


def bed_year(garden: Garden, bed: str, year: int, *, part: str | None = None) -> BedYear:
    """One bed in one year; "no record" where the notes are silent."""
    stood = [p for p in plantings_of_bed(garden, bed, part=part) if year in years_of(garden, p)]
    return _bed_year(garden, bed, year, stood, year in _noted_years(garden, bed))


def years_of(garden: Garden, planting: Planting) -> range:
    """The years in which a planting stood in its bed, up to today."""
    if planting.origin == "year only":
        return range(planting.year or 0, (planting.year or 0) + 1)
    start = planting.in_bed_from
    first = start.first.year if start else planting.year
    if first is None:
        noted = [garden.event_by_id[id].when.first.year for id in planting.events]
        first = min(noted, default=garden.on.year)
    last = planting.ended_on.year if planting.ended_on else garden.on.year
    return range(first, max(first, last) + 1)


def crop_history(garden: Garden, crop: str, variety: str | None = None) -> tuple[Planting, ...]:
    """All plantings of a crop, or of one variety, oldest first."""
    found = (garden.planting_by_id[id] for id in garden.plantings_by_crop.get(crop, ()))
    if variety is None:
        return tuple(found)
    words = fold(variety)
    return tuple(p for p in found if any(fold(v) == words for v in p.varieties))


def varieties_of(garden: Garden, crop: str) -> Mapping[str, tuple[str, ...]]:
    """Planting ids by variety, as first written; "" for those whose variety was not given."""
    names: dict[tuple[str, ...], str] = {(): ""}
    found: dict[str, list[str]] = defaultdict(list)
    for planting in crop_history(garden, crop):
        for variety in planting.varieties or ("",):
            found[names.setdefault(fold(variety), variety)].append(planting.id)
    return {name: tuple(found[name]) for name in sorted(found)}


def family_of(garden: Garden, planting: Planting) -> tuple[str | None, ...]:
    """The families of a planting; (None,) where the crop or its family is not known."""
    families = [garden.crops[crop].family for crop in planting.crops] or [None]
    return tuple(dict.fromkeys(families))


def last_year_of_family(garden: Garden, bed: str, family: str, *, part: str | None = None) -> int | None:
    """The last year in which a family is known to have stood in a bed."""
    years = [
        years_of(garden, planting)[-1]
        for planting in plantings_of_bed(garden, bed, part=part)
        if family in family_of(garden, planting)
    ]
    return max(years, default=None)


def in_the_ground(garden: Garden, day: date, bed: str | None = None) -> tuple[Planting, ...]:
    """What stood on a day, in the whole garden or one bed."""
    plantings = garden.plantings if bed is None else plantings_of_bed(garden, bed)
    standing = (p for p in plantings if _stands(garden, p, day))
    return tuple(p for p in standing if bed is None or _is_in(garden, p, bed, day))


def empty_beds(garden: Garden, day: date | None = None) -> tuple[EmptyBed, ...]:
    """Beds in which nothing is known to stand, and since when; a bed never noted is no empty bed."""
    day = day or garden.on
    beds = [key for key in garden.beds if _is_in_use(garden, key, day)]
    return tuple(_empty(garden, key, day) for key in beds if not in_the_ground(garden, day, key))


def this_week_earlier(garden: Garden, day: date | None = None) -> tuple[Event, ...]:
    """What was done within three days of this date in earlier years, the latest year first."""
    day = day or garden.on
    found = []
    for event in garden.events:
        when = event.when.day
        if when is not None and when.year < day.year and _days_apart(when, day) <= 3:
            found.append(event)
    return tuple(sorted(found, key=lambda e: (-e.when.first.year, e.when.first, e.id)))


def lessons(garden: Garden, *, bed: str | None = None, crop: str | None = None) -> tuple[Lesson, ...]:
    """Every lesson noted, the newest first; of one bed or crop if asked."""
    ids: Iterable[str] = garden.entry_by_id
    if bed is not None:
        ids = {id for key in lineage(garden, bed) for id in garden.entries_by_bed.get(key, ())}
    if crop is not None:
        ids = set(ids) & set(garden.entries_by_crop.get(crop, ()))
    wanted = set(ids)
    return tuple(
        Lesson(text=text, entry=entry.id, year=entry.when.first.year if entry.when else None)
        for entry in reversed(garden.entries)
        if entry.id in wanted
        for text in entry.lesson
    )


def gaps(garden: Garden, *, days: int = 45) -> tuple[Gap, ...]:
    """Stretches of at least so many days without a note, between the first note and today."""
    spans = sorted({(e.when.first, e.when.last) for e in garden.entries if e.when is not None})
    found: list[Gap] = []
    until: date | None = None
    for first, last in [*spans, (garden.on + timedelta(days=1),) * 2]:
        if until is not None and (first - until).days > days:
            found.append(Gap(first=until + timedelta(days=1), last=first - timedelta(days=1)))
        until = last if until is None else max(until, last)
    return tuple(found)


def has_notes(garden: Garden, first: date, last: date) -> bool:
    """Whether any note falls into a span; without one, silence says nothing."""
    return any(e.when and e.when.first <= last and e.when.last >= first for e in garden.entries)


def totals(garden: Garden, *, crop: str | None = None, year: int | None = None) -> tuple[CropYear, ...]:
    """What each crop gave in each year, by crop, then year."""
    found: dict[tuple[str, int], list[Picking]] = defaultdict(list)
    ids = garden.picking_by_id if crop is None else garden.pickings_by_crop.get(crop, ())
    for id in ids:
        picking = garden.picking_by_id[id]
        if len(picking.crops) == 1 and year in (None, picking.when.first.year):
            found[(picking.crops[0], picking.when.first.year)].append(picking)
    return tuple(_crop_year(garden, *key, found[key]) for key in sorted(found))


def neighbours(
    garden: Garden, entry: str, *, ids: Iterable[str] | None = None
) -> tuple[Entry | None, Entry | None]:
    """The notes before and after one, of all notes or of a bed's or crop's (`ids`)."""
    among = list(garden.entry_by_id if ids is None else ids)
    place = among.index(entry)
    before = garden.entry_by_id[among[place - 1]] if place > 0 else None
    after = garden.entry_by_id[among[place + 1]] if place + 1 < len(among) else None
    return before, after


def _along(garden: Garden, bed: str, names: Literal["came_from", "became"]) -> tuple[str, ...]:
    """A bed and all further ones in one direction of time."""
    found: dict[str, None] = {}
    waiting = [bed]
    while waiting:
        key = waiting.pop(0)
        if key not in found and key in garden.beds:
            found[key] = None
            waiting.extend(garden.beds[key].came_from if names == "came_from" else garden.beds[key].became)
    return tuple(found)


def _noted_years(garden: Garden, bed: str) -> set[int]:
    """Years in which any note is about a bed."""
    entries = (
        garden.entry_by_id[id] for key in lineage(garden, bed) for id in garden.entries_by_bed.get(key, ())
    )
    return {entry.when.first.year for entry in entries if entry.when is not None}


def _bed_year(garden: Garden, bed: str, year: int, stood: list[Planting], is_noted: bool) -> BedYear:
    told: Told = "grown" if stood else "nothing grown" if is_noted else "no record"
    families = dict.fromkeys(family for p in stood for family in family_of(garden, p))
    ids = tuple(p.id for p in stood)
    return BedYear(bed=bed, year=year, told=told, plantings=ids, families=tuple(families))


def _stands(garden: Garden, planting: Planting, day: date) -> bool:
    if planting.origin == "year only":
        return False
    start = planting.in_bed_from
    if start is None:
        noted = [garden.event_by_id[id].when.first for id in planting.events]
        begins = min(noted, default=date.min) if not planting.is_perennial else date.min
    else:
        begins = start.first
    return begins <= day and (planting.ended_on is None or planting.ended_on > day)


def _is_in(garden: Garden, planting: Planting, bed: str, day: date) -> bool:
    """Whether it stood in this very bed that day, not only in one it was moved away from."""
    moves = (garden.event_by_id[id] for id in planting.events)
    moved_to = [e.beds[0] for e in moves if e.verb == "moved" and e.beds and e.when.first <= day]
    moved_to = [key for key in moved_to if key in planting.beds]
    return bed in planting.beds and (not moved_to or bed in lineage(garden, moved_to[-1]))


def _is_in_use(garden: Garden, key: str, day: date) -> bool:
    bed = garden.beds[key]
    has_begun = bed.begun is None or bed.begun <= day
    has_ended = bed.ended is not None and bed.ended < day
    return bed.kind != NOWHERE and has_begun and not has_ended


def _empty(garden: Garden, key: str, day: date) -> EmptyBed:
    past = [p for p in plantings_of_bed(garden, key) if p.ended_on is not None and p.ended_on <= day]
    if not past:
        return EmptyBed(bed=key, told="no record", since=None, is_estimated=False)
    last = max(past, key=lambda p: (p.ended_on or date.min, p.id))
    return EmptyBed(bed=key, told="empty", since=last.ended_on, is_estimated=last.end_is_estimated)


def _days_apart(one: date, other: date) -> int:
    """Days between two dates of the calendar, whatever their years."""
    away = abs(one.timetuple().tm_yday - other.timetuple().tm_yday)
    return min(away, 365 - away)


def _crop_year(garden: Garden, crop: str, year: int, pickings: list[Picking]) -> CropYear:
    grams = [p.grams for p in pickings if p.grams is not None]
    return CropYear(
        crop=crop,
        year=year,
        picked=add_up(pickings, units=garden.units),
        picked_g=sum(grams) if grams else None,
        is_estimated=any(p.is_estimated for p in pickings),
        pickings=tuple(p.id for p in pickings),
    )


def _by_start(planting: Planting) -> tuple[date, str]:
    start = planting.in_bed_from
    if start is not None:
        return (start.first, planting.id)
    return (date(planting.year, 1, 1) if planting.year else date.min, planting.id)
