"""The garden map: every place with a position drawn to scale, season by season, and what grows where.

A page for each season, the present one first; a garden without positions has none. Beds are there as they stood
at the season's end. Places that are left out of this build are not in the garden any more.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from leafmould.charts.plan import Box, Drawing, around, arrow, drawing_of, round_length
from leafmould.garden.footprint import Footprint, footprint
from leafmould.garden.model import Bed
from leafmould.pages.addresses import MAP, map_address
from leafmould.pages.beds import BedRow, bed_row
from leafmould.pages.hatches import hatch_of
from leafmould.pages.ledger import Ledger
from leafmould.pages.map_names import named
from leafmould.pages.map_place import Place, place_of
from leafmould.pages.page import FamilyMark, Link, Page

YEARS_BEFORE = 3
"""Seasons told of each bed beside the one that is drawn."""
MARGIN = 0.8
"""Bare ground around everything [m]."""
FOOT = 46
"""Room below the ground for the bar and the arrow [units]."""


ZONES = ("wet", "dry", "sunny", "shady")
"""What ground may be like; drawn under everything, with an edge over it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """A path, wall, building or pond, or ground of some kind."""

    kind: str
    box: Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Weave:
    """A family's hatch, wanted somewhere in the drawing."""

    mark: str
    hatch: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """The bar of a round length."""

    length: float  # [units]
    words: str  # "5 m"


@dataclass(frozen=True, slots=True, kw_only=True)
class Plotted:
    """The drawing of one season."""

    width: float
    height: float  # with its foot
    ground: float  # height of the ground alone
    plot: Box | None
    pieces: tuple[Ground, ...]
    zones: tuple[Ground, ...]  # wet, dry, sunny, shady
    places: tuple[Place, ...]
    weaves: tuple[Weave, ...]
    bar: Bar
    needle: str  # points about the origin
    north: tuple[float, float]  # where its letter stands


@dataclass(frozen=True, slots=True, kw_only=True)
class MapPage:
    """The values of the map of one season."""

    year: str
    is_now: bool
    years: tuple[Link, ...]  # all maps, oldest first; the one shown leads nowhere
    drawn: Plotted
    marks: tuple[FamilyMark, ...]  # families on it, for the key
    before: tuple[tuple[Link, str], ...]  # places without room for the seasons before, and those
    zones: tuple[str, ...]  # kinds of ground it shows, for the key
    guessed: tuple[tuple[Link, str], ...]  # places of which something had to be guessed
    equal_parts: tuple[
        Link, ...
    ]  # places whose stretches are drawn alike, since nothing says how large they are
    numbered: tuple[tuple[str, Link], ...]  # places whose name has no room on the map
    not_placed: tuple[Link, ...]
    signs: tuple[tuple[Link, str, str], ...]  # place, sun, water
    headings: tuple[Link, ...]
    rows: tuple[BedRow, ...]


def has_map(ledger: Ledger) -> bool:
    """Whether any place of this build has a position."""
    return any(bed.position_m is not None for bed in ledger.garden.beds.values())


def map_pages(ledger: Ledger) -> Iterable[Page]:
    """A map for each season on record; none for a garden without positions."""
    if not has_map(ledger):
        return
    for year in ledger.years:
        yield _page(year, ledger)


def address_of(year: int, ledger: Ledger) -> str:
    """Where the map of a season stands."""
    return MAP if year == ledger.this_year else map_address(ledger.year_name(year))


def _page(year: int, ledger: Ledger) -> Page:
    name = ledger.year_name(year)
    beds = _there(year, ledger)
    placed = [(bed, found) for bed in beds if (found := footprint(bed))]
    drawing = drawing_of(_ground(ledger))
    places = _placed(placed, drawing, year, ledger)
    marks = _marks(band.families for place in places for band in place.bands)
    shown = tuple(y for y in range(year, year - YEARS_BEFORE - 1, -1) if y in ledger.years)
    values = MapPage(
        year=name,
        is_now=year == ledger.this_year,
        years=_years(year, ledger),
        drawn=_plotted(drawing, places, marks, ledger),
        marks=_marks([marks, *(place.past_families for place in places)]),
        before=tuple((place.link, place.past) for place in places if place.past and not place.past_at),
        zones=tuple(kind for kind in ZONES if any(p.kind == kind for p in ledger.garden.plan.pieces)),
        guessed=_guessed(placed, ledger),
        equal_parts=tuple(place.link for place in places if not place.is_noted),
        numbered=tuple((place.name, place.link) for place in places if place.is_numbered),
        not_placed=tuple(ledger.bed_links[bed.key] for bed in beds if bed.position_m is None),
        signs=tuple(
            (ledger.bed_links[bed.key], bed.sun or "", bed.water or "")
            for bed in beds
            if bed.sun or bed.water
        ),
        headings=tuple(Link(text=ledger.year_name(y), to=address_of(y, ledger)) for y in shown),
        rows=tuple(bed_row(bed, shown, ledger) for bed in beds),
    )
    title = "Map of the garden" if year == ledger.this_year else f"Map of the garden in {name}"
    return Page(
        address=address_of(year, ledger), template="map.html", title=title, section="map", values=values
    )


