"""What is done to plantings, or seen on them, between start and end.

Acts that name a crop are matched in the order of the days. Cover, feed, treatment and hens reach every
planting open that day, also those known only from later notes: they wait until all plantings are known.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable
from datetime import date, timedelta

from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground, are_apart, of_variety
from leafmould.garden.portions import plants
from leafmould.garden.starts import open_unknown, set_habit
from leafmould.garden.targets import Target, settle, settle_kinds, targets
from leafmould.notes.entries import Sureness
from leafmould.values.names import fold
from leafmould.values.when import When

REACHING = frozenset(
    {
        "covered", "uncovered", "netted", "mulched", "fed", "limed", "acidified", "manured", "dug in",
        "treated", "penned", "let out",
    }
)  # fmt: skip
"""Verbs that reach all that stands in a bed."""
RAISING = frozenset({"pricked out", "potted on", "hardened off"})
EVIDENCE = frozenset(
    {"came up", "thinned", "earthed up", "pinched out", "tied in", "staked", "cut back", "divided"}
)
"""Care that shows a crop stands there, though its start was never noted."""
ABOUT_STORES = frozenset({"used", "stored", "put up", "tried seed", "noted weather", "tested soil", "bought"})
FLOWERED = ("first flower", "in flower", "flower")


def care(ground: Ground, act: Act) -> None:
    """Attach care or a sight to the planting it means, to its batches, or leave it with the crop."""
    if act.verb in ABOUT_STORES or act.verb in REACHING:
        settle_kinds(ground, act)
        return
    found = targets(ground, act, prefers_raised=act.verb in RAISING)
    if not act.crops:
        _care_unnamed(ground, act)
        return
    if act.verb in EVIDENCE:
        found = [_opened(ground, act, target) for target in found]
    if act.verb == "came up":
        found = [_not_yet_up(target) for target in found]
    draft = settle(ground, act, found)
    for target in found:
        for one in target.found:
            one.live(act.when.last)
    if draft is not None:
        _note(draft, act)


def settle_unknown(ground: Ground, act: Act) -> None:
    """ "turned out to be": gives an unknown or doubtful planting its crop or variety.

    A line that names both what it was called and what it is makes two acts; the first is the old name.
    """
    line = ground.acts_by_line[(act.action.at.file, act.action.at.line)]
    named = sorted((a for a in line if a.verb == act.verb), key=lambda a: a.number)
    old, new = named[0], named[-1]
    draft = old.drafts[0] if old.drafts else _to_be_settled(ground, old)
    if draft is None:
        return
    act.reach(draft)
    if act is new:
        _settle_as(ground, draft, new)


def _settle_as(ground: Ground, draft: Draft, act: Act) -> None:
    named = [n for n in act.action.crops if n.sureness is not Sureness.UNKNOWN]
    settled = ground.kinds.key_of(named[-1]) if named else None
    if settled is not None:
        ground.settle_crops(draft, (settled,))
        draft.words = (named[-1].name,)
    if act.varieties:
        draft.varieties = act.varieties[-1:]
    draft.is_doubtful = draft.is_crop_doubtful = False
    was_perennial = draft.is_perennial
    set_habit(ground, draft)
    draft.is_perennial = draft.is_perennial or was_perennial


def reach_all(ground: Ground, acts: Iterable[Act]) -> None:
    """Let cover, feed, treatment and hens reach what stood in their beds, now that all is known."""
    standing = Standing(ground)
    for act in sorted(acts, key=lambda a: (a.when.last, a.id)):
        for draft in _reached(ground, standing, act):
            act.reach(draft)
            _note_cover(draft, act)


class Standing:
    """All plantings by bed and by crop, asked for one day after another."""

    def __init__(self, ground: Ground) -> None:
        self._ground = ground
        self._coming: dict[tuple[str, str], list[Draft]] = defaultdict(list)
        self._open: dict[tuple[str, str], list[Draft]] = defaultdict(list)
        for draft in sorted(ground.drafts, key=lambda d: (_from(d), d.serial), reverse=True):
            for key in _keys(draft):
                self._coming[key].append(draft)

    def at(self, key: tuple[str, str], until: When) -> list[Draft]:
        """What stood under a key on some day of a span; spans must end in order."""
        coming, standing = self._coming.get(key, []), self._open[key]
        while coming and _from(coming[-1]) <= until.last:
            standing.append(coming.pop())
        kept = [d for d in standing if not self._is_past(d, until, days=400)]
        self._open[key] = kept
        return [d for d in kept if not self._is_past(d, until, days=0)]

    def _is_past(self, draft: Draft, when: When, *, days: int) -> bool:
        if draft.is_dissolved:
            return True
        over = None if draft.ended else self._ground.over(draft)
        last = draft.ended.last if draft.ended else over.on if over else None
        return last is not None and last + timedelta(days=days) < when.first


def _from(draft: Draft) -> date:
    return draft.stood_from or draft.begins


def _keys(draft: Draft) -> set[tuple[str, str]]:
    beds = {*draft.beds, *(bed for _, bed in draft.moves)}
    return {("bed", bed) for bed in beds} | {("crop", crop) for crop in draft.crops}


def _reached(ground: Ground, standing: Standing, act: Act) -> list[Draft]:
    day = act.when
    if act.action.everything and not act.beds:
        beds: Iterable[str] = sorted(ground.lines.beds)
    else:
        beds = act.beds
    family = {bed: ground.lines.family_of(bed) for bed in beds}
    found = [
        draft
        for bed, names in family.items()
        for name in names
        for draft in standing.at(("bed", name), day)
        if bed in ground.beds_of(draft, day.last)
    ]
    if not act.beds and act.crops:
        found = [
            d for c in act.crops for k in ground.kinds.may_mean(c) for d in standing.at(("crop", k), day)
        ]
    return [d for d in dict.fromkeys(found) if _is_meant(ground, act, d)]


def _is_meant(ground: Ground, act: Act, draft: Draft) -> bool:
    if draft in act.drafts or (draft.is_raised and draft.children):
        return False
    meant = {key for crop in act.crops for key in ground.kinds.may_mean(crop)}
    if meant and not meant & set(draft.crops):
        return False
    if any(not of_variety([draft], variety) for variety in act.varieties[:1]):
        return False
    spared = {ground.lines.key_of(n) for n in act.action.but} | {
        key for n in act.action.but for key in ground.kinds.may_mean(ground.kinds.key_of(n) or "")
    }
    if spared & {*draft.crops, *draft.beds}:
        return False
    return act.part is None or draft.part is None or not _is_in_other_part(ground, act.part, draft)


def _is_in_other_part(ground: Ground, part: str, draft: Draft) -> bool:
    """Whether a planting stands surely elsewhere in its bed; parts in other words may be the same."""
    if draft.part is None or are_apart(part, draft.part):
        return draft.part is not None
    parts = [fold(p) for bed in draft.beds if bed in ground.lines.beds for p in ground.lines.beds[bed].parts]
    return fold(part) != fold(draft.part) and fold(part) in parts and fold(draft.part) in parts


def _note_cover(draft: Draft, act: Act) -> None:
    if act.verb == "covered":
        draft.is_under_cover = True
    elif act.verb == "uncovered":
        draft.is_under_cover = False


def _opened(ground: Ground, act: Act, target: Target) -> Target:
    if target.found or target.bed is None:
        return target
    draft = open_unknown(ground, act, crop=target.crop, bed=target.bed, variety=target.variety)
    return Target(crop=target.crop, bed=target.bed, variety=target.variety, found=(draft,))


def _not_yet_up(target: Target) -> Target:
    """Of several batches the one that had not come up."""
    waiting = tuple(d for d in target.found if d.came_up is None)
    found = waiting if len(waiting) == 1 else target.found
    return Target(crop=target.crop, bed=target.bed, variety=target.variety, found=found)


def _care_unnamed(ground: Ground, act: Act) -> None:
    """Care without a crop means the only planting of its bed, if it has but one."""
    if len(act.beds) != 1 or act.action.everything:
        return
    standing = _open_in(ground, act, lambda d: True)
    if len(standing) == 1:
        act.crops = standing[0].crops
        act.inferred.append("crop: the only one standing there")
        act.reach(standing[0])
        _note(standing[0], act)


def _open_in(ground: Ground, act: Act, wanted: Callable[[Draft], bool]) -> list[Draft]:
    found = []
    for bed in act.beds or (None,):
        crop = None if bed else ""
        for draft in ground.standing(bed=bed, crop=crop, when=act.when):
            over = ground.over(draft)
            is_open = draft.ended is None and (over is None or over.on >= act.when.first)
            if is_open and wanted(draft):
                found.append(draft)
    return found


def _to_be_settled(ground: Ground, act: Act) -> Draft | None:
    """The one planting an act settles: an unknown crop, else one in doubt or without a variety."""
    settled = {key for n in act.action.crops for key in ground.kinds.may_mean(ground.kinds.key_of(n) or "")}
    named = _open_in(ground, act, lambda d: bool(settled & set(d.crops)))
    if not act.beds:
        named = [d for key in sorted(settled) for d in ground.standing(bed=None, crop=key, when=act.when)]
    unknown = _open_in(ground, act, lambda d: not d.crops) if act.beds else []
    doubtful = [d for d in named if d.is_doubtful]
    bare = [d for d in named if not d.varieties or set(d.crops) & set(ground.kinds.members)]
    for found in (doubtful, unknown, bare, named):
        if len(found) == 1:
            return found[0]
    return None


def _note(draft: Draft, act: Act) -> None:
    """What an act tells about its planting: dates seen, numbers written."""
    number, is_about = plants(act.action.amounts)
    if act.verb == "came up":
        draft.came_up = draft.came_up or act.when
    elif act.verb == "saw" and (act.action.subject or "").casefold() in FLOWERED:
        draft.flowered = draft.flowered or act.when
    if number is None:
        return
    if act.verb == "came up" or (act.verb in RAISING and (draft.number is None or draft.left is None)):
        draft.number, draft.number_estimated = number, is_about
    elif act.verb == "thinned":
        draft.number = _thinned(draft.number, number, act.action.text)
    if draft.is_raised and not draft.children:
        draft.left = draft.number


def _thinned(before: int | None, number: int, text: str) -> int | None:
    """ "thinned to 20" leaves 20; "thinned 20" takes 20 away, where the number before is known."""
    if f"to {number}" in text:
        return number
    return before if before is None else max(0, before - number)
