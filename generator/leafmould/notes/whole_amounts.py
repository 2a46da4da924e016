"""Amounts of several pieces, and amounts that cannot be what is meant.

"2 kg 300 g" and "½ kg and ¼ kg" are sums, "2 x 500 g" and "3 bags of 500 g" so many times a weight. "-5 kg",
"3/0 kg", "1.2.3 kg" keep their words but get no number, so that nothing is reckoned with them, and are asked
about. Stands between `amounts`, which reads one number and its unit, and the walk that places it.
"""

from __future__ import annotations

import re
from dataclasses import replace

from leafmould.notes.amounts import Read, read_amount
from leafmould.notes.figures import VALUE_OF
from leafmould.notes.held import with_holder
from leafmould.notes.mixed_with import mixed_rate
from leafmould.notes.typed import Typed
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import PLACE_OPENERS
from leafmould.values.names import FRACTIONS, Kind
from leafmould.values.problems import Level
from leafmould.values.quantities import GRAMS, Amount

FALLING = (("t", "kg", "hg", "dag", "g"), ("cwt", "stone", "lb", "oz"), ("l", "dl", "cl", "ml"))
"""Units of one kind, the greatest first: "2 kg 300 g" adds up, "2 kg, 3 lb" does not."""
IN_SMALLEST = {**GRAMS, "ml": 1.0, "cl": 10.0, "dl": 100.0, "l": 1000.0}
MOST_G = 100_000_000.0
MOST_PIECES = 1_000_000_000.0
"""More in one line is a slip of the pen. Our choice: a hundred tonnes; no garden grows a billion of anything."""

THREE_PLACES = re.compile(r"[1-9]\d{0,2}\.\d{3}(?![\d.])")
SPELLED = frozenset(nouns.NUMBERS) - {"a", "an", "another"}
JOINED = re.compile(r"\s*(?:(,)|(\+|&|\band\b|\bplus\b)|)\s*")
ODD = re.compile(r"(?P<number>\d+[eE][+-]?\d+\b|\d+\.(?=\s)|\d[\d.,/]*\d)(?:\s?(?P<unit>[^\W\d_]+))?")
EVEN = re.compile(r"\d+|\d+[.,]\d+|\d{1,3}(?:[.,]\d{3})+(?:[.,]\d+)?|\d+/0*[1-9]\d*")
"""Signs and digits that make a number; what else stands together before a unit makes none."""
BACKWARDS = re.compile(
    r"(?P<high>\d+(?:[.,]\d+)?)\s?(?:(?:k?g|oz|lbs?|l|ml)\s?)?(?:-|to\b|or\b)\s?(?P<low>\d+(?:[.,]\d+)?)\s?(?P<unit>[^\W\d_]+)"
)
LEFT_OFF = re.compile(r"(?:^|\s)-$")
TAKEN_OFF = frozenset({"minus", "less"})
LOTS = frozenset({"lot", "time", "batch", "load"})


def read_whole(walk: Walk, i: int, unit_of: str) -> Read | None:
    """The amount that begins at word `i`, with all that belongs to it."""
    if (mixed := mixed_rate(walk, i)) is not None:
        return mixed
    if (odd := _odd(walk, i)) is not None:
        return odd
    read = read_amount(walk.typed, i, walk.decimal, unit_of)
    if read is None:
        return None
    if read.end < walk.end and not walk.typed.breaks[read.end]:
        read = with_holder(walk, read, i)
    if read.amount.low is None or read.amount.high is None:
        return read
    if read.end < walk.end and _may_go_on(walk, read.end):
        read = _times(walk, read) or read
        if read.amount.unit == "piece" and not read.has_noun and not read.asks:
            read = _of_so_much(walk, read)
        if read.amount.unit in IN_SMALLEST:
            read = _up_to(walk, read, i) or _with_more(walk, read, i)
    if not read.has_noun and (refused := _of_unknown_unit(walk, i, read)) is not None:
        return refused
    if read.amount.unit in SHARES:
        read = _as_share(walk, read, i)
    return _in_doubt(walk, read, i)


