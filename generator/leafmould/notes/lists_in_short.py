"""Pickings that no verb names: a crop with its days, and what came off a bed before it was eaten, given or bottled.

Asked once the verbs of a line are found. Each picking becomes a clause, as if its verb had been written.
"""

from __future__ import annotations

from collections.abc import Iterator

from leafmould.notes.clause import Clause
from leafmould.notes.said_first import TAKERS
from leafmould.notes.senses import action_of
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, CLAUSE_JOINS, NEGATIONS, PLACE_OPENERS
from leafmould.values.date_words import MONTHS, WEEKDAYS
from leafmould.values.names import Kind, fold_word

SHORT = frozenset({"mon", "tue", "tues", "wed", "weds", "thu", "thur", "thurs", "fri", "sat", "sun", "yest"})
DAYS = frozenset(map(fold_word, {*WEEKDAYS, *MONTHS, "today", "yesterday", *SHORT})) - {"may", "march"}
SOWN = frozenset({"row", "line", "drill", "packet", "pack", "pkt", "module", "cell", "station", "seed"})
FATES = frozenset({"put up", "gave away", "ate", "stored", "composted"})
CROPS = (Kind.CROP, Kind.CROP_GROUP)


def by_days(typed: Typed) -> list[Clause]:
    """ "Courgettes: 3 Tues, 2 today": a picking for each day; none if the line is no such list."""
    if DAYS.isdisjoint(typed.words):
        return []
    if "egg" in typed.words and (eggs := _eggs_by_days(typed)):
        return eggs
    if ":" not in typed.plain:
        return []
    first = typed.stops[0]
    if first >= typed.count or ":" not in typed.gaps[first] or not _names_crop(typed, 0, first):
        return []
    spots = [i for i in range(first, typed.count) if typed.breaks[i]]
    begins = [
        i for i in spots if _is_counted(typed, i) and not DAYS.isdisjoint(typed.words[i : typed.stops[i]])
    ]
    if len(begins) < 2 or begins[0] != first:
        return []
    verb = "sowed" if not SOWN.isdisjoint(typed.words) else "picked"
    starts, ends = [0, *begins[1:]], [*begins[1:], typed.count]
    return [
        Clause(start, begin, begin, end, (), verb)
        for start, begin, end in zip(starts, begins, ends, strict=True)
    ]


def _eggs_by_days(typed: Typed) -> list[Clause]:
    """ "eggs 4 mon 5 tue", "eggs: Mon 4, Tue 5": what was collected on each day."""
    spots = [i for i in range(typed.count) if typed.words[i] not in BESIDE_EGGS]
    pairs = [*zip(spots[::2], spots[1::2], strict=False)]
    if len(pairs) < 2 or len(spots) % 2:
        return []
    is_day_first = typed.words[spots[0]] in DAYS
    if any(b - a > 2 or (typed.words[a] in DAYS) is not is_day_first for a, b in pairs):
        return []
    counts = [b if is_day_first else a for a, b in pairs]
    days = [a if is_day_first else b for a, b in pairs]
    if not all(typed.words[i].isdigit() for i in counts) or not all(typed.words[i] in DAYS for i in days):
        return []
    begins = [0, *(a for a, _ in pairs[1:])]
    ends = [*begins[1:], typed.count]
    return [
        Clause(begin, count, count, end, (), "collected", "eggs")
        for begin, count, end in zip(begins, counts, ends, strict=True)
    ]


BESIDE_EGGS = frozenset({"egg", "on", "and", "n", "the", "collected", "got", "had", "from", "hen"})


