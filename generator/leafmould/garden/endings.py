"""Where plantings end in writing: cleared, lost, finished; a part of them, or a whole bed."""

from __future__ import annotations

from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground, find, is_still_meant, merge_parts, still_alive
from leafmould.garden.portions import Portion, portion
from leafmould.garden.starts import open_unknown
from leafmould.garden.targets import Target, settle, settle_kinds, targets
from leafmould.notes.entries import Sureness
from leafmould.values.problems import Level
from leafmould.values.wording import when_words

PARTS_OF_PLANTS = frozenset(
    {"leaf", "leaves", "foliage", "haulm", "haulms", "tops", "runners", "prunings", "windfalls"}
)

UPROOTED = frozenset({"felled", "grubbed", "dug", "uprooted", "removed", "took"})
"""Words for clearing that mean the plant itself, where a bed is one plant."""


def end(ground: Ground, act: Act) -> None:
    """End what an act ends; perennials only under their own name."""
    settle_kinds(ground, act)
    if not act.crops:
        _end_unnamed(ground, act)
        return
    share = portion(act.action.amounts)
    found = targets(ground, act, prefers_raised=_means_seedlings(act))
    if _is_only_part_of_plants(act):
        settle(ground, act, found)
        return
    drafts = _as_many(list(dict.fromkeys(d for target in found for d in target.found)), share)
    if not drafts:
        _end_unnoted(ground, act, found)
    elif len(drafts) == 1 or _is_all_in_named_beds(act, share):
        for draft in drafts:
            act.reach(draft)
            _tell_of_too_many(ground, act, draft, share)
            _end_share(draft, act, share)
    else:
        _end_one_of_several(ground, act, drafts)


def _tell_of_too_many(ground: Ground, act: Act, draft: Draft, share: Portion) -> None:
    """ "lost 20 leek" where 12 were planted."""
    number, stood = share.number, draft.number
    if act.verb != "lost" or number is None or stood is None or share.of is not None or number <= stood:
        return
    if not draft.number_estimated:
        told = f"{number} were lost, but only {stood} stood there by the notes."
        ground.ask(act, Level.WARNING, told)


def _as_many(drafts: list[Draft], share: Portion) -> list[Draft]:
    """ "4 of 12" means the planting of 12, if there is just one."""
    counted = [d for d in drafts if share.of is not None and d.number == share.of]
    return counted if len(counted) == 1 else drafts


def _is_only_part_of_plants(act: Act) -> bool:
    """ "cleared rhubarb leaves": the plants still stand."""
    return bool(PARTS_OF_PLANTS & set(act.action.text.casefold().split(",")[0].split()))


def _means_seedlings(act: Act) -> bool:
    return any(amount.unit == "seedling" for amount in act.action.amounts)


def _is_all_in_named_beds(act: Act, share: Portion) -> bool:
    return bool(act.beds) and share.is_all


def _end_one_of_several(ground: Ground, act: Act, drafts: list[Draft]) -> None:
    """Too little is said to end one of them: it stays with the batches, or with the crop."""
    if len({draft.key for draft in drafts}) == 1:
        act.batches = drafts
    if not act.beds:
        ground.ask(act, Level.HINT, f"{_where_they_stand(ground, act, drafts)}, so none of it is ended.")


def _where_they_stand(ground: Ground, act: Act, drafts: list[Draft]) -> str:
    """ "pea stands in Arch and Top bed", "pea stands in Arch more than once"."""
    beds = dict.fromkeys(bed for draft in drafts for bed in ground.beds_of(draft, act.when.last))
    *names, last = sorted(ground.bed_name(bed) for bed in beds)
    crop = ground.crop_name(act.crops)
    return (
        f"{crop} stands in {', '.join(names)} and {last}"
        if names
        else f"{crop} stands in {last} more than once"
    )


def _end_unnoted(ground: Ground, act: Act, found: list[Target]) -> None:
    """What was never noted may be lost or cleared all the same, unless it stands elsewhere."""
    for target in found:
        if target.bed is None:
            continue
        elsewhere = find(ground, act, crop=target.crop, bed=None, variety=target.variety)
        if elsewhere:
            _warn_of_other_place(ground, act, target, elsewhere)
            continue
        draft = open_unknown(ground, act, crop=target.crop, bed=target.bed, variety=target.variety)
        act.reach(draft)
        _end_share(draft, act, portion(act.action.amounts))


def _warn_of_other_place(ground: Ground, act: Act, target: Target, elsewhere: list[Draft]) -> None:
    """Most likely the wrong bed was written: the crop stands, but in another."""
    crop, bed = ground.crop_name((target.crop,)), ground.bed_name(target.bed or "")
    beds = {name for draft in elsewhere for name in ground.beds_of(draft, act.when.last)}
    told = f"no {crop} stands in {bed} on {when_words(act.when)}, so nothing was ended."
    ground.ask(act, Level.WARNING, told, ground.bed_name(beds.pop()) if len(beds) == 1 else None)


def _end_share(draft: Draft, act: Act, share: Portion) -> None:
    if draft.is_perennial and act.verb == "finished":
        return
    left = _left(draft, share)
    if share.is_all or left == 0:
        _end_whole(draft, act)
    elif share.part is not None and draft.number is not None:
        draft.number, draft.number_estimated = share.left_of(draft.number), True
    elif left is not None:
        draft.number = left
    if draft.left is not None and share.number is not None:
        draft.left = max(0, draft.left - share.number)


