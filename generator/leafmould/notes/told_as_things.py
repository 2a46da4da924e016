"""Deeds told as things: "a good soak for the beans", "quick weed of Bed 2", "courgettes out in Bed 2".

Asked before verbs are looked for. What is made of each is a clause, as if its verb had been written.
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES
from leafmould.values.names import Kind


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


CARE = {
    "feed": "fed", "soak": "watered", "soaking": "watered", "watering": "watered", "drink": "watered", "drench": "watered",
    "weed": "weeded", "weeding": "weeded", "hoe": "weeded", "hoeing": "weeded", "trim": "pruned", "prune": "pruned", "pruning": "pruned",
    "haircut": "pruned", "clip": "pruned", "mulching": "mulched", "spray": "treated", "thinning": "thinned", "graft": "grafted",
}  # fmt: skip
"""What was done, said as a thing."""
HOW = _words(
    """a an the of another some bit good quick light weekly first second third last deep big long nice little liquid proper thorough
    decent heavy hard early late final monthly fortnightly daily usual regular gentle small short summer winter spring autumn
    seaweed comfrey nettle tomato foliar hand general through more lots and whip tongue cleft bud bark"""
)
"""What may stand before it."""
TO_WHAT = _words("for of on to in round around through along over")
CROPS = (Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)
CANES = nouns.SUPPORTS - {"frame", "arch", "string", "support"} | {"beanpole", "netting"}
HAVING = frozenset({"has", "have", "got"})
MARKS = frozenset({*CARE, "out", *CANES, *HAVING})
"""One of these stands near the beginning of every such line."""


def told_as_thing(typed: Typed) -> Clause | None:
    """The clause of a line that begins with a deed told as a thing."""
    if MARKS.isdisjoint(typed.words[:8]):
        return None
    return (
        _has_trouble(typed)
        or _care(typed)
        or _out_in_bed(typed)
        or _canes_up(typed)
        or _weeds_out(typed)
        or _spent_out(typed)
    )


def _care(typed: Typed) -> Clause | None:
    """ "weekly feed for the tomatoes": what was done, and behind "for" or "of" what to."""
    i = 0
    while i < typed.stops[0] and typed.words[i] in HOW and typed.words[i] not in CARE:
        i += 1
    if not 0 < i < typed.stops[0] - 1 or typed.words[i] not in CARE or typed.words[i + 1] not in TO_WHAT:
        return None
    if typed.words[i] == "feed" and typed.words[i + 1] == "of":
        return None  # "a feed of new potatoes": a meal
    j = i + 2
    while j < typed.stops[0] and (typed.words[j] in ARTICLES or typed.words[j] in nouns.SELDOM_VARIETY):
        j += 1
    is_known = j < typed.stops[0] and (typed.names(j)[0] or typed.words[j] in nouns.PLACE_NOUNS)
    if j >= typed.stops[0] or not (is_known or typed.words[j] in ("everything", "plant", "lot")):
        return None
    return Clause(0, i, i + 1, typed.count, (typed.words[i],), CARE[typed.words[i]])


def _out_in_bed(typed: Typed) -> Clause | None:
    """ "courgettes out in Bed 2": planted; a root that is out was lifted."""
    if "out" not in typed.words[: typed.stops[0]]:
        return None
    at = typed.words.index("out")
    i = 0
    while i < at and (size := typed.kind(i, *CROPS)[0] or _is_count(typed, i)):
        i += size
    named = [i for i in range(at) if typed.kind(i, *CROPS)[0]]
    if i != at or not named or not nouns.ROOTS.isdisjoint(typed.words[named[-1] : at]):
        return None
    if not _into_bed(typed, at + 1):
        return None
    return Clause(0, at, at + 1, typed.count, ("out",), "planted")


def _weeds_out(typed: Typed) -> Clause | None:
    """ "bindweed out of Bed 2": weeded."""
    words = typed.words
    i = next((k for k in range(typed.stops[0]) if words[k] not in HOW), typed.stops[0])
    if i + 2 >= typed.stops[0] or words[i] not in nouns.WEEDS or words[i + 1 : i + 3] != ["out", "of"]:
        return None
    j = i + 3
    while j < typed.stops[0] and words[j] in ARTICLES:
        j += 1
    if j >= typed.stops[0] or not typed.kind(j, Kind.BED, Kind.PART)[0]:
        return None
    return Clause(0, i, i + 2, typed.count, (words[i], "out"), "weeded")


def _spent_out(typed: Typed) -> Clause | None:
    """ "bolted lettuce out of Bed 2": cleared; "6 leeks out of Bed 2" may be picked."""
    words = typed.words
    at = next((k for k in range(2, typed.stops[0] - 1) if words[k : k + 2] == ["out", "of"]), 0)
    if not at or SPENT.isdisjoint(words[:at]) or any(typed.is_number(k) for k in range(at)):
        return None
    i = next((k for k in range(at) if typed.kind(k, *CROPS)[0]), at)
    j = at + 2
    while j < typed.stops[0] and words[j] in ARTICLES:
        j += 1
    if i + typed.names(i)[0] != at or j >= typed.count or not typed.kind(j, Kind.BED, Kind.PART)[0]:
        return None
    return Clause(0, at, at + 1, typed.count, ("out",), "cleared")


SPENT = frozenset({"old", "bolted", "spent", "dead", "dying", "diseased", "finished", "blighted", "frosted"})


def _has_trouble(typed: Typed) -> Clause | None:
    """ "the leeks have rust", "tomatoes have got blight": seen."""
    words = typed.words
    i = next((k for k in range(typed.stops[0]) if words[k] not in ARTICLES), 0)
    j = i + typed.kind(i, *CROPS)[0]
    begin = j
    while j < typed.stops[0] and (words[j] in HAVING or (j > begin and words[j] in nouns.SELDOM_VARIETY)):
        j += 1
    if not i < begin < j or words[begin] not in HAVING or j >= typed.stops[0]:
        return None
    end = next((k + 1 for k in range(j, min(j + 3, typed.stops[0])) if words[k] in nouns.TROUBLES), 0)
    if not end or any(typed.names(k)[0] for k in range(j, end)) or words[begin:j] == ["got"]:
        return None
    return Clause(0, begin, end, typed.count, (words[begin],), "saw", typed.written(j, end))


def _canes_up(typed: Typed) -> Clause | None:
    """ "bean canes up in Arch", "sticks in for the peas": held up."""
    i = 0
    while i < typed.stops[0] and typed.words[i] not in CANES and (typed.names(i)[0] or _is_count(typed, i)):
        i += typed.names(i)[0] or 1
    j = i + 1
    if j >= typed.stops[0] or typed.words[i] not in CANES or typed.words[j] not in ("up", "in"):
        return None
    named = any(typed.names(k)[0] for k in (*range(i), *range(j + 1, typed.stops[0])))
    is_open = typed.breaks[j + 1] or typed.words[j + 1] in (*TO_WHAT, "at", "today", "now")
    if not named or not is_open:
        return None
    return Clause(
        0, i, j + 1, typed.count, (typed.words[i], typed.words[j]), "staked", typed.written(i, i + 1)
    )


def _is_count(typed: Typed, i: int) -> int:
    word = typed.words[i]
    is_small = word in ARTICLES or word in nouns.NUMBERS or word in nouns.COUNT_NOUNS
    return 1 if word.isdigit() or is_small or word in ("all", "are", "now", "finally", "is") else 0


def _into_bed(typed: Typed, i: int) -> bool:
    if i >= typed.count or typed.breaks[i] or typed.words[i] not in ("in", "into", "on"):
        return False
    j = i + 1
    while j < typed.count and typed.words[j] in ARTICLES:
        j += 1
    return j < typed.count and typed.kind(j, Kind.BED)[0] > 0
