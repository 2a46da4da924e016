"""Names of files that are safe on every disk: what a name may hold, and which two names are one.

Asked for every file of a site before anything is changed. A name that is not safe is a mistake of ours: the
addresses are made so that none comes here.
"""

from __future__ import annotations

from collections.abc import Iterable

from leafmould.values.file_names import disk_name, is_safe_step


def is_inside(name: str) -> bool:
    """Whether a name is a plain relative path that cannot lead out of the folder."""
    is_plain = not any(c in name for c in "\\:\0\n\t")
    return is_plain and all(part not in ("", ".", "..") for part in name.split("/"))


def is_safe(name: str) -> bool:
    """Whether every disk takes the name as it is, and gives it back."""
    return is_inside(name) and all(map(is_safe_step, name.split("/")))


def folders_of(names: Iterable[str]) -> set[str]:
    """Every folder these files stand in, below the output folder."""
    found: set[str] = set()
    for name in names:
        folder = name.rpartition("/")[0]
        while folder and folder not in found:
            found.add(folder)
            folder = folder.rpartition("/")[0]
    return found


class NameBook:
    """The names of one site as they come in."""

    def __init__(self, *taken: str) -> None:
        """Take the names that are no page's."""
        self._files = {disk_name(name): name for name in taken}
        self._folders: dict[str, str] = {}  # as disks keep them, to a file inside
        self._known: set[str] = set()  # folders as written

    def add(self, name: str) -> None:
        """Enter a name.

        Raises:
            ValueError: if it leads outside, is not safe, or meets another on some disk; our own mistake.
        """
        if not is_safe(name):
            raise ValueError(f"a name that leads outside or is not safe: {name!r}")
        folded = disk_name(name)
        if folded in self._files:
            raise ValueError(f"two files with one name on some disks: {self._files[folded]!r} and {name!r}")
        self._files[folded] = name
        if folded in self._folders:
            raise ValueError(f"a file and a folder with one name: {name!r} and {self._folders[folded]!r}")
        self._enter_folders(name)

    def _enter_folders(self, name: str) -> None:
        folder = name.rpartition("/")[0]
        while folder and folder not in self._known:
            folded = disk_name(folder)
            if folded in self._files:
                raise ValueError(f"a file and a folder with one name: {self._files[folded]!r} and {name!r}")
            self._known.add(folder)
            self._folders.setdefault(folded, name)
            folder = folder.rpartition("/")[0]
