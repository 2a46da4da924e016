"""The data: every file other programs may read, with what each column means."""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.pages.addresses import DATA
from leafmould.pages.calendar import CALENDAR, events
from leafmould.pages.data import HARVESTS, PLANTINGS, PROBLEMS
from leafmould.pages.feed import FEED
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link, Page
from leafmould.pages.tables import tables_of


@dataclass(frozen=True, slots=True, kw_only=True)
class TableLine:
    """A table with its columns."""

    link: Link
    about: str
    columns: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DataPage:
    """The values of the page."""

    feed: Link
    calendar: Link | None  # where anything is to come
    tables: tuple[TableLine, ...]
    json: tuple[Link, ...]


def data_page(ledger: Ledger) -> Page:
    """The page that lists every file."""
    tables = tables_of(ledger)
    json = (
        PLANTINGS,
        HARVESTS,
        *((PROBLEMS,) if ledger.shows_problems else ()),
        *(table.json for table in tables if table.json),
    )
    values = DataPage(
        feed=Link(text="The newest notes", to=FEED),
        calendar=Link(text="Expected pickings and waits", to=CALENDAR) if events(ledger) else None,
        tables=tuple(
            TableLine(link=Link(text=table.file, to=table.file), about=table.about, columns=table.columns)
            for table in tables
        ),
        json=tuple(Link(text=name, to=name) for name in json),
    )
    return Page(address=DATA, template="data.html", title="The data", section="sources", values=values)
