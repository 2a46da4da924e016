"""The gardener's own pages: each as it was written, its names linked, its pictures in their places.

Two kinds have places of their own: `walk` becomes the garden walk (`walk`), and a page that is called as a
season is opens that season's page (`season`).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from leafmould.garden.model import Entry
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Page, Plate
from leafmould.pages.plates import own_plates


@dataclass(frozen=True, slots=True, kw_only=True)
class FreePage:
    """The values of a page in the gardener's own words."""

    name: str
    body: str  # Markdown
    file: str  # where it stands in the garden folder
    in_text: Mapping[str, Plate]  # by the names the body has for them
    plates: tuple[Plate, ...]  # below the body
    is_private: bool


def free_pages(ledger: Ledger) -> Iterator[Page]:
    """Every free page that has no other place."""
    entries = {entry.id: entry for entry in ledger.garden.free_pages}
    return (
        Page(
            address=address,
            template="free.html",
            title=free_title(entries[key]),
            section="free",
            values=_free(entries[key], ledger),
        )
        for key, address in ledger.free_addresses.items()
    )


def free_title(entry: Entry) -> str:
    """Its title, or the name of its file in words."""
    words = entry.id.rpartition("/")[2].replace("-", " ").replace("_", " ").strip()
    return entry.title or words[:1].upper() + words[1:]


def _free(entry: Entry, ledger: Ledger) -> FreePage:
    in_text, plates = own_plates(entry, ledger)
    return FreePage(
        name=free_title(entry),
        body=entry.body,
        file=entry.at.file,
        in_text=in_text,
        plates=plates,
        is_private=entry.is_private,
    )
