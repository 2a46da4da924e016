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
    for since in sorted({s.since for s in answers.stands}, key=lambda s: (s.first, s.last, s.written)):
        name = f"notes/{since.first.year:04}/{slug(since.written)}-start.md"
        files[name] = standing_text([s for s in answers.stands if s.since == since], since)
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


def standing_text(stands: Sequence[Standing], since: When) -> str:
    """A first note: what has stood in the garden since one date, as coarse as it is known."""
    written = since.day.isoformat() if since.day else since.written
    return STANDING_TEXT.format(
        since=written, work="\n".join(f"  - planted {s.crop} in {s.bed}" for s in stands)
    )


def _bed_line(place: Place) -> str:
    more = (("kind", place.kind), ("size", place.size))
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
