"""What a garden folder holds and a run passes over: rows of years to come, files where folders belong.

Looked for once a run, while the garden is loaded; what notes leave out is told there.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from leafmould.notes.setting_values import Settings
from leafmould.notes.weather_files import WEATHER
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.wording import counted, day

FOLDERS = ("notes", "plans", "pages", "photos", "records", "look")


def without_later_rows(settings: Settings, on: date) -> tuple[Settings, tuple[Problem, ...]]:
    """The settings without rows of tables that tell of years after today, and one hint for each table."""
    grown = [row for row in settings.beforehand if row.year > on.year]
    got = [row for row in settings.seeds if (row.year or 0) > on.year]
    hints = (
        *_one_hint([(row.year, row.at) for row in grown], on),
        *_one_hint([(row.year or 0, row.at) for row in got], on),
    )
    to_come = [row for row in settings.weather if row.on > on]
    if to_come:
        settings = replace(settings, weather=tuple(row for row in settings.weather if row.on <= on))
        message = f"{counted(len(to_come), 'day')} after {day(on)}: as if not yet measured."
        hints += (Problem(at=Location(file=WEATHER), level=Level.HINT, message=message),)
    if not hints:
        return settings, ()
    past = replace(
        settings,
        beforehand=tuple(row for row in settings.beforehand if row not in grown),
        seeds=tuple(row for row in settings.seeds if row not in got),
    )
    return past, hints


def _one_hint(later: list[tuple[int, Location]], on: date) -> tuple[Problem, ...]:
    if not later:
        return ()
    others = f", and {counted(len(later) - 1, 'other row')} too" if len(later) > 1 else ""
    year, at = later[0]
    message = f"{year} lies after {day(on)}{others}: as if not yet written."
    return (Problem(at=at, level=Level.HINT, message=message),)


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
