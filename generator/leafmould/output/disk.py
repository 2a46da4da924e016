"""Every call by which `output` changes the disk; nothing else in this room does.

So that each of them can be made to fail in the tests, one after the other, and so that each says which
file it was about. Where a program that reads a file keeps others from replacing it, it is waited for a little.
"""

from __future__ import annotations

import errno
import os
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

PAUSES: tuple[float, ...] = (0.05, 0.1, 0.2, 0.4) if sys.platform == "win32" else ()
"""How long a file that is held open is waited for, try after try. [s]"""

NO_SUCH_CALL = frozenset({errno.EINVAL, errno.ENOSYS, errno.ENOTSUP, errno.EOPNOTSUPP})
"""What a disk answers that cannot be asked to write down at once."""

NEW_FILE = os.O_WRONLY | os.O_CREAT | os.O_TRUNC | getattr(os, "O_BINARY", 0)


def write(path: Path, content: bytes, *, is_flushed: bool = False) -> None:
    """Write a file whole; `is_flushed`: and have the disk write it down before going on."""
    try:
        handle = os.open(path, NEW_FILE, 0o666)
        try:
            rest = memoryview(content)
            while rest:
                rest = rest[os.write(handle, rest) :]
            if is_flushed:
                _flush(handle)
        finally:
            os.close(handle)
    except OSError as fault:
        _name(fault, path)
        raise


def replace(path: Path, to: Path) -> None:
    """Move a file to its place in one step, whatever file stands there; its folder is made if need be."""
    try:
        _patiently(to, lambda: path.replace(to))
    except FileNotFoundError:
        if not os.path.lexists(path):
            raise
        make_folders(to.parent)
        _patiently(to, lambda: path.replace(to))


def rename(path: Path, to: Path) -> None:
    """Move a folder to a place where nothing is, in one step."""
    _patiently(to, lambda: path.rename(to))


def make_folders(path: Path) -> None:
    """Make a folder, and those above it, unless they are there."""
    if path.is_dir():
        return
    if path.parent != path:
        make_folders(path.parent)
    with _about(path), suppress(FileExistsError):
        path.mkdir()


def remove(path: Path) -> bool:
    """Remove a file; whether it was there."""
    try:
        _patiently(path, path.unlink)
    except (FileNotFoundError, NotADirectoryError):
        return False
    return True


def remove_folder(path: Path) -> None:
    """Remove an empty folder."""
    _patiently(path, path.rmdir)


def remove_tree(path: Path) -> None:
    """Remove a folder of ours with all that is in it; links in it are removed, not followed."""
    for item in sorted(path.iterdir()):
        if item.is_dir() and not item.is_symlink():
            remove_tree(item)
        else:
            remove(item)
    remove_folder(path)


def _flush(handle: int) -> None:
    try:
        os.fsync(handle)
    except OSError as fault:
        if fault.errno not in NO_SUCH_CALL:
            raise


def _patiently(path: Path, act: Callable[[], object]) -> None:
    with _about(path):
        for pause in PAUSES:
            try:
                act()
                return
            except PermissionError:
                time.sleep(pause)
        act()


@contextmanager
def _about(path: Path) -> Iterator[None]:
    """Let a fault name the file it is about."""
    try:
        yield
    except OSError as fault:
        _name(fault, path)
        raise


def _name(fault: OSError, path: Path) -> None:
    fault.filename, fault.filename2 = str(path), None
