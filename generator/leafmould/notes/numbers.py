"""Numbers where they stand: digits, fractions, ranges, words for numbers.

Read for `amounts`, which adds units and nouns.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from leafmould.notes.figures import to_number
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.values.names import FRACTIONS

GROUPED = r"\d{1,3}(?:[ ']\d{3})+(?= ?(?:k?g|grams?|grammes?|kilos?|ml|l)\b(?! (?:bag|pack|box|jar|punnet)))"
""" "1 000 g", "12'500 g": groups of three digits before a unit are one number."""


ONE = rf"{GROUPED}|\d{{1,3}}(?: 000)+(?!\d)|\d+ ?[{FRACTIONS}]|\d+(?: |-| and | & )\d/\d(?!\d)|\d+(?:[.,]\d+)*|[{FRACTIONS}]"


NUMBER = re.compile(
    rf"(?P<low>(?:\d/\d)(?![\d/])|{ONE})"
    rf"(?:(?P<of> ?/ ?| of | of the | of my | out of | out of the | from )(?P<whole>\d+)(?![\d/]))?"
    rf"(?:(?: ?- ?| to | or )(?P<high>{ONE})(?![\d:]))?"
    r"(?: ?(?P<times>[xX])(?![A-Za-z]))?(?P<plus>ish\b|\+)?",
    re.IGNORECASE,
)


BETWEEN = re.compile(NUMBER.pattern.replace(r" ?- ?| to ", r" ?- ?| and | to "), re.IGNORECASE)


POINT_FIRST = re.compile(r"(?:^|[^\w.])[.]$|(?:^|\s),$")


PARTS_OF_ONE = {"quarter": 0.25, "third": 1 / 3}


HALF_WORDS = {"half": 0.5, "quarter": 0.25}


class Number(NamedTuple):
    low: float
    high: float
    end: int  # in characters
    is_about: bool = False
    of: float | None = None
    asks: str | None = None


def digits(typed: Typed, i: int, decimal: str | None) -> Number | None:
    """A number in digits that begins at word `i`."""
    if (plain := _plain_digits(typed, i)) is not None:
        return plain
    start = typed.starts[i]
    if start and typed.plain[start - 1].isalpha() and typed.words[i - 1] != "x" and not _is_ounces(typed, i):
        return None
    if start and typed.plain[start - 1] == "#":
        value = float(typed.words[i][:15])  # "BR #4 700 g": the number of a bed
        return Number(value, value, typed.ends[i])
    is_between = i > 0 and typed.words[i - 1] == "between"
    m = (BETWEEN if is_between else NUMBER).match(typed.plain, start)
    if m is None or (
        m.group("plus") == "+"
        and typed.plain[m.end() : m.end() + 2].strip()[:1].isalpha()
        and typed.plain[m.end() : m.end() + 1] != " "
    ):
        return None
    point = "0." if POINT_FIRST.search(typed.plain, max(0, start - 2), start) and m["low"].isdigit() else ""
    low, asks = to_number(point + m["low"], decimal)
    if point and typed.plain[start - 1] == ",":
        asks = f'",{m["low"]}" may be 0.{m["low"]} or {m["low"]}; read as 0.{m["low"]}.'
    high, of, about = low, None, bool(m["plus"])
    if m["of"] is not None:
        if m["of"] == " from ":
            return Number(low, low, m.end("low"), False, None, asks)
        of = float(m["whole"][:300])
    if m["high"] is not None:
        high, more = to_number(m["high"], decimal)
        asks, about = asks or more, True
        if high < low:
            return Number(low, low, m.end("whole") if of is not None else m.end("low"), False, of, asks)
    return Number(low, high, m.end(), about, of, asks)


def _plain_digits(typed: Typed, i: int) -> Number | None:
    """Digits with nothing before or behind them that could belong to the number: "534 g", "12 leeks"."""
    word, start, end, plain = typed.words[i], typed.starts[i], typed.ends[i], typed.plain
    if (
        not (word.isdigit() and word.isascii())
        or (start and plain[start - 1] not in " (:;")
        or len(word) > 15
    ):
        return None
    is_last = i + 1 >= typed.count
    if (typed.gaps[i + 1] or (not is_last and typed.words[i + 1] in GOES_ON)) or (
        i and typed.words[i - 1] == "between"
    ):
        return None
    follows = plain[end + (plain[end : end + 1] == " ") :][:1]
    if follows and not (follows.isalpha() and follows.isascii()):
        return None
    value = float(word)
    return Number(value, value, end)


GOES_ON = frozenset({"and", "of", "out", "from", "to", "or", "x", "ish"})
"""Words that may go on with a number in digits."""


def _is_ounces(typed: Typed, i: int) -> bool:
    """ "2lb3oz"."""
    return (
        nouns.UNITS.get(typed.words[i - 1]) == "lb"
        and nouns.UNITS.get("".join(typed.words[i + 1 : i + 2])) == "oz"
    )


def spelled(typed: Typed, i: int) -> Number | None:
    """A number in words: "two", "twenty four", "a dozen", "half a", "one and a half"."""
    words, n = typed.words, typed.count
    word = words[i]
    if word == "one" and typed.plain[typed.ends[i] - 1] in "sS":
        return None
    value: float
    j = i
    if (
        word in HALF_WORDS
        and i + 1 < n
        and words[i + 1] in ("a", "an", "dozen", *nouns.WEIGHTS, *nouns.VOLUMES, "kilo", "pound")
    ):
        value, j = HALF_WORDS[word], i + 1 + (words[i + 1] in ("a", "an"))
    elif word in nouns.NUMBERS:
        value, j = float(nouns.NUMBERS[word]), i + 1
        if word in nouns.TENS and j < n and 0 < nouns.NUMBERS.get(words[j], 0) < 10 and words[j] != "a":
            value, j = value + nouns.NUMBERS[words[j]], j + 1
        elif word in ("a", "an") and j < n and words[j] in HALF_WORDS:
            value, j = HALF_WORDS[words[j]], j + 1
            j += 2 * (
                words[j : j + 2] in (["of", "a"], ["of", "an"])
                and words[j + 2 : j + 3] != []
                and words[j + 2] in nouns.UNITS
            )
        if j < n and words[j] == "hundred":
            value, j = value * 100, j + 1
            more = words[j + 1] if words[j : j + 1] == ["and"] and j + 1 < n else "a"
            if more not in ("a", "an", "another") and 0 < nouns.NUMBERS.get(more, 0) < 100:
                return _and_more(typed, value, j + 1)
        elif j < n and words[j] in PARTS_OF_ONE and word not in ("another",):
            value, j = value * PARTS_OF_ONE[words[j]], j + 1
            j += 2 * (words[j : j + 2] in (["of", "a"], ["of", "an"]))
    elif word == "dozen":
        value, j = 1.0, i
    else:
        return None
    j = _and_a_half(words, j, n)
    value += 0.5 if words[j - 1] == "half" and j - i > 2 else 0
    if j < n and words[j] == "dozen":
        return Number(value * 12, value * 12, typed.ends[j])
    return Number(value, value, typed.ends[j - 1])


def _and_more(typed: Typed, hundreds: float, j: int) -> Number | None:
    """The "fifty two" of "a hundred and fifty two"."""
    rest = spelled(typed, j)
    return rest and rest._replace(low=rest.low + hundreds, high=rest.high + hundreds)


def _and_a_half(words: list[str], j: int, n: int) -> int:
    return j + 3 if j + 2 < n and words[j : j + 3] == ["and", "a", "half"] else j


def count_span(typed: Typed, number: Number, i: int) -> Number:
    """Two spelled numbers with "or", "to" or a dash between: a range. "4 of a dozen" stays simple."""
    j = word_behind(typed, number.end, i)
    if j + 1 < typed.count and typed.words[j] in ("or", "to") and not typed.breaks[j]:
        more = (
            typed.words[j + 1] in nouns.NUMBERS
            and typed.words[j + 1] not in ("a", "an")
            and spelled(typed, j + 1)
        )
        if more and more.low > number.low:
            return Number(number.low, more.low, more.end, True)
    if typed.words[j : j + 2] == ["out", "of"]:
        j += 1  # "five out of six"
    if (
        j + 1 < typed.count
        and typed.words[j] == "of"
        and typed.words[j + 1] in nouns.NUMBERS
        and typed.words[j + 1] not in ("a", "an")
    ):
        whole = spelled(typed, j + 1)
        if whole and whole.low >= number.low:
            return Number(number.low, number.low, whole.end, False, whole.low)
    return number


def word_behind(typed: Typed, end: int, i: int) -> int:
    while i < typed.count and typed.starts[i] < end:
        i += 1
    return i
