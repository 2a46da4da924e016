"""Which ends of lines a gardener meant, and which an editor made that breaks long lines by itself.

Asked when the words of a note or a page are set as HTML. Lines as they are typed on a telephone stay apart; a paragraph
whose lines are all long was broken for the width of a screen, and flows as one, but for a line that begins with a deed.
"""

from __future__ import annotations

from collections.abc import Sequence

from leafmould.notes.words.verbs import PAST

SHORTEST, LONG = 56, 64
"""Letters every line but the last of a paragraph has, and one of them at least, if an editor broke it: common practice, no source."""

DEEDS = frozenset(form[0] for form in PAST if len(form) == 1)
"""Words a line about work begins with."""


def flows(lines: Sequence[str]) -> list[bool]:
    """For every end of a line but the last: whether the next one goes on in it."""
    lengths = [len(line) for line in lines[:-1]]
    if not lengths or min(lengths) < SHORTEST or max(lengths) < LONG:
        return [False] * len(lengths)
    return [not _is_deed(line) for line in lines[1:]]


def _is_deed(line: str) -> bool:
    words = line.lower().lstrip("-*+ ").split(maxsplit=1)
    return bool(words) and words[0].strip(".,;:!?") in DEEDS
