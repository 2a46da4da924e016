"""Which pictures belong to which note: found by name, dated, and told what they are of.

Runs after the assembling, in builds and checks only. What is wrong with a picture is told where the note names
it; what a build shows is taken from the notes it may show. Looks at heads alone; `developed` has the pictures
made, and puts a line of text where that fails.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from leafmould.garden.blank import BLANK
from leafmould.garden.load import Loaded, load
from leafmould.garden.model import DatedBy, Entry, Photo
from leafmould.garden.photo_about import About
from leafmould.garden.photo_names import day_in_name, words_in_name
from leafmould.notes.line_ends import plain_ends
from leafmould.notes.pictured import pictures_in
from leafmould.photos.darkroom import Darkroom, Picture
from leafmould.photos.fault import Fault
from leafmould.photos.shelf import Found
from leafmould.values.problems import Level, Location, Problem, in_file_order
from leafmould.values.when import When
from leafmould.values.when import on as day_of
from leafmould.values.wording import counted

if TYPE_CHECKING:
    from leafmould.photos.look import Head

HEADER = "photo"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Named:
    """A picture as a note names it."""

    name: str
    caption: str
    at: Location
    field: str


def load_pictured(folder: Path, *, on: date) -> Loaded:
    """The household's garden with its pictures, for whoever asks what is amiss.

    A picture cut short looks sound until it is made; what is made here is kept for the next build.

    Raises:
        UnreadableGarden: if garden.yaml cannot be read at all.
    """
    loaded = load(folder, on=on, household=True)
    darkroom = Darkroom(folder, loaded.settings.photo_widths)
    return developed(pictured(loaded, darkroom), darkroom, workers=None)[0]


def pictured(loaded: Loaded, darkroom: Darkroom) -> Loaded:
    """The garden with its pictures as their heads tell them, and what is to be told of them."""
    told = [p for entry in loaded.written for p in _problems(entry, darkroom)]
    unnamed = _unnamed(loaded.written, darkroom)
    garden = loaded.garden
    finder = _Finder(loaded, darkroom)
    photos = [photo for entry in garden.entries for photo in finder.of(entry)]
    if loaded.view.household:
        photos += finder.by_day(unnamed)
    shown = [p for entry in garden.entries for p in _problems(entry, darkroom)] if _is_open(loaded) else []
    return replace(
        loaded,
        garden=replace(garden, photos=_in_order(photos), problems=in_file_order((*garden.problems, *shown))),
        problems=in_file_order((*loaded.problems, *told, *_hint(unnamed))),
    )


def developed(
    loaded: Loaded, darkroom: Darkroom, *, workers: int | None
) -> tuple[Loaded, Mapping[str, Picture]]:
    """The same with the pictures made: what could not be made is told, and is text from here on.

    Returns:
        the garden, and what was made by the key of its pictures.
    """
    photos = loaded.garden.photos
    made = darkroom.make((photo.path for photo in photos if photo.sizes), workers=workers)
    faults = {path: found for path, found in made.items() if isinstance(found, Fault)}
    good = {path: found for path, found in made.items() if isinstance(found, Picture)}
    darkroom.keep()
    told = [p for entry in loaded.written for p in _made_amiss(entry, darkroom, faults, good)]
    open_to = loaded.garden.entries if _is_open(loaded) else ()
    shown = [p for entry in open_to for p in _made_amiss(entry, darkroom, faults, good)]
    garden = replace(
        loaded.garden,
        photos=tuple(_once_each(_with_files(photo, good) for photo in photos)),
        problems=in_file_order((*loaded.garden.problems, *shown)),
    )
    loaded = replace(loaded, garden=garden, problems=in_file_order((*loaded.problems, *told)))
    return loaded, {found.key: found for found in good.values()}


def _is_open(loaded: Loaded) -> bool:
    return "problems" in loaded.view.show


def _named(entry: Entry) -> Iterator[_Named]:
    """The pictures a note names: in its text, then in its header."""
    for picture in pictures_in(entry.body):
        at = replace(entry.at, line=entry.body_line + picture.line)
        yield _Named(name=picture.name, caption=picture.caption, at=at, field="body")
    lines = dict(entry.photo_lines)
    for name in entry.photos:
        at = replace(entry.at, line=lines.get(name, entry.at.line))
        yield _Named(name=name, caption="", at=at, field=HEADER)


def _beside(entry: Entry) -> str:
    return posixpath.dirname(entry.at.file)


def _found(named: _Named, entry: Entry, darkroom: Darkroom) -> Found | Fault:
    """The file meant; in a header the name may close with ", private"."""
    found = darkroom.find(named.name, _beside(entry))
    if isinstance(found, Fault) and named.field == HEADER:
        plain, is_private, _ = plain_ends(named.name)
        return darkroom.find(plain, _beside(entry)) if is_private else found
    return found


def _problems(entry: Entry, darkroom: Darkroom) -> Iterator[Problem]:
    """What is to be told of a note's pictures."""
    for named in _named(entry):
        found = _found(named, entry, darkroom)
        head = found if isinstance(found, Fault) else darkroom.head(found.path)
        name = _shown_name(named.name)
        if isinstance(head, Fault):
            yield _problem(named, Level.ERROR, f'"{name}" {head.why}', head.suggestion)
        elif not entry.is_settled and isinstance(found, Found):
            for words in _hints(found, head):
                yield _problem(named, Level.HINT, f'"{name}" {words}')


