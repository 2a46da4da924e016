"""Lessons in a note's text: sentences that say what to do next year.

Used by `read` on bodies and remarks; `lesson:` in a header is taken as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from leafmould.notes.pictured import without_pictures

NEXT = re.compile(
    r"\bnext\s+(?:year|season|time|spring|summer|autumn|fall|winter)\b(?!['’]s\b)|\bl'an(?:née)? prochaine?\b"
    r"|\bl’an(?:née)? prochaine?\b|\bnächste[sn]? (?:Jahr|Mal|Saison)\b|\bel (?:próximo año|año que viene)\b"
    r"|\bl[’']anno prossimo\b|\bvolgend jaar\b",
    re.IGNORECASE,
)
IN_NEXT = ("next", "prochain", "nächste", "próximo", "que viene", "prossimo", "volgend")
"""One of these stands in every text that speaks of next year."""

MOST_COMPARED = 500
"""Of more lessons than this in one note none is looked for inside the others, which would take forever."""

SENTENCE_END = re.compile(
    r"(?<=[.!?…])[\"'”’)]?\s+(?=[^\W\d_a-z]|[\"“'‘(]?[A-Z0-9])|\n\s*\n|\n(?=[ \t]*(?:[-*+•–]|\d{1,3}[.)])[ \t])"
)
LIST_MARK = re.compile(r"^[ \t]*(?:[-*+•–]|\d{1,3}[.)])[ \t]+|^[ \t]*#{1,6}[ \t]+|^[ \t]*>[ \t]?")


def lessons_in(text: str) -> tuple[str, ...]:
    """The sentences of a text that speak of next year, in order; pictures are none of their words."""
    lower = text.casefold()
    if not any(word in lower for word in IN_NEXT) or NEXT.search(text) is None:
        return ()
    sentences = (
        " ".join(LIST_MARK.sub("", s).split()) for s in SENTENCE_END.split(without_pictures(text)) if s
    )
    return tuple(s for s in sentences if NEXT.search(s))


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
