"""All beds, and the centre of the book: every bed by every year in one table.

Each cell of the table leads to the planting's section, so that any bed in any year is two links from the
first page. Blank cells say what kind of blank they are.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.garden.bed_lines import NOWHERE_KEY
from leafmould.garden.model import Bed, Planting
from leafmould.pages.addresses import BED_YEARS, BEDS
from leafmould.pages.bed import nothing_stands, standing_in
from leafmould.pages.bed_families import silence_in
from leafmould.pages.chapters import Chapter
from leafmould.pages.labels import families_of, planting_line, planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Link, Page, PlantingLine
from leafmould.reckon.rotation import lineage


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
    """One planting in a cell of the table."""

    link: Link
    families: tuple[FamilyMark, ...]


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


@dataclass(frozen=True, slots=True, kw_only=True)
class BedYearsPage:
    """The values of the table of beds and years."""

    years: tuple[Link, ...]  # each leads to its season, newest first
    rows: tuple[BedRow, ...]
    tables: tuple[Link, ...]  # the other tables, of other years; none if all years fit into one


def beds_page(ledger: Ledger) -> Page:
    """The page of all beds, those in use first."""
    ended = tuple(_summary(bed, ledger) for bed in ended_beds(ledger))
    values = BedsPage(beds=in_use(ledger), ended=ended)
    return Page(address=BEDS, template="beds.html", title="Beds", section="beds", values=values)


def in_use(ledger: Ledger) -> tuple[BedSummary, ...]:
    """The beds that have not ended, as they stand in lists."""
    return tuple(_summary(bed, ledger) for bed in beds_in_use(ledger))


def beds_in_use(ledger: Ledger) -> list[Bed]:
    """The beds that have not ended, in the garden's order; the place for what has none only if it is used."""
    on = ledger.garden.on
    beds = [bed for bed in ledger.garden.beds.values() if not (bed.ended and bed.ended <= on)]
    return [bed for bed in beds if bed.key != NOWHERE_KEY or ledger.plantings_by_bed.get(bed.key)]


def ended_beds(ledger: Ledger) -> list[Bed]:
    """The beds of earlier times."""
    on = ledger.garden.on
    return [bed for bed in ledger.garden.beds.values() if bed.ended and bed.ended <= on]


def _summary(bed: Bed, ledger: Ledger) -> BedSummary:
    standing = standing_in(bed, ledger)
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
    values = BedYearsPage(
        years=tuple(Link(text=ledger.year_name(y), to=ledger.to_season(y)) for y in chapter.years),
        rows=tuple(_row(bed, chapter.years, ledger) for bed in (*beds_in_use(ledger), *ended_beds(ledger))),
        tables=tuple(others),
    )
    title = "Beds by years" if chapter.address == BED_YEARS else f"Beds by years, {chapter.name}"
    return Page(
        address=chapter.address, template="bed-years.html", title=title, section="years", values=values
    )


def _row(bed: Bed, years: tuple[int, ...], ledger: Ledger) -> BedRow:
    stood = ledger.plantings_by_bed_year
    return BedRow(
        bed=ledger.bed_links[bed.key],
        cells=tuple(_cell(bed, year, stood.get((bed.key, year), []), ledger) for year in years),
    )


def _cell(bed: Bed, year: int, plantings: list[Planting], ledger: Ledger) -> Cell:
    stood: dict[str, Stood] = {}
    for planting in plantings:
        name = planting_name(planting)
        link = Link(text=name, to=ledger.sections[planting.id])
        stood.setdefault(name, Stood(link=link, families=families_of(planting, ledger)))
    return Cell(
        year=ledger.year_name(year),
        stood=tuple(stood.values()),
        silence="" if stood else _silence(bed, year, ledger),
        was=() if stood else _was(bed, year, ledger),
    )


def _silence(bed: Bed, year: int, ledger: Ledger) -> str:
    if bed.begun and bed.begun > ledger.year_ends(year):
        return "not yet a bed"
    if bed.ended and bed.ended <= ledger.year_begins(year):
        return "no longer a bed"
    return silence_in(bed.key, year, ledger)


def _was(bed: Bed, year: int, ledger: Ledger) -> tuple[Link, ...]:
    """The beds a bed came from, where they have something to tell of a season before it."""
    before = [key for key in lineage(ledger.garden, bed.key)[1:] if (key, year) in ledger.bed_years]
    beds = ledger.garden.beds
    return tuple(Link(text=beds[key].name, to=ledger.to_bed_year(key, year)) for key in before)
