"""Lessons in a note's text: sentences that say what to do next year.

Used by `read` on bodies and remarks; `lesson:` in a header is taken as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from leafmould.notes.line_ends import WORD, is_private_word
from leafmould.notes.pictured import without_pictures

NEXT = re.compile(
    r"\bnext\s+(?:year|season|time|spring|summer|autumn|fall|winter)\b(?!['’]s\b)|\bl'an(?:née)? prochaine?\b"
    r"|\bl’an(?:née)? prochaine?\b|\bnächste[sn]? (?:Jahr|Mal|Saison)\b|\bel (?:próximo año|año que viene)\b"
    r"|\bl[’']anno prossimo\b|\bvolgend jaar\b",
    re.IGNORECASE,
)
IN_NEXT = ("next", "prochain", "nächste", "próximo", "que viene", "prossimo", "volgend")
"""One of these stands in every text that speaks of next year."""

MARK = r"[ \t]*(?:(?:[-*+•–]|\d{1,3}[.)])[ \t]+)?"
OPENING = r"(?:lessons?(?:[ \t]+learn(?:ed|t))?[ \t]*:|notes?[ \t]+to[ \t]+self[ \t]*:|next[ \t]+(?:year|season|time|spring|summer|autumn|fall|winter)[ \t]*:)"
OPENS_LESSON = re.compile(MARK + OPENING + r"[ \t]*\S", re.IGNORECASE)
LESSON_LINE = re.compile(
    rf"^{MARK}(?P<opening>{OPENING})[ \t]*(?P<said>\S[^\n]*(?:\n[ \t]+(?![-*+•–][ \t])\S[^\n]*)*)",
    re.IGNORECASE | re.MULTILINE,
)
""" "lesson: cover the carrots": a lesson to the end of its line, and of what is indented below."""

MOST_COMPARED = 500
"""Of more lessons than this in one note none is looked for inside the others, which would take forever."""

SENTENCE_END = re.compile(
    r"(?<=[.!?…])[\"'”’)]?\s+(?=[^\W\d_a-z]|[\"“'‘(]?[A-Z0-9])|\n\s*\n|\n(?=[ \t]*(?:[-*+•–]|\d{1,3}[.)])[ \t])"
)
LIST_MARK = re.compile(r"^[ \t]*(?:[-*+•–]|\d{1,3}[.)])[ \t]+|^[ \t]*#{1,6}[ \t]+|^[ \t]*>[ \t]?")


def opens_lesson(line: str) -> bool:
    """Whether a line says that it is a lesson: "lesson: …", "next year: …"."""
    return OPENS_LESSON.match(line) is not None


def lessons_in(text: str) -> tuple[str, ...]:
    """The sentences of a text that speak of next year, and its lines called a lesson, in order; pictures are none of their words."""
    lower = text.casefold()
    if "lesson" not in lower and not (any(word in lower for word in IN_NEXT) and NEXT.search(text)):
        return ()
    plain, begin, found = without_pictures(text), 0, list[str]()
    for m in LESSON_LINE.finditer(plain):
        found += _sentences(plain[begin : m.start()])
        found += _called(m["opening"], " ".join(m["said"].split()))
        begin = m.end()
    return (*found, *_sentences(plain[begin:]))


def _sentences(text: str) -> Iterator[str]:
    """The sentences that speak of next year."""
    sentences = (" ".join(LIST_MARK.sub("", s).split()) for s in SENTENCE_END.split(text) if s)
    return (s for s in sentences if NEXT.search(s))


def _called(opening: str, said: str) -> tuple[str, ...]:
    """What a line opened as a lesson; "next year" stays with it, and a private line keeps its own back."""
    if any(is_private_word(word) for word in WORD.findall(said)):
        return ()
    return (said if opening.casefold().startswith("lesson") else f"{opening} {said}",)


def all_lessons(
    written: Iterable[str], body: str, remarks: Iterable[str], hidden: Iterable[str]
) -> tuple[str, ...]:
    """What was learned: `lesson:` first, then the body's and the remarks' sentences, each once.

    Args:
        hidden: private lines, which keep their lessons to themselves.
    """
    private = [plain for line in hidden if (plain := " ".join(without_pictures(line).split()))]
    found = [*lessons_in(body), *(lesson for remark in remarks for lesson in lessons_in(remark))]
    kept = [s for s in found if not any(s in line or line in s for line in private)]
    return tuple(dict.fromkeys([*written, *_whole(list(dict.fromkeys(kept)))]))


def _whole(lessons: list[str]) -> list[str]:
    """The lessons without those that are a piece of another, as a remark is of its line."""
    if len(lessons) > MOST_COMPARED:
        return lessons
    return [s for s in lessons if not any(s != other and s in other for other in lessons)]
