"""What clauses of a line take from each other and from the header.

A later clause inherits crop and place from the one before; the header fills what is left. Runs on filled
drafts; what is still missing then is asked in `lacking`.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

from leafmould.notes.by_sentence import tells_of_another
from leafmould.notes.draft import Done, Draft, Item
from leafmould.notes.entries import Named
from leafmould.notes.set_right import drop_kind, with_last
from leafmould.notes.typed import Typed
from leafmould.notes.words.prepositions import ARTICLES, FILLERS, JOINS
from leafmould.values.names import fold
from leafmould.values.problems import Level

REMARK_LINKS = JOINS | ARTICLES | FILLERS


HOLDS_HARVEST = frozenset({"picked", "collected", "cleared", "thinned", "pruned"})


WHOLE_BED_ENDS = frozenset({"noted weather", "collected", "opened", "fed animals", "released"})


EARLIER = frozenset({"sowed", "planted", "started", "pricked out", "potted on", "moved"})


def closes_with_earlier(done: list[Done]) -> bool:
    """ "leeks showing in tub 3, sown three weeks ago": the last date is that of the sowing alone."""
    last = done[-1]
    return (
        len(done) > 1
        and last.verb.name in EARLIER
        and done[-2].verb.name not in EARLIER
        and last.is_after_comma
        and not last.draft.has_crop
        and not last.draft.places
    )


def share_backward(done: list[Done], typed: Typed) -> None:
    """ "thinned and weeded carrots in Arch": the first verb takes the object of the second.

    In a list with commas it does so only where the next verb was bare too: "weeded, watered and fed Arch".
    """
    were_bare = [clause.is_bare for clause in done]
    for i in range(len(done) - 2, -1, -1):
        first, second = done[i], done[i + 1]
        if were_bare[i] and not second.is_bare:
            if second.is_after_comma and not were_bare[i + 1]:
                _take_place(first.draft, second.draft)
            else:
                _take_over(first.draft, second.draft)
                first.is_bare = False

    for before, clause in itertools.pairwise(done):
        if _is_of_next(before, clause, typed):
            before.draft.items = [replace(item, amounts=[], spans=[]) for item in clause.draft.items]
            before.draft.is_loose = before.draft.is_loose or clause.draft.is_loose


def _is_of_next(before: Done, clause: Done, typed: Typed) -> bool:
    """ "pinched out side shoots and took the lower leaves off Moneymaker": of one plant."""
    draft = before.draft
    is_told = all(draft.covers(typed.starts[start], "subject") for start, _, _ in draft.left)
    is_bare = (
        draft.subject is not None and is_told and not (draft.has_crop or draft.places or draft.everything)
    )
    is_care = before.verb.name in PLANT_CARE and clause.verb.name in PLANT_CARE | {
        "pruned",
        "fed",
        "watered",
        "staked",
    }
    return is_bare and is_care and clause.draft.has_crop and not clause.is_after_comma


PLANT_CARE = frozenset({"pinched out", "tied in"})
"""Done to plants and not to a bed, though a bed may stand for them."""


def _take_over(to: Draft, source: Draft) -> None:
    to.items = [replace(item, spans=list(item.spans)) for item in source.items]
    to.total, to.is_each = list(source.total), source.is_each
    to.everything, to.but, to.is_loose = source.everything, source.but, source.is_loose
    to.spans += [s for s in source.spans if s[0] in ("everything", "but", "batch")]
    to.when, to.batch = to.when or source.when, source.batch
    _take_place(to, source)


def _take_place(to: Draft, source: Draft) -> None:
    to.places, to.origins, to.part = list(source.places), list(source.origins), source.part
    to.spans += [s for s in source.spans if s[0] in ("place", "part", "origin")]


def share_date_forward(done: list[Done]) -> None:
    """ "cleared the peas on 3 May and planted leeks": both were done that day."""
    for before, clause in itertools.pairwise(done):
        if clause.draft.when is None and not clause.is_after_comma and before.verb.name not in EARLIER:
            clause.draft.when = before.draft.when


GROUND = frozenset({"bed", "ground", "soil", "patch", "spot", "space"})
OF_GROUND = frozenset(
    {"limed", "manured", "mulched", "dug in", "weeded", "cleared", "covered", "watered", "fed"}
)


def _is_of_ground(draft: Draft, clause: Done, typed: Typed) -> bool:
    """ "pulled up the cabbages and limed the bed": nothing was done to the cabbages."""
    return clause.verb.name in OF_GROUND and any(
        end - start <= 2 and typed.words[end - 1] in GROUND for start, end, _ in draft.left
    )


def inherit(done: list[Done], typed: Typed) -> None:
    """A later clause takes from the one before what it lacks: crop, place, part."""
    for before, clause in itertools.pairwise(done):
        draft, slots = clause.draft, clause.verb.slots
        takes_crop = "crop" in slots or "crop!" in slots
        if (
            draft.everything
            or clause.verb.name in WHOLE_BED_ENDS
            or clause.verb.name == "bought"
            or before.verb.name in WHOLE_BED_ENDS
        ):
            continue
        _name_its_own(draft, before.draft)
        own_crop, own_place = draft.has_crop, bool(draft.places)
        takes_crop = takes_crop and not _is_of_ground(draft, clause, typed)
        if (
            clause.verb.name == "resowed"
            and own_crop
            and before.draft.has_crop_named
            and not _is_written(draft)
        ):
            _keep_crop(draft, before.draft)  # "cleared the coriander and resowed with 'Calypso'"
        if (
            takes_crop
            and not own_crop
            and not (
                own_place
                and "bed" in slots
                and "crop!" not in slots
                and not (clause.is_pronoun or clause.verb.name in PLANT_CARE)
            )
            and before.draft.has_crop
            and not (draft.subject and "object" in slots and clause.verb.name != "treated")
        ):
            _inherit_crop(draft, before.draft)
        if own_place and not own_crop and not clause.is_after_comma and _is_of_both(before, clause, typed):
            before.draft.places = list(draft.places)
            before.draft.part = before.draft.part or draft.part
        if (
            "place" in slots
            and not own_place
            and before.draft.places
            and before.verb.name != "bought"
            and not tells_of_another(before, clause, typed)
        ):
            draft.places = list(before.draft.places)
            draft.part = draft.part or before.draft.part
        draft.everything = draft.everything or (
            before.draft.everything and not own_crop and not own_place and "bed" in slots
        )
        draft.batch = draft.batch or (before.draft.batch if not own_crop else None)


def _is_of_both(before: Done, clause: Done, typed: Typed) -> bool:
    """ "hoed between the onions and mulched the gap with bark, Top bed": a place that closes the line is that of both."""
    if before.draft.places or before.draft.origins:
        return False
    if clause.verb.name in PLANT_CARE:
        return True
    starts = [start for slot, start, _ in clause.draft.spans if slot == "place"]
    return (
        bool(starts)
        and before.draft.has_crop
        and any(typed.breaks[i] for i in range(1, typed.count) if typed.starts[i] == starts[0])
    )


def _name_its_own(draft: Draft, before: Draft) -> None:
    """ "slugs had the lettuce. Resown, Little Gem": the kind of it that the next clause names."""
    for item in draft.items:
        own = next(
            (c for old in before.items for c in old.crops if [x.key for x in item.crops] == [c.key]), None
        )
        if (
            own is None
            or item.varieties
            or not item.crops[0].written.istitle()
            or own.written == item.crops[0].written
        ):
            continue
        written = item.crops[0].written
        if " " in written and fold(written) != fold(own.written):
            item.varieties = [replace(item.crops[0], key=written, name=written, of=(own.key,))]
            item.crops = [own]


def _is_written(draft: Draft) -> bool:
    """Whether a crop stands in the line itself, not only a variety some crop is known to have."""
    return any(span[0] == "crop" for item in draft.items for span in item.spans)


def _keep_crop(draft: Draft, before: Draft) -> None:
    crops = [c for item in before.items for c in item.crops]
    keys = tuple(c.key for c in crops)
    for item in draft.items:
        item.crops = list(crops)
        item.varieties = [v if set(v.of) & set(keys) else replace(v, of=keys) for v in item.varieties]


def _inherit_crop(draft: Draft, before: Draft) -> None:
    amounts, varieties = draft.items[0].amounts, draft.items[0].varieties
    new = [
        Item(
            crops=list(i.crops),
            varieties=list(varieties or i.varieties),
            is_mix=i.is_mix,
            places=[] if draft.places else list(i.places),
        )
        for i in before.items
        if i.crops or i.varieties
    ]
    if len(new) == 1:
        new[0].amounts, new[0].spans = amounts, draft.items[0].spans
    else:
        draft.total += amounts
    draft.items = new or draft.items


def fill(
    clause: Done,
    beds: tuple[Named, ...],
    crops: tuple[Named, ...],
    varieties: tuple[Named, ...],
    part: str | None,
) -> None:
    """What the header says, for what the line lacks and its verb takes."""
    draft, slots = clause.draft, clause.verb.slots
    has_own = bool(draft.places) or draft.everything
    if "crop!" in slots or "crop" in slots:
        is_about_a_thing = draft.subject is not None and "object" in slots and clause.verb.name != "saw"
        if crops and ("bed" not in slots or not has_own) and not is_about_a_thing:
            _fill_crops(draft, crops)
        _fill_varieties(draft, crops, varieties)
    if beds and "place" in slots and not has_own and "larder" not in slots:
        draft.places = list(beds)
    in_those_beds = bool(draft.places) and {b.key for b in draft.places} <= {b.key for b in beds}
    if part and in_those_beds and draft.part is None:
        draft.part = part


def _fill_crops(draft: Draft, crops: tuple[Named, ...]) -> None:
    """The header's crops; several of them beside one amount are asked about."""
    item = draft.items[0]
    if any(i.crops or i.thing for i in draft.items) or _knows_crop(item):
        return
    item.crops = list(crops)
    amounts = item.amounts or draft.total
    if len(crops) > 1 and amounts:
        question = f'Which of the crops of this note is "{amounts[0].written}"? Read as their sum.'
        draft.ask(Level.QUESTION, question)
    elif len(crops) > 1 and not item.varieties:
        draft.items = [Item(crops=[crop]) for crop in crops]


