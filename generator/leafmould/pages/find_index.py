"""What the browser searches: every name with its page, and which words stand in which notes, as one script.

Made from the ledger of what a build may show, once all addresses are known. A note is a number here, 0 the newest;
a list of notes is the steps between their numbers, written in as few letters as can be. What the script that reads it
can tell by itself is not written: the page of a name that is called like it, the day in the address of a note. Nor is what is the same in every
garden, as the words that find nothing: `layouts/script/find.js` has those. The index sets one value and does nothing;
that script asks for it when somebody begins to search.
"""

from __future__ import annotations

import json
import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from functools import lru_cache
from itertools import pairwise

from leafmould.garden.bed_lines import NOWHERE_KEY
from leafmould.garden.model import Entry
from leafmould.pages.a_to_z import Name, names_of
from leafmould.pages.doings import note_name
from leafmould.pages.figures import when_figure
from leafmould.pages.find_numbers import DIGITS, Letters, letters_for
from leafmould.pages.find_years import found_years
from leafmould.pages.ledger import Ledger
from leafmould.pages.ways import OURS, is_there
from leafmould.values.names import WORD, WORD_ASCII
from leafmould.values.stems import stem

LONGEST_WORD = 32
"""Longer ones are no words anybody looks for."""

PAIRED = "\U00010000"
"""From here on a browser counts a letter as two."""

FOLDERS = {"crop": "crops/", "bed": "beds/", "season": "seasons/"}
"""Where the page of a name of each kind lies."""


def find_index(ledger: Ledger) -> str:
    """The script that holds the index."""
    entries = sorted(ledger.garden.entries, key=lambda e: (_first(e), e.id), reverse=True)
    number = {entry.id: place for place, entry in enumerate(entries)}
    letters = letters_for(len(entries))
    pages = [ledger.note_pages[entry.id] for entry in entries]
    names, words = _names(ledger, number), _words(entries)
    titles, deeds = _titles(entries, ledger), _deeds(ledger, number)
    _without_titles(words, titles)
    _without_named(words, [(text, found) for name, found in names for text in (name.link.text, *name.also)])
    _without_named(words, deeds.items())
    held = {
        "names": _names_written(names, {page: place for place, page in enumerate(pages)}, letters),
        "notes": "\n".join(map(_note, pages, entries, _once(titles))),
        "days": _days(entries, letters),
        "whens": _coarse(entries),
        **found_years([name for name, _ in names], ledger, letters),
        "seasons": _seasons(entries, [name.link.text for name, _ in names if name.kind == "season"], ledger),
        "deeds": "\n".join(f"{verb}\t{letters.numbers(found)}" for verb, found in deeds.items()),
        "words": words_written(words, letters),
        "ends": letters.ends,
        "lacks": letters.numbers([n for n, page in enumerate(OURS) if not is_there(page.to, ledger)]),
    }
    return f"window.leafmouldIndex={json.dumps(held, ensure_ascii=False, separators=(',', ':'))};\n"


def _first(entry: Entry) -> date:
    return entry.when.first if entry.when else date.min


def words_written(words: Mapping[str, Iterable[int]], letters: Letters) -> str:
    """Each word: how many letters it shares with the one before, its others, and its notes.

    Words have small letters and numbers have none, so that nothing need stand between them.
    """
    before, written = "", []
    for word in sorted(words):
        most = min(len(before), len(word)) if max(before + word) < PAIRED else 0
        shared = next((i for i in range(most) if before[i] != word[i]), most)
        written.append(DIGITS[shared] + word[shared:] + letters.numbers(sorted(words[word])))
        before = word
    return "".join(written)


SAME = "="
"""Instead of a title: that of the note before."""


def _once(titles: Sequence[str]) -> Iterator[str]:
    """Titles, but none twice where notes follow each other."""
    before = ""
    for title in titles:
        yield SAME if title and title == before else title
        before = title


def _note(page: str, entry: Entry, title: str) -> str:
    """The page of a note, and its title; where the page begins with the note's day, nothing stands for that."""
    path = page.removeprefix("notes/").removesuffix(".html")
    day = entry.when.first.isoformat().replace("-", "/", 1) + "-" if entry.when else "/"
    path = "-" + path.removeprefix(day) if path.startswith(day) else path
    return f"{path}\t{title}" if title else path


def _days(entries: Sequence[Entry], letters: Letters) -> str:
    """How many days each note is older than the one before; those without a date have none."""
    dated = [entry.when.first.toordinal() for entry in entries if entry.when]
    steps = "".join(letters.of(newer - older) for newer, older in pairwise(dated))
    return f"{date.fromordinal(dated[0]).isoformat()} {steps}" if dated else ""


