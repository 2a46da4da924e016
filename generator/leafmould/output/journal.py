"""What is still to be done to an output folder once every file of a build lies ready: a list that outlives us.

Written by `write` as the last thing before the site changes. From then on the build is decided: whoever finds
the journal - this run, or the next one if this one is killed - carries it out to its end. Doing it twice does
no harm. Before there is a journal the old site stands untouched.
"""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from leafmould.output import disk
from leafmould.output.built import LIST_NAME, digest_of
from leafmould.output.names import folders_of, is_inside
from leafmould.output.stage import PROBE, Stage, clear_stages, left_stages
from leafmould.values.problems import LeafmouldError

JOURNAL = "journal"
BOTH, LAST = "both", "last"
"""The two states of the list of files: what may be there while the work goes on, and what is there after."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Journal:
    """What is to be done, in this order."""

    first: Sequence[str]  # names to be removed to make room
    put: Sequence[tuple[str, str, str]]  # number in the stage, name in the site, digest
    gone: Sequence[str]  # names to be removed


def keep_journal(stage: Stage, journal: Journal) -> Path:
    """Write the journal down; there in one step, or not there. The folder it stands in."""
    plan = {"first": list(journal.first), "put": list(journal.put), "gone": list(journal.gone)}
    part = stage.note(f"{JOURNAL}.part", json.dumps(plan).encode("ascii"))
    disk.replace(part, part.with_name(JOURNAL))
    return part.parent


def settle(to: Path) -> None:
    """Bring an output folder that a build left halfway to its end, and clear away what builds left.

    A build that was cut short before its journal is as if it had never been; one cut short later is finished.
    """
    for place in left_stages(to):
        if (journal := _read(place)) is not None:
            carry_out(place, to, journal, is_left=True)
    clear_stages(to)
    if os.path.lexists(to / PROBE):
        disk.remove(to / PROBE)


def carry_out(stage: Path, to: Path, journal: Journal, *, is_left: bool = False) -> tuple[str, ...]:
    """Make the output folder what the journal says; the names that were removed.

    The list names both old and new files while the work goes on, so that even without the stage nothing of
    ours would be taken for somebody else's.

    Args:
        is_left: another run wrote it. What lies in its stage is looked at before it is used; where something
            does not hold what it should - the power failed - it stays out, and the list stays unsure of it.
    """
    _check_links(to, journal)
    list_path = to / LIST_NAME
    _put(stage / BOTH, list_path)
    removed = _remove_all(to, journal.first)
    is_sound = True
    for number, name, digest in journal.put:
        if is_left and not _is_sound(stage / number, digest):
            is_sound = False
        else:
            _put(stage / number, to / name)
    removed += _remove_all(to, journal.gone)
    if is_sound:
        _put(stage / LAST, list_path)
    disk.remove(stage / JOURNAL)
    return tuple(sorted(removed))


def _read(stage: Path) -> Journal | None:
    try:
        plan = json.loads((stage / JOURNAL).read_bytes())
        put = [(str(number), str(name), str(digest)) for number, name, digest in plan["put"]]
        journal = Journal(first=plan["first"], put=put, gone=plan["gone"])
        names = [*journal.first, *journal.gone, *(name for _, name, _ in put)]
        return journal if all(map(is_inside, names)) else None
    except (OSError, ValueError, LookupError, TypeError):
        return None


def _put(path: Path, to: Path) -> None:
    """Move a file to its place; one that is not there has been moved already."""
    try:
        disk.replace(path, to)
    except FileNotFoundError:
        if os.path.lexists(path):
            raise


def _is_sound(path: Path, digest: str) -> bool:
    """Whether a staged file holds what it should, or has been moved already."""
    try:
        return digest_of(path.read_bytes()) == digest
    except FileNotFoundError:
        return True


def _remove_all(to: Path, names: Sequence[str]) -> list[str]:
    """Remove own files and the folders that are empty without them; the names that were there."""
    removed = []
    for name in names:
        path = to / name
        if any((to / folder).is_symlink() for folder in folders_of([name])):
            continue  # it leads to somebody else's files
        if path.is_dir() and not path.is_symlink():
            continue  # made into a folder by somebody else
        if disk.remove(path):
            removed.append(name)
        _remove_empty(path.parent, to)
    return removed


def _remove_empty(folder: Path, stop: Path) -> None:
    while folder != stop and folder.is_dir() and not any(folder.iterdir()):
        disk.remove_folder(folder)
        folder = folder.parent


def _check_links(to: Path, journal: Journal) -> None:
    """Raise if a link was put where a folder of ours must be: it leads to somebody else's files."""
    for folder in sorted(folders_of(name for _, name, _ in journal.put)):
        if (to / folder).is_symlink():
            raise in_the_way(to / folder)


def in_the_way(path: Path) -> LeafmouldError:
    """What to say of something that is not ours and stands where a file of ours must be."""
    return LeafmouldError(
        f'"{path}" was not made by leafmould and is in the way. '
        "Move it elsewhere, then build again. Nothing was changed."
    )
