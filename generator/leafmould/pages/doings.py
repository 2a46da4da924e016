"""What was done, line by line, and notes in a list: each dated and leading to its note."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date

from leafmould.garden.model import Action, Entry, Event
from leafmould.notes.pictured import PICTURE
from leafmould.pages.figures import day_figure, when_figure
from leafmould.pages.ledger import Ledger, once
from leafmould.pages.page import Doing, Figure, Lesson, Link, NoteLine
from leafmould.values.wording import day as day_words

HEADER_FIELD = "did"
MARKS = re.compile(r"!?\[([^\]]*)\]\([^)]*\)|[*_`#>|]+")
"""Markdown's links and pictures, of which the words are kept, and its signs."""
ANY_MARK = re.compile(r"[\[*_`#>|]")
MOST_LESSONS = 24
"""Lessons on the page of a bed or crop; the page of lessons has them all."""
SENTENCE_END = re.compile(r"(?<=[^\W\d][.!?])\s+(?=[A-Z‘“'\"])")
WAITING = frozenset(
    [
        "a",
        "an",
        "the",
        "in",
        "on",
        "at",
        "of",
        "to",
        "from",
        "for",
        "with",
        "by",
        "and",
        "or",
        "but",
        "not",
        "no",
        "into",
        "onto",
        "under",
        "over",
        "off",
        "as",
        "than",
        "that",
        "which",
    ]
)
"""Words that nothing ends with."""
GOES_ON = "\u00a0…"
BEGINNING = 100
"""How much of a note's text stands in a list [characters]."""


def doings(events: Iterable[Event], ledger: Ledger) -> tuple[Doing, ...]:
    """The lines behind some events, in order, a line of several actions once."""
    found: dict[tuple[str, str], Doing] = {}
    for event in events:
        key = (event.entry, event.action.text)
        if key in found:
            continue
        found[key] = Doing(
            on=when_figure(event.when, to=ledger.to_note(event.entry), short=True),
            text=said(event.action),
            remarks=event.inferred,
        )
    return tuple(found.values())


def with_years(lines: Iterable[Doing], year: int, ledger: Ledger) -> tuple[Doing, ...]:
    """The same lines, with the year wherever it is not that of the season they stand under."""
    return tuple(_with_year(line, year, ledger) for line in lines)


def _with_year(line: Doing, year: int, ledger: Ledger) -> Doing:
    if not line.on.is_time or len(line.on.value) < len("2026-07-15"):
        return line  # no day, and told as it was written
    on = date.fromisoformat(line.on.value)
    if ledger.year_of(on) == year:
        return line
    return replace(line, on=replace(line.on, text=day_words(on)))


def with_remarks(lines: tuple[Doing, ...], notes: Iterable[Entry], ledger: Ledger) -> tuple[Doing, ...]:
    """Lines of what was done, and among them by their days the notes in which nothing was done."""
    remarks = [_remark(entry, ledger) for entry in notes]
    return tuple(sorted((*lines, *remarks), key=lambda line: line.on.value)) if remarks else lines


def _remark(entry: Entry, ledger: Ledger) -> Doing:
    return Doing(on=entry_day(entry, ledger, short=True), text=entry.title or beginning(entry, ledger))


def said(action: Action) -> str:
    """What was done in the gardener's own words; a bare "sowed" in a header with what it was about."""
    if action.field.startswith(HEADER_FIELD):
        return " ".join(_header_words(action)).strip() or action.verb
    return action.text or action.verb


def _header_words(action: Action) -> Iterator[str]:
    yield action.text or action.verb
    yield from (amount.written for amount in action.amounts)
    yield from filter(None, [" and ".join(named.name for named in action.crops)])
    yield from filter(None, [" and ".join(f"'{named.name}'" for named in action.varieties)])
    places = " and ".join(named.name for named in action.places)
    if places:
        yield f"in {places}"
        if action.part:
            yield f"({action.part})"


def note_line(
    entry: Entry, ledger: Ledger, *, short: bool = False, bed: str = "", crop: str = ""
) -> NoteLine:
    """A note in a list, by its title and how it begins; without a title, by how it begins.

    On the page of a bed or crop it begins with what it says of that one.
    """
    begins = _of_one(entry, ledger, bed, crop) or beginning(entry, ledger)
    name = entry.title or begins or note_name(entry, ledger)
    return NoteLine(
        on=entry_day(entry, ledger, short=short),
        link=Link(text=name, to=ledger.note_pages[entry.id]),
        begins=begins if entry.title else "",
        is_private=entry.is_private,
    )


