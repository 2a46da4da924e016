"""How problems and counts are worded for the terminal, what a run's exit code is, and the same as JSON.

Used by the commands after a run. Knows problems only, nothing of notes or gardens; what is printed and
how it is coloured is left to `cli`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby

from leafmould.values.problems import Level, Location, Problem, in_file_order

NEWEST = 5
"""How many files are shown in full before all but errors is only counted."""

FINE, ERRORS = 0, 1
"""Exit codes of a run that ended; 2 and 3 come with the LeafmouldError that ended it."""

JSON_VERSION = 1
"""Version of the shapes other programs read; raised when a key changes its meaning."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Counts:
    """How many problems of each level."""

    errors: int = 0
    warnings: int = 0
    questions: int = 0
    hints: int = 0

    @property
    def sentence(self) -> str:
        """ "2 errors, 1 question and 3 hints." or "Nothing to mend."."""
        named = (
            (self.errors, "error"),
            (self.warnings, "warning"),
            (self.questions, "question"),
            (self.hints, "hint"),
        )
        return _listed([counted(n, word) for n, word in named if n]) or "Nothing to mend."


@dataclass(frozen=True, slots=True, kw_only=True)
class FileProblems:
    """The problems of one file, in the order of its lines."""

    file: str
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """What a public build leaves out of what was written, in numbers."""

    beds: int = 0
    notes: int = 0  # as a whole
    lines: int = 0  # of the notes that are shown: wholly or in part
    pictures: int = 0
    subjects: tuple[str, ...] = ()  # left out wherever they stand: "people", "prices"

    @property
    def sentence(self) -> str:
        """ "Left out: 1 bed and 2 notes, and what tells of people and prices."; "" where nothing ever is."""
        named = ((self.beds, "bed"), (self.notes, "note"), (self.lines, "line"), (self.pictures, "picture"))
        pieces = _joined([counted(n, word) for n, word in named if n])
        subjects = _joined(self.subjects)
        if not pieces and not subjects:
            return ""
        if not subjects:
            return f"Left out: {pieces}."
        tells = f"what tells of {subjects}"
        return f"Left out: {pieces}, and {tells}." if pieces else f"Left out: {tells}."


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """What a build read, made and changed, in numbers."""

    on: date
    household: bool
    notes: int  # note files read
    plantings: int
    pages: int  # pages the site has
    changed: int  # files written, because new or different
    removed: int  # files no longer made
    left_out: LeftOut = LeftOut()

    @property
    def sentence(self) -> str:
        """What was done: "120 pages from 45 notes and 60 plantings: 14 files written, 2 removed."."""
        read = f"{counted(self.notes, 'note')} and {counted(self.plantings, 'planting')}"
        done = f"{counted(self.changed, 'file')} written, {self.removed:,} removed"
        if not (self.changed or self.removed):
            done = "nothing has changed"
        return f"{counted(self.pages, 'page')} from {read}: {done}."


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildReport:
    """What a build read, made and had to tell."""

    made: Made
    stamps: Mapping[str, Sequence[int | str]]  # of the site's files, as they were left
    changed: tuple[str, ...]  # files written, because new or different
    removed: tuple[str, ...]  # files no longer made
    problems: tuple[Problem, ...]
    dates: Mapping[str, date]  # of each note file, for the order in which problems are told


def count(problems: Iterable[Problem]) -> Counts:
    """How many of each level; the same problem said twice counts once."""
    levels = [p.level for p in dict.fromkeys(problems)]
    return Counts(
        errors=levels.count(Level.ERROR),
        warnings=levels.count(Level.WARNING),
        questions=levels.count(Level.QUESTION),
        hints=levels.count(Level.HINT),
    )


def exit_code(problems: Iterable[Problem]) -> int:
    """1 if something written is not used, else 0: warnings, questions and hints are no failure."""
    return ERRORS if any(p.level is Level.ERROR for p in problems) else FINE


