"""A notes folder shared by somebody who means harm: nothing in it runs on a page, nothing asks another host.

What the notes say is shown as text, and is no more than text. The site is opened with its policy switched off, so that
the escaping has to hold alone; and with it, when nothing may even complain.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from itertools import groupby
from pathlib import Path
from urllib.parse import quote
from xml.etree import ElementTree

import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Browser

from attacks import FILES, HOST, TEXTS, WORDS
from browsers import chromium
from detector import Detector
from hostile_garden import hostile_site
from leafmould.render.environment import layouts_folder
from static_host import served

pytestmark = pytest.mark.browser

CANNOT_BE_FORBIDDEN = {"refresh"}
"""What no policy can keep a page from: leading on to another. Only escaping does."""


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return hostile_site(tmp_path_factory.mktemp("hostile"))


def pages(site: Path) -> list[str]:
    return sorted(page.relative_to(site).as_posix() for page in site.rglob("*.html"))


def largest_of_each_folder(site: Path) -> list[str]:
    folders = groupby(pages(site), key=lambda name: name.rpartition("/")[0])
    return [
        max(names, key=lambda name: (site / name).stat().st_size) for folder, names in folders if folder
    ] + [name for name in pages(site) if "/" not in name]


def policy() -> str:
    """The tag that says what a page may do, as the layouts have it."""
    (found,) = re.findall(r"<meta .*>", (layouts_folder() / "policy.html").read_text(encoding="utf-8"))
    return str(found)


def raw_pages(top: Path, head: str) -> None:
    """A page for each attack on which it stands as it is, as it would if nothing were escaped."""
    for number, words in enumerate(WORDS.values()):
        page = (
            f'<!doctype html><html lang="en"><head><meta charset="utf-8">{head}<title>x</title></head>'
            f'<body><p title="{words}">{words}</p><a href="{words}">x</a></body></html>'
        )
        (top / f"{number}.html").write_text(page, encoding="utf-8")


SURE = (
    "script", "script in capitals", "script with a slash", "script from elsewhere", "script in a drawing", "picture",
    "picture in quotes", "picture from elsewhere", "drawing", "drawing with a slash", "frame", "frame from elsewhere",
    "embedded", "focus", "details", "video", "sound", "body", "style that calls", "style sheet", "style attribute", "refresh",
    "out of a style", "out of a script", "out of a text box", "out of a comment", "out of an attribute", "out of a tag",
)  # fmt: skip
"""What runs in Chromium where it stands as it is."""


def what_runs(browser: Browser, top: Path, head: str, *, patience: int) -> list[str]:
    """Which of those run on a page of their own, each waited for so many twentieths of a second."""
    raw_pages(top, head)
    ran = []
    with served(top) as address:
        detector = Detector(browser, address)
        for number, name in enumerate(WORDS):
            if name in SURE:
                detector.turn_over()
                detector.page.goto(f"{address}{number}.html", wait_until="commit")
                for _ in range(patience):
                    detector.page.wait_for_timeout(50)
                    if detector.caught:
                        ran.append(name)
                        break
    return ran


def test_there_are_enough_attacks() -> None:
    assert len(WORDS) + len(TEXTS) + len(FILES) >= 160


def test_the_detector_notices_attacks_and_the_policy_alone_stops_them(
    browser: Browser, tmp_path: Path
) -> None:
    assert sorted(what_runs(browser, tmp_path, "", patience=300)) == sorted(SURE)
    assert {*what_runs(browser, tmp_path, policy(), patience=3)} <= CANNOT_BE_FORBIDDEN


def test_nothing_runs_and_nothing_lies_in_wait_even_without_the_policy(browser: Browser, site: Path) -> None:
    detector = Detector(browser, f"{site.as_uri()}/", without_policy=True)
    in_wait = [found for name in pages(site) for found in detector.look_at(quote(name))]
    assert (in_wait, detector.caught, detector.said) == ([], [], [])


@pytest.mark.parametrize("opened", ["from a folder", "from a host"])
def test_with_the_policy_no_page_complains(browser: Browser, site: Path, opened: str) -> None:
    with served(site) as address:
        detector = Detector(browser, address if opened == "from a host" else f"{site.as_uri()}/")
        in_wait = [found for name in largest_of_each_folder(site) for found in detector.look_at(quote(name))]
        assert (in_wait, detector.caught, detector.said) == ([], [], [])


def test_what_was_written_is_read_as_it_was_written(site: Path) -> None:
    """Comments are the gardener's own and never shown; signs nobody can see do not count."""
    text = BeautifulSoup(
        (site / "notes/2026/04-01-script.html").read_text(encoding="utf-8"), "html.parser"
    ).text
    assert text.count(WORDS["script"]) >= 15
    layout = BeautifulSoup(
        (site / "notes/2026/04-22-layout.html").read_text(encoding="utf-8"), "html.parser"
    ).text
    assert WORDS["layout"] in layout and str(7 * 191) not in layout


def test_no_layout_is_read_in_a_note(site: Path) -> None:
    assert [name for name in pages(site) if str(7 * 191) in (site / name).read_text(encoding="utf-8")] == []


def test_the_data_files_can_be_read_and_hold_no_end_of_script(site: Path) -> None:
    files = [path for path in sorted(site.rglob("*")) if path.suffix in (".json", ".xml", ".atom")]
    assert files
    for path in files:
        text = path.read_text(encoding="utf-8")
        assert json.loads(text) if path.suffix == ".json" else ElementTree.fromstring(text) is not None
        assert "<!ENTITY" not in text or path.suffix == ".json"


def test_pictures_are_made_anew_and_drawings_are_none(site: Path) -> None:
    problems = json.loads((site / "data/problems.json").read_text(encoding="utf-8"))["problems"]
    told = {problem["message"] for problem in problems}
    assert {
        '"evil.svg" is an SVG drawing, which is not accepted. Save it as PNG or JPEG.',
        '"evil.jpg" is an SVG drawing, which is not accepted. Save it as PNG or JPEG.',
        '"evil.gif" is no picture that can be read. JPEG, PNG, WebP, TIFF, GIF, BMP and AVIF are.',
    } <= told
    assert [path.name for path in site.rglob("*.svg") if path.parent.name != "look"] == []
    assert not (site / "photos").exists()


def test_no_file_of_the_site_names_another_host_in_what_a_browser_fetches(site: Path) -> None:
    for name in pages(site):
        tree = BeautifulSoup((site / name).read_text(encoding="utf-8"), "html.parser")
        fetched = [
            str(tag.get(key))
            for tag in tree.find_all(True)
            for key in ("src", "srcset", "data", "poster")
            if tag.get(key)
        ]
        fetched += [str(tag["href"]) for tag in tree.find_all("link")]
        assert [address for address in fetched if HOST in address or ":" in address] == [], name
