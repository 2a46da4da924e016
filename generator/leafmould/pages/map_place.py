"""One place on the map: its outline, its name along it, and a hatched stretch for each thing grown there.

What stood there is cut along the longer side, one stretch a planting, as large as the notes say (`map_shares.py`); words stand in
a stretch where they fit. Names get their spots when all places are known (`map_names.py`).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from leafmould.charts.plan import Box, Drawing, Words, length_of, stretches, words_in
from leafmould.garden.footprint import CROWNED, Footprint
from leafmould.garden.model import Bed, Planting
from leafmould.garden.queries import lineage
from leafmould.pages.labels import families_of, planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.map_shares import Shares, shares_of
from leafmould.pages.page import FamilyMark, Link
from leafmould.values.names import fold

NAME, CROP, PAST = 11.5, 10.5, 9.5
"""Sizes of letters [units]."""
HEAD = 15.0
"""Room for a name inside an outline [units]."""
ROOMY = 38.0
"""An outline less deep than this has its name outside [units]."""
DEEP = 48.0
"""An outline at least so deep has room for the seasons before [units]."""
SUN_ROOM = 17.0
"""Room for the sign of the sun at the right end [units]."""
BEFORE = 3
"""Earlier seasons told inside a bed where there is room."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """One thing grown in a place."""

    link: Link
    families: tuple[FamilyMark, ...]
    hatch: str  # the mark it is hatched by; "": none
    box: Box  # [units]
    is_over: bool  # it stood there earlier in the season
    words: str  # what fits into it
    at: Words | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A place as it is drawn."""

    key: str
    link: Link
    box: Box  # [units]
    is_round: bool
    is_crown: bool
    is_open: bool  # something of its size had to be guessed
    name_at: Words
    sun: str  # "full", "half", "shade", or "" where it is not told
    wet: str  # "wet", "dry", or ""
    bands: tuple[Band, ...]
    past: str  # the seasons before, in marks
    past_at: Words | None  # where it has room for them
    past_families: tuple[FamilyMark, ...]
    says: str  # all of it in words
    is_noted: bool  # the notes say how large its stretches are, or it has but one
    sun_at: Words | None = None
    name: str = ""  # as it stands on the map: its name, or a number where there is no room for that
    is_numbered: bool = False

    @property
    def sun_box(self) -> Box | None:
        """The room the sign of the sun takes up."""
        if self.sun_at is None:
            return None
        return Box(x=self.sun_at.x - 4, y=self.sun_at.y - 4, width=8, height=8)


def place_of(bed: Bed, found: Footprint, drawing: Drawing, year: int, ledger: Ledger) -> Place:
    """A place with what grew there in a season."""
    box = drawing.box(found.box)
    is_round = found.form == "round"
    plantings = _along(bed, ledger.bed_year(bed.key, year).plantings)
    inner = box if is_round else _below_name(box)
    before = _before(bed, year, ledger)
    past = _past(before, ledger)
    past_at = None if is_round else _past_at(past, box)
    if past_at:
        inner = Box(x=inner.x, y=inner.y, width=inner.width, height=round(inner.height - PAST - 4, 1))
    shares = shares_of(plantings, ledger) if plantings else None
    return Place(
        key=bed.key,
        link=ledger.bed_links[bed.key],
        box=box,
        is_round=is_round,
        is_crown=is_round and bed.kind in CROWNED,
        is_open=bool(found.guessed),
        name_at=Words(x=box.x, y=box.y),
        sun=sun_sign(bed.sun or ""),
        sun_at=_sun_at(bed, box, is_round=is_round),
        wet=wet_sign(bed.water or ""),
        bands=_bands(plantings, shares, inner, ledger, is_round=is_round),
        past=past,
        past_at=past_at,
        past_families=tuple({mark.mark: mark for marks in before.values() for mark in marks}.values()),
        says=_says(bed, plantings, year, ledger),
        is_noted=shares is None or shares.is_noted or len(plantings) < 2,
    )


def _along(bed: Bed, plantings: Iterable[Planting]) -> list[Planting]:
    """One planting of each name, one that stands sooner than one that is over; in the order of the bed's parts where they are told."""
    named: dict[str, Planting] = {}
    for planting in plantings:
        name = planting_name(planting)
        if name not in named or (named[name].ended_on is not None and planting.ended_on is None):
            named[name] = planting
    order = {fold(part): place for place, part in enumerate(bed.parts)}
    return sorted(named.values(), key=lambda p: order.get(fold(p.part or ""), len(order)))


