"""Where plantings begin: sown, started under glass, planted out, found self-sown, known by year only.

Every start is a batch of its own. Drawing on raised batches is in `raised`, presumed endings of what
stood there before in `presumed`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.garden.acts import is_self_sown
from leafmould.garden.bed_lines import NOWHERE_KEY
from leafmould.garden.draft import Act, Draft
from leafmould.garden.ground import Ground, find, merge_parts, of_variety, still_alive
from leafmould.garden.model import Origin
from leafmould.garden.perennials import lasts, meets_own_planting
from leafmould.garden.portions import plants, portion
from leafmould.garden.raised import draw, kinds_waiting
from leafmould.garden.resown import resown, same_there, sown_before
from leafmould.notes.entries import Named, Sureness
from leafmould.values.problems import Level
from leafmould.values.when import on

DAYS_PICKED_TOO_SOON = 60
DAYS_STOOD_UNNOTED = 60
DAYS_STOOD_UNNOTED_FOR_GOOD = 365
"""So long before its first note a planting without a start is taken to have stood, so that what was
spread or sprayed there counts for it. Our choice, on the side of caution."""
DAYS_FOUND_AGAIN = 120
"""So long what is found self-sown may be what was found before; later it is the next to come up. Our choice."""
IN_DOUBT = (Sureness.DOUBTFUL, Sureness.PERHAPS)
MONTHS_GROWN = {"annual": 12, "overwintered": 24, "biennial": 24, "perennial": 12}


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """What one planting of a start holds."""

    crops: tuple[Named, ...]
    varieties: tuple[Named, ...]


def start(ground: Ground, act: Act) -> None:
    """Open a planting for each place and item of a start; "planted 0 kale" opens none."""
    if portion(act.action.amounts).is_none:
        return
    items = list(items_of(act))
    places: list[tuple[str, ...]] = [(bed,) for bed in _surest_beds(ground, act)]
    places = places or sown_before(ground, act)
    places = places or [_nowhere(ground, act)]
    if len(act.beds) > 1 and len(act.action.places) == 1:
        places = [act.beds]
        _ask_which(ground, act)
    single = len(items) == len(places) == 1
    for beds in places:
        for item in items:
            _start_one(ground, act, beds, item, is_single=single)


def _surest_beds(ground: Ground, act: Act) -> tuple[str, ...]:
    """ "in Tub 1 or Tub 2" is one planting: it stands in the first until a note says otherwise."""
    doubtful = {ground.lines.key_of(p) for p in act.action.places if p.sureness is Sureness.DOUBTFUL}
    sure = tuple(bed for bed in act.beds if bed not in doubtful)
    if doubtful:
        act.inferred.append("bed: in doubt, as it is written")
    if sure and sure != act.beds:
        names = " or ".join(f'"{ground.bed_name(bed)}"' for bed in act.beds)
        ground.ask(act, Level.QUESTION, f"{names}: which was it? It stands in the first of them.")
    return sure or act.beds


def items_of(act: Act) -> Iterator[Item]:
    """One item for each planting: a mix stays together, a list is taken apart."""
    crops, varieties = act.action.crops, act.action.varieties
    is_one = act.action.is_together or any(n.sureness in IN_DOUBT for n in (*crops, *varieties))
    if is_one or (len(crops) <= 1 and len(varieties) <= 1):
        yield Item(crops=crops, varieties=varieties)
    elif len(crops) <= 1:
        for variety in varieties:
            yield Item(crops=crops, varieties=(variety,))
    else:
        for crop in crops:
            yield Item(crops=(crop,), varieties=_varieties_of(crop, varieties))


def _varieties_of(crop: Named, varieties: tuple[Named, ...]) -> tuple[Named, ...]:
    kinds = {crop.key, *crop.of}
    return tuple(v for v in varieties if not v.of or kinds & set(v.of))


def _nowhere(ground: Ground, act: Act) -> tuple[str, ...]:
    if act.verb != "started":
        ground.ask(act, Level.HINT, 'no place is given, so it stands under "Place not noted".')
    return (ground.lines.nowhere(),)


def _ask_which(ground: Ground, act: Act) -> None:
    names = " or ".join(f'"{ground.bed_name(bed)}"' for bed in act.beds)
    named = act.action.places[0].name
    told = f'"{named}" has been split: {names} may be meant. Name one of them, or a part.'
    ground.ask(act, Level.QUESTION, told)


def _start_one(ground: Ground, act: Act, beds: tuple[str, ...], item: Item, *, is_single: bool) -> None:
    draft = _draft(ground, act, beds, item, is_single=is_single)
    if act.verb == "planted" and meets_own_planting(ground, act, draft):
        return
    if act.verb == "resowed" and resown(ground, act, draft):
        return
    if draft.origin == "self-sown" and _found_again(ground, act, draft):
        return
    if act.verb == "grew":
        draft.year = act.when.first.year
        _add_by_year(ground, draft, act)
        return
    if draft.origin != "self-sown" and not _is_place_in_doubt(act):
        _mark_same(ground, draft)
        _mark_neighbours(ground, draft)
    if act.verb == "planted":
        _plant_out(ground, act, draft)
    ground.add(draft)
    act.reach(draft)


def _draft(ground: Ground, act: Act, beds: tuple[str, ...], item: Item, *, is_single: bool) -> Draft:
    crops = tuple(dict.fromkeys(_kind(ground, act, named, beds, item) for named in _known(item.crops)))
    number, is_about = plants(act.action.amounts) if is_single else (None, False)
    varieties = tuple(v.name for v in item.varieties if v.sureness is not Sureness.UNKNOWN)
    draft = Draft(
        serial=len(ground.drafts),
        beds=beds,
        begins=act.when.first,
        start_written=act.when,
        crops=crops,
        words=tuple(named.name for named in _known(item.crops)),
        varieties=varieties,
        written_crops=tuple(ground.kinds.key_of(n) or "" for n in _known(item.crops)),
        written_varieties=varieties,
        written_bed=None if act.beds else NOWHERE_KEY,
        part=act.part,
        is_doubtful=any(n.sureness in IN_DOUBT for n in (*item.crops, *item.varieties)),
        is_crop_doubtful=any(n.sureness in IN_DOUBT for n in item.crops),
        number=number,
        number_estimated=is_about,
        is_under_cover=act.action.is_under_cover,
        source=act.action.source,
    )
    set_habit(ground, draft)
    _set_start(draft, act)
    return draft


def _known(crops: tuple[Named, ...]) -> tuple[Named, ...]:
    return tuple(named for named in crops if named.sureness is not Sureness.UNKNOWN)


def _set_start(draft: Draft, act: Act) -> None:
    """The date under the name of what was done."""
    if is_self_sown(act.action):
        draft.origin, draft.found = "self-sown", act.when
    elif act.verb == "started":
        draft.origin, draft.started, draft.is_raised, draft.left = "started", act.when, True, draft.number
    elif act.verb == "planted":
        draft.origin, draft.planted = "planted", act.when
    elif act.verb == "grew":
        draft.origin = "year only"
    else:
        draft.origin, draft.sown = "sown", act.when


def set_habit(ground: Ground, draft: Draft) -> None:
    """How its crops are grown: for one year, over the winter, or for good."""
    crops = [ground.kinds.crop(key) for key in draft.crops]
    draft.is_perennial = lasts(ground, draft)
    draft.is_tender = bool(crops) and all(crop.is_tender for crop in crops)
    draft.is_lifted = bool(crops) and all(crop.is_lifted for crop in crops)
    draft.months = max((MONTHS_GROWN[crop.grown_as] for crop in crops), default=12)


def _kind(ground: Ground, act: Act, named: Named, beds: tuple[str, ...], item: Item) -> str:
    """The crop meant; for a kind word the variety's, else the one kind standing or waiting there."""
    key = ground.kinds.key_of(named) or ""
    if key not in ground.kinds.members:
        return key
    members = set(ground.kinds.members[key])
    by_variety = {crop for variety in item.varieties for crop in variety.of} & members
    if len(by_variety) == 1:
        return by_variety.pop()
    standing = kinds_waiting(ground, act, key) if act.verb == "planted" else set()
    standing = (
        standing
        or {
            crop
            for bed in beds
            for draft in ground.standing(bed=bed, crop=key, when=act.when)
            if draft.ended is None and draft.begins < act.when.first
            for crop in draft.crops
        }
        & members
    )
    if len(standing) == 1:
        kind = next(iter(standing))
        act.inferred.append(f"{named.name}: taken as {ground.crop_name((kind,))}, the one kind there")
        return kind
    return key


