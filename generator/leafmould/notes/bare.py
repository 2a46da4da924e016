"""Lines that name a crop and how much, or that it is in or out, and no verb: "leeks in, 40", "2 kg peas, Arch".

Asked only where no verb was found. What is in was planted, a root that is out was lifted; an amount alone
is read as a picking, with a question.
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.said_first import TAKERS
from leafmould.notes.signs import is_arrow
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ABOUT, ARTICLES, BEING, PLACE_OPENERS, TITLES
from leafmould.notes.words.verbs import GERUNDS
from leafmould.values.names import Kind
from leafmould.values.when import When

SET_OUT = frozenset(
    {
        "set",
        "clove",
        "plant",
        "seedling",
        "tuber",
        "crown",
        "plug",
        "slip",
        "starter",
        "runner",
        "sucker",
        "bulb",
    }
)
NO_HARVEST = nouns.PRODUCTS | frozenset(
    {"packet", "pack", "pkt", "seed", "pot", "tray", "cell", "module", "jar", "bottle", "tin", "frame", "bed", "row", "line", "patch",
     "station", "cutting", "string", "graft", "scion", "drill", "layer"}
)  # fmt: skip
BEHIND = frozenset(
    {
        "on",
        "so",
        "for",
        "before",
        "along",
        "today",
        "yesterday",
        "now",
        "at",
        "finally",
        "this",
        "last",
        "already",
        "as",
        "after",
        "since",
        "between",
        "under",
        "behind",
        "from",
    }
)


def in_or_out(typed: Typed) -> Clause | None:
    """ "leeks in, 40, bed 3", "garlic out, 23 bulbs"."""
    if (verb := GERUNDS.get((typed.words[0],))) and ":" in typed.gaps[1] and typed.is_number(1):
        return Clause(0, 0, 1, typed.count, (typed.words[0],), verb)  # "pickling: 2 jars beetroot"
    if typed.words[0] in ("from", "ex") and typed.words[1:2] and typed.words[1] in OUT_OF and typed.breaks[2]:
        return Clause(0, 0, 2, typed.count, ("from", "store"), "used")
    if typed.words[0] == "harvest" and ":" in typed.gaps[1]:
        return Clause(0, 0, 1, typed.count, ("harvest",), "picked")
    if "in" in typed.words and "out" in typed.words and (clause := _in_and_out(typed)) is not None:
        return clause
    if "in" not in typed.words and "out" not in typed.words:
        return None
    start = i = next((k for k, word in enumerate(typed.words[:3]) if word not in LEADS), 0)
    crop = None
    while i < typed.stops[0]:
        quote, size = typed.quotes.get(i), typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0]
        if size:
            crop, i = i, i + size
        elif (
            quote is not None
            or typed.words[i] in ARTICLES
            or typed.words[i].isdigit()
            or typed.words[i] in nouns.COUNT_NOUNS
            or typed.words[i] in (LEADS if crop is None else BETWEEN)
        ):
            i = max(quote.last, i + 1) if quote is not None else i + 1
        else:
            break
    if crop is None or i >= typed.count or typed.breaks[i] or typed.words[i] not in ("in", "out"):
        return None
    j = i + 1
    if not (typed.breaks[j] or typed.words[j] in BEHIND):
        return None
    is_root = any(w in nouns.ROOTS for w in typed.words[crop:i])
    if typed.words[i] == "out" and not is_root:
        return None
    verb = "picked" if typed.words[i] == "out" else "sowed" if "seed" in typed.words[crop:i] else "planted"
    return Clause(start, i, j, typed.count, (typed.words[i],), verb)


OUT_OF = frozenset({"store", "freezer", "cellar", "larder", "pantry", "loft", "shed"})


def _in_and_out(typed: Typed) -> Clause | None:
    """ "onions: 28 sets in, 201 bulbs out": lifted, and how many were set is said beside."""
    closing = {typed.words[typed.stops[i] - 1]: i for i in range(typed.count) if typed.breaks[i]}
    first, second = closing.get("in"), closing.get("out")
    if not first or not second or not typed.is_number(first) or not typed.is_number(second) or second < first:
        return None
    if not any(typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] for i in range(first)):
        return None
    if SET_OUT.isdisjoint(typed.words[first : typed.stops[first]]):
        return None  # "pressed apples: 48 kg in, 27 litres out"
    end = typed.stops[second]
    return Clause(0, end - 1, end, typed.count, ("out",), "picked", relative=(first, typed.stops[first]))


LEADS = frozenset({"so", "finally", "and", "all", "well", "yay"})
BETWEEN = frozenset({"are", "is", "all", "now", "both", "finally", "were", "was", "went"})
""" "so the toms are in", "leeks all in now"."""


BROUGHT_IN = frozenset(
    {
        "squash",
        "pumpkin",
        "marrow",
        "butternut",
        "gourd",
        "apple",
        "pear",
        "quince",
        "medlar",
        "potato",
        "spud",
        "maincrop",
        "onion",
        "shallot",
        "walnut",
        "hazelnut",
    }
)
"""What is brought in for the winter."""


def is_brought_in(typed: Typed, clause: Clause, base: When | None, *, is_southern: bool) -> bool:
    """ "squash in. 11." in September; not "onion sets in"."""
    if (
        clause.form != ("in",)
        or clause.verb != "planted"
        or base is None
        or not SET_OUT.isdisjoint(typed.words)
    ):
        return False
    months = (2, 3, 4, 5) if is_southern else (8, 9, 10, 11)
    return base.first.month in months and not BROUGHT_IN.isdisjoint(typed.words[: clause.verb_start])


def is_lifted(typed: Typed, clause: Clause, base: When | None, *, is_southern: bool) -> bool:
    """ "swedes 5 up" in September: lifted; no seed of them comes up then."""
    if clause.form != ("up",) or base is None:
        return False
    if any(nouns.UNITS.get(w) in ("kg", "lb", "stone") for w in typed.words):
        return not nouns.ROOTS.isdisjoint(typed.words[: clause.verb_start])  # "spuds up: 12.5 kg"
    if not typed.is_number(clause.verb_start - 1):
        return False
    months = (2, 3, 4, 5, 6, 7) if is_southern else (8, 9, 10, 11, 12, 1)
    return base.first.month in months and not nouns.ROOTS.isdisjoint(typed.words[: clause.verb_start])


SOWN = frozenset({"row", "line", "drill", "packet", "pack", "pkt", "module", "cell", "station", "seed"})
MEALS = frozenset({"lunch", "tea", "dinner", "supper", "breakfast"})
STORED_IN = frozenset({"sand", "store", "loft", "cellar", "clamp", "shed", "storage", "sack", "crate"})
""" "onions into the loft": put in store."""
IN_JARS = frozenset({"jar", "bottle", "tub", "tin", "pint", "litre", "pot"})


def _is_somebody(typed: Typed, j: int) -> bool:
    if typed.capital(j) and typed.words[j].isalpha() and typed.words[j] not in nouns.PLACE_NOUNS:
        return True  # "to Dwayne"
    behind = tuple(typed.words[j + 1 : j + 3])
    return typed.words[j] in TAKERS or typed.words[j] in TITLES | {"auntie"} or behind == ("next", "door")


def _purposes(typed: Typed) -> set[str]:
    """The words behind "for": "leeks for the soup" are no soup yet."""
    spots = [i for i in range(1, typed.count) if typed.words[i] == "for" and not typed.breaks[i]]
    return {word for i in spots for word in typed.words[i + 1 : typed.stops[i]]}


def _is_share_of_more(typed: Typed, i: int) -> bool:
    """ "2 punnets, 1 to Jen": what stands right before "to" is some of what stands first."""
    k = i - 1
    return (
        k > 0
        and typed.breaks[k]
        and (
            typed.is_number(k)
            or typed.words[k] in nouns.NUMBERS
            or typed.words[k] in ("half", "some", "most", "rest", "couple", "few")
        )
    )


def _meals(typed: Typed) -> set[str]:
    """What was made of it, said alone: "leeks 3. soup.", "rasps 1 punnet, jam"."""
    spots = [i for i in range(1, typed.count) if typed.breaks[i] and typed.stops[i] == i + 1]
    return (
        {typed.words[i] for i in spots if typed.words[i] in nouns.PRODUCTS}
        if not (IN_JARS - {"tub", "pot"}) & set(typed.words)
        else set()
    )


def _goes_to(typed: Typed) -> bool:
    """ "2 lb rhubarb to Morag next door": given to somebody."""
    for i in range(1, typed.count - 1):
        if typed.words[i] == "to" and not typed.breaks[i]:
            j = i + 1 + (typed.words[i + 1] in ARTICLES)
            if j < typed.count and not typed.names(j)[0] and _is_somebody(typed, j):
                return not _is_share_of_more(typed, i)
    return False


def _is_thing_given(typed: Typed, plain: set[str]) -> bool:
    """ "2 jars of honey to Rev. Tom", "6 eggs to Mum": no crop before the "to"."""
    if plain.isdisjoint(nouns.EGGS | nouns.HONEY | nouns.PRODUCTS) or not _goes_to(typed):
        return False
    before = range(typed.words.index("to"))
    return not any(typed.kind(i, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0] for i in before)


def _names_set_out(typed: Typed) -> set[str]:
    """What is planted and never picked: "onion sets", seed potatoes; not the runner of "runner beans", nor "Crown Prince"."""
    hidden: set[int] = set()
    for i in range(typed.count):
        size, known = typed.names(i)
        is_variety = any(k.kind is Kind.VARIETY for k in known)
        hidden.update(range(i, i + size - (not is_variety and size > 1)))
    words = {typed.words[i] for i in range(typed.count) if i not in hidden}
    return words & SET_OUT | ({"seed"} if {"seed", "potato"} <= set(typed.words) else set())


def price_alone(typed: Typed) -> Clause | None:
    """ "rhubarb crown £6.50", "5 frames £11, 10 kg sugar £9.90": bought, where nothing says that it was sold."""
    if (
        not any(sign in typed.plain for sign in "£$€")
        or not SELLING.isdisjoint(typed.words)
        or _goes_to(typed)
    ):
        return None
    priced = next(
        (i for i in range(1, typed.count) if typed.is_number(i) and typed.gaps[i][-1:] in ("£", "$", "€")), 0
    )
    is_thing = (
        typed.words[0] in nouns.NUMBERS
        or typed.words[0].isdigit()
        or typed.words[0] in ("new", "seed")
        or typed.names(0)[0]
    )
    return Clause(0, 0, 0, typed.count, (), "bought") if priced and is_thing else None


SELLING = frozenset(
    {
        "sold",
        "sale",
        "stall",
        "gate",
        "owe",
        "owes",
        "owed",
        "prize",
        "worth",
        "won",
        "made",
        "took",
        "takings",
        "honesty",
        "market",
    }
)


def _goes_over(typed: Typed) -> bool:
    """ "toms -> Hoop bed x4": moved there."""
    spots = (i for i in range(1, typed.count) if is_arrow(typed, i) and typed.kind(i + 1, Kind.BED)[0])
    named = (Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY, Kind.BED)
    return any(any(typed.kind(k, *named)[0] for k in range(i)) for i in spots)


MAY_LEAD = ABOUT | frozenset({"half", "some", "first", "x"})
"""Small words that an amount without a verb may begin with: "c. 20 plums off the tree"."""


def amount_alone(typed: Typed) -> Clause | None:
    """ "2 kg peas, Arch", "onion sets x 100 in bed 2": a clause as if its verb had been written."""
    if _goes_over(typed):
        return Clause(0, 0, 0, typed.count, (), "moved")
    has_crop = has_amount = False
    words, hidden = [], 0
    for i in range(typed.count):
        if i < hidden:
            continue
        hidden = i + typed.names(i)[0]
        words += typed.words[i : i + (hidden == i)]
        has_crop = has_crop or bool(typed.kind(i, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0])
        word = typed.words[i]
        has_amount = has_amount or (
            not typed.names(i)[0]
            and (
                word.isdigit() or word in nouns.NUMBERS or word in ("half", "bunch") or word in nouns.HOLDERS
            )
        )
    plain = set(words) - _purposes(typed) - _meals(typed)
    if has_amount and _is_thing_given(typed, plain):
        return Clause(0, 0, 0, typed.count, (), "gave away")
    if not BEING.isdisjoint(typed.words[: typed.stops[0]]):
        return None  # "half the apples are wormy"
    is_made = (bool(plain & nouns.PRODUCTS) and bool(plain & IN_JARS)) or "jar" in plain - {"seed"}
    is_weighed = any(nouns.UNITS.get(w) in ("kg", "lb", "stone") for w in words)
    is_sown = bool(plain & SOWN) and not plain & nouns.PRODUCTS and not (is_weighed and "seed" not in plain)
    if not (has_crop and has_amount) or (
        plain & NO_HARVEST - (SOWN if is_weighed else {"layer"} if "into" in words else set())
        and not is_made
        and not is_sown
    ):
        return None
    told = next(
        (k for k, w in enumerate(words) if w in ("she", "he", "they", "who", "sh", "hes", "theyre")),
        len(words),
    )
    if any(w.endswith("ing") and w not in nouns.HOLDERS and len(w) > 5 for w in words[:told]):
        return None  # "spuds chitting on the sill": something else is told
    first = typed.words[0]
    if first in MEALS and typed.breaks[1] and typed.count > 1:
        first = typed.words[1]  # "Lunch: two artichokes"
    if (
        first in ("from", "off")
        and typed.count > 2
        and typed.kind(1 + (typed.words[1] in ARTICLES), Kind.BED)[0]
    ):
        first = "1"  # "from Bed 4: 6 leeks"
    if not (
        typed.names(0)[0]
        or first.isdigit()
        or first in nouns.NUMBERS
        or first in nouns.HOLDERS
        or first in MAY_LEAD
        or 0 in typed.quotes
    ):
        return None
    verb = (
        "planted"
        if _names_set_out(typed) - ({"plant"} if is_weighed else set()) and "harvest" not in plain
        else "put up"
        if is_made
        else "sowed"
        if is_sown
        else "picked"
    )
    if verb == "picked" and "into" in typed.words and plain & STORED_IN:
        verb = "stored"
    if (
        verb == "picked"
        and "of" in typed.words
        and any(
            typed.words[k] == "out" and OUT_OF & set(typed.words[k + 1 : k + 4]) for k in range(typed.count)
        )
    ):
        verb = "used"  # "2 bags of spinach out of the freezer"
    if verb == "picked" and _goes_to(typed):
        verb = "gave away"
    if (
        verb == "picked"
        and "water" in plain
        and any(nouns.UNITS.get(w) in ("l", "gallon") or w in ("can", "bucket", "canful") for w in plain)
    ):
        verb = "watered"
    if first in PLACE_OPENERS or ("bulb" in typed.words and verb == "planted" and "in" not in words):
        return None
    return Clause(0, 0, 0, typed.count, (), verb)