def with_picking_before(typed: Typed, clauses: list[Clause]) -> list[Clause]:
    """ "a bucket of beans off the Arch, Mike canned 11 pints": the picking that is told of first."""
    if not clauses:
        return clauses
    verb, stop = clauses[0], typed.stops[0]
    begin = next((i for i in range(verb.verb_start, -1, -1) if typed.breaks[i]), 0)
    if not begin and typed.phrase(verb.verb_end, 1)[:1] in SHARED and _names_crop(typed, 0, verb.verb_start):
        begin = verb.verb_start  # "courgettes 1.5 kg gave half to Ann"
        stop = min(stop, begin)
    if verb.start or not begin or stop > begin or verb.is_denied:
        return clauses
    is_plants = not LEFT_STANDING.isdisjoint(typed.words[begin : verb.verb_start]) or typed.words[
        verb.verb_end : verb.verb_end + 1
    ] == ["plant"]
    if is_plants and action_of(typed, verb)[0] in ("composted", "cleared"):
        verb.start, verb.verb = begin, "cleared"  # "600 g, plants to the compost"
        first = _made_of(typed, begin)
        return [Clause(0, 0, 0, begin, (), first), verb] if _names_crop(typed, 0, begin) else clauses
    if action_of(typed, verb)[0] not in FATES and not _is_rest_lost(typed, verb, begin):
        return clauses
    if action_of(typed, verb)[0] == "gave away" and (house := _of_the_house(typed, begin)):
        verb.start = begin  # "22 lb honey off, Ruthie gets four jars"
        return [Clause(0, 0, 0, begin, (), "collected", house), *clauses]
    if begin > stop and "rest" in typed.words[stop:begin]:
        begin = next(
            i for i in range(begin, stop - 1, -1) if typed.breaks[i] and "rest" in typed.words[i:begin]
        )
    if not (
        comes_off_a_bed(typed, begin)
        or _is_share(typed, verb, begin)
        or _gives_of_what_was_weighed(typed, verb, begin)
        or "rest" in typed.words[begin : verb.verb_end]
        or _is_rest_lost(typed, verb, begin)
    ):
        return clauses
    is_counted = any(_is_counted(typed, i) and not typed.names(max(i - 1, 0))[0] > 1 for i in range(begin))
    if not is_counted or not nouns.TROUBLES.isdisjoint(typed.words[:stop]):
        return clauses
    if not NEGATIONS.isdisjoint(typed.words[:begin]) or not _names_crop(typed, 0, begin):
        return clauses
    verb.start = begin
    return [Clause(0, 0, 0, begin, (), _made_of(typed, begin)), *clauses]


def _of_the_house(typed: Typed, end: int) -> str | None:
    """Eggs or honey that were counted before word `end`, without a verb."""
    if _names_crop(typed, 0, end) or not any(_is_counted(typed, i) for i in range(end)):
        return None
    return "honey" if "honey" in typed.words[:end] else "eggs" if "egg" in typed.words[:end] else None


def _made_of(typed: Typed, end: int) -> str:
    return "put up" if IN_JARS & set(typed.words[:end]) else "picked"


def with_planting_before(typed: Typed, clauses: list[Clause]) -> list[Clause]:
    """ "12 leeks in Bed 3, watered in": what is watered in was planted or sown just before."""
    if not clauses or clauses[0].form != ("watered", "in") or clauses[0].start:
        return clauses
    verb = clauses[0]
    begin = next((i for i in range(verb.verb_start, 0, -1) if typed.breaks[i]), 0)
    if not begin or verb.is_denied or not NEGATIONS.isdisjoint(typed.words[:begin]):
        return clauses
    if not any(_is_counted(typed, i) for i in range(begin)) or not (
        _names_crop(typed, 0, begin) or any(i in typed.quotes for i in range(begin))
    ):
        return clauses
    verb.start = begin
    made = "planted" if SOWN.isdisjoint(typed.words[:begin]) else "sowed"
    return [Clause(0, 0, 0, begin, (), made), *clauses]


def _gives_of_what_was_weighed(typed: Typed, clause: Clause, begin: int) -> bool:
    """ "plums!! 14 kilo, gave 5 to Maureen": what was weighed had been picked first."""
    is_weighed = any(
        typed.is_number(i) and nouns.UNITS.get(typed.words[i + 1]) in nouns.WEIGHTS for i in range(begin - 1)
    )
    gives = clause.verb_end < typed.count and typed.is_number(clause.verb_end)
    return is_weighed and gives and action_of(typed, clause)[0] == "gave away"


def _is_rest_lost(typed: Typed, clause: Clause, begin: int) -> bool:
    """ "one small bowl. Blackbird had the rest", "2 lb, blight on the rest, binned": what came before was picked."""
    words = typed.words[begin : typed.stops[clause.verb_start]]
    shares = {"rest", "remainder", "other"}
    if any(nouns.UNITS.get(w) in nouns.WEIGHTS for w in typed.words[:begin]):
        shares |= {"most", "half"}  # "cobnuts 600 g, squirrels had most"
    return action_of(typed, clause)[0] in ("lost", "composted") and bool(shares & set(words))


