"""Words beside a verb that settle what it means; `senses` asks them by name."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

from leafmould.notes.clause import Clause
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, PLACE_OPENERS
from leafmould.values.names import Kind


def is_pest_eggs(typed: Typed, clause: Clause) -> bool:
    """ "found eggs under the kale leaves": no hen laid those."""
    words = typed.words[clause.start : clause.end]
    return "egg" in words and "leaf" in words


def for_something(typed: Typed, clause: Clause) -> bool:
    """ "swapped leeks for pepper plants": what went comes first."""
    words = typed.words[clause.verb_end : clause.end]
    crop = next(
        (
            i
            for i in range(clause.verb_end, clause.end)
            if typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] or typed.words[i] in GIVEN_THINGS
        ),
        None,
    )
    return "for" in words and crop is not None and crop < clause.verb_end + words.index("for")


GIVEN_THINGS = nouns.EGGS | nouns.HONEY | (nouns.PRODUCTS - {"stock", "powder", "leather"})


def followed_by(*words: str) -> Callable[[Typed, Clause], bool]:
    """Whether these words stand in the clause in this order, one behind the other."""

    def test(typed: Typed, clause: Clause) -> bool:
        spots = range(clause.verb_end, clause.end - len(words) + 1)
        return any(tuple(typed.words[i : i + len(words)]) == words for i in spots)

    return test


def given_on(typed: Typed, clause: Clause) -> bool:
    """ "took a box to the food bank"."""
    words = typed.words[clause.verb_end : clause.end]
    return "to" in words and bool(
        {"bank", "neighbour", "neighbor", "office", "school", "work", "church", "fair"} & set(words)
    )


PLANTS = frozenset({"plant", "vine", "tree", "bush", "cane", "row", "stalk"})


def off_plants(typed: Typed, clause: Clause) -> bool:
    """ "got 7 off one vine": picked, where "got 7 off a neighbour" is not."""
    words = typed.words[clause.verb_end : clause.end]
    return "off" in words and not PLANTS.isdisjoint(words[words.index("off") + 1 :][:4])


CROPS = (Kind.CROP, Kind.CROP_GROUP)


def _behind_articles(typed: Typed, clause: Clause) -> int:
    i = clause.verb_end
    while i < clause.end and typed.words[i] in ARTICLES:
        i += 1
    return i


def is_plant_fed(typed: Typed, clause: Clause) -> bool:
    """ "fed the lemon two handfuls of sheep pellets"; not "fed the lettuce to the hens"."""
    i = _behind_articles(typed, clause)
    return bool(typed.kind(i, *CROPS)[0]) and "to" not in typed.words[i : clause.end]


def hens_given(typed: Typed, clause: Clause) -> bool:
    """ "gave the hens the old lettuces"."""
    i = _behind_articles(typed, clause)
    return i + 1 < clause.end and typed.words[i] in nouns.HENS and not typed.breaks[i + 1]


def has_fallen(typed: Typed, clause: Clause) -> bool:
    """ "picked up a bucket of apples from under the tree"."""
    words = typed.words[clause.verb_end : clause.end]
    return any(a in ("from", "off") and b in ("under", "beneath", "below") for a, b in pairwise(words))


def is_flower_opened(typed: Typed, clause: Clause) -> bool:
    """ "the first sunflower opened along the fence"; not "opened the beans"."""
    is_bare = clause.verb_end >= clause.end or typed.breaks[clause.verb_end]
    is_passive = typed.words[max(clause.verb_start - 1, 0)] in ("was", "were", "been")
    return (
        not is_passive
        and any(typed.kind(i, *CROPS)[0] for i in range(clause.start, clause.verb_start))
        and (is_bare or typed.words[clause.verb_end] in {*PLACE_OPENERS, "today", "yesterday", "this"})
    )


def is_mulch_round(typed: Typed, clause: Clause) -> bool:
    """ "chucked half a bale of straw round the peppers"."""
    return any(
        typed.words[i] in nouns.MULCHES and typed.words[i + 1] in ("round", "around", "under", "over", "on")
        for i in range(clause.verb_end, clause.end - 1)
    )


THOUGHTS = frozenset({"probably", "maybe", "possibly", "perhaps", "think"})


def is_thought(typed: Typed, start: int, end: int) -> bool:
    """ "probably 'Charlotte'", "'Sungold' I think": a variety nobody is sure of."""
    words = typed.words
    if THOUGHTS.isdisjoint(words):
        return False
    return (
        words[max(start - 1, 0) : start] in (["probably"], ["maybe"], ["possibly"], ["perhaps"])
        or words[max(start - 2, 0) : start] == ["i", "think"]
        or words[end : end + 2] == ["i", "think"]
    )
