"""What a disk or a terminal refuses, in words: full, read-only, held open by another program.

One table for everything that writes, so that the same fault is told in the same words everywhere.
"""

from __future__ import annotations

import errno

NOT_ALLOWED = "reading or writing is not allowed there"

SAID: dict[int, str] = {
    errno.ENAMETOOLONG: "this name is longer than the disk allows",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "your share of the disk is used up",
    errno.EFBIG: "the file would be larger than the disk allows",
    errno.EROFS: "the disk can only be read",
    errno.EACCES: NOT_ALLOWED,
    errno.EPERM: NOT_ALLOWED,
    errno.ENOTDIR: "a file stands where a folder should be",
    errno.EISDIR: "a folder stands where a file should be",
    errno.ELOOP: "links lead in a circle there",
    errno.EIO: "the disk or the terminal does not answer",
    errno.EBADF: "input or output is closed",
    errno.EMFILE: "too many files are open",
    errno.ENFILE: "too many files are open",
    errno.ENOMEM: "the computer's memory is full",
}

HELD_OPEN = frozenset({32, 33})
"""What Windows says of a file that another program holds open."""


def refusal(fault: OSError) -> str:
    """Why the surroundings refused, without the file's name."""
    if getattr(fault, "winerror", None) in HELD_OPEN:
        return "another program holds it open"
    return SAID.get(fault.errno or 0) or fault.strerror or str(fault)
