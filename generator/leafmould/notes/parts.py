"""Parts of beds: "north half", "tree 3", and where a part belongs to a bed, before it or behind it.

Steps of the walk, and what `places` asks once it has found a bed.
"""

from __future__ import annotations

from functools import lru_cache

from leafmould.notes.draft import Item
from leafmould.notes.entries import Named
from leafmould.notes.walk import Walk, add_place
from leafmould.notes.words import nouns
from leafmould.values.names import Kind, Known, Vocabulary


def part_at(walk: Walk, i: int) -> int:
    """The word behind a part of a bed that begins at `i`; 0 if none does."""
    i = walk.past_articles(i)
    if i >= walk.end:
        return 0
    size, known = walk.typed.kind(i, Kind.PART)
    if known:
        return i + size
    word, follows = walk.word(i), walk.word(i + 1)
    if follows and walk.typed.breaks[i + 1]:
        follows = ""
    if word in nouns.PART_COUNTED and follows and walk.typed.is_number(i + 1) and not walk.bed_at(i)[1]:
        if walk.word(i + 3) == "apart" or nouns.UNITS.get(walk.word(i + 2)) in ("cm", "mm", "ft"):
            return 0  # "rows 15cm apart"
        return i + 2
    if (
        word.isdigit()
        and follows in ("st", "nd", "rd", "th")
        and (walk.word(i + 2) in nouns.PART_COUNTED or walk.word(i + 2) in nouns.PART_ENDS)
    ):
        return i + 3
    if follows == "of" and word in LONE_PARTS and walk.bed_at(walk.past_articles(i + 2), bare_number=True)[1]:
        return i + 1  # "in the middle of Long border"
    if word in nouns.PART_SIDES and follows in nouns.PART_SIDES and walk.word(i + 2) in nouns.PART_ENDS:
        return i + 3
    if word in ("back", "front") and follows == "step":
        return 0  # of the house
    if word == "whole" and follows == "half":
        return 0  # "a whole half pound"
    if word in nouns.PART_SIDES and follows in nouns.PART_ENDS and not walk.bed_at(i)[1]:
        return i + 2
    return 0


def take_part(walk: Walk) -> bool:
    """A part of a bed that stands by itself, behind a comma, a bracket or the place."""
    i = walk.i
    end = part_at(walk, i)
    if not end:
        end = _lone_side(walk, i)
    if not end:
        return False
    if walk.draft.part is not None and not _another_part(walk, end):
        return False
    if walk.word(end) in ("of", "in") and part_then_place(walk, i, end, "at"):
        return True
    if not (
        walk.draft.places
        or walk.draft.origins
        or walk.typed.kind(walk.past_articles(i), Kind.PART)[0]
        or walk.is_topic
        or walk.typed.breaks[i]
    ):
        return False
    set_part(walk, i, end)
    walk.i = end
    return True


def _another_part(walk: Walk, end: int) -> bool:
    """ "beetroot in the north half, carrots in the south half": each crop its own part."""
    items = walk.draft.items
    if not items[-1].crops:
        return False
    if len(items) == 1 or _is_weighed(walk, end):
        is_weighed = _is_weighed(walk, end) and bool(items[-1].amounts)
        if not (walk.typed.kind(end, Kind.CROP, Kind.CROP_GROUP)[0] or is_weighed):
            return False
        items.append(Item(takes_crop_before=is_weighed))
    for item in items[:-1]:
        item.part = item.part or walk.draft.part
    walk.draft.part = None
    return True


def _is_weighed(walk: Walk, end: int) -> bool:
    """ "N half 3.2 kg, S half 2.7 kg": each part with what it gave."""
    return walk.typed.is_number(end) and end < walk.end and not walk.typed.kind(end, Kind.BED)[0]


LONE_PARTS = nouns.PART_ALONE | frozenset({"corner", "edge", "end", "side"})
LETTERS = {"n": "north", "s": "south", "e": "east", "w": "west"}


def _lone_side(walk: Walk, i: int) -> int:
    """ "Long border, south": a side alone right behind its bed; "Long border N"."""
    i = walk.past_articles(i)
    if walk.word(i) == "left" and i and not walk.typed.breaks[i]:
        return 0  # "half left", "12 left"
    if walk.word(i) in LETTERS and walk.typed.capital(i) and _is_behind_place(walk, i):
        return i + 1 if i + 1 >= walk.end or walk.typed.breaks[i + 1] else 0
    if (
        walk.draft.places
        and walk.word(i) in nouns.PART_ALONE
        and not walk.typed.written(i, i + 1).endswith("s")
        and i + 1 <= walk.end
        and (i + 1 >= walk.end or walk.typed.breaks[i + 1])
    ):
        return i + 1
    return 0


