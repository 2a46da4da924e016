"""A page for each season: its numbers, its firsts, what was picked, what stood where, and the silences.

Also the list of seasons. A gap in the notes is shown as a gap, never as weeks in which nothing happened.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from leafmould.garden import queries
from leafmould.garden.model import Planting
from leafmould.pages.addresses import SEASONS, by_date_address
from leafmould.pages.doings import lessons_of
from leafmould.pages.figures import count_figure, day_figure, how_long, total_figures, when_figure
from leafmould.pages.labels import families_of, planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Figure, Lesson, Link, Page, Plate
from leafmould.pages.picked import PickedCrop, picked_crops
from leafmould.pages.plates import season_plates
from leafmould.pages.season_told import (
    HarvestLine,
    LostLine,
    MarkLine,
    MonthRow,
    Opening,
    best_lines,
    lost_lines,
    mark_lines,
    month_rows,
    opening,
    worst_lines,
)
from leafmould.values.wording import counted

GAP_DAYS = 21
"""So many days without a note are shown as a gap."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """A planting in the season's list, with what became of it."""

    link: Link
    families: tuple[FamilyMark, ...]
    begun: Figure | None
    ending: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonBed:
    """A bed in a season."""

    bed: Link
    stood: tuple[Stand, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """A stretch without notes."""

    first: Figure
    last: Figure
    days: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonPage:
    """The values of a season's page."""

    name: str
    is_running: bool  # it is not over yet
    numbers: tuple[Figure, ...]
    weighed: tuple[Figure, ...]
    opening: Opening
    marks: tuple[MarkLine, ...]
    best: tuple[HarvestLine, ...]
    worst: tuple[HarvestLine, ...]
    lost: tuple[LostLine, ...]
    months: tuple[MonthRow, ...]
    plates: tuple[Plate, ...]
    plates_in_all: int
    picked: tuple[PickedCrop, ...]
    beds: tuple[SeasonBed, ...]
    gaps: tuple[Gap, ...]
    lessons: tuple[Lesson, ...]
    notes: Link | None
    earlier: Link | None
    later: Link | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonLine:
    """A season in the list of seasons."""

    link: Link
    numbers: tuple[Figure, ...]
    weighed: tuple[Figure, ...]
    silence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonsPage:
    """The values of the list of seasons."""

    seasons: tuple[SeasonLine, ...]
    before: str  # the season before which only what stood on is known; "" where nothing is
    stood: tuple[Link, ...]  # what that was, and since when


def season_pages(ledger: Ledger) -> Iterator[Page]:
    """A page a season, newest first."""
    return (
        Page(
            address=ledger.to_season(year),
            template="season.html",
            title=f"Season {ledger.year_name(year)}",
            section="seasons",
            values=_season(year, ledger),
        )
        for year in ledger.years
    )


def seasons_page(ledger: Ledger) -> Page:
    """The list of seasons, newest first."""
    stood = tuple(_stood_before(p, ledger) for p in ledger.standing_before)
    values = SeasonsPage(
        seasons=tuple(_line(year, ledger) for year in ledger.years),
        before=ledger.year_name(ledger.years[-1]) if stood else "",
        stood=stood,
    )
    return Page(address=SEASONS, template="seasons.html", title="Seasons", section="seasons", values=values)


def _stood_before(planting: Planting, ledger: Ledger) -> Link:
    since = ledger.year_name(ledger.home_year(planting))
    return Link(text=f"{planting_name(planting)} ({since})", to=ledger.sections[planting.id])


def _line(year: int, ledger: Ledger) -> SeasonLine:
    return SeasonLine(
        link=Link(text=ledger.year_name(year), to=ledger.to_season(year)),
        numbers=_numbers(year, ledger),
        weighed=_weighed(year, ledger),
        silence="" if ledger.entries_by_year.get(year) else "no notes from this season",
    )


def _season(year: int, ledger: Ledger) -> SeasonPage:
    notes = ledger.entries_by_year.get(year, [])
    name = ledger.year_name(year)
    opened = opening(year, ledger)
    return SeasonPage(
        name=name,
        is_running=ledger.year_ends(year) > ledger.garden.on,
        numbers=_numbers(year, ledger),
        weighed=_weighed(year, ledger),
        opening=opened,
        marks=mark_lines(year, ledger),
        best=best_lines(year, ledger),
        worst=worst_lines(year, ledger),
        lost=lost_lines(year, ledger),
        months=month_rows(year, ledger),
        plates=season_plates(year, ledger, opening=opened.plate),
        plates_in_all=len(ledger.album.by_year.get(year, ())),
        picked=picked_crops(year, ledger),
        beds=_beds(year, ledger),
        gaps=tuple(_gap(gap, ledger) for gap in ledger.gaps(year, longer_than=GAP_DAYS)),
        lessons=lessons_of(notes, ledger),
        notes=Link(text=counted(len(notes), "note"), to=by_date_address(name)) if notes else None,
        earlier=_neighbour(year - 1, ledger),
        later=_neighbour(year + 1, ledger),
    )


def _neighbour(year: int, ledger: Ledger) -> Link | None:
    if year not in ledger.years:
        return None
    return Link(text=ledger.year_name(year), to=ledger.to_season(year))


def _numbers(year: int, ledger: Ledger) -> tuple[Figure, ...]:
    name, season = ledger.year_name(year), ledger.to_season(year)
    found = (
        (len(ledger.entries_by_year.get(year, ())), "note", by_date_address(name)),
        (len(ledger.plantings_by_year.get(year, ())), "planting", f"{season}#beds"),
        (len(ledger.pickings_by_year.get(year, ())), "picking", f"{season}#picked"),
        (len(_crops_picked(year, ledger)), "crop", f"{season}#picked"),
    )
    return tuple(count_figure(n, counted(n, noun), to=to) for n, noun, to in found if n)


def _crops_picked(year: int, ledger: Ledger) -> set[str]:
    picked = {crop for picking in ledger.pickings_by_year.get(year, ()) for crop in picking.crops}
    return picked & ledger.garden.crops.keys()


def _weighed(year: int, ledger: Ledger) -> tuple[Figure, ...]:
    """Everything weighed in the season as one figure, "about" where part is estimated; what was counted stands in the table."""
    amounts = [a for p in ledger.pickings_by_year.get(year, ()) for a in p.amounts if a.grams is not None]
    found = total_figures(amounts, ledger.garden.units, to=f"{ledger.to_season(year)}#picked")
    return tuple(
        replace(f, text=f"about {f.text}", is_estimated=False) if f.is_estimated else f for f in found
    )


def _beds(year: int, ledger: Ledger) -> tuple[SeasonBed, ...]:
    by_bed: dict[str, list[Planting]] = {}
    for planting in ledger.plantings_by_year.get(year, ()):
        by_bed.setdefault(planting.bed_now, []).append(planting)
    return tuple(
        SeasonBed(
            bed=Link(text=bed.name, to=ledger.to_bed_year(bed.key, year) or ledger.bed_pages[bed.key]),
            stood=tuple(_stand(p, year, ledger) for p in by_bed[bed.key]),
        )
        for bed in ledger.garden.beds.values()
        if bed.key in by_bed
    )


def _ending(planting: Planting, year: int, ledger: Ledger) -> str:
    """How it ended, where that was in this season."""
    if planting.ended_on is None or ledger.year_of(planting.ended_on) != year:
        return ""
    return planting.end_basis or "ended"


def _stand(planting: Planting, year: int, ledger: Ledger) -> Stand:
    start = planting.in_bed_from
    to = ledger.sections[planting.id]
    return Stand(
        link=Link(text=planting_name(planting), to=to),
        families=families_of(planting, ledger),
        begun=when_figure(start, to=ledger.source_of(planting, start)) if start else None,
        ending=_ending(planting, year, ledger),
    )


def _gap(gap: queries.Gap, ledger: Ledger) -> Gap:
    return Gap(
        first=day_figure(gap.first, short=True, to=ledger.to_note(gap.before.id)),
        last=day_figure(gap.last, short=True, to=ledger.to_note(gap.after.id) if gap.after else ""),
        days=how_long(gap.days),
    )
