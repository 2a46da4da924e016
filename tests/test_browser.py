"""The site in a browser, opened from a folder: day counts move on, nothing overflows, nothing is fetched."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browsers import chromium
from leafmould.pages.site import Site
from leafmould.render.html import Renderer
from pages_garden import a_problem, hand_made, site_of

pytestmark = pytest.mark.browser

SITE: Site = site_of(hand_made(), household=True, problems=(a_problem(),))
KINDS = sorted({page.template: page.address for page in SITE.pages}.values())


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of the garden made by hand, written to a folder."""
    top = tmp_path_factory.mktemp("site")
    renderer = Renderer(SITE)
    made = [(page.address, renderer.page(page)) for page in SITE.pages]
    for address, text in [*made, *renderer.files()]:
        path = top / address
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return top


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


def opened(browser: Browser, path: Path, *, at: str, zone: str = "UTC") -> Page:
    """A page read at a moment, in a time zone."""
    context = browser.new_context(timezone_id=zone)
    page = context.new_page()
    page.clock.set_fixed_time(at)
    page.goto(path.as_uri())
    return page


def label(page: Page) -> str | None:
    return page.locator('[data-from="2026-04-12"]').first.text_content()


@pytest.mark.parametrize(
    ("at", "zone", "text"),
    [
        ("2026-07-15T12:00:00Z", "UTC", "sown 94 days ago"),
        ("2026-07-14T12:00:00Z", "UTC", "sown 94 days ago"),  # a clock that is behind changes nothing
        ("2026-07-18T12:00:00Z", "UTC", "sown 97 days ago"),
        ("2026-07-18T00:30:00Z", "America/Los_Angeles", "sown 96 days ago"),  # still the 17th there
        ("2026-07-17T23:30:00Z", "Pacific/Auckland", "sown 97 days ago"),  # the 18th already
        ("2026-07-29T12:00:00Z", "Europe/Berlin", "sown 108 days ago"),  # a fortnight later, the last time
        ("2026-07-30T12:00:00Z", "UTC", "sown 94 days ago"),  # the garden has gone on without the page
        ("2027-07-15T12:00:00Z", "UTC", "sown 94 days ago"),
    ],
)
def test_f100_counts_move_on_by_the_readers_calendar(
    browser: Browser, folder: Path, at: str, zone: str, text: str
) -> None:
    assert label(opened(browser, folder / "index.html", at=at, zone=zone)) == text


def test_a_count_with_words_after_it_keeps_them(browser: Browser, folder: Path) -> None:
    page = opened(browser, folder / "index.html", at="2026-07-16T12:00:00Z")
    pea = page.locator('[data-from="2026-07-03"]').first
    assert pea.text_content() == "picking for 13 days, 1.4\u00a0kg so far"
    assert pea.get_attribute("value") == "13"


def test_ranges_stay_and_the_page_says_that_counts_have_moved(browser: Browser, folder: Path) -> None:
    page = opened(browser, folder / "index.html", at="2026-07-18T12:00:00Z")
    head = page.locator(".as-of").text_content()
    assert head == "as of 15 July 2026 (days counted on to today, 3 days later)"
    assert page.get_by_text("expected 27 July – 9 September").count() == 0  # not near
    beds = opened(browser, folder / "beds" / "index.html", at="2026-07-18T12:00:00Z")
    assert beds.get_by_text("expected 27 July – 9 September").count() > 0


def test_after_a_fortnight_the_page_says_how_old_it_is_and_counts_no_further(
    browser: Browser, folder: Path
) -> None:
    page = opened(browser, folder / "index.html", at="2026-07-30T12:00:00Z")
    assert page.locator(".as-of").text_content() == (
        "as of 15 July 2026 (this page is 15 days old: it tells of the garden as it was then, its counts of days too)"
    )


def test_without_script_the_page_is_right_as_of_its_day(browser: Browser, folder: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((folder / "index.html").as_uri())
    assert label(page) == "sown 94 days ago"


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_no_page_is_wider_than_its_window(browser: Browser, folder: Path, width: int) -> None:
    page = browser.new_context(viewport={"width": width, "height": 900}).new_page()
    too_wide = []
    for address in KINDS:
        page.goto((folder / address).as_uri())
        if page.evaluate("document.documentElement.scrollWidth") > width:
            too_wide.append(address)
    assert too_wide == []


def test_nothing_is_fetched_but_the_sites_own_files_and_nothing_complains(
    browser: Browser, folder: Path
) -> None:
    page = browser.new_context().new_page()
    asked: list[str] = []
    said: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    for address in KINDS:
        page.goto((folder / address).as_uri())
    assert said == []
    assert {url for url in asked if not url.startswith(folder.as_uri())} == set()


def test_the_keyboard_reaches_the_text_past_the_masthead(browser: Browser, folder: Path) -> None:
    page = browser.new_context().new_page()
    page.goto((folder / "years.html").as_uri())
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Skip to the text"
    assert page.evaluate("document.activeElement.getBoundingClientRect().left") >= 0
    page.keyboard.press("Enter")
    assert page.url.endswith("#text")


def test_on_a_phone_each_year_of_a_bed_is_named_beside_what_stood_there(
    browser: Browser, folder: Path
) -> None:
    page = browser.new_context(viewport={"width": 390, "height": 900}).new_page()
    page.goto((folder / "years.html").as_uri())
    cell = page.locator("td[data-year='2025']").first
    assert cell.evaluate("e => getComputedStyle(e, '::before').content") == '"2025"'
    told = page.context.new_cdp_session(page).send("Accessibility.getFullAXTree")["nodes"]
    roles = {node["role"]["value"] for node in told if not node.get("ignored")}
    assert roles >= {"table", "row", "rowheader", "columnheader", "cell"}  # laid out anew, and still a table
