"""Whether files are as they were left: by their stamps where these can be trusted, else by their contents.

A stamp is a file's size, its two times of change and its number on the disk. It cannot tell of a change that
came in the same tick of the disk's clock as the one before. So files that were written within a tick of the
newest of them are known by their contents. The clock is the disk's own: that of the newest file.
"""

from __future__ import annotations

import os
import stat
import sys
from collections.abc import Iterable, Mapping, Sequence
from hashlib import blake2b
from pathlib import Path

SECOND = 1_000_000_000  # [ns]
FINE_TICK = SECOND // 20
"""No clock of a disk that keeps parts of a second is coarser: common practice, 1/100 s. [ns]"""

COARSE_TICK = 2 * SECOND
"""The coarsest clock of a disk: that of memory cards, as their maker published it. [ns]"""

Row = list[int | str]
"""Size, time of change, of change of the file's papers, number on the disk; then the contents' digest or "". """


def stamps_of(folder: Path, names: Iterable[str]) -> dict[str, Row]:
    """The stamp of each file, and the digest of those a stamp is not enough for.

    Raises:
        OSError: if one of them cannot be read.
    """
    rows = {name: _stamp(f"{folder}/{name}") for name in names}
    newest = max((_changed(row) for row in rows.values()), default=0)
    for name, row in rows.items():
        is_sure = _changed(row) + _tick(row) < newest
        row.append("" if is_sure else digest_of(f"{folder}/{name}"))
    return rows


def are_as_left(folder: Path, rows: Mapping[str, Sequence[int | str]]) -> bool:
    """Whether every file is there, and as it was when its row was made."""
    try:
        return all(_is_as_left(f"{folder}/{name}", row) for name, row in rows.items())
    except OSError:
        return False


def digest_of(path: str) -> str:
    """A short name for exactly the bytes of a file."""
    with Path(path).open("rb", buffering=0) as file:
        return blake2b(file.read(), digest_size=16).hexdigest()


def _is_as_left(path: str, row: Sequence[int | str]) -> bool:
    *stamp, digest = row
    now = _stamp(path)
    return digest_of(path) == digest if digest and now[0] == stamp[0] else now == stamp


def _stamp(path: str) -> Row:
    """Raises OSError where no plain file stands there."""
    found = os.lstat(path)
    if not stat.S_ISREG(found.st_mode):
        raise OSError(f"{path} is no plain file")
    papers = 0 if sys.platform == "win32" else found.st_ctime_ns  # there it is the time of making
    return [found.st_size, found.st_mtime_ns, papers, found.st_ino]


def _changed(row: Row) -> int:
    return int(row[1])


def _tick(row: Row) -> int:
    """How coarse the clock is that gave a time of change: one in whole hundredths of a second may be coarse."""
    return FINE_TICK if _changed(row) % (SECOND // 100) else COARSE_TICK
