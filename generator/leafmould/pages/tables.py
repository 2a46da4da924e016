"""Every table of the garden as CSV, each column with what it means, for spreadsheets and other programs.

Made from the same garden as the pages. Commas part the cells, the text is UTF-8, days are ISO, numbers have a point, an unknown
cell is empty. A cell that a spreadsheet would take for a formula gets an apostrophe before it; numbers are left as they are.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from leafmould.pages.ledger import Ledger
from leafmould.pages.table_schemas import ENDING, table_schema
from leafmould.report import JSON_VERSION
from leafmould.values.when import When

FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet takes for the beginning of a formula (OWASP, CSV Injection)."""
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
ROW = json.JSONEncoder(ensure_ascii=False, check_circular=False, allow_nan=False)
"""Writes a row; one for all, since a large garden has tens of thousands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """One table: its file, what a row is, and its columns with what each means."""

    name: str  # "plantings"
    about: str  # "a row for every planting"
    columns: tuple[tuple[str, str], ...]
    rows: Callable[[Ledger], Iterable[Sequence[object]]]

    @property
    def file(self) -> str:
        """Its address inside the site."""
        return f"data/{self.name}.csv"

    @property
    def json(self) -> str:
        """The address of the same as JSON; "" where a file with a contract of its own holds it."""
        return "" if self.name in ("plantings", "pickings") else f"data/{self.name}.json"

    @property
    def schema(self) -> str:
        """The address of what the JSON promises."""
        return f"data/{self.name}{ENDING}"


def table_files(ledger: Ledger) -> dict[str, bytes]:
    """The tables that have rows, as files by name: CSV, and JSON where no other file holds the same."""
    files: dict[str, bytes] = {}
    for table in TABLES:
        if rows := [tuple(row) for row in table.rows(ledger)]:
            files[table.file] = _csv(table, rows)
            if table.json:
                files[table.json] = _json(table, rows, ledger)
                files[table.schema] = table_schema(table.name, table.about, table.columns)
    return files


def tables_of(ledger: Ledger) -> tuple[Table, ...]:
    """The tables that have rows."""
    return tuple(table for table in TABLES if next(iter(table.rows(ledger)), None) is not None)


def _csv(table: Table, rows: Iterable[Sequence[object]]) -> bytes:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([name for name, _ in table.columns])
    for row in rows:
        writer.writerow(map(_cell, row))
    return out.getvalue().encode("utf-8", "replace")


def _json(table: Table, rows: Iterable[Sequence[object]], ledger: Ledger) -> bytes:
    """The same as a list of objects, one a line, in the envelope every data file has."""
    names = [name for name, _ in table.columns]
    lines = ",\n".join([ROW.encode(dict(zip(names, row, strict=True))) for row in rows])
    on = ledger.garden.on.isoformat()
    text = f'{{"version": {JSON_VERSION}, "on": "{on}", "{table.name}": [\n{lines}\n]}}\n'
    return text.encode("utf-8", "replace")


def _cell(value: object) -> str:
    if not value:  # most cells are empty
        return "" if value is None else _text(value)
    return _text(value) if not isinstance(value, str) or value[0] in FORMULA or "\x00" in value else value


def _text(value: object) -> str:
    """What is no plain text, and text that a spreadsheet would take for more."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{round(value, 3):g}" if abs(value) < 1e6 else str(round(value))
    text = str(value).replace("\x00", "")
    return f"'{text}" if text.startswith(FORMULA) and not NUMBER.fullmatch(text) else text


def _day(when: When | None) -> str | None:
    """The day, or a coarse date as it was written."""
    if when is None:
        return None
    return when.day.isoformat() if when.day else when.written


def _names(keys: Iterable[str], known: Any) -> str:
    return "; ".join(known[key].name if key in known else key for key in keys)


