"""Reading dates in all the ways gardeners write them.

Scanning finds the words of a date; resolving gives them days, with the garden's day order, hemisphere
and the date of the note. Our own strict forms, so that every Python version agrees; no clock, no zone.
The forms are in `date_forms`, the words in `date_words`.
"""

from __future__ import annotations

import re
from calendar import monthrange
from dataclasses import dataclass, replace
from datetime import date, timedelta

from leafmould.values.date_forms import FORMS_BY_LETTER, FORMS_BY_NUMBER, DateWords, clock_after, may_begin
from leafmould.values.date_words import ENGLISH_MONTHS, MONTHS, SEASONS, plain
from leafmould.values.days_back import day_back, span_back
from leafmould.values.feasts import feast_days
from leafmould.values.when import When

__all__ = ["DateReading", "DateWords", "read_date", "resolve_date", "scan_date", "written_day"]


@dataclass(frozen=True, slots=True, kw_only=True)
class DateReading:
    """What a date turned out to be."""

    when: When | None  # None: see fault
    fault: str | None = None  # "29 February 2023 does not exist."
    other: When | None = None  # the second reading of an ambiguous one; `when` holds the first


def scan_date(text: str, start: int = 0) -> tuple[DateWords, int] | None:
    """The longest date that begins exactly at `start`, and where it ends; None if none does.

    A time of day behind the date belongs to it. A month or season without a day or year counts as a
    date too ("in May", "spring"): whether it is one there ("spring onion") is for the caller to say.
    "3/4" without a year is taken only where no word follows it, or at the very start. A bare year is
    no date here.
    """
    if start >= len(text) or (start and (text[start - 1].isalnum() or _runs_on(text, start))):
        return None
    if text[start] in "0123456789":
        forms = FORMS_BY_NUMBER
    elif may_begin(text, start):
        forms = FORMS_BY_LETTER
    else:
        return None
    found = [f for form in forms if (f := form(text, start)) is not None]
    if not found:
        return None
    words, end = max(found, key=lambda f: f[1])
    end = clock_after(text, end)
    written = text[start:end]
    return (words if words.written == written else replace(words, written=written)), end


def _runs_on(text: str, start: int) -> bool:
    """Whether a number at `start` is the tail of a longer one, such as 1.5 or 3/4."""
    return start > 1 and text[start - 1] in "./,-" and text[start - 2].isdigit() and text[start].isdigit()


def resolve_date(words: DateWords, *, order: str | None, base: When | None, is_southern: bool) -> DateReading:
    """The day or span meant.

    Args:
        order: "day first", "month first", or None where garden.yaml does not say.
        base: the note's date, for dates without a year and for weekdays: the nearest not after it.
    """
    if words.other is None or words.month is None or words.day is None:
        return _resolve(words, base, is_southern)
    day_first = replace(words, other=None)
    month_first = replace(words, other=None, month=words.other[0], day=words.other[1])
    if order == "month first":
        return _resolve(month_first, base, is_southern)
    first = _resolve(day_first, base, is_southern)
    if order is not None or words.is_dotted:
        return first
    second = _resolve(month_first, base, is_southern)
    if first.when is None or second.when is None:
        return second if first.when is None else first
    return replace(first, other=second.when)


LONGEST = 200
"""No date is written in more letters than this."""

WHOLE_YEAR = re.compile(r"(?:1[89]|2[01])\d\d")
COMPACT = re.compile(r"((?:1[89]|20)\d\d)(0\d|1[0-2])([0-3]\d)(?:T?\d+Z?)?")
WEEK_DATE = re.compile(r"\d{4}-?W\d\d(?:-?\d)?", re.IGNORECASE)
FULL = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
ABOUT = re.compile(r"(?:~|ca?\.\s|circa\s|about\s|around\s|on\s|in\s)\s*", re.IGNORECASE)


