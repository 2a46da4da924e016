"""Page values to HTML: escaping, strictness, links that lead somewhere, and weight."""

from __future__ import annotations

import gzip
import posixpath
import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from leafmould.pages import addresses
from leafmould.pages.bed import BedPage
from leafmould.pages.page import Page
from leafmould.pages.site import Site
from leafmould.pages.tables import TABLES
from leafmould.render.environment import LayoutFault, layouts_folder
from leafmould.render.html import Renderer
from pages_garden import BEDS, Line, a_problem, hand_made, site_of

HOSTILE = [
    '<b>Sun & "Co"',
    "</script><script>alert(1)</script>",
    "' onmouseover='alert(1)",
    '" onfocus="alert(1)',
    "javascript:alert(1)",
    "{{ 7 * 7 }} {% raw %}",
    "../../etc",
    "?x=1#y",
    "Ünïcödé トマト 🍅",
    "\u202eRTL",
    "a" * 300,
]


def made(site: Site) -> dict[str, BeautifulSoup]:
    """All pages of a site, parsed."""
    renderer = Renderer(site)
    return {page.address: BeautifulSoup(renderer.page(page), "html.parser") for page in site.pages}


@pytest.fixture(scope="module")
def book() -> dict[str, BeautifulSoup]:
    return made(site_of(hand_made(), household=True, problems=(a_problem(),)))


def leads(address: str, tree: BeautifulSoup) -> Iterator[tuple[str, str]]:
    """Where the links of a page lead: page and id, as seen from the top."""
    for link in tree.find_all(["a", "link", "script"]):
        href = link.get("href") or link.get("src")
        assert href, f"{address}: a link to nowhere: {link}"
        if re.match(r"[a-z]+:", str(href)):
            continue
        page, _, name = str(href).partition("#")
        yield posixpath.normpath(posixpath.join(posixpath.dirname(address), page)) if page else address, name


# --- links ---------------------------------------------------------------------------------------------


def test_no_link_and_no_anchor_is_dead(book: dict[str, BeautifulSoup]) -> None:
    ids = {address: {tag["id"] for tag in tree.find_all(id=True)} for address, tree in book.items()}
    files = {*book, addresses.STYLE, addresses.SCRIPT, addresses.FINDER, addresses.ICON}
    files |= {"feed.xml", "calendar.ics", "data/plantings.json", "data/harvests.json", "data/problems.json"}
    files |= {file for table in TABLES for file in (table.file, table.json)}
    dead = [
        f"{address} -> {page}#{name}"
        for address, tree in book.items()
        for page, name in leads(address, tree)
        if page not in files or (name and name not in ids[page])
    ]
    assert dead == []


def test_ids_stand_once_on_a_page(book: dict[str, BeautifulSoup]) -> None:
    for address, tree in book.items():
        ids = [tag["id"] for tag in tree.find_all(id=True)]
        assert len(ids) == len(set(ids)), address


def test_every_bed_in_every_year_is_two_links_from_the_first_page(book: dict[str, BeautifulSoup]) -> None:
    assert_two_links_away(book)


