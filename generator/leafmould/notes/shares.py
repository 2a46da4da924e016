"""Amounts that are no amount of the whole: rates, halves of what is named already, numbers that borrow a noun.

Asked by `amount_slots` for each amount it reads. A rate or a half is kept as a remark, with a hint.
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.amounts import Read
from leafmould.notes.walk import Walk
from leafmould.notes.what_follows import variety_behind
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import JOINS, PLACE_OPENERS
from leafmould.values.names import Kind
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount

CONTAINERS = frozenset({"cell", "tray", "pot", "module", "flat", "seedtray", "hole", "plug", "station"})
SHARED_OUT = CONTAINERS | frozenset({"tub", "bucket", "bag", "container", "hill", "mound", "row", "bed", "box", "planter", "can", "punnet", "jar", "plant", "wigwam", "cane", "pole", "growbag", "trough", "basket", "block", "barrel", "square"})  # fmt: skip
"""What a number may be meant for each of: "2 per tub"."""
STUFF = frozenset({"seed", "plant", "bulb", "clove", "seedling"})


def each_side(walk: Walk, read: Read) -> Read:
    """ "4 each side": eight."""
    sides = walk.typed.words[read.end : min(read.end + 2, walk.end)]
    if sides not in (["each", "side"], ["each", "end"]) or read.amount.value is None:
        return read
    amount = on_both_sides(read.amount, walk.typed.written(read.end, read.end + 2))
    return read._replace(amount=amount, end=read.end + 2)


def in_each_row(walk: Walk, read: Read, i: int) -> bool:
    """The 8 of "4 rows of 8": so many in each row."""
    amounts = walk.draft.item.amounts
    is_of_rows = walk.word(i - 1) == "of" and bool(amounts) and amounts[-1].unit == "row"
    if not is_of_rows or read.amount.unit not in ("piece", "plant") or walk.typed.words[i - 2] != "row":
        return False
    amount = replace(read.amount, written=walk.typed.written(i - 1, read.end), unit=f"{read.amount.unit}/row")
    walk.draft.total.append(amount)
    walk.span("amount", i, read.end)
    walk.i = read.end
    return True


def on_both_sides(amount: Amount, sides: str) -> Amount:
    """So many "each side": twice as many."""
    low, high = (amount.low or 0.0) * 2, (amount.high or 0.0) * 2
    return replace(amount, written=f"{amount.written} {sides}", low=low, high=high)


def leave_share(walk: Walk, read: Read, i: int) -> bool:
    """ "8 seeds to the cell", "20 g seed per tray"; "2 kg, half from the Arch and half from bed 4"."""
    if end := _rate_end(walk, read.end):
        _keep_rate(walk, read, i, end)
        return True
    told = 0
    if walk.word(i) == "them" and walk.draft.left and walk.draft.left[-1][1] == i:
        end = told = read.end  # "picked peas from Arch ate them all"
    if not end and read.amount.whole == "half" and _is_named(walk) and (size := bed_follows(walk, read.end)):
        end, told = read.end, walk.past_articles(read.end + 1) + size
    if not end and read.amount.whole == "half" and _is_named(walk) and _is_of_a_sort(walk, read.end):
        end = told = walk.stop(i)
    if not end and i > 1 and walk.typed.words[i - 2] in LOWS and walk.typed.words[i - 1] in LOW_LINKS:
        i, end, told = i - 2, read.end, read.end  # "low of 27": degrees, not plants
    if not end:
        return False
    if walk.word(i) != "them":
        walk.ask(Level.HINT, f'"{walk.typed.written(i, told)}" is kept as a remark.', i)
    walk.draft.leave(i, end, walk.word(i) != "them")
    walk.i = end
    return True


def _is_of_a_sort(walk: Walk, j: int) -> bool:
    """ "3 kg, half Roma, half our own": of what was counted already."""
    j = walk.past_articles(j)
    is_own = walk.word(j) == "own" or walk.word(j - 1) == "our"
    return walk.typed.breaks[walk.i] and (is_own or variety_behind(walk, j))


LOWS = frozenset({"low", "high", "temp", "temperature", "min", "max", "minimum", "maximum"})
LOW_LINKS = frozenset({"of", "was", "at", "about", "hit", "reached"})
""" "low of 27", "low was 34", "temperature hit 31"."""


def _keep_rate(walk: Walk, read: Read, i: int, end: int) -> None:
    """ "3 seeds to the cell": so many in each, however many there are."""
    noun = walk.word(read.end) if walk.word(read.end) in STUFF else ""
    unit = read.amount.unit if read.amount.unit != "piece" or not noun else noun
    each = walk.draft.item.amounts[-1].unit if walk.word(end - 1) == "per" else walk.word(end - 1)
    amount = replace(read.amount, written=walk.typed.written(i, end), unit=f"{unit}/{each}")
    walk.draft.total.append(amount)
    walk.span("amount", i, end)
    walk.i = end


def _is_named(walk: Walk) -> bool:
    return any(a.value is not None for a in walk.draft.item.amounts)


def _rate_end(walk: Walk, j: int) -> int:
    """The word behind "per tray", "to the cell", "in each pot"; 0 if none stands at `j`."""
    j += walk.word(j) in STUFF
    if walk.word(j) not in ("per", "to", "in"):
        return 0
    if walk.word(j) == "per" and (j + 1 >= walk.end or walk.typed.breaks[j + 1]) and walk.draft.item.amounts:
        return j + 1  # "5 strings, 12 per"
    if (
        walk.word(j) == "per"
        and walk.word(j + 1).isalpha()
        and walk.word(j + 1) not in nouns.UNITS
        and not walk.typed.names(j + 1)[0]
    ):
        return j + 2  # "one per ring"
    word, k = walk.word(j), walk.past_articles(j + 1)
    is_each = walk.word(k) in ("each", "every")
    k += is_each
    k += 2 * (walk.typed.is_number(k) and walk.word(k + 1) in nouns.UNITS)  # "1 per 5 litre pot"
    k += walk.word(k) in nouns.SIZES
    if walk.word(k) not in SHARED_OUT or k >= walk.end or walk.bed_at(k)[1] is not None:
        return 0
    is_one = is_each or (word == "to" and walk.word(j + 1) in ("a", "the"))
    return k + 1 if word == "per" or (word in ("to", "in") and is_one) else 0


def bed_follows(walk: Walk, j: int) -> int:
    """How many words the bed of "from bed 4" has, if that stands at word `j`; else 0."""
    if walk.word(j) == "of" or walk.word(j) not in PLACE_OPENERS:
        return 0
    return walk.bed_at(walk.past_articles(j + 1))[0]


def with_noun_before(walk: Walk, read: Read, i: int) -> Read:
    """ "3 barrows on bed 4 and 2 on Top bed": 2 barrows."""
    if _is_rest_of_picking(walk, read):
        _ask_whether_counted_twice(walk, i)
        return read._replace(amount=replace(read.amount, whole="some"))
    before = walk.draft.item.amounts[-1:]
    if not before or read.has_noun:
        return read
    joins = walk.word(i - 1) in JOINS or walk.typed.breaks[i] or walk.word(i) == "another"
    if not joins or read.has_noun or not bed_follows(walk, read.end):
        return read
    if read.amount.unit != "piece" or before[0].value is None or "/" in before[0].unit:
        return read
    return read._replace(amount=replace(read.amount, unit=before[0].unit, measure_g=before[0].measure_g))


def _is_rest_of_picking(walk: Walk, read: Read) -> bool:
    """ "3 kg 'Sungold' and the rest 'Sakura'": the rest of the picking, not the last of the crop."""
    return (
        walk.verb.name == "picked"
        and read.amount.whole == "the rest"
        and any(a.value is not None for item in walk.draft.items for a in item.amounts)
        and not walk.typed.kind(walk.past_articles(read.end), Kind.CROP, Kind.CROP_GROUP)[0]
    )


def _ask_whether_counted_twice(walk: Walk, i: int) -> None:
    """ "4 kg tomatoes, 3 kg 'Sungold' and the rest 'Sakura'": 4 kg in all, or 7."""
    amounts = [a for item in walk.draft.items for a in item.amounts if a.value is not None]
    if len(amounts) > 1:
        first, second = amounts[0].written, amounts[1].written
        walk.ask(Level.QUESTION, f'Is "{second}" a share of "{first}"? Both are counted.', i)
