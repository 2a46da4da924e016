"""Puts a site's files into the output folder: new and changed ones written, old own ones removed.

Last in a build, one build at a time. Everything is written aside first (`stage`), then each file is put
in its place in one step; a file that would not change is left alone, and only what the folder's own list (`built`) names is ever removed. Knows names
and bytes, not what they mean. Everything that could be in the way is looked for before the first write.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from leafmould.output.built import LIST_NAME, disk_name, is_inside, list_bytes, read_list
from leafmould.output.lock import PATIENCE, Lock
from leafmould.output.stage import Stage, clear_stages
from leafmould.output.stamps import Row, stamps_of
from leafmould.values.problems import LeafmouldError, WrongUse

LEFT_BY_SYSTEMS = frozenset({"thumbs.db", "desktop.ini"})
"""What some systems put into every folder; like names that begin with a dot, it takes up no room."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What a build did to the output folder; names sorted, the list itself not counted."""

    made: int  # files the site now has
    changed: tuple[str, ...] = ()  # written, because new or different
    removed: tuple[str, ...] = ()  # no longer made
    stamps: Mapping[str, Row] = field(
        default_factory=dict, compare=False
    )  # of all files and the list, as left


def check_folder(to: Path) -> frozenset[str]:
    """The names of our own files in the output folder.

    Raises:
        WrongUse: if something else is kept there.
    """
    own = read_list(to)
    if own is not None:
        return own
    if to.is_dir():
        held = sorted(p.name for p in to.iterdir() if not _takes_no_room(p.name))
        if LIST_NAME in held and (own := read_list(to)) is not None:
            return own  # another build's, made since we looked
        if held:
            raise WrongUse(
                f'"{to}" is not empty and was not made by leafmould (it holds "{held[0]}"). '
                "Choose an empty folder with --to."
            )
    elif to.exists() or to.is_symlink():
        raise WrongUse(f'"{to}" is a file, so no site can be put there. Choose a folder with --to.')
    return frozenset()


def write_site(to: Path, files: Mapping[str, bytes], *, patience: float = PATIENCE) -> Written:
    """Make the output folder hold exactly these files of ours.

    Args:
        files: bytes by name; names are relative, with forward slashes.
        patience: how long another build of the folder is waited for. [s]
    Raises:
        WrongUse: if the folder holds something else.
        LeafmouldError: if a file of somebody else is in the way, another build is at it, or the disk
            refuses. Nothing has been changed in the first two cases, nor by a disk that is full.
        ValueError: if two names meet on some disk or lead outside; our own mistake.
    """
    _check_names(files)
    check_folder(to)
    try:
        to.mkdir(parents=True, exist_ok=True)
        with Lock(to, patience=patience):
            own = check_folder(to)
            _check_way(to, files, own)
            clear_stages(to, _folders([*files, *own]))
            written = _write_all(to, files, own)
            return replace(written, stamps=stamps_of(to, sorted((*files, LIST_NAME))))
    except OSError as error:
        name = error.filename or to
        raise LeafmouldError(f'Could not write "{name}": {error.strerror or error}.') from error


def _write_all(to: Path, files: Mapping[str, bytes], own: frozenset[str]) -> Written:
    """Write everything aside, note what will be there, put in place, remove, note what is there.

    The list names both old and new files while the work goes on, so that a run cut short leaves nothing
    behind that the next run would take for somebody else's.
    """
    gone = own - files.keys()
    changed = [name for name in sorted(files) if not _is_same(to / name, files[name])]
    if not changed and not gone and _is_same(to / LIST_NAME, list_bytes(files)):
        return Written(made=len(files))
    with Stage(to) as stage:
        both = stage.add(LIST_NAME, list_bytes(own | files.keys()))
        staged = [(name, stage.add(name, files[name])) for name in changed]
        made = stage.add(LIST_NAME, list_bytes(files))
        _put(both, to / LIST_NAME)
        first = _must_go_first(gone, files)
        removed = _remove(to, first)
        for name, beside in staged:
            _put(beside, to / name)
        removed += _remove(to, sorted(gone.difference(first)))
        _put(made, to / LIST_NAME)
    return Written(made=len(files), changed=tuple(changed), removed=tuple(sorted(removed)))


