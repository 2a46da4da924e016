"""The small steps of the walk over a clause: joining words, mixes, remarks, fillers, whatever nothing else took.

`slots` holds the walk itself and the order of its steps.
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.beside_crop import UNKNOWN_WORDS
from leafmould.notes.days_in_figures import day_in_figures
from leafmould.notes.details import (
    take_exceptions,
)
from leafmould.notes.new_places import near_place_alone
from leafmould.notes.parts import take_part
from leafmould.notes.places import past_whole
from leafmould.notes.plans import LATER, intention_at, is_for_later
from leafmould.notes.said_first import TAKERS
from leafmould.notes.shares import SHARED_OUT, on_both_sides
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    BEING,
    FILLERS,
    JOINS,
    REMARK_OPENERS,
    SUBJECTS,
)
from leafmould.notes.words.verbs import as_done
from leafmould.values.names import Kind
from leafmould.values.problems import Level


def take_join(walk: Walk) -> bool:
    word = walk.word(walk.i)
    if word == "or" and not walk.typed.names(walk.i)[0]:  # "OR" may be the Orchard row
        walk.was_or = walk.joined = True
    elif word in JOINS:
        walk.joined = True
    else:
        return False
    if walk.i in walk.typed.quotes or walk.typed.names(walk.i)[0]:
        return False
    walk.i += 1
    return True


def take_plan(walk: Walk) -> bool:
    """Behind a comma: "need to sow more" is a remark, not a thing done."""
    i = walk.i
    if (
        walk.is_topic
        or not (walk.typed.breaks[i] or walk.typed.words[i - 1] in JOINS)
        or (walk.typed.names(i)[0] and LATER.isdisjoint(walk.typed.words))
    ):
        return False
    is_to_come = walk.typed.breaks[i] and i > walk.verb_end and is_for_later(walk.typed, i, walk.stop(i))
    if not is_to_come and (
        intention_at(walk.typed, i) is None or (walk.word(i) in nouns.HOLDERS and walk.typed.is_number(i + 1))
    ):
        return False  # ", bag 3 of the Bag row"
    walk.draft.leave(i, walk.stop(i), True)
    walk.i = walk.stop(i)
    return True


def take_each(walk: Walk) -> bool:
    i, word = walk.i, walk.word(walk.i)
    if word == "per" and walk.word(i + 1) in SHARED_OUT and rate_of_crop(walk, i, i + 2):
        return True
    if word == "each" or (
        word in ("per", "a")
        and walk.word(i + 1) in ("plant", "row", "bed", "tub", "pot")
        and walk.draft.item.amounts
    ):
        walk.draft.is_each = walk.draft.is_each or word == "each"
        if word != "each":
            return False
        if walk.word(i + 1) in ("side", "end") and _on_each_side(walk, i):
            return True
        walk.span("each", i, i + 1)
        walk.i = i + 1 + (walk.word(i + 1) in ("of", "in"))
        return True
    return False


def _on_each_side(walk: Walk, i: int) -> bool:
    """ "6 each side": twelve."""
    amounts = walk.draft.item.amounts
    if not amounts or amounts[-1].value is None:
        return False
    walk.draft.is_each = False
    amounts[-1] = on_both_sides(amounts[-1], walk.typed.written(i, i + 2))
    walk.span("each", i, i + 2)
    walk.i = i + 2
    return True


def rate_of_crop(walk: Walk, i: int, end: int) -> bool:
    """ "2 tomatoes per tub", "4 lettuces to each pot": the number before the crop is a rate."""
    item = walk.draft.item
    if len(item.amounts) != 1 or item.crop_end != i or item.amounts[0].value is None:
        return False
    amount = item.amounts.pop()
    unit = f"{amount.unit}/{walk.word(end - 1)}"
    written = f"{amount.written} {walk.typed.written(i, end)}"
    walk.draft.total.append(replace(amount, written=written, unit=unit))
    walk.span("amount", i, end)
    walk.i = end
    return True


MIXES = frozenset({"mix", "mixture", "mixed", "blend", "combination"})


def take_mix(walk: Walk) -> bool:
    i = walk.i
    j = walk.past_articles(i)
    if walk.typed.phrase(j, 3) == ("catch", "crop", "of"):
        walk.i = j + 3  # "a catch crop of radish"
        return True
    if walk.word(j) in MIXES and not walk.typed.names(j)[0]:
        if walk.word(j + 1) in ("of", "row", "bed", "packet"):
            walk.draft.item.is_mix = True
            walk.i = j + 1 + (walk.word(j + 1) in ("of",))
            return True
        return False
    return False


def take_side(walk: Walk) -> bool:
    """ "the north half": a part, if it is one here."""
    i = walk.i
    if walk.typed.words[i].isdigit() and walk.word(i + 1) not in ("st", "nd", "rd", "th"):
        return False
    return walk.has("place") and take_part(walk)


def take_remark(walk: Walk) -> bool:
    """Small words that open a remark: all to the next comma belongs to it."""
    i, word = walk.i, walk.word(walk.i)
    is_filled = walk.typed.words[walk.verb_end - 1] == "filled"  # "filled a basket with plums"
    if word == "with" and (walk.verb.name in ("sowed", "planted", "started", "put up") or is_filled):
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
    if word == "with" and _is_gap_between(walk, i + 1):
        walk.i = i + 1  # "4 rows with 20 cm between"
        return True
    if word == "with" and walk.verb.name == "planted" and not walk.draft.has_crop and walk.draft.places:
        walk.i = i + 1  # "underplanted Old pear with 12 strawberries"
        return True
    if word == "with" and walk.verb.name == "gave away" and not walk.draft.has_crop:
        walk.i = i + 1  # "sent Sam home with a bag of beans"
        return True
    if _is_left_standing(walk, word):
        walk.draft.everything = True
        take_exceptions(walk)
        return True
    if word in ("save", "bar"):
        return False
    if word == "size" and walk.word(i + 1) == "of":
        walk.draft.leave(i, walk.stop(i), walk.after_comma)  # "size of a walnut"
        walk.i = walk.stop(i)
        return True
    if word == "next" and walk.word(i + 1) == "door":
        walk.draft.leave(i, i + 2, walk.after_comma)
        walk.i = i + 2
        return True
    if word not in REMARK_OPENERS and not (word == "with" and walk.verb_end < i):
        return False
    end = i + 1
    while (
        end < walk.stop(i)
        and not (word in WHERE and end > i + 1 and day_in_figures(walk, end))
        and not (
            word != "which"
            and walk.word(end) in ("in", "from", "into", "over", "on", "along", "across")
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


WHERE = frozenset(
    {"under", "between", "behind", "beside", "near", "with", "against", "around", "round", "inside", "outside", "along", "below",
     "above", "among", "alongside", "opposite"}
)  # fmt: skip
"""What follows these says where or with what, and a day behind it is the day of the deed."""


def _is_gap_between(walk: Walk, i: int) -> bool:
    is_length = walk.typed.is_number(i) and walk.word(i + 1) in ("cm", "in", "inch", "mm", "ft", "foot")
    return is_length and walk.word(i + 2) in ("between", "apart", "spacing") and walk.has("crop!")


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


def take_more(walk: Walk) -> bool:
    """ ", they are on the shelf": nothing done, only more about it."""
    i = walk.i
    begins = walk.typed.breaks[i] or (i > walk.verb_end and walk.typed.words[i - 1] in JOINS)
    others = walk.word(i) in ("they", "she", "he", "sh", "hes") and not walk.is_topic and begins
    if others and not any(
        walk.typed.is_number(k) or walk.word(k) in nouns.NUMBERS for k in range(i, walk.stop(i))
    ):
        walk.draft.leave(i, walk.stop(i), True)  # "they fetch more Friday"
        walk.i = walk.stop(i)
        return True
    is_mine = walk.word(i) in ("my", "our") and walk.word(i + 2) in BEING  # "our tomatoes are late"
    if walk.is_topic or not begins or not (walk.word(i + 1) in BEING or is_mine):
        return False
    walk.draft.leave(i, walk.stop(i), True)
    walk.i = walk.stop(i)
    return True


def take_filler(walk: Walk) -> bool:
    """ "the", "some", "we": words that say nothing here."""
    i, word = walk.i, walk.word(walk.i)
    if walk.is_topic and word in UNKNOWN_WORDS:
        walk.i = i + 1
        return True
    if word == "all" and walk.word(i + 1) in ("up", "told", "together"):
        walk.i = i + 2
        return True
    if walk.is_topic and walk.verb.name == "gave away" and word in TAKERS:
        walk.draft.leave(i, i + 1, walk.after_comma)  # "Mum had a bag of spinach"
        walk.draft.said.add(i)
        walk.i = i + 1
        return True
    if word in ARTICLES or word in FILLERS or (walk.is_topic and word in SUBJECTS):
        walk.i = i + 1
        return True
    return False


def take_near_place(walk: Walk) -> bool:
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
