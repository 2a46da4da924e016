"""All notes by date, newest first: a page a season, split by months where a season is long."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from leafmould.garden.model import Entry
from leafmould.pages.addresses import BY_DATE, by_date_address
from leafmould.pages.doings import note_line
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link, NoteLine, Page
from leafmould.values.wording import MONTHS, counted

MOST_NOTES = 500
"""Notes on one page; a season with more gets a page a month."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Month:
    """A month of notes, newest first, or a link to its own page."""

    name: str
    anchor: str
    notes: tuple[NoteLine, ...]
    page: Link | None


@dataclass(frozen=True, slots=True, kw_only=True)
class NotesPage:
    """The values of one list of notes."""

    heading: str
    months: tuple[Month, ...]
    seasons: tuple[Link, ...]
    back: Link | None  # from a month to its season


@dataclass(frozen=True, slots=True, kw_only=True)
class ByDatePage:
    """The values of the list of seasons with notes."""

    seasons: tuple[Link, ...]
    counts: tuple[str, ...]
    undated: tuple[NoteLine, ...]
    latest: tuple[NoteLine, ...]


def by_date_pages(ledger: Ledger) -> tuple[Page, ...]:
    """The list of seasons, then the pages of each season."""
    seasons = sorted(ledger.entries_by_year, reverse=True)
    pages = [_index(seasons, ledger)]
    for year in seasons:
        pages += _season(year, seasons, ledger)
    return tuple(pages)


def month_address(year: int, month: tuple[int, int], ledger: Ledger) -> str:
    """Where the notes of a month stand: on a page of their own, or in the list of their season."""
    name = ledger.year_name(year)
    if len(ledger.entries_by_year.get(year, ())) > MOST_NOTES:
        return by_date_address(name, month[1])
    return f"{by_date_address(name)}#{_anchor(month)}"


def _anchor(month: tuple[int, int]) -> str:
    return f"month-{month[0]}-{month[1]:02}"


def _index(seasons: list[int], ledger: Ledger) -> Page:
    dated = [e for e in ledger.garden.entries if e.when]
    values = ByDatePage(
        seasons=tuple(_link(year, ledger) for year in seasons),
        counts=tuple(counted(len(ledger.entries_by_year[year]), "note") for year in seasons),
        undated=tuple(note_line(e, ledger) for e in ledger.undated),
        latest=tuple(note_line(e, ledger) for e in dated[:-13:-1]),
    )
    return Page(address=BY_DATE, template="by-date.html", title="Notes", section="notes", values=values)


def _link(year: int, ledger: Ledger) -> Link:
    return Link(text=ledger.year_name(year), to=by_date_address(ledger.year_name(year)))


def _season(year: int, seasons: list[int], ledger: Ledger) -> list[Page]:
    name = ledger.year_name(year)
    entries = ledger.entries_by_year[year]
    months = _by_month(entries)
    is_long = len(entries) > MOST_NOTES
    links = tuple(_link(other, ledger) for other in seasons if other != year)
    whole = NotesPage(
        heading=name,
        months=tuple(_month(month, found, is_long, name, ledger) for month, found in months),
        seasons=links,
        back=None,
    )
    pages = [_page(by_date_address(name), f"Notes of {name}", whole)]
    if is_long:
        pages += [_own_page(month, found, name, year, ledger) for month, found in months]
    return pages


def _page(address: str, title: str, values: NotesPage) -> Page:
    return Page(address=address, template="notes.html", title=title, section="notes", values=values)


def _by_month(entries: Sequence[Entry]) -> list[tuple[tuple[int, int], list[Entry]]]:
    found: dict[tuple[int, int], list[Entry]] = {}
    for entry in reversed(entries):
        if entry.when:
            found.setdefault((entry.when.first.year, entry.when.first.month), []).append(entry)
    return list(found.items())


def _month(month: tuple[int, int], entries: list[Entry], is_long: bool, season: str, ledger: Ledger) -> Month:
    text = counted(len(entries), "note")
    return Month(
        name=f"{MONTHS[month[1] - 1]} {month[0]}",
        anchor=_anchor(month),
        notes=() if is_long else tuple(note_line(e, ledger, short=True) for e in entries),
        page=Link(text=text, to=by_date_address(season, month[1])) if is_long else None,
    )


def _own_page(month: tuple[int, int], entries: list[Entry], season: str, year: int, ledger: Ledger) -> Page:
    heading = f"{MONTHS[month[1] - 1]} {month[0]}"
    values = NotesPage(
        heading=heading,
        months=(_month(month, entries, False, season, ledger),),
        seasons=(),
        back=_link(year, ledger),
    )
    return _page(by_date_address(season, month[1]), f"Notes of {heading}", values)
