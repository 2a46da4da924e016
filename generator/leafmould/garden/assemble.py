"""Entries to garden: which planting every line of every note belongs to.

Works on what a build may show, so private things are gone already. The only reader of entries. Goes
through all actions once, in the order of their days, then once more for what reaches whole beds; each
subject has a module of its own. What looks wrong in the result is left to `checks`.
"""

from __future__ import annotations

import gc
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from datetime import date

from leafmould.facts.tables import CropFact
from leafmould.garden.acts import acts_of, is_self_sown, is_start, new_places, undated
from leafmould.garden.bed_lines import BedLines
from leafmould.garden.beforehand import note_beforehand
from leafmould.garden.care import REACHING, care, reach_all, settle_unknown
from leafmould.garden.checks import check
from leafmould.garden.draft import Act
from leafmould.garden.endings import end
from leafmould.garden.frozen import Calendar, event, group_batches, picking, planting
from leafmould.garden.ground import Ground
from leafmould.garden.ids import give_ids
from leafmould.garden.kinds import Kinds
from leafmould.garden.lookups import garden_of
from leafmould.garden.model import Garden
from leafmould.garden.moves import move
from leafmould.garden.observations import observe
from leafmould.garden.perennials import open_own_plantings
from leafmould.garden.pickings import draw_fate, pick
from leafmould.garden.presumed import KillingFrosts
from leafmould.garden.starts import start
from leafmould.notes.entries import Entry
from leafmould.notes.settings import Settings
from leafmould.values.problems import Level, Location, Problem, in_file_order

Handler = Callable[[Ground, Act], None]


def assemble(
    settings: Settings, entries: tuple[Entry, ...], facts: Mapping[str, CropFact], *, on: date
) -> Garden:
    """The garden as the notes tell it, as of one day; its problems include the readers'."""
    with _nothing_collected():
        return _assemble(settings, entries, facts, on)


@contextmanager
def _nothing_collected() -> Iterator[None]:
    """No search for lost cycles while so many values are made that are all still in use.

    It took four seconds of ten with 30,000 notes, and grew faster than they did.
    """
    was_enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_enabled:
            gc.enable()


def _assemble(
    settings: Settings, entries: tuple[Entry, ...], facts: Mapping[str, CropFact], on: date
) -> Garden:
    entries = tuple(sorted((e for e in entries if _is_past(e, on)), key=_entry_order))
    ground = _ground(settings, entries, facts, on)
    acts = acts_of(entries, ground.lines, ground.kinds, on)
    for act in acts:
        ground.acts_by_line[(act.action.at.file, act.action.at.line)].append(act)
    for act in acts:
        _handler(act)(ground, act)
    reach_all(ground, (act for act in acts if act.verb in REACHING and _handler(act) is care))
    observe(ground, entries)
    _retarget(acts)
    note_beforehand(ground, settings.beforehand)
    give_ids(sorted((*ground.drafts, *ground.by_year), key=lambda d: (d.begins, d.serial)))
    group_batches(ground, acts)
    calendar = Calendar(on=on, is_southern=settings.is_southern, units=settings.units)
    garden = garden_of(
        settings=settings,
        entries=entries,
        ground=ground,
        calendar=calendar,
        plantings=[planting(ground, d, calendar) for d in (*ground.drafts, *ground.by_year) if d.is_row],
        pickings=[picking(ground, act) for act in acts if act.verb == "picked"],
        events=[event(ground, act) for act in acts],
    )
    return _with_problems(garden, settings, entries, ground)


def _ground(
    settings: Settings, entries: tuple[Entry, ...], facts: Mapping[str, CropFact], on: date
) -> Ground:
    """Beds and their own lasting plants, before the first note."""
    lines, kinds = BedLines(settings), Kinds(settings, facts)
    lines.add_undeclared(new_places(entries, on))
    frosts = KillingFrosts(
        _noted_frosts(entries, on),
        settings.first_frost,
        years=_years(entries, on),
        is_southern=settings.is_southern,
    )
    ground = Ground(lines, kinds, frosts, longest=_longest(entries))
    open_own_plantings(ground, settings.beds)
    return ground


def _longest(entries: Iterable[Entry]) -> int:
    """The longest span of days any entry or action is dated by."""
    whens = [when for entry in entries for when in (entry.when, *(a.when for a in entry.actions)) if when]
    return max(((when.last - when.first).days for when in whens), default=0)