def _is_share(typed: Typed, clause: Clause, begin: int) -> bool:
    """ "rhubarb 1 kg, half stewed", "11 today, 4.2 kg, left a box at the gate": the deed has an amount of its own."""
    spots = range(begin, typed.stops[clause.verb_start])
    words = [typed.words[i] for i in spots if i < clause.verb_start or i >= clause.verb_end]
    if _names_crop(typed, begin, typed.stops[begin]) or not NO_PICKING.isdisjoint(typed.words[:begin]):
        return False
    return any(w in SHARES or w.isdigit() or w in nouns.NUMBERS for w in words[:4])


def with_crops_beside_eggs(typed: Typed, clauses: list[Clause]) -> list[Clause]:
    """ "picked 6 eggs and a cabbage", "2 lettuces and 6 eggs": the eggs and the crop, each in a clause of its own."""
    if len(clauses) != 1 or nouns.EGGS.isdisjoint(typed.words) or clauses[0].is_denied or clauses[0].particle:
        return clauses
    verb = clauses[0]
    egg = next((i for i in range(verb.verb_end, verb.end) if typed.words[i] in nouns.EGGS), 0)
    crop = next((i for i in range(verb.verb_end, verb.end) if typed.kind(i, *CROPS)[0]), 0)
    if verb.form not in GATHERED or not egg or not crop:
        return clauses
    first, second = sorted((egg, crop))
    cut = next((i for i in range(second, first, -1) if _begins_item(typed, i)), 0)
    if not cut or any(typed.kind(i, Kind.BED)[0] for i in range(first, cut)):
        return clauses
    if any(w in PLACE_OPENERS and w != "of" for w in typed.words[cut:second]):
        return clauses  # "gathered 6 eggs, from under the currants"
    made = ("collected", "picked") if egg < crop else ("picked", "collected")
    before = Clause(verb.start, verb.verb_start, verb.verb_end, cut, verb.form, made[0])
    return [before, Clause(cut, cut, cut, verb.end, (), made[1])]


def with_swaps(typed: Typed, clauses: list[Clause]) -> list[Clause]:
    """ "swapped 6 leeks with Jim for some cabbages": one was given, the other was got."""
    found: list[Clause] = []
    for clause in clauses:
        found.append(clause)
        if clause.form not in SWAPPED or clause.is_denied:
            continue
        spots = range(clause.verb_end + 1, clause.end - 1)
        at = next((i for i in spots if typed.words[i] == "for" and _names_crop(typed, i + 1, clause.end)), 0)
        if at and _names_crop(typed, clause.verb_end, at):
            found.append(Clause(at, at, at + 1, clause.end, ("for",), "bought"))
            clause.end, clause.verb = at, "gave away"
    return found


SWAPPED = frozenset({("swapped",), ("traded",), ("exchanged",), ("bartered",)})
GATHERED = frozenset(
    {("picked",), ("collected",), ("gathered",), ("harvested",), ("got",), ("brought", "in")}
)


def _begins_item(typed: Typed, i: int) -> bool:
    return (
        typed.breaks[i] or typed.words[i - 1] in CLAUSE_JOINS or "&" in typed.gaps[i] or "+" in typed.gaps[i]
    )


SHARED = (("half",), ("some",), ("most",))
LEFT_STANDING = frozenset({"plant", "vine", "haulm", "bine", "stalk", "foliage"})
SHARES = frozenset({"half", "rest", "remainder", "other", "most", "some", "few", "couple", "lot", "dozen"})
IN_JARS = frozenset({"jar", "bottle", "tin", "kilner"})
NO_PICKING = nouns.EGGS | nouns.HONEY | frozenset({"packet", "seed", "plant", "seedling"})
"""Beside these the first amount is none of a picking."""


def with_shares(typed: Typed, clauses: list[Clause]) -> list[Clause]:
    """ "half stewed and froze, half to work", "two to Ann, the rest in the freezer": a share that no verb tells of."""
    if not clauses or TO.isdisjoint(typed.words):
        return clauses
    found: list[Clause] = []
    for number, clause in enumerate(clauses):
        found.append(clause)
        end = clause.end
        shares = [
            (i, k, fate)
            for i in _breaks(typed, clause.verb_end, end)
            if (number or i > clause.verb_end or clause.subject == "eggs")
            if (k := _share_end(typed, i)) and (fate := fate_of(typed, k))
        ]
        if shares and not clause.is_denied and action_of(typed, clause)[0] in MADE:
            for i, k, fate in shares:
                found[-1].end = i
                found.append(Clause(i, k, k, end, (), fate))
    return found


