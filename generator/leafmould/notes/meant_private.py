"""What was meant to be private, however it was written: keys, lines, parts of a note.

Used while notes and settings are read. In doubt a thing is private, and one sentence says how to write it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from leafmould.notes.entries import Entry
from leafmould.notes.fields import NO, Fields, is_blank
from leafmould.notes.line_ends import SIGN, WORD, is_private_word, mark_in, may_be_private, plain_ends
from leafmould.notes.mending import leaves
from leafmould.notes.tree import Key, Leaf
from leafmould.values.problems import Level, Location, Problem

SECRET_KEYS = frozenset({"secret", "secrets", "confidential", "hidden", "hide"})
OPEN_KEYS = frozenset({"public", "publish", "published", "share", "shared", "visible"})

WHOLE_PART = re.compile(
    r"\W*(?:is\W+)?(?P<word>[^\W\d_]+)(?:\s+note)?\W*(?:yes|y|true|on|1|ja|oui)?\W*", re.IGNORECASE
)

WRITE_LINE = 'is taken as private and left out of a public build. Write ", private" at the end of the line.'
WRITE_KEY = 'is taken to mean that this note is private. Write "private: yes".'
WRITE_PART = (
    'is taken to mean that all of this part is private. Write "private: yes" at the top of a note of its own.'
)


def means_private(key: Key) -> bool:
    """Whether a key says that what it stands in is private."""
    words = key.name.replace(":", " ").replace("=", " ").split()
    says_no = is_no(key) or (is_blank(key.value) and bool(words) and words[-1] in NO)
    if OPEN_KEYS.intersection(words):
        return says_no
    return not says_no and (bool(SECRET_KEYS & {*words}) or any(map(is_private_word, words)))


def is_no(key: Key) -> bool:
    """Whether the value is a plain no."""
    return isinstance(key.value, Leaf) and key.value.text.strip().casefold() in NO


def is_plain_yes(key: Key) -> bool:
    """Whether it is "private" with a value that can be read: nothing need be told of it."""
    is_read = isinstance(key.value, Leaf) and not (key.value.is_refused or is_blank(key.value))
    return key.name == "private" and is_read


def is_private_note(fields: Fields, stray: Iterable[Leaf]) -> bool:
    """Whether a note's header says that it is private; what is neither yes nor no counts as yes."""
    if fields.key("private"):
        fields.yes("private")
    found = False
    for key in fields.branch.keys:
        if not (means_private(key) or _has_mark(key)):
            continue
        found = True
        if not is_plain_yes(key):
            fields.tell(Level.WARNING, f'"{key.written}" {WRITE_KEY}', key, key.name)
    for leaf in stray:
        words = [word.casefold() for word in WORD.findall(leaf.text)]
        is_meant = bool(words) and (words[0] in SECRET_KEYS or mark_in(leaf.text) is not None)
        if is_meant and not NO.issuperset(words[1:2] or ["yes"]):
            found = True
            fields.tell(Level.WARNING, f'"{leaf.text.strip()}" {WRITE_KEY}', leaf)
    return found


def _has_mark(key: Key) -> bool:
    """Whether a value is "private", or ends with it: a tag, a state, "2026-06-02, private"."""
    is_read_elsewhere = key.name in ("private", "work") or any(map(is_private_word, key.name.split()))
    return not is_read_elsewhere and any(mark_in(leaf.text) is not None for leaf in leaves(key.value))


def with_marks(entry: Entry) -> Entry:
    """The entry, private where its title or a line of its own says so; each other way of writing it told."""
    is_line_marked = any(a.is_private for a in entry.actions) or any(w.is_private for w in entry.words)
    if not (is_line_marked or may_be_private(entry.body.casefold()) or _is_marked(entry.title)):
        return entry
    told: list[Problem] = []
    is_private = entry.is_private
    if entry.title and mark_in(entry.title) and not entry.is_private:
        is_private = True
        told.append(_warning(entry, entry.at.line, f'"{entry.title}" {WRITE_PART}'))
    for number, line in enumerate(entry.body.split("\n"), entry.body_line):
        if SIGN.search(line) is None:
            continue
        if (m := WHOLE_PART.fullmatch(line)) and is_private_word(m["word"]):
            is_private = True
            told.append(_warning(entry, number, f'"{line.strip()}" {WRITE_PART}'))
        elif mark_in(line) and not plain_ends(line)[1]:
            told.append(_warning(entry, number, f'"{line.strip()}" {WRITE_LINE}'))
    told += [_warning(entry, line, f'"{text}" {WRITE_LINE}') for line, text in _work_marks(entry)]
    return replace(entry, is_private=is_private, problems=(*entry.problems, *told))


def _is_marked(title: str | None) -> bool:
    return title is not None and may_be_private(title.casefold())


def _work_marks(entry: Entry) -> Iterator[tuple[int | None, str]]:
    """Lines of the header that are private and do not end in ", private"."""
    lines = {(action.at.line, action.text) for action in entry.actions if action.is_private}
    lines |= {(words.at.line, words.text) for words in entry.words if words.is_private}
    body = range(entry.body_line, entry.body_line + entry.body.count("\n") + 1) if entry.body else ()
    for number, text in sorted(lines, key=lambda pair: (pair[0] or 0, pair[1])):
        if number not in body and not plain_ends(text)[1]:
            yield number, text


def _warning(entry: Entry, line: int | None, message: str) -> Problem:
    at = Location(file=entry.at.file, line=line)
    return Problem(at=at, level=Level.WARNING, message=" ".join(message.split()))
