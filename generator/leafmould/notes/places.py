"""Places in a clause: known beds, parts of beds, "from A to B", and places nobody has declared.

A preposition opens a place only if a known place follows. After in, into or from, behind a verb and a
crop, other words are a slip of a known name, a new bed, or a remark.
"""

from __future__ import annotations

from leafmould.notes.entries import Named
from leafmould.notes.new_places import counts, new_place
from leafmould.notes.parts import part_at, part_behind, part_then_place, take_only_side
from leafmould.notes.short_places import beds_from_to, has_numbered, take_short_place
from leafmould.notes.walk import Walk, add_place
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    JOINS,
    NEW_PLACE_OPENERS,
    PLACE_OPENERS,
)
from leafmould.values.names import Kind, Known


def take_place_after(walk: Walk, opener: int) -> bool:
    """A place behind the preposition at `opener`, known, in parts, or new."""
    word = walk.word(opener)
    role = PLACE_OPENERS[word]
    if word == "out" and walk.word(opener + 1) == "of":
        opener += 1
    i = past_whole(walk, walk.past_articles(opener + 1))
    if i >= walk.end or (walk.typed.breaks[i] and i > opener + 1):
        return False
    if _known_place(walk, i, role):
        return True
    if word in ("in", "on", "at") and take_only_side(walk, i):
        return True
    part_end = part_at(walk, i)
    if part_end and part_then_place(walk, i, part_end, role):
        return True
    is_short = word in SHORT_AFTER or (word in AROUND and has_numbered(walk, i))
    is_near = is_short and not walk.typed.breaks[i] and not walk.draft.places
    is_near = is_near and not (walk.after_comma and _is_new_sentence(walk, opener))
    if is_near and walk.has("place") and take_short_place(walk, opener + 1, role):
        return True
    if (
        word in NEW_PLACE_OPENERS
        and (walk.has("new") or walk.draft.subject == "self-sown")
        and (walk.draft.has_crop or walk.is_topic)
        and not walk.typed.breaks[i]
    ):
        return new_place(walk, opener, i, role)
    return False


WHOLE = frozenset({"whole", "all", "length", "width"})


SHORT_AFTER = frozenset({"in", "into", "from", "on", "onto", "off", "to"})
"""Behind these a noun may stand for the one bed it ends the name of; "over the wall" is anywhere."""


AROUND = frozenset({"round", "around", "under", "over", "for"})
"""Behind these too, where it is one of several with numbers: "copper tape round the tubs"."""


def _is_new_sentence(walk: Walk, i: int) -> bool:
    """Whether a sentence ended before this word, behind the verb: what follows is told by the way."""
    return any("." in walk.typed.gaps[k] and walk.typed.breaks[k] for k in range(walk.verb_end, i + 1))


def past_whole(walk: Walk, i: int) -> int:
    """The bed of "the whole of Bed 3", "the length of the Arch"."""
    if walk.word(i) not in WHOLE:
        return i
    j = i + (walk.word(i) == "whole")
    j += walk.word(j) in ("length", "width")
    if j > i or walk.word(i) == "all":
        j = walk.past_articles(j + (walk.word(i) == "all") + (walk.word(j + (walk.word(i) == "all")) == "of"))
        if walk.bed_at(j, bare_number=True)[1] is not None:
            return j
    return i


def _known_place(walk: Walk, i: int, role: str) -> bool:
    number_before = walk.word(i) in ("bed", "number", "no")
    j = i + 1 if number_before and walk.typed.is_number(i + 1) and not walk.bed_at(i)[1] else i
    size, known = walk.bed_at(j, bare_number=True)
    if known is None or (walk.typed.is_number(j) and size == 1 and counts(walk, j)):
        return False
    if walk.word(i - 1) == "of" and _is_crop_too(walk, j):
        return False
    add_place(walk, walk.named(known, j, j + size), role, j, j + size)
    walk.i = j + size
    part_behind(walk)
    more_places(walk, role, walk.typed.words[j])
    return True


def _is_crop_too(walk: Walk, i: int) -> bool:
    return any(k.kind in (Kind.CROP, Kind.CROP_GROUP) for k in walk.typed.names(i)[1])


def more_places(walk: Walk, role: str, first_word: str) -> None:
    """ "bed 2 and 3", "Hoop bed and Bag row", "Tub 1, Tub 2 and Tub 3", "tubs 1-3"."""
    _up_to(walk, role, first_word)
    while walk.i < walk.end:
        i = walk.i
        gap = walk.typed.gaps[i]
        joined = (
            walk.word(i) in JOINS
            or _is_next_number(walk, i, first_word)
            or "&" in gap
            or "+" in gap
            or "/" in gap
            or "," in gap
        )
        j = i + 1 if walk.word(i) in JOINS else i
        if walk.word(j) in ("in", "into", "on", "from") and walk.word(i) in JOINS:
            j += 1
        j = walk.past_articles(j)
        if not joined or j >= walk.end:
            return
        size, known = walk.bed_at(j)
        is_number = walk.typed.is_number(j) or (
            walk.typed.words[i - 1] in nouns.NUMBERS and walk.word(j) in nouns.NUMBERS
        )
        if known is None and is_number and not counts(walk, j):
            size, known = _bed_by_number(walk, first_word, j)
        if known is None and walk.word(i) in JOINS and has_numbered(walk, j):
            walk.i = j  # "Bag row and tubs"
            if not take_short_place(walk, j, role):
                walk.i = i
                return
            continue
        if known is None or ("," in gap and _is_crop_too(walk, j)):
            return
        add_place(
            walk,
            Named(key=known.key, name=known.name, written=walk.typed.written(j, j + size)),
            role,
            j,
            j + size,
        )
        walk.i = j + size
        part_behind(walk)
        _up_to(walk, role, walk.typed.words[j])
        if not is_number:
            first_word = walk.typed.words[j]  # "Bed 2 and tubs 1 and 2"


def _up_to(walk: Walk, role: str, noun: str) -> None:
    before = walk.i
    for known, end in beds_from_to(walk, noun, walk.typed.words[before - 1]):
        named = Named(key=known.key, name=known.name, written=walk.typed.written(end - 1, end))
        add_place(walk, named, role, end - 1, end)
        walk.i = end


def _is_next_number(walk: Walk, i: int, noun: str) -> bool:
    """ "tubs 1 2 and 3": the next number of beds named in the plural."""
    typed = walk.typed
    if not (typed.is_number(i) and typed.is_number(i - 1) and not typed.gaps[i]):
        return False
    k = i - 1
    while k > 0 and typed.is_number(k - 1):
        k -= 1
    return typed.words[k - 1] == noun and typed.plain[typed.ends[k - 1] - 1] in "sS"


def _bed_by_number(walk: Walk, first_word: str, j: int) -> tuple[int, Known | None]:
    number = str(nouns.NUMBERS.get(walk.typed.words[j], walk.typed.words[j]))
    known = walk.typed.vocabulary.by_words.get((first_word, number), ())
    beds = [k for k in known if k.kind is Kind.BED]
    return (1, beds[0]) if beds else (0, None)
