"""The pictures of one run: found by name, looked at, and made in all their sizes.

What everything above asks: `find` and `head` while notes are matched, `make` once it is known which pictures
are shown. Only pictures that are shown are ever made.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from leafmould.photos.fault import Fault
from leafmould.photos.shelf import Found, Shelf
from leafmould.photos.sizes import Size, sizes_of

if TYPE_CHECKING:
    from leafmould.photos.kept import Kept
    from leafmould.photos.look import Head
    from leafmould.photos.resize import Outcome


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureFile:
    """One size of a picture, ready for the site."""

    size: Size
    content: bytes | Path  # its bytes, or a file that holds them

    def read(self) -> bytes:
        """Its bytes, read only now where a file holds them: a garden's pictures do not all fit at once."""
        return self.content if isinstance(self.content, bytes) else self.content.read_bytes()


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture in all its sizes, smallest first."""

    key: str  # names these very bytes, and nothing else
    files: tuple[PictureFile, ...]


class Darkroom:
    """One garden's pictures. The library that reads them is loaded when the first is looked at."""

    def __init__(self, garden: Path, widths: Sequence[int]) -> None:
        """Take the garden folder and the widths pictures are wanted in."""
        self._garden = garden
        self._widths = tuple(widths)
        self._shelf = Shelf(garden)
        self._heads: dict[str, Head | Fault] = {}

    @cached_property
    def _kept(self) -> Kept:
        from leafmould.photos.kept import Kept, program_digest

        return Kept(self._garden, program_digest())

    @property
    def in_photos(self) -> tuple[str, ...]:
        """The pictures lying in photos/, by path inside the garden."""
        return self._shelf.in_photos

    def find(self, typed: str, beside: str) -> Found | Fault:
        """The picture a note means by a name; `beside` is the note's folder."""
        return self._shelf.find(typed, beside)

    def head(self, path: str) -> Head | Fault:
        """What a found picture is, from its head alone."""
        if path not in self._heads:
            self._heads[path] = self._look(path)
        return self._heads[path]

    def _look(self, path: str) -> Head | Fault:
        from leafmould.photos.look import look_at

        if (kept := self._kept.head(path)) is not None:
            return kept
        head = look_at(self._garden / path)
        if not isinstance(head, Fault):
            self._kept.keep_head(path, head)
        return head

    def sizes(self, head: Head) -> tuple[Size, ...]:
        """The sizes a picture will be made in."""
        return sizes_of(head.width, head.height, self._widths)

    def make(self, paths: Iterable[str], *, workers: int | None) -> dict[str, Picture | Fault]:
        """Every one of these pictures in its sizes; those made before are not made again.

        Args:
            paths: pictures whose heads are sound.
            workers: how many processes may share the work; None for one a core.
        """
        wanted = sorted(set(paths))
        if not wanted:
            return {}
        from leafmould.photos.pool import outcomes
        from leafmould.photos.resize import Job

        made: dict[str, Picture | Fault] = {
            path: kept for path in wanted if (kept := self._made_before(path))
        }
        missing = [path for path in wanted if path not in made]
        jobs = [Job(path=str(self._garden / path), widths=self._widths) for path in missing]
        for path, outcome in zip(missing, outcomes(jobs, workers), strict=True):
            made[path] = Fault(why=outcome.why) if outcome.why else self._put_by(path, outcome)
        return made

    def _put_by(self, path: str, outcome: Outcome) -> Picture:
        """What was just made of a picture, in the cache where that takes it."""
        kept = self._kept.keep_files(path, outcome.key, outcome.sizes, outcome.files)
        contents: Iterable[bytes | Path] = [file.path for file in kept] if kept else outcome.files
        rows = zip(outcome.sizes, contents, strict=True)
        files = tuple(PictureFile(size=size, content=content) for size, content in rows)
        return Picture(key=outcome.key, files=files)

    def keep(self) -> None:
        """Remember what was looked at and made, for the next run."""
        if self._heads:
            self._kept.save()

    def _made_before(self, path: str) -> Picture | None:
        head = self.head(path)
        kept = None if isinstance(head, Fault) else self._kept.files(path, self.sizes(head))
        if kept is None:
            return None
        key, files = kept
        made = tuple(PictureFile(size=file.size, content=file.path) for file in files)
        return Picture(key=key, files=made)
