"""The newest notes as a feed (Atom, RFC 4287), for readers who want to be told of them.

Made from what the pages show, and nothing else. Links are relative, as everywhere; where garden.yaml gives the site's
`address` they count from there. A note's id follows from the garden's name and its own, so that it never changes.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date
from html import escape
from uuid import NAMESPACE_URL, uuid5

from leafmould.garden.model import Entry
from leafmould.pages.doings import beginning, note_name
from leafmould.pages.ledger import Ledger

FEED = "feed.xml"
MOST = 30
"""So many notes, the newest."""
UNFIT = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")
"""What no XML may hold (XML 1.0, production 2)."""


def feed(ledger: Ledger) -> bytes:
    """The feed as a file."""
    garden = ledger.garden
    notes = [entry for entry in garden.entries if entry.when][-MOST:][::-1]
    newest = max((_day(entry) for entry in notes), default=garden.on)
    base = f' xml:base="{escape(garden.address)}"' if garden.address else ""
    lines = [
        '<?xml version="1.0" encoding="utf-8"?>',
        f'<feed xmlns="http://www.w3.org/2005/Atom"{base}>',
        f"<id>{_id(garden.address or garden.name)}</id>",
        f"<title>{_text(garden.name)}</title>",
        f"<updated>{_moment(newest)}</updated>",
        f"<author><name>{_text(garden.name)}</name></author>",
        '<link rel="self" href="feed.xml"/>',
        '<link rel="alternate" type="text/html" href="index.html"/>',
        *(line for entry in notes for line in _entry(entry, ledger)),
        "</feed>",
    ]
    return ("\n".join(lines) + "\n").encode("utf-8")


def _entry(entry: Entry, ledger: Ledger) -> Iterable[str]:
    garden = ledger.garden
    yield "<entry>"
    yield f"<id>{_id(f'{garden.address or garden.name}/{entry.id}')}</id>"
    yield f"<title>{_text(note_name(entry, ledger))}</title>"
    yield f"<updated>{_moment(_day(entry))}</updated>"
    yield f'<link rel="alternate" type="text/html" href="{escape(ledger.to_note(entry.id))}"/>'
    if words := beginning(entry, ledger):
        yield f'<summary type="text">{_text(words)}</summary>'
    yield "</entry>"


def _day(entry: Entry) -> date:
    assert entry.when is not None
    return entry.when.first


def _moment(day: date) -> str:
    return f"{day.isoformat()}T00:00:00Z"


def _id(name: str) -> str:
    return f"urn:uuid:{uuid5(NAMESPACE_URL, name.encode('utf-8', 'replace').decode())}"


def _text(words: str) -> str:
    return escape(UNFIT.sub("", words), quote=False) or "–"