def _plant_out(ground: Ground, act: Act, draft: Draft) -> None:
    parent = _thinned_from(ground, act, draft)
    if parent is not None:
        _take_after(draft, parent)
    else:
        draw(ground, act, draft)


def _thinned_from(ground: Ground, act: Act, draft: Draft) -> Draft | None:
    """ "thinned, replanted 8 in Arch": the planting the thinnings came from."""
    line = (act.action.at.file, act.action.at.line)
    for other in ground.acts_by_line[line]:
        if other.verb not in ("thinned", "divided") or other is act:
            continue
        beds = other.beds or other.origins or (None,)
        for bed in beds:
            for crop in draft.crops:
                found = find(ground, other, crop=crop, bed=bed, variety=None)
                found = [d for d in found if d.beds != draft.beds]
                if len(found) == 1:
                    return found[0]
    return None


def _take_after(draft: Draft, parent: Draft) -> None:
    """A child has its parent's start; its own place and number."""
    draft.parent = parent
    draft.started, draft.sown, draft.found = parent.started, parent.sown, parent.found
    draft.varieties = draft.varieties or parent.varieties
    if parent.number is not None and draft.number is not None and not parent.is_perennial:
        parent.number = max(0, parent.number - draft.number)  # a lasting plant divided stays one


def _found_again(ground: Ground, act: Act, draft: Draft) -> bool:
    """Whether what is found stands there already, self-sown or since nobody knows when."""
    known = [d for d in same_there(ground, draft) if d.origin in ("self-sown", "unknown")]
    soonest = draft.begins - timedelta(days=DAYS_FOUND_AGAIN)
    known = [d for d in known if d.is_perennial or d.begins >= soonest]
    known = still_alive(ground, of_variety(known, next(iter(draft.varieties), None)), act.when, by_name=True)
    if not known:
        return False
    last = known[-1]
    if draft.number is not None:
        last.number, last.number_estimated = draft.number, draft.number_estimated
    last.live(act.when.first)
    act.reach(last)
    return True


