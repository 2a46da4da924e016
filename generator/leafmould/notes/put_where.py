"""What a verb put where: stuff on a bed, plants in the ground, a harvest in store. Asked by `senses`, family by family."""

from __future__ import annotations

import itertools
from collections.abc import Callable

from leafmould.notes.clause import Clause
from leafmould.notes.conditions import has_crop, has_weight
from leafmould.notes.doers import trouble_first
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, PLACE_OPENERS
from leafmould.values.names import Kind


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


def _before_small(typed: Typed, clause: Clause) -> range:
    """The words between the verb and the next word that leads to a place."""
    i = clause.verb_end
    stop = min(typed.stops[i], clause.end) if i < clause.end else i
    while i < stop and not (
        typed.words[i] in PLACE_OPENERS and typed.words[i] != "of" and not typed.names(i)[0]
    ):
        i += 1
    return range(clause.verb_end, i)


def object_is(words: frozenset[str]) -> Callable[[Typed, Clause], bool]:
    """Whether one of these is what the verb was done with: "a bale of straw", not "lettuces in straw"."""

    def test(typed: Typed, clause: Clause) -> bool:
        return any(
            typed.words[i] in words and typed.names(i)[0] <= 1 and not _is_bed(typed, i)
            for i in _before_small(typed, clause)
        )

    return test


def _is_bed(typed: Typed, i: int) -> bool:
    return bool(typed.kind(i, Kind.BED, Kind.PART)[0])


def any_word(words: frozenset[str], *, before: bool = False) -> Callable[[Typed, Clause], bool]:
    """Whether one of these words stands behind the verb, or anywhere before it."""

    def test(typed: Typed, clause: Clause) -> bool:
        first, last = (clause.start, clause.verb_start) if before else (clause.verb_end, clause.end)
        return not words.isdisjoint(typed.words[first:last])

    return test


def takes_them(typed: Typed, clause: Clause) -> bool:
    """A crop of its own, or one named before that "them" stands for."""
    if has_crop(typed, clause):
        return True
    is_pronoun = not {"them", "it", "lot", "rest", "half"}.isdisjoint(
        typed.words[clause.verb_end : clause.end]
    )
    return is_pronoun and any(
        typed.kind(i, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0] for i in range(clause.start)
    )


DRY = _words("sand sack crate clamp store cellar loft shed rack slat garage storage newspaper attic barn")


TO_KEEP = _words("dry cure ripen store harden keep")


def is_kept_dry(typed: Typed, clause: Clause) -> bool:
    """ "packed the carrots in sand", "laid the onions out to dry"; not "stuck 3 tomatoes in Tub 1"."""
    words = typed.words[clause.verb_end : clause.end]
    is_kept = any(
        (a in ("to", "and") and b in TO_KEEP and words[k + 2 : k + 3] != ["off"])
        for k, (a, b) in enumerate(itertools.pairwise(words))
    ) or any(
        words[k] in ("in", "into", "on", "for") and DRY & set(words[k + 1 : k + 5]) for k in range(len(words))
    )
    return is_kept and takes_them(typed, clause) and "seed" not in words


def is_tub_moved(typed: Typed, clause: Clause) -> bool:
    """ "put Tub 1 by the Back fence": the tub is what moves."""
    i = clause.verb_end
    while i < clause.end and typed.words[i] in ARTICLES and not typed.names(i)[0]:
        i += 1
    if not typed.kind(i, Kind.BED)[0] or clause.start != clause.verb_start:
        return False
    beds = [i for i in range(clause.verb_end, clause.end) if typed.kind(i, Kind.BED)[0]]
    return len(beds) > 1 or bool(
        {"indoor", "inside", "cover"} & set(typed.words[clause.verb_end : clause.end])
    )


IN_GROUND = _words("ground hole gap corner spot space trench soil")


def is_planted_in(typed: Typed, clause: Clause) -> bool:
    """ "bunged 12 leeks in Bed 3"; not "dropped a marrow on my foot"."""
    if not has_crop(typed, clause) or (has_weight(typed, clause) and not _is_punnet(typed, clause)):
        return False
    words = typed.words
    if (
        clause.form == ("stood",)
        and words[clause.verb_start - 1] in ("i", "we", "he", "she", "they")
        and (words[clause.verb_end : clause.verb_end + 1] and words[clause.verb_end] in PLACE_OPENERS)
    ):
        return False  # "I stood under the Old pear"
    is_object = any(
        typed.kind(i, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0] or i in typed.quotes
        for i in _before_small(typed, clause)
    )
    if not is_object and clause.particle is None and clause.start == clause.verb_start:
        return False  # "laid it round the tomatoes"
    spots = range(clause.verb_end, clause.end)
    return clause.particle is not None or any(
        words[i] in ("in", "into", "along", "round", "around", "under", "between", "among", "up", "out", "against", "at", "by", "beside")
        and (
            i + 1 >= clause.end or typed.breaks[i + 1]
            or any(typed.kind(j, Kind.BED)[0] or words[j] in IN_GROUND for j in range(i + 1, min(i + 4, clause.end)))
        )
        for i in spots
    ) or any(typed.breaks[i] and typed.kind(i, Kind.BED)[0] for i in spots)  # fmt: skip


