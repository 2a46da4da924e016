"""The first page of a garden nobody has written of lately, or at all: what is presumed is said to be."""

from __future__ import annotations

from datetime import date

from bs4 import BeautifulSoup

from gardens import garden_of
from leafmould.render.html import Renderer
from pages_garden import site_of

ON = date(2026, 7, 15)


def first_page(notes: str) -> BeautifulSoup:
    site = site_of(garden_of(notes, on=ON))
    page = next(page for page in site.pages if page.address == "index.html")
    return BeautifulSoup(Renderer(site).page(page), "html.parser")


def headings(tree: BeautifulSoup) -> list[str]:
    return [heading.get_text() for heading in tree.select("main h2")]


def unused(tree: BeautifulSoup) -> dict[str, str]:
    """What is said of each bed in which nothing is known to stand."""
    rows = tree.select("section[aria-labelledby=unused] .ruled > div")
    return {row.dt.get_text(): row.dd.get_text() for row in rows if row.dt and row.dd}


def test_without_a_note_nothing_is_said_of_what_could_be_picked() -> None:
    tree = first_page("")
    assert "No notes yet." in tree.get_text()
    assert headings(tree) == ["What stands where", "Nothing on record there now"]
    assert unused(tree)["Arch"] == "Nothing is recorded here yet. No record does not mean the bed is empty."


def test_an_end_that_is_presumed_is_said_to_be_and_since_when_nobody_wrote() -> None:
    tree = first_page("2025-04-12\n- sowed radish in Arch\n2025-06-01\n- picked radish from Arch\n")
    assert unused(tree)["Arch"] == (
        "No note says how radish ended. It is presumed over since 12 April 2026, 94 days ago "
        "(12 months since it began); nothing is recorded as standing here since."
    )
    assert "Nothing has been written since 1 June 2025, 409 days." in tree.get_text()


def test_an_end_that_was_noted_is_told_as_noted() -> None:
    tree = first_page("2025-04-12\n- sowed radish in Arch\n2025-06-01\n- cleared radish from Arch\n")
    assert unused(tree)["Arch"] == (
        "Nothing is recorded as standing here since 1 June 2025, 409 days ago: radish (cleared)."
    )
