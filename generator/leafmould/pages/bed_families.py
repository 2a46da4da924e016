"""Families in a bed: by season, and how long ago each last stood there.

Silence is told apart from emptiness: a season without a record is never a clear bed.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.garden.model import Bed, Planting
from leafmould.pages.labels import family_mark
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Figure, Link


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
    year: Figure
    ago: Figure


def family_years(bed: Bed, ledger: Ledger) -> tuple[FamilyYear, ...]:
    """Families by season, newest first, silence told apart from emptiness."""
    by_year: dict[int, list[Planting]] = {}
    for planting in ledger.plantings_by_bed.get(bed.key, ()):
        for year in ledger.years_of[planting.id]:
            by_year.setdefault(year, []).append(planting)
    if not by_year:
        return ()
    years = range(ledger.this_year, min(by_year) - 1, -1)
    return tuple(_family_year(bed, year, by_year.get(year, []), ledger) for year in years)


def _family_year(bed: Bed, year: int, plantings: list[Planting], ledger: Ledger) -> FamilyYear:
    names = dict.fromkeys(f for p in plantings for f in families_in(p, ledger))
    return FamilyYear(
        year=Link(text=ledger.year_name(year), to=ledger.to_bed_year(bed.key, year)),
        families=tuple(family_mark(name, ledger) for name in names),
        others=sum(1 for p in plantings if not list(families_in(p, ledger))),
        silence="" if plantings else silence_in(year, ledger),
    )


def silence_in(year: int, ledger: Ledger) -> str:
    """Why a bed's year is blank: the garden's notes are silent, or only this bed's."""
    return "no record" if ledger.entries_by_year.get(year) else "no notes"


def families_in(planting: Planting, ledger: Ledger) -> tuple[str, ...]:
    """The botanical families of a planting, each once."""
    crops = (ledger.garden.crops.get(key) for key in planting.crops)
    return tuple(dict.fromkeys(c.family for c in crops if c and c.family))


def last_stood(bed: Bed, ledger: Ledger) -> tuple[LastStood, ...]:
    """For each family that stood here, the last season it did and how long ago that is."""
    last: dict[str, int] = {}
    for planting in ledger.plantings_by_bed.get(bed.key, ()):
        for family in families_in(planting, ledger):
            last[family] = max(last.get(family, 0), ledger.years_of[planting.id][-1])
    rows = sorted(last.items(), key=lambda row: (-row[1], row[0]))
    return tuple(_stood(bed, family, year, ledger) for family, year in rows)


def _stood(bed: Bed, family: str, year: int, ledger: Ledger) -> LastStood:
    name = ledger.year_name(year)
    ago = ledger.this_year - year
    to = ledger.to_bed_year(bed.key, year)
    return LastStood(
        family=family_mark(family, ledger),
        year=Figure(text=name, value=str(year), is_time=True, to=to),
        ago=Figure(text=years_ago(ago), value=str(ago), to=to),
    )


def years_ago(count: int) -> str:
    """How many seasons back, in words."""
    return {0: "this year", 1: "last year"}.get(count, f"{count} years ago")
