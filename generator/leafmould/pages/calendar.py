"""Expected pickings and waits as a calendar (iCalendar, RFC 5545) that a telephone can subscribe to.

Whole days, without an hour or a place. What an event is called by stays the same from build to build, so that a calendar
moves it rather than showing it twice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.garden.model import Planting
from leafmould.garden.waits import Waits
from leafmould.pages.labels import planting_name
from leafmould.pages.ledger import Ledger
from leafmould.values.names import slug

CALENDAR = "calendar.ics"
LONGEST_LINE = 75
"""Octets in a line, without its end (RFC 5545, 3.1)."""
CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Some whole days in the calendar."""

    uid: str
    first: date
    last: date
    summary: str
    description: str


def calendar(ledger: Ledger) -> bytes:
    """The calendar as a file; empty where nothing is to come, since no calendar may hold nothing (RFC 5545, 3.6)."""
    found = events(ledger)
    if not found:
        return b""
    garden = ledger.garden
    stamp = f"DTSTAMP:{garden.on:%Y%m%d}T000000Z"
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Leafmould//garden calendar//EN",
        "CALSCALE:GREGORIAN",
        f"X-WR-CALNAME:{_text(garden.name)}",
    ]
    for event in found:
        lines += [
            "BEGIN:VEVENT",
            f"UID:{_text(event.uid)}",
            stamp,
            f"DTSTART;VALUE=DATE:{event.first:%Y%m%d}",
            f"DTEND;VALUE=DATE:{event.last + timedelta(days=1):%Y%m%d}",
            f"SUMMARY:{_text(event.summary)}",
            *([f"DESCRIPTION:{_text(event.description)}"] if event.description else []),
            "TRANSP:TRANSPARENT",
            "END:VEVENT",
        ]
    lines.append("END:VCALENDAR")
    return "".join(f"{_folded(line)}\r\n" for line in lines).encode("utf-8")


def events(ledger: Ledger) -> tuple[Event, ...]:
    """What is still to come, by day: expected pickings, and the ends of waits."""
    found = [*_expected(ledger), *_waits(ledger)]
    return tuple(sorted(found, key=lambda event: (event.first, event.uid)))


def _expected(ledger: Ledger) -> Iterator[Event]:
    """Expected pickings; none begins before a wait that protects whoever eats it is over."""
    waits = Waits(ledger.garden)
    for planting in ledger.garden.plantings:
        forecast = ledger.reckoned.forecasts.get(planting.id)
        if forecast is None or not planting.is_open or forecast.latest < ledger.garden.on:
            continue
        if planting.first_picked and forecast.kind != "season":
            continue
        safe = waits.safe_day(planting)
        first = max(forecast.earliest, safe.day) if safe else forecast.earliest
        if first > forecast.latest:
            continue
        word = "ready" if forecast.kind == "stands" else "expected"
        yield Event(
            uid=_uid(planting, "expected", ledger),
            first=first,
            last=forecast.latest,
            summary=f"{word}: {_called(planting, ledger)}",
            description=f"{forecast.basis[:1].upper()}{forecast.basis[1:]}.",
        )


def _waits(ledger: Ledger) -> Iterator[Event]:
    waits = Waits(ledger.garden)
    for planting in ledger.garden.plantings:
        safe = waits.safe_day(planting) if planting.is_open else None
        if safe and safe.day > ledger.garden.on and not safe.wait.is_going_on:
            yield Event(
                uid=_uid(planting, "wait", ledger),
                first=safe.day,
                last=safe.day,
                summary=f"may be picked from today: {_called(planting, ledger)}",
                description=f"The wait of {safe.days} days is over. The label and local rules come first.",
            )


def _called(planting: Planting, ledger: Ledger) -> str:
    return f"{planting_name(planting)}, {ledger.garden.beds[planting.bed_now].name}"


def _uid(planting: Planting, kind: str, ledger: Ledger) -> str:
    return f"{kind}-{planting.id}@{slug(ledger.garden.name) or 'garden'}"


def _text(words: str) -> str:
    """A text as the standard has it: backslash, semicolon and comma marked, line ends as two letters (3.3.11)."""
    plain = CONTROL.sub("", words.replace("\r\n", "\n").replace("\r", "\n"))
    plain = plain.encode("utf-8", "replace").decode()
    return re.sub(r"([\\;,])", r"\\\1", plain).replace("\n", "\\n")


def _folded(line: str) -> str:
    """A line cut where it is too long, each further piece behind a space; no letter is cut in two."""
    pieces: list[str] = []
    piece, length, most = "", 0, LONGEST_LINE
    for letter in line:
        size = len(letter.encode("utf-8"))
        if length + size > most:
            pieces.append(piece)
            piece, length, most = "", 0, LONGEST_LINE - 1
        piece, length = piece + letter, length + size
    return "\r\n ".join([*pieces, piece])
