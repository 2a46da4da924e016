"""Where new files lie until all of them are written: a folder of their own inside the output folder.

So that a disk that is full is met before any page has changed. Used by `write`, which moves the files to
their places; whatever is left of a stage goes with it, or with the next build.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterable
from pathlib import Path
from types import TracebackType

from leafmould.values.problems import LeafmouldError

PREFIX = ".leafmould-new"
"""How the names of stages begin, and those of nothing else."""


class Stage:
    """A folder for files to come; gone when left."""

    def __init__(self, to: Path) -> None:
        """Take the output folder; nothing is made before the first file."""
        self._to = to
        self._folder = to / f"{PREFIX}-{os.getpid()}"
        self._count = 0

    def __enter__(self) -> Stage:
        """Begin."""
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Remove what was not moved to its place."""
        shutil.rmtree(self._folder, ignore_errors=True)

    def add(self, name: str, content: bytes) -> Path:
        """Write a file of the site aside; where it lies.

        Raises:
            LeafmouldError: if the disk refuses; nothing of the site has changed yet.
        """
        path = self._folder / str(self._count)
        self._count += 1
        try:
            self._folder.mkdir(exist_ok=True)
            path.write_bytes(content)
        except OSError as error:
            why = error.strerror or error
            raise LeafmouldError(
                f'Could not write "{self._to / name}": {why}. Nothing was changed.'
            ) from error
        return path


def clear_stages(to: Path, folders: Iterable[str]) -> None:
    """Remove what builds cut short left in the output folder, and in these folders of it."""
    for name in sorted({"", *folders}):
        folder = to / name
        if folder.resolve() != to.resolve() / name:
            continue  # a link leads to somebody else's files
        for left in sorted(folder.glob(f"{PREFIX}*")):
            if left.is_dir() and not left.is_symlink():
                shutil.rmtree(left, ignore_errors=True)
            else:
                left.unlink(missing_ok=True)
