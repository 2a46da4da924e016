"""One work line and a Vocabulary to what was done: actions with spans, and what to ask."""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.notes.entries import Action, Named, Words
from leafmould.values.names import Vocabulary
from leafmould.values.problems import Location, Problem
from leafmould.values.when import When


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


def read_line(
    text: str,
    *,
    at: Location,
    field: str,
    base: When | None,
    habits: Habits,
    defaults: Defaults,
    is_prose: bool = False,
) -> LineReading:
    """Read one work line.

    Args:
        base: the note's date, for dates without a year.
        defaults: filled in where the line has none, once its verb needs it.
        is_prose: a list line of a note without a header: it counts only if it reads whole (a verb and a
            known crop or bed, left-overs only after a comma); else nothing is said.
    """
    raise NotImplementedError
