"""How a note just written was understood: its plantings as they stand now, and what was kept as text.

Reads the garden as a build would, so that nothing is said here which the pages do not say.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from leafmould.garden.load import load
from leafmould.garden.model import Event, Garden
from leafmould.lookup.teller import Teller, teller_of
from leafmould.report import ERRORS, exit_code
from leafmould.values.problems import LeafmouldError, Problem, asking, in_file_order
from leafmould.values.wording import counted

MOST_LINES = 4
"""How many plantings one action may name; "cleared everything" is answered with a count."""

SAID_BY_LABELS = frozenset(
    {"started", "sowed", "resowed", "planted", "grew", "picked", "finished", "cleared", "lost", "turned out"}
)
"""Actions that a planting's own labels tell of; any other is named beside them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What to tell the gardener about one note."""

    lines: tuple[str, ...]
    problems: tuple[Problem, ...] = ()
    fault: str | None = None  # why the garden could not be read; the note is written all the same

    @property
    def exit_code(self) -> int:
        """0, or 1 if something typed is not used."""
        return ERRORS if self.fault else exit_code(self.problems)

    @property
    def doubts(self) -> tuple[str, ...]:
        """The problems in words; the place is told only where several lines stand in question."""
        places = {problem.at.line for problem in self.problems}
        return tuple(f"{p.level}: {_place(p) if len(places) > 1 else ''}{_words(p)}" for p in self.problems)


def understood(folder: Path, file: str, today: date) -> Answer:
    """The answer for a note just written, from the garden read anew."""
    try:
        loaded = load(folder, on=today, household=True)
    except LeafmouldError as fault:
        return Answer(lines=(), fault=fault.sentence)
    return answer(teller_of(loaded), file, loaded.problems)


def answer(teller: Teller, file: str, problems: Sequence[Problem]) -> Answer:
    """The answer for the note of that path, in the order of what was typed."""
    garden = teller.garden
    events = sorted((e for e in garden.events if e.action.at.file == file), key=_number)
    lines = [line for event in events for line in _lines(event, teller)]
    for entry in garden.entries:
        if entry.at.file == file:
            lines += [f'kept as text: "{words.text}"' for words in entry.words]
    own = in_file_order(problem for problem in problems if problem.at.file == file)
    return Answer(lines=tuple(dict.fromkeys(lines)), problems=own)


def _lines(event: Event, teller: Teller) -> Iterator[str]:
    reached = [teller.garden.planting_by_id[id_] for id_ in event.plantings]
    if event.verb in SAID_BY_LABELS and 0 < len(reached) <= MOST_LINES:
        yield from (teller.line(planting) for planting in reached)
    elif len(reached) == 1:
        yield f"{teller.name(reached[0])}: {_done(event)}; {teller.labels(reached[0])}"
    else:
        several = ", one of several sowings or plantings" if event.group and not reached else ""
        there = f" ({counted(len(reached), 'planting')} there)" if reached else ""
        yield f"{_about(event, teller.garden)}: {_done(event)}{several}{there}"


def _about(event: Event, garden: Garden) -> str:
    """The crop as the gardener called it and the beds, or the garden as a whole."""
    crops = [named.name for named in event.action.crops]
    beds = [garden.beds[key].name for key in event.beds if key in garden.beds]
    return ", ".join(_joined(names) for names in (crops, beds) if names) or garden.name


def _done(event: Event) -> str:
    """ "weeded", "limed 200 g/m2", "collected 9 eggs", "frost −3 °C"."""
    action = event.action
    measured = [amount.written for amount in action.amounts]
    measured += [_reading(name, amount.written) for name, amount in action.readings]
    words = [] if event.verb == "noted weather" and measured else [event.verb]
    if action.subject and not any(action.subject in written for written in measured):
        words.append(action.subject)
    return " ".join([*words, ", ".join(measured)]).strip()


def _reading(name: str, written: str) -> str:
    """A bare number says nothing without the name of what was read: "pH 6.4", but "9 °C"."""
    return f"{name} {written}" if not any(c.isalpha() or c == "°" for c in written) else written


def _joined(names: Sequence[str]) -> str:
    return " and ".join(dict.fromkeys(names))


def _place(problem: Problem) -> str:
    return "" if problem.at.line is None else f"line {problem.at.line}: "


def _words(problem: Problem) -> str:
    return f"{problem.message}{asking(problem.message, problem.suggestion)}"


def _number(event: Event) -> tuple[str, int]:
    entry, _, number = event.id.rpartition(":")
    return entry, int(number)
