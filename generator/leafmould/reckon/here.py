"""Expected first pickings as this garden's record has them, and how each would have been told on its first day.

Goes through the garden once, in the order of days: a planting is expected by what was picked before it began, and tells of
those after it once it is picked. The published days (`forecast`) are where it starts; the garden's own (`own_days`)
move and narrow them. Where that did worse on this garden's past than the published days alone it is not used. Pure.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from heapq import heappop, heappush
from math import exp, log, sqrt
from statistics import fmean, stdev

from leafmould.garden.model import Garden, Planting
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.forecast import FORGOTTEN, SLOW, Forecast, expected, part_of_year
from leafmould.reckon.own_days import TENTH, Record, Told, Took, ratio_of
from leafmould.reckon.seen_since import narrowed
from leafmould.reckon.standing import next_season, stands
from leafmould.values.names import fold
from leafmould.values.wording import counted

ENOUGH = 8
"""Plantings that must have been judged before a way of reckoning is given up for another."""
WORSE = 1.1
"""And so many times the loss of the other it must have: a few plantings can look bad by chance."""
MISSED = 10.0
"""What a day outside a range that should hold four times in five costs, in days of width (2 / 0.2)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Turned:
    """One planting as it was expected on its first day, in each way, and as it turned out."""

    planting: Planting
    begun: date  # the day the days were counted from
    plain: Forecast  # by published days and packets alone
    forecast: Forecast  # the same with the dark months allowed for
    warm: Forecast | None  # with the usual warmth here too; None where the garden has no table of it
    base: Forecast  # the one of them that is used
    here: Forecast  # the same with the garden's own record
    picked: date  # the first picking noted
    kind: str  # what the published days were

    @property
    def miss(self) -> int:
        """Days from the likely day to the picking; negative if it came before."""
        return (self.picked - self.base.likely).days

    @property
    def is_inside(self) -> bool:
        """Whether it was picked within what was expected."""
        return self.base.earliest <= self.picked <= self.base.latest

    @property
    def outside(self) -> int:
        """Days by which the range was missed: negative before it, 0 inside."""
        return outside(self.base, self.picked)


@dataclass(frozen=True, slots=True, kw_only=True)
class Here:
    """What is expected now, how the past was, and which way of reckoning is used."""

    forecasts: Mapping[str, Forecast]  # by planting id; missing: nothing can be said
    turned: tuple[Turned, ...]  # in the garden's order
    uses_record: bool
    uses_warmth: bool


def forecasts_here(garden: Garden, almanac: Almanac) -> Here:
    """Every expectation of the garden's day, and every one of the past that can be judged."""
    first = _first_days(garden, almanac)
    warms = uses_warmth(first)
    turned, record = _looking_back(
        [replace(t, base=t.warm or t.base) for t in first] if warms else first, almanac
    )
    uses = uses_record(turned)
    undated = replace(almanac, on=date.min)  # what has passed is told once record and bed have had their say
    found: dict[str, Forecast] = {}
    for planting in garden.plantings:
        if forecast := _now(planting, record if uses else None, almanac, undated, warms):
            found[planting.id] = forecast
    return Here(forecasts=found, turned=turned, uses_record=uses, uses_warmth=warms)


def _now(
    planting: Planting, record: Record | None, almanac: Almanac, undated: Almanac, warms: bool
) -> Forecast | None:
    """What is expected of a planting on the garden's day."""
    if planting.is_perennial:
        return next_season(planting, almanac)
    forecast = expected(planting, undated, by_warmth=warms)
    if forecast is None:
        return None
    if stands(planting):
        return replace(forecast, kind="stands")
    if record:
        forecast = with_record(forecast, planting, record, almanac)
    forecast = narrowed(forecast, planting, almanac)
    return forecast if (almanac.on - forecast.latest).days <= FORGOTTEN else None


def uses_record(turned: Sequence[Turned]) -> bool:
    """Whether the garden's record is weighed in: always, unless it clearly made ranges worse in the past.

    Judged by the interval score: the width of the range, and ten days for each day a picking lay outside it. With fewer
    than eight plantings nothing is given up.
    """
    judged = [t for t in turned if not stands(t.planting)]
    if len(judged) < ENOUGH:
        return True
    with_it = sum(loss(t.here, t.picked) for t in judged)
    without = sum(loss(t.base, t.picked) for t in judged)
    return with_it <= without * WORSE


def uses_warmth(turned: Sequence[Turned]) -> bool:
    """Whether the usual warmth slows what is expected: only once it has made ranges clearly better in the past.

    Of the plantings it says something else of, at least eight; their mean gain in the interval score must be more than
    its standard error. On one real garden a simpler correction by warmth did harm, so this one has to earn its place.
    """
    gains = [
        loss(t.forecast, t.picked) - loss(t.warm, t.picked)
        for t in turned
        if t.warm and t.warm != t.forecast and not stands(t.planting)
    ]
    return len(gains) >= ENOUGH and fmean(gains) > stdev(gains) / sqrt(len(gains))


def loss(forecast: Forecast, picked: date) -> float:
    """The interval score of a range that should hold four times in five [days]."""
    width = (forecast.latest - forecast.earliest).days + 1
    return width + MISSED * abs(outside(forecast, picked))


