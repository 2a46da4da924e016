"""Words beside a crop: a noun that says what was counted, and unknown words that are perhaps its variety.

Asked by `crops` right behind a crop, and by `strangers` where no crop is known.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from leafmould.notes.day_words import day_closes
from leafmould.notes.draft import Item
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.nearness import ORDINARY
from leafmould.notes.new_places import near_place_alone
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ABOUT,
    ARTICLES,
    FILLERS,
    JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
)
from leafmould.notes.words.verbs import PAST, PLAIN
from leafmould.values.date_words import MONTHS, SEASONS, WEEKDAYS
from leafmould.values.names import Kind
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount

STARTS = frozenset(
    {
        "started",
        "sowed",
        "resowed",
        "planted",
        "grew",
        "bought",
        "potted on",
        "pricked out",
        "hardened off",
        "came up",
        "tried seed",
    }
)


UNKNOWN_WORDS = frozenset(
    {"unknown", "unnamed", "unlabelled", "unlabeled", "mystery", "unidentified", "nameless"}
)


def unknown_behind_crop(walk: Walk, item: Item) -> None:
    """ "beetroot Boltardy", "tomato unknown": unknown words right behind a crop."""
    i = walk.i
    if i >= walk.end or i in walk.used:
        return
    if walk.word(i) in UNKNOWN_WORDS and (not walk.typed.breaks[i] or "(" in walk.typed.gaps[i]):
        item.varieties.append(
            Named(
                key="unknown", name="unknown", written=walk.typed.written(i, i + 1), sureness=Sureness.UNKNOWN
            )
        )
        item.spans.append(("variety", walk.typed.starts[i], walk.typed.ends[i]))
        walk.i = i + 1
        walk.i += walk.word(walk.i) in ("variety", "kind", "sort", "type")
        return
    if walk.typed.breaks[i] and "(" not in walk.typed.gaps[i]:
        return
    if walk.has("place") and not walk.draft.places and near_place_alone(walk, i):
        return
    if (
        (walk.verb.name == "picked" or walk.verb.name in STARTS)
        and (end := variety_words(walk, i)) > i
        and (walk.typed.capital(i) or (walk.verb.name in STARTS and closes(walk, end)))
        and not crop_at(walk, end)
    ):
        perhaps(walk, item, i, end)
        walk.i = end


def noun_behind_crop(walk: Walk, item: Item) -> None:
    """ "12 kale plants", "garlic cloves", "beans seeds": the noun says what was counted."""
    i = walk.i
    word = walk.word(i)
    if not word or walk.typed.breaks[i] or i in walk.typed.quotes:
        return
    if word in nouns.PRODUCTS or (word in nouns.THINGS and not walk.typed.names(i)[0]):
        walk.draft.leave(i, i + 1, walk.after_comma) if walk.draft.subject is None else None
        walk.i = i + 1
        return
    counted = word in nouns.PLANT_NOUNS or word in nouns.PICK_NOUNS or word in ("seed", "row", "cutting")
    counted = counted or word in A_HOLDER
    if not counted or walk.typed.names(i)[0] > 1 or walk.bed_at(i)[1] is not None:
        return
    if word == "row" and walk.typed.is_number(i + 1):
        return
    if word in A_HOLDER and walk.verb.name == "picked" and not item.amounts and _is_one(walk, i):
        _count_holder(walk, item, i, i + 1, 1.0)  # "radish bunch": one bunch
        return
    j = i + 1 + (walk.word(i + 1) == "x")
    is_number = walk.word(j).isdigit() and (walk.word(j + 1) not in nouns.UNITS or walk.typed.breaks[j + 1])
    if word in A_HOLDER and walk.verb.name == "picked" and not item.amounts and is_number:
        _count_holder(walk, item, i, j + 1, float(walk.word(j)[:6]))  # "strawberries punnet x2"
        return

    if item.amounts and item.amounts[-1].unit == "piece":
        amount = item.amounts[-1]
        item.amounts[-1] = replace(
            amount, unit=word, written=f"{amount.written} {walk.typed.written(i, i + 1)}"
        )
    walk.i = i + 1


A_HOLDER = frozenset({"bunch", "handful", "bowl", "bag", "bucket", "basket", "box", "punnet", "armful"})


def _count_holder(walk: Walk, item: Item, i: int, end: int, number: float) -> None:
    amount = Amount(written=walk.typed.written(i, end), low=number, high=number, unit=walk.word(i))
    item.amounts.append(amount)
    item.spans.append(("amount", walk.typed.starts[i], walk.typed.ends[end - 1]))
    walk.i = end


def _is_one(walk: Walk, i: int) -> bool:
    return walk.typed.plain[walk.typed.ends[i] - 1] not in "sS" and (
        closes(walk, i + 1) or walk.bed_at(i + 1)[1] is not None
    )


def closes(walk: Walk, end: int) -> bool:
    """Whether a run of words ends where a variety may: at a break, a place, an amount."""
    return (
        end >= walk.end
        or walk.typed.breaks[end]
        or walk.word(end) in PLACE_OPENERS
        or walk.typed.is_number(end)
    )


def crop_at(walk: Walk, i: int) -> bool:
    return (
        i < walk.end and not walk.typed.breaks[i] and bool(walk.typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0])
    )


def variety_words(walk: Walk, i: int) -> int:
    """The end of a run of unknown words that may name a variety."""
    end, stop = i, walk.stop(i)
    while end < stop and end - i < 4 and (_may_be_variety(walk, end) or _is_inner_of(walk, i, end)):
        end += 1
    if end > i and end < stop and walk.typed.is_number(end) and end + 1 >= stop:
        end += 1
    return end


HOW_IT_IS = frozenset(
    {"empty", "raw", "full", "cooked", "steamed", "fried", "roast", "alone", "clean", "tidy", "done", "left"}
)
"""Said of a bed or a meal; never a crop or its variety."""


def _is_inner_of(walk: Walk, i: int, k: int) -> bool:
    """The "of" of "Duke of York"."""
    return (
        walk.word(k) == "of"
        and k > i
        and k + 1 < walk.stop(i)
        and walk.typed.capital(k - 1)
        and walk.typed.capital(k + 1)
        and not walk.typed.names(k + 1)[0]
    )


def _may_be_variety(walk: Walk, i: int) -> bool:
    word = walk.typed.words[i]
    return not (
        _is_everyday(word)
        or i in walk.used
        or walk.typed.names(i)[0]
        or i in walk.typed.quotes
        or (word in nouns.SELDOM_VARIETY and not _is_named_so(walk, i, word))
        or (word.endswith("ed") and len(word) > 4 and not walk.typed.capital(i))
        or word in ORDINARY
        or word in ABOUT
        or day_closes(walk, i)
    )


@lru_cache(maxsize=20_000)
def _is_everyday(word: str) -> bool:
    """Whether a word has its own meaning in lines of work, so that it is no variety however it is written."""
    return (
        word.isdigit() or len(word) < 2 or word == "or"
        or word in ARTICLES or word in JOINS or word in PLACE_OPENERS or word in REMARK_OPENERS or word in FILLERS
        or word in nouns.COUNT_NOUNS or word in nouns.UNITS or (word,) in PAST or (word,) in PLAIN or word in nouns.PLACE_NOUNS
        or word in nouns.TROUBLES or word in nouns.PRODUCTS or word in nouns.NUMBERS or word in UNKNOWN_WORDS
        or word in nouns.PART_SIDES or word in nouns.THINGS or word in HOW_IT_IS
        or word in MONTHS or word in WEEKDAYS or word in SEASONS
    )  # fmt: skip


def _is_named_so(walk: Walk, i: int, word: str) -> bool:
    """The "Purple" of "Purple Zinger": a describing word that begins a name; not the first word of a line."""
    if not walk.typed.capital(i) or len(word) <= 3 or not i:
        return False
    return i > 1 or (i + 1 < walk.stop(i) and walk.typed.capital(i + 1) and not walk.typed.names(i + 1)[0])


def perhaps(walk: Walk, item: Item, i: int, end: int) -> None:
    """Words that may be a variety of this item, with a hint."""
    written = walk.typed.written(i, end)
    is_doubtful = "?" in walk.typed.gaps[end] or walk.was_or or (end < walk.end and walk.word(end) == "or")
    item.varieties.append(
        Named(
            key=written,
            name=written,
            written=written,
            sureness=Sureness.DOUBTFUL if is_doubtful else Sureness.PERHAPS,
        )
    )
    item.spans.append(("variety", walk.typed.starts[i], walk.typed.ends[end - 1]))
    walk.draft.is_loose = True
    walk.ask(Level.HINT, f'"{written}" is perhaps a variety. Write it in quotes to make it sure.', i)
