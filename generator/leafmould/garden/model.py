"""The garden as the notes tell it: beds, crops, plantings, pickings, events.

Frozen values that point at each other by key; Garden holds the look-ups. Every date and amount keeps
the event or entry it came from, so a page can lead home to the note. What was inferred says so.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from leafmould.notes.entries import Action as Action
from leafmould.notes.entries import Entry as Entry
from leafmould.notes.entries import Fate as Fate
from leafmould.notes.entries import Named as Named
from leafmould.notes.entries import Words as Words
from leafmould.notes.setting_values import Plan as Plan
from leafmould.values.problems import Location, Problem
from leafmould.values.quantities import GRAMS, Amount
from leafmould.values.when import When

NOWHERE = "not noted"
"""The kind of the one stand-in bed that holds what was started without naming a place."""

Origin = Literal["started", "sown", "planted", "bought", "moved", "self-sown", "year only", "unknown"]


DatedBy = Literal["file name", "camera", "note"]
"""What tells a picture's day."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bed:
    """A place where things grow."""

    key: str  # unique and stable: folded name, words joined by "-"
    name: str
    also: tuple[str, ...] = ()
    kind: str = "bed"  # NOWHERE for what was sown or planted without a place
    area_m2: float | None = None
    size_written: str | None = None
    position_m: tuple[float, float] | None = None  # to the right and up from the plan's corner
    sides_m: tuple[float, float] | None = None  # to the right and up
    canopy_m: float | None = None  # how wide a crown is
    sun: str | None = None
    water: str | None = None
    soil: str | None = None
    parts: tuple[str, ...] = ()
    begun: date | None = None
    ended: date | None = None  # set too when a successor's `was` ends it
    came_from: tuple[str, ...] = ()  # bed keys
    became: tuple[str, ...] = ()  # bed keys
    is_declared: bool = True  # False: made from a note, with a hint
    at: Location | None = None
    extra: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Crop:
    """A kind of plant, under the gardener's own word."""

    key: str
    name: str  # the word the notes use most; never with a comma
    family: str | None  # botanical; None: not known
    grown_as: Literal["annual", "overwintered", "biennial", "perennial"]
    is_tender: bool  # killed by a first frost
    is_known: bool = True  # False: in no table
    group: str | None = None  # "bean", where the notes do not say which
    like: str | None = None  # key of the published crop that crops.yaml says an own one is like
    is_lifted: bool = False  # a bulb or tuber: out of the ground once it is picked


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """One action, matched to the garden."""

    id: str  # entry id and a number: "2026/06-20-long-border:3"
    verb: str
    when: When
    entry: str
    action: Action
    beds: tuple[str, ...] = ()
    part: str | None = None
    crops: tuple[str, ...] = ()
    varieties: tuple[str, ...] = ()
    plantings: tuple[str, ...] = ()  # planting ids it reached
    group: str | None = None  # where it belongs to several batches together
    inferred: tuple[str, ...] = ()  # what was filled in, and from what, in words


