"""When seedlings should show, and when it is time to look because none were noted.

Days come from the published table for the crop, by the warmth of the soil: as it was noted where it was sown, else
the usual warmth of those weeks, else the span of an ordinary spring. Of a crop in no table the garden's own sowings
tell; of others they do not, since seedlings are noted when somebody looks, which may be weeks late.
A seed bed is no laboratory: the range is wider than the table, and once it has long passed nothing is said, since
many gardeners never write down that something came up. Pure.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from itertools import pairwise
from math import ceil, floor

from leafmould.facts.published import published
from leafmould.garden.model import Garden, Planting
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.known_words import COMES_UP
from leafmould.reckon.own_record import Seen, days_to_come_up
from leafmould.reckon.soil_warmth import SoilWarmth, noted_warmth
from leafmould.values.wording import day, number_words

Usual = Callable[[date], float | None]
"""The usual warmth of a day here [°C]; None where it is not known."""

SOONER, LATER = 0.8, 1.5
"""How far seedlings come before and after the table's day, as a share of the days. Common practice."""
ROUGH = 3.0
"""How far the soil may be off the usual warmth of the air [°C]. Common practice."""
SPRING = (10, 20)
"""The soil of an ordinary sowing outside, where nothing is known of it [°C]. Common practice."""
INDOORS = (15, 25)
"""The same on a window sill, in a propagator or in a bed under glass. Common practice."""
LAPSES = timedelta(days=21)
"""How long after the last day a sowing is told to be looked at; then it is taken to be up, and not noted."""
GROWN = 1 - 1e-9
"""A seedling, but for what is lost in adding up."""
LONGEST = 120
"""Days after which no sowing is waited for."""

