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
from leafmould.notes.crops import take_crop, take_quote
from leafmould.notes.day_words import DATE_LEADS, take_date
from leafmould.notes.details import (
    take_batch,
    take_cause,
    take_cover,
    take_everything,
    take_exceptions,
    take_stuff,
    take_wait,
    take_with,
)
from leafmould.notes.measured import take_price, take_reading
from leafmould.notes.places import near_place_alone, past_whole, take_part
from leafmould.notes.plans import intention_at
from leafmould.notes.strangers import UNKNOWN_WORDS, take_unknown
from leafmould.notes.walk import Walk
from leafmould.notes.whole_amounts import TAKEN_OFF
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ABOUT,
    ARTICLES,
    BEING,
    FILLERS,
    JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
    SUBJECTS,
    THIRD_PERSONS,
)
from leafmould.notes.words.verbs import VERBS, as_done
from leafmould.values.date_forms import FIRST_WORDS
from leafmould.values.date_words import MONTHS, SEASONS
from leafmould.values.names import FRACTIONS, Kind, fold_word
from leafmould.values.problems import Level


def walk_clause(walk: Walk, clause: Clause) -> None:
    """Fill the draft from the words before and behind the clause's verb."""
    if clause.particle is not None:
        walk.used = range(clause.particle, clause.particle + 1)
    walk.verb_end = clause.verb_end
    walk.is_topic = True
    _over(walk, clause.start, clause.verb_start)
    walk.is_topic = clause.is_state
    if clause.verb_end > clause.verb_start:
        walk.draft.spans.append(
            ("verb", walk.typed.starts[clause.verb_start], walk.typed.ends[clause.verb_end - 1])
        )
    walk.joined = walk.after_comma = walk.was_or = False
    _over(walk, clause.verb_end, clause.end)


def _over(walk: Walk, start: int, end: int) -> None:
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


def _take_join(walk: Walk) -> bool:
    word = walk.word(walk.i)
    if word == "or":
        walk.was_or = walk.joined = True
    elif word in JOINS:
        walk.joined = True
    else:
        return False
    if walk.i in walk.typed.quotes or walk.typed.names(walk.i)[0]:
        return False
    walk.i += 1
    return True


def _take_plan(walk: Walk) -> bool:
    """Behind a comma: "need to sow more" is a remark, not a thing done."""
    i = walk.i
    if (
        walk.is_topic
        or not (walk.typed.breaks[i] or walk.typed.words[i - 1] in JOINS)
        or walk.typed.names(i)[0]
    ):
        return False
    if intention_at(walk.typed, i) is None:
        return False
    walk.draft.leave(i, walk.stop(i), True)
    walk.i = walk.stop(i)
    return True


def _take_each(walk: Walk) -> bool:
    i, word = walk.i, walk.word(walk.i)
    if word == "each" or (
        word in ("per", "a")
        and walk.word(i + 1) in ("plant", "row", "bed", "tub", "pot")
        and walk.draft.item.amounts
    ):
        walk.draft.is_each = walk.draft.is_each or word == "each"
        if word != "each":
            return False
        walk.span("each", i, i + 1)
        walk.i = i + 1 + (walk.word(i + 1) in ("of", "in"))
        return True
    return False


MIXES = frozenset({"mix", "mixture", "mixed", "blend", "combination"})


def _take_mix(walk: Walk) -> bool:
    i = walk.i
    j = walk.past_articles(i)
    if walk.word(j) in MIXES and not walk.typed.names(j)[0]:
        if walk.word(j + 1) in ("of", "row", "bed", "packet"):
            walk.draft.item.is_mix = True
            walk.i = j + 1 + (walk.word(j + 1) in ("of",))
            return True
        return False
    return False


def _take_side(walk: Walk) -> bool:
    """ "the north half": a part, if it is one here."""
    i = walk.i
    if walk.typed.words[i].isdigit() and walk.word(i + 1) not in ("st", "nd", "rd", "th"):
        return False
    return walk.has("place") and take_part(walk)


