"""A planting in one line, and the answer to a question, as the terminal shows them and as JSON.

Shared by `find` and `note`, so that both say of a planting what its page says.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from leafmould.garden.model import Garden, Planting
from leafmould.garden.queries import years_in_bed
from leafmould.lookup.memory import Found, FoundNote
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.badges import badges
from leafmould.reckon.forecast import expected
from leafmould.report import JSON_VERSION, counted
from leafmould.values.wording import day, when_words

MOST_NOTES = 20
"""How many notes an answer shows before the rest is only counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Teller:
    """Says how plantings stand on the garden's day."""

    garden: Garden
    almanac: Almanac

    def line(self, planting: Planting) -> str:
        """ "beetroot, Long border: sown today, expected 4–18 July"."""
        return f"{self.name(planting)}: {self.labels(planting)}"

    def labels(self, planting: Planting) -> str:
        """ "sown today, expected 4–18 July"; of what is over, also when it began."""
        labels = [badge.text for badge in badges(planting, self.garden, expected(planting, self.almanac))]
        if planting.ended_on and planting.start and planting.origin != "year only":
            labels.insert(0, f"{_begun(planting)} {when_words(planting.start)}")
        return ", ".join(labels)

    def name(self, planting: Planting) -> str:
        """ "leek 'Musselburgh', Long border, north half"."""
        varieties = (" or " if planting.is_doubtful else " and ").join(f"'{v}'" for v in planting.varieties)
        words = " and ".join(dict.fromkeys(planting.words)) or "crop not known"
        place = [self.garden.beds[planting.bed_now].name, *([planting.part] if planting.part else [])]
        return ", ".join([f"{words} {varieties}".strip(), *place])


def found_lines(found: Found, teller: Teller, *, everything: bool) -> tuple[str, ...]:
    """The answer for the terminal: plantings by the year they began, then notes, then the counts."""
    if not found.plantings and not found.notes:
        return (_nothing(found),)
    return (*_plantings(found.plantings, teller), *_notes(found.notes, everything), _counts(found))


def found_json(found: Found, teller: Teller) -> dict[str, object]:
    """The answer for other programs."""
    return {
        "version": JSON_VERSION,
        "on": teller.garden.on.isoformat(),
        "asked": [term.written for term in found.terms],
        "nearest": found.nearest,
        "plantings": [_planting_json(planting, teller) for planting in found.plantings],
        "notes": [_note_json(note) for note in found.notes],
    }


def _begun(planting: Planting) -> str:
    return {
        "started": "started",
        "sown": "sown",
        "self-sown": "found",
        "unknown": "noted first",
    }.get(planting.origin, "planted")


def _plantings(plantings: Sequence[Planting], teller: Teller) -> Iterator[str]:
    by_year: dict[int, list[Planting]] = {}
    for planting in plantings:
        by_year.setdefault(next(iter(years_in_bed(planting, teller.garden)), 0), []).append(planting)
    for year in sorted(by_year, reverse=True):
        yield str(year) if year else "Year not known"
        yield from (f"  {teller.line(planting)}" for planting in by_year[year])
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
    return day(note.day) if note.day else note.written or "No date"


def _spot(note: FoundNote) -> str:
    return note.file if note.line is None else f"{note.file}:{note.line}"


def _planting_json(planting: Planting, teller: Teller) -> dict[str, object]:
    return {
        "id": planting.id,
        "bed": planting.bed,
        "bed_now": planting.bed_now,
        "crops": list(planting.crops),
        "varieties": list(planting.varieties),
        "years": list(years_in_bed(planting, teller.garden)),
        "ended_on": _iso(planting.ended_on),
        "line": teller.line(planting),
        "notes": sorted({teller.garden.entry_by_id[id_].at.file for id_ in planting.entries}),
    }


def _note_json(note: FoundNote) -> dict[str, object]:
    return {
        "file": note.file,
        "line": note.line,
        "on": _iso(note.day),
        "date_written": note.written,
        "lines": list(note.lines),
    }


def _iso(on: date | None) -> str | None:
    return on.isoformat() if on else None
