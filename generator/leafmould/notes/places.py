"""Places in a clause: known beds, parts of beds, "from A to B", and places nobody has declared.

A preposition opens a place only if a known place follows. After in, into or from, behind a verb and a
crop, other words are a slip of a known name, a new bed, or a remark.
"""

from __future__ import annotations

from leafmould.notes.draft import Item
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.nearness import near_name
from leafmould.notes.shares import bed_follows
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    JOINS,
    NEW_PLACE_OPENERS,
    PLACE_OPENERS,
    REMARK_OPENERS,
)
from leafmould.notes.words.verbs import PAST
from leafmould.values.names import Kind, Known, slug
from leafmould.values.problems import Level


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
    part_end = part_at(walk, i)
    if part_end and _part_then_place(walk, i, part_end, role):
        return True
    if (
        word in NEW_PLACE_OPENERS
        and (walk.has("new") or walk.draft.subject == "self-sown")
        and (walk.draft.has_crop or walk.is_topic)
        and not walk.typed.breaks[i]
    ):
        return _new_place(walk, opener, i, role)
    return False


def past_whole(walk: Walk, i: int) -> int:
    """The bed of "the whole of Bed 3", "the length of the Arch"."""
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
    if known is None or (walk.typed.is_number(j) and size == 1 and _counts(walk, j)):
        return False
    if _is_crop_too(walk, j) and walk.word(i - 1) == "of":
        return False
    add_place(walk, walk.named(known, j, j + size), role, j, j + size)
    walk.i = j + size
    part_behind(walk)
    more_places(walk, role, walk.typed.words[j])
    return True


def _is_crop_too(walk: Walk, i: int) -> bool:
    return any(k.kind in (Kind.CROP, Kind.CROP_GROUP) for k in walk.typed.names(i)[1])


def _counts(walk: Walk, i: int) -> bool:
    """Whether a number here counts something, rather than naming a bed."""
    following = walk.word(i + 1)
    if following and walk.typed.kind(i + 1, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0]:
        return not walk.typed.breaks[i + 1]
    return (
        bool(following)
        and not walk.typed.breaks[i + 1]
        and (
            following in nouns.UNITS
            or following in nouns.COUNT_NOUNS
            or following in ("to", "x", "from", "in", "off", "each", "left")
            or (following in ("on", "onto") and bed_follows(walk, i + 1) > 0)
        )
    )


def add_place(walk: Walk, place: Named, role: str, start: int, end: int) -> None:
    """Put a place where it belongs."""
    walk.span("origin" if role == "from" and _is_origin(walk) else "place", start, end)
    target = walk.draft.origins if role == "from" and _is_origin(walk) else walk.draft.places
    if all(place.key != known.key for known in target):
        target.append(place)
    if target is walk.draft.places and walk.draft.item.crops:
        walk.draft.place_items.append((place, len(walk.draft.items) - 1))


def _is_origin(walk: Walk) -> bool:
    return walk.has("raise") or walk.verb.name in (
        "moved",
        "potted on",
        "pricked out",
        "hardened off",
        "divided",
    )


def more_places(walk: Walk, role: str, first_word: str) -> None:
    """ "bed 2 and 3", "Hoop bed and Bag row", "Tub 1, Tub 2 and Tub 3"."""
    while walk.i < walk.end:
        i = walk.i
        gap = walk.typed.gaps[i]
        joined = walk.word(i) in JOINS or "&" in gap or "+" in gap or "/" in gap or "," in gap
        j = i + 1 if walk.word(i) in JOINS else i
        if walk.word(j) in ("in", "into", "on", "from") and walk.word(i) in JOINS:
            j += 1
        j = walk.past_articles(j)
        if not joined or j >= walk.end:
            return
        size, known = walk.bed_at(j)
        if known is None and walk.typed.is_number(j) and not _counts(walk, j):
            size, known = _bed_by_number(walk, first_word, j)
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


def _bed_by_number(walk: Walk, first_word: str, j: int) -> tuple[int, Known | None]:
    known = walk.typed.vocabulary.by_words.get((first_word, walk.typed.words[j]), ())
    beds = [k for k in known if k.kind is Kind.BED]
    return (1, beds[0]) if beds else (0, None)


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
        return i + 2
    if (
        word.isdigit()
        and follows in ("st", "nd", "rd", "th")
        and walk.word(i + 2) in nouns.PART_COUNTED | nouns.PART_ENDS
    ):
        return i + 3
    if word in nouns.PART_SIDES and follows in nouns.PART_SIDES and walk.word(i + 2) in nouns.PART_ENDS:
        return i + 3
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
    if walk.word(end) in ("of", "in") and _part_then_place(walk, i, end, "at"):
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
    if len(items) == 1:
        if not walk.typed.kind(end, Kind.CROP, Kind.CROP_GROUP)[0]:
            return False
        items.append(Item())
    for item in items[:-1]:
        item.part = item.part or walk.draft.part
    walk.draft.part = None
    return True


def _lone_side(walk: Walk, i: int) -> int:
    """ "Long border, south": a side alone right behind its bed."""
    i = walk.past_articles(i)
    if (
        walk.draft.places
        and walk.word(i) in nouns.PART_ALONE
        and not walk.typed.written(i, i + 1).endswith("s")
        and i + 1 <= walk.end
        and (i + 1 >= walk.end or walk.typed.breaks[i + 1])
    ):
        return i + 1
    return 0


