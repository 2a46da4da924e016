"""Gardens for tests, from settings and notes as typed; and plantings told in one line each.

A test gives `garden_of` days and what was done on them:

    2026-04-12
    - sowed peas in Arch
    2026-06-20
    - picked 1.2 kg peas

Each day becomes a note with a header (`date:`, `work:`), is read as the program reads it and matched. For
notes of any other shape give whole texts by their path under notes/.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from functools import lru_cache
from textwrap import dedent

from leafmould.facts.tables import crops
from leafmould.garden.assemble import assemble
from leafmould.garden.model import Garden, Planting
from leafmould.garden.vocabulary import build_vocabulary
from leafmould.notes.crops_file import read_crops
from leafmould.notes.entries import Entry
from leafmould.notes.find import NoteFile
from leafmould.notes.garden_file import read_garden_file
from leafmould.notes.lines import Habits
from leafmould.notes.read import learned_varieties, read_all
from leafmould.notes.setting_values import Beforehand, Settings
from leafmould.notes.text import clean_text
from leafmould.values.names import Vocabulary
from leafmould.values.problems import Location


def settings_of(
    garden_yaml: str, *, crops_yaml: str = "", beforehand: tuple[tuple[int, str, str], ...] = ()
) -> Settings:
    """Settings from the text of garden.yaml and crops.yaml, and rows of (year, bed, crop) from before."""
    settings = read_garden_file(clean_text(dedent(garden_yaml).encode(), "garden.yaml"))
    own, problems = read_crops(dedent(crops_yaml))
    at = Location(file="records/beforehand.csv", line=2)
    rows = tuple(Beforehand(year=year, bed=bed, crop=crop, at=at) for year, bed, crop in beforehand)
    return replace(
        settings, crops=own, beforehand=rows, problems=(*settings.problems, *(problems if crops_yaml else ()))
    )


TANSY_HILL_YAML = """
    garden: Tansy Hill
    place: {latitude: 46.5}
    frost: {last: 22 May, first: 25 September}
    dates: day first
    decimal: point
    beds:
      - {name: Long border, also: [LB], parts: [north half, south half]}
      - {name: Arch}
      - {name: Top bed}
      - {name: Hoop bed, kind: under glass}
      - {name: Cold frame, kind: under glass}
      - {name: Tub 1, kind: container}
      - {name: Tub 2, kind: container}
      - {name: Old pear, kind: tree, planted: 2015}
      - {name: Raspberry row, kind: cane row}
"""
TANSY_HILL = settings_of(TANSY_HILL_YAML)


def garden_of(
    notes: Mapping[str, str] | str, settings: Settings = TANSY_HILL, *, on: date = date(2026, 12, 31)
) -> Garden:
    """The garden of some notes: whole texts by their path under notes/, or days and what was done."""
    return assemble(settings, entries_of(notes, settings), crops(), on=on)


def entries_of(notes: Mapping[str, str] | str, settings: Settings = TANSY_HILL) -> tuple[Entry, ...]:
    """What the notes say, read as in a build: once, and again with the varieties learned."""
    texts = day_notes(notes) if isinstance(notes, str) else notes
    files = [_file(path, text) for path, text in texts.items()]
    vocabulary = _vocabulary(settings)
    first = read_all(files, _habits(settings, vocabulary), None)
    if not any(action.is_loose for entry in first for action in entry.actions):
        return first
    return read_all(files, _habits(settings, vocabulary.with_names(learned_varieties(first))), None)


def day_notes(typed: str) -> dict[str, str]:
    """A note for each day: the day at the top, then a line for each thing done."""
    days: list[list[str]] = []
    for line in filter(None, (line.strip() for line in typed.splitlines())):
        if line.startswith("- "):
            days[-1].append(line)
        else:
            days.append([line])
    names = Counter[str]()
    notes: dict[str, str] = {}
    for day, *work in days:
        names[day] += 1
        again = f"-{names[day]}" if names[day] > 1 else ""
        notes[f"{day[:10]}{again}.md"] = "\n".join(["---", f"date: {day}", "work:", *work, "---"])
    return notes


def _file(path: str, text: str) -> NoteFile:
    return NoteFile(path=f"notes/{path}", text=dedent(text).strip() + "\n", digest="")


@lru_cache(maxsize=8)
def _vocabulary(settings: Settings) -> Vocabulary:
    return build_vocabulary(settings, crops())


def _habits(settings: Settings, vocabulary: Vocabulary) -> Habits:
    return Habits(
        vocabulary=vocabulary,
        order=settings.dates,
        decimal=settings.decimal,
        units=settings.units,
        is_southern=settings.is_southern,
    )


def stories(garden: Garden) -> list[str]:
    """Every planting in one line, by start."""
    return [story(planting) for planting in garden.plantings]


def story(planting: Planting) -> str:
    """A planting in one line: its id and all that is known of it."""
    p = planting
    told = [p.id, p.origin]
    if len(p.beds) > 1 or p.bed_now != p.bed:
        told.append(f"in {' then '.join(p.beds)}, now {p.bed_now}")
    told += [f"'{v}'" for v in p.varieties]
    told += ["in doubt"] if p.is_doubtful else []
    if p.number is not None:
        told.append(f"{p.number} plants{' or so' if p.number_estimated else ''}")
    for name in ("started", "sown", "planted", "found", "came_up", "flowered"):
        when = getattr(p, name)
        told += [f"{name} {when.written}"] if when else []
    if p.started_between:
        told.append(f"started between {p.started_between[0]} and {p.started_between[1]}")
    if p.first_picked and p.last_picked:
        totals = ", ".join(a.written for a in p.picked)
        told.append(
            f"picked {p.first_picked.written} to {p.last_picked.written}: {totals or 'nothing counted'}"
        )
    for name in ("cleared", "lost"):
        when = getattr(p, name)
        told += [f"{name} {when.written}"] if when else []
    if p.ended_on:
        told.append(f"ended {p.ended_on}{' (estimated)' if p.end_is_estimated else ''}, {p.end_basis}")
    told += [f"raised in {p.raised_in}"] if p.raised_in else []
    told += [f"from {p.source}"] if p.source else []
    told += [f"parent {p.parent}"] if p.parent else []
    told += [f"group {p.group}"] if p.group else []
    told += [f"season {s.name}: {s.picked_g or 0:g} g" for s in p.seasons]
    return " · ".join(told)


def reached(garden: Garden) -> dict[str, tuple[str, ...]]:
    """The plantings each line reached, by the line as typed; its group, else its crop."""
    return {
        event.action.text: event.plantings
        or ((event.group,) if event.group else tuple(f"crop {crop}" for crop in event.crops))
        for event in garden.events
    }


OWN = {"pear_old-pear_2015", "raspberry_raspberry-row_standing"}
"""Tansy Hill's pear and raspberries stand there before any note."""


def told(garden: Garden) -> list[str]:
    """Every planting but those the beds opened by themselves."""
    return [story(p) for p in garden.plantings if p.id not in OWN]


def sentences(garden: Garden) -> list[str]:
    """All its problems, as the gardener reads them."""
    return [problem.sentence for problem in garden.problems]
