"""Entries kept between builds, so that only changed notes are read again.

One file in the garden's .leafmould folder, a line a note, so that a line that still holds is written again as it
stands. Kept entries count only if the file's bytes, the garden's habits and our own program are the same; a
cache that cannot be read is an empty one.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Iterable, Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

import leafmould
from leafmould.notes.as_json import from_json, to_json
from leafmould.notes.entries import Entry
from leafmould.notes.find import NoteFile
from leafmould.notes.habits import Habits

FOLDER = ".leafmould"
FILE = "notes.txt"

WRITTEN = json.JSONEncoder(ensure_ascii=False, check_circular=False, separators=(",", ":"))

Row = tuple[str, str]
"""The digest of a note's file, and its entries as JSON, in which no line ends."""


class Kept:
    """Entries by file and habits; loaded once, saved once."""

    def __init__(self, rows: Mapping[str, Row] | None = None) -> None:
        self.rows = rows or {}
        self.used: dict[str, Row] = {}

    @classmethod
    def load(cls, garden: Path) -> Kept:
        """What an earlier run kept; nothing where that cannot be read or is not ours."""
        try:
            text = (garden / FOLDER / FILE).read_bytes().decode("utf-8", "surrogatepass")
        except (OSError, ValueError):
            return cls()
        program, *lines = text.split("\n")
        if program != program_digest():
            return cls()
        parts = (line.rsplit("\t", 2) for line in lines)
        return cls({row[0]: (row[1], row[2]) for row in parts if len(row) == 3})

    def entries_of(self, file: NoteFile, habits: Habits) -> tuple[Entry, ...] | None:
        """The entries of a file as they were read before; None where it must be read."""
        key = f"{habits_digest(habits)} {file.path}"
        row = self.rows.get(key)
        if row is None or not file.digest or row[0] != file.digest:
            return None
        try:
            entries = tuple([from_json(Entry, entry) for entry in _listed(row[1])])
        except (LookupError, TypeError, ValueError, AttributeError, RecursionError):
            return None
        self.used[key] = row
        return entries

    def keep(self, file: NoteFile, habits: Habits, entries: Iterable[Entry]) -> None:
        """Remember what was read; a file that could not be opened is never remembered."""
        if file.digest and "\n" not in file.path:
            held = WRITTEN.encode([to_json(entry) for entry in entries])
            self.used[f"{habits_digest(habits)} {file.path}"] = (file.digest, held)

    def save(self, garden: Path) -> None:
        """Write what this run used, beside the old file and then in its place; forget the rest."""
        if self.used == self.rows:
            return
        lines = [f"{key}\t{digest}\t{held}" for key, (digest, held) in sorted(self.used.items())]
        folder = garden / FOLDER
        try:
            folder.mkdir(exist_ok=True)
            _replace(folder / FILE, "\n".join([program_digest(), *lines]).encode("utf-8", "surrogatepass"))
        except OSError:
            return  # a garden that cannot be written to is read afresh each time


def _listed(held: str) -> list[Any]:
    """What JSON tells of; a list, or it is none of ours."""
    found = json.loads(held)
    if not isinstance(found, list):
        raise TypeError(f"{held!r} is not what was kept")
    return found


def _replace(path: Path, raw: bytes) -> None:
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(raw)
        Path(name).replace(path)
    except OSError:
        Path(name).unlink(missing_ok=True)
        raise


def habits_digest(habits: Habits) -> str:
    """A short name for everything lines are read with."""
    parts = (habits.vocabulary.digest, habits.order, habits.decimal, habits.units, habits.is_southern)
    return _digest(parts)


@lru_cache(maxsize=10)
def _digest(parts: tuple[str | bool | None, ...]) -> str:
    return hashlib.blake2b(repr(parts).encode(), digest_size=12).hexdigest()


@lru_cache(maxsize=1)
def program_digest() -> str:
    """A short name for this program: its version, and the text of every module that reads notes."""
    digest = hashlib.blake2b(leafmould.__version__.encode(), digest_size=12)
    package = Path(leafmould.__file__).parent
    for room in ("values", "notes"):
        for source in sorted((package / room).rglob("*.py")):
            digest.update(source.read_bytes())
    return digest.hexdigest()
