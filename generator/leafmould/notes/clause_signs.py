"""Signs that a clause begins, that a verb's form is no verb here, or that nothing was done.

Asked by `clauses` where its words give cause to.
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.said_first import TAKERS
from leafmould.notes.typed import Typed
from leafmould.notes.verbless import STUFF_VERBS
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, NEW_PLACE_OPENERS, PLACE_OPENERS
from leafmould.notes.words.verbs import PAST
from leafmould.values.names import Kind

FIERCE = frozenset(
    [
        "sharp",
        "severe",
        "killing",
        "howling",
        "torrential",
        "sudden",
        "bloody",
        "blasted",
        "damn",
        "damned",
        "flipping",
        "ruddy",
        "blooming",
        "hungry",
        "bold",
        "cheeky",
        "neighbouring",
        "marauding",
        "wretched",
        "pesky",
    ]
)


HALF_DONE = frozenset({"partly", "mostly", "nearly", "barely", "hardly", "family", "july"})
HURTING = frozenset({"dead", "killed", "died", "finished", "broke", "broken", "frozen", "gone", "up", "sore"})
BODY = frozenset(
    {
        "arm",
        "back",
        "leg",
        "knee",
        "hand",
        "foot",
        "feet",
        "phone",
        "battery",
        "finger",
        "wrist",
        "toe",
        "shoulder",
    }
)
"""What hurts after work is no loss."""


def joins(typed: Typed, i: int) -> bool:
    """Whether a sign before word `i` joins it to what stands before; the stroke of a date or a fraction does not."""
    gap = typed.gaps[i]
    if "/" in gap:
        return not (typed.words[i].isdigit() and typed.words[i - 1].isdigit())
    return "&" in gap or "+" in gap


def is_next_code(typed: Typed, i: int) -> bool:
    """The "t" of "(s 2/9 t 17/3)": behind a day, a code of the garden's own with its own day."""
    return (
        typed.words[i + 1 : i + 2] != []
        and typed.words[i + 1].isdigit()
        and not typed.breaks[i + 1]
        and any(k.kind is Kind.VERB for k in typed.names(i)[1])
    )


def is_place_word(typed: Typed, i: int) -> bool:
    """The "raised" of "in Raised bed A" is part of a name."""
    return (
        i > 0
        and not typed.breaks[i]
        and (typed.words[i - 1] in NEW_PLACE_OPENERS or typed.words[i - 1] in ("the", "on"))
        and i + 1 < typed.stops[i]
        and typed.words[i + 1] in nouns.PLACE_NOUNS
    )


TAKING = frozenset({"get", "got", "has", "had", "took", "take"})
TAKES = frozenset({"get", "has", "take"})
""" ", Martha gets two buckets": who, and no word of the deed."""


DONE_BEFORE = frozenset(
    {"forced", "dried", "frozen", "stored", "pickled", "chitted", "bolted", "saved", "potted", "rooted"}
)


def describes_topic(typed: Typed, i: int) -> bool:
    """ "forced rhubarb pulled 2 lb": how the crop is, where another verb stands right behind it."""
    size = typed.kind(i + 1, Kind.CROP, Kind.CROP_GROUP)[0] if i == 0 or typed.breaks[i] else 0
    end = i + 1 + size
    return size > 0 and end < typed.stops[i] and (typed.words[end],) in PAST and typed.words[end] != "put"


SELDOM_DONE = TAKES | DONE_BEFORE


def is_not_done(typed: Typed, i: int) -> bool:
    """Whether such a form is no verb where it stands."""
    return not is_taking(typed, i) if typed.words[i] in TAKES else describes_topic(typed, i)


def is_taking(typed: Typed, i: int) -> bool:
    """ ", Martha gets two buckets", ". Piet has six": somebody, and how much of it."""
    k, behind = i - 1, "" if typed.breaks[i + 1] else typed.words[i + 1]
    if k < 1 or not typed.breaks[k] or typed.names(k)[0]:
        return False
    is_counted = behind.isdigit() or behind in nouns.NUMBERS or behind in nouns.HOLDERS or behind in SHARES
    return is_counted and (typed.capital(k) or typed.words[k] in TAKERS)


SHARES = frozenset({"half", "the", "rest", "most", "some", "all"})


def describes_crop(typed: Typed, i: int) -> bool:
    """ "of stewed rhubarb", "the dried beans": how a crop is, not what was done."""
    return (
        (
            typed.words[i - 1] == "of"
            or (typed.words[i - 1] in ARTICLES and typed.words[i] not in ("cut", "set"))
        )
        and i + 1 < typed.count
        and not typed.breaks[i + 1]
        and bool(typed.kind(i + 1, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0])
    )


