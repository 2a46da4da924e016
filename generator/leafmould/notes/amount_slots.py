"""Which item an amount belongs to: the crop behind it, the one before, each place its own, or all of them.

The step of the walk that takes amounts; reading the amount itself is in `amounts`.
"""

from __future__ import annotations

from leafmould.notes.amounts import Read
from leafmould.notes.draft import Item
from leafmould.notes.entries import Fate
from leafmould.notes.measured import signed, take_measured
from leafmould.notes.places import add_place
from leafmould.notes.shares import leave_share, with_noun_before
from leafmould.notes.walk import Walk
from leafmould.notes.what_follows import (
    crop_behind,
    is_no_amount,
    names_follow,
    variety_behind,
    words_of_time,
)
from leafmould.notes.whole_amounts import each_of, read_whole
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ABOUT,
    JOINS,
    PLACE_OPENERS,
)
from leafmould.values.names import Kind
from leafmould.values.problems import Level
from leafmould.values.quantities import GRAMS, Amount


def take_amount(walk: Walk) -> bool:
    i = walk.i
    word = walk.word(i)
    if word == "all" and (walk.word(i + 1) in BEHIND_ALL or (i > 0 and walk.typed.words[i - 1] == "it")):
        return False
    if word == "all" and number_next(walk, i + 1) and not walk.typed.breaks[i + 1]:
        walk.i = i + 1  # "all 12"
        return True
    if (
        walk.typed.is_number(i)
        and walk.word(i + 1) in ("st", "nd", "rd", "th")
        and not walk.typed.gaps[i + 1]
    ):
        written = walk.typed.written(i, i + 2)
        walk.ask(Level.HINT, f'"{written}" names no month, so it is kept as a remark.', i)
        walk.draft.leave(i, i + 2, True)
        walk.i = i + 2
        return True
    if (one := _one_holder(walk, i)) is not None:
        place_amount(walk, one, i)
        return True
    is_some_more = word == "some" and walk.joined and walk.draft.item.amounts and crop_behind(walk, i + 1)
    if walk.typed.names(i)[0] > 1 or (word in ABOUT and not is_some_more and not number_next(walk, i)):
        return False
    if word in ("less", "more", "fewer") and walk.word(i + 1) == "than" and walk.typed.is_number(i + 2):
        walk.draft.leave(i, i + 2, walk.after_comma)
        walk.i = i + 2
        return True
    if size := 2 if is_no_amount(walk, i) else words_of_time(walk, i):
        walk.draft.leave(i, i + size, walk.after_comma)
        walk.i = i + size
        return True
    read = read_whole(walk, i, _bare_unit(walk))
    if read is None or read.end > walk.end:
        return False
    if read.is_bare_word and not names_follow(walk, read.end):
        return False
    if take_measured(walk, read) or leave_share(walk, read, i):
        return True
    if _is_half_of_bed(walk, read):
        return True
    if word in ("some", "last", "final", "many", "few") and not (
        names_follow(walk, read.end) or read.has_noun
    ):
        return False
    if read.is_bare_word and word in ("a", "an") and not (walk.joined and walk.draft.item.amounts):
        walk.i = read.end
        return True
    if walk.verb.name == "noted weather" or (walk.is_topic and walk.verb.name == "bought"):
        return False
    place_amount(walk, with_noun_before(walk, read, i), i)
    return True


def _one_holder(walk: Walk, i: int) -> Read | None:
    """ "bag of spinach", ", armful": one of it."""
    first, i = i, i + (walk.word(i) in nouns.SIZES and walk.typed.breaks[i] and i + 1 < walk.end)
    word, end = walk.word(i), i + 1
    if (
        (word not in nouns.HOLDERS and word != "bunch")
        or word in nouns.LONGEST_VAGUE
        or walk.typed.names(i)[0]
        or walk.is_topic
    ):
        return None
    is_alone = walk.typed.breaks[first] and (end >= walk.end or walk.typed.breaks[end])
    has_number = (
        i > 0
        and not walk.typed.breaks[i]
        and (
            walk.typed.is_number(i - 1)
            or walk.typed.words[i - 1] in nouns.NUMBERS
            or walk.typed.words[i - 1] in nouns.UNITS
        )
    )
    if has_number or not (is_alone or (walk.word(end) == "of" and crop_behind(walk, end + 1))):
        return None
    if is_alone and (word in NOT_HARVEST or not walk.draft.has_crop or walk.draft.item.amounts):
        return None
    amount = Amount(
        written=walk.typed.written(first, end), low=1.0, high=1.0, unit=nouns.SAME_NOUN.get(word, word)
    )
    return Read(amount, end, True)


NOT_HARVEST = nouns.NOT_ALONE | frozenset(
    {
        "layer",
        "square",
        "block",
        "sheet",
        "water",
        "watering",
        "load",
        "case",
        "meal",
        "cell",
        "flat",
        "strip",
        "drop",
        "quarter",
        "salad",
    }
) - {"handful"}


