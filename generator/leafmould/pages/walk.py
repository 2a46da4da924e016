"""The garden walk: an ordered tour from the gardener's own page "walk", stop by stop.

A stop begins at each heading; without headings at each item of a numbered list; without either at each
paragraph that names a place. Every stop has a page of its own, with the words, a picture, what stands there
now, and the way to the stops before and after.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from leafmould.garden.model import Entry, Photo
from leafmould.notes.body import HEADING
from leafmould.notes.pictured import pictures_in
from leafmould.pages.addresses import WALK, stop_addresses
from leafmould.pages.bed import nothing_stands
from leafmould.pages.doings import cut
from leafmould.pages.free import free_title
from leafmould.pages.labels import planting_line
from leafmould.pages.ledger import Ledger
from leafmould.pages.mentions import Mentions
from leafmould.pages.page import Link, Page, PlantingLine, Plate
from leafmould.pages.plates import elsewhere, own_plates

NamesAPlace = Callable[[str], bool]
NUMBERED = re.compile(r"(?P<mark>\d{1,3}[.)][ \t]+)(?P<text>\S.*)")
MOST_IN_NAME = 2
"""A stop without a heading is called by its places, if they are no more."""
LONGEST_OPENING = 140
"""How much of a stop's words stands in the list of stops [characters]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StopBed:
    """A place at a stop, and what stands there now."""

    bed: Link
    standing: tuple[PlantingLine, ...]
    nothing_stands: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StopPage:
    """The values of one stop's page."""

    name: str
    place: str  # "Stop 3 of 9"
    body: str  # Markdown
    file: str
    in_text: Mapping[str, Plate]
    plate: Plate | None  # the newest picture of the place, where the words hold none
    beds: tuple[StopBed, ...]
    before: Link | None
    after: Link | None
    whole: Link


@dataclass(frozen=True, slots=True, kw_only=True)
class StopLine:
    """A stop in the list of all."""

    link: Link
    begins: str
    plate: Plate | None


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkPage:
    """The values of the walk's first page."""

    name: str
    opening: str  # Markdown: what stands before the first stop
    file: str
    in_text: Mapping[str, Plate]
    stops: tuple[StopLine, ...]
    is_private: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """A stop as it was written."""

    title: str  # "": it has no heading
    body: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Named:
    """A stop with its name and the beds its words name, by key."""

    name: str
    body: str
    beds: tuple[str, ...]


def walk_pages(ledger: Ledger, mentions: Mentions) -> Iterator[Page]:
    """The walk and its stops; nothing where no page is called "walk"."""
    if ledger.walk is not None:
        yield from _Walk(ledger.walk, ledger, mentions).pages()


class _Walk:
    """One walk, its stops found once."""

    def __init__(self, entry: Entry, ledger: Ledger, mentions: Mentions) -> None:
        self._entry, self._ledger = entry, ledger
        self._bed_of = {page: bed for bed, page in ledger.bed_pages.items()}
        self._mentions = mentions
        opening, stops = cut_into_stops(entry.body, lambda text: bool(self._beds_in(text)))
        self._opening = opening
        self._stops = _named([(stop, self._beds_in(f"{stop.title}\n{stop.body}")) for stop in stops], ledger)
        self._links = _links(self._stops)
        self._in_text, _ = own_plates(entry, ledger)
        self._plates = self._newest_plates()

    def pages(self) -> Iterator[Page]:
        """The first page, then each stop."""
        name = free_title(self._entry)
        values = WalkPage(
            name=name,
            opening=self._opening,
            file=self._entry.at.file,
            in_text=self._in_text,
            stops=tuple(self._line(number) for number in range(len(self._stops))),
            is_private=self._entry.is_private,
        )
        yield Page(address=WALK, template="walk.html", title=name, section="walk", values=values)
        for number, link in enumerate(self._links):
            yield Page(
                address=link.to,
                template="walk-stop.html",
                title=f"{self._stops[number].name}: {name}",
                section="walk",
                values=self._stop(number),
            )

    def _beds_in(self, text: str) -> tuple[str, ...]:
        """The beds a text names, in its order."""
        pages = (to for line in text.split("\n") for _, to in self._mentions.pieces(line) if to)
        return tuple(dict.fromkeys(self._bed_of[page] for page in pages if page in self._bed_of))

    def _line(self, number: int) -> StopLine:
        stop = self._stops[number]
        return StopLine(
            link=self._links[number], begins=_opening_words(stop.body), plate=self._plate_of(number)
        )

    def _stop(self, number: int) -> StopPage:
        stop, links = self._stops[number], self._links
        names = [picture.name for picture in pictures_in(stop.body)]
        return StopPage(
            name=stop.name,
            place=f"Stop {number + 1} of {len(links)}",
            body=stop.body,
            file=self._entry.at.file,
            in_text=self._in_text,
            plate=None if any(name in self._in_text for name in names) else self._plates[number],
            beds=tuple(self._bed(bed) for bed in stop.beds),
            before=links[number - 1] if number else None,
            after=links[number + 1] if number + 1 < len(links) else None,
            whole=Link(text=free_title(self._entry), to=WALK),
        )

    def _bed(self, key: str) -> StopBed:
        ledger = self._ledger
        standing = ledger.in_the_ground(ledger.garden.on, key)
        return StopBed(
            bed=ledger.bed_links[key],
            standing=tuple(planting_line(planting, ledger) for planting in standing),
            nothing_stands="" if standing else nothing_stands(ledger.garden.beds[key], ledger),
        )

    def _plate_of(self, number: int) -> Plate | None:
        """The first picture in a stop's words, else the newest of its places."""
        names = [picture.name for picture in pictures_in(self._stops[number].body)]
        told = [self._in_text[name] for name in names if name in self._in_text]
        return next((plate for plate in told if plate.files), self._plates[number])

    def _newest_plates(self) -> list[Plate | None]:
        """For each stop the newest picture of its places that no stop before it has."""
        by_bed: dict[str, list[Photo]] = {}
        for (bed, _), photos in sorted(self._ledger.album.by_bed_year.items()):
            by_bed.setdefault(bed, []).extend(photos)
        in_words = self._ledger.album.by_note.get(self._entry.id, ())
        shown = {photo.key or photo.path for photo in in_words}
        return [self._newest(stop.beds, by_bed, shown) for stop in self._stops]

    def _newest(
        self, beds: Sequence[str], by_bed: Mapping[str, Sequence[Photo]], shown: set[str]
    ) -> Plate | None:
        for bed in beds:
            for photo in reversed(by_bed.get(bed, ())):
                if (photo.key or photo.path) not in shown:
                    shown.add(photo.key or photo.path)
                    return elsewhere(photo, self._ledger, bed=bed)
        return None


