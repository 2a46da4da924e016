"""Looking back from the terminal: what the garden remembers about a bed, a crop, a family, a year or a word.

Runs on what the garden remembers (`recollection`), private things too. Understands the words by the garden's own names first,
then by families, years and actions; whatever is left is looked for in what the notes say. Loads no
template and no Markdown. How the answer is worded is in `wording`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from leafmould.lookup.recollection import EventRow, Name, NoteRow, PlantingRow, Recollection
from leafmould.values.names import IRREGULAR, WORD, Kind, fold

YEAR = re.compile(r"(?:18|19|20|21)\d\d")
SILENT = frozenset(fold("in on at of and with from what grew when did was is my for a an our the"))
"""Words that ask nothing by themselves."""

NEAREST = (Kind.BED, Kind.CROP, Kind.VARIETY)
"""Kinds of names that may have been meant where nothing was found."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """One thing asked for. Whatever meets one of its meanings meets it; its words are always one."""

    written: str
    words: tuple[str, ...]  # folded
    beds: frozenset[str] = frozenset()
    crops: frozenset[str] = frozenset()
    varieties: frozenset[str] = frozenset()
    family: str | None = None
    year: int | None = None
    verbs: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundNote:
    """A note that answers, with the lines that do."""

    file: str
    line: int | None
    day: str | None  # ISO; None: no date, or a coarse one
    written: str  # the date as written; "" for none
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The answer, newest first."""

    on: str  # ISO: the garden's day
    terms: tuple[Term, ...]
    plantings: tuple[PlantingRow, ...] = ()
    notes: tuple[FoundNote, ...] = ()
    nearest: str | None = None  # where nothing was found: the name that may have been meant


