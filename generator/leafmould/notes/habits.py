"""What a line is read with, and what is read from it: the values between the readers of notes and the matcher.

Apart from the matcher, which is large: a run in which no note has changed never loads it.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.notes.entries import Action, Named, Words
from leafmould.values.names import Vocabulary
from leafmould.values.problems import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Habits:
    """How this garden writes: what every line is read with."""

    vocabulary: Vocabulary
    order: str | None = None  # "day first", "month first"
    decimal: str | None = None  # "point", "comma"
    units: str = "metric"
    is_southern: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Defaults:
    """What the header says for lines that lack it."""

    beds: tuple[Named, ...] = ()
    crops: tuple[Named, ...] = ()
    varieties: tuple[Named, ...] = ()
    part: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LineReading:
    """What one line says. All three may be empty: then it is prose, in silence."""

    actions: tuple[Action, ...] = ()
    words: tuple[Words, ...] = ()
    problems: tuple[Problem, ...] = ()
