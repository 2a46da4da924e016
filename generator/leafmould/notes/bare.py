"""Lines that name a crop and how much, and no verb: "2 kg peas, Arch", "onion sets x 100".

Asked only where no verb was found. An amount alone is read as a picking, with a question.
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.in_or_out import OUT_OF, SET_OUT
from leafmould.notes.plans import LATER, is_for_later
from leafmould.notes.said_first import TAKERS
from leafmould.notes.signs import is_arrow
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ABOUT, ARTICLES, BEING, PLACE_OPENERS, TITLES
from leafmould.values.names import Kind

NO_HARVEST = nouns.PRODUCTS | frozenset(
    {"packet", "pack", "pkt", "seed", "pot", "tray", "cell", "module", "jar", "bottle", "tin", "frame", "bed", "row", "line", "patch",
     "station", "cutting", "string", "graft", "scion", "drill", "layer"}
)  # fmt: skip
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


def _still_to_be_made(typed: Typed) -> set[str]:
    """ "plums 8 kg today, jam tomorrow"."""
    if LATER.isdisjoint(typed.words):
        return set()
    spots = [i for i in range(1, typed.count) if typed.breaks[i] and is_for_later(typed, i, typed.stops[i])]
    return {word for i in spots for word in typed.words[i : typed.stops[i]]}


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


def _goes_up(typed: Typed) -> bool:
    """ "aubergines into Tub 1", "beans up the Arch": where something was set out."""
    spots = (i for i in range(1, typed.count - 1) if typed.words[i] in ("into", "up", "along"))
    return any(typed.kind(i + 1 + (typed.words[i + 1] in ARTICLES), Kind.BED)[0] for i in spots)


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


def is_first_of(typed: Typed) -> bool:
    """ "first cucumber of the year", "first peas from Arch": picked, most likely; not "first earlies"."""
    if typed.words[0] not in ("first", "last") or "earlie" in typed.words or "early" in typed.words:
        return False
    i = 1 + (typed.words[1:3] == ["of", "the"]) * 2
    end = i + typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] if i < typed.count else i
    is_told = typed.words[end : end + 1] != [] and typed.words[end] in ("of", "today", "from", "off", "this")
    return end > i and is_told


def _goes_into_bed(typed: Typed) -> bool:
    """ "6 tomatoes into Hoop bed": planted there, most likely."""
    for i in range(1, typed.count - 1):
        if typed.words[i] == "into":
            j = i + 1 + (typed.words[i + 1] in ARTICLES)
            if j < typed.count and typed.kind(j, Kind.BED)[0]:
                return True
    return False


MAY_LEAD = ABOUT | frozenset(
    {"half", "some", "first", "last", "x", "fall", "autumn", "spring", "winter", "summer", "early", "late"}
)
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
    has_amount = has_amount or is_first_of(typed)
    plain = set(words) - _purposes(typed) - _meals(typed) - _still_to_be_made(typed)
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
    if verb == "picked" and not is_weighed and _goes_into_bed(typed):
        verb = "planted"
    if (
        verb == "picked"
        and "water" in plain
        and any(nouns.UNITS.get(w) in ("l", "gallon") or w in ("can", "bucket", "canful") for w in plain)
    ):
        verb = "watered"
    if verb == "picked" and _goes_up(typed):
        verb = "planted"
    if first in PLACE_OPENERS or ("bulb" in typed.words and verb == "planted" and "in" not in words):
        return None
    return Clause(0, 0, 0, typed.count, (), verb)
