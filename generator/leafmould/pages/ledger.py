"""The garden and what was reckoned, indexed once for all pages.

Built in one pass before any page; page makers look things up here and never search the whole garden.
Knows which page everything stands on, so that no page has to ask another.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property, wraps
from typing import Any, Protocol, TypeVar

from leafmould.facts.tables import FamilyFact, Source
from leafmould.garden.model import Entry, Event, Garden, Picking, Planting
from leafmould.pages import addresses
from leafmould.pages.chapters import Chapter, chapters
from leafmould.pages.page import Link
from leafmould.reckon.badges import Badge
from leafmould.reckon.forecast import Forecast
from leafmould.reckon.rotation import Occupancy
from leafmould.values.problems import Problem
from leafmould.values.when import When

MOST_CELL_ROWS = 2400
"""Rows in the cells of one table of beds and years; about 100 bytes each."""


DAYS_BACK, DAYS_ON = 3, 7
"""How far "this week in earlier years" looks back and on: what comes next matters more than what was."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reckoned:
    """What was reckoned and looked up for a garden, keyed for its pages."""

    forecasts: Mapping[str, Forecast]  # by planting id; missing: nothing can be said
    badges: Mapping[str, tuple[Badge, ...]]  # by planting id
    families: Mapping[str, FamilyFact]  # by botanical name
    sources: Mapping[str, Source]  # by id


T = TypeVar("T", bound="Told")
R = TypeVar("R")


class Told(Protocol):
    """Something with an id of its own: a note, a planting."""

    @property
    def id(self) -> str: ...


def once(make: Callable[[T, Ledger], R]) -> Callable[[T, Ledger], R]:
    """Let what is said of a note or planting on several pages be made once for all of them."""

    @wraps(make)
    def made_once(thing: T, ledger: Ledger) -> R:
        made: dict[str, R] = ledger.made[make]
        key = thing.id
        if key not in made:
            made[key] = make(thing, ledger)
        return made[key]

    return made_once


