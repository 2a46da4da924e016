"""The table of beds and families on a telephone: it says that it goes on, and beds keep their names where it does."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from browsers import chromium
from sites import site_of_notes

pytestmark = pytest.mark.browser

SETTINGS = "garden: Tansy Hill\nbeds: [Arch, Long border]\n"
CROPS = ("beetroot", "leek", "kale", "carrot", "pea", "lettuce", "tomato", "courgette")


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


def address(folder: Path, crops: tuple[str, ...]) -> str:
    lines = "".join(f"- sowed {crop} in Arch\n" for crop in crops)
    site = site_of_notes(folder, SETTINGS, {"2026-04-12.md": f"# 2026-04-12\n{lines}"}, on=date(2026, 7, 15))
    return (site / "rotation.html").as_uri()


def test_on_a_telephone_it_says_that_it_goes_on(browser: Browser, tmp_path: Path) -> None:
    told = {}
    for width in (390, 1280):
        page = browser.new_page(viewport={"width": width, "height": 900})
        page.goto(address(tmp_path, CROPS))
        hint = page.locator(".goes-on")
        told[width] = hint.text_content() if hint.is_visible() else None
    assert told == {
        390: "8 families stand beside each other: the table goes on to the right.",
        1280: None,
    }


def test_beds_keep_their_names_where_it_goes_on(browser: Browser, tmp_path: Path) -> None:
    page = browser.new_page(viewport={"width": 390, "height": 900})
    page.goto(address(tmp_path, CROPS))
    where = "document.querySelector('.rotation-table tbody th').getBoundingClientRect().left"
    before = page.evaluate(where)
    page.evaluate("document.querySelector('.wide').scrollLeft = 200")
    assert page.evaluate("document.querySelector('.wide').scrollLeft") > 100
    assert page.evaluate(where) == before


def test_a_table_that_fits_says_nothing(browser: Browser, tmp_path: Path) -> None:
    page = browser.new_page(viewport={"width": 390, "height": 900})
    page.goto(address(tmp_path, CROPS[:3]))
    assert page.locator(".goes-on").count() == 0
    assert page.evaluate(
        "document.querySelector('.wide').scrollWidth <= document.querySelector('.wide').clientWidth"
    )
