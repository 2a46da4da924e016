"""Which action a verb of several meanings is, by what stands beside it: cut lettuce, cut back mint.

Reads SENSES of the verb table: the first condition that fits gives the action. "remark" means the line
tells of something no action is kept for; "ask A or B" reads as A, with a question.
"""

from __future__ import annotations

from collections.abc import Callable

from leafmould.notes.about import ABOUT
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
from leafmould.notes.conditions import (
    cuttings,
    from_bed,
    from_outdoors,
    has_amount,
    has_any,
    has_crop,
    has_weight,
    hens,
    hens_onto,
    is_away,
    is_bare,
    is_bed_first,
    is_furniture,
    is_raised,
    is_seed,
    is_stranger,
    is_trouble,
    is_yield,
    names_any,
    object_words,
    one_of,
    roots,
    seller,
)
from leafmould.notes.doers import DISTURBANCES, DONE_BY_PEOPLE, by_trouble, trouble_first
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.verbs import SENSE_OF
from leafmould.values.names import Kind

BY_HAND = frozenset(
    {("cut",), ("picked",), ("harvested",), ("lifted",), ("pruned",), ("pruned", "back"), ("salvaged",)}
)
"""What no slug does: "slugs had half, cut the 14 decent heads"."""
SHARE_WORDS = frozenset({"half", "third", "quarter", "most", "lot", "rest"})
DOERS = nouns.TROUBLES | nouns.HENS


def action_of(typed: Typed, clause: Clause) -> tuple[str, str | None]:
    """The action, and the other one it might be where that has to be asked; "remark" for none."""
    found = _found(typed, clause)
    if (
        found[0] == "lost"
        and clause.form == ("got",)
        and not has_crop(typed, clause)
        and SHARE_WORDS.isdisjoint(typed.words[clause.verb_end : clause.verb_end + 3])
    ):
        return "remark", None
    if not clause.is_by_trouble and DOERS.isdisjoint(typed.words):
        return found
    if (
        found[0] in DONE_BY_PEOPLE
        and clause.first_word != "out"
        and not (clause.is_by_trouble and clause.form in BY_HAND)
        and (trouble_first(typed, clause) or by_trouble(typed, clause))
    ):
        return "lost", None
    if found[0] == "came up" and trouble_first(typed, clause):
        return "saw", None  # "club root has shown itself"
    if found[0] in DISTURBANCES and clause.first_word != "propped" and trouble_first(typed, clause):
        return "saw", None
    return found


GOT = frozenset({("got",), ("had",), ("got", "in"), ("got", "out"), ("get",)})
GOT_DONE = {
    "sown": "sowed", "sowed": "sowed", "planted": "planted", "picked": "picked", "harvested": "picked", "weeded": "weeded", "watered": "watered", "mulched": "mulched",
    "fed": "fed", "pruned": "pruned", "staked": "staked", "netted": "netted", "covered": "covered", "thinned": "thinned", "cleared": "cleared", "limed": "limed", "manured": "manured",
    "hilled": "earthed up", "earthed": "earthed up", "ridged": "earthed up", "tied": "tied in", "potted": "potted on", "sprayed": "treated", "frozen": "put up", "bottled": "put up", "divided": "divided", "lifted": "picked", "hoed": "weeded", "caned": "staked", "transplanted": "planted",
}  # fmt: skip


def _got_done(typed: Typed, clause: Clause) -> str | None:
    """ "got the leeks planted in Bed 3": what was got done."""
    for i in range(clause.verb_end, clause.end):
        if typed.breaks[i] and i > clause.verb_end:
            return None
        if (verb := GOT_DONE.get(typed.words[i])) is not None and not typed.names(i)[0]:
            clause.particle = i
            return verb
    return None


def _found(typed: Typed, clause: Clause) -> tuple[str, str | None]:
    if (
        clause.form in GOT
        and (done := _got_done(typed, clause)) is not None
        and not trouble_first(typed, clause)
    ):
        return done, None
    if clause.verb is not None:
        return clause.verb, None
    for condition, verb in SENSE_OF[clause.form]:
        if CONDITIONS[condition](typed, clause):
            if verb.startswith("ask "):
                first, _, other = verb[4:].partition(" or ")
                return first, other
            return verb, None
    return "remark", None