def _may_go_on(walk: Walk, end: int) -> bool:
    """Whether the word behind an amount may belong to it: a number, a sign, "x", "and", "of"."""
    word = walk.typed.words[end]
    return word in GOES_ON or word.isdigit() or bool(walk.typed.gaps[end]) or word[:1] in VALUE_OF


GOES_ON = SPELLED | LOTS | frozenset({"x", "and", "plus", "to", "or", "of"})
SHARES = frozenset({"%", "piece"})


def unclear(written: str, unit: str) -> Amount:
    """What was written as an amount, without a number to reckon with."""
    return Amount(written=written, low=None, high=None, unit=unit)


def _odd(walk: Walk, i: int) -> Read | None:
    """Signs that make no number: "3/0 kg", "1e3 kg", "1.2.3 kg", "5. kg", "3-2 kg", "minus 2 kg"."""
    typed = walk.typed
    if walk.word(i) in TAKEN_OFF and typed.is_number(i + 1) and i + 1 < walk.end:
        read = read_amount(typed, i + 1, walk.decimal)
        return None if read is None else _refused(typed, i, read.end, read.amount.unit)
    if not typed.is_number(i) or not _may_be_odd(typed, i):
        return None
    m = ODD.match(typed.plain, typed.starts[i])
    if m is None or EVEN.fullmatch(m["number"]):
        m = BACKWARDS.match(typed.plain, typed.starts[i])
        if m is None or float(m["low"].replace(",", ".")) >= float(m["high"].replace(",", ".")):
            return None
    unit = nouns.UNITS.get((m["unit"] or "").casefold().removesuffix("s"), "")
    if unit not in IN_SMALLEST and ("e" not in m.groupdict().get("number", "").lower() or m.re is BACKWARDS):
        return None
    end = i
    while end < walk.end and typed.starts[end] < m.end():
        end += 1
    return _refused(typed, i, end, unit or "piece")


def _may_be_odd(typed: Typed, i: int) -> bool:
    """A quick look: digits between spaces are odd only as the first half of "3 - 2 kg", "3 to 2 kg"."""
    behind = typed.plain[typed.ends[i] : typed.ends[i] + 1]
    return behind in ODD_SIGNS or "-" in typed.plain or "to" in typed.words or "or" in typed.words


ODD_SIGNS = frozenset(".,/eE")


def _refused(typed: Typed, i: int, end: int, unit: str) -> Read:
    written = typed.written(i, end) + ("%" if unit == "%" else "")
    if LEFT_OFF.search(typed.plain, 0, typed.starts[i]):
        written = f"-{written}"
    asks = f'"{written}" is no amount that can be reckoned with. How much was it?'
    return Read(unclear(written, unit), end, True, asks)


def _of_unknown_unit(walk: Walk, i: int, read: Read) -> Read | None:
    """ "3quux": letters right behind the digits that are no unit, no crop and no bed."""
    typed, at = walk.typed, read.end
    if read.has_noun or at >= walk.end or not typed.is_number(at - 1) or walk.verb.name not in WEIGHED:
        return None
    is_glued = typed.starts[at] == typed.ends[at - 1] and typed.plain[typed.starts[at]].isalpha()
    if not is_glued or typed.names(at)[0] or typed.names(i)[0] or walk.word(at) in NO_UNIT:
        return None
    return _refused(typed, i, at + 1, typed.written(at, at + 1))


WEIGHED = frozenset({"picked", "gave away", "ate", "stored", "lost", "planted", "sowed"})
NO_UNIT = frozenset(
    {
        "x",
        "no",
        "nos",
        "ish",
        "st",
        "nd",
        "rd",
        "th",
        "am",
        "pm",
        "yr",
        "year",
        "day",
        "week",
        "wk",
        "hr",
        "h",
        "min",
        "s",
        "p",
    }
)


