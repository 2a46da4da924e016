"""Which lines of a body are work lines, which are prose: list lines, and lines typed without a mark.

A line by itself counts if it reads whole, or begins with what was done and names something known. Where most
lines of a list, or of a paragraph of jotted lines, do so, the others were meant the same way: they are read
as work lines too, with all their questions, so that none is lost in silence. A line without a mark must also
begin as nobody begins a sentence of prose, and be no piece of one that runs over the line's end.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby, pairwise

from leafmould.notes.body import ListLine, Paragraph
from leafmould.notes.habits import LineReading
from leafmould.values.problems import Level

Reader = Callable[[ListLine, bool], LineReading]
"""Reads a line; the second argument says whether it may still turn out to be prose."""

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


def read_list(lines: Sequence[ListLine], read: Reader) -> Iterator[tuple[ListLine, LineReading]]:
    """What the lines of a body's lists say; a list is what stands under one heading."""
    for _, group in groupby(lines, key=lambda line: line.under):
        rows = list(group)
        readings = [read(line, True) for line in rows]
        if _is_list([bool(reading.actions) for reading in readings]):
            readings = [
                reading if reading.actions else read(line, False)
                for line, reading in zip(rows, readings, strict=True)
            ]
        yield from zip(rows, readings, strict=True)


def read_bare(paragraph: Paragraph, read: Reader) -> Iterator[tuple[ListLine, LineReading]]:
    """The lines of a paragraph that are work lines, with what they say; none of prose."""
    lines = paragraph.lines
    opens = [_first_word(line.text) in OPENS_PROSE for line in lines]
    readings = [
        LineReading() if is_open else read(line, True) for line, is_open in zip(lines, opens, strict=True)
    ]
    whole = [bool(reading.actions) for reading in readings]
    if not any(whole):
        return
    is_list = _is_list(whole)
    runs = [_runs_on(a, b, is_list=is_list) for a, b in _neighbours([line.text for line in lines], whole)]
    runs_in = bool(paragraph.above) and _runs_on(
        (paragraph.above, False), (lines[0].text, whole[0]), is_list=False
    )
    for index, (line, reading) in enumerate(zip(lines, readings, strict=True)):
        from_above = runs[index - 1] if index else runs_in
        into_below = index < len(runs) and runs[index]
        if from_above or into_below or opens[index]:
            continue
        if whole[index] and (is_list or not _is_doubtful(reading)):
            yield line, reading
        elif is_list:
            yield line, read(line, False)


def _is_doubtful(reading: LineReading) -> bool:
    """Whether a line asks something: by itself, without a mark, it is then rather a sentence of prose."""
    return any(p.level in (Level.QUESTION, Level.WARNING) for p in reading.problems)


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
    last = text.split()[-1]
    if (last.casefold() in LEADS_ON and not _is_letter(last)) or _first_word(following) in LEADS_BACK:
        return True
    if is_whole and is_following_whole:
        return False
    if text.endswith(BREAKS_OFF):
        return True
    if is_list:
        return False
    return (text[0].isupper() and following[0].islower()) or len(text) >= LONG


def _is_letter(word: str) -> bool:
    """The A of "Raised bed A"."""
    return len(word) == 1 and word.isupper()


def _first_word(text: str) -> str:
    return text.split()[0].casefold().strip(",;")
