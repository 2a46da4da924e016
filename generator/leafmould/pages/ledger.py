"""The garden's past, what was reckoned, and the page everything stands on: what all pages ask.

Made before any page; page makers look things up here and never search the whole garden. What is asked of
the garden alone is answered by `garden.queries`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property, wraps
from typing import Any, Protocol, TypeVar

from leafmould.facts.tables import FamilyFact, Source
from leafmould.garden.album import Album
from leafmould.garden.model import Entry, Garden, Picking, Planting
from leafmould.garden.queries import Past
from leafmould.pages import addresses
from leafmould.pages.chapters import Chapter, chapters
from leafmould.pages.page import Link
from leafmould.reckon.amounts import Amounts
from leafmould.reckon.badges import Badge
from leafmould.reckon.coming_up import ComingUp
from leafmould.reckon.daylight import ShortDays
from leafmould.reckon.forecast import Forecast
from leafmould.reckon.heat_needs import HeatNeed
from leafmould.reckon.here import Turned
from leafmould.reckon.known import KnownLine
from leafmould.reckon.next_in_bed import Verdict, parts_where_fine, verdicts
from leafmould.reckon.rotation import Occupancy
from leafmould.reckon.season_here import FrostLine
from leafmould.reckon.season_told import Seasons
from leafmould.reckon.seed_tin import Lot, lots_by_crop
from leafmould.reckon.warmth import Warmth
from leafmould.reckon.windows import Window
from leafmould.values.names import slug
from leafmould.values.problems import Problem
from leafmould.values.when import When

MOST_CELL_ROWS = 2400
"""Rows in the cells of one table of beds and years; about 100 bytes each."""
MOST_PICKINGS = 500
"""Pickings listed on the page of a season; about 90 bytes each."""

MOST_PLATES = 4
"""Pictures shown of one season of a bed; the notes have them all."""

ROWS_OF_A_PLATE = 3
"""How many rows a picture's place in a page weighs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reckoned:
    """What was reckoned and looked up for a garden, keyed for its pages."""

    forecasts: Mapping[str, Forecast]  # by planting id; missing: nothing can be said
    badges: Mapping[str, tuple[Badge, ...]]  # by planting id
    families: Mapping[str, FamilyFact]  # by botanical name
    sources: Mapping[str, Source]  # by id
    known: Mapping[str, tuple[KnownLine, ...]]  # by crop key: published figures beside the garden's own
    windows: Mapping[str, tuple[Window, ...]]  # by crop key: when to sow, for the coming season
    turned_out: tuple[Turned, ...]  # expectations of plantings that were picked, in the garden's order
    frosts: tuple[FrostLine, ...]  # both turns of the season
    dark: ShortDays | None  # this winter's days under ten hours
    dark_by_month: tuple[int, ...] = ()  # weeks under ten hours, January first
    cover: str = ""  # what covers gain, in words
    windows_now: Mapping[str, tuple[Window, ...]] = field(default_factory=dict)  # the same for this season
    uses_record: bool = True  # the garden's own record is weighed in
    uses_warmth: bool = False  # what is started outside of spring is slowed by the usual warmth
    coming_up: Mapping[str, ComingUp] = field(default_factory=dict)  # by planting id: not seen up yet
    amounts: Mapping[str, Amounts] = field(default_factory=dict)  # by crop key: what goes into each bed
    own_words: Mapping[str, tuple[str, ...]] = field(
        default_factory=dict
    )  # by crop key: what crops.yaml says
    warmth: Warmth = field(default_factory=lambda: Warmth((), ()))
    heat: Mapping[str, HeatNeed] = field(default_factory=dict)  # by planting id: what published heat sums say
    tin: tuple[Lot, ...] = ()  # the seed tin, by crop and variety


WALK_NAME = "walk"
"""What the page under pages/ is called that holds the garden walk."""

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


