"""What stands in the way of a site's files: things of somebody else, and old files of ours.

Looked for before anything changes. What is somebody else's ends the build; what is ours is removed first.
"""

from __future__ import annotations

import os
from collections.abc import Collection, Iterable
from pathlib import Path

from leafmould.output.journal import in_the_way
from leafmould.output.names import folders_of
from leafmould.values.file_names import disk_name


def check_way(to: Path, names: Iterable[str], changed: Iterable[str], own: Collection[str]) -> None:
    """Raise LeafmouldError if something that is not ours stands where a file or folder of ours must go.

    Args:
        names: all files of the site.
        changed: those of them that will be put there.
    """
    ours = {disk_name(name) for name in own}
    for folder in sorted(folders_of(names)):
        if _blocks_folder(to / folder) and disk_name(folder) not in ours:
            raise in_the_way(to / folder)
    for name in sorted(changed):
        is_ours = disk_name(name) in ours and not _is_folder(to / name)
        if not is_ours and os.path.lexists(to / name) and not _holds_only_ours(to / name, to, ours):
            raise in_the_way(to / name)


def must_go_first(gone: Iterable[str], files: Collection[str]) -> list[str]:
    """Old names that are a new file, or its folder, or inside it, on some disk."""
    kept = {disk_name(name) for name in files}
    standing = kept | {disk_name(folder) for folder in folders_of(files)}
    return [
        name
        for name in sorted(gone)
        if disk_name(name) in standing or any(disk_name(f) in kept for f in folders_of([name]))
    ]


def _blocks_folder(path: Path) -> bool:
    """Whether a link or a file stands where a folder of ours must be."""
    return path.is_symlink() or (path.exists() and not path.is_dir())


def _holds_only_ours(path: Path, to: Path, ours: set[str]) -> bool:
    """Whether it is a folder that will be gone with the old files of ours in it."""
    if not _is_folder(path):
        return False
    held = (p for p in path.rglob("*") if p.is_symlink() or not p.is_dir())
    return all(disk_name(p.relative_to(to).as_posix()) in ours for p in held)


def _is_folder(path: Path) -> bool:
    return path.is_dir() and not path.is_symlink()
