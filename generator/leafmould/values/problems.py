"""Where something stands in a file, and what is wrong with it.

A gardener's slip is a value we collect (a Problem), never an exception. What the surroundings do to us
(a missing folder, a taken port) is a LeafmouldError, shown once at the edge as its plain sentence.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

WORK_LINE = re.compile(r"(?:work|did|body)(?:\[\d+\])?$")
"""Fields that name a line and nothing more."""


class Level(StrEnum):
    """How much a problem matters. Only an error means that something written is not used."""

    ERROR = "error"
    WARNING = "warning"
    QUESTION = "question"
    HINT = "hint"


@dataclass(frozen=True, slots=True, kw_only=True)
class Location:
    """A spot in a file of the garden folder."""

    file: str  # path inside the garden folder, with forward slashes
    line: int | None = None  # counted from 1
    column: int | None = None  # counted from 1, in characters


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing to tell the gardener, in one sentence that names the spot."""

    at: Location
    level: Level
    message: str  # a whole sentence, full stop included
    field: str | None = None  # path to the spot: "bed", "work[2]", "beds[3].size"
    suggestion: str | None = None  # the nearest known thing they may have meant

    @property
    def sentence(self) -> str:
        """The line shown: file, line, field, message, nearest match."""
        where = self.at.file if self.at.line is None else f"{self.at.file}:{self.at.line}"
        field = f"{self.field}: " if self.field else ""
        return f"{where}: {field}{self.message}{self._ask}"

    @property
    def said(self) -> str:
        """The same below its file and line: a work line is known by its number, other spots by their name."""
        is_plain = self.at.line is not None and self.field and WORK_LINE.match(self.field)
        field = f"{self.field}: " if self.field and not is_plain else ""
        return f"{field}{self.message}{self._ask}"

    @property
    def _ask(self) -> str:
        return asking(self.message, self.suggestion)


def asking(message: str, suggestion: str | None) -> str:
    """The question behind a message; none where it was read as just that."""
    is_said = suggestion is None or f'read as "{suggestion}"' in message
    return "" if is_said else f' Did you mean "{suggestion}"?'


def in_file_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """The problems by file, line and column, each said once."""
    unique = dict.fromkeys(problems)
    return tuple(sorted(unique, key=_place))


def _place(problem: Problem) -> tuple[str, int, int, str, str]:
    at = problem.at
    return (at.file, at.line or 0, at.column or 0, problem.field or "", problem.message)


class LeafmouldError(Exception):
    """The surroundings failed: one plain sentence and an exit code, shown at the edge."""

    exit_code = 3

    def __init__(self, sentence: str) -> None:
        super().__init__(sentence)
        self.sentence = sentence


class WrongUse(LeafmouldError):
    """A command was used in a way it does not know."""

    exit_code = 2


class UnreadableGarden(LeafmouldError):
    """garden.yaml cannot be read at all, so the old site stays as it is."""

    exit_code = 1