def _breaks(typed: Typed, start: int, end: int) -> Iterator[int]:
    """The words from `start` on that stand behind a break."""
    i = start if start < end and typed.breaks[start] else typed.stops[start] if start < end else end
    while i < end:
        yield i
        stop = typed.stops[i]
        yield from (
            k for k in range(i + 1, min(stop, end)) if typed.words[k] == "and" and _share_end(typed, k)
        )
        i = stop


TO = frozenset({"to", "for", "in", "into"})
MADE = frozenset({"collected", "put up", "stored", "ate", "gave away", "composted", "used"})


def _share_end(typed: Typed, i: int) -> int:
    """The word behind "half", "the rest", "two", "a couple" that begin at word `i`; 0 if that is none."""
    k = i + (typed.words[i] in CLAUSE_JOINS)
    k += k < typed.count and typed.words[k] in ARTICLES
    if k >= typed.count or not (
        typed.words[k] in SHARES or typed.words[k].isdigit() or typed.words[k] in nouns.NUMBERS
    ):
        return 0
    k += 1
    if k < typed.count and typed.words[k] in nouns.HOLDERS | {"egg"} | frozenset(nouns.UNITS) - {"in"}:
        k += 1
    return k if k + 1 < typed.count and not typed.breaks[k] and typed.words[k] in TO else 0


def fate_of(typed: Typed, k: int) -> str | None:
    """Where a share went whose "to", "for" or "into" stands at word `k`; None if that says nothing of the kind."""
    words = typed.words[k : min(k + 4, typed.stops[k])]
    if not nouns.HENS.isdisjoint(words) or not {"heap", "compost", "bin", "pig"}.isdisjoint(words):
        return "composted"
    if not FREEZING.isdisjoint(words):
        return "put up"
    if not KEEPING.isdisjoint(words):
        return "stored"
    if words[0] == "for" and not EATEN.isdisjoint(words):
        return "ate"
    if k + 1 >= typed.count:
        return None
    j = k + 1 + (typed.words[k + 1] in ARTICLES)
    is_given = words[0] == "to" and j < typed.count and not typed.kind(j, Kind.BED)[0]
    is_for = words[0] == "for" and (not (TAKERS | SOLD_AT).isdisjoint(words) or is_somebody(typed, j))
    return "gave away" if is_given or is_for else None


def is_somebody(typed: Typed, j: int) -> bool:
    """ "for Ann", "for next door": nobody knows the word, and it has a capital."""
    if typed.words[j : j + 2] == ["next", "door"]:
        return True
    word = typed.words[j] if j < typed.count else ""
    is_name = word.isalpha() and len(word) > 1 and typed.capital(j) and not typed.names(j)[0]
    return (
        is_name and word not in DAYS | FEASTS and word not in nouns.PLACE_NOUNS and word not in nouns.PRODUCTS
    )


FEASTS = frozenset(
    {
        "christmas",
        "xmas",
        "easter",
        "may",
        "march",
        "thanksgiving",
        "halloween",
        "midsummer",
        "sunday",
        "new",
        "boxing",
    }
)
FREEZING = frozenset({"freezer", "jam", "chutney", "pickle", "pickling", "bottling", "freezing"})
SOLD_AT = frozenset({"stall", "gate", "market", "shop", "sale"})
EATEN = frozenset(
    {"us", "me", "tea", "supper", "dinner", "lunch", "breakfast", "ourselves", "soup", "salad", "pot"}
)
KEEPING = frozenset({"store", "cellar", "shed", "loft", "sand", "clamp", "storage"})


def _names_crop(typed: Typed, start: int, end: int) -> bool:
    return any(typed.kind(i, *CROPS, Kind.VARIETY)[0] for i in range(start, end))


def _is_counted(typed: Typed, i: int) -> bool:
    word = typed.words[i]
    return word.isdigit() or word in nouns.NUMBERS or word in ("half", "dozen")


def comes_off_a_bed(typed: Typed, end: int) -> bool:
    """Whether "off the Arch", "from Bed 2" stands before word `end`: what comes off a bed was picked."""
    for i in range(end - 1):
        if typed.words[i] in ("from", "off"):
            j = i + 1 + (typed.words[i + 1] in ARTICLES)
            if j < end and typed.kind(j, Kind.BED)[0]:
                return True
    return False
