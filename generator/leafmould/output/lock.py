"""One writer at a time in a folder: a lock the system lets go of when its holder ends, however it ends.

Held while a site is being made and written, and by a preview for as long as its folder is in use. A lock file
somebody killed left behind is no lock: the system knows that nobody holds it.
"""

from __future__ import annotations

import errno
import os
import sys
import time
from datetime import datetime
from pathlib import Path
from types import TracebackType

from leafmould.values.problems import LeafmouldError

LOCK_NAME = ".leafmould-lock"
PATIENCE = 5.0
"""How long another build is waited for. [s]"""

PAUSE = 0.05
CANNOT = frozenset({errno.ENOLCK, errno.ENOSYS, errno.EOPNOTSUPP, errno.ENOTSUP, errno.EINVAL})
"""What a disk answers that knows no locks. There, as before, nobody is kept out."""

if sys.platform == "win32":
    import msvcrt

    def _seize(handle: int) -> None:
        os.lseek(handle, 0, os.SEEK_SET)
        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _seize(handle: int) -> None:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)


class Lock:
    """Holds a folder while entered; or, where the folder may not be there yet, from `take` to `let_go`."""

    def __init__(self, folder: Path, *, patience: float = PATIENCE) -> None:
        """Take the folder, and how many seconds to wait for another holder."""
        self.folder, self.patience = folder, patience
        self._path = folder / LOCK_NAME
        self._handle = -1

    def __enter__(self) -> Lock:
        """Take the lock, in the folder itself."""
        self.take(self._path)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Let go."""
        self.let_go()

    def take(self, path: Path) -> None:
        """Take the lock in this file.

        Raises:
            LeafmouldError: if another build holds it and does not end.
        """
        end = time.monotonic() + self.patience
        while (handle := _take(path)) is None:
            if time.monotonic() >= end:
                raise LeafmouldError(
                    f'Another build is writing to "{self.folder}"; it began at {_began(path)}. '
                    "Wait for its end, then build again. Nothing was changed."
                )
            time.sleep(PAUSE)
        self._path, self._handle = path, handle

    def let_go(self) -> None:
        """Let go, and take the file away while it is still ours."""
        try:
            if sys.platform != "win32":
                _forget(self._path)
        finally:
            os.close(self._handle)
        if sys.platform == "win32":
            _forget(self._path)


def is_held(folder: Path) -> bool:
    """Whether somebody holds the folder now; where that cannot be known, or is just being settled, it counts."""
    path = folder / LOCK_NAME
    if not path.is_file():
        return False
    if path.stat().st_size == 0:
        return True
    handle = os.open(path, os.O_RDWR)
    try:
        _seize(handle)
    except OSError:
        return True
    finally:
        os.close(handle)
    return False


def _take(path: Path) -> int | None:
    """The lock file open and locked; None if another holds it, or has just let go of it."""
    try:
        handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o644)
    except PermissionError:
        if sys.platform == "win32":
            return None  # being taken away by its last holder
        raise
    try:
        if _is_seized(handle) and _is_there(path, handle):
            os.ftruncate(handle, 0)
            os.write(handle, f"{os.getpid()}\n".encode("ascii"))
            return handle
    except OSError as fault:
        if fault.errno in CANNOT:
            return handle
        os.close(handle)
        fault.filename = str(path)
        raise
    except BaseException:
        os.close(handle)
        raise
    os.close(handle)
    return None  # another's, or taken away by its last holder since we opened it


def _is_seized(handle: int) -> bool:
    """Whether the lock is ours; False if another holds it."""
    try:
        _seize(handle)
    except OSError as fault:
        if fault.errno in (errno.EACCES, errno.EAGAIN, errno.EDEADLK):
            return False
        raise
    return True


def _is_there(path: Path, handle: int) -> bool:
    try:
        return os.path.samestat(path.stat(), os.fstat(handle))
    except FileNotFoundError:
        return False


def _began(path: Path) -> str:
    """When the holder took the lock, by the time of its file."""
    try:
        return f"{datetime.fromtimestamp(path.stat().st_mtime):%H:%M:%S}"
    except OSError:
        return "this very moment"


def _forget(path: Path) -> None:
    try:
        path.unlink()
    except OSError:
        return  # another has opened it already; a file nobody holds is no lock
