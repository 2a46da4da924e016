"""Which item an amount that was read belongs to: the crop behind it, the one before, each place its own, or all.

Finding the amount is in `amount_slots`.
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.amounts import Read
from leafmould.notes.draft import Item
from leafmould.notes.entries import Fate
from leafmould.notes.lists_in_short import fate_of
from leafmould.notes.measured import signed
from leafmould.notes.of_the_house import take_amount_of_thing
from leafmould.notes.some_of_it import take_no_good
from leafmould.notes.walk import Walk
from leafmould.notes.what_follows import (
    crop_behind,
    is_crop_first,
    variety_behind,
)
from leafmould.notes.whole_amounts import each_of
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    JOINS,
    PLACE_OPENERS,
)
from leafmould.values.names import Kind
from leafmould.values.problems import Level
from leafmould.values.quantities import GRAMS, Amount


def place_amount(walk: Walk, read: Read, i: int) -> None:
    """Give an amount to the item it belongs to: a new one, the one being read, or all of them."""
    draft, item = walk.draft, walk.draft.item
    if walk.typed.gaps[i].endswith("-") and not walk.typed.breaks[i]:
        read = signed(walk, read, i)
    if read.asks:
        walk.ask(read.level, read.asks, i)
    end = _past_of(walk, read.end)
    span = ("amount", walk.typed.starts[i], walk.typed.ends[read.end - 1])
    if take_amount_of_thing(walk, read, i):
        return
    is_of_eggs = read.amount.unit == "egg" or walk.word(end) == "egg" or walk.word(end + 1) == "egg"
    if is_of_eggs and draft.has_crop and walk.verb.name != "collected":
        draft.leave(i, end, True)  # "a bag of chard and a dozen eggs": told by the last look
        walk.i = end
        return
    is_apart = "&" in walk.typed.gaps[end] or "+" in walk.typed.gaps[end]  # "tomatoes x 12 & basil"
    crop_follows = not is_apart and crop_behind(walk, end) and not is_crop_first(walk, i, end)
    variety_follows = not crop_follows and variety_behind(walk, end)
    walk.i = end
    if walk.word(walk.i) == "each" and item.amounts and read.amount.unit == "piece" and walk.has("larder"):
        draft.said.update(range(i, walk.i + 1))
        draft.leave(i, walk.i + 1, True)  # "gave away 3 squash, one each to Ann, Bob and Carol"
        walk.i += 1
        return
    if walk.word(walk.i) == "each" and not crop_follows:
        of_all = each_of(walk, item.amounts, read)
        draft.is_each = draft.is_each or of_all is None
        read = of_all._replace(end=read.end) if of_all is not None else read
        walk.i += 1
    if "/" in read.amount.unit:
        draft.total.append(read.amount)
        draft.spans.append(span)
        return
    if item.thing:
        item = Item(is_after_comma=walk.typed.breaks[i])
        draft.items.append(item)
    if (
        crop_follows
        and item.crops
        and not (walk.verb.name == "put up" and walk.typed.words[i - 1] in ("from", "of", "with", "using"))
    ) or (
        (
            variety_follows
            or (crop_follows and walk.joined and item.varieties and _is_other_crop(walk, item, end))
        )
        and (item.crops or item.varieties)
        and (item.amounts or (item.varieties and walk.joined))
    ):
        if walk.verb.name == "saved seed" and crop_follows and not item.amounts:
            item.amounts.append(read.amount)  # "saved seed from the best pods, 38 peas"
            item.spans.append(span)
            return
        item = Item(takes_crop_before=variety_follows)
        draft.items.append(item)
    elif (
        not crop_follows
        and not variety_follows
        and len(draft.items) > 1
        and not any(it.amounts for it in draft.items)
    ):
        if draft.total and read.amount.unit == "piece" and draft.total[-1].unit in nouns.HOLDERS:
            _ask_which_amount(walk, draft.total[-1], read.amount, i)
        draft.total.append(read.amount)
        draft.spans.append(span)
        return
    if _to_someone(walk, read, crop_follows or variety_follows):
        draft.spans.append(span)
        return
    if walk.word(i - 1) in EXCEPT and item.amounts and item.amounts[-1].whole == "all":
        walk.ask(
            Level.QUESTION,
            f'"{walk.typed.written(i - 1, read.end)}" is kept as a remark. How many was it?',
            i,
        )
        draft.leave(i, read.end, False)
        return
    if not item.amounts and item.crops and (summed := _sum_of_sorts(walk, read, i)) is not None:
        item.amounts.append(summed.amount)
        item.spans.append(("amount", walk.typed.starts[i], walk.typed.ends[summed.end - 1]))
        walk.i = summed.end
        return
    if walk.verb.name == "saved seed" and _is_saved_from(walk, i):
        draft.said.update(range(i, read.end))
        draft.leave(i, read.end, False)
        return
    if item.amounts and walk.word(read.end) in INGREDIENTS and walk.verb.name == "put up":
        draft.said.update(range(i, read.end + 1))
        draft.leave(i, read.end + 1, True)
        return
    if (
        walk.is_topic
        and walk.verb.name == "picked"
        and read.amount.unit in ("plant", "tree", "bush")
        and not crop_follows
    ):
        draft.said.update(range(i, read.end))
        draft.leave(i, read.end, False)  # "12 tomato plants gave 31 kg"
        return
    if walk.verb.name == "picked" and read.amount.unit in JARS and draft.has_crop and not crop_follows:
        draft.fates.append(Fate(kind="put up", amount=read.amount))  # "horseradish dug, 2 jars in vinegar"
        draft.spans.append(span)
        return
    if take_no_good(walk, item, read, i):
        return
    if _tells_of_some(walk, item, read, i):
        end = walk.i if walk.i == walk.end else read.end + (walk.word(read.end) in STILL_THERE)
        draft.leave(i, end, True)
        walk.i = end
        return
    is_thing = walk.word(end) in nouns.PRODUCTS or (end > read.end and walk.word(end) in nouns.THINGS)
    if item.crops and not crop_follows and is_thing and not walk.typed.breaks[end]:
        written = walk.typed.written(i, end + 1)
        walk.ask(Level.QUESTION, f'"{written}" is kept as a remark. Write a line of its own for it.', i)
        draft.leave(i, end + 1, True)
        walk.i = end + 1
        return
    if crop_follows and not item.crops and item.amounts and walk.typed.breaks[i] and not item.varieties:
        _leave_amounts(walk, item, read.amount if walk.typed.gaps[i].strip() == "," else None, i)
    if item.amounts and any(_says_the_same(a, read.amount) for a in item.amounts):
        item.spans.append(span)
        return
    if item.amounts and any(
        _same_kind(a, read.amount) and not _is_counted_out(a, read.amount) for a in item.amounts
    ):
        if not crop_follows and (split := _split_places(walk, item)) is not None:
            item = split
        elif draft.is_each or (
            walk.has("larder") and not (walk.has("fate") and item.amounts[0].unit == read.amount.unit)
        ):
            pass
        else:
            _ask_which_amount(walk, item.amounts[0], read.amount, i)
    item.amounts.append(read.amount)
    item.places_before = len(draft.places)
    item.spans.append(span)


def _is_other_crop(walk: Walk, item: Item, end: int) -> bool:
    """Whether the amount is of something else: "Krim (20) and a pinch of basil"; not "Krim, 20 tomatoes"."""
    if variety_behind(walk, end):
        return True
    spots = ((k, walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP)) for k in range(end, walk.stop(end)))
    known = next((known for _, (size, known) in spots if size), ())
    keys = {key for k in known for key in (k.key, *k.of)}
    return bool(item.amounts) and all(v.of and keys.isdisjoint(v.of) for v in item.varieties)


def _tells_of_some(walk: Walk, item: Item, read: Read, i: int) -> bool:
    """ "11 eggs, one soft shelled", "14 litres, half in the freezer": more about them, no second amount."""
    if not item.amounts:
        return False
    if walk.verb.name == "saw" and read.amount.whole is not None:
        return True
    if walk.typed.breaks[i] and walk.word(read.end) in STILL_THERE:
        return True
    if walk.typed.breaks[i] and _sums_up(walk, item, read, i):
        walk.i = walk.end
        return True
    if walk.typed.breaks[i] and read.amount.whole and walk.word(read.end) in ("with", "from", "off", "in"):
        return True  # "5 kg from Bag row, a few with scab"; "2 courgettes, 3 kg tomatoes, all from the greenhouse"
    if read.amount.whole and walk.word(walk.i) in nouns.TROUBLES and walk.typed.breaks[i]:
        return True  # "30 plums, loads of wasps"
    if read.amount.unit == "piece" and walk.word(read.end) in LOOKS:
        return True  # "3 strawberry plants in Tub 1, 1 looks sad"
    if (walk.typed.breaks[i] or walk.word(i - 1) in JOINS) and walk.word(read.end) in SO_FAR:
        return walk.word(read.end) != "to" or walk.word(read.end + 1) == "date"
    before = set(walk.typed.words[max(i - 3, walk.verb_end) : i])
    is_whole = (
        before & ONE_OF_THEM <= {"total"} and not any(a.grams for a in item.amounts) and read.amount.grams
    )
    if before & ONE_OF_THEM and not (is_whole and RUNNING.isdisjoint(walk.typed.words)):
        return True
    if not (walk.typed.breaks[i] or walk.word(i - 1) in JOINS) or read.has_noun:
        return False
    if walk.verb.name == "collected":
        return read.amount.unit in ("piece", "egg") and "egg" not in walk.typed.words[read.end : walk.end]
    return walk.verb.name in ("put up", "stored") and read.amount.whole == "half"


def _sums_up(walk: Walk, item: Item, read: Read, i: int) -> bool:
    """ "6 tomatoes, 4 red and 2 green": the same ones again."""
    typed, first = walk.typed, item.amounts[0]
    rest = range(i, walk.end)
    if read.amount.unit != "piece" or first.unit != "piece" or any(typed.names(k)[0] for k in rest):
        return False
    numbers = [int(typed.words[k][:9]) for k in rest if typed.is_number(k)]
    return len(numbers) > 1 and sum(numbers) == first.value


LOOKS = frozenset(
    {"look", "looks", "looking", "looked", "seem", "seems", "is", "are", "was", "were", "has", "have"}
)
SO_FAR = frozenset({"so", "to"})
""" "12 courgettes, 40 so far", "9 kg to date": what the year has given, not this day."""
ONE_OF_THEM = frozenset(
    {"average", "weight", "podded", "shelled", "trimmed", "avg", "averaging", "mean", "total", "cum", "making",
     "running", "tally", "biggest", "largest", "heaviest", "smallest", "longest", "tallest"}
)  # fmt: skip
""" "7 marrows, biggest 2 kg": the weight of one."""


def _is_saved_from(walk: Walk, i: int) -> bool:
    """ "saved seed from the best 5 Alderman pods": the seeds are not counted yet."""
    k = i - 1
    while k >= walk.verb_end and walk.typed.words[k] in BEST:
        k -= 1
    return walk.typed.words[k] in ("from", "of", "off") and not walk.typed.breaks[k + 1]


def _sum_of_sorts(walk: Walk, read: Read, i: int) -> Read | None:
    """ "capsicums, 7 red 3 green", "4 big and 2 small": as many together."""
    if read.amount.unit != "piece" or read.amount.count is None or walk.word(read.end) not in SORTS:
        return None
    total, end = read.amount.count, read.end + 1
    while end < walk.end:
        k = end + (walk.word(end) in ("and", "plus"))
        if not (walk.typed.is_number(k) and walk.word(k + 1) in SORTS):
            break
        total, end = total + int(walk.typed.words[k][:6]), k + 2
    if end == read.end + 1:
        return None
    amount = replace(read.amount, written=walk.typed.written(i, end), low=float(total), high=float(total))
    return read._replace(amount=amount, end=end)


SORTS = frozenset(
    {"red", "green", "yellow", "orange", "purple", "white", "black", "brown", "big", "small", "large", "medium",
     "ripe", "good", "little", "blue"}
)  # fmt: skip
BEST = nouns.SELDOM_VARIETY - {"from"}
JARS = frozenset({"jar", "bottle", "kilner"})
INGREDIENTS = frozenset(
    {"salt", "sugar", "vinegar", "water", "spice", "pectin", "yeast", "honey", "oil", "syrup", "brine"}
)
EXCEPT = frozenset({"bar", "but", "except", "save"})
""" "had every cherry bar eleven"."""
RUNNING = frozenset(
    {"running", "cum", "season", "year", "far", "date", "month", "week", "cumulative", "grand"}
)
""" "40 kg total so far" is no picking of this day; "6 parsnips, total 1.1 kg" is."""
STILL_THERE = frozenset({"left", "remaining", "remain", "still", "more", "spare", "standing"})


def _ask_which_amount(walk: Walk, first: Amount, amount: Amount, i: int) -> None:
    told = f'"{first.written}" and "{amount.written}" are two amounts of one thing.'
    walk.ask(Level.QUESTION, told, i)


def _leave_amounts(walk: Walk, item: Item, like: Amount | None, i: int) -> None:
    """ "a box of veg - 5 cabbages, …": the first amount is that of the whole."""
    if like is not None and any(_same_kind(a, like) and not _is_counted_out(a, like) for a in item.amounts):
        _ask_which_amount(walk, item.amounts[0], like, i)
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
    if words[:1] == ["to"] and words[1:2] != ["date"] and walk.bed_at(walk.past_articles(i + 1))[1] is None:
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
    elif words[:1] == ["for"] and (found := fate_of(walk.typed, i)) is not None:
        kind = found
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


def _says_the_same(a: Amount, b: Amount) -> bool:
    """ "all remaining potatoes", "2 kg (4.4 lb)"."""
    return (a.whole == "all" and b.whole == "the rest") or _is_same_weight(a, b)


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
