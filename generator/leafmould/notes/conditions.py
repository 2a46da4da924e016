"""What stands beside a verb: its object, a weight, a bed, a crop, a seller.

Each function looks at the words of one clause and says yes or no; which meaning of a verb follows from that
stands in the table of `senses`.
"""

from __future__ import annotations

from collections.abc import Callable

from leafmould.notes.clause import Clause
from leafmould.notes.doers import trouble_first
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, PLACE_OPENERS, REMARK_OPENERS
from leafmould.values.names import Kind


def object_words(typed: Typed, clause: Clause) -> range:
    """The words right behind the verb, to the first break."""
    if clause.verb_end >= clause.end:
        return range(0)
    return range(clause.verb_end, min(typed.stops[clause.verb_end], clause.end))


def names_any(typed: Typed, clause: Clause, *kinds: Kind) -> bool:
    return any(
        (size := typed.kind(i, *kinds)[0]) and i + size <= clause.end for i in range(clause.start, clause.end)
    ) or (Kind.CROP in kinds and any(clause.start <= i < clause.end for i in typed.quotes))


def one_of(words: frozenset[str], *, before: bool = False) -> Callable[[Typed, Clause], bool]:
    """Whether one of these words is in the object, and no known name hides it."""

    def test(typed: Typed, clause: Clause) -> bool:
        if words.isdisjoint(typed.words):
            return False
        hidden = -1
        spots = [*object_words(typed, clause), *(range(clause.start, clause.verb_start) if before else ())]
        for i in spots:
            if i < hidden:
                continue
            size, known = typed.names(i)
            if (
                typed.words[i] in words
                and size <= 1
                and not any(k.kind in (Kind.BED, Kind.PART) for k in known)
            ):
                return True
            if size > 1 and known[0].kind is not Kind.VERB:
                hidden = i + size
        return False

    return test


def has_weight(typed: Typed, clause: Clause) -> bool:
    units = nouns.WEIGHTS | nouns.VOLUMES | nouns.HOLDERS - {"tub", "pot", "plate", "box", "bin"}
    return any(
        (nouns.UNITS.get(typed.words[i]) or typed.words[i]) in units and i > 0
        and (typed.words[i - 1].isdigit() or typed.words[i - 1] in nouns.NUMBERS or typed.words[i - 1] in nouns.FRACTION_WORDS or typed.words[i - 1] == "half")
        for i in range(clause.start, clause.end)
    )  # fmt: skip


def has_crop(typed: Typed, clause: Clause) -> bool:
    return names_any(typed, clause, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)


def from_bed(typed: Typed, clause: Clause) -> bool:
    for i in range(clause.verb_end, clause.end):
        if typed.words[i] in ("from", "off") and any(
            typed.kind(j, Kind.BED)[0] for j in range(i + 1, min(i + 3, clause.end))
        ):
            return True
    return False


WILD = frozenset(
    {
        "hedge",
        "hedgerow",
        "lane",
        "wood",
        "tree",
        "bush",
        "plot",
        "allotment",
        "garden",
        "field",
        "verge",
        "towpath",
        "riverbank",
    }
)


def from_outdoors(typed: Typed, clause: Clause) -> bool:
    """ "got 3 kg damsons from the hedge"; not "from the garden centre"."""
    words = typed.words
    return any(
        words[i] in ("from", "off")
        and (k := i + 1 + (words[i + 1] in ARTICLES)) < clause.end
        and words[k] in WILD
        and (
            k + 1 >= clause.end
            or typed.breaks[k + 1]
            or words[k + 1] not in ("centre", "center", "shop", "market", "show")
        )
        for i in range(clause.verb_end, clause.end - 1)
    )


def seller(typed: Typed, clause: Clause) -> bool:
    spots = range(clause.verb_end, clause.end)
    return not from_bed(typed, clause) and any(
        typed.words[i] in ("from", "for")
        or (typed.words[i] == "packet" and not from_bed(typed, clause))
        or any(c in typed.gaps[i] for c in "£$€")
        for i in spots
    )


def is_raised(typed: Typed, clause: Clause) -> bool:
    for i in range(clause.start, clause.end):
        for size in range(min(nouns.LONGEST_RAISED, clause.end - i), 0, -1):
            if (
                tuple(typed.words[i : i + size]) in nouns.RAISED_IN
                and not typed.names(i + (typed.words[i] in ("in", "on", "under")))[0]
            ):
                return True
    return has_any(typed, clause, frozenset({"module", "trainer", "propagator", "windowsill"}))


def has_any(typed: Typed, clause: Clause, words: frozenset[str]) -> bool:
    return any(typed.words[i] in words and not typed.names(i)[0] for i in range(clause.start, clause.end))


def names_tubers(typed: Typed, clause: Clause) -> bool:
    """Whether potatoes are planted here, by any name."""
    known = [k for i in range(clause.start, clause.end) for k in typed.names(i)[1]]
    return any(k.key == "potato" or "potato" in k.of for k in known)


def is_seed(typed: Typed, clause: Clause) -> bool:
    if clause.form == ("planted",) and names_tubers(typed, clause):
        return False  # "Kerr's Pinks planted, 2 stone seed"
    for i in range(clause.verb_end, clause.end):
        if (
            typed.words[i] == "seed"
            and not (i + 1 < clause.end and typed.words[i + 1] in ("potato", "garlic"))
            and "seed" not in typed.words[i + 1 : i + 1]
        ):
            return typed.names(i)[0] <= 1 and "from" not in typed.words[max(clause.verb_end, i - 2) : i]
    return False


