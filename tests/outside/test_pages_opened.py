"""Every kind of page of the example, opened in Chromium from a folder: with script and without, and later.

    PYTHONPATH=tests python tests/outside/test_pages_opened.py FOLDER

puts pictures of every kind of page there, at two widths, by day and by night, for looking at.
"""

from __future__ import annotations

import re
import sys
import tempfile
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext

from browsers import Overheard, chromium
from sites import ON, Book, example

pytestmark = pytest.mark.browser

WIDTHS = (390, 1280)
LATER = 9
"""Days after the build on which the pages are read once more."""


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


def looked_at(context: BrowserContext, book: Book) -> tuple[list[str], set[str]]:
    """What the pages of all kinds complain of, and what they ask for outside their folder."""
    page = context.new_page()
    heard = Overheard(page)
    for address in book.kinds.values():
        page.goto((book.folder / address).as_uri())
        for picture in page.locator("img").all():
            picture.scroll_into_view_if_needed()
    top = book.folder.as_uri()
    return heard.said, {url for url in heard.asked if not url.startswith(top)}


def test_there_is_a_page_of_every_kind(household_book: Book) -> None:
    assert len(household_book.kinds) >= 14


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without"])
def test_no_page_complains_or_asks_for_anything_elsewhere(browser: Browser, book: Book, script: bool) -> None:
    assert looked_at(browser.new_context(java_script_enabled=script), book) == ([], set())


def test_nor_later(browser: Browser, household_book: Book) -> None:
    context = browser.new_context()
    context.clock.set_fixed_time(f"{ON + timedelta(days=200)}T12:00:00Z")
    assert looked_at(context, household_book) == ([], set())


def counts(context: BrowserContext, address: str) -> list[tuple[str, str, str]]:
    """Each count of days on a page: the day it starts from, its value, its words."""
    page = context.new_page()
    page.goto(address)
    found: list[tuple[str, str, str]] = page.eval_on_selector_all(
        "[data-from]", "all => all.map(e => [e.dataset.from, e.value, e.textContent])"
    )
    return [tuple(one) for one in found]


def test_counts_move_on_by_the_days_that_passed_and_nothing_else_does(
    browser: Browser, household_book: Book
) -> None:
    """Checked against Python's calendar: each count is the days from its start to the day it is read."""
    later = browser.new_context(timezone_id="UTC")
    later.clock.set_fixed_time(f"{ON + timedelta(days=LATER)}T12:00:00Z")
    plain = browser.new_context(java_script_enabled=False)
    checked = 0
    for name in household_book.kinds.values():
        address = (household_book.folder / name).as_uri()
        built, read = counts(plain, address), counts(later, address)
        for (begun, value, words), (_, moved, then) in zip(built, read, strict=True):
            days = (ON - date.fromisoformat(begun)).days
            assert int(value) in (days, days + 1)  # "picking for" counts its first day too
            assert int(moved) == int(value) + LATER
            assert re.sub(r"\d+ days?\b", "", words, count=1) == re.sub(r"\d+ days?\b", "", then, count=1)
            assert f"{int(value) + LATER} days" in then
            checked += 1
    assert checked > 20


@pytest.mark.parametrize("width", [320, *WIDTHS])
def test_no_page_of_any_kind_is_wider_than_its_window(
    browser: Browser, household_book: Book, width: int
) -> None:
    page = browser.new_context(viewport={"width": width, "height": 900}).new_page()
    too_wide = {}
    for kind, address in household_book.kinds.items():
        page.goto((household_book.folder / address).as_uri())
        over = page.evaluate("document.documentElement.scrollWidth") - width
        if over > 0:
            too_wide[kind] = over
    assert too_wide == {}


SHIFTS = """
window.shifted = 0;
new PerformanceObserver(list => { for (const e of list.getEntries()) window.shifted += e.value; })
    .observe({ type: "layout-shift", buffered: true });
"""

SCROLLED = """async () => {
    for (let y = 0; y < document.body.scrollHeight; y += innerHeight) {
        scrollTo({ top: y, behavior: "instant" });
        await new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
    }
    return window.shifted;
}"""


@pytest.mark.parametrize("width", WIDTHS)
def test_nothing_moves_while_a_page_comes_and_is_read(browser: Browser, book: Book, width: int) -> None:
    """As browsers measure it (Layout Instability): nothing at all. Read on a later day, when the script counts on."""
    context = browser.new_context(viewport={"width": width, "height": 900})
    context.clock.set_fixed_time(f"{ON + timedelta(days=LATER)}T12:00:00Z")
    page = context.new_page()
    page.add_init_script(SHIFTS)
    moved = {}
    for address in book.kinds.values():
        page.goto((book.folder / address).as_uri())
        if (shift := page.evaluate(SCROLLED)) > 0:
            moved[address] = shift
    assert moved == {}


OVERLAPS = """() => {
    const unseen = head => head && getComputedStyle(head).position === "absolute";  // read aloud only
    const boxes = [...document.querySelectorAll("main a, main .tag, main h1, main h2, main h3, main dt, main dd > p")]
        .filter(e => e.textContent.trim() && !e.closest("svg, .skip") && !(e.closest("details:not([open])") && !e.closest("summary")) && !unseen(e.closest("thead")))
        .flatMap(e => [...e.getClientRects()].filter(r => r.width > 2 && r.height > 2).map(r => [e, r]));
    const found = [];
    for (let i = 0; i < boxes.length; i += 1) {
        for (let j = i + 1; j < Math.min(boxes.length, i + 40); j += 1) {
            const [a, r] = boxes[i], [b, s] = boxes[j];
            if (a.contains(b) || b.contains(a)) continue;
            const across = Math.min(r.right, s.right) - Math.max(r.left, s.left);
            const down = Math.min(r.bottom, s.bottom) - Math.max(r.top, s.top);
            if (across > 3 && down > Math.min(r.height, s.height) * 0.6) {
                found.push(a.textContent.trim().slice(0, 40) + " over " + b.textContent.trim().slice(0, 40));
            }
        }
    }
    return found;
}"""


@pytest.mark.parametrize("width", WIDTHS)
def test_no_words_lie_over_others(browser: Browser, household_book: Book, width: int) -> None:
    page = browser.new_context(viewport={"width": width, "height": 900}).new_page()
    over = {}
    for kind, address in household_book.kinds.items():
        page.goto((household_book.folder / address).as_uri())
        if found := page.evaluate(OVERLAPS):
            over[kind] = found[:3]
    assert over == {}


def take_pictures(folder: Path) -> None:
    """Pictures of every kind of page, for looking at."""
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as top, chromium() as browser:
        book = Book(example(Path(top), household=True))
        for scheme in ("light", "dark"):
            for width in WIDTHS:
                context = browser.new_context(
                    viewport={"width": width, "height": 900}, color_scheme=scheme, reduced_motion="reduce"
                )
                context.clock.set_fixed_time(f"{ON}T12:00:00Z")
                page = context.new_page()
                for kind, address in book.kinds.items():
                    page.goto((book.folder / address).as_uri())
                    name = kind.strip("/").replace("/", "-").replace(".html", "")
                    page.screenshot(path=folder / f"{name}-{width}-{scheme}.png", full_page=True)


if __name__ == "__main__":
    take_pictures(Path(sys.argv[1]))
