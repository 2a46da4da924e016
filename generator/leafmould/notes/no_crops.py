"""Words that are a crop elsewhere: the tomato of "a tomato feed", the Tom of "Tom took half".

Asked by `typed` once the words of a line are known.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from leafmould.values.names import Kind

if TYPE_CHECKING:
    from leafmould.notes.typed import Typed

FED_WITH = frozenset({"feed", "food", "fertiliser", "fertilizer", "tonic"})


def no_crops_of_feeds(typed: Typed) -> None:
    """ "a tomato feed", "rose food": the crop it is named after is none here."""
    for i in range(typed.count - 1):
        if typed.words[i + 1] in FED_WITH and _is_feed(typed, i):
            typed.found[i] = (0, ())


def _is_feed(typed: Typed, i: int) -> bool:
    """Not "gave the lettuce feed", nor a bed that is called so."""
    is_receiver = i > 1 and typed.words[i - 1] == "the" and typed.words[i - 2] in ("gave", "fed", "give")
    is_several = typed.plain[typed.ends[i] - 1] in "sS"
    is_bed = typed.vocabulary.at(typed.words, i, Kind.BED)[0] > 0
    return not (is_receiver or is_several or typed.breaks[i + 1] or is_bed)


TOMS = frozenset({"tom", "tommy", "tommie"})
TAKING = frozenset({"get", "got", "has", "had", "took", "take", "want"})


def no_crop_of_tom(typed: Typed) -> None:
    """ "1 kg of beans, Tom took half": somebody."""
    for i in range(typed.count - 1):
        is_taking = typed.words[i + 1] in TAKING and not typed.breaks[i + 1]
        if is_taking and typed.written(i, i + 1) in ("Tom", "Tommy", "Tommie"):
            typed.found[i] = (0, ())
