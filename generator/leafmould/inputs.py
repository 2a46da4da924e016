"""What an answer was made from, in one short name: a garden's files, this program, and what was asked.

An answer that was kept is given again only if its name is the same. Files count by their contents; photos,
too large to be read each time, by their stamps (`output.stamps`). What is kept lies in the garden's .leafmould/
and may be deleted at any time.
"""

from __future__ import annotations

import json
import os
import sys
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import suppress
from hashlib import blake2b
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import leafmould
from leafmould.output.stamps import digest_of, stamps_of

FILES = ("garden.yaml", "crops.yaml")
TOLD = ("notes", "records")
"""What a garden is known from."""

ROOMS = (*TOLD, "plans", "pages", "look", "photos")
"""All that a build may read of a garden, besides."""

PHOTOS = "photos"
LIBRARIES = ("jinja2", "markupsafe", "markdown_it", "mdurl", "yaml", "PIL", "pillow_heif")
"""What answers depend on besides this program."""

KEPT = ".leafmould"


def made_from(folder: Path, rooms: Iterable[str], *asked: object) -> str | None:
    """A short name for all an answer depends on; None where that cannot be told.

    Args:
        rooms: of the garden folder.
        asked: the options, and whatever else there is; plain values.
    """
    digest = blake2b(digest_size=20)
    try:
        for line in (*map(repr, (str(folder.resolve()), *asked)), *_program(), *_contents(folder, rooms)):
            digest.update(f"{line}\n".encode("utf-8", "surrogateescape"))
    except (OSError, UnicodeEncodeError):
        return None
    return digest.hexdigest()


def kept(folder: Path, name: str) -> Any:
    """What was kept under a name; None where that cannot be read."""
    try:
        return json.loads((folder / KEPT / name).read_bytes())
    except (OSError, ValueError, RecursionError):
        return None


def keep(folder: Path, name: str, held: object) -> None:
    """Keep it, beside what was kept before and then in its place; a garden that cannot be written to keeps nothing."""
    place = folder / KEPT / name
    with suppress(OSError):
        place.unlink(missing_ok=True)
        text = json.dumps(held, ensure_ascii=False, separators=(",", ":"))
        place.parent.mkdir(exist_ok=True)
        handle, beside = tempfile.mkstemp(dir=place.parent, prefix=f".{name}.")
        with os.fdopen(handle, "wb") as out:
            out.write(text.encode("utf-8", "surrogatepass"))
        Path(beside).replace(place)


def _program() -> Iterator[str]:
    """This program and its libraries: versions, and the stamps of their files."""
    yield f"{leafmould.__version__} {sys.version}"
    package = Path(leafmould.__file__).parent
    for folder in (package, package.parents[1] / "layouts"):
        for path in _files(str(folder)) if folder.is_dir() else ():
            if not path.endswith(".pyc"):
                yield _stamp(path)
    for library in LIBRARIES:
        spec = find_spec(library)
        yield _stamp(spec.origin) if spec and spec.origin else library


def _stamp(path: str) -> str:
    found = Path(path).stat()
    return f"{path!r} {found.st_size} {found.st_mtime_ns}"


def _contents(folder: Path, rooms: Iterable[str]) -> Iterator[str]:
    """Every file that could be read, with the digest of what is in it."""
    top = str(folder)
    for name in FILES:
        path = f"{top}/{name}"
        yield f"{name} {digest_of(path) if os.path.lexists(path) else ''}"
    for room in rooms:
        path = f"{top}/{room}"
        if Path(path).is_dir():
            files = [file[len(top) + 1 :] for file in _files(path)]
            if room == PHOTOS:
                yield from map(repr, stamps_of(folder, files).items())
            else:
                yield from (f"{file!r} {digest_of(f'{top}/{file}')}" for file in files)
        else:
            yield f"{room} {os.path.lexists(path)}"


def _files(folder: str) -> Iterator[str]:
    """Every file under a folder, by name.

    Raises:
        OSError: if something there cannot be looked into, or a link leads to another folder.
    """
    for item in sorted(os.scandir(folder), key=lambda item: item.name):
        if item.is_dir(follow_symlinks=False):
            yield from _files(item.path)
        elif item.is_dir():
            raise OSError(f"{item.path} leads to another folder")
        else:
            yield item.path
