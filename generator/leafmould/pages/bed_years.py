"""The years of a bed's page, newest first: what stood, was planted, pictured and done in each.

Years in which the same things stood and nobody wrote a word are one line together: a tree that is forty has a page
like any other.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from leafmould.garden import queries
from leafmould.garden.model import Planting
from leafmould.pages.doings import doings, with_remarks
from leafmould.pages.labels import planting_name
from leafmould.pages.ledger import Ledger, year_anchor
from leafmould.pages.page import Doing, Link, Plate, StripRow
from leafmould.pages.plates import bed_year_plates
from leafmould.pages.sections import PlantingSection, planting_section
from leafmould.pages.strips import strip_row


@dataclass(frozen=True, slots=True, kw_only=True)
class BedYear:
    """One season of a bed, or several in which nothing was written of what stood."""

    name: str
    anchor: str
    strip: tuple[StripRow, ...]
    sections: tuple[PlantingSection, ...]
    plates: tuple[Plate, ...]
    plates_in_all: int
    doings: tuple[Doing, ...]  # done to the whole bed
    silence: str  # what is said where nothing was noted
    stood: tuple[Link, ...] = ()  # in quiet years: what stood
    anchors: tuple[str, ...] = ()  # of the further years told here


def bed_years(bed: str, years: Sequence[int], ledger: Ledger) -> tuple[BedYear, ...]:
    """The years of a page, newest first; quiet ones that follow each other as one."""
    noted = {ledger.year_of(e.when.first) for e in ledger.entries_by_bed.get(bed, ()) if e.when}
    told = [_year(ledger.bed_year(bed, year), ledger, is_noted=year in noted) for year in years]
    return tuple(
        found
        for stood, some in groupby(told, lambda year: year.stood)
        for found in ([_together(list(some))] if stood else some)
    )


def _together(years: Sequence[BedYear]) -> BedYear:
    """Quiet years that follow each other, newest first, as one."""
    newest, oldest = years[0], years[-1]
    if newest is oldest:
        return newest
    dash = " – " if "/" in newest.name else "–"
    return replace(
        newest,
        name=f"{oldest.name}{dash}{newest.name}",
        anchors=tuple(year.anchor for year in years[1:]),
    )


def _year(told: queries.BedYear, ledger: Ledger, *, is_noted: bool) -> BedYear:
    name = ledger.year_name(told.year)
    remarks = ledger.remarks_by_bed_year.get((told.bed, told.year), ())
    at_home = [
        p for p in told.plantings if ledger.home_bed(p) == told.bed and ledger.home_year(p) == told.year
    ]
    sections = tuple(planting_section(p, ledger) for p in at_home)
    is_quiet = not sections and not is_noted and _is_quiet(told, ledger)
    return BedYear(
        name=name,
        anchor=year_anchor(name),
        strip=()
        if is_quiet
        else tuple(
            strip_row(p, told.year, ledger, note=p.part or "")
            for p in told.plantings
            if p.origin != "year only"
        ),
        sections=sections,
        plates=bed_year_plates(told.bed, told.year, filter(None, (s.plate for s in sections)), ledger),
        plates_in_all=len(ledger.album.by_bed_year.get((told.bed, told.year), ())),
        doings=with_remarks(doings(told.events, ledger), remarks, ledger),
        silence="" if told.plantings or told.events or remarks else "No record in this year.",
        stood=tuple(
            Link(text=planting_name(p), to=ledger.sections[p.id]) for p in told.plantings if is_quiet
        ),
    )


def _is_quiet(told: queries.BedYear, ledger: Ledger) -> bool:
    """Whether things surely stood through a season that is over, and no note tells of them or of the bed."""
    return (
        bool(told.plantings)
        and told.year < ledger.this_year
        and not told.events
        and not any(p.end_is_estimated or told.year in _years_told(p, ledger) for p in told.plantings)
    )


def _years_told(planting: Planting, ledger: Ledger) -> set[int]:
    """The seasons in which something was noted of a planting."""
    events = (ledger.garden.event_by_id[key] for key in planting.events)
    return {ledger.year_of(event.when.first) for event in events}
