"""The section of one planting on its bed's page: its dates, lines, totals and how it ended.

Made once for each planting; every other page shows its line only and leads here.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leafmould.garden.model import Planting, Season
from leafmould.pages.addresses import SOURCES, source_anchor
from leafmould.pages.doings import doings, with_remarks, with_years
from leafmould.pages.figures import day_figure, total_figures, weight_figure, when_figure
from leafmould.pages.labels import planting_line, planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Doing, Figure, Link, PlantingLine, Plate
from leafmould.pages.plates import planting_plate

BEFOREHAND = "From the table of the years before the notes"
WHICH_TABLE = ": records/beforehand.csv"
"""Told to the household alone: a stranger has no such file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """A named date of a planting: "sown", "first picked"."""

    name: str
    on: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class PickedSeason:
    """One picking season of a perennial."""

    name: str
    first: Figure | None
    last: Figure | None
    weight: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantingSection:
    """All that is known of one planting; its id is its address on the page."""

    id: str
    line: PlantingLine
    moments: tuple[Moment, ...]
    totals: tuple[Figure, ...]
    ending: str  # how it ended, told where `ended` is given
    ended: Figure | None
    expectation: str  # the reason of the expectation, or ""
    sources: tuple[Link, ...]  # the published tables it rests on
    heat: str  # what published heat sums say of it, or ""
    heat_sources: tuple[Link, ...]
    seedlings: str  # why they should show when the label says, or ""
    seedling_sources: tuple[Link, ...]
    remarks: tuple[str, ...]
    doings: tuple[Doing, ...]
    seasons: tuple[PickedSeason, ...]
    kin: tuple[Link, ...]  # where it was split from
    batches: str  # "One of 2 batches …" where some lines belong to several together
    shared: tuple[Doing, ...]  # those lines
    shared_totals: tuple[Figure, ...]
    plate: Plate | None


def planting_section(planting: Planting, ledger: Ledger) -> PlantingSection:
    """Everything known of one planting."""
    garden = ledger.garden
    forecast = ledger.reckoned.forecasts.get(planting.id)
    is_waiting = planting.is_open and planting.first_picked is None
    up = ledger.reckoned.coming_up.get(planting.id)
    heat = ledger.reckoned.heat.get(planting.id)
    return PlantingSection(
        id=planting.id,
        line=planting_line(planting, ledger),
        moments=_moments(planting, ledger),
        totals=total_figures(planting.picked, garden.units, to=ledger.sections[planting.id]),
        ending=_ending(planting),
        ended=_ended(planting, ledger),
        expectation=forecast.basis[:1].upper() + forecast.basis[1:] if forecast and is_waiting else "",
        sources=_sources(forecast.sources, ledger) if forecast and is_waiting else (),
        heat=heat.words if heat else "",
        heat_sources=_sources(heat.sources, ledger) if heat else (),
        seedlings=f"Seedlings: {up.basis}" if up else "",
        seedling_sources=_sources(up.sources, ledger) if up else (),
        remarks=_remarks(planting, ledger),
        doings=_doings(planting, ledger),
        seasons=tuple(_season(s, planting, ledger) for s in planting.seasons),
        kin=_kin(planting, ledger),
        batches=_batches(planting, ledger),
        shared=with_years(
            doings(ledger.group_events.get(planting.group or "", ()), ledger),
            ledger.home_year(planting),
            ledger,
        ),
        shared_totals=_shared_totals(planting, ledger),
        plate=planting_plate(planting, ledger),
    )


def _doings(planting: Planting, ledger: Ledger) -> tuple[Doing, ...]:
    """What was done, and the notes about it in which nothing was done."""
    garden = ledger.garden
    events = [garden.event_by_id[key] for key in planting.events]
    shared = ledger.group_events.get(planting.group or "", ())
    told = {event.entry for event in (*events, *shared)}
    remarks = (garden.entry_by_id[key] for key in planting.entries if key not in told)
    lines = with_remarks(doings(events, ledger), remarks, ledger)
    return with_years(lines, ledger.home_year(planting), ledger)


def _sources(keys: Iterable[str], ledger: Ledger) -> tuple[Link, ...]:
    known = [ledger.reckoned.sources[key] for key in keys if key in ledger.reckoned.sources]
    return tuple(Link(text=s.publisher, to=f"{SOURCES}#{source_anchor(s.id)}") for s in known)


