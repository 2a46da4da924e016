"""Finds the header of a note, takes out its work lines, and reads the rest as a tree.

Works on clean text (`text`). A header is YAML between lines of three or more dashes at the top. Work
lines never meet YAML: in them `#`, `:`, quotes and brackets are ordinary signs.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from leafmould.notes.mending import KEY_LINE, NO_SPACE, leaves, no_key, read_tree
from leafmould.notes.text import COMMENT, without_comments
from leafmould.notes.tree import Branch, Leaf
from leafmould.notes.work_lines import MARK, WorkLine, take_out_work
from leafmould.values.problems import Level, Location, Problem

NOTE_KEYS = frozenset(
    {
        "bed", "crop", "date", "photo", "did", "variety", "amount", "part", "tags", "private", "title", "work",
        "by", "lesson", "again", "settled",
    }
)  # fmt: skip
"""What a header may say that we use; other keys are kept and shown."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Header:
    """What stands between the fences."""

    tree: Branch | None
    work: tuple[WorkLine, ...] = ()
    stray: tuple[Leaf, ...] = ()  # lines that are no "key: value": kept as text


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """A note cut into its header and its body."""

    header: Header | None
    body: str
    body_line: int  # where the body starts in the file
    problems: tuple[Problem, ...] = ()


def split_note(text: str, file: str) -> Parts:
    """Header and body of a note, comments taken out of both."""
    text = _without_first_comments(text)
    lines = text.split("\n")
    top = next((number for number, line in enumerate(lines) if line.strip()), None)
    if top is None:
        return Parts(header=None, body="", body_line=1)
    if not is_fence(lines[top].strip()):
        return _without_fence(lines, top, file)
    end, is_closed = _closing(lines, top)
    if end is None:
        return _no_header(lines, top, file)
    header, problems = _read(lines[top + 1 : end], file, top + 2)
    if lines[top][:1].isspace():
        message = "This looks like a header, but a space stands before the dashes. It is read as one."
        problems = (_problem(file, top + 1, Level.WARNING, message), *problems)
    if not is_closed:
        message = 'The header that begins here is not closed. Write "---" under its last line.'
        problems = (_problem(file, top + 1, Level.WARNING, message), *problems)
    below = end + 1 if is_closed else end
    body, more = _body(lines[below:], file, below + 1)
    return Parts(header=header, body=body, body_line=below + 1, problems=(*problems, *more))


def _without_fence(lines: list[str], top: int, file: str) -> Parts:
    """A note that does not begin with a fence: mostly all body, sometimes a header that lacks its dashes."""
    end = next(
        (n for n in range(top, len(lines)) if not lines[n].strip() or is_fence(lines[n].strip())), len(lines)
    )
    if not USED_KEY.match(lines[top]) or not all(_is_of_header(line) for line in lines[top:end]):
        return _no_header(lines, top, file)
    header, problems = _read(lines[top:end], file, top + 1)
    below = end + 1 if end < len(lines) and is_fence(lines[end].strip()) else end
    body, more = _body(lines[below:], file, below + 1)
    message = (
        'This is read as a header, though its lines of "---" are missing. Write "---" above and below it.'
    )
    told = _problem(file, top + 1, Level.WARNING, message)
    return Parts(header=header, body=body, body_line=below + 1, problems=(told, *problems, *more))


def _is_of_header(line: str) -> bool:
    """Whether a line could stand in a header: a key, or what belongs to the key above."""
    return _is_key(line) or line[:1].isspace() or MARK.match(line) is not None


def is_fence(line: str) -> bool:
    """Three or more dashes; phones write "—" or "–" for two of them."""
    return line != "" and not line.strip("-—–") and len(line) + line.count("—") + line.count("–") >= 3


def _without_first_comments(text: str) -> str:
    """The text without comments that stand before anything else, such as a template's remarks."""
    while (m := COMMENT.match(text, len(text) - len(text.lstrip()))) is not None and m["end"]:
        text = text[: m.start()] + "\n" * m[0].count("\n") + text[m.end() :]
    return text