def test_a_table_of_very_many_years_is_split_and_each_part_is_one_link_away(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("leafmould.pages.ledger.MOST_CELL_ROWS", 20)
    book = made(site_of(hand_made()))
    assert {"years.html", "years/2025.html", "years/2024.html"} <= book.keys()
    assert_two_links_away(book)


def assert_two_links_away(book: dict[str, BeautifulSoup]) -> None:
    """Every planting's section can be reached by two links."""
    reached = {addresses.NOW}
    spots: set[tuple[str, str]] = set()
    for _ in range(2):
        for address in sorted(reached):
            spots |= set(leads(address, book[address]))
        reached |= {page for page, _ in spots if page in book}
    wanted = {
        (page, tag["id"])
        for page, tree in book.items()
        if page.startswith("beds/")
        for tag in tree.select("article[id]")
    }
    assert wanted
    assert wanted - spots == set()


def test_every_page_can_be_reached(book: dict[str, BeautifulSoup]) -> None:
    reached, waiting = {addresses.NOW}, [addresses.NOW]
    while waiting:
        address = waiting.pop()
        new = {page for page, _ in leads(address, book[address])} & book.keys() - reached
        reached |= new
        waiting += sorted(new)
    assert reached == book.keys()


def test_links_are_relative_and_name_their_file(book: dict[str, BeautifulSoup]) -> None:
    for address, tree in book.items():
        for link in tree.find_all("a"):
            href = str(link["href"])
            assert not href.startswith("/"), address
            is_file = re.search(
                r"\.html(#|$)|^(\.\./)*(data/[a-z]+\.(csv|json)|feed\.xml|calendar\.ics)$", href
            )
            assert href.startswith("#") or is_file, f"{address}: {href}"


def test_nothing_is_asked_of_another_host_and_nothing_runs_inline(book: dict[str, BeautifulSoup]) -> None:
    for address, tree in book.items():
        assert [s.get("src") for s in tree.find_all("script")] == [
            addresses.root_of(address) + addresses.SCRIPT,
            addresses.root_of(address) + addresses.FINDER,
        ]
        assert not tree.find_all(["style", "img", "iframe", "object", "form"])
        for tag in tree.find_all(True):
            assert not [name for name in tag.attrs if name.startswith("on") or name == "style"], address
    (_, style), (_, script), (_, finder), _ = Renderer(site_of(hand_made())).files()
    assert "@import" not in style
    assert "url(" not in style
    assert not re.search(r"fetch|XMLHttp|innerHTML|eval|cookie|localStorage", script)
    assert not re.search(r"fetch\(|XMLHttp|innerHTML|outerHTML|insertAdjacent|eval|Function\(|cookie", finder)


# --- what every page carries ---------------------------------------------------------------------------


def test_every_page_says_which_garden_and_which_day_it_speaks_for(book: dict[str, BeautifulSoup]) -> None:
    for address, tree in book.items():
        head = tree.find("header")
        assert head is not None
        assert "Tansy Hill" in head.get_text()
        assert "as of 15 July 2026" in " ".join(head.get_text().split())
        assert head.find("time", datetime="2026-07-15"), address
        assert len(tree.find_all("h1")) == 1, address
        assert tree.html and tree.html.get("lang") == "en"


def test_a_household_build_says_so_on_every_page_and_a_public_one_never(
    book: dict[str, BeautifulSoup],
) -> None:
    public = made(site_of(hand_made(), problems=(a_problem(),)))
    assert all("Household copy" in tree.get_text() for tree in book.values())
    assert not any("Household copy" in tree.get_text() for tree in public.values())
    assert not any("Nroth" in tree.get_text() for tree in public.values())
    assert not any(tag.get_text() == "Problems" for tree in public.values() for tag in tree.select("a, h1"))


def test_headings_never_skip_a_level(book: dict[str, BeautifulSoup]) -> None:
    for address, tree in book.items():
        main = tree.find("main")
        assert main is not None
        level = 0
        for heading in main.find_all(re.compile(r"^h[1-6]$")):
            here = int(heading.name[1])
            assert here <= level + 1, f"{address}: {heading}"
            level = here


def test_figures_are_for_machines_too(book: dict[str, BeautifulSoup]) -> None:
    arch = book["beds/arch.html"]
    assert arch.find("data", value="2000") is not None
    assert arch.find("time", datetime="2025-06-14") is not None
    for address, tree in book.items():
        for time in tree.find_all("time"):
            assert re.fullmatch(r"\d{4}(-\d\d(-\d\d)?)?", str(time["datetime"])), address


def test_labels_hold_what_is_needed_to_move_a_count_on(book: dict[str, BeautifulSoup]) -> None:
    data = book[addresses.BEDS].find("data", attrs={"data-from": "2026-04-12"})
    assert data is not None
    assert data.get_text() == "sown 94 days ago"
    assert {k: data[k] for k in ("value", "data-before", "data-after")} == {
        "value": "94",
        "data-before": "sown",
        "data-after": "ago",
    }


def test_strips_say_in_words_what_they_draw(book: dict[str, BeautifulSoup]) -> None:
    drawn = book["crops/pea.html"].find_all("svg", attrs={"role": "img"})
    assert [svg["aria-label"] for svg in drawn] == [
        "sown 25 April 2026; first picked 3 July 2026; last picked 12 July 2026",
        "sown 2 April 2025; first picked 14 June 2025; last picked 1 July 2025; ended 22 July 2025",
    ]


# --- hostile names -------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", HOSTILE)
def test_f75_names_neither_break_nor_act_wherever_they_stand(name: str) -> None:
    bed = replace(BEDS[0], key="it", name=name, also=(name,), soil=name)
    lines = [
        Line(day="2026-04-01", verb="sowed", text=name, crop="pea", variety=name, bed=name, title=name),
        Line(day="2026-06-01", verb="saw", text=name, crop="pea", variety=name, bed=name, body=name, lesson=name),
    ]  # fmt: skip
    garden = replace(hand_made(lines, beds=(bed,), with_pear=False), name=name)
    for address, tree in made(site_of(garden, household=True, problems=(a_problem(message=name),))).items():
        assert len(tree.find_all("script")) == 2, address
        for tag in tree.find_all(True):
            assert not [attr for attr in tag.attrs if attr.startswith("on")], address
            assert tag.name != "b" or (tag.parent and tag.parent.get("class") == ["reading"])
        for link in tree.find_all("a"):
            assert not str(link["href"]).lower().startswith(("javascript:", "data:", "file:", "//")), address
        assert "49" not in tree.get_text().split()


def test_f76_no_note_stands_inside_a_script(book: dict[str, BeautifulSoup]) -> None:
    assert all(s.get_text() == "" for tree in book.values() for s in tree.find_all("script"))


# --- strictness ----------------------------------------------------------------------------------------


def site_with_look(tmp_path: Path, name: str, text: str) -> Renderer:
    """A renderer for a garden with one layout of its own."""
    look = tmp_path / "look"
    look.mkdir()
    (look / name).write_text(text, encoding="utf-8")
    return Renderer(site_of(hand_made()), look)


def first(renderer: Renderer) -> str:
    page = next(page for page in site_of(hand_made()).pages if page.template == "lessons.html")
    return renderer.page(page)


def test_a_garden_may_replace_single_layouts(tmp_path: Path) -> None:
    renderer = site_with_look(tmp_path, "lessons.html", "<p>{{ page.title }} & co</p>")
    assert first(renderer) == "<p>Lessons & co</p>"


def test_a_garden_may_replace_single_styles(tmp_path: Path) -> None:
    look = tmp_path / "look" / "styles"
    look.mkdir(parents=True)
    (look / "own.css").write_text("h1 { color: teal }", encoding="utf-8")
    style = dict(Renderer(site_of(hand_made()), tmp_path / "look").files())[addresses.STYLE]
    assert style.endswith("h1 { color: teal }")
    assert "--paper" in style


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (
            "<p>\n{{ it.lesssons }}</p>",
            "look/lessons.html:2: this layout asks for something unknown: lesssons.",
        ),
        (
            "\n\n{% if %}",
            "look/lessons.html:3: this layout cannot be read: Expected an expression, got 'end of statement block'.",
        ),
        ("{{ its.years }}", "look/lessons.html:1: this layout asks for something unknown: its."),
        (
            "{{ it.years | figure }}",
            "look/lessons.html:1: this layout cannot be used: 'tuple' object has no attribute 'is_time'.",
        ),
        (
            "{{ it.years | figure(3) }}",
            "look/lessons.html:1: this layout cannot be used: "
            "figure() takes 2 positional arguments but 3 were given.",
        ),
        ("{{ it.years + 1 }}", "look/lessons.html:1: this layout cannot be used: can only concatenate tuple"),
        ('{% include "nothing.html" %}', "lessons.html: there is no layout of this name: nothing.html."),
    ],
)
def test_f78_a_fault_in_a_layout_names_its_file_and_line(tmp_path: Path, text: str, sentence: str) -> None:
    with pytest.raises(LayoutFault) as caught:
        first(site_with_look(tmp_path, "lessons.html", text))
    assert caught.value.sentence.startswith(sentence)
    assert caught.value.exit_code == 3


