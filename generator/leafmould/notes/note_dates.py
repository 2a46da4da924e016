"""Which day a note and its parts belong to: heading, header, file name, first line, photo name.

Most trusted first: a dated heading or line for what stands under it, the header, the file name, the
first line, the name of a photo. What disagrees is told once, with what was used.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from itertools import pairwise

from leafmould.notes.body import Section
from leafmould.notes.habits import Habits
from leafmould.values.dates import DateReading, DateWords, resolve_date, scan_date
from leafmould.values.when import When
from leafmould.values.wording import day

FULL = re.compile(r"(?<!\d)((?:1[89]|20|21)\d\d)[-_.]?(\d\d)[-_.]?(\d\d)(?!\d)")
FULL_SHORT = re.compile(r"(?<!\d)((?:1[89]|20|21)\d\d)[-_.](\d{1,2})[-_.](\d{1,2})(?!\d)")
YEAR_MONTH = re.compile(r"(?<!\d)((?:19|20)\d\d)[-_.](0[1-9]|1[0-2])(?!\d)")
YEAR = re.compile(r"(?<!\d)((?:19|20)\d\d)(?!\d)")
MONTH_DAY = re.compile(r"(\d{1,2})[-_.](\d{1,2})(?!\d)")
DAY = re.compile(r"(\d{1,2})(?!\d)")
LEAP_YEAR = 2024  # in which every day of a month exists
WORD_START = re.compile(r"(?<![^\W_])[^\W_]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One place that gives a note a date."""

    name: str  # "header", "file name", "first line", "photo"
    when: When


def date_in_name(path: str, habits: Habits) -> DateReading | None:
    """The date a file's name gives, with the help of its folders; None if it gives none."""
    *folders, name = path.split("/")[1:]
    stem = name.rsplit(".", 1)[0]
    if (m := FULL_SHORT.search(stem) or FULL.search(stem)) is not None:
        return _numbers(int(m[1]), int(m[2]), int(m[3]))
    year, month = _of_folders(folders)
    if year is not None:
        if month is None and (m := MONTH_DAY.match(stem)):
            return _numbers(year, int(m[1]), int(m[2]))
        if month is not None and (m := DAY.match(stem)):
            return _numbers(year, month, int(m[1]))
    if (m := YEAR_MONTH.search(stem)) is not None:
        return _resolved(DateWords(written=m[0].replace("_", "-"), year=int(m[1]), month=int(m[2])), habits)
    if (words := date_within(stem.replace("_", " "), needs_year=year is None)) is not None:
        return _resolved(words, habits, year)
    if (m := YEAR.search(stem)) is not None:
        return _resolved(DateWords(written=m[0], year=int(m[1])), habits)
    if year is None:
        return None
    written = f"{year}" if month is None else f"{year}-{month:02}"
    return _resolved(DateWords(written=written, year=year, month=month), habits)


def date_of_photo(name: str) -> When | None:
    """The day in a photo's name, if one is written in full."""
    m = FULL.search(name) or FULL_SHORT.search(name)
    reading = _numbers(int(m[1]), int(m[2]), int(m[3])) if m else None
    return reading.when if reading else None


def date_within(text: str, *, needs_year: bool) -> DateWords | None:
    """The first date that begins at a word of the text and says a day, or a month or season and a year."""
    for m in WORD_START.finditer(text[:200]):
        found = scan_date(text, m.start())
        if found is None or found[0].days_ago is not None or found[0].weekday is not None:
            continue
        words = found[0]
        if words.year is not None or (words.day is not None and not needs_year):
            return words
    return None


def day_told(line: str, within: When, habits: Habits) -> DateReading | None:
    """The day a note's first sentence tells, if it is written in full, is the only one and can be the note's.

    Args:
        within: what the file's name says, too coarse to be a day.
    """
    words = date_within(line, needs_year=True)
    if words is None or words.year is None or words.day is None:
        return None
    rest = line[line.index(words.written) + len(words.written) :]
    reading = _resolved(words, habits)
    if reading.when is None or not reading.when.meets(within) or date_within(rest, needs_year=False):
        return None
    return reading


def year_in(text: str | None) -> When | None:
    """The only year a title names: "Plot log 2022"."""
    years = set(YEAR.findall(text or ""))
    if len(years) != 1:
        return None
    year = int(years.pop())
    return When(first=date(year, 1, 1), last=date(year, 12, 31), written=str(year))


def days_of_sections(
    sections: Sequence[Section], base: When | None, habits: Habits
) -> tuple[DateReading | None, ...]:
    """What day each part belongs to; None for a part without a date.

    A date without a year takes it from the note; where the note has none, from the nearest part above
    whose year is known, else below: that very year where the days run forward from part to part and this
    one is later in it, else the year that brings the two closest together.
    """
    found: list[DateReading | None] = [_section_day(s, base, habits) for s in sections]
    if base is None:
        is_forward = _runs_forward(sections, habits)
        for order in (range(len(found)), range(len(found) - 1, -1, -1)):
            _inherit_years(sections, found, order, habits, is_forward=is_forward)
    return tuple(found)