def set_part(walk: Walk, i: int, end: int) -> None:
    """Keep a part under its declared name, or as written."""
    i = walk.past_articles(i)
    beds = {p.key for p in (*walk.draft.places, *walk.draft.origins)}
    known = walk.typed.kind(i, Kind.PART)[1]
    declared = [k for k in known if not beds or not k.of or beds & set(k.of)]
    if not declared and end == i + 1:
        declared = _parts_beginning(walk, walk.typed.words[i], beds)
    walk.draft.part = declared[0].name if declared else walk.typed.written(i, end).lower()
    if (
        known
        and not walk.draft.places
        and not walk.draft.origins
        and len(known) == 1
        and len(known[0].of) == 1
    ):
        _bed_of_part(walk, known[0].of[0], i, end)
    walk.span("part", i, end)


def _bed_of_part(walk: Walk, key: str, i: int, end: int) -> None:
    """A part that only one bed has names that bed too."""
    for _, known in walk.typed.vocabulary.pairs:
        if known.kind is Kind.BED and known.key == key:
            walk.draft.places.append(Named(key=key, name=known.name, written=walk.typed.written(i, end)))
            return


def _parts_beginning(walk: Walk, word: str, beds: set[str]) -> list[Known]:
    found = [
        k for words, k in walk.typed.vocabulary.pairs
        if k.kind is Kind.PART and words[0] == word and beds & set(k.of)
    ]  # fmt: skip
    return found if len({k.name for k in found}) == 1 else []


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


def _part_then_place(walk: Walk, i: int, end: int, role: str) -> bool:
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


GROUND_FIRST = frozenset({"bed", "border", "patch", "row", "plot", "pot", "tub", "corner", "frame", "box"})


GROUND_LINKS = frozenset(
    {"on", "by", "under", "near", "at", "behind", "beside", "against", "next", "below", "above", "along", "outside", "opposite"}
)  # fmt: skip


def _new_place(walk: Walk, opener: int, i: int, role: str) -> bool:
    """Words no bed is known by: a slip of a known name (a question), a new bed (a hint), or a remark."""
    end = _phrase_end(walk, i)
    if end <= i or walk.typed.is_number(i) or walk.word(i) in nouns.NUMBERS:
        return False
    if _near_place(walk, i, end, role):
        return True
    written = walk.typed.written(i, end)
    last = walk.typed.words[end - 1]
    capital = any(walk.typed.capital(j) for j in range(i, end))
    indefinite = any(walk.typed.words[j] in ("a", "an", "some") for j in range(opener + 1, i))
    ends_as_place = (
        last in nouns.PLACE_NOUNS or last.isdigit() or (walk.typed.words[i] in GROUND_FIRST and end - i > 2)
    )
    soon = last in nouns.SOON_PLACES or (indefinite and not capital)
    if (soon and not capital) or not (ends_as_place or capital):
        return False
    if (
        walk.has("seller")
        and walk.word(opener) == "from"
        and last not in nouns.PLACE_NOUNS
        and not last.isdigit()
    ):
        return False
    key = slug(written)
    add_place(walk, Named(key=key, name=written, written=written, sureness=Sureness.NEW), role, i, end)
    walk.ask(Level.HINT, f'"{written}" is a new bed.', i)
    walk.draft.is_loose = True
    walk.i = end
    part_behind(walk)
    return True


def _phrase_end(walk: Walk, i: int) -> int:
    """The word behind the words that may name a new place."""
    end, stop = i, walk.stop(i)
    while end < stop and end - i < 6:
        word = walk.typed.words[end]
        if end in walk.typed.quotes or (word in JOINS and end > i):
            break
        if (
            word in PLACE_OPENERS
            or word in REMARK_OPENERS
            or word in ("with", "today", "yesterday", "each", "this", "last")
        ):
            single = end - i == 1 and walk.typed.words[i] in GROUND_FIRST and walk.typed.names(end)[0] == 0
            if not (single and word in GROUND_LINKS and end + 1 < stop):
                break
            return stop
        if end > i and tuple(walk.typed.words[end : end + 1]) in PAST:
            break
        if end > i and word.isdigit() and _counts(walk, end):
            break
        end += 1
    return end


def _near_place(walk: Walk, i: int, end: int, role: str) -> bool:
    for size in range(min(end - i, 4), 0, -1):
        words = tuple(walk.typed.words[i : i + size])
        known = near_name(walk.typed.vocabulary, words, (Kind.BED,))
        if known is None or walk.typed.kind(i + size - 1, Kind.CROP, Kind.CROP_GROUP)[0]:
            continue
        written = walk.typed.written(i, i + size)
        place = Named(key=known.key, name=known.name, written=written, sureness=Sureness.DOUBTFUL)
        add_place(walk, place, role, i, i + size)
        walk.ask(Level.QUESTION, f'No bed is called "{written}"; read as "{known.name}".', i, known.name)
        walk.i = i + size
        part_behind(walk)
        return True
    return False


def near_place_alone(walk: Walk, i: int) -> bool:
    """A slip of a known bed's name without a preposition, where nothing else fits."""
    return _near_place(walk, i, min(walk.stop(i), i + 3), "at") if walk.word(i) not in ARTICLES else False
