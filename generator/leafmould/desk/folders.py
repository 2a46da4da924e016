"""Where the garden is, and new files in it that never take an older one's place.

Used by every command before its work begins. Knows names and bytes, not what they mean.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path

from leafmould.values.problems import LeafmouldError

SETTINGS = "garden.yaml"


def find_garden(start: Path) -> Path:
    """The folder itself, or the nearest one above it, that holds garden.yaml.

    Raises:
        LeafmouldError: if there is no such folder.
    """
    if not start.is_dir():
        raise LeafmouldError(f'There is no folder "{start}".')
    if found := garden_above(start):
        return found
    raise LeafmouldError(
        f'No {SETTINGS} stands in "{start.resolve()}" or in any folder above it. '
        "Make a garden with: leafmould start FOLDER"
    )


def garden_above(start: Path) -> Path | None:
    """The folder itself, or the nearest one above it, that holds garden.yaml; None if there is none."""
    here = start.resolve()
    return next((folder for folder in (here, *here.parents) if (folder / SETTINGS).is_file()), None)


def add_file(folder: Path, stem: str, ending: str, content: bytes, *, taken: Callable[[Path], bool]) -> Path:
    """Write a new file under the first free name: stem, stem-2, stem-3 …

    Args:
        taken: says that a name is no longer free though no file of exactly that name stands there.
    Raises:
        LeafmouldError: if the disk refuses.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for path in _names(folder, stem, ending):
            if not taken(path) and _create(path, content):
                return path
    except OSError as error:
        raise LeafmouldError(
            f'Could not write in "{folder}": {error.strerror or error}. Nothing was kept.'
        ) from error
    raise AssertionError("numbers have no end")


def _names(folder: Path, stem: str, ending: str) -> Iterator[Path]:
    yield folder / f"{stem}{ending}"
    yield from (folder / f"{stem}-{number}{ending}" for number in count(2))


def _create(path: Path, content: bytes) -> bool:
    """Make the file unless one is there; half a file is never left behind."""
    try:
        file = path.open("xb")
    except FileExistsError:
        return False
    try:
        with file:
            file.write(content)
    except OSError:
        path.unlink()  # a full disk may tell so only when the file is closed
        raise
    return True
