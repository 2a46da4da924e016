"""The lessons, newest season first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from leafmould.pages.addresses import LESSONS
from leafmould.pages.chapters import chapters
from leafmould.pages.doings import lessons_of
from leafmould.pages.ledger import Ledger
from leafmould.pages.lessons_due import lessons_due
from leafmould.pages.page import Lesson, Link, Page


@dataclass(frozen=True, slots=True, kw_only=True)
class LessonYear:
    """The lessons of one season."""

    name: str
    lessons: tuple[Lesson, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LessonsPage:
    """The values of a page of lessons."""

    due: tuple[Lesson, ...]  # on the first page: of earlier seasons, for the weeks to come
    years: tuple[LessonYear, ...]
    others: tuple[Link, ...]  # the pages of other years; none if all fit into one


def lessons_pages(ledger: Ledger) -> Iterator[Page]:
    """Every lesson, newest season first; further pages hold earlier years where one would be too heavy."""
    by_year: dict[int | None, list[Lesson]] = {}
    for entry in ledger.lessons():
        year = ledger.year_of(entry.when.first) if entry.when else None
        by_year.setdefault(year, []).extend(lessons_of([entry], ledger))
    rows = {year: len(found) for year, found in by_year.items() if year is not None}
    pages = chapters(LESSONS, rows, ledger.year_name)
    for chapter in pages:
        is_first = chapter.address == LESSONS
        years = tuple(
            LessonYear(
                name="Without a date" if year is None else ledger.year_name(year), lessons=tuple(found)
            )
            for year, found in by_year.items()
            if year in chapter.years or (year is None and is_first)
        )
        others = tuple(Link(text=c.name, to=c.address) for c in pages if c is not chapter)
        yield Page(
            address=chapter.address,
            template="lessons.html",
            title="Lessons" if is_first else f"Lessons, {chapter.name}",
            section="lessons",
            values=LessonsPage(due=lessons_due(ledger) if is_first else (), years=years, others=others),
        )
