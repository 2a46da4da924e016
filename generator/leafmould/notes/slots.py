"""The walk over one clause: each word goes to a slot, or into the remark.

STEPS is the order in which the readers of slots are asked; the first that takes the word moves the walk
on. What none takes is left over: a remark, without a warning.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from leafmould.notes.amount_slots import take_amount
from leafmould.notes.beds import take_bed
from leafmould.notes.behind import take_preposition
from leafmould.notes.clause import Clause
from leafmould.notes.crops import take_crop
from leafmould.notes.day_words import DATE_LEADS, DAY_STARTS, take_date
from leafmould.notes.details import (
    take_batch,
    take_cause,
    take_cover,
    take_everything,
    take_stuff,
    take_wait,
    take_with,
)
from leafmould.notes.measured import take_price, take_reading
from leafmould.notes.small_steps import (
    MIXES,
    take_each,
    take_filler,
    take_join,
    take_mix,
    take_more,
    take_near_place,
    take_plan,
    take_remark,
    take_side,
)
from leafmould.notes.strangers import take_unknown
from leafmould.notes.varieties import take_quote
from leafmould.notes.walk import Walk
from leafmould.notes.whole_amounts import TAKEN_OFF
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ABOUT,
    ARTICLES,
    JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
    THIRD_PERSONS,
)
from leafmould.notes.words.verbs import VERBS
from leafmould.values.date_words import MONTHS, SEASONS
from leafmould.values.names import FRACTIONS, fold_word


def walk_clause(walk: Walk, clause: Clause) -> None:
    """Fill the draft from the words before and behind the clause's verb."""
    if clause.particle is not None:
        walk.used = range(clause.particle, clause.particle + 1)
    walk.verb_end = clause.verb_end
    walk.is_topic = True
    over(walk, clause.start, clause.verb_start)
    walk.is_topic = clause.is_state
    if clause.verb_end > clause.verb_start:
        walk.draft.spans.append(
            ("verb", walk.typed.starts[clause.verb_start], walk.typed.ends[clause.verb_end - 1])
        )
    walk.joined = walk.after_comma = walk.was_or = False
    over(walk, clause.verb_end, clause.end)


def over(walk: Walk, start: int, end: int) -> None:
    walk.i, walk.end = start, end
    while walk.i < walk.end:
        i = walk.i
        if walk.typed.breaks[i]:
            walk.joined, walk.after_comma = True, not walk.is_topic
        elif (gap := walk.typed.gaps[i]) and ("&" in gap or "+" in gap or "/" in gap):
            walk.joined = True
        if i in walk.used or walk.is_seen(i):
            walk.i = i + 1
            continue
        for step in _steps_at(
            walk.typed.words[i], walk.typed.names(i)[0] > 0, walk.verb.name, i in walk.typed.quotes
        ):
            if step(walk):
                break
        else:
            walk.draft.leave(i, i + 1, walk.after_comma)
            walk.i = i + 1
            continue


Step = Callable[[Walk], bool]


DIGITS = "0"  # stands for every number in digits


DATE_WORDS = (
    DAY_STARTS | DATE_LEADS | {DIGITS, "the", "this", "last", "late", "early", "mid", "until", "till"}
)


PARTS = nouns.PART_SIDES | nouns.PART_COUNTED | ARTICLES | {DIGITS}


NUMBERS = (
    ABOUT
    | frozenset(nouns.NUMBERS)
    | frozenset(nouns.LONGEST_VAGUE)
    | frozenset(map(fold_word, FRACTIONS))
    | nouns.HOLDERS
    | nouns.SIZES
    | {DIGITS, "x", "dozen", "half", "quarter", "all", "bunch"}
)


STEPS: tuple[tuple[Step, frozenset[str] | None], ...] = (
    (take_quote, None),
    (take_join, JOINS | {"or"}),
    (
        take_batch,
        nouns.ORDINALS
        | frozenset(MONTHS)
        | frozenset(SEASONS)
        | ARTICLES
        | {DIGITS, "from", "of", "early", "late", "main", "last", "latest"},
    ),
    (take_plan, None),
    (take_more, THIRD_PERSONS),
    (
        take_wait,
        frozenset(
            {DIGITS, "wait", "waiting", "leave", "no", "don", "dont", "do", "withhold", "withholding", "phi"}
        ),
    ),
    (take_cover, frozenset({"under", "undercover"})),
    (take_everything, frozenset({"everything", "everywhere", "all", "every", "the"})),
    (take_cause, None),
    (take_with, frozenset({"with", "using"})),
    (take_stuff, None),
    (take_price, frozenset({DIGITS, "for", "at", "cost", "paid", "costing"})),
    (take_date, DATE_WORDS),
    (
        take_reading,
        frozenset(
            {
                "ph",
                "p",
                "nitrogen",
                "n",
                "k",
                "phosphoru",
                "phosphorus",
                "potassium",
                "magnesium",
                "organic",
                "om",
                "calcium",
                "salinity",
            }
        ),
    ),
    (take_mix, MIXES | ARTICLES),
    (take_each, frozenset({"each", "per", "a"})),
    (take_side, PARTS),
    (take_amount, NUMBERS | TAKEN_OFF | {"more", "fewer"}),
    (take_crop, frozenset()),
    (take_preposition, frozenset(PLACE_OPENERS)),
    (take_bed, ARTICLES | {"bed"}),
    (take_remark, REMARK_OPENERS | {"with", "save", "bar"}),
    (take_near_place, None),
    (take_unknown, None),
    (take_filler, None),
)
"""Each step with the words it may begin at; where a known name stands, those of NAME_STEPS may too."""


@lru_cache(maxsize=20_000)
def _steps_at(word: str, is_named: bool, verb: str, is_quote: bool) -> tuple[Step, ...]:
    """The steps that may take a word, in order; the others need not be asked."""
    key, slots = DIGITS if word.isdigit() else word, VERBS[verb].slots
    never = {take_quote} if not is_quote else set()
    if "to" not in slots:
        never.add(take_cause)
    if "with" not in slots and verb != "treated":
        never.add(take_stuff)
    if not slots & {"crop", "crop!"}:
        never.add(take_unknown)
    return tuple(
        step
        for step, words in STEPS
        if step not in never and (words is None or key in words or (is_named and step in NAME_STEPS))
    )


NAME_STEPS = frozenset({take_crop, take_bed, take_side})