def _must_go_first(gone: Iterable[str], files: Iterable[str]) -> list[str]:
    """Old names that are a new file, or its folder, or inside it, on some disk."""
    kept = {disk_name(name) for name in files}
    standing = kept | {disk_name(folder) for folder in _folders(files)}
    return [
        name
        for name in sorted(gone)
        if disk_name(name) in standing or any(disk_name(f) in kept for f in _folders([name]))
    ]


def _put(beside: Path, path: Path) -> None:
    """Move a file to its place in one step."""
    try:
        beside.replace(path)
    except FileNotFoundError:
        path.parent.mkdir(parents=True, exist_ok=True)
        beside.replace(path)


def _is_same(path: Path, content: bytes) -> bool:
    try:
        return path.stat().st_size == len(content) and path.read_bytes() == content
    except (FileNotFoundError, NotADirectoryError, IsADirectoryError):
        return False


def _remove(to: Path, names: Sequence[str]) -> list[str]:
    """Remove own files and the folders that are empty without them; the names that were there."""
    removed = []
    for name in names:
        path = to / name
        if any((to / folder).is_symlink() for folder in _folders([name])):
            continue  # it leads to somebody else's files
        if path.is_dir() and not path.is_symlink():
            continue  # made into a folder by somebody else
        try:
            path.unlink()
        except (FileNotFoundError, NotADirectoryError):
            continue
        removed.append(name)
        _remove_empty(path.parent, to)
    return removed


def _remove_empty(folder: Path, stop: Path) -> None:
    while folder != stop and not any(folder.iterdir()):
        folder.rmdir()
        folder = folder.parent


def _check_names(files: Iterable[str]) -> None:
    """Every name is plain, none is the list, and no two are one file or a file and its folder."""
    seen: dict[str, str] = {disk_name(LIST_NAME): LIST_NAME}
    for name in sorted(files):
        if not is_inside(name):
            raise ValueError(f"a name that leads outside: {name!r}")
        other = seen.setdefault(disk_name(name), name)
        if other != name or name == LIST_NAME:
            raise ValueError(f"two files with one name on some disks: {other!r} and {name!r}")
    for folder in sorted(_folders(files)):
        if disk_name(folder) in seen:
            raise ValueError(f"a file and a folder with one name: {seen[disk_name(folder)]!r}")


def _check_way(to: Path, names: Iterable[str], own: frozenset[str]) -> None:
    """Raise if something that is not ours stands where a file or folder of ours must go."""
    ours = {disk_name(name) for name in own}
    listed = sorted(names)
    for folder in sorted(_folders(listed)):
        if _blocks_folder(to / folder) and disk_name(folder) not in ours:
            raise _in_the_way(to / folder)
    for name in (name for name in listed if disk_name(name) not in ours):
        if os.path.lexists(to / name) and not _holds_only_ours(to / name, to, ours):
            raise _in_the_way(to / name)


def _blocks_folder(path: Path) -> bool:
    """Whether a link or a file stands where a folder of ours must be."""
    return path.is_symlink() or (path.exists() and not path.is_dir())


def _holds_only_ours(path: Path, to: Path, ours: set[str]) -> bool:
    """Whether it is a folder that will be gone with the old files of ours in it."""
    if path.is_symlink() or not path.is_dir():
        return False
    held = (p for p in path.rglob("*") if p.is_symlink() or not p.is_dir())
    return all(disk_name(p.relative_to(to).as_posix()) in ours for p in held)


def _in_the_way(path: Path) -> LeafmouldError:
    return LeafmouldError(
        f'"{path}" was not made by leafmould and is in the way. '
        "Move it elsewhere, then build again. Nothing was changed."
    )


def _folders(names: Iterable[str]) -> set[str]:
    """Every folder these files stand in, below the output folder."""
    found: set[str] = set()
    for name in names:
        folder = name.rpartition("/")[0]
        while folder and folder not in found:
            found.add(folder)
            folder = folder.rpartition("/")[0]
    return found


def _takes_no_room(name: str) -> bool:
    return name.startswith(".") or name.casefold() in LEFT_BY_SYSTEMS