def by_file(problems: Iterable[Problem], dates: Mapping[str, date]) -> tuple[FileProblems, ...]:
    """The problems file by file, newest note first.

    Args:
        dates: the date of each note file. A file without one (settings, tables, undated notes) comes
            before all notes: what is wrong there is wrong for every note.
    """
    files: dict[str, list[Problem]] = {}
    for problem in in_file_order(problems):
        files.setdefault(problem.at.file, []).append(problem)
    order = sorted(files, key=lambda file: (-_day_number(dates.get(file)), file))
    return tuple(FileProblems(file=file, problems=tuple(files[file])) for file in order)


def problem_lines(
    problems: Sequence[Problem],
    dates: Mapping[str, date],
    *,
    most: int | None = NEWEST,
    words: Callable[[Location], str | None] = lambda at: None,
) -> tuple[str, ...]:
    """The lines to print: each file with its problems, the newest `most` files, then the counts.

    An error is always shown: something written is not used, however old it is.

    Args:
        most: how many files to show in full; None shows them all.
        words: the line that stands at a place, if it can be had, so that nobody need open the file.
    """
    groups = by_file(problems, dates)
    shown = groups if most is None else groups[:most]
    rest = groups[len(shown) :]
    lines = [
        line
        for group in (*shown, *map(_errors_of, rest))
        if group.problems
        for line in file_lines(group, words)
    ]
    milder = [problem for group in rest for problem in group.problems if problem.level is not Level.ERROR]
    if milder:
        files = counted(len({problem.at.file for problem in milder}), "older file")
        lines += [f"… and {len(milder)} more in {files}: leafmould check --all", ""]
    return (*lines, count(problems).sentence)


def _errors_of(group: FileProblems) -> FileProblems:
    errors = tuple(problem for problem in group.problems if problem.level is Level.ERROR)
    return FileProblems(file=group.file, problems=errors)


def file_lines(
    group: FileProblems, words: Callable[[Location], str | None] = lambda at: None
) -> tuple[str, ...]:
    """A file's name, each line with what is said of it below, and an empty line."""
    lines = [group.file]
    for number, told in groupby(group.problems, key=lambda p: p.at.line):
        problems = list(told)
        if number is not None:
            quoted = words(problems[0].at)
            lines.append(f"  line {number}, {quoted}" if quoted else f"  line {number}")
        lines += [f"    {p.level}: {p.said}" for p in problems]
    return (*lines, "")


def counted(number: int, word: str) -> str:
    """ "1 note", "3 notes"; for words whose plural only adds an s."""
    return f"{number:,} {word}" if number == 1 else f"{number:,} {word}s"


def problem_json(problem: Problem) -> dict[str, str | int | None]:
    """A problem as other programs read it."""
    return {
        "file": problem.at.file,
        "line": problem.at.line,
        "column": problem.at.column,
        "field": problem.field,
        "level": str(problem.level),
        "message": problem.message,
        "suggestion": problem.suggestion,
    }


def problems_json(problems: Iterable[Problem], on: date) -> dict[str, object]:
    """All problems in the envelope every data file has."""
    listed = [problem_json(p) for p in in_file_order(problems)]
    return {"version": JSON_VERSION, "on": on.isoformat(), "problems": listed}


def made_json(made: Made, problems: Iterable[Problem]) -> dict[str, object]:
    """A build's outcome in the envelope every data file has."""
    told = problems_json(problems, made.on)
    numbers = {
        "household": made.household,
        "notes": made.notes,
        "plantings": made.plantings,
        "pages": made.pages,
        "changed": made.changed,
        "removed": made.removed,
        "left_out": {
            "beds": made.left_out.beds,
            "notes": made.left_out.notes,
            "lines": made.left_out.lines,
            "pictures": made.left_out.pictures,
            "subjects": list(made.left_out.subjects),
        },
    }
    return {"version": told["version"], "on": told["on"], **numbers, "problems": told["problems"]}


def _day_number(day: date | None) -> int:
    return date.max.toordinal() if day is None else day.toordinal()


def _listed(parts: Sequence[str]) -> str:
    """ "a.", "a and b.", "a, b and c."; empty for none."""
    return f"{joined}." if (joined := _joined(parts)) else ""


def _joined(parts: Sequence[str]) -> str:
    """ "a", "a and b", "a, b and c"; empty for none."""
    return " and ".join([", ".join(parts[:-1]), parts[-1]] if len(parts) > 1 else parts)
