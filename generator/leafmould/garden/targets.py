"""What an act that names a crop is about: one planting, several batches, or the crop alone."""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground, find
from leafmould.notes.entries import Named, Sureness
from leafmould.values.names import fold


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """One crop in one bed that an act names, and the plantings it may be."""

    crop: str
    bed: str | None  # None: no bed was named
    variety: str | None
    found: tuple[Draft, ...]


def targets(ground: Ground, act: Act, *, prefers_raised: bool = False) -> list[Target]:
    """One target for each bed, crop and variety an act names."""
    settle_kinds(ground, act)
    return [
        Target(
            crop=crop,
            bed=bed,
            variety=variety,
            found=tuple(
                find(ground, act, crop=crop, bed=bed, variety=variety, prefers_raised=prefers_raised)
            ),
        )
        for bed in act.beds or (None,)
        for crop in act.crops
        for variety in _varieties(act, crop) or (None,)
    ]


def settle_kinds(ground: Ground, act: Act) -> None:
    """A kind word means the one kind that stands there, if there is one."""
    if not any(key in ground.kinds.members for key in act.crops):
        if not act.crops:
            _crop_from_variety(ground, act)
        return
    act.crops = tuple(dict.fromkeys(_kind(ground, act, key) for key in act.crops))


def settle(ground: Ground, act: Act, found: list[Target]) -> Draft | None:
    """Put an act where it belongs; the planting, if it is exactly one."""
    if act.action.batch is None and any(len(target.found) > 1 for target in found):
        act.batches = batches_of(found)
        return None
    drafts = list(dict.fromkeys(d for target in found for d in target.found))
    for draft in drafts:
        act.reach(draft)
        ground.settle_bed(draft, act)
    if not act.beds and len(drafts) == 1:
        act.inferred.append("bed: the only place where it stands")
    return drafts[0] if len(drafts) == 1 else None


def batches_of(found: list[Target]) -> list[Draft]:
    """The batches meant together, if all are of one bed, crop and variety; else none."""
    drafts = list(dict.fromkeys(d for target in found for d in target.found))
    return drafts if len({draft.key for draft in drafts}) == 1 else []


def _kind(ground: Ground, act: Act, key: str) -> str:
    if key not in ground.kinds.members:
        return key
    members = set(ground.kinds.members[key])
    by_variety = {c for v in act.action.varieties for c in v.of} & members
    if len(by_variety) == 1:
        return by_variety.pop()
    standing = {
        crop
        for bed in act.beds or (None,)
        for variety in act.varieties or (None,)
        for draft in find(ground, act, crop=key, bed=bed, variety=variety)
        for crop in draft.crops
    } & {*members, key}
    if len(standing) != 1 or key in standing:
        return key
    kind = standing.pop()
    act.inferred.append(f"{key}: taken as {ground.crop_name((kind,))}, the one kind there")
    return kind


def _crop_from_variety(ground: Ground, act: Act) -> None:
    """A variety that belongs to one crop names the crop too; of several, the one that stands there by that name."""
    crops = {crop for variety in act.action.varieties for crop in variety.of}
    if len(crops) > 1:
        crops = {crop for crop in crops if _stands_by_name(ground, act, crop)}
    if len(crops) == 1 and all(v.of for v in act.action.varieties):
        act.crops = (crops.pop(),)
        act.inferred.append(f"crop: {ground.crop_name(act.crops)}, from the variety")


def _stands_by_name(ground: Ground, act: Act, crop: str) -> bool:
    """Whether a planting of this crop was noted by one of the varieties the act names."""
    wanted = {tuple(fold(variety.name)) for variety in act.action.varieties}
    return any(
        wanted & {tuple(fold(variety)) for variety in draft.varieties}
        for bed in act.beds or (None,)
        for draft in ground.standing(bed=bed, crop=crop, when=act.when)
    )


def _varieties(act: Act, crop: str) -> tuple[str, ...]:
    """The varieties named that may be of this crop."""
    return tuple(v.name for v in act.action.varieties if _may_be_of(v, crop))


def _may_be_of(variety: Named, crop: str) -> bool:
    return variety.sureness is not Sureness.UNKNOWN and (not variety.of or crop in variety.of)
