"""A season in a few words: its firsts and lasts, and the crops that did better or worse than in other seasons.

Only what was noted counts: days that are exact, weights that were weighed. A season that is not over yet can
be better than others, never worse. Pure.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from statistics import median

from leafmould.garden.frosts import is_frost
from leafmould.garden.indexes import grouped
from leafmould.garden.model import Event, Picking
from leafmould.garden.queries import Past
from leafmould.values.wording import counted

SOWINGS = frozenset({"sowed", "started"})
MOST_CROPS = 6
"""Crops whose first picking is compared with an earlier season's."""
WORTH_SAYING = 5
"""Days between two first pickings from which on it is said. Our own choice."""
FARTHEST = 60
"""Days from which on two first pickings are of different sowings, and not to be compared. Our own choice."""
MOST_RANKED = 3
"""Crops called best, and as many called worst."""
APART = 1.25
"""How many times the middle of the other seasons a harvest is, or the middle is of it, to be told. Our own choice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """Something that happened for the first or the last time in a season."""

    what: str  # "first sowing", "last frost of spring"
    day: date
    entry: str
    crops: tuple[str, ...] = ()  # keys
    beside: str = ""  # "12 days earlier than in 2025"


@dataclass(frozen=True, slots=True, kw_only=True)
class Harvest:
    """A crop that gave more, or less, than in any other season."""

    crop: str
    grams: float
    middle_g: float  # the middle of the other seasons
    seasons: int  # in which it was weighed, this one among them


class Seasons:
    """The seasons of one garden, its events and pickings sorted into them once."""

    def __init__(self, past: Past) -> None:
        """Take the garden's past; nothing is sorted yet."""
        self._past = past

    @cached_property
    def events(self) -> Mapping[int, Sequence[Event]]:
        """Events by season, in the order of their days."""
        return grouped((self._past.year_of(event.when.first), event) for event in self._past.garden.events)

    @cached_property
    def _picked(self) -> Mapping[str, Mapping[int, Sequence[Picking]]]:
        """Pickings by crop and season."""
        return {crop: self._past.picked_years(crop) for crop in self._past.garden.crops}

    @cached_property
    def _weights(self) -> Mapping[str, Mapping[int, float]]:
        """What each crop weighed in the seasons in which all its pickings were weighed [g]; none without."""
        return {
            crop: {
                year: grams
                for year, pickings in seasons.items()
                if (grams := _weight(crop, pickings)) is not None
            }
            for crop, seasons in self._picked.items()
        }

    def marks(self, year: int) -> tuple[Mark, ...]:
        """Firsts and lasts of a season, in the order of its days."""
        past, events = self._past, [e for e in self.events.get(year, ()) if e.when.is_exact]
        pickings = [p for p in past.pickings_by_year.get(year, ()) if p.when.is_exact and p.crops]
        found = [*_sowings(events), *_frosts(events, year, past), *_ends_of_picking(pickings, year, past)]
        return tuple(sorted(found, key=lambda mark: (mark.day, mark.what)))

    def first_pickings(self, year: int) -> tuple[Mark, ...]:
        """First pickings that came earlier or later than in the season before that had one: those most apart."""
        found = [mark for crop in self._picked if (mark := self._first_of(crop, year))]
        ranked = sorted(found, key=lambda pair: (-pair[0], pair[1].day, pair[1].crops))
        return tuple(mark for _, mark in ranked[:MOST_CROPS])

    def best(self, year: int) -> tuple[Harvest, ...]:
        """The crops that gave more than in any other season: those most beyond them, from A to Z."""
        found = (
            h for h, others in self._harvests(year) if h.grams > max(others) and h.grams >= APART * h.middle_g
        )
        return _ranked(found, lambda h: -h.grams / h.middle_g)

    def worst(self, year: int) -> tuple[Harvest, ...]:
        """The crops that gave less than in any other season, from A to Z; none while the season lasts."""
        if year >= self._past.this_year:
            return ()
        found = (
            h for h, others in self._harvests(year) if h.grams < min(others) and h.middle_g >= APART * h.grams
        )
        return _ranked(found, lambda h: h.grams / h.middle_g)

    def _harvests(self, year: int) -> Iterator[tuple[Harvest, list[float]]]:
        """Every crop weighed in this season and in two others, with the weights of those."""
        for crop, weights in self._weights.items():
            weighed = {y: g for y, g in weights.items() if y == year or y < self._past.this_year}
            others = [grams for season, grams in weighed.items() if season != year]
            if year in weighed and len(others) > 1:
                middle = float(median(others))
                yield (
                    Harvest(crop=crop, grams=weighed[year], middle_g=middle, seasons=len(weighed)),
                    others,
                )

    @cached_property
    def _firsts(self) -> Mapping[str, Mapping[int, Picking]]:
        """The first picking of each crop in each season, where its day is exact and it was that crop alone."""
        return {
            crop: {
                year: pickings[0]
                for year, pickings in seasons.items()
                if pickings[0].when.is_exact and pickings[0].crops == (crop,)
            }
            for crop, seasons in self._picked.items()
        }

    def _first_of(self, crop: str, year: int) -> tuple[int, Mark] | None:
        """The first picking of a crop, and how many days it lies from that of the season before that had one."""
        firsts, past = self._firsts[crop], self._past
        earlier = [season for season in firsts if season < year]
        if year not in firsts or not earlier:
            return None
        before = max(earlier)
        first = firsts[year]
        gone = _into(first.when.first, year, past) - _into(firsts[before].when.first, before, past)
        if not WORTH_SAYING <= abs(gone) <= FARTHEST:
            return None
        side = "later" if gone > 0 else "earlier"
        mark = Mark(
            what="first picked",
            day=first.when.first,
            entry=first.entry,
            crops=(crop,),
            beside=f"{counted(abs(gone), 'day')} {side} than in {past.year_name(before)}",
        )
        return abs(gone), mark


