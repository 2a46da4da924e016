"""What may still be sown: from the garden's day on, soonest over first. Two seasons in one garden, by hand."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from leafmould.build import build

SETTINGS = (
    "garden: Tansy Hill\nfrost: {last: 9 May, first: 6 October}\ncover: {fleece: 2 weeks}\nbeds: [Arch]\n"
)


def still(folder: Path, on: date) -> dict[str, list[str]]:
    """By heading, the lines of what may still be begun, on a day."""
    garden = folder / "garden"
    (garden / "notes").mkdir(parents=True)
    (garden / "garden.yaml").write_text(SETTINGS, "utf-8")
    work = "sowed beetroot, French beans and leeks in Arch, and planted tomatoes, garlic\n"
    (garden / "notes/2026-01-01.txt").write_text(work, "utf-8")
    build(garden, to=folder / "site", on=on, household=False)
    tree = BeautifulSoup((folder / "site/when-to-sow.html").read_text("utf-8"), "html.parser")
    found: dict[str, list[str]] = {}
    for heading in tree.select(".still-to-sow h3"):
        rows = heading.find_next_sibling("ul")
        assert rows is not None
        found[heading.get_text()] = [" ".join(row.get_text().split()) for row in rows.find_all("li")]
    return found


@pytest.mark.parametrize(
    ("on", "sow"),
    [
        (
            date(2026, 7, 15),
            [
                "French bean until 24 July fleece until 7 August",
                "beetroot until 16 August fleece until 30 August",
            ],
        ),
        (
            date(2026, 7, 25),
            ["French bean under fleece until 7 August", "beetroot until 16 August fleece until 30 August"],
        ),
        (date(2026, 8, 17), ["beetroot under fleece until 30 August"]),
    ],
)
def test_what_is_over_is_left_out_and_what_ends_soonest_comes_first(
    tmp_path: Path, on: date, sow: list[str]
) -> None:
    assert still(tmp_path, on)["Sow"] == sow


def test_in_winter_the_whole_season_is_to_come(tmp_path: Path) -> None:
    found = still(tmp_path, date(2026, 1, 2))
    assert found["Sow"] == [
        "French bean 2 May – 24 July fleece until 7 August",
        "beetroot 18 April – 16 August fleece until 30 August",
    ]
    assert found["In autumn, for next year"]


def test_late_in_the_year_nothing_is_left(tmp_path: Path) -> None:
    assert still(tmp_path, date(2026, 12, 1)) == {}