def _plantings(ledger: Ledger) -> Iterator[Sequence[object]]:
    garden = ledger.garden
    for p in garden.plantings:
        forecast = ledger.reckoned.forecasts.get(p.id) if p.is_open else None
        yield (
            p.id,
            _names(p.crops, garden.crops),
            "; ".join(p.varieties),
            _names((p.bed,), garden.beds),
            _names((p.bed_now,), garden.beds),
            p.part,
            p.origin,
            p.number,
            _day(p.started),
            _day(p.sown),
            _day(p.planted),
            _day(p.came_up),
            _day(p.first_picked),
            _day(p.last_picked),
            p.ended_on.isoformat() if p.ended_on else None,
            p.end_basis,
            forecast.earliest.isoformat() if forecast else None,
            forecast.likely.isoformat() if forecast else None,
            forecast.latest.isoformat() if forecast else None,
            p.picked_g,
            "; ".join(dict.fromkeys(garden.entry_by_id[e].at.file for e in p.entries)),
        )


def _pickings(ledger: Ledger) -> Iterator[Sequence[object]]:
    garden = ledger.garden
    for p in garden.pickings:
        fates = ", ".join(f"{f.kind} {f.amount.written if f.amount else ''}".strip() for f in p.fates)
        yield (
            _day(p.when),
            _names(p.crops, garden.crops),
            "; ".join(p.varieties),
            _names((p.bed,) if p.bed else (), garden.beds),
            p.planting,
            ", ".join(amount.written for amount in p.amounts),
            p.grams,
            fates,
            garden.entry_by_id[p.entry].at.file,
        )


def _doings(ledger: Ledger) -> Iterator[Sequence[object]]:
    garden = ledger.garden
    for e in garden.events:
        readings = ", ".join(f"{name} {amount.written}" for name, amount in e.action.readings)
        yield (
            _day(e.when),
            e.verb,
            _names(e.crops, garden.crops),
            "; ".join(e.varieties),
            _names(e.beds, garden.beds),
            e.part,
            ", ".join(amount.written for amount in e.action.amounts),
            e.action.subject,
            readings,
            e.action.text,
            garden.entry_by_id[e.entry].at.file,
        )


def _notes(ledger: Ledger) -> Iterator[Sequence[object]]:
    for entry in ledger.garden.entries:
        yield (
            _day(entry.when),
            entry.title,
            "; ".join(entry.tags),
            " ".join(entry.body.split()),
            "; ".join(entry.lesson),
            entry.at.file,
            ledger.to_note(entry.id),
        )


def _beds(ledger: Ledger) -> Iterator[Sequence[object]]:
    garden = ledger.garden
    for bed in garden.beds.values():
        yield (
            bed.name,
            bed.kind,
            bed.size_written,
            None if bed.area_m2 is None else round(bed.area_m2, 3),
            bed.sun,
            bed.water,
            bed.soil,
            "; ".join(bed.parts),
            bed.begun.isoformat() if bed.begun else None,
            bed.ended.isoformat() if bed.ended else None,
            _names(bed.came_from, garden.beds),
            ledger.bed_pages[bed.key],
        )


def _crops(ledger: Ledger) -> Iterator[Sequence[object]]:
    for crop in ledger.garden.crops.values():
        yield crop.name, crop.family, crop.grown_as, crop.is_tender, ledger.crop_pages[crop.key]


def _seeds(ledger: Ledger) -> Iterator[Sequence[object]]:
    for lot in ledger.reckoned.tin:
        row = lot.row
        yield (
            lot.word,
            lot.variety,
            lot.year,
            row.amount if row else None,
            lot.age,
            row.source if row else None,
            row.price if row else None,
            "; ".join(lot.sown),
            (lot.left.grams if lot.left.seeds is None else lot.left.seeds) if lot.left else None,
        )


def _weather(ledger: Ledger) -> Iterator[Sequence[object]]:
    for day in ledger.reckoned.warmth.weather:
        yield day.on.isoformat(), day.low, day.high, day.rain