def _of_one(entry: Entry, ledger: Ledger, bed: str, crop: str) -> str:
    """The lines of a note that are about one bed or crop, and a sign where it tells of more; "" if none."""
    events = ledger.events_by_entry.get(entry.id, ()) if bed or crop else ()
    lines = dict.fromkeys(said(e.action) for e in events if crop in e.crops or bed in e.beds)
    if not lines:
        return ""
    tells_more = any(said(action) not in lines for action in entry.actions)
    words = first_lines(list(lines), BEGINNING)
    return f"{words}{GOES_ON}" if tells_more and not words.endswith("…") else words


def entry_day(entry: Entry, ledger: Ledger, *, short: bool = False) -> Figure:
    """A note's day, leading to it."""
    if short and entry.when and entry.when.day:
        return day_figure(entry.when.day, to=ledger.note_pages[entry.id], short=True)
    return _whole_day(entry, ledger)


@once
def _whole_day(entry: Entry, ledger: Ledger) -> Figure:
    to = ledger.note_pages[entry.id]
    if entry.when is None:
        return Figure(text="no date", value="", to=to)
    return when_figure(entry.when, to=to)


@once
def note_name(entry: Entry, ledger: Ledger) -> str:
    """A note's title; else the beds and crops it is about; else its first words."""
    if entry.title:
        return entry.title
    beds, crops = ledger.touched(entry)
    names = [ledger.garden.crops[c].name for c in crops[:3]] + [ledger.garden.beds[b].name for b in beds[:2]]
    if not names:
        return cut(_plain(entry.body), 48) or "A note"
    more = len(crops) + len(beds) - len(names)
    return ", ".join(names) + (f" and {more} more" if more > 0 else "")


@once
def beginning(entry: Entry, ledger: Ledger) -> str:
    """How a note begins: its first lines of work, else its first words."""
    if entry.actions:
        return first_lines(list(dict.fromkeys(said(action) for action in entry.actions)), BEGINNING)
    if entry.words:
        return first_lines([words.text for words in entry.words], BEGINNING)
    return cut(_plain(entry.body), BEGINNING)


def _plain(markdown: str) -> str:
    """Markdown as words in one line, near enough for a beginning."""
    start = markdown[: 4 * BEGINNING]
    if ANY_MARK.search(start):
        start = PICTURE.sub(r"\g<caption>", start)
        start = MARKS.sub(r"\1", start)
    return " ".join(start.split())


def first_lines(lines: list[str], length: int) -> str:
    """As many whole lines as that many characters hold, and a sign where there are more; at least some of the first."""
    taken = lines[:1]
    for line in lines[1:]:
        if len("; ".join([*taken, line])) > length:
            break
        taken.append(line)
    words = cut("; ".join(taken), length) if len(taken) == 1 else "; ".join(taken)
    return words if len(taken) == len(lines) or words.endswith("…") else f"{words}{GOES_ON}"


def cut(text: str, length: int) -> str:
    """A text no longer than that many characters: whole sentences, if they fill half of it, else words and a sign.

    Words that wait for another ("in", "of the") are left off, and so is a name that would be cut in two.
    """
    if len(text) <= length:
        return text
    start = text[:length]
    sentences = SENTENCE_END.split(text[: length + 1])
    whole = text[: len(text[: length + 1]) - len(sentences[-1])].rstrip() if len(sentences) > 1 else ""
    if 2 * len(whole) >= length:
        return whole
    words = start.rpartition(" ")[0] if not text[length].isspace() else start
    return f"{_ended_well(words, text)}{GOES_ON}"


def _ended_well(words: str, text: str) -> str:
    """Words cut off a text, without those at their end that cannot stand there."""
    kept = words.split(" ")
    rest = text[len(words) :].split(maxsplit=1)
    opened = [n for n, word in enumerate(kept) if word[:1] in "'‘“\""]
    if opened and not any(word.rstrip(",;.")[-1:] in "'’”\"" for word in kept[opened[-1] :]):
        kept = kept[: opened[-1]] or kept
    elif rest and kept[-1][:1].isupper() and kept[-1][-1:].isalpha() and len(kept) > 1:
        kept.pop()  # "Long" of Long terrace
    while len(kept) > 1 and (kept[-1].lower() in WAITING or kept[-1].replace(".", "").isdigit()):
        kept.pop()
    return " ".join(kept).rstrip(" ,;:.")


def lessons_of(entries: Iterable[Entry], ledger: Ledger) -> tuple[Lesson, ...]:
    """Every lesson in some notes, with what it is about."""
    return tuple(
        Lesson(text=text, on=entry_day(entry, ledger), about=about(entry, ledger))
        for entry in entries
        for text in entry.lesson
    )


@once
def about(entry: Entry, ledger: Ledger) -> tuple[Link, ...]:
    """The crops and beds of a note as links."""
    beds, crops = ledger.touched(entry)
    return (*(ledger.crop_links[c] for c in crops), *(ledger.bed_links[b] for b in beds))