def _times(walk: Walk, read: Read) -> Read | None:
    """ "2 x 500 g", "3 bags of 500 g", "3 500 g bags", "500 g x 3": so many times a weight."""
    typed, end = walk.typed, read.end
    amount = read.amount
    if end >= walk.end or typed.breaks[end] or amount.of is not None:
        return None
    if amount.unit in IN_SMALLEST:
        if not (walk.word(end) == "x" and typed.is_number(end + 1) and end + 1 < walk.end):
            return None
        often = read_amount(typed, end + 1, walk.decimal)
        return None if often is None or often.has_noun else _product(walk, read, often, often.end)
    at = end + (walk.word(end) == "x")
    is_x = "x" in typed.plain[typed.starts[end - 1] : typed.ends[at - 1]] or at > end
    is_held = amount.unit in nouns.HOLDERS and not walk.has("larder") and walk.verb.name != "bought"
    if is_held or walk.word(at) in LOTS:
        at += walk.word(at) in LOTS
        if walk.word(at) != "of":
            return None
        at, is_x = at + 1, True
    if at >= walk.end or not typed.is_number(at) or (read.has_noun and not is_x):
        return None
    one = read_amount(typed, at, walk.decimal)
    if one is None or one.amount.unit not in IN_SMALLEST or one.end > walk.end:
        return None
    holds = walk.word(one.end) in nouns.HOLDERS and not typed.breaks[one.end]
    if not is_x and not holds and not read.amount.written.lower().rstrip().endswith("x"):
        return None
    return _product(walk, one, read, one.end + holds)


def _of_so_much(walk: Walk, read: Read) -> Read:
    """ "12 500 ml bottles" went before; "a dozen 500 g squash" may be of 500 g each or in all."""
    typed, end = walk.typed, read.end
    if walk.verb.name != "picked" or end >= walk.end or typed.breaks[end] or typed.gaps[end].strip():
        return read
    size = read_amount(typed, end, walk.decimal) if typed.is_number(end) else None
    if size is None or size.amount.unit not in IN_SMALLEST:
        return read
    told = (
        f'"{read.amount.written}" and "{size.amount.written}": is it so much each, or in all? Read as in all.'
    )
    return read._replace(asks=told)


def _product(walk: Walk, one: Read, often: Read, end: int) -> Read:
    number, many = one.amount, often.amount
    low, high = (number.low or 0.0) * (many.low or 0.0), (number.high or 0.0) * (many.high or 0.0)
    start = walk.typed.text.find(many.written)
    other = walk.typed.text.find(number.written)
    begin = min(x for x in (start, other) if x >= 0) if max(start, other) >= 0 else 0
    amount = replace(
        number,
        written=walk.typed.text[begin : walk.typed.ends[end - 1]],
        low=low,
        high=high,
        is_about=number.is_about or many.is_about,
    )
    return Read(amount, end, True, one.asks or often.asks)


def _up_to(walk: Walk, read: Read, i: int) -> Read | None:
    """ "2 kg to 3 kg": a range, its unit written twice."""
    end = read.end
    is_dash = end < walk.end and walk.typed.gaps[end].strip() == "-"
    at = end if is_dash else end + 1
    if not (is_dash or walk.word(end) in ("to", "or")) or at >= walk.end or not walk.typed.is_number(at):
        return None
    most = read_amount(walk.typed, at, walk.decimal)
    if (
        most is None
        or most.amount.unit != read.amount.unit
        or (most.amount.high or 0) <= (read.amount.low or 0)
    ):
        return None
    written = walk.typed.written(i, most.end)
    amount = replace(read.amount, written=written, high=most.amount.high, is_about=True)
    return Read(amount, most.end, True, read.asks or most.asks)


