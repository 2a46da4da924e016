"""A build as the command asks for it: where nothing has changed since the last one, that is the answer.

Works before anything is loaded that reads notes or makes pages. What the last build of an output folder was
made from and left there is kept in the garden's .leafmould/, and may be deleted at any time. A build is
spared only if everything is the same: every file a build could read, by its contents; the day, the options,
this program and its libraries (`inputs`); and every file in the output folder (`output.stamps`).
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from hashlib import blake2b
from pathlib import Path
from typing import Any

from leafmould.inputs import ROOMS, keep, kept, made_from
from leafmould.output.stage import is_at_work
from leafmould.output.stamps import are_as_left
from leafmould.report import BuildReport, LeftOut, Made
from leafmould.values.problems import Level, Location, Problem


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
    name = _made_from(asked)
    if name and (report := _last(asked, name)):
        return report
    from leafmould.build import build

    report = build(folder, to=to, on=on, household=household, workers=workers)
    if name:
        _keep(asked, name, report)
    return report


def _made_from(asked: Asked) -> str | None:
    return made_from(asked.folder, ROOMS, str(asked.to.resolve()), asked.on, asked.household)


def _place(asked: Asked) -> str:
    """Under what name it is kept how this output folder was left."""
    name = blake2b(str(asked.to.resolve()).encode("utf-8", "surrogateescape"), digest_size=6).hexdigest()
    return f"site-{name}.json"


def _last(asked: Asked, name: str) -> BuildReport | None:
    """What the last build said, if it was made from the same, and all it made is as it was left."""
    held = kept(asked.folder, _place(asked))
    try:
        if held["made from"] != name or is_at_work(asked.to) or not are_as_left(asked.to, held["files"]):
            return None
        return _report(held["report"], asked)
    except (OSError, ValueError, LookupError, TypeError, AttributeError):
        return None


def _keep(asked: Asked, name: str, report: BuildReport) -> None:
    """Remember how the folder was left; where that is not possible, the next build is done in full."""
    held = {"made from": name, "files": report.stamps, "report": _as_json(report)}
    keep(asked.folder, _place(asked), held)


def _as_json(report: BuildReport) -> dict[str, Any]:
    made, left = report.made, report.made.left_out
    return {
        "numbers": [made.notes, made.plantings, made.pages],
        "left out": [left.beds, left.notes, left.lines, left.pictures, list(left.subjects)],
        "problems": [
            [p.at.file, p.at.line, p.at.column, p.level, p.message, p.field, p.suggestion]
            for p in report.problems
        ],
        "dates": [[file, day.isoformat()] for file, day in report.dates.items()],
    }


def _report(kept: dict[str, Any], asked: Asked) -> BuildReport:
    notes, plantings, pages = kept["numbers"]
    beds, whole, lines, pictures, subjects = kept["left out"]
    return BuildReport(
        made=Made(
            on=asked.on,
            household=asked.household,
            notes=notes,
            plantings=plantings,
            pages=pages,
            changed=0,
            removed=0,
            left_out=LeftOut(
                beds=beds, notes=whole, lines=lines, pictures=pictures, subjects=tuple(subjects)
            ),
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
