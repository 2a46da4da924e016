"""Varieties in a clause, in quotes or known without them.

Steps of the walk. Words nobody knows are in `strangers`.
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.beside import is_thought
from leafmould.notes.beside_crop import perhaps
from leafmould.notes.draft import Item
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.quotes import Quote
from leafmould.notes.walk import DOUBTFUL, KNOWN, Walk, as_named
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    JOINS,
    PLACE_OPENERS,
)
from leafmould.values.names import Kind, Known
from leafmould.values.problems import Level

VARIETY = Kind.VARIETY


def take_quote(walk: Walk) -> bool:
    """A variety in quotes."""
    quote = walk.typed.quotes.get(walk.i)
    if quote is None:
        return False
    i = walk.i
    walk.i = min(max(quote.last, i + 1), walk.end)
    if i and walk.typed.words[i - 1] in SAID and walk.verb.name != "turned out":
        walk.draft.leave(i, walk.i, walk.after_comma)  # "she said it was 'characterful'"
        return True
    if (
        walk.has("object")
        and walk.verb.name not in ("turned out", "bought")
        and not walk.draft.has_crop
        and not walk.typed.vocabulary.exactly(quote.content, Kind.VARIETY, Kind.CROP)
    ):
        walk.draft.leave(i, walk.i, walk.after_comma)
        return True
    known = walk.typed.vocabulary.exactly(quote.content, VARIETY)
    key, name = (known[0].key, known[0].name) if known else (quote.content, quote.content)
    of = (
        known[0].of
        if len(known) == 1 and len(known[0].of) < 2
        else tuple(sorted({c for k in known for c in k.of}))
    )
    variety = as_named(key, name, quote.content, _quote_sureness(walk, quote, i), of)
    add_variety(walk, variety, (quote.start, quote.end), i)
    return True


SAID = frozenset(
    {"was", "is", "were", "are", "said", "says", "saying", "looked", "looks", "be", "very", "so"}
)


def _quote_sureness(walk: Walk, quote: Quote, i: int) -> Sureness:
    is_asked = "?" in walk.typed.plain and (
        "?" in quote.content or walk.typed.plain[quote.end : quote.end + 2].lstrip().startswith("?")
    )
    return DOUBTFUL if is_asked or walk.was_or or is_thought(walk.typed, i, quote.last) else KNOWN


def add_variety(walk: Walk, variety: Named, span: tuple[int, int], i: int) -> None:
    """Give a variety to the crop before it, or to the one right behind it."""
    item = walk.draft.item
    next_is_crop = (
        walk.i < walk.end
        and not walk.typed.gaps[walk.i].strip("'\" ")
        and bool(walk.typed.kind(walk.i, Kind.CROP, Kind.CROP_GROUP)[0])
    )
    if next_is_crop and item.crops:
        item = Item()
        walk.draft.items.append(item)
    elif walk.was_or:
        _doubt_last(item)
    elif walk.joined and item.varieties and item.amounts and _is_told(item):
        item = Item(takes_crop_before=True)  # "Sungold x2, Sakura x3"
        walk.draft.items.append(item)
    if _begins_next(walk, item, i):
        item = Item(takes_crop_before=True, is_after_comma=True)
        walk.draft.items.append(item)
    item.varieties.append(variety)
    item.spans.append(("variety", *span))
    walk.joined = False
    walk.was_or = False
    if walk.word(walk.i) == "f" and walk.word(walk.i + 1) == "1" and not walk.typed.breaks[walk.i]:
        walk.i += 2  # "Swift F1"


def _is_told(item: Item) -> bool:
    """Whether the last variety has its amount behind it."""
    last = max((end for slot, _, end in item.spans if slot == "variety"), default=0)
    crops = [start for slot, start, _ in item.spans if slot == "crop"]
    return not crops and any(slot == "amount" and start >= last for slot, start, _ in item.spans)


def _doubt_last(item: Item) -> None:

    if item.varieties:
        item.varieties = [
            replace(v, sureness=Sureness.DOUBTFUL) if v.sureness is not Sureness.UNKNOWN else v
            for v in item.varieties
        ]


def is_crop_rather(walk: Walk, i: int, size: int, crops: list[Known], varieties: list[Known]) -> bool:
    """Whether words that name a crop or a variety are the crop here."""
    if not crops:
        return False
    item = walk.draft.item
    beside = {c.key for c in item.crops} & {c for v in varieties for c in v.of}
    if beside and not walk.joined:
        return False
    following = (
        walk.typed.kind(i + size, Kind.CROP, Kind.CROP_GROUP)[1]
        if i + size < walk.end and not walk.typed.breaks[i + size]
        else ()
    )
    return not any(k.key in v.of for k in following for v in varieties)


def _begins_next(walk: Walk, item: Item, i: int) -> bool:
    """ "potatoes: Charlotte 3.2 kg, Desiree 5.1 kg": each variety with what it gave."""
    is_next = walk.typed.breaks[i] or walk.typed.words[i - 1] in JOINS
    if not (item.varieties and item.amounts and item.crops and is_next):
        return False
    k = walk.i
    if k >= walk.end or walk.typed.breaks[k]:
        return False
    is_times = walk.typed.words[k] == "x" and k + 1 < walk.end and walk.typed.is_number(k + 1)
    return is_times or (walk.typed.breaks[i] and walk.typed.is_number(k))


def known_variety(walk: Walk, i: int, size: int, varieties: list[Known]) -> bool:
    """A variety that quotes or tables have taught; a common word only beside its own crop."""
    item = walk.draft.item
    of = tuple(sorted({c for v in varieties for c in v.of}))
    crops = {k for c in item.crops for k in (c.key, *c.of)}
    if item.takes_crop_before and len(walk.draft.items) > 1:  # "Bramley and two Cox"
        last = walk.draft.items[-2]
        crops |= {k for c in last.crops for k in (c.key, *c.of)} | {k for v in last.varieties for k in v.of}
    after = _next_crop(walk, i + size)
    near_crop = {k.key for k in after} | {c for k in after for c in k.of}
    is_public = varieties[0].is_public
    if (
        of
        and walk.typed.breaks[i]
        and not set(of) & (crops | near_crop)
        and _of_earlier(walk, varieties[0], of, i, size)
    ):
        return True
    if of and not set(of) & (crops | near_crop) and (crops or near_crop):
        is_beside = _is_crop_at(walk, i + size) or not (walk.joined or not crops)
        if is_beside:
            return is_public and _perhaps_here(walk, i, i + size)
        crops, near_crop = set(), set()
    word = walk.typed.words[i]
    if (
        not crops
        and not near_crop
        and ((size == 1 and word in nouns.SELDOM_VARIETY) or not (walk.has("crop") or walk.has("crop!")))
    ):
        return False
    if size == 1 and word in nouns.SELDOM_VARIETY and not (walk.typed.capital(i) and i > 0):
        return False
    is_guess = varieties[0].is_word and not crops and not near_crop
    is_thing = i == 0 or (walk.typed.words[i - 1] in ARTICLES or walk.typed.words[i - 1] == "old")
    if is_guess and not is_thing and (walk.is_topic or walk.verb.name in PEOPLE_TOO or walk.after_comma):
        return False
    sureness = _variety_sureness(walk, i, i + size, is_guess=is_guess)
    written = walk.typed.written(i, i + size)
    named = as_named(varieties[0].key, varieties[0].name, written, sureness, of)
    if item.crops and not crops and not near_crop:
        walk.draft.items.append(Item(is_after_comma=walk.typed.breaks[i]))
    if is_guess and len(of) == 1:
        crop = of[0].replace("-", " ")
        walk.ask(
            Level.HINT, f'"{named.written}" is read as a variety of {crop}. Name the crop to make it sure.', i
        )
    if len(of) == 1 and is_public and not crops and not near_crop and not walk.draft.item.crops:
        key = of[0]
        walk.draft.item.crops.append(Named(key=key, name=key.replace("-", " "), written=named.written))
    walk.i = i + size
    add_variety(walk, named, (walk.typed.starts[i], walk.typed.ends[i + size - 1]), i)
    return True


def _of_earlier(walk: Walk, variety: Known, of: tuple[str, ...], i: int, size: int) -> bool:
    """ "peppers and aubergines, California Wonder": the variety of a crop named before the last."""
    for item in walk.draft.items[:-1]:
        if set(of) & {k for c in item.crops for k in (c.key, *c.of)} and not item.varieties:
            written = walk.typed.written(i, i + size)
            item.varieties.append(as_named(variety.key, variety.name, written, Sureness.KNOWN, of))
            item.spans.append(("variety", walk.typed.starts[i], walk.typed.ends[i + size - 1]))
            walk.i, walk.joined = i + size, False
            return True
    return False


PEOPLE_TOO = frozenset({"gave away", "saw", "bought", "ate", "used"})
"""Verbs beside which a capital may be a person's, so that a word like "Victoria" is no variety."""