BEHIND_ALL = frozenset(
    {
        "up",
        "told",
        "together",
        "week",
        "wk",
        "day",
        "night",
        "morning",
        "afternoon",
        "year",
        "month",
        "summer",
        "winter",
        "time",
    }
)
""" "9 kg all up", "not watered all week": no amount."""


def number_next(walk: Walk, i: int) -> bool:
    for j in range(i, min(i + 3, walk.end)):
        if (
            walk.typed.is_number(j)
            or walk.word(j) in nouns.NUMBERS
            or (walk.word(j) in nouns.FRACTION_WORDS and len(walk.word(j)) == 1)
            or walk.word(j) in ("half", "all")
        ):
            return True
        if walk.word(j) not in ABOUT:
            return False
    return False


def _bare_unit(walk: Walk) -> str:
    if walk.verb.name == "tried seed":
        return "seed"
    return (
        "hen"
        if walk.verb.name in ("penned", "let out")
        else "egg"
        if walk.verb.name == "collected" and ("egg" in walk.typed.words or "laid" in walk.typed.words)
        else "piece"
    )


def _is_half_of_bed(walk: Walk, read: Read) -> bool:
    """ "cleared half of Arch": part of a bed nobody can name."""
    if (
        read.amount.whole not in ("half", "all", "the rest", "some")
        or walk.draft.has_crop
        or not walk.has("bed")
    ):
        return False
    j = walk.past_articles(read.end + (walk.word(read.end) == "of"))
    size, known = walk.bed_at(j)
    if known is None or any(k.kind is not Kind.BED for k in walk.typed.names(j)[1]):
        return False
    add_place(walk, walk.named(known, j, j + size), "at", j, j + size)
    if read.amount.whole != "all":
        walk.draft.item.amounts.append(read.amount)
        walk.span("amount", walk.i, read.end)
    walk.i = j + size
    return True


def place_amount(walk: Walk, read: Read, i: int) -> None:
    """Give an amount to the item it belongs to: a new one, the one being read, or all of them."""
    draft, item = walk.draft, walk.draft.item
    if walk.typed.gaps[i].endswith("-") and not walk.typed.breaks[i]:
        read = signed(walk, read, i)
    if read.asks:
        walk.ask(read.level, read.asks, i)
    end = _past_of(walk, read.end)
    span = ("amount", walk.typed.starts[i], walk.typed.ends[read.end - 1])
    is_apart = "&" in walk.typed.gaps[end] or "+" in walk.typed.gaps[end]  # "tomatoes x 12 & basil"
    crop_follows = not is_apart and crop_behind(walk, end)
    variety_follows = not crop_follows and variety_behind(walk, end)
    walk.i = end
    if walk.word(walk.i) == "each" and not crop_follows:
        of_all = each_of(walk, item.amounts, read)
        draft.is_each = draft.is_each or of_all is None
        read = of_all._replace(end=read.end) if of_all is not None else read
        walk.i += 1
    if "/" in read.amount.unit:
        draft.total.append(read.amount)
        draft.spans.append(span)
        return
    if (
        crop_follows
        and item.crops
        and not (walk.verb.name == "put up" and walk.typed.words[i - 1] in ("from", "of", "with", "using"))
    ) or (variety_follows and (item.crops or item.varieties) and item.amounts):
        item = Item(takes_crop_before=variety_follows)
        draft.items.append(item)
    elif (
        not crop_follows
        and not variety_follows
        and len(draft.items) > 1
        and not any(it.amounts for it in draft.items)
    ):
        draft.total.append(read.amount)
        draft.spans.append(span)
        return
    if _to_someone(walk, read, crop_follows or variety_follows):
        draft.spans.append(span)
        return
    if _tells_of_some(walk, item, read, i):
        end = read.end + (walk.word(read.end) in STILL_THERE)
        draft.leave(i, end, True)
        walk.i = end
        return
    if item.crops and not crop_follows and walk.word(end) in nouns.PRODUCTS and not walk.typed.breaks[end]:
        written = walk.typed.written(i, end + 1)
        walk.ask(Level.QUESTION, f'"{written}" is kept as a remark. Write a line of its own for it.', i)
        draft.leave(i, end + 1, True)
        walk.i = end + 1
        return
    if crop_follows and not item.crops and item.amounts and walk.typed.breaks[i] and not item.varieties:
        _leave_amounts(walk, item, read.amount if walk.typed.gaps[i].strip() == "," else None, i)
    if any(_is_same_weight(a, read.amount) for a in item.amounts):
        item.spans.append(span)
        return
    if any(_same_kind(a, read.amount) and not _is_counted_out(a, read.amount) for a in item.amounts):
        if not crop_follows and (split := _split_places(walk, item)) is not None:
            item = split
        elif draft.is_each or (
            walk.has("larder") and not (walk.has("fate") and item.amounts[0].unit == read.amount.unit)
        ):
            pass
        else:
            _ask_which_amount(walk, item, read.amount, i)
    item.amounts.append(read.amount)
    item.places_before = len(draft.places)
    item.spans.append(span)