def _sowings(events: Iterable[Event]) -> Iterator[Mark]:
    sown = [event for event in events if event.verb in SOWINGS and event.crops]
    if sown:
        yield _mark("first sowing", sown[0])
    if sown and sown[-1].when != sown[0].when:
        yield _mark("last sowing", sown[-1])


def _frosts(events: Iterable[Event], year: int, past: Past) -> Iterator[Mark]:
    """The frosts on both sides of the summer. In the south a season holds its autumn last."""
    frosts = [event for event in events if is_frost(event) and event.when.day]
    spring = [event for event in frosts if (event.when.first.month <= 6) is not past.garden.is_southern]
    autumn = [event for event in frosts if event not in spring]
    if spring and not _is_spring_yet(year, past):
        yield _mark("last frost of spring", spring[-1])
    if autumn:
        yield _mark("first frost of autumn", autumn[0])


def _is_spring_yet(year: int, past: Past) -> bool:
    """Whether the season lasts, and a later frost may still come in its spring."""
    is_first_half = past.garden.on.month <= 6
    return year == past.this_year and is_first_half is not past.garden.is_southern


def _ends_of_picking(pickings: Sequence[Picking], year: int, past: Past) -> Iterator[Mark]:
    if pickings:
        yield _picked("first picking", pickings[0])
    if len(pickings) > 1 and pickings[-1].when != pickings[0].when and year < past.this_year:
        yield _picked("last picking", pickings[-1])


def _mark(what: str, event: Event) -> Mark:
    return Mark(what=what, day=event.when.first, entry=event.entry, crops=event.crops)


def _picked(what: str, picking: Picking) -> Mark:
    return Mark(what=what, day=picking.when.first, entry=picking.entry, crops=picking.crops)


def _into(day: date, year: int, past: Past) -> int:
    """Days since the season began, without the leap day."""
    begun = past.year_begins(year)
    leaps = sum(1 for y in {begun.year, day.year} if _is_leap(y) and begun <= date(y, 2, 29) < day)
    return (day - begun).days - leaps


def _is_leap(year: int) -> bool:
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def _weight(crop: str, pickings: Iterable[Picking]) -> float | None:
    """What a season's pickings of a crop weighed; None where any was not weighed, or shared with another crop."""
    grams = [p.grams if p.crops == (crop,) else None for p in pickings]
    known = [g for g in grams if g is not None]
    return sum(known) if known and len(known) == len(grams) and sum(known) > 0 else None


def _ranked(found: Iterable[Harvest], by: Callable[[Harvest], float]) -> tuple[Harvest, ...]:
    first = sorted(found, key=lambda h: (by(h), h.crop))[:MOST_RANKED]
    return tuple(sorted(first, key=lambda h: h.crop))