def _left(draft: Draft, share: Portion) -> int | None:
    """How many stand after so many went; None where nobody knows."""
    before = share.of if share.of is not None else draft.number
    if share.number is None or before is None:
        return None
    return max(0, before - share.number)


def _end_whole(draft: Draft, act: Act) -> None:
    if draft.ended is not None:
        return
    if act.verb == "lost":
        draft.lost = act.when
        draft.number = 0 if draft.number is not None else None
        draft.close(act.when, f"lost to {act.action.cause}" if act.action.cause else "lost")
    elif act.verb == "cleared":
        draft.cleared = act.when
        draft.close(act.when, "cleared")
    elif act.verb == "dug in":
        draft.close(act.when, "dug in")
    else:
        draft.finished = act.when.last


def _end_unnamed(ground: Ground, act: Act) -> None:
    """Without a crop: the whole bed if it was cleared, else the one planting that can be meant."""
    lasting = _named_by_bed(ground, act)
    for draft in lasting:
        act.reach(draft)
        _end_share(draft, act, portion(act.action.amounts))
    if lasting:
        return
    if act.verb == "cleared" or act.action.everything:
        _end_bed(ground, act)
        return
    open_ones = [
        draft
        for bed in act.beds
        for draft in _alive_in(ground, bed, act)
        if draft.is_annual and draft.ended is None and draft.begins < act.when.last
    ]
    waiting = [d for d in open_ones if d.came_up is None and d.last_sign is None] or open_ones
    if len(waiting) == 1:
        act.crops = waiting[0].crops
        act.inferred.append("crop: the only one that can be meant there")
        act.reach(waiting[0])
        _end_share(waiting[0], act, portion(act.action.amounts))


def _named_by_bed(ground: Ground, act: Act) -> list[Draft]:
    """ "lost Old pear", "felled Old pear": a bed that is one lasting plant has its name."""
    if act.verb != "lost" and act.action.text.casefold().split()[0] not in UPROOTED:
        return []
    found: list[Draft] = []
    for bed in act.beds:
        if ground.lines.is_for_perennials(bed):
            standing = ground.standing(bed=bed, crop=None, when=act.when)
            lasting = [d for d in standing if d.is_perennial and d.ended is None]
            own = [d for d in lasting if d.from_setting is not None]
            found += own or (lasting if len(lasting) == 1 else [])
    return found


def _alive_in(ground: Ground, bed: str, act: Act) -> list[Draft]:
    standing = ground.standing(bed=bed, crop=None, when=act.when)
    return still_alive(ground, standing, act.when, by_name=False)


def _end_bed(ground: Ground, act: Act) -> None:
    """ "cleared BED": all annuals there, started before that day; half of it asks and ends nothing.

    If it was cleared some time in July, what was started in July is ended only where nothing older stands.
    """
    if any(a.whole == "half" for a in act.action.amounts):
        if not any(p.at.line == act.action.at.line for p in act.entry.problems):
            ground.ask(act, Level.QUESTION, "which part was cleared? Nothing was ended.")
        return
    if any(place.sureness is Sureness.DOUBTFUL for place in act.action.places):
        _ask_which_was_cleared(ground, act)
        return
    beds = act.beds or (tuple(sorted(ground.lines.beds)) if act.action.everything else ())
    spared = {ground.lines.key_of(n) for n in act.action.but}
    for bed in beds:
        if bed in spared:
            continue
        if act.part is None and not act.action.but:
            ground.cleared[bed].append(act.when.last)
        standing = ground.standing(bed=bed, crop=None, when=act.when)
        ended = [draft for draft in standing if _is_ended_with_bed(ground, act, draft)]
        older = [draft for draft in ended if draft.begins < act.when.first]
        for draft in older or ended:
            act.reach(draft)
            _end_whole(draft, act)


def _ask_which_was_cleared(ground: Ground, act: Act) -> None:
    """ "cleared Tub 1?" and "cleared Tub 1 or Tub 2" end nothing."""
    names = " or ".join(f'"{place.name}"' for place in act.action.places)
    sure = (
        f"is it sure that {names} was cleared?"
        if len(act.action.places) == 1
        else f"{names}: which was cleared?"
    )
    ground.ask(act, Level.QUESTION, f"{sure} Nothing was ended.")


def _is_ended_with_bed(ground: Ground, act: Act, draft: Draft) -> bool:
    if draft.is_perennial or draft.ended is not None or draft.begins >= act.when.last:
        return False
    if draft.is_raised and not draft.children:
        return False  # trays that wait there grow in no bed
    if act.part is not None and not merge_parts(act.part, draft.part):
        return False
    if not set(ground.beds_of(draft, act.when.last)) <= set(act.beds) and act.beds:
        return False  # since a split nobody knows whether it stands in this one
    spared = {key for n in act.action.but for key in ground.kinds.may_mean(ground.kinds.key_of(n) or "")}
    if spared & set(draft.crops):
        return False
    over = ground.over(draft)
    return over is None or is_still_meant(over, act.when.first, by_name=False)
