"""Puts down what was done, in a new note file, and says how it was understood.

The words are kept as typed: one line of `work:` for each line given. The file is always written, with its
questions told beside the answer. What the words mean is read from the garden afterwards, as in a build, so
the answer is what the pages will say.
"""

from __future__ import annotations

import re
import shutil
import unicodedata
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from leafmould.desk.days import read_when
from leafmould.desk.folders import add_file
from leafmould.desk.texts import quoted
from leafmould.garden.load import habits_of
from leafmould.garden.vocabulary import vocabulary_of
from leafmould.notes.habits import Defaults, Habits
from leafmould.notes.lines import read_line
from leafmould.notes.settings import read_settings
from leafmould.values.names import slug
from leafmould.values.problems import LeafmouldError, Location, UnreadableGarden, WrongUse
from leafmould.values.when import When, on

NOTHING = "Say what was done, such as: leafmould note sowed beetroot Long border"
MARKS = ("- ", "* ", "• ", "– ")
SETTLED = ', or settle it for good in garden.yaml: "dates: day first" or "dates: month first"'
PICTURES = (".jpg", ".jpeg", ".png", ".webp", ".heic", ".heif", ".gif", ".tif", ".tiff", ".avif")
PRIVATE = re.compile(r"private\s*[:=]\s*(?:yes|true|on)?\W*", re.IGNORECASE)
"""What belongs in a header. As a line of work it would say that a note is private, and not make it so."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A note about to be written."""

    lines: tuple[str, ...]  # as typed, one thing or several on each
    when: When
    photos: tuple[str, ...] = ()  # names inside photos/
    is_private: bool = False


def typed_lines(words: Sequence[str], read_all: Callable[[], str]) -> tuple[str, ...]:
    """What was typed, line by line; a single "-" stands for what `read_all` gives.

    Raises:
        WrongUse: if there is nothing but spaces.
    """
    text = read_all() if tuple(words) == ("-",) else " ".join(words)
    lines = tuple(line for line in map(_plain, text.splitlines()) if line)
    if not lines:
        raise WrongUse(NOTHING)
    return lines


def put_down(
    garden: Path,
    lines: tuple[str, ...],
    today: date,
    dated: str | None,
    photos: Sequence[Path],
    *,
    is_private: bool = False,
) -> str:
    """Write the note; its path in the garden folder. A garden.yaml nobody can read does not hinder it.

    Args:
        dated: when it was done, as typed; None: today.
    Raises:
        WrongUse: if there is no such date or picture, or a line is meant for the note's header.
        LeafmouldError: if the disk refuses.
    """
    _refuse_header_lines(lines)
    for photo in photos:
        if photo.suffix.casefold() not in PICTURES:
            raise WrongUse(f'"{photo}" is no picture: its name must end in one of {", ".join(PICTURES)}.')
    habits = _habits(garden)
    when = on(today)
    if dated is not None:
        order, south = (habits.order, habits.is_southern) if habits else (None, False)
        when = read_when(dated, today, order=order, is_southern=south, or_else=SETTLED)
    kept = tuple(keep_photo(garden, photo) for photo in photos)
    draft = Draft(lines=lines, when=when, photos=kept, is_private=is_private)
    return write_note(garden, draft, subject(draft, habits) if habits else "note")


def subject(draft: Draft, habits: Habits) -> str:
    """What the file is named for: the first bed the lines name, else the first crop, else "note"."""
    crop = None
    for line in draft.lines:
        at = Location(file="note")
        reading = read_line(line, at=at, field="work", base=draft.when, habits=habits, defaults=Defaults())
        for action in reading.actions:
            if action.places:
                return slug(action.places[0].name)
            crop = crop or (slug(action.crops[0].name) if action.crops else None)
    return crop or "note"


def write_note(garden: Path, draft: Draft, named: str) -> str:
    """Write the note under a new name; its path in the garden folder, with forward slashes.

    Raises:
        LeafmouldError: if the disk refuses.
    """
    day = draft.when.day
    folder = garden / "notes" / f"{draft.when.first.year:04}"
    stem = f"{day:%m-%d}-{named}" if day else f"{slug(draft.when.written)}-{named}"
    path = add_file(folder, stem, ".md", note_text(draft).encode("utf-8"), taken=_is_taken)
    return path.relative_to(garden).as_posix()


def note_text(draft: Draft) -> str:
    """The note as it stands in its file."""
    photos = [quoted(name) for name in draft.photos]
    photo = [f"photo: {photos[0]}" if len(photos) == 1 else f"photo: [{', '.join(photos)}]"] if photos else []
    private = ["private: yes"] if draft.is_private else []
    written = draft.when.day.isoformat() if draft.when.day else draft.when.written
    return "\n".join(
        [
            "---",
            f"date: {written}",
            *private,
            *photo,
            "work:",
            *(f"  - {line}" for line in draft.lines),
            "---",
            "",
        ]
    )


def keep_photo(garden: Path, picture: Path) -> str:
    """A picture's name inside photos/; one that lies elsewhere is copied there, under a new name if need be.

    Raises:
        WrongUse: if there is no such picture.
    """
    photos = garden / "photos"
    for there in (picture, photos / picture):
        if there.is_file() and there.resolve().is_relative_to(photos.resolve()):
            return there.resolve().relative_to(photos.resolve()).as_posix()
    if not picture.is_file():
        raise WrongUse(f'There is no picture "{picture}".')
    same = photos / picture.name
    if same.is_file() and same.read_bytes() == picture.read_bytes():
        return same.name
    try:
        kept = add_file(photos, picture.stem, picture.suffix, picture.read_bytes(), taken=lambda _: False)
        shutil.copystat(picture, kept)
    except OSError as error:
        raise LeafmouldError(f'Could not copy "{picture}": {error.strerror or error}.') from error
    return kept.name


def _refuse_header_lines(lines: Sequence[str]) -> None:
    for line in lines:
        if PRIVATE.fullmatch(line):
            raise WrongUse(
                f'"{line}" stands in the header of a note, not among its lines. '
                "To keep a note private, leave that out and add --private. Nothing was written."
            )


def _habits(garden: Path) -> Habits | None:
    """How this garden writes; None where garden.yaml cannot be read, which is told after the writing."""
    try:
        settings = read_settings(garden)
    except UnreadableGarden:
        return None
    return habits_of(settings, vocabulary_of(settings))


def _is_taken(path: Path) -> bool:
    """Whether a note of that name stands there with any ending: two would be one address."""
    stem = path.stem.casefold()
    return any(other.stem.casefold() == stem for other in path.parent.iterdir())


def _plain(line: str) -> str:
    """A line without a list mark, outer spaces and what no text file should hold."""
    text = line.encode("utf-8", "surrogateescape").decode("utf-8", "replace")
    text = "".join(" " if unicodedata.category(c) == "Cc" else c for c in text).strip()
    return next((text[len(mark) :].strip() for mark in MARKS if text.startswith(mark)), text)
