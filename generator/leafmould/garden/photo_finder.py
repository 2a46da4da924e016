"""The pictures that notes name, each found, dated, captioned, and given to its note.

Serves `pictures`, which says what is told of them and what is shown.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING

from leafmould.garden.blank import BLANK
from leafmould.garden.load import Loaded
from leafmould.garden.model import DatedBy, Entry, Photo
from leafmould.garden.photo_about import About
from leafmould.garden.photo_names import day_in_name, words_in_name
from leafmould.notes.line_ends import plain_ends
from leafmould.notes.pictured import pictures_in
from leafmould.photos.darkroom import Darkroom
from leafmould.photos.fault import Fault
from leafmould.photos.shelf import Found
from leafmould.values.problems import Location
from leafmould.values.when import When, on

if TYPE_CHECKING:
    from leafmould.photos.look import Head

HEADER = "photo"


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedPicture:
    """A picture as a note names it."""

    name: str
    caption: str
    at: Location
    field: str


def named_pictures(entry: Entry) -> Iterator[NamedPicture]:
    """The pictures a note names: in its text, then in its header."""
    for picture in pictures_in(entry.body):
        at = replace(entry.at, line=entry.body_line + picture.line)
        yield NamedPicture(name=picture.name, caption=picture.caption, at=at, field="body")
    lines = dict(entry.photo_lines)
    for name in entry.photos:
        at = replace(entry.at, line=lines.get(name, entry.at.line))
        yield NamedPicture(name=name, caption="", at=at, field=HEADER)


def _beside(entry: Entry) -> str:
    return posixpath.dirname(entry.at.file)


def file_of(named: NamedPicture, entry: Entry, darkroom: Darkroom) -> Found | Fault:
    """The file meant; in a header the name may close with ", private"."""
    found = darkroom.find(named.name, _beside(entry))
    if isinstance(found, Fault) and named.field == HEADER:
        plain, is_private, _ = plain_ends(named.name)
        return darkroom.find(plain, _beside(entry)) if is_private else found
    return found


class Finder:
    """Makes the photos of the notes a build may show."""

    def __init__(self, loaded: Loaded, darkroom: Darkroom) -> None:
        self._garden = loaded.garden
        self._darkroom = darkroom
        self._about = About(loaded.garden, loaded.vocabulary)
        self._order = loaded.settings.dates
        self._years = loaded.view.years
        self._is_public = not loaded.view.household
        self._parts: dict[str, list[Entry]] = {}
        for entry in (*loaded.garden.entries, *loaded.garden.free_pages):
            self._parts.setdefault(entry.at.file, []).append(entry)

    def of(self, entry: Entry) -> Iterator[Photo]:
        """The pictures of a note, each file once, in the order they stand there."""
        seen: set[str] = set()
        for named in named_pictures(entry):
            photo = self._photo(named, entry)
            if photo is not None and (photo.path or photo.name) not in seen:
                seen.add(photo.path or photo.name)
                yield photo

    def by_day(self, paths: Iterable[str]) -> Iterator[Photo]:
        """Pictures no note names, each with the note of its day; those without one are not shown."""
        by_day: dict[date, list[Entry]] = {}
        for entry in self._garden.entries:
            if entry.when and entry.when.day:
                by_day.setdefault(entry.when.day, []).append(entry)
        for path in paths:
            head = self._darkroom.head(path)
            if isinstance(head, Fault):
                continue
            when, _ = self._day(path, head, None)
            notes = by_day.get(when.first, []) if when else []
            if notes:
                words = words_in_name(path)
                entry = next((note for note in notes if self._about.tells(note, words)), notes[0])
                yield self._shown(path, head, entry, name=posixpath.basename(path), words="")

    def _photo(self, named: NamedPicture, entry: Entry) -> Photo | None:
        if self._is_public and BLANK in named.name:
            return None  # its name tells something that is left out
        found = file_of(named, entry, self._darkroom)
        head = found if isinstance(found, Fault) else self._darkroom.head(found.path)
        is_in_text = named.field != HEADER
        if isinstance(found, Fault) or isinstance(head, Fault):
            return Photo(name=named.name, path="", entry=entry.id, is_in_text=is_in_text, when=entry.when, caption=named.caption)  # fmt: skip
        photo = self._shown(found.path, head, entry, name=named.name, words=named.caption)
        photo = replace(photo, is_in_text=is_in_text)
        is_hidden = photo.when is not None and photo.when.first.year in self._years
        return None if is_hidden else photo if is_in_text else self._by_its_day(photo, entry)

    def _shown(self, path: str, head: Head, entry: Entry, *, name: str, words: str) -> Photo:
        when, dated_by = self._day(path, head, entry)
        beds, crops = self._about.of(entry, f"{words} {words_in_name(path)}")
        return Photo(
            name=name,
            path=path,
            entry=entry.id,
            when=when,
            dated_by=dated_by,
            caption=words or self._caption(path, entry),
            beds=beds,
            crops=crops,
            sizes=self._darkroom.sizes(head),
        )

    def _caption(self, path: str, entry: Entry) -> str:
        """The words of its name, unless they only say what stands beside them anyway."""
        return "" if self._about.is_told_by(words_in_name(path), entry) else said_by_name(path)

    def _day(self, path: str, head: Head, entry: Entry | None) -> tuple[When | None, DatedBy]:
        """When it was taken: by its name, then by the camera, then by its note; never after today."""
        near = entry.when if entry else None
        named = day_in_name(path, near, self._order)
        if named is not None and named.first <= self._garden.on:
            return named, "file name"
        if head.taken is not None and head.taken <= self._garden.on:
            return on(head.taken), "camera"
        return near, "note"

    def _by_its_day(self, photo: Photo, entry: Entry) -> Photo:
        """The picture with that part of the note that is about its day."""
        when = photo.when
        if when is None or photo.dated_by == "note" or (entry.when and entry.when.meets(when)):
            return photo
        parts = (part for part in self._parts[entry.at.file] if part.when and part.when.day == when.day)
        part = next(parts, None)
        if part is None:
            return photo
        beds, crops = self._about.of(part, words_in_name(photo.path))
        return replace(photo, entry=part.id, beds=beds, crops=crops)


def said_by_name(path: str) -> str:
    words = words_in_name(path)
    return words[:1].upper() + words[1:]
