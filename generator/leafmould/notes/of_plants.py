"""What became of plants and their parts: ended, stripped of tips or leaves, taken out, kept for seed. Asked by `senses`."""

from __future__ import annotations

import itertools
from collections.abc import Callable

from leafmould.notes.clause import Clause
from leafmould.notes.conditions import has_crop, has_weight, is_bare, object_words, roots
from leafmould.notes.doers import trouble_first
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import PLACE_OPENERS
from leafmould.values.names import Kind

CROPS = (Kind.CROP, Kind.CROP_GROUP)


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


def is_cleared_of_them(typed: Typed, clause: Clause) -> bool:
    """ "pulled the bolted pak choi, hens had it"."""
    words = typed.words[clause.verb_end :]
    return any(
        word in nouns.HENS and words[k + 1 : k + 2] in (["had"], ["got"], ["ate"], ["loved"], ["enjoyed"])
        for k, word in enumerate(words)
    ) and bool({"bolted", "old", "spent", "gone"} & set(words))


def self_ended(typed: Typed, clause: Clause) -> bool:
    """ "the basil croaked", "three peppers snapped in the wind"."""
    has_first = any(
        typed.kind(i, *CROPS)[0] or i in typed.quotes for i in range(clause.start, clause.verb_start)
    )
    return has_first and _ends_there(typed, clause) and not has_weight(typed, clause)


def count_first(typed: Typed, clause: Clause) -> bool:
    """ "2 snapped", "one went mouldy", "they all melted"."""
    before = typed.words[clause.start : clause.verb_start]
    is_counted = any(
        w.isdigit()
        or w in nouns.NUMBERS
        or w in ("half", "all", "some", "both", "one", "most", "seedling", "rest", "they", "few")
        for w in before
    )
    return is_counted and _ends_there(typed, clause)


def trouble_does(typed: Typed, clause: Clause) -> bool:
    """ "fly found the last lot"; not "leek moth found in Top bed"."""
    return trouble_first(typed, clause) and not _ends_there(typed, clause)


def _ends_there(typed: Typed, clause: Clause) -> bool:
    after = clause.verb_end
    return is_bare(typed, clause) or typed.words[after] in PLACE_OPENERS or typed.words[after] in AFTER_AN_END


AFTER_AN_END = _words(
    "today yesterday last this overnight again when after with before anyway now clean completely and too"
)


def has_old_canes(typed: Typed, clause: Clause) -> bool:
    words = typed.words[clause.verb_end : clause.end]
    return "cane" in words and bool({"old", "fruited", "dead", "spent", "weak"} & set(words))


TOPS = _words("top tip")


SHED_LEAVES = _words("leaf leaves foliage")


def takes_off(things: frozenset[str]) -> Callable[[Typed, Clause], bool]:
    """ "took the tops off the broad beans", "nipped the tops out", "took the lower leaves off"."""

    def test(typed: Typed, clause: Clause) -> bool:
        words = typed.words[clause.verb_end : clause.end]
        begin = clause.verb_end
        spots = (k for k, w in enumerate(words[:5]) if w in things and typed.names(begin + k)[0] < 2)
        spot = next(spots, None)  # not the top of "Top bed"
        return spot is not None and (
            bool({"off", "out", "from"} & set(words[spot + 1 : spot + 3]))
            or clause.last_word in ("off", "out")
        )

    return test


def plants_out(typed: Typed, clause: Clause) -> bool:
    """ "got the old bean plants out of Arch"."""
    words = typed.words[clause.verb_end : clause.end]
    return ("plant" in words and clause.last_word == "out") or any(
        words[k : k + 3] == ["plant", "out", "of"] for k in range(len(words))
    )


def has_crop_here(typed: Typed, clause: Clause) -> bool:
    return any(typed.kind(i, *CROPS)[0] for i in range(clause.start, clause.end))


def out_none(typed: Typed, clause: Clause) -> bool:
    """ "so out it came": the crop stands before."""
    return clause.form[1:2] in (("it",), ("they",)) or not has_crop_here(typed, clause)


def roots_out(typed: Typed, clause: Clause) -> bool:
    return clause.form[1:] in (("came",), ("went",)) and roots(typed, clause)