class Ledger:
    """Look-ups over one garden; everything in them is in the garden's own order."""

    def __init__(
        self,
        garden: Garden,
        reckoned: Reckoned,
        *,
        household: bool,
        problems: tuple[Problem, ...],
        open_problems: bool = False,
    ) -> None:
        self.garden = garden
        self.reckoned = reckoned
        self.household = household
        self.shows_problems = household or open_problems
        self.problems = problems if self.shows_problems else ()
        self.bed_pages = addresses.bed_addresses(garden.beds)
        self.crop_pages = addresses.crop_addresses(garden.crops)
        self.note_pages = addresses.note_addresses(e.id for e in garden.entries)
        self.occupancy = Occupancy(garden)
        self._touched: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {}
        self.made: defaultdict[Callable[..., object], dict[str, Any]] = defaultdict(dict)  # kept by `once`
        self.bed_links = {
            key: Link(text=bed.name, to=self.bed_pages[key]) for key, bed in garden.beds.items()
        }
        self.crop_links = {
            key: Link(text=crop.name, to=self.crop_pages[key]) for key, crop in garden.crops.items()
        }
        self._index_events()
        self._index_plantings()
        self._index_entries()
        self._index_pickings()
        self._place_plantings()

    def _index_events(self) -> None:
        by_entry: defaultdict[str, list[Event]] = defaultdict(list)
        by_bed_alone: defaultdict[tuple[str, int], list[Event]] = defaultdict(list)
        by_group: defaultdict[str, list[Event]] = defaultdict(list)
        for event in self.garden.events:
            by_entry[event.entry].append(event)
            if event.group and not event.plantings:
                by_group[event.group].append(event)
            elif not event.plantings or not event.crops:
                for bed in event.beds:
                    by_bed_alone[bed, self.year_of(event.when.first)].append(event)
        self.group_events: Mapping[str, list[Event]] = by_group
        self.events_by_entry: Mapping[str, list[Event]] = by_entry
        self.bed_events: Mapping[tuple[str, int], list[Event]] = by_bed_alone

    def _index_plantings(self) -> None:
        by_bed: defaultdict[str, list[Planting]] = defaultdict(list)
        by_bed_year: defaultdict[tuple[str, int], list[Planting]] = defaultdict(list)
        by_crop: defaultdict[str, list[Planting]] = defaultdict(list)
        by_year: defaultdict[int, list[Planting]] = defaultdict(list)
        self.years_of: dict[str, tuple[int, ...]] = {}
        for planting in self.garden.plantings:
            self.years_of[planting.id] = self._years(planting)
            for bed in dict.fromkeys((*planting.beds, planting.bed, planting.bed_now)):
                by_bed[bed].append(planting)
                for year in self._years_in(bed, planting):
                    by_bed_year[bed, year].append(planting)
            for crop in dict.fromkeys(planting.crops):
                by_crop[crop].append(planting)
            for year in self.years_of[planting.id]:
                by_year[year].append(planting)
        self.plantings_by_bed_year: Mapping[tuple[str, int], list[Planting]] = by_bed_year
        self.plantings_by_bed: Mapping[str, list[Planting]] = by_bed
        self.plantings_by_crop: Mapping[str, list[Planting]] = by_crop
        self.plantings_by_year: Mapping[int, list[Planting]] = by_year
        self.varieties_by_crop = {
            crop: frozenset(v for p in plantings for v in p.varieties) for crop, plantings in by_crop.items()
        }

    def _index_entries(self) -> None:
        by_bed: defaultdict[str, list[Entry]] = defaultdict(list)
        by_crop: defaultdict[str, list[Entry]] = defaultdict(list)
        by_year: defaultdict[int, list[Entry]] = defaultdict(list)
        by_day: defaultdict[int, list[Entry]] = defaultdict(list)
        for entry in self.garden.entries:
            beds, crops = self.touched(entry)
            for bed in beds:
                by_bed[bed].append(entry)
            for crop in crops:
                by_crop[crop].append(entry)
            if entry.when is None:
                continue
            by_year[self.year_of(entry.when.first)].append(entry)
            if entry.when.is_exact:
                by_day[_day_of_year(entry.when.first)].append(entry)
        self.entries_by_bed: Mapping[str, list[Entry]] = by_bed
        self.entries_by_crop: Mapping[str, list[Entry]] = by_crop
        self.entries_by_year: Mapping[int, list[Entry]] = by_year
        self.entries_by_day: Mapping[int, list[Entry]] = by_day
        self.entries_with_lessons = [e for e in self.garden.entries if e.lesson]
        self.undated = [e for e in self.garden.entries if e.when is None]

    def _index_pickings(self) -> None:
        by_crop: defaultdict[str, list[Picking]] = defaultdict(list)
        by_year: defaultdict[int, list[Picking]] = defaultdict(list)
        by_group: defaultdict[str, list[Picking]] = defaultdict(list)
        for picking in self.garden.pickings:
            by_year[self.year_of(picking.when.first)].append(picking)
            if picking.group and picking.planting is None:
                by_group[picking.group].append(picking)
            for crop in dict.fromkeys(picking.crops):
                by_crop[crop].append(picking)
        self.group_pickings: Mapping[str, list[Picking]] = by_group
        self.pickings_by_crop: Mapping[str, list[Picking]] = by_crop
        self.pickings_by_year: Mapping[int, list[Picking]] = by_year

    def _place_plantings(self) -> None:
        """Which page each planting's section stands on; long histories are split by years."""
        rows = self._rows_by_bed()
        self.bed_chapters = {
            bed: chapters(page, rows[bed], self.year_name) for bed, page in self.bed_pages.items()
        }
        self.bed_years = {
            (bed, year): chapter.address
            for bed, found in self.bed_chapters.items()
            for chapter in found
            for year in chapter.years
        }
        self.sections = {
            planting.id: f"{self.bed_years[planting.bed, self.home_year(planting)]}#{planting.id}"
            for planting in self.garden.plantings
        }

    def _rows_by_bed(self) -> Mapping[str, Mapping[int, int]]:
        """About how many rows each season takes on the page of each bed."""
        rows: defaultdict[str, defaultdict[int, int]] = defaultdict(lambda: defaultdict(int))
        for (bed, year), plantings in self.plantings_by_bed_year.items():
            rows[bed][year] += 2 * len(plantings)
        for bed, plantings in self.plantings_by_bed.items():
            for planting in plantings:
                if planting.bed == bed:
                    shared = self.group_events.get(planting.group or "", ())
                    rows[bed][self.home_year(planting)] += 6 + len(planting.events) + len(shared)
        for (bed, year), events in self.bed_events.items():
            rows[bed][year] += len(events)
        return rows

    def touched(self, entry: Entry) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The beds and crops a note is about, in the order it names them."""
        if entry.id not in self._touched:
            self._touched[entry.id] = self._touched_by(entry)
        return self._touched[entry.id]

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

    def year_of(self, day: date) -> int:
        """The season a day falls in, by the year it begins in; it turns on 1 July in the south."""
        return day.year - 1 if self.garden.is_southern and day.month < 7 else day.year

    def year_name(self, year: int) -> str:
        """How a season is written: "2026", or "2026/27" in the south."""
        return f"{year}/{(year + 1) % 100:02}" if self.garden.is_southern else str(year)

    def year_begins(self, year: int) -> date:
        """The first day of a season."""
        return date(year, 7 if self.garden.is_southern else 1, 1)

    def year_ends(self, year: int) -> date:
        """The last day of a season."""
        return self.year_begins(year + 1) - timedelta(days=1)

    @property
    def this_year(self) -> int:
        """The season of the garden's day."""
        return self.year_of(self.garden.on)

    def first_day(self, planting: Planting) -> date | None:
        """The first day anything is known of it; None where only a year is known."""
        moments = (planting.start, planting.flowered, planting.first_picked, planting.cleared, planting.lost)
        known = [when.first for when in moments if when]
        known += [self.garden.event_by_id[e].when.first for e in planting.events[:1]]
        return min(known, default=planting.ended_on)

    def home_year(self, planting: Planting) -> int:
        """The season its section stands under: the one it began in."""
        return self.years_of[planting.id][0]

    def _years_in(self, bed: str, planting: Planting) -> tuple[int, ...]:
        """The seasons it stood in one of its beds: a bed that began or ended meanwhile holds it no longer."""
        known = self.garden.beds.get(bed)
        years = self.years_of[planting.id]
        if known is None or len(planting.beds) < 2:
            return years
        first = self.year_of(known.begun) if known.begun else years[0]
        last = self.year_of(known.ended - timedelta(days=1)) if known.ended else years[-1]
        home = years[:1] if planting.bed == bed else ()
        return tuple(sorted({*home, *(year for year in years if first <= year <= last)}))

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

    def to_note(self, entry: str | None) -> str:
        """The page of a note; "" if it has none in this build."""
        return self.note_pages.get(entry, "") if entry else ""

    def to_bed_year(self, bed: str, year: int) -> str:
        """Where a season of a bed stands; "" where nothing is known of it."""
        page = self.bed_years.get((bed, year))
        return f"{page}#{year_anchor(self.year_name(year))}" if page else ""

    def to_crop(self, crop: str) -> str:
        """The page of a crop; "" if it has none."""
        return self.crop_pages.get(crop, "")

    def source_of(self, planting: Planting, when: When | None) -> str:
        """The note a planting's date was written in, as an address; its section where none is found."""
        if when is not None:
            for event in (self.garden.event_by_id[e] for e in planting.events):
                if event.when is when or event.when == when:
                    return self.to_note(event.entry)
        return self.to_note(planting.entries[0]) if planting.entries else self.sections[planting.id]

    def this_week_before(self) -> list[Entry]:
        """Notes of earlier years from the days around the garden's day, by calendar days."""
        on = self.garden.on
        days = dict.fromkeys(
            _day_of_year(on + timedelta(days=shift)) for shift in range(-DAYS_BACK, DAYS_ON + 1)
        )
        if {228, 301} <= days.keys():
            days[229] = None  # a leap day belongs to the week around it in every year
        found = [e for day in sorted(days) for e in self.entries_by_day.get(day, ())]
        return sorted((e for e in found if e.when and e.when.first < on - timedelta(days=180)), key=_by_day)

    @cached_property
    def years(self) -> tuple[int, ...]:
        """All seasons from the first record to the garden's day, newest first, quiet ones too.

        A tree planted long before the notes began does not stretch them.
        """
        begun = {self.home_year(p) for p in self.garden.plantings if not p.is_perennial}
        known = [*begun, *self.entries_by_year, self.this_year]
        return tuple(
            year for year in range(max(known), min(known) - 1, -1) if year not in self.hidden_seasons
        )

    @cached_property
    def hidden_seasons(self) -> frozenset[int]:
        """Seasons of years that are left out: no page names them. One in the south may lie half in another year."""
        return self.garden.hidden_years - self.entries_by_year.keys()

    @cached_property
    def year_tables(self) -> tuple[Chapter, ...]:
        """The tables of beds and years: one, or several of some years each where one would be too heavy."""
        beds = len(self.garden.beds)
        rows = {year: beds + 2 * len(self.plantings_by_year.get(year, ())) for year in self.years}
        return chapters(addresses.BED_YEARS, rows, self.year_name, MOST_CELL_ROWS)

    def to_season(self, year: int) -> str:
        """The page of a season; "" for one before the record, in which only trees stood."""
        return addresses.season_address(self.year_name(year)) if year in self.years else ""


def _day_of_year(day: date) -> int:
    """Month and day as one number; 29 February keeps its own."""
    return day.month * 100 + day.day


def year_anchor(name: str) -> str:
    """The id of a season on a page."""
    return f"year-{name.replace('/', '-')}"


def _by_day(entry: Entry) -> tuple[date, str]:
    return (entry.when.first if entry.when else date.min, entry.id)
