"""From drafts to actions: what a clause inherits, defaults, fates, and one action for each item.

The last step of reading a line. Here "and", "each" and one amount over several become actions, and what
the verb needs and lacks becomes a question.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from leafmould.notes.draft import Draft, Item, Span
from leafmould.notes.entries import Action, Fate, Named
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, FILLERS, JOINS
from leafmould.notes.words.verbs import Verb
from leafmould.values.problems import Level, Location
from leafmould.values.quantities import Amount

REMARK_LINKS = JOINS | ARTICLES | FILLERS
HOLDS_HARVEST = frozenset({"picked", "collected", "cleared", "thinned", "pruned"})
WHOLE_BED_ENDS = frozenset({"noted weather", "collected", "opened", "fed animals", "released"})


@dataclass(slots=True)
class Done:
    """One clause read: its verb, its draft, and fates of its harvest that later clauses gave."""

    verb: Verb
    draft: Draft
    object_left: str | None = None  # words right behind the verb that no slot took
    is_bare: bool = False  # nothing but the verb: "thinned and weeded carrots"
    is_after_comma: bool = False  # joined to the clause before by a comma
    fates: list[Fate] = field(default_factory=list)


def gather_fates(done: list[Done]) -> list[Done]:
    """Fold fates into the picking they are a share of."""
    kept: list[Done] = []
    for clause in done:
        if kept and _is_germination(clause, kept[-1]):
            _merge_germination(kept[-1], clause)
            continue
        picking = next((d for d in reversed(kept) if d.verb.name in HOLDS_HARVEST), None)
        if picking is None or not _is_share(clause, picking):
            kept.append(clause)
            continue
        amounts = [a for item in clause.draft.items for a in item.amounts] or [None]
        for amount in amounts:
            kind = "ate" if clause.verb.name == "used" else clause.verb.name
            picking.fates.append(Fate(kind=kind, amount=amount))
            if amount is not None:
                _check_share(picking, amount)
        picking.draft.spans += [
            ("fate" if s[0] == "verb" else s[0], *s[1:]) for s in _all_spans(clause.draft)
        ]
        picking.draft.asked += clause.draft.asked
        picking.draft.left += [(a, b, True) for a, b, _ in clause.draft.left]
    return kept


def _is_germination(clause: Done, trial: Done) -> bool:
    counts = [a for item in clause.draft.items for a in item.amounts]
    return (
        trial.verb.name == "tried seed"
        and clause.verb.name in ("came up", "lost")
        and bool(counts)
        and not any(i.crops for i in clause.draft.items)
    )


def _merge_germination(trial: Done, clause: Done) -> None:
    """ "tested 10 seeds beetroot, 8 came up": 8 of 10."""
    came = next(a for item in clause.draft.items for a in item.amounts)
    item = trial.draft.items[0]
    tried = next((a for a in item.amounts if a.low is not None), None)
    if tried is not None and came.low is not None:
        item.amounts = [
            replace(
                tried,
                written=f"{came.written} of {tried.written}",
                low=came.low,
                high=came.high,
                of=tried.low,
            )
        ]
    else:
        item.amounts.append(came)
    trial.draft.spans += _all_spans(clause.draft)
    trial.draft.asked += clause.draft.asked


def _all_spans(draft: Draft) -> list[Span]:
    return [*draft.spans, *(s for item in draft.items for s in item.spans)]


def _is_share(clause: Done, picking: Done) -> bool:
    if "fate" not in clause.verb.slots or (
        picking.verb.name not in ("picked", "collected") and clause.verb.name != "composted"
    ):
        return False
    crops = {c.key for item in clause.draft.items for c in item.crops}
    picked = {c.key for item in picking.draft.items for c in item.crops}
    units = {a.unit for item in clause.draft.items for a in item.amounts}
    picked_units = {a.unit for item in picking.draft.items for a in item.amounts}
    is_made = clause.verb.name in ("put up", "stored") and bool(units & nouns.HOLDERS - picked_units)
    return not is_made and (not crops or crops <= picked)


def _check_share(picking: Done, amount: Amount) -> None:
    """More given away than was picked is a warning."""
    for item in picking.draft.items:
        for whole in item.amounts:
            same = amount.unit in (whole.unit, "piece") and whole.count is not None or whole.unit == amount.unit
            a, b = (amount.high, whole.high) if same else (amount.grams, whole.grams)
            if a is not None and b is not None and a > b and not whole.is_about:
                picking.draft.ask(
                    Level.WARNING, f'"{amount.written}" is more than the "{whole.written}" that was picked.'
                )


def share_backward(done: list[Done]) -> None:
    """ "thinned and weeded carrots in Arch": the first verb takes the object of the second."""
    for first, second in reversed(list(zip(done, done[1:], strict=False))):
        if first.is_bare and not second.is_bare:
            _take_over(first.draft, second.draft, is_listed=second.is_after_comma)
            first.is_bare = False


def _take_over(to: Draft, source: Draft, *, is_listed: bool) -> None:
    to.items = [
        replace(item, spans=list(item.spans), amounts=[] if is_listed else list(item.amounts)) for item in source.items
    ]
    to.places, to.origins, to.part = list(source.places), list(source.origins), source.part
    to.everything, to.but, to.is_loose = source.everything, source.but, source.is_loose
    to.total, to.is_each = [] if is_listed else list(source.total), source.is_each
    to.spans += [s for s in source.spans if s[0] in ("place", "part", "everything", "but", "origin", "batch")]
    to.when, to.batch = to.when or source.when, source.batch


def inherit(done: list[Done]) -> None:
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
        own_crop, own_place = draft.has_crop, bool(draft.places)
        if (
            takes_crop
            and not own_crop
            and not (own_place and "bed" in slots and "crop!" not in slots)
            and before.draft.has_crop
            and not (draft.subject and "object" in slots)
        ):
            _inherit_crop(draft, before.draft)
        if "place" in slots and not own_place and before.draft.places and before.verb.name != "bought":
            draft.places = list(before.draft.places)
            draft.part = draft.part or before.draft.part
        draft.everything = draft.everything or (
            before.draft.everything and not own_crop and not own_place and "bed" in slots
        )
        draft.batch = draft.batch or (before.draft.batch if not own_crop else None)


def _inherit_crop(draft: Draft, before: Draft) -> None:
    amounts, varieties = draft.items[0].amounts, draft.items[0].varieties
    new = [
        Item(crops=list(i.crops), varieties=list(varieties or i.varieties), is_mix=i.is_mix)
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
    draft, slots, item = clause.draft, clause.verb.slots, clause.draft.items[0]
    takes_crop = "crop!" in slots or "crop" in slots
    has_own = bool(draft.places) or draft.everything
    if (
        crops
        and takes_crop
        and not any(i.crops for i in draft.items)
        and ("crop!" in slots or not has_own)
        and not (draft.subject and "object" in slots and clause.verb.name != "saw")
    ):
        if not _knows_crop(item):
            item.crops = list(crops)
            if len(crops) > 1 and (item.amounts or draft.total):
                draft.ask(
                    Level.QUESTION,
                    f'Which of the crops of this note is "{(item.amounts or draft.total)[0].written}"? Read as their sum.',
                )
            elif len(crops) > 1 and not item.varieties:
                draft.items = [Item(crops=[c], is_mix=False) for c in crops]
    if (
        varieties
        and not item.varieties
        and len(draft.items) == 1
        and takes_crop
        and item.crops
        and {c.key for c in item.crops} <= ({c.key for c in crops} or {c.key for c in item.crops})
    ):
        item.varieties = (
            list(varieties)
            if not varieties[0].of
            or {k for c in item.crops for k in (c.key, *c.of)} & {k for v in varieties for k in v.of}
            else []
        )
    if beds and "place" in slots and not has_own and "larder" not in slots:
        draft.places = list(beds)
    if (
        part
        and draft.part is None
        and beds
        and {b.key for b in draft.places} <= {b.key for b in beds}
        and draft.places
    ):
        draft.part = part


def _knows_crop(item: Item) -> bool:
    return bool(item.varieties) and any(v.of for v in item.varieties)


def settle_items(clause: Done) -> None:
    """Give varieties their crop, items before it theirs, and drop what is empty."""
    draft = clause.draft
    items = draft.items
    for before, item in itertools.pairwise(items):
        if not item.crops and before.crops and (item.varieties or item.amounts):
            item.crops = list(before.crops)
    for item, after in reversed(list(itertools.pairwise(items))):
        if not item.crops and after.crops and item.varieties and not _knows_crop(item):
            item.crops = list(after.crops)
    for item in items:
        if not item.crops and _knows_crop(item):
            item.crops = _crop_of(item, draft)
    kept = [i for i in items if i.crops or i.varieties or i.amounts]
    draft.items = kept or [Item()]


def _crop_of(item: Item, draft: Draft) -> list[Named]:
    keys = sorted({k for v in item.varieties for k in v.of})
    shared = [k for k in keys if all(k in v.of for v in item.varieties)]
    if len(shared or keys) > 1:
        names = " or ".join(shared or keys)
        draft.ask(Level.QUESTION, f'"{item.varieties[0].written}" is a variety of {names}. Which is meant?')
        return []
    key = (shared or keys)[0]
    return [Named(key=key, name=key.replace("-", " "), written=item.varieties[0].written)]


def ask_what_is_missing(clause: Done, written: str) -> None:
    """A verb without the crop it needs is a question; so is a doubtful variety of no crop."""
    draft, verb = clause.draft, clause.verb
    if "crop!" in verb.slots and not draft.everything and not any(i.crops for i in draft.items):
        varieties = [v.written for i in draft.items for v in i.varieties]
        if varieties:
            draft.ask(
                Level.QUESTION,
                f'Which crop is "{varieties[0]}"? No crop is named, and no variety of that name is known here.',
            )
        else:
            draft.ask(Level.QUESTION, f'What was "{written}"? No crop is named.')
    _ask_of_strangers(clause)
    if (
        "some!" in verb.slots
        and not draft.everything
        and not draft.has_crop
        and not draft.places
        and not draft.origins
        and not clause.draft.subject
    ):
        draft.ask(Level.QUESTION, f'What was "{written}"? Neither a crop nor a place is named.')
    if verb.name == "moved" and not draft.has_crop and not draft.origins and not draft.everything:
        draft.ask(Level.QUESTION, f'What was "{written}"? Neither a crop nor a place that moves is named.')


def _ask_of_strangers(clause: Done) -> None:
    """Care for something nobody knows: "fed asparagus", where no crop and no bed of that name is known."""
    draft = clause.draft
    if "bed" not in clause.verb.slots or draft.has_crop or draft.places or draft.everything or not clause.object_left:
        return
    draft.ask(Level.QUESTION, f'"{clause.object_left}" is no crop and no bed known here.')


def to_actions(
    clause: Done, typed: Typed, *, text: str, at: Location, name: str, is_private: bool, is_settled: bool
) -> Iterable[Action]:
    """One action for each item; one amount over several items makes one action of them."""
    draft, verb = clause.draft, clause.verb
    groups = _groups(draft)
    shared_spans = tuple(sorted(draft.spans, key=lambda s: (s[1], s[2])))
    remark = _remark(draft, typed)
    for crops, varieties, amounts, spans, is_together in groups:
        for places in (
            [(p,) for p in draft.places] if draft.is_each and len(draft.places) > 1 else [tuple(draft.places)]
        ):
            yield Action(
                verb=verb.name, text=text, at=at, field=name, when=draft.when, until=draft.until, crops=tuple(crops),
                is_together=is_together or (len(places) > 1 and bool(amounts) and not draft.is_each), varieties=tuple(varieties), places=places,
                origins=tuple(draft.origins), part=draft.part, amounts=tuple(amounts), fates=tuple(clause.fates),
                subject=draft.subject, cause=draft.cause, batch=draft.batch, everything=draft.everything, but=tuple(draft.but),
                source=draft.source, price=draft.price, wait_days=draft.wait_days, crop_year=draft.crop_year,
                readings=tuple(draft.readings), spacing=draft.spacing, is_under_cover=draft.is_under_cover, remark=remark,
                is_private=is_private, is_settled=is_settled, is_loose=draft.is_loose,
                spans=tuple(sorted((*shared_spans, *spans), key=lambda s: (s[1], s[2], s[0]))),
            )  # fmt: skip


Group = tuple[list[Named], list[Named], list[Amount], list[Span], bool]


def _groups(draft: Draft) -> list[Group]:
    items, total = draft.items, draft.total
    rates = [a for a in total if "/" in a.unit]
    sums = [a for a in total if "/" not in a.unit]
    if len(items) > 1 and sums and not draft.is_each:
        crops = list({c.key: c for i in items for c in i.crops}.values())
        return [
            (
                crops,
                [v for i in items for v in i.varieties],
                [*(a for i in items for a in i.amounts), *total],
                [s for i in items for s in i.spans],
                True,
            )
        ]
    if len(items) > 1 and not sums and not draft.is_each and _is_one_sum(items):
        crops = list({c.key: c for i in items for c in i.crops}.values())
        return [
            (
                crops,
                [v for i in items for v in i.varieties],
                [*items[0].amounts, *rates],
                [s for i in items for s in i.spans],
                True,
            )
        ]
    shared = sums + rates
    if draft.is_each and len(items) > 1 and not all(i.amounts for i in items):
        shared = [*(items[0].amounts or items[-1].amounts), *total] if not sums else shared
        items = [replace(i, amounts=[]) for i in items]
    return [group for item in items for group in _of_item(item, shared, draft)]


def _is_one_sum(items: list[Item]) -> bool:
    """ "picked 2 kg peas and beans": the first amount is that of all behind it, none has its own."""
    if not items[0].amounts or any(i.amounts for i in items[1:]):
        return False
    return not (items[1].is_after_comma and all(a.count is not None for a in items[0].amounts))


def _of_item(item: Item, shared: list[Amount], draft: Draft) -> list[Group]:
    amounts = [*item.amounts, *shared]
    is_doubtful = any(v.sureness.value in ("doubtful", "unknown") for v in item.varieties)
    if (
        len(item.varieties) > 1
        and not item.is_mix
        and not is_doubtful
        and len(item.crops) <= 1
        and (not amounts or draft.is_each)
    ):
        return [(item.crops, [v], amounts, item.spans, False) for v in item.varieties]
    several = len(item.crops) > 1 or len(item.varieties) > 1
    return [
        (
            item.crops,
            item.varieties,
            amounts,
            item.spans,
            (item.is_mix or several) and several and not (is_doubtful and not item.is_mix),
        )
    ]


def _are_joined(typed: Typed, draft: Draft, end: int, start: int) -> bool:
    """Whether nothing but small words lies between two pieces of a remark."""
    return end >= start or (end + 1 == start and typed.words[end] in REMARK_LINKS and not typed.breaks[end])


def _remark(draft: Draft, typed: Typed) -> str | None:
    """What is left over, in the order written."""
    words = sorted(
        {i for a, b, _ in draft.left for i in range(a, b) if not draft.covers(typed.starts[i], "subject")}
    )
    ranges = [(i, i + 1) for i in words]
    pieces: list[tuple[int, int]] = []
    for start, end in ranges:
        if pieces and not typed.breaks[start] and _are_joined(typed, draft, pieces[-1][1], start):
            pieces[-1] = (pieces[-1][0], max(end, pieces[-1][1]))
        else:
            pieces.append((start, end))
    return ", ".join(typed.written(a, b) for a, b in pieces) or None
