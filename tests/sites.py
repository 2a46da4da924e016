"""Whole sites for tests that look from outside: built as anybody builds them, read as files in a folder.

Nothing here asks the program what a page should hold; links are followed as a browser would follow them.
"""

from __future__ import annotations

import posixpath
import re
import shutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from pathlib import Path
from textwrap import dedent
from urllib.parse import unquote

from bs4 import BeautifulSoup, Tag

from leafmould.build import build

CONTENT = Path(__file__).resolve().parents[1] / "content"
ON = date(2026, 7, 15)
"""The day the example garden speaks for."""

FIRST_PAGE = "index.html"


@dataclass(frozen=True)
class Lead:
    """A link as written on a page, and where it leads: a file seen from the top, and an id there or ""."""

    page: str
    tag: Tag
    to: str
    spot: str

    def __str__(self) -> str:
        return f"{self.page}: {self.tag.get_text(' ', strip=True)!r} -> {self.to}#{self.spot}"


class Book:
    """A site in a folder, every page parsed."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._kept: dict[str, tuple[Lead, ...]] = {}
        self.files = {p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file()}
        self.pages = {
            name: BeautifulSoup((folder / name).read_text(encoding="utf-8"), "html.parser")
            for name in sorted(self.files)
            if name.endswith(".html")
        }

    @cached_property
    def ids(self) -> dict[str, dict[str, Tag]]:
        """Every element with an id, by page and id."""
        return {
            name: {str(tag["id"]): tag for tag in tree.find_all(id=True)} for name, tree in self.pages.items()
        }

    @cached_property
    def kinds(self) -> dict[str, str]:
        """A page of every kind: the one with most on it, by its folder and what its headings are called."""
        found: dict[str, str] = {}
        for name, tree in self.pages.items():
            kind = f"{posixpath.dirname(name).split('/')[0]}/{'index' if name.endswith('index.html') else ''}"
            kind = name if "/" not in name else kind
            best = found.get(kind)
            if best is None or len(tree.find_all(True)) > len(self.pages[best].find_all(True)):
                found[kind] = name
        return found

    def lead(self, page: str, tag: Tag, address: str) -> Lead | None:
        """Where an address on a page leads inside the site; None if it leaves it."""
        if re.match(r"[a-z][a-z0-9+.-]*:|//", address):
            return None
        path, _, spot = address.partition("#")
        here = posixpath.dirname(page)
        to = posixpath.normpath(posixpath.join(here, unquote(path))) if path else page
        return Lead(page, tag, to, unquote(spot))

    def leads(self, page: str, within: Tag | None = None) -> tuple[Lead, ...]:
        """Every link, picture, style and script of a page or a piece of it, as far as it stays in the site."""
        if within is not None:
            return tuple(self._leads(page, within))
        if page not in self._kept:
            self._kept[page] = tuple(self._leads(page, self.pages[page]))
        return self._kept[page]

    def _leads(self, page: str, within: Tag) -> Iterator[Lead]:
        for tag in within.find_all(["a", "link", "script", "img", "source", "use"]):
            for name in ("href", "src", "srcset"):
                for address in filter(None, re.split(r"\s+[\d.]+[wx](?:,\s*|$)", str(tag.get(name, "")))):
                    if found := self.lead(page, tag, address):
                        yield found

    def reached(self, links: int) -> tuple[set[str], set[tuple[str, str]]]:
        """Pages and (page, id) spots that so many links lead to from the first page."""
        pages, spots = {FIRST_PAGE}, set[tuple[str, str]]()
        for _ in range(links):
            for page in sorted(pages):
                spots |= {(lead.to, lead.spot) for lead in self.leads(page)}
            pages |= {to for to, _ in spots if to in self.pages}
        return pages, spots


def example(top: Path, *, household: bool, on: date = ON) -> Path:
    """The example garden, copied without its cache and built into a folder."""
    garden = top / "content"
    shutil.copytree(CONTENT, garden, ignore=shutil.ignore_patterns(".leafmould", "site"))
    build(garden, to=top / "site", on=on, household=household)
    return top / "site"


def site_of_notes(
    top: Path, garden_yaml: str, notes: Mapping[str, str], *, on: date, household: bool = False
) -> Path:
    """The site of a garden as typed: garden.yaml, and the texts of notes by their path under notes/."""
    garden = top / "garden"
    shutil.rmtree(garden, ignore_errors=True)
    (garden / "notes").mkdir(parents=True)
    (garden / "garden.yaml").write_text(dedent(garden_yaml), encoding="utf-8")
    for name, text in notes.items():
        path = garden / "notes" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(dedent(text), encoding="utf-8")
    build(garden, to=top / "site", on=on, household=household)
    return top / "site"
