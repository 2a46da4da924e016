"""Amounts by what holds them: "a pudding basin of peas", "two 3 m rows", "12 x 7 cm pots", "2 trays of 24".

Asked by `whole_amounts` behind a number or an article. Any noun will do before "of" and a crop; without a
crop behind it only those that are known to hold things.
"""

from __future__ import annotations

import re
from dataclasses import replace

from leafmould.notes.amounts import Read, read_amount
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, JOINS, PLACE_OPENERS, REMARK_OPENERS
from leafmould.values.names import Kind
from leafmould.values.quantities import Amount

NO_MEASURE = frozenset(
    [
        "variety",
        "sort",
        "kind",
        "type",
        "mix",
        "mixture",
        "selection",
        "range",
        "crop",
        "harvest",
        "pick",
        "picking",
        "pickings",
        "batch",
        "sowing",
        "planting",
        "lot",
        "second",
        "third",
        "fourth",
        "rest",
        "last",
        "first",
        "bit",
        "few",
        "couple",
        "pair",
        "succession",
        "end",
        "start",
        "middle",
        "half",
        "quarter",
        "third",
        "bed",
        "total",
        "number",
        "amount",
        "one",
        "layer",
        "each",
        "every",
        "both",
        "all",
    ]
)
YEAR = re.compile(r"(?:19|20)\d\d")
FILLED = frozenset({"full", "load", "worth", "size"})
ROWS = frozenset({"row", "line", "drill", "strip", "block", "run", "stretch"})
SIZED = nouns.HOLDERS | ROWS | {"bed"}
LARGE = frozenset({"gallon", "quart", "pint", "l"})


def with_holder(walk: Walk, read: Read, i: int) -> Read:
    """The amount with the noun that holds it, if one stands behind what was read."""
    amount, end = read.amount, read.end
    if end >= walk.end or walk.typed.breaks[end] or (amount.value is None and amount.whole != "half"):
        return read
    if (sized := _sized(walk, read, i)) is not None:
        return sized
    if amount.unit in nouns.HOLDERS and _is_holder(walk, end):  # "a salad bowlful"
        noun = walk.typed.words[end]
        amount = replace(amount, written=walk.typed.written(i, end + 1), unit=nouns.SAME_NOUN.get(noun, noun))
        read = read._replace(amount=amount, end=end + 1)
    if amount.unit in nouns.HOLDERS:
        return _of_many(walk, _filled(walk, read, i))
    if read.has_noun:
        return read
    stop = _noun_phrase_end(walk, end)
    if stop is None:
        return read
    noun = walk.typed.words[stop - 1 - (stop - end > 1 and walk.typed.words[stop - 1] in FILLED)]
    unit = nouns.SAME_NOUN.get(noun, noun)
    whole = None if amount.whole == "half" else amount.whole
    low, high = (0.5, 0.5) if amount.whole == "half" else (amount.low, amount.high)
    written = walk.typed.written(i, stop)
    return read._replace(
        amount=replace(amount, written=written, unit=unit, low=low, high=high, whole=whole), end=stop,
        has_noun=True, is_bare_word=False,
    )  # fmt: skip


def _is_holder(walk: Walk, k: int) -> bool:
    word = walk.word(k)
    is_one = (word in nouns.HOLDERS and word not in FILLED) or word.endswith("ful")
    return is_one and not walk.typed.breaks[k] and not walk.typed.names(k)[0]


def _noun_phrase_end(walk: Walk, at: int) -> int | None:
    """Where "pudding basin" ends, if "of" and a crop stand behind it, or it closes a stretch and can hold things."""
    typed, stop = walk.typed, walk.stop(at)
    for k in range(at, min(at + 5, stop)):
        word = typed.words[k]
        if word == "of":
            return k if k > at and _is_measure(walk, at, k) and _crop_at(walk, k + 1) else None
        if not _may_stand_inside(walk, k):
            return None
    is_told = at < stop <= at + 4 and walk.draft.has_crop and typed.words[stop - 1] in nouns.HOLDERS
    is_told = is_told and typed.words[stop - 1] not in nouns.NOT_ALONE and stop - at > 1
    return stop if is_told and not walk.draft.item.amounts else None


def _may_stand_inside(walk: Walk, k: int) -> bool:
    word, typed = walk.typed.words[k], walk.typed
    if typed.is_number(k) or k in typed.quotes or word in ARTICLES or word in JOINS:
        return False
    if word in PLACE_OPENERS or word in REMARK_OPENERS or word in nouns.NUMBERS:
        return False
    return not typed.kind(k, Kind.BED, Kind.PART)[0] or word in nouns.HOLDERS


def _is_measure(walk: Walk, at: int, stop: int) -> bool:
    """Whether the words say how much, not of which sort: "a pudding basin of", not "a new variety of"."""
    words = walk.typed.words[at:stop]
    if not NO_MEASURE.isdisjoint(words):
        return False
    has_crop = any(walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP)[0] for k in range(at, stop))
    return not has_crop or words[-1] in nouns.HOLDERS


def _crop_at(walk: Walk, i: int) -> bool:
    """A crop behind "of", with describing words before it."""
    for k in range(i, min(i + 4, walk.stop(i))):
        if k in walk.typed.quotes or walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0]:
            return True
        word = walk.typed.words[k]
        if word not in ARTICLES and (word in PLACE_OPENERS or word in REMARK_OPENERS):
            return False
    return False


