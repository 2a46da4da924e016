"""The page of a bed: what stands there, year by year what stood there, its families, its notes.

A long history is split by years into further pages. Each planting has its section on the page of the bed
and year it began in; a later year only points back to it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from leafmould.garden.model import NOWHERE, Bed, Planting
from leafmould.garden.queries import EmptyBed, lineage
from leafmould.pages.bed_families import FamilyYear, LastStood, family_years, last_stood
from leafmould.pages.bed_years import BedYear, bed_years
from leafmould.pages.cautions import CautionLine, Work, bed_cautions, work_lately
from leafmould.pages.chapters import Chapter
from leafmould.pages.doings import MOST_LESSONS, lessons_of, note_line
from leafmould.pages.figures import day_figure, how_long
from leafmould.pages.labels import planting_line, planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.next_in_beds import NextGroup, next_in_bed, next_sources, next_year
from leafmould.pages.page import Lesson, Link, NoteLine, Page, PlantingLine

MOST_NOTES = 24
"""Notes listed on a bed's page; the years below lead to all the others."""


@dataclass(frozen=True, slots=True, kw_only=True)
class YearBefore:
    """A season of a bed that this one was before, and what stood there."""

    year: Link
    bed: str
    stood: tuple[Link, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BedPage:
    """The values of a bed's page, or of one further page of its history."""

    name: str
    kind: str
    facts: tuple[tuple[str, str], ...]
    came_from: tuple[Link, ...]
    became: tuple[Link, ...]
    standing: tuple[PlantingLine, ...]
    nothing_stands: str
    cautions: tuple[CautionLine, ...]
    years: tuple[BedYear, ...]
    families: tuple[FamilyYear, ...]
    last_stood: tuple[LastStood, ...]
    next: tuple[NextGroup, ...]
    next_year: str
    next_sources: tuple[Link, ...]
    lessons: tuple[Lesson, ...]
    lessons_in_all: int
    notes: tuple[NoteLine, ...]
    notes_in_all: int
    before: tuple[YearBefore, ...]  # as the beds it came from
    chapters: tuple[Link, ...]
    chapter: str  # the years of a further page; "" on the first


def bed_pages(ledger: Ledger) -> Iterator[Page]:
    """Every page of every bed."""
    work = work_lately(ledger)
    return (
        _page(bed, number, chapter, ledger, work)
        for bed in ledger.garden.beds.values()
        if _is_used(bed, ledger)
        for number, chapter in enumerate(ledger.bed_chapters[bed.key])
    )


def _is_used(bed: Bed, ledger: Ledger) -> bool:
    """The stand-in for a place nobody noted is a bed only where something stands in it."""
    return bed.kind != NOWHERE or bool(
        ledger.plantings_by_bed.get(bed.key) or ledger.entries_by_bed.get(bed.key)
    )


def _page(bed: Bed, number: int, chapter: Chapter, ledger: Ledger, work: Work) -> Page:
    values = _first(bed, chapter, ledger, work) if number == 0 else _further(bed, chapter, ledger)
    title = bed.name if number == 0 else f"{bed.name}, {chapter.name}"
    return Page(address=chapter.address, template="bed.html", title=title, section="beds", values=values)


def _first(bed: Bed, chapter: Chapter, ledger: Ledger, work: Work) -> BedPage:
    notes = ledger.entries_by_bed.get(bed.key, ())
    lessons = ledger.lessons(bed=bed.key)
    standing = ledger.in_the_ground(ledger.garden.on, bed.key)
    return BedPage(
        name=bed.name,
        kind=bed.kind,
        facts=bed_facts(bed),
        came_from=_beds(bed.came_from, ledger),
        became=_beds(bed.became, ledger),
        standing=tuple(planting_line(p, ledger) for p in standing),
        nothing_stands="" if standing else nothing_stands(bed, ledger),
        cautions=bed_cautions(bed.key, work, ledger),
        years=bed_years(bed.key, chapter.years, ledger),
        families=family_years(bed, ledger),
        last_stood=last_stood(bed, ledger),
        next=next_in_bed(bed, ledger),
        next_year=next_year(ledger),
        next_sources=next_sources(bed, ledger),
        lessons=lessons_of(lessons[:MOST_LESSONS], ledger)[:MOST_LESSONS],
        lessons_in_all=sum(len(entry.lesson) for entry in lessons),
        notes=tuple(note_line(entry, ledger, bed=bed.key) for entry in notes[: -MOST_NOTES - 1 : -1]),
        notes_in_all=len(notes),
        before=tuple(_before(bed, ledger)),
        chapters=_chapter_links(bed, chapter, ledger),
        chapter="",
    )


def _further(bed: Bed, chapter: Chapter, ledger: Ledger) -> BedPage:
    return BedPage(
        name=bed.name,
        kind=bed.kind,
        facts=(),
        came_from=(),
        became=(),
        standing=(),
        nothing_stands="",
        cautions=(),
        years=bed_years(bed.key, chapter.years, ledger),
        families=(),
        last_stood=(),
        next=(),
        next_year="",
        next_sources=(),
        lessons=(),
        lessons_in_all=0,
        notes=(),
        notes_in_all=0,
        before=(),
        chapters=_chapter_links(bed, chapter, ledger),
        chapter=chapter.name,
    )


def _chapter_links(bed: Bed, here: Chapter, ledger: Ledger) -> tuple[Link, ...]:
    found = ledger.bed_chapters[bed.key]
    if len(found) == 1:
        return ()
    return tuple(Link(text=c.name, to="" if c is here else c.address) for c in found)


def _before(bed: Bed, ledger: Ledger) -> Iterator[YearBefore]:
    """What stood in the beds it came from, newest first, in the seasons in which anything did."""
    for key in lineage(ledger.garden, bed.key)[1:]:
        for told in ledger.bed_history(key):
            if told.plantings and (to := ledger.to_bed_year(key, told.year)):
                names = {planting_name(p): ledger.sections[p.id] for p in told.plantings}
                yield YearBefore(
                    year=Link(text=ledger.year_name(told.year), to=to),
                    bed=ledger.garden.beds[key].name,
                    stood=tuple(Link(text=name, to=section) for name, section in names.items()),
                )


def _beds(keys: tuple[str, ...], ledger: Ledger) -> tuple[Link, ...]:
    return tuple(ledger.bed_links[key] for key in keys if key in ledger.bed_links)


def bed_facts(bed: Bed) -> tuple[tuple[str, str], ...]:
    """What is written of the bed itself, as labels and words."""
    known = (
        ("also called", ", ".join(bed.also)),
        ("size", _size(bed)),
        ("sun", bed.sun or ""),
        ("water", bed.water or ""),
        ("soil", bed.soil or ""),
        ("parts", ", ".join(bed.parts)),
        ("from", _moment_words(bed.begun)),
        ("until", _moment_words(bed.ended)),
        *bed.extra,
    )
    return tuple((label, words) for label, words in known if words)


def _moment_words(day: date | None) -> str:
    if day is None:
        return ""
    is_year_alone = (day.month, day.day) == (1, 1)
    return str(day.year) if is_year_alone else day_figure(day).text


def _size(bed: Bed) -> str:
    if bed.area_m2 is None or bed.size_written is None:
        return bed.size_written or ""
    return f"{bed.size_written} ({bed.area_m2:.1f} m²)"


def nothing_stands(bed: Bed, ledger: Ledger) -> str:
    """What is said of a bed with nothing in it: since when, or that nothing was ever written."""
    on = ledger.garden.on
    empty = ledger.empty_bed(bed.key, on)
    if empty.since is None and empty.last:
        return f"Nothing is recorded here since {planting_name(empty.last)} in {empty.last.year}."
    if empty.since is None:
        return "Nothing is recorded here yet. No record does not mean the bed is empty."
    since = day_figure(empty.since).text
    if empty.last is None:
        return f"This bed ended on {since}." if empty.since <= on else f"This bed begins on {since}."
    if empty.last.end_is_estimated and not empty.gone_to:
        return (
            f"No note says how {planting_name(empty.last)} ended. It is presumed over since {since}, "
            f"{how_long((on - empty.since).days)} ago{_presumed(empty.last)}; nothing is recorded as standing here since."
        )
    return (
        f"Nothing is recorded as standing here since {since}, {how_long((on - empty.since).days)} ago: "
        f"{planting_name(empty.last)} ({_end(empty, empty.last, ledger)})."
    )


def _presumed(last: Planting) -> str:
    """Why it is, in brackets: " (12 months since it began)"."""
    why = (last.end_basis or "").removeprefix("presumed over").removeprefix(": ")
    return f" ({why})" if why else ""


def _end(empty: EmptyBed, last: Planting, ledger: Ledger) -> str:
    if empty.gone_to:
        return f"moved to {ledger.garden.beds[empty.gone_to].name}"
    return last.end_basis or "ended"
