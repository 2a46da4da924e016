"""Entries kept between builds, so that only changed notes are read again.

One JSON file in the garden's .leafmould folder. Kept entries count only if the file's bytes, the garden's
habits and our own program are the same; a cache that cannot be read is an empty one.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import Any

import leafmould
from leafmould.notes.as_json import from_json, to_json
from leafmould.notes.entries import Entry
from leafmould.notes.find import NoteFile
from leafmould.notes.habits import Habits

FOLDER = ".leafmould"
FILE = "notes.json"


class Kept:
    """Entries by file and habits; loaded once, saved once."""

    def __init__(self, rows: dict[str, Any] | None = None) -> None:
        self.rows = rows or {}
        self.used: dict[str, Any] = {}
        self.is_changed = False

    @classmethod
    def load(cls, garden: Path) -> Kept:
        """What an earlier run kept; nothing where that cannot be read or is not ours."""
        try:
            read = json.loads((garden / FOLDER / FILE).read_bytes())
        except (OSError, ValueError, RecursionError):
            return cls()
        if not isinstance(read, dict) or read.get("program") != program_digest():
            return cls()
        rows = read.get("notes")
        return cls(rows if isinstance(rows, dict) else None)

    def entries_of(self, file: NoteFile, habits: Habits) -> tuple[Entry, ...] | None:
        """The entries of a file as they were read before; None where it must be read."""
        if not file.digest:
            return None
        key = f"{habits_digest(habits)} {file.path}"
        row = self.rows.get(key)
        if not isinstance(row, list) or len(row) != 2 or row[0] != file.digest:
            return None
        try:
            entries = tuple(from_json(Entry, entry) for entry in row[1])
        except (LookupError, TypeError, ValueError, AttributeError):
            return None
        self.used[key] = row
        return entries

    def keep(self, file: NoteFile, habits: Habits, entries: Iterable[Entry]) -> None:
        """Remember what was read; a file that could not be opened is never remembered."""
        if file.digest:
            key = f"{habits_digest(habits)} {file.path}"
            self.used[key] = [file.digest, [to_json(entry) for entry in entries]]
            self.is_changed = True

    def save(self, garden: Path) -> None:
        """Write what this run used, beside the old file and then in its place; forget the rest."""
        if not self.is_changed and self.used.keys() == self.rows.keys():
            return
        text = json.dumps(
            {"program": program_digest(), "notes": self.used},
            ensure_ascii=False,
            separators=(",", ":"),
            sort_keys=True,
        )
        folder = garden / FOLDER
        try:
            folder.mkdir(exist_ok=True)
            _replace(folder / FILE, text.encode("utf-8", "surrogatepass"))
        except OSError:
            return  # a garden that cannot be written to is read afresh each time


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