def _fill_varieties(draft: Draft, crops: tuple[Named, ...], varieties: tuple[Named, ...]) -> None:
    """The header's varieties, where the crop is theirs."""
    item = draft.items[0]
    if not varieties or item.varieties or len(draft.items) > 1 or not item.crops:
        return
    keys = {k for c in item.crops for k in (c.key, *c.of)}
    if crops and not {c.key for c in item.crops} <= {c.key for c in crops}:
        return
    if not varieties[0].of or keys & {k for v in varieties for k in v.of}:
        item.varieties = list(varieties)


def _knows_crop(item: Item) -> bool:
    return bool(item.varieties) and any(v.of for v in item.varieties)


def _drop_total(items: list[Item], draft: Draft) -> list[Item]:
    """ "2 kg tomatoes: 1 kg 'A', 1 kg 'B'": the first amount is the sum of those behind it, or should be."""
    parts = [i for i in items[1:] if i.takes_crop_before]
    if len(items) < 3 or len(parts) != len(items) - 1 or items[0].varieties or items[0].places:
        return items
    whole, sums = items[0].amounts, [i.amounts[0] for i in parts if i.amounts]
    if len(whole) != 1 or len(sums) != len(parts):
        return items
    wanted, *measured = [a.value if whole[0].grams is None else a.grams for a in (*whole, *sums)]
    total = sum(m or 0.0 for m in measured)
    if wanted is None or None in measured:
        return items
    if not math.isclose(total, wanted, rel_tol=0.05):
        told = " and ".join(f'"{a.written}"' for a in sums)
        draft.ask(Level.QUESTION, f'{told} do not make "{whole[0].written}". The parts are counted.')
    return parts


