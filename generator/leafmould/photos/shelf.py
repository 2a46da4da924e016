"""The pictures of a garden folder, found by the names notes give them.

Looks into photos/ and beside the notes, once, when the first picture is asked for. Names are compared as
people read them: without regard to capitals, to how accents are written, or to which way slashes lean.
What a picture holds is for `look` and `resize`.
"""

from __future__ import annotations

import os
import posixpath
import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cached_property
from pathlib import Path
from typing import Literal
from urllib.parse import unquote

from leafmould.photos.fault import Fault

PHOTOS = "photos"
PLACES = (PHOTOS, "notes")
"""Folders in which pictures lie: their own, and beside the notes."""

NOTE_ENDINGS = (".md", ".txt")
ENDINGS = frozenset(
    {".jpg", ".jpeg", ".jpe", ".mpo", ".png", ".webp", ".tif", ".tiff", ".gif", ".bmp", ".avif", ".heic", ".heif"}
)  # fmt: skip
"""How the names of pictures end; what is asked for by name may end in anything."""

ELSEWHERE = re.compile(r"(?:https?|ftp):|//|data:", re.IGNORECASE)
FROM_ELSEWHERE = "is not in the garden folder, and nothing is fetched from elsewhere. Copy it into photos/."
LEADS_OUT = "leads out of the garden folder. Copy the picture into photos/."
NOT_THERE = "is neither in photos/ nor beside the note."

