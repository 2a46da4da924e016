"""Families in a bed: by season, and how long ago each last stood there.

Silence is told apart from emptiness: a season without a record is never a clear bed.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.garden.model import Bed
from leafmould.garden.queries import BedYear
from leafmould.pages.labels import family_mark
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Figure, Link
from leafmould.reckon.rotation import YearsSince, years_since


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyYear:
    """Which families stood in a bed in one season."""

    year: Link
    families: tuple[FamilyMark, ...]
    others: int  # plantings whose family is not known
    silence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LastStood:
    """How long ago a family last stood in a bed."""

    family: FamilyMark
    words: Figure  # what the record says of the family, silence included


def family_years(bed: Bed, ledger: Ledger) -> tuple[FamilyYear, ...]:
    """Families by season, newest first, silence told apart from emptiness."""
    return tuple(_family_year(told, ledger) for told in ledger.bed_history(bed.key))


def _family_year(told: BedYear, ledger: Ledger) -> FamilyYear:
    return FamilyYear(
        year=Link(text=ledger.year_name(told.year), to=ledger.to_bed_year(told.bed, told.year)),
        families=tuple(family_mark(name, ledger) for name in told.families),
        others=told.others,
        silence="" if told.plantings else told.told,
    )


def last_stood(bed: Bed, ledger: Ledger) -> tuple[LastStood, ...]:
    """For each family that stood here or in the beds this came from, when it last did; newest first."""
    garden, occupancy = ledger.garden, ledger.occupancy
    found = [
        years_since(garden, bed.key, name, garden.on.year, within=occupancy)
        for name in ledger.families_of_bed(bed.key)
    ]
    known = [since for since in found if since.last_year is not None]
    return tuple(_stood(s, ledger) for s in sorted(known, key=lambda s: (-(s.last_year or 0), s.family)))


def _stood(since: YearsSince, ledger: Ledger) -> LastStood:
    year = since.last_year or 0
    to = ledger.sections.get(since.plantings[0], "") if since.plantings else ""
    return LastStood(
        family=family_mark(since.family, ledger),
        words=Figure(text=since.words, value=str(year), to=to),
    )


def years_ago(count: int) -> str:
    """How many seasons back, in words."""
    return {0: "this year", 1: "last year"}.get(count, f"{count} years ago")
