"""When to sow: this garden's frosts and dark weeks, and for each of its crops the windows they leave.

The windows come reckoned, for the spring to come; they are shown as days of the month, which hold for any year.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.garden.frosts import NotedFrost
from leafmould.garden.model import Crop
from leafmould.pages.addresses import SOURCES, WEATHER, WHEN_TO_SOW, source_anchor
from leafmould.pages.figures import day_text
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Figure, Link, Page
from leafmould.pages.still_to_sow import StillWay, still_to_sow
from leafmould.pages.weather import has_weather
from leafmould.reckon.season_here import FrostLine
from leafmould.reckon.windows import IN_AUTUMN, TOO_COLD, Window
from leafmould.values.when import on
from leafmould.values.wording import day_range

HEADINGS = {
    "start indoors": "Start indoors",
    "sow or set out": "First sow or set out",
    "last useful sowing": "Last useful sowing",
    "last setting out": "Last useful setting out",
    "in autumn, for next year": "In autumn, for next year",
}
TABLE = tuple(HEADINGS)[:-1]
"""What the table has a column for; few crops go in around the first frost."""
OUTSIDE = frozenset({"sow or set out"})
FIRST = {"sow": "First sow outside", "set out": "First set out", "plant": "First plant"}
"""What the first days outside are called on the page of a crop, by how it is begun."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SowingTime:
    """One window of a crop, with its reason."""

    heading: str
    words: str
    why: str
    sources: tuple[Link, ...]
    covered: tuple[str, ...] = ()  # the same under each cover


@dataclass(frozen=True, slots=True, kw_only=True)
class Frost:
    """One turn of the season, with the notes that tell of it."""

    heading: str
    words: str
    noted: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SowingRow:
    """A crop with its windows; one it has not is empty."""

    crop: Link
    words: tuple[str, ...]
    covered: tuple[tuple[str, ...], ...]  # under each of the words, the same under each cover


@dataclass(frozen=True, slots=True, kw_only=True)
class WhenToSowPage:
    """The values of the page."""

    this_year: str
    still: tuple[StillWay, ...]  # what may still be begun in it
    year: str
    frosts: tuple[Frost, ...]
    dark: str  # the days under ten hours, to the week
    headings: tuple[str, ...]
    rows: tuple[SowingRow, ...]
    autumn: tuple[SowingRow, ...]  # what goes in around the first frost, for the year after
    too_cold: tuple[Link, ...]  # what would, if winters were milder
    weather: Link | None  # where the garden has a table of it
    cover: str  # what covers gain
    has_frost: bool  # garden.yaml says when the last frost is


def when_to_sow_page(ledger: Ledger) -> Page:
    """Frosts, dark weeks and the windows of every crop of the garden that has any, by name."""
    crops = sorted(ledger.garden.crops.values(), key=lambda c: (c.name.casefold(), c.key))
    rows = [(crop, ledger.reckoned.windows.get(crop.key, ())) for crop in crops]
    frosts = ledger.reckoned.frosts
    autumn = [(crop, window) for crop, found in rows for window in found if window.kind == IN_AUTUMN]
    values = WhenToSowPage(
        this_year=ledger.year_name(ledger.this_year),
        still=still_to_sow(ledger),
        year=ledger.year_name(ledger.this_year + 1),
        frosts=tuple(_frost(line, ledger) for line in frosts),
        dark=_dark(ledger),
        headings=tuple(HEADINGS[kind] for kind in TABLE),
        rows=tuple(_row(crop, found, TABLE, ledger) for crop, found in rows if found),
        autumn=tuple(_row(c, (w,), (IN_AUTUMN,), ledger) for c, w in autumn if w.words != TOO_COLD),
        too_cold=tuple(_when_link(crop, ledger) for crop, w in autumn if w.words == TOO_COLD),
        weather=Link(text="Weather and warmth", to=WEATHER) if has_weather(ledger) else None,
        cover=ledger.reckoned.cover,
        has_frost=any(line.average for line in frosts),
    )
    return Page(
        address=WHEN_TO_SOW, template="when-to-sow.html", title="When to sow", section="crops", values=values
    )


def sowing_times(crop: Crop, ledger: Ledger) -> tuple[SowingTime, ...]:
    """The windows of one crop."""
    return tuple(_time(window, ledger) for window in ledger.reckoned.windows.get(crop.key, ()))


def _time(window: Window, ledger: Ledger) -> SowingTime:
    known = [ledger.reckoned.sources[key] for key in window.sources]
    return SowingTime(
        heading=FIRST.get(window.how, HEADINGS[window.kind])
        if window.kind in OUTSIDE
        else HEADINGS[window.kind],
        words=window.words if window.kind in OUTSIDE else _words(window),
        why=window.why,
        sources=tuple(Link(text=s.publisher, to=f"{SOURCES}#{source_anchor(s.id)}") for s in known),
        covered=_covered(window),
    )


def _when_link(crop: Crop, ledger: Ledger) -> Link:
    return Link(text=crop.name, to=f"{ledger.crop_pages[crop.key]}#when")


def _row(crop: Crop, found: tuple[Window, ...], kinds: tuple[str, ...], ledger: Ledger) -> SowingRow:
    words = {window.kind: _words(window) for window in found}
    covered = {window.kind: _covered(window) for window in found if window.kind != "start indoors"}
    return SowingRow(
        crop=_when_link(crop, ledger),
        words=tuple(words.get(kind, "") for kind in kinds),
        covered=tuple(covered.get(kind, ()) for kind in kinds),
    )


def _words(window: Window) -> str:
    """The days, with how the crop is begun where the heading leaves it open: "plant sets 8 September – 20 October"."""
    is_told = not window.how or window.words == TOO_COLD or window.how == "sow or set out"
    return window.words if is_told else f"{window.how} {window.words}"


def _covered(window: Window) -> tuple[str, ...]:
    """A window under each cover: "fleece from 25 April", "glass from 11 April"."""
    return tuple(f"{under.cover} {under.words}" for under in window.covered)


def _frost(line: FrostLine, ledger: Ledger) -> Frost:
    return Frost(
        heading=line.turn[:1].upper() + line.turn[1:],
        words=line.words,
        noted=tuple(_noted(frost, ledger) for frost in line.noted),
    )


def _noted(frost: NotedFrost, ledger: Ledger) -> Figure:
    """Its day, leading to the note; a measured one to the page of the weather."""
    to = ledger.to_note(ledger.garden.event_by_id[frost.event].entry) if frost.event else WEATHER
    return Figure(text=day_text(on(frost.day)), value=frost.day.isoformat(), is_time=True, to=to)


def _dark(ledger: Ledger) -> str:
    """The stretch of days under ten hours, from week to week: to the day it would tell where the garden is."""
    dark = ledger.reckoned.dark
    if dark is None:
        return ""
    monday = dark.first.toordinal() - dark.first.weekday()
    sunday = dark.last.toordinal() + 6 - dark.last.weekday()
    return day_range(type(dark.first).fromordinal(monday), type(dark.last).fromordinal(sunday))
