"""How much of a crop goes into each bed, on the crop's page: rows, plants, and the seed they want."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from leafmould.garden.model import Crop
from leafmould.pages.addresses import SOURCES, source_anchor
from leafmould.pages.ledger import Ledger
from leafmould.pages.next_in_beds import places_next
from leafmould.pages.page import Link
from leafmould.reckon.amounts import Room, rounded
from leafmould.values.wording import counted, number_words, weight

FEET = 0.3048
"""Metres in a foot."""
WORTH_WEIGHING = 0.5
"""Grams of seed under which it is counted and not weighed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomRow:
    """One bed filled with the crop."""

    bed: Link
    rows: str  # "4 rows of 9 m"
    plants: str  # "270–900"
    seeds: str  # "420–1,390, 8–26 g"; empty for what is not grown from seed
    sown: str  # "33–67 g"; empty where nobody says


@dataclass(frozen=True, slots=True, kw_only=True)
class HowMuch:
    """The beds, and what was reckoned with."""

    apart: str
    between: str
    is_own: bool
    share: str
    rows: tuple[RoomRow, ...]
    has_rate: bool
    sources: tuple[Link, ...]


def how_much(crop: Crop, ledger: Ledger) -> HowMuch | None:
    """What of a crop goes into each bed; None where no distances or no bed's sides are known."""
    found = ledger.reckoned.amounts.get(crop.key)
    if found is None:
        return None
    known, rooms = ledger.reckoned.sources, _rooms(crop, found.rooms, ledger)
    return HowMuch(
        apart=found.apart,
        between=found.between,
        is_own=found.is_own,
        share=found.share,
        rows=tuple(_row(room, ledger) for room in rooms),
        has_rate=any(room.sown_g for room in rooms),
        sources=tuple(
            Link(text=known[key].publisher, to=f"{SOURCES}#{source_anchor(key)}") for key in found.sources
        ),
    )


def _rooms(crop: Crop, rooms: Sequence[Room], ledger: Ledger) -> list[Room]:
    """The beds a crop may go into next season; all of them for one that stays, or whose family is not known."""
    allowed = places_next(crop, ledger)
    return [room for room in rooms if allowed is None or room.bed in allowed]


def _row(room: Room, ledger: Ledger) -> RoomRow:
    units = ledger.garden.units
    seeds = ""
    if room.seeds:
        seeds = _counts(*room.seeds)
        seeds += f", {_weights(*room.grams, units)}" if room.grams and room.grams[1] >= WORTH_WEIGHING else ""
    return RoomRow(
        bed=ledger.bed_links[room.bed],
        rows=f"{counted(room.rows, 'row')} of {_length(room.row_m, units)}",
        plants=_counts(*room.plants),
        seeds=seeds,
        sown=_weights(*room.sown_g, units) if room.sown_g else "",
    )


def _counts(low: int, high: int) -> str:
    low, high = rounded(low), rounded(high)
    return f"{low:,}" if low == high else f"{low:,}–{high:,}"


def _weights(low: float, high: float, units: str) -> str:
    """ "3–8 g", "240 g – 1.2 kg": two figures are as much as can be meant; under 10 g to a tenth."""
    if units == "metric" and high < 10:
        first, last = (f"{max(value, 0.1):.1f}".removesuffix(".0") for value in (low, high))
        return f"{last} g" if first == last else f"{first}–{last} g"
    first, last = (weight(_two_figures(value), units) for value in (low, high))
    if first == last:
        return last
    same = first.rpartition(" ")[2] == last.rpartition(" ")[2] and first.count(" ") == last.count(" ") == 1
    return f"{first.partition(' ')[0]}–{last}" if same else f"{first} – {last}"


def _two_figures(grams: float) -> float:
    """Grams from a hundred up to the nearest ten, from a thousand up to the nearest hundred."""
    return round(grams, -1 if grams < 1000 else -2) if grams >= 100 else grams


def _length(metres: float, units: str) -> str:
    if units == "imperial":
        return f"{number_words(round(metres / FEET))} ft"
    return f"{number_words(round(metres, 1))} m"
