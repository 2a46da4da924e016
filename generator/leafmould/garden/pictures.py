"""Which pictures belong to which note: found by name, dated, and told what they are of.

Runs after the assembling, in builds and checks only. What is wrong with a picture is told where the note names
it; what a build shows is taken from the notes it may show. Looks at heads alone; `developed` has the pictures
made, and puts a line of text where that fails.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from leafmould.garden.load import Loaded, load
from leafmould.garden.model import Entry, Photo
from leafmould.garden.photo_finder import Finder, NamedPicture, file_of, named_pictures, said_by_name
from leafmould.photos.darkroom import Darkroom, Picture
from leafmould.photos.fault import Fault
from leafmould.photos.shelf import Found
from leafmould.values.problems import Level, Location, Problem, in_file_order
from leafmould.values.wording import counted

if TYPE_CHECKING:
    from leafmould.photos.look import Head


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
    written = (*loaded.written, *loaded.free_pages)
    told = [p for entry in written for p in _problems(entry, darkroom)]
    unnamed = _unnamed(written, darkroom)
    garden = loaded.garden
    shown_in = (*garden.entries, *garden.free_pages)
    finder = Finder(loaded, darkroom)
    photos = [photo for entry in shown_in for photo in finder.of(entry)]
    if loaded.view.household:
        photos += finder.by_day(unnamed)
    shown = [p for entry in shown_in for p in _problems(entry, darkroom)] if _is_open(loaded) else []
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
    firsts = _firsts(good)
    written = (*loaded.written, *loaded.free_pages)
    told = [p for entry in written for p in _made_amiss(entry, darkroom, faults, firsts)]
    open_to = (*loaded.garden.entries, *loaded.garden.free_pages) if _is_open(loaded) else ()
    shown = [p for entry in open_to for p in _made_amiss(entry, darkroom, faults, firsts)]
    garden = replace(
        loaded.garden,
        photos=tuple(_once_each(_with_files(photo, good) for photo in photos)),
        problems=in_file_order((*loaded.garden.problems, *shown)),
    )
    loaded = replace(loaded, garden=garden, problems=in_file_order((*loaded.problems, *told)))
    return loaded, {found.key: found for found in good.values()}


def _is_open(loaded: Loaded) -> bool:
    return "problems" in loaded.view.show


def _problems(entry: Entry, darkroom: Darkroom) -> Iterator[Problem]:
    """What is to be told of a note's pictures."""
    for named in named_pictures(entry):
        found = file_of(named, entry, darkroom)
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


def _problem(named: NamedPicture, level: Level, message: str, suggestion: str | None = None) -> Problem:
    return Problem(at=named.at, level=level, message=message, field=named.field, suggestion=suggestion)


def _shown_name(name: str) -> str:
    """A name as a sentence can hold it."""
    return name if len(name) <= LONGEST_SHOWN else f"{name[:LONGEST_SHOWN]}…"


LONGEST_SHOWN = 120


def _unnamed(entries: Iterable[Entry], darkroom: Darkroom) -> tuple[str, ...]:
    """The pictures lying in photos/ that no note names."""
    found = (file_of(named, entry, darkroom) for entry in entries for named in named_pictures(entry))
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


def _firsts(good: Mapping[str, Picture]) -> dict[str, str]:
    """The first path of each picture by all its paths, where it has several."""
    by_key: dict[str, list[str]] = {}
    for path in sorted(good):
        by_key.setdefault(good[path].key, []).append(path)
    return {path: first for first, *others in by_key.values() for path in others}


def _made_amiss(
    entry: Entry, darkroom: Darkroom, faults: Mapping[str, Fault], firsts: Mapping[str, str]
) -> Iterator[Problem]:
    """What came out only when a note's pictures were made."""
    for named in named_pictures(entry):
        found = file_of(named, entry, darkroom)
        path = found.path if isinstance(found, Found) else ""
        name = _shown_name(named.name)
        if path in faults:
            yield _problem(named, Level.ERROR, f'"{name}" {faults[path].why}')
        elif path in firsts and not entry.is_settled:
            yield _problem(named, Level.HINT, f'"{name}" is the same picture as "{firsts[path]}".')


def _with_files(photo: Photo, good: Mapping[str, Picture]) -> Photo:
    made = good.get(photo.path)
    if made is None:
        caption = "" if photo.caption == said_by_name(photo.path) else photo.caption
        return replace(photo, path="", sizes=(), caption=caption)
    return replace(photo, key=made.key, sizes=tuple(file.size for file in made.files))


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