def test_layouts_quote_their_attributes_and_use_no_unsafe_filter() -> None:
    for path in sorted(layouts_folder().glob("*.html")):
        text = path.read_text(encoding="utf-8")
        assert not re.search(r"=\{\{|\|\s*safe|<script(?! src)| on[a-z]+=| style=", text), path.name


def test_f79_a_note_without_bed_or_date_takes_its_place(tmp_path: Path) -> None:
    garden = hand_made()
    lost = replace(garden.entries[0], id="loose", when=None, actions=(), body="Something about soil.")
    entries = (lost, *garden.entries)
    garden = replace(garden, entries=entries, entry_by_id={e.id: e for e in entries})
    book = made(site_of(garden))
    assert "Something about soil." in book[addresses.BY_DATE].get_text()
    assert "no date" in book["notes/loose.html"].get_text()


# --- weight --------------------------------------------------------------------------------------------


def heavy() -> Site:
    """Two beds with forty years of picking a crop twice a week."""
    lines = []
    for year in range(1987, 2027):
        start = date(year, 4, 1)
        lines.append(Line(day=start.isoformat(), verb="sowed", text="sowed pea 'Meteor' in Arch", crop="pea", variety="Meteor", bed="Arch"))  # fmt: skip
        lines += [
            Line(day=(start + timedelta(days=60 + n)).isoformat(), verb="picked", text=f"picked {n}00 g pea from Arch, gave away half and ate the rest", crop="pea", variety="Meteor", bed="Arch", grams=n * 100.0)
            for n in range(1, 40)
        ]  # fmt: skip
        lines.append(Line(day=f"{year}-12-01", verb="cleared", text="cleared pea from Arch", crop="pea", variety="Meteor", bed="Arch"))  # fmt: skip
    return site_of(hand_made([line for line in lines if line.day <= "2026-07-15"]))


