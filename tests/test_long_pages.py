"""What grows with every year stays short, says how much it leaves out, and leads to the rest."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest

from leafmould.pages import addresses
from leafmould.pages.bed import BedPage
from leafmould.pages.crop import CropPage
from leafmould.pages.families import FamiliesPage
from leafmould.pages.lists import LessonsPage
from leafmould.pages.now import NowPage
from leafmould.pages.page import Page
from leafmould.pages.site import Site
from leafmould.render.html import Renderer
from pages_garden import Line, hand_made, site_of

FIRST = 1996


def pea_year(year: int) -> list[Line]:
    """A year of peas in the Arch: sown, twenty notes with a lesson around mid July, cleared."""
    pea = {"crop": "pea", "variety": "Meteor", "bed": "Arch"}
    sown = Line(day=f"{year}-04-02", verb="sowed", text="sowed pea 'Meteor' in Arch", **pea)
    begun = date(year, 7, 5)
    seen = [
        Line(
            day=(begun + timedelta(days=number)).isoformat(),
            verb="saw",
            text="saw aphids on pea",
            lesson=f"Next year sow {number} days sooner.",
            **pea,
        )
        for number in range(20)
    ]
    return [sown, *seen, Line(day=f"{year}-09-01", verb="cleared", text="cleared pea from Arch", **pea)]


@pytest.fixture(scope="module")
def site() -> Site:
    """Thirty years of it."""
    lines = [line for year in range(FIRST, 2026) for line in pea_year(year)]
    return site_of(hand_made(lines, with_pear=False))


def page_at(site: Site, address: str) -> Page:
    """The page of an address."""
    return next(page for page in site.pages if page.address == address)


def values(site: Site, address: str) -> Any:
    """What a page shows."""
    return page_at(site, address).values


def test_lessons_are_split_by_years_and_none_is_lost(site: Site) -> None:
    pages = [page for page in site.pages if page.template == "lessons.html"]
    assert [page.title for page in pages] == ["Lessons", "Lessons, 1996–2007"]
    found: list[LessonsPage] = [page.values for page in pages]  # type: ignore[misc]
    assert sum(len(year.lessons) for page in found for year in page.years) == 30 * 20
    assert [link.to for link in found[0].others] == [pages[1].address]
    assert [link.to for link in found[1].others] == [addresses.LESSONS]
    assert "Other years" in Renderer(site).page(pages[0])


def test_a_crop_and_a_bed_show_the_newest_lessons_and_lead_to_all(site: Site) -> None:
    crop: CropPage = values(site, "crops/pea.html")
    bed: BedPage = values(site, "beds/arch.html")
    assert (len(crop.lessons), crop.lessons_in_all) == (24, 600)
    assert (len(bed.lessons), bed.lessons_in_all) == (24, 600)
    for address in ("crops/pea.html", "beds/arch.html"):
        shown = Renderer(site).page(page_at(site, address))
        assert 'The newest 24 of 600; <a href="../lessons.html">all lessons</a> stand by year.' in shown


def test_a_variety_names_its_newest_plantings_and_counts_the_others(site: Site) -> None:
    (meteor,) = values(site, "crops/pea.html").varieties
    assert (len(meteor.years), meteor.more) == (24, 6)
    assert meteor.years[-1].text == "2025"
    assert '<td data-name="Grown">6 plantings before, <a' in Renderer(site).page(
        page_at(site, "crops/pea.html")
    )


def test_a_family_names_its_newest_seasons_in_a_bed_and_counts_the_others(site: Site) -> None:
    families: FamiliesPage = values(site, addresses.FAMILIES)
    (arch,) = families.families[0].beds
    assert [year.text for year in arch.years] == ["2025", "2024", "2023", "2022", "2021", "2020"]
    assert arch.more == 24
    assert "</a> and 24 before</span>" in Renderer(site).page(page_at(site, addresses.FAMILIES))


def test_this_week_shows_the_latest_years_whole_and_leads_to_the_rest(site: Site) -> None:
    now: NowPage = values(site, addresses.NOW)
    assert [len(year.notes) for year in now.earlier] == [11] * 10
    assert now.earlier[-1].name == "2016"
    assert [link.text for link in now.long_ago] == [str(year) for year in range(2015, FIRST - 1, -1)]
    assert {link.to for link in now.long_ago} <= {page.address for page in site.pages}
    shown = Renderer(site).page(page_at(site, addresses.NOW))
    assert 'Still earlier: <a href="by-date/2015.html">2015</a>, ' in shown
