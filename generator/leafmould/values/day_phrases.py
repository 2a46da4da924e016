"""Days as people say them in a line: "last week", "on the tenth of June", "Good Friday", "Sat".

Forms beside those of `date_forms`, for lines that say what was done; headings and headers know them not.
Read by `scan_day`, which takes the longest of both; `dates` settles the days.
"""

from __future__ import annotations

import re
from dataclasses import replace

from leafmould.values.date_forms import (
    FIRST_WORD,
    LETTERS,
    TAIL,
    YEAR,
    DateWords,
    Form,
    Found,
    month_alone,
    short_year,
)
from leafmould.values.date_words import MONTHS, SHORT_MONTHS, WEEKDAYS, plain
from leafmould.values.dates import scan_date
from leafmould.values.feasts import FEAST_STARTS, FEASTS, LONGEST_FEAST

ORDINALS = {
    word: number
    for number, word in enumerate(
        [
            "first",
            "second",
            "third",
            "fourth",
            "fifth",
            "sixth",
            "seventh",
            "eighth",
            "ninth",
            "tenth",
            "eleventh",
            "twelfth",
            "thirteenth",
            "fourteenth",
            "fifteenth",
            "sixteenth",
            "seventeenth",
            "eighteenth",
            "nineteenth",
            "twentieth",
        ],
        1,
    )
} | {"thirtieth": 30}
SHORT_DAYS = {
    "mon": 0, "tue": 1, "tues": 1, "wed": 2, "weds": 2, "thu": 3, "thur": 3, "thurs": 3, "fri": 4, "sat": 5, "sun": 6,
}  # fmt: skip
ALSO_WORDS = frozenset({"mon", "wed", "sat", "sun"})
"""Short weekdays that are words or names as well: days only with a capital, "Sun" only with more beside it."""
ENGLISH_SHORT = frozenset({"jan", "feb", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec"})
NUMBERS_BACK = {
    "a": (1, 1), "one": (1, 1), "two": (2, 2), "three": (3, 3), "four": (4, 4), "five": (5, 5), "six": (6, 6),
    "a couple of": (2, 3), "couple of": (2, 3), "a couple": (2, 3), "a few": (3, 6), "few": (3, 6), "several": (3, 7),
}  # fmt: skip
"""Number words before "days ago"; loose ones from, to."""
UNIT_DAYS = {"day": 1, "week": 7, "wk": 7, "fortnight": 14, "month": 30}
SPANS_BACK = {
    "last week": "last week", "last wk": "last week", "last weekend": "last weekend", "last wkend": "last weekend",
    "last month": "last month", "the weekend": "weekend", "this weekend": "weekend", "weekend": "weekend",
    "at weekend": "weekend", "the other day": "other day", "the other night": "other day", "the other week": "other week",
}  # fmt: skip
PART_OF_DAY = r"(?:[ \t]+(?:morning|afternoon|arvo|evening|eve|night|nite|am|pm)(?!\w))?"

AGO = re.compile(
    r"(?:(?P<about>about|around|roughly|nearly|some)[ \t]+)?"
    r"(?P<number>\d{1,3}|a couple of|couple of|a couple|a few|few|several|a|one|two|three|four|five|six)[ \t]+"
    r"(?P<unit>days?|weeks?|wks?|fortnights?|months?)[ \t]+(?:ago|back)(?!\w)"
    rf"(?:[ \t]+(?:on[ \t]+)?(?P<day>{LETTERS}){TAIL})?",
    re.IGNORECASE,
)
WEEK_LAST = re.compile(rf"a[ \t]+week[ \t]+(?:last|past|on)[ \t]+({LETTERS}){TAIL}", re.IGNORECASE)
SPELLED_DAY = re.compile(
    rf"(?:the[ \t]+)?(?:(?P<tens>twenty|thirty)[ -])?(?P<day>{LETTERS})[ \t]+(?:of[ \t]+)?(?={LETTERS})",
    re.IGNORECASE,
)
MONTH_SPELLED = re.compile(
    rf"(?P<month>{LETTERS})[ \t]+(?:the[ \t]+)?(?:(?P<tens>twenty|thirty)[ -])?(?P<day>{LETTERS}){TAIL}",
    re.IGNORECASE,
)
WEEK_OF = re.compile(
    rf"(?:the[ \t]+)?(?P<which>first|1st|second|2nd|third|3rd|last)[ \t]+(?P<unit>week|weekend)[ \t]+(?:of|in)[ \t]+(?:the[ \t]+)?(?={LETTERS})",
    re.IGNORECASE,
)
SHORT_DAY = re.compile(
    rf"(?:(?P<last>last|this)[ \t]+)?(?P<day>{LETTERS})\.?(?!\w)(?P<part>{PART_OF_DAY})", re.IGNORECASE
)
WEEKDAY_PART = re.compile(
    rf"(?P<day>{LETTERS})(?P<part>{PART_OF_DAY})(?:[ \t]+(?P<gone>just gone|gone|past)(?!\w))?", re.IGNORECASE
)
FEAST_WORDS = re.compile(
    rf"{LETTERS}(?:['’]{LETTERS})?(?:\.?[ \t]+{LETTERS}(?:['’]{LETTERS})?){{0,{LONGEST_FEAST - 1}}}"
)
FEAST_YEAR = re.compile(rf"[ \t]+({YEAR})")
PHRASE = re.compile(rf"(?:the[ \t]+)?{LETTERS}(?:[ \t]+{LETTERS})?{TAIL}", re.IGNORECASE)
DAY_ALONE = re.compile(r"([0-9]{1,2})(?:st|nd|rd|th)(?![\w])", re.IGNORECASE)


def ago(text: str, start: int) -> Found | None:
    """About a fortnight ago, a couple of days ago, a month back, a week ago Tuesday."""
    m = AGO.match(text, start)
    if m is None:
        return None
    number = plain(m["number"])
    low, high = (int(number), int(number)) if number.isdigit() else NUMBERS_BACK[number]
    days = UNIT_DAYS[m["unit"].lower().rstrip("s")]
    day = WEEKDAYS.get(plain(m["day"] or ""))
    if day is not None:
        return DateWords(written=m[0], weekday=day, days_ago=low * days), m.end()
    slack = low * days // 5 if m["about"] or days == 30 else 0
    written = text[start : m.end("unit")] + text[m.end("unit") : m.end()].split(m["day"] or "\0")[0].rstrip()
    end = start + len(written)
    first, last = high * days + slack, low * days - slack
    return DateWords(written=written, days_ago=first, days_ago_to=None if first == last else last), end


def week_last(text: str, start: int) -> Found | None:
    """A week last Tuesday: the Tuesday before the last."""
    m = WEEK_LAST.match(text, start)
    day = WEEKDAYS.get(plain(m[1])) if m else None
    return None if m is None or day is None else (DateWords(written=m[0], weekday=day, days_ago=8), m.end())


def _ordinal(tens: str | None, word: str) -> int | None:
    number = ORDINALS.get(plain(word))
    if number is None or (tens and number > 9):
        return None
    return number + {"twenty": 20, "thirty": 30}.get((tens or "").lower(), 0)


def spelled_day(text: str, start: int) -> Found | None:
    """The tenth of June, twenty-first of May."""
    m = SPELLED_DAY.match(text, start)
    day = _ordinal(m["tens"], m["day"]) if m else None
    if m is None or day is None or (month := _month_at(text, m.end())) is None:
        return None
    words, end = month
    return replace(words, written=text[start:end], day=day), end


def month_spelled(text: str, start: int) -> Found | None:
    """June the tenth."""
    m = MONTH_SPELLED.match(text, start)
    day = _ordinal(m["tens"], m["day"]) if m else None
    month = month_alone(text, start) if day is not None else None
    if m is None or day is None or month is None or month[0].month is None:
        return None
    return DateWords(written=m[0], month=month[0].month, day=day), m.end()


def _month_at(text: str, at: int) -> Found | None:
    """A month, a short one too where words before it say that it is one."""
    if (found := month_alone(text, at)) is not None:
        return found
    m = re.compile(rf"({LETTERS}){TAIL}").match(text, at)
    short = plain(m[1]) if m else ""
    if m and short == "may":
        return DateWords(written=m[0], month=5), m.end()
    return (
        (DateWords(written=m[0], month=SHORT_MONTHS[short]), m.end())
        if m and short in ENGLISH_SHORT
        else None
    )


def short_month(text: str, start: int) -> Found | None:
    """Feb, as in "in Feb"; the caller knows what stands before it."""
    m = re.compile(rf"({LETTERS}){TAIL}").match(text, start)
    if m is None or plain(m[1]) not in ENGLISH_SHORT:
        return None
    return DateWords(written=m[0], month=SHORT_MONTHS[plain(m[1])]), m.end()


def week_of(text: str, start: int) -> Found | None:
    """First week of June; last weekend in May."""
    m = WEEK_OF.match(text, start)
    month = _month_at(text, m.end()) if m else None
    if m is None or month is None or month[0].month is None:
        return None
    which = {"first": 1, "1st": 1, "second": 2, "2nd": 2, "third": 3, "3rd": 3, "last": -1}[
        m["which"].lower()
    ]
    words, end = month
    return replace(words, written=text[start:end], week=which, is_weekend=m["unit"].lower() == "weekend"), end


def short_weekday(text: str, start: int) -> Found | None:
    """Sat, last Tues, Fri night; Saturday morning, Monday just gone."""
    m = SHORT_DAY.match(text, start)
    if m is not None and (number := SHORT_DAYS.get(plain(m["day"]))) is not None:
        is_sure = m["last"] or m["day"][0].isupper() or plain(m["day"]) not in ALSO_WORDS
        if not is_sure or (m["day"] == "Sun" and not (m["last"] or m["part"] or _ends_at(text, m.end()))):
            return None
        back = 1 if (m["last"] or "").lower() == "last" else None
        return DateWords(written=m[0], weekday=number, days_ago=back), m.end()
    m = WEEKDAY_PART.match(text, start)
    number = WEEKDAYS.get(plain(m["day"])) if m else None
    if m is None or number is None or not (m["part"] or m["gone"]):
        return None
    return DateWords(written=m[0], weekday=number), m.end()


def _ends_at(text: str, end: int) -> bool:
    return re.compile(r"[ \t]*(?:[,;.:!?)]|$)").match(text, end) is not None


def span_back(text: str, start: int) -> Found | None:
    """Last week, last weekend, last month, the other day."""
    m = PHRASE.match(text, start)
    if m is None:
        return None
    words = plain(m[0])
    for name in (words, words.rsplit(" ", 1)[0]):
        if (span := SPANS_BACK.get(name)) is not None:
            end = start + len(name)
            return DateWords(written=text[start:end], days_ago=0, near=span), end
    return None


def feast(text: str, start: int) -> Found | None:
    """Good Friday, St. Patrick's Day 2024, the winter solstice."""
    at = start + 4 if text[start : start + 4].lower() == "the " else start
    m = FEAST_WORDS.match(text, at)
    if m is None:
        return None
    ends = [k for k in range(m.end(), at, -1) if k == m.end() or text[k] in " \t"]
    for end in ends:
        name = " ".join(plain(text[at:end]).split())
        if name not in FEASTS:
            continue
        words = DateWords(written=text[start:end], feast=name)
        if year := FEAST_YEAR.match(text, end):
            return replace(words, written=text[start : year.end()], year=short_year(year[1])), year.end()
        return words, end
    return None


def day_of_month(text: str, start: int) -> Found | None:
    """The 4th, where the words before it say that a day is meant."""
    m = DAY_ALONE.match(text, start)
    if m is None or not 1 <= int(m[1]) <= 31:
        return None
    return DateWords(written=m[0], day=int(m[1]), days_ago=0), m.end()


FORMS: tuple[Form, ...] = (
    ago, week_last, spelled_day, month_spelled, week_of, short_weekday, span_back, feast,
)  # fmt: skip
PHRASE_STARTS = frozenset(
    {
        *FEAST_STARTS, *SHORT_DAYS, *WEEKDAYS, *ORDINALS, *(n.split()[0] for n in NUMBERS_BACK), "about", "around", "roughly", "nearly",
        "some", "the", "last", "this", "weekend", "twenty", "thirty", "at", "1st", "2nd", "3rd",
    }
)  # fmt: skip


def scan_day(text: str, start: int = 0) -> Found | None:
    """As `scan_date`, with the forms of this module."""
    best = scan_date(text, start)
    if start >= len(text) or (start and text[start - 1].isalnum()):
        return best
    for form in _forms_at(text, start):
        found = form(text, start)
        if found is not None and (best is None or found[1] > best[1]):
            best = found
    return best


def _forms_at(text: str, start: int) -> tuple[Form, ...]:
    """The forms that may begin with the first word there; a quick look, so that the others are not tried."""
    if text[start].isdigit():
        return (ago, week_of)
    m = FIRST_WORD.match(text, start)
    if m is None or "'" in m[0] or "’" in m[0]:
        return () if m is None else FORMS
    return FORMS_BY_WORD.get(plain(m[0]), ())


OPENINGS: dict[Form, frozenset[str]] = {
    ago: frozenset({*(n.split()[0] for n in NUMBERS_BACK), "about", "around", "roughly", "nearly", "some"}),
    week_last: frozenset({"a"}),
    spelled_day: frozenset({*ORDINALS, "the", "twenty", "thirty"}),
    month_spelled: frozenset({*MONTHS, *SHORT_MONTHS}),
    week_of: frozenset({"the", "first", "second", "third", "last"}),
    short_weekday: frozenset({*SHORT_DAYS, *WEEKDAYS, "last", "this"}),
    span_back: frozenset({*(n.split()[0] for n in SPANS_BACK), "the"}),
    feast: frozenset({*FEAST_STARTS, "the"}),
}
"""The words each form may begin with."""

FORMS_BY_WORD: dict[str, tuple[Form, ...]] = {
    word: tuple(form for form in FORMS if word in OPENINGS[form])
    for word in frozenset().union(*OPENINGS.values())
}
