"""Places nobody has declared: a slip of a known bed's name, a new bed, or a remark.

Asked by `places` once no known bed stands where one may.
"""

from __future__ import annotations

from functools import lru_cache

from leafmould.notes.entries import Named, Sureness
from leafmould.notes.nearness import near_name
from leafmould.notes.parts import part_behind
from leafmould.notes.shares import bed_follows
from leafmould.notes.walk import Walk, add_place
from leafmould.notes.what_follows import LASTING
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
)
from leafmould.notes.words.verbs import PAST
from leafmould.values.date_words import MONTHS
from leafmould.values.names import Kind, Known, Vocabulary, slug
from leafmould.values.problems import Level


def counts(walk: Walk, i: int) -> bool:
    """Whether a number here counts something, rather than naming a bed."""
    following = walk.word(i + 1)
    if following.isdigit() and walk.typed.gaps[i + 1] in (".", ","):
        return True  # "Bed 2, 4.5 kg"
    if following == "of" and (i + 2 >= walk.end or walk.typed.breaks[i + 2]):
        return True  # "Bed 3, 3 of"
    if following and walk.typed.kind(i + 1, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0]:
        return not walk.typed.breaks[i + 1]
    return (
        bool(following)
        and not walk.typed.breaks[i + 1]
        and (
            following in nouns.UNITS
            or following in nouns.COUNT_NOUNS
            or following in LASTING  # "weeded Bed 3, 2 hrs"
            or following
            in (
                "to",
                "x",
                "from",
                "in",
                "off",
                "each",
                "left",
                "look",
                "looks",
                "is",
                "are",
                "were",
                "died",
                "dead",
                "gone",
            )
            or (following in ("on", "onto") and bed_follows(walk, i + 1) > 0)
        )
    )


GROUND_FIRST = frozenset({"bed", "border", "patch", "row", "plot", "pot", "tub", "corner", "frame", "box"})


GROUND_LINKS = frozenset(
    {"on", "by", "under", "near", "at", "behind", "beside", "against", "next", "below", "above", "along", "outside", "opposite"}
)  # fmt: skip


def new_place(walk: Walk, opener: int, i: int, role: str) -> bool:
    """Words no bed is known by: a slip of a known name (a question), a new bed (a hint), or a remark."""
    end = _phrase_end(walk, i)
    if end <= i or walk.typed.is_number(i) or walk.word(i) in nouns.NUMBERS:
        return False
    if walk.word(i) in ("week", "wk") and walk.typed.is_number(i + 1):
        return False  # "in week 23"
    if _near_place(walk, i, end, role):
        return True
    if not nouns.HIVE.isdisjoint(walk.typed.words[i:end]):
        return False  # "in both hives"
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
    meant = _bed_called_so(walk.typed.vocabulary, frozenset(walk.typed.words[i:end]))
    walk.ask(Level.QUESTION if meant else Level.HINT, f'"{written}" is a new bed.', i, meant)
    walk.draft.is_loose = True
    walk.i = end
    part_behind(walk)
    return True


def _bed_called_so(vocabulary: Vocabulary, words: frozenset[str]) -> str | None:
    """The one bed these words are part of the name of: "the Victoria" may be "Victoria plum"."""
    if any(word.isdigit() for word in words):
        return None
    beds = {known.name for name, known in vocabulary.pairs if known.kind is Kind.BED and words < set(name)}
    return beds.pop() if len(beds) == 1 else None


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
        if end > i and (word,) in PAST and walk.word(end + 1) not in nouns.PLACE_NOUNS:
            break
        if word.isdigit() and (counts(walk, end) or walk.word(end + 1) in MONTHS):
            break
        end += 1
    return end


def _near_place(walk: Walk, i: int, end: int, role: str) -> bool:
    words = tuple(walk.typed.words[i : min(end, i + 4)])
    for size, known in _beds_near(walk.typed.vocabulary, words):
        if walk.typed.kind(i + size - 1, Kind.CROP, Kind.CROP_GROUP)[0]:
            continue
        written = walk.typed.written(i, i + size)
        place = Named(key=known.key, name=known.name, written=written, sureness=Sureness.DOUBTFUL)
        add_place(walk, place, role, i, i + size)
        walk.ask(Level.QUESTION, f'No bed is called "{written}"; read as "{known.name}".', i, known.name)
        walk.i = i + size
        part_behind(walk)
        return True
    return False


@lru_cache(maxsize=20_000)
def _beds_near(vocabulary: Vocabulary, words: tuple[str, ...]) -> tuple[tuple[int, Known], ...]:
    """The beds one slip away from words that begin here, each with how many words it has, the longest first."""
    near = ((size, near_name(vocabulary, words[:size], (Kind.BED,))) for size in range(len(words), 0, -1))
    return tuple((size, known) for size, known in near if known is not None)


def near_place_alone(walk: Walk, i: int) -> bool:
    """A slip of a known bed's name without a preposition, where nothing else fits."""
    return _near_place(walk, i, min(walk.stop(i), i + 3), "at") if walk.word(i) not in ARTICLES else False