def _is_place_in_doubt(act: Act) -> bool:
    """ "in Tub 1?": whether another crop stood in its way nobody knows."""
    return any(place.sureness is Sureness.DOUBTFUL for place in act.action.places)


def _explain_early_pickings(ground: Ground, draft: Draft) -> None:
    """A picking shortly before its own sowing has no planting: the dates cannot both be right."""
    if draft.is_perennial:
        return
    soonest = draft.begins - timedelta(days=DAYS_PICKED_TOO_SOON)
    for other in same_there(ground, draft):
        if other.origin != "unknown" or other.ended is not None or other.begins < soonest:
            continue
        if draft.varieties and not of_variety([other], draft.varieties[0]):
            continue
        other.is_dissolved = True
        for act in list(other.acts):
            act.leave()
        other.pickings = []


def _mark_same(ground: Ground, draft: Draft) -> None:
    """Tell earlier plantings of the crop there, and pickings nobody could explain, of this new start."""
    if draft.is_raised or draft.is_crop_doubtful:
        return
    _explain_early_pickings(ground, draft)
    for other in same_there(ground, draft):
        if other.rival_on is None:
            other.rival_on = draft.begins


def _mark_neighbours(ground: Ground, draft: Draft) -> None:
    """Tell other crops that stand there that something was started in their place."""
    if draft.is_raised:
        return
    for bed in draft.beds:
        is_container = ground.lines.is_container(bed)
        if not is_container and draft.part is None:
            continue
        for other in ground.standing(bed=bed, crop=None, when=on(draft.begins)):
            if other.begins >= draft.begins or other.is_raised or set(other.crops) & set(draft.crops):
                continue
            if is_container or merge_parts(other.part, draft.part):
                other.displaced.append(draft.begins)


def _add_by_year(ground: Ground, draft: Draft, act: Act) -> None:
    ground.by_year.append(draft)
    act.reach(draft)


def _stood_from(ground: Ground, draft: Draft) -> date:
    """How far back a planting may have stood that was first noted when it was picked."""
    back = timedelta(days=DAYS_STOOD_UNNOTED_FOR_GOOD if draft.is_perennial else DAYS_STOOD_UNNOTED)
    soonest = draft.begins - back if draft.begins > date.min + back else date.min
    cleared = [day for bed in draft.beds for day in ground.cleared.get(bed, ()) if day <= draft.begins]
    return soonest if draft.is_perennial else max([soonest, *cleared[-1:]])


def open_unknown(
    ground: Ground, act: Act, *, crop: str, bed: str, variety: str | None, day: date | None = None
) -> Draft:
    """A planting known only because something was done to it: nobody noted its start."""
    named = next(
        (n for n in act.action.crops if crop in ground.kinds.may_mean(ground.kinds.key_of(n) or "")), None
    )
    origin: Origin = "unknown"
    draft = Draft(
        serial=len(ground.drafts),
        beds=(bed,),
        begins=day or act.when.first,
        crops=(crop,),
        words=(named.name,) if named else (ground.crop_name((crop,)),),
        varieties=(variety,) if variety else (),
        written_crops=(ground.kinds.key_of(named) or crop,) if named else (crop,),
        written_varieties=(variety,) if variety else (),
        part=act.part,
        origin=origin,
    )
    set_habit(ground, draft)
    draft.stood_from = _stood_from(ground, draft)
    ground.add(draft)
    return draft
