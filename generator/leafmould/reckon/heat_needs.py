"""How far a crop has come by warmth: the heat made since its sowing beside what is published of it up to the harvest.

Only for what stands in the open where it was sown, and where a source gives both a heat sum and the warmth it counts
from. Measured days count as far as there are any, usual ones otherwise. It stands beside the expected picking and moves
nothing in it: too few crops have such figures for this garden's past to tell whether they do better. Pure.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.facts.published import Fact, published
from leafmould.garden.model import Garden, Planting
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.known_words import figure_words
from leafmould.reckon.warmth import Warmth, degree_days
from leafmould.values.wording import day_range

LONGEST = 250
"""Days after which what is still not complete is no matter of heat."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatNeed:
    """What heat says of one planting."""

    words: str  # one or two sentences without the last full stop
    sources: tuple[str, ...]  # source ids


def heat_needs(garden: Garden, almanac: Almanac) -> Mapping[str, HeatNeed]:
    """By planting id, what heat says of each that is still waited for in the open."""
    glass = {bed.key for bed in garden.beds.values() if bed.kind == "under glass"}
    found = ((p.id, heat_need(p, almanac)) for p in garden.plantings if p.bed not in glass)
    return {key: need for key, need in found if need}


def heat_need(planting: Planting, almanac: Almanac) -> HeatNeed | None:
    """What heat says of a planting that is still waited for; None where nobody tells, or its warmth is not known."""
    sown = planting.sown.day if planting.sown else None
    is_outside = planting.planted is None and planting.started is None and not planting.is_under_cover
    if sown is None or not is_outside or not planting.is_open or planting.first_picked:
        return None
    found = _needed(planting, almanac)
    if found is None:
        return None
    need, base = found
    assert need.low is not None and need.high is not None and base.low is not None
    complete = [_complete(sown, wanted, base.low, almanac.warmth) for wanted in (need.low, need.high)]
    if complete[0] is None or complete[1] is None:
        return None
    units = almanac.units
    return HeatNeed(
        words=f"By heat: {figure_words(need, units)} above {figure_words(base, units)} are published up to the harvest "
        f"({need.note}). {_so_far(sown, base.low, complete[0], complete[1], almanac)}",
        sources=tuple(dict.fromkeys((need.source, base.source))),
    )


def _needed(planting: Planting, almanac: Almanac) -> tuple[Fact, Fact] | None:
    """The heat a crop needs, and the warmth it counts from by the same source."""
    fact = almanac.fact(planting.crops[0]) if len(planting.crops) == 1 else None
    facts = published(fact.key) if fact else ()
    need = next((f for f in facts if f.subject == "heat to the first harvest"), None)
    bases = [f for f in facts if f.subject == "warmth counts above" and need and f.source == need.source]
    return (need, bases[0]) if need and bases else None


def _complete(sown: date, wanted: float, base: float, warmth: Warmth) -> date | None:
    """The day on which so much heat is made; None where a day of it is not known, or it is never made."""
    made = 0.0
    for number in range(LONGEST):
        on = sown + timedelta(days=number)
        found = warmth.on(on)
        if found is None:
            return None
        made += degree_days(found.low, found.high, base)
        if made >= wanted:
            return on
    return None


def _so_far(sown: date, base: float, first: date, last: date, almanac: Almanac) -> str:
    span = day_range(first, last)
    if last <= almanac.on:
        return f"They were complete on {span}" if first == last else f"They were complete {span}"
    made = almanac.warmth.heat(sown, almanac.on, base) or 0.0
    shown = round(made * (1.8 if almanac.units == "imperial" else 1))
    return f"{shown:,} are made so far; at the usual warmth they are complete about {span}"
