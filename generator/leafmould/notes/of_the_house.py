"""Eggs, honey and jars of jam that were given away, eaten or used: things with an amount of their own and no crop.

A step of the walk, and what `whose_amount` asks of an amount: "gave Sheila six eggs and a lettuce" is two things.
"""

from __future__ import annotations

from leafmould.notes.amounts import Read
from leafmould.notes.draft import Item
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.values.names import Kind

HOUSE_VERBS = frozenset({"gave away", "ate", "stored", "used", "composted"})
THINGS = nouns.EGGS | nouns.HONEY | (nouns.PRODUCTS - {"stock", "powder", "leather", "butter", "bread"})
DESCRIBING = nouns.SIZES | frozenset(
    {"duck", "hen", "quail", "goose", "bantam", "runny", "set", "raw", "fresh", "hot", "fruit", "mixed"}
)


def thing_at(walk: Walk, j: int) -> int:
    """The word of an egg, honey or jam behind word `j`; -1 if none stands there."""
    j += walk.word(j) == "of"
    for k in range(j, min(j + 3, walk.end)):
        if (k > j and walk.typed.breaks[k]) or walk.typed.names(k)[0]:
            return -1
        if walk.typed.words[k] in THINGS:
            return k
        if walk.typed.words[k] not in DESCRIBING:
            return -1
    return -1


def take_amount_of_thing(walk: Walk, read: Read, i: int) -> bool:
    """ "six eggs", "2 jars of honey": an item of its own."""
    if walk.verb.name not in HOUSE_VERBS:
        return False
    if read.amount.unit == "egg":
        at, end = read.end - 1, read.end
    else:
        at = thing_at(walk, read.end) if read.end < walk.end and not walk.typed.breaks[read.end] else -1
        end = at + 1
    if at < 0:
        return False
    item = walk.draft.item
    if item.crops or item.varieties or item.amounts or item.thing:
        item = Item(is_after_comma=walk.typed.breaks[i])
        walk.draft.items.append(item)
    item.amounts.append(read.amount)
    item.spans.append(("amount", walk.typed.starts[i], walk.typed.ends[read.end - 1]))
    _name(walk, item, at)
    walk.i = end
    return True


def _name(walk: Walk, item: Item, at: int) -> None:
    word = walk.typed.words[at]
    item.thing = "eggs" if word == "egg" else walk.typed.written(at, at + 1)
    item.spans.append(("subject", walk.typed.starts[at], walk.typed.ends[at]))


def take_thing(walk: Walk) -> bool:
    """ "gave Ann honey", "ate the eggs"."""
    i = walk.i
    item = walk.draft.item
    if (
        walk.verb.name not in HOUSE_VERBS
        or walk.is_topic
        or item.crops
        or item.thing
        or walk.typed.names(i)[0]
    ):
        return False
    if walk.typed.words[i] not in THINGS or walk.typed.kind(i + 1, Kind.CROP)[0]:
        return False
    if any(it.crops for it in walk.draft.items) and not walk.joined:
        return False
    _name(walk, item, i)
    walk.i = i + 1
    return True
