"""Searching in a browser, from a folder: by keyboard, forgiving, announced, and nothing fetched before it is wanted."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browsers import Overheard, chromium
from leafmould.pages.addresses import FIND_INDEX
from leafmould.pages.find_index import find_index
from leafmould.render.html import Renderer
from pages_garden import Line, hand_made, site_of

pytestmark = pytest.mark.browser

HOSTILE = "<img src=x onerror=alert(1)>"
SITE = site_of(
    hand_made(
        [
            Line(
                day="2025-05-01",
                verb="sowed",
                text="sowed peas",
                crop="pea",
                bed="Arch",
                title="The old year",
            ),
            Line(day="2026-04-12", verb="sowed", text="sowed peas", crop="pea", bed="Arch", variety="Meteor"),
            Line(
                day="2026-06-20", verb="weeded", text="weeded Arch", bed="Arch", title=HOSTILE, body="Käfer!"
            ),
        ],
        with_pear=False,
    )
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    top = tmp_path_factory.mktemp("site")
    renderer = Renderer(SITE)
    made = [(page.address, renderer.page(page)) for page in SITE.pages]
    for address, text in [*made, *renderer.files(), (FIND_INDEX, find_index(SITE.ledger))]:
        path = top / address
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return top


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


@pytest.fixture
def page(browser: Browser, folder: Path) -> Iterator[Page]:
    context = browser.new_context()
    page = context.new_page()
    page.goto((folder / "beds/index.html").as_uri())
    yield page
    context.close()


def ask(page: Page, text: str) -> tuple[str | None, list[str]]:
    if not page.locator("dialog.find[open]").count():
        page.keyboard.press("/")
        page.locator(".find .choices select").first.wait_for()
    page.locator(".find input[type=search]").fill(text)
    return page.locator(".find .said").text_content(), page.locator(".find .found li").all_text_contents()


def test_the_index_is_fetched_when_the_field_is_used_and_not_before(page: Page) -> None:
    heard = Overheard(page)
    page.reload()
    assert not [url for url in heard.asked if url.endswith(FIND_INDEX)]
    ask(page, "pea")
    assert len([url for url in heard.asked if url.endswith(FIND_INDEX)]) == 1
    assert heard.said == []


@pytest.mark.parametrize("typed", ["pea", "peas", "Péas", "pe", "kafer Arch", "käfre"])
def test_plurals_accents_beginnings_and_one_slip_are_forgiven(page: Page, typed: str) -> None:
    said, found = ask(page, typed)
    assert found and said != "Nothing found."


def test_names_stand_before_notes_and_the_newest_note_first(page: Page) -> None:
    said, found = ask(page, "pea")
    assert said == "2 names, 2 notes."
    assert found == [
        "pea crop, 2 notes",
        "Old pear bed",
        "pea, Arch 12 April 2026",
        "The old year 1 May 2025",
    ]


def test_what_is_nowhere_is_said_to_be_nowhere(page: Page) -> None:
    assert ask(page, "zzyzx") == ("Nothing found.", [])


def test_it_goes_by_keyboard_alone(page: Page) -> None:
    ask(page, "pea")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowUp")
    assert page.evaluate("document.activeElement.textContent") == "pea"
    page.keyboard.press("Escape")
    assert page.locator("dialog.find[open]").count() == 0
    ask(page, "old year")
    page.keyboard.press("Enter")
    page.wait_for_url("**/notes/**")


def test_notes_are_chosen_by_year_bed_crop_and_what_was_done(page: Page) -> None:
    ask(page, "")
    page.get_by_label("Year").select_option(label="2026")
    assert page.locator(".find .said").text_content() == "2 notes."
    page.get_by_label("Done").select_option(label="sowed")
    assert page.locator(".find .found li").all_text_contents() == ["pea, Arch 12 April 2026"]
    page.get_by_label("Crop").select_option(label="pea")
    page.get_by_label("Bed").select_option(label="Arch")
    assert page.locator(".find .said").text_content() == "1 note."


def test_a_title_that_would_act_stands_there_as_text(page: Page) -> None:
    _, found = ask(page, "kafer")
    assert found == [f"{HOSTILE} 20 June 2026"]
    assert page.locator(".find .found img").count() == 0


def test_the_slash_can_be_switched_off(page: Page) -> None:
    ask(page, "")
    page.get_by_label("opens this").uncheck()
    page.keyboard.press("Escape")
    page.keyboard.press("/")
    assert page.locator("dialog.find[open]").count() == 0
    page.locator("a[data-finds]").first.click()
    assert page.locator("dialog.find[open]").count() == 1


def test_without_script_the_link_leads_to_the_page_of_names(browser: Browser, folder: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((folder / "beds/index.html").as_uri())
    page.locator("a[data-finds]").first.click()
    assert page.url.endswith("/find.html")
    assert page.locator("main li a", has_text="pea").count() >= 1


def test_words_are_cut_down_in_the_browser_as_in_the_index(page: Page) -> None:
    """Each of these words finds the note that has it, whatever form of it is typed."""
    words = ["sowing", "SOWED", "weeding", "Käfer", "kafers"]
    assert [ask(page, word)[0] for word in words] == ["2 notes.", "2 notes.", "1 note.", "1 note.", "1 note."]
