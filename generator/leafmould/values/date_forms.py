"""The forms a date is written in: each reads one form at one spot of a text.

Run by `dates.scan_date`, which takes the longest. A form says which words stand there; whether such a
day exists, and in which year, is settled in `dates`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from leafmould.values.date_words import (
    DAYS_AGO,
    MONTHS,
    NEEDS_YEAR,
    SEASONS,
    SHORT_MONTHS,
    SHORT_WEEKDAYS,
    SMALL_NUMBERS,
    THIRDS,
    WEEKDAYS,
    plain,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class DateWords:
    """The parts of a date as written, not yet a day."""

    written: str
    year: int | None = None
    month: int | None = None
    day: int | None = None
    other: tuple[int, int] | None = None  # (month, day) of the other reading of 3/4/2026
    third: str | None = None  # "early", "mid", "late"
    season: str | None = None  # "spring", "summer", "autumn", "winter"
    weekday: int | None = None  # 0 Monday; alone, without day and month
    season_to: str | None = None  # "summer" of "spring/summer 2019"
    days_ago: int | None = None  # "yesterday" 1; before a weekday: counted from that day back
    is_dotted: bool = False  # 3.4.2026: day first unless garden.yaml says otherwise, never asked
    is_over_new_year: bool = False  # "winter 2023/24": both years are written
    days_ago_to: int | None = None  # "a couple of days ago": no sooner than so many days
    near: str | None = None  # "last week", "weekend": spans counted from the note's date
    week: int | None = None  # of the month: 1, 2, 3, or -1 for its last
    is_weekend: bool = False  # of that week, its Saturday and Sunday
    feast: str | None = None  # a name of `feasts`

    @property
    def is_bare(self) -> bool:
        """Whether it is a month or season alone: a date only where the words around it say so."""
        told = (self.day, self.weekday, self.days_ago, self.year, self.feast, self.week)
        return all(part is None for part in told)


Found = tuple[DateWords, int]
Form = Callable[[str, int], Found | None]

LETTERS = "(?:[^\\W\\d_][\u0300-\u036f]*)+"  # accents may stand apart from their letter
CENTURIES = r"(?:1[89]|20|21)\d\d"
YEAR = (
    rf"(?:{CENTURIES}(?![\d.,]\d|\d|\s?(?:g|kg|ml|oz|lb)\b)|['’][0-9]{{2}}(?!\d)"
    r"|[0-9]{2}(?=\s*(?:$|[:;,)\]\n.](?!\d))))"
)
TAIL = "(?![\\w\u0300-\u036f]|-[^\\W\\d_])"  # the word ends here: not "June-bearing"


def short_year(text: str) -> int:
    """The year written, two digits as POSIX reads them: 69–99 are 1969–1999, 00–68 are 2000–2068.

    Source: The Open Group, Base Specifications, `strptime`, conversion %y (from memory).
    """
    digits = text.lstrip("'’")
    if len(digits) > 2:
        return int(digits)
    return int(digits) + (1900 if int(digits) >= 69 else 2000)


def _year(text: str | None) -> int | None:
    return None if text is None else short_year(text)


def month_of(word: str) -> int | None:
    """The month a word names, whole or short, in the languages known; None for none."""
    key = plain(word)
    return MONTHS.get(key) or SHORT_MONTHS.get(key)


# --- Numbers -----------------------------------------------------------------------------------------

YEAR_FIRST = re.compile(r"([0-9]{4})([-/.])([0-9]{1,2})(?:\2([0-9]{1,2}))?(?![0-9]|[-/.][0-9])")
THREE_NUMBERS = re.compile(
    r"([0-9]{1,2})(?:([-/])|(\.)\s?)([0-9]{1,2})(?(2)\2|\.\s?)([0-9]{4}|['’]?[0-9]{2})(?![0-9]|[-/.][0-9]|[^\W_])"
)
TWO_NUMBERS = re.compile(r"([0-9]{1,2})/([0-9]{1,2})(?![0-9/]|[.,][0-9]|[^\W_])")
WORD_FOLLOWS = re.compile(r"\s+[^\W\d_]")
DAY_MONTH_DOTS = re.compile(r"([0-9]{1,2})\.\s?([0-9]{1,2})\.(?![0-9])")
MONTH_YEAR = re.compile(rf"([0-9]{{1,2}})[-/]({CENTURIES})(?![0-9]|[-/.][0-9])")
EAST_ASIAN = re.compile(r"(?:([0-9]{4})年)?([0-9]{1,2})月(?:([0-9]{1,2})日)?")


def year_first(text: str, start: int) -> Found | None:
    """2026-04-12, 2026-4-1, 2026/04/01, 2026-04."""
    m = YEAR_FIRST.match(text, start)
    if m is None:
        return None
    month = int(m[3])
    if m[4] is None and (m[2] == "." or not 1 <= month <= 12 or not re.fullmatch(CENTURIES, m[1])):
        return None
    day = None if m[4] is None else int(m[4])
    return DateWords(written=m[0], year=int(m[1]), month=month, day=day), m.end()


def three_numbers(text: str, start: int) -> Found | None:
    """1.4.2026, 3/4/2026, 3-4-26."""
    m = THREE_NUMBERS.match(text, start)
    if m is None:
        return None
    return _day_and_month(m[0], int(m[1]), int(m[4]), short_year(m[5]), is_dotted=m[3] is not None), m.end()


def two_numbers(text: str, start: int) -> Found | None:
    """3/4 without a year; elsewhere than at the start only where no word follows (3/4 bucket)."""
    m = TWO_NUMBERS.match(text, start)
    if m is None or (start and WORD_FOLLOWS.match(text, m.end())):
        return None
    a, b = int(m[1]), int(m[2])
    if not (1 <= a <= 31 and 1 <= b <= 31 and min(a, b) <= 12):
        return None
    return _day_and_month(m[0], a, b, None), m.end()


def _day_and_month(written: str, a: int, b: int, year: int | None, *, is_dotted: bool = False) -> DateWords:
    """Two numbers as day and month; `other` where both could be either."""
    if b > 12 and a <= 12:
        return DateWords(written=written, year=year, month=a, day=b, is_dotted=is_dotted)
    other = (a, b) if a <= 12 and a != b else None
    return DateWords(written=written, year=year, month=b, day=a, other=other, is_dotted=is_dotted)


def day_month_dots(text: str, start: int) -> Found | None:
    """12.6. as written in German."""
    m = DAY_MONTH_DOTS.match(text, start)
    if m is None or not 1 <= int(m[2]) <= 12:
        return None
    return DateWords(written=m[0], month=int(m[2]), day=int(m[1]), is_dotted=True), m.end()


def month_year(text: str, start: int) -> Found | None:
    """04/2026."""
    m = MONTH_YEAR.match(text, start)
    if m is None or not 1 <= int(m[1]) <= 12:
        return None
    return DateWords(written=m[0], year=int(m[2]), month=int(m[1])), m.end()


def east_asian(text: str, start: int) -> Found | None:
    """2024年5月1日."""
    m = EAST_ASIAN.match(text, start)
    if m is None:
        return None
    return DateWords(
        written=m[0], year=_year(m[1]), month=int(m[2]), day=None if m[3] is None else int(m[3])
    ), m.end()


# --- Words -------------------------------------------------------------------------------------------

DAY_MONTH = re.compile(
    rf"([0-9]{{1,2}})(?:st|nd|rd|th|ers?|re|ste|de|e|º|ª|\.)?[ \t./-]*(?:of |de |di )?({LETTERS}){TAIL}\.?"
    rf"(?:(?:[ \t./-]+|,[ \t]*)(?:de |of )?({YEAR}))?"
)
MONTH_DAY = re.compile(
    rf"({LETTERS})\.?[ \t./-]*([0-9]{{1,2}})(?:st|nd|rd|th)?(?![\w%]|[:.,/][0-9]|\s?(?:g|kg|ml|oz|lb|cm)\b)"
    rf"(?:,?[ \t]+({YEAR}))?"
)
CLOCK_THEN_YEAR = re.compile(
    rf"[ \t]+\d\d:\d\d(?::\d\d)?(?:[ \t]+(?:[A-Z]{{2,5}}|[+-]\d{{4}}))?[ \t]+({CENTURIES})(?!\d)"
)
MONTH_ALONE = re.compile(rf"({LETTERS}){TAIL}(?:(?P<dot>\.?)(?:[ \t,./-]*)(?:de |of )?({YEAR}))?")
OPENING = re.compile(r"(?:the|le|el|il|den|der|am|op)[ \t]+(?=[0-9])", re.IGNORECASE)
WEEKDAY = re.compile(rf"({LETTERS}){TAIL}")
AFTER_WEEKDAY = re.compile(r"[.,]?[ \t]+(?:(?:the|le|el|il|den|de|op)[ \t]+)?")
NEXT_WORD = re.compile(rf"[ \t]+({LETTERS}){TAIL}")
ENDS_THERE = re.compile(r"\.?[ \t]*(?:[:,]|$)")
THIRD = re.compile(
    rf"({LETTERS})(?:[ \t]+(?:of|de|di|van|del)(?:[ \t]+the)?)?(?:[ \t]+|-)(?={LETTERS}|[0-9])"
)
YEAR_AHEAD = re.compile(rf"({CENTURIES})(?![\w]|[.,][0-9])")
SEASON = re.compile(
    rf"({LETTERS}){TAIL}(?:[ \t]*(?:/|–|-|&|and|to|through|et|und)[ \t]*({LETTERS}){TAIL})?"
    rf"(?:[ \t]*(?:,|of |de |del )?[ \t]*({CENTURIES}(?:[/–-][0-9]{{2}}(?:[0-9]{{2}})?)?(?![\w])|['’][0-9]{{2}}(?!\d)))?"
)
AGO = re.compile(rf"([0-9]{{1,3}}|{LETTERS})[ \t]+(day|week)s?[ \t]+ago(?!\w)", re.IGNORECASE)
THREE_WORDS = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*(?:[ -][^\W\d_]+){0,3}")


def day_month_word(text: str, start: int) -> Found | None:
    """12 June, 12th of June 2026, 1er mai, 12-jun-26."""
    m = DAY_MONTH.match(text, start)
    month = month_of(m[2]) if m else None
    if m is None or month is None:
        return None
    if m[3] is None and plain(m[2]) in NEEDS_YEAR:
        return None
    words = DateWords(written=m[0], year=_year(m[3]), month=month, day=int(m[1]))
    return words, m.end() if m[3] is not None else m.end(2)


def month_word_day(text: str, start: int) -> Found | None:
    """June 12th, Jun 12 2026, Apr 03 07:12:44 MDT 2018."""
    m = MONTH_DAY.match(text, start)
    month = month_of(m[1]) if m else None
    if m is None or month is None or plain(m[1]) in NEEDS_YEAR:
        return None
    words = DateWords(written=m[0], year=_year(m[3]), month=month, day=int(m[2]))
    if words.year is None and (clock := CLOCK_THEN_YEAR.match(text, m.end())):
        return replace(words, year=int(clock[1])), clock.end()
    return words, m.end()


def month_alone(text: str, start: int) -> Found | None:
    """April 2026, avr. 2026, April; short names only with a year."""
    m = MONTH_ALONE.match(text, start)
    month = month_of(m[1]) if m else None
    if m is None or month is None:
        return None
    if m[3] is None and (plain(m[1]) not in MONTHS or m[1] == "may"):
        return None
    return DateWords(written=m[0], year=_year(m[3]), month=month), m.end() if m[3] else m.end(1)


def with_article(text: str, start: int) -> Found | None:
    """The 12th of June, le 12 mai, am 12. Juni."""
    m = OPENING.match(text, start)
    return None if m is None else day_month_word(text, m.end()) or day_month_dots(text, m.end())


def weekday(text: str, start: int) -> Found | None:
    """Friday; Fri 12 June; last Friday."""
    m = WEEKDAY.match(text, start)
    if m is None:
        return None
    word = plain(m[1])
    if word in ("last", "this"):
        return _last_weekday(text, m.end(), 1 if word == "last" else 0)
    number = WEEKDAYS.get(word, SHORT_WEEKDAYS.get(word))
    if number is None:
        return None
    after = AFTER_WEEKDAY.match(text, m.end())
    dated = _dated(text, after.end()) if after else None
    if dated is not None:
        return dated
    if word not in WEEKDAYS and (start or not ENDS_THERE.match(text, m.end())):
        return None
    return DateWords(written=m[0], weekday=number), m.end()


def _last_weekday(text: str, at: int, days_ago: int) -> Found | None:
    m = NEXT_WORD.match(text, at)
    number = WEEKDAYS.get(plain(m[1])) if m else None
    if m is None or number is None:
        return None
    return DateWords(written=m[0], weekday=number, days_ago=days_ago), m.end()


def _dated(text: str, at: int) -> Found | None:
    """A date with a day in it, as it follows a weekday."""
    forms = (year_first, three_numbers, two_numbers, day_month_dots, day_month_word, month_word_day)
    found = [f for form in forms if (f := form(text, at)) is not None and f[0].day is not None]
    return max(found, key=lambda f: f[1], default=None)


def third(text: str, start: int) -> Found | None:
    """Late August, mid-May, end of July, early 2024, early spring."""
    m = THIRD.match(text, start)
    which = THIRDS.get(plain(m[1])) if m else None
    if m is None or which is None:
        return None
    found = month_alone(text, m.end()) or season(text, m.end())
    if found is None and (year := YEAR_AHEAD.match(text, m.end())):
        found = DateWords(written=year[0], year=int(year[1])), year.end()
    if found is None and (short := WEEKDAY.match(text, m.end())) and plain(short[1]) in SHORT_MONTHS:
        found = DateWords(written=short[0], month=SHORT_MONTHS[plain(short[1])]), short.end()
    return None if found is None else (replace(found[0], third=which), found[1])


def season(text: str, start: int) -> Found | None:
    """Spring 2024, winter 2023/24, spring/summer 2019, spring."""
    m = SEASON.match(text, start)
    first = SEASONS.get(plain(m[1])) if m else None
    if m is None or first is None:
        return None
    second = SEASONS.get(plain(m[2])) if m[2] else None
    if m[2] and second is None:
        m = SEASON.match(text, start, m.end(1))
    if m is None or (m[3] is None and plain(m[1]) in NEEDS_YEAR):
        return None
    year, *over = re.split("[/–-]", m[3]) if m[3] else [None]
    words = DateWords(written=m[0], year=_year(year), season=first, season_to=second)
    return replace(words, is_over_new_year=bool(over)), len(m[0].rstrip()) + start


def days_ago(text: str, start: int) -> Found | None:
    """Yesterday, heute, 3 days ago, a week ago."""
    if m := AGO.match(text, start):
        number = int(m[1]) if m[1].isdecimal() else SMALL_NUMBERS.get(plain(m[1]))
        if number is None:
            return None
        days = number * (7 if plain(m[2]) == "week" else 1)
        return DateWords(written=m[0], days_ago=days), m.end()
    m = THREE_WORDS.match(text, start)
    if m is None:
        return None
    ends = [i for i in range(m.end(), start, -1) if i == m.end() or text[i] in " -"]
    for end in ends:
        number = DAYS_AGO.get(plain(text[start:end].replace("-", " ")))
        if number is not None and not (plain(text[start:end]) == "hier" and not ENDS_THERE.match(text, end)):
            return DateWords(written=text[start:end], days_ago=number), end
    return None


CLOCK = re.compile(
    r"(?:T|,?[ \t]+(?:at[ \t]+)?)"
    r"(?:[0-2]?\d[:h][0-5]\d(?::[0-5]\d(?:[.,]\d+)?)?(?:[ \t]*(?i:[ap]\.?m\b)\.?)?"
    r"(?:[ \t]*(?:Z|[+-]\d\d:?\d\d|UTC|GMT|[A-Z]{2,4}T))?|[01]?\d[ \t]*(?i:[ap]\.?m\b)\.?)(?!\w)"
)


def clock_after(text: str, end: int) -> int:
    """Where a time of day behind a date ends; `end` itself where none stands."""
    m = CLOCK.match(text, end)
    return m.end() if m else end


FORMS_BY_NUMBER: tuple[Form, ...] = (
    year_first,
    three_numbers,
    two_numbers,
    day_month_dots,
    month_year,
    east_asian,
    day_month_word,
    days_ago,
)
FORMS_BY_LETTER: tuple[Form, ...] = (
    month_word_day,
    month_alone,
    with_article,
    weekday,
    third,
    season,
    days_ago,
)

FIRST_WORDS = frozenset(
    [*MONTHS, *SHORT_MONTHS, *WEEKDAYS, *SHORT_WEEKDAYS, *SEASONS, *THIRDS, *SMALL_NUMBERS]
    + [words.split()[0] for words in DAYS_AGO]
    + ["last", "this", "the", "le", "el", "il", "den", "der", "am", "op", "avant"]
)
FIRST_WORD = re.compile(rf"{LETTERS}(?:['’]{LETTERS})*")


def may_begin(text: str, start: int) -> bool:
    """Whether a date written in words can begin here at all: a quick look at the first word."""
    m = FIRST_WORD.match(text, start)
    return m is not None and plain(m[0]) in FIRST_WORDS
