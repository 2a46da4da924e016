"""How many plants fit into a bed, and how much seed they want.

Rows run along a bed as close as the published distances (or the packet's, in crops.yaml) allow, the first half a
distance from the edge. Seed is what the plants want if as much of it comes up as came up here on trial, or as must
come up of seed for sale; what others sow in a row is told beside it, since small seed is sown thick and thinned.
Pure.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor
from operator import itemgetter
from statistics import median_low

from leafmould.facts.published import Fact, published
from leafmould.garden.model import Bed, Garden
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.known_words import figure_words, range_words
from leafmould.reckon.next_in_bed import rotating_beds
from leafmould.reckon.seed_life import Trial, least_share
from leafmould.reckon.seed_tin import Lot

NO_ROWS = frozenset({"container"})
"""Kinds of place that are not sown in rows."""
ROUGHLY = 100
"""From here on counts are told to the nearest ten: nobody counts out 437 carrots."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """What goes into one bed, if it is filled with the crop."""

    bed: str  # bed key
    rows: int
    row_m: float
    plants: tuple[int, int]  # at the widest and the closest
    seeds: tuple[int, int] | None  # None: not grown from seed
    grams: tuple[float, float] | None  # None: nobody says how many seeds a gram has
    sown_g: tuple[float, float] | None  # as others sow it in rows


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """The distances and shares that were taken, and what follows for each bed."""

    apart: str  # "5–8 cm"
    between: str  # "30 cm"; "" where the rows are as far apart as the plants
    is_own: bool  # the distances are those of crops.yaml
    share: str  # "9 of 10 came up in 2024"; "" for what is not grown from seed
    rooms: tuple[Room, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Distances:
    apart: tuple[float, float]  # closest and widest in the row [cm]
    between: float  # the closest rows [cm]
    apart_words: str
    between_words: str
    is_own: bool
    sources: tuple[str, ...]


def amounts(crop: str, garden: Garden, almanac: Almanac, lots: Sequence[Lot]) -> Amounts | None:
    """What of a crop goes into each bed whose sides are known; None for what stays for years or has no distances.

    Args:
        lots: the packets of the crop in the tin; the latest trial of any tells how much comes up.
    """
    fact = almanac.fact(crop)
    if fact is None or fact.grown_as == "perennial":
        return None
    distances = _distances(crop, fact.key, almanac)
    if distances is None:
        return None
    share, words, legal = _share(fact.key, lots)
    is_seed = fact.starts_as != "sets"
    per_gram, rate = _per_gram(fact.key), _rate(fact.key) if fact.starts_as == "seed" else None
    rooms = tuple(
        _room(bed, sides, distances, share if is_seed else None, per_gram, rate)
        for bed in rotating_beds(garden)
        if bed.kind not in NO_ROWS and (sides := almanac.sides_by_bed.get(bed.key))
    )
    if not rooms:
        return None
    sources = (*distances.sources, *(legal if is_seed else ()), *_of(fact.key, "seeds in a gram", is_seed))
    return Amounts(
        apart=distances.apart_words,
        between=distances.between_words,
        is_own=distances.is_own,
        share=words if is_seed else "",
        rooms=rooms,
        sources=tuple(dict.fromkeys((*sources, *_of(fact.key, "seed for 10 m", bool(rate))))),
    )


def enough_for(lot: Lot) -> tuple[int, int] | None:
    """How many plants the seed of a packet should give, at the fewest and the most; None where it is not counted."""
    seeds = lot.left.seeds if lot.left else lot.row.seeds if lot.row else None
    grams = lot.left.grams if lot.left else lot.row.grams if lot.row else None
    share = lot.trials[-1].share if lot.trials else least_share(lot.crop)
    if seeds:
        plants = int(seeds * share)
        return plants, plants
    per_gram = _per_gram(lot.crop)
    if not grams or per_gram is None:
        return None
    fewest, most = (int(grams * count * share) for count in per_gram)
    return rounded(fewest), rounded(most)


def rounded(count: int) -> int:
    """A count as one says it: from a hundred up to the nearest ten."""
    return count if count < ROUGHLY else round(count, -1)


def _distances(crop: str, key: str, almanac: Almanac) -> _Distances | None:
    """The packet's distances, else the published ones; in the row both ends, between rows the closest."""
    own = almanac.apart_by_crop.get(crop)
    facts = _facts(key, "apart in the row")
    if own is None and not facts:
        return None
    rows = _facts(key, "between rows")
    apart = (own, own) if own else _middle(facts)
    between = almanac.rows_by_crop.get(crop)
    is_between_own = between is not None
    if between is None:
        between = min(_spans(rows))[0] if rows else apart[0]
    taken = Fact(crop=key, subject="between rows", low=between, high=between, unit="cm", note="", source="")
    span = Fact(
        crop=key, subject="apart in the row", low=apart[0], high=apart[1], unit="cm", note="", source=""
    )
    used = (*(() if own else facts), *(() if is_between_own else rows))
    return _Distances(
        apart=apart,
        between=between,
        apart_words=range_words([span], almanac.units),
        between_words=figure_words(taken, almanac.units) if rows or is_between_own else "",
        is_own=own is not None,
        sources=tuple(dict.fromkeys(fact.source for fact in used)),
    )