def out_of_bed(typed: Typed, clause: Clause) -> bool:
    """ "the tomatoes came out of the Hoop bed today"; not "the jam came out well"."""
    has_first = any(typed.kind(i, *CROPS)[0] for i in range(clause.start, clause.verb_start))
    after = typed.words[clause.verb_end : clause.end]
    return has_first and (
        is_bare(typed, clause)
        or after[0] in ("of", "from", "today", "yesterday", "this", "last", "on", "and")
    )


def root_first(typed: Typed, clause: Clause) -> bool:
    return out_of_bed(typed, clause) and roots(typed, clause)


def is_in_pieces(typed: Typed, clause: Clause) -> bool:
    """ "chopped the rhubarb crown in two"."""
    words = typed.words[clause.verb_end : clause.end]
    is_clump = (
        bool({"crown", "clump", "rhubarb", "chive", "asparagus", "tarragon", "lovage", "sorrel"} & set(words))
        or clause.first_word == "lifted"
    )
    return is_clump and (clause.first_word == "lifted" or any(
        a in ("in", "into") and (b.isdigit() or b in nouns.NUMBERS or b in ("half", "clump", "piece", "bit")) for a, b in itertools.pairwise(words)
    ))  # fmt: skip


def is_dead_flowers(typed: Typed, clause: Clause) -> bool:
    words = set(typed.words[clause.verb_end : clause.end])
    return bool({"dead", "old", "spent", "faded"} & words) and bool(
        {"flower", "bloom", "head", "stem"} & words
    )


def is_to_the_ground(typed: Typed, clause: Clause) -> bool:
    words = typed.words[clause.verb_end : clause.end]
    return any(words[k : k + 3] == ["to", "the", "ground"] for k in range(len(words)))


def is_seed_kept(typed: Typed, clause: Clause) -> bool:
    words = typed.words[clause.verb_end : clause.end]
    return "seed" in words and (
        bool(has_crop(typed, clause))
        and (words[0] != "seed" or "from" in words or "of" in words)
        and "tin" not in words
    )


def is_slug_hunt(typed: Typed, clause: Clause) -> bool:
    return not nouns.TROUBLES.isdisjoint(typed.words[clause.verb_end : clause.end]) and not has_crop(
        typed, clause
    )


def cover_told(typed: Typed, clause: Clause) -> bool:
    """ "fleece off in the morning, back on at night"."""
    return not nouns.COVERS.isdisjoint(typed.words[: clause.verb_start])


HEADS = nouns.PICK_NOUNS | _words("handful bag bowl punnet")


def heads_of_it(typed: Typed, clause: Clause) -> bool:
    """ "slugs had half the radicchio, cut the 14 decent heads"."""
    spots = range(clause.verb_end, min(typed.stops[clause.verb_start], clause.end))
    has_count = any(typed.words[i].isdigit() or typed.words[i] in nouns.NUMBERS for i in spots)
    return (
        has_count
        and any(typed.words[i] in HEADS for i in spots)
        and any(typed.kind(i, *CROPS)[0] for i in range(clause.start))
    )


WITH_FOOD = _words(
    "butter toast supper dinner lunch tea breakfast salad cheese roast sandwich salt omelette soup pasta mint cream egg eggs sugar bread pancakes custard yoghurt yogurt raw"
)


def eaten_so(typed: Typed, clause: Clause) -> bool:
    """ "we had them with butter"."""
    words = typed.words[clause.verb_start + 1 : clause.end]
    return words[:1] in (["them"], ["it"], ["some"], ["half"], ["one"]) and not WITH_FOOD.isdisjoint(words)


ONES = _words("one ones rest worst bad half rotten lot them others")


def ones_first(typed: Typed, clause: Clause) -> bool:
    """ "worst ones binned", "the rest chucked"."""
    return not ONES.isdisjoint(typed.words[clause.start : clause.verb_start]) and any(
        typed.kind(i, *CROPS)[0] for i in range(clause.start)
    )


GONE = _words("bolted spent dead dying withered shrivelled shriveled")
SPENT = GONE | _words("diseased blighted frosted woody")


