"""The page of a crop: whose pickings stand beside which variety, its lessons, and what its strips draw."""

from __future__ import annotations

from datetime import date
from typing import Any

from bs4 import BeautifulSoup

from gardens import garden_of
from leafmould.pages.site import Site
from leafmould.render.html import Renderer
from pages_garden import site_of


def crop(site: Site, key: str) -> Any:
    return next(page.values for page in site.pages if page.address == f"crops/{key}.html")


def soup(site: Site, key: str) -> BeautifulSoup:
    page = next(page for page in site.pages if page.address == f"crops/{key}.html")
    return BeautifulSoup(Renderer(site).page(page), "html.parser")


TOMATOES = """
    2024-05-20
    - planted 3 tomatoes in Arch
    2024-11-01
    - cleared tomatoes from Arch
    2025-05-20
    - planted 3 tomatoes 'Stupice' in Arch
    - planted 3 tomatoes 'Black Krim' in Arch
    2025-08-02
    - picked 1 kg tomatoes 'Stupice' from Arch
    2025-08-09
    - picked 2 kg tomatoes from Arch
    2025-08-16
    - picked 4 kg tomatoes 'Stupice' and 'Black Krim' from Arch
    2025-10-01
    - cleared tomatoes from Arch
    """


def test_what_was_picked_of_nobody_said_which_is_not_told_of_plantings_of_other_years() -> None:
    found = crop(site_of(garden_of(TOMATOES)), "tomato")
    assert [
        (v.name, [y.text for y in v.years], [f.text for f in v.totals.figures]) for v in found.varieties
    ] == [
        ("Black Krim", ["2025"], []),
        ("Stupice", ["2025"], ["1 kg"]),
        ("variety not noted", ["2024"], []),
        ("picked of several, or without saying which", ["2025"], ["6 kg"]),
    ]


def test_a_lesson_stands_with_the_crops_it_names_and_one_that_names_none_with_its_note() -> None:
    notes = {
        "2025/06-01.md": "---\ndate: 2025-06-01\nwork:\n  - sowed peas in Arch\n  - sowed beetroot in Top bed\n---\n"
        "Next year sow the peas a week sooner.\n\nNext year write this down at once.\n"
    }
    site = site_of(garden_of(notes))
    found = {key: [lesson.text for lesson in crop(site, key).lessons] for key in ("pea", "beetroot")}
    assert found == {
        "pea": ["Next year sow the peas a week sooner.", "Next year write this down at once."],
        "beetroot": ["Next year write this down at once."],
    }


def test_the_key_names_what_is_drawn_and_nothing_else() -> None:
    page = soup(site_of(garden_of("2026-04-12\n- sowed peas in Arch", on=date(2026, 5, 1))), "pea")
    assert [span.get_text() for span in page.select(".key span")] == ["in the ground", "expected"]


def test_a_season_of_which_only_a_guess_tells_is_not_drawn_on_the_page_of_the_crop() -> None:
    found = crop(site_of(garden_of("2024-09-12\n- sowed spinach in Arch", on=date(2026, 5, 1))), "spinach")
    assert [row.note for row in found.strip] == ["2024 Arch"]


def test_the_contents_lead_to_parts_that_are_there() -> None:
    page = soup(site_of(garden_of(TOMATOES)), "tomato")
    ids = {tag["id"] for tag in page.find_all(id=True)}
    asked = [str(link["href"]).lstrip("#") for link in page.select(".contents a")]
    assert asked
    assert not set(asked) - ids


def test_marks_of_families_are_told_where_no_name_stands_beside_them() -> None:
    site = site_of(
        garden_of("2026-04-12\n- sowed peas in Arch\n- sowed beetroot in Arch", on=date(2026, 5, 1))
    )
    renderer = Renderer(site)
    told = {}
    for address in ("beds/index.html", "crops/pea.html", "beds/arch.html", "about.html", "find.html"):
        for page in site.pages:
            if page.address == address:
                html = BeautifulSoup(renderer.page(page), "html.parser")
                told[address] = [
                    " ".join(span.get_text().split()) for span in html.select(".families-told span")
                ]
    assert told == {
        "beds/index.html": ["Be beet family", "Pe pea family", "Ro rose family"],
        "crops/pea.html": [],  # its name stands beside it
        "beds/arch.html": [],
        "find.html": [],
    }