def stuff_at(typed: Typed, i: int) -> Clause | None:
    """ ", fleece over", "then straw on top", ", rabbit guard on": what was put on what stands before."""
    if typed.words[i - 1] == "then" and (i + 1 >= typed.count or typed.breaks[i + 1]):
        return Clause(
            0,
            i,
            i + 1,
            0,
            (typed.words[i],),
            STUFF_VERBS[typed.words[i]],
            typed.written(i, i + 1),
            is_laid=True,
        )
    j = i + 1
    while j < typed.stops[i] and typed.words[j] in STUFF_VERBS:
        j += 1
    is_slugs = typed.words[i] == "pellet" and typed.words[i - 1] == "slug"
    j += typed.words[j : j + 1] in (["back"], ["put"], ["laid"], ["spread"], ["now"])
    if (
        j >= typed.count
        or typed.breaks[j]
        or typed.words[j] not in ("on", "over", "round", "around", "off", "down" if is_slugs else "on")
    ):
        return None
    after = typed.words[j + 1 : j + 2]
    if not (
        j + 1 >= typed.count
        or typed.breaks[j + 1]
        or after in (["top"], ["them"], ["it"], ["the"], ["each"], ["all"], ["and"], ["for"], ["against"])
    ):
        return None
    stuff = next(k for k in range(j - 1, i - 1, -1) if typed.words[k] in STUFF_VERBS)
    verb = STUFF_VERBS[typed.words[stuff]]
    verb = "uncovered" if typed.words[j] == "off" else "treated" if is_slugs else verb
    end = j + 1 + (after in (["top"], ["them"], ["it"]))
    return Clause(0, i, end, 0, (typed.words[i],), verb, typed.written(i - is_slugs, j), is_laid=True)


RUN_ON = frozenset({"ate", "froze", "gave", "took", "sold", "cooked", "got", "composted", "binned"})


RUN_ON_OBJECTS = frozenset({"them", "it", "half", "some", "all", "most", "both", "loads", "em"})


def runs_on(typed: Typed, i: int) -> bool:
    """ "picked strawberries from tub 1 ate them all": another deed without a comma."""
    after = typed.words[i + 1 : i + 3]
    if not after or typed.breaks[i + 1]:
        return False
    if typed.breaks[i - 1] and typed.capital(i - 1) and not typed.names(i - 1)[0]:
        return False  # ", Tom took half"
    if typed.words[i] == "got":
        return after[0].isdigit()
    if typed.words[i] == "gave" and after[0] == "away":
        return True
    return after[0] in RUN_ON_OBJECTS or after in (["the", "rest"], ["the", "lot"], ["the", "other"])


def goes_on(typed: Typed, end: int) -> bool:
    """Whether "all over" goes on to what it was all over."""
    return (
        end < typed.count
        and not typed.breaks[end]
        and (typed.words[end] in ARTICLES or bool(typed.names(end)[0]))
        and (typed.words[end - 2] == "all")
    )


DESCRIBED = frozenset({"about", "well", "half", "part", "home", "freeze", "oven", "shop", "freshly"})


DESCRIBING = frozenset(
    (w,) for w in ("growing", "rotted", "grown", "dried", "saved", "frozen", "bought", "raised", "picked")
)


def is_loss(typed: Typed, clause: Clause, begin: int) -> bool:
    """ "none of the parsnips came up": a loss, not a thing that did not happen."""
    words = typed.words
    none = any(words[j] in ("none", "nothing") for j in range(begin, clause.verb_start)) or (
        words[begin] == "no"
        or words[begin : begin + 2] == ["not", "one"]
        or words[begin : begin + 3] == ["not", "a", "single"]
    )
    return (
        none and clause.verb == "came up" and not clause.is_state and "yet" not in words and "so" not in words
    )


def is_cursed(typed: Typed, i: int) -> bool:
    """ "in this blasted wind"; not "blasted aphids off the beans"."""
    return typed.words[i - 1] in ("this", "that", "the", "these", "those") and i > 0


def is_denied_after(typed: Typed, i: int) -> bool:
    """ "picked no peas", "saw nothing"."""
    return (
        i < typed.count
        and not typed.breaks[i]
        and typed.words[i] in ("no", "nothing", "none", "nowt", "neither", "nil", "zero", "not")
    )


HOW_HARD = frozenset({"hard", "well", "lightly", "severely", "properly", "right", "a", "by", "because", "where", "as", "before", "after"})  # fmt: skip


def ends_object(typed: Typed, j: int, particle: str) -> bool:
    """Whether the particle at `j` closes the object, rather than opening a place."""
    after = j + 1
    if after >= typed.count or typed.breaks[after]:
        return True
    if particle == "up" and (typed.is_number(after) or typed.words[after] in ("a", "about", "around", "by")):
        return typed.words[j - 1] in ("it", "them")  # "hilled it up a couple of inches"
    if particle in ("in", "on", "off", "over", "up", "down"):
        return (
            typed.words[after] in ("and", "to", "with", "from", "in", "into", "at", "today")
            and particle != typed.words[after]
        )
    if particle in ("back", "down") and typed.words[after] in HOW_HARD:
        return True  # "cut the elder back hard"
    return typed.words[after] in PLACE_OPENERS or typed.words[after] in (
        "and",
        "with",
        "today",
        "yesterday",
        "now",
        "then",
        "again",
    )


TO_COME = frozenset({"will", "ill", "shall", "must", "should", "might", "gonna", "lets"})
UNREAL = frozenset({"would", "should", "could", "might"})
""" "would have picked the beans": not done."""
