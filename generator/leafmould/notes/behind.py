"""What stands behind a preposition: a place, a crop, a source, or a remark.

One step of the walk over a clause; places themselves are in `places`.
"""

from __future__ import annotations

from leafmould.notes.amount_slots import number_next
from leafmould.notes.amounts import read_amount
from leafmould.notes.days_in_figures import day_in_figures
from leafmould.notes.places import take_place_after
from leafmould.notes.shares import SHARED_OUT
from leafmould.notes.short_places import take_each
from leafmould.notes.small_steps import rate_of_crop
from leafmould.notes.walk import Walk
from leafmould.notes.what_follows import crop_behind
from leafmould.notes.who_from import take_source
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    JOINS,
    PLACE_OPENERS,
)
from leafmould.values.names import Kind
from leafmould.values.problems import Level


def take_preposition(walk: Walk) -> bool:
    i = walk.i
    word = walk.word(i)
    if (
        word not in PLACE_OPENERS
        or walk.typed.kind(i, Kind.BED)[0] > 1
        or (word == "of" and walk.typed.kind(i - 1, Kind.MEASURE)[0])
    ):
        return False
    if word in ("in", "into") and walk.verb.name in ("put up", "stored") and _in_holders(walk, i + 1):
        walk.i = i + 1  # "froze 1.5 kg in 3 bags"
        return True
    if word == "for" and walk.verb.name == "bought" and not walk.draft.has_crop and crop_behind(walk, i + 1):
        walk.i = i + 1  # "paid £3.95 for ten tomato seeds"
        return True
    if word == "from" and walk.verb.name == "moved" and walk.draft.origins:
        if walk.bed_at(walk.past_articles(i + 1))[1] is not None:
            walk.ask(Level.QUESTION, "Two moves in one line. Write a line for each.", i)
        return False
    if word in ("from", "up", "down") and walk.word(i + 1) in (
        "under",
        "behind",
        "off",
        "inside",
        "against",
        "within",
    ):
        walk.i = i + 1  # "from under the Old pear"
        if walk.word(i + 1) in PLACE_OPENERS and take_place_after(walk, i + 1):
            return True
        walk.i = i
    if word in ("in", "into", "to", "on") and walk.word(i + 1) in ("each", "every"):
        if take_each(walk, i, "at"):
            return True
        if walk.word(i + 2) in SHARED_OUT and rate_of_crop(walk, i, i + 3):
            return True
    if take_place_after(walk, i):
        return True
    if word in ("in", "into", "to", "on") and walk.word(i + 1) == "each" and walk.word(i + 2) == "of":
        walk.draft.is_each = True  # "one in each of Tub 1 and Tub 2"
        walk.i = i + 3
        return True
    if _crop_behind(walk, i):
        return True
    if take_source(walk):
        return True
    if (
        walk.verb.name == "put up"
        and word in ("from", "out", "of")
        and number_next(walk, i + 1 + (walk.word(i + 1) == "of"))
    ):
        walk.i = i + 1
        return True
    if (
        word == "at"
        and walk.typed.is_number(i + 1)
        and walk.verb.name in ("covered", "uncovered", "let out", "opened")
    ):
        walk.draft.leave(i, i + 2, walk.after_comma)  # "shut the cold frame at 6"
        walk.i = i + 2
        return True
    is_number = walk.typed.is_number(i + 1) or (
        walk.verb.name == "thinned" and walk.word(i + 1) in nouns.NUMBERS
    )
    if word in ("at", "to") and is_number and (word == "at" or walk.verb.name == "thinned"):
        walk.i = i + 1
        return True
    if word == "against":
        return False
    if word == "in" and walk.word(i + 1) == "row" and walk.typed.is_number(i + 2) and walk.has("crop!"):
        walk.draft.leave(i, i + 2, walk.after_comma)  # "in rows 15cm apart"
        walk.i = i + 2
        return True
    if word == "of" or (word in ("to", "up") and walk.is_topic):
        walk.i = i + 1
        return True
    end = _phrase(walk, i)
    walk.draft.leave(i, end, walk.after_comma)
    walk.i = end
    return True


