"""What stands behind an amount: a crop, a variety, or words that make it no amount at all.

Looked at by the step of the walk that takes amounts, before it places one.
"""

from __future__ import annotations

from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import JOINS, PLACE_OPENERS, REMARK_OPENERS
from leafmould.values.names import Kind


def crop_behind(walk: Walk, j: int) -> bool:
    """Whether the amount is of a crop that stands behind it, with nothing but describing words between."""
    stop, k = walk.stop(j) if j < walk.end else walk.end, j
    if j < walk.end and walk.typed.breaks[j]:
        return False
    if walk.verb.name in ("watered", "fed") and walk.word(j) == "to":
        k += 1  # "four cans to the celeriac"
    while k < stop and k - j < 5:
        quote = walk.typed.quotes.get(k)
        if quote is not None:
            k = max(quote.last, k + 1)
            continue
        if walk.typed.kind(k, *CROPS)[0]:
            return True
        if walk.word(k) in NO_CROP_PAST:
            return False
        k += walk.typed.names(k)[0] or 1
    return False


CROPS, VARIETY = (Kind.CROP, Kind.CROP_GROUP), Kind.VARIETY
NO_CROP_PAST = (PLACE_OPENERS.keys() | JOINS | REMARK_OPENERS) - ({"of"} - REMARK_OPENERS)


def variety_behind(walk: Walk, j: int) -> bool:
    j = walk.past_articles(j)
    if j >= walk.end or walk.typed.breaks[j]:
        return False
    if j in walk.typed.quotes or bool(walk.typed.kind(j, VARIETY)[0]):
        return True
    is_name = walk.typed.capital(j) and not walk.typed.names(j)[0] and walk.typed.words[j].isalpha()
    return is_name and bool(
        walk.draft.item.varieties and walk.draft.item.amounts
    )  # "3 'Sakura' & 1 Purple Zinger"


def names_follow(walk: Walk, j: int) -> bool:
    """Whether a crop, a variety or a counted noun stands behind an amount."""
    k, stop = j, walk.stop(j) if j < walk.end else walk.end
    while k < stop:
        if k in walk.typed.quotes or walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0]:
            return True
        if (walk.word(k) in PLACE_OPENERS and walk.word(k) != "of") or walk.word(k) in REMARK_OPENERS:
            return False
        k += 1
        if k - j > 4:
            return False
    return False


def is_no_amount(walk: Walk, i: int) -> bool:
    """ "a bit small", "a little late", "most days": how, and how often."""
    if walk.word(i) not in ("a", "most"):
        return False
    word, behind = walk.word(i + 1), i + 2
    if walk.word(i) == "most":
        return word in TIMES
    if word not in ("bit", "little") or behind >= walk.end or walk.typed.breaks[behind]:
        return False
    follows = walk.word(behind)
    return not (
        follows in JOINS
        or follows in PLACE_OPENERS
        or follows in ("of", "more", "each")
        or names_follow(walk, behind)
    )


def words_of_time(walk: Walk, i: int) -> int:
    """How many words are no amount: "3 days" ago, "2 hrs", and the second half of a day, "2.5."."""
    typed = walk.typed
    if not typed.is_number(i):
        is_spelled = typed.words[i] in nouns.NUMBERS and walk.word(i + 2) in COMPARED
        if i and typed.words[i - 1 : i + 1] == ["in", "one"] and walk.word(i + 1) in TIMES:
            return 2  # "about 60 in one evening"
        return 2 if is_spelled and (walk.word(i + 1) in TIMES or walk.word(i + 1) in AGES) else 0
    if i and typed.is_number(i - 1) and typed.gaps[i] in (".", "/"):
        return 1
    word = walk.word(i + 1)
    if walk.word(i - 1) == "at" and typed.words[i + 1 : i + 3] == ["in", "the"] and walk.word(i + 3) in TIMES:
        return 1  # "at 7 in the morning"
    if _is_told_number(walk, i):
        return 1
    is_time = (
        word in LASTING
        or (word in TIMES and walk.word(i + 2) in ("ago", "earlier", "later", "ahead"))
        or _is_age(walk, i)
    )
    return 2 if is_time and not typed.breaks[i + 1] else 0


def _is_age(walk: Walk, i: int) -> bool:
    """ "parsnips up, 5 wks": how long it took, no number of parsnips."""
    end = i + 2
    return walk.word(i + 1) in AGES and (
        end >= walk.end or walk.typed.breaks[end] or walk.word(end) in AGE_ENDS
    )


def _is_told_number(walk: Walk, i: int) -> bool:
    """ "they said 34", "low was 2", "34 by lunch": degrees, told by the last look."""
    typed = walk.typed
    first = i
    while first > 0 and i - first < 3 and not typed.breaks[first]:
        first -= 1
    if not MEASURED.isdisjoint(typed.words[first:i]):
        follows = "" if typed.breaks[i + 1] else typed.words[i + 1]
        return (
            not follows
            or follows in PLACE_OPENERS
            or follows in REMARK_OPENERS
            or follows in ("at", "tonight")
        )
    return (
        typed.breaks[i]
        and typed.words[i + 1 : i + 2] in (["by"], ["at"])
        and walk.word(i + 2) in HOURS_OF_DAY
    )


COMPARED = frozenset(
    {"ago", "earlier", "later", "before", "ahead", "behind", "early", "late", "running", "old"}
)
MEASURED = frozenset(
    {"said", "say", "saying", "forecast", "reckoned", "temp", "temperature", "reached", "hit", "touched", "thermometer", "dial",
     "low", "high", "feels", "forecasting", "predicted"}
)  # fmt: skip
"""Before a number: it was read off something, or heard."""
HOURS_OF_DAY = frozenset({"lunch", "noon", "midday", "dusk", "dawn", "breakfast", "teatime", "tea", "midnight", "night", "dinner", "lunchtime", "supper", "smoko"})  # fmt: skip
AGES = frozenset({"d", "day", "week", "wk", "wks", "month", "fortnight", "year", "yr", "yrs", "night"})
AGE_ENDS = frozenset({"after", "from", "late", "early", "later", "since", "old", "on", "before", "ahead"})
LASTING = frozenset(
    {"hour", "hr", "hrs", "h", "minute", "min", "mins", "sec", "degc", "degf", "deg", "gsm", "mph", "bar"}
)
TIMES = frozenset({"day", "morning", "afternoon", "evening", "night", "week", "weekend", "time", "year"})


def is_crop_first(walk: Walk, i: int, end: int) -> bool:
    """Whether the amount at `i` is of the crop before it: "kale 200 g lettuce 1 chard 150 g" ends in an amount."""
    item = walk.draft.item
    if not item.crops or item.amounts or item.crop_end != i or walk.typed.breaks[i]:
        return False
    k, stop, is_amount_last = end, walk.stop(end), False
    while k < stop:
        size = walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP)[0]
        if size or walk.typed.is_number(k):
            is_amount_last = not size
        elif (
            walk.word(k) not in nouns.UNITS and walk.word(k) not in nouns.COUNT_NOUNS and walk.word(k) != "x"
        ):
            break
        k += size or 1
    return is_amount_last
