"""Families in a bed: by season, and how long ago each last stood there.

Silence is told apart from emptiness: a season without a record is never a clear bed.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import groupby

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
    """Families by season, newest first, silence told apart from emptiness.

    Seasons before the record, in which the same trees stood, are one row.
    """
    history = ledger.bed_history(bed.key)
    rows = [_family_year(told, ledger) for told in history if told.year in ledger.years]
    before = groupby((t for t in history if t.year not in ledger.years), lambda t: (t.families, t.others))
    return (*rows, *(_family_span(list(told), ledger) for _, told in before))


def _family_span(told: list[BedYear], ledger: Ledger) -> FamilyYear:
    """Seasons one behind the other, newest first, as one row that leads to the first of them."""
    first = _family_year(told[-1], ledger)
    name = first.year.text if len(told) == 1 else f"{first.year.text}–{ledger.year_name(told[0].year)}"
    return replace(first, year=Link(text=name, to=first.year.to))


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
