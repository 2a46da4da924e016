"""When a planting may first be picked: earliest, likely, latest, and on what basis.

Runs on an assembled garden's plantings, with the almanac. Ranges, not promises: printed days are one
garden's in one year, so a range that is narrower than gardens are is widened. The garden's own record is weighed in by
`here`, what has been seen since the sowing by `seen_since`.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta
from math import ceil
from typing import Literal

from leafmould.garden.model import Planting
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.days import Days, days_words, season, steps
from leafmould.values.half_years import northern_month
from leafmould.values.wording import day

LEAST_BEFORE, LEAST_AFTER = 0.15, 0.25
"""A range reaches at least this far before and after its likely day, as a share of the days: one variety
differs by weeks between years in one garden. Common practice."""

SHORTEST_AFTER = 7
"""And at least this far after it [days]."""

AHEAD = (18, 30)
"""How many days sooner set-out plants are picked than counted from sowing [days].

Source: All-America Selections, winners of 2015, 2016 and 2020, which print both counts for one variety:
watermelon 18, pumpkin 20, basil and onion 30 (AAS-2020, UVM-AAS-2015, UVM-AAS-2016).
"""

SOWN_IN_PLACE = (18, 56)
"""How many days longer than counted from planting out, if sown in place [days]: AHEAD's lower end, and
eight weeks as plants are often raised that long. Common practice."""

WAIT_IN_POTS = 14
"""What a sowing under glass may lose by waiting to be planted out [days]. Common practice."""

FORGOTTEN = 90
"""So long after its latest day an expectation says nothing any more [days]. Common practice."""

DARK = ((11, 1), (2, 10))
"""First and last day of the dark months in the north, when a hardy crop hardly grows. Common practice."""

LIGHT_AGAIN = (2, 11)
"""The day after them."""

GROWTH_IN_THE_DARK = 0.25
"""Share of a day's growth made on a day in the dark months. Common practice."""

COLD = 4.4
"""Mean of a day at which a hardy crop stands still [°C]: 40 °F, from which the heat of peas, lettuce, potatoes and the
cabbage kinds is counted (University of Delaware Extension, 2025), of turnips, cabbage and peas at North Carolina State
University too."""

WARM = 10.0
"""Mean of a day at which it grows as in spring [°C]. Common practice."""

LEAST_GROWTH = 0.1
"""Share of a day's growth made on the coldest. Common practice."""

COOL = "growth is slowed by the usual cold and dark here"
COOL_SO_FAR = (
    "growth is slowed by the cold here, as measured so far and as usual from then on, and by the dark"
)
SLOW = "growth nearly stops in the dark months"

