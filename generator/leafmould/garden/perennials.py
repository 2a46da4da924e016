"""Lasting plants: the ones a tree, shrub, vine or cane row opens by itself, and their picking seasons."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from leafmould.facts.tables import cultivars
from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground
from leafmould.garden.ids import date_word, joined
from leafmould.garden.model import Season
from leafmould.garden.seasons import first_month, season_name, season_of
from leafmould.notes.settings import BedSetting
from leafmould.values.dates import read_date
from leafmould.values.names import fold, slug
from leafmould.values.when import When


def open_own_plantings(ground: Ground, settings: Iterable[BedSetting]) -> None:
    """A planting for each bed that is one lasting plant, or a row of one kind, and says of what."""
    for setting in settings:
        bed = slug(setting.name)
        if not ground.lines.is_for_perennials(bed) or _is_renamed(ground, setting):
            continue
        crop = _own_crop(ground, setting)
        if crop is None:
            continue
        key, word = crop
        planted = _planted(setting)
        varieties = (setting.variety,) if setting.variety else ()
        draft = Draft(
            serial=len(ground.drafts),
            beds=(bed,),
            begins=planted.first if planted else setting.begun or date.min,
            crops=(key,),
            words=(word,),
            varieties=varieties,
            written_crops=(key,),
            origin="planted" if planted else "unknown",
            planted=planted,
            is_perennial=True,
        )
        draft.from_setting = joined(key, bed, date_word(planted) if planted else "standing", *varieties)
        ground.add(draft)


def lasts(ground: Ground, draft: Draft) -> bool:
    """Whether it is a lasting plant: by the life of its crops, or as the own crop of its kind of bed."""
    if draft.crops and all(ground.kinds.crop(key).grown_as == "perennial" for key in draft.crops):
        return True
    beds = [bed for bed in draft.beds if ground.lines.is_for_perennials(bed)]
    return bool(beds) and (not draft.crops or _own_planting(ground, draft) is not None)


def meets_own_planting(ground: Ground, act: Act, draft: Draft) -> bool:
    """Whether a planting noted is the one its bed opened by itself; then it only gets its date."""
    own = _own_planting(ground, draft)
    if own is None or act.part is not None or any(a.verb == "planted" for a in own.acts):
        return False
    if own.planted is not None and not own.planted.meets(act.when):
        return False
    own.planted, own.origin, own.number = act.when, "planted", draft.number or own.number
    own.varieties = own.varieties or draft.varieties
    act.reach(own)
    return True


def seasons_of(pickings: Iterable[tuple[When, float | None]], *, is_southern: bool) -> tuple[Season, ...]:
    """The pickings of a lasting plant by season; in the south a season turns on 1 July."""
    begins = first_month(is_southern=is_southern)
    by_year: dict[int, list[tuple[When, float | None]]] = {}
    for when, grams in pickings:
        by_year.setdefault(season_of(when.last, begins), []).append((when, grams))
    return tuple(_season(season_name(year, begins), by_year[year]) for year in sorted(by_year))


def _season(name: str, pickings: list[tuple[When, float | None]]) -> Season:
    weights = [grams for _, grams in pickings if grams is not None]
    return Season(
        name=name,
        first_picked=min((when for when, _ in pickings), key=lambda w: (w.first, w.last)),
        last_picked=max((when for when, _ in pickings), key=lambda w: (w.last, w.first)),
        picked_g=sum(weights) if weights else None,
    )


def _own_planting(ground: Ground, draft: Draft) -> Draft | None:
    for bed in draft.beds:
        for crop in draft.crops:
            for other in ground.standing(
                bed=bed, crop=crop, when=When(first=date.min, last=date.max, written="")
            ):
                if other.from_setting is not None and other.ended is None:
                    return other
    return None


def _own_crop(ground: Ground, setting: BedSetting) -> tuple[str, str] | None:
    """Key and word of the crop a bed says it holds, or that its name says."""
    if setting.crop:
        return ground.kinds.key_of_text(setting.crop), setting.crop
    return ground.kinds.in_name(setting.name) or _crop_of_variety(ground, setting.name)


def _crop_of_variety(ground: Ground, name: str) -> tuple[str, str] | None:
    """ "Bramley": a tree called by a variety that only one crop has."""
    crops = {crop for kept in cultivars() if fold(kept.name) == fold(name) for crop in kept.crops}
    return (key := crops.pop(), ground.kinds.crop(key).name) if len(crops) == 1 else None


def _is_renamed(ground: Ground, setting: BedSetting) -> bool:
    """Whether it only carries on a declared bed, whose planting it keeps."""
    return any(ground.lines.key_of_text(name) in ground.lines.settings_by_key for name in setting.was)


def _planted(setting: BedSetting) -> When | None:
    if not setting.planted:
        return None
    reading = read_date(setting.planted, order=None, base=None, is_southern=False)
    return reading.when if reading else None