SHOWS_IT_IS_UP = frozenset(
    {
        "came up", "thinned", "pricked out", "potted on", "hardened off", "planted", "moved", "staked", "tied in",
        "pinched out", "earthed up", "cut back", "picked", "gave away", "divided",
    }
)  # fmt: skip
"""What is done to plants only."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ComingUp:
    """The days on which seedlings should show."""

    first: date
    last: date
    basis: str  # one sentence without its full stop
    sources: tuple[str, ...]  # source ids; empty where the garden's own sowings tell
    event: str | None = None  # id of the note of the soil's warmth

    def is_overdue(self, on: date) -> bool:
        """Whether it is time to look."""
        return self.last < on <= self.last + LAPSES


def coming_up(garden: Garden, almanac: Almanac, usual: Usual | None = None) -> Mapping[str, ComingUp]:
    """By planting id: when the seedlings of what was sown lately should show; nothing once they were seen.

    Args:
        usual: the usual warmth of a day here, where the garden has a table of it.
    """
    plantings = [p for p in garden.plantings if _is_waited_for(p, garden)]
    if not plantings:
        return {}
    warmth = noted_warmth(garden, since=min(filter(None, map(_sown_on, plantings))))
    own = _own_record(garden, plantings)
    glass = frozenset(bed.key for bed in garden.beds.values() if bed.kind == "under glass")
    found: dict[str, ComingUp] = {}
    for planting in plantings:
        each = [
            _of_crop(crop, planting, warmth, usual, own.get(crop), almanac, glass) for crop in planting.crops
        ]
        known = [up for up in each if up]
        if known and len(known) == len(each):
            last = max(known, key=lambda up: up.last)
            if garden.on <= last.last + LAPSES:
                found[planting.id] = last
    return found


def days_at(crop: str, celsius: float) -> float | None:
    """Days from sowing to seedlings in soil of that warmth; None where none come up or nobody says.

    Between two warmths of the table the part of the way made in a day is taken to grow evenly.
    """
    rate = _rate(crop, celsius)
    return 1 / rate if rate > 1 / LONGEST else None


def _is_waited_for(planting: Planting, garden: Garden) -> bool:
    """Whether it was sown lately and nothing shows that it is up."""
    on = _sown_on(planting)
    if on is None or not planting.is_open or planting.is_perennial or not planting.crops:
        return False
    if planting.came_up or planting.planted or planting.flowered or planting.first_picked:
        return False
    if (garden.on - on).days > LONGEST + LAPSES.days:
        return False
    verbs = (garden.event_by_id[key].verb for key in planting.events if key in garden.event_by_id)
    return SHOWS_IT_IS_UP.isdisjoint(verbs)


def _sown_on(planting: Planting) -> date | None:
    when = planting.sown or planting.started
    return when.day if when else None


def _own_record(garden: Garden, waited_for: Iterable[Planting]) -> Mapping[str, Seen]:
    """By crop, how many days sowings took here."""
    wanted = {crop for planting in waited_for for crop in planting.crops}
    by_crop: dict[str, list[Planting]] = {crop: [] for crop in sorted(wanted)}
    for planting in garden.plantings:
        for crop in planting.crops:
            if crop in wanted:
                by_crop[crop].append(planting)
    return {crop: seen for crop, found in by_crop.items() if (seen := days_to_come_up(found))}


def _of_crop(
    crop: str,
    planting: Planting,
    warmth: SoilWarmth,
    usual: Usual | None,
    own: Seen | None,
    almanac: Almanac,
    glass: frozenset[str],
) -> ComingUp | None:
    sown = _sown_on(planting)
    fact = almanac.fact(crop)
    key = fact.key if fact else crop
    if sown is None:
        return None
    is_raised = planting.sown is None
    is_inside = is_raised or planting.is_under_cover or planting.bed in glass
    if not is_raised and (noted := warmth.at(planting, sown)):
        if days := days_at(key, noted.celsius):
            basis = f"{_days(days)} in soil of {number_words(round(noted.celsius, 1))} °C, as noted"
            return _around(sown, days, days, basis, _sources(key), noted.event)
    elif not is_inside and usual and (span := _by_usual(key, sown, usual)):
        basis = f"{span[0]}–{span[1]} days in the usual warmth of these weeks, which is a rough guide"
        return _between(sown, *span, basis, _sources(key))
    if span_of := _in_a_span(key, sown, INDOORS if is_inside else SPRING):
        return span_of
    return _around(sown, own.low, own.high, f"sowings here took {own.words}", ()) if own else None


def _in_a_span(crop: str, sown: date, span: tuple[int, int]) -> ComingUp | None:
    """By the table alone: from the warm end of the span to the cold one, or as cold as the crop comes up in."""
    low, high = span
    found = [days for celsius in range(low, high + 1) if (days := days_at(crop, celsius))]
    if not found:
        return None
    least, most = min(found), max(found)
    basis = f"{round(least)}–{round(most)} days in soil of {high}–{low} °C; how warm it was is not noted"
    return _between(sown, floor(least), ceil(most * LATER), basis, _sources(crop))


def _by_usual(crop: str, sown: date, usual: Usual) -> tuple[int, int] | None:
    """Days until the seedlings are made, in soil a little warmer and a little colder than usual."""
    soonest, latest = _grown(crop, sown, usual, ROUGH), _grown(crop, sown, usual, -ROUGH)
    return (soonest, latest) if soonest and latest else None


def _grown(crop: str, sown: date, usual: Usual, off: float) -> int | None:
    made, days = 0.0, 0
    while made < GROWN and days < LONGEST:
        celsius = usual(sown + timedelta(days=days))
        if celsius is None:
            return None
        made += _rate(crop, celsius + off)
        days += 1
    return days if made >= GROWN else None


def _around(
    sown: date, low: float, high: float, basis: str, sources: tuple[str, ...], event: str | None = None
) -> ComingUp:
    return _between(sown, floor(low * SOONER), ceil(high * LATER), basis, sources, event)


def _between(
    sown: date, low: int, high: int, basis: str, sources: tuple[str, ...], event: str | None = None
) -> ComingUp:
    return ComingUp(
        first=sown + timedelta(days=low),
        last=sown + timedelta(days=high),
        basis=f"{basis}; sown {day(sown)}",
        sources=sources,
        event=event,
    )


def _days(days: float) -> str:
    return f"about {round(days)} days"


@cache
def _table(crop: str) -> Sequence[tuple[int, float]]:
    """Warmth, and the part of the way to a seedling made in a day; 0 where none come up."""
    rows = [f for f in published(crop) if f.subject.startswith(COMES_UP) and f.low is not None]
    at = [(int(f.subject.removeprefix(COMES_UP).split()[0]), f.low or 0.0) for f in rows]
    return tuple(sorted((celsius, 1 / days if days else 0.0) for celsius, days in at))


def _rate(crop: str, celsius: float) -> float:
    """The part of the way made in a day; 0 outside the table."""
    table = _table(crop)
    for (below, slow), (above, fast) in pairwise(table):
        if below <= celsius <= above:
            return slow + (fast - slow) * (celsius - below) / (above - below)
    return 0.0


def _sources(crop: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(f.source for f in published(crop) if f.subject.startswith(COMES_UP)))
