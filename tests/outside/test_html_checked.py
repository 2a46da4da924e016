"""Every page of the example through the Nu HTML checker: no error, no warning. One run for all pages.

Pages are fetched as from a host, because only then does the checker know what a page's own policy lets it load.

Wants java, and the checker as npm has it: npm install --prefix tests/outside. CI installs both.
"""

from __future__ import annotations

import json
import shutil
import subprocess
from collections import Counter
from contextlib import ExitStack
from pathlib import Path
from typing import Any
from urllib.parse import quote

import pytest

from browsers import chromium
from sites import ON, site_of_notes
from static_host import served

CHECKER = Path(__file__).parent / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"


@pytest.fixture(scope="module")
def java() -> str:
    found = shutil.which("java")
    if not found or not CHECKER.is_file():
        pytest.skip("the HTML checker wants java and: npm install --prefix tests/outside")
    return found


def told(java: str, *what: str) -> list[str]:
    """What the checker says of these addresses; a fault in silence would be a checker that did not run."""
    may_fetch = [
        f"-Dnu.validator.servlet.{key}" for key in ("allow-forbidden-hosts=true", "allowed-address-type=all")
    ]
    options = ["--format", "json", "--exit-zero-always", "--also-check-css", "--also-check-svg"]
    ran = subprocess.run(
        [java, *may_fetch, "-jar", str(CHECKER), *options, *what], capture_output=True, text=True, check=True
    )
    messages: list[dict[str, Any]] = json.loads(ran.stderr)["messages"]
    return sorted(f"{Path(m.get('url', '')).name}: {m['message']}" for m in messages)


def faults(java: str, *folders: Path) -> list[str]:
    """What the checker says, in one run, of all pages in some folders."""
    with ExitStack() as hosts:
        addresses = [
            host + quote(page.relative_to(folder).as_posix())
            for folder, host in [(folder, hosts.enter_context(served(folder))) for folder in folders]
            for page in sorted(folder.rglob("*.html"))
        ]
        return told(java, *addresses)


def test_the_checker_finds_a_fault_where_there_is_one(java: str, tmp_path: Path) -> None:
    page = tmp_path / "faulty.html"
    page.write_text("<!doctype html><html lang=en><title>x</title><p id=a><p id=a>", encoding="utf-8")
    assert "faulty.html: Duplicate ID “a”." in faults(java, tmp_path)


def test_no_page_of_the_example_has_a_fault(java: str, household_folder: Path, public_folder: Path) -> None:
    found = faults(java, household_folder, public_folder)
    assert Counter(words.split(": ", 1)[1] for words in found) == {}, found[:5]


@pytest.mark.browser
def test_a_page_with_its_search_open_has_no_fault(java: str, household_folder: Path, tmp_path: Path) -> None:
    """What the script makes of a page, written down as it stands in the browser."""
    with chromium() as browser:
        page = browser.new_page()
        for name in ("index.html", "find.html"):
            page.goto((household_folder / name).as_uri())
            page.keyboard.press("/")
            page.locator(".find .choices select").first.wait_for()
            page.get_by_role("searchbox").fill("tomatoes")
            page.locator(".find .found li").first.wait_for()
            made = page.evaluate("document.documentElement.outerHTML")
            here = made.replace(f"{household_folder.as_uri()}/", "")
            (tmp_path / name).write_text(f"<!doctype html>\n{here}\n", encoding="utf-8")
    shutil.copytree(household_folder / "look", tmp_path / "look")
    assert faults(java, tmp_path) == []


def test_the_checker_knows_what_a_page_may_load(java: str, tmp_path: Path) -> None:
    page = (
        "<!doctype html><html lang=en><meta http-equiv=content-security-policy content=\"script-src 'none'\">"
        "<title>x</title><script src=x.js></script>"
    )
    (tmp_path / "faulty.html").write_text(page, encoding="utf-8")
    assert [words for words in faults(java, tmp_path) if "external script “x.js” blocked" in words]


OF_DRAWINGS = ("vector-effect", "paint-order", "x", "y", "cx", "cy", "r", "rx", "ry")
"""Properties of drawings (SVG 2, 8.5, 7.3 and 13.8) that the checker of styles has no table of."""


def test_style_and_icon_have_no_fault(java: str, household_folder: Path, tmp_path: Path) -> None:
    (tmp_path / "faulty.css").write_text("a { color: nosuch }", encoding="utf-8")
    files = [household_folder / "look" / "leafmould.css", household_folder / "look" / "leafmould.svg"]
    known = {f"CSS: “{name}”: Property “{name}” doesn't exist." for name in OF_DRAWINGS}
    found = told(java, str(tmp_path / "faulty.css"), *map(str, files))
    assert [words for words in found if words.partition(": ")[2] not in known] == [
        "faulty.css: CSS: “color”: “nosuch” is not a “color” value."
    ]


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
    assert faults(java, site) == []
