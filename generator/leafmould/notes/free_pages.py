"""The gardener's own pages under pages/: about the garden, a walk through it, the words of a season.

Read into entries without actions, so that the one step that decides what a build may show works on them as
on any note. Loaded only where pages are made or looked for faults.
"""

from __future__ import annotations

from collections.abc import Iterable

from leafmould.notes.body import HEADING
from leafmould.notes.entries import Entry
from leafmould.notes.find import NoteFile
from leafmould.notes.habits import Habits
from leafmould.notes.head import Head, read_head
from leafmould.notes.head_events import defaults_of
from leafmould.notes.header import split_note
from leafmould.values.problems import Level, Location, Problem

MARK = "/"
"""What the id of a free page begins with, and that of no note."""

USELESS = ("did", "work", "amount", "again", "lesson")
"""Keys of a note's header that a page has no use for."""


def read_free_pages(files: Iterable[NoteFile], habits: Habits) -> tuple[Entry, ...]:
    """An entry for every free page that holds anything, in the order of their paths."""
    return tuple(entry for file in files if (entry := _read(file, habits)) is not None)


def _read(file: NoteFile, habits: Habits) -> Entry | None:
    if not file.text.strip() and not file.problems:
        return None
    problems = list(file.problems)
    parts = split_note(file.text, file.path)
    problems += parts.problems
    head = read_head(parts.header, file.path, None, habits, problems)
    problems += _useless(head, file.path)
    title, body, line = _titled(head.title, parts.body, parts.body_line)
    defaults = defaults_of(head)
    name = file.path.removeprefix("pages/").rpartition(".")[0]
    return Entry(
        id=f"{MARK}{name}",
        at=Location(file=file.path, line=1),
        when=head.dates[0] if head.dates else None,
        date_from="header" if head.dates else "nowhere",
        title=title,
        body=body,
        body_line=line,
        beds=defaults.beds,
        crops=defaults.crops,
        varieties=defaults.varieties,
        photos=head.photos,
        photo_lines=head.photo_lines,
        tags=head.tags,
        by=head.by,
        is_private=head.is_private,
        is_settled=head.is_settled,
        problems=tuple(problems),
    )


def _titled(title: str | None, body: str, line: int) -> tuple[str | None, str, int]:
    """Title, text and the line the text begins on.

    A heading at the very top is the title unless there is one, and unless others of its kind follow: then it
    is one of several.
    """
    rows = body.split("\n")
    begin = next((number for number, row in enumerate(rows) if row.strip()), len(rows))
    heading = HEADING.match(rows[begin]) if begin < len(rows) else None
    if heading and heading["text"] and title in (None, heading["text"].strip()):
        others = (HEADING.match(row) for row in rows[begin + 1 :])
        if not any(other and len(other[1]) <= len(heading[1]) for other in others):
            title, begin = heading["text"].strip(), begin + 1
    while begin < len(rows) and not rows[begin].strip():
        begin += 1
    return title, "\n".join(rows[begin:]).rstrip(), line + begin


def _useless(head: Head, file: str) -> Iterable[Problem]:
    """One hint for keys that only a note has a use for."""
    given = (head.did, head.work, head.amounts, head.again, head.lesson)
    found = [name for name, value in zip(USELESS, given, strict=True) if value]
    if found:
        names = " and ".join(f'"{name}"' for name in found)
        counts = "counts" if len(found) == 1 else "count"
        message = (
            f"{names} {counts} in notes only. A page under pages/ is shown, and nothing is reckoned from it."
        )
        yield Problem(at=Location(file=file, line=1), level=Level.HINT, message=message, field=found[0])
