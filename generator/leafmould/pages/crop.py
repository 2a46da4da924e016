"""The page of a crop: varieties side by side, year by year, every planting, its lessons and notes.

Totals stand in their own units; what was picked together with another crop is said apart and never split.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from leafmould.garden.model import Crop, Planting
from leafmould.pages.addresses import CROPS, FAMILIES, family_anchor
from leafmould.pages.amounts import HowMuch, how_much
from leafmould.pages.cautions import CautionLine, crop_cautions, crops_put_up
from leafmould.pages.crop_tables import CropYear, VarietyRow, variety_rows, year_rows
from leafmould.pages.doings import MOST_LESSONS, note_line
from leafmould.pages.known import Known, known
from leafmould.pages.labels import family_mark, planting_line
from leafmould.pages.ledger import Ledger
from leafmould.pages.lessons_named import lessons_by_crop
from leafmould.pages.mentions import Mentions
from leafmould.pages.next_in_beds import NextBeds, next_year, relatives, where_next
from leafmould.pages.page import FamilyMark, Lesson, Link, NoteLine, Page, PlantingLine, Plate, StripRow
from leafmould.pages.plates import crop_plates
from leafmould.pages.seed_tin import SeedLine, seed_line
from leafmould.pages.strips import strip_row
from leafmould.pages.when_to_sow import SowingTime, sowing_times
from leafmould.values.wording import counted

MOST_NOTES = 40
"""Notes listed on a crop's page; older ones are reached by its plantings and by date."""
MOST_PLANTINGS = 240
"""Plantings drawn on a crop's page; older ones stand in the table by year."""

