"""Where the files of a build lie until all of them are made: beside the output folder, on the same disk.

Used by `write`, one build at a time. Where there is no output folder yet, a whole site is put together here
and becomes the output folder in one step; else new and changed files lie here under numbers until `journal`
moves them. Where nothing can be put beside the output folder, the place is inside it, under a name of ours.
"""

from __future__ import annotations

import errno
import hashlib
import os
from contextlib import suppress
from pathlib import Path

from leafmould.output import disk
from leafmould.output.lock import LOCK_NAME

ENDING = ".leafmould-new"
"""How the names of stages end, and those of nothing else."""

PROBE = ".leafmould-probe"
SITE = "site"
LONGEST_NAME = 200
"""Names of output folders longer than this are shortened for what stands beside them. [bytes]"""


def beside(to: Path, ending: str) -> Path:
    """A hidden file or folder of ours beside the output folder."""
    name = to.name
    if len(name.encode("utf-8", "surrogatepass")) > LONGEST_NAME:
        name = hashlib.blake2b(os.fsencode(name), digest_size=12).hexdigest()
    return to.parent / f".{name}{ending}"


def stage_places(to: Path) -> tuple[Path, Path]:
    """Where a stage of this output folder may lie: beside it, or inside it."""
    return beside(to, ENDING), to / ENDING


def is_at_work(to: Path) -> bool:
    """Whether another build is at the output folder, or left something behind when it was cut short."""
    real = to.resolve()
    places = (*stage_places(real), beside(real, LOCK_NAME), real / LOCK_NAME, real / PROBE)
    return any(map(os.path.lexists, places))


def may_write_beside(to: Path) -> bool:
    """Whether files may be put beside the output folder."""
    return os.access(to.parent, os.W_OK | os.X_OK)


class Stage:
    """A folder for files to come; nothing is made before the first of them."""

    def __init__(self, to: Path) -> None:
        """Take the output folder, which need not be there."""
        self._to = to
        self.is_whole = not os.path.lexists(to)  # a whole site, to be put in place by one rename
        self.folder: Path | None = None
        self._count = 0

    def add(self, name: str, content: bytes) -> str:
        """Write a file of the site aside; its number, under which it lies unless a whole site is put together."""
        number = str(self._count)
        self._count += 1
        self._write(f"{SITE}/{name}" if self.is_whole else number, content)
        return number

    def note(self, name: str, content: bytes) -> Path:
        """Write a list of our own here, and have the disk write it down; where it lies."""
        return self._write(name, content, is_flushed=True)

    def discard(self) -> None:
        """Take away what lies here, as far as the disk lets us; the next build clears the rest."""
        clear_stages(self._to)

    def _write(self, name: str, content: bytes, *, is_flushed: bool = False) -> Path:
        if self.folder is None:
            self.folder = self._open()
        place = self.folder / name
        try:
            disk.write(place, content, is_flushed=is_flushed)
        except FileNotFoundError:
            disk.make_folders(place.parent)
            disk.write(place, content, is_flushed=is_flushed)
        return place

    def _open(self) -> Path:
        near, inside = stage_places(self._to)
        if self.is_whole:
            disk.make_folders(near)
        elif not (may_write_beside(self._to) and self._can_be_moved_from(near)):
            disk.make_folders(inside)
            return inside
        return near

    def _can_be_moved_from(self, folder: Path) -> bool:
        """Whether a file can be moved from there into the output folder; tells too if nothing can be put in it."""
        disk.make_folders(folder)
        probe = folder / PROBE
        disk.write(probe, b"")
        try:
            disk.replace(probe, self._to / PROBE)
        except OSError as fault:
            if fault.errno != errno.EXDEV:
                raise
            return False
        disk.remove(self._to / PROBE)
        return True


def left_stages(to: Path) -> list[Path]:
    """The stages of this output folder that are there."""
    return [place for place in stage_places(to) if place.is_dir() and not place.is_symlink()]


def clear_stages(to: Path) -> None:
    """Take the stages of this output folder away, as far as the disk lets us."""
    for place in left_stages(to):
        with suppress(OSError):
            disk.remove_tree(place)
