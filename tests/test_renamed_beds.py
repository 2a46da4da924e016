"""A bed that got another name keeps its history: on its page, in the table of years, on the map."""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of, settings_of
from leafmould.garden.model import Garden
from leafmould.garden.queries import Past
from leafmould.pages.bed import BedPage
from leafmould.pages.beds import BedYearsPage
from leafmould.pages.site import Site
from pages_garden import site_of

RENAMED = """
    garden: Hollow Patch
    dates: day first
    beds:
      - {name: Shed bed, was: Bed 4, from: 2026-09-01, size: 1.2 x 4 m, at: 5.5 x 1 m}
    """
NOTES = """
    2025-05-25
    - planted courgettes in Bed 4
    2025-10-20
    - cleared courgettes from Bed 4
    2025-11-02
    - planted garlic in Bed 4
    2026-07-20
    - cleared garlic from Bed 4
    2026-08-08
    - sowed spinach in Bed 4
    2026-09-20
    - picked 1 kg spinach from Shed bed
    """
ON = date(2026, 11, 25)


@pytest.fixture(scope="module")
def garden() -> Garden:
    return garden_of(NOTES, settings=settings_of(RENAMED), on=ON)


@pytest.fixture(scope="module")
def site(garden: Garden) -> Site:
    return site_of(garden)


def grown(garden: Garden, bed: str, year: int) -> list[str]:
    return [crop for p in Past(garden).bed_year(bed, year).plantings for crop in p.crops]


def test_the_season_of_the_new_name_is_told_once_under_it(garden: Garden) -> None:
    assert grown(garden, "bed-4", 2025) == ["summer-squash", "garlic"]
    assert grown(garden, "bed-4", 2026) == ["garlic"]
    assert grown(garden, "shed-bed", 2026) == ["spinach"]
    assert grown(garden, "shed-bed", 2025) == []


def test_the_page_of_the_new_name_leads_to_all_years_before(site: Site) -> None:
    page = next(page.values for page in site.pages if page.address == "beds/shed-bed.html")
    assert isinstance(page, BedPage)
    assert [section.line.name for year in page.years for section in year.sections] == ["spinach"]
    assert [(b.year.text, b.year.to, b.bed, [s.text for s in b.stood]) for b in page.before] == [
        ("2026", "beds/bed-4.html#year-2026", "Bed 4", ["garlic"]),
        ("2025", "beds/bed-4.html#year-2025", "Bed 4", ["courgette", "garlic"]),
    ]


def test_the_page_of_the_old_name_has_only_what_ended_there(site: Site) -> None:
    page = next(page.values for page in site.pages if page.address == "beds/bed-4.html")
    assert isinstance(page, BedPage)
    assert page.before == ()
    sections = [section.line.name for year in page.years for section in year.sections]
    assert sections == ["courgette", "garlic"]


def test_nothing_stands_in_two_rows_of_one_year(site: Site) -> None:
    table = next(page.values for page in site.pages if page.address == "years.html")
    assert isinstance(table, BedYearsPage)
    rows = {row.bed.text: [s.link.text for s in row.cells[0].stood] for row in table.rows}
    assert rows == {"Shed bed": ["spinach"], "Bed 4": ["garlic"]}


def test_the_old_name_lay_where_the_new_one_lies(garden: Garden) -> None:
    old, new = garden.beds["bed-4"], garden.beds["shed-bed"]
    assert old.position_m == new.position_m == (5.5, 1.0)
    assert old.area_m2 == new.area_m2 == pytest.approx(4.8)


def test_a_split_bed_lay_in_none_of_its_parts() -> None:
    split = settings_of(
        """
        garden: Hollow Patch
        beds:
          - {name: Left, was: Bed 4, from: 2026-09-01, size: 1 x 2 m, at: 1 x 1 m}
          - {name: Right, was: Bed 4, from: 2026-09-01, size: 1 x 2 m, at: 3 x 1 m}
        """
    )
    assert garden_of(NOTES, settings=split, on=ON).beds["bed-4"].position_m is None
