"""The output folder's own list of files: what this program made there, and so may replace or remove.

Read before and written after a build. A file that is not in the list is somebody else's and is never
touched. Beside each name stand the size and a digest of what was written, by which the next build knows that
a page has not changed, and a mark for whoever made the file: what it was made from. Writing is left to `write`.
"""

from __future__ import annotations

import hashlib
import os
import stat
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from leafmould.output.names import is_inside

LIST_NAME = "made.txt"
"""The list's name in the output folder."""

FIRST_LINE = "Made by leafmould. It replaces and removes the files named below, and no others."

UNSURE = ""
"""In place of a digest: what stands in the file has to be looked at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """What is known of one file of ours."""

    digest: str = UNSURE  # size in bytes, "-", and a digest of the bytes
    mark: str = ""  # what its maker wants to be told by the next build; one line, without tabs


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnList:
    """The files made there by earlier builds, and when the list was written."""

    files: Mapping[str, Made]
    written: int = 0  # [ns]; files changed later are not trusted to be as the list says


def digest_of(content: bytes) -> str:
    """A short name for exactly these bytes, beginning with their number."""
    return f"{len(content)}-{hashlib.blake2b(content, digest_size=12).hexdigest()}"


def read_list(folder: Path) -> OwnList | None:
    """The files made there by earlier builds; None if the folder carries no list of ours."""
    path = folder / LIST_NAME
    try:
        text, written = path.read_text("utf-8"), _touched(path.stat())
    except (FileNotFoundError, NotADirectoryError, IsADirectoryError, UnicodeDecodeError):
        return None
    first, *lines = text.split("\n")
    if first != FIRST_LINE:
        return None
    rows = (line.split("\t") for line in lines)
    files = {name: _made(rest) for name, *rest in rows if is_inside(name)}
    return OwnList(files=files, written=written)


def list_bytes(files: Mapping[str, Made]) -> bytes:
    """The list as it stands in the file, sorted."""
    lines = (f"{name}\t{made.digest}\t{made.mark}".rstrip("\t") for name, made in sorted(files.items()))
    return "\n".join((FIRST_LINE, *lines, "")).encode("utf-8")


def stands_as(path: Path, made: Made, written: int) -> bool:
    """Whether a file stands there and holds what the list says.

    By its size and times alone, unless it was changed or moved there after the list was written: then it
    is read.
    """
    try:
        found = path.lstat()
    except (FileNotFoundError, NotADirectoryError):
        return False
    size = made.digest.partition("-")[0]
    if not stat.S_ISREG(found.st_mode) or size != str(found.st_size):
        return False
    return _touched(found) < written or digest_of(path.read_bytes()) == made.digest


def _touched(found: os.stat_result) -> int:
    """When a file was last written, or moved to its place where the system tells that too. [ns]"""
    return max(found.st_mtime_ns, found.st_ctime_ns)


def _made(columns: list[str]) -> Made:
    digest, mark, *_ = (*columns, "", "")
    return Made(digest=digest, mark=mark)