class Memory:
    """What a garden remembers, ready to be asked."""

    def __init__(self, held: Recollection) -> None:
        """Take what it remembers."""
        self.held = held
        self.names: dict[str, list[Name]] = {}
        for name in held.names:
            self.names.setdefault(name.words, []).append(name)
        self.longest = max((words.count(" ") + 1 for words in self.names), default=0)

    def find(self, words: Sequence[str]) -> Found:
        """Plantings and notes that meet every term of the question."""
        terms, on = self.understand(" ".join(words)), self.held.on
        if not terms:
            return Found(on=on, terms=())
        plantings = tuple(p for p in self.held.plantings if all(self._planting_meets(p, t) for t in terms))
        notes = tuple(note for row in self.held.notes if (note := self._note(row, terms)))
        nearest = None if plantings or notes else self._nearest(terms)
        return Found(on=on, terms=terms, plantings=plantings[::-1], notes=notes[::-1], nearest=nearest)

    def understand(self, text: str) -> tuple[Term, ...]:
        """The question's terms: the longest names first, then single words."""
        spots, words = list(WORD.finditer(text)), fold(text)
        terms: list[Term] = []
        place = 0
        while place < len(words):
            size, term = self._term(words, place)
            written = text[spots[place].start() : spots[place + size - 1].end()]
            if term is not None:
                terms.append(replace(term, written=written, words=words[place : place + size]))
            place += size
        return tuple(terms)

    def _term(self, words: tuple[str, ...], place: int) -> tuple[int, Term | None]:
        """What begins at a word, and how many words it takes; None for a word that asks nothing."""
        named, known = self._at(words, place)
        for size in range(min(4, len(words) - place), named, -1):
            if family := self.held.families.get(" ".join(words[place : place + size])):
                return size, Term(written="", words=(), family=family)
        if named:
            return named, self._named(known)
        if YEAR.fullmatch(words[place]):
            return 1, Term(written="", words=(), year=int(words[place]))
        return _deed(words, place)

    def _at(self, words: tuple[str, ...], place: int) -> tuple[int, Sequence[Name]]:
        """The longest name that begins at a word: how many words, and what it may mean."""
        for size in range(min(self.longest, len(words) - place), 0, -1):
            if found := self.names.get(" ".join(words[place : place + size])):
                return size, found
        return 0, ()

    def _named(self, known: Sequence[Name]) -> Term:
        beds = {bed for k in known if k.kind == Kind.BED for bed in self.held.kin.get(k.key, (k.key,))}
        crops = {key for k in known if k.kind in (Kind.CROP, Kind.CROP_GROUP) for key in (k.key, *k.of)}
        return Term(
            written="",
            words=(),
            beds=frozenset(beds),
            crops=frozenset(crops),
            varieties=frozenset(k.key for k in known if k.kind == Kind.VARIETY),
        )

    def _planting_meets(self, planting: PlantingRow, term: Term) -> bool:
        if self._names_meet(term, planting.beds, planting.crops, planting.varieties):
            return True
        if term.year is not None:
            return term.year in planting.years
        events = (self.held.events[place] for place in planting.events)
        return any(event.verb in term.verbs or has_words(event.text, term.words) for event in events)

    def _names_meet(
        self, term: Term, beds: Sequence[str], crops: Sequence[str], varieties: Sequence[str]
    ) -> bool:
        """Whether a bed, crop, variety or family is the one asked for."""
        if not (term.beds.isdisjoint(beds) and term.crops.isdisjoint(crops)):
            return True
        if term.varieties and not term.varieties.isdisjoint(varieties):
            return True
        family_of = self.held.family_by_crop.get
        return term.family is not None and any(family_of(crop) == term.family for crop in crops)

    def _note(self, note: NoteRow, terms: Sequence[Term]) -> FoundNote | None:
        """The note with the lines that meet all terms together; None if nothing in it does."""
        events = (self.held.events[place] for place in note.events)
        meeting = [event for event in events if all(self._event_meets(event, t) for t in terms)]
        lines = [event.told for event in meeting] or self._prose(note, terms)
        if not lines:
            return None
        return FoundNote(
            file=note.file,
            line=meeting[0].line if meeting else note.line,
            day=note.day,
            written=note.written,
            lines=tuple(dict.fromkeys(lines)),
        )

    def _event_meets(self, event: EventRow, term: Term) -> bool:
        if self._names_meet(term, event.beds, event.crops, event.varieties) or event.verb in term.verbs:
            return True
        if term.year is not None:
            return event.first_year <= term.year <= event.last_year
        return has_words(event.text, term.words)

    def _prose(self, note: NoteRow, terms: Sequence[Term]) -> list[str]:
        """The lines of a note's prose that have one of the terms, if its prose and header have them all."""
        whole = "\n".join(note.texts)
        if not all(self._header_meets(note, t) or has_words(whole, t.words) for t in terms):
            return []
        lines = [text.strip() for text in note.texts if any(has_words(text, t.words) for t in terms)]
        return lines or [next((text.strip() for text in note.texts if text.strip()), note.id)]

    def _header_meets(self, note: NoteRow, term: Term) -> bool:
        if term.year is not None:
            return bool(note.years) and note.years[0] <= term.year <= note.years[1]
        return self._names_meet(term, note.beds, note.crops, note.varieties)

    def _nearest(self, terms: Sequence[Term]) -> str | None:
        """The known name most like the question, or like one of its words."""
        for text in (" ".join(t.written for t in terms), *(t.written for t in terms)):
            near = self._closest(text)
            if near and fold(near) != fold(text):
                return near
        return None

    def _closest(self, text: str) -> str | None:
        """The name of a bed, crop or variety that is nearest to a text."""
        from difflib import get_close_matches

        names = {words: k.name for words, known in self.names.items() for k in known if k.kind in NEAREST}
        near = get_close_matches(" ".join(fold(text)), names, n=1, cutoff=0.72)
        return names[near[0]] if near else None


def _deed(words: tuple[str, ...], place: int) -> tuple[int, Term | None]:
    """The action that begins at a word; else the word itself, unless it asks nothing."""
    from leafmould.notes.words.verbs import PAST

    for size in range(min(3, len(words) - place), 0, -1):
        if verbs := PAST.get(words[place : place + size]):
            return size, Term(written="", words=(), verbs=frozenset(verbs))
    return 1, None if words[place] in SILENT else Term(written="", words=())


def has_words(text: str, words: tuple[str, ...]) -> bool:
    """Whether the words stand in the text one behind the other; case, accents and plurals do not matter."""
    if not words:
        return False
    if text.isascii() and words[0] not in IRREGULAR.values() and words[0][:3] not in text.lower():
        return False  # most texts; saves folding them
    folded = fold(text)
    size = len(words)
    return any(folded[place : place + size] == words for place in range(len(folded) - size + 1))
