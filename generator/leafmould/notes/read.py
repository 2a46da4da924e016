"""All notes to their entries, and the varieties and places they name.

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
from leafmould.notes.words.nouns import PLACE_NOUNS
from leafmould.values.names import Kind, Known, fold, slug


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


def learned_places(entries: Iterable[Entry]) -> dict[str, frozenset[str]]:
    """Beds that notes made with "in" or "into", each with the files that did: what they are called, other notes may say too.

    Only names that end as a bed's name does, in two words or more: "Tin bath", not "Sun".
    """
    made: dict[str, set[str]] = {}
    for entry in entries:
        for action in entry.actions:
            for place in (*action.places, *action.origins):
                if place.sureness is Sureness.NEW and _is_bed_name(place.written):
                    made.setdefault(place.name, set()).add(entry.at.file)
    return {name: frozenset(made[name]) for name in sorted(made)}


def _is_bed_name(written: str) -> bool:
    words = fold(written)
    return len(words) > 1 and (words[-1] in PLACE_NOUNS or words[-1].isdigit())


def as_beds(names: Iterable[str]) -> tuple[tuple[str, Known], ...]:
    """Learned places as names to read with."""
    return tuple((name, Known(kind=Kind.BED, key=slug(name), name=name)) for name in names)


def files_naming(entries: Iterable[Entry], places: dict[str, frozenset[str]]) -> frozenset[str]:
    """The files that name a place another file made."""
    if not places:
        return frozenset()
    found = {name.casefold(): files for name, files in places.items()}
    return frozenset(
        entry.at.file
        for entry in entries
        for text in (_text_of(entry).casefold(),)
        if any(name in text and entry.at.file not in files for name, files in found.items())
    )


def _text_of(entry: Entry) -> str:
    return "\n".join((entry.body, *(a.text for a in entry.actions), *(w.text for w in entry.words)))


def _learn(crops: dict[str, set[str]], varieties: Iterable[Named], of: set[str]) -> None:
    for variety in varieties:
        if variety.sureness in (Sureness.KNOWN, Sureness.NEW):
            crops.setdefault(variety.key, set()).update(variety.of or of)