def pair_places(draft: Draft) -> None:
    """ "peas in Arch, beans in Top bed": each crop in its own place, never every combination."""
    if len(draft.items) < 2:
        return
    owners = [number for _, number in draft.place_items]
    if any(i.places for i in draft.items):
        return
    behind = {place.key for place, _ in draft.place_items}
    if any(place.key not in behind for place in draft.places):  # "Tub 1 tomatoes, Tub 2 peppers"
        if len(draft.places) == len(draft.items):
            for item, place in zip(draft.items, draft.places, strict=True):
                item.places = [place]
        return
    if len(set(owners)) < 2:
        return
    for number, item in enumerate(draft.items):
        own = number if number in owners else next((o for o in owners if o > number), owners[-1])
        item.places = [place for place, owner in draft.place_items if owner == own]


def settle_items(clause: Done) -> None:
    """Give varieties their crop, items before it theirs, and drop what is empty."""
    draft = clause.draft
    items = draft.items
    if len(items) == 1 and (items[0].crops or (items[0].amounts and not items[0].varieties)):
        _settle_varieties(items[0])
        return
    for before, item in itertools.pairwise(items):
        if not item.crops and not item.thing and before.crops and (item.varieties or item.amounts):
            item.crops = list(before.crops)
    for item, after in reversed(list(itertools.pairwise(items))):
        if not item.crops and after.crops and item.varieties and not _knows_crop(item):
            item.crops = list(after.crops)
    for item in items:
        if not item.crops and _knows_crop(item):
            item.crops = _crop_of(item, draft)
        _settle_varieties(item)
    kept = [i for i in drop_kind(_drop_total(items, draft)) if i.crops or i.varieties or i.amounts or i.thing]
    draft.items = with_last(kept) if clause.verb.name == "put up" and len(kept) > 1 else kept or [Item()]


def _settle_varieties(item: Item) -> None:
    if item.varieties and item.crops:
        item.varieties = [_of_this_crop(v, item) for v in item.varieties]


def _of_this_crop(variety: Named, item: Item) -> Named:
    """A variety of the crop named beside it, whatever crop it is known for elsewhere."""
    if not variety.of or item.crops[0].key in variety.of:
        return variety
    keys = {k for c in item.crops for k in (c.key, *c.of)}
    if not keys or keys & set(variety.of):
        return variety
    return replace(variety, of=())


def _crop_of(item: Item, draft: Draft) -> list[Named]:
    keys = sorted({k for v in item.varieties for k in v.of})
    shared = [k for k in keys if all(k in v.of for v in item.varieties)]
    if len(shared or keys) > 1:
        names = " or ".join(shared or keys)
        draft.ask(Level.QUESTION, f'"{item.varieties[0].written}" is a variety of {names}. Which is meant?')
        return []
    key = (shared or keys)[0]
    return [Named(key=key, name=key.replace("-", " "), written=item.varieties[0].written)]