Kind = Literal["file", "folder", "outside", "other"]
WHY_NOT = {
    "folder": "is a folder, not a picture.",
    "outside": LEADS_OUT,
    "other": "is no file.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The picture a name means."""

    path: str  # inside the garden folder, as the disk has it
    is_exact: bool = True  # False: only without regard to capitals


class Shelf:
    """All pictures of one garden folder by their names."""

    def __init__(self, garden: Path) -> None:
        """Take the garden folder; nothing is looked at yet."""
        self.garden = garden
        self._asked: dict[tuple[str, str], Found | Fault] = {}

    def find(self, typed: str, beside: str) -> Found | Fault:
        """The picture a note means by a name.

        Args:
            typed: as written: a name, or a path from photos/, from the garden or from the note.
            beside: the folder the note stands in, such as "notes/2026".
        """
        key = (typed, beside)
        if key not in self._asked:
            self._asked[key] = self._find(typed, beside)
        return self._asked[key]

    @cached_property
    def in_photos(self) -> tuple[str, ...]:
        """The files in photos/ whose names are those of pictures, sorted."""
        return tuple(p for p in sorted(self._kinds) if p.startswith(f"{PHOTOS}/") and self._is_picture(p))

    @cached_property
    def _kinds(self) -> dict[str, Kind]:
        """Everything in the places pictures lie in, by path inside the garden."""
        root = self.garden.resolve()
        inside = [place for place in PLACES if (self.garden / place).resolve().is_relative_to(root)]
        return {path: kind for place in inside for path, kind in _things(self.garden, place, root)}

    @cached_property
    def _by_plain(self) -> dict[str, list[str]]:
        """Paths by what they are compared by."""
        return _grouped((_plain(path), path) for path in sorted(self._kinds))

    @cached_property
    def _by_name(self) -> dict[str, list[str]]:
        """What lies in photos/, by the last step of its path."""
        return _grouped((plain.rpartition("/")[2], path) for plain, path in self._photos())

    @cached_property
    def _by_stem(self) -> dict[str, list[str]]:
        """Pictures in photos/ by their names without the ending."""
        pictures = ((plain, path) for plain, path in self._photos() if self._is_picture(path))
        return _grouped((plain.rpartition("/")[2].rpartition(".")[0], path) for plain, path in pictures)

    def _photos(self) -> list[tuple[str, str]]:
        return [(_plain(path), path) for path in sorted(self._kinds) if path.startswith(f"{PHOTOS}/")]

    def _is_picture(self, path: str) -> bool:
        return self._kinds[path] == "file" and posixpath.splitext(path)[1].lower() in ENDINGS

    def _find(self, typed: str, beside: str) -> Found | Fault:
        if ELSEWHERE.match(typed):
            return Fault(why=FROM_ELSEWHERE)
        for name in dict.fromkeys((_slashed(typed), _slashed(unquote(typed)))):
            if paths := self._meant(name, beside):
                return self._only(paths, name)
        if all(way.startswith(("..", "/")) for way in _ways(_slashed(typed), beside)):
            return Fault(why=LEADS_OUT)
        return Fault(why=NOT_THERE, suggestion=self._nearest(_slashed(typed)))

    def _meant(self, name: str, beside: str) -> list[str]:
        """The paths a name may mean, by the most exact way of reading it that gives any."""
        ways = _ways(name, beside)
        if exact := [way for way in ways if way in self._kinds]:
            return exact[:1]
        for way in ways:
            if found := self._by_plain.get(_plain(way)):
                return found
        *folders, last = _plain(name).split("/")
        paths = self._by_name.get(last) or self._by_stem.get(last) or []
        ends = [path for path in paths if _plain(path).split("/")[-2:-1] == folders[-1:]]
        return ends or paths

    def _only(self, paths: list[str], name: str) -> Found | Fault:
        """The one picture meant; several are one if they hold the same."""
        files = [path for path in paths if self._kinds[path] == "file"]
        if not files:
            return Fault(why=WHY_NOT[self._kinds[paths[0]]])
        first, *others = files
        if others and not all(self._hold_the_same(first, other) for other in others):
            more = f" or {len(others) - 1} more" if len(others) > 1 else ""
            return Fault(why=f'may be "{first}" or "{others[0]}"{more}. Write its folder too.')
        lies, typed = (unicodedata.normalize("NFC", posixpath.basename(path)) for path in (first, name))
        return Found(path=first, is_exact=lies == typed or lies.casefold() != typed.casefold())

    def _hold_the_same(self, one: str, other: str) -> bool:
        try:
            return (self.garden / one).read_bytes() == (self.garden / other).read_bytes()
        except OSError:
            return False

    def _nearest(self, name: str) -> str | None:
        """The picture whose name, but for its ending, is most like it."""
        pictures = (posixpath.basename(path) for path in sorted(self._kinds) if self._is_picture(path))
        names = {_plain(posixpath.splitext(picture)[0]): picture for picture in pictures}
        stem = posixpath.splitext(posixpath.basename(name))[0]
        near = get_close_matches(_plain(stem)[:80], names, n=1, cutoff=0.7)
        return names[near[0]] if near else None


def _things(garden: Path, inside: str, root: Path) -> Iterator[tuple[str, Kind]]:
    """Files and folders at any depth, but hidden ones and notes; folders behind links are not entered."""
    try:
        found = sorted(os.scandir(garden / inside), key=lambda item: item.name)
    except OSError:
        return
    for item in found:
        path = f"{inside}/{item.name}"
        if item.name.startswith(".") or not _is_printable(path):
            continue
        if item.is_dir(follow_symlinks=False):
            yield path, "folder"
            yield from _things(garden, path, root)
        elif not (inside.startswith("notes") and item.name.lower().endswith(NOTE_ENDINGS)):
            yield path, _kind(item, root)


def _kind(item: os.DirEntry[str], root: Path) -> Kind:
    try:
        if item.is_symlink() and not Path(item.path).resolve().is_relative_to(root):
            return "outside"
        if item.is_dir():
            return "folder"
        return "file" if item.is_file() else "other"
    except (OSError, RuntimeError):  # a link that leads round in a circle
        return "other"


def _is_printable(path: str) -> bool:
    return not any("\ud800" <= sign <= "\udfff" for sign in path)


def _slashed(typed: str) -> str:
    return typed.strip().replace("\\", "/")


def _ways(name: str, beside: str) -> list[str]:
    """Where a name may lead: from the note, from photos/, from the garden."""
    return [posixpath.normpath(posixpath.join(place, name)) for place in (beside, PHOTOS, "")]


def _plain(path: str) -> str:
    """What paths are compared by."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", path).casefold())


def _grouped(pairs: Iterable[tuple[str, str]]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for key, path in pairs:
        found.setdefault(key, []).append(path)
    return found
