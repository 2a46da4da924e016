"""Words nobody knows, where a crop or its variety may stand.

An unknown noun behind sowed, planted or picked is an unknown crop, with a hint; unknown words beside a crop
are perhaps a variety; one slip of a known name is a question. Never taken in silence.
"""

from __future__ import annotations

from leafmould.notes.beside_crop import (
    STARTS,
    UNKNOWN_WORDS,
    closes,
    crop_at,
    noun_behind_crop,
    perhaps,
    variety_words,
)
from leafmould.notes.draft import Item
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.nearness import near_name
from leafmould.notes.new_places import new_place
from leafmould.notes.said_first import TAKERS
from leafmould.notes.walk import Walk
from leafmould.notes.what_follows import crop_behind
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    JOINS,
)
from leafmould.values.names import Kind, Known, fold, slug
from leafmould.values.problems import Level

SHORT_DAYS = frozenset({"mon", "tue", "tues", "wed", "weds", "thu", "thur", "thurs", "fri", "sat", "sun"})
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
    if walk.verb.name == "planted" and _is_filled(walk, i):
        return True
    if walk.word(i) in nouns.HENS or (walk.word(i) in TAKERS and walk.verb.name == "gave away"):
        return False
    if item.thing and not walk.joined:
        return False  # "6 eggs for a bag of lemons"
    if walk.word(i) in SHORT_DAYS or (
        walk.verb.name == "gave away" and walk.after_comma and not walk.typed.is_number(i - 1)
    ):
        return False  # "started Tues 8th"; "4 to Fergus, owed him from last week"
    if walk.word(i) in UNKNOWN_WORDS:
        return _unknown_before(walk, item, i)
    if _is_somebodys(walk, i):
        walk.draft.leave(i, i + 1, walk.after_comma)
        walk.i = i + 1
        return True
    end = i + 2 if walk.typed.words[i : i + 2] in COVER_CROPS else variety_words(walk, i)
    if end == i:
        return False
    if walk.verb.name == "gave away" and (
        walk.typed.capital(i) or not closes(walk, end) or walk.word(end) in nouns.NUMBERS
    ):
        walk.draft.leave(i, i + 1, True)
        walk.i = i + 1
        return True
    if walk.was_or and (item.varieties or item.crops) and not crop_at(walk, end):
        perhaps(walk, item, i, end)
        walk.was_or, walk.i = False, end
        return True
    if crop_at(walk, _past_or(walk, end)):
        return _before_crop(walk, i, end)
    if _is_name_apart(walk, item, i, end):
        perhaps(walk, item, i, end)
        walk.i = end
        return True
    if _is_one_of_two(walk, item, i, end):
        perhaps(walk, item, i, end)
        walk.joined, walk.i = False, end
        return True
    if item.crops and _stands_for_crop(walk, i, end):
        walk.draft.items.append(Item(is_after_comma=True))
        return _unknown_crop(walk, walk.draft.item, i, end)
    if item.crops or (item.varieties and (walk.typed.breaks[i] or any(v.of for v in item.varieties))):
        return _beside_known(walk, i, end)
    if walk.typed.breaks[i] and not walk.draft.has_crop and walk.draft.places:
        return False
    return _unknown_crop(walk, item, i, end)


def _is_filled(walk: Walk, i: int) -> bool:
    """ "planted up the hanging basket with strawberries": a place nobody has declared."""
    at = next((k for k in range(i, min(i + 4, walk.stop(i))) if walk.word(k) == "with"), 0)
    if not at or i - walk.verb_end > 1 or walk.draft.places or walk.word(at - 1) not in nouns.PLACE_NOUNS:
        return False
    return crop_behind(walk, at + 1) and new_place(walk, i - 1, walk.past_articles(i), "at")


def _is_somebodys(walk: Walk, i: int) -> bool:
    """The "Dad's" of "Dad's leeks": whose they are, no variety."""
    written = walk.typed.written(i, i + 1)
    is_day = walk.word(i + 1) in ("week", "day", "birthday", "weekend", "eve")  # "Patrick's week"
    return (
        written[-2:].lower() in ("'s", "’s")
        and (crop_at(walk, i + 1) or is_day)
        and not walk.typed.names(i)[0]
    )


def _is_name_apart(walk: Walk, item: Item, i: int, end: int) -> bool:
    """ "4 tomatoes, Purple Zinger, in Hoop bed", "3 'Sakura' & 1 Purple Zinger": a name for what has none yet."""
    if item.varieties or walk.verb.name not in STARTS | {"picked"} or not closes(walk, end):
        return False
    if not all(walk.typed.capital(k) or walk.word(k) == "of" for k in range(i, end)):
        return False
    is_alone = end - i > 1 or (
        walk.typed.breaks[i] and (end >= walk.end or walk.typed.breaks[end]) and item.crop_end >= i - 1
    )
    return item.takes_crop_before or (bool(item.crops) and walk.after_comma and is_alone)


def _is_one_of_two(walk: Walk, item: Item, i: int, end: int) -> bool:
    """ "kale, nero and 'Red Russian'": joined to a variety of the crop, before it or behind it."""
    if not item.crops or walk.verb.name not in STARTS | {"picked"}:
        return False
    keys = {k for c in item.crops for k in (c.key, *c.of)}
    j = end + (walk.word(end) in JOINS)
    if j < walk.end and not walk.typed.breaks[j] and (j > end or JOINING & set(walk.typed.gaps[j])):
        known = walk.typed.kind(j, Kind.VARIETY)[1]
        if j in walk.typed.quotes or any(keys & set(k.of) for k in known):
            return True
    is_joined = walk.word(i - 1) in JOINS or bool(JOINING & set(walk.typed.gaps[i]))
    last = max((stop for slot, _, stop in item.spans if slot == "variety"), default=-1)
    is_behind = (
        is_joined
        and not walk.typed.breaks[i]
        and last == walk.typed.ends[i - 1 - (walk.word(i - 1) in JOINS)]
    )
    return is_behind and closes(walk, end)


JOINING = frozenset("&+/")


def _stands_for_crop(walk: Walk, i: int, end: int) -> bool:
    """ "Bed 3 okra 1 lb, Tub 1 cayenne a handful": between a place and an amount stands a crop."""
    if (
        not walk.after_comma
        or not walk.draft.covers(walk.typed.starts[i - 1], "place")
        or not walk.draft.item.amounts
    ):
        return False
    word = walk.word(end)
    return walk.typed.is_number(end) or word in nouns.NUMBERS or word in nouns.HOLDERS


def _past_or(walk: Walk, end: int) -> int:
    """ "Krim or Cherokee tomatoes": the crop may stand behind the second name."""
    if walk.word(end) in ("or", "and", "n") and end + 1 < walk.end:
        second = variety_words(walk, end + 1)
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
    if crop_at(walk, j) or item.crops:
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
    if walk.word(end) == "of" and not walk.typed.breaks[end]:
        return False  # "balls of flour"
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
        and variety_words(walk, end + 1) + walk.typed.kind(end + 1, Kind.VARIETY)[0] > end + 1
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
