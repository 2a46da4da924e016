"""Why a line is kept as text: it plans, it names no verb, or its verb means nothing kept here."""

from __future__ import annotations

from itertools import pairwise

from leafmould.notes.clause import Clause
from leafmould.notes.clauses import gerund_at
from leafmould.notes.draft import Asked
from leafmould.notes.mistyped import ask_of_torn
from leafmould.notes.nearness import near_word
from leafmould.notes.plans import (
    DAYS_TO_COME,
    PLAN_STARTS,
    intends_before,
    intention_at,
    is_thing_done,
    strong_plan_at,
)
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import NEGATIONS
from leafmould.notes.words.quiet import DEEDS, QUIET
from leafmould.notes.words.verbs import GERUNDS, PAST, PLAIN
from leafmould.values.names import Kind
from leafmould.values.problems import Level


def plan_in(typed: Typed) -> Asked | None:
    """What to tell of an intention; None if the line is none."""
    if typed.words[0] not in PLAN_STARTS:
        return None
    found = intention_at(typed, 0)
    if found is None and (size := strong_plan_at(typed)) > 0:
        word = typed.written(0, size)
        message = (
            f'"{word}" tells of a plan, so the line is kept as text. Write it in a past form once it is done.'
        )
        return Asked(Level.HINT, message, typed.starts[0])
    if (
        found is None
        or gerund_at(typed, 0) is not None
        or gerund_at(typed, min(1, typed.count - 1)) is not None
    ):
        return None
    begin, end = found
    form = tuple(typed.words[begin:end])
    if any(tuple(typed.words[begin : begin + size]) in PAST for size in (2, 3, 4)) and begin + 1 >= end:
        return None
    if form in PAST and not intends_before(typed, begin):
        return None  # "Dad put in two rows", "we cut back the mint"
    if begin == 0 and (
        is_thing_done(typed, end)
        or typed.phrase(end, 1) in NAMED_SO.get(form, ())
        or (form in THINGS and typed.phrase(end, 1)[:1] in LAID)
    ):
        return None
    word = typed.written(begin, end)
    verb = PLAIN.get(form)
    done = f' Write "{verb}" once it is done.' if verb else " Write it in a past form once it is done."
    return Asked(Level.HINT, f'"{word}" is a plan, so the line is kept as text.{done}', typed.starts[begin])


def without_verb(typed: Typed) -> tuple[str, Asked | None]:
    """The kind of text a line without a verb is, and what to ask."""
    denied = next((i for i, word in enumerate(typed.words[:5]) if word in NEGATIONS), None)
    if denied is not None and not (denied > 2 and _is_counted(typed, denied)):
        return "observation", None  # "leeks 75 no." counts
    if (wanted := _wanted(typed)) is not None:
        return "intention", wanted
    if not IDEAS.isdisjoint(typed.words[:6]) or _is_for_next_year(typed):
        return "intention", None
    return "text", ask_of_torn(typed) or _near_verb(typed) or _crop_alone(typed)


IDEAS = frozenset({"idea", "ideas", "wishlist", "wish", "todo", "reminder", "remember", "memo"})


def _is_for_next_year(typed: Typed) -> bool:
    """ "winter squash to grow next year": thought of, and nothing done."""
    return (
        ". " not in typed.plain
        and any(a == "next" and b in DAYS_TO_COME for a, b in pairwise(typed.words))
        and not any(typed.is_number(i) for i in range(typed.count))
    )


def _wanted(typed: Typed) -> Asked | None:
    """ "strawberries need netting", "Bed 2 wants weeding": still to be done."""
    at = next((i for i in range(1, typed.stops[0] - 1) if typed.words[i] in ("need", "want")), 0)
    if not at or not any(typed.names(i)[0] for i in range(at)):
        return None
    for i in range(at + 1, min(at + 4, typed.stops[0])):
        for size in (2, 1):
            verb = GERUNDS.get(tuple(typed.words[i : i + size]))
            if verb is not None and i + size <= typed.count:
                written = typed.written(i, i + size)
                told = f'"{written}" is a plan, so the line is kept as text. Write "{verb}" once it is done.'
                return Asked(Level.HINT, told, typed.starts[i])
    return None


def _near_verb(typed: Typed) -> Asked | None:
    for i, word in enumerate(typed.words[:4]):
        is_noun = (
            (word,) in PAST
            or word in nouns.COUNT_NOUNS
            or word in nouns.PRODUCTS
            or word in nouns.HENS
            or word in nouns.NUMBERS
            or word in NO_SLIPS
            or (word,) in PLAIN
        )
        is_own = is_noun or (word,) in PLAIN or word in ("hard", "heard")
        near = near_word(word, PAST_WORDS) if not typed.names(i)[0] and not is_own else None
        if near is not None and near != word:
            message = f'"{typed.written(i, i + 1)}" is no action known here, so the line is kept as text.'
            return Asked(Level.QUESTION, message, typed.starts[i], near)
    return None


