"""Families: which crops belong together, and when each family last stood in which bed.

A bed that does not stand under a family is not thereby free of it: the page says how far back notes reach.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from leafmould.garden.model import Planting
from leafmould.pages.addresses import FAMILIES
from leafmould.pages.bed_families import years_ago
from leafmould.pages.labels import family_mark
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Link, Page

MOST_SEASONS = 6
"""Seasons named beside a bed; its own page tells of every one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyBed:
    """A bed a family stood in, with the seasons, newest first."""

    bed: Link
    years: tuple[Link, ...]
    more: int  # earlier seasons; the bed's page has them
    last: str  # "this year", "3 years ago"


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """One family."""

    mark: FamilyMark
    botanical: str
    crops: tuple[Link, ...]
    beds: tuple[FamilyBed, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FamiliesPage:
    """The values of the page of families."""

    families: tuple[Family, ...]
    unknown: tuple[Link, ...]  # crops whose family is not known
    reaches_back: str  # the first season of the record; "" where every season is left out


def families_page(ledger: Ledger) -> Page:
    """All families in the garden, by name."""
    crops: dict[str, list[Link]] = {}
    unknown = []
    for crop in sorted(ledger.garden.crops.values(), key=lambda c: (c.name.casefold(), c.key)):
        link = ledger.crop_links[crop.key]
        if crop.family is None:
            unknown.append(link)
        else:
            crops.setdefault(crop.family, []).append(link)
    families = [
        _family(name, links, ledger.family_beds.get(name, {}), ledger) for name, links in crops.items()
    ]
    values = FamiliesPage(
        families=tuple(sorted(families, key=lambda f: (f.mark.name.casefold(), f.botanical))),
        unknown=tuple(unknown),
        reaches_back=ledger.year_name(ledger.years[-1]) if ledger.years else "",
    )
    return Page(
        address=FAMILIES, template="families.html", title="Families", section="families", values=values
    )


def _family(
    name: str, crops: list[Link], beds: Mapping[str, Mapping[int, Planting]], ledger: Ledger
) -> Family:
    ordered = sorted(beds.items(), key=lambda item: (-max(item[1]), ledger.garden.beds[item[0]].name))
    return Family(
        mark=family_mark(name, ledger),
        botanical=name,
        crops=tuple(crops),
        beds=tuple(_bed(bed, years, ledger) for bed, years in ordered),
    )


def _bed(bed: str, years: Mapping[int, Planting], ledger: Ledger) -> FamilyBed:
    newest = sorted(years, reverse=True)
    return FamilyBed(
        bed=ledger.bed_links[bed],
        years=tuple(
            Link(text=ledger.year_name(year), to=ledger.sections[years[year].id])
            for year in newest[:MOST_SEASONS]
        ),
        more=max(0, len(newest) - MOST_SEASONS),
        last=years_ago(ledger.this_year - newest[0]),
    )
