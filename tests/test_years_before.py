"""Trees older than the notes: their years make no season and no map, and stand together in one place."""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of
from leafmould.garden.queries import Past
from leafmould.pages.bed import BedPage
from leafmould.pages.beds import BedYearsPage
from leafmould.pages.season import SeasonsPage
from leafmould.pages.site import Site
from pages_garden import site_of

TREES = {
    "1998-start.md": "---\ndate: 1998\nwork:\n  - planted apple in Arch\n---\nPut down at the start.\n",
    "2005-plum.md": "---\ndate: 2005\nwork:\n  - planted plum in Long border\n---\n",
}
NOTES = {
    "2024-04-01.md": "---\ndate: 2024-04-01\nwork:\n  - sowed peas in Arch\n---\n",
    "2026-05-01.md": "---\ndate: 2026-05-01\nwork:\n  - weeded Arch\n---\n",
}
ON = date(2026, 7, 15)


@pytest.fixture(scope="module")
def site() -> Site:
    return site_of(garden_of({**TREES, **NOTES}, on=ON))


def years(notes: dict[str, str]) -> tuple[int, ...]:
    return Past(garden_of(notes, on=ON)).years


def test_a_note_that_only_says_when_a_tree_was_planted_begins_no_season() -> None:
    assert years({**TREES, **NOTES}) == (2026, 2025, 2024)
    assert years(TREES) == (2026,)


@pytest.mark.parametrize("work", ["picked 3 kg apples in Arch", "weeded Arch", "sowed peas in Arch"])
def test_any_other_note_does(work: str) -> None:
    told = {"2022.md": f"---\ndate: 2022-09-01\nwork:\n  - {work}\n---\n"}
    assert years({**TREES, **told, **NOTES})[-1] == 2022


def test_a_tree_planted_in_the_year_before_the_first_season_belongs_to_the_record() -> None:
    tree = {"2023.md": "---\ndate: 2023-11-12\nwork:\n  - planted pear in Arch\n---\n"}
    assert years({**TREES, **tree, **NOTES})[-1] == 2023


def test_no_season_is_made_of_years_in_which_only_trees_stood(site: Site) -> None:
    pages = {page.address for page in site.pages}
    assert {p for p in pages if p.startswith(("seasons/1", "seasons/20"))} == {
        f"seasons/{year}.html" for year in (2024, 2025, 2026)
    }
    assert {"notes/1998-start.html", "by-date/1998.html"} <= pages


def test_the_years_before_stand_in_one_row(site: Site) -> None:
    values = {page.template: page.values for page in site.pages}
    seasons, table = values["seasons.html"], values["bed-years.html"]
    assert isinstance(seasons, SeasonsPage) and isinstance(table, BedYearsPage)
    assert (seasons.before, [link.text for link in seasons.stood]) == (
        "2024",
        ["apple (1998)", "plum (2005)", "pear (2015)"],
    )
    assert [year.text for year in table.years] == ["2026", "2025", "2024"]
    assert table.before == "2024"
    assert {row.bed.text: [link.text for link in row.before] for row in table.rows if row.before} == {
        "Arch": ["apple (1998)"],
        "Long border": ["plum (2005)"],
        "Old pear": ["pear (2015)"],
    }


def test_the_family_of_a_tree_stands_once_for_all_the_years_before(site: Site) -> None:
    bed = next(page.values for page in site.pages if page.address == "beds/long-border.html")
    assert isinstance(bed, BedPage)
    assert [(row.year.text, row.year.to) for row in bed.families] == [
        *((str(year), f"beds/long-border.html#year-{year}") for year in (2026, 2025, 2024)),
        ("2005–2023", "beds/long-border.html#year-2005"),
    ]
