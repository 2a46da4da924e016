"""Looking back: what a garden remembers of its beds, crops, families and notes, asked in one place.

Works on an assembled garden; pages and `find` ask here and search nothing themselves. Silence is never
taken for emptiness: where no note tells, the answer says so. Addresses, words and forecasts are left to
others.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property
from itertools import pairwise
from typing import Literal

from leafmould.garden.bed_lines import NOWHERE_KEY
from leafmould.garden.indexes import Indexes, day_of_year, grouped
from leafmould.garden.model import Bed, Entry, Event, Garden, Picking, Planting
from leafmould.values.names import fold

DAYS_BACK, DAYS_ON = 3, 7
"""How far "this week in earlier years" looks back and on: what comes next matters more than what was."""
NOT_LATELY = timedelta(days=180)
"""Notes younger than this are not from an earlier year."""

Told = Literal["grown", "not yet a bed", "no longer a bed", "no planting noted", "no record", "no notes"]
"""What is known of a bed's season: something grew; it was no bed; only work was noted; nothing was noted of
the bed; nothing was noted in the whole garden."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BedYear:
    """One bed in one season."""

    bed: str
    year: int
    told: Told
    plantings: tuple[Planting, ...]  # in the garden's order
    families: tuple[str, ...]  # botanical, in the order of the plantings
    others: int  # plantings whose family is not known
    events: tuple[Event, ...]  # done to the bed, not to a planting


@dataclass(frozen=True, slots=True, kw_only=True)
class EmptyBed:
    """A bed in which nothing is known to stand."""

    bed: str
    told: Literal["empty", "no record", "not yet a bed", "no longer a bed"]
    since: date | None = None  # the day its last planting ended or left; else the bed's own first or last
    last: Planting | None = None  # what stood there last; with no record, the last known by its year
    gone_to: str | None = None  # the bed that was moved to, if it did not end here


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """A stretch without notes."""

    first: date  # the last day noted before it
    last: date  # the first day noted after it, or the garden's day
    before: Entry
    after: Entry | None  # None: it lasts until the garden's day

    @property
    def days(self) -> int:
        """How long it took to the next note."""
        return (self.last - self.first).days


