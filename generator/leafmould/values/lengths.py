"""How long a line, a paragraph and a text may be before they are taken as they were typed.

Far more than anybody writes in one piece. What is longer was pasted or broken, and reading it would hold
everything else up. Shared by the readers of notes, who tell, and by the pages, which show it as typed.
"""

from __future__ import annotations

MOST_IN_LINE = 2_000
MOST_IN_PARAGRAPH = 20_000
MOST_IN_TEXT = 200_000
MOST_BRACKETS = 1_000
"""In a paragraph. Each may open a link, and a reader of Markdown looks for the end of every one of them."""


def too_long_at(text: str) -> int | None:
    """Where a text becomes too long to be set: the row its paragraph begins on, 0 if it is too long as a whole."""
    if len(text) <= MOST_IN_PARAGRAPH and text.count("[") <= MOST_BRACKETS:
        return None
    if len(text) > MOST_IN_TEXT:
        return 0
    start = size = brackets = 0
    for number, row in enumerate(text.split("\n")):
        if not row.strip():
            start, size, brackets = number + 1, 0, 0
            continue
        size, brackets = size + len(row) + 1, brackets + row.count("[")
        if size > MOST_IN_PARAGRAPH or brackets > MOST_BRACKETS:
            return start
    return None
