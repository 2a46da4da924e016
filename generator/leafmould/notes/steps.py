"""Which steps of the walk are asked at a word, and in what order.

STEPS is the order. Most steps can begin at few words only, and with few verbs; the tables made from it say
at once who need not be asked, so that a word costs what its own steps cost. `slots` walks by them.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from leafmould.notes.amount_slots import take_amount
from leafmould.notes.beds import take_bed
from leafmould.notes.behind import take_preposition
from leafmould.notes.beside_crop import UNKNOWN_WORDS
from leafmould.notes.crops import take_crop
from leafmould.notes.day_words import DATE_LEADS, DAY_STARTS, take_date
from leafmould.notes.details import (
    WAITED_FOR,
    take_batch,
    take_cause,
    take_cover,
    take_everything,
    take_stuff,
    take_wait,
    take_with,
)
from leafmould.notes.measured import take_price, take_reading
from leafmould.notes.of_the_house import THINGS, take_thing
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
    FILLERS,
    JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
    SUBJECTS,
    THIRD_PERSONS,
)
from leafmould.notes.words.verbs import VERBS
from leafmould.values.date_words import MONTHS, SEASONS
from leafmould.values.names import FRACTIONS, Kind, Known, fold_word

Step = Callable[[Walk], bool]


DIGITS = "0"  # stands for every number in digits
REST = ""  # stands for every word no step is written for


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
    | nouns.ORDINALS
    | nouns.PICK_NOUNS
    | {DIGITS, "x", "dozen", "half", "quarter", "all", "both", "bunch", "icecream"}
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
    (take_more, THIRD_PERSONS | {"my", "our", "sh", "hes"}),
    (
        take_wait,
        frozenset(
            {DIGITS, "wait", "waiting", "leave", "no", "don", "dont", "do", "withhold", "withholding", "phi"}
        ),
    ),
    (take_cover, frozenset({"under", "undercover"})),
    (take_everything, frozenset({"everything", "everywhere", "all", "both", "every", "the"})),
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
    (take_mix, MIXES | ARTICLES | {"catch"}),
    (take_each, frozenset({"each", "per", "a"})),
    (take_side, PARTS),
    (take_amount, NUMBERS | TAKEN_OFF | {"more", "fewer"}),
    (take_thing, THINGS),
    (take_crop, frozenset()),
    (take_preposition, frozenset(PLACE_OPENERS)),
    (take_bed, ARTICLES | nouns.PLACE_NOUNS | {"both", "all"}),
    (take_remark, REMARK_OPENERS | {"with", "save", "bar", "size"}),
    (take_near_place, None),
    (take_unknown, None),
    (take_filler, UNKNOWN_WORDS | ARTICLES | FILLERS | SUBJECTS | {"all"}),
)
"""Each step with the words it may begin at, None for all; where a known name stands, those of NAME_STEPS may too."""


STEP_WORDS: frozenset[str] = frozenset().union(*(words for _, words in STEPS if words is not None))


A_NAME, A_BED, A_PART = 1, 2, 4
"""What a name may be, added up; 0 is no name."""

NAME_STEPS: dict[Step, int] = {take_crop: A_NAME, take_bed: A_BED, take_side: A_PART}
"""What a name must be, for a step to begin at it."""

BED, PART = Kind.BED, Kind.PART


def may_be(known: tuple[Known, ...]) -> int:
    """What a name may be the name of, as far as steps ask."""
    kinds = A_NAME
    for one in known:
        if one.kind is BED:
            kinds |= A_BED
        elif one.kind is PART:
            kinds |= A_PART
    return kinds


TOPIC, BEGIN, INSIDE = "before the verb", "behind a break or a join", "anywhere else"
"""Where in a clause a word stands."""


@lru_cache(maxsize=10_000)
def steps_at(key: str, name: int, verb: str, spot: str, has_batch: bool) -> tuple[Step, ...]:
    """The steps that may take a word, in order; the others need not be asked.

    Args:
        key: the word, if it is one of STEP_WORDS; DIGITS for a number, REST for any other.
        name: what the name that begins there may be; 0 for none.
        has_batch: whether a word such as "sowing" stands in the line, which makes batches of what is before it.
    """
    never = _never(VERBS[verb].slots, verb, spot, has_batch)
    return tuple(
        step
        for step, words in STEPS
        if step not in never and (words is None or key in words or NAME_STEPS.get(step, 0) & name)
    )


def _never(slots: frozenset[str], verb: str, spot: str, has_batch: bool) -> set[Step]:
    """The steps that have nothing to do beside this verb, or at such a spot."""
    never: set[Step] = {take_quote}
    if "to" not in slots:
        never.add(take_cause)
    if "with" not in slots and verb != "treated":
        never.add(take_stuff)
    if not slots & {"crop", "crop!"}:
        never.add(take_unknown)
    if "place" not in slots:
        never |= {take_side, take_near_place}
    if verb not in WAITED_FOR:
        never.add(take_wait)
    if not has_batch:
        never.add(take_batch)
    if spot == TOPIC:
        never |= {take_stuff, take_near_place, take_unknown}
    if spot != BEGIN:
        never |= {take_plan, take_more}
    return never
