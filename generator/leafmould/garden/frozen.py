"""The end of the assembling: drafts and acts become the frozen values everybody else reads."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground
from leafmould.garden.model import Event, Picking, Planting, Season
from leafmould.garden.perennials import seasons_of
from leafmould.garden.totals import add_up


@dataclass(frozen=True, slots=True, kw_only=True)
class Calendar:
    """The day of the build, and what turns on it."""

    on: date
    is_southern: bool
    units: str


def group_batches(ground: Ground, acts: Iterable[Act]) -> None:
    """Give batches of one bed, crop and variety that stood at one time a group of their own."""
    leader: dict[int, Draft] = {}
    by_key: dict[object, list[Draft]] = defaultdict(list)
    for draft in _rows(ground):
        by_key[(draft.is_raised, draft.key)].append(draft)
    for drafts in by_key.values():
        _chain(ground, drafts, leader)
    for act in acts:
        for other in act.batches[1:]:
            _join(act.batches[0], other, leader)
    sizes: dict[str, int] = defaultdict(int)
    for draft in _rows(ground):
        draft.group = f"{_leader(draft, leader).id}_batches"
        sizes[draft.group] += 1
    for draft in _rows(ground):
        if draft.group is not None and sizes[draft.group] == 1:
            draft.group = None


def planting(ground: Ground, draft: Draft, calendar: Calendar, picked: Mapping[str, Picking]) -> Planting:
    """A draft as a frozen planting, given all frozen pickings."""
    pickings = [picked[act.id] for act in draft.pickings]
    grams = [p.grams for p in pickings if p.grams is not None]
    ended_on, basis, is_estimated = _end(ground, draft, calendar.on)
    last = date(draft.year, 12, 31) if draft.year is not None else ended_on or calendar.on
    beds, bed_now = _beds(ground, draft, min(last, calendar.on))
    acts = sorted(draft.acts, key=_act_order)
    return Planting(
        id=draft.id,
        bed=draft.beds[0],
        bed_now=bed_now,
        beds=beds,
        part=draft.part,
        crops=draft.crops,
        words=draft.words,
        varieties=draft.varieties,
        is_doubtful=draft.is_doubtful,
        origin=draft.origin,
        number=draft.number,
        number_estimated=draft.number_estimated,
        started=draft.started,
        started_between=draft.started_between,
        sown=draft.sown,
        planted=draft.planted,
        moved=draft.moved,
        found=draft.found,
        came_up=draft.came_up,
        flowered=draft.flowered,
        first_picked=draft.picked_first,
        last_picked=draft.picked_last,
        cleared=draft.cleared,
        lost=draft.lost,
        ended_on=ended_on,
        end_basis=basis,
        end_is_estimated=is_estimated,
        year=draft.year if draft.year is not None else _year(draft),
        is_perennial=draft.is_perennial,
        is_under_cover=draft.is_under_cover,
        raised_in=draft.raised_in,
        source=draft.source,
        parent=draft.parent.id if draft.parent is not None and draft.parent.is_row else None,
        group=draft.group,
        pickings=tuple(p.id for p in sorted(pickings, key=_picking_order)),
        events=tuple(act.id for act in acts),
        entries=_entries(draft),
        seasons=_seasons(draft, pickings, calendar),
        picked=add_up(pickings, units=calendar.units),
        picked_g=sum(grams) if grams else None,
        picked_estimated=any(p.is_estimated for p in pickings),
    )


def event(ground: Ground, act: Act) -> Event:
    """An act as a frozen event, with the plantings it reached."""
    rows = [draft for draft in act.drafts if draft.is_row]
    beds = act.beds or tuple(
        dict.fromkeys(bed for d in rows for bed in ground.beds_of(d, act.when.last)) if len(rows) == 1 else ()
    )
    if not beds and act.verb == "moved":
        beds = act.origins
    group = act.batches[0].group if act.batches else None
    return Event(
        id=act.id,
        verb=act.verb,
        when=act.when,
        entry=act.entry.id,
        action=act.action,
        beds=beds,
        part=act.part,
        crops=act.crops,
        varieties=act.varieties,
        plantings=tuple(dict.fromkeys(draft.id for draft in rows)),
        group=group,
        inferred=tuple(dict.fromkeys(act.inferred)),
    )


def picking(ground: Ground, act: Act) -> Picking:
    """A picking as noted, with what it was drawn on for."""
    drafts = [draft for draft in act.drafts if draft.is_row]
    only = drafts[0] if len(drafts) == 1 else None
    bed = act.beds[0] if len(act.beds) == 1 else None
    if bed is None and not act.beds and only is not None:
        bed = ground.beds_of(only, act.when.last)[0]
    if bed is None and not act.beds and act.batches:
        bed = act.batches[0].beds[0]
    return Picking(
        id=act.id,
        when=act.when,
        crops=act.crops or (only.crops if only else ()),
        varieties=act.varieties or (only.varieties if only else ()),
        bed=bed,
        planting=only.id if only else None,
        group=act.batches[0].group if act.batches else None,
        amounts=act.action.amounts,
        fates=tuple(act.fates),
        entry=act.entry.id,
        at=act.action.at,
    )


def _rows(ground: Ground) -> list[Draft]:
    return [draft for draft in ground.drafts if draft.is_row]


def _chain(ground: Ground, drafts: list[Draft], leader: dict[int, Draft]) -> None:
    """Join each batch to the one before it, if that still stood when it was started."""
    last: Draft | None = None
    until = date.min
    for draft in sorted(drafts, key=lambda d: (d.begins, d.serial)):
        if last is not None and draft.begins < until:
            _join(last, draft, leader)
        end = _last_day(ground, draft)
        if last is None or end >= until:
            last, until = draft, end


def _last_day(ground: Ground, draft: Draft) -> date:
    if draft.ended is not None:
        return draft.ended.first
    over = ground.over(draft)
    return over.on if over else date.max


def _leader(draft: Draft, leader: dict[int, Draft]) -> Draft:
    while draft.serial in leader:
        draft = leader[draft.serial]
    return draft


def _join(one: Draft, other: Draft, leader: dict[int, Draft]) -> None:
    first, second = _leader(one, leader), _leader(other, leader)
    if first is second:
        return
    if (second.begins, second.serial) < (first.begins, first.serial):
        first, second = second, first
    leader[second.serial] = first


def _end(ground: Ground, draft: Draft, today: date) -> tuple[date | None, str | None, bool]:
    """When it ended, on what ground, and whether that is only presumed."""
    if draft.ended is not None:
        return draft.ended.last, draft.end_basis, draft.end_is_estimated
    over = ground.over(draft)
    if draft.origin == "year only" or over is None or over.on > today:
        return None, None, False
    return over.on, over.basis, not over.is_noted


def _beds(ground: Ground, draft: Draft, day: date) -> tuple[tuple[str, ...], str]:
    """All the beds it stood in, in order, and the one it stands in on its last day or today."""
    last = max(day, draft.begins)
    stays = [draft.beds, *((bed,) for moved_on, bed in draft.moves if moved_on <= last)]
    ends = [moved_on - timedelta(days=1) for moved_on, _ in draft.moves if moved_on <= last] + [last]
    found: list[str] = []
    for beds, until in zip(stays, ends, strict=True):
        for bed in beds:
            found.extend(_renamings(ground, bed, until, draft.part))
    now = ground.beds_of(draft, last)
    return tuple(dict.fromkeys(found)), now[0]


def _renamings(ground: Ground, bed: str, until: date, part: str | None) -> list[str]:
    """A bed and all it was called up to a day."""
    found: list[str] = [bed]
    now: tuple[str, ...] = (bed,)
    goal = ground.lines.on(bed, until, part)
    while set(now) != set(goal) and len(found) < 50:
        step = tuple(k for b in now for k in ground.lines.step(b, until, part))
        if step == now:
            break
        found.extend(step)
        now = step
    return found


def _entries(draft: Draft) -> tuple[str, ...]:
    """The notes that tell of it, by their dates."""
    days = {act.entry.id: act.when.first for act in sorted(draft.acts, key=_act_order, reverse=True)}
    days |= {e.id: e.when.first for e in draft.observed if e.when and e.id not in days}
    return tuple(sorted(days, key=lambda id: (days[id], id)))


def _year(draft: Draft) -> int | None:
    """The year of a start known no better."""
    return None if draft.begins == date.min else draft.begins.year


def _seasons(draft: Draft, pickings: list[Picking], calendar: Calendar) -> tuple[Season, ...]:
    if not draft.is_perennial:
        return ()
    return seasons_of(((p.when, p.grams) for p in pickings), is_southern=calendar.is_southern)


def _act_order(act: Act) -> tuple[date, date, str, int]:
    return (act.when.first, act.when.last, act.entry.id, act.number)


def _picking_order(picking: Picking) -> tuple[date, date, str]:
    return (picking.when.first, picking.when.last, picking.id)