def _with_more(walk: Walk, read: Read, i: int) -> Read:
    """ "2 kg 300 g", "2 kg and 300 g", "1 kg + 500 g": one amount in pieces."""
    total = read
    units = [read.amount.unit]
    while (more := _piece(walk, total, units)) is not None:
        a, b = total.amount, more.amount
        factor = IN_SMALLEST[b.unit] / IN_SMALLEST[a.unit]
        amount = replace(
            a,
            written=walk.typed.text[walk.typed.starts[i] : walk.typed.ends[more.end - 1]],
            low=round((a.low or 0.0) + (b.low or 0.0) * factor, 9),
            high=round((a.high or 0.0) + (b.high or 0.0) * factor, 9),
            is_about=a.is_about or b.is_about,
        )
        total = Read(amount, more.end, True, total.asks or more.asks)
        units.append(b.unit)
    return total


def _piece(walk: Walk, read: Read, units: list[str]) -> Read | None:
    """The next piece of a sum behind an amount, if one stands there."""
    typed, end = walk.typed, read.end
    at = end + (walk.word(end) in ("and", "plus"))
    if (
        at >= walk.end
        or "(" in typed.gaps[at]
        or not (typed.is_number(at) or typed.plain[typed.starts[at]] in FRACTIONS or walk.word(at) in SPELLED)
    ):
        return None
    joined = JOINED.fullmatch(typed.plain, typed.ends[end - 1], typed.starts[at])
    more = read_amount(typed, at, walk.decimal) if joined is not None else None
    if joined is None or more is None or more.end > walk.end or more.amount.value is None:
        return None
    kind = next((kind for kind in FALLING if units[-1] in kind), ())
    if more.amount.unit not in kind or _is_of_other_crop(walk, more.end, is_joined=bool(joined[0].strip())):
        return None
    is_smaller = kind.index(more.amount.unit) > kind.index(units[-1])
    step = IN_SMALLEST[units[-1]] / IN_SMALLEST[more.amount.unit]
    if is_smaller and more.amount.value < step:
        return more
    is_added = bool(joined[2])
    return more if is_added and kind.index(more.amount.unit) >= kind.index(units[-1]) else None


def _is_of_other_crop(walk: Walk, at: int, *, is_joined: bool) -> bool:
    """ "peas 2 kg, 300 g beans", "2 kg from Arch and 1 kg from Top bed": the second has its own."""
    if not is_joined:
        return False
    if sum(len(item.crops) for item in walk.draft.items) > 1:
        return True  # "peas and beans, 400 g and 200 g"
    if walk.word(at) in PLACE_OPENERS and walk.word(at) != "of":
        return bool(walk.draft.places)
    at = walk.past_articles(at + (walk.word(at) == "of"))
    follows = (
        at < walk.end
        and not walk.typed.breaks[at]
        and bool(at in walk.typed.quotes or walk.typed.kind(at, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0])
    )
    return follows and bool(walk.draft.item.crops or walk.draft.item.varieties)


def _as_share(walk: Walk, read: Read, i: int) -> Read:
    """ "lost ½ of the leeks", "lost 100% of": a share of what stands, where no plant is half a plant."""
    amount = read.amount
    if amount.unit == "%" and amount.low == amount.high == 100:
        return read._replace(amount=replace(amount, low=None, high=None, unit="piece", whole="all"))
    share = amount.low if amount.low == amount.high and amount.unit == "piece" and not read.has_noun else None
    if share is None or not 0 < share < 1:
        return read
    is_part = walk.verb.name in PARTED and bool(
        {"third", "quarter", "thirds", "quarters"} & set(walk.typed.words[i : read.end])
    )
    if not is_part and (walk.word(read.end) not in ("of", "the", "my", "our") or walk.typed.breaks[read.end]):
        return read
    if share == 0.5:
        return read._replace(amount=replace(amount, low=None, high=None, whole="half", is_about=True))
    percent = round(share * 100, 1)  # "two thirds of the kale"
    return read._replace(amount=replace(amount, low=percent, high=percent, unit="%", is_about=True))


PARTED = frozenset({"lost", "gave away", "ate", "composted", "stored", "put up", "used"})
"""Of these "a third" is a share, also without "of"."""
TOLD_OF = frozenset({"lost", "came up", "tried seed"})
"""What is more than there was is told once the garden is known: "lost 4 of 3"."""
COUNTED_WHOLE = frozenset({"lost", "planted", "moved", "potted on", "pricked out"})
OPENED = frozenset({"planted", "moved", "sowed", "started", "lost"})


