"""What counts twice because a file was copied: the same line on the same day in a file and in its copy.

A check like those of `checks`, which lists it. Folders kept on several devices leave such copies when two of
them wrote at once; which file is the right one only the gardener knows, so both are read.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date

from leafmould.garden.model import Garden
from leafmould.notes.entries import Action
from leafmould.values.names import fold
from leafmould.values.problems import Level, Location, Problem

COPY = re.compile(r"conflict|\bcopy\b|\(\d{1,3}\)\s*$", re.IGNORECASE)
"""In the name of a copy: "2026-06-20 (conflicted copy)", "x.sync-conflict-20260620", "x - Copy", "x (1)"."""

Told = tuple[tuple[str, ...], str, date, date]
"""A line in small letters, what it did, and the day it did it."""


def counted_twice(garden: Garden) -> Iterator[Problem]:
    """A warning for each copy of a file, at the first line that stands in both."""
    first_in: dict[Told, list[Action]] = {}
    for event in garden.events:
        told = (tuple(fold(event.action.text)), event.verb, event.when.first, event.when.last)
        first_in.setdefault(told, []).append(event.action)
    found: dict[tuple[str, str], Location] = {}
    for actions in first_in.values():
        for copy, other in _copies(actions):
            pair = (copy.at.file, other.at.file)
            found[pair] = min(found.get(pair, copy.at), copy.at, key=lambda at: at.line or 0)
    for (_, file), at in sorted(found.items()):
        message = (
            f'The same stands in "{file}", on the same day, and counts twice. Keep one of the two files.'
        )
        yield Problem(at=at, level=Level.WARNING, message=message)


def _copies(actions: list[Action]) -> Iterator[tuple[Action, Action]]:
    """Actions in a file named like a copy, each with one that stands in another file."""
    for copy in actions:
        others = [a for a in actions if a.at.file != copy.at.file and not _is_copy(a.at.file)]
        if others and _is_copy(copy.at.file):
            yield copy, min(others, key=lambda a: a.at.file)


def _is_copy(file: str) -> bool:
    return COPY.search(file.rsplit("/", 1)[-1].rsplit(".", 1)[0]) is not None
