"""What the surroundings did to a command, in one sentence: full disks, names too long, folders gone.

Used at the edge, for what no stage before it could tell in words of its own. A fault that does not come
from the disk, a terminal or another program is a mistake of ours and is left as it is.
"""

from __future__ import annotations

import os
import sys
from contextlib import suppress
from pathlib import Path
from shlex import quote
from shutil import which
from typing import IO

from leafmould.values.refusals import SAID, refusal

CWD_GONE = "The folder this runs in is no longer there. Go to another folder, then try again."


def sentence_of(fault: OSError) -> str | None:
    """The fault in one sentence; None for one that may be our own mistake."""
    if isinstance(fault, FileNotFoundError) and _is_gone():
        return CWD_GONE
    if (fault.errno or 0) not in SAID:
        return None
    name = _shown(fault.filename)
    return f'Could not use "{name}": {refusal(fault)}.' if name else f"Could not go on: {refusal(fault)}."


def let_go_of_output() -> None:
    """Drop what a stream that cannot be written to still holds, so that ending says nothing more of it."""
    for stream in (sys.stdout, sys.stderr):
        if stream is not None and not _flushed(stream):
            with suppress(OSError, ValueError):
                os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def can_ask() -> bool:
    """Whether there is anybody to put a question to."""
    return None not in (sys.stdin, sys.stdout, sys.stderr)


def command(program: str) -> str:
    """What to type for this program: its plain name where a terminal finds it, else the whole path."""
    if which("leafmould"):
        return "leafmould"
    path = Path(program)
    if path.stem == "leafmould" and path.is_file():
        return as_typed(path.absolute())
    return f"{as_typed(Path(sys.executable))} -m leafmould"


def as_typed(path: Path) -> str:
    """A path as a terminal takes it for one word."""
    text = str(path)
    if os.name == "nt":
        return f'"{text}"' if " " in text else text
    return quote(text)


def _flushed(stream: IO[str]) -> bool:
    try:
        stream.flush()
    except OSError:
        return False
    return True


def _is_gone() -> bool:
    try:
        Path.cwd()
    except FileNotFoundError:
        return True
    return False


def _shown(name: object) -> str:
    """A file's name, cut short where it is longer than anybody wants to read."""
    text = os.fsdecode(name) if isinstance(name, (str, bytes)) else ""
    return f"{text[:80]}…" if len(text) > 240 else text
