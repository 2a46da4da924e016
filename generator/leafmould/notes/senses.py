"""Which action a verb of several meanings is, by what stands beside it: cut lettuce, cut back mint.

Reads SENSES of the verb table: the first condition that fits gives the action. "remark" means the line
tells of something no action is kept for; "ask A or B" reads as A, with a question.
"""

from __future__ import annotations

from collections.abc import Callable

from leafmould.notes.beside import (
    followed_by,
    for_something,
    given_on,
    has_fallen,
    hens_given,
    is_flower_opened,
    is_mulch_round,
    is_pest_eggs,
    is_plant_fed,
    off_plants,
)
from leafmould.notes.clause import Clause
from leafmould.notes.doers import DISTURBANCES, DONE_BY_PEOPLE, by_trouble, trouble_first
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import PLACE_OPENERS, REMARK_OPENERS
from leafmould.notes.words.verbs import SENSE_OF
from leafmould.values.names import Kind


def action_of(typed: Typed, clause: Clause) -> tuple[str, str | None]:
    """The action, and the other one it might be where that has to be asked; "remark" for none."""
    found = _found(typed, clause)
    if found[0] == "lost" and clause.form == ("got",) and not _has_crop(typed, clause):
        return "remark", None
    if found[0] in DONE_BY_PEOPLE and (trouble_first(typed, clause) or by_trouble(typed, clause)):
        return "lost", None
    if found[0] in DISTURBANCES and trouble_first(typed, clause):
        return "saw", None
    return found


def _found(typed: Typed, clause: Clause) -> tuple[str, str | None]:
    if clause.verb is not None:
        return clause.verb, None
    for condition, verb in SENSE_OF[clause.form]:
        if CONDITIONS[condition](typed, clause):
            if verb.startswith("ask "):
                first, _, other = verb[4:].partition(" or ")
                return first, other
            return verb, None
    return "remark", None


def _object(typed: Typed, clause: Clause) -> range:
    """The words right behind the verb, to the first break."""
    if clause.verb_end >= clause.end:
        return range(0)
    return range(clause.verb_end, min(typed.stops[clause.verb_end], clause.end))


def _names(typed: Typed, clause: Clause, *kinds: Kind) -> bool:
    return any(
        (size := typed.kind(i, *kinds)[0]) and i + size <= clause.end for i in range(clause.start, clause.end)
    ) or (Kind.CROP in kinds and any(clause.start <= i < clause.end for i in typed.quotes))


def _one_of(words: frozenset[str], *, before: bool = False) -> Callable[[Typed, Clause], bool]:
    """Whether one of these words is in the object, and no known name hides it."""

    def test(typed: Typed, clause: Clause) -> bool:
        hidden = -1
        spots = [*_object(typed, clause), *(range(clause.start, clause.verb_start) if before else ())]
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


def _has_weight(typed: Typed, clause: Clause) -> bool:
    units = nouns.WEIGHTS | nouns.VOLUMES | nouns.HOLDERS - {"tub", "pot", "plate", "box", "bin"}
    return any(
        (nouns.UNITS.get(typed.words[i]) or typed.words[i]) in units and i > 0
        and (typed.words[i - 1].isdigit() or typed.words[i - 1] in nouns.NUMBERS or typed.words[i - 1] in nouns.FRACTION_WORDS or typed.words[i - 1] == "half")
        for i in range(clause.start, clause.end)
    )  # fmt: skip


def _has_crop(typed: Typed, clause: Clause) -> bool:
    return _names(typed, clause, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)


def _from_bed(typed: Typed, clause: Clause) -> bool:
    for i in range(clause.verb_end, clause.end):
        if typed.words[i] in ("from", "off") and any(
            typed.kind(j, Kind.BED)[0] for j in range(i + 1, min(i + 3, clause.end))
        ):
            return True
    return False


def _seller(typed: Typed, clause: Clause) -> bool:
    spots = range(clause.verb_end, clause.end)
    return not _from_bed(typed, clause) and any(
        typed.words[i] in ("from", "for")
        or (typed.words[i] == "packet" and not _from_bed(typed, clause))
        or any(c in typed.gaps[i] for c in "£$€")
        for i in spots
    )


def _is_raised(typed: Typed, clause: Clause) -> bool:
    for i in range(clause.start, clause.end):
        for size in range(min(nouns.LONGEST_RAISED, clause.end - i), 0, -1):
            if (
                tuple(typed.words[i : i + size]) in nouns.RAISED_IN
                and not typed.names(i + (typed.words[i] in ("in", "on", "under")))[0]
            ):
                return True
    return _has_any(typed, clause, frozenset({"module", "trainer", "propagator", "windowsill"}))


def _has_any(typed: Typed, clause: Clause, words: frozenset[str]) -> bool:
    return any(typed.words[i] in words and not typed.names(i)[0] for i in range(clause.start, clause.end))


