"""Which files are notes, and what stands in them.

The first step of a run. Reads every note whole and once; what it says is for `read`.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from leafmould.notes.text import clean_text
from leafmould.values.problems import Level, Location, Problem

ENDINGS = (".md", ".txt")
LEFT_BY_EDITORS = ("~", ".swp", ".swo", ".tmp", ".bak", ".orig")


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteFile:
    """One note file, its text clean."""

    path: str  # inside the garden folder: "notes/2026/06-20-long-border.md"
    text: str
    digest: str  # of the bytes
    problems: tuple[Problem, ...] = ()


def find_notes(folder: Path) -> tuple[NoteFile, ...]:
    """All notes of a garden, by path: *.md and *.txt under notes/, at any depth.

    Hidden files and what editors leave behind are passed over. Links are followed to files, not to
    folders, so that a link upwards cannot run in circles.
    """
    return _texts_in(folder, "notes")


def find_free_pages(folder: Path) -> tuple[NoteFile, ...]:
    """All free pages of a garden, by path: the same under pages/."""
    return _texts_in(folder, "pages")


def _texts_in(folder: Path, room: str) -> tuple[NoteFile, ...]:
    paths = sorted(_files_under(folder / room, room))
    return tuple(read_note_file(folder, path) for path in paths)


def read_note_file(folder: Path, path: str) -> NoteFile:
    """One file by its path inside the garden folder."""
    printable = path.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")
    try:
        raw = (folder / path).read_bytes()
    except OSError as fault:
        message = f"This file cannot be opened: {fault.strerror or 'unknown reason'}."
        problem = Problem(at=Location(file=printable), level=Level.ERROR, message=message)
        return NoteFile(path=printable, text="", digest="", problems=(problem,))
    clean = clean_text(raw, printable)
    problems = clean.problems
    if printable != path:
        message = "This file's name cannot be read. Rename it with plain letters."
        problems += (Problem(at=Location(file=printable), level=Level.WARNING, message=message),)
    return NoteFile(path=printable, text=clean.text, digest=digest_of(raw), problems=problems)


def digest_of(raw: bytes) -> str:
    """A short name for exactly these bytes."""
    return hashlib.blake2b(raw, digest_size=16).hexdigest()


def _files_under(folder: Path, inside: str) -> Iterator[str]:
    """Paths with forward slashes, in no order."""
    try:
        found = list(os.scandir(folder))
    except OSError:
        return
    for item in found:
        if is_passed_over(item.name):
            continue
        if item.is_dir(follow_symlinks=False):
            yield from _files_under(folder / item.name, f"{inside}/{item.name}")
        elif item.name.lower().endswith(ENDINGS) and item.is_file():
            yield f"{inside}/{item.name}"


def is_passed_over(name: str) -> bool:
    """Whether a file or folder is hidden or an editor's leftover."""
    return name.startswith((".", "~$")) or name.lower().endswith(LEFT_BY_EDITORS)
