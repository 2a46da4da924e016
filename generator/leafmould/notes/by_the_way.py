"""Amounts that stand by the way: "stalk and a half" without its article, the panes of "dreadful gale, two panes out".

Asked by `amount_slots`.
"""

from __future__ import annotations

from leafmould.notes.amounts import Read
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import PLACE_OPENERS, REMARK_OPENERS
from leafmould.values.quantities import Amount


def one_and_a_half(walk: Walk, i: int) -> Read | None:
    """ "stalk and a half", "bag and a half of spinach"."""
    word = walk.word(i)
    if walk.typed.words[i + 1 : i + 4] != ["and", "a", "half"] or i + 4 > walk.end:
        return None
    if (word not in nouns.HOLDERS and word not in nouns.PICK_NOUNS) or walk.typed.names(i)[0] > 1:
        return None
    unit = nouns.SAME_NOUN.get(word, word)
    return Read(Amount(written=walk.typed.written(i, i + 4), low=1.5, high=1.5, unit=unit), i + 4, True)


def is_beside_seen(walk: Walk, read: Read, i: int) -> bool:
    """ "dreadful gale, two panes out of the shed": no two gales."""
    if (
        walk.verb.name != "saw"
        or not walk.typed.breaks[i]
        or read.amount.unit != "piece"
        or read.end >= walk.stop(i)
    ):
        return False
    word = walk.word(read.end)
    is_strange = (
        word.isalpha()
        and word not in PLACE_OPENERS
        and word not in REMARK_OPENERS
        and word not in nouns.TROUBLES
    )
    return (
        is_strange
        and word not in nouns.SELDOM_VARIETY
        and not any(walk.typed.names(k)[0] for k in range(read.end, walk.stop(i)))
    )
