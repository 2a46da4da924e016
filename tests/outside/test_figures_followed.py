"""Every figure followed home: from link to link until it ends in a note or in a published source.

And the other way round: where one picking in the notes is doubled, exactly the sums that lead back to it change.
"""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from bs4 import Tag

from leafmould.build import build
from sites import CONTENT, ON, Book, Lead, site_of_notes

FIGURES = ["data", "time"]
BEFORE = "From the table of the years before the notes"
WEIGHT = re.compile(r"^(about\s)?[\d.,]+\sk?g$")


def figures(book: Book, page: str, within: Tag | None = None) -> list[Tag]:
    """Every number and date of a page, but for the day it speaks for."""
    top = within or book.pages[page].find("main")
    assert isinstance(top, Tag)
    return list(top.find_all(FIGURES))


def home_of(book: Book, page: str, figure: Tag) -> Lead | None:
    """Where a figure's own link leads: round it, or inside it."""
    link = figure if figure.name == "a" else figure.find("a") or figure.find_parent("a")
    return book.lead(page, link, str(link["href"])) if isinstance(link, Tag) else None


def place(book: Book, lead: Lead) -> Tag:
    """What a link shows: the element with its id, the section under a heading, or the whole text."""
    if not lead.spot:
        top = book.pages[lead.to].find("main")
        assert isinstance(top, Tag)
        return top
    found = book.ids[lead.to][lead.spot]
    section = found.find_parent("section") if found.name in ("h1", "h2", "h3") else None
    return section or found


def next_steps(book: Book, lead: Lead) -> list[Lead]:
    """Where a reader goes on from there: along its figures, and from a row of a table to its plantings."""
    there = place(book, lead)
    found = [home_of(book, lead.to, figure) for figure in figures(book, lead.to, there)]
    if there.name == "tr":
        found += [one for one in book.leads(lead.to, there) if one.to.startswith("beds/") and one.spot]
    return [one for one in found if one is not None]


def is_home(lead: Lead) -> bool:
    return lead.to.startswith("notes/") or (lead.to == "sources.html" and bool(lead.spot))


def homes(book: Book, lead: Lead, kept: dict[tuple[str, str], set[str]]) -> set[str]:
    """The notes and sources that can be reached from where a figure leads."""
    key = (lead.to, lead.spot)
    if is_home(lead):
        return {lead.to}
    if key not in kept:
        kept[key] = set()  # met again on the way: nothing new behind it
        seen, waiting, found = {key}, [lead], set[str]()
        while waiting:
            for step in next_steps(book, waiting.pop()):
                if is_home(step):
                    found.add(step.to)
                elif (step.to, step.spot) not in seen:
                    seen.add((step.to, step.spot))
                    waiting.append(step)
        kept[key] = found
    return kept[key]


def test_every_figure_can_be_followed_home(book: Book) -> None:
    """A note's own page is home already, and so is the gardener's table of the years before the notes, which
    is named where it is all there is; a gap that reaches until today ends on no note."""
    lost, checked = [], 0
    kept: dict[tuple[str, str], set[str]] = {}
    for page in book.pages:
        for figure in figures(book, page):
            if page.startswith("notes/") or figure.find_parent(class_="gaps"):
                continue
            lead = home_of(book, page, figure)
            checked += 1
            if lead is None or not (homes(book, lead, kept) or BEFORE in place(book, lead).get_text()):
                lost.append(f"{page}: {figure}")
    assert lost == []
    assert checked > 2000


GARDEN = """
garden: Tansy Hill
dates: day first
beds: [Arch, Long border, Top bed]
"""

