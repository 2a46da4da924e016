"""Words cut short in a line, read in full: "sw 2 rws carrs", "p/o 6 cgettes", "4 hds lett".

Asked by `typed` for lines that hold such a word. What stands for a word only beside an amount or a crop stays as
it is elsewhere.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from leafmould.notes.words import nouns
from leafmould.notes.words.clipped import (
    BEFORE_AMOUNTS,
    BEFORE_BEANS,
    BEFORE_ONIONS,
    BEHIND_DEEDS,
    CLIPPED,
    OPENING,
)
from leafmould.notes.words.prepositions import CLAUSE_LEADS
from leafmould.notes.words.spellings import SPELLINGS
from leafmould.notes.words.verbs import PARTICLES_OF
from leafmould.values.names import Kind, fold_word

if TYPE_CHECKING:
    from leafmould.notes.typed import Typed

INCLUDED = ("inc", "incl")
""" "rocket, inc. mizuna": and mizuna."""
CLIPPED_WORDS = frozenset({*map(fold_word, CLIPPED), *OPENING, *BEHIND_DEEDS, "pot", "hoop", "an", *INCLUDED})
"""One of these, folded, stands in every line that is looked through."""
NO_VOWELS = frozenset("bcdfgjklmnpqrstvwz")
"""No "an" stands before these: "an jammed the rest" means "and"."""
CROPS = (Kind.CROP, Kind.CROP_GROUP)


def read_in_full(typed: Typed) -> None:
    """The words of a line in place of those cut short, from behind, so that each sees what follows it."""
    for i in range(typed.count - 1, -1, -1):
        if typed.words[i] in CLIPPED_WORDS and not _is_behind_digit(typed, i):
            typed.words[i] = _in_full(typed, i)


def _in_full(typed: Typed, i: int) -> str:
    word = typed.words[i]
    written = typed.plain[typed.starts[i] : typed.ends[i]].lower()
    if written == "pots":
        is_size = i > 0 and typed.words[i - 1] in nouns.SIZES  # "11 little pots, and 3 lb damsons"
        return "potato" if not is_size and _has_weight_beside(typed, i) else word
    if written == "hoops":
        return "polytunnel" if _is_tunnel(typed, i) else word
    if word in typed.vocabulary.longest_by_first_word:
        return word  # a garden may have a bed called so
    if word in INCLUDED:
        return "and" if _is_thing(typed, i + 1) and not _is_count(typed, i + 1) else word
    if written in BEFORE_ONIONS:
        return "spring" if typed.words[i + 1 : i + 2] == ["onion"] else word
    if word == "an":
        return "and" if i and typed.words[i + 1 : i + 2] and typed.words[i + 1][0] in NO_VOWELS else word
    if word in BEHIND_DEEDS:
        is_behind = i > 0 and typed.words[i - 1] in PARTICLES_OF
        return BEHIND_DEEDS[word] if is_behind else word
    if word in OPENING:
        return OPENING[word] if _opens(typed, i) and _is_thing(typed, i + 1) else word
    if written in BEFORE_BEANS:
        return CLIPPED[written] if typed.words[i + 1 : i + 2] == ["bean"] else word
    if written in BEFORE_AMOUNTS and not (
        _is_count(typed, i - 1) or _is_count(typed, i + 1) or typed.words[i + 1 : i + 2] == ["lifted"]
    ):
        return word
    return fold_word(CLIPPED.get(written, word))


def _is_behind_digit(typed: Typed, i: int) -> bool:
    """The "bg" of "2bgs" is one; the "st" of "1st" is none of ours."""
    start = typed.starts[i]
    return (
        start > 0
        and typed.plain[start - 1].isdigit()
        and not (typed.words[i] in nouns.COUNT_NOUNS or typed.words[i] in HELD)
    )


HELD = frozenset({"bg", "bgs", "hd", "hds", "jrs", "bch", "rw", "rws", "bkt", "bx", "bxs", "pun", "puns"})


def _opens(typed: Typed, i: int) -> bool:
    """Whether a deed may begin here: at the start, behind a sign, behind "and"."""
    gap = typed.gaps[i].strip()
    return i == 0 or bool(gap) or typed.words[i - 1] in CLAUSE_LEADS


def _is_thing(typed: Typed, i: int) -> bool:
    """Whether a crop or a number stands at `i`."""
    if i >= typed.count:
        return False
    word = typed.words[i]
    known = typed.vocabulary.at(typed.words, i, *CROPS)[0]
    return bool(known) or _is_count(typed, i) or word in nouns.LOCAL_NAMES or word in SPELLINGS


def _is_count(typed: Typed, i: int) -> bool:
    if not 0 <= i < typed.count:
        return False
    word = typed.words[i]
    return word.isdigit() or word in nouns.NUMBERS or word in nouns.UNITS or word == "x" or not word.isalpha()


def _has_weight_beside(typed: Typed, i: int) -> bool:
    """ "pots 4 kg", "4 kg pots", "pots B3 700g": nothing but potatoes is so weighed."""
    behind = typed.words[i + 1 : i + 6]
    is_behind = any(a.isdigit() and _is_weight(b) for a, b in pairwise(behind))
    return is_behind or (i > 1 and _is_weight(typed.words[i - 1]) and typed.words[i - 2].isdigit())


def _is_tunnel(typed: Typed, i: int) -> bool:
    """ "toms in the hoops", "hoops: 3 cukes": the one bed under hoops; not "hoops off", "under hoops"."""
    if not any(k.kind is Kind.BED for k in typed.vocabulary.with_public.get(("polytunnel",), ())):
        return False
    before = [w for w in typed.words[max(0, i - 2) : i] if w != "the"][-1:]
    if before and before[0] in IN_A_BED:
        return True
    closes = i + 1 >= typed.count or typed.gaps[i + 1].strip() != ""
    return (
        closes
        and (i == 0 or typed.gaps[i].strip() != "")
        and typed.words[i + 1 : i + 2] not in ([w] for w in COVERING)
    )


IN_A_BED = frozenset({"in", "into", "from", "at", "inside", "to", "watered", "weeded", "opened"})
COVERING = ("off", "on", "over", "up", "down")


def _is_weight(word: str) -> bool:
    return nouns.UNITS.get(word, "") in nouns.WEIGHTS