def _is_seed(typed: Typed, clause: Clause) -> bool:
    for i in range(clause.verb_end, clause.end):
        if (
            typed.words[i] == "seed"
            and not (i + 1 < clause.end and typed.words[i + 1] in ("potato", "garlic"))
            and "seed" not in typed.words[i + 1 : i + 1]
        ):
            return typed.names(i)[0] <= 1 and "from" not in typed.words[max(clause.verb_end, i - 2) : i]
    return False


def _is_away(typed: Typed, clause: Clause) -> bool:
    return clause.particle is not None or any(
        typed.words[i] == "away" for i in range(clause.verb_end, clause.end)
    )


def _hens_onto(typed: Typed, clause: Clause) -> bool:
    return (
        CONDITIONS["hens"](typed, clause)
        and any(
            typed.words[i] in ("onto", "into") or (typed.words[i] in ("on", "in") and i + 1 < clause.end)
            for i in range(clause.verb_end, clause.end)
        )
        and not any(typed.words[i] == "off" for i in range(clause.verb_end, clause.end))
    )


def _is_trouble(typed: Typed, clause: Clause) -> bool:
    """Whether a pest, a disease or weather is what was picked, seen, killed: the first thing named."""
    for i in _object(typed, clause):
        if typed.words[i] in nouns.TROUBLES and typed.names(i)[0] <= 1:
            return True
        if typed.names(i)[0] or typed.words[i] in REMARK_OPENERS or typed.words[i] in PLACE_OPENERS:
            break
    return clause.form in APPEARINGS and trouble_first(typed, clause)


APPEARINGS = frozenset({("appeared",), ("showing",), ("arrived",)})


def _cuttings(typed: Typed, clause: Clause) -> bool:
    return _one_of(frozenset({"cutting", "slip", "runner"}))(typed, clause)


def _roots(typed: Typed, clause: Clause) -> bool:
    for i in range(clause.start, clause.end):
        size, known = typed.kind(i, Kind.CROP, Kind.CROP_GROUP)
        if size and any(
            w in nouns.ROOTS for k in known for w in (*k.key.split("-"), *typed.words[i : i + size])
        ):
            return True
    return False


def _has_amount(typed: Typed, clause: Clause) -> bool:
    return any(
        typed.words[i].isdigit()
        or typed.words[i]
        in ("half", "rest", "them", "it", "lot", "some", "most", "all", "few", "several", "couple")
        for i in _object(typed, clause)
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


def _is_bare(typed: Typed, clause: Clause) -> bool:
    return clause.verb_end >= clause.end or typed.breaks[clause.verb_end]


def _is_bed_first(typed: Typed, clause: Clause) -> bool:
    if clause.start < clause.verb_start and _is_bare(typed, clause):
        return _names(typed, clause, Kind.BED)
    return bool(typed.kind(_first_thing(typed, clause), Kind.BED)[0])


def _is_stranger(typed: Typed, clause: Clause) -> bool:
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
        and not _has_crop(typed, clause)
        and _names(typed, clause, Kind.BED)
        and clause.start == clause.verb_start
    )


def _is_yield(typed: Typed, clause: Clause) -> bool:
    """ "the tree gave 41 apples", "it gave us two pounds"."""
    before = typed.words[clause.start : clause.verb_start]
    return bool({"it", "they", "tree", "plant", "bush", "row"} & set(before)) and (
        _has_weight(typed, clause) or _has_crop(typed, clause)
    )


PAPER = frozenset({"paper", "towel", "tissue", "kitchen"})


