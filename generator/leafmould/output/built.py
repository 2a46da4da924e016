"""The output folder's own list of files: what this program made there, and so may replace or remove.

Read before and written after a build. A file that is not in the list is somebody else's and is never
touched. Removing and writing is left to `write`.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from pathlib import Path

LIST_NAME = "made.txt"
"""The list's name in the output folder."""

FIRST_LINE = "Made by leafmould. It replaces and removes the files named below, and no others."


def read_list(folder: Path) -> frozenset[str] | None:
    """The files made there by earlier builds; None if the folder carries no list of ours."""
    try:
        text = (folder / LIST_NAME).read_text("utf-8")
    except (FileNotFoundError, NotADirectoryError, IsADirectoryError, UnicodeDecodeError):
        return None
    first, *names = text.split("\n")
    return frozenset(name for name in names if is_inside(name)) if first == FIRST_LINE else None


def list_bytes(names: Iterable[str]) -> bytes:
    """The list as it stands in the file, sorted."""
    return "\n".join((FIRST_LINE, *sorted(names), "")).encode("utf-8")


def is_inside(name: str) -> bool:
    """Whether a name is a plain relative path that cannot lead out of the folder."""
    is_plain = not any(c in name for c in "\\:\0\n")
    return is_plain and all(part not in ("", ".", "..") for part in name.split("/"))


def disk_name(name: str) -> str:
    """A name as the most forgetful file system keeps it: two equal ones overwrite each other there."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())
