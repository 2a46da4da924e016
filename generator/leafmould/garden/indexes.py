"""A garden's plantings, events, notes and pickings by bed, crop, family and season, for `queries`.

Each index is made once, when it is first asked for, and kept in the garden's own order. What is asked of
them, and what silence means, is left to `queries`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Iterable, Mapping, Sequence
from datetime import date, timedelta
from functools import cached_property
from typing import TypeVar

from leafmould.garden.model import Entry, Event, Garden, Picking, Planting
from leafmould.garden.seasons import first_month, season_begins, season_ends, season_name, season_of

K = TypeVar("K", bound=Hashable)
V = TypeVar("V")


class Indexes:
    """Look-ups over one garden."""

    """Look-ups over one garden; everything in them is in the garden's own order."""

    def __init__(self, garden: Garden) -> None:
        self.garden = garden
        self._first_month = first_month(is_southern=garden.is_southern)
        self._families: dict[tuple[str, ...], tuple[str, ...]] = {}
        self._touched: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {}

    def year_of(self, day: date) -> int:
        """The season a day falls in, by the year it begins in; it turns on 1 July in the south."""
        return season_of(day, self._first_month)

    def year_name(self, year: int) -> str:
        """How a season is written: "2026", or "2026/27" in the south."""
        return season_name(year, self._first_month)

    def year_begins(self, year: int) -> date:
        """The first day of a season."""
        return season_begins(year, self._first_month)

    def year_ends(self, year: int) -> date:
        """The last day of a season."""
        return season_ends(year, self._first_month)

    @cached_property
    def this_year(self) -> int:
        """The season of the garden's day."""
        return self.year_of(self.garden.on)

    @cached_property
    def years(self) -> tuple[int, ...]:
        """All seasons from the first record to the garden's day, newest first, quiet ones too.

        A tree planted long before the notes began does not stretch them, nor does the note that only says so.
        """
        begun = {self.home_year(p) for p in self.garden.plantings if not p.is_perennial}
        told = (
            y for y, notes in self.entries_by_year.items() if not all(map(self._only_plants_trees, notes))
        )
        first = min((*begun, *told), default=self.this_year)
        while first - 1 in self.entries_by_year:
            first -= 1
        last = max((*begun, *self.entries_by_year, self.this_year))
        return tuple(year for year in range(last, first - 1, -1) if year not in self.hidden_seasons)

    def _only_plants_trees(self, entry: Entry) -> bool:
        """Whether a note says nothing but that something was planted which stands for years."""
        events = self.events_by_entry.get(entry.id, ())
        return bool(events) and all(e.verb == "planted" and self._is_of_trees(e) for e in events)

    def _is_of_trees(self, event: Event) -> bool:
        found = [self.garden.planting_by_id[id_] for id_ in event.plantings]
        return bool(found) and all(planting.is_perennial for planting in found)

    @cached_property
    def standing_before(self) -> tuple[Planting, ...]:
        """What was there before the first season: trees and the like, and nothing else."""
        return tuple(p for p in self.garden.plantings if self.home_year(p) < self.years[-1])

    @cached_property
    def hidden_seasons(self) -> frozenset[int]:
        """Seasons of years that are left out: no page names them. One in the south may lie half in another year."""
        return self.garden.hidden_years - self.entries_by_year.keys()

    @cached_property
    def years_of(self) -> Mapping[str, tuple[int, ...]]:
        """By planting: the seasons from the first thing known of it to its end or today."""
        return {planting.id: self._years(planting) for planting in self.garden.plantings}

    @cached_property
    def plantings_by_bed(self) -> Mapping[str, Sequence[Planting]]:
        """All that stood in a bed, in any of its seasons."""
        return grouped((bed, p) for p in self.garden.plantings for bed in _beds_of(p))

    @cached_property
    def plantings_by_bed_year(self) -> Mapping[tuple[str, int], Sequence[Planting]]:
        """What stood in a bed in a season."""
        return grouped(
            ((bed, year), p)
            for p in self.garden.plantings
            for bed in _beds_of(p)
            for year in self._years_in(bed, p)
        )

    @cached_property
    def plantings_by_crop(self) -> Mapping[str, Sequence[Planting]]:
        """A crop's history, oldest first."""
        return grouped((crop, p) for p in self.garden.plantings for crop in dict.fromkeys(p.crops))

    @cached_property
    def plantings_by_year(self) -> Mapping[int, Sequence[Planting]]:
        """What stood anywhere in a season."""
        return grouped((year, p) for p in self.garden.plantings for year in self.years_of[p.id])

    def home_year(self, planting: Planting) -> int:
        """The season its history stands under: the one it began in."""
        return self.years_of[planting.id][0]

    def home_bed(self, planting: Planting) -> str:
        """The bed its history stands under: the one it began in, under its name at that season's end."""
        year, here = self.home_year(planting), planting.bed
        while (now := self._renamed_to(here, planting)) and self._is_begun(now, year):
            here = now
        return here

    def _renamed_to(self, bed: str, planting: Planting) -> str | None:
        """What a bed became with a planting standing in it."""
        known = self.garden.beds.get(bed)
        return next((key for key in known.became if key in planting.beds), None) if known else None

    def _is_begun(self, bed: str, year: int) -> bool:
        begun = self.garden.beds[bed].begun
        return begun is not None and self.year_of(begun) <= year

    def first_day(self, planting: Planting) -> date | None:
        """The first day anything is known of it; None where only a year is known."""
        moments = (planting.start, planting.flowered, planting.first_picked, planting.cleared, planting.lost)
        known = [when.first for when in moments if when]
        known += [self.garden.event_by_id[e].when.first for e in planting.events[:1]]
        return min(known, default=planting.ended_on)

    def _years(self, planting: Planting) -> tuple[int, ...]:
        if planting.origin == "year only" and planting.year is not None:
            return (planting.year,)
        first = self.first_day(planting)
        if first is None:
            return (planting.year if planting.year is not None else self.this_year,)
        begun = self.year_of(first)
        last = planting.ended_on or self.garden.on
        years = range(begun, max(begun, self.year_of(last)) + 1)
        return tuple(year for year in years if year not in self.garden.hidden_years) or (begun,)

    def _years_in(self, bed: str, planting: Planting) -> tuple[int, ...]:
        """The seasons it stood in one of its beds: a bed that began or ended meanwhile holds it no longer.

        The season in which a bed was given another name is told under the new one.
        """
        known = self.garden.beds.get(bed)
        years = self.years_of[planting.id]
        if known is None or len(planting.beds) < 2:
            return years
        first = self.year_of(known.begun) if known.begun else years[0]
        last = self.year_of(known.ended - timedelta(days=1)) if known.ended else years[-1]
        home = years[:1] if self.home_bed(planting) == bed else ()
        now = self._renamed_to(bed, planting)
        stood = (y for y in years if first <= y <= last and not (now and self._is_begun(now, y)))
        return tuple(sorted({*home, *stood}))

    @cached_property
    def events_by_entry(self) -> Mapping[str, Sequence[Event]]:
        """What a note tells, in the order of its days."""
        return grouped((event.entry, event) for event in self.garden.events)

    @cached_property
    def group_events(self) -> Mapping[str, Sequence[Event]]:
        """What was done to several batches together and to none of them alone."""
        return grouped((e.group, e) for e in self.garden.events if e.group and not e.plantings)

    @cached_property
    def bed_events(self) -> Mapping[tuple[str, int], Sequence[Event]]:
        """What was done to a bed in a season, and to no planting in it."""
        alone = (
            e
            for e in self.garden.events
            if not (e.plantings and e.crops) and not (e.group and not e.plantings)
        )
        return grouped(((bed, self.year_of(e.when.first)), e) for e in alone for bed in e.beds)

    @cached_property
    def entries_by_bed(self) -> Mapping[str, Sequence[Entry]]:
        """Notes about a bed."""
        return grouped((bed, entry) for entry in self.garden.entries for bed in self.touched(entry)[0])

    @cached_property
    def entries_by_crop(self) -> Mapping[str, Sequence[Entry]]:
        """Notes about a crop."""
        return grouped((crop, entry) for entry in self.garden.entries for crop in self.touched(entry)[1])

    @cached_property
    def entries_by_year(self) -> Mapping[int, Sequence[Entry]]:
        """Notes of a season."""
        return grouped((self.year_of(e.when.first), e) for e in self.garden.entries if e.when)

    @cached_property
    def entries_by_day(self) -> Mapping[int, Sequence[Entry]]:
        """Notes of a day of the calendar, in any year."""
        return grouped(
            (day_of_year(e.when.first), e) for e in self.garden.entries if e.when and e.when.is_exact
        )

    @cached_property
    def undated(self) -> Sequence[Entry]:
        """Notes without a date."""
        return [entry for entry in self.garden.entries if entry.when is None]

    @cached_property
    def group_pickings(self) -> Mapping[str, Sequence[Picking]]:
        """What was picked from several batches together."""
        return grouped((p.group, p) for p in self.garden.pickings if p.group and p.planting is None)

    @cached_property
    def pickings_by_crop(self) -> Mapping[str, Sequence[Picking]]:
        """What was picked of a crop."""
        return grouped((crop, p) for p in self.garden.pickings for crop in dict.fromkeys(p.crops))

    @cached_property
    def pickings_by_year(self) -> Mapping[int, Sequence[Picking]]:
        """What was picked in a season."""
        return grouped((self.year_of(p.when.first), p) for p in self.garden.pickings)

    def touched(self, entry: Entry) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The beds and crops a note is about, in the order it names them."""
        if entry.id not in self._touched:
            self._touched[entry.id] = self._touched_by(entry)
        return self._touched[entry.id]

    def families_in(self, planting: Planting) -> tuple[str, ...]:
        """The botanical families of a planting, each once; a crop whose family is not known gives none."""
        if planting.crops not in self._families:
            crops = (self.garden.crops.get(key) for key in planting.crops)
            found = dict.fromkeys(crop.family for crop in crops if crop and crop.family)
            self._families[planting.crops] = tuple(found)
        return self._families[planting.crops]

    def _touched_by(self, entry: Entry) -> tuple[tuple[str, ...], tuple[str, ...]]:
        garden = self.garden
        beds: dict[str, None] = {}
        crops: dict[str, None] = {}
        for event in self.events_by_entry.get(entry.id, ()):
            beds.update(dict.fromkeys(event.beds))
            crops.update(dict.fromkeys(event.crops))
        beds.update((named.key, None) for named in entry.beds)
        crops.update((named.key, None) for named in entry.crops)
        return tuple(b for b in beds if b in garden.beds), tuple(c for c in crops if c in garden.crops)


def grouped(pairs: Iterable[tuple[K, V]]) -> Mapping[K, Sequence[V]]:
    """Values by key, in their own order."""
    found: defaultdict[K, list[V]] = defaultdict(list)
    for key, value in pairs:
        found[key].append(value)
    return dict(found)


def day_of_year(day: date) -> int:
    """Month and day as one number; 29 February keeps its own."""
    return day.month * 100 + day.day


def _beds_of(planting: Planting) -> Iterable[str]:
    return dict.fromkeys((*planting.beds, planting.bed, planting.bed_now))
