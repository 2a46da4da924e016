"""Sown again: what a resowing makes of the batch before it, in a bed or in trays.

An earlier batch that never came up ends as lost, by estimate; one that had come up is filled in.
"""

from __future__ import annotations

from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground, find, merge_parts, of_variety
from leafmould.values.when import on

NO_SIGN_OF_LIFE = frozenset({"started", "sowed", "resowed", "watered"})
"""Before a resowing these do not tell that anything had come up."""


def sown_before(ground: Ground, act: Act) -> list[tuple[str, ...]]:
    """ "resowed carrots" without a place means where they were sown, if that is one place."""
    if act.verb != "resowed":
        return []
    found = {
        draft.beds
        for crop in act.crops
        for draft in find(ground, act, crop=crop, bed=None, variety=next(iter(act.varieties), None))
        if draft.sown or draft.is_raised
    }
    if len(found) == 1:
        act.inferred.append("bed: the only place where it stands")
    return list(found) if len(found) == 1 else []


def resown(ground: Ground, act: Act, draft: Draft) -> bool:
    """Whether a resowing only fills in an earlier batch; in trays it is a raised batch like that one."""
    if draft.is_crop_doubtful:
        return False
    earlier = [
        d for d in same_there(ground, draft, also_raised=True) if (d.sown or d.is_raised) and not d.ended
    ]
    earlier = of_variety(earlier, next(iter(draft.varieties), None))
    earlier = [d for d in earlier if (over := ground.over(d)) is None or over.on >= draft.begins]
    if not earlier:
        return False
    last = earlier[-1]
    draft.varieties = draft.varieties or last.varieties
    if last.is_raised:
        draft.origin, draft.started, draft.sown = "started", act.when, None
        draft.is_raised, draft.left = True, draft.number
    if last.came_up is None and not any(a.verb not in NO_SIGN_OF_LIFE for a in last.acts):
        if not last.children:
            last.lost = act.when
            last.close(act.when, "presumed lost: resowed before anything came up", is_estimated=True)
        return False
    _fill_in(last, draft)
    last.live(act.when.first)
    act.reach(last)
    return True


def _fill_in(batch: Draft, draft: Draft) -> None:
    if batch.number is not None and draft.number is not None:
        batch.number += draft.number
    if batch.left is not None and draft.number is not None:
        batch.left += draft.number


def same_there(ground: Ground, draft: Draft, *, also_raised: bool = False) -> list[Draft]:
    """What stands of the same crop in the same bed, in no other part, from before that day."""
    found: dict[int, Draft] = {}
    for bed in draft.beds:
        for crop in draft.crops:
            for other in ground.standing(bed=bed, crop=crop, when=on(draft.begins)):
                elsewhere = other.part and draft.part and not merge_parts(other.part, draft.part)
                is_kept = also_raised or not other.is_raised
                if other.begins < draft.begins and is_kept and not elsewhere:
                    found[other.serial] = other
    return [found[serial] for serial in sorted(found, key=lambda s: (found[s].begins, s))]