def _placed(
    placed: list[tuple[Bed, Footprint]], drawing: Drawing, year: int, ledger: Ledger
) -> tuple[Place, ...]:
    """The places with their names where they meet least."""
    places = [place_of(bed, found, drawing, year, ledger) for bed, found in placed]
    plan = ledger.garden.plan
    ground = [
        drawing.box(_box(p.position_m, p.size_m)) for p in plan.pieces if p.kind not in {"path", *ZONES}
    ]
    return named(places, ground, Box(x=0, y=0, width=drawing.width, height=drawing.height))


def _there(year: int, ledger: Ledger) -> list[Bed]:
    """The beds as they were at a season's end, or are today."""
    day = min(ledger.garden.on, ledger.year_ends(year))
    return [bed for bed in ledger.beds_on(day) if (bed.begun or date.min) <= day and bed.kind != "not noted"]


def _ground(ledger: Ledger) -> Box:
    """What is drawn: the plot, and whatever lies beyond it; the same in every season."""
    plan = ledger.garden.plan
    boxes = [found.box for bed in ledger.garden.beds.values() if (found := footprint(bed))]
    boxes += [_box(p.position_m, p.size_m) for p in plan.pieces]
    if plan.plot:
        boxes.append(_box((0.0, 0.0), plan.plot))
    return around(boxes, MARGIN)


def _box(position: tuple[float, float], size: tuple[float, float]) -> Box:
    return Box(x=position[0], y=position[1], width=size[0], height=size[1])


def _plotted(
    drawing: Drawing, places: tuple[Place, ...], marks: tuple[FamilyMark, ...], ledger: Ledger
) -> Plotted:
    plan = ledger.garden.plan
    needle = arrow(plan.north, 15)
    pieces = [Ground(kind=p.kind, box=drawing.box(_box(p.position_m, p.size_m))) for p in plan.pieces]
    length, number = round_length(drawing.ground.width, in_feet=ledger.garden.units == "imperial")
    unit = "ft" if ledger.garden.units == "imperial" else "m"
    return Plotted(
        width=drawing.width,
        height=round(drawing.height + FOOT, 1),
        ground=drawing.height,
        plot=drawing.box(_box((0.0, 0.0), plan.plot)) if plan.plot else None,
        pieces=tuple(piece for piece in pieces if piece.kind not in ZONES),
        zones=tuple(piece for piece in pieces if piece.kind in ZONES),
        places=tuple(sorted(places, key=lambda p: p.is_crown)),
        weaves=tuple(Weave(mark=m.mark, hatch=hatch_of(m.mark)) for m in marks),
        bar=Bar(length=round(length * drawing.scale, 1), words=f"{number} {unit}"),
        needle=" ".join(f"{x},{y}" for x, y in needle),
        north=(round(needle[0][0] * 1.55, 1), round(needle[0][1] * 1.55, 1)),
    )


def _marks(several: Iterable[Iterable[FamilyMark]]) -> tuple[FamilyMark, ...]:
    found = {mark.mark: mark for marks in several for mark in marks}
    return tuple(found[name] for name in sorted(found))


def _guessed(placed: list[tuple[Bed, Footprint]], ledger: Ledger) -> tuple[tuple[Link, str], ...]:
    return tuple((ledger.bed_links[bed.key], found.guessed) for bed, found in placed if found.guessed)


def _years(shown: int, ledger: Ledger) -> tuple[Link, ...]:
    return tuple(
        Link(text=ledger.year_name(year), to="" if year == shown else address_of(year, ledger))
        for year in reversed(ledger.years)
    )