def take_only_side(walk: Walk, i: int) -> bool:
    """ "two trailers of dung on the south": the side that only one bed has as a part."""
    if (
        walk.draft.places
        or walk.word(i) not in COMPASS
        or not (i + 1 >= walk.end or walk.typed.breaks[i + 1])
    ):
        return False
    parts = {k.name: k for k in _parts_by_word(walk.typed.vocabulary).get(walk.word(i), ())}
    known = next(iter(parts.values())) if len(parts) == 1 else None
    if known is None or len(known.of) != 1:
        return False
    _bed_of_part(walk, known.of[0], i, i + 1)
    walk.draft.part = known.name
    walk.span("part", i, i + 1)
    walk.i = i + 1
    return True


COMPASS = frozenset({"north", "south", "east", "west"})


def _is_behind_place(walk: Walk, i: int) -> bool:
    """ "Long border N", "Long border, N"; not the W of "Kelvedon W"."""
    is_placed = bool(walk.draft.places or walk.draft.origins)
    return is_placed and (
        walk.typed.breaks[i] or walk.draft.covers(walk.typed.starts[i - 1], "place", "origin")
    )


def set_part(walk: Walk, i: int, end: int) -> None:
    """Keep a part under its declared name, or as written."""
    i = walk.past_articles(i)
    beds = {p.key for p in (*walk.draft.places, *walk.draft.origins)}
    known = walk.typed.kind(i, Kind.PART)[1] or _spelled_out(walk, i, end)
    declared = [k for k in known if not beds or not k.of or beds & set(k.of)]
    if not declared and end == i + 1:
        declared = _parts_beginning(walk, LETTERS.get(walk.typed.words[i], walk.typed.words[i]), beds)
    side = LETTERS.get(walk.typed.words[i], walk.typed.written(i, i + 1).lower())
    as_written = f"{side} {walk.typed.written(i + 1, end).lower()}".strip()
    walk.draft.part = declared[0].name if declared else as_written
    if (
        known
        and not walk.draft.places
        and not walk.draft.origins
        and len(known) == 1
        and len(known[0].of) == 1
    ):
        _bed_of_part(walk, known[0].of[0], i, end)
    walk.span("part", i, end)


def _spelled_out(walk: Walk, i: int, end: int) -> tuple[Known, ...]:
    """The declared part that "N half" means."""
    if (side := LETTERS.get(walk.typed.words[i])) is None:
        return ()
    known = walk.typed.vocabulary.by_words.get((side, *walk.typed.words[i + 1 : end]), ())
    return tuple(k for k in known if k.kind is Kind.PART)


def _bed_of_part(walk: Walk, key: str, i: int, end: int) -> None:
    """A part that only one bed has names that bed too."""
    for _, known in walk.typed.vocabulary.pairs:
        if known.kind is Kind.BED and known.key == key:
            walk.draft.places.append(Named(key=key, name=known.name, written=walk.typed.written(i, end)))
            return


def _parts_beginning(walk: Walk, word: str, beds: set[str]) -> list[Known]:
    found = [k for k in _parts_by_word(walk.typed.vocabulary).get(word, ()) if beds & set(k.of)]
    return found if len({k.name for k in found}) == 1 else []


@lru_cache(maxsize=8)
def _parts_by_word(vocabulary: Vocabulary) -> dict[str, list[Known]]:
    """The declared parts of beds, by the first word of their names."""
    parts: dict[str, list[Known]] = {}
    for words, known in vocabulary.pairs:
        if known.kind is Kind.PART:
            parts.setdefault(words[0], []).append(known)
    return parts


def part_behind(walk: Walk) -> None:
    """A part right behind its bed: "Long border north half", "Long border (south)"."""
    i = walk.i
    if i < walk.end and walk.draft.part is None and (end := part_at(walk, i) or _lone_side(walk, i)):
        if walk.word(end) in ("of",) or (walk.typed.breaks[i] and _begins_place(walk, i)):
            return
        set_part(walk, i, end)
        walk.i = end


def _begins_place(walk: Walk, i: int) -> bool:
    return walk.bed_at(i)[1] is not None


def part_then_place(walk: Walk, i: int, end: int, role: str) -> bool:
    """ "in the south half of Long border", "onto tree 3 in Orchard row", "along the south side"."""
    if walk.word(end) in ("of", "in", "on", "at"):
        j = walk.past_articles(end + 1)
        size, known = walk.bed_at(j, bare_number=True)
        if known is not None:
            add_place(walk, walk.named(known, j, j + size), role, j, j + size)
            set_part(walk, i, end)
            walk.i = j + size
            return True
    elif (bed := walk.bed_at(end))[1] is not None and not walk.typed.breaks[end]:
        add_place(walk, walk.named(bed[1], end, end + bed[0]), role, end, end + bed[0])
        set_part(walk, i, end)
        walk.i = end + bed[0]
        return True
    if walk.draft.part is not None and not _another_part(walk, end):
        return False
    set_part(walk, i, end)
    walk.i = end
    return True