def _handler(act: Act) -> Handler:
    if act.verb == "bought":
        return _remember_buying
    if is_start(act.action) and (act.action.crops or not is_self_sown(act.action)):
        return start
    if act.verb == "dug in" and act.action.crops and not act.action.subject:
        return end  # a green manure, not something spread
    return HANDLERS.get(act.verb, care)


def _remember_buying(ground: Ground, act: Act) -> None:
    for crop in act.crops:
        ground.bought[crop].append(act)


HANDLERS: Mapping[str, Handler] = {
    "cleared": end,
    "lost": end,
    "finished": end,
    "picked": pick,
    "moved": move,
    "turned out": settle_unknown,
    "gave away": draw_fate,
    "ate": draw_fate,
    "composted": draw_fate,
    "stored": draw_fate,
    "put up": draw_fate,
    "fed animals": draw_fate,
}
"""Who looks after a verb; all others are care."""


def _retarget(acts: Iterable[Act]) -> None:
    """The steps of a batch that was planted out belong to what came of it."""
    for act in acts:
        drawn = [d for d in (*act.drafts, *act.batches) if d.is_raised and d.children]
        for batch in drawn:
            for child in batch.children:
                if child.begins >= act.when.first:
                    act.reach(child)
            if act in batch.pickings and len(batch.children) == 1:
                batch.children[0].pickings.append(act)
        if drawn:
            act.batches = []


def _noted_frosts(entries: Iterable[Entry], on: date) -> list[date]:
    """Days on which the notes say it froze."""
    found = []
    for entry in entries:
        for action in entry.actions:
            when = action.when or entry.when
            if when is not None and when.is_exact and when.first <= on and _is_frost(action.verb, action):
                found.append(when.first)
    return found


def _is_frost(verb: str, action: object) -> bool:
    subject = (getattr(action, "subject", None) or "").casefold()
    readings = getattr(action, "readings", ())
    if verb == "noted weather":
        return "frost" in subject or any(name == "frost" for name, _ in readings)
    return verb == "saw" and subject.split()[-1:] == ["frost"]


def _years(entries: Iterable[Entry], on: date) -> range:
    firsts = [entry.when.first.year for entry in entries if entry.when]
    return range(min(firsts, default=on.year) - 1, on.year + 3)


def _is_past(entry: Entry, on: date) -> bool:
    return entry.when is None or entry.when.first <= on


def _entry_order(entry: Entry) -> tuple[date, date, str]:
    when = entry.when
    return (when.first, when.last, entry.id) if when else (date.min, date.min, entry.id)


def _with_problems(garden: Garden, settings: Settings, entries: tuple[Entry, ...], ground: Ground) -> Garden:
    """All there is to say, but for what the gardener has settled."""
    told = (p for entry in entries for p in entry.problems if not _is_told_elsewhere(p, ground.lines))
    read = list(_said_once(told))
    hinted = {_line(p.at) for p in read if NEW_BED.fullmatch(p.message)}
    made = (p for p in ground.lines.problems if _line(p.at) not in hinted)
    found = [*settings.problems, *read, *made, *ground.problems, *undated(entries), *check(garden)]
    settled = {_line(a.at) for e in entries for a in e.actions if e.is_settled or a.is_settled}
    kept = (p for p in found if p.level is Level.ERROR or _line(p.at) not in settled)
    return replace(garden, problems=in_file_order(kept))


NEW_BED = re.compile(r'"(.+)" is a new bed\.')
"""What the readers say of a place nobody declared, wherever it is named."""


def _is_told_elsewhere(problem: Problem, lines: BedLines) -> bool:
    """Whether it names a new bed that another line named first: each is told once, there."""
    m = NEW_BED.fullmatch(problem.message)
    bed = lines.beds.get(lines.key_of_text(m[1])) if m else None
    return bed is not None and bed.at is not None and _line(bed.at) != _line(problem.at)


def _line(at: Location) -> tuple[str, int | None]:
    return (at.file, at.line)


def _said_once(problems: Iterable[Problem]) -> Iterator[Problem]:
    """A hint that says the same of many lines ("Sun terrace" is a new bed) is given at the first."""
    said: set[str] = set()
    for problem in in_file_order(problems):
        if problem.level is not Level.HINT or problem.message not in said:
            said.add(problem.message)
            yield problem