def read_date(text: str, *, order: str | None, base: When | None, is_southern: bool) -> DateReading | None:
    """A text that is a date and nothing else; None if it is no date at all.

    Here a bare year is a date too: the whole of it.
    """
    written = text.strip()
    if len(written) > LONGEST:
        return None
    if (m := FULL.fullmatch(written)) is not None:
        words = DateWords(written=written, year=int(m[1]), month=int(m[2]), day=int(m[3]))
        return resolve_date(words, order=order, base=base, is_southern=is_southern)
    if refused := _refused(written):
        return refused
    if WHOLE_YEAR.fullmatch(written):
        return _resolve(DateWords(written=written, year=int(written)), base, is_southern)
    if (word := plain(written)) in SEASONS or word in MONTHS:
        words = DateWords(written=written, season=SEASONS.get(word), month=MONTHS.get(word))
        return _resolve(words, base, is_southern)
    about = ABOUT.match(written)
    start = about.end() if about else 0
    found = scan_date(written, start)
    if found is None or written[found[1] :].strip(" .,:;"):
        return None
    words = replace(found[0], written=written)
    return resolve_date(words, order=order, base=base, is_southern=is_southern)


def written_day(day: date) -> str:
    """A day as it stands in sentences: "12 June 2026"."""
    return f"{day.day} {ENGLISH_MONTHS[day.month - 1]} {day.year}"


def _refused(written: str) -> DateReading | None:
    """Forms that other programs take and we do not, so that every Python version agrees."""
    if WEEK_DATE.fullmatch(written):
        return DateReading(when=None, fault=f'"{written}" names a week. Write the day, such as 2026-04-12.')
    if compact := COMPACT.fullmatch(written):
        meant = "-".join(compact.groups())
        return DateReading(when=None, fault=f'"{written}" is not read as a date. Write {meant}.')
    return None


def _resolve(words: DateWords, base: When | None, is_southern: bool) -> DateReading:
    """One reading, its day and month settled."""
    if words.weekday is not None or words.days_ago is not None:
        return _near(words, base)
    if words.year is not None:
        return _in_year(words, words.year, base, is_southern)
    if fault := _never(words):
        return DateReading(when=None, fault=fault)
    if base is None:
        return DateReading(when=None, fault=f'"{words.written}" has no year, and nothing near it gives one.')
    for year in range(base.last.year, max(base.last.year - 9, 0), -1):
        span = _span(words, year, is_southern)
        if span is not None and span[0] <= base.last:
            return DateReading(when=When(first=span[0], last=span[1], written=words.written))
    return DateReading(when=None, fault=f'No year is near enough for "{words.written}".')


def _near(words: DateWords, base: When | None) -> DateReading:
    """A weekday or "yesterday", counted back from the note's date."""
    if base is None:
        return DateReading(when=None, fault=f'"{words.written}" needs the date of the note.')
    try:
        back = timedelta(days=words.days_ago or 0)
        first, last = base.first - back, base.last - back
        if words.days_ago_to is not None:
            last = base.last - timedelta(days=words.days_ago_to)
        if words.near is not None:
            first, last = span_back(words.near, base.last)
        if words.day is not None:
            first = last = day_back(words.day, base.last)
        if words.weekday is not None:
            first = last = last - timedelta(days=(last.weekday() - words.weekday) % 7)
    except OverflowError:
        return DateReading(when=None, fault=f'"{words.written}" lies before the calendar begins.')
    return DateReading(when=When(first=first, last=last, written=words.written))


FIRST_YEAR, LAST_YEAR = 1800, 2199
"""Years no garden's notes lie outside of. Counting days near the calendar's ends would leave it."""


def _in_year(words: DateWords, year: int, base: When | None, is_southern: bool) -> DateReading:
    """A date with its year written.

    A season over the new year begins in the year named, unless that lies after the note's date: then
    it ends in it.
    """
    if year and not FIRST_YEAR <= year <= LAST_YEAR:
        told = f"The year {year} is out of range: years from {FIRST_YEAR} to {LAST_YEAR} are read."
        return DateReading(when=None, fault=told)
    span = _span(words, year, is_southern)
    if span is None:
        return DateReading(when=None, fault=_fault(words, year))
    if (
        span[0].year < span[1].year
        and base is not None
        and span[0] > base.last
        and not words.is_over_new_year
    ):
        span = _span(words, year - 1, is_southern) or span
    return DateReading(when=When(first=span[0], last=span[1], written=words.written))


