"""Where an amount may stand in a clause, and numbers and words that are none.

The step of the walk that takes amounts; reading the amount itself is in `amounts`, whose it is in `whose_amount`.
"""

from __future__ import annotations

from leafmould.notes.amounts import Read
from leafmould.notes.by_the_way import is_beside_seen, one_and_a_half
from leafmould.notes.held import is_one_whole
from leafmould.notes.measured import take_measured
from leafmould.notes.shares import each_side, in_each_row, leave_share, with_noun_before
from leafmould.notes.walk import Walk, add_place
from leafmould.notes.what_follows import (
    crop_behind,
    is_no_amount,
    names_follow,
    words_of_time,
)
from leafmould.notes.whole_amounts import read_whole
from leafmould.notes.whose_amount import place_amount
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ABOUT
from leafmould.values.names import Kind
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount


def take_amount(walk: Walk) -> bool:
    i = walk.i
    word = walk.word(i)
    if word.isdigit():
        if (behind := _day_alone(walk, i)) is not None:
            return behind
        if walk.typed.names(i)[0] > 1:
            return False
    elif (found := _words_before(walk, i, word)) is not None:
        return found
    is_number = word.isdigit() or word in SPELLED
    if is_number and walk.word(i + 1) in KINDS and not walk.typed.breaks[i + 1]:
        walk.draft.leave(i, i + 2, walk.after_comma)  # "garlic, 2 varieties"
        walk.i = i + 2
        return True
    if size := 2 if is_no_amount(walk, i) else words_of_time(walk, i):
        walk.draft.leave(i, i + size, walk.after_comma)
        walk.i = i + size
        return True
    if word.isdigit() and walk.typed.gaps[i + 1] == ":" and walk.typed.is_number(i + 1):
        walk.draft.leave(i, i + 2, walk.after_comma)  # "syrup 2:1"
        walk.i = i + 2
        return True
    if word.isdigit() and walk.word(i - 1) in ("hive", "nuc", "colony") and i and not walk.typed.breaks[i]:
        walk.i = i + 1  # "went through hive 2"
        return True
    if word.isdigit() and walk.typed.gaps[i][-1:] in MONEY_SIGNS:
        walk.draft.leave(i, i + 1, walk.after_comma)  # "the box was $2 short": money, and no amount
        walk.i = i + 1
        return True
    read = read_whole(walk, i, _bare_unit(walk))
    if read is None or read.end > walk.end:
        return False
    read = each_side(walk, read)
    if in_each_row(walk, read, i):
        return True
    if walk.typed.gaps[read.end - 1][-1:] in MONEY_SIGNS and read.end - 1 > i:
        walk.draft.leave(i, read.end, walk.after_comma)  # "came up $2 short"
        walk.i = read.end
        return True
    if read.is_bare_word and not names_follow(walk, read.end):
        return False
    if read.amount.unit == "%" and walk.verb.name in NO_SHARES and "%" in walk.typed.gaps[read.end]:
        walk.draft.leave(i, read.end, walk.after_comma)  # "chopped at 11% flowering"
        walk.i = read.end
        return True
    if read.amount.unit == "piece" and tuple(walk.typed.words[read.end : read.end + 2]) in OUT_THERE:
        walk.draft.leave(i, read.end + 2, walk.after_comma)  # "covered the lettuce, 95 out there"
        walk.i = read.end + 2
        return True
    if take_measured(walk, read) or leave_share(walk, read, i):
        return True
    if is_beside_seen(walk, read, i):
        walk.draft.leave(i, walk.stop(i), True)
        walk.i = walk.stop(i)
        return True
    if (
        read.amount.whole is not None
        and walk.word(read.end) == "left"
        and (read.end + 1 >= walk.end or walk.typed.breaks[read.end + 1])
        and not walk.typed.breaks[read.end]
    ):
        walk.draft.leave(i, read.end + 1, walk.after_comma)  # "maybe half left"
        walk.i = read.end + 1
        return True
    if _is_half_of_bed(walk, read):
        return True
    if word in ("some", "last", "final", "many", "few") and not (
        names_follow(walk, read.end) or read.has_noun
    ):
        return False
    if (
        read.is_bare_word
        and word in ("a", "an")
        and not ((walk.joined and walk.draft.item.amounts) or is_one_whole(walk, read.end))
    ):
        walk.i = read.end
        return True
    if walk.verb.name == "noted weather" or (walk.is_topic and walk.verb.name == "bought"):
        return False
    place_amount(walk, with_noun_before(walk, read, i), i)
    return True