LIVES = """
2025-04-02 sowed pea 'Meteor' in Arch
2025-04-03 sowed beetroot in Top bed
2025-06-14 picked 400 g pea 'Meteor' from Arch
2025-06-20 picked 1.1 kg pea 'Meteor' from Arch
2025-07-01 cleared pea from Arch
2025-08-01 picked 900 g beetroot from Top bed
2025-08-21 picked 350 g beetroot from Top bed
2025-09-01 cleared beetroot from Top bed
2026-03-20 sowed pea 'Meteor' in Long border
2026-04-12 sowed beetroot 'Boltardy' in Arch
2026-04-13 sowed radish in Top bed
2026-05-20 picked 20 radish from Top bed
2026-05-24 picked 150 g radish from Top bed
2026-06-09 picked 700 g pea 'Meteor' from Long border
2026-06-16 picked 1.2 kg pea 'Meteor' from Long border, gave away 400 g
2026-06-28 picked 250 g peas from Long border
2026-07-02 picked 600 g beetroot 'Boltardy' from Arch
2026-07-09 picked 800 g beetroot 'Boltardy' from Arch
"""
NOTES = {f"{line[:10]}.md": f"- {line[11:]}\n" for line in LIVES.strip().splitlines()}
PICKINGS = sorted(name for name, text in NOTES.items() if re.search(r"picked [\d.]+ k?g", text))


def doubled(text: str) -> str:
    """A note with its picking doubled."""
    return re.sub(r"(?<=picked )([\d.]+)(?= k?g)", lambda found: f"{float(found[1]) * 2:g}", text, count=1)


Sums = dict[tuple[str, int], tuple[str, Tag]]


def sums(book: Book) -> Sums:
    """Each weight in the book by its page and place there, with its value."""
    return {
        (page, place): (str(figure["value"]), figure)
        for page in book.pages
        if not page.startswith("notes/")
        for place, figure in enumerate(figures(book, page))
        if figure.name == "data" and WEIGHT.match(figure.get_text(strip=True))
    }


def values(book: Book) -> list[tuple[str, str]]:
    return [
        (page, str(figure.get("value")))
        for page in book.pages
        if not page.startswith("notes/")
        for figure in figures(book, page)
        if figure.name == "data"
    ]


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return Book(site_of_notes(tmp_path_factory.mktemp("plain"), GARDEN, NOTES, on=ON))


@pytest.mark.parametrize("note", PICKINGS)
def test_doubling_a_picking_changes_just_the_sums_that_lead_back_to_it(
    plain: Book, tmp_path: Path, note: str
) -> None:
    other = Book(site_of_notes(tmp_path, GARDEN, NOTES | {note: doubled(NOTES[note])}, on=ON))
    before, after = sums(plain), sums(other)
    assert before.keys() == after.keys()
    changed = {where for where in before if before[where][0] != after[where][0]}
    kept: dict[tuple[str, str], set[str]] = {}
    page = f"notes/{note.removesuffix('.md')}.html"
    leading = set()
    for where, (_, figure) in before.items():
        lead = home_of(plain, where[0], figure)
        if lead is not None and page in homes(plain, lead, kept):
            leading.add(where)
    assert changed == leading
    assert changed
    others = [(old, new) for old, new in zip(values(plain), values(other), strict=True) if old != new]
    assert len(others) == len(changed)  # no other figure moved: no count, no number of days


EXAMPLES = ["2025/09-20-counting-pears.md", "2025/08-16-gluts.md", "2026/07-11-picking.md"]


@pytest.mark.parametrize("note", EXAMPLES)
def test_what_a_doubled_picking_changes_in_the_example_leads_back_to_it(
    public_book: Book, tmp_path: Path, note: str
) -> None:
    """Sums over several seasons of one planting lead to all of them, so here the changed ones are among them."""
    garden = tmp_path / "content"
    shutil.copytree(CONTENT, garden, ignore=shutil.ignore_patterns(".leafmould", "site"))
    path = garden / "notes" / note
    text = path.read_text(encoding="utf-8")
    assert doubled(text) != text
    path.write_text(doubled(text), encoding="utf-8")
    build(garden, to=tmp_path / "site", on=ON, household=False)
    before, after = sums(public_book), sums(Book(tmp_path / "site"))
    changed = [where for where in before if before[where][0] != after[where][0]]
    assert len(changed) >= 3
    kept: dict[tuple[str, str], set[str]] = {}
    page = f"notes/{note.removesuffix('.md')}.html"
    for where in changed:
        lead = home_of(public_book, where[0], before[where][1])
        assert lead is not None
        assert page in homes(public_book, lead, kept), str(lead)
