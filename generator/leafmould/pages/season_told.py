"""What opens a season's page: its words and picture, firsts and lasts, best and worst, and the months in a table."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from leafmould.garden.indexes import grouped
from leafmould.garden.model import Event, Photo, Picking, Planting
from leafmould.pages.by_date import month_address
from leafmould.pages.figures import day_figure, total_figures, weight_figure
from leafmould.pages.labels import planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Figure, Link, Plate
from leafmould.pages.plates import elsewhere, own_plates
from leafmould.reckon.season_told import Harvest, Mark
from leafmould.values.when import When
from leafmould.values.wording import MONTHS, counted

BEGINNINGS = frozenset({"started", "sowed", "resowed", "planted"})
MOST_NAMED = 8
"""Crops named in one cell of the table of months."""
WHOLE, SHORTEST = 100, 4
"""The length of the longest bar of the table, and of the shortest that is drawn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """The gardener's own words about a season, and the picture it opens with."""

    title: str
    body: str  # Markdown
    file: str
    in_text: Mapping[str, Plate]
    plate: Plate | None


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkLine:
    """A first or a last: what, when, and how it compares."""

    what: str
    on: Figure
    crops: tuple[Link, ...]
    beside: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HarvestLine:
    """A crop that gave more or less than in other seasons."""

    crop: Link
    grams: Figure
    words: str  # "the most of 3 seasons"
    middle: Figure  # of the other seasons


@dataclass(frozen=True, slots=True, kw_only=True)
class LostLine:
    """A planting that was lost."""

    link: Link
    on: Figure
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthRow:
    """A month in which something was noted."""

    month: Link
    notes: str
    begun: tuple[Link, ...]  # crops sown, started or planted
    more: int  # and so many others
    picked: tuple[Figure, ...]
    bar: int  # of WHOLE, by weight


def opening(year: int, ledger: Ledger) -> Opening:
    """The words and the picture a season opens with."""
    words = ledger.season_words.get(year)
    in_text, plates = own_plates(words, ledger) if words else ({}, ())
    plate = next((plate for plate in plates if plate.files), None)
    if plate is None and not any(p.files for p in in_text.values()):
        photo = _view(ledger.album.by_year.get(year, ()))
        plate = elsewhere(photo, ledger) if photo else None
    return Opening(
        title=(words.title or "") if words else "",
        body=words.body if words else "",
        file=words.at.file if words else "",
        in_text=in_text,
        plate=plate,
    )


def mark_lines(year: int, ledger: Ledger) -> tuple[MarkLine, ...]:
    """Firsts and lasts, and the first pickings that came earlier or later than before, in the order of days."""
    compared = ledger.seasons_told.first_pickings(year)
    told = {(mark.day, mark.crops) for mark in compared}
    others = [
        m
        for m in ledger.seasons_told.marks(year)
        if m.what != "first picking" or (m.day, m.crops) not in told
    ]
    found = sorted((*others, *compared), key=lambda mark: (mark.day, mark.crops, mark.what))
    is_running = ledger.year_ends(year) > ledger.garden.on
    return tuple(_mark(mark, ledger, is_running=is_running) for mark in found)


def best_lines(year: int, ledger: Ledger) -> tuple[HarvestLine, ...]:
    """What gave more than in any other season."""
    return tuple(_harvest(h, "most", year, ledger) for h in ledger.seasons_told.best(year))


def worst_lines(year: int, ledger: Ledger) -> tuple[HarvestLine, ...]:
    """What gave less than in any other season."""
    return tuple(_harvest(h, "least", year, ledger) for h in ledger.seasons_told.worst(year))


def lost_lines(year: int, ledger: Ledger) -> tuple[LostLine, ...]:
    """What was lost, in the order of days."""
    lost = [
        (p.lost.first, p)
        for p in ledger.plantings_by_year.get(year, ())
        if p.lost and ledger.year_of(p.lost.first) == year
    ]
    return tuple(_lost(planting, ledger) for _, planting in sorted(lost, key=lambda one: (one[0], one[1].id)))


