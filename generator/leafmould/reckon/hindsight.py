"""Looking backwards: what would have been expected of each planting on the day it began, beside what came.

Each forecast is made as of its planting's own first day, from what was known then; the published days and the
packets do not change with the garden's record, so nothing later can leak in. Only plantings count whose start
and first picking are both noted to the day. Pure.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date

from leafmould.garden.model import Garden, Planting
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.forecast import Forecast, expected

KINDS = ("packets and own figures", "published days", "common practice")


@dataclass(frozen=True, slots=True, kw_only=True)
class Turned:
    """One planting as it was expected and as it turned out."""

    planting: Planting
    begun: date  # the day the days were counted from
    forecast: Forecast
    picked: date  # the first picking noted
    kind: str  # one of KINDS

    @property
    def miss(self) -> int:
        """Days from the likely day to the picking; negative if it came before."""
        return (self.picked - self.forecast.likely).days

    @property
    def is_inside(self) -> bool:
        """Whether it was picked within what was expected."""
        return self.forecast.earliest <= self.picked <= self.forecast.latest

    @property
    def outside(self) -> int:
        """Days by which the range was missed: negative before it, 0 inside."""
        if self.picked < self.forecast.earliest:
            return (self.picked - self.forecast.earliest).days
        return max(0, (self.picked - self.forecast.latest).days)


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """How expectations of one kind did."""

    kind: str
    count: int
    inside: int
    mean_width: float  # days from earliest to latest, both counted
    mean_miss: float  # days between the likely day and the picking, either way


def turned_out(garden: Garden, almanac: Almanac) -> tuple[Turned, ...]:
    """Every planting that can be judged, in the garden's order."""
    return tuple(found for planting in garden.plantings if (found := _turned(planting, almanac)))


def _turned(planting: Planting, almanac: Almanac) -> Turned | None:
    first = planting.first_picked
    start = planting.planted or planting.sown or planting.started
    if planting.is_perennial or first is None or first.day is None or start is None or start.day is None:
        return None
    if start.day > first.day:
        return None
    then = replace(
        planting,
        first_picked=None,
        last_picked=None,
        picked_g=None,
        picked=(),
        pickings=(),
        cleared=None,
        lost=None,
        ended_on=None,
        end_basis=None,
        end_is_estimated=False,
    )
    forecast = expected(then, replace(almanac, on=start.day))
    if forecast is None:
        return None
    return Turned(
        planting=planting, begun=start.day, forecast=forecast, picked=first.day, kind=_kind(forecast)
    )


def _kind(forecast: Forecast) -> str:
    own, published, common = KINDS
    return common if forecast.is_common_practice else published if forecast.sources else own


def scores(turned: Sequence[Turned]) -> tuple[Score, ...]:
    """How each kind of expectation did, those that were never made left out; all together last."""
    by_kind = [_score(kind, [t for t in turned if t.kind == kind]) for kind in KINDS]
    found = [score for score in by_kind if score.count]
    return (*found, *((_score("all together", turned),) if len(found) > 1 else ()))


def _score(kind: str, turned: Sequence[Turned]) -> Score:
    return Score(
        kind=kind,
        count=len(turned),
        inside=sum(t.is_inside for t in turned),
        mean_width=_mean((t.forecast.latest - t.forecast.earliest).days + 1 for t in turned),
        mean_miss=_mean(abs(t.miss) for t in turned),
    )


def _mean(values: Iterable[int]) -> float:
    found = list(values)
    return sum(found) / len(found) if found else 0.0
