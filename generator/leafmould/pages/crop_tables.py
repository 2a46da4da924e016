"""The two tables of a crop: its varieties side by side, and its years.

Days taken are counted only between two exact days of one planting. Totals are added from pickings; a
picking shared with another crop or variety is counted apart.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from leafmould.garden.model import Crop, Picking, Planting
from leafmould.pages.figures import how_long, total_figures, when_figure
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Figure, Link
from leafmould.values.names import slug
from leafmould.values.when import When

MOST_PLANTINGS = 24
"""Plantings named beside a variety."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Totals:
    """What was picked: figures that can be added, how often, and what was shared with others."""

    figures: tuple[Figure, ...]
    pickings: str  # "in 6 pickings"
    shared: tuple[Figure, ...]  # picked together with another crop


@dataclass(frozen=True, slots=True, kw_only=True)
class CropYear:
    """A crop in one season."""

    year: Link
    beds: tuple[Link, ...]  # each leads to the planting there
    first_sown: Figure | None
    first_picked: Figure | None
    days: Figure | None
    totals: Totals


@dataclass(frozen=True, slots=True, kw_only=True)
class VarietyRow:
    """A variety's record."""

    name: str
    anchor: str
    years: tuple[Link, ...]  # the newest plantings, each leading to its section
    more: int  # earlier plantings; the table by year has their beds
    days: Figure | None  # range over its plantings
    totals: Totals
    endings: str  # "1 of 3 lost"
    verdicts: str  # "again: yes 2024, no 2025"


def year_rows(crop: Crop, ledger: Ledger) -> tuple[CropYear, ...]:
    """A crop's seasons, newest first."""
    plantings, pickings = ledger.crop_years(crop.key), ledger.picked_years(crop.key)
    begun = {ledger.home_year(p) for found in plantings.values() for p in found}
    years = sorted(begun | pickings.keys() | (plantings.keys() & set(ledger.years)), reverse=True)
    return tuple(_year(crop, year, plantings.get(year, ()), pickings.get(year, ()), ledger) for year in years)


def _year(
    crop: Crop, year: int, plantings: Sequence[Planting], pickings: Sequence[Picking], ledger: Ledger
) -> CropYear:
    begun = [p for p in plantings if ledger.home_year(p) == year]
    sown = _earliest([(p.sown or p.started or p.planted, p) for p in begun])
    first = min(pickings, key=lambda p: (p.when.first, p.id), default=None)
    return CropYear(
        year=Link(text=ledger.year_name(year), to=ledger.to_season(year)),
        beds=_beds(plantings, ledger),
        first_sown=_dated(sown, ledger),
        first_picked=when_figure(first.when, to=ledger.to_note(first.entry), short=True) if first else None,
        days=days_taken(begun, ledger),
        totals=totals(pickings, ledger, to=ledger.to_pickings(crop.key, year, pickings)),
    )


def _earliest(moments: Iterable[tuple[When | None, Planting]]) -> tuple[When, Planting] | None:
    known = [(when, planting) for when, planting in moments if when]
    return min(known, key=lambda pair: (pair[0].first, pair[1].id), default=None)


def _dated(found: tuple[When, Planting] | None, ledger: Ledger) -> Figure | None:
    if found is None:
        return None
    when, planting = found
    return when_figure(when, to=ledger.source_of(planting, when), short=True)


def _beds(plantings: Sequence[Planting], ledger: Ledger) -> tuple[Link, ...]:
    found: dict[str, Link] = {}
    for planting in plantings:
        name = ledger.garden.beds[planting.bed_now].name
        found.setdefault(name, Link(text=name, to=ledger.sections[planting.id]))
    return tuple(found.values())


def days_taken(plantings: Iterable[Planting], ledger: Ledger) -> Figure | None:
    """Days from the start to the first picking, as a range over plantings with both days exact."""
    found = [(days, p) for p in plantings if (days := _days(p)) is not None]
    if not found:
        return None
    low, high = min(d for d, _ in found), max(d for d, _ in found)
    to = ledger.sections[min(found, key=lambda pair: (pair[0], pair[1].id))[1].id]
    if low == high:
        return Figure(text=how_long(low), value=str(low), to=to)
    return Figure(text=f"{low}–{high} days", value=f"{low}/{high}", to=to)


def _days(planting: Planting) -> int | None:
    start, first = planting.start, planting.first_picked
    if planting.is_perennial or start is None or first is None or not (start.day and first.day):
        return None
    return (first.day - start.day).days


def totals(pickings: Sequence[Picking], ledger: Ledger, *, to: str) -> Totals:
    """The sum of some pickings, those shared with other crops apart."""
    own = [p for p in pickings if len(set(p.crops)) == 1]
    shared = [p for p in pickings if len(set(p.crops)) > 1]
    units = ledger.garden.units
    times = len(pickings)
    return Totals(
        figures=total_figures((a for p in own for a in p.amounts), units, to=to),
        pickings=f"{times} pickings" if times > 1 else "1 picking" if times else "",
        shared=total_figures((a for p in shared for a in p.amounts), units, to=to),
    )


