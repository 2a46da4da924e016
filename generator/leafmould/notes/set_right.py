"""Amounts of one clause that mean something together: "24 modules, 21 up" is 21 of 24, "12 plants gave 31 kg" a yield.

Asked once a clause is read (`deeds`), for clauses that only say with how much the one before was done (`fates`), and
for items that are of one thing (`actions`).
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.clause import Clause
from leafmould.notes.draft import Done, Draft, Item
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns

STARTED_IN = frozenset({"module", "cell", "seed", "pot", "plug", "tray", "block", "station", "clove", "set", "tuber", "bulb"})  # fmt: skip


def set_right(draft: Draft, typed: Typed, clause: Clause, verb: str) -> None:
    """Put together, or apart, what stands in one clause."""
    if len(draft.item.amounts) < 2:
        return
    if verb == "came up":
        _so_many_of(draft)
    elif verb == "picked" and clause.form == ("gave",):
        _without_plants(draft, typed, clause)


def _so_many_of(draft: Draft) -> None:
    """ "Sweetcorn, 24 modules, 21 up": 21 of 24."""
    tried, came = draft.item.amounts[-2:]
    if tried.unit not in STARTED_IN or came.unit != "piece" or came.of is not None:
        return
    if tried.low is None or came.low is None or came.low > tried.low:
        return
    written = f"{came.written} of {tried.written}"
    draft.item.amounts[-2:] = [replace(tried, written=written, low=came.low, high=came.high, of=tried.low)]


def _without_plants(draft: Draft, typed: Typed, clause: Clause) -> None:
    """ "12 tomato plants gave 31 kg": how many plants it came from is no part of the picking."""
    plants = [a for a in draft.item.amounts if a.unit in nouns.PLANT_NOUNS]
    if not plants or len(plants) == len(draft.item.amounts):
        return
    draft.item.amounts = [a for a in draft.item.amounts if a not in plants]
    spans = [s for s in draft.item.spans if s[0] == "amount" and s[1] < typed.starts[clause.verb_start]]
    for span in spans:
        draft.item.spans.remove(span)
        first = next(i for i in range(typed.count) if typed.starts[i] >= span[1])
        last = next(
            (i for i in range(first, clause.verb_start) if typed.words[i] in nouns.PLANT_NOUNS), first
        )
        draft.leave(first, last + 1, False)
        draft.said.add(first)


def is_how_much_was_used(clause: Done, before: Done) -> bool:
    """ "mulched the peppers with straw, used 2 bales": of the straw."""
    draft = clause.draft
    is_amount_alone = any(i.amounts for i in draft.items) and not (
        draft.has_crop or draft.places or draft.subject or any(i.thing for i in draft.items)
    )
    takes_stuff = "with" in before.verb.slots or before.verb.name == "treated"
    return clause.verb.name == "used" and is_amount_alone and takes_stuff and before.draft.subject is not None


def add_what_was_used(clause: Done, before: Done) -> None:
    """The amount of the stuff, beside the deed it was used for."""
    before.draft.total += [a for item in clause.draft.items for a in item.amounts]
    spans = [*clause.draft.spans, *(s for item in clause.draft.items for s in item.spans)]
    before.draft.spans += [s for s in spans if s[0] == "amount"]
    before.draft.asked += clause.draft.asked
    before.draft.left += [(a, b, True) for a, b, _ in clause.draft.left]


def drop_kind(items: list[Item]) -> list[Item]:
    """ "peppers sown, 12 California Wonder, 6 jalapeño": the first names what those behind it are."""
    first, *behind = items
    of = {key for crop in first.crops for key in crop.of}
    is_bare = (
        len(behind) > 1 and len(first.crops) == 1 and not (first.amounts or first.varieties or first.places)
    )
    if not of or not is_bare:
        return items
    is_of_it = all(
        i.amounts and i.crops and {c.key for c in i.crops} <= of | {first.crops[0].key} for i in behind
    )
    return behind if is_of_it else items


def with_last(items: list[Item]) -> list[Item]:
    """ "plum jam 4 jars, last of the plums": one thing made."""
    first, *behind = items
    keys = [c.key for c in first.crops]
    kept = [first]
    for item in behind:
        is_last = bool(item.amounts) and all(a.whole for a in item.amounts)
        if is_last and [c.key for c in item.crops] == keys and not item.varieties:
            first.amounts += item.amounts
            first.spans += item.spans
        else:
            kept.append(item)
    return kept