CONDITIONS: dict[str, Callable[[Typed, Clause], bool]] = {
    "else": lambda typed, clause: True,
    "yield": _is_yield,
    "branches": _one_of(frozenset({"branch", "limb"})),
    "on paper": lambda typed, clause: not PAPER.isdisjoint(typed.words[clause.start : clause.end]),
    "in store": lambda typed, clause: _has_any(
        typed, clause, frozenset({"sack", "store", "bag", "shed", "cellar", "cupboard"})
    ),
    "cover crop": lambda typed, clause: (
        not nouns.COVER_CROPS.isdisjoint(typed.words[clause.verb_end : clause.end])
    ),
    "seed raised": lambda typed, clause: (
        _is_seed(typed, clause)
        and _has_any(
            typed, clause, frozenset({"pot", "module", "tray", "cell", "propagator", "windowsill", "sill"})
        )
    ),
    "indoors": _one_of(frozenset({"indoor", "inside", "undercover"})),
    "seed first": lambda typed, clause: bool(
        {"bulb", "clove", "seed", "packet"} & set(typed.words[clause.start : clause.verb_start])
    ),
    "pest eggs": is_pest_eggs,
    "for something": for_something,
    "given on": given_on,
    "for seed": followed_by("for", "seed"),
    "cover off": lambda typed, clause: (
        CONDITIONS["cover"](typed, clause) and "off" in typed.words[clause.verb_end : clause.end]
    ),
    "on heap": lambda typed, clause: any(
        typed.words[i] in ("compost", "heap") and typed.words[i - 1] in ("on", "the", "to", "in", "onto")
        for i in range(clause.verb_end + 1, clause.end)
    ),
    "fruit": _one_of(frozenset({"fruit", "seed", "pod", "flower", "bud"})),
    "stringed": lambda typed, clause: any(w in nouns.STRUNG for w in typed.words),
    "cocoons": _one_of(frozenset({"cocoon", "swarm", "worm"})),
    "treatment": _one_of(nouns.TREATMENTS),
    "canes": lambda typed, clause: any(typed.words[i] in nouns.CANES for i in _object(typed, clause)),
    "tops": _one_of(nouns.TOPS),
    "wrapping": _one_of(nouns.WRAPPINGS),
    "crop": _has_crop,
    "bed": lambda typed, clause: _names(typed, clause, Kind.BED),
    "place": lambda typed, clause: _names(typed, clause, Kind.BED),
    "root": _roots,
    "weight": _has_weight,
    "amount": _has_amount,
    "from bed": _from_bed,
    "seller": _seller,
    "raised": _is_raised,
    "seed": _is_seed,
    "away": _is_away,
    "crop first": lambda typed, clause: any(
        typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] for i in range(clause.start, clause.verb_start)
    ),
    "to us": lambda typed, clause: (
        clause.verb_end < clause.end and typed.words[clause.verb_end] in ("me", "us")
    ),
    "off plants": off_plants,
    "fallen": has_fallen,
    "paper": _one_of(frozenset({"paper", "newspaper", "tissue", "foil", "clingfilm"})),
    "unharmed": _one_of(
        frozenset({"fine", "ok", "okay", "unharmed", "unscathed", "well", "winter", "frost"})
    ),
    "flower opened": is_flower_opened,
    "hens given": hens_given,
    "mulch round": is_mulch_round,
    "plant fed": is_plant_fed,
    "freezer": _one_of(frozenset({"freezer"})),
    "larder": _one_of(frozenset({"larder", "pantry", "cupboard"})),
    "store": _one_of(frozenset({"store", "cellar", "storage", "clamp", "loft"})),
    "heap": _one_of(frozenset({"heap", "bin", "compost-heap"})),
    "slug pellets": lambda typed, clause: (
        CONDITIONS["pellets"](typed, clause) and "slug" in typed.words[clause.verb_end : clause.end]
    ),
    "nematodes": _one_of(frozenset({"nematode"}), before=True),
    "plants": lambda typed, clause: (
        not _has_weight(typed, clause)
        and _one_of(frozenset({"plant", "vine", "haulm", "stalk", "stump", "stem"}))(typed, clause)
    ),
    "them": lambda typed, clause: typed.words[clause.verb_end : clause.verb_end + 1] in (["them"], ["it"]),
    "bed first": _is_bed_first,
    "bare": _is_bare,
    "hens first": lambda typed, clause: any(
        w in nouns.HENS for w in typed.words[clause.start : clause.verb_start]
    ),
    "stranger": _is_stranger,
    "cuttings": _cuttings,
    "trouble first": trouble_first,
    "trouble": _is_trouble,
    "animals": _one_of(nouns.HENS | frozenset({"bee", "rabbit", "worm", "chook", "animal", "sheep"})),
    "hens": _one_of(nouns.HENS, before=True),
    "hens onto": _hens_onto,
    "eggs": _one_of(nouns.EGGS),
    "honey": _one_of(nouns.HONEY),
    "hive": _one_of(nouns.HIVE),
    "cover": _one_of(nouns.COVERS),
    "net": _one_of(nouns.NETS),
    "support": _one_of(nouns.SUPPORTS),
    "mulch": _one_of(nouns.MULCHES),
    "manure": _one_of(nouns.MANURES),
    "lime": _one_of(nouns.LIMES),
    "feed": _one_of(nouns.FEEDS),
    "drink": _one_of(nouns.DRINKS),
    "trim": _one_of(nouns.TRIMS),
    "hoe": _one_of(nouns.HOES),
    "pellets": _one_of(nouns.PELLETS),
    "amendment": _one_of(nouns.AMENDMENTS),
    "suckers": _one_of(nouns.SUCKERS),
    "leaves": _one_of(nouns.LEAVES),
    "weeds": _one_of(nouns.WEEDS),
    "product": _one_of(nouns.PRODUCTS),
    "jar": _one_of(frozenset({"jar", "bottle", "tin", "bag", "packet", "tub"})),
    "meal": _one_of(frozenset({"breakfast", "lunch", "dinner", "tea", "supper"})),
    "soil": _one_of(frozenset({"soil", "ph"})),
    "chit": _one_of(frozenset({"chit", "chitting", "harden"})),
    "grass": _one_of(
        frozenset(
            {
                "grass",
                "lawn",
                "hedge",
                "path",
                "edge",
                "string",
                "wood",
                "log",
                "cane",
                "pole",
                "stick",
                "sod",
                "turf",
            }
        )
    ),
    "seedling": _one_of(frozenset({"seedling", "alive"})),
    "leek": _one_of(frozenset({"leek", "celery", "chicory", "endive", "cardoon"})),
}