def _hints(found: Found, head: Head) -> Iterator[str]:
    if not found.is_exact:
        yield f'is taken for "{posixpath.basename(found.path)}", which differs in capitals.'
    if head.moves:
        yield "holds several pictures. The first is shown."
    if head.is_exif_broken:
        yield "has camera notes that cannot be read. It is shown as it lies, not turned."


def _problem(named: _Named, level: Level, message: str, suggestion: str | None = None) -> Problem:
    return Problem(at=named.at, level=level, message=message, field=named.field, suggestion=suggestion)


def _shown_name(name: str) -> str:
    """A name as a sentence can hold it."""
    return name if len(name) <= LONGEST_SHOWN else f"{name[:LONGEST_SHOWN]}…"


LONGEST_SHOWN = 120


class _Finder:
    """Makes the photos of the notes a build may show."""

    def __init__(self, loaded: Loaded, darkroom: Darkroom) -> None:
        self._garden = loaded.garden
        self._darkroom = darkroom
        self._about = About(loaded.garden, loaded.vocabulary)
        self._order = loaded.settings.dates
        self._years = loaded.view.years
        self._is_public = not loaded.view.household
        self._parts: dict[str, list[Entry]] = {}
        for entry in loaded.garden.entries:
            self._parts.setdefault(entry.at.file, []).append(entry)

    def of(self, entry: Entry) -> Iterator[Photo]:
        """The pictures of a note, each file once, in the order they stand there."""
        seen: set[str] = set()
        for named in _named(entry):
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

    def _photo(self, named: _Named, entry: Entry) -> Photo | None:
        if self._is_public and BLANK in named.name:
            return None  # its name tells something that is left out
        found = _found(named, entry, self._darkroom)
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
        return "" if self._about.is_told_by(words_in_name(path), entry) else _said_by_name(path)

    def _day(self, path: str, head: Head, entry: Entry | None) -> tuple[When | None, DatedBy]:
        """When it was taken: by its name, then by the camera, then by its note; never after today."""
        near = entry.when if entry else None
        named = day_in_name(path, near, self._order)
        if named is not None and named.first <= self._garden.on:
            return named, "file name"
        if head.taken is not None and head.taken <= self._garden.on:
            return day_of(head.taken), "camera"
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


def _unnamed(entries: Iterable[Entry], darkroom: Darkroom) -> tuple[str, ...]:
    """The pictures lying in photos/ that no note names."""
    found = (_found(named, entry, darkroom) for entry in entries for named in _named(entry))
    used = {one.path for one in found if isinstance(one, Found)}
    return tuple(path for path in darkroom.in_photos if path not in used)


def _hint(unnamed: Sequence[str]) -> Iterator[Problem]:
    """One hint for all pictures no note names."""
    if not unnamed:
        return
    others = f", nor {counted(len(unnamed) - 1, 'other')}" if len(unnamed) > 1 else ""
    message = (
        f"No note names this picture{others}. The household's site shows it with a note of its day; "
        "name it in a note to share it."
    )
    yield Problem(at=Location(file=unnamed[0]), level=Level.HINT, message=message)


def _made_amiss(
    entry: Entry, darkroom: Darkroom, faults: Mapping[str, Fault], good: Mapping[str, Picture]
) -> Iterator[Problem]:
    """What came out only when a note's pictures were made."""
    first_of: dict[str, str] = {}
    for path in sorted(good):
        first_of.setdefault(good[path].key, path)
    for named in _named(entry):
        found = _found(named, entry, darkroom)
        path = found.path if isinstance(found, Found) else ""
        name = _shown_name(named.name)
        if path in faults:
            yield _problem(named, Level.ERROR, f'"{name}" {faults[path].why}')
        elif path in good and not entry.is_settled and (first := first_of[good[path].key]) != path:
            yield _problem(named, Level.HINT, f'"{name}" is the same picture as "{first}".')


def _with_files(photo: Photo, good: Mapping[str, Picture]) -> Photo:
    made = good.get(photo.path)
    if made is None:
        caption = "" if photo.caption == _said_by_name(photo.path) else photo.caption
        return replace(photo, path="", sizes=(), caption=caption)
    return replace(photo, key=made.key, sizes=tuple(file.size for file in made.files))


def _said_by_name(path: str) -> str:
    words = words_in_name(path)
    return words[:1].upper() + words[1:]


def _once_each(photos: Iterable[Photo]) -> Iterator[Photo]:
    """The pictures, without those a note shows already under another name."""
    seen: set[tuple[str, str]] = set()
    for photo in photos:
        is_again = bool(photo.key) and (photo.entry, photo.key) in seen
        seen.add((photo.entry, photo.key))
        if photo.is_in_text or not is_again:
            yield photo


def _in_order(photos: Iterable[Photo]) -> tuple[Photo, ...]:
    """By day and note; those of one note as they stand in it."""
    return tuple(sorted(photos, key=lambda p: (p.when.first if p.when else date.max, p.entry)))