CARE = frozenset({"sideshooted", "shooted", "pinched", "staked", "caned", "watered", "fed", "mulched", "planted", "thinned", "weeded", "pruned"})  # fmt: skip
CAGED = frozenset({"tomato", "tom", "tomatoe", "pepper", "chilli", "aubergine", "eggplant", "cucumber", "peony", "dahlia", "tomatillo"})  # fmt: skip
""" "caged the tomatoes": held up, where gooseberries are caged against birds."""
ANIMALS = one_of(nouns.HENS | frozenset({"bee", "rabbit", "worm", "chook", "animal", "sheep"}))
DROPPINGS = nouns.MANURES | frozenset({"pellet", "manure", "bedding", "compost", "feed"})


def _is_droppings(typed: Typed, clause: Clause) -> bool:
    """ "fed the roses with chicken pellets": no chickens were fed."""
    spots = [i for i in range(clause.verb_end, clause.end) if typed.words[i] in ANIMAL_WORDS]
    return bool(spots) and all(
        typed.words[i + 1 : i + 2] != [] and typed.words[i + 1] in DROPPINGS for i in spots
    )


ANIMAL_WORDS = nouns.HENS | frozenset({"rabbit", "worm", "chook", "sheep"})
PAPER = frozenset({"paper", "towel", "tissue", "kitchen"})


