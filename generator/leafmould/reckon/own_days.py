"""What this garden's own plantings tell of the days to a first picking, beside the published ones.

Every planting picked so far is a ratio: the days it took, by the days that were expected of it. Ratios differ by
the garden, by the crop in it, by the variety, by the year (which all plantings of a crop share) and from planting to planting. The model
is the usual one of nested normal effects on the logarithm of the ratio, its spreads fixed beforehand; what a garden has
seen moves and narrows them by how much there is of it, and several plantings of one year count for little more than one. How far
off expectations were so far widens or narrows all of them. Pure.

Spreads: a home garden's record (cold continental, two seasons) missed published days by 16 days on average, and one variety
differed by 17 days between its years; the shares of garden and planting are common practice.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log, sqrt

GARDEN = 0.10
"""How far gardens differ from what is published of all crops: standard deviation of the logarithm."""
CROP = 0.15
"""How far a crop differs in its garden, at least; a published range that is wider says more."""
VARIETY = 0.08
"""How far varieties of a crop differ where the published days are the crop's."""
YEAR = 0.17
"""How far years differ: 17 days of some 75 between two years of one variety are 0.2 of each, PLANTING among it."""
PLANTING = 0.10
"""How far plantings of one crop and year differ."""
TENTH = 1.2815515655446004
"""Standard deviations from the middle of a normal distribution to its tenth and its ninetieth part."""
BELIEVED = 12
"""So many plantings must be off by more or less than the spreads say, until the garden's own distances weigh as much."""
FARTHEST = 4.0
"""The square of a distance, in spreads, counts as this at most: one slip of the pen is no bad year."""
ORDINARY = 0.9205
"""What the square of an ordinary distance, cut off there, is on average."""
LONG = 75
"""Days from which on the spreads of crops, years and plantings grow by the root of the days and no more in
proportion: what takes most of a year meets the same spring whenever it was begun. Common practice."""
OFF = 4.0
"""A ratio farther from 1 than this, either way, is a slip of the pen or another planting's picking."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Took:
    """One planting of the record: how long it took beside what was expected."""

    crop: str
    variety: str  # folded; "" where none was written
    year: int  # the one it was begun in
    days: int
    ratio: float  # days it took by days expected
    season: str = ""  # the part of the year it was begun in: what begins in the cold is no measure of May
    distance: float | None = None  # from what the record then said, in spreads


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What the record says of a planting to come."""

    middle: float  # the logarithm of its ratio
    spread: float  # standard deviation of it, everything that may differ included
    count: int  # of the plantings of its own crop
    low: int  # the fewest and the most days they took
    high: int


@dataclass(slots=True)
class _Sum:
    """How many ratios, and their logarithms added up."""

    count: int = 0
    logs: float = 0.0


class _OfCrop:
    """The plantings of one crop, summed by season and variety."""

    def __init__(self) -> None:
        self.count, self.low, self.high = 0, 0, 0
        self._by_year: dict[int, dict[str, _Sum]] = {}

    def add(self, took: Took) -> None:
        self.low = min(self.low, took.days) if self.count else took.days
        self.high = max(self.high, took.days)
        self.count += 1
        found = self._by_year.setdefault(took.year, {}).setdefault(took.variety, _Sum())
        found.count += 1
        found.logs += log(took.ratio)

    def pooled(self, variety: str) -> tuple[float, float]:
        """The mean logarithm of the ratios and its variance; those of each season together first.

        Args:
            variety: the one that is asked for; other varieties tell less of it. "": all tell the same.
        """
        weights = sum_ = 0.0
        for varieties in self._by_year.values():
            same, other = _Sum(), _Sum()
            for name, found in varieties.items():
                group = same if not variety or name in ("", variety) else other
                group.count += found.count
                group.logs += found.logs
            for group, more in ((same, 0.0), (other, 2 * VARIETY**2)):
                if group.count:
                    weight = 1 / (YEAR**2 + PLANTING**2 / group.count + more)
                    weights += weight
                    sum_ += weight * group.logs / group.count
        return sum_ / weights, 1 / weights


class Record:
    """The plantings picked so far, added one by one in the order of days."""

    def __init__(self) -> None:
        self._crops: dict[tuple[str, str], _OfCrop] = {}  # by season and crop
        self._effects: dict[
            str, dict[str, tuple[float, float]]
        ] = {}  # by season and crop: weight, and weight times mean
        self._squares = 0.0
        self._number = 0

    @property
    def scale(self) -> float:
        """How many times farther off plantings are here than the spreads say."""
        return sqrt((BELIEVED + self._squares / ORDINARY) / (BELIEVED + self._number))

    def add(self, took: Took) -> None:
        """Take one more planting into the record, unless it is a slip."""
        if not 1 / OFF <= took.ratio <= OFF:
            return
        crop = self._crops.setdefault((took.season, took.crop), _OfCrop())
        crop.add(took)
        mean, variance = crop.pooled("")
        weight = 1 / (CROP**2 + variance)
        self._effects.setdefault(took.season, {})[took.crop] = weight, weight * mean
        if took.distance is not None:
            self._squares += min(FARTHEST, took.distance**2)
            self._number += 1

    def told(self, crop: str, variety: str, spread: float, *, season: str = "", days: int = LONG) -> Told:
        """What is to be expected of a planting of a crop.

        Args:
            variety: folded, "" if it has none.
            spread: that of the published days, as a standard deviation of the logarithm.
            season: the part of the year it is begun in.
            days: that are published.
        """
        long = min(1.0, LONG / days)
        others = [effect for key, effect in self._effects.get(season, {}).items() if key != crop]
        weights = 1 / GARDEN**2 + sum(weight for weight, _ in others)
        middle = sum(sum_ for _, sum_ in others) / weights
        before = 1 / weights + max(CROP * sqrt(long), spread) ** 2
        took = self._crops.get((season, crop))
        if took is None:
            return Told(middle=middle, spread=self._whole(before, long), count=0, low=0, high=0)
        mean, seen = took.pooled(variety)
        share = before / (before + long * seen)
        return Told(
            middle=middle + share * (mean - middle),
            spread=self._whole(before * (1 - share), long),
            count=took.count,
            low=took.low,
            high=took.high,
        )

    def _whole(self, variance: float, long: float) -> float:
        """The spread of a planting, where what is usual here is known up to a variance."""
        return self.scale * sqrt(variance + long * (YEAR**2 + PLANTING**2))


def ratio_of(took: int, expected: int) -> float:
    """The days a planting took by those expected of it."""
    return max(took, 1) / max(expected, 1)