def test_no_page_of_a_long_record_grows_too_heavy() -> None:
    site = heavy()
    renderer = Renderer(site)
    for page in site.pages:
        raw = renderer.page(page).encode("utf-8")
        assert len(raw) <= 300_000, page.address
        assert len(gzip.compress(raw)) <= 60_000, page.address
    further = [page for page in site.pages if page.address.startswith("beds/arch/")]
    assert further
    assert all(isinstance(page.values, BedPage) and page.values.chapter for page in further)


def test_rendering_gives_the_same_text_each_time() -> None:
    def printed() -> list[str]:
        site = site_of(hand_made())
        renderer = Renderer(site)
        return [renderer.page(page) for page in site.pages]

    assert printed() == printed()


def test_a_page_is_plain_values_and_can_be_compared() -> None:
    site = site_of(hand_made())
    assert all(isinstance(page, Page) and page == replace(page) for page in site.pages)


@pytest.mark.parametrize(
    ("address", "sentence"),
    [
        ("beds/index.html", "No beds yet."),
        ("crops/index.html", "No crops yet."),
        ("families.html", "No families yet. Every crop in a note will stand under its own."),
        ("lessons.html", "None yet. A line that says “next year …” in any note will stand here."),
    ],
)
def test_a_new_garden_says_what_will_stand_on_its_empty_pages(address: str, sentence: str) -> None:
    book = made(site_of(hand_made([], beds=(), with_pear=False)))
    assert [p.get_text() for p in book[address].select("main p:not(.lead)")] == [sentence]
