"""Plants that change their bed: all of a planting, or some of it, which become a child of its own."""

from __future__ import annotations

from dataclasses import replace

from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground
from leafmould.garden.portions import plants, portion
from leafmould.garden.starts import open_unknown, start
from leafmould.garden.targets import settle_kinds, targets


def move(ground: Ground, act: Act) -> None:
    """Move what is named; a container that moves house only changes its place, not its plantings."""
    source = _from_origin(act)
    settle_kinds(ground, source)
    act.crops = source.crops
    destination = act.beds[0] if len(act.beds) == 1 else None
    if destination is None or (not act.crops and not act.origins):
        return
    share = portion(act.action.amounts)
    if share.is_none:
        return
    found = _moved(ground, source, destination)
    if any(d.is_raised for d in found) and not _is_under_glass(ground, destination):
        act.action = replace(act.action, verb="planted")
        act.inferred.append("planted out: moved from where it was raised")
        start(ground, act)
        return
    if not found and act.crops:
        _arrive(ground, act, destination)
    for draft in found:
        if share.is_all or (len(found) == 1 and _is_whole_count(draft, share.number)):
            act.reach(draft)
            ground.move(draft, act.when.first, destination)
            draft.moved = act.when
        elif len(found) == 1:
            _split_off(ground, act, draft, destination)
    if len(found) > 1 and not share.is_all:
        act.batches = found if len({d.key for d in found}) == 1 else []


def _is_under_glass(ground: Ground, key: str) -> bool:
    bed = ground.lines.beds.get(key)
    return bed is not None and bed.kind == "under glass"


def _moved(ground: Ground, act: Act, destination: str) -> list[Draft]:
    if not act.crops:
        standing = [d for bed in act.beds for d in ground.standing(bed=bed, crop=None, when=act.when)]
        return [d for d in dict.fromkeys(standing) if _may_move(ground, d, act)]
    named = targets(ground, act)
    found = dict.fromkeys(d for target in named for d in target.found)
    return [d for d in found if destination not in ground.beds_of(d, act.when.first)]


def _may_move(ground: Ground, draft: Draft, act: Act) -> bool:
    over = ground.over(draft)
    return (
        draft.ended is None and draft.begins < act.when.last and (over is None or over.on >= act.when.first)
    )


def _from_origin(act: Act) -> Act:
    """The same act, looked at where the plants stood before."""
    return Act(
        id=act.id,
        number=act.number,
        entry=act.entry,
        action=act.action,
        when=act.when,
        beds=act.origins,
        crops=act.crops,
        varieties=act.varieties,
    )


def _is_whole_count(draft: Draft, number: int | None) -> bool:
    return number is not None and draft.number is not None and number >= draft.number


def _split_off(ground: Ground, act: Act, parent: Draft, bed: str) -> None:
    """So many plants become a planting of their own, with their parent's start."""
    child = open_unknown(ground, act, crop=act.crops[0], bed=bed, variety=None)
    number, child.number_estimated = plants(act.action.amounts)
    share = portion(act.action.amounts)
    if share.part is not None and parent.number is not None:
        number, child.number_estimated = parent.number - share.left_of(parent.number), True
    child.number, child.origin, child.parent = number, "moved", parent
    child.start_written = child.moved = act.when
    child.words, child.varieties = parent.words, parent.varieties
    child.started, child.started_between = parent.started, parent.started_between
    child.sown, child.planted, child.found = parent.sown, parent.planted, parent.found
    child.is_perennial, child.is_tender, child.months = parent.is_perennial, parent.is_tender, parent.months
    child.is_lifted = parent.is_lifted
    if parent.number is not None and number is not None:
        parent.number = max(0, parent.number - number)
    act.reach(parent)
    act.reach(child)


def _arrive(ground: Ground, act: Act, bed: str) -> None:
    """Plants nobody noted before: all that is known is that they stand there now."""
    draft = open_unknown(ground, act, crop=act.crops[0], bed=bed, variety=next(iter(act.varieties), None))
    draft.origin, draft.start_written, draft.moved = "moved", act.when, act.when
    draft.number, draft.number_estimated = plants(act.action.amounts)
    act.reach(draft)
