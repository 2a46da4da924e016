"""What the disks of this world take for a file's name, and which two names they take for one.

Asked where addresses are chosen, and again before anything is written. Sources: "Naming files, paths and
namespaces" (Windows), the notes of the usual disks on lengths; both from memory.
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

UNSAFE = re.compile(r'[\x00-\x1f\x7f\\:*?"<>|\ud800-\udfff]')
"""Signs some disk does not take in a name, or takes for something else."""

DEVICES = frozenset(
    {"con", "prn", "aux", "nul", "conin$", "conout$"}
    | {f"{port}{n}" for port in ("com", "lpt") for n in "0123456789¹²³"}
)
"""Names Windows keeps for devices, with any ending."""

LONGEST = 255
"""What the usual disks take for one step of a path, counted in bytes of UTF-8. [bytes]"""


def disk_name(name: str) -> str:
    """A name as the most forgetful disk keeps it: two equal ones overwrite each other there."""
    if name.isascii():
        return name.lower()
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())


def is_device(step: str) -> bool:
    """Whether Windows keeps the name for a device, whatever its ending."""
    return step.partition(".")[0].rstrip().casefold() in DEVICES


def length(step: str) -> int:
    """How long a step of a path is on a disk, composed or taken apart, whichever is longer. [bytes]"""
    if step.isascii():
        return len(step)
    return max(
        len(unicodedata.normalize(form, step).encode("utf-8", "surrogatepass")) for form in ("NFC", "NFD")
    )


@lru_cache(maxsize=4096)
def is_safe_step(step: str) -> bool:
    """Whether every disk takes one step of a path as it is, and gives it back."""
    return (
        UNSAFE.search(step) is None
        and not step.endswith((".", " "))
        and not step.startswith(" ")
        and not is_device(step)
        and length(step) <= LONGEST
    )
