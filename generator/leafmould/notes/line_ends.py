"""The two words that may close a line: ", private" and ", as is"."""

from __future__ import annotations

import re

LINE_END = re.compile(r"\s*[,;.(\[]?\s*\b(?:(private)|(as is))\b\s*[)\].!]*\s*$", re.IGNORECASE)


def strip_ends(text: str) -> tuple[str, bool, bool]:
    """The line without ", private" and ", as is" at its end, and which of them stood there."""
    is_private = is_settled = False
    if "private" not in (last := text[-60:].casefold()) and "as is" not in last:
        return text, False, False
    while (m := LINE_END.search(text[-60:])) is not None:
        sign = m[0].lstrip()[:1]
        if sign not in {",", ";", "(", "["}:
            break
        is_private, is_settled = is_private or bool(m[1]), is_settled or bool(m[2])
        text = text[: len(text) - len(text[-60:]) + m.start()]
    return text, is_private, is_settled
