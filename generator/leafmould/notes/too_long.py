"""Lines and bodies longer than anybody writes: kept and shown as typed, with one hint that names the line.

Asked before the matcher, and once for each body. How long is too long is in `values.lengths`.
"""

from __future__ import annotations

from collections.abc import Iterable

from leafmould.notes.entries import Entry, Words
from leafmould.notes.habits import LineReading
from leafmould.notes.line_ends import mark_in, plain_ends
from leafmould.values.lengths import MOST_BRACKETS, MOST_IN_LINE, MOST_IN_PARAGRAPH, MOST_IN_TEXT, too_long_at
from leafmould.values.problems import Level, Location, Problem

LINE = (
    f"This line is longer than {MOST_IN_LINE:,} characters, so it is kept as text. "
    "Write a line for each thing done."
)
PARAGRAPH = (
    f"This paragraph is longer than {MOST_IN_PARAGRAPH:,} characters or holds more than "
    f"{MOST_BRACKETS:,} brackets, so it is shown as typed. "
    "Set an empty line where a thought ends."
)
TEXT = (
    f"This text is longer than {MOST_IN_TEXT:,} characters, so it is shown as typed. "
    "Write several notes instead."
)


def long_line(text: str, at: Location, field: str) -> LineReading | None:
    """A line too long to be read, kept as text; None for any other."""
    if len(text) <= MOST_IN_LINE:
        return None
    plain, is_private, _ = plain_ends(text)
    is_private = is_private or mark_in(text[:MOST_IN_LINE]) is not None
    hint = Problem(at=at, level=Level.HINT, message=LINE, field=field)
    words = Words(text=plain, at=at, kind="text", is_private=is_private)
    return LineReading(words=(words,), problems=(hint,))


def long_prose(entry: Entry, told: Iterable[Problem]) -> tuple[Problem, ...]:
    """The hint about a body too long to be set, unless its line has been told of."""
    row = too_long_at(entry.body)
    if row is None:
        return ()
    line = entry.body_line + row
    if any(problem.message == LINE and problem.at.line == line for problem in told):
        return ()
    message = TEXT if len(entry.body) > MOST_IN_TEXT else PARAGRAPH
    at = Location(file=entry.at.file, line=line)
    return (Problem(at=at, level=Level.HINT, message=message, field="body"),)