def cut_into_stops(body: str, names_a_place: NamesAPlace) -> tuple[str, tuple[Stop, ...]]:
    """What stands before the first stop, and the stops.

    Args:
        names_a_place: whether a text names a bed.
    """
    rows = body.split("\n")
    levels = [len(m[1]) for row in rows if (m := HEADING.match(row)) and m["text"]]
    if levels:
        return _by_headings(rows, min(levels))
    if sum(1 for row in rows if NUMBERED.match(row)) > 1:
        return _by_numbers(rows)
    return _by_paragraphs(body, names_a_place)


def _by_headings(rows: Sequence[str], level: int) -> tuple[str, tuple[Stop, ...]]:
    begins = [
        (n, m["text"]) for n, row in enumerate(rows) if (m := HEADING.match(row)) and len(m[1]) == level
    ]
    ends = [n for n, _ in begins[1:]] + [len(rows)]
    stops = [
        Stop(title=(title or "").strip(), body=_joined(rows[begin + 1 : end]))
        for (begin, title), end in zip(begins, ends, strict=True)
    ]
    return _joined(rows[: begins[0][0]]), tuple(stops)


def _by_numbers(rows: Sequence[str]) -> tuple[str, tuple[Stop, ...]]:
    begins = [n for n, row in enumerate(rows) if NUMBERED.match(row)]
    stops = []
    for begin, end in zip(begins, [*begins[1:], len(rows)], strict=True):
        m = NUMBERED.match(rows[begin])
        depth = len(m["mark"]) if m else 0
        rest = [row[depth:] if not row[:depth].strip() else row for row in rows[begin + 1 : end]]
        stops.append(Stop(title="", body=_joined([rows[begin][depth:], *rest])))
    return _joined(rows[: begins[0]]), tuple(stops)


def _by_paragraphs(body: str, names_a_place: NamesAPlace) -> tuple[str, tuple[Stop, ...]]:
    opening: list[str] = []
    stops: list[list[str]] = []
    for block in re.split(r"\n[ \t]*\n", body):
        if names_a_place(block):
            stops.append([block])
        else:
            (stops[-1] if stops else opening).append(block)
    return "\n\n".join(opening).strip(), tuple(Stop(title="", body="\n\n".join(stop)) for stop in stops)


def _joined(rows: Sequence[str]) -> str:
    return "\n".join(rows).strip("\n").rstrip()


def _named(stops: Sequence[tuple[Stop, tuple[str, ...]]], ledger: Ledger) -> tuple[_Named, ...]:
    """Each stop with its name: its heading, else its places, else its number. Beds that have ended are no places."""
    there = {bed.key: bed.name for bed in ledger.beds_on(ledger.garden.on)}
    found: list[_Named] = []
    for number, (stop, named) in enumerate(stops, start=1):
        keys = tuple(key for key in named if key in there)
        places = " and ".join(there[key] for key in keys[:MOST_IN_NAME])
        name = stop.title or places or f"Stop {number}"
        found.append(_Named(name=name, body=stop.body, beds=keys))
    return tuple(found)


def _links(stops: Sequence[_Named]) -> tuple[Link, ...]:
    """A page for each stop; of two of one name the second has its number."""
    keys: list[str] = []
    for stop in stops:
        number = sum(1 for other in stops[: len(keys)] if other.name == stop.name)
        keys.append(f"{stop.name} {number + 1}" if number else stop.name)
    pages = stop_addresses(keys)
    return tuple(Link(text=stop.name, to=pages[key]) for stop, key in zip(stops, keys, strict=True))


def _opening_words(body: str) -> str:
    """How a stop's words begin, without marks."""
    plain = re.sub(r"!\[[^\]]*\]\([^)]*\)|[*_`>#]", "", body)
    words = " ".join(re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", plain).split())
    return cut(words, LONGEST_OPENING)