SPELLED = frozenset(nouns.NUMBERS) - {"a", "an", "another", "one"}
ROWS = frozenset({"row", "day", "week", "station", "hole", "module", "cell"})
POTS = frozenset({"bucket", "pot", "bin", "dustbin", "bowl", "cloche", "forcer", "bottle"})
DAYS = frozenset({"day", "week", "fortnight", "month", "year", "morning", "evening", "time", "night"})
KINDS = frozenset({"variety", "kind", "sort", "type"})
OUT_THERE = frozenset({("out", "there"), ("in", "there"), ("in", "here"), ("in", "shade"), ("out", "today")})


MONEY_SIGNS = ("£", "$", "€")
NO_SHARES = frozenset(
    {"pruned", "sowed", "planted", "covered", "watered", "fed", "mulched", "dug in", "stored"}
)
"""Of these nobody says how much in percent."""


def _day_alone(walk: Walk, i: int) -> bool | None:
    """ "the 3rd" without a month, "week 23"; None for any other number."""
    if walk.word(i + 1) in ("st", "nd", "rd", "th") and not walk.typed.gaps[i + 1]:
        if walk.word(i + 2) in TIMES_PICKED:
            return _so_many_th(walk, i, 2)
        if walk.typed.kind(i + 2, Kind.CROP, Kind.CROP_GROUP)[0] and not walk.typed.breaks[i + 2]:
            walk.draft.leave(i, i + 2, walk.after_comma)  # "the 1st cucumber"
            walk.i = i + 2
            return True
        written = walk.typed.written(i, i + 2)
        walk.ask(Level.HINT, f'"{written}" names no month, so it is kept as a remark.', i)
        walk.draft.leave(i, i + 2, True)
        walk.i = i + 2
        return True
    if i and walk.typed.words[i - 1] in ("wk", "week") and not walk.typed.breaks[i]:
        written = walk.typed.written(i - 1, i + 1)
        walk.ask(Level.HINT, f'"{written}" names a week, so it is kept as a remark. Write the day.', i)
        walk.draft.leave(i, i + 1, walk.after_comma)
        walk.i = i + 1
        return True
    is_of_number = (
        i > 0 and walk.typed.words[i - 1] in ("no", "number", "nos", "nr") and "." in walk.typed.gaps[i]
    )
    if is_of_number and not (i > 1 and walk.typed.is_number(i - 2)):
        walk.draft.leave(i, i + 1, walk.after_comma)  # "cucumber no. 3"
        walk.draft.said.add(i)
        walk.i = i + 1
        return True
    return None


