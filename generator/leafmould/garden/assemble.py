"""Entries to garden: which planting every line of every note belongs to.

Works on what a build may show, so private things are gone already. The only reader of entries. Goes
through all actions once, in the order of their days, then once more for what reaches whole beds; each
subject has a module of its own. What looks wrong in the result is left to `checks`.
"""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date

from leafmould.facts.tables import CropFact
from leafmould.garden.acts import acts_of, is_self_sown, is_start, new_places
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
from leafmould.garden.told import differ_in_problems_only, problems_of
from leafmould.notes.entries import Entry
from leafmould.notes.settings import Settings
from leafmould.values.problems import Problem

Handler = Callable[[Ground, Act], None]


def assemble(
    settings: Settings, entries: tuple[Entry, ...], facts: Mapping[str, CropFact], *, on: date
) -> Garden:
    """The garden as the notes tell it, as of one day; its problems include the readers'."""
    written = Written(settings=settings, entries=entries)
    return assemble_shown(written, written, facts, on=on)[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What a garden is assembled from."""

    settings: Settings
    entries: tuple[Entry, ...]


def assemble_shown(
    shown: Written, written: Written, facts: Mapping[str, CropFact], *, on: date
) -> tuple[Garden, tuple[Problem, ...]]:
    """The garden of what may be shown, and the problems of all that was written.

    Where nothing is hidden but problems, the second follows from the first; else it is assembled too.
    """
    with _nothing_collected():
        garden, ground = _assemble(shown, facts, on)
        checked = check(garden)
        garden = replace(garden, problems=problems_of(shown.settings, garden.entries, ground, checked))
        if shown == written:
            return garden, garden.problems
        if _hides_nothing(shown, written):
            entries = _in_order(written.entries, on)
        else:
            whole, ground = _assemble(written, facts, on)
            entries, checked = whole.entries, check(whole)
        return garden, problems_of(written.settings, entries, ground, checked)


def _hides_nothing(shown: Written, written: Written) -> bool:
    """Whether the two give the same garden: they differ in problems and in what assembling never looks at."""
    ours, theirs = shown.settings, written.settings
    bare = replace(
        theirs,
        latitude=ours.latitude,
        longitude=ours.longitude,
        elevation_m=ours.elevation_m,
        place_written=ours.place_written,
        show=ours.show,
        leave_out=ours.leave_out,
        private_words=ours.private_words,
        seeds=ours.seeds,
        months=ours.months,
        weather=ours.weather,
        problems=ours.problems,
    )
    return bare == ours and differ_in_problems_only(shown.entries, written.entries)


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


def _assemble(written: Written, facts: Mapping[str, CropFact], on: date) -> tuple[Garden, Ground]:
    """The garden without its problems, and the ground it was made from."""
    settings, entries = written.settings, _in_order(written.entries, on)
    ground = _ground(settings, entries, facts, on)
    acts = acts_of(entries, ground.lines, ground.kinds, on)
    for act in acts:
        ground.acts_by_line[(act.action.at.file, act.action.at.line)].append(act)
    handled = [(act, _handler(act)) for act in acts]
    for act, handle in handled:
        handle(ground, act)
    reach_all(ground, (act for act, handle in handled if handle is care and act.verb in REACHING))
    observe(ground, entries)
    _retarget(acts)
    note_beforehand(ground, settings.beforehand)
    give_ids(sorted((*ground.drafts, *ground.by_year), key=lambda d: (d.begins, d.serial)))
    group_batches(ground, acts)
    calendar = Calendar(on=on, is_southern=settings.is_southern, units=settings.units)
    pickings = {act.id: picking(ground, act) for act in acts if act.verb == "picked"}
    drafts = [draft for draft in (*ground.drafts, *ground.by_year) if draft.is_row]
    garden = garden_of(
        settings=settings,
        entries=entries,
        ground=ground,
        calendar=calendar,
        plantings=[planting(ground, draft, calendar, pickings) for draft in drafts],
        pickings=list(pickings.values()),
        events=[event(ground, act) for act in acts],
    )
    return garden, ground


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


def _in_order(entries: Iterable[Entry], on: date) -> tuple[Entry, ...]:
    """Those not later than today, by their days."""
    return tuple(sorted((entry for entry in entries if _is_past(entry, on)), key=_entry_order))


def _is_past(entry: Entry, on: date) -> bool:
    return entry.when is None or entry.when.first <= on


def _entry_order(entry: Entry) -> tuple[date, date, str]:
    when = entry.when
    return (when.first, when.last, entry.id) if when else (date.min, date.min, entry.id)
