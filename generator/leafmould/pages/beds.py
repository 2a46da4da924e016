"""All beds, and the centre of the book: every bed by every year in one table.

Each cell of the table leads to the planting's section, so that any bed in any year is two links from the
first page. Blank cells say what kind of blank they are.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.garden.model import Bed, Planting
from leafmould.garden.queries import BedYear, lineage
from leafmould.pages.addresses import BED_YEARS, BEDS
from leafmould.pages.bed import nothing_stands
from leafmould.pages.chapters import Chapter
from leafmould.pages.figures import coarse_words
from leafmould.pages.labels import families_of, planting_line, planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Link, Page, PlantingLine
from leafmould.values.wording import day as day_words


@dataclass(frozen=True, slots=True, kw_only=True)
class BedSummary:
    """A bed in the list of all beds."""

    link: Link
    about: str  # kind, size, sun
    standing: tuple[PlantingLine, ...]
    nothing_stands: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BedsPage:
    """The values of the page of all beds."""

    beds: tuple[BedSummary, ...]
    ended: tuple[BedSummary, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stood:
    """One planting in a cell of the table, and further ones of the same name."""

    link: Link
    families: tuple[FamilyMark, ...]
    again: tuple[Link, ...] = ()  # each by the day it began


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One bed in one year."""

    year: str
    stood: tuple[Stood, ...]
    silence: str  # "no record", "no notes", "not yet a bed", "no longer a bed"
    was: tuple[Link, ...] = ()  # the beds this one came from, for the seasons before it


@dataclass(frozen=True, slots=True, kw_only=True)
class BedRow:
    """One bed over all years, newest first."""

    bed: Link
    cells: tuple[Cell, ...]
    before: tuple[Link, ...] = ()  # what stood there before the first season, and since when


@dataclass(frozen=True, slots=True, kw_only=True)
class BedYearsPage:
    """The values of the table of beds and years."""

    years: tuple[Link, ...]  # each leads to its season, newest first
    rows: tuple[BedRow, ...]
    before: str  # the season before which only what stood on is known, if this table ends with it; else ""
    tables: tuple[Link, ...]  # the other tables, of other years; none if all years fit into one


def beds_page(ledger: Ledger) -> Page:
    """The page of all beds, those in use first."""
    used, ended = ledger.beds_on(ledger.garden.on), ended_beds(ledger)
    values = BedsPage(
        beds=tuple(bed_summary(bed, ledger) for bed in used),
        ended=tuple(bed_summary(bed, ledger) for bed in ended),
    )
    return Page(address=BEDS, template="beds.html", title="Beds", section="beds", values=values)


def ended_beds(ledger: Ledger) -> list[Bed]:
    """The beds of earlier times."""
    on = ledger.garden.on
    return [bed for bed in ledger.garden.beds.values() if bed.ended and bed.ended <= on]


def bed_summary(bed: Bed, ledger: Ledger) -> BedSummary:
    """A bed as it stands in lists."""
    standing = ledger.in_the_ground(ledger.garden.on, bed.key)
    known = (bed.kind, bed.size_written, f"sun: {bed.sun}" if bed.sun else None)
    return BedSummary(
        link=ledger.bed_links[bed.key],
        about=" · ".join(words for words in known if words),
        standing=tuple(planting_line(p, ledger) for p in standing),
        nothing_stands="" if standing else nothing_stands(bed, ledger),
    )


def bed_years_pages(ledger: Ledger) -> tuple[Page, ...]:
    """Beds by years; further pages hold earlier years where one would be too heavy."""
    return tuple(_table(chapter, ledger) for chapter in ledger.year_tables)


def _table(chapter: Chapter, ledger: Ledger) -> Page:
    others = [Link(text=c.name, to=c.address) for c in ledger.year_tables if c is not chapter]
    is_last = chapter is ledger.year_tables[-1]
    values = BedYearsPage(
        years=tuple(Link(text=ledger.year_name(y), to=ledger.to_season(y)) for y in chapter.years),
        before=ledger.year_name(ledger.years[-1]) if is_last and ledger.standing_before else "",
        rows=tuple(
            bed_row(bed, chapter.years, ledger)
            for bed in (*ledger.beds_on(ledger.garden.on), *ended_beds(ledger))
        ),
        tables=tuple(others),
    )
    title = "Beds by years" if chapter.address == BED_YEARS else f"Beds by years, {chapter.name}"
    return Page(
        address=chapter.address, template="bed-years.html", title=title, section="years", values=values
    )


def bed_row(bed: Bed, years: tuple[int, ...], ledger: Ledger) -> BedRow:
    """One bed over some years."""
    return BedRow(
        bed=ledger.bed_links[bed.key],
        cells=tuple(_cell(ledger.bed_year(bed.key, year), ledger) for year in years),
        before=tuple(
            Link(
                text=f"{planting_name(p)} ({ledger.year_name(ledger.home_year(p))})", to=ledger.sections[p.id]
            )
            for p in ledger.standing_before
            if ledger.home_bed(p) == bed.key
        ),
    )


def _cell(told: BedYear, ledger: Ledger) -> Cell:
    named: dict[str, list[Planting]] = {}
    for planting in told.plantings:
        named.setdefault(planting_name(planting), []).append(planting)
    stood = tuple(_stood(name, told.year, plantings, ledger) for name, plantings in named.items())
    return Cell(
        year=ledger.year_name(told.year),
        stood=stood,
        silence="" if stood else _silence(told, ledger),
        was=() if stood else _was(told, ledger),
    )


def _silence(told: BedYear, ledger: Ledger) -> str:
    """What kind of blank it is; a note about the bed is a record, though of no planting."""
    return "no planting noted" if (told.bed, told.year) in ledger.remarks_by_bed_year else told.told


def _stood(name: str, year: int, plantings: list[Planting], ledger: Ledger) -> Stood:
    first, *others = plantings
    return Stood(
        link=Link(text=name, to=ledger.sections[first.id]),
        families=families_of(first, ledger),
        again=tuple(Link(text=f"again {_begun(p, year)}".rstrip(), to=ledger.sections[p.id]) for p in others),
    )


def _begun(planting: Planting, year: int) -> str:
    """The day a planting took its place, without the year of the cell it stands in; "" where not noted."""
    when = planting.in_bed_from
    if when is None:
        return ""
    return day_words(when.day, year) if when.day else coarse_words(when)


def _was(told: BedYear, ledger: Ledger) -> tuple[Link, ...]:
    """The beds a bed came from, where they have something to tell of a season before it."""
    beds, year = ledger.garden.beds, told.year
    before = [key for key in lineage(ledger.garden, told.bed)[1:] if (key, year) in ledger.bed_years]
    return tuple(Link(text=beds[key].name, to=ledger.to_bed_year(key, year)) for key in before)
