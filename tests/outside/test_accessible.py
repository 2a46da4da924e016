"""Every kind of page for whoever cannot see, aim or scroll well: axe-core, the keyboard, large letters, no motion.

axe-core (npm, see .ci/run) asks every rule of WCAG 2.2 A and AA it has, and its rules of good practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browsers import chromium
from sites import Book

pytestmark = pytest.mark.browser

AXE = Path(__file__).parent / "node_modules" / "axe-core" / "axe.min.js"
RULES = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice")

BREACHES = """async rules => {
    const found = await axe.run(document, { runOnly: rules, resultTypes: ["violations"] });
    return found.violations.flatMap(rule => rule.nodes.slice(0, 3).map(node => rule.id + ": " + node.html.slice(0, 120)));
}"""

CAN_BE_REACHED = "a[href], button, input, select, textarea, summary, [tabindex]"


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


@pytest.fixture(scope="module")
def axe() -> str:
    if not AXE.is_file():
        pytest.skip("axe-core is wanted: npm install --prefix tests/outside")
    return AXE.read_text(encoding="utf-8")


def opened(book: Book, page: Page) -> Iterator[str]:
    """A page of every kind, one after the other, with all on it that can be unfolded."""
    for address in book.kinds.values():
        page.goto((book.folder / address).as_uri())
        page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true; })")
        yield address


def breaches(page: Page, axe: str) -> list[str]:
    page.evaluate(axe)
    found: list[str] = page.evaluate(BREACHES, list(RULES))
    return found


def test_axe_finds_a_breach_where_there_is_one(browser: Browser, axe: str) -> None:
    page = browser.new_page()
    page.set_content(
        "<html lang=en><title>x</title><main><h1>x</h1><img src='data:,'><p style='color:#ccc'>pale</p></main>"
    )
    found = {words.partition(": ")[0] for words in breaches(page, axe)}
    assert found >= {"image-alt", "color-contrast"}


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
def test_no_page_breaches_a_rule(
    browser: Browser, household_book: Book, axe: str, width: int, scheme: str
) -> None:
    """The policy would not let a page run axe-core, which is not the site's own; here it may."""
    context = browser.new_context(
        viewport={"width": width, "height": 900},
        color_scheme=scheme,
        reduced_motion="reduce",
        bypass_csp=True,
    )
    page = context.new_page()
    found = {address: told for address in opened(household_book, page) if (told := breaches(page, axe))}
    assert found == {}


SEARCHED = ("tomatoes", "zzyzx")


def searching(page: Page, book: Book, address: str, text: str) -> None:
    """A page with its search open and something typed; on the page of names it stands open anyway."""
    page.goto((book.folder / address).as_uri())
    page.keyboard.press("/")
    page.locator(".find .choices select").first.wait_for()
    page.get_by_role("searchbox").fill(text)
    page.locator(".find .said").get_by_text(re.compile("note|Nothing")).wait_for()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
def test_the_search_breaches_no_rule_while_it_is_open(
    browser: Browser, household_book: Book, axe: str, width: int, scheme: str
) -> None:
    view = {"width": width, "height": 900}
    page = browser.new_context(viewport=view, color_scheme=scheme, bypass_csp=True).new_page()
    found = {}
    for address in ("index.html", "find.html"):
        for text in SEARCHED:
            searching(page, household_book, address, text)
            found[address, text] = breaches(page, axe)
            wide = page.evaluate("document.documentElement.scrollWidth")
            assert wide <= width, (address, text)
    assert {where: told for where, told in found.items() if told} == {}


def test_the_search_is_walked_by_keyboard_and_lets_go(browser: Browser, household_book: Book) -> None:
    """Field, way out, choices, what was found, the foot, and round again; Escape gives the place back where one was."""
    page = browser.new_page(viewport={"width": 390, "height": 900})
    page.goto((household_book.folder / "index.html").as_uri())
    link = page.locator("a[data-finds]")
    link.focus()
    page.keyboard.press("Enter")
    page.locator(".find .choices select").first.wait_for()
    page.keyboard.type("stupice")
    walked = []
    for _ in range(24):
        walked.append(
            page.evaluate("document.activeElement.localName + ':' + (document.activeElement.type || '')")
        )
        page.keyboard.press("Tab")
    assert walked[:6] == ["input:search", "button:button", *["select:select-one"] * 4]
    assert walked[6] == "a:" and "input:checkbox" in walked
    page.get_by_role("searchbox").focus()
    page.keyboard.press("Escape")
    page.keyboard.press("Escape")
    assert page.locator("dialog[open]").count() == 0
    assert page.evaluate("document.activeElement.hasAttribute('data-finds')")


