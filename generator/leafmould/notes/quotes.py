"""Words in quotes in a line as typed: where each quote opens and closes.

Asked once a line by `typed`. What a quote names is the affair of `varieties`.
"""

from __future__ import annotations

import re

from leafmould.values.names import Kind, Vocabulary

CLOSERS = frozenset(" ,;:.?!)]}|/&+\n")
OPEN_QUOTE = re.compile(r"""['"](?=[^\s'"])(?<![^\s,;:(\[/&+-].)""")
ELISIONS = frozenset({"til", "n", "em", "tis", "twas", "round", "bout", "cos", "cause"})


class Quote:
    """Words in quotes: which, and how they were written."""

    __slots__ = ("content", "end", "last", "start")

    def __init__(self, start: int, end: int, content: str) -> None:
        self.start = start  # of the quote sign
        self.end = end  # behind the closing sign
        self.content = content
        self.last = 0  # first word behind it


def find_quotes(
    text: str, plain: str, words: list[str], starts: list[int], vocabulary: Vocabulary
) -> dict[int, Quote]:
    """The quotes of a line by their first words; `plain` is the text with all quote signs alike."""
    quotes: dict[int, Quote] = {}
    openings = [m.start() for m in OPEN_QUOTE.finditer(plain)]
    done = 0
    for number, start in enumerate(openings):
        limit = openings[number + 1] if number + 1 < len(openings) else len(plain)
        if start < done or start + 1 not in starts:
            continue
        first = starts.index(start + 1)
        if words[first] in ELISIONS:
            continue
        end = _closing(plain, start, limit, vocabulary)
        if end is not None:
            quote = Quote(start, end + 1, text[start + 1 : end].strip())
            quote.last = first
            while quote.last < len(words) and starts[quote.last] < end:
                quote.last += 1
            quotes[first] = quote
            done = end + 1
    return quotes


def _closing(plain: str, start: int, limit: int, vocabulary: Vocabulary) -> int | None:
    """Where a quote ends: at the closing that gives a known variety, else the last before a comma."""
    sign, last = plain[start], None
    at = plain.find(sign, start + 1, limit)
    while at != -1 and at - start < 200:
        if at + 1 >= len(plain) or plain[at + 1] in CLOSERS:
            if last is not None and "," in plain[last:at]:
                break
            last = at
            if sign == '"' or vocabulary.exactly(plain[start + 1 : at], Kind.VARIETY):
                break
        at = plain.find(sign, at + 1, limit)
    return last
