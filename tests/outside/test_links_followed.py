"""The example's two sites, link by link, read with Beautiful Soup: nothing dead, and the short ways kept."""

from __future__ import annotations

import json
import re
from typing import Any

from sites import FIRST_PAGE, Book


def plantings(book: Book) -> list[dict[str, Any]]:
    """What other programs are told of the plantings."""
    text = (book.folder / "data" / "plantings.json").read_text(encoding="utf-8")
    found: list[dict[str, Any]] = json.loads(text)["plantings"]
    return found


def is_page_of(page: str, note: str) -> bool:
    """Whether a page is that of a note's file, or of a further dated part of it."""
    name = note.rsplit(".", 1)[0].replace(" ", "-")
    return re.fullmatch(rf"{re.escape(name)}(\.\d+)?\.html", page) is not None


def test_no_link_is_dead_and_every_anchor_is_there(book: Book) -> None:
    dead = [
        str(lead)
        for page in book.pages
        for lead in book.leads(page)
        if lead.to not in book.files or (lead.spot and lead.spot not in book.ids.get(lead.to, {}))
    ]
    assert dead == []


def test_every_link_says_where_it_leads(book: Book) -> None:
    silent = [
        f"{page}: {link}"
        for page, tree in book.pages.items()
        for link in tree.find_all("a")
        if not link.get("href")
        or not (
            link.get_text(strip=True)
            or link.find("img", alt=True)
            or link.select_one("svg[role=img][aria-label]")
        )
    ]
    assert silent == []


def test_every_page_is_reached_from_the_first_one(book: Book) -> None:
    reached, waiting = {FIRST_PAGE}, [FIRST_PAGE]
    while waiting:
        page = waiting.pop()
        new = {lead.to for lead in book.leads(page)} & book.pages.keys() - reached
        reached |= new
        waiting += sorted(new)
    assert sorted(book.pages.keys() - reached) == []


def test_every_planting_is_two_links_from_the_first_page(book: Book) -> None:
    _, spots = book.reached(2)
    ids = {spot for _, spot in spots}
    assert [p["id"] for p in plantings(book) if p["id"] not in ids] == []


def test_every_bed_and_year_is_two_links_from_the_first_page(book: Book) -> None:
    """The table is one link away; each of its cells leads to what stood there, or says that nothing is known."""
    assert "years.html" in {lead.to for lead in book.leads(FIRST_PAGE)}
    tree = book.pages["years.html"]
    heads = [cell.get_text(strip=True) for cell in tree.select("thead th")[1:]]
    years = [head for head in heads if not head.startswith("before ")]  # trees alone, folded into one column
    rows = tree.select("tbody tr")
    beds = {page for page in book.pages if page.startswith("beds/") and page.count("/") == 1}
    assert len(rows) == len(beds - {"beds/index.html"})
    assert len(years) >= 4
    for row in rows:
        cells = row.select("td[data-year]:not([data-year^=before])")
        assert [cell["data-year"] for cell in cells] == years
        bare = [cell for cell in cells if not book.leads("years.html", cell)]
        assert all(cell.select(".silence") for cell in bare), row


def test_what_stood_in_a_bed_in_a_year_is_in_its_cell(book: Book) -> None:
    """From the data for other programs: every planting with a start of its own stands under that year."""
    tree = book.pages["years.html"]
    for planting in plantings(book):
        begun = planting["planted_on"] or planting["sown_on"] or planting["found_on"]
        if not begun:
            continue
        cells = tree.select(f"td[data-year='{begun[:4]}']")
        shown = {lead.spot for cell in cells for lead in book.leads("years.html", cell)}
        assert planting["id"] in shown


def test_every_note_is_reached_from_its_bed_and_its_crops(book: Book) -> None:
    """A planting's notes stand in its section on the bed's page, and on its crop's page or one link further."""
    sections = {spot: page for page, ids in book.ids.items() for spot in ids if page.startswith("beds/")}
    crop_pages = {
        tree.select_one("h1").get_text(strip=True).casefold(): page
        for page, tree in book.pages.items()
        if page.startswith("crops/")
    }
    checked = 0
    for planting in plantings(book):
        page = sections[planting["id"]]
        section = book.ids[page][planting["id"]]
        in_section = {lead.to for lead in book.leads(page, section)}
        for note in planting["notes"]:
            assert any(is_page_of(page, note) for page in in_section), (planting["id"], note)
            checked += 1
        for crop in planting["crops"]:
            from_crop = {(lead.to, lead.spot) for lead in book.leads(crop_pages[crop.casefold()])}
            assert (page, planting["id"]) in from_crop, (crop, planting["id"])
    assert checked > 200


def test_every_note_is_linked_from_the_pages_of_what_it_is_about(book: Book) -> None:
    """Each bed and crop a note says it is about, beside its text, leads back to it by one link or two."""
    for page, tree in book.pages.items():
        beside = tree.select_one("main aside.margin")
        if not page.startswith("notes/") or beside is None:
            continue
        named = {lead.to for lead in book.leads(page, beside) if lead.to.startswith(("beds/", "crops/"))}
        for there in sorted(named):
            near = {lead.to for lead in book.leads(there)}
            far = {lead.to for step in near if step in book.pages for lead in book.leads(step)}
            assert page in near or page in far, f"{there} does not lead back to {page}"
