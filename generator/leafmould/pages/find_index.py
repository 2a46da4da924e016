"""What the browser searches: every name with its page, and which words stand in which notes, as one script.

Made from the ledger of what a build may show, once all addresses are known. A note is a number here, 0 the newest;
a list of notes is the steps between their numbers, written in as few letters as can be. The script sets one value
and does nothing; `layouts/script/find.js` asks for it when somebody begins to search.
"""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from itertools import pairwise

from leafmould.garden.bed_lines import NOWHERE_KEY
from leafmould.garden.model import Entry
from leafmould.pages.a_to_z import Name, names_of
from leafmould.pages.doings import note_name
from leafmould.pages.figures import when_figure
from leafmould.pages.ledger import Ledger
from leafmould.values.names import IRREGULAR, WORD, WORD_ASCII
from leafmould.values.stems import STOP, stem

DIGITS = "".join(chr(code) for code in range(35, 127) if chr(code) not in "'\\<&")[:88]
"""Letters of a number: the first half end it, the second half go on."""
HALF = len(DIGITS) // 2

LONGEST_WORD = 32
"""Longer ones are no words anybody looks for."""


def find_index(ledger: Ledger) -> str:
    """The script that holds the index."""
    entries = sorted(ledger.garden.entries, key=lambda e: (_first(e), e.id), reverse=True)
    number = {entry.id: place for place, entry in enumerate(entries)}
    names, words = _names(ledger, number), _words(entries)
    _without_named(words, names)
    held = {
        "names": [row for row, _ in names],
        "notes": _addresses([ledger.note_pages[entry.id] for entry in entries]),
        "days": _days(entries),
        "titles": _titles(entries, ledger),
        "whens": _coarse(entries),
        "seasons": _seasons(entries, ledger),
        "deeds": _deeds(ledger, number),
        "words": front_coded(sorted(words)),
        "in": " ".join(numbers(sorted(words[word])) for word in sorted(words)),
        "digits": DIGITS,
        "odd": IRREGULAR,
        "stop": " ".join(sorted(STOP)),
    }
    return f"window.leafmouldIndex={json.dumps(held, ensure_ascii=False, separators=(',', ':'))};\n"


def _first(entry: Entry) -> date:
    return entry.when.first if entry.when else date.min


def numbers(sorted_numbers: Iterable[int]) -> str:
    """Numbers that rise, as the steps between them."""
    letters: list[str] = []
    before = -1
    for number in sorted_numbers:
        letters.append(_letters(number - before - 1))
        before = number
    return "".join(letters)


def _letters(number: int) -> str:
    if number < HALF:
        return DIGITS[number]
    rest, last = divmod(number, HALF)
    return _more(rest - 1) + DIGITS[last]


def _more(number: int) -> str:
    """What stands before the last letter of a number: letters that say it goes on."""
    rest, last = divmod(number, HALF)
    return (_more(rest - 1) if rest else "") + DIGITS[HALF + last]


def front_coded(texts: Iterable[str]) -> str:
    """Texts a line each, what one shares with the one before as a single letter."""
    before, lines = "", []
    for text in texts:
        most = min(len(before), len(text), HALF - 1)
        shared = next((i for i in range(most) if before[i] != text[i]), most)
        lines.append(DIGITS[shared] + text[shared:])
        before = text
    return "\n".join(lines)


def _addresses(pages: Sequence[str]) -> str:
    return front_coded(page.removeprefix("notes/").removesuffix(".html") for page in pages)


def _days(entries: Sequence[Entry]) -> str:
    """How many days each note is older than the one before; those without a date have none."""
    dated = [entry.when.first.toordinal() for entry in entries if entry.when]
    steps = "".join(_letters(newer - older) for newer, older in pairwise(dated))
    return f"{date.fromordinal(dated[0]).isoformat()} {steps}" if dated else ""


def _titles(entries: Sequence[Entry], ledger: Ledger) -> dict[str, str]:
    """Titles; an untitled note goes by its crops and beds, which the browser finds by itself."""
    return {
        str(place): note_name(entry, ledger)
        for place, entry in enumerate(entries)
        if entry.title or not any(ledger.touched(entry))
    }


def _coarse(entries: Sequence[Entry]) -> dict[str, str]:
    return {
        str(place): when_figure(entry.when).text
        for place, entry in enumerate(entries)
        if entry.when and not entry.when.is_exact
    }


def _seasons(entries: Sequence[Entry], ledger: Ledger) -> list[tuple[str, int]]:
    """Each season's name and how many notes it has, newest first."""
    found: dict[str, int] = {}
    for entry in entries:
        if entry.when:
            name = ledger.year_name(ledger.year_of(entry.when.first))
            found[name] = found.get(name, 0) + 1
    return list(found.items())


def _deeds(ledger: Ledger, number: dict[str, int]) -> list[tuple[str, str]]:
    found: defaultdict[str, set[int]] = defaultdict(set)
    for event in ledger.garden.events:
        found[event.verb].add(number[event.entry])
    return [(verb, numbers(sorted(found[verb]))) for verb in sorted(found)]


Row = tuple[str, str, str, str, str]


def _names(ledger: Ledger, number: dict[str, int]) -> list[tuple[Row, set[int]]]:
    """Each name: its kind, itself, its page, its other names, and the notes it brings."""
    notes: dict[tuple[str, str], Iterable[Entry]] = {}
    notes |= {("crop", page): ledger.entries_by_crop.get(key, ()) for key, page in ledger.crop_pages.items()}
    notes |= {("bed", page): ledger.entries_by_bed.get(key, ()) for key, page in ledger.bed_pages.items()}
    rows = []
    for name in _searched(ledger):
        found = {number[entry.id] for entry in notes.get((name.kind, name.link.to), ())}
        row = (name.kind, name.link.text, name.link.to, ", ".join(name.also), numbers(sorted(found)))
        rows.append((row, found))
    return rows


def _searched(ledger: Ledger) -> Iterator[Name]:
    nowhere = ledger.bed_pages.get(NOWHERE_KEY)
    return (name for name in names_of(ledger) if name.link.to != nowhere)


def _words(entries: Sequence[Entry]) -> dict[str, set[int]]:
    found: defaultdict[str, set[int]] = defaultdict(set)
    for place, entry in enumerate(entries):
        for word in stems_in(" ".join(_texts(entry))):
            found[word].add(place)
    return dict(found)


def _texts(entry: Entry) -> Iterator[str]:
    yield entry.title or ""
    yield entry.body
    yield from (action.text for action in entry.actions)
    yield from (words.text for words in entry.words)
    yield from entry.lesson
    yield from entry.tags
    yield from (value for _, value in entry.extra)


def stems_in(text: str) -> set[str]:
    """The stems of a text that are worth finding."""
    words = (WORD_ASCII if text.isascii() else WORD).findall(text)
    found = {stem(word) for word in set(words) if len(word) <= LONGEST_WORD}
    found.discard("")
    return found


def _without_named(words: dict[str, set[int]], names: list[tuple[Row, set[int]]]) -> None:
    """Leave out of a word's notes those that a name with that word brings anyway."""
    for row, found in names:
        for word in stems_in(row[1]):
            if word in words:
                words[word] -= found
                if not words[word]:
                    del words[word]