def is_spent_crop(typed: Typed, clause: Clause) -> bool:
    """ "pulled the bolted spinach", "lifted the dead kale": nothing to eat; not "pulled 2 kg bolted beetroot"."""
    words = object_words(typed, clause)
    crop = next((i for i in words if typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0]), 0)
    spent = SPENT if nouns.ROOTS.isdisjoint(typed.words[crop : crop + 2]) else GONE
    return not spent.isdisjoint(typed.words[clause.verb_end : crop]) and not has_weight(typed, clause)


DESTROYED = _words("burnt burned binned bonfire dustbin tip skip landfill")
ALL_OF_THEM = _words("the lot them it all")


def is_burnt_then(typed: Typed, clause: Clause) -> bool:
    """ "pulled 7 cabbages and burnt the lot"; not "pulled 2 kg carrots, binned two"."""
    if has_weight(typed, clause):
        return False
    if _is_diseased(typed, clause):
        return True
    spots = [i for i in range(clause.verb_end, typed.count) if typed.words[i] in DESTROYED]
    return any(typed.breaks[i + 1] or typed.words[i + 1] in ALL_OF_THEM for i in spots)


def is_it_in_pieces(typed: Typed, clause: Clause) -> bool:
    """ "lifted the rhubarb, split it into three"."""
    words = typed.words[clause.verb_end : clause.verb_end + 3]
    is_pronoun = words[:1] in (["it"], ["them"])
    return is_pronoun and words[1:2] in (["in"], ["into"], ["up"]) and bool(words[2:])


DISEASES = frozenset({"blight", "clubroot", "virus", "mosaic", "wilt"})


def _is_diseased(typed: Typed, clause: Clause) -> bool:
    """ "found blight, pulled all the tomatoes"; not "blight in Top bed, pulled the potatoes"."""
    if DISEASES.isdisjoint(typed.words[: clause.start]):
        return False
    return nouns.ROOTS.isdisjoint(typed.words[clause.verb_end : clause.end])


ANNUALS = frozenset(
    {"pea", "broad-bean", "french-bean", "runner-bean", "sweetcorn", "sweet-corn", "summer-squash", "cucumber", "lettuce", "mangetout"}
)  # fmt: skip


def is_annual_down(typed: Typed, clause: Clause) -> bool:
    """ "cut down the peas": they are over; not "cut down the raspberries", nor "peas finished, cut down"."""
    words = object_words(typed, clause)
    if not (TOPS | {"haulm", "flower", "half"}).isdisjoint(typed.words[clause.verb_end : clause.end]):
        return False
    known = (typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[1] for i in words)
    return any({k.key, *k.of} <= ANNUALS | {"bean"} for kinds in known for k in kinds)


def is_off_crop(typed: Typed, clause: Clause) -> bool:
    """ "squished 60 crawlies off the cabbages"."""
    spots = range(clause.verb_end + 1, clause.end - 1)
    at = next((i for i in spots if typed.words[i] in ("off", "on", "from")), 0)
    after = at + 1 + (typed.words[at + 1 : at + 2] in (["the"], ["my"], ["our"]))
    return bool(at) and after < clause.end and typed.kind(after, Kind.CROP, Kind.CROP_GROUP)[0] > 0


FRUITING = frozenset(
    {"pumpkin", "winter-squash", "summer-squash", "tomato", "apple", "pear", "plum", "runner-bean", "french-bean", "pea", "cucumber",
     "sweet-pepper", "hot-pepper", "aubergine", "melon", "strawberry", "cherry", "peach", "apricot", "gooseberry"}
)  # fmt: skip


def is_fruit_first(typed: Typed, clause: Clause) -> bool:
    """ "pumpkins set, one each", "tomatoes have set": fruit is forming; not "onions set in Top bed"."""
    before = (typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[1] for i in range(clause.start, clause.verb_start))
    is_fruit = any({k.key, *k.of} & FRUITING for kinds in before for k in kinds)
    is_closed = clause.verb_end >= clause.end or typed.breaks[clause.verb_end]
    return is_fruit and is_closed