def _filled(walk: Walk, read: Read, i: int) -> Read:
    """ "a colander full of peas", "a wheelbarrow load of pumpkins"."""
    end = read.end
    if walk.word(end) in FILLED and (walk.word(end + 1) == "of" or end + 1 >= walk.stop(end)):
        written = walk.typed.written(i, end + 1)
        return read._replace(amount=replace(read.amount, written=written), end=end + 1)
    return read


def _of_many(walk: Walk, read: Read) -> Read:
    """ "2 trays of 24 beetroot": 48."""
    end, held = read.end, read.amount
    if walk.word(end) != "of" or not walk.typed.is_number(end + 1) or end + 1 >= walk.end:
        return read
    if walk.has("larder") and YEAR.fullmatch(walk.word(end + 1)):
        return read  # "a jar of 2024 chutney"
    each = read_amount(walk.typed, end + 1, walk.decimal)
    if each is None or each.amount.unit != "piece" or each.asks or each.amount.value is None:
        return read
    begin = walk.typed.text.find(held.written)
    low, high = (held.low or 0.0) * (each.amount.low or 0.0), (held.high or 0.0) * (each.amount.high or 0.0)
    written = walk.typed.text[begin : walk.typed.ends[each.end - 1]]
    return each._replace(amount=replace(each.amount, written=written, low=low, high=high))


def _sized(walk: Walk, read: Read, i: int) -> Read | None:
    """ "a five gallon bucket", "a 3 ft row", "two 3 m rows", "12 x 7 cm pots", "a 72-cell tray"."""
    amount, end = read.amount, read.end
    at = end + (walk.word(end) == "x" and walk.typed.is_number(end + 1))
    if amount.unit == "piece" and not read.has_noun and walk.typed.is_number(at):
        size = read_amount(walk.typed, at, walk.decimal)
        if size is None or size.amount.unit not in nouns.LENGTHS:
            return None
        is_x = at > end or "x" in walk.typed.plain[walk.typed.starts[i] : walk.typed.starts[at]]
        if is_x and size.amount.unit in ("m", "ft") and walk.word(size.end) not in ("row", "line", "drill"):
            return _area(walk, amount, size, i)
        if not _noun(walk, size.end):
            return None
        return _counted(walk, read, i, size.end)
    if not _noun(walk, end):
        return None
    is_plural = walk.typed.plain[walk.typed.ends[end] - 1] in "sS"
    if amount.unit in LARGE and is_plural:
        return _counted(walk, read, i, end)
    is_size = (
        amount.unit in nouns.LENGTHS or amount.unit in LARGE or amount.unit in ("cell", "module", "plug")
    )
    if not is_size or is_plural or (amount.unit in nouns.LENGTHS and walk.word(end) in ROWS):
        return None
    one = read._replace(amount=replace(amount, low=1.0, high=1.0, of=None, measure_g=None))
    return _counted(walk, one, i, end)


def _area(walk: Walk, side: Amount, other: Read, i: int) -> Read:
    """ "2 x 4 m", "a 4x8 ft block"."""
    square_m = 1.0 if other.amount.unit == "m" else FOOT_M**2
    area = round((side.low or 0.0) * (other.amount.low or 0.0) * square_m, 2)
    end = other.end + (walk.word(other.end) in AREAS and not walk.typed.breaks[other.end])
    amount = replace(side, written=walk.typed.written(i, end), low=area, high=area, unit="m²")
    return Read(amount, end, True, other.asks)


FOOT_M = 0.3048
"""A foot [m], exactly: the international yard and pound agreement of 1959."""
AREAS = frozenset({"block", "patch", "area", "plot", "square", "bed", "strip"})


def is_one_whole(walk: Walk, j: int) -> bool:
    """Whether "a" counts: "cut a cabbage", "planted a big rhubarb 'Victoria'"; not "a spinach leaf"."""
    if walk.verb.name not in ONE_BY_ONE:
        return False
    while j < walk.end and walk.word(j) in nouns.SIZES and not walk.typed.breaks[j]:
        j += 1
    size, _ = walk.typed.kind(j, Kind.CROP) if j < walk.end and not walk.typed.breaks[j] else (0, ())
    end = j + size
    if not size or walk.typed.plain[walk.typed.ends[end - 1] - 1] in "sS" or walk.typed.names(j)[0] > size:
        return False
    if end >= walk.end or walk.typed.breaks[end] or end in walk.typed.quotes:
        return True
    word = walk.word(end)
    return (
        word in PLACE_OPENERS
        or word in JOINS
        or word in REMARK_OPENERS
        or bool(walk.typed.kind(end, Kind.VARIETY)[0])
    )


ONE_BY_ONE = frozenset(
    {"picked", "planted", "lost", "gave away", "ate", "bought", "moved", "potted on", "composted"}
)


def _noun(walk: Walk, k: int) -> bool:
    return k < walk.end and walk.word(k) in SIZED and not walk.typed.breaks[k] and not walk.bed_at(k)[0]


def _counted(walk: Walk, read: Read, i: int, at: int) -> Read:
    noun, written = walk.word(at), walk.typed.written(i, at + 1)
    unit = "row" if noun in ("line", "drill") else nouns.SAME_NOUN.get(noun, noun)
    return Read(replace(read.amount, written=written, unit=unit), at + 1, True, read.asks)