def _moments(planting: Planting, ledger: Ledger) -> tuple[Moment, ...]:
    named = (
        ("started", planting.started),
        ("sown", planting.sown),
        ("came up", planting.came_up),
        ("planted out" if planting.started else "planted", planting.planted),
        ("found", planting.found),
        ("first flower", planting.flowered),
        ("first picked", planting.first_picked),
        ("last picked", planting.last_picked),
        ("cleared", planting.cleared),
        ("lost", planting.lost),
    )
    return tuple(
        Moment(name=name, on=when_figure(when, to=ledger.source_of(planting, when)))
        for name, when in named
        if when
    )


def _ended(planting: Planting, ledger: Ledger) -> Figure | None:
    """The day it ended, estimated where nobody wrote it; a clearing stands among the named dates."""
    if planting.ended_on is None or planting.cleared:
        return None
    to = (
        _came_of(planting, ledger) if planting.end_is_estimated else ledger.source_of(planting, planting.lost)
    )
    why = planting.end_basis or "presumed" if planting.end_is_estimated else ""
    return day_figure(planting.ended_on, to=to, why=why)


def _came_of(planting: Planting, ledger: Ledger) -> str:
    """The note an estimated end rests on: of the frost, of what was started in its place, else its own last."""
    on, basis = planting.ended_on, planting.end_basis or ""
    if on and on in ledger.frosts and "frost" in basis:
        return ledger.to_note(ledger.frosts[on])
    for other in ledger.plantings_by_bed.get(planting.bed_now, ()) if "in its place" in basis else ():
        begun = other.in_bed_from
        if other is not planting and begun and begun.first == on:
            return ledger.source_of(other, begun)
    return ledger.source_of(planting, planting.last_picked or planting.start)


def _ending(planting: Planting) -> str:
    basis = planting.end_basis or "ended"
    return basis[:1].upper() + basis[1:]


def _remarks(planting: Planting, ledger: Ledger) -> tuple[str, ...]:
    between = planting.started_between
    raised_in = ledger.garden.beds.get(planting.raised_in or "")
    known = (
        f"Raised in {raised_in.name if raised_in else planting.raised_in}." if planting.raised_in else "",
        "Grown under cover." if planting.is_under_cover else "",
        f"Started between {day_figure(between[0]).text} and {day_figure(between[1]).text}."
        if between
        else "",
        "Bought as plants." if planting.origin == "bought" else "",
        "Self-sown." if planting.origin == "self-sown" else "",
        f"{BEFOREHAND}{WHICH_TABLE if ledger.household else ''}."
        if planting.origin == "year only" and not planting.entries
        else "",
        "When it began was not noted." if planting.origin == "unknown" and not planting.start else "",
    )
    return tuple(words for words in known if words)


def _season(season: Season, planting: Planting, ledger: Ledger) -> PickedSeason:
    first, last, grams = season.first_picked, season.last_picked, season.picked_g
    to = ledger.sections[planting.id]
    return PickedSeason(
        name=season.name,
        first=when_figure(first, to=ledger.source_of(planting, first)) if first else None,
        last=when_figure(last, to=ledger.source_of(planting, last)) if last else None,
        weight=None if grams is None else weight_figure(grams, ledger.garden.units, to=to),
    )


def _kin(planting: Planting, ledger: Ledger) -> tuple[Link, ...]:
    parent = ledger.garden.planting_by_id.get(planting.parent or "")
    if parent is None:
        return ()
    return (Link(text=f"split from {planting_name(parent)}", to=ledger.sections[parent.id]),)


def _batches(planting: Planting, ledger: Ledger) -> str:
    """Said only where a line does not tell which batch it means."""
    if planting.group is None or not ledger.group_events.get(planting.group):
        return ""
    batches = len(ledger.garden.plantings_by_group.get(planting.group, ()))
    return f"One of {batches} batches. Noted for them together, without saying which:"


def _shared_totals(planting: Planting, ledger: Ledger) -> tuple[Figure, ...]:
    pickings = ledger.group_pickings.get(planting.group or "", ())
    amounts = (amount for picking in pickings for amount in picking.amounts)
    return total_figures(amounts, ledger.garden.units, to=ledger.sections[planting.id])