CONDITIONS: dict[str, Callable[[Typed, Clause], bool]] = {
    "else": lambda typed, clause: True,
    **ABOUT,
    "yield": is_yield,
    "branches": one_of(frozenset({"branch", "limb"})),
    "on paper": lambda typed, clause: not PAPER.isdisjoint(typed.words[clause.start : clause.end]),
    "in store": lambda typed, clause: has_any(
        typed, clause, frozenset({"sack", "store", "stored", "bag", "shed", "cellar", "cupboard"})
    ),
    "cover crop": lambda typed, clause: (
        not nouns.COVER_CROPS.isdisjoint(typed.words[clause.verb_end : clause.end])
    ),
    "seed raised": lambda typed, clause: (
        is_seed(typed, clause)
        and has_any(
            typed, clause, frozenset({"pot", "module", "tray", "cell", "propagator", "windowsill", "sill"})
        )
    ),
    "indoors": one_of(frozenset({"indoor", "inside", "undercover"})),
    "seed first": lambda typed, clause: bool(
        {"bulb", "clove", "seed", "packet"} & set(typed.words[clause.start : clause.verb_start])
    ),
    "pest eggs": is_pest_eggs,
    "care before": lambda typed, clause: (
        clause.start > 0 and is_bare(typed, clause) and not CARE.isdisjoint(typed.words[: clause.start])
    ),
    "caged plant": lambda typed, clause: not CAGED.isdisjoint(typed.words),
    "for something": for_something,
    "given on": given_on,
    "for seed": followed_by("for", "seed"),
    "cover off": lambda typed, clause: (
        CONDITIONS["cover"](typed, clause) and "off" in typed.words[clause.verb_end : clause.end]
    ),
    "on heap": lambda typed, clause: any(
        typed.words[i] in ("compost", "heap")
        and (
            typed.words[i - 1] in ("on", "to", "in", "onto")
            or (typed.words[i - 1] == "the" and typed.words[i - 2] in ("on", "to", "in", "into", "onto"))
            or (typed.words[i + 1 : i + 2] in (["bay"], ["bin"], ["heap"]) and typed.words[i - 1] != "old")
        )
        for i in range(clause.verb_end + 1, clause.end)
    ),
    "fruit": one_of(frozenset({"fruit", "seed", "pod", "flower", "bud"})),
    "stringed": lambda typed, clause: any(w in nouns.STRUNG for w in typed.words),
    "cocoons": one_of(frozenset({"cocoon", "swarm", "worm"})),
    "treatment": one_of(nouns.TREATMENTS),
    "canes": lambda typed, clause: any(typed.words[i] in nouns.CANES for i in object_words(typed, clause)),
    "tops": one_of(nouns.TOPS),
    "wrapping": one_of(nouns.WRAPPINGS),
    "crop": has_crop,
    "bed": lambda typed, clause: names_any(typed, clause, Kind.BED),
    "place": lambda typed, clause: names_any(typed, clause, Kind.BED),
    "root": roots,
    "weight": has_weight,
    "amount": has_amount,
    "from bed": lambda typed, clause: from_bed(typed, clause) or from_outdoors(typed, clause),
    "seller": seller,
    "raised": is_raised,
    "seed": is_seed,
    "away": is_away,
    "crop first": lambda typed, clause: any(
        typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] for i in range(clause.start, clause.verb_start)
    ),
    "to us": lambda typed, clause: (
        clause.verb_end < clause.end and typed.words[clause.verb_end] in ("me", "us")
    ),
    "off plants": off_plants,
    "fallen": has_fallen,
    "paper": one_of(frozenset({"paper", "newspaper", "tissue", "foil", "clingfilm"})),
    "unharmed": one_of(frozenset({"fine", "ok", "okay", "unharmed", "unscathed", "well", "winter", "frost"})),
    "flower opened": is_flower_opened,
    "hens given": hens_given,
    "mulch round": is_mulch_round,
    "plant fed": is_plant_fed,
    "freezer": one_of(frozenset({"freezer"})),
    "larder": one_of(frozenset({"larder", "pantry", "cupboard"})),
    "store": one_of(frozenset({"store", "cellar", "storage", "clamp", "loft"})),
    "heap": one_of(frozenset({"heap", "bin", "compost-heap"})),
    "slug pellets": lambda typed, clause: (
        CONDITIONS["pellets"](typed, clause) and "slug" in typed.words[clause.verb_end : clause.end]
    ),
    "nematodes": one_of(frozenset({"nematode"}), before=True),
    "plants": lambda typed, clause: (
        not has_weight(typed, clause)
        and one_of(frozenset({"plant", "vine", "haulm", "stalk", "stump", "stem"}))(typed, clause)
    ),
    "them": lambda typed, clause: typed.words[clause.verb_end : clause.verb_end + 1] in (["them"], ["it"]),
    "bed first": is_bed_first,
    "bare": is_bare,
    "hens first": lambda typed, clause: any(
        w in nouns.HENS for w in typed.words[clause.start : clause.verb_start]
    ),
    "stranger": is_stranger,
    "furniture": is_furniture,
    "cuttings": cuttings,
    "trouble first": trouble_first,
    "trouble": is_trouble,
    "animals": lambda typed, clause: not _is_droppings(typed, clause) and ANIMALS(typed, clause),
    "hens": hens,
    "hens onto": hens_onto,
    "eggs": one_of(nouns.EGGS),
    "honey": one_of(nouns.HONEY),
    "hive": one_of(nouns.HIVE),
    "cover": one_of(nouns.COVERS),
    "net": one_of(nouns.NETS),
    "support": one_of(nouns.SUPPORTS),
    "mulch": one_of(nouns.MULCHES),
    "manure": one_of(nouns.MANURES),
    "lime": one_of(nouns.LIMES),
    "feed": one_of(nouns.FEEDS),
    "drink": one_of(nouns.DRINKS),
    "trim": one_of(nouns.TRIMS),
    "hoe": one_of(nouns.HOES),
    "pellets": one_of(nouns.PELLETS),
    "amendment": one_of(nouns.AMENDMENTS),
    "suckers": one_of(nouns.SUCKERS),
    "leaves": one_of(nouns.LEAVES),
    "weeds": one_of(nouns.WEEDS),
    "product": one_of(nouns.PRODUCTS),
    "jar": one_of(frozenset({"jar", "bottle", "tin", "bag", "packet", "tub"})),
    "meal": one_of(frozenset({"breakfast", "lunch", "dinner", "tea", "supper"})),
    "soil": one_of(frozenset({"soil", "ph"})),
    "chit": one_of(frozenset({"chit", "chitting", "harden", "soak", "soaking"})),
    "overnight": one_of(frozenset({"overnight", "hour", "hr", "hrs", "before"})),
    "grass": one_of(
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
    "seedling": one_of(frozenset({"seedling", "alive"})),
    "leek": one_of(frozenset({"leek", "celery", "chicory", "endive", "cardoon"})),
}
