"""Reading an amount where it stands: numbers, fractions, ranges, words for numbers, units and nouns.

`read_amount` begins at a word of a Typed line and says how far the amount goes. What the amount is of
is the matcher's affair.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from leafmould.notes.numbers import Number, count_span, digits, spelled, word_behind
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ABOUT, EXACT_STILL
from leafmould.values.names import Kind, Known
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount, Whole

UNIT_SIGN = re.compile(r"""\s?(?:(°\s?[cCfF]?)|(m²|m2)\b|(["'])(?![\w])|(%)|(per cent)\b)""", re.IGNORECASE)


RATE = re.compile(
    r"\s?(?:/|\bper\b|\ba\b)\s?(?:sq(?:uare|\.)?\s?)?(m²|m2|metre|meter|m\b|yard|yd|ft|foot)(?:²|2)?",
    re.IGNORECASE,
)


UNIT_AFTER_IN = frozenset(
    {"apart", "spacing", "long", "deep", "high", "tall", "wide", "between", "pot", "row", "centre", "gap"}
)


class Read(NamedTuple):
    """An amount, and the word behind it."""

    amount: Amount
    end: int
    has_noun: bool  # a unit or a counted noun was written
    asks: str | None = None  # what is doubtful about the number
    is_bare_word: bool = False  # "a" or "an" alone: an article unless a noun follows
    level: Level = Level.QUESTION  # how what is doubtful is told


def read_amount(typed: Typed, i: int, decimal: str | None, unit_of: str = "piece") -> Read | None:
    """The amount that begins at word `i`, if one does."""
    begin, j, about = i, i, False
    while j < typed.count and typed.words[j] in ABOUT and j - i < 5 and not (j > i and typed.breaks[j]):
        j += 1
    if typed.words[i : i + 2] == ["up", "to"] and typed.is_number(i + 2):
        j = i + 2
    if j >= typed.count or (j > i and typed.breaks[j]):
        return None
    is_vague = typed.words[begin] in nouns.LONGEST_VAGUE and not (
        typed.words[begin] == "some" and typed.is_number(begin + 1)
    )
    if is_vague and (vague := _vague(typed, begin)) is not None:
        return vague
    about = j > i and (any(w not in EXACT_STILL for w in typed.words[i:j]) or typed.words[i] == "c")
    about = about or "~" in typed.gaps[j]
    if (
        typed.words[j] == "another"
        and j + 1 < typed.count
        and (typed.is_number(j + 1) or typed.words[j + 1] in nouns.NUMBERS)
    ):
        j += 1
    if typed.words[j] == "x" and typed.is_number(j + 1):
        j += 1
    number = digits(typed, j, decimal) if not typed.words[j].isalpha() else spelled(typed, j)
    if number is None:
        return None
    if typed.words[j].isalpha():
        number = count_span(typed, number, j)
    if about and not number.is_about:
        number = number._replace(is_about=True)
    return _with_unit(typed, begin, j, number, decimal, unit_of)


def _vague(typed: Typed, i: int) -> Read | None:
    words = typed.words
    for size in range(min(nouns.LONGEST_VAGUE.get(words[i], 0), typed.stops[i] - i), 0, -1):
        whole = nouns.VAGUE.get(tuple(words[i : i + size]))
        if whole is None:
            continue
        end = i + size
        if (
            whole == "half"
            and end < typed.count
            and (
                words[end] in ("a", "an")
                or (words[end] in nouns.UNITS and words[end] not in ("c", "in", "l", "m", "f"))
                or words[end] == "dozen"
            )
        ):
            return None
        unit, has_noun = "piece", False
        if end < typed.count and not typed.breaks[end]:
            skip = end + (words[end] in ("of", "the", "few"))
            if whole == "a few" and skip < typed.count and (more := _few_units(typed, i, skip)) is not None:
                return more
            if (
                skip < typed.count
                and words[skip] in nouns.COUNT_NOUNS
                and typed.names(skip)[0] <= 1
                and _is_noun_here(typed, skip)
            ):
                unit, end, has_noun = words[skip], skip + 1, True
        amount = Amount(
            written=typed.written(i, end),
            low=None,
            high=None,
            unit=unit,
            whole=whole,
            is_about=whole in ("half", "some", "a few"),
        )
        return Read(amount, end, has_noun)
    return None


def _few_units(typed: Typed, i: int, at: int) -> Read | None:
    """ "a couple of kilos", "a few pounds": no count of pieces."""
    unit = nouns.UNITS.get(typed.words[at], "")
    if unit not in nouns.WEIGHTS | nouns.VOLUMES or typed.words[at] in ("c", "l", "t"):
        return None
    number = 2.0 if "couple" in typed.words[i:at] else None
    whole: Whole | None = None if number else "a few"
    written = typed.written(i, at + 1)
    amount = Amount(written=written, low=number, high=number, unit=unit, whole=whole, is_about=True)
    return Read(amount, at + 1, True)


def _is_noun_here(typed: Typed, i: int) -> bool:
    """Whether a word that may also be part of a name ("row", "tub") is a counted noun at `i`."""
    size, known = typed.names(i)
    return not size or all(k.kind is Kind.MEASURE for k in known)


def _with_unit(
    typed: Typed, begin: int, first: int, number: Number, decimal: str | None, unit_of: str
) -> Read:
    """The number with the unit, measure or noun behind it."""
    number, end = _times(typed, number, word_behind(typed, number.end, first))
    start = typed.starts[begin]
    if typed.gaps[begin] and typed.gaps[begin].rstrip().endswith("~"):
        start -= len(typed.gaps[begin]) - typed.gaps[begin].rfind("~")
    sign = UNIT_SIGN.match(typed.plain, number.end) if _next_letter(typed, number.end) in SIGNS else None
    unit, last, measure, stop = _unit_word(typed, end, number)
    if sign is not None and not (unit and not sign.group(1)):
        unit, stop = _signed(sign), sign.end()
        last = word_behind(typed, stop, end)
    has_noun = bool(unit)
    is_measured = unit in WEIGHED and _next_letter(typed, stop) in RATES
    if is_measured and (rate := RATE.match(typed.plain, stop)):
        square = "m" if rate[1].lower().startswith("m") else rate[1].lower()
        unit, stop = (
            f"{unit}/{square}²"
            if "sq" in rate[0].lower() or rate[0][-1] in "2²" or square == "m"
            else f"{unit}/{square}",
            rate.end(),
        )
        unit = unit.replace("m²²", "m²")
        last = word_behind(typed, stop, last)
    low, high = number.low, number.high
    if unit == "lb" and last < typed.count and (ounces := _ounces(typed, last, decimal)):
        low, high, last = low + ounces[0] / 16, high + ounces[0] / 16, ounces[1]
        stop = typed.ends[last - 1]
    if unit and last < typed.count and typed.words[last : last + 3] == ["and", "a", "half"]:
        low, high, last = low + 0.5, high + 0.5, last + 3
        stop = typed.ends[last - 1]
    if (
        unit
        and last < typed.count
        and typed.words[last] in LOOSE_FIRST
        and (loose := _loosely(typed, last)) > last
    ):
        number, last = number._replace(is_about=True), loose
    amount = Amount(
        written=typed.text[start : max(stop, number.end)].strip(), low=low, high=high, unit=unit or unit_of,
        is_about=number.is_about, of=number.of, measure_g=measure,
    )  # fmt: skip
    bare = last == begin + 1 and typed.words[begin] in ("a", "an")
    return Read(amount, last, has_noun, number.asks, bare and not has_noun)


WEIGHED = nouns.WEIGHTS | nouns.VOLUMES
SIGNS = frozenset("°mM\"'%pP")
RATES = frozenset("/pPaA")
"""What UNIT_SIGN and RATE may begin with."""


def _next_letter(typed: Typed, at: int) -> str:
    """The sign at this place of the text, or behind the space there; "" at the end."""
    letter = typed.plain[at : at + 1]
    return typed.plain[at + 1 : at + 2] if letter.isspace() else letter


def _times(typed: Typed, number: Number, end: int) -> tuple[Number, int]:
    """ "2 and a half", "3 dozen", "5 million"."""
    words = typed.words
    if end >= typed.count:
        return number, end
    if words[end] in LOOSE_FIRST and (about := _loosely(typed, end)) > end:
        number, end = number._replace(is_about=True, end=typed.ends[about - 1]), about
        if end >= typed.count:
            return number, end
    if (
        words[end] == "and"
        and words[end : end + 3] == ["and", "a", "half"]
        and words[end + 3 : end + 4]
        and (words[end + 3] == "dozen" or words[end + 3] in nouns.UNITS)
    ):
        number = number._replace(low=number.low + 0.5, high=number.high + 0.5, end=typed.ends[end + 2])
        end += 3
    if words[end : end + 2] == ["score", "of"]:
        return number._replace(low=number.low * 20, high=number.high * 20, end=typed.ends[end]), end + 1
    if end < typed.count and words[end] in MANY and not typed.breaks[end]:
        many = MANY[words[end]]
        number = number._replace(low=number.low * many, high=number.high * many, end=typed.ends[end])
        end += 1
    return number, end


def _loosely(typed: Typed, end: int) -> int:
    """The word behind "or so", "and a bit", "give or take", "ish" that stand at word `end`; else `end`."""
    if end >= typed.count or typed.breaks[end] or typed.words[end] not in LOOSE_FIRST:
        return end
    return next((end + len(p) for p in LOOSELY if tuple(typed.words[end : end + len(p)]) == p), end)


LOOSELY = (
    ("or", "so"),
    ("or", "thereabout"),
    ("and", "a", "bit"),
    ("give", "or", "take"),
    ("ish",),
    ("odd",),
)
LOOSE_FIRST = frozenset(p[0] for p in LOOSELY)
MANY = {"dozen": 12, "million": 1_000_000, "thousand": 1_000}


def _signed(sign: re.Match[str]) -> str:
    if sign[1]:
        return "°F" if sign[1][-1] in "fF" else "°C" if sign[1][-1] in "cC" else "°"
    if sign[4] or sign[5]:
        return "%"
    return "m²" if sign[2] else "in" if sign[3] == '"' else "ft"


def _unit_word(typed: Typed, i: int, number: Number) -> tuple[str | None, int, float | None, int]:
    """Unit or counted noun at word `i`: its name, the word behind, grams of an own measure, its end."""
    none = (None, i, None, number.end)
    if i >= typed.count or (typed.breaks[i] and typed.gaps[i].strip() not in ('"',)):
        return none
    while (
        i < typed.count
        and typed.words[i] in nouns.SIZES
        and i + 1 < typed.count
        and not typed.breaks[i + 1]
        and _noun_at(typed, i + 1)
    ):
        i += 1
    return _noun_at(typed, i, number.end) or none


def _noun_at(typed: Typed, i: int, glued: int = -1) -> tuple[str | None, int, float | None, int] | None:
    word = typed.words[i]
    size, known = typed.kind(i, Kind.MEASURE)
    if size:
        return known[0].key, i + size, _grams(known[0]), typed.ends[i + size - 1]
    unit = nouns.UNITS.get(word)
    if len(word) == 1 and typed.starts[i] != glued and typed.kind(i, Kind.BED)[0] > 1:
        return None  # the T of "T2", where that is a bed
    if word == "k" and typed.starts[i] == glued and typed.plain[typed.starts[i]] == "k":
        return "kg", i + 1, None, typed.ends[i]  # "1.2k"
    if word == "fl" and i + 1 < typed.count and typed.words[i + 1] == "oz":
        return "fl oz", i + 2, None, typed.ends[i + 1]
    if unit is not None:
        follows = "" if typed.breaks[i + 1] else typed.words[i + 1]
        if word == "in" and typed.starts[i] != glued and follows not in UNIT_AFTER_IN:
            return None
        if word in ("c", "f") and typed.starts[i] != glued and follows:
            return None
        if word == "t" and typed.kind(i, Kind.VERB)[0] and typed.starts[i] != glued and follows[:1].isdigit():
            return None  # the garden's own short word for something done
        if word == "m" and follows == "2" and typed.ends[i] == typed.starts[i + 1]:
            return "m²", i + 2, None, typed.ends[i + 1]
        if word in ("foot", "feet", "l", "set") and typed.names(i)[0] > 1:
            return None
        return unit, i + 1, None, typed.ends[i]
    if word in ("no", "nos") and typed.gaps[i + 1].startswith(".") and typed.breaks[i + 1]:
        return "piece", i + 1, None, typed.ends[i]  # "100 no."
    if word in nouns.HENS and typed.words[i + 1 : i + 2] == ["egg"] and not typed.breaks[i + 1]:
        return "egg", i + 2, None, typed.ends[i + 1]  # "12 hen eggs"
    if word in nouns.HENS and "egg" in typed.words and i and (typed.breaks[i + 1] or typed.is_number(i + 1)):
        return "egg", i + 1, None, typed.ends[i]  # "6 eggs + 1 duck"
    if word in nouns.COUNT_NOUNS or (word.endswith("ful") and word[:-3] in HOLD_MUCH):
        if typed.names(i)[0] > 1 or (not _is_noun_here(typed, i) and typed.capital(i)):
            return None
        if word == "seed" and i + 1 < typed.count and typed.words[i + 1] in ("potato", "garlic", "spud"):
            return None
        noun = nouns.SAME_NOUN.get(word, word)
        return noun, i + 1, None, typed.ends[i]
    return None


HOLD_MUCH = nouns.HOLDERS | frozenset({"arm", "hand", "pail", "lap", "hat", "skip", "apron", "boot"})


def _grams(known: Known) -> float | None:
    try:
        return float(known.of[0]) if known.of else None
    except ValueError:
        return None


def _ounces(typed: Typed, i: int, decimal: str | None) -> tuple[float, int] | None:
    """The "4 oz" of "3 lb 4 oz"."""
    if not typed.is_number(i) or (typed.breaks[i] and typed.gaps[i].strip() != ","):
        return None
    number = digits(typed, i, decimal)
    if number is None or number.low >= 16:
        return None
    j = word_behind(typed, number.end, i)
    if j < typed.count and nouns.UNITS.get(typed.words[j]) == "oz" and not typed.breaks[j]:
        return number.low, j + 1
    return None
