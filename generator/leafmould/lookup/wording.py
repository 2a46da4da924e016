"""The answer to a question, as the terminal shows it and as JSON."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from leafmould.lookup.memory import Found, FoundNote
from leafmould.lookup.recollection import PlantingRow
from leafmould.report import JSON_VERSION, counted
from leafmould.values.wording import day

MOST_NOTES = 20
"""How many notes an answer shows before the rest is only counted."""


def found_lines(found: Found, *, everything: bool) -> tuple[str, ...]:
    """The answer for the terminal: plantings by the year they began, then notes, then the counts."""
    if not found.plantings and not found.notes:
        return (_nothing(found),)
    return (*_plantings(found.plantings), *_notes(found.notes, everything), _counts(found))


def found_json(found: Found) -> dict[str, object]:
    """The answer for other programs."""
    return {
        "version": JSON_VERSION,
        "on": found.on,
        "asked": [term.written for term in found.terms],
        "nearest": found.nearest,
        "plantings": [_planting_json(planting) for planting in found.plantings],
        "notes": [_note_json(note) for note in found.notes],
    }


def _plantings(plantings: Sequence[PlantingRow]) -> Iterator[str]:
    by_year: dict[int, list[PlantingRow]] = {}
    for planting in plantings:
        by_year.setdefault(next(iter(planting.years), 0), []).append(planting)
    for year in sorted(by_year, reverse=True):
        yield str(year) if year else "Year not known"
        yield from (f"  {planting.line}" for planting in by_year[year])
    if plantings:
        yield ""


def _notes(notes: Sequence[FoundNote], everything: bool) -> Iterator[str]:
    shown = notes if everything else notes[:MOST_NOTES]
    for note in shown:
        yield f"{_date(note)}  {_spot(note)}"
        yield from (f"  {line}" for line in note.lines)
    if rest := len(notes) - len(shown):
        yield f"… and {counted(rest, 'older note')}: add --all"
    if notes:
        yield ""


def _counts(found: Found) -> str:
    return f"{counted(len(found.plantings), 'planting')} and {counted(len(found.notes), 'note')}."


def _nothing(found: Found) -> str:
    asked = " ".join(term.written for term in found.terms)
    ask = f' Did you mean "{found.nearest}"?' if found.nearest else ""
    return f'Nothing is noted about "{asked}".{ask}'


def _date(note: FoundNote) -> str:
    return day(date.fromisoformat(note.day)) if note.day else note.written or "No date"


def _spot(note: FoundNote) -> str:
    return note.file if note.line is None else f"{note.file}:{note.line}"


def _planting_json(planting: PlantingRow) -> dict[str, object]:
    return {
        "id": planting.id,
        "bed": planting.bed,
        "bed_now": planting.bed_now,
        "crops": planting.crops,
        "varieties": planting.varieties,
        "years": planting.years,
        "ended_on": planting.ended_on,
        "line": planting.line,
        "notes": planting.files,
    }


def _note_json(note: FoundNote) -> dict[str, object]:
    return {
        "file": note.file,
        "line": note.line,
        "on": note.day,
        "date_written": note.written,
        "lines": list(note.lines),
    }
