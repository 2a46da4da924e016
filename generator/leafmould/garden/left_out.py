"""What a garden folder holds and a run passes over: rows of years to come, files where folders belong.

Looked for once a run, while the garden is loaded; what notes leave out is told there.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from leafmould.notes.setting_values import Settings
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.wording import counted, day

FOLDERS = ("notes", "plans", "pages", "photos", "records", "look")


def without_later_rows(settings: Settings, on: date) -> tuple[Settings, tuple[Problem, ...]]:
    """The settings without what is said to have grown in years after today, and one hint for all of it."""
    later = [row for row in settings.beforehand if row.year > on.year]
    if not later:
        return settings, ()
    others = f", and {counted(len(later) - 1, 'other row')} too" if len(later) > 1 else ""
    message = f"{later[0].year} lies after {day(on)}{others}: as if not yet written."
    hint = Problem(at=later[0].at, level=Level.HINT, message=message)
    past = tuple(row for row in settings.beforehand if row.year <= on.year)
    return replace(settings, beforehand=past), (hint,)


def misplaced(folder: Path) -> tuple[Problem, ...]:
    """An error for each file that stands where a folder belongs: nothing that should be in it is read."""
    return tuple(
        Problem(
            at=Location(file=name),
            level=Level.ERROR,
            message=f'This is a file, and "{name}" must be a folder. Rename it.',
        )
        for name in FOLDERS
        if (folder / name).is_file()
    )