def variety_rows(crop: Crop, ledger: Ledger) -> tuple[VarietyRow, ...]:
    """A crop's varieties, by name; then plantings of a variety not noted, and what was picked of nobody said which."""
    plantings = ledger.varieties_of(crop.key)
    if not any(plantings):
        return ()
    unnamed = {planting.id for planting in plantings.get("", ())}
    pickings: dict[str, list[Picking]] = {}
    for picking in ledger.pickings_by_crop.get(crop.key, ()):
        pickings.setdefault(_picked_of(picking, unnamed, plantings), []).append(picking)
    names = sorted(plantings, key=lambda name: (not name, name.casefold(), name))
    rows = [_variety(name, plantings[name], pickings.get(name, []), crop, ledger) for name in names]
    if untold := pickings.get(UNTOLD):
        rows.append(_untold(untold, crop, ledger))
    return tuple(rows)


UNTOLD = " "
"""Stands for no variety: what was picked of several, or of nobody said which."""


def _picked_of(picking: Picking, unnamed: set[str], known: Mapping[str, Sequence[Planting]]) -> str:
    """The variety a picking was of, "" for plantings whose variety nobody noted."""
    if len(picking.varieties) == 1 and picking.varieties[0] in known:
        return picking.varieties[0]
    return "" if not picking.varieties and picking.planting in unnamed else UNTOLD


def _untold(pickings: list[Picking], crop: Crop, ledger: Ledger) -> VarietyRow:
    """What was picked without telling of which variety, by the seasons it was picked in."""
    by_year: dict[int, list[Picking]] = {}
    for picking in pickings:
        by_year.setdefault(ledger.year_of(picking.when.first), []).append(picking)
    to = ledger.to_note(pickings[0].entry) if len(pickings) == 1 else f"{ledger.crop_pages[crop.key]}#years"
    return VarietyRow(
        name="picked of several, or without saying which",
        anchor="variety-not-told",
        years=tuple(
            Link(text=ledger.year_name(year), to=ledger.to_pickings(crop.key, year, found))
            for year, found in sorted(by_year.items())
        ),
        more=0,
        days=None,
        totals=totals(pickings, ledger, to=to),
        endings="",
        verdicts="",
    )


def _variety(
    name: str, plantings: Sequence[Planting], pickings: list[Picking], crop: Crop, ledger: Ledger
) -> VarietyRow:
    lost = sum(1 for p in plantings if p.lost)
    return VarietyRow(
        name=name or "variety not noted",
        anchor=variety_anchor(name),
        years=_grown(plantings[-MOST_PLANTINGS:], ledger),
        more=max(0, len(plantings) - MOST_PLANTINGS),
        days=days_taken(plantings, ledger),
        totals=totals(pickings, ledger, to=_home_of_variety(name, plantings, pickings, crop, ledger)),
        endings=f"{lost} of {len(plantings)} lost" if lost else "",
        verdicts=_verdicts(plantings, ledger),
    )


def _home_of_variety(
    name: str, plantings: Sequence[Planting], pickings: Sequence[Picking], crop: Crop, ledger: Ledger
) -> str:
    """A single picking's note; the row, whose plantings tell of theirs; the years, for what belongs to none."""
    if len(pickings) == 1:
        return ledger.to_note(pickings[0].entry)
    own = {planting.id for planting in plantings}
    spot = variety_anchor(name) if all(p.planting in own for p in pickings) else "years"
    return f"{ledger.crop_pages[crop.key]}#{spot}"


def _grown(plantings: Sequence[Planting], ledger: Ledger) -> tuple[Link, ...]:
    """A link to each planting by its year; several of one year tell their beds too."""
    years = Counter(ledger.home_year(p) for p in plantings)
    found: dict[str, Link] = {}
    for planting in plantings:
        year, bed = ledger.home_year(planting), ledger.garden.beds[planting.bed_now].name
        words = f"{ledger.year_name(year)} ({bed})" if years[year] > 1 else ledger.year_name(year)
        found.setdefault(words, Link(text=words, to=ledger.sections[planting.id]))
    return tuple(found.values())


def variety_anchor(name: str) -> str:
    """The id of a variety's row."""
    return f"variety-{slug(name)}" if name else "variety-not-noted"


def _verdicts(plantings: Sequence[Planting], ledger: Ledger) -> str:
    entries = [ledger.garden.entry_by_id[e] for p in plantings for e in p.entries]
    said = dict.fromkeys(
        f"{e.again} ({ledger.year_name(ledger.year_of(e.when.first))})" for e in entries if e.again and e.when
    )
    return ", ".join(said)