def _tells_of_some(walk: Walk, item: Item, read: Read, i: int) -> bool:
    """ "11 eggs, one soft shelled", "14 litres, half in the freezer": more about them, no second amount."""
    if walk.verb.name == "saw" and item.amounts and read.amount.whole is not None:
        return True
    if item.amounts and walk.typed.breaks[i] and walk.word(read.end) in STILL_THERE:
        return True
    if item.amounts and not ONE_OF_THEM.isdisjoint(walk.typed.words[max(i - 3, walk.verb_end) : i]):
        return True
    if not item.amounts or not (walk.typed.breaks[i] or walk.word(i - 1) in JOINS) or read.has_noun:
        return False
    if walk.verb.name == "collected":
        return read.amount.unit in ("piece", "egg") and "egg" not in walk.typed.words[read.end : walk.end]
    return walk.verb.name in ("put up", "stored") and read.amount.whole == "half"


ONE_OF_THEM = frozenset({"biggest", "largest", "heaviest", "smallest", "longest", "tallest"})
""" "7 marrows, biggest 2 kg": the weight of one."""

STILL_THERE = frozenset({"left", "remaining", "remain", "still", "more", "spare", "standing"})


def _ask_which_amount(walk: Walk, item: Item, amount: Amount, i: int) -> None:
    told = f'"{item.amounts[0].written}" and "{amount.written}" are two amounts of one thing.'
    walk.ask(Level.QUESTION, told, i)


def _leave_amounts(walk: Walk, item: Item, like: Amount | None, i: int) -> None:
    """ "a box of veg - 5 cabbages, …": the first amount is that of the whole."""
    if like is not None and any(_same_kind(a, like) and not _is_counted_out(a, like) for a in item.amounts):
        _ask_which_amount(walk, item, like, i)
    for slot, start, end in [s for s in item.spans if s[0] == "amount"]:
        first = next(k for k in range(walk.typed.count) if walk.typed.starts[k] >= start)
        last = next((k for k in range(first, walk.typed.count) if walk.typed.ends[k] >= end), first)
        walk.draft.leave(first, last + 1, True)
        item.spans.remove((slot, start, end))
    item.amounts.clear()


def _to_someone(walk: Walk, read: Read, is_item: bool) -> bool:
    """ "picked 3 kg, half to Ann": a share that went to somebody, or into the freezer."""
    i = walk.i
    if is_item or walk.verb.name != "picked" or not walk.draft.has_crop or not walk.draft.item.amounts:
        return False
    words = walk.typed.words[i : min(i + 4, walk.end)]
    if words[:1] == ["to"] and walk.bed_at(walk.past_articles(i + 1))[1] is None:
        kind = (
            "composted"
            if {"compost", "heap", "hens", "chickens", "hen", "worm"} & set(words)
            else "gave away"
        )
    elif words[:1] in (["for"], ["into"], ["in"]) and {
        "freezer",
        "freezing",
        "jam",
        "pickling",
        "drying",
        "store",
        "cellar",
    } & set(words):
        kind = "stored" if {"store", "cellar"} & set(words) else "put up"
    else:
        return False
    walk.draft.fates.append(Fate(kind=kind, amount=read.amount))
    return True


def _split_places(walk: Walk, item: Item) -> Item | None:
    """ "2 kg from Hoop bed and 1 kg from Bag row": each amount with its own place."""
    draft, i = walk.draft, walk.i
    if not draft.places or (len(draft.items) > 1 and not item.takes_crop_before):
        return None
    if (
        walk.word(i) in PLACE_OPENERS
        and walk.bed_at(walk.past_articles(i + 1), bare_number=True)[1] is not None
    ):
        own, rest = list(draft.places), []
    elif 0 < item.places_before < len(draft.places):
        own, rest = draft.places[: item.places_before], draft.places[item.places_before :]
    else:
        return None
    item.places, draft.places = own, rest
    split = Item(takes_crop_before=True)
    draft.items.append(split)
    return split


def _past_of(walk: Walk, j: int) -> int:
    if walk.word(j) == "of" and not walk.typed.breaks[j]:
        bed = walk.bed_at(walk.past_articles(j + 1))[1]
        j = (
            j
            if bed is not None
            and not walk.typed.kind(walk.past_articles(j + 1), Kind.CROP, Kind.CROP_GROUP)[0]
            else j + 1
        )
    return j


def _same_kind(a: Amount, b: Amount) -> bool:
    groups = (nouns.WEIGHTS, nouns.VOLUMES)
    return a.unit == b.unit or any(a.unit in g and b.unit in g for g in groups)


def _is_same_weight(a: Amount, b: Amount) -> bool:
    """ "2 kg (4.4 lb)": one weight in the units of two countries."""
    if a.grams is None or b.grams is None or (a.unit in IMPERIAL) == (b.unit in IMPERIAL):
        return False
    return a.unit in GRAMS and b.unit in GRAMS and abs(a.grams - b.grams) <= 0.1 * a.grams


IMPERIAL = frozenset({"oz", "lb", "stone", "cwt"})


def _is_counted_out(a: Amount, b: Amount) -> bool:
    """ "all, 20", "the last of the 10": words and the number they come to are one statement."""
    return any(
        x.whole in ("all", "the rest", "the last") and y.value is not None for x, y in ((a, b), (b, a))
    )
