"""The pages every garden has: what each is called, which of them stand together, and which this build lacks.

The masthead leads to most; what has no word there stands in a line with its neighbours, at the head of each of them.
"""

from __future__ import annotations

from collections.abc import Iterator

from leafmould.pages import addresses
from leafmould.pages.ledger import Ledger
from leafmould.pages.map import has_map
from leafmould.pages.page import Link
from leafmould.pages.weather import has_weather

OURS = (
    Link(text="Now", to=addresses.NOW),
    Link(text="Beds", to=addresses.BEDS),
    Link(text="Map of the garden", to=addresses.MAP),
    Link(text="Beds by years", to=addresses.BED_YEARS),
    Link(text="Crops", to=addresses.CROPS),
    Link(text="When to sow", to=addresses.WHEN_TO_SOW),
    Link(text="Seed tin", to=addresses.SEED_TIN),
    Link(text="How expectations turned out", to=addresses.TURNED_OUT),
    Link(text="Families", to=addresses.FAMILIES),
    Link(text="Rotation", to=addresses.ROTATION),
    Link(text="Seasons", to=addresses.SEASONS),
    Link(text="Weather and warmth", to=addresses.WEATHER),
    Link(text="Notes by date", to=addresses.BY_DATE),
    Link(text="Lessons", to=addresses.LESSONS),
    Link(text="Walk", to=addresses.WALK),
    Link(text="Problems", to=addresses.PROBLEMS),
    Link(text="Where the figures come from", to=addresses.SOURCES),
    Link(text="The data", to=addresses.DATA),
)
"""In the order of the masthead. The script that searches holds the same list."""

TOGETHER = (
    ("Crops", (addresses.CROPS, addresses.WHEN_TO_SOW, addresses.SEED_TIN, addresses.TURNED_OUT)),
    ("Families", (addresses.FAMILIES, addresses.ROTATION, addresses.BED_YEARS)),
    ("Seasons", (addresses.SEASONS, addresses.WEATHER, addresses.BY_DATE)),
)
"""Pages of one kind."""

FIRST = {
    addresses.CROPS: "A to Z",
    addresses.FAMILIES: "Family by family",
    addresses.SEASONS: "Season by season",
}
"""What a page is called among its own kind, where its name is that of the kind."""


def is_there(address: str, ledger: Ledger) -> bool:
    """Whether this build has one of these pages."""
    if address == addresses.MAP:
        return has_map(ledger)
    if address == addresses.SEED_TIN:
        return bool(ledger.reckoned.tin)
    if address == addresses.WEATHER:
        return has_weather(ledger)
    if address == addresses.WALK:
        return ledger.walk is not None
    return address != addresses.PROBLEMS or ledger.shows_problems


def ours(ledger: Ledger) -> Iterator[Link]:
    """Those of these pages that this build has."""
    return (page for page in OURS if is_there(page.to, ledger))


def near(address: str, ledger: Ledger) -> tuple[str, tuple[Link, ...]]:
    """The kind of a page, and the pages of that kind; the page itself leads nowhere. Empty for all others."""
    names = {page.to: FIRST.get(page.to, page.text) for page in ours(ledger)}
    for kind, pages in TOGETHER:
        if address in pages:
            links = (Link(text=names[to], to="" if to == address else to) for to in pages if to in names)
            return kind, tuple(links)
    return "", ()
