"""Bytes of a text file to clean text: encoding, line ends, what does not belong in text.

The first thing done with any file of the garden. UTF-8 is the one encoding read; others are named in
a problem, not guessed. Line numbers stay what an editor shows.
"""

from __future__ import annotations

import codecs
import re
from dataclasses import dataclass

from leafmould.values.problems import Level, Location, Problem

OTHER_MARKS = (
    (codecs.BOM_UTF32_LE, "UTF-32"),
    (codecs.BOM_UTF32_BE, "UTF-32"),
    (codecs.BOM_UTF16_LE, "UTF-16"),
    (codecs.BOM_UTF16_BE, "UTF-16"),
)

MOST_BYTES = 2_000_000
"""Longest text read; a year of daily notes in one file is a tenth of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A file's text with line ends as newlines and no leading mark."""

    text: str
    problems: tuple[Problem, ...] = ()


def clean_text(raw: bytes, file: str) -> Text:
    """The text of a file; unreadable bytes become "�" and are reported with their first line."""
    if len(raw) > MOST_BYTES:
        return _refused(file, f"This file is larger than {MOST_BYTES // 1_000_000} MB, so it is not read.")
    for mark, name in OTHER_MARKS:
        if raw.startswith(mark):
            return _refused(file, f"This file is saved as {name}, so it is not read. Save it as UTF-8.")
    if b"\0" in raw:
        return _refused(file, "This file is no text saved as UTF-8, so it is not read.")
    raw = raw.removeprefix(codecs.BOM_UTF8)
    try:
        return Text(text=_line_ends(raw.decode("utf-8")))
    except UnicodeDecodeError as fault:
        line = _line_ends(raw[: fault.start].decode("utf-8")).count("\n") + 1
        message = "A letter here cannot be read: this file is not saved as UTF-8. Save it as UTF-8."
        at = Location(file=file, line=line)
        problem = Problem(at=at, level=Level.ERROR, message=message)
        return Text(text=_line_ends(raw.decode("utf-8", "replace")), problems=(problem,))


def _refused(file: str, message: str) -> Text:
    return Text(text="", problems=(Problem(at=Location(file=file), level=Level.ERROR, message=message),))


def _line_ends(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n")


COMMENT = re.compile(r"<!--(?:-?>|(?P<inside>.*?)(?P<end>--!?>|\Z))", re.DOTALL)


def without_comments(text: str) -> tuple[str, int | None]:
    """The text without `<!-- … -->`, and where a comment opens that never closes (position, or None).

    Line ends inside a comment stay, so that lines keep their numbers. An unclosed comment reaches to
    the end of the text, as it does in Markdown: private words must not leak through a slip.
    """
    if "<!--" not in text:
        return text, None
    unclosed = next((m.start() for m in COMMENT.finditer(text) if m["end"] == ""), None)
    return COMMENT.sub(lambda m: "\n" * m[0].count("\n"), text), unclosed
