"""A build as the command asks for it: where nothing has changed since the last one, that is the answer.

Works before anything is loaded that reads notes or makes pages. What the last build of an output folder was
made from and left there is kept in the garden's .leafmould/, and may be deleted at any time. A build is
spared only if everything is the same: every file a build could read, by its contents; the day, the options,
this program and its libraries; and every file in the output folder (`output.stamps`).
"""

from __future__ import annotations

import json
import os
import sys
import tempfile
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from datetime import date
from hashlib import blake2b
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import leafmould
from leafmould.output.stage import is_at_work
from leafmould.output.stamps import are_as_left, digest_of, stamps_of
from leafmould.report import BuildReport, Made
from leafmould.values.problems import Level, Location, Problem

FILES = ("garden.yaml", "crops.yaml")
ROOMS = ("notes", "plans", "pages", "records", "look", "photos")
"""All that a build may read of a garden."""

PHOTOS = "photos"
"""Too large to be read each time: known by their stamps."""

LIBRARIES = ("jinja2", "markupsafe", "markdown_it", "mdurl", "yaml", "PIL")
"""What the pages depend on besides this program."""

KEPT = ".leafmould"


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A build that is asked for."""

    folder: Path
    to: Path
    on: date
    household: bool


def build_again(
    folder: Path, *, to: Path, on: date, household: bool, workers: int | None = None
) -> BuildReport:
    """Build the site of a garden folder, unless nothing has changed since it was built.

    Takes and raises what `build` does.
    """
    asked = Asked(folder=folder, to=to, on=on, household=household)
    made_from = _made_from(asked)
    if made_from and (report := _last(asked, made_from)):
        return report
    from leafmould.build import build

    report = build(folder, to=to, on=on, household=household, workers=workers)
    if made_from:
        _keep(asked, made_from, report)
    return report


def _made_from(asked: Asked) -> str | None:
    """A short name for all a build depends on; None where that cannot be told."""
    digest = blake2b(digest_size=20)
    try:
        for line in (*_options(asked), *_program(), *_contents(asked.folder)):
            digest.update(f"{line}\n".encode("utf-8", "surrogateescape"))
    except (OSError, UnicodeEncodeError):
        return None
    return digest.hexdigest()


def _options(asked: Asked) -> Iterator[str]:
    yield from map(repr, (str(asked.folder.resolve()), str(asked.to.resolve()), asked.on, asked.household))


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


def _contents(folder: Path) -> Iterator[str]:
    """Every file a build could read, with the digest of what is in it."""
    top = str(folder)
    for name in FILES:
        path = f"{top}/{name}"
        yield f"{name} {digest_of(path) if os.path.lexists(path) else ''}"
    for room in ROOMS:
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


def _place(asked: Asked) -> Path:
    """Where it is kept how this output folder was left."""
    name = blake2b(str(asked.to.resolve()).encode("utf-8", "surrogateescape"), digest_size=6).hexdigest()
    return asked.folder / KEPT / f"site-{name}.json"


def _last(asked: Asked, made_from: str) -> BuildReport | None:
    """What the last build said, if it was made from the same, and all it made is as it was left."""
    try:
        kept = json.loads(_place(asked).read_bytes())
        if kept["made from"] != made_from or is_at_work(asked.to) or not are_as_left(asked.to, kept["files"]):
            return None
        return _report(kept["report"], asked)
    except (OSError, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return None


def _keep(asked: Asked, made_from: str, report: BuildReport) -> None:
    """Remember how the folder was left; where that is not possible, the next build is done in full."""
    place = _place(asked)
    with suppress(OSError):
        place.unlink(missing_ok=True)
        kept = {"made from": made_from, "files": report.stamps, "report": _as_json(report)}
        text = json.dumps(kept, ensure_ascii=False, separators=(",", ":"))
        place.parent.mkdir(exist_ok=True)
        handle, beside = tempfile.mkstemp(dir=place.parent, prefix=f".{place.name}.")
        with os.fdopen(handle, "wb") as out:
            out.write(text.encode("utf-8", "surrogatepass"))
        Path(beside).replace(place)


def _as_json(report: BuildReport) -> dict[str, Any]:
    made = report.made
    return {
        "numbers": [made.notes, made.plantings, made.pages],
        "problems": [
            [p.at.file, p.at.line, p.at.column, p.level, p.message, p.field, p.suggestion]
            for p in report.problems
        ],
        "dates": [[file, day.isoformat()] for file, day in report.dates.items()],
    }


def _report(kept: dict[str, Any], asked: Asked) -> BuildReport:
    notes, plantings, pages = kept["numbers"]
    return BuildReport(
        made=Made(
            on=asked.on,
            household=asked.household,
            notes=notes,
            plantings=plantings,
            pages=pages,
            changed=0,
            removed=0,
        ),
        stamps={},
        changed=(),
        removed=(),
        problems=tuple(_problem(*row) for row in kept["problems"]),
        dates={file: date.fromisoformat(day) for file, day in kept["dates"]},
    )


def _problem(
    file: str,
    line: int | None,
    column: int | None,
    level: str,
    message: str,
    field: str | None,
    suggestion: str | None,
) -> Problem:
    at = Location(file=file, line=line, column=column)
    return Problem(at=at, level=Level(level), message=message, field=field, suggestion=suggestion)
