"""Every kind of page on paper: no way about the site, ink on white whatever the screen is, nothing cut at the edge.

Looked at as Chromium lays a page out for an A4 sheet. What it looks like has to be looked at; this holds what can be counted.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from browsers import chromium
from sites import Book

pytestmark = pytest.mark.browser

WIDE, HIGH = 680, 1017
"""A4 within the site's margins [CSS px]."""
LYING_WIDE = 1017
"""The same, for what lies across the sheet."""

AMISS = """wide => {
    const told = [], seen = e => e.getClientRects().length && getComputedStyle(e).visibility !== "hidden";
    const paper = getComputedStyle(document.documentElement).getPropertyValue("--paper").trim();
    if (paper !== "#fff") told.push("the paper is " + paper);
    for (const e of document.querySelectorAll("nav, .skip, .neighbours, input, dialog, button"))
        if (seen(e)) told.push("is on paper: " + e.localName + "." + e.className);
    for (const e of document.querySelectorAll("main table, main svg, main img, main pre"))
        if (seen(e) && e.getBoundingClientRect().right > wide + 1) told.push("is cut: " + e.localName + "." + (e.getAttribute("class") || ""));
    for (const e of document.querySelectorAll("h1, h2, h3, p, td, th, dd, dt, text")) {
        const [r, g, b] = getComputedStyle(e).color.match(/[\\d.]+/g).map(Number);
        if (0.2126 * r + 0.7152 * g + 0.0722 * b > 125) { told.push("is pale: " + e.localName + "." + e.className); break; }
    }
    for (const e of document.querySelectorAll("tr, .planting, .doings > li, .notes > li, .plate"))
        if (getComputedStyle(e).breakInside !== "avoid") { told.push("may be torn: " + e.localName); break; }
    return told;
}"""


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


@pytest.fixture
def sheet(browser: Browser) -> Iterator[Page]:
    """A sheet of paper, printed by somebody whose screen is dark."""
    context = browser.new_context(viewport={"width": WIDE, "height": HIGH}, color_scheme="dark")
    page = context.new_page()
    page.emulate_media(media="print", color_scheme="dark")
    yield page
    context.close()


@pytest.mark.parametrize("site", ["household_book", "public_book"])
def test_every_kind_of_page_is_fit_for_paper(sheet: Page, site: str, request: pytest.FixtureRequest) -> None:
    book: Book = request.getfixturevalue(site)
    found = {}
    for address in book.kinds.values():
        sheet.goto((book.folder / address).as_uri())
        lies = sheet.evaluate("getComputedStyle(document.body).page") == "across"
        wide = LYING_WIDE if lies else WIDE
        sheet.set_viewport_size({"width": wide, "height": HIGH})
        if told := sheet.evaluate(AMISS, wide):
            found[address] = told
    assert found == {}


def test_the_map_stands_on_one_sheet_with_its_key(sheet: Page, household_book: Book) -> None:
    for address in ("map/index.html", "map/2024.html"):
        sheet.goto((household_book.folder / address).as_uri())
        foot = sheet.evaluate("document.querySelector('.map-key').getBoundingClientRect().bottom")
        assert foot < HIGH, address
        assert sheet.evaluate("getComputedStyle(document.querySelector('.map')).breakAfter") == "page"


GREYS = """selector => {
    const grey = colour => { const [r, g, b] = colour.match(/[\\d.]+/g).map(Number); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
    const seen = document.querySelector(selector), look = getComputedStyle(seen), solid = parseFloat(look.fillOpacity);
    return look.fill === "none" ? null : 255 - solid * (255 - grey(look.fill));
}"""
"""How light a shape is printed without colour: 0 is black, 255 the paper."""


def test_without_colour_paths_are_seen_and_what_was_picked_is_told_from_what_stood(
    sheet: Page, household_book: Book
) -> None:
    sheet.goto((household_book.folder / "map/index.html").as_uri())
    path, wall = sheet.evaluate(GREYS, ".map .path"), sheet.evaluate(GREYS, ".map .wall")
    assert wall + 60 < path < 235
    sheet.goto((household_book.folder / "beds/top-terrace.html").as_uri())
    ground = sheet.evaluate(GREYS, ".strip rect.ground:not(.open)")
    picked = sheet.evaluate(GREYS, ".strip rect.picking:not(.open)")
    assert abs(ground - picked) > 60
    assert sheet.evaluate(GREYS, ".strip rect.open.ground") > 250  # an outline alone


def test_tables_with_a_column_for_each_year_or_family_lie_across_the_sheet(
    sheet: Page, household_book: Book
) -> None:
    lying = {}
    for address in ("rotation.html", "years.html", "map/index.html", "index.html"):
        sheet.goto((household_book.folder / address).as_uri())
        lying[address] = sheet.evaluate("getComputedStyle(document.body).page")
    assert lying == {
        "rotation.html": "across",
        "years.html": "across",
        "map/index.html": "auto",
        "index.html": "auto",
    }