def is_away(typed: Typed, clause: Clause) -> bool:
    return clause.particle is not None or any(
        typed.words[i] == "away" for i in range(clause.verb_end, clause.end)
    )


hens = one_of(nouns.HENS, before=True)


def hens_onto(typed: Typed, clause: Clause) -> bool:
    return (
        hens(typed, clause)
        and any(
            typed.words[i] in ("onto", "into") or (typed.words[i] in ("on", "in") and i + 1 < clause.end)
            for i in range(clause.verb_end, clause.end)
        )
        and not any(typed.words[i] == "off" for i in range(clause.verb_end, clause.end))
    )


def is_trouble(typed: Typed, clause: Clause) -> bool:
    """Whether a pest, a disease or weather is what was picked, seen, killed: the first thing named."""
    for i in object_words(typed, clause):
        word = typed.words[i]
        if word in nouns.TROUBLES and typed.names(i)[0] <= 1:
            return True
        if word == "cabbage" and typed.words[i + 1 : i + 2] == ["white"]:
            return True
        if (
            typed.names(i)[0]
            or word in REMARK_OPENERS
            or (word in PLACE_OPENERS and (word != "of" or typed.words[i + 1 : i + 2] == ["something"]))
        ):
            break
    return clause.form in APPEARINGS and trouble_first(typed, clause)


APPEARINGS = frozenset({("appeared",), ("showing",), ("arrived",)})


def cuttings(typed: Typed, clause: Clause) -> bool:
    is_set_out = clause.form == ("put",) and names_any(typed, clause, Kind.BED)
    words = (
        {"cutting"} if is_set_out else {"cutting", "slip", "runner"}
    )  # "put the runners in Tub 1": planted
    return one_of(frozenset(words))(typed, clause)


def roots(typed: Typed, clause: Clause) -> bool:
    for i in range(clause.start, clause.end):
        size, known = typed.kind(i, Kind.CROP, Kind.CROP_GROUP)
        if size and any(
            w in nouns.ROOTS for k in known for w in (*k.key.split("-"), *typed.words[i : i + size])
        ):
            return True
    return False


def has_amount(typed: Typed, clause: Clause) -> bool:
    return any(
        typed.words[i].isdigit()
        or typed.words[i]
        in ("half", "rest", "them", "it", "lot", "some", "most", "all", "few", "several", "couple")
        for i in object_words(typed, clause)
        if typed.names(max(i - 1, 0))[0] < 2  # the 1 of "Tub 1"
    )


def _first_thing(typed: Typed, clause: Clause) -> int:
    """The first word of the object that is more than an article, a number or a describing word."""
    i = clause.verb_end
    while (
        i < clause.end
        and not typed.names(i)[0]
        and (typed.words[i] in nouns.SELDOM_VARIETY or typed.words[i].isdigit())
    ):
        i += 1
    return i


def is_bare(typed: Typed, clause: Clause) -> bool:
    return clause.verb_end >= clause.end or typed.breaks[clause.verb_end]


def is_bed_first(typed: Typed, clause: Clause) -> bool:
    if clause.start < clause.verb_start and is_bare(typed, clause):
        return names_any(typed, clause, Kind.BED)
    return bool(typed.kind(_first_thing(typed, clause), Kind.BED)[0])


def is_stranger(typed: Typed, clause: Clause) -> bool:
    """ "cleared snow from Arch": a thing nobody knows, and a bed that must not be ended by it."""
    i = _first_thing(typed, clause)
    if (
        i >= clause.end
        or typed.breaks[i]
        or typed.names(i)[0]
        or i in typed.quotes
        or typed.words[i] in PLACE_OPENERS
    ):
        return False
    is_vague = (
        typed.words[i] in nouns.LONGEST_VAGUE
        or typed.words[i] in nouns.COUNT_NOUNS
        or typed.words[i] in ("everything", "all", "bed")
    )
    return (
        not is_vague
        and not has_crop(typed, clause)
        and names_any(typed, clause, Kind.BED)
        and clause.start == clause.verb_start
    )


def is_furniture(typed: Typed, clause: Clause) -> bool:
    """ "cleared the bean poles", "took down the pea netting": no beans, no peas."""
    i = _first_thing(typed, clause)
    size = typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] if i < clause.end else 0
    end = i + size
    if not size or end >= clause.end or typed.breaks[end] or typed.words[end] not in nouns.FURNITURE:
        return False
    return typed.words[end] != "cane" or typed.words[i] not in nouns.CANE_FRUIT


def is_yield(typed: Typed, clause: Clause) -> bool:
    """ "the tree gave 41 apples", "it gave us two pounds"."""
    begin = next((i for i in range(clause.verb_start, clause.start, -1) if typed.breaks[i]), clause.start)
    before = typed.words[begin : clause.verb_start]
    if has_weight(typed, clause) and any(
        typed.kind(i, Kind.BED)[0] for i in range(clause.start, clause.verb_start)
    ):
        return True  # "Old pear gave us two baskets"
    return bool({"it", "they", "tree", "plant", "bush", "row"} & set(before)) and (
        has_weight(typed, clause) or has_crop(typed, clause)
    )
