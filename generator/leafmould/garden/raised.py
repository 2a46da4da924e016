"""Raised batches: sown under glass, planted out from, and bought plants that take their place.

A batch drawn on is no planting of its own any more: its steps belong to what was planted out of it.
"""

from __future__ import annotations

from datetime import timedelta
from itertools import takewhile

from leafmould.garden.bed_lines import NOWHERE_KEY
from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground, of_variety
from leafmould.garden.portions import PLANTS, plants
from leafmould.garden.presumed import DAYS_IN_TRAYS
from leafmould.garden.seed_bought import is_seed_bought
from leafmould.values.names import fold

DAYS_BOUGHT_LASTS = 60
DAYS_IN_SEEDBED = 150


def draw(ground: Ground, act: Act, draft: Draft) -> None:
    """Give what is planted out its start; where its crop is in doubt, only from a batch in the same doubt."""
    if not draft.is_crop_doubtful:
        _draw(ground, act, draft)
    elif alike := [b for b in _waiting(ground, act, draft) if b.is_crop_doubtful and b.crops == draft.crops]:
        _take_batches(act, draft, alike)
    if draft.raised_in is None and act.origins:
        draft.raised_in = act.origins[0]


def _draw(ground: Ground, act: Act, draft: Draft) -> None:
    """From raised batches, else what was bought, else a seedbed."""
    batches = _waiting(ground, act, draft)
    bought = _bought(ground, act, draft)
    if bought is not None and _is_rather_bought(draft, bought, batches):
        _take_bought(act, draft, bought)
    elif batches:
        _take_batches(act, draft, batches)
    elif bought is not None:
        _take_bought(act, draft, bought)
    else:
        _take_from_seedbed(ground, act, draft)


def kinds_waiting(ground: Ground, act: Act, group: str) -> set[str]:
    """The kinds of which raised batches wait to be planted out."""
    found = ground.standing(bed=None, crop=group, when=act.when)
    members = ground.kinds.members[group]
    open_ones = [d for d in found if d.is_raised and _is_open(ground, d, act)]
    return {crop for d in open_ones for crop in d.crops if crop in members}


def give_away(draft: Draft, act: Act) -> None:
    """Take plants given away, or thrown out, off a batch; all of them close it."""
    number, _ = plants(act.action.amounts)
    if number is None or draft.left is None:
        if is_the_rest(act):
            draft.left = 0
    else:
        draft.left = max(0, draft.left - number)
    if draft.left == 0:
        draft.close(act.when, "given away" if act.verb == "gave away" else act.verb)


def is_the_rest(act: Act) -> bool:
    """Whether none are left after it."""
    return any(amount.whole in ("all", "the rest", "the last") for amount in act.action.amounts)


def _is_open(ground: Ground, batch: Draft, act: Act) -> bool:
    over = ground.over(batch)
    is_waiting = over is None or over.on >= act.when.first
    is_waiting = is_waiting and (act.when.first - batch.begins).days <= DAYS_IN_TRAYS
    return batch.ended is None and batch.left != 0 and is_waiting


def _waiting(ground: Ground, act: Act, draft: Draft) -> list[Draft]:
    """Open batches of the crop and variety, oldest first; those raised where the line says, if any."""
    found = {
        batch.serial: batch
        for crop in draft.crops
        for batch in ground.standing(bed=None, crop=crop, when=act.when)
        if batch.is_raised and batch.begins <= act.when.last and _is_open(ground, batch, act)
    }
    batches = sorted(found.values(), key=lambda b: (b.begins, b.serial))
    batches = _of_varieties(batches, draft.varieties)
    there = [b for b in batches if set(b.beds) & set(act.origins)]
    return there or batches


def _of_varieties(batches: list[Draft], varieties: tuple[str, ...]) -> list[Draft]:
    """Those of any of the varieties: "Krim or Cherokee" may be either."""
    meant = [of_variety(batches, variety) for variety in varieties or (None,)]
    return [batch for batch in batches if any(batch in found for found in meant)]


def _take_batches(act: Act, draft: Draft, batches: list[Draft]) -> None:
    """One batch gives its date; of several the oldest while written counts cover it, else a span."""
    is_one_variety = len({tuple(map(fold, batch.varieties)) for batch in batches}) == 1
    used = _used(batches, draft) if is_one_variety else batches
    for batch in used:
        _take(draft, batch)
    starts = [b.started for b in used if b.started]
    if len({(s.first, s.last) for s in starts}) == 1:
        draft.started = starts[0]
    elif starts:
        draft.started_between = (min(s.first for s in starts), max(s.last for s in starts))
    if is_one_variety:
        draft.varieties = draft.varieties or used[0].varieties
        _count_out(act, draft, used)
    act.inferred.append("start: taken from what was raised under glass")


