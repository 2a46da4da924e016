"""Known crops in a clause, and which item of the line each begins or joins.

A step of the walk; varieties are in `varieties`, words nobody knows in `strangers`. What several crops make
of one line is settled in `expand`.
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.beds import is_bed_not_crop
from leafmould.notes.beside_crop import STARTS, noun_behind_crop, unknown_behind_crop
from leafmould.notes.draft import Item
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.varieties import is_crop_rather, known_variety
from leafmould.notes.walk import Walk, as_named
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import JOINS, PLACE_OPENERS, TITLES
from leafmould.notes.words.verbs import as_done
from leafmould.values.names import Kind, Known
from leafmould.values.problems import Level

QUALIFIERS = frozenset(
    {
        "cherry", "plum", "pear", "apple", "lemon", "pea", "potato", "pineapple", "chocolate", "strawberry", "grape", "onion", "garlic", "orange",
        "celery", "spinach", "walnut", "carrot", "fig", "olive", "mustard", "fennel", "beet", "peach", "melon", "turnip", "cabbage", "butter",
    }
)  # fmt: skip


CROPS, VARIETY = (Kind.CROP, Kind.CROP_GROUP), Kind.VARIETY


def take_crop(walk: Walk) -> bool:
    """A known crop, crop group or variety."""
    i = walk.i
    size, known = walk.typed.names(i)
    if not size or i + size > walk.end:
        return False
    if (
        walk.is_topic
        and walk.verb.name not in ("cleared", "finished")
        and walk.word(i + size) in ("bed", "patch")
        and not walk.typed.breaks[i + size]
    ):
        walk.draft.leave(i, i + size + 1, True)  # "salad bed sown: rocket, mizuna"
        walk.i = i + size + 1
        return True
    if _is_person(walk, i, size):
        walk.draft.leave(i, i + 1, True)
        walk.i = i + 1
        return True
    if _is_trouble_of(walk, i, size):
        walk.draft.leave(i, i + size + 1, walk.after_comma)
        walk.i = i + size + 1
        return True
    crops = [k for k in known if k.kind in CROPS]
    varieties = [k for k in known if k.kind is VARIETY]
    if not crops and not varieties:
        return False
    if _is_denied(walk, i, size):
        walk.draft.leave(i, i + size, walk.after_comma)
        walk.i = i + size
        return True
    if len(known) > 1 and any(k.kind is Kind.BED for k in known) and is_bed_not_crop(walk, i, size):
        return False
    if varieties and not is_crop_rather(walk, i, size, crops, varieties):
        return known_variety(walk, i, size, varieties)
    if not crops:
        return False
    return _known_crop(walk, i, size, crops)


def _is_person(walk: Walk, i: int, size: int) -> bool:
    """ "gave Tom 6 tomato plants": no tomatoes by that name."""
    if walk.verb.name != "gave away":
        return False
    written = walk.typed.written(i, i + 1)
    if i and walk.typed.words[i - 1] in TITLES and size == 1:
        return True  # "to Rev. Tom"
    if walk.verb.name == "gave away" and size == 1 and walk.joined and not walk.after_comma:
        to = [k for k in range(walk.verb_end, i) if walk.typed.words[k] == "to"]
        if to and written.casefold() in nouns.LOCAL_NAMES and not written.endswith("s"):
            return True  # "to Ben and Tom"
    return (
        walk.verb.name == "gave away"
        and (i == walk.verb_end or (walk.typed.breaks[i] and walk.typed.is_number(i + 1)))
        and size == 1
        and not written.endswith("s")
        and written.casefold() in nouns.LOCAL_NAMES
        and (
            i > walk.verb_end
            or any(walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP)[0] for k in range(i + 1, walk.stop(i)))
        )
    )


def _is_denied(walk: Walk, i: int, size: int) -> bool:
    """ "picked peas, no beans"; the carrots of "no sign of the carrots, so put beans in"; not "no carrots, resowed"."""
    words = walk.typed.words
    if not walk.is_topic:
        is_no = i > 1 and words[i - 1] == "no" and not words[i - 2].isdigit()  # "40no leeks"
        return is_no and not walk.typed.breaks[i]
    start = next((k for k in range(i, 0, -1) if walk.typed.breaks[k]), 0)
    is_apart = any(walk.typed.breaks[k] or words[k] == "so" for k in range(i + size, walk.verb_end))
    behind = range(walk.verb_end, walk.typed.stops[walk.verb_end - 1])
    return words[start] == "no" and is_apart and any(walk.typed.kind(k, *CROPS)[0] for k in behind)


def _is_trouble_of(walk: Walk, i: int, size: int) -> bool:
    """ ", carrot fly time": no second crop."""
    end = i + size
    return (
        walk.after_comma
        and walk.draft.has_crop
        and end < walk.end
        and not walk.typed.breaks[end]
        and walk.typed.words[end] in nouns.TROUBLES
        and not walk.typed.names(end)[0]
    )


def _known_crop(walk: Walk, i: int, size: int, crops: list[Known]) -> bool:
    size, crops = _without_noun(walk, i, size, crops)
    end = i + size
    if size == 1 and _is_somebody(walk, i):
        return False
    if _becomes_thing(walk, i, end, crops[0]):
        return True
    if walk.has("object") and walk.verb.name == "bought" and walk.draft.subject:
        return False
    named = walk.named(crops[0], i, end)
    if len(crops) > 1 and len({k.key for k in crops}) > 1:
        named = _of_several(walk, crops, i, end)
    item = _item_for_crop(walk, i, named)
    if item is None:
        return True
    item.crops.append(named)
    if walk.word(end) in nouns.PRODUCTS and walk.has("larder") and not walk.typed.breaks[end]:
        item.made = walk.typed.written(i, end + 1)
    names_more = any(walk.typed.kind(k, Kind.CROP)[0] for k in range(end, walk.end))
    if crops[0].is_public and not names_more and (walk.verb.name == "picked" or walk.verb.name in STARTS):
        walk.ask(Level.HINT, f'"{named.written}" may be several crops; which one is not said.', i)
    item.spans.append(("crop", walk.typed.starts[i], walk.typed.ends[end - 1]))
    item.crop_end = end
    walk.joined = walk.was_or = False
    walk.i = end
    if walk.draft.subject is None and walk.verb.name == "saw" and walk.word(end) == "seedling":
        walk.draft.subject = "seedlings"
    noun_behind_crop(walk, item)
    unknown_behind_crop(walk, item)
    return True


def _is_somebody(walk: Walk, i: int) -> bool:
    """ "gave Tom 300 g": a short form for a crop, with a capital, right behind the verb and before an amount, is a person."""
    is_name = walk.typed.written(i, i + 1) in ("Tom", "Tommy", "Tommie")
    return is_name and i > 0 and walk.typed.words[i - 1] in GIVING and walk.typed.is_number(i + 1)


GIVING = frozenset({"gave", "given", "lent", "sold", "sent", "handed", "brought", "passed", "offered"})


def _without_noun(walk: Walk, i: int, size: int, crops: list[Known]) -> tuple[int, list[Known]]:
    """ "onion sets": onions, counted in sets."""
    if size > 1 and walk.typed.words[i + size - 1] in nouns.PLANT_NOUNS:
        known = walk.typed.vocabulary.by_words.get(tuple(walk.typed.words[i : i + size - 1]), ())
        shorter = [k for k in known if k.kind is Kind.CROP and k.key == crops[0].key]
        if shorter:
            return size - 1, shorter
    return size, crops


def _of_several(walk: Walk, crops: list[Known], i: int, end: int) -> Named:
    names = sorted({k.name for k in crops})
    walk.ask(Level.QUESTION, f'"{walk.typed.written(i, end)}" may be {" or ".join(names)}.', i)
    keys = tuple(sorted({k.key for k in crops}))
    return Named(
        key=keys[0], name=names[0], written=walk.typed.written(i, end), sureness=Sureness.DOUBTFUL, of=keys
    )


def _item_for_crop(walk: Walk, i: int, named: Named) -> Item | None:
    """The item a crop belongs to: the open one, a mix, or a new one."""
    item = walk.draft.item
    if item.thing and not (walk.joined or walk.typed.breaks[i]):
        size = max(1, walk.typed.names(i)[0])
        walk.draft.leave(i, i + size, walk.after_comma)  # "swapped 12 eggs for a bag of mandarins"
        walk.i = i + size
        return None
    if item.thing:
        item = Item(is_after_comma=walk.typed.breaks[i])
        walk.draft.items.append(item)
    if not item.crops:
        of = {c for v in item.varieties for c in v.of}
        if of and walk.joined and not of & {named.key, *named.of}:  # "Moneymaker x 12 & basil"
            item = Item(is_after_comma=walk.typed.breaks[i])
            walk.draft.items.append(item)
        return item
    if walk.typed.breaks[i] and walk.typed.words[i] in nouns.PLANT_NOUNS and walk.draft.places:
        walk.draft.leave(i, i + 1, True)  # ", runners"
        walk.i = i + 1
        return None
    if walk.verb.name == "put up" and named.key in {c.key for c in item.crops}:
        walk.i = i + max(1, walk.typed.names(i)[0])
        return None
    if "(" in walk.typed.gaps[i] and named.key == item.crops[-1].key and walk.typed.capital(i):
        end = i + max(1, walk.typed.names(i)[0])  # "3 lettuces (Little Gem)"
        written = walk.typed.written(i, end)
        item.varieties.append(as_named(written, written, written, Sureness.KNOWN, (named.key,)))
        item.spans.append(("variety", walk.typed.starts[i], walk.typed.ends[end - 1]))
        walk.i = end
        return None
    if (
        walk.typed.breaks[i]
        and len(item.crops) == 1
        and (named.key in item.crops[0].of or item.crops[0].key in ("green-manure", "cover-crop"))
    ):
        item.crops.pop()  # "1 kg beans (runner)"
        return item
    if _is_told_apart(walk, item, i):
        written = walk.typed.written(i, walk.stop(i))
        walk.ask(
            Level.QUESTION, f'"{written}" is kept as a remark. Was that {as_done(walk.verb.name)} too?', i
        )
        walk.draft.leave(i, walk.stop(i), True)
        walk.i = walk.stop(i)
        return None
    if walk.was_or:
        item.crops = [replace(c, sureness=Sureness.DOUBTFUL) for c in item.crops]
        return item
    if item.is_mix and walk.joined:
        return item
    if named.key == item.crops[-1].key and (walk.is_topic or walk.verb.name == "saved seed"):
        walk.i = i + max(1, walk.typed.names(i)[0])
        return None
    if not walk.joined and item.crop_end == i:
        first, written = item.crops[-1], walk.typed.words[i - 1]
        if first.key == named.key:
            item.crops.pop()
            return item
        if written in QUALIFIERS and not walk.typed.written(i - 1, i).lower().endswith("s"):
            item.crops.pop()
            walk.draft.leave(i - 1, i, False)
            item.spans = [s for s in item.spans if s[2] != walk.typed.ends[i - 1]]
            return item
        walk.ask(
            Level.QUESTION,
            f'"{first.written}" and "{named.written}" stand side by side; read as two crops.',
            i,
        )
    elif not walk.joined and walk.verb.name not in ("turned out",) and not _is_next_in_list(walk, item, i):
        walk.draft.leave(i, i + max(1, walk.typed.names(i)[0]), walk.after_comma)
        walk.i = i + max(1, walk.typed.names(i)[0])
        is_swapped = walk.typed.words[walk.verb_end - 1] in ("swapped", "traded", "bartered")
        if walk.has("crop!") and not is_swapped:
            walk.ask(
                Level.QUESTION,
                f'"{named.written}" is kept as a remark. Was it {as_done(walk.verb.name)} too?',
                i,
            )
        return None
    new = Item(is_after_comma=walk.typed.breaks[i])
    walk.draft.items.append(new)
    return new


def _is_told_apart(walk: Walk, item: Item, i: int) -> bool:
    """ "tomatoes pinched, cucumbers up the string": of the second something else is told."""
    if (
        walk.is_topic
        or not walk.typed.breaks[i]
        or walk.verb.name not in CARE
        or walk.typed.words[i - 1] in JOINS
    ):
        return False
    verb = walk.typed.starts[walk.verb_end - 1]
    crops = [start for slot, start, _ in item.spans if slot == "crop"]
    if not crops or min(crops) > verb:
        return False
    end = i + max(1, walk.typed.names(i)[0])
    if end >= walk.stop(i) or walk.word(end) not in PLACE_OPENERS or walk.word(end) == "of":
        return False
    return walk.bed_at(walk.past_articles(end + 1))[1] is None


CARE = frozenset({"pinched out", "tied in", "staked", "thinned", "pruned", "netted", "covered", "uncovered", "earthed up", "weeded", "fed", "mulched"})  # fmt: skip


def _is_next_in_list(walk: Walk, item: Item, i: int) -> bool:
    """The lettuce of "kale 200 g lettuce 1 chard 150 g": each has its amount behind it."""
    end = i + max(1, walk.typed.names(i)[0])
    if walk.typed.breaks[end] or not (walk.typed.is_number(end) or walk.word(end) in ("x", *nouns.HOLDERS)):
        return False
    last = item.spans[-1] if item.spans else ("", 0, 0)
    return last[0] == "amount" and last[2] == walk.typed.ends[i - 1]


FEEDS = frozenset({"feed", "food", "fertiliser", "fertilizer", "liquid"})
BECOMING = nouns.THINGS | nouns.PRODUCTS | {"cane"}


def _becomes_thing(walk: Walk, i: int, end: int, crop: Known) -> bool:
    """ "tomato feed" is no tomato; "tomato sauce" is made of it."""
    word = walk.word(end)
    if word not in BECOMING or walk.typed.breaks[end] or walk.typed.kind(end, Kind.MEASURE)[0]:
        return False
    is_thing = word in nouns.THINGS or (word == "cane" and walk.typed.words[i] not in nouns.CANE_FRUIT)
    if walk.verb.name in ("bought", "saw", "treated", "fed animals", "released") and is_thing:
        walk.draft.subject = walk.typed.written(i, end + 1)
        walk.span("subject", i, end + 1)
        walk.i = end + 1
        return True
    if walk.verb.name == "fed" and word in FEEDS and (walk.draft.has_crop or walk.draft.places):
        last = walk.draft.item  # "a dose of tomato feed": no second crop
        if len(walk.draft.items) > 1 and not last.crops and not last.varieties:
            walk.draft.items.pop()
            walk.draft.item.amounts += last.amounts
            walk.draft.item.spans += last.spans
        walk.i = end + 1
        return True
    if word in nouns.PRODUCTS and walk.has("larder"):
        walk.draft.subject = walk.typed.written(i, end + 1)
        walk.span("subject", i, end + 1)
    return False
