"""A public copy speaks to strangers: it names no file of the gardener's, and tells nobody what to write into one."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path
from textwrap import dedent

import pytest

from leafmould.build import build
from sites import Book, example

OURS = re.compile(r"garden\.yaml|crops\.yaml|records/\S+|\bbuild again\b|\bwrite\b", re.IGNORECASE)
"""Words for whoever keeps the notes."""

SETTINGS = """
    garden: Tansy Hill
    frost: {last: 22 May, first: 25 September}
    beds: [Arch]
"""
CROPS = """
    beetroot: {varieties: {Boltardy: {days: 60}}}
    leek: {spacing: 15 cm, row spacing: 30 cm}
"""
NOTES = """
    # 2026-04-12
    - sowed beetroot 'Boltardy' in Arch
    - sowed leek in Arch
"""
TABLES = {
    "seeds": "crop,variety,year\nbeetroot,Boltardy,2025\n",
    "beforehand": "year,bed,crop\n2021,Arch,onion\n",
    "weather": "day,low,high\n2026-05-01,4,15\n2026-05-02,5,16\n",
    "normals": "month,low,high\n" + "".join(f"{month},{month},{month + 9}\n" for month in range(1, 13)),
}


def site_with(folder: Path, files: dict[str, str], *, household: bool) -> Book:
    for name, text in files.items():
        path = folder / "garden" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(dedent(text).lstrip("\n"), "utf-8")
    build(folder / "garden", to=folder / "site", on=date(2026, 7, 15), household=household)
    return Book(folder / "site")


def told(book: Book) -> set[tuple[str, str]]:
    """What pages say to whoever keeps the notes."""
    return {
        (name, found)
        for name, tree in book.pages.items()
        if tree.main
        for found in OURS.findall(tree.main.get_text())
    }


FULL = {
    "garden.yaml": SETTINGS,
    "crops.yaml": CROPS,
    "notes/2026-04-12.md": NOTES,
    **{f"records/{name}.csv": text for name, text in TABLES.items()},
}
EMPTY = {"garden.yaml": "garden: Tansy Hill\n"}
WITHOUT_FROST = {"garden.yaml": "garden: Tansy Hill\nbeds: [Arch]\n", "notes/2026-04-12.md": NOTES}


@pytest.mark.parametrize("files", [FULL, EMPTY, WITHOUT_FROST])
def test_a_stranger_is_told_of_no_file_of_the_gardeners(tmp_path: Path, files: dict[str, str]) -> None:
    assert told(site_with(tmp_path, files, household=False)) == set()


def test_the_household_is_told_where_things_are_written_down(tmp_path: Path) -> None:
    assert {found for _, found in told(site_with(tmp_path, FULL, household=True))} >= {
        "garden.yaml",
        "crops.yaml",
        "records/seeds.csv",
        "records/beforehand.csv.",
        "records/weather.csv",
        "records/normals.csv.",
    }
    assert ("index.html", "build again") in told(site_with(tmp_path / "empty", EMPTY, household=True))


def test_the_examples_public_pages_tell_of_none_but_in_its_own_words(tmp_path: Path) -> None:
    """What the gardener wrote on pages and in notes stays as it is."""
    book = Book(example(tmp_path, household=False))
    found = {name for name, _ in told(book) if not name.startswith(("notes/", "pages/"))}
    assert found == set()
