"""What was picked in a season: each crop in a row, and behind its sum every single picking.

A sum leads to the list of just those pickings that make it, or to the one note of a single picking. Only
where a season has more pickings than a page can hold do sums lead to the season's notes instead.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.garden.model import Picking
from leafmould.pages.crop_tables import Totals, totals
from leafmould.pages.figures import when_figure
from leafmould.pages.labels import family_mark
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Figure, Link


@dataclass(frozen=True, slots=True, kw_only=True)
class PickingLine:
    """One picking behind a sum: its day, which leads to its note, and how much, as written."""

    on: Figure
    amount: str  # "not weighed" where nothing was


@dataclass(frozen=True, slots=True, kw_only=True)
class PickedCrop:
    """What a crop gave in a season."""

    crop: Link
    mark: FamilyMark | None
    anchor: str  # the id of its pickings
    first: Figure
    last: Figure
    totals: Totals
    pickings: tuple[PickingLine, ...]  # none for a single one: its note is home


def picked_crops(year: int, ledger: Ledger) -> tuple[PickedCrop, ...]:
    """The crops picked in a season, from A to Z."""
    by_crop: dict[str, list[Picking]] = {}
    for picking in ledger.pickings_by_year.get(year, ()):
        for crop in dict.fromkeys(picking.crops):
            by_crop.setdefault(crop, []).append(picking)
    known = [(crop, found) for crop, found in by_crop.items() if crop in ledger.garden.crops]
    rows = sorted(known, key=lambda row: (ledger.garden.crops[row[0]].name.casefold(), row[0]))
    return tuple(_picked(crop, year, pickings, ledger) for crop, pickings in rows)


def _picked(key: str, year: int, pickings: list[Picking], ledger: Ledger) -> PickedCrop:
    crop = ledger.garden.crops[key]
    first = min(pickings, key=lambda p: (p.when.first, p.id))
    last = max(pickings, key=lambda p: (p.when.last, p.id))
    is_listed = len(pickings) > 1 and ledger.lists_pickings(year)
    return PickedCrop(
        crop=ledger.crop_links[key],
        mark=family_mark(crop.family, ledger) if crop.family else None,
        anchor=ledger.picked_anchor(key),
        first=when_figure(first.when, to=ledger.to_note(first.entry), short=True),
        last=when_figure(last.when, to=ledger.to_note(last.entry), short=True),
        totals=totals(pickings, ledger, to=ledger.to_pickings(key, year, pickings)),
        pickings=tuple(_line(picking, ledger) for picking in pickings) if is_listed else (),
    )


def _line(picking: Picking, ledger: Ledger) -> PickingLine:
    amount = ", ".join(a.written for a in picking.amounts if a.written)
    with_others = " with others" if len(set(picking.crops)) > 1 else ""
    return PickingLine(
        on=when_figure(picking.when, to=ledger.to_note(picking.entry), short=True),
        amount=(amount or "not weighed") + with_others,
    )