def _never(words: DateWords) -> str | None:
    """The fault of a day that is in no year: 31 June."""
    if words.month is None:
        return None
    if (
        1 <= words.month <= 12
        and 1 <= (1 if words.day is None else words.day) <= monthrange(2024, words.month)[1]
    ):
        return None
    return _fault(words, None)


def _fault(words: DateWords, year: int | None) -> str:
    """Why a date cannot be: in words where its month can be named."""
    if words.month is None or not 1 <= words.month <= 12 or not words.day or year == 0:
        return f'"{words.written}" does not exist.'
    named = f"{words.day} {ENGLISH_MONTHS[words.month - 1]}"
    return f"{named} does not exist." if year is None else f"{named} {year} does not exist."


def _span(words: DateWords, year: int, is_southern: bool) -> tuple[date, date] | None:
    """First and last day in that year; None if it has no such day."""
    try:
        if words.feast is not None:
            days = feast_days(words.feast, year, is_southern)
            return _weekend_near(*days) if words.is_weekend else days
        if words.week is not None and words.month is not None:
            return _week_of_month(words, year, words.month)
        if words.season is not None:
            return _season(words, words.season, year, is_southern)
        if words.month is None:
            return _year_third(words.third, year)
        if words.day is not None:
            day = date(year, words.month, words.day)
            return _weekend_near(day, day) if words.is_weekend else (day, day)
        first, last = DAYS_OF_THIRD.get(words.third or "", (1, 31))
        return date(year, words.month, first), _last(year, words.month, last)
    except ValueError:
        return None


def _weekend_near(first: date, last: date) -> tuple[date, date]:
    """ "the 4th of July weekend": some day near it, within three."""
    return first - timedelta(days=3), last + timedelta(days=3)


def _week_of_month(words: DateWords, year: int, month: int) -> tuple[date, date]:
    """The first, second, third or last seven days of a month, or the weekend in them."""
    end = _last(year, month, 31)
    number = words.week or 1
    first = end - timedelta(days=6) if number < 0 else date(year, month, 7 * number - 6)
    if words.is_weekend:
        saturday = first + timedelta(days=(5 - first.weekday()) % 7)
        return saturday, saturday + timedelta(days=1)
    return first, first + timedelta(days=6)


DAYS_OF_THIRD = {"early": (1, 10), "mid": (11, 20), "late": (21, 31)}
NORTHERN_START = {"spring": 3, "summer": 6, "autumn": 9, "winter": 12}
"""First month of each season: whole months, as weather services count them (from memory)."""
SEASON_MONTHS = {"early": (0, 0), "mid": (1, 1), "late": (2, 2)}


def _season(words: DateWords, season: str, year: int, is_southern: bool) -> tuple[date, date]:
    """The span of a season, or from one season through the next."""
    begin = _months_from_start(season, is_southern)
    end = _months_from_start(words.season_to or season, is_southern)
    end += 12 if end < begin else 0
    first, last = SEASON_MONTHS.get(words.third or "", (0, 2))
    return _month(year, begin + first)[0], _month(year, end + last)[1]


def _months_from_start(season: str, is_southern: bool) -> int:
    """The first month of a season, from 0 for January."""
    return (NORTHERN_START[season] - 1 + (6 if is_southern else 0)) % 12


def _month(year: int, month: int) -> tuple[date, date]:
    """First and last day of a month counted from 0; 12 and more are in the next year."""
    year, month = year + month // 12, month % 12 + 1
    return date(year, month, 1), _last(year, month, 31)


def _last(year: int, month: int, day: int) -> date:
    """That day, or the last one of a shorter month."""
    return date(year, month, min(day, monthrange(year, month)[1]))


YEAR_THIRDS = {"early": (1, 4), "mid": (5, 8), "late": (9, 12)}


def _year_third(third: str | None, year: int) -> tuple[date, date]:
    """A whole year, or its first, second or last four months."""
    begin, end = YEAR_THIRDS.get(third or "", (1, 12))
    return date(year, begin, 1), _last(year, end, 31)
