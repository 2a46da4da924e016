"""Crops that are in or out, and no verb: "leeks in, 40", "garlic out, 23 bulbs", "squash in" in autumn.

What is in was planted, a root that is out was lifted; where it may be the other, that is asked (`lines`).
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES
from leafmould.notes.words.verbs import GERUNDS
from leafmould.values.half_years import northern_month
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
    if typed.words[0] == "harvest" and ":" in typed.gaps[min(typed.stops[0], typed.count)]:
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
        elif crop is not None and (named := typed.kind(i, Kind.VARIETY)[0] or _is_called(typed, i)):
            i += named  # "Garlic Solent Wight in"
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
    if crop is None or typed.breaks[i] or typed.words[i] not in ("in", "out"):
        return None
    j = i + 1
    if not (typed.breaks[j] or typed.words[j] in BEHIND):
        return None
    is_root = any(w in nouns.ROOTS for w in typed.words[crop:i])
    if typed.words[i] == "out" and not is_root:
        return None
    verb = "picked" if typed.words[i] == "out" else "sowed" if "seed" in typed.words[crop:i] else "planted"
    return Clause(start, i, j, typed.count, (typed.words[i],), verb)


def _is_called(typed: Typed, i: int) -> int:
    """Whether a capital right behind the crop may be its variety: 1 or 0."""
    word = typed.words[i]
    return int(typed.capital(i) and word.isalpha() and word not in ("in", "out") and not typed.names(i)[0])


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


PUT_OUT = {
    "leek": range(5, 9),
    "celeriac": range(5, 8),
    "onion": range(3, 6),
    "beetroot": range(4, 7),
    "kohlrabi": range(4, 8),
}
"""Roots that are also raised and planted out, with the northern months of that: common practice, no source."""


def may_be_put_out(typed: Typed, clause: Clause, base: When | None, *, is_southern: bool) -> bool | None:
    """ "leeks out": whether it may as well be planted, and is so in this month; None where it is plain."""
    if (
        clause.form != ("out",)
        or clause.verb != "picked"
        or any(nouns.UNITS.get(w) in nouns.WEIGHTS for w in typed.words)
    ):
        return None
    keys = {k.key for i in range(clause.verb_start) for k in typed.kind(i, Kind.CROP)[1]}
    months = next((PUT_OUT[key] for key in sorted(keys) if key in PUT_OUT), None)
    if months is None or not {"head", "bulb", "root"}.isdisjoint(typed.words):
        return None
    month = 0 if base is None else northern_month(base.first.month, is_southern=is_southern)
    if month not in months and "leek" not in keys:
        return None
    return month in months or not DIBBED.isdisjoint(typed.words)


DIBBED = frozenset({"dibbed", "dibber", "puddled", "holes", "hole", "module", "trimmed"})
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