Begun = Literal["sown", "planted", "planted or sown", "under glass"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Forecast:
    """An expected first picking, with its reason."""

    earliest: date
    likely: date
    latest: date
    basis: str  # one sentence: "packet says 60–70 days from sowing, counted from 12 April 2026"
    sources: tuple[str, ...]  # source ids; empty for packet days and common practice
    is_common_practice: bool = False
    begun: date | None = None  # the day the days are counted from
    spread: float | None = (
        None  # standard deviation of the logarithm of its days, once the record is weighed in
    )
    kind: Literal["first picking", "stands", "season"] = "first picking"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Beginning:
    """What the days of a planting are counted from."""

    day: date
    how: Begun
    age: int | None = None  # days since it was sown, where it was raised first


def expected(planting: Planting, almanac: Almanac, *, by_warmth: bool = False) -> Forecast | None:
    """The expected first picking of a planting, as far as one can be told.

    None once it is picked or has ended, for perennials, self-sown plants, plantings known by year or by a
    coarse date only, plants still under glass whose figures count from planting out, crops for which there
    are no figures, and where the latest day passed months ago. Several crops sown as one mix: the soonest.

    Args:
        almanac: made once by `almanac.almanac(settings, garden)`; holds "today".
        by_warmth: let the warmth here slow what hardy crops grow that are started outside of spring.
    """
    if not planting.is_open or planting.is_perennial or planting.first_picked or not planting.crops:
        return None
    beginning = _beginning(planting)
    if beginning is None:
        return None
    words = planting.words if len(planting.words) == len(planting.crops) else planting.crops
    found = [
        replace(f, basis=f"{word}: {f.basis}") if len(words) > 1 else f
        for crop, word in zip(planting.crops, words, strict=True)
        if (f := _of_crop(crop, planting, beginning, almanac, by_warmth))
        and (almanac.on - f.latest).days <= FORGOTTEN
    ]
    return min(found, key=lambda f: (f.likely, f.latest)) if found else None


def _beginning(planting: Planting) -> _Beginning | None:
    if planting.origin in ("self-sown", "year only", "unknown"):
        return None
    if planting.planted:
        before = planting.started or planting.sown
        if planting.planted.day is None:
            return None
        bare = before is None and planting.origin == "planted"
        how: Begun = "planted or sown" if bare else "planted"
        age = (planting.planted.day - before.day).days if before and before.day else None
        return _Beginning(day=planting.planted.day, how=how, age=age if age is None or age >= 0 else None)
    when = planting.sown or planting.started
    if when is None or when.day is None:
        return None
    return _Beginning(day=when.day, how="sown" if planting.sown else "under glass")


def _of_crop(
    crop: str, planting: Planting, begun: _Beginning, almanac: Almanac, by_warmth: bool
) -> Forecast | None:
    fact = almanac.fact(crop)
    if fact and fact.grown_as == "perennial":
        return None
    starts_as = fact.starts_as if fact else "seed"
    varieties = () if planting.is_doubtful else planting.varieties
    slows = almanac.has_winter and not (fact and fact.is_tender)
    cools = slows and by_warmth and almanac.warmth.has_usual and part_of_year(begun.day, almanac) != "spring"
    for step in steps(crop, varieties, begun.day, almanac):
        counted = _counted(step, begun, starts_as)
        if counted:
            return (
                _cooled(_forecast(*counted, begun, almanac, slows), counted[0], almanac)
                if cools
                else _forecast(*counted, begun, almanac, slows)
            )
    return None


def _counted(
    step: tuple[Days, ...], begun: _Beginning, starts_as: str
) -> tuple[Days, tuple[str, ...]] | None:
    """The figures that serve, turned to this planting's start, with what was done to them in words."""
    by_start = {days.counts_from: days for days in step}
    from_sowing, from_planting = by_start.get("sowing"), by_start.get("planting out")
    if begun.how == "under glass":
        return _under_glass(from_sowing)
    if begun.how == "sown":
        return (from_sowing, ()) if from_sowing else _sown_in_place(from_planting, starts_as)
    if from_planting:
        return from_planting, ()
    return _set_out(from_sowing, begun, starts_as)


def _under_glass(days: Days | None) -> tuple[Days, tuple[str, ...]] | None:
    if days is None:
        return None
    return _moved(days, 0, 0, WAIT_IN_POTS), ("a fortnight is allowed for planting out",)


def _sown_in_place(days: Days | None, starts_as: str) -> tuple[Days, tuple[str, ...]] | None:
    """Figures for set-out plants, lengthened; bulbs and tubers are the same either way."""
    if days is None or starts_as == "sets":
        return (days, ()) if days else None
    least, most = SOWN_IN_PLACE
    note = f"{days_words(least, most)} more are allowed for seed sown in place"
    return _moved(days, least, (least + most) / 2, most), (note,)


def _set_out(days: Days | None, begun: _Beginning, starts_as: str) -> tuple[Days, tuple[str, ...]] | None:
    """Figures for seed, shortened for plants that were raised before."""
    if days is None:
        return None
    if begun.how == "planted or sown" and starts_as == "seed":
        note = f"up to {AHEAD[0]} days less are allowed, as plants or seed may have gone in"
        return _moved(days, -AHEAD[0], -AHEAD[0] / 2, 0), (note,)
    least, most = (min(ahead, begun.age) if begun.age is not None else ahead for ahead in AHEAD)
    note = f"{days_words(least, most)} less are allowed for plants raised before"
    return _moved(days, -most, -(least + most) / 2, -least), (note,) if most else ()


def _moved(days: Days, low: int, likely: float, high: int) -> Days:
    """The same figures so many days later; never less than half of what was printed."""
    return Days(
        low=max(days.low + low, days.low // 2),
        likely=max(days.likely + likely, days.likely / 2),
        high=max(days.high + high, days.high // 2),
        counts_from=days.counts_from,
        says=days.says,
        sources=days.sources,
        is_common_practice=days.is_common_practice,
    )


def _forecast(
    days: Days, notes: tuple[str, ...], begun: _Beginning, almanac: Almanac, slows: bool
) -> Forecast:
    low, high = _widened(days)
    plain = begun.day + timedelta(days=high)
    slows = slows and not days.is_common_practice
    # A kind winter may not slow what is well on its way; what only begins in the dark waits for light.
    earliest = _grown(begun.day, low, slows and _is_dark(begun.day, almanac), almanac)
    likely = _grown(begun.day, round(days.likely), slows, almanac)
    latest = _grown(begun.day, high, slows, almanac)
    said = [f"{days.says}, counted from {day(begun.day)}", *notes]
    if latest > plain:
        said.append(SLOW)
    if almanac.on > latest:
        said.append("that time has passed without a picking noted")
    return Forecast(
        earliest=earliest,
        likely=max(earliest, likely),
        latest=latest,
        basis="; ".join(said),
        sources=days.sources,
        is_common_practice=days.is_common_practice,
        begun=begun.day,
    )


def part_of_year(begun: date, almanac: Almanac) -> Literal["early", "spring", "autumn"]:
    """The part of the year a planting was begun in, six months apart in the south."""
    month = northern_month(begun.month, is_southern=almanac.is_southern)
    return "early" if month in (12, 1, 2, 3) else season(begun, almanac)


def _cooled(forecast: Forecast, days: Days, almanac: Almanac) -> Forecast:
    """The same where the usual warmth slows growth: printed days are those of spring, when it is warm enough."""
    if forecast.begun is None or days.is_common_practice:
        return forecast
    low, high = _widened(days)
    wanted = (low, round(days.likely), high)
    earliest, likely, latest = _grown_by_warmth(forecast.begun, wanted, almanac)
    if latest <= forecast.begun + timedelta(days=high):
        return forecast
    is_measured = almanac.warmth.has_measured(forecast.begun, almanac.weather_until)
    basis = forecast.basis.replace(f"; {SLOW}", "") + f"; {COOL_SO_FAR if is_measured else COOL}"
    return replace(forecast, earliest=earliest, likely=max(earliest, likely), latest=latest, basis=basis)


def _grown_by_warmth(start: date, wanted: tuple[int, ...], almanac: Almanac) -> list[date]:
    """The days on which so many days' growth is made, the fewest first: each day's by its warmth, measured as far as it
    was, then usual, and never more than the dark allows."""
    grown, on = 0.0, start
    found: list[date] = []
    for days in sorted(wanted):
        while grown < days:
            mean = almanac.warmth.mean_known(on, almanac.weather_until)
            share = 1.0 if mean is None else min(1.0, max(LEAST_GROWTH, (mean - COLD) / (WARM - COLD)))
            grown += min(share, GROWTH_IN_THE_DARK) if _is_dark(on, almanac) else share
            on += timedelta(days=1)
        found.append(on)
    return found


def _widened(days: Days) -> tuple[int, int]:
    """The range as printed, or wider where it is narrower than gardens are."""
    if days.is_common_practice:
        return max(1, days.low), days.high
    low = min(days.low, int(days.likely * (1 - LEAST_BEFORE)))
    high = max(days.high, ceil(days.likely * (1 + LEAST_AFTER)), ceil(days.likely) + SHORTEST_AFTER)
    return max(1, low), high


def _grown(start: date, days: int, slows: bool, almanac: Almanac) -> date:
    """The day on which so many days' growth is made: light and dark stretches by turns."""
    on, left = start, float(days)
    if not slows:
        return start + timedelta(days=days)
    while True:
        is_dark = _is_dark(on, almanac)
        share = GROWTH_IN_THE_DARK if is_dark else 1.0
        turn = _next(on, LIGHT_AGAIN if is_dark else DARK[0], almanac)
        if (wanted := ceil(left / share)) <= (turn - on).days:
            return on + timedelta(days=wanted)
        left -= (turn - on).days * share
        on = turn


def _next(on: date, turn: tuple[int, int], almanac: Almanac) -> date:
    """The next such day of the northern year after a day."""
    month = northern_month(turn[0], is_southern=almanac.is_southern)
    this_year = date(on.year, month, turn[1])
    return this_year if this_year > on else date(on.year + 1, month, turn[1])


def _is_dark(on: date, almanac: Almanac) -> bool:
    month = northern_month(on.month, is_southern=almanac.is_southern)
    first, last = DARK
    return (month, on.day) >= first or (month, on.day) <= last
