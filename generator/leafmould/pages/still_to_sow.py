"""What may still be begun this season, from the garden's day on: the days that are over are left out.

Made from this season's windows, for the head of the page of when to sow. What is over in the open may still go under a cover.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from leafmould.garden.model import Crop
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link
from leafmould.reckon.windows import IN_AUTUMN, TOO_COLD, TOO_SHORT, UnderCover, Window
from leafmould.values.wording import day_range

WAYS = ("Start indoors", "Sow", "Set out or plant", "In autumn, for next year")
"""What there is to do, in the order of a crop's year."""
LAST = {"last useful sowing": "Sow", "last setting out": "Set out or plant"}
FIRST = {"sow": "Sow", "sow or set out": "Sow"}
"""Under what the first days outside stand, by how a crop is begun; all else is set out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Still:
    """A crop that may still be begun in some way."""

    crop: Link
    words: str  # "until 16 August"
    covered: str  # "fleece until 30 August, glass until 13 September"
    last: date  # until when
    is_open: bool  # its days in the open have begun, and are not over


@dataclass(frozen=True, slots=True, kw_only=True)
class StillWay:
    """What may still be done in one way, what ends soonest first."""

    heading: str
    crops: tuple[Still, ...]


def still_to_sow(ledger: Ledger) -> tuple[StillWay, ...]:
    """By way of beginning, every crop of which the days are not over."""
    found: dict[str, list[Still]] = {way: [] for way in WAYS}
    for crop in ledger.garden.crops.values():
        for way, still in _of_crop(crop, ledger):
            found[way].append(still)
    return tuple(
        StillWay(heading=way, crops=tuple(sorted(crops, key=lambda s: (s.last, s.crop.text))))
        for way, crops in found.items()
        if crops
    )


def _of_crop(crop: Crop, ledger: Ledger) -> Iterator[tuple[str, Still]]:
    on = ledger.garden.on
    windows = [
        w for w in ledger.reckoned.windows_now.get(crop.key, ()) if w.words not in (TOO_COLD, TOO_SHORT)
    ]
    ends = {LAST[w.kind]: w for w in windows if w.kind in LAST}
    out = next((w for w in windows if w.kind == "sow or set out"), None)
    for window in windows:
        way = _way(window)
        if window is out and way in ends:
            continue  # its end says until when
        begins = _begins(window, out)
        covered = [under for under in window.covered if under.last >= on]
        last = max([window.last, *(under.last for under in covered)])
        if last >= on:
            is_open = begins <= on <= window.last
            words = _words(window, begins, on) if window.last >= on else ""
            link = Link(text=crop.name, to=f"{ledger.crop_pages[crop.key]}#when")
            yield way, Still(crop=link, words=words, covered=_covers(covered, on), last=last, is_open=is_open)


def _begins(window: Window, out: Window | None) -> date:
    """From when on: an end of the season goes with the first days outside, where these are of its own way."""
    if window.kind not in LAST:
        return window.first
    return out.first if out and _way(out) == _way(window) else date.min


def _way(window: Window) -> str:
    if window.kind == "start indoors":
        return WAYS[0]
    if window.kind == IN_AUTUMN:
        return WAYS[3]
    return LAST.get(window.kind) or FIRST.get(window.how, WAYS[2])


def _words(window: Window, begins: date, on: date) -> str:
    """Its days as far as they are to come: "until 16 August", "18 April – 16 August"."""
    if window.kind in LAST and begins <= on:
        return window.words
    return f"until {day_range(window.last, window.last)}" if begins <= on else day_range(begins, window.last)


def _covers(covered: Sequence[UnderCover], on: date) -> str:
    return ", ".join(
        f"{u.cover} until {day_range(u.last, u.last)}" if u.first <= on else f"{u.cover} {u.words}"
        for u in covered
    )
