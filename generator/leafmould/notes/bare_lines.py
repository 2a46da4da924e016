"""Which lines of a body are work lines, which are prose: list lines, and lines typed without a mark.

A line by itself counts if it reads whole, or begins with what was done and names something known. Where most
lines of a list, or of a paragraph of jotted lines, do so, the others were meant the same way: they are read
as work lines too, with all their questions, so that none is lost in silence. A line without a mark must also
begin as nobody begins a sentence of prose, and be no piece of one that runs over the line's end.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from itertools import groupby, pairwise

from leafmould.notes.body import ListLine, Paragraph
from leafmould.notes.entries import Action, Sureness
from leafmould.notes.habits import LineReading
from leafmould.notes.lessons import opens_lesson
from leafmould.values.problems import Level, Location, Problem

Reader = Callable[[ListLine, bool], LineReading]
"""Reads a line; the second argument says whether it may still turn out to be prose."""

SENTENCE_ENDS = (".", "!", "?", ":", ";", "…", ".)", "!)", "?)", '."', ".”", ".'", ".’")
BREAKS_OFF = (",", "-", "–", "—", "(", "&", "+", "/")
FIGURE = re.compile(r"\d")
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

DOERS = frozenset({"i", "we", "he", "she", "they"})
"""But these may open what is jotted down: "we picked peas 1 kg", without a full stop."""


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
    """The lines of a paragraph that are work lines, with what they say; of prose only what it seems to hold."""
    lines = paragraph.lines
    readings = [_read_first(line, read) for line in lines]
    whole = [bool(reading.actions) for reading in readings]
    is_list = _is_list(whole)
    runs = _runs(lines, readings, whole, is_list=is_list)
    runs_in = bool(paragraph.above) and _runs_on(
        (paragraph.above, False), (lines[0].text, whole[0]), is_list=False
    )
    for index, (line, reading) in enumerate(zip(lines, readings, strict=True)):
        from_above = runs[index - 1] if index else runs_in
        into_below = index < len(runs) and runs[index]
        runs_on = from_above or into_below
        if not runs_on and whole[index] and (is_list or not _is_doubtful(reading)):
            yield line, reading
        elif not runs_on and is_list and not _opens_prose(line):
            yield line, read(line, False)
        elif FIGURE.search(line.text) and (told := _told_of(line, read(line, False))) is not None:
            yield line, told


def _read_first(line: ListLine, read: Reader) -> LineReading:
    """What a line says by itself; a sentence of prose says nothing."""
    if not _opens_prose(line):
        return read(line, True)
    if _first_word(line.text) not in DOERS or line.text.endswith(SENTENCE_ENDS):
        return LineReading()
    reading = read(line, True)
    return reading if _is_measured(reading) else LineReading()


def _runs(
    lines: Sequence[ListLine], readings: Sequence[LineReading], whole: Sequence[bool], *, is_list: bool
) -> list[bool]:
    """Whether each line's sentence runs on into the next; none does into one that gives its amount, from a short one."""
    texts = [line.text for line in lines]
    return [
        _runs_on(a, b, is_list=is_list or (_is_measured(below) and len(a[0]) < LONG))
        for (a, b), below in zip(_neighbours(texts, whole), readings[1:], strict=True)
    ]


def _opens_prose(line: ListLine) -> bool:
    return _first_word(line.text) in OPENS_PROSE


def _is_measured(reading: LineReading) -> bool:
    """Whether all a line says was done is sure, and an amount is written."""
    return any(action.amounts for action in reading.actions) and not _is_doubtful(reading)


def _told_of(line: ListLine, reading: LineReading) -> LineReading | None:
    """The hint about prose in which something measured seems to have been done; None if it holds nothing such."""
    if not _is_measured(reading) or not any(_is_yield(action) for action in reading.actions):
        return None
    at = Location(file=reading.actions[0].at.file, line=line.line, column=line.column)
    return LineReading(problems=(Problem(at=at, level=Level.HINT, message=UNCOUNTED, field="body"),))


def _is_yield(action: Action) -> bool:
    return action.verb == "picked" and any(crop.sureness is Sureness.KNOWN for crop in action.crops)


UNCOUNTED = (
    "Something picked seems to be told here, but it reads as a story, so it is not counted. "
    'Write it on a line of its own, with "- " before it, to have it counted.'
)


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
    if text.endswith(SENTENCE_ENDS) or opens_lesson(text) or opens_lesson(following):
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