def _in_doubt(walk: Walk, read: Read, i: int) -> Read:
    """The amount with what is doubtful about it: none at all, less than none, more than can be."""
    typed, amount = walk.typed, read.amount
    if amount.low is None or amount.high is None:
        return read
    is_minus = (
        "-" in typed.gaps[i]
        and bool(LEFT_OFF.search(typed.plain, 0, typed.starts[i]))
        and not amount.unit.startswith("°")
    )
    if is_minus and not (i and typed.is_number(i - 1)):
        return _refused(typed, i, read.end, amount.unit)
    if amount.unit in ("lb", "stone") and (bare := _bare_rest(walk, read)) is not None:
        return _refused(typed, i, bare, amount.unit)
    if walk.decimal is None and amount.unit in ("g", "ml") and (m := THREE_PLACES.match(amount.written)):
        told = f'"{m[0]}" may be {m[0].replace(".", "")} or {m[0]}; read as {m[0]}. Set `decimal` in garden.yaml.'
        return read._replace(asks=told)
    most = MOST_G / GRAMS[amount.unit] if amount.unit in GRAMS else MOST_PIECES
    if (amount.high or 0.0) > most:
        told = f'"{amount.written}" is more than a garden can give, so it is left out of all totals.'
        return Read(unclear(amount.written, amount.unit), read.end, True, told, level=Level.WARNING)
    if amount.of is not None and (amount.low or 0.0) > amount.of and walk.verb.name not in TOLD_OF:
        return _refused(typed, i, read.end, amount.unit)
    if amount.unit == "%" and (amount.high or 0.0) > 100:
        return _refused(typed, i, read.end, amount.unit)
    return _doubtful_count(walk, read)


def each_of(walk: Walk, before: list[Amount], read: Read) -> Read | None:
    """ "2 bags of peas, 500 g each", "4 squashes, 1.5 kg each": so many times the weight, where it is one thing."""
    counted = [a for a in before if a.count is not None and a.whole is None]
    several = len(walk.draft.items) > 1 or len(walk.draft.item.crops) > 1 or len(walk.draft.places) > 1
    if several or len(before) != 1 or len(counted) != 1 or read.amount.unit not in IN_SMALLEST:
        return None
    many = counted[0].count or 0
    low, high = read.amount.low, read.amount.high
    if low is None or high is None:
        return None
    return read._replace(
        amount=replace(
            read.amount,
            written=f"{read.amount.written} each",
            low=low * many,
            high=high * many,
            is_about=True,
        )
    )


def _doubtful_count(walk: Walk, read: Read) -> Read:
    amount, verb = read.amount, walk.verb.name
    if amount.unit != "piece" or read.asks or amount.value is None:
        return read
    if amount.value == 0 and verb in OPENED:
        return read._replace(asks=f'"{amount.written}" were {verb}, so nothing changes. Is that meant?')
    if amount.low == amount.high and verb in COUNTED_WHOLE and amount.low != int(amount.value):
        return read._replace(asks=f'"{amount.written}" is no whole number of plants. How many were {verb}?')
    return read


def _bare_rest(walk: Walk, read: Read) -> int | None:
    """ "3lb4", "1 pound 8": a number behind pounds, without its unit."""
    typed, at = walk.typed, read.end
    if at >= walk.end or typed.breaks[at] or not typed.is_number(at) or typed.gaps[at].strip():
        return None
    if typed.starts[at] == typed.ends[at - 1]:
        return None if nouns.UNITS.get(walk.word(at + 1)) == "oz" else at + 1  # "3lb4"
    rest = read_amount(typed, at, walk.decimal)
    is_bare = rest is not None and not rest.has_noun and (rest.amount.high or 99.0) < 16
    return rest.end if is_bare and rest is not None else None