def _take_remark(walk: Walk) -> bool:
    """Small words that open a remark: all to the next comma belongs to it."""
    i, word = walk.i, walk.word(walk.i)
    if word == "with" and walk.verb.name in ("sowed", "planted", "started", "put up"):
        j = walk.past_articles(i + 1)
        while (
            walk.verb.name == "put up" and walk.word(j) in nouns.SELDOM_VARIETY and not walk.typed.names(j)[0]
        ):
            j += 1
        size, known = walk.typed.kind(j, Kind.CROP, Kind.CROP_GROUP) if j < walk.end else (0, ())
        if size and not walk.draft.has_crop:
            walk.i = i + 1
            return True
        if size:
            walk.ask(
                Level.QUESTION,
                f'Was "{known[0].name}" {as_done(walk.verb.name)} too? Read as yes; join with "and" to make it sure.',
                i,
            )
            walk.joined = True
            walk.i = i + 1
            return True
    if word == "with" and walk.verb.name == "planted" and not walk.draft.has_crop and walk.draft.places:
        walk.i = i + 1  # "underplanted Old pear with 12 strawberries"
        return True
    if _is_left_standing(walk, word):
        walk.draft.everything = True
        take_exceptions(walk)
        return True
    if word in ("save", "bar"):
        return False
    if word == "next" and walk.word(i + 1) == "door":
        walk.draft.leave(i, i + 2, walk.after_comma)
        walk.i = i + 2
        return True
    if word not in REMARK_OPENERS and not (word == "with" and walk.verb_end < i):
        return False
    end = i + 1
    while (
        end < walk.stop(i)
        and not (
            walk.word(end) in ("in", "from", "into", "over", "on", "along", "across")
            and walk.bed_at(past_whole(walk, walk.past_articles(end + 1)))[1] is not None
            and not walk.draft.places
        )
        and not (walk.word(end) == "with" and (walk.has("with") or walk.verb.name == "treated"))
    ):
        end += 1
    if word in ("except", "but") and walk.verb.name in ("cleared", "finished", "lost"):
        walk.ask(
            Level.QUESTION, f'"{walk.typed.written(i, end)}" is kept as a remark. What is left standing?', i
        )
    walk.draft.leave(i, end, walk.after_comma)
    walk.i = end
    return True


def _is_left_standing(walk: Walk, word: str) -> bool:
    """ "cleared Long border except the kale"."""
    j = walk.past_articles(walk.i + 1)
    j += walk.word(j) == "for"
    return (
        word in ("except", "but", "save", "bar")
        and walk.verb.name == "cleared"
        and not walk.draft.has_crop
        and bool(walk.draft.places or walk.draft.everything)
        and bool(walk.typed.kind(walk.past_articles(j), Kind.CROP, Kind.CROP_GROUP)[0] and j < walk.end)
    )


def _take_more(walk: Walk) -> bool:
    """ ", they are on the shelf": nothing done, only more about it."""
    i = walk.i
    begins = walk.typed.breaks[i] or (i > walk.verb_end and walk.typed.words[i - 1] in JOINS)
    if walk.is_topic or not begins or walk.word(i + 1) not in BEING:
        return False
    walk.draft.leave(i, walk.stop(i), True)
    walk.i = walk.stop(i)
    return True


def _take_filler(walk: Walk) -> bool:
    """ "the", "some", "we": words that say nothing here."""
    i, word = walk.i, walk.word(walk.i)
    if walk.is_topic and word in UNKNOWN_WORDS:
        walk.i = i + 1
        return True
    if word == "all" and walk.word(i + 1) in ("up", "told", "together"):
        walk.i = i + 2
        return True
    if word in ARTICLES or word in FILLERS or (walk.is_topic and word in SUBJECTS):
        walk.i = i + 1
        return True
    return False


def _take_near_place(walk: Walk) -> bool:
    """Behind crop: a slip of a bed's name, where a bed is missing: "sowed peas Long bordr"."""
    if (
        walk.draft.places
        or walk.is_topic
        or not walk.has("place")
        or (walk.typed.breaks[walk.i] and not walk.draft.has_crop)
    ):
        return False
    if not (walk.draft.has_crop or walk.has("bed")) or walk.typed.names(walk.i)[0]:
        return False
    return near_place_alone(walk, walk.i)


Step = Callable[[Walk], bool]


DIGITS = "0"  # stands for every number in digits


DATE_WORDS = (
    FIRST_WORDS | DATE_LEADS | {DIGITS, "the", "this", "last", "late", "early", "mid", "until", "till"}
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
    (_take_join, JOINS | {"or"}),
    (
        take_batch,
        nouns.ORDINALS
        | frozenset(MONTHS)
        | frozenset(SEASONS)
        | ARTICLES
        | {DIGITS, "from", "of", "early", "late", "main", "last", "latest"},
    ),
    (_take_plan, None),
    (_take_more, THIRD_PERSONS),
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
    (_take_mix, MIXES | ARTICLES),
    (_take_each, frozenset({"each", "per", "a"})),
    (_take_side, PARTS),
    (take_amount, NUMBERS | TAKEN_OFF | {"more", "fewer"}),
    (take_crop, frozenset()),
    (take_preposition, frozenset(PLACE_OPENERS)),
    (take_bed, ARTICLES | {"bed"}),
    (_take_remark, REMARK_OPENERS | {"with", "save", "bar"}),
    (_take_near_place, None),
    (take_unknown, None),
    (_take_filler, None),
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


NAME_STEPS = frozenset({take_crop, take_bed, _take_side})
