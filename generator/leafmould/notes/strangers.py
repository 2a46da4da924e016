"""Words nobody knows, where a crop or its variety may stand.

An unknown noun behind sowed, planted or picked is an unknown crop, with a hint; unknown words beside a crop
are perhaps a variety; one slip of a known name is a question. Never taken in silence.
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.draft import Item
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.nearness import near_name
from leafmould.notes.places import near_place_alone
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    FILLERS,
    JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
)
from leafmould.notes.words.verbs import PAST, PLAIN
from leafmould.values.date_words import MONTHS, SEASONS, WEEKDAYS
from leafmould.values.names import Kind, Known, fold, slug
from leafmould.values.problems import Level

STARTS = frozenset(
    {
        "started",
        "sowed",
        "resowed",
        "planted",
        "grew",
        "bought",
        "potted on",
        "pricked out",
        "hardened off",
        "came up",
        "tried seed",
    }
)


UNKNOWN_WORDS = frozenset(
    {"unknown", "unnamed", "unlabelled", "unlabeled", "mystery", "unidentified", "nameless"}
)


COVER_CROPS = (
    ["green", "manure"],
    ["cover", "crop"],
    ["salad", "leaf"],
    ["mixed", "salad"],
    ["salad", "mix"],
)


def take_unknown(walk: Walk) -> bool:
    """Words nobody knows, where a crop or its variety may stand."""
    i = walk.i
    if walk.is_topic or not (walk.has("crop!") or (walk.has("crop") and not walk.draft.places)):
        return False
    item = walk.draft.item
    if walk.word(i) in UNKNOWN_WORDS:
        return _unknown_before(walk, item, i)
    end = i + 2 if walk.typed.words[i : i + 2] in COVER_CROPS else _variety_words(walk, i)
    if end == i:
        return False
    if walk.verb.name == "gave away" and (
        walk.typed.capital(i) or not _closes(walk, end) or walk.word(end) in nouns.NUMBERS
    ):
        walk.draft.leave(i, i + 1, True)
        walk.i = i + 1
        return True
    if walk.was_or and (item.varieties or item.crops) and not _crop_at(walk, end):
        perhaps(walk, item, i, end)
        walk.was_or, walk.i = False, end
        return True
    if _crop_at(walk, _past_or(walk, end)):
        return _before_crop(walk, i, end)
    if item.crops or (item.varieties and (walk.typed.breaks[i] or any(v.of for v in item.varieties))):
        return _beside_known(walk, i, end)
    if walk.typed.breaks[i] and not walk.draft.has_crop and walk.draft.places:
        return False
    return _unknown_crop(walk, item, i, end)


def unknown_behind_crop(walk: Walk, item: Item) -> None:
    """ "beetroot Boltardy", "tomato unknown": unknown words right behind a crop."""
    i = walk.i
    if i >= walk.end or i in walk.used:
        return
    if walk.word(i) in UNKNOWN_WORDS and (not walk.typed.breaks[i] or "(" in walk.typed.gaps[i]):
        item.varieties.append(
            Named(
                key="unknown", name="unknown", written=walk.typed.written(i, i + 1), sureness=Sureness.UNKNOWN
            )
        )
        item.spans.append(("variety", walk.typed.starts[i], walk.typed.ends[i]))
        walk.i = i + 1
        walk.i += walk.word(walk.i) in ("variety", "kind", "sort", "type")
        return
    if walk.typed.breaks[i] and "(" not in walk.typed.gaps[i]:
        return
    if walk.has("place") and not walk.draft.places and near_place_alone(walk, i):
        return
    if (
        walk.verb.name in STARTS | {"picked"}
        and (end := _variety_words(walk, i)) > i
        and (walk.typed.capital(i) or (walk.verb.name in STARTS and _closes(walk, end)))
        and not _crop_at(walk, end)
    ):
        perhaps(walk, item, i, end)
        walk.i = end


def noun_behind_crop(walk: Walk, item: Item) -> None:
    """ "12 kale plants", "garlic cloves", "beans seeds": the noun says what was counted."""
    i = walk.i
    word = walk.word(i)
    if not word or walk.typed.breaks[i] or i in walk.typed.quotes:
        return
    if word in nouns.PRODUCTS or (word in nouns.THINGS and not walk.typed.names(i)[0]):
        walk.draft.leave(i, i + 1, walk.after_comma) if walk.draft.subject is None else None
        walk.i = i + 1
        return
    counted = word in nouns.PLANT_NOUNS or word in nouns.PICK_NOUNS or word in ("seed", "row", "cutting")
    if not counted or walk.typed.names(i)[0] > 1 or walk.bed_at(i)[1] is not None:
        return
    if word == "row" and walk.typed.is_number(i + 1):
        return

    if item.amounts and item.amounts[-1].unit == "piece":
        amount = item.amounts[-1]
        item.amounts[-1] = replace(
            amount, unit=word, written=f"{amount.written} {walk.typed.written(i, i + 1)}"
        )
    walk.i = i + 1


def _closes(walk: Walk, end: int) -> bool:
    """Whether a run of words ends where a variety may: at a break, a place, an amount."""
    return (
        end >= walk.end
        or walk.typed.breaks[end]
        or walk.word(end) in PLACE_OPENERS
        or walk.typed.is_number(end)
    )


def _crop_at(walk: Walk, i: int) -> bool:
    return (
        i < walk.end and not walk.typed.breaks[i] and bool(walk.typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0])
    )


def _variety_words(walk: Walk, i: int) -> int:
    """The end of a run of unknown words that may name a variety."""
    end, stop = i, walk.stop(i)
    while end < stop and end - i < 4 and (_may_be_variety(walk, end) or _is_inner_of(walk, i, end)):
        end += 1
    if end > i and end < stop and walk.typed.is_number(end) and end + 1 >= stop:
        end += 1
    return end


HOW_IT_IS = frozenset(
    {"empty", "raw", "full", "cooked", "steamed", "fried", "roast", "alone", "clean", "tidy", "done", "left"}
)
"""Said of a bed or a meal; never a crop or its variety."""


def _is_inner_of(walk: Walk, i: int, k: int) -> bool:
    """The "of" of "Duke of York"."""
    return (
        walk.word(k) == "of"
        and k > i
        and k + 1 < walk.stop(i)
        and walk.typed.capital(k - 1)
        and walk.typed.capital(k + 1)
        and not walk.typed.names(k + 1)[0]
    )


def _may_be_variety(walk: Walk, i: int) -> bool:
    word = walk.typed.words[i]
    return not (
        i in walk.used or walk.typed.names(i)[0] or word.isdigit() or i in walk.typed.quotes or (word in nouns.SELDOM_VARIETY and not (walk.typed.capital(i) and len(word) > 3 and i > 1))
        or word in ARTICLES or word in JOINS or word in PLACE_OPENERS or word in REMARK_OPENERS or word in FILLERS
        or word in nouns.COUNT_NOUNS or word in nouns.UNITS or (word,) in PAST or (word,) in PLAIN or word in nouns.PLACE_NOUNS
        or word in nouns.TROUBLES or word in nouns.PRODUCTS or word in nouns.NUMBERS or word in UNKNOWN_WORDS or word == "or"
        or word in nouns.PART_SIDES or (word.endswith("ed") and len(word) > 4 and not walk.typed.capital(i))
        or word in nouns.THINGS or word in HOW_IT_IS or len(word) < 2 or word in MONTHS or word in WEEKDAYS or word in SEASONS
    )  # fmt: skip


def perhaps(walk: Walk, item: Item, i: int, end: int) -> None:
    """Words that may be a variety of this item, with a hint."""
    written = walk.typed.written(i, end)
    is_doubtful = "?" in walk.typed.gaps[end] or walk.was_or or (end < walk.end and walk.word(end) == "or")
    item.varieties.append(
        Named(
            key=written,
            name=written,
            written=written,
            sureness=Sureness.DOUBTFUL if is_doubtful else Sureness.PERHAPS,
        )
    )
    item.spans.append(("variety", walk.typed.starts[i], walk.typed.ends[end - 1]))
    walk.draft.is_loose = True
    walk.ask(Level.HINT, f'"{written}" is perhaps a variety. Write it in quotes to make it sure.', i)


def _past_or(walk: Walk, end: int) -> int:
    """ "Krim or Cherokee tomatoes": the crop may stand behind the second name."""
    if walk.word(end) in ("or", "and", "n") and end + 1 < walk.end:
        second = _variety_words(walk, end + 1)
        if second > end + 1:
            return second
    return end


def _unknown_before(walk: Walk, item: Item, i: int) -> bool:
    j = i + 1
    j += walk.word(j) in ("variety", "kind", "sort", "type")
    if walk.word(j) == "of":
        j += 1
    named = Named(
        key="unknown", name="unknown", written=walk.typed.written(i, i + 1), sureness=Sureness.UNKNOWN
    )
    span = (walk.typed.starts[i], walk.typed.ends[i])
    if _crop_at(walk, j) or item.crops:
        item.varieties.append(named)
        item.spans.append(("variety", *span))
    else:
        item.crops.append(named)
        item.spans.append(("crop", *span))
        j += walk.word(j) in ("seed", "plant", "seedling", "thing", "stuff")
    walk.i = j
    return True


def _before_crop(walk: Walk, i: int, end: int) -> bool:
    """ "Sowed Boltardy beetroot": unknown words before a crop."""
    item = walk.draft.item
    if not (walk.verb.name in STARTS or walk.typed.capital(i)):
        return False
    known = near_name(walk.typed.vocabulary, tuple(walk.typed.words[i:end]), (Kind.VARIETY,))
    if item.crops:
        item = Item()
        walk.draft.items.append(item)
        walk.joined = False
    if known is not None:
        written = walk.typed.written(i, end)
        item.varieties.append(
            Named(key=known.key, name=known.name, written=written, sureness=Sureness.DOUBTFUL, of=known.of)
        )
        item.spans.append(("variety", walk.typed.starts[i], walk.typed.ends[end - 1]))
        walk.ask(Level.QUESTION, f'No variety is called "{written}"; read as "{known.name}".', i, known.name)
    else:
        perhaps(walk, item, i, end)
    walk.i = end
    return True


def _beside_known(walk: Walk, i: int, end: int) -> bool:
    """Behind a crop, after "and" or a comma: perhaps another crop; never taken in silence."""
    if walk.after_comma and walk.joined and _is_before_crop(walk, i, end):
        walk.draft.items.append(Item(is_after_comma=True))
        return _unknown_crop(walk, walk.draft.item, i, end)
    if not walk.joined or (walk.after_comma and not _is_list(walk, i, end)):
        return False
    words = tuple(walk.typed.words[i:end])
    known = near_name(walk.typed.vocabulary, words, (Kind.CROP, Kind.CROP_GROUP))
    if known is not None and not walk.draft.places:
        walk.draft.items.append(Item())
        return _near_crop(walk, walk.draft.item, known, i, end)
    if walk.draft.places or walk.after_comma:
        return False
    walk.ask(
        Level.QUESTION, f'"{walk.typed.written(i, end)}" is no crop known here, so it is kept as a remark.', i
    )
    walk.draft.leave(i, end, True)
    walk.draft.is_loose = True
    walk.i = end
    return True


def _is_before_crop(walk: Walk, i: int, end: int) -> bool:
    """The unknown one of "butternut, buttercup and zucchini"."""
    j = end + (walk.word(end) in JOINS)
    return (
        walk.has("crop!")
        and not walk.draft.places
        and end - i <= 2
        and j < walk.end
        and (j > end or walk.typed.breaks[j])
        and bool(walk.typed.kind(j, Kind.CROP, Kind.CROP_GROUP)[0])
    )


def _is_list(walk: Walk, i: int, end: int) -> bool:
    return (
        not walk.draft.places
        and near_name(walk.typed.vocabulary, tuple(walk.typed.words[i:end]), (Kind.CROP, Kind.CROP_GROUP))
        is not None
    )


def _unknown_crop(walk: Walk, item: Item, i: int, end: int) -> bool:
    if walk.typed.breaks[i] and i != walk.verb_end and not item.amounts and not item.is_after_comma:
        return False
    for size in range(end - i, 0, -1):
        known = near_name(
            walk.typed.vocabulary, tuple(walk.typed.words[i : i + size]), (Kind.CROP, Kind.CROP_GROUP)
        )
        if known is not None:
            return _near_crop(walk, item, known, i, i + size)
    if (
        variety := near_name(walk.typed.vocabulary, tuple(walk.typed.words[i:end]), (Kind.VARIETY,))
    ) is not None:
        written = walk.typed.written(i, end)
        item.varieties.append(
            Named(
                key=variety.key, name=variety.name, written=written, sureness=Sureness.DOUBTFUL, of=variety.of
            )
        )
        item.spans.append(("variety", walk.typed.starts[i], walk.typed.ends[end - 1]))
        walk.ask(
            Level.QUESTION, f'No variety is called "{written}"; read as "{variety.name}".', i, variety.name
        )
        walk.i = end
        return True
    if not walk.has("crop!"):
        return False
    if (
        walk.word(end) == "or"
        and end + 1 < walk.end
        and _variety_words(walk, end + 1) + walk.typed.kind(end + 1, Kind.VARIETY)[0] > end + 1
    ):
        perhaps(walk, item, i, end)
        walk.i = end
        return True
    written = walk.typed.written(i, end)
    sureness = Sureness.DOUBTFUL if walk.word(end) == "or" or "?" in walk.typed.gaps[end] else Sureness.NEW
    item.crops.append(
        Named(key=slug(" ".join(fold(written))), name=written, written=written, sureness=sureness)
    )
    item.spans.append(("crop", walk.typed.starts[i], walk.typed.ends[end - 1]))
    walk.draft.is_loose = True
    if sureness is Sureness.DOUBTFUL:
        walk.ask(
            Level.QUESTION, f'Which crop is "{written}"? No crop or variety of that name is known here.', i
        )
    else:
        walk.ask(Level.HINT, f'"{written}" is no crop known here, so its family is not known.', i)
    walk.i = end
    noun_behind_crop(walk, item)
    return True


def _near_crop(walk: Walk, item: Item, known: Known, i: int, end: int) -> bool:
    written = walk.typed.written(i, end)
    item.crops.append(
        Named(
            key=known.key,
            name=known.name,
            written=written,
            sureness=Sureness.DOUBTFUL,
            of=known.of if known.kind is Kind.CROP_GROUP else (),
        )
    )
    item.spans.append(("crop", walk.typed.starts[i], walk.typed.ends[end - 1]))
    item.crop_end = end
    walk.ask(Level.QUESTION, f'No crop is called "{written}"; read as "{known.name}".', i, known.name)
    walk.i = end
    walk.joined = False
    noun_behind_crop(walk, item)
    return True
