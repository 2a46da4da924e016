"""The two words that may close a line: ", private" and ", as is"; and "private" where else it is meant so."""

from __future__ import annotations

import re
from string import ascii_lowercase

LINE_END = re.compile(r"\s*[,;.(\[]?\s*\b(?:(private)|(as is))\b\s*[)\].!]*\s*$", re.IGNORECASE)


WORD = re.compile(r"[^\W\d_]+")
SIGN = re.compile("priv|vate|pri.?ate|prviate|priavte", re.IGNORECASE)
"""Stands in every word that is one slip away from "private"; most texts have none, and need no closer look."""

REST_OF_SIGN = re.compile("pri(?:.?ate|avte)")
"""What of it is not found by one of the three texts in `may_be_private`."""

BEFORE = re.compile(r"(?:[,;:.!?()\[\]{}\"'“”‘’*#|—–]|(?:^|\s)[-+_])[\s*_\"'“‘]*$")
AFTER = re.compile(r"[\s*_\"'”’]*(?:[,;:.!?()\[\]{}\"'“”‘’*#|—–]|-(?:\s|$))")
BEHIND = re.compile(r"\W*(?:\b(?:note|line|entry|please)\b)?\W*$", re.IGNORECASE)


def _slips(word: str) -> frozenset[str]:
    """The word, and all that is one slip away: a letter too few, too many, wrong, or two changed over."""
    cuts = [(word[:i], word[i:]) for i in range(len(word) + 1)]
    found = {a + b[1:] for a, b in cuts if b} | {a + b[1] + b[0] + b[2:] for a, b in cuts if len(b) > 1}
    found |= {a + c + b[1:] for a, b in cuts if b for c in ascii_lowercase}
    return frozenset(found | {a + c + b for a, b in cuts for c in ascii_lowercase} | {word})


PRIVATE = _slips("private") - {"primate"}


def is_private_word(word: str) -> bool:
    """Whether a word is "private", or one slip away from it."""
    return word.casefold() in PRIVATE


def may_be_private(lower: str) -> bool:
    """Whether a text in small letters may hold such a word: `SIGN`, without a pattern for most texts."""
    if "priv" in lower or "vate" in lower or "prviate" in lower:
        return True
    return "pri" in lower and REST_OF_SIGN.search(lower) is not None


def mark_in(line: str) -> tuple[int, int] | None:
    """Where "private" stands first, last or by itself in a line; None if nowhere but inside a sentence."""
    if not may_be_private(line.casefold()):
        return None
    for m in WORD.finditer(line):
        if m.group().casefold() not in PRIVATE:
            continue
        before, after = line[: m.start()], line[m.end() :]
        if before[-1:] == "-" and before[-2:-1].isalnum():
            continue  # "semi-private"
        is_first = WORD.search(before) is None and not re.match(r"-\w|['’]\w", after)
        is_alone = (
            BEFORE.search(before, max(0, len(before) - 1_000)) is not None and AFTER.match(after) is not None
        )
        if is_first or is_alone or BEHIND.match(after.partition("#")[0]):
            return m.span()
    return None


def is_private_block(block: str) -> bool:
    """Whether any line of a block of prose is marked private."""
    return SIGN.search(block) is not None and any(mark_in(line) for line in block.split("\n"))


def plain_ends(text: str) -> tuple[str, bool, bool]:
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


def strip_ends(text: str) -> tuple[str, bool, bool]:
    """The line without what may close it, and whether it is private and as is; private in any way it was meant.

    Where the word stands elsewhere, spaces stand in its place, so that the others stay where they were.
    """
    small = text.casefold()
    if "as is" not in small and not may_be_private(small):
        return text, False, False
    plain, is_private, is_settled = plain_ends(text)
    if is_private or (mark := mark_in(plain)) is None:
        return plain, is_private, is_settled
    start, end = mark
    if not WORD.search(plain, end):
        return plain[:start].rstrip(" ,;:.-–—([{*_\"'“‘"), True, is_settled
    after = re.match(r"[\s:,;*_)\]}.!]*", plain[end:])
    end += after.end() if after and not WORD.search(plain[:start]) else 0
    start = start if WORD.search(plain[:start]) else 0
    return plain[:start] + " " * (end - start) + plain[end:], True, is_settled
