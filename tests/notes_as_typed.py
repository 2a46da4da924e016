"""Reading notes and settings in tests as the program reads them, from text as a gardener types it."""

from __future__ import annotations

from functools import lru_cache
from textwrap import dedent

from leafmould.facts.tables import crops
from leafmould.garden.vocabulary import build_vocabulary
from leafmould.notes.entries import Action, Entry
from leafmould.notes.find import NoteFile, digest_of
from leafmould.notes.garden_file import read_garden_file
from leafmould.notes.lines import Habits
from leafmould.notes.note import read_note
from leafmould.notes.setting_values import Settings
from leafmould.notes.text import clean_text
from leafmould.values.problems import Problem
from leafmould.values.when import When

GARDEN = """
    garden: Tansy Hill
    dates: day first
    decimal: point
    words: {semé: sowed}
    beds:
      - {name: Long border, also: [LB], parts: [north half, south half]}
      - {name: Arch}
      - {name: North}
      - {name: Top bed}
      - {name: Balcony, kind: container}
      - {name: Trough 2, kind: container}
"""


def settings(text: str = GARDEN) -> Settings:
    """Settings from the text of a garden.yaml."""
    return read_garden_file(clean_text(dedent(text).encode(), "garden.yaml"))


@lru_cache(maxsize=8)
def habits(text: str = GARDEN) -> Habits:
    """How the lines of that garden are read."""
    read = settings(text)
    return Habits(
        vocabulary=build_vocabulary(read, crops()),
        order=read.dates,
        decimal=read.decimal,
        is_southern=read.is_southern,
    )


def note_file(text: str | bytes, path: str = "2026/06-20-x.md") -> NoteFile:
    """A note file with this text; indentation shared by all lines is taken away."""
    raw = dedent(text).removeprefix("\n").encode() if isinstance(text, str) else text
    clean = clean_text(raw, f"notes/{path}")
    return NoteFile(path=f"notes/{path}", text=clean.text, digest=digest_of(raw), problems=clean.problems)


def entries(text: str | bytes, path: str = "2026/06-20-x.md", garden: str = GARDEN) -> tuple[Entry, ...]:
    """The entries of one note."""
    return read_note(note_file(text, path), habits(garden))


def entry(text: str | bytes, path: str = "2026/06-20-x.md", garden: str = GARDEN) -> Entry:
    """The only entry of one note."""
    (only,) = entries(text, path, garden)
    return only


def told(found: Entry | tuple[Entry, ...] | tuple[Problem, ...]) -> list[str]:
    """Problems as "line level: field: sentence", without the file."""
    if isinstance(found, Entry):
        found = found.problems
    problems = [p for f in found for p in (f.problems if isinstance(f, Entry) else (f,))]
    return [_told(problem) for problem in problems]


def _told(problem: Problem) -> str:
    line = (
        problem.sentence.removeprefix(problem.at.file).removeprefix(f":{problem.at.line}").removeprefix(": ")
    )
    return f"{problem.at.line or ''} {problem.level}: {line}".strip()


def done(action: Action) -> str:
    """An action in short: "sowed pea 'Meteor' in Arch"."""
    words = [action.verb, *(c.name for c in action.crops), *(f"'{v.name}'" for v in action.varieties)]
    if action.amounts:
        words.append("(" + ", ".join(a.written for a in action.amounts) + ")")
    if action.places:
        words += ["in", " + ".join(p.name for p in action.places)]
    return " ".join(words) + (f", {action.part}" if action.part else "")


def all_done(found: Entry | tuple[Entry, ...]) -> list[str]:
    """All actions in short."""
    return [done(a) for e in ((found,) if isinstance(found, Entry) else found) for a in e.actions]


def span(when: When | None) -> str | None:
    """A date as "2026-06-20" or "2026-06-01..2026-06-30"."""
    if when is None:
        return None
    return when.first.isoformat() if when.is_exact else f"{when.first}..{when.last}"