def _used(batches: list[Draft], draft: Draft) -> list[Draft]:
    """The batches a planting out may come from: the oldest first, by what counts are written."""
    if not draft.number:
        return batches
    used, needed = [], draft.number
    for batch in batches:
        if needed <= 0:
            break
        if batch.left is None:
            return batches
        used.append(batch)
        needed -= batch.left
    return used


def _count_out(act: Act, draft: Draft, used: list[Draft]) -> None:
    """Take what was planted out off the batches; an uncounted draw on several leaves no count."""
    needed = draft.number
    for batch in used:
        if needed is None and len(used) > 1:
            batch.left = None
        if needed is None or batch.left is None:
            continue
        taken = min(batch.left, needed)
        batch.left -= taken
        needed -= taken
        if batch.left == 0:
            batch.close(act.when, "planted out")
    if len(used) == len(act.beds) == 1 and is_the_rest(act):
        used[0].left = 0
        used[0].close(act.when, "planted out")


def _take(draft: Draft, batch: Draft) -> None:
    batch.children.append(draft)
    draft.source = draft.source or batch.source
    is_variety_doubtful = batch.is_doubtful and not batch.is_crop_doubtful
    draft.is_doubtful = draft.is_doubtful or (is_variety_doubtful and not draft.varieties)
    if draft.raised_in is None and batch.beds[0] != NOWHERE_KEY:
        draft.raised_in = batch.beds[0]


def _bought(ground: Ground, act: Act, draft: Draft) -> Act | None:
    """The last buying of such plants within 60 days."""
    soon = act.when.first - timedelta(days=DAYS_BOUGHT_LASTS)
    keys = {key for crop in draft.crops for key in ground.kinds.may_mean(crop)}
    lately = [
        bought
        for key in sorted(keys)
        for bought in takewhile(lambda b: b.when.last >= soon, reversed(ground.bought.get(key, [])))
    ]
    fitting = [b for b in lately if b.when.first <= act.when.last and _fits(b, draft)]
    return max(fitting, key=lambda b: (b.when.last, b.id), default=None)


def _is_rather_bought(draft: Draft, bought: Act, batches: list[Draft]) -> bool:
    """Whether the variety points at the bought plants and at no batch."""
    return bool(draft.varieties and bought.varieties) and not any(b.varieties for b in batches)


def _fits(bought: Act, draft: Draft) -> bool:
    if is_seed_bought(bought.action) or any(a.grams for a in bought.action.amounts):
        return False
    wanted = {v.casefold() for v in draft.varieties}
    return not wanted or not bought.varieties or bool(wanted & {v.casefold() for v in bought.varieties})


def _take_bought(act: Act, draft: Draft, bought: Act) -> None:
    draft.origin = "bought"
    draft.source = draft.source or bought.action.source
    draft.varieties = draft.varieties or (bought.varieties if len(bought.varieties) == 1 else ())
    bought.reach(draft)
    act.inferred.append("origin: bought not long before")


def _take_from_seedbed(ground: Ground, act: Act, draft: Draft) -> None:
    """Sown in another bed and set out from there: the seedbed is its parent."""
    found: dict[int, Draft] = {}
    for crop in draft.crops:
        for other in ground.standing(bed=None, crop=crop, when=act.when):
            if _is_seedbed(ground, other, act, draft):
                found[other.serial] = other
    fitting = of_variety(list(found.values()), draft.varieties[0] if draft.varieties else None)
    if len(fitting) != 1:
        return
    parent = fitting[0]
    draft.parent, draft.started, draft.raised_in = parent, parent.sown, parent.beds[0]
    draft.varieties = draft.varieties or parent.varieties
    act.inferred.append("start: taken from the seedbed it was sown in")
    number, _ = plants(a for a in act.action.amounts if a.unit in PLANTS)
    if number is not None and parent.number is not None:
        parent.number = max(0, parent.number - number)
        if parent.number == 0:
            parent.close(act.when, "planted out", is_estimated=True)


def _is_seedbed(ground: Ground, other: Draft, act: Act, draft: Draft) -> bool:
    if other.sown is None or other.is_raised or other.ended or set(other.beds) & set(draft.beds):
        return False
    if (act.when.first - other.begins).days > DAYS_IN_SEEDBED or other.begins >= act.when.first:
        return False
    bed = ground.lines.beds.get(other.beds[0])
    return bool(set(other.beds) & set(act.origins)) or (bed is not None and bed.kind == "under glass")
