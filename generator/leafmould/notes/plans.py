"""Plans: words that make a line an intention, not a thing done."""

from __future__ import annotations

from itertools import pairwise

from leafmould.notes.typed import Typed
from leafmould.notes.words.prepositions import (
    ARTICLES,
    BEFORE_VERB,
    INTENDING,
    INTENDING_STARTS,
    LONGEST_INTENDING,
    LONGEST_PLAN,
    PLACE_OPENERS,
    REMARK_OPENERS,
    STRONG_FIRST,
    STRONG_PLANS,
    SUBJECTS,
)
from leafmould.notes.words.verbs import GERUNDS, LONGEST_PLAIN, PAST, PLAIN
from leafmould.values.names import Kind

NO_PLAN = frozenset(
    (w,)
    for w in (
        "was",
        "is",
        "were",
        "are",
        "check",
        "room",
        "cupboard",
        "shed",
        "tally",
        "total",
        "count",
        "swap",
        "packet",
        "order",
        "catalogue",
        "list",
        "box",
    )
)


NOUN_LEADS = frozenset({"of", "a", "an", "the", "my", "our", "another", "some"})
"""What follows these is a thing: "a bag of carrots" plans nothing."""


def intention_at(typed: Typed, start: int) -> tuple[int, int] | None:
    """Where a plain form stands that makes the words from `start` an intention ("sow", "need to weed")."""
    i = start
    limit = min(typed.count, start + 8)
    while i < limit and (i == start or not typed.breaks[i] or ":" in typed.gaps[i]):
        size = _plain_at(typed, i) if i == start or typed.words[i - 1] not in NOUN_LEADS else 0
        if size and size >= typed.names(i)[0] and typed.phrase(i + size, 1) not in NO_PLAN:
            return i, i + size
        step = _intending_at(typed, i)
        if step == 1 and _is_well(typed, i):
            step = 0
        if not step and typed.words[i] not in BEFORE_VERB:
            return None
        i += step or 1
    return None


LATER = frozenset({"tomorrow", "next", "follow", "later", "soon", "eventually"})
DAYS_TO_COME = frozenset(
    {
        "week",
        "weekend",
        "month",
        "year",
        "yr",
        "season",
        "spring",
        "summer",
        "autumn",
        "winter",
        "time",
        "job",
    }
)


def is_for_later(typed: Typed, start: int, stop: int) -> bool:
    """ "jam tomorrow", "lettuce to follow next week", "garlic next": what stands here is still to be done."""
    words = typed.words[start:stop]
    if LATER.isdisjoint(words):
        return False
    if "tomorrow" in words or words[-1] in ("next", "later", "soon"):
        return words[-1] != "later" or not any(w in ("day", "week", "hour", "minute") for w in words)
    is_next = any(a == "next" and b in DAYS_TO_COME for a, b in pairwise(words))
    return is_next or any(a == "to" and b == "follow" for a, b in pairwise(words))


def _is_well(typed: Typed, i: int) -> bool:
    """ "Well we finally got them in": no "we'll"."""
    return typed.words[i] == "well" and (
        typed.breaks[i + 1] or typed.words[i + 1] in SUBJECTS or typed.words[i + 1] in ("that", "it", "finally", "now", "then", "done")
    ) and "'" not in typed.plain[typed.starts[i] : typed.ends[i]]  # fmt: skip


def intends_before(typed: Typed, begin: int) -> bool:
    """Whether a word that plans stands before word `begin`."""
    return any(_intending_at(typed, i) and not _is_well(typed, i) for i in range(begin))


def is_thing_done(typed: Typed, end: int) -> bool:
    """ "Seed garlic went in", "compost bin turned": the first word is a thing, and what was done stands behind it."""
    stop = min(
        typed.count if any("(" in gap for gap in typed.gaps[end : end + 2]) else typed.stops[0], end + 8
    )
    if typed.phrase(end, 1) == ("of",) and (*typed.phrase(0, end), "of") in PAST:
        return True  # "winter prune of the Cox"
    for i in range(end, stop):
        word = typed.words[i]
        if i > end and typed.breaks[i] and ")" in typed.gaps[i]:
            stop = min(stop, i + 2)
        if (
            word in SUBJECTS
            or word in REMARK_OPENERS
            or word in PLACE_OPENERS
            or (word in ARTICLES and not typed.capital(i))
        ):
            return False
        if (
            (i > end or word not in ("put", "cut", "set", "dug", "fed"))
            and (word in DONE_TO or (word.endswith("ed") and (word,) in PAST))
            and not typed.names(i)[0]
        ):
            return True
    return False


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


DONE_TO = _words(
    """went came put turned sown sowed planted lifted picked spread laid moved emptied filled taken given thinned netted
    mulched weeded dug fixed mended pulled cleared pricked bought gone removed applied sold lost done pricked potted watered fed limed covered pruned tied staked cut sorted"""
)


def strong_plan_at(typed: Typed) -> int:
    """How many words at the start of a line say that it is still to be done: "I must", "need to"."""
    i = 0
    while i < min(3, typed.count) and typed.words[i] in PLAN_LEADS and not _plan_words(typed, i):
        i += 1
    size = _plan_words(typed, i)
    if not size or i + size >= typed.count or typed.words[i + size] in ("have", "bed", "be", "over"):
        return 0
    return (
        0
        if typed.names(i + size)[0] and any(k.kind is Kind.BED for k in typed.names(i + size)[1])
        else i + size
    )


PLAN_LEADS = frozenset(
    {"i", "we", "really", "still", "so", "just", "reckon", "think", "also", "now", "and", "am", "are", "im"}
)


PLAN_STARTS = frozenset({*LONGEST_PLAIN, *INTENDING_STARTS, *BEFORE_VERB, *PLAN_LEADS, *STRONG_FIRST})
"""The words one of which opens every line that plans."""


def _plan_words(typed: Typed, i: int) -> int:
    if i >= typed.count or typed.words[i] not in STRONG_FIRST or _is_well(typed, i):
        return 0
    for size in range(min(LONGEST_PLAN, typed.stops[i] - i), 0, -1):
        if tuple(typed.words[i : i + size]) in STRONG_PLANS:
            return size
    return 0


def _plain_at(typed: Typed, i: int) -> int:
    for size in range(min(LONGEST_PLAIN.get(typed.words[i], 0), typed.stops[i] - i), 0, -1):
        form = tuple(typed.words[i : i + size])
        if form in PLAIN or form in GERUNDS:
            return size
    return 0


def _intending_at(typed: Typed, i: int) -> int:
    if typed.words[i] not in INTENDING_STARTS:
        return 0
    for size in range(min(LONGEST_INTENDING, typed.count - i), 0, -1):
        if tuple(typed.words[i : i + size]) in INTENDING:
            return size
    return 0