def _is_punnet(typed: Typed, clause: Clause) -> bool:
    """ "chucked a punnet of lettuces in Bed 2": seedlings are sold so."""
    return not {"punnet", "tray", "flat"}.isdisjoint(typed.words[clause.verb_end : clause.verb_end + 3])


CURED = _words(
    "fleece net netting mesh enviromesh cloche cover sheet lid plastic tarp blanket curtain carpet membrane"
)


def is_cover_lifted(typed: Typed, clause: Clause) -> bool:
    """ "lifted the cloches off the lettuce", "rolled up the sides of the tunnel"."""
    words = typed.words[clause.verb_end : clause.end]
    if clause.first_word == "rolled":
        return bool({"side", "fleece", "mesh"} & set(words))
    if clause.first_word == "lifted" and "lid" in words[:3]:
        return True
    spot = next((k for k, w in enumerate(words[:5]) if w in CURED), None)
    return spot is not None and (
        clause.last_word == "off"
        or bool({"off", "from"} & set(words[spot + 1 : spot + 3]))
        or (words[spot + 1 : spot + 2] == ["back"] and len(words) == spot + 2)
    )


GREEN = _words("lupin phacelia mustard rye vetch tare clover buckwheat mustards")


def is_green_manure(typed: Typed, clause: Clause) -> bool:
    """ "dug the lupins into Top bed as green manure", "turned over the clover"."""
    words = typed.words[clause.verb_end : clause.end]
    is_green = any(a == "green" and b in ("manure", "manures") for a, b in itertools.pairwise(words))
    is_sown = bool(GREEN & set(words))
    return (is_green and bool({"into", "in", "under"} & set(words))) or (
        is_sown and bool({"into", "in", "under", "green"} & set(words))
    )


STUFF = nouns.MULCHES | nouns.MANURES | nouns.FEEDS | nouns.LIMES


def is_stuff_into(typed: Typed, clause: Clause) -> bool:
    """ "worked some compost into Tub 1"."""
    return object_is(STUFF)(typed, clause) and "into" in typed.words[clause.verb_end : clause.end]


def is_bed_fed(typed: Typed, clause: Clause) -> bool:
    """ "fed Top bed with chicken manure": no hen was fed."""
    i = clause.verb_end
    while i < clause.end and typed.words[i] in ARTICLES and not typed.names(i)[0]:
        i += 1
    return bool(typed.kind(i, Kind.BED)[0]) and "with" in typed.words[i : clause.end]


GLASS = _words(
    "frame greenhouse tunnel polytunnel glasshouse cloche lid vent window hoop coldframe conservatory door house"
)


def is_glass(typed: Typed, clause: Clause) -> bool:
    """ "opened the Cold frame", "shut the greenhouse for the night"."""
    i = clause.verb_end
    spots = range(i, min(i + 5, clause.end))
    has_bed = any(typed.kind(k, Kind.BED)[0] for k in range(clause.start, clause.end))
    return (
        has_bed
        and nouns.HIVE.isdisjoint(typed.words[clause.verb_end : clause.end])
        and any(typed.words[k] in GLASS or _is_glass_bed(typed, k) for k in spots)
        and not has_crop(typed, clause)
    )


def _is_glass_bed(typed: Typed, k: int) -> bool:
    size = typed.kind(k, Kind.BED)[0]
    return bool(GLASS & set(typed.words[k : k + size]))


def is_to_harden(typed: Typed, clause: Clause) -> bool:
    words = typed.words[clause.verb_end : clause.end]
    return any(words[k : k + 2] == ["harden", "off"] for k in range(len(words))) or (
        words[-2:] == ["to", "harden"] and "out" in words
    )


def is_bigger_pot(typed: Typed, clause: Clause) -> bool:
    """ "put the chillies into bigger pots", "gave the aubergines bigger pots"."""
    words = typed.words[clause.verb_end : clause.end]
    return any(
        (a in ("bigger", "larger") and b in ("pot", "module", "cell", "container"))
        or (a == "pot" and b == "size")
        for a, b in itertools.pairwise(words)
    )


