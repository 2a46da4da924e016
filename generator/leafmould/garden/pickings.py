"""Pickings find their planting, and what was given away or eaten finds its picking."""

from __future__ import annotations

from collections.abc import Iterable

from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground
from leafmould.garden.raised import give_away, is_the_rest
from leafmould.garden.starts import open_unknown
from leafmould.garden.targets import Target, batches_of, settle_kinds, targets
from leafmould.notes.entries import Fate
from leafmould.values.problems import Level
from leafmould.values.quantities import GRAMS, Amount
from leafmould.values.when import When


def pick(ground: Ground, act: Act) -> None:
    """Attach a picking to the one planting it can mean, else to batches, else to the crop."""
    found = targets(ground, act)
    if not act.crops:
        _pick_unnamed(ground, act)
        return
    act.fates.extend(act.action.fates)
    for crop in act.crops:
        ground.picked[(act.when.last, crop)].append(act)
    found = [_opened(ground, act, target) for target in found]
    for target in found:
        for draft in target.found:
            draft.live(act.when.last)
    if any(len(target.found) > 1 for target in found):
        act.batches = batches_of(found)
        return
    drafts = list(dict.fromkeys(d for target in found for d in target.found))
    for draft in drafts:
        ground.settle_bed(draft, act)
        _tell_which_kind(ground, act, draft)
        _pick_from(draft, act, is_only=len(drafts) == 1)
    if len(drafts) == 1 and drafts[0].is_annual and _is_the_last(act, is_lifted=drafts[0].is_lifted):
        drafts[0].finished = act.when.last
    if drafts and not act.beds:
        act.inferred.append("bed: the only place where it stands")


def _tell_which_kind(ground: Ground, act: Act, draft: Draft) -> None:
    """ "picked 2 courgettes", where only "squash" was planted: it may be that, and it may be another plant."""
    if draft.picked_first is not None or not ground.kinds.members.keys() & set(draft.crops):
        return
    if set(act.crops) & set(draft.crops):
        return
    picked, stands = ground.crop_name(act.crops), ground.crop_name(draft.crops)
    beds = " and ".join(ground.bed_name(bed) for bed in ground.beds_of(draft, act.when.last))
    told = f"{picked} is taken for the {stands} in {beds}; no note says which kind of {stands} that is."
    ground.ask(act, Level.HINT, told)


def _is_the_last(act: Act, *, is_lifted: bool) -> bool:
    """Whether nothing is left to pick; "the last ripe ones" leave others, all the garlic leaves none."""
    last = ("the last", "the rest", "all") if is_lifted else ("the last", "the rest")
    is_last = any(amount.whole in last for amount in act.action.amounts)
    return is_last and "ripe" not in act.action.text.casefold().split()


def draw_fate(ground: Ground, act: Act) -> None:
    """What was given away or eaten comes first from that day's picking; the rest from the store."""
    if not act.crops and act.action.subject:
        return  # eggs, honey: of no planting
    settle_kinds(ground, act)
    picked = [
        picking
        for crop in act.crops
        for key in ground.kinds.may_mean(crop)
        for picking in ground.picked.get((act.when.last, key), ())
        if not act.beds or set(act.beds) & set(_beds_picked(picking))
    ]
    if not picked:
        _give_plants(ground, act)
        return
    for picking in _drawn_from(dict.fromkeys(picked), act):
        for draft in picking.drafts:
            act.reach(draft)
        act.batches = act.batches or picking.batches


def _opened(ground: Ground, act: Act, target: Target) -> Target:
    """A target with a planting: where none stands in the named bed, one whose start nobody noted."""
    if target.found or target.bed is None:
        return target
    draft = open_unknown(ground, act, crop=target.crop, bed=target.bed, variety=target.variety)
    return Target(crop=target.crop, bed=target.bed, variety=target.variety, found=(draft,))


def _pick_unnamed(ground: Ground, act: Act) -> None:
    """A picking without a crop means the only planting of its bed, if it has but one."""
    for bed in act.beds:
        standing = [d for d in ground.standing(bed=bed, crop=None, when=act.when) if d.ended is None]
        standing = [d for d in standing if (over := ground.over(d)) is None or over.on >= act.when.first]
        if len(standing) == 1 and len(act.beds) == 1:
            act.crops = standing[0].crops
            act.inferred.append("crop: the only one standing there")
            standing[0].live(act.when.last)
            _pick_from(standing[0], act, is_only=True)