class Ledger(Past):
    """A garden's past with what was reckoned of it and where everything stands."""

    def __init__(
        self,
        garden: Garden,
        reckoned: Reckoned,
        *,
        household: bool,
        problems: tuple[Problem, ...],
        open_problems: bool = False,
    ) -> None:
        super().__init__(garden)
        self.reckoned = reckoned
        self.household = household
        self.shows_problems = household or open_problems
        self.problems = problems if self.shows_problems else ()
        self.bed_pages = addresses.bed_addresses(garden.beds)
        self.crop_pages = addresses.crop_addresses(garden.crops)
        self.note_pages = addresses.note_addresses(e.id for e in garden.entries)
        self._place_free_pages()
        self.occupancy = Occupancy(garden)
        self.made: defaultdict[Callable[..., object], dict[str, Any]] = defaultdict(dict)  # kept by `once`
        self.bed_links = {
            key: Link(text=bed.name, to=self.bed_pages[key]) for key, bed in garden.beds.items()
        }
        self.crop_links = {
            key: Link(text=crop.name, to=self.crop_pages[key]) for key, crop in garden.crops.items()
        }
        self._place_plantings()

    @cached_property
    def next_in_beds(self) -> Mapping[tuple[str, str], Verdict]:
        """By bed and family: whether the family may come next season."""
        return verdicts(self.garden, self.this_year + 1, year_of=self.year_of)

    @cached_property
    def fine_parts(self) -> Mapping[tuple[str, str], tuple[str, ...]]:
        """By bed and family: the parts where it may come next season, though not in the whole bed."""
        return parts_where_fine(self.garden, self.next_in_beds, year_of=self.year_of)

    @cached_property
    def lots(self) -> Mapping[str, tuple[Lot, ...]]:
        """By crop, the packets of seed there are."""
        return lots_by_crop(lot for lot in self.reckoned.tin if lot.judged.standing != "used up")

    @cached_property
    def varieties_by_crop(self) -> Mapping[str, frozenset[str]]:
        """The varieties noted of each crop."""
        return {
            crop: frozenset(v for p in plantings for v in p.varieties)
            for crop, plantings in self.plantings_by_crop.items()
        }

    @cached_property
    def seasons_told(self) -> Seasons:
        """Firsts, lasts, best and worst of every season."""
        return Seasons(self)

    @cached_property
    def album(self) -> Album:
        """The garden's pictures."""
        return Album(self)

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
            planting.id: f"{self.bed_years[self.home_bed(planting), self.home_year(planting)]}#{planting.id}"
            for planting in self.garden.plantings
        }

    def _place_free_pages(self) -> None:
        """Which page each of the gardener's own pages becomes: the walk, the words of a season, or one of its own."""
        by_name = {slug(page.id.lstrip("/")): page for page in reversed(self.garden.free_pages)}
        named = {slug(self.year_name(year).replace("/", " ")): year for year in self.years}
        self.walk = by_name.pop(WALK_NAME, None)
        self.season_words = {named[name]: by_name.pop(name) for name in list(by_name) if name in named}
        placed = {page.id for page in (self.walk, *self.season_words.values()) if page}
        free = (page.id for page in self.garden.free_pages if page.id not in placed)
        self.free_addresses = addresses.free_page_addresses(free)

    def _rows_by_bed(self) -> Mapping[str, Mapping[int, int]]:
        """About how many rows each season takes on the page of each bed."""
        rows: defaultdict[str, defaultdict[int, int]] = defaultdict(lambda: defaultdict(int))
        for (bed, year), plantings in self.plantings_by_bed_year.items():
            rows[bed][year] += 2 * len(plantings)
        for bed, plantings in self.plantings_by_bed.items():
            for planting in plantings:
                if self.home_bed(planting) == bed:
                    shared = self.group_events.get(planting.group or "", ())
                    lines = max(len(planting.events), len(planting.entries))
                    rows[bed][self.home_year(planting)] += 6 + lines + len(shared)
        for (bed, year), events in self.bed_events.items():
            rows[bed][year] += len(events)
        for (bed, year), photos in self.album.by_bed_year.items():
            rows[bed][year] += ROWS_OF_A_PLATE * min(len(photos), MOST_PLATES)
        for (bed, year), notes in self.remarks_by_bed_year.items():
            rows[bed][year] += len(notes)
        return rows

    @cached_property
    def remarks_by_bed_year(self) -> Mapping[tuple[str, int], list[Entry]]:
        """Notes about a bed that tell of nothing done there, nor of a planting, by season."""
        told = {(bed, event.entry) for event in self.garden.events for bed in event.beds}
        told |= {(bed, note) for p in self.garden.plantings for note in p.entries for bed in p.beds}
        found: defaultdict[tuple[str, int], list[Entry]] = defaultdict(list)
        for bed, entries in self.entries_by_bed.items():
            for entry in entries:
                if entry.when and (bed, entry.id) not in told:
                    found[bed, self.year_of(entry.when.first)].append(entry)
        return found

    def to_note(self, entry: str | None) -> str:
        """The page of a note, or of a page of the gardener's own; "" if it has none in this build."""
        if not entry:
            return ""
        return self.note_pages.get(entry) or self._to_free_page(entry)

    def _to_free_page(self, entry: str) -> str:
        if self.walk and entry == self.walk.id:
            return addresses.WALK
        opened = (self.to_season(year) for year, page in self.season_words.items() if page.id == entry)
        return self.free_addresses.get(entry, "") or next(opened, "")

    def to_bed_year(self, bed: str, year: int) -> str:
        """Where a season of a bed stands; "" where nothing is known of it."""
        page = self.bed_years.get((bed, year))
        return f"{page}#{year_anchor(self.year_name(year))}" if page else ""

    def to_crop(self, crop: str) -> str:
        """The page of a crop; "" if it has none."""
        return self.crop_pages.get(crop, "")

    @cached_property
    def frosts(self) -> Mapping[date, str]:
        """The notes in which a frost was written down, by its day."""
        noted = (e for e in self.garden.events if e.verb == "noted weather" and e.when.is_exact)
        return {event.when.first: event.entry for event in noted}

    def source_of(self, planting: Planting, when: When | None) -> str:
        """The note a planting's date was written in, as an address; its section where none is found."""
        if when is not None:
            for event in (self.garden.event_by_id[e] for e in planting.events):
                if event.when is when or event.when == when:
                    return self.to_note(event.entry)
        return self.to_note(planting.entries[0]) if planting.entries else self.sections[planting.id]

    @cached_property
    def year_tables(self) -> tuple[Chapter, ...]:
        """The tables of beds and years: one, or several of some years each where one would be too heavy."""
        beds = len(self.garden.beds)
        rows = {year: beds + 2 * len(self.plantings_by_year.get(year, ())) for year in self.years}
        return chapters(addresses.BED_YEARS, rows, self.year_name, MOST_CELL_ROWS)

    def lists_pickings(self, year: int) -> bool:
        """Whether a season's page lists every picking: as long as it can hold them."""
        return year in self.years and len(self.pickings_by_year.get(year, ())) <= MOST_PICKINGS

    def picked_anchor(self, crop: str) -> str:
        """The id of a crop's pickings on a season's page."""
        return f"picked-{crop}"

    def to_pickings(self, crop: str, year: int, pickings: Sequence[Picking]) -> str:
        """Where a crop's pickings of a season are told: one in its note, several in a list."""
        if len(pickings) == 1:
            return self.to_note(pickings[0].entry)
        if self.lists_pickings(year):
            return f"{self.to_season(year)}#{self.picked_anchor(crop)}"
        return addresses.by_date_address(self.year_name(year)) if pickings else ""

    def to_season(self, year: int) -> str:
        """The page of a season; "" for one before the record, in which only trees stood."""
        return addresses.season_address(self.year_name(year)) if year in self.years else ""


def year_anchor(name: str) -> str:
    """The id of a season on a page."""
    return f"year-{name.replace('/', '-')}"