def month_rows(year: int, ledger: Ledger) -> tuple[MonthRow, ...]:
    """The months in which something was noted, in the season's order."""
    notes: dict[tuple[int, int], int] = {}
    for entry in ledger.entries_by_year.get(year, ()):
        if entry.when:
            month = _month_of(entry.when)
            notes[month] = notes.get(month, 0) + 1
    begun = _begun(year, ledger)
    picked = grouped((_month_of(p.when), p) for p in ledger.pickings_by_year.get(year, ()))
    grams = {month: sum(p.grams or 0.0 for p in found) for month, found in picked.items()}
    most = max(grams.values(), default=0.0)
    return tuple(
        _month(
            month,
            notes[month],
            begun.get(month, ()),
            picked.get(month, ()),
            _bar(grams.get(month, 0.0), most),
            ledger,
            to=month_address(year, month, ledger),
        )
        for month in sorted(notes)
    )


def _bar(grams: float, most: float) -> int:
    """How long the bar of a month is; 0 where it would be too short to be seen as one."""
    length = round(WHOLE * grams / most) if most else 0
    return length if length >= SHORTEST else 0


def _month_of(when: When) -> tuple[int, int]:
    return when.first.year, when.first.month


def _view(photos: Sequence[Photo]) -> Photo | None:
    """A picture to open with: a view rather than a crop, wide rather than tall, from the middle of the season."""
    if not photos:
        return None
    wide = [photo for photo in photos if photo.sizes[-1][0] > photo.sizes[-1][1]]
    views = [photo for photo in wide if not photo.crops]
    found = views or wide or photos
    return found[len(found) // 2]


def _mark(mark: Mark, ledger: Ledger, *, is_running: bool) -> MarkLine:
    links = (ledger.crop_links[crop] for crop in dict.fromkeys(mark.crops) if crop in ledger.crop_links)
    return MarkLine(
        what=f"{mark.what} so far" if is_running and mark.what == "last sowing" else mark.what,
        on=day_figure(mark.day, to=ledger.to_note(mark.entry), short=True),
        crops=tuple(links),
        beside=mark.beside,
    )


def _harvest(harvest: Harvest, word: str, year: int, ledger: Ledger) -> HarvestLine:
    pickings = [
        p for p in ledger.pickings_by_crop.get(harvest.crop, ()) if ledger.year_of(p.when.first) == year
    ]
    units = ledger.garden.units
    crop = ledger.crop_links[harvest.crop]
    return HarvestLine(
        crop=crop,
        grams=weight_figure(harvest.grams, units, to=ledger.to_pickings(harvest.crop, year, pickings)),
        words=f"the {word} of {counted(harvest.seasons, 'season')}",
        middle=weight_figure(harvest.middle_g, units, to=f"{crop.to}#years"),
    )


def _lost(planting: Planting, ledger: Ledger) -> LostLine:
    assert planting.lost is not None
    bed = ledger.garden.beds[planting.bed_now].name
    return LostLine(
        link=Link(text=f"{planting_name(planting)}, {bed}", to=ledger.sections[planting.id]),
        on=day_figure(planting.lost.first, to=ledger.source_of(planting, planting.lost), short=True),
        words=planting.end_basis or "lost",
    )


def _begun(year: int, ledger: Ledger) -> Mapping[tuple[int, int], Sequence[str]]:
    """The crops sown, started or planted, by month, each once."""
    found: dict[tuple[int, int], dict[str, None]] = {}
    for event in ledger.seasons_told.events.get(year, ()):
        if _is_beginning(event):
            found.setdefault(_month_of(event.when), {}).update(dict.fromkeys(event.crops))
    return {month: tuple(crops) for month, crops in found.items()}


def _is_beginning(event: Event) -> bool:
    span = (event.when.last - event.when.first).days
    return event.verb in BEGINNINGS and span <= LONGEST_MONTH


LONGEST_MONTH = 31


def _month(
    month: tuple[int, int],
    notes: int,
    begun: Iterable[str],
    picked: Iterable[Picking],
    bar: int,
    ledger: Ledger,
    *,
    to: str,
) -> MonthRow:
    crops = [ledger.crop_links[crop] for crop in begun if crop in ledger.crop_links]
    weighed = [amount for picking in picked for amount in picking.amounts if amount.grams is not None]
    return MonthRow(
        month=Link(text=MONTHS[month[1] - 1], to=to),
        notes=counted(notes, "note"),
        begun=tuple(crops[:MOST_NAMED]),
        more=max(0, len(crops) - MOST_NAMED),
        picked=total_figures(weighed, ledger.garden.units, to=to),
        bar=bar,
    )