def _titles(entries: Sequence[Entry], ledger: Ledger) -> list[str]:
    """Titles; an untitled note goes by its crops and beds, which the browser finds by itself."""
    return [
        _one_line(note_name(entry, ledger)) if entry.title or not any(ledger.touched(entry)) else ""
        for entry in entries
    ]


def _one_line(text: str) -> str:
    return " ".join(text.split())


def _coarse(entries: Sequence[Entry]) -> dict[str, str]:
    return {
        str(place): when_figure(entry.when).text
        for place, entry in enumerate(entries)
        if entry.when and not entry.when.is_exact
    }


def _seasons(entries: Sequence[Entry], seasons: Sequence[str], ledger: Ledger) -> list[int]:
    """How many notes each season has, in the order of their names, which is that of the notes: newest first."""
    found = Counter(ledger.year_name(ledger.year_of(entry.when.first)) for entry in entries if entry.when)
    return [found[season] for season in seasons]


def _deeds(ledger: Ledger, number: dict[str, int]) -> dict[str, list[int]]:
    """What was done, and the notes that tell of it."""
    found: defaultdict[str, set[int]] = defaultdict(set)
    for event in ledger.garden.events:
        found[event.verb].add(number[event.entry])
    return {verb: sorted(found[verb]) for verb in sorted(found)}


def _names(ledger: Ledger, number: dict[str, int]) -> list[tuple[Name, list[int]]]:
    """Each name, and the notes it brings."""
    notes: dict[tuple[str, str], Iterable[Entry]] = {}
    notes |= {("crop", page): ledger.entries_by_crop.get(key, ()) for key, page in ledger.crop_pages.items()}
    notes |= {("bed", page): ledger.entries_by_bed.get(key, ()) for key, page in ledger.bed_pages.items()}
    return [
        (name, sorted({number[entry.id] for entry in notes.get((name.kind, name.link.to), ())}))
        for name in _searched(ledger)
    ]


def _names_written(
    names: Iterable[tuple[Name, list[int]]], notes: Mapping[str, int], letters: Letters
) -> dict[str, str]:
    """Names by kind, one a line: itself, its notes, its other names, its page where that is not called like it.

    A variety has the line its crop stands in; a name that has no page of its own has the note it leads to.
    """
    written: defaultdict[str, list[str]] = defaultdict(list)
    crops: dict[str, int] = {}
    for name, found in names:
        to, text = name.link.to, _one_line(name.link.text)
        if name.kind == "crop":
            crops[to] = len(crops)
        if name.kind == "variety":
            parts = [text, letters.of(crops[to])]
        elif to in notes:
            parts = [text, letters.of(notes[to])]
        else:
            parts = [
                text,
                letters.numbers(found),
                _one_line(", ".join(name.also)),
                "" if to == _like(name) else to,
            ]
        written[name.kind].append("\t".join(parts).rstrip("\t"))
    return {kind: "\n".join(lines) for kind, lines in written.items()}


def _like(name: Name) -> str:
    """The page a name has, if it is called just like it; the browser holds the same rule."""
    if not name.link.text.isascii():
        return ""
    return f"{FOLDERS.get(name.kind, '')}{re.sub('[^a-z0-9]+', '-', name.link.text.lower()).strip('-')}.html"


def _searched(ledger: Ledger) -> Iterator[Name]:
    """Names that are written; the pages every garden has are known to the script."""
    left_out = {ledger.bed_pages.get(NOWHERE_KEY), *(page.to for page in OURS)}
    return (name for name in names_of(ledger) if name.link.to not in left_out)


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


NO_WORD = frozenset(DIGITS)


def stems_in(text: str) -> set[str]:
    """The stems of a text that are worth finding."""
    words = (WORD_ASCII if text.isascii() else WORD).findall(text)
    found = {*map(_worth_finding, {*words})}
    found.discard("")
    return found


@lru_cache(maxsize=50_000)
def _worth_finding(word: str) -> str:
    """The stem of a word as written; "" for what is not worth finding."""
    found = stem(word) if len(word) <= LONGEST_WORD else ""
    return found if NO_WORD.isdisjoint(found) else ""


def _without_titles(words: dict[str, set[int]], titles: Sequence[str]) -> None:
    """Leave out the notes a word stands in the title of: the browser has the titles."""
    for place, title in enumerate(titles):
        for word in stems_in(title):
            words.get(word, set()).discard(place)


def _without_named(words: dict[str, set[int]], names: Iterable[tuple[str, list[int]]]) -> None:
    """Leave out of a word's notes those that a name, another name of the same, or a deed with that word brings anyway."""
    for text, found in names:
        for word in stems_in(text):
            if word in words:
                words[word].difference_update(found)
    for word in [word for word, found in words.items() if not found]:
        del words[word]