@dataclass(frozen=True, slots=True, kw_only=True)
class Picking:
    """One picking, as the gardener noted it."""

    id: str  # the event's id
    when: When
    crops: tuple[str, ...]
    varieties: tuple[str, ...]
    bed: str | None
    planting: str | None  # None: one of several, or nowhere to put it
    group: str | None
    amounts: tuple[Amount, ...]
    fates: tuple[Fate, ...]
    entry: str
    at: Location

    @property
    def grams(self) -> float | None:
        """Weight [g]: all that was weighed, else by the garden's own measure; None where neither is known."""
        weighed = [a.grams for a in self.amounts if a.unit in GRAMS and a.grams is not None]
        measured = (a.grams for a in self.amounts if a.grams is not None)
        return sum(weighed) if weighed else next(measured, None)

    @property
    def is_estimated(self) -> bool:
        """Whether the weight is a guess."""
        weighed = [a for a in self.amounts if a.unit in GRAMS and a.grams is not None]
        return any(a.is_estimated for a in weighed or self.amounts if a.grams is not None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Season:
    """One picking season of a perennial; turns on 1 July in the south."""

    name: str  # "2026", or "2026/27" in the south
    first_picked: When | None
    last_picked: When | None
    picked_g: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Planting:
    """One crop and variety in one bed or part, from start to end."""

    id: str
    bed: str  # bed key at its start
    bed_now: str
    beds: tuple[str, ...]  # all the beds it stood in, in order
    part: str | None = None
    crops: tuple[str, ...] = ()  # crop keys; empty: the crop is not known
    words: tuple[str, ...] = ()  # the gardener's own word for each crop here
    varieties: tuple[str, ...] = ()
    is_doubtful: bool = False  # crop or variety in doubt ("Krim or Cherokee")
    origin: Origin = "unknown"
    number: int | None = None  # plants or seeds standing, as far as written
    number_estimated: bool = False
    started: When | None = None  # indoors or under glass
    started_between: tuple[date, date] | None = None
    sown: When | None = None
    planted: When | None = None
    moved: When | None = None  # last set from one bed into another
    found: When | None = None  # self-sown plants seen
    came_up: When | None = None
    flowered: When | None = None
    first_picked: When | None = None
    last_picked: When | None = None
    cleared: When | None = None
    lost: When | None = None
    ended_on: date | None = None
    end_basis: str | None = None  # in words: "cleared", "lost to slugs", "presumed over: …"
    end_is_estimated: bool = False
    year: int | None = None  # known by year only, or a start known no better
    is_perennial: bool = False
    is_under_cover: bool = False
    raised_in: str | None = None
    source: str | None = None  # who sold or gave the seed or plants, as written
    parent: str | None = None  # planting id it was split from
    group: str | None = None  # id shared by batches of one crop and variety in one bed
    pickings: tuple[str, ...] = ()  # ids
    events: tuple[str, ...] = ()  # ids, in order
    entries: tuple[str, ...] = ()  # entry ids
    seasons: tuple[Season, ...] = ()
    picked: tuple[Amount, ...] = ()  # totals, one per unit that can be added
    picked_g: float | None = None
    picked_estimated: bool = False

    @property
    def start(self) -> When | None:
        """When it began in this bed or before: the earliest of what is known."""
        known = [w for w in (self.started, self.sown, self.planted, self.found) if w]
        return min(known, key=lambda w: (w.first, w.last)) if known else None

    @property
    def in_bed_from(self) -> When | None:
        """When it took its place in the bed: of what was split off another planting, when it was moved."""
        if self.origin == "moved" and self.moved:
            return self.moved
        return self.planted or self.sown or self.found or self.started

    @property
    def is_open(self) -> bool:
        """Whether it still stands, as far as is known."""
        return self.ended_on is None and self.origin != "year only"


@dataclass(frozen=True, slots=True, kw_only=True)
class Photo:
    """A picture in a note, and what it is of; or the line of text that stands in its place."""

    name: str  # as the note has it
    path: str  # inside the garden folder; "" where nothing was found
    entry: str
    is_in_text: bool = False  # stands where the note's text names it
    when: When | None = None
    dated_by: DatedBy = "note"
    caption: str = ""  # the gardener's own words
    beds: tuple[str, ...] = ()
    crops: tuple[str, ...] = ()
    sizes: tuple[tuple[int, int], ...] = ()  # upright, smallest first [px]; none: it cannot be shown
    key: str = ""  # names its files in the site; "": they are not made


@dataclass(frozen=True, slots=True, kw_only=True)
class Garden:
    """Everything the notes say, as of one day."""

    name: str
    on: date  # "today": an input, never the clock
    people: int | None
    units: str
    is_southern: bool
    beds: Mapping[str, Bed]
    crops: Mapping[str, Crop]
    plantings: tuple[Planting, ...]  # by start, then id
    pickings: tuple[Picking, ...]  # by date, then id
    events: tuple[Event, ...]  # by date, then id
    entries: tuple[Entry, ...]  # by date, then id
    problems: tuple[Problem, ...] = ()
    photos: tuple[Photo, ...] = ()  # by date, then entry, as they stand there
    free_pages: tuple[Entry, ...] = ()  # the gardener's own pages, by path; nothing is reckoned from them
    planting_by_id: Mapping[str, Planting] = field(default_factory=dict)
    picking_by_id: Mapping[str, Picking] = field(default_factory=dict)
    event_by_id: Mapping[str, Event] = field(default_factory=dict)
    entry_by_id: Mapping[str, Entry] = field(default_factory=dict)
    plantings_by_group: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    plan: Plan = field(default_factory=Plan)  # the ground the beds lie on
    address: str = ""  # where the site is put online, as garden.yaml says
    hidden_years: frozenset[int] = frozenset()  # left out of this build: no page names them
