"""What looks wrong in an assembled garden, told where it was written.

Each check is a function from a garden to problems, and CHECKS is their list. Ordinary untidiness (never
cleared, no weight, no bed) is no problem.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date

from leafmould.garden.bed_lines import PERENNIAL_KINDS
from leafmould.garden.copies import counted_twice
from leafmould.garden.model import NOWHERE, Garden, Picking, Planting
from leafmould.garden.plan_checks import PLAN_CHECKS
from leafmould.garden.waits import Waits
from leafmould.values.problems import Level, Location, Problem, in_file_order
from leafmould.values.quantities import GRAMS, Amount
from leafmould.values.when import When
from leafmould.values.wording import counted, day, weight, when_words

Check = Callable[[Garden], Iterable[Problem]]

DAYS_PICKED_TOO_SOON = 60
NEEDS_A_BED = frozenset({"cleared", "covered", "netted", "fed", "limed", "acidified", "manured", "treated"})
BETWEEN_START_AND_END = frozenset({"came up", "thinned", "earthed up", "staked", "tied in", "pinched out"})
"""What can only be seen or done once a crop has been sown, or planted; before planting it may have stood elsewhere."""
NO_START_MISSED = PERENNIAL_KINDS | {NOWHERE}
"""Kinds of bed that open their planting by themselves, or are no place at all."""


def check(garden: Garden) -> tuple[Problem, ...]:
    """All that looks wrong, in file order."""
    return in_file_order(problem for one in CHECKS for problem in one(garden))


def picked_before_its_start(garden: Garden) -> Iterator[Problem]:
    """A picking shortly before the only start of that crop there."""
    starts = _starts(garden)
    for picking in garden.pickings:
        if picking.planting or picking.group or picking.bed is None or _is_shared(garden, picking):
            continue
        start = _start_soon_after(starts, picking)
        if start is not None:
            when, verb = start
            told = f"picked on {when_words(picking.when)}, before {verb} on {when_words(when)}."
            yield _at(garden, picking.id, Level.WARNING, told)


def start_never_noted(garden: Garden) -> Iterator[Problem]:
    """A planting known only from its picking or its end."""
    for planting in garden.plantings:
        if planting.origin != "unknown" or not planting.events:
            continue
        if garden.beds[planting.bed].kind in NO_START_MISSED:
            continue
        told = f"no note says when {_crop(garden, planting)} in {_bed(garden, planting.bed)} was sown or planted."
        yield _at(garden, _first_named(garden, planting), Level.HINT, told)


def more_given_than_picked(garden: Garden) -> Iterator[Problem]:
    """Shares of one picking that are more than the picking."""
    for picking in garden.pickings:
        written = garden.event_by_id[picking.id].action.fates
        if _is_asked(garden, picking.entry, picking.at):
            continue
        for amount in picking.amounts:
            gone = sum(_measure(f.amount, amount) for f in written if f.amount and _same(f.amount, amount))
            had = _highest(amount)
            if had is not None and gone > had * 1.001 and not amount.is_about:
                told = f"more went away than the {amount.written} picked."
                yield _at(garden, picking.id, Level.WARNING, told)


def picked_inside_a_wait(garden: Garden) -> Iterator[Problem]:
    """Something picked sooner after raw manure, animals or a treatment than is safe."""
    waits = Waits(garden)
    for picking in garden.pickings:
        if safe := waits.picked_inside(picking):
            why, ask = INSIDE[safe.wait.cause]
            told = (
                f"picked {counted((picking.when.first - safe.wait.last).days, 'day')} after {why} "
                f"({day(safe.wait.last)}); the wait is {counted(safe.days, 'day')}, until {day(safe.day)}. {ask}"
            )
            yield _at(garden, picking.id, Level.WARNING, told)


INSIDE = {
    "manure": ("raw manure", "Do not eat it uncooked; your local rules come first."),
    "animals": ("animals were in the bed", "Do not eat it uncooked; your local rules come first."),
    "treatment": ("a treatment", "Do not eat it before you have read the label: it has the say."),
}
"""How a cause to wait is named, and whom to defer to."""


def bed_had_ended(garden: Garden) -> Iterator[Problem]:
    """Something started in a bed after its last day, or before its first."""
    for planting in garden.plantings:
        bed, start = garden.beds[planting.bed], planting.in_bed_from
        if start is None or planting.origin in ("year only", "moved") or not planting.events:
            continue
        if bed.ended is not None and start.first > bed.ended and not bed.became:
            told = f'"{bed.name}" ended on {day(bed.ended)}, before this.'
            yield _at(garden, _start_of(garden, planting, start), Level.WARNING, told)
        elif bed.begun is not None and start.last < bed.begun and planting.parent is None:
            told = f'"{bed.name}" begins on {day(bed.begun)}, after this.'
            yield _at(garden, _start_of(garden, planting, start), Level.WARNING, told)


def ended_before_it_came(garden: Garden) -> Iterator[Problem]:
    """Seedlings, flowers or plants lost before anything was started; coarse dates that meet agree."""
    for event in garden.events:
        if event.verb != "came up" or len(event.plantings) != 1:
            continue
        planting = garden.planting_by_id[event.plantings[0]]
        start = planting.sown or planting.started
        if start is not None and event.when.last < start.first:
            told = f"came up on {when_words(event.when)}, before sowing on {when_words(start)}."
            yield _at(garden, event.id, Level.WARNING, told)


def seen_before_its_start(garden: Garden) -> Iterator[Problem]:
    """Seedlings, or work on a crop, shortly before its only start: without this it would belong nowhere in silence."""
    starts = _starts(garden)
    for event in garden.events:
        if event.verb not in BETWEEN_START_AND_END or event.plantings or event.group or len(event.crops) != 1:
            continue
        beds = event.beds or tuple(sorted({bed for bed, crop in starts if crop == event.crops[0]}))
        soon = [s for bed in beds if (s := _soonest(starts, bed, event.crops[0], event.when))]
        soon = [start for start in soon if start[2] == "sowing"]
        if soon:
            _, when, verb = min(soon, key=lambda start: start[0])
            told = f"{event.verb} on {when_words(event.when)}, before {verb} on {when_words(when)}."
            yield _at(garden, event.id, Level.WARNING, told)


def more_lost_than_stood(garden: Garden) -> Iterator[Problem]:
    """ "lost 4 of 3": more plants lost than there were by the same line."""
    for event in garden.events:
        for amount in event.action.amounts if event.verb in ("lost", "came up") else ():
            if amount.of is not None and amount.value is not None and amount.value > amount.of:
                yield _at(garden, event.id, Level.WARNING, f"{amount.written} is more than there were.")


def more_came_up_than_tried(garden: Garden) -> Iterator[Problem]:
    """ "tested 10 seeds, 12 came up": one of the two numbers is a slip."""
    for event in garden.events:
        for amount in event.action.amounts if event.verb == "tried seed" else ():
            if amount.of is not None and amount.value is not None and amount.value > amount.of:
                told = f"{amount.value:g} came up of {amount.of:g} seeds. Which is right?"
                yield _at(garden, event.id, Level.QUESTION, told)


def more_given_than_ever_picked(garden: Garden) -> Iterator[Problem]:
    """Given away or eaten, by weight, and more than all notes so far say was picked of it."""
    for event in garden.events:
        if event.verb not in ("gave away", "ate") or len(event.crops) != 1:
            continue
        gone = sum(amount.grams or 0.0 for amount in event.action.amounts)
        had = sum(
            p.grams or 0.0
            for p in (garden.pickings if gone else ())
            if event.crops[0] in p.crops and p.when.first <= event.when.last
        )
        if gone > had * 1.001 and had:
            crop, units = garden.crops[event.crops[0]].name, garden.units
            told = f"{weight(gone, units)} is more than the {weight(had, units)} of {crop} picked so far."
            yield _at(garden, event.id, Level.HINT, told)


def split_not_settled(garden: Garden) -> Iterator[Problem]:
    """A planting whose bed was split, and no note says which of the new beds it stands in."""
    for planting in garden.plantings:
        if len(planting.beds) < 3 or not planting.events or planting.origin == "year only":
            continue
        for key in planting.beds:
            now = [bed for bed in garden.beds[key].became if bed in planting.beds]
            if len(now) > 1:
                names = " or ".join(f'"{_bed(garden, bed)}"' for bed in now)
                crop, old = _crop(garden, planting), _bed(garden, key)
                told = f'"{old}" has been split. Does {crop} stand in {names}? Name one in a note about it.'
                yield _at(garden, _first_named(garden, planting), Level.QUESTION, told)


def nothing_named(garden: Garden) -> Iterator[Problem]:
    """A bed was cleared or fed, but none the garden knows is named."""
    for event in garden.events:
        if event.verb not in NEEDS_A_BED or event.action.everything:
            continue
        if event.beds or event.crops or _is_asked(garden, event.entry, event.action.at):
            continue
        told = f'"{event.action.text}" names no bed and no crop known here. Which was {event.verb}?'
        yield _at(garden, event.id, Level.QUESTION, told)


CHECKS: tuple[Check, ...] = (
    picked_before_its_start,
    start_never_noted,
    more_given_than_picked,
    bed_had_ended,
    picked_inside_a_wait,
    ended_before_it_came,
    seen_before_its_start,
    more_lost_than_stood,
    more_came_up_than_tried,
    more_given_than_ever_picked,
    split_not_settled,
    nothing_named,
    counted_twice,
    *PLAN_CHECKS,
)


def _is_asked(garden: Garden, entry: str, at: Location) -> bool:
    """Whether the reader has something to say about this line already."""
    return any(
        (problem.at.file, problem.at.line) == (at.file, at.line)
        for problem in garden.entry_by_id[entry].problems
    )


def _at(garden: Garden, event: str, level: Level, message: str) -> Problem:
    action = garden.event_by_id[event].action
    return Problem(at=action.at, level=level, message=message, field=action.field)


def _first_named(garden: Garden, planting: Planting) -> str:
    """The first event that names its crop; before it only things that reached the whole bed."""
    named = (id for id in planting.events if set(garden.event_by_id[id].crops) & set(planting.crops))
    return next(named, planting.events[0])


def _start_of(garden: Garden, planting: Planting, start: When) -> str:
    """The event that put it into its bed."""
    then = (id for id in planting.events if garden.event_by_id[id].when == start)
    return next(then, planting.events[0])


def _bed(garden: Garden, key: str) -> str:
    return garden.beds[key].name


def _crop(garden: Garden, planting: Planting) -> str:
    return " and ".join(garden.crops[key].name for key in planting.crops) or "the unknown crop"


def _starts(garden: Garden) -> Mapping[tuple[str, str], list[tuple[date, When, str]]]:
    """Every start by bed and crop, the earliest first."""
    found: dict[tuple[str, str], list[tuple[date, When, str]]] = defaultdict(list)
    for planting in garden.plantings:
        start = planting.in_bed_from
        if start is not None and planting.origin != "year only":
            verb = _beginning(planting, start)
            for crop in planting.crops:
                found[(planting.bed, crop)].append((start.first, start, verb))
    return {key: sorted(starts, key=lambda s: (s[0], s[2])) for key, starts in found.items()}


def _beginning(planting: Planting, start: When) -> str:
    """What was done on the day it took its place in the bed, as "before ... on"."""
    known = {"planting": planting.planted, "moving": planting.moved, "finding": planting.found}
    return next((word for word, when in known.items() if when == start), "sowing")


def _start_soon_after(
    starts: Mapping[tuple[str, str], list[tuple[date, When, str]]], picking: Picking
) -> tuple[When, str] | None:
    """The first start of a crop picked, in its bed, within 60 days after the picking."""
    for crop in picking.crops:
        start = _soonest(starts, picking.bed or "", crop, picking.when)
        if start is not None:
            return start[1:]
    return None


def _soonest(
    starts: Mapping[tuple[str, str], list[tuple[date, When, str]]], bed: str, crop: str, when: When
) -> tuple[date, When, str] | None:
    """The first start of a crop in a bed within 60 days after something."""
    known = starts.get((bed, crop), [])
    place = bisect_right(known, when.last, key=lambda s: s[0])
    if place < len(known) and (known[place][0] - when.last).days <= DAYS_PICKED_TOO_SOON:
        return known[place]
    return None


def _is_shared(garden: Garden, picking: Picking) -> bool:
    return len(garden.event_by_id[picking.id].plantings) > 1


def _same(a: Amount, b: Amount) -> bool:
    return a.unit == b.unit or (a.unit in GRAMS and b.unit in GRAMS)


def _highest(amount: Amount) -> float | None:
    if amount.high is None:
        return None
    return amount.high * GRAMS.get(amount.unit, 1.0)


def _measure(amount: Amount, like: Amount) -> float:
    return (amount.low or 0.0) * (GRAMS.get(amount.unit, 1.0) if like.unit in GRAMS else 1.0)
