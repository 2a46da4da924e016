"""All notes to their entries, and the varieties they name.

The first reading of a run, and the second for notes that learned varieties could change. Entries of files
that are unchanged come from the cache; what reads a note afresh is large and loaded only when one must be.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from leafmould.notes.cache import Kept
from leafmould.notes.entries import Entry, Named, Sureness
from leafmould.notes.find import NoteFile
from leafmould.notes.habits import Habits
from leafmould.values.names import Kind, Known


def read_all(files: Iterable[NoteFile], habits: Habits, kept: Kept | None) -> tuple[Entry, ...]:
    """The entries of all notes, file by file; those of unchanged files come from the cache."""
    found: list[Entry] = []
    taken: set[str] = set()
    for file in sorted(files, key=lambda f: f.path):
        entries = kept.entries_of(file, habits) if kept else None
        if entries is None:
            from leafmould.notes.note import read_note

            entries = read_note(file, habits)
            if kept:
                kept.keep(file, habits, entries)
        found.extend(_with_own_ids(entries, file, taken))
    return tuple(found)


def _with_own_ids(entries: tuple[Entry, ...], file: NoteFile, taken: set[str]) -> tuple[Entry, ...]:
    """Entries of x.txt keep their ending in their ids where an x.md stands beside it."""
    if any(entry.id in taken for entry in entries):
        base, ending = file.path.removeprefix("notes/").rsplit(".", 1)
        entries = tuple(replace(e, id=f"{base}.{ending}{e.id.removeprefix(base)}") for e in entries)
    taken.update(entry.id for entry in entries)
    return entries


def learned_varieties(entries: Iterable[Entry]) -> tuple[tuple[str, Known], ...]:
    """Varieties that notes name surely, by name, for a second reading of notes that leave theirs unquoted."""
    crops: dict[str, set[str]] = {}
    for entry in entries:
        headed = {key for crop in entry.crops for key in crop.of or (crop.key,)}
        _learn(crops, entry.varieties, headed)
        for action in entry.actions:
            _learn(crops, action.varieties, {key for crop in action.crops for key in crop.of or (crop.key,)})
    return tuple(
        (name, Known(kind=Kind.VARIETY, key=name, name=name, of=tuple(sorted(of))))
        for name, of in sorted(crops.items())
    )


def _learn(crops: dict[str, set[str]], varieties: Iterable[Named], of: set[str]) -> None:
    for variety in varieties:
        if variety.sureness in (Sureness.KNOWN, Sureness.NEW):
            crops.setdefault(variety.key, set()).update(variety.of or of)