NOTE = ("note", "the note's file, inside the garden folder")
PLANTING = ("planting", "the planting's id")
TABLES = (
    Table(
        name="plantings",
        about="a row for every planting",
        columns=(
            PLANTING,
            ("crop", "the gardener's word; several parted by semicolons"),
            ("variety", "as written"),
            ("bed", "where it began"),
            ("bed now", "where it stands or ended"),
            ("part", "part of the bed, as written"),
            ("origin", "started, sown, planted, bought, moved, self-sown, year only or unknown"),
            ("number", "plants or seeds, as far as written"),
            ("started", "sown under glass: the day, or a coarse date as written"),
            ("sown", "sown where it grows"),
            ("planted", "set out"),
            ("came up", "seedlings seen"),
            ("first picked", "the day of the first picking"),
            ("last picked", "the day of the last picking so far"),
            ("ended", "the day it ended; empty while it stands"),
            ("how it ended", "cleared, lost to something, presumed over"),
            ("earliest", "expected first picking, while it stands"),
            ("likely", "the same"),
            ("latest", "the same"),
            ("picked g", "weighed in all, in grams"),
            ("notes", "files of the notes that tell of it"),
        ),
        rows=_plantings,
    ),
    Table(
        name="pickings",
        about="a row for every picking",
        columns=(
            ("day", "the day, or a coarse date as written"),
            ("crop", "the gardener's word"),
            ("variety", "as written"),
            ("bed", "where it was picked"),
            PLANTING,
            ("amount", "as written"),
            ("grams", "where it was weighed, or the garden's own measure says"),
            ("where it went", "given away, stored and so on, as far as written"),
            NOTE,
        ),
        rows=_pickings,
    ),
    Table(
        name="doings",
        about="a row for every thing done or seen",
        columns=(
            ("day", "the day, or a coarse date as written"),
            ("done", "in one plain word for all its forms"),
            ("crop", "the gardener's word"),
            ("variety", "as written"),
            ("bed", "where"),
            ("part", "part of the bed, as written"),
            ("amount", "as written"),
            ("what", "what was seen, fed, treated or covered with"),
            ("readings", "temperature, pH, rain and the like, as written"),
            ("words", "the line as it was written"),
            NOTE,
        ),
        rows=_doings,
    ),
    Table(
        name="notes",
        about="a row for every note",
        columns=(
            ("day", "the day, or a coarse date as written"),
            ("title", "as written"),
            ("tags", "as written"),
            ("words", "the text, on one line"),
            ("lessons", "what to do next year"),
            NOTE,
            ("page", "its page in this site"),
        ),
        rows=_notes,
    ),
    Table(
        name="beds",
        about="a row for every place",
        columns=(
            ("bed", "its name"),
            ("kind", "bed, container, row, tree and so on"),
            ("size", "as written"),
            ("area m2", "where it can be told"),
            ("sun", "as written"),
            ("water", "as written"),
            ("soil", "as written"),
            ("parts", "as written"),
            ("from", "the day it began, where told"),
            ("until", "the day it ended, where it has"),
            ("came from", "the beds it was before"),
            ("page", "its page in this site"),
        ),
        rows=_beds,
    ),
    Table(
        name="crops",
        about="a row for every crop of the notes",
        columns=(
            ("crop", "the gardener's word"),
            ("family", "botanical"),
            ("grown as", "annual, overwintered, biennial or perennial"),
            ("killed by frost", "yes or no"),
            ("page", "its page in this site"),
        ),
        rows=_crops,
    ),
    Table(
        name="seeds",
        about="a row for every packet in the seed tin",
        columns=(
            ("crop", "as written"),
            ("variety", "as written"),
            ("year", "in which it was got or saved"),
            ("amount", "as written"),
            ("age", "in years"),
            ("from", "who sold or gave it, where this build may say"),
            ("price", "where this build may say"),
            ("sown", "plantings from it, as far as can be told"),
            ("left", "seeds or grams by the notes, where it was counted"),
        ),
        rows=_seeds,
    ),
    Table(
        name="weather",
        about="a row for every measured day",
        columns=(("day", "the day"), ("low", "°C"), ("high", "°C"), ("rain", "mm")),
        rows=_weather,
    ),
)
"""Every table, in the order they are told."""
