"""What is known of a crop as its page shows it: one row a subject, with numbered sources below.

The words come from the reckoning; here they get their links and the numbers of the sources.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.facts import tables
from leafmould.garden.model import Crop
from leafmould.pages.addresses import SOURCES, source_anchor
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Figure, Link
from leafmould.reckon.known import KnownLine, Said
from leafmould.reckon.own_record import Seen


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidBy:
    """What one source says, with the number it has in the list below."""

    words: str  # empty where all sources say the same as the row
    note: str
    source: Link  # under its number in the list below


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownRow:
    """One subject."""

    label: str
    words: str
    said: tuple[SaidBy, ...]
    packet: str
    seen: Figure | None
    is_common_practice: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """The rows and, in the order of their numbers, the sources."""

    rows: tuple[KnownRow, ...]
    sources: tuple[Link, ...]


def known(crop: Crop, ledger: Ledger) -> Known:
    """All that is known of a crop; no rows for one that nobody has written of."""
    lines = ledger.reckoned.known[crop.key]
    numbers = {
        key: n for n, key in enumerate(dict.fromkeys(s.source for x in lines for s in x.said), start=1)
    }
    return Known(
        rows=tuple(_row(line, numbers, ledger) for line in lines),
        sources=tuple(_source(key) for key in numbers),
    )


def _source(key: str) -> Link:
    source = tables.sources()[key]
    return Link(text=f"{source.publisher}: {source.title}", to=f"{SOURCES}#{source_anchor(key)}")


def _row(line: KnownLine, numbers: dict[str, int], ledger: Ledger) -> KnownRow:
    agree = len({said.words for said in line.said}) == 1 and line.said[0].words == line.words
    return KnownRow(
        label=line.label,
        words=line.words,
        said=tuple(_said(said, numbers[said.source], agree=agree) for said in line.said),
        packet=line.packet,
        seen=_seen(line.seen, ledger) if line.seen else None,
        is_common_practice=line.is_common_practice,
    )


def _said(said: Said, number: int, *, agree: bool) -> SaidBy:
    return SaidBy(
        words="" if agree else said.words,
        note=said.note,
        source=Link(text=str(number), to=f"{SOURCES}#{source_anchor(said.source)}"),
    )


def _seen(seen: Seen, ledger: Ledger) -> Figure:
    return Figure(text=seen.words, value=f"{seen.low}/{seen.high}", to=ledger.sections[seen.plantings[0]])