WALKED = """all => {
    const told = [], seen = [...document.querySelectorAll(all)].filter(e => e.tabIndex >= 0 && e.getClientRects().length);
    for (const e of seen) {
        e.focus({ focusVisible: true });
        const look = getComputedStyle(e), box = e.getBoundingClientRect();
        const words = (e.textContent || e.id).trim().slice(0, 40);
        if (document.activeElement !== e) told.push("cannot be reached: " + words);
        if (look.outlineStyle === "none" || parseFloat(look.outlineWidth) < 2) told.push("is not seen to be reached: " + words);
        if (box.bottom <= 0 || box.top >= innerHeight || box.width === 0) told.push("is out of sight: " + words);
        if (e.tabIndex > 0) told.push("is out of order: " + words);
    }
    document.activeElement.blur();
    return told;
}"""
"""Every place the keyboard can reach, reached: is it, is it in sight, and can it be seen that it is."""

WHERE = """all => [...document.querySelectorAll(all)]
    .filter(e => e.tabIndex >= 0 && e.getClientRects().length).indexOf(document.activeElement)"""


@pytest.mark.parametrize("width", [390, 1280])
def test_the_keyboard_reaches_everything_in_order_and_is_seen_to(
    browser: Browser, household_book: Book, width: int
) -> None:
    context = browser.new_context(viewport={"width": width, "height": 900}, reduced_motion="reduce")
    page = context.new_page()
    amiss = {}
    for address in opened(household_book, page):
        steps = []
        for _ in range(14):
            page.keyboard.press("Tab")
            steps.append(page.evaluate(WHERE, CAN_BE_REACHED))
        first = page.locator("a").first
        assert (first.text_content(), first.get_attribute("href")) == ("Skip to the text", "#text")
        if found := [
            *([] if steps == [*range(14)] else [f"goes {steps}"]),
            *page.evaluate(WALKED, CAN_BE_REACHED),
        ]:
            amiss[address] = found
    assert amiss == {}


def test_the_keyboard_is_never_caught(browser: Browser, household_book: Book) -> None:
    """From the last place the next step leaves the page, and one step back comes to the last but one."""
    page = browser.new_context(viewport={"width": 390, "height": 900}).new_page()
    caught = []
    for address in opened(household_book, page):
        last = page.evaluate(
            """all => { const seen = [...document.querySelectorAll(all)]
                .filter(e => e.tabIndex >= 0 && e.getClientRects().length); seen.at(-1).focus(); return seen.length - 1; }""",
            CAN_BE_REACHED,
        )
        page.keyboard.press("Shift+Tab")
        back = page.evaluate(WHERE, CAN_BE_REACHED)
        page.keyboard.press("Tab")
        page.keyboard.press("Tab")
        if (back, page.evaluate(WHERE, CAN_BE_REACHED)) not in ((last - 1, -1), (last - 1, 0)):
            caught.append(address)
    assert caught == []


@pytest.mark.parametrize("width", [1280, 390])
def test_at_twice_the_size_no_page_scrolls_sideways(
    browser: Browser, household_book: Book, width: int
) -> None:
    """A window of half the width, every dot of which is two (WCAG 2.2, 1.4.4 and 1.4.10 ask for 320 px and no less)."""
    view = {"width": width // 2, "height": 450}
    page = browser.new_context(viewport=view, device_scale_factor=2).new_page()
    over = {}
    for address in opened(household_book, page):
        if (wide := page.evaluate("document.documentElement.scrollWidth")) > width // 2:
            over[address] = wide
    assert over == {}


def test_with_letters_twice_as_large_nothing_is_lost(browser: Browser, household_book: Book) -> None:
    page = browser.new_context(viewport={"width": 640, "height": 900}, bypass_csp=True).new_page()
    over = {}
    for address in opened(household_book, page):
        page.add_style_tag(content="html { font-size: 200% !important }")
        if (wide := page.evaluate("document.documentElement.scrollWidth")) > 640:
            over[address] = wide
    assert over == {}


MOVES = """() => [...document.querySelectorAll("*")].filter(e => {
    const look = getComputedStyle(e);
    return look.scrollBehavior === "smooth" || look.animationName !== "none" ||
        look.transitionDuration.split(",").some(time => parseFloat(time) > 0);
}).map(e => e.localName + "." + e.className)"""


def test_nothing_moves_for_whoever_asked_for_stillness(browser: Browser, household_book: Book) -> None:
    page = browser.new_context(reduced_motion="reduce").new_page()
    assert {a: found for a in opened(household_book, page) if (found := page.evaluate(MOVES))} == {}