def outside(forecast: Forecast, picked: date) -> int:
    """Days by which a range was missed: negative before it, 0 inside."""
    if picked < forecast.earliest:
        return (picked - forecast.earliest).days
    return max(0, (picked - forecast.latest).days)


def with_record(forecast: Forecast, planting: Planting, record: Record, almanac: Almanac) -> Forecast:
    """The published expectation, moved and narrowed by what this garden has seen."""
    if len(planting.crops) != 1 or forecast.begun is None:
        return forecast
    usual = max(1, (forecast.likely - forecast.begun).days)
    told = record.told(
        planting.crops[0],
        _variety(planting),
        _spread(forecast),
        season=part_of_year(forecast.begun, almanac),
        days=usual,
    )
    days = [round(usual * exp(told.middle + side * TENTH * told.spread)) for side in (-1, 0, 1)]
    earliest, likely, latest = (forecast.begun + timedelta(days=max(1, d)) for d in days)
    return replace(
        forecast,
        earliest=earliest,
        likely=likely,
        latest=latest,
        spread=told.spread,
        basis="; ".join([forecast.basis, *_said(told)]),
    )


def _said(told: Told) -> Iterator[str]:
    """ "your three earlier plantings took 84–97 days"."""
    if told.count:
        span = counted(told.low, "day") if told.low == told.high else f"{told.low}–{told.high} days"
        whose = "an earlier planting here" if told.count == 1 else f"{told.count} earlier plantings here"
        yield f"{whose} took {span}"


def _spread(forecast: Forecast) -> float:
    """How wide the published range is, as a standard deviation of the logarithm."""
    assert forecast.begun is not None
    low = max(1, (forecast.earliest - forecast.begun).days)
    high = max(low, (forecast.latest - forecast.begun).days)
    return log(high / low) / (2 * TENTH)


def _variety(planting: Planting) -> str:
    return " ".join(fold(planting.varieties[0])) if len(planting.varieties) == 1 else ""


def _first_days(garden: Garden, almanac: Almanac) -> tuple[Turned, ...]:
    """Every planting that can be judged, as it was expected without any record, in the garden's order."""
    return tuple(turned for planting in garden.plantings if (turned := _turned(planting, almanac)))


def _looking_back(first: Sequence[Turned], almanac: Almanac) -> tuple[tuple[Turned, ...], Record]:
    """The same with what was on record on each first day, and the record after the last of them."""
    record = Record()
    waiting: list[tuple[date, int, Took]] = []  # picked, but later than the day reached; the soonest first
    found: dict[int, Turned] = {}
    for number, alone in sorted(enumerate(first), key=lambda one: (one[1].begun, one[0])):
        while waiting and waiting[0][0] < alone.begun:
            record.add(heappop(waiting)[2])
        planting = alone.planting
        turned = replace(alone, here=with_record(alone.base, planting, record, almanac))
        found[number] = turned
        if len(planting.crops) == 1 and not stands(planting):
            heappush(waiting, (turned.picked, number, _took(turned, almanac)))
    while waiting:
        record.add(heappop(waiting)[2])
    return tuple(found[number] for number in sorted(found)), record


def _judged(planting: Planting) -> tuple[date, date] | None:
    """The day a planting's days are counted from and its first picking, where both are noted to the day."""
    first = planting.first_picked
    start = planting.planted or planting.sown or planting.started
    if planting.is_perennial or first is None or first.day is None or start is None or start.day is None:
        return None
    return (start.day, first.day) if start.day <= first.day else None


def _turned(planting: Planting, almanac: Almanac) -> Turned | None:
    days = _judged(planting)
    if days is None:
        return None
    begun, picked = days
    then = _as_of_its_first_day(planting)
    book = replace(almanac, on=begun, weather_until=begun - timedelta(days=1))
    forecast = expected(then, book)
    if forecast is None:
        return None
    plain = expected(then, replace(book, has_winter=False)) if SLOW in forecast.basis else forecast
    return Turned(
        planting=planting,
        begun=begun,
        plain=plain or forecast,
        forecast=forecast,
        warm=expected(then, book, by_warmth=True) if almanac.warmth.has_usual else None,
        base=forecast,
        here=forecast,
        picked=picked,
        kind=_kind(forecast),
    )


KINDS = ("packets and own figures", "published days", "common practice")


def _kind(forecast: Forecast) -> str:
    own, published, common = KINDS
    return common if forecast.is_common_practice else published if forecast.sources else own


def _as_of_its_first_day(planting: Planting) -> Planting:
    """The planting as it was known on the day it was sown or set out."""
    return replace(
        planting,
        came_up=None,
        flowered=None,
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


def _took(turned: Turned, almanac: Almanac) -> Took:
    usual = (turned.base.likely - turned.begun).days
    days = (turned.picked - turned.begun).days
    likely, spread = max(1, (turned.here.likely - turned.begun).days), turned.here.spread
    return Took(
        crop=turned.planting.crops[0],
        variety=_variety(turned.planting),
        year=turned.begun.year,
        season=part_of_year(turned.begun, almanac),
        days=days,
        ratio=ratio_of(days, usual),
        distance=log(max(1, days) / likely) / spread if spread else None,
    )
