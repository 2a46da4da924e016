"""The table behind a strip of plantings: the days its bars are drawn from, as words."""

from __future__ import annotations

from datetime import date

from bs4 import BeautifulSoup, Tag

from gardens import garden_of
from leafmould.render.html import Renderer
from pages_garden import site_of

ON = date(2026, 7, 15)
NOTES = """
2024-10-19
- planted garlic in Arch
2025-03-01
- started leek 'Musselburgh'
2025-06-08
- planted out leek in Arch
2025-07-20
- picked garlic from Arch
- cleared garlic from Arch
2025-11-02
- picked 2 leeks from Arch
2026-04-12
- sowed pea in Arch
"""


def tables(notes: str, address: str) -> dict[str, list[list[str]]]:
    """Each table behind a strip of a page, by what it is called."""
    site = site_of(garden_of(notes, on=ON))
    page = next(page for page in site.pages if page.address == address)
    tree = BeautifulSoup(Renderer(site).page(page), "html.parser")
    return {called(one): rows(one) for one in tree.select("details.as-table")}


def called(table: Tag) -> str:
    summary = table.summary
    assert summary is not None
    return summary.get_text()


def rows(table: Tag) -> list[list[str]]:
    return [[cell.get_text() for cell in row.select("th, td")] for row in table.select("tr")]


def test_each_year_of_a_bed_has_its_days_as_a_table() -> None:
    found = tables(NOTES, "beds/arch.html")
    assert list(found) == ["2026 as a table", "2025 as a table", "2024 as a table"]
    assert found["2025 as a table"] == [
        ["Planting", "Raised", "In the ground", "Picked"],
        ["garlic", "", "until 20 July", "20 July"],
        ["leek ‘Musselburgh’", "1 March – 8 June", "from 8 June", "2 November"],
    ]  # fmt: skip
    assert found["2024 as a table"] == [["Planting", "In the ground"], ["garlic", "from 19 October"]]


def test_what_still_stands_stands_since_a_day_and_a_first_picking_is_expected() -> None:
    found = tables(NOTES, "beds/arch.html")["2026 as a table"]
    assert found[0] == ["Planting", "In the ground", "Expected"]
    assert ["pea", "since 12 April"] in [row[:2] for row in found]


def test_a_crops_strip_has_its_table_with_years_and_beds() -> None:
    found = tables(NOTES, "crops/garlic.html")
    assert found == {
        "Along the year as a table": [
            ["Planting", "In the ground", "Picked"],
            ["garlic 2025 Arch", "until 20 July", "20 July"],
            ["garlic 2024 Arch", "from 19 October", ""],
        ]
    }


def test_what_was_only_found_when_picked_has_no_days_in_the_ground() -> None:
    found = tables(
        "2025-06-10\n- picked 300 g kale from Arch\n2025-05-01\n- sowed pea in Arch\n", "beds/arch.html"
    )
    assert ["kale", "", "10 June"] in found["2025 as a table"]


def test_what_is_known_by_its_year_or_month_only_is_told_as_written() -> None:
    notes = "2024\n- planted raspberry in Arch\n2026-06-20\n- weeded Arch\nApril 2026\n- sowed pea in Arch\n"
    found = tables(notes, "beds/arch.html")
    assert found["2026 as a table"] == [
        ["Planting", "In the ground"],
        ["raspberry", "since 2024"],
        ["pea", "since April 2026"],
    ]


def test_a_presumed_end_is_called_estimated() -> None:
    found = tables(
        "2025-04-12\n- sowed radish in Arch\n2025-05-20\n- picked radish from Arch\n", "beds/arch.html"
    )
    ((planting, ground, picked),) = found["2025 as a table"][1:]
    assert (planting, picked) == ("radish", "20 May")
    assert ground.startswith("12 April – 20 May; ") and ground.endswith(" (estimated)")
    assert all(
        cell.endswith("(estimated)") for row in found.get("2026 as a table", [])[1:] for cell in row[1:]
    )