def _closing(lines: list[str], top: int) -> tuple[int | None, bool]:
    """The line after the header's last, and whether a fence stands there; None if this is no header."""
    for number in range(top + 1, len(lines)):
        stripped = lines[number].strip()
        if is_fence(stripped) or stripped == "...":
            inside = lines[top + 1 : number]
            is_header = not any(map(str.strip, inside)) or any(map(_is_key, inside))
            return (number if is_header else None), True
    if top + 1 < len(lines) and _is_key(lines[top + 1]):
        blank = (n for n in range(top + 1, len(lines)) if not lines[n].strip())
        return next(blank, len(lines)), False
    return None, False


def _is_key(line: str) -> bool:
    return KEY_LINE.match(line) is not None or NO_SPACE.match(line) is not None


def _read(lines: list[str], file: str, first_line: int) -> tuple[Header, tuple[Problem, ...]]:
    """The lines between the fences."""
    text, unclosed = without_comments("\n".join(lines))
    problems = _unclosed(text, unclosed, file, first_line)
    work, rest = take_out_work(text.split("\n"), first_line)
    mended = read_tree("\n".join(rest), file, first_line)
    if isinstance(mended.tree, Branch) or mended.tree is None:
        return Header(tree=mended.tree, work=work, stray=mended.stray), (*problems, *mended.problems)
    stray = tuple(leaf for leaf in leaves(mended.tree) if leaf.text.strip())
    problems = (*problems, *mended.problems, *(no_key(leaf.text, file, leaf.line) for leaf in stray))
    return Header(tree=None, work=work, stray=(*mended.stray, *stray)), problems


def _body(lines: list[str], file: str, first_line: int) -> tuple[str, tuple[Problem, ...]]:
    raw = "\n".join(lines)
    body, unclosed = without_comments(raw)
    return body, _unclosed(raw, unclosed, file, first_line)


def _unclosed(raw: str, at: int | None, file: str, first_line: int) -> tuple[Problem, ...]:
    if at is None:
        return ()
    line = first_line + raw.count("\n", 0, at)
    message = 'A comment opens here and never closes, so all below it is left out. Write "-->" at its end.'
    return (_problem(file, line, Level.ERROR, message),)


def _no_header(lines: list[str], top: int, file: str) -> Parts:
    """A note that is all body; what looks like a header and is none is named."""
    body, problems = _body(lines[top:], file, top + 1)
    for found, level, message in _look_alikes(lines, top):
        problems = (_problem(file, found + 1, level, message), *problems)
    return Parts(header=None, body=body, body_line=top + 1, problems=problems)


FIELD_LIST = re.compile(r":[A-Za-z][\w -]*:(?:\s|$)")
ORG_KEY = re.compile(r"#\+[A-Za-z_]+:")
USED_KEY = re.compile(r"(?:date|bed|crop|did)\s*:[ \t]*\S", re.IGNORECASE)
NOT_READ = (
    'is not read as a header; it stays in the text. Write "date: 2026-06-20" between two lines of "---".'
)


def _look_alikes(lines: list[str], top: int) -> list[tuple[int, Level, str]]:
    """Headers of other kinds, and one that is not at the top."""
    first = lines[top].strip()
    if first == "+++":
        return [(top, Level.ERROR, f'A header between "+++" {NOT_READ}')]
    if FIELD_LIST.match(first):
        return [(top, Level.ERROR, f'A field such as ":date:" {NOT_READ}')]
    if ORG_KEY.match(first):
        return [(top, Level.ERROR, f'A line such as "#+DATE:" {NOT_READ}')]
    for number in range(top + 1, min(top + 12, len(lines) - 1)):
        if is_fence(lines[number].strip()) and USED_KEY.match(lines[number + 1]):
            message = "This looks like a header but is not at the top, so it is read as text. Move it up."
            return [(number, Level.ERROR, message)]
    return []


def _problem(file: str, line: int, level: Level, message: str) -> Problem:
    return Problem(at=Location(file=file, line=line), level=level, message=message)