def _room(
    bed: Bed,
    sides: tuple[float, float],
    distances: _Distances,
    share: float | None,
    per_gram: tuple[float, float] | None,
    rate: tuple[float, float] | None,
) -> Room:
    width, length = sorted(sides)
    rows = max(1, floor(width * 100 / distances.between + 1e-9))
    closest, widest = distances.apart
    fewest, most = (rows * max(1, floor(length * 100 / cm + 1e-9)) for cm in (widest, closest))
    seeds = (ceil(fewest / share - 1e-9), ceil(most / share - 1e-9)) if share else None
    grams = (seeds[0] / per_gram[1], seeds[1] / per_gram[0]) if seeds and per_gram else None
    metres = rows * length
    return Room(
        bed=bed.key,
        rows=rows,
        row_m=length,
        plants=(fewest, most),
        seeds=seeds,
        grams=grams,
        sown_g=(rate[0] * metres / 10, rate[1] * metres / 10) if rate else None,
    )


def _share(key: str, lots: Sequence[Lot]) -> tuple[float, str, tuple[str, ...]]:
    """The share that comes up, in words too, and the sources where it is nobody's trial."""
    trials = [(t.year, t) for lot in lots for t in lot.trials if t.came_up and t.year is not None]
    if trials:
        last: Trial = max(trials, key=itemgetter(0))[1]
        return last.share, f"{last.came_up} of {last.tried} came up on trial in {last.year}", ()
    least = least_share(key)
    found = _facts(key, "least that must come up")
    told = "must come up of seed for sale" if found else "is taken to come up, common practice"
    return least, f"{least:.0%} {told}", tuple(dict.fromkeys(fact.source for fact in found))


def _per_gram(key: str) -> tuple[float, float] | None:
    found = _facts(key, "seeds in a gram")
    return _ends(found) if found else None


def _rate(key: str) -> tuple[float, float] | None:
    """How much seed others sow in 10 m of row [g]."""
    found = [fact for fact in _facts(key, "seed for 10 m") if not fact.note]
    return _ends(found) if found else None


def _facts(key: str, subject: str) -> list[Fact]:
    """The figures of a subject; those for hills of several plants only where there are no others."""
    found = [fact for fact in published(key) if fact.subject == subject and fact.low]
    return [fact for fact in found if "hills" not in fact.note] or found


def _of(key: str, subject: str, is_wanted: bool) -> tuple[str, ...]:
    return tuple(fact.source for fact in _facts(key, subject)) if is_wanted else ()


def _middle(found: Sequence[Fact]) -> tuple[float, float]:
    """Of several sources the middle of the lower ends and of the higher."""
    low = median_low([low for low, _ in _spans(found)])
    return low, max(low, median_low([high for _, high in _spans(found)]))


def _ends(found: Sequence[Fact]) -> tuple[float, float]:
    return min(low for low, _ in _spans(found)), max(high for _, high in _spans(found))


def _spans(found: Sequence[Fact]) -> list[tuple[float, float]]:
    """What is printed, lowest and highest; a single figure is both."""
    return [(f.low, f.low if f.high is None else f.high) for f in found if f.low is not None]


def amounts_by_crop(
    garden: Garden, almanac: Almanac, lots: Mapping[str, Sequence[Lot]]
) -> Mapping[str, Amounts]:
    """What of each crop of the garden goes into each bed."""
    found = {key: amounts(key, garden, almanac, lots.get(key, ())) for key in garden.crops}
    return {key: told for key, told in found.items() if told}