def _words_before(walk: Walk, i: int, word: str) -> bool | None:
    """Words that are no amount, or stand before one; None where the amount has yet to be read."""
    if word == "all" and (walk.word(i + 1) in BEHIND_ALL or (i > 0 and walk.typed.words[i - 1] == "it")):
        return False
    if (
        word == "all"
        and walk.word(i + 1) == "the"
        and walk.word(i + 2) in ("same", "better", "more", "time", "while", "way", "year")
    ):
        walk.draft.leave(i, i + 3, walk.after_comma)  # "bought four all the same"
        walk.i = i + 3
        return True
    if word == "every" and walk.word(i + 1) in DAYS:
        walk.draft.leave(i, i + 2, walk.after_comma)  # "sowed lettuce every week"
        walk.i = i + 2
        return True
    if word == "under" and walk.word(i + 1) == "a" and walk.word(i + 2) in POTS:
        return False  # "forced under a bucket"
    if word == "every" and walk.word(i + 1) in ("other", "second", "third") and walk.word(i + 2) in ROWS:
        walk.draft.leave(i, i + 3, walk.after_comma)  # "every other row"
        walk.i = min(i + 3, walk.end)
        return True
    if word == "every" and (walk.typed.is_number(i + 1) or walk.word(i + 1) in SPELLED):
        walk.i = i + 1  # "thinned to every 4 inches", "every 3 days"
        if walk.word(i + 2) not in nouns.UNITS:
            walk.draft.leave(i, i + 1, walk.after_comma)
        return True
    if word == "all" and number_next(walk, i + 1) and not walk.typed.breaks[i + 1]:
        walk.i = i + 1  # "all 12"
        return True
    if word == "all" and walk.word(i + 1) in ("but", "bar", "except", "save") and number_next(walk, i + 2):
        end = i + 3
        walk.ask(Level.QUESTION, f'"{walk.typed.written(i, end)}" is kept as a remark. How many was it?', i)
        walk.draft.leave(i, end, True)
        walk.i = end
        return True
    if (one := _one_holder(walk, i) or _both(walk, i, word)) is not None:
        place_amount(walk, one, i)
        return True
    if word in nouns.ORDINALS and word != "last" and walk.word(i + 1) in TIMES_PICKED:
        return _so_many_th(walk, i, 1)
    if (
        word == "last"
        and walk.word(i + 1) in ("lot", "batch", "ones")
        and walk.word(i + 2) != "of"
        and walk.has("raise")
    ):
        walk.draft.leave(i, i + 2, walk.after_comma)  # "sowed coriander again, last lot bolted"
        walk.i = i + 2
        return True
    if word == "last" and walk.word(i + 1) in ("year", "season", "yr", "yrs"):
        _keep_last_year(walk)
        walk.draft.leave(i, i + 2, walk.after_comma)  # "last year's beans"
        walk.i = i + 2
        return True
    is_some_more = word == "some" and walk.joined and walk.draft.item.amounts and crop_behind(walk, i + 1)
    if walk.typed.names(i)[0] > 1 or (word in ABOUT and not is_some_more and not number_next(walk, i)):
        return False
    if word in ("less", "more", "fewer") and walk.word(i + 1) == "than" and walk.typed.is_number(i + 2):
        walk.draft.leave(i, i + 2, walk.after_comma)
        walk.i = i + 2
        return True
    return None


def _keep_last_year(walk: Walk) -> None:
    """ "ate a jar of last year's jam": the year before that of the note."""
    if (
        walk.has("larder")
        and walk.verb.name != "bought"
        and walk.base is not None
        and not walk.draft.crop_year
    ):
        walk.draft.crop_year = walk.base.last.year - 1


TIMES_PICKED = frozenset({"picking", "pick", "lot", "harvest", "cut", "cutting", "crop", "flush", "time"})


def _so_many_th(walk: Walk, i: int, size: int) -> bool:
    """ "2nd picking", "third lot of beans": no amount, and no day."""
    end = i + size + 1
    walk.draft.leave(i, end, walk.after_comma)
    walk.i = end + (walk.word(end) == "of")
    return True


def _both(walk: Walk, i: int, word: str) -> Read | None:
    """ "planted both courgettes"."""
    if word != "both" or not walk.typed.kind(walk.past_articles(i + 1), Kind.CROP, Kind.CROP_GROUP)[0]:
        return None
    amount = Amount(written=walk.typed.written(i, i + 1), low=2.0, high=2.0, unit="piece")
    return Read(amount, i + 1, False)


