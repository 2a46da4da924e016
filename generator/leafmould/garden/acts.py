"""Entries to acts: every action with its day, its beds and crops by key, in the order of the days.

The order does not depend on files or lines. A start counts from the first day of a coarse date, all else
from the last; on one day things begin before they end, and end before they are only looked at.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from leafmould.garden.bed_lines import BedLines, is_new_place
from leafmould.garden.draft import Act
from leafmould.garden.kinds import Kinds
from leafmould.notes.entries import Action, Entry, Named, Sureness
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.when import When

RAISING_STARTS = frozenset({"started"})
STARTS = frozenset({"started", "sowed", "resowed", "planted", "grew"})
ENDS = frozenset({"cleared", "lost", "finished"})
FATES = frozenset({"gave away", "ate", "composted", "stored", "put up", "fed animals"})
SELF_SOWN = "self-sown"

_START, _CARE = 2, 6
_PHASES = {
    "bought": 0, "started": 1, **dict.fromkeys(STARTS - RAISING_STARTS, _START), "moved": 3,
    **dict.fromkeys(ENDS, 4), "picked": 5, **dict.fromkeys(FATES, 7), "turned out": 8,
}  # fmt: skip


def acts_of(entries: Iterable[Entry], lines: BedLines, kinds: Kinds, on: date) -> list[Act]:
    """Every dated action not later than `on`, earliest first."""
    acts = [act for entry in entries for act in _acts_in(entry, lines, kinds, on)]
    return sorted(acts, key=_order)


def undated(entries: Iterable[Entry]) -> Iterator[Problem]:
    """One error for each entry with actions that have no day at all."""
    for entry in entries:
        if entry.when is None and any(a.when is None for a in entry.actions):
            if any(p.field == "date" for p in entry.problems):
                continue  # the reader has said so already
            told = "this note has no date, so what was done is shown but counts nowhere."
            yield Problem(at=entry.at, level=Level.ERROR, message=told, field="date")


def new_places(entries: Iterable[Entry], on: date) -> Iterator[tuple[Named, Location, date]]:
    """Every use of a place that no setting declares."""
    for entry in entries:
        day = entry.when.first if entry.when else date.max
        for named in entry.beds:
            yield named, entry.at, day
        for action in entry.actions:
            when = action.when or entry.when
            if when is None or when.first > on or _moves_a_container(action):
                continue
            for named in (*action.places, *action.origins):
                yield named, action.at, when.first


def is_start(action: Action) -> bool:
    """Whether a planting begins with it."""
    return action.verb in STARTS or is_self_sown(action)


def is_self_sown(action: Action) -> bool:
    """Whether plants were found that nobody sowed."""
    return action.verb == "saw" and (action.subject or "").casefold().startswith(SELF_SOWN)


def variety_names(action: Action) -> tuple[str, ...]:
    """The varieties an action names; one said to be unknown is none."""
    return tuple(v.name for v in action.varieties if v.sureness is not Sureness.UNKNOWN)


def _acts_in(entry: Entry, lines: BedLines, kinds: Kinds, on: date) -> Iterator[Act]:
    for number, action in enumerate(entry.actions, start=1):
        when = action.when or entry.when
        if when is None or when.first > on:
            continue
        for crop in action.crops:
            kinds.hear(crop)
        yield _act(entry, action, number, when, lines, kinds)


def _act(entry: Entry, action: Action, number: int, when: When, lines: BedLines, kinds: Kinds) -> Act:
    day = when.first if is_start(action) else when.last
    places, origins = action.places, action.origins
    if _moves_a_container(action):
        places, origins = (), (*places, *origins)
    elif _moves_house(action, lines):
        places = ()
    crops = [key for crop in action.crops if (key := kinds.key_of(crop)) is not None]
    return Act(
        id=f"{entry.id}:{number}",
        number=number,
        entry=entry,
        action=action,
        when=when,
        beds=_beds(places, lines, day, action.part),
        origins=_beds([n for n in origins if lines.key_of(n) in lines.beds], lines, day, action.part),
        crops=tuple(dict.fromkeys(crops)),
        varieties=variety_names(action) if action.varieties else (),
    )


def _beds(places: Sequence[Named], lines: BedLines, day: date, part: str | None) -> tuple[str, ...]:
    if len(places) == 1:
        return lines.on(lines.key_of(places[0]), day, part)
    return tuple(dict.fromkeys(key for named in places for key in lines.on(lines.key_of(named), day, part)))


def _moves_a_container(action: Action) -> bool:
    """ "moved tub 3 to Landing": the new place of a container is a remark, not a bed."""
    if action.verb != "moved" or action.crops or action.everything:
        return False
    return any(is_new_place(place) for place in action.places)


def _moves_house(action: Action, lines: BedLines) -> bool:
    """ "moved tub 3 into Hoop bed": the container goes there, and its plants stay in it."""
    if action.verb != "moved" or action.crops or action.everything or not action.origins:
        return False
    goes = all(lines.is_container(lines.key_of(named)) for named in action.origins)
    arrives = any(lines.is_container(lines.key_of(named)) for named in action.places)
    return goes and not arrives and "from" not in action.text.casefold().split()


def _order(act: Act) -> tuple[date, int, date, date, str, str, str, int]:
    starts = is_start(act.action)
    day = act.when.first if starts else act.when.last
    when = act.when
    return (
        day,
        _phase(act.action, starts=starts),
        when.first,
        when.last,
        act.verb,
        act.action.text,
        act.entry.id,
        act.number,
    )


def _phase(action: Action, *, starts: bool) -> int:
    phase = _PHASES.get(action.verb, _CARE)
    return _START if starts and phase == _CARE else phase
