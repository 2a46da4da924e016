"""Families in a bed: by season, and how long ago each last stood there.

Silence is told apart from emptiness: a season without a record is never a clear bed.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.garden.model import Bed, Planting
from leafmould.pages.labels import families_in, family_mark
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Figure, Link
from leafmould.reckon.rotation import YearsSince, lineage, years_since


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
    stood = {y: p for (key, y), p in ledger.plantings_by_bed_year.items() if key == bed.key}
    if not stood:
        return ()
    newest = min(ledger.this_year, ledger.year_of(bed.ended)) if bed.ended else ledger.this_year
    return tuple(
        _family_year(bed, year, stood.get(year, []), ledger)
        for year in range(newest, min(stood) - 1, -1)
        if year not in ledger.hidden_seasons
    )


def _family_year(bed: Bed, year: int, plantings: list[Planting], ledger: Ledger) -> FamilyYear:
    names = dict.fromkeys(f for p in plantings for f in families_in(p, ledger))
    return FamilyYear(
        year=Link(text=ledger.year_name(year), to=ledger.to_bed_year(bed.key, year)),
        families=tuple(family_mark(name, ledger) for name in names),
        others=sum(1 for p in plantings if not families_in(p, ledger)),
        silence="" if plantings else silence_in(bed.key, year, ledger),
    )


def silence_in(bed: str, year: int, ledger: Ledger) -> str:
    """Why a bed's year is blank: nothing planted in what was noted, no note of the bed, or none at all."""
    if ledger.bed_events.get((bed, year)):
        return "no planting noted"
    return "no record" if ledger.entries_by_year.get(year) else "no notes"


def last_stood(bed: Bed, ledger: Ledger) -> tuple[LastStood, ...]:
    """For each family that stood here or in the beds this came from, when it last did; newest first."""
    garden, occupancy = ledger.garden, ledger.occupancy
    names = dict.fromkeys(
        family
        for key in lineage(garden, bed.key)
        for planting in ledger.plantings_by_bed.get(key, ())
        for family in families_in(planting, ledger)
    )
    found = [years_since(garden, bed.key, name, garden.on.year, within=occupancy) for name in names]
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
