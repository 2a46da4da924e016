"""Searching in a browser, from a folder: by keyboard, forgiving, announced, and nothing fetched before it is wanted."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browsers import Overheard, chromium
from leafmould.pages.addresses import FIND_INDEX
from leafmould.pages.find_index import find_index
from leafmould.pages.find_numbers import DIGITS
from leafmould.pages.ways import OURS
from leafmould.render.environment import layouts_folder
from leafmould.render.html import Renderer
from leafmould.values.names import FRACTIONS, IRREGULAR, WORD
from leafmould.values.stems import STOP, stem
from pages_garden import Line, hand_made, site_of
from sites import CONTENT

FRACTION = re.compile(f"[{FRACTIONS}]")

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


@pytest.mark.parametrize(
    "typed", ["arch 2025", "pea 2025", "Peas in Arch 2025", "what grew in the arch in 2025", "legumes 2025", "pea family 2025", "aerch 2025"]
)  # fmt: skip
def test_a_bed_or_what_grows_there_with_a_year_leads_to_that_year_of_the_bed_first(
    page: Page, typed: str
) -> None:
    said, found = ask(page, typed)
    assert said is not None and said.startswith("1 year of beds, ")
    assert found[0] == "Arch, 2025 pea"
    page.keyboard.press("Enter")
    page.wait_for_url("**/beds/arch.html#year-2025")


def test_a_family_finds_its_crops(page: Page) -> None:
    for typed in ("legumes", "Fabaceae", "pea family"):
        assert ask(page, typed)[1][0] == "pea crop, 2 notes"


def test_a_bed_and_a_crop_without_a_year_find_all_their_years(page: Page) -> None:
    assert ask(page, "pea arch")[1][:2] == ["Arch, 2026 pea", "Arch, 2025 pea"]


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("rotation", "Rotation page"),
        ("when to sow", "When to sow page"),
        ("turned out", "How expectations turned out page"),
        ("data", "The data page"),
        ("2025", "2025 season"),
    ],
)
def test_every_page_is_found_by_its_name_and_a_year_before_all_else(
    page: Page, typed: str, first: str
) -> None:
    assert ask(page, typed)[1][0] == first


def test_pages_this_garden_has_not_are_not_found(page: Page) -> None:
    """No packet, no map, no measured day, no walk; problems are for the household."""
    for typed in ("seed tin", "map", "weather", "walk", "problems"):
        assert not [row for row in ask(page, typed)[1] if row.endswith(" page")]


def test_the_script_has_the_pages_the_index_counts(page: Page) -> None:
    script = (layouts_folder() / "script/find.js").read_text("utf-8")
    found = re.search(r"var OURS = \((.*?)\)\.split", script, re.DOTALL)
    assert found
    rows = "".join(re.findall(r'"([^"]*)"', found[1])).split("|")
    pages = [row.partition("=") for row in rows]
    slugs = [(name, to or name.lower().replace(" ", "-")) for name, _, to in pages]
    assert slugs == [(page.text, page.to.removesuffix(".html")) for page in OURS]


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


def test_on_its_own_page_the_field_stands_open(browser: Browser, folder: Path) -> None:
    page = browser.new_page()
    heard = Overheard(page)
    page.goto((folder / "find.html").as_uri())
    field = page.get_by_role("searchbox")
    assert field.is_visible() and page.locator("dialog").count() == 0
    assert not [url for url in heard.asked if url.endswith(FIND_INDEX)]
    page.keyboard.press("/")
    page.locator(".find .choices select").first.wait_for()
    page.keyboard.type("pea")
    assert page.locator(".find .found li").first.text_content() == "pea crop, 2 notes"
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    page.wait_for_url("**/crops/pea.html")
    assert heard.said == []


def test_the_open_field_moves_nothing_when_it_comes(browser: Browser, folder: Path) -> None:
    """The page keeps its room before the script has made it, at both widths; without script it keeps none."""
    for width in (390, 1280):
        with_it, without = (
            browser.new_context(
                viewport={"width": width, "height": 900}, java_script_enabled=is_on
            ).new_page()
            for is_on in (True, False)
        )
        kept = browser.new_page(viewport={"width": width, "height": 900})
        kept.route("**/find.js", lambda route: route.abort())
        heights = []
        for page in (with_it, kept, without):
            page.goto((folder / "find.html").as_uri())
            heights.append(
                page.evaluate("document.getElementById('find-here').getBoundingClientRect().height")
            )
        assert heights[0] == heights[1] > 100 and heights[2] == 0


def rule_in_browser(page: Page) -> str:
    """The part of the script that holds the rule of stems, as a function from a text to the stems of its words."""
    text = (layouts_folder() / "script" / "find.js").read_text(encoding="utf-8")
    rule = text.partition("// The same rule as values/stems.py.")[2].partition("// The end of the rule.")[0]
    return f"texts => {{ {rule} return texts.map(text => wordsOf(text).map(stem)); }}"


def test_the_browser_has_the_words_and_the_letters_the_index_is_written_with(page: Page) -> None:
    text = (layouts_folder() / "script" / "find.js").read_text(encoding="utf-8")
    rule = text.partition("// The same rule as values/stems.py.")[2].partition("// The end of the rule.")[0]
    assert f'var DIGITS = "{DIGITS}";' in text
    assert page.evaluate(f"() => {{ {rule} return [ODD, STOP]; }}") == [IRREGULAR, sorted(STOP)]


ENDINGS = [
    "",
    "s",
    "es",
    "ies",
    "ed",
    "ted",
    "ing",
    "ning",
    "e",
    "us",
    "is",
    "ss",
    "'s",
    "oes",
    "ches",
    "xes",
    "zed",
]
HARD = [
    "Straße",
    "Größe",
    "Käfer",
    "fœtus",
    "naïve",
    "ΣΊΣΥΦΟΣ",
    "ΣΊΣΥΦΟΣ",
    "İnci",
    "ﬁve",
    "Œuvre",
    "l’oignon",
    "d'été",
    "Ёлка",
    "जड़",
    "콩",
    "5th",
    "été",
]


def test_words_are_cut_down_in_the_browser_by_the_same_rule(page: Page) -> None:
    """All words of the example, every ending on many beginnings, and letters that browsers fold in their own way."""
    texts = [
        path.read_text(encoding="utf-8")
        for path in sorted((CONTENT / "notes").rglob("*.*"))
        if path.is_file()
    ]
    texts += [
        beginning + ending
        for beginning in (*IRREGULAR, "hop", "net", "pil", "chit", "bush", "y")
        for ending in ENDINGS
    ]
    texts += [*IRREGULAR, *HARD]
    words = [[word for word in WORD.findall(text) if not FRACTION.match(word)] for text in texts]
    cut = page.evaluate(rule_in_browser(page), [" ".join(some) for some in words])
    assert [len(some) for some in cut] == [len(some) for some in words]
    pairs = {
        (word, there)
        for some, others in zip(words, cut, strict=True)
        for word, there in zip(some, others, strict=True)
    }
    assert len(pairs) > 1500
    assert {(word, there, stem(word)) for word, there in pairs if stem(word) and stem(word) != there} == set()


def test_words_are_cut_down_in_the_browser_as_in_the_index(page: Page) -> None:
    """Each of these words finds the note that has it, whatever form of it is typed."""
    words = ["sowing", "SOWED", "weeding", "Käfer", "kafers"]
    assert [ask(page, word)[0] for word in words] == [
        "1 name, 2 notes.",  # the page of when to sow
        "1 name, 2 notes.",
        "1 note.",
        "1 note.",
        "1 note.",
    ]
