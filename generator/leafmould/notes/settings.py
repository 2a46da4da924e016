"""garden.yaml, crops.yaml and the tables under records/ as one frozen value, read once.

Everything has a sensible default. What cannot be used is reported and left at its default; only a
garden.yaml that cannot be read at all raises. The values are in `setting_values`.
"""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from leafmould.notes.beforehand import BEFOREHAND, read_beforehand
from leafmould.notes.crops_file import CROPS_FILE, read_crops
from leafmould.notes.garden_file import GARDEN_FILE, read_garden_file
from leafmould.notes.seeds_file import SEEDS, read_seeds
from leafmould.notes.setting_values import BedSetting, Beforehand, CropSetting, KeptSeed, PacketDays, Settings
from leafmould.notes.text import Text, clean_text
from leafmould.notes.weather_files import NORMALS, WEATHER, read_normals, read_weather
from leafmould.values.problems import Level, Location, Problem, UnreadableGarden

__all__ = ["BedSetting", "Beforehand", "CropSetting", "KeptSeed", "PacketDays", "Settings", "read_settings"]

NAMED = re.compile(r"^[ \"']*(?:garden|name)[ \"']*:[ ]*[^\s#]", re.IGNORECASE | re.MULTILINE)
UNDER_RECORDS = re.compile(r"records/(?!\.)[^/\\\x00]{1,120}")
"""Where a table of the months may lie: nothing else of the disk is read."""


def read_settings(folder: Path) -> Settings:
    """All the settings of a garden folder.

    Raises:
        UnreadableGarden: garden.yaml is missing, cannot be opened, is no UTF-8 text or holds no
            "key: value" at all.
    """
    text = _garden_text(folder)
    settings = _with_a_word_on_its_name(read_garden_file(text), text)
    crops = _text_of(folder, CROPS_FILE)
    if crops is not None:
        read, problems = read_crops(crops.text)
        settings = replace(settings, crops=read, problems=(*settings.problems, *crops.problems, *problems))
    table = _text_of(folder, BEFOREHAND)
    if table is not None:
        rows, problems = read_beforehand(table.text)
        settings = replace(
            settings, beforehand=rows, problems=(*settings.problems, *table.problems, *problems)
        )
    tin = _text_of(folder, SEEDS)
    if tin is not None:
        seeds, problems = read_seeds(tin.text)
        settings = replace(settings, seeds=seeds, problems=(*settings.problems, *tin.problems, *problems))
    return _with_weather(settings, folder)


def _with_a_word_on_its_name(settings: Settings, text: Text) -> Settings:
    """The same, with a hint where no name stands and nothing said so far is about that."""
    told = any("garden" in (problem.field, problem.suggestion) for problem in settings.problems)
    if told or settings.name != Settings().name or NAMED.search(text.text):
        return settings
    message = (
        f'The garden has no name here, so it is called "{settings.name}". '
        'Write one such as "garden: Tansy Hill".'
    )
    hint = Problem(at=Location(file=GARDEN_FILE), level=Level.HINT, message=message, field="garden")
    return replace(settings, problems=(hint, *settings.problems))


def _with_weather(settings: Settings, folder: Path) -> Settings:
    """The same with the tables of the usual weather and of each day's."""
    path = settings.normals or NORMALS
    table = _text_of(folder, path) if UNDER_RECORDS.fullmatch(path) else None
    if table is not None:
        months, problems = read_normals(table.text, path, units=settings.units)
        settings = replace(settings, months=months, problems=(*settings.problems, *table.problems, *problems))
    elif settings.normals:
        message = f'There is no table "{path}", which garden.yaml names for the usual warmth of the months.'
        if not UNDER_RECORDS.fullmatch(path):
            message = f'"{path}" is not read. Keep the table of the months under records/, such as {NORMALS}.'
        problem = Problem(at=Location(file=GARDEN_FILE), level=Level.ERROR, message=message, field="normals")
        settings = replace(settings, problems=(*settings.problems, problem))
    table = _text_of(folder, WEATHER)
    if table is not None:
        days, problems = read_weather(
            table.text, units=settings.units, order=settings.dates, months=settings.months
        )
        settings = replace(settings, weather=days, problems=(*settings.problems, *table.problems, *problems))
    return settings


def _garden_text(folder: Path) -> Text:
    """The text of garden.yaml, or why there is none."""
    try:
        raw = (folder / GARDEN_FILE).read_bytes()
    except FileNotFoundError:
        raise UnreadableGarden(f'There is no {GARDEN_FILE} in "{folder}".') from None
    except OSError as fault:
        raise UnreadableGarden(f"{GARDEN_FILE} cannot be opened: {fault.strerror}.") from None
    text = clean_text(raw, GARDEN_FILE)
    if text.problems and not text.text:
        raise UnreadableGarden(text.problems[0].sentence)
    return text


def _text_of(folder: Path, path: str) -> Text | None:
    """The text of a file that need not be there."""
    try:
        return clean_text((folder / path).read_bytes(), path)
    except (FileNotFoundError, NotADirectoryError):
        return None
    except OSError as fault:
        message = f"This file cannot be opened: {fault.strerror}."
        problem = Problem(at=Location(file=path), level=Level.ERROR, message=message)
        return Text(text="", problems=(problem,))
