"""An expectation narrowed by what was seen since: seedlings, the first flower, days that passed without a picking.

The days to come are a spread of possible days around a likely one, even on the logarithm. Seedlings move it by as much as
they were late; a flower tells of what is left; and every day without a picking rules out that it came before. Pure.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from math import exp, log, sqrt
from statistics import NormalDist

from leafmould.garden.model import Planting
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.forecast import Forecast
from leafmould.reckon.own_days import TENTH
from leafmould.reckon.standing import stands
from leafmould.values.wording import counted

USUAL_TO_COME_UP = 10
"""Days in which seed mostly comes up outside. Common practice, no source."""
SEEN_LATE = 0.5
"""The share of a delay in coming up that is believed: seedlings are noted when somebody looks."""
FLOWER = 0.68
"""The share of its days to the first picking at which a fruiting crop opens its first flower. Common practice."""
FLOWER_SPREAD = 0.13
"""How far that share differs between crops and years: standard deviation of its logarithm. Common practice."""
SEEDLINGS_TELL = 0.95
"""What is left of the spread once seedlings are up."""
LEAST = 0.06
"""No range is narrower than this spread."""
FRUITING = frozenset({"Fabaceae", "Solanaceae", "Cucurbitaceae"})
"""Families picked for the fruit that follows the flower; potatoes are no fruit."""
SURELY = 0.02
"""Less than this chance that it could have been picked already changes nothing."""
PASSED = "that time has passed without a picking noted"


def narrowed(forecast: Forecast, planting: Planting, almanac: Almanac) -> Forecast:
    """The expectation as of the garden's day."""
    begun = forecast.begun
    if begun is None:
        return forecast
    forecast = _by_what_was_seen(forecast, planting, almanac)
    gone = (almanac.on - begun).days
    if stands(planting):
        return forecast
    if almanac.on > forecast.latest:
        return replace(forecast, basis=f"{forecast.basis}; {PASSED}")
    found = _not_yet(forecast, gone) if gone > 0 else forecast
    return replace(found, basis=f"{found.basis}; it is {counted(gone, 'day')} now") if gone > 0 else found


def _by_what_was_seen(forecast: Forecast, planting: Planting, almanac: Almanac) -> Forecast:
    """Moved and narrowed by seedlings and the first flower, as far as they are noted to the day."""
    begun = forecast.begun
    assert begun is not None
    middle = log(max(1, (forecast.likely - begun).days))
    spread = _spread(forecast)
    said: list[str] = []
    if (up := _days_to(planting, "came_up", begun, almanac)) is not None and planting.sown:
        days = exp(middle) + SEEN_LATE * (up - USUAL_TO_COME_UP)
        middle, spread = log(max(up + 1.0, days)), spread * SEEDLINGS_TELL
        said.append(f"up after {counted(up, 'day')}")
    flower = _days_to(planting, "flowered", begun, almanac)
    if flower and _fruits(planting, almanac):
        told = log(flower / FLOWER)
        weight, own = 1 / spread**2, 1 / FLOWER_SPREAD**2
        middle, spread = (middle * weight + told * own) / (weight + own), 1 / sqrt(weight + own)
        said.append(f"in flower after {counted(flower, 'day')}")
    if not said:
        return forecast
    spread = max(spread, LEAST)
    earliest, likely, latest = (
        begun + timedelta(days=round(exp(middle + side * TENTH * spread))) for side in (-1, 0, 1)
    )
    return replace(
        forecast,
        earliest=earliest,
        likely=likely,
        latest=latest,
        spread=spread,
        basis="; ".join([forecast.basis, *said]),
    )


def _not_yet(forecast: Forecast, gone: int) -> Forecast:
    """The same, given that nothing was picked in the days gone."""
    begun = forecast.begun
    assert begun is not None
    spread = _spread(forecast)
    days = NormalDist(log(max(1, (forecast.likely - begun).days)), max(spread, LEAST))
    before = days.cdf(log(gone))
    if before < SURELY:
        return forecast
    earliest, likely, latest = (
        begun
        + timedelta(days=max(gone, round(exp(days.inv_cdf(min(0.9999, before + share * (1 - before)))))))
        for share in (0.1, 0.5, 0.9)
    )
    return replace(
        forecast,
        earliest=max(earliest, forecast.earliest),
        likely=max(likely, forecast.likely),
        latest=max(latest, forecast.latest),
    )


def _spread(forecast: Forecast) -> float:
    """How wide an expectation is, as a standard deviation of the logarithm of its days."""
    if forecast.spread:
        return forecast.spread
    assert forecast.begun is not None
    low = max(1, (forecast.earliest - forecast.begun).days)
    high = max(low + 1, (forecast.latest - forecast.begun).days)
    return log(high / low) / (2 * TENTH)


def _days_to(planting: Planting, what: str, begun: date, almanac: Almanac) -> int | None:
    when = getattr(planting, what)
    if when is None or when.day is None or not begun < when.day <= almanac.on:
        return None
    return int((when.day - begun).days)


def _fruits(planting: Planting, almanac: Almanac) -> bool:
    facts = [almanac.fact(crop) for crop in planting.crops]
    return bool(facts) and all(
        fact is not None and fact.family in FRUITING and fact.part_eaten not in ("tuber", "root", "leaf")
        for fact in facts
    )