def _is_but_said(typed: Typed) -> bool:
    """ "too hot to write", "dreadful wind, two panes out of the greenhouse": weather, its damage, or how it is; nothing counted or done."""
    words = set(typed.words)
    if not WEATHER.isdisjoint(words) and nouns.HENS.isdisjoint(words) and words.isdisjoint(STUFF):
        return True
    if any(typed.is_number(i) or typed.names(i)[0] for i in range(typed.count)) or not words.isdisjoint(
        STUFF
    ):
        return False
    if typed.count < 4 or typed.words[-1] in PUT_SO or any(w in nouns.NUMBERS and len(w) > 2 for w in words):
        return False  # "Apivar out", "Lunch: two artichokes"
    if typed.words[0].endswith("ed") and len(typed.words[0]) > 4 and typed.words[0] not in FELT:
        return False  # "edged the lawn"
    return not any(
        (w in DEEDS or w in THINGS_DONE or (w.endswith("ed") and len(w) > 4)) and w not in QUIET
        for w in typed.words
    )


STUFF = nouns.AMENDMENTS | nouns.COVERS | nouns.HIVE | nouns.EGGS | nouns.HENS | nouns.PRODUCTS | frozenset({"hose", "hosepipe", "sprinkler", "swarm"}) - {"food", "super", "tea"}  # fmt: skip
WEATHER = frozenset({"wind", "windy", "gale", "storm", "stormy", "rain", "rainy", "drizzle", "hail", "sleet", "snow", "fog", "thunder", "lightning", "smoke", "heatwave"})  # fmt: skip
FELT = frozenset({"rained", "poured", "snowed", "hailed", "frosted", "tired", "exhausted", "knackered", "pleased", "excited", "chuffed", "annoyed", "bored"})  # fmt: skip
PUT_SO = frozenset({"in", "out", "on", "off", "up", "down", "ripe"})
THINGS_DONE = frozenset({"new", "first", "last", "another", "arrived", "came"})


def _crop_alone(typed: Typed) -> Asked | None:
    spots = ((i, typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0]) for i in range(typed.count))
    crop = next((typed.written(i, i + size) for i, size in spots if size), None)
    if crop is None:
        if _is_but_said(typed):
            return None
        return Asked(Level.HINT, "No action is named here, so the line is kept as text.", typed.starts[0])
    message = f'What was done with "{crop}"? No action is named, so the line is kept as text.'
    return Asked(Level.QUESTION, message, typed.starts[0])


def told_aside(typed: Typed, clause: Clause) -> Asked | None:
    """ "onion sets, the lot (I never counted), bed 2": what was not done stands aside; nothing is said of the crop."""
    begin = next((i for i in range(clause.verb_start, -1, -1) if typed.breaks[i]), 0)
    is_aside = begin > 0 and ("(" in typed.gaps[begin] or _is_counted(typed, begin))
    return _crop_alone(typed) if is_aside else None


def _is_counted(typed: Typed, end: int) -> bool:
    """Whether a number stands before word `end`: "37 roots, twisted off not cut" tells of more than what was not done."""
    return any(
        typed.words[i].isdigit() or (typed.words[i] in nouns.NUMBERS and len(typed.words[i]) > 2)
        for i in range(end)
    )


def without_meaning(typed: Typed, clause: Clause, *, is_asked: bool) -> Asked:
    """A verb beside something no action is kept for."""
    written, column = typed.written(clause.verb_start, clause.verb_end), typed.starts[clause.verb_start]
    if is_asked:
        message = f'What was "{written}"? No crop of that name is known here, so the line is kept as text.'
        return Asked(Level.QUESTION, message, column)
    return Asked(Level.HINT, f'No action is read from "{written}" here, so the line is kept as text.', column)


NO_SLIPS = frozenset(
    {"scraped", "shaped", "sorted", "rained", "painted", "planned", "walked", "talked", "washed", "parked", "tiled", "filled", "rested",
     "hosted", "posted", "pointed", "printed", "swept", "stacked", "tested", "fitted", "heated", "treaded", "pasted", "tidied", "edged", "mended", "tilled", "fixed", "cleaned", "mixed", "sieved"}
)  # fmt: skip
"""Other things that were done: none of them is a slip of a deed with plants."""
THINGS = frozenset(
    (w,)
    for w in ("netting", "net", "mulch", "fleece", "cloche", "cover", "lime", "manure", "compost", "mulching")
)
NAMED_SO: dict[tuple[str, ...], tuple[tuple[str, ...], ...]] = {("water",): (("butt",), ("butts",), ("tank",), ("barrel",), ("bill",), ("pressure",), ("ban",)), ("net",): (("curtain",),), ("cover",): (("crop",), ("crops",))}  # fmt: skip
""" "Water butt dry": a thing, and no plan."""
LAID = (("on",), ("off",), ("down",), ("over",), ("up",), ("back",))
""" "netting down, redcurrants off": a thing, no plan."""
PAST_WORDS = frozenset(
    form[0] for form in PAST if len(form) == 1 and len(form[0]) > 4 and form[0].isascii()
) | frozenset(
    form[0]
    for form in PAST
    if len(form) > 1
    and form[0] in ("potted", "pricked", "hardened", "earthed", "pinched", "tied", "planted", "tested")
)
