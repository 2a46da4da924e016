"""Every page of the example through the Nu HTML checker: no error, no warning. One run for all pages.

Wants java, and the checker as npm has it: npm install --prefix tests/outside. CI installs both.
"""

from __future__ import annotations

import json
import shutil
import subprocess
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from sites import ON, Book, site_of_notes

CHECKER = Path(__file__).parent / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"


@pytest.fixture(scope="module")
def java() -> str:
    found = shutil.which("java")
    if not found or not CHECKER.is_file():
        pytest.skip("the HTML checker wants java and: npm install --prefix tests/outside")
    return found


def faults(java: str, *what: Path) -> list[str]:
    """What the checker says of pages and styles; a fault in silence would be a checker that did not run."""
    options = ["--format", "json", "--exit-zero-always"]
    ran = subprocess.run(
        [java, "-jar", str(CHECKER), *options, *map(str, what)], capture_output=True, text=True, check=True
    )
    messages: list[dict[str, Any]] = json.loads(ran.stderr)["messages"]
    told = [f"{Path(m.get('url', '')).name}: {m['message']}" for m in messages]
    return sorted(told)


def pages(book: Book) -> list[Path]:
    return [book.folder / page for page in book.pages]


def test_the_checker_finds_a_fault_where_there_is_one(java: str, tmp_path: Path) -> None:
    page = tmp_path / "faulty.html"
    page.write_text("<!doctype html><html lang=en><title>x</title><p id=a><p id=a>", encoding="utf-8")
    assert "faulty.html: Duplicate ID “a”." in faults(java, page)


def test_no_page_of_the_example_has_a_fault(java: str, household_book: Book, public_book: Book) -> None:
    found = faults(java, *pages(household_book), *pages(public_book))
    assert Counter(words.split(": ", 1)[1] for words in found) == {}, found[:5]


TYPED = {
    "2025/02-29.md": "- picked 1 kg kale\n",
    '2026/04-12 <odd> & "name".md': """\
        ---
        date: 2026-04-12
        bed: <b>Arch</b>
        crop: pea
        variety: Sun & "Co"
        did: sowed
        tags: [<i>x</i>, "a & b"]
        ---
        # A heading <script>

        ### Another, two levels down

        | bed | crop |
        |-----|------|
        | A | pea |

        Lost *half* to `slugs`; see [this](https://example.org/?a=1&b=2) and ![it](no such.jpg).

        - one
          - two

        > said
        """,
    "loose.txt": "2026-05-01\nsowed nothing much\npicked two trays of strawberries from Top & tail, gave away half\n",
    "2026/06-01-undated.md": "Only words, and `code`.\n\n***\n\n1. first\n2. second\n",
}


def test_untidy_notes_make_no_faulty_page(java: str, tmp_path: Path) -> None:
    site = site_of_notes(tmp_path, 'garden: <Odd> & "so"\n', TYPED, on=ON, household=True)
    assert faults(java, *pages(Book(site))) == []