class Past(Indexes):
    """A garden's past; what it is asked for is found in its indexes."""

    def bed_history(self, bed: str, *, part: str | None = None) -> tuple[BedYear, ...]:
        """A bed season by season, newest first, from the first that anything is known to have stood there."""
        stood = [year for year in self._years_by_bed.get(bed, ()) if self._stood(bed, year, part)]
        ended = self.garden.beds[bed].ended
        newest = min(self.this_year, self.year_of(ended)) if ended else self.this_year
        first = min(stood, default=newest + 1)
        years = (year for year in range(newest, first - 1, -1) if year not in self.hidden_seasons)
        return tuple(self.bed_year(bed, year, part=part) for year in years)

    def bed_year(self, bed: str, year: int, *, part: str | None = None) -> BedYear:
        """One bed in one season; of one part, also what names none."""
        plantings = self._stood(bed, year, part)
        families = [self.families_in(p) for p in plantings]
        return BedYear(
            bed=bed,
            year=year,
            told="grown" if plantings else self._blank(bed, year),
            plantings=tuple(plantings),
            families=tuple(dict.fromkeys(name for names in families for name in names)),
            others=sum(1 for names in families if not names),
            events=tuple(self.bed_events.get((bed, year), ())),
        )

    def beds_on(self, day: date) -> list[Bed]:
        """The beds that have not ended, in the garden's order; the stand-in for none only if it is used."""
        beds = [bed for bed in self.garden.beds.values() if not (bed.ended and bed.ended <= day)]
        return [bed for bed in beds if bed.key != NOWHERE_KEY or self.plantings_by_bed.get(bed.key)]

    def in_the_ground(self, day: date, bed: str | None = None) -> list[Planting]:
        """What stood on a day, as far as is known, in the whole garden or in one bed."""
        plantings = self.garden.plantings if bed is None else self.plantings_by_bed.get(bed, ())
        standing = (p for p in plantings if self._stands(p, day))
        return [p for p in standing if bed is None or bed == self._bed_on(p, day)]

    def empty_beds(self, day: date) -> tuple[EmptyBed, ...]:
        """Beds in which nothing is known to stand; one that nothing was noted of is not called empty."""
        return tuple(
            self.empty_bed(bed.key, day) for bed in self.beds_on(day) if not self.in_the_ground(day, bed.key)
        )

    def empty_bed(self, key: str, day: date) -> EmptyBed:
        """Since when nothing is known to stand in a bed, and what stood there last."""
        bed = self.garden.beds[key]
        if bed.ended and bed.ended <= day:
            return EmptyBed(bed=key, told="no longer a bed", since=bed.ended)
        if bed.begun and bed.begun > day:
            return EmptyBed(bed=key, told="not yet a bed", since=bed.begun)
        left = [(*stay, p) for p in self.plantings_by_bed.get(key, ()) if (stay := self._left(p, key, day))]
        if not left:
            return EmptyBed(bed=key, told="no record", last=self._last_by_year(key, day))
        since, gone_to, last = max(left, key=lambda found: (found[0], found[2].id))
        return EmptyBed(bed=key, told="empty", since=since, last=last, gone_to=gone_to)

    @cached_property
    def _years_by_bed(self) -> Mapping[str, Sequence[int]]:
        return grouped(self.plantings_by_bed_year)

    def _stood(self, bed: str, year: int, part: str | None) -> Sequence[Planting]:
        found = self.plantings_by_bed_year.get((bed, year), ())
        if part is None:
            return found
        return [p for p in found if p.part is None or fold(p.part) == fold(part)]

    def _blank(self, key: str, year: int) -> Told:
        """What is known of a bed in a season in which nothing is known to have stood there."""
        bed = self.garden.beds[key]
        if bed.begun and bed.begun > self.year_ends(year):
            return "not yet a bed"
        if bed.ended and bed.ended <= self.year_begins(year):
            return "no longer a bed"
        if self.bed_events.get((key, year)):
            return "no planting noted"
        return "no record" if self.entries_by_year.get(year) else "no notes"

    def _stands(self, planting: Planting, day: date) -> bool:
        if planting.origin == "year only" or (planting.ended_on and planting.ended_on <= day):
            return False
        if placed := planting.in_bed_from:
            return placed.first <= day
        first = self.first_day(planting)
        return planting.is_perennial or first is None or first <= day

    def _bed_on(self, planting: Planting, day: date) -> str:
        """The bed it stood in that day: its first, or the one it was moved to, under the name of that day."""
        if len(planting.beds) < 2 or day >= self.garden.on:
            return planting.bed_now
        here = planting.bed
        for _, goal in self._moves(planting, day):
            here = goal
        while (bed := self.garden.beds[here]).ended and bed.ended < day:
            now = next((key for key in bed.became if key in planting.beds), None)
            if now is None:
                break
            here = now
        return here

    def _left(self, planting: Planting, bed: str, day: date) -> tuple[date, str | None] | None:
        """When it ended in a bed by that day, or was moved away, and where to."""
        if bed != planting.bed_now and bed in planting.beds:
            later = planting.beds[planting.beds.index(bed) + 1 :]
            away = next((move for move in self._moves(planting, day) if move[1] in later), None)
            if away:
                return away
        return (planting.ended_on, None) if planting.ended_on and planting.ended_on <= day else None

    def _last_by_year(self, bed: str, day: date) -> Planting | None:
        """The last of what is known by its year only: it tells nothing of a day."""
        found = [(p.year, p.id, p) for p in self.plantings_by_bed.get(bed, ()) if p.origin == "year only"]
        known = [one for one in found if one[0] is not None and one[0] <= day.year]
        return max(known)[2] if known else None

    def _moves(self, planting: Planting, day: date) -> Iterator[tuple[date, str]]:
        """Where it was moved to up to a day, and when."""
        if len(planting.beds) < 2:
            return
        for event in (self.garden.event_by_id[id_] for id_ in planting.events):
            goal = next((bed for bed in event.beds if bed in planting.beds), None)
            if event.verb == "moved" and goal and event.when.first <= day:
                yield event.when.first, goal

    # Crops

    def varieties_of(self, crop: str) -> Mapping[str, Sequence[Planting]]:
        """A crop's plantings by variety, oldest first; "" for those whose variety was not given."""
        return grouped(
            (variety, p) for p in self.plantings_by_crop.get(crop, ()) for variety in p.varieties or ("",)
        )

    def crop_years(self, crop: str) -> Mapping[int, Sequence[Planting]]:
        """A crop's plantings by the seasons they stood in."""
        return grouped(
            (year, p) for p in self.plantings_by_crop.get(crop, ()) for year in self.years_of[p.id]
        )

    def picked_years(self, crop: str) -> Mapping[int, Sequence[Picking]]:
        """What was picked of a crop, by season."""
        return grouped((self.year_of(p.when.first), p) for p in self.pickings_by_crop.get(crop, ()))

    # Families

    def families_of_bed(self, bed: str) -> tuple[str, ...]:
        """The families that ever stood in a bed or in those it came from."""
        stood = (p for key in lineage(self.garden, bed) for p in self.plantings_by_bed.get(key, ()))
        return tuple(dict.fromkeys(family for p in stood for family in self.families_in(p)))

    @cached_property
    def family_beds(self) -> Mapping[str, Mapping[str, Mapping[int, Planting]]]:
        """Family, bed and season to the first of the family there."""
        found: dict[str, dict[str, dict[int, Planting]]] = {}
        for bed in self.garden.beds:
            for planting in self.plantings_by_bed.get(bed, ()):
                for family in self.families_in(planting):
                    years = found.setdefault(family, {}).setdefault(bed, {})
                    for year in self.years_of[planting.id]:
                        years.setdefault(year, planting)
        return found

    # Notes

    def this_week_earlier(self) -> list[Entry]:
        """Notes of earlier years from the days around the garden's day, by calendar days."""
        on = self.garden.on
        days = dict.fromkeys(
            day_of_year(on + timedelta(days=shift)) for shift in range(-DAYS_BACK, DAYS_ON + 1)
        )
        if {228, 301} <= days.keys():
            days[229] = None  # a leap day belongs to the week around it in every year
        found = [e for day in sorted(days) for e in self.entries_by_day.get(day, ())]
        return sorted((e for e in found if e.when and e.when.first < on - NOT_LATELY), key=_by_day)

    def lessons(
        self, *, bed: str | None = None, crop: str | None = None, before: int | None = None
    ) -> list[Entry]:
        """Notes that hold a lesson, newest first: of a bed, of a crop, of seasons before one."""
        notes: Sequence[Entry] = self._with_lessons
        if bed is not None:
            about = self.entries_by_bed.get(bed, ())
            notes = [e for e in about if crop is None or crop in self.touched(e)[1]]
        elif crop is not None:
            notes = self.entries_by_crop.get(crop, ())
        found = [entry for entry in reversed(notes) if entry.lesson]
        if before is None:
            return found
        return [entry for entry in found if entry.when and self.year_of(entry.when.first) < before]

    def gaps(self, year: int, *, longer_than: int) -> tuple[Gap, ...]:
        """Stretches of a season without a note, between the first and the last day the notes cover."""
        noted: dict[date, Entry | None] = {}
        for entry in self.entries_by_year.get(year, ()):
            if entry.when and entry.when.is_exact:
                noted[entry.when.first] = entry
        if year == self.this_year and noted:
            noted.setdefault(self.garden.on, None)
        return tuple(
            Gap(first=first, last=last, before=before, after=noted[last])
            for first, last in pairwise(sorted(noted))
            if (last - first).days > longer_than and (before := noted[first])
        )

    @cached_property
    def _with_lessons(self) -> Sequence[Entry]:
        return [entry for entry in self.garden.entries if entry.lesson]