def is_cans_of_water(typed: Typed, clause: Clause) -> bool:
    """ "gave the beans a can each"."""
    words = typed.words[clause.verb_end : clause.end]
    if not STUFF.isdisjoint(words):
        return False  # "a feed and a big drink"
    return any(
        w in ("can", "canful", "soak", "soaking", "drenching", "watering", "drink") for w in words
    ) and not {"feed", "bean"} & set(words[-1:])


def is_let_loose(typed: Typed, clause: Clause) -> bool:
    return object_is(
        _words("ladybird ladybug lacewing encarsia nematode amblyseius phytoseiulus cryptolaemus hedgehog")
    )(typed, clause)


STORES = _words("freezer store larder pantry cellar loft shed clamp basement garage attic")


def is_out_of_store(typed: Typed, clause: Clause) -> bool:
    """ "got a bag of beans out of the freezer", "took 2 kg from store"."""
    words = typed.words[clause.verb_end : clause.end]
    return any(
        words[k] in ("from", "of")
        and STORES & set(words[k + 1 : k + 3])
        and (words[k] == "from" or words[k - 1] == "out")
        for k in range(1, len(words))
    )


def in_ground(typed: Typed, clause: Clause) -> bool:
    words = typed.words[clause.verb_end : clause.end]
    return any(words[k : k + 3] == ["in", "the", "ground"] for k in range(len(words))) and has_crop(
        typed, clause
    )


def is_going(typed: Typed, clause: Clause) -> bool:
    words = typed.words[clause.verb_end : clause.end]
    return has_crop(typed, clause) and (
        "going" in words[1:] or words[-1:] == ["started"] or (clause.last_word == "going")
    )


def is_weather(typed: Typed, clause: Clause) -> bool:
    words = set(typed.words[clause.verb_end : clause.end])
    return (
        bool({"rain", "frost", "snow", "hail", "gauge"} & words)
        and not has_crop(typed, clause)
        and not nouns.TROUBLES.isdisjoint(words)
    )


JARRED = nouns.PRODUCTS - _words(
    "soup crumble pie cake bread curry stew crisp stock butter powder fruit-leather"
)


def is_kept_long(typed: Typed, clause: Clause) -> bool:
    return not JARRED.isdisjoint(typed.words[clause.verb_end : clause.end])


def to_supports(typed: Typed, clause: Clause) -> bool:
    words = set(typed.words[clause.verb_end : clause.end])
    return bool(
        {"stake", "cane", "string", "pole", "wire", "trellis", "support", "stick", "post", "wigwam"} & words
    ) and takes_them(typed, clause)


def is_soil_put(typed: Typed, clause: Clause) -> bool:
    return object_is(_words("soil earth"))(typed, clause) and has_crop(typed, clause)


def is_sprayed(typed: Typed, clause: Clause) -> bool:
    """ "gave the peach a spray with copper"."""
    words = set(typed.words[clause.verb_end : clause.end])
    return bool({"spray", "squirt", "spritz"} & words) or bool(nouns.TREATMENTS & words)


def is_hive_part(typed: Typed, clause: Clause) -> bool:
    return {"super", "honey"} <= set(typed.words) or "honey" in typed.words[clause.verb_end : clause.end]


def is_for_winter(typed: Typed, clause: Clause) -> bool:
    words = typed.words[clause.verb_end : clause.end]
    return "winter" in words and "for" in words and has_crop(typed, clause)


def is_wind_cover(typed: Typed, clause: Clause) -> bool:
    """ "wind had the cover off the tunnel": nothing is lost by it."""
    return trouble_first(typed, clause) and object_is(CURED)(typed, clause)


def in_the_heat(typed: Typed, clause: Clause) -> bool:
    """ "the seedlings cooked in the greenhouse"; not "roasted in the oven"."""
    words = typed.words[clause.verb_end : clause.end]
    before = typed.words[clause.start : clause.verb_start]
    has_first = any(typed.kind(i, Kind.CROP)[0] for i in range(clause.start, clause.verb_start)) or bool(
        {"seedling", "plant", "some", "leaf"} & set(before)
    )
    return has_first and bool(
        {"heat", "sun", "bush", "greenhouse", "frame", "tunnel", "propagator", "window", "windowsill", "vine"}
        & set(words)
    )


def in_litres(typed: Typed, clause: Clause) -> bool:
    return not {"litre", "liter", "l", "gallon", "pint", "quart", "bottle", "juice", "cider"}.isdisjoint(
        typed.words[clause.verb_end :]
    )
