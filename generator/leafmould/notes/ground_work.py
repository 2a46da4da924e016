"""What tells work on the ground from work on plants: heaps, plants set out, pots put outside. Asked by `senses`."""

from __future__ import annotations

from collections.abc import Container

from leafmould.notes.clause import Clause
from leafmould.notes.conditions import names_any
from leafmould.notes.typed import Typed
from leafmould.notes.words.prepositions import ARTICLES
from leafmould.values.names import Kind, fold_word


def _words(text: str) -> frozenset[str]:
    return frozenset(fold_word(word) for word in text.split())


HEAPS = _words("heap bin pile daleks dalek hotbin composter")
SET_OUT = _words("plant plants set sets seedling plug crown tuber slip starter transplant module clove bulb")


def is_for_heap(typed: Typed, clause: Clause) -> bool:
    """ "turned the compost heap and added grass clippings": no bed was mulched."""
    kinds = (Kind.BED, Kind.CROP, Kind.CROP_GROUP)
    return not HEAPS.isdisjoint(typed.words[: clause.end]) and not names_any(typed, clause, *kinds)


def names_set_out(typed: Typed, clause: Clause) -> bool:
    """ "got the sweetcorn in, 16 plants": what is counted in plants was planted."""
    return not SET_OUT.isdisjoint(typed.words[clause.start : clause.end])


def is_into_bed(typed: Typed, clause: Clause, openers: Container[str] = ("in", "into", "on", "onto")) -> bool:
    """ "got them into Bed 3": no harvest goes there; "got them in, Bed 3" may be one that came from there."""
    words = typed.words
    return any(
        typed.kind(i, Kind.BED)[0]
        and (words[i - 2 if words[i - 1] in ARTICLES else i - 1] in openers)
        and not typed.breaks[i]
        for i in range(clause.verb_end + 1, clause.end)
    )