CROP_LEADS = frozenset(
    {
        "on",
        "of",
        "from",
        "to",
        "for",
        "over",
        "around",
        "round",
        "under",
        "off",
        "in",
        "along",
        "down",
        "onto",
        "through",
        "out",
        "at",
        "by",
    }
)


def _crop_behind(walk: Walk, i: int) -> bool:
    """ "aphids on broad beans", "cuttings from rosemary", "straw under the strawberries"."""
    if (
        (walk.draft.has_crop and not _has_next_amount(walk))
        or walk.word(i) not in CROP_LEADS
        or (
            walk.has("crop!")
            and not (walk.verb.name == "picked" and walk.word(i) in ("off", "from"))
            and walk.verb.name
            not in (
                "took cuttings",
                "saved seed",
                "divided",
                "planted",
                "lost",
                "put up",
                "used",
                "tried seed",
            )
        )
    ):
        return False
    if walk.word(i) in ("for", "to") and not walk.has("bed"):
        return False
    if walk.word(i) == "for" and walk.draft.places:
        return False  # "cleared bed 2 for the leeks"
    j = walk.past_articles(i + 1 + (walk.word(i) == "out" and walk.word(i + 1) == "of"))
    while walk.word(j) in nouns.SELDOM_VARIETY and not walk.typed.names(j)[0] and j < walk.stop(j):
        j += 1
    if j >= walk.end or walk.typed.breaks[j]:
        return False
    if (read := read_amount(walk.typed, j, walk.decimal)) is not None and not walk.typed.names(j)[0]:
        j = (
            read.end
            if read.end < walk.end and walk.typed.kind(read.end, Kind.CROP, Kind.CROP_GROUP)[0]
            else j
        )
    if not (walk.typed.kind(j, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0] or j in walk.typed.quotes):
        return False
    walk.i = i + 1
    return True


def _has_next_amount(walk: Walk) -> bool:
    """ "six cans to the marrows, four to the celeriac"."""
    item = walk.draft.item
    return walk.verb.name in ("watered", "fed") and bool(item.amounts) and not item.crops


def _in_holders(walk: Walk, i: int) -> bool:
    is_number = walk.typed.is_number(i) or (walk.word(i) in nouns.NUMBERS and walk.word(i) not in ("a", "an"))
    return (
        is_number
        and i + 1 < walk.end
        and (walk.word(i + 1) in nouns.HOLDERS or walk.word(i + 1) in ("bunch", "string"))
        and walk.bed_at(i + 1)[1] is None
    )


MONEY_SIGNS = ("£", "$", "€", "@")
LENT = frozenset({"loan", "use", "lend", "sake", "help"})
""" "for the loan of the extractor"."""


def _phrase(walk: Walk, i: int) -> int:
    """The end of a phrase no slot wants: "in a block", "to 9 cm pots"."""
    end, stop = i + 1, walk.stop(i + 1) if i + 1 < walk.end else walk.end
    while end < stop:
        word = walk.typed.words[end]
        if (
            (word in PLACE_OPENERS and end > i + 1 and not (word == "of" and walk.word(end - 1) in LENT))
            or word in JOINS
            or end in walk.used
            or end in walk.typed.quotes
            or (end > i + 1 and day_in_figures(walk, end))
        ):
            break
        if (
            (word == "half" or word in nouns.NUMBERS or word.isdigit())
            and end > i + 1
            and walk.word(end + 1) in ("to", "for", "in", "into")
        ):
            break  # "half for us half for Mum"
        if walk.typed.is_number(end) and walk.typed.gaps[end].rstrip()[-1:] in MONEY_SIGNS:
            break  # "at the gate £1.50 each"
        if end > i + 1 and walk.typed.names(end)[0] and walk.typed.words[end - 1] not in ARTICLES:
            break
        end += 1
    return max(end, i + 1)
