"""Small tables kept as CSV: the mark between the columns found by the header row, blanks known.

Serves the readers of records. What a column means is theirs; here a row is cells by column name.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from leafmould.values.date_words import plain
from leafmould.values.problems import Level, Location, Problem

DELIMITERS = {",": "commas", ";": "semicolons", "\t": "tabs"}
MISSING = frozenset({"", "na", "n/a", "-", "–", "?", "??", "none recorded"})
"""Cells that say nothing is known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One row of a table."""

    line: int
    cells: Mapping[str, str]  # by our column name; missing cells are left out


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows, top first, and what was wrong."""

    rows: tuple[Row, ...] = ()
    problems: tuple[Problem, ...] = ()


def read_table(
    text: str,
    file: str,
    columns: Mapping[str, Sequence[str]],
    others: Mapping[str, Sequence[str]] | None = None,
) -> Table:
    """The rows of a table with these columns.

    Args:
        columns: our name to every heading it may stand under.
        others: the same of columns that may be missing; then a heading that is neither gives a hint.
    """
    known = {**columns, **(others or {})}
    lines = text.split("\n")
    top = next((number for number, line in enumerate(lines) if line.strip(' ,;\t"')), None)
    if top is None:
        return Table()
    delimiter = _delimiter(lines[top], known)
    headings = _cells_of(lines[top], delimiter)
    places = _places(headings, known)
    missing = [name for name in columns if name not in places]
    if missing:
        names = " and ".join(f'"{name}"' for name in missing)
        expected = delimiter.join(columns)
        message = f'The first row names no column {names}. It was expected to be "{expected}".'
        return Table(problems=(_problem(file, top + 1, Level.ERROR, message),))
    problems = []
    if delimiter != ",":
        message = f"The columns are taken to be parted by {DELIMITERS[delimiter]}."
        problems.append(_problem(file, top + 1, Level.HINT, message))
    if others is not None and (message := _unread(headings, places, known)):
        problems.append(_problem(file, top + 1, Level.HINT, message))
    rows = []
    for line, cells in _rows(lines, top + 1, delimiter):
        if cells is None:
            message = "A quote is opened in this row and not closed in it, so the row is not used."
            problems.append(_problem(file, line, Level.ERROR, message))
        elif found := _named(cells, places):
            rows.append(Row(line=line, cells=found))
    return Table(rows=tuple(rows), problems=tuple(problems))


def _delimiter(header: str, columns: Mapping[str, Sequence[str]]) -> str:
    """The mark that makes most of the headings known; a comma where none does."""
    return max(DELIMITERS, key=lambda mark: (len(_places(_cells_of(header, mark), columns)), mark == ","))


def _places(headings: Sequence[str], columns: Mapping[str, Sequence[str]]) -> dict[str, int]:
    """Which of our columns stands where; the first of two with one heading."""
    known = {plain(heading): name for name, headings in columns.items() for heading in headings}
    found: dict[str, int] = {}
    for place, heading in enumerate(headings):
        name = known.get(plain(heading.strip()))
        if name is not None:
            found.setdefault(name, place)
    return found


def _unread(headings: Sequence[str], places: Mapping[str, int], known: Mapping[str, Sequence[str]]) -> str:
    """What is said of columns nobody reads."""
    unread = [name for n, h in enumerate(headings) if (name := h.strip()) and n not in places.values()]
    if not unread:
        return ""
    names = " and ".join(f'"{name}"' for name in unread)
    columns = f"{', '.join(list(known)[:-1])} and {list(known)[-1]}"
    return f"{names} is not read. The columns are {columns}."


def _rows(lines: Sequence[str], start: int, delimiter: str) -> Iterator[tuple[int, list[str] | None]]:
    """Line number and cells of each row that is not blank; None where a quote stays open."""
    for number, line in enumerate(lines[start:], start + 1):
        if not line.strip():
            continue
        yield number, None if line.count('"') % 2 else _cells_of(line, delimiter)


def _cells_of(line: str, delimiter: str) -> list[str]:
    if '"' not in line:
        return [cell.lstrip(" ") for cell in line.split(delimiter)]
    try:
        return next(csv.reader(io.StringIO(line), delimiter=delimiter, skipinitialspace=True), [])
    except csv.Error:
        return line.split(delimiter)


def _named(cells: Sequence[str], places: Mapping[str, int]) -> dict[str, str]:
    """The cells that say something, by our column names."""
    found = {}
    for name, place in places.items():
        cell = cells[place].strip() if place < len(cells) else ""
        if cell[:1].isdigit() or plain(cell) not in MISSING:
            found[name] = cell
    return found


def _problem(file: str, line: int, level: Level, message: str) -> Problem:
    return Problem(at=Location(file=file, line=line), level=level, message=message)