def _sun_at(bed: Bed, box: Box, *, is_round: bool) -> Words | None:
    """The right end of the line its name stands on; beside an outline too narrow for both."""
    if is_round or not sun_sign(bed.sun or ""):
        return None
    if min(box.width, box.height) < ROOMY and length_of(bed.name, NAME) + SUN_ROOM + 4 > box.width:
        return Words(x=round(box.right + 8, 1), y=round(box.y + box.height / 2, 1))
    return Words(x=round(box.right - 8, 1), y=round(box.y + (8 if box.height >= ROOMY else -6), 1))


def sun_sign(words: str) -> str:
    """How much sun a place has, as far as its words tell."""
    told = words.casefold()
    if any(word in told for word in ("half", "part", "morning", "afternoon", "evening", "until", "dappled")):
        return "half"
    if "shad" in told or "none" in told:
        return "shade"
    return "full" if any(word in told for word in ("full", "south", "all day", "sunny")) else ""


def wet_sign(words: str) -> str:
    """Whether a place is wet or dry, as far as its words tell; both at once tell nothing."""
    told = words.casefold()
    wet = any(word in told for word in ("wet", "moist", "damp", "bog", "stands"))
    dry = any(word in told for word in ("dry", "dries", "drains", "parched"))
    return "" if wet == dry else "wet" if wet else "dry"


def _below_name(box: Box) -> Box:
    """The part of an outline that is left beside its name."""
    if min(box.width, box.height) < ROOMY:
        return box
    if box.is_tall:
        return Box(x=box.x + HEAD, y=box.y, width=round(box.width - HEAD, 1), height=box.height)
    return Box(x=box.x, y=box.y + HEAD, width=box.width, height=round(box.height - HEAD, 1))


def _past_at(past: str, box: Box) -> Words | None:
    """The foot of an outline, where it is wide and deep enough for the seasons before."""
    if not past or box.is_tall or box.height < DEEP or box.width < length_of(past, PAST) + 8:
        return None
    return Words(x=round(box.x + 4, 1), y=round(box.far - 4, 1))


def _before(bed: Bed, year: int, ledger: Ledger) -> dict[int, tuple[FamilyMark, ...]]:
    """The families of each of the seasons before, under the names the bed had then."""
    found = {}
    for before in range(year - 1, year - BEFORE - 1, -1):
        if before in ledger.years:
            stood = [
                p for key in lineage(ledger.garden, bed.key) for p in ledger.bed_year(key, before).plantings
            ]
            found[before] = tuple({m.mark: m for p in stood for m in families_of(p, ledger)}.values())
    return found


def _past(before: Mapping[int, Iterable[FamilyMark]], ledger: Ledger) -> str:
    """The same in marks: "2025 Ni Pe · 2024 –"."""
    told = {year: " ".join(mark.mark for mark in marks) for year, marks in before.items()}
    return " · ".join(f"{ledger.year_name(year)} {marks or '–'}" for year, marks in told.items())


def _bands(
    plantings: Sequence[Planting], shares: Shares | None, box: Box, ledger: Ledger, *, is_round: bool
) -> tuple[Band, ...]:
    if shares is None or min(box.width, box.height) <= 0:
        return ()
    parts = stretches(box, shares.parts)
    return tuple(
        _band(planting, part, ledger, is_round=is_round)
        for planting, part in zip(plantings, parts, strict=True)
    )


def _band(planting: Planting, box: Box, ledger: Ledger, *, is_round: bool) -> Band:
    name = planting_name(planting)
    families = families_of(planting, ledger)
    crops = " and ".join(dict.fromkeys(planting.words)) or name
    marks = " ".join(family.mark for family in families)
    fitting = ((text, at) for text in (crops, marks) if text and (at := words_in(text, box, CROP)))
    words, at = ("", None) if is_round else next(fitting, ("", None))
    return Band(
        link=Link(text=name, to=ledger.sections[planting.id]),
        families=families,
        hatch=families[0].mark if families else "",
        box=box,
        is_over=planting.ended_on is not None and planting.ended_on <= ledger.garden.on,
        words=words,
        at=at,
    )


def _says(bed: Bed, plantings: Sequence[Planting], year: int, ledger: Ledger) -> str:
    names = ", ".join(dict.fromkeys(planting_name(p) for p in plantings))
    return f"{bed.name}: {names or ledger.bed_year(bed.key, year).told}"