def disagreement(sources: Sequence[Source]) -> str | None:
    """The sentence about dates that cannot all be right; None where they agree."""
    used = sources[0]
    against = [s for s in sources[1:] if not s.when.meets(used.when)]
    if not against:
        return None
    said = " and ".join(f"the {s.name} {said_day(s.when)}" for s in against)
    return f"The {used.name} says {said_day(used.when)}, {said}. The {used.name} is used."


def finest_first(sources: Sequence[Source]) -> list[Source]:
    """The sources with the one to use first: the most trusted, or one that says the same more exactly.

    A header's date stands as it is written, however coarse.
    """
    if not sources or sources[0].name == "header":
        return list(sources)
    used = sources[0].when
    finer = [s for s in sources if used.first <= s.when.first and s.when.last <= used.last]
    best = min(finer, key=lambda s: s.when.last - s.when.first)
    return [best, *(s for s in sources if s is not best)]


WRITTEN_UP = timedelta(days=31)
"""How long after its days a log may be written up before its own date is asked about; common practice."""


def stands_apart(when: When, parts: Iterable[When]) -> bool:
    """Whether a note's date fits none of its dated parts: before them, or long after."""
    days = list(parts)
    if not days:
        return False
    begin, end = min(w.first for w in days), max(w.last for w in days)
    return when.last < begin or when.first - WRITTEN_UP > end


def said_day(when: When) -> str:
    """A date in a sentence."""
    return day(when.first) if when.is_exact else when.written


def _section_day(section: Section, base: When | None, habits: Habits) -> DateReading | None:
    if section.date is None:
        return None
    if re.fullmatch(r"\d{4}", section.date):
        return _resolved(DateWords(written=section.date, year=int(section.date)), habits)
    found = scan_date(section.date)
    if found is None:
        return None
    return resolve_date(found[0], order=habits.order, base=base, is_southern=habits.is_southern)


def _runs_forward(sections: Sequence[Section], habits: Habits) -> bool:
    """Whether more parts stand later in a year than the part above them than stand earlier."""
    readings = [_in_year(section, LEAP_YEAR, habits) for section in sections]
    days = [(r.when.first.month, r.when.first.day) for r in readings if r is not None and r.when is not None]
    steps = [(below > above) - (below < above) for above, below in pairwise(days)]
    return sum(steps) > 0


def _in_year(section: Section, year: int, habits: Habits) -> DateReading | None:
    """What day a part belongs to in a note of this year."""
    base = When(first=date(year, 1, 1), last=date(year, 12, 31), written=str(year))
    return _section_day(section, base, habits)


def _inherit_years(
    sections: Sequence[Section],
    found: list[DateReading | None],
    order: range,
    habits: Habits,
    *,
    is_forward: bool,
) -> None:
    """Give parts without a year the one that fits the part before in this order."""
    near: When | None = None
    for index in order:
        reading = found[index]
        if reading is None:
            continue
        if reading.when is None and near is not None:
            later = is_forward and order.step > 0
            fitting = _near_to(near, sections[index], habits, later_first=later)
            found[index] = reading = fitting or reading
        near = reading.when or near


def _near_to(near: When, section: Section, habits: Habits, *, later_first: bool) -> DateReading | None:
    """A part's day in the year nearest to another day; `later_first` takes the same year if it is then later."""
    choices = []
    for year in (near.first.year - 1, near.first.year, near.first.year + 1):
        choice = _in_year(section, year, habits)
        if choice is not None and choice.when is not None and choice.when.first.year == year:
            away = (choice.when.first - near.first).days
            is_next = later_first and year == near.first.year and away > 0
            choices.append((0 if is_next else abs(away), choice))
    return min(choices, key=lambda c: c[0])[1] if choices else None


def _of_folders(folders: Sequence[str]) -> tuple[int | None, int | None]:
    """The year and month folders give: 2026, 2026/06, 2026-06."""
    year = month = None
    for folder in folders:
        if m := YEAR_MONTH.fullmatch(folder):
            year, month = int(m[1]), int(m[2])
        elif YEAR.fullmatch(folder):
            year, month = int(folder), None
        elif year is not None and re.fullmatch(r"0[1-9]|1[0-2]", folder):
            month = int(folder)
    return year, month


@lru_cache(maxsize=10_000)
def _numbers(year: int, month: int, day_of_month: int) -> DateReading:
    words = DateWords(
        written=f"{year}-{month:02}-{day_of_month:02}", year=year, month=month, day=day_of_month
    )
    return resolve_date(words, order=None, base=None, is_southern=False)


def _resolved(words: DateWords, habits: Habits, year: int | None = None) -> DateReading:
    base = None if year is None else When(first=date(year, 1, 1), last=date(year, 12, 31), written=str(year))
    return resolve_date(words, order=habits.order, base=base, is_southern=habits.is_southern)
