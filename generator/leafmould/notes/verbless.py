"""The closed list of lines that count without a verb: troubles seen, covers, warmth; eggs and hens are in `hens_and_bees`.

States behind a crop ("peas up", "X ripe") stand in the verb table, weather in `weather`; the rest is here.
Whatever is not in this list and has no verb is kept as text.
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.hens_and_bees import (
    BEE_FOOD,
    MITE_STUFF,
    as_if,
    bees_fed,
    eggs_counted,
    hens_on_or_off,
    honey_weighed,
    mites_treated,
)
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import NEGATIONS
from leafmould.values.names import Kind


def verbless_clause(typed: Typed) -> Clause | None:
    """Eggs, hens and troubles: a clause as if its verb had been written."""
    if MARKS.isdisjoint(typed.words[:8]) or any(w in NEGATIONS for w in typed.words[:3]):
        return None
    return (
        _acidity(typed)
        or mites_treated(typed)
        or bees_fed(typed)
        or honey_weighed(typed)
        or _warmth(typed)
        or hens_on_or_off(typed)
        or eggs_counted(typed)
        or _cover(typed)
        or _troubles(typed)
    )


def _acidity(typed: Typed) -> Clause | None:
    """ "pH 6.2 in Arch"."""
    if "ph" not in typed.words or not any(w.isdigit() for w in typed.words):
        return None
    at, i = typed.words.index("ph"), 0
    while i < at:
        size = typed.kind(i, Kind.BED)[0] or (typed.words[i] in ("the", "soil", "in", "of", "my"))
        if not size:
            return None
        i += size
    return as_if(typed, "tested soil", at, at)


def _warmth(typed: Typed) -> Clause | None:
    """ "soil 9 °C in Arch", "soil temperature in Arch was 9 °C"."""
    if "soil" not in typed.words[:4]:
        return None
    i = 0
    while i < typed.count and not typed.words[i].isdigit():
        size = typed.kind(i, Kind.BED)[0] or (typed.words[i] in SOIL_WORDS)
        if not size:
            return None
        i += size
    unit = next((word for word in typed.words[i + 1 : i + 3] if not word.isdigit()), "")
    named = [word in ("soil", "temperature", "temp", "warmth", "the") for word in typed.words[:i]]
    end = named.index(False) if False in named else i
    return as_if(typed, "tested soil", 0, end) if unit in ("c", "f", "degree", "deg") else None


SOIL_WORDS = frozenset(
    {
        "the",
        "soil",
        "in",
        "of",
        "my",
        "our",
        "at",
        "temperature",
        "temp",
        "warmth",
        "is",
        "was",
        "now",
        "only",
        "still",
    }
)
"""What may stand before the warmth of the soil."""


def _troubles(typed: Typed) -> Clause | None:
    """ "aphids on broad beans", "blight in Hoop bed", "carrot fly in Top bed", "blackfly!"."""
    last, i = -1, 0
    while i < min(6, typed.stops[0]):
        word, size = typed.words[i], typed.names(i)[0]
        if word == "cabbage" and typed.words[i + 1 : i + 2] == ["white"]:
            last, i = i + 1, i + 2
            continue
        if i and word in NAMED_SO and typed.capital(i) and typed.kind(i - 1, Kind.CROP)[0]:
            return None  # "Sweetcorn Swift": a variety
        if word in FELT and i and typed.words[i - 1] in VERY:
            return None  # "too wet. too tired"
        if (word in nouns.TROUBLES and size <= 1 and word != "something") or (word == "damage" and last >= 0):
            last, i = i, i + 1
        elif (
            size
            and typed.words[i + size : i + size + 1]
            and typed.words[i + size] in nouns.TROUBLES
            and last < 0
        ):
            i += size
        elif (
            size == 1
            and last < 0
            and typed.words[i + 1 : i + 2] in BORED
            and typed.words[i + 2 : i + 3] in BORERS
        ):
            i += 2  # "squash vine borer"
        elif word in TROUBLE_PLACES and last >= 0:
            if word not in STANDS_ALONE and not any(typed.names(k)[0] for k in range(i, typed.count)):
                return None
            return as_if(typed, "saw", last + 1, last + 1, typed.written(0, last + 1))
        elif word in AT_IT and last >= 0 and any(typed.names(k)[0] for k in range(i + 1, typed.count)):
            return as_if(typed, "saw", last + 1, last + 1, typed.written(0, last + 1))
        elif size or (last < 0 and i > 3):
            return None
        else:
            i += 1
    if last >= 0 and last + 1 == typed.stops[0] and last < 3:
        return as_if(typed, "saw", last + 1, last + 1, typed.written(0, last + 1))
    return None


FELT = frozenset({"wet", "cold", "heat"})
VERY = frozenset({"too", "so", "very", "bit", "still", "really", "bloody"})


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


AT_IT = _words(
    """munching eating chewing nibbling pecking attacking covering swarming crawling stripping devouring shredding gnawing
    ravaging demolishing enjoying feasting browsing digging scratching scoffing nobbling"""
)
NAMED_SO = _words(
    "swift storm frost snow ice wind starling marten peacock fox badger turkey pheasant turkey jay rook crow dove"
)
"""Troubles that varieties are called after."""
BORED, BORERS = (["vine"], ["root"], ["stem"], ["leaf"], ["fruit"], ["moth"]), (["borer"], ["fly"], ["weevil"], ["miner"], ["moth"], ["maggot"], ["rot"], ["spot"])  # fmt: skip
TROUBLE_PLACES = frozenset(
    {"on", "in", "at", "all", "over", "everywhere", "round", "around", "under", "again", "about", "back"}
)
STANDS_ALONE = frozenset({"everywhere", "again", "about", "back", "all"})


def _cover(typed: Typed) -> Clause | None:
    """ "fleece on carrots", "nets off Arch", "manure on Top bed"."""
    i = _past_amount(typed)
    last = min(i + 3, typed.count - 2)
    while (
        i < last and typed.words[i] not in STUFF_VERBS and not (typed.names(i)[0] and not _is_low(typed, i))
    ):
        if typed.words[i] in nouns.TROUBLES and typed.words[i + 1] in THROUGH:
            return None  # "possums through the net on Old pear"
        i += 1
    verb = STUFF_VERBS.get(typed.words[i])
    if verb is None or i + 1 >= typed.count or typed.names(i)[0] > 1:
        return None
    if _is_bed(typed, i) and not _is_low(typed, i):
        return None
    while (
        i + 2 < typed.count
        and (typed.words[i + 1] in STUFF_VERBS or typed.words[i + 1] in ("bone", "and"))
        and (not typed.names(i + 1)[0] or _is_low(typed, i + 1))
    ):
        i += 1
    verb = "treated" if typed.words[i] in SPRAYED else verb
    if typed.words[i + 1] in ("to", "into") and _is_bed(typed, _past_the(typed, i + 2)):
        return _stuff(typed, verb, i + 1, i + 1)
    j = i + 1 + (typed.words[i + 1] in ("back", "put", "now", "taken", "is", "came", "removed"))
    is_taken_off = typed.words[i + 1 : i + 3] == ["removed", "from"] and verb in ("covered", "netted")
    if j >= typed.count or (typed.words[j] not in ON_OR_OFF and not is_taken_off):
        return None
    spots = range(j + 1, min(j + 6, typed.count))
    if j + 1 < typed.count and not any(typed.names(k)[0] or _is_beds(typed, k) for k in spots):
        return None
    if typed.words[j] == "off" or is_taken_off:
        verb = "uncovered"
    elif "slug" in typed.words[:i]:
        verb = "treated"
    return _stuff(typed, verb, j, i + 1)


ON_OR_OFF = frozenset({"on", "over", "off", "onto", "round", "around", "under"})


def _is_beds(typed: Typed, k: int) -> bool:
    """The tubs of "nettle tea on the tubs", "on each tub"."""
    is_several = typed.plain[typed.ends[k] - 1] in "sS" or typed.words[k - 1] in ("each", "every")
    return typed.words[k] in nouns.PLACE_NOUNS and typed.words[k] != "bed" and is_several


def _is_low(typed: Typed, i: int) -> bool:
    """The tunnel of "low tunnel over the lettuce" is no bed of that name."""
    return i > 0 and typed.words[i - 1] in LOW and typed.words[i] in nouns.COVERS


LOW = frozenset({"mini", "low", "little", "small", "fleece", "mesh", "net", "cloche", "plastic", "wire"})
THROUGH = frozenset({"through", "under", "into", "inside", "in", "behind", "past"})


def _stuff(typed: Typed, verb: str, verb_end: int, stuff_end: int) -> Clause:
    """What was put there; how much of it, if the line begins with that: "2 barrows of manure"."""
    words = typed.words
    is_counted = words[0].isdigit() or words[0] in nouns.NUMBERS
    begin = words.index("of", 0, stuff_end) + 1 if is_counted and "of" in words[:stuff_end] else 0
    return as_if(typed, verb, begin, verb_end, typed.written(begin, stuff_end))


def _past_amount(typed: Typed) -> int:
    """ "3 barrow loads of", "a bucket of"."""
    words = typed.words
    end = words.index("of", 0, 6) if "of" in words[:6] else 0
    is_counted = all(
        w.isdigit()
        or w in nouns.NUMBERS
        or w in nouns.HOLDERS
        or w in nouns.SIZES
        or nouns.UNITS.get(w) in nouns.VOLUMES
        for w in words[:end]
    )
    return end + 1 if end and is_counted and end + 2 < typed.count else 0


def _past_the(typed: Typed, i: int) -> int:
    return i + (typed.words[i : i + 1] in (["the"], ["my"], ["our"]))


def _is_bed(typed: Typed, i: int) -> bool:
    return i < typed.count and bool(typed.kind(i, Kind.BED)[0])


SPRAYED = frozenset({"sulphur", "sulfur", "bordeaux", "neem", "copper"})
STUFF_VERBS = {
    **dict.fromkeys(nouns.FEEDS | nouns.PELLETS, "fed"), **dict.fromkeys(nouns.MULCHES - {"leaf"}, "mulched"),
    **dict.fromkeys(nouns.COVERS - nouns.MULCHES, "covered"), **dict.fromkeys(nouns.NETS, "netted"),
    "band": "treated", "collar": "treated", **dict.fromkeys(SPRAYED, "treated"), "guard": "covered", **dict.fromkeys(nouns.MANURES, "manured"), **dict.fromkeys(nouns.LIMES, "limed"),
}  # fmt: skip
"""What stands on or round a crop or a bed says what was done."""


MARKS = frozenset(
    {
        *MITE_STUFF,
        *BEE_FOOD,
        "honey",
        "ph",
        "soil",
        "egg",
        "cabbage",
        "damage",
        *nouns.HENS,
        *STUFF_VERBS,
        *nouns.TROUBLES,
    }
)
"""One of these stands near the beginning of every line that counts without a verb."""


def with_verbless(typed: Typed, found: Clause, clauses: list[Clause]) -> list[Clause]:
    """ "aphids on beans, sprayed them": the verbless form, then the verbs behind the comma."""
    stop = typed.stops[0]
    if not clauses:
        return [found]
    if found.verb == "tested soil":  # "pH Bed 3 = 6.1. Applied lime"
        stop = next((i for i in range(clauses[0].verb_start, 0, -1) if typed.breaks[i]), stop)
    if (
        clauses[0].is_state
        and found.verb in ("covered", "netted")
        and found.verb_end <= clauses[0].verb_start
    ):
        return [found, *clauses[1:]]  # "cloches over Top bed to get it ready"
    if clauses[0].is_state and found.verb == "staked" and clauses[0].verb_start < found.verb_end:
        found.end = clauses[1].start if len(clauses) > 1 else typed.count
        return [found, *clauses[1:]]  # "bean canes up in Arch"
    if clauses[0].form in (("back", "on"), ("back", "off")) and clauses[0].verb_start < stop:
        return [found, *clauses[1:]]  # "mildew's back on the courgettes"
    if clauses[0].verb_start < stop:
        return clauses
    if found.verb in ("penned", "let out") and clauses[0].form == ("ate",):
        clauses[0].is_by_trouble = True  # "hens in the greenhouse, ate 6 lettuces"
    if found.form == ("from", "store"):
        spots = range(clauses[0].verb_start, found.verb_end, -1)
        stop = next((i for i in spots if typed.breaks[i]), stop)  # "From store: 2 squashes, 1 gone"
    own = next((i for i in range(clauses[0].verb_start, stop, -1) if typed.breaks[i]), stop)
    if found.verb == "saw" and all(
        typed.names(i)[0] == 0 or typed.kind(i, Kind.BED)[0] for i in range(own, clauses[0].verb_start)
    ):
        stop = own  # "weevils in the strawberries, Tub 1; nematodes watered in"
    found.end = clauses[0].start = max(stop, found.verb_end)
    return [found, *clauses]