def _pick_from(draft: Draft, act: Act, *, is_only: bool) -> None:
    act.reach(draft)
    draft.picked_first = _earlier(draft.picked_first, act.when)
    draft.picked_last = _later(draft.picked_last, act.when)
    if is_only:
        draft.pickings.append(act)


def _earlier(known: When | None, new: When) -> When:
    return new if known is None else min(known, new, key=lambda w: (w.first, w.last))


def _later(known: When | None, new: When) -> When:
    return new if known is None else max(known, new, key=lambda w: (w.last, w.first))


def _beds_picked(picking: Act) -> tuple[str, ...]:
    return picking.beds or tuple(bed for draft in picking.drafts for bed in draft.beds)


def _give_plants(ground: Ground, act: Act) -> None:
    """Young plants given away or thrown out come off the raised batch they stood in."""
    if act.verb != "gave away" and not any(a.unit == "seedling" for a in act.action.amounts):
        return
    meant = targets(ground, act, prefers_raised=True)
    found = list(dict.fromkeys(d for t in meant for d in t.found if d.is_raised and d.left != 0))
    for batch in found if len(found) == 1 or is_the_rest(act) else ():
        act.reach(batch)
        give_away(batch, act)


def _drawn_from(picked: dict[Act, None], act: Act) -> list[Act]:
    """Share an amount out over the day's pickings; which of them gave."""
    fate = next((a for a in act.action.amounts if _is_in(picked, a)), next(iter(act.action.amounts), None))
    if fate is None or fate.value is None:
        first = next(iter(picked))
        first.fates.append(Fate(kind=act.verb, amount=fate))
        return [first]
    needed, givers = _measure(fate), []
    for picking in picked:
        free = _free(picking, fate)
        if free <= 0 or needed <= 1e-9:
            continue
        taken = min(free, needed)
        amount = fate if taken == _measure(fate) else _amount(taken, fate)
        picking.fates.append(Fate(kind=act.verb, amount=amount))
        needed -= taken
        givers.append(picking)
    if not givers and not _is_in(picked, fate):
        first = next(iter(picked))
        first.fates.append(Fate(kind=act.verb, amount=fate))
        givers.append(first)
    return givers


def _free(picking: Act, like: Amount) -> float:
    """What is left of a picking, in grams or in the unit, after what already went somewhere."""
    had = sum(_measure(a) for a in picking.action.amounts if _same_kind(a, like))
    gone = sum(_gone(f.amount, had) for f in picking.fates if f.amount and _is_share(f.amount, like))
    return had - gone


def _is_in(picked: Iterable[Act], amount: Amount) -> bool:
    """Whether any of the pickings was measured so: of "6 jars from 4 kg" the kilograms were picked."""
    return any(_same_kind(a, amount) for p in picked for a in p.action.amounts)


def _is_share(amount: Amount, like: Amount) -> bool:
    return _same_kind(amount, like) or amount.whole is not None or amount.unit == "%"


def _gone(amount: Amount, had: float) -> float:
    if amount.whole in ("all", "the rest", "the last"):
        return had
    if amount.unit == "%":
        return had * (amount.value or 0.0) / 100
    return had / 2 if amount.whole == "half" else _measure(amount)


def _same_kind(a: Amount, b: Amount) -> bool:
    return a.unit == b.unit or (a.unit in GRAMS and b.unit in GRAMS)


def _measure(amount: Amount) -> float:
    if amount.unit in GRAMS:
        return amount.grams or 0.0
    return amount.value or 0.0


def _amount(taken: float, like: Amount) -> Amount:
    """A part of an amount, in its own unit."""
    value = taken / GRAMS[like.unit] if like.unit in GRAMS else taken
    written = f"{value:g} {like.unit}" if like.unit != "piece" else f"{value:g}"
    return Amount(
        written=written,
        low=value,
        high=value,
        unit=like.unit,
        is_about=like.is_about,
        measure_g=like.measure_g,
    )