def years_in_bed(planting: Planting, garden: Garden) -> range:
    """The calendar years in which a planting stood in a bed, as far as is known: rotation counts in these.

    Unlike the seasons its history is told by, they leave out the time it was raised elsewhere.
    """
    begun = planting.in_bed_from
    first = begun.first.year if begun else planting.year
    if first is None:
        first = planting.first_picked.first.year if planting.first_picked else None
    if first is None:
        return range(0)
    if planting.origin == "year only":
        return range(first, first + 1)
    last = planting.ended_on.year if planting.ended_on else garden.on.year
    return range(first, max(first, last) + 1)


def lineage(garden: Garden, bed: str) -> tuple[str, ...]:
    """A bed and all the beds it came from, nearest first."""
    return _along(garden, (bed,), lambda known: known.came_from)


def kin(garden: Garden, beds: Iterable[str]) -> tuple[str, ...]:
    """Some beds with all they came from and all they became."""
    return _along(garden, beds, lambda known: (*known.came_from, *known.became))


def _along(garden: Garden, beds: Iterable[str], ways: Callable[[Bed], Iterable[str]]) -> tuple[str, ...]:
    found = dict.fromkeys(beds)
    waiting = list(found)
    while waiting:
        known = garden.beds.get(waiting.pop(0))
        for key in ways(known) if known else ():
            if key not in found:
                found[key] = None
                waiting.append(key)
    return tuple(found)


def _by_day(entry: Entry) -> tuple[date, str]:
    return (entry.when.first if entry.when else date.min, entry.id)
