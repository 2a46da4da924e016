"""How long a line, a paragraph and a text may be before they are taken as they were typed.

Far more than anybody writes in one piece. What is longer was pasted or broken, and reading it would hold
everything else up. Shared by the readers of notes, who tell, and by the pages, which show it as typed.
"""

from __future__ import annotations

MOST_IN_LINE = 2_000
MOST_IN_PARAGRAPH = 20_000
MOST_IN_TEXT = 200_000


def too_long_at(text: str) -> int | None:
    """Where a text becomes too long to be set: the row its paragraph begins on, 0 if it is too long as a whole."""
    if len(text) <= MOST_IN_PARAGRAPH:
        return None
    if len(text) > MOST_IN_TEXT:
        return 0
    start = size = 0
    for number, row in enumerate(text.split("\n")):
        size = size + len(row) + 1 if row.strip() else 0
        start = start if size else number + 1
        if size > MOST_IN_PARAGRAPH:
            return start
    return None
