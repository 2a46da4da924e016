"""Drafts made into actions: one for each item, one for several that share an amount.

The last step of reading a line. "and" makes several actions, one amount over several crops makes one of
them together, "each" repeats the amount for every crop or place.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from operator import itemgetter
from typing import NamedTuple

from leafmould.notes.draft import Done, Draft, Item, Span
from leafmould.notes.entries import Action, Fate, Named, Sureness
from leafmould.notes.typed import Typed
from leafmould.notes.words.prepositions import ARTICLES, FILLERS, JOINS
from leafmould.values.problems import Location
from leafmould.values.quantities import Amount

REMARK_LINKS = JOINS | ARTICLES | FILLERS


BY_PLACE = itemgetter(1, 2, 0)
"""Spans in the order they stand in the line."""


class Share(NamedTuple):
    """What one action is about."""

    crops: list[Named]
    varieties: list[Named]
    amounts: list[Amount]
    places: list[Named]
    spans: list[Span]
    is_together: bool = False
    part: str | None = None
    thing: str | None = None  # what its amount is of, or what was made of the crop


def to_actions(
    clause: Done, typed: Typed, *, text: str, at: Location, name: str, is_private: bool, is_settled: bool
) -> Iterable[Action]:
    """One action for each item; one amount over several items makes one action of them."""
    if len(clause.draft.readings) > 1 and len(clause.draft.places) > 1 and (parts := _by_reading(clause)):
        for part in parts:
            yield from to_actions(
                part, typed, text=text, at=at, name=name, is_private=is_private, is_settled=is_settled
            )
        return
    draft = clause.draft
    remark = _remark(draft, typed)
    for share in _shares(draft):
        several = len(share.places) > 1 and bool(share.amounts)
        for places in [(p,) for p in share.places] if several and draft.is_each else [tuple(share.places)]:
            yield Action(
                verb=clause.verb.name, text=text, at=at, field=name, when=draft.when, until=draft.until,
                crops=tuple(share.crops), is_together=share.is_together or (several and not draft.is_each),
                varieties=tuple(share.varieties), places=places, origins=tuple(draft.origins), part=share.part or draft.part,
                amounts=tuple(share.amounts), fates=_fates(clause, share), subject=share.thing or draft.subject,
                cause=draft.cause, batch=draft.batch, everything=draft.everything, but=tuple(draft.but),
                source=draft.source, price=draft.price, wait_days=draft.wait_days, crop_year=draft.crop_year,
                readings=tuple(draft.readings), spacing=draft.spacing, is_under_cover=draft.is_under_cover,
                remark=remark, is_private=is_private, is_settled=is_settled, is_loose=draft.is_loose,
                spans=tuple(sorted({*draft.spans, *share.spans}, key=BY_PLACE)),
            )  # fmt: skip


def _fates(clause: Done, share: Share) -> tuple[Fate, ...]:
    """What became of a share: of all that was picked, or of its crops."""
    keys = {c.key for c in share.crops}
    own = (fate for fate, crops in clause.fates_of if not crops.isdisjoint(keys))
    return (*clause.draft.fates, *clause.fates, *own)


def _by_reading(clause: Done) -> list[Done]:
    """ "Bed 1 pH 6.8, Bed 2 pH 7.1": what was measured belongs to the place beside it; none where that is not sure."""
    draft = clause.draft
    spans = sorted((s for s in draft.spans if s[0] in ("place", "reading")), key=itemgetter(1))
    slots = [s[0] for s in spans]
    if slots.count("place") != len(draft.places) or slots.count("reading") != len(draft.readings):
        return []
    places, readings = iter(draft.places), iter(draft.readings)
    if slots[0] == "reading":
        spans, places, readings = spans[::-1], reversed(draft.places), reversed(draft.readings)
    if spans[0][0] != "place":
        return []
    found: list[tuple[list[Named], list[tuple[str, Amount]], list[Span]]] = []
    for span in spans:
        if span[0] == "place":
            if not found or found[-1][1]:
                found.append(([], [], []))
            found[-1][0].append(next(places))
        else:
            found[-1][1].append(next(readings))
        found[-1][2].append(span)
    if not found[-1][1]:
        return []
    rest = [s for s in draft.spans if s[0] not in ("place", "reading")]
    parts = [replace(draft, places=p, readings=r, spans=[*rest, *s]) for p, r, s in found]
    return [replace(clause, draft=part) for part in (parts if slots[0] == "place" else parts[::-1])]


def _shares(draft: Draft) -> list[Share]:
    """The items of a clause, each with its amounts; those that share an amount as one."""
    items = draft.items
    if len(items) == 1 and not draft.total:
        return _of_item(items[0], [], draft)
    rates = [a for a in draft.total if "/" in a.unit]
    sums = [a for a in draft.total if "/" not in a.unit]
    if len(items) > 1 and _are_pairs(items, sums):
        pairs = zip(items, sums, strict=True)
        return [share for item, own in pairs for share in _of_item(item, [own, *rates], draft)]
    if all(a.whole for a in sums) and any(i.places != items[0].places for i in items):
        return [share for item in items for share in _of_item(item, [*sums, *rates], draft)]
    if len(items) > 1 and not draft.is_each and (sums or _is_one_sum(items)):
        own = [a for i in items for a in i.amounts]
        return [_together(items, [*own, *sums, *rates], draft)]
    shared = [*sums, *rates]
    if draft.is_each and len(items) > 1 and not all(i.amounts for i in items):
        shared = shared if sums else [*(items[0].amounts or items[-1].amounts), *shared]
        items = [replace(i, amounts=[]) for i in items]
    return [share for item in items for share in _of_item(item, shared, draft)]


def _are_pairs(items: list[Item], sums: list[Amount]) -> bool:
    """ "strawberries and raspberries, 400 g and 200 g": as many amounts as crops, in order."""
    return (
        len(items) == len(sums)
        and len({a.unit for a in sums}) == 1
        and not any(i.amounts for i in items)
        and all(a.low is not None for a in sums)
    )


def _together(items: list[Item], amounts: list[Amount], draft: Draft) -> Share:
    crops = list({c.key: c for i in items for c in i.crops}.values())
    varieties = [v for i in items for v in i.varieties]
    return Share(crops, varieties, amounts, draft.places, [s for i in items for s in i.spans], True)


def _is_one_sum(items: list[Item]) -> bool:
    """ "picked 2 kg peas and beans": the first amount is that of all behind it, none has its own.

    A bare count belongs to the crop right behind it alone: "3 courgettes and peas".
    """
    if not items[0].amounts or any(i.amounts or i.thing for i in items[1:]) or items[0].thing:
        return False
    if any(i.places != items[0].places for i in items[1:]):
        return False
    return not all(a.count is not None for a in items[0].amounts)


def _of_item(item: Item, shared: list[Amount], draft: Draft) -> list[Share]:
    """One item as its actions: several varieties without an amount are an action each."""
    amounts, places = [*item.amounts, *shared], item.places or draft.places
    is_doubtful = bool(item.varieties) and any(v.sureness in DOUBTS for v in item.varieties)
    if len(item.varieties) > 1 and not item.is_mix and not is_doubtful and (not amounts or draft.is_each):
        return [Share(item.crops, [v], amounts, places, item.spans, part=item.part) for v in item.varieties]
    if item.thing:
        return [Share([], [], amounts, places, item.spans, thing=item.thing)]
    several = len(item.crops) > 1 or len(item.varieties) > 1
    together = several and (item.is_mix or not is_doubtful)
    return [Share(item.crops, item.varieties, amounts, places, item.spans, together, item.part, item.made)]


DOUBTS = (Sureness.DOUBTFUL, Sureness.UNKNOWN)


def _are_joined(typed: Typed, draft: Draft, end: int, start: int) -> bool:
    """Whether nothing but small words lies between two pieces of a remark."""
    return end >= start or (end + 1 == start and typed.words[end] in REMARK_LINKS and not typed.breaks[end])


def _remark(draft: Draft, typed: Typed) -> str | None:
    """What is left over, in the order written."""
    if not draft.left:
        return None
    words = sorted(
        {
            i
            for a, b, _ in draft.left
            for i in range(a, b)
            if not draft.covers(typed.starts[i], "subject", "verb")
        }
    )
    ranges = [(i, i + 1) for i in words]
    pieces: list[tuple[int, int]] = []
    for start, end in ranges:
        is_decimal = bool(pieces) and pieces[-1][1] == start and typed.gaps[start] == "."
        if is_decimal or (
            pieces and not typed.breaks[start] and _are_joined(typed, draft, pieces[-1][1], start)
        ):
            pieces[-1] = (pieces[-1][0], max(end, pieces[-1][1]))
        else:
            pieces.append((start, end))
    return ", ".join(typed.written(a, b) for a, b in pieces) or None