def _one_holder(walk: Walk, i: int) -> Read | None:
    """ "bag of spinach", ", armful": one of it."""
    first, i = i, i + (walk.word(i) in nouns.SIZES and walk.typed.breaks[i] and i + 1 < walk.end)
    i += 2 * (walk.word(i) == "icecream")  # "ice cream tub full"
    word, end = walk.word(i), i + 1
    if (half := one_and_a_half(walk, i)) is not None:
        return half
    if (
        (word not in nouns.HOLDERS and word != "bunch")
        or word in nouns.LONGEST_VAGUE
        or walk.typed.names(i)[0]
        or (walk.is_topic and walk.word(end) != "full")
    ):
        return None
    end += walk.word(end) == "full" and not walk.typed.breaks[end]
    is_alone = walk.typed.breaks[first] and (end >= walk.end or walk.typed.breaks[end])
    has_number = (
        i > 0
        and not walk.typed.breaks[i]
        and (
            walk.typed.is_number(i - 1)
            or walk.typed.words[i - 1] in nouns.NUMBERS
            or walk.typed.words[i - 1] in nouns.UNITS
        )
    )
    if has_number or not (
        is_alone or (walk.word(end) == "of" and crop_behind(walk, end + 1)) or _opens_crop(walk, first, end)
    ):
        return None
    if is_alone and (
        (word in NOT_HARVEST and end == i + 1) or not walk.draft.has_crop or walk.draft.item.amounts
    ):
        return None
    amount = Amount(
        written=walk.typed.written(first, end), low=1.0, high=1.0, unit=nouns.SAME_NOUN.get(word, word)
    )
    return Read(amount, end, True)


def _opens_crop(walk: Walk, first: int, end: int) -> bool:
    """ "handful chives + 2 spring onions"."""
    return (
        walk.typed.breaks[first]
        and walk.word(first) not in NOT_HARVEST
        and end < walk.end
        and walk.typed.kind(end, Kind.CROP, Kind.CROP_GROUP)[0] > 0
    )


NOT_HARVEST = nouns.NOT_ALONE | frozenset(
    {
        "layer",
        "square",
        "block",
        "sheet",
        "water",
        "watering",
        "load",
        "case",
        "meal",
        "cell",
        "flat",
        "strip",
        "drop",
        "quarter",
        "salad",
    }
) - {"handful"}


BEHIND_ALL = frozenset(
    {
        "up",
        "at",
        "over",
        "round",
        "around",
        "told",
        "together",
        "week",
        "wk",
        "day",
        "night",
        "morning",
        "afternoon",
        "year",
        "month",
        "summer",
        "winter",
        "time",
    }
)
""" "9 kg all up", "not watered all week": no amount."""


def number_next(walk: Walk, i: int) -> bool:
    if walk.word(i) == "up" and walk.word(i + 1) == "to":
        return walk.typed.is_number(i + 2) and i + 2 < walk.end  # "up to 3 kg"
    for j in range(i, min(i + 5, walk.end)):
        if (
            walk.typed.is_number(j)
            or walk.word(j) in nouns.NUMBERS
            or (walk.word(j) in nouns.FRACTION_WORDS and len(walk.word(j)) == 1)
            or walk.word(j) in ("half", "all", "dozen")
        ):
            return True
        if walk.word(j) not in ABOUT:
            return False
    return False


def _bare_unit(walk: Walk) -> str:
    if walk.verb.name == "tried seed":
        return "seed"
    return (
        "hen"
        if walk.verb.name in ("penned", "let out")
        else "egg"
        if walk.verb.name == "collected" and ("egg" in walk.typed.words or "laid" in walk.typed.words)
        else "piece"
    )


def _is_half_of_bed(walk: Walk, read: Read) -> bool:
    """ "cleared half of Arch": part of a bed nobody can name."""
    if (
        read.amount.whole not in ("half", "all", "the rest", "some")
        or walk.draft.has_crop
        or not walk.has("bed")
    ):
        return False
    j = walk.past_articles(read.end + (walk.word(read.end) == "of"))
    size, known = walk.bed_at(j)
    if known is None or any(k.kind is not Kind.BED for k in walk.typed.names(j)[1]):
        return False
    add_place(walk, walk.named(known, j, j + size), "at", j, j + size)
    if read.amount.whole != "all":
        walk.draft.item.amounts.append(read.amount)
        walk.span("amount", walk.i, read.end)
    walk.i = j + size
    return True
