"""A bed joined to a crop: "watered Bed 2 and the tomatoes" tells of two things, not of tomatoes in Bed 2.

Asked of each clause before its actions are made. A place that a small word opens, or that stands behind a comma, is
where the crop stands, and stays with it.
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.draft import Done, Item
from leafmould.notes.typed import Typed
from leafmould.notes.words.prepositions import ARTICLES, JOINS, PLACE_OPENERS, REMARK_OPENERS

WITHOUT_BEDS = frozenset({"pruned"})
"""Done to trees, which are beds too, beside the verbs that may stand on a bed alone."""
Span = tuple[int, int]


def apart_by_bed(clause: Done, typed: Typed) -> list[Done]:
    """The clause, or two of it: one of the beds that are joined to a crop, one of the crops."""
    draft = clause.draft
    if not (draft.places and draft.has_crop) or not (
        "bed" in clause.verb.slots or clause.verb.name in WITHOUT_BEDS
    ):
        return [clause]
    places = [(start, end) for slot, start, end in draft.spans if slot == "place"]
    if len(places) != len(draft.places) or draft.part or any(item.places for item in draft.items):
        return [clause]
    crops = [
        (start, end) for item in draft.items for slot, start, end in item.spans if slot in ("crop", "variety")
    ]
    apart = {k for k, place in enumerate(places) if crops and _stands_apart(typed, place, crops)}
    if not apart:
        return [clause]
    for k in sorted(range(len(places)), key=lambda k: k > min(apart)):
        if (k + 1 in apart or k - 1 in apart) and not _is_led(typed, _first_word(typed, places[k])):
            apart.add(k)  # "Bed 2 and Bed 3 and the peas"
    beds = [place for k, place in enumerate(draft.places) if k in apart]
    others = [place for k, place in enumerate(draft.places) if k not in apart]
    kept = [s for s in draft.spans if s[0] != "place"]
    at_beds = [("place", *places[k]) for k in sorted(apart)]
    at_crops = [("place", *place) for k, place in enumerate(places) if k not in apart]
    of_beds = replace(draft, items=[Item()], places=beds, place_items=[], total=[], spans=[*kept, *at_beds])
    of_crops = replace(draft, places=others, place_items=[], spans=[*kept, *at_crops])
    found = [replace(clause, draft=of_beds, fates=[]), replace(clause, draft=of_crops)]
    return found if places[min(apart)] < crops[0] else found[::-1]


def _stands_apart(typed: Typed, place: Span, crops: list[Span]) -> bool:
    """Whether nothing but "and" stands between a place, which no small word opens, and a crop."""
    first = _first_word(typed, place)
    if _is_led(typed, first):
        return False
    before = _before_articles(typed, first)
    behind = next((i for i in range(first, typed.count) if typed.starts[i] >= place[1]), typed.count)
    if behind < typed.count and _is_join(typed, behind):
        after = behind + (typed.words[behind] in JOINS)
        while after < typed.count and typed.words[after] in ARTICLES:
            after += 1
        if after < typed.count and any(start == typed.starts[after] for start, _ in crops):
            return True
    if before < 1 or not _is_join(typed, before if typed.words[before] in JOINS else before + 1):
        return False
    last = before - (typed.words[before] in JOINS)
    return any(end == typed.ends[last] for _, end in crops)


def _is_join(typed: Typed, i: int) -> bool:
    return (typed.words[i] in JOINS and not typed.breaks[i]) or "&" in typed.gaps[i] or "+" in typed.gaps[i]


def _first_word(typed: Typed, place: Span) -> int:
    return typed.starts.index(place[0]) if place[0] in typed.starts else 0


def _before_articles(typed: Typed, first: int) -> int:
    before = first - 1
    while before >= 0 and typed.words[before] in ARTICLES:
        before -= 1
    return before


def _is_led(typed: Typed, first: int) -> bool:
    """Whether a small word such as "in" opens the place."""
    before = _before_articles(typed, first)
    return before >= 0 and (typed.words[before] in PLACE_OPENERS or typed.words[before] in REMARK_OPENERS)
