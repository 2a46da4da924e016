"""Lines without a list mark, as they are typed into a phone: which of them are work lines, which are prose.

Only in notes without a header. A line counts if it reads whole by itself, as a list line must, begins as
nobody begins a sentence of prose, and is no piece of one that runs on from above or into the line below.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from leafmould.notes.body import ListLine, Paragraph
from leafmould.notes.lines import LineReading

Reader = Callable[[ListLine], LineReading]

SENTENCE_ENDS = (".", "!", "?", ":", ";", "…", ".)", "!)", "?)", '."', ".”", ".'", ".’")
BREAKS_OFF = (",", "-", "–", "—", "(", "&", "+", "/")
LONG = 40
"""A line of so many letters that ends nowhere has been broken to fit; what people jot down is shorter."""

LEADS_ON = frozenset(
    {
        "a", "an", "the", "my", "our", "your", "his", "her", "its", "their", "this", "that", "these", "those",
        "some", "any", "no", "not", "never", "nearly", "almost", "only", "and", "or", "but", "nor", "so",
        "than", "then", "as", "if", "when", "while", "because", "until", "till", "before", "after", "since",
        "though", "although", "of", "in", "into", "from", "to", "onto", "on", "at", "with", "without", "for",
        "by", "about", "between", "we", "i", "he", "she", "they", "it", "you", "who", "which", "what", "is",
        "was", "were", "are", "be", "been", "had", "has", "have", "did", "does", "do", "would", "could",
        "should",
    }
)  # fmt: skip
"""No line ends with one of these words unless its sentence goes on."""

LEADS_BACK = frozenset(
    {
        "and", "or", "but", "nor", "so", "than", "as", "if", "when", "while", "because", "until", "till",
        "before", "after", "since", "though", "although", "of", "into", "from", "to", "with", "without", "by",
        "which", "who", "that", "what", "whose", "where", "is", "was", "were", "are", "be", "been", "had",
        "has", "have", "did", "does", "do", "would", "could", "should", "might", "must", "can", "will",
    }
)  # fmt: skip
"""No line begins with one of these words unless its sentence began above."""


OPENS_PROSE = frozenset(
    {
        "a", "an", "the", "my", "our", "your", "his", "her", "its", "their", "this", "that", "i", "we", "he",
        "she", "it", "they", "there",
    }
)  # fmt: skip
"""Whoever begins with one of these writes a sentence, and lets it run."""


def read_bare(paragraph: Paragraph, read: Reader) -> Iterator[tuple[ListLine, LineReading]]:
    """The lines of a paragraph that are work lines, with what they say; none of prose."""
    texts = [line.text for line in paragraph.lines]
    readings = [
        LineReading() if _first_word(line.text) in OPENS_PROSE else read(line) for line in paragraph.lines
    ]
    whole = [bool(reading.actions) for reading in readings]
    if not any(whole):
        return
    is_list = _is_list(whole)
    runs = [_runs_on(a, b, is_list=is_list) for a, b in _neighbours(texts, whole)]
    runs_in = bool(paragraph.above) and _runs_on(
        (paragraph.above, False), (texts[0], whole[0]), is_list=False
    )
    for index, reading in enumerate(readings):
        from_above = runs[index - 1] if index else runs_in
        into_below = index < len(runs) and runs[index]
        if whole[index] and not from_above and not into_below:
            yield paragraph.lines[index], reading


def _is_list(whole: Sequence[bool]) -> bool:
    """Whether most of the lines are work lines; of prose broken into lines, hardly one is."""
    return sum(whole) > 1 and 2 * sum(whole) >= len(whole)


def _neighbours(
    texts: Sequence[str], whole: Sequence[bool]
) -> Iterator[tuple[tuple[str, bool], tuple[str, bool]]]:
    return pairwise(zip(texts, whole, strict=True))


def _runs_on(above: tuple[str, bool], below: tuple[str, bool], *, is_list: bool) -> bool:
    """Whether a sentence runs from one line into the next; each is given with whether it reads whole."""
    (text, is_whole), (following, is_following_whole) = above, below
    if text.endswith(SENTENCE_ENDS):
        return False
    if text.split()[-1].casefold() in LEADS_ON or _first_word(following) in LEADS_BACK:
        return True
    if is_whole and is_following_whole:
        return False
    if text.endswith(BREAKS_OFF):
        return True
    if text[0].isupper() and following[0].islower():
        return True
    return len(text) >= LONG and not is_list


def _first_word(text: str) -> str:
    return text.split()[0].casefold().strip(",;")
