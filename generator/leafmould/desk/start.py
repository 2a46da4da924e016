"""Makes a small garden folder from a few answers. Runs once for a garden, before anything is noted.

What is not known is left out of the files, with a comment that shows where it would stand.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from pathlib import Path

from leafmould.desk.answers import Answers, Place, Standing
from leafmould.desk.folders import SETTINGS
from leafmould.desk.kinds_told import assumed, unknown_crops
from leafmould.desk.surroundings import as_typed
from leafmould.desk.texts import SETTINGS_TEXT, STANDING_TEXT, quoted
from leafmould.values.names import slug
from leafmould.values.problems import LeafmouldError, WrongUse
from leafmould.values.when import When

TAKES_NO_ROOM = frozenset({"thumbs.db", "desktop.ini"})


def check_empty(folder: Path) -> None:
    """Refuse a folder that holds something else.

    Raises:
        WrongUse: with what stands there.
    """
    if not folder.exists():
        return
    if not folder.is_dir():
        raise WrongUse(f'"{folder}" is a file. Name a new folder for the garden.')
    held = sorted(p.name for p in folder.iterdir() if not _takes_no_room(p.name))
    if SETTINGS in held:
        raise WrongUse(f'"{folder}" is a garden already. Write in it with: leafmould note')
    if held:
        raise WrongUse(f'"{folder}" is not empty (it holds "{held[0]}"). Name a new folder for the garden.')


def make_garden(folder: Path, answers: Answers) -> tuple[str, ...]:
    """Write the garden's first files; their names, in the order in which to read them.

    Raises:
        WrongUse: if the folder holds something else.
        LeafmouldError: if the disk refuses.
    """
    check_empty(folder)
    files = {SETTINGS: settings_text(answers), "pages/about.md": _about(answers)}
    files |= _standing_notes(answers.stands)
    if answers.before:
        files["records/beforehand.csv"] = _beforehand(answers)
    try:
        (folder / "notes").mkdir(parents=True, exist_ok=True)
        for name, text in files.items():
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_bytes(text.encode("utf-8"))
    except OSError as error:
        where = error.filename or folder
        raise LeafmouldError(f'Could not write "{where}": {error.strerror or error}.') from error
    return tuple(files)


def assumed_lines(answers: Answers) -> tuple[str, ...]:
    """What was taken by a name, and crops nobody knows."""
    told = {standing.crop for standing in answers.stands} | {crop for _, _, crop in answers.before}
    places = [(place.name, place.by_name) for place in answers.places]
    return (*assumed(places), *unknown_crops(told))


def next_lines(folder: Path, command: str) -> tuple[str, ...]:
    """What to type now, each line as it is, whatever beds the garden has."""
    return (
        "Next, one after the other:",
        f"  cd {as_typed(folder)}",
        f"  {command} note sowed beetroot in Long border",
        f"  {command} build",
    )


def settings_text(answers: Answers) -> str:
    """garden.yaml, with a comment beside everything."""
    frost = [
        f"{key}: {day}" for key, day in (("last", answers.last_frost), ("first", answers.first_frost)) if day
    ]
    place = "" if answers.latitude is None else f"{answers.latitude:g}"
    return SETTINGS_TEXT.format(
        name=quoted(answers.name),
        place=f"place: {{latitude: {place}}}" if place else "# place: {latitude: 46.5}",
        frost=f"frost: {{{', '.join(frost)}}}" if frost else "# frost: {last: 22 May, first: 25 September}",
        units=answers.units,
        beds="\n".join(
            ["beds:", *map(_bed_line, answers.places)]
            if answers.places
            else ["# beds:", "#   - {name: Long border, size: 1.2 x 6 m}"]
        ),
    )


def _standing_notes(stands: Sequence[Standing]) -> dict[str, str]:
    """The first notes: what has stood since one date, as coarse as it is known, in one note each.

    A bed whose name would fall apart at its comma in a line has a note of its own and stands in its header.
    """
    groups: dict[tuple[When, str], list[Standing]] = {}
    for standing in stands:
        apart = standing.bed if "," in standing.bed else ""
        groups.setdefault((standing.since, apart), []).append(standing)
    order = sorted(groups, key=lambda g: (g[0].first, g[0].last, g[0].written, g[1]))
    return {
        _standing_name(since, bed): _standing_text(groups[since, bed], since, bed) for since, bed in order
    }


def _standing_name(since: When, bed: str) -> str:
    words = [since.written, *([bed] if bed else []), "start"]
    return f"notes/{since.first.year:04}/{'-'.join(map(slug, words))}.md"


def _standing_text(stands: Sequence[Standing], since: When, bed: str) -> str:
    written = since.day.isoformat() if since.day else since.written
    lines = [f"planted {s.crop}" if bed else f"planted {s.crop} in {s.bed}" for s in stands]
    return STANDING_TEXT.format(
        head=f"date: {written}\nbed: {quoted(bed)}" if bed else f"date: {written}",
        work="\n".join(f"  - {line}" for line in lines),
    )


def _bed_line(place: Place) -> str:
    known = place.by_name
    more = (
        ("kind", place.kind or known.kind),
        ("crop", known.crop),
        ("variety", quoted(known.variety) if known.variety else None),
        ("size", place.size),
    )
    pairs = [f"name: {quoted(place.name)}", *(f"{key}: {value}" for key, value in more if value)]
    return f"  - {{{', '.join(pairs)}}}"


def _about(answers: Answers) -> str:
    return f"# About {answers.name}\n\nA few words about the garden, for whoever visits.\n"


def _beforehand(answers: Answers) -> str:
    table = io.StringIO()
    rows = csv.writer(table, lineterminator="\n")
    rows.writerow(("year", "bed", "crop"))
    rows.writerows(sorted(answers.before))
    return table.getvalue()


def _takes_no_room(name: str) -> bool:
    return name.startswith(".") or name.casefold() in TAKES_NO_ROOM