def _variety_sureness(walk: Walk, start: int, end: int, *, is_guess: bool) -> Sureness:
    if walk.was_or or "?" in walk.typed.gaps[end] or walk.typed.words[end : end + 1] == ["or"]:
        return Sureness.DOUBTFUL
    if is_thought(walk.typed, start, end):
        return Sureness.DOUBTFUL
    return Sureness.PERHAPS if is_guess else Sureness.KNOWN


def _is_crop_at(walk: Walk, i: int) -> bool:
    return (
        i < walk.end and not walk.typed.breaks[i] and bool(walk.typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0])
    )


def _perhaps_here(walk: Walk, i: int, end: int) -> bool:
    """A well-known name beside a crop that is not known to have it: "strawberry Charlotte"."""
    perhaps(walk, walk.draft.item, i, end)
    walk.i = end
    return True


def _next_crop(walk: Walk, j: int) -> tuple[Known, ...]:
    stop = walk.stop(j) if j < walk.end else walk.end
    if j < walk.end and walk.typed.breaks[j]:
        return ()
    while j < stop:
        size, known = walk.typed.names(j)
        crops = tuple(k for k in known if k.kind in (Kind.CROP, Kind.CROP_GROUP))
        if crops:
            return crops
        if walk.word(j) in PLACE_OPENERS:
            return ()
        if not size and walk.word(j) not in JOINS and walk.word(j) not in ("or",):
            return ()
        j += size or 1
    return ()
