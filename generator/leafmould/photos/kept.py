"""What was made of pictures before, so that an unchanged one is not looked at or made again.

In .leafmould/: a list, photos.json, and the files themselves in photos/. May be deleted at any time; what
cannot be read counts as empty, a garden that cannot be written to keeps nothing, and what failed is tried
again each time. A picture counts as unchanged while its size and time of change are the same.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from pathlib import Path
from typing import Any

import leafmould
from leafmould.photos.look import Head
from leafmould.photos.sizes import Size

FOLDER = ".leafmould"
LIST = "photos.json"
FILES = "photos"


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptFile:
    """One size of a picture as it lies in the cache."""

    size: Size
    path: Path
    length: int  # [bytes]


class Kept:
    """The list of what was made; loaded once, saved once."""

    def __init__(self, garden: Path, program: str) -> None:
        """Read what an earlier run kept; nothing where that is not of this program."""
        self._garden, self._program = garden, program
        self._folder = garden / FOLDER
        self._before = self._read()
        self._rows: dict[str, dict[str, Any]] = {}
        self._stamps: dict[str, list[int] | None] = {}

    def head(self, path: str) -> Head | None:
        """The head of an unchanged picture."""
        row = self._row(path)
        try:
            return _head(row["head"]) if row else None
        except (LookupError, TypeError, ValueError):
            return None

    def keep_head(self, path: str, head: Head) -> None:
        """Remember a sound picture's head."""
        stamp = self._stamp(path)
        if stamp:
            taken = head.taken.isoformat() if head.taken else ""
            told = [head.width, head.height, head.turn, taken, head.moves, head.is_exif_broken]
            self._rows[path] = {"stamp": stamp, "head": told}

    def files(self, path: str, sizes: tuple[Size, ...]) -> tuple[str, tuple[KeptFile, ...]] | None:
        """The key and files made of an unchanged picture in these sizes, if all of them are there and whole."""
        row = self._row(path)
        try:
            key, found = row["key"], [(w, h, length) for w, h, length in row["files"]]
            files = tuple(
                KeptFile(size=(w, h), path=self._path(key, w), length=length) for w, h, length in found
            )
            is_whole = all(file.path.stat().st_size == file.length for file in files)
        except (LookupError, TypeError, ValueError, OSError):
            return None
        return (key, files) if is_whole and tuple(file.size for file in files) == sizes else None

    def keep_files(
        self, path: str, key: str, sizes: tuple[Size, ...], files: tuple[bytes, ...]
    ) -> tuple[KeptFile, ...] | None:
        """Write what was made of a picture; None where the disk refuses."""
        kept = tuple(
            KeptFile(size=size, path=self._path(key, size[0]), length=len(raw))
            for size, raw in zip(sizes, files, strict=True)
        )
        try:
            (self._folder / FILES).mkdir(parents=True, exist_ok=True)
            for file, raw in zip(kept, files, strict=True):
                _replace(file.path, raw)
        except OSError:
            return None
        row = self._row(path)
        if row:
            made = [[*file.size, file.length] for file in kept]
            self._rows[path] = {**row, "key": key, "files": made}
        return kept

    def save(self) -> None:
        """Write the list, and remove the files of pictures that changed or went."""
        for path in self._before:
            if path not in self._rows and (row := self._row(path)):
                self._rows[path] = row
        if self._rows == self._before:
            return
        text = json.dumps(
            {"program": self._program, "photos": self._rows}, ensure_ascii=False, sort_keys=True
        )
        try:
            self._folder.mkdir(exist_ok=True)
            _replace(self._folder / LIST, text.encode("utf-8"))
        except OSError:
            return
        for name in sorted(_names(self._before) - _names(self._rows)):
            (self._folder / FILES / name).unlink(missing_ok=True)

    def _read(self) -> dict[str, dict[str, Any]]:
        try:
            read = json.loads((self._folder / LIST).read_bytes())
            rows = read["photos"] if read["program"] == self._program else {}
            return {path: row for path, row in rows.items() if isinstance(row, dict)}
        except (OSError, ValueError, RecursionError, LookupError, TypeError, AttributeError):
            return {}

    def _row(self, path: str) -> dict[str, Any]:
        """What is known of the picture as it is now; empty where it is new or changed."""
        row = self._rows.get(path) or self._before.get(path) or {}
        if not row or row.get("stamp") != self._stamp(path):
            return {}
        self._rows[path] = row
        return row

    def _stamp(self, path: str) -> list[int] | None:
        """A file's length and time of change; as they were when first asked for, so that a change is seen."""
        if path not in self._stamps:
            try:
                told = (self._garden / path).stat()
                self._stamps[path] = [told.st_size, told.st_mtime_ns]
            except OSError:
                self._stamps[path] = None
        return self._stamps[path]

    def _path(self, key: str, width: int) -> Path:
        return self._folder / FILES / _name(key, width)


@lru_cache(maxsize=1)
def program_digest() -> str:
    """A short name for this program: its version, and the text of every module that makes pictures."""
    digest = hashlib.blake2b(leafmould.__version__.encode(), digest_size=12)
    for source in sorted(Path(__file__).parent.glob("*.py")):
        digest.update(source.read_bytes())
    return digest.hexdigest()


def _name(key: str, width: int) -> str:
    return f"{key}-{width}.jpg"


def _names(rows: dict[str, dict[str, Any]]) -> set[str]:
    """The files that rows speak of; what they say amiss is nothing of ours."""
    found = set[str]()
    for row in rows.values():
        key, files = row.get("key"), row.get("files")
        if isinstance(key, str) and key.isalnum() and isinstance(files, list):
            found.update(_name(key, file[0]) for file in files if isinstance(file, list) and file)
    return found


def _head(told: Any) -> Head:
    width, height, turn, taken, moves, is_exif_broken = told
    return Head(
        width=int(width),
        height=int(height),
        turn=int(turn),
        taken=date.fromisoformat(taken) if taken else None,
        moves=bool(moves),
        is_exif_broken=bool(is_exif_broken),
    )


def _replace(path: Path, raw: bytes) -> None:
    """Write beside, then replace."""
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(raw)
        Path(name).replace(path)
    except OSError:
        Path(name).unlink(missing_ok=True)
        raise