GROWN = {
    "annual": "grown for one season",
    "overwintered": "grown over the winter",
    "biennial": "grown over two seasons",
    "perennial": "stays for years",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class CropPage:
    """The values of a crop's page."""

    name: str
    family: Link | None
    mark: FamilyMark | None
    about: tuple[str, ...]
    cautions: tuple[CautionLine, ...]
    standing: tuple[PlantingLine, ...]
    varieties: tuple[VarietyRow, ...]
    years: tuple[CropYear, ...]
    strip: tuple[StripRow, ...]
    plates: tuple[Plate, ...]
    plates_in_all: int
    known: Known
    sowing: tuple[SowingTime, ...]
    seeds: tuple[SeedLine, ...]
    how_much: HowMuch | None
    where_next: tuple[NextBeds, ...]
    relatives: str
    next_year: str
    lessons: tuple[Lesson, ...]
    lessons_in_all: int
    notes: tuple[NoteLine, ...]
    notes_in_all: int

    @property
    def contents(self) -> tuple[Link, ...]:
        """The parts that follow, each by its id; a page that is short needs none."""
        parts = (
            ("When to sow it here", "when", self.sowing),
            ("Seed", "seed", self.seeds),
            (f"Where it may go in {self.next_year}", "where", self.where_next),
            ("Learned", "lessons", self.lessons),
            ("Varieties", "varieties", self.varieties),
            ("Year by year", "years", self.years),
            ("Along the year", "strip", self.strip),
            ("Pictures", "pictures", self.plates),
            ("How much", "how-much", self.how_much),
            ("Notes", "notes", self.notes),
            ("Published", "known", self.known.rows),
        )
        found = tuple(Link(text=text, to=to) for text, to, is_there in parts if is_there)
        return found if len(found) > 2 else ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CropLine:
    """A crop in the list from A to Z."""

    link: Link
    mark: FamilyMark | None
    years: str
    standing: str
    also: str  # varieties


@dataclass(frozen=True, slots=True, kw_only=True)
class Letter:
    """The crops under one letter."""

    letter: str
    crops: tuple[CropLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CropsPage:
    """The values of the list of crops."""

    letters: tuple[Letter, ...]


def crop_pages(ledger: Ledger, mentions: Mentions) -> Iterator[Page]:
    """A page for every crop."""
    put_up, lessons = crops_put_up(ledger), lessons_by_crop(ledger, mentions)
    return (
        Page(
            address=ledger.crop_pages[crop.key],
            template="crop.html",
            title=_heading(crop),
            section="crops",
            values=_values(crop, ledger, put_up, lessons.get(crop.key, ())),
        )
        for crop in ledger.garden.crops.values()
    )


def _heading(crop: Crop) -> str:
    return crop.name[:1].upper() + crop.name[1:]


def _values(crop: Crop, ledger: Ledger, put_up: frozenset[str], lessons: Sequence[Lesson]) -> CropPage:
    plantings = ledger.plantings_by_crop.get(crop.key, ())
    notes = ledger.entries_by_crop.get(crop.key, ())
    return CropPage(
        name=_heading(crop),
        family=_family_link(crop, ledger),
        mark=family_mark(crop.family, ledger) if crop.family else None,
        about=_about(crop, ledger),
        cautions=crop_cautions(crop, put_up),
        standing=tuple(planting_line(p, ledger) for p in plantings if p.is_open),
        varieties=variety_rows(crop, ledger),
        years=year_rows(crop, ledger),
        strip=_strip(plantings, ledger),
        plates=crop_plates(crop.key, ledger),
        plates_in_all=len(ledger.album.by_crop.get(crop.key, ())),
        known=known(crop, ledger),
        sowing=sowing_times(crop, ledger),
        seeds=tuple(seed_line(lot, ledger) for lot in ledger.lots.get(crop.key, ())),
        how_much=how_much(crop, ledger),
        where_next=where_next(crop, ledger),
        relatives=relatives(crop, ledger),
        next_year=next_year(ledger),
        lessons=tuple(lessons[:MOST_LESSONS]),
        lessons_in_all=len(lessons),
        notes=tuple(note_line(entry, ledger, crop=crop.key) for entry in notes[: -MOST_NOTES - 1 : -1]),
        notes_in_all=len(notes),
    )


def _family_link(crop: Crop, ledger: Ledger) -> Link | None:
    if crop.family is None:
        return None
    name = family_mark(crop.family, ledger).name
    return Link(text=name, to=f"{FAMILIES}#{family_anchor(crop.family)}")


def _about(crop: Crop, ledger: Ledger) -> tuple[str, ...]:
    own = ledger.reckoned.own_words.get(crop.key, ())
    known = (
        GROWN[crop.grown_as],
        "killed by a first frost" if crop.is_tender else "",
        "" if crop.family else "family not known",
        "in no table of crops; taken as written" if not crop.is_known else "",
        "the notes do not say which kind" if crop.group else "",
        f"by {'crops.yaml' if ledger.household else 'the gardener’s own figures'}: {', '.join(own)}"
        if own
        else "",
    )
    return tuple(f"{words[:1].upper()}{words[1:]}." for words in known if words)


def _strip(plantings: Sequence[Planting], ledger: Ledger) -> tuple[StripRow, ...]:
    """Each planting in each season it stood, newest first; a season of which only a guess tells is left out."""
    dated = [p for p in plantings if p.origin != "year only"]
    rows = sorted(
        ((year, p) for p in dated for year in ledger.years_of[p.id]),
        key=lambda row: (-row[0], row[1].start.first if row[1].start else ledger.garden.on, row[1].id),
    )
    beds = ledger.garden.beds
    drawn = [
        strip_row(p, year, ledger, note=f"{ledger.year_name(year)} {beds[p.bed_now].name}")
        for year, p in rows[:MOST_PLANTINGS]
    ]
    return tuple(row for row in drawn if not row.bars or not all(bar.is_guess for bar in row.bars))


def crops_page(ledger: Ledger) -> Page:
    """All crops from A to Z."""
    by_letter: dict[str, list[CropLine]] = {}
    for crop in sorted(ledger.garden.crops.values(), key=lambda c: (c.name.casefold(), c.key)):
        by_letter.setdefault(crop.name[:1].upper(), []).append(_line(crop, ledger))
    letters = tuple(Letter(letter=letter, crops=tuple(crops)) for letter, crops in by_letter.items())
    return Page(
        address=CROPS,
        template="crops.html",
        title="Crops",
        section="crops",
        values=CropsPage(letters=letters),
    )


def _line(crop: Crop, ledger: Ledger) -> CropLine:
    plantings = ledger.plantings_by_crop.get(crop.key, ())
    years = sorted(ledger.crop_years(crop.key))
    standing = sum(1 for p in plantings if p.is_open)
    return CropLine(
        link=ledger.crop_links[crop.key],
        mark=family_mark(crop.family, ledger) if crop.family else None,
        years=_span(years, ledger),
        standing=f"{counted(standing, 'planting')} standing" if standing else "",
        also=", ".join(dict.fromkeys(v for p in plantings for v in p.varieties)),
    )


def _span(years: list[int], ledger: Ledger) -> str:
    if not years:
        return "no planting recorded"
    first, last = ledger.year_name(years[0]), ledger.year_name(years[-1])
    return first if first == last else f"{first}–{last}"
