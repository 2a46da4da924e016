"""What a garden remembers, in plain rows: all that looking back from the terminal needs.

Rows can be kept as JSON and asked again without reading a note. Making them is left to `recollect`, asking
to `memory`, wording to `wording`. A row is the same whether made just now or kept: lists, texts and numbers.
"""

from __future__ import annotations

from typing import Any, NamedTuple


class Name(NamedTuple):
    """A name by which the garden may be asked."""

    words: str  # folded, a space between
    kind: str
    key: str
    name: str
    of: list[str]


class PlantingRow(NamedTuple):
    """A planting."""

    id: str
    bed: str
    bed_now: str
    beds: list[str]
    crops: list[str]
    varieties: list[str]
    years: list[int]
    ended_on: str | None  # ISO
    line: str  # how it stands on the garden's day
    files: list[str]
    events: list[int]  # by their place among the events


class EventRow(NamedTuple):
    """One thing done."""

    verb: str
    beds: list[str]
    crops: list[str]
    varieties: list[str]
    first: str  # ISO
    last: str  # ISO
    subject: str  # what was seen, treated or lost to: "aphids"; "" for none
    text: str  # the line as written
    told: str  # the same, with what the header says where it is a bare verb
    line: int | None  # of the file


class NoteRow(NamedTuple):
    """A note."""

    id: str
    file: str
    line: int | None
    day: str | None  # ISO; None: no date, or a coarse one
    written: str  # the date as written; "" for none
    span: list[str]  # the first and the last day of its date, ISO; none without one
    beds: list[str]
    crops: list[str]
    varieties: list[str]
    texts: list[str]  # title, body line by line, words kept as text, lessons, tags, the gardener's own keys
    events: list[int]


class Recollection(NamedTuple):
    """All that a garden remembers on one day."""

    on: str  # ISO
    names: list[Name]
    families: dict[str, str]  # botanical names by folded words
    family_by_crop: dict[str, str]
    kin: dict[str, list[str]]  # by bed: the beds it came from and became, itself first
    plantings: list[PlantingRow]  # by start
    events: list[EventRow]
    notes: list[NoteRow]  # by date


def from_rows(held: Any) -> Recollection:
    """What was kept.

    Raises:
        TypeError, ValueError: it is none of ours.
    """
    on, names, families, family_by_crop, kin, plantings, events, notes = held
    return Recollection(
        on=on,
        names=[Name(*row) for row in names],
        families=families,
        family_by_crop=family_by_crop,
        kin=kin,
        plantings=[PlantingRow(*row) for row in plantings],
        events=[EventRow(*row) for row in events],
        notes=[NoteRow(*row) for row in notes],
    )
