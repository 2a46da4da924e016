"""Looking back from the terminal: what the garden remembers about a bed, a crop, a family, a year or a word.

Runs on what the garden remembers (`recollection`), private things too. What was typed is understood by `question`; what names nothing is
looked for in what the notes say. Loads no template and no Markdown. How the answer is worded is in `wording`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from leafmould.lookup.question import Reader, Term
from leafmould.lookup.recollection import EventRow, NoteRow, PlantingRow, Recollection
from leafmould.values.names import IRREGULAR, Kind, fold

PARTED = re.compile(r"[,;:.!?()\n]+(?!\d)|[\[\]{}]")
"""What parts words that are no name together: "in Kitchen bed, 4 rows"."""

NEAREST = (Kind.BED, Kind.CROP, Kind.VARIETY)
"""Kinds of names that may have been meant where nothing was found."""


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
        self.reader = Reader(held)

    def find(self, words: Sequence[str]) -> Found:
        """Plantings and notes that meet every term of the question.

        Where nothing does, the beginning of a name or of a word will do.
        """
        terms = self.reader.understand(" ".join(words))
        found = self._found(terms)
        if not terms or found.plantings or found.notes:
            return found
        begun = self._found(self.reader.begun(terms))
        return begun if begun.plantings or begun.notes else replace(found, nearest=self._nearest(terms))

    def _found(self, terms: tuple[Term, ...]) -> Found:
        if not terms:
            return Found(on=self.held.on, terms=())
        plantings = tuple(p for p in self.held.plantings if self._planting_meets(p, terms))
        notes = tuple(note for row in self.held.notes if (note := self._note(row, terms)))
        return Found(on=self.held.on, terms=terms, plantings=plantings[::-1], notes=notes[::-1])

    def _planting_meets(self, planting: PlantingRow, terms: Sequence[Term]) -> bool:
        """Whether a planting is what was asked for, and one thing done to it met all that names nothing.

        A planting is of the crop, in the bed, and of the year; that its note speaks of another is not enough.
        """
        asked = [term for term in terms if not self._is_of(planting, term)]
        if not asked:
            return True
        if any(not term.begins and (term.is_name or (term.years and not term.months)) for term in asked):
            return False
        events = (self.held.events[place] for place in planting.events)
        return any(all(_did(event, planting, term) for term in asked) for event in events)

    def _is_of(self, planting: PlantingRow, term: Term) -> bool:
        if term.years and not term.months:
            return not term.years.isdisjoint(planting.years)
        if self._names_meet(term, planting.beds, planting.crops, planting.varieties):
            return True
        name = planting.line.partition(":")[0]
        return not term.is_name and not term.is_time and has_words(name, term.words, begins=term.begins)

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
        if term.is_time:
            return term.holds(event.first, event.last)
        return self._mentions(event.text, term)

    def _mentions(self, text: str, term: Term) -> bool:
        """Whether a text has the words of a term, not as the end of another name: "Kitchen bed 4" is no bed 4."""
        if not has_words(text, term.words, begins=term.begins):
            return False
        return not term.beds or any(
            place + len(term.words) <= len(words) and words[place : place + len(term.words)] == term.words
            for words in _runs(text)
            for place in self._free_places(words)
        )

    def _free_places(self, words: tuple[str, ...]) -> Iterator[int]:
        """Where a name may begin in some words: at each that is not inside the longest name before it."""
        place = 0
        while place < len(words):
            yield place
            place += max(1, self.reader.at(words, place)[0])

    def _prose(self, note: NoteRow, terms: Sequence[Term]) -> list[str]:
        """The lines of a note's prose that have one of the terms, if its prose and header have them all."""
        whole = "\n".join(note.texts)
        if not all(self._header_meets(note, t) or self._mentions(whole, t) for t in terms):
            return []
        lines = [text.strip() for text in note.texts if any(self._mentions(text, t) for t in terms)]
        return lines or [next((text.strip() for text in note.texts if text.strip()), note.id)]

    def _header_meets(self, note: NoteRow, term: Term) -> bool:
        if term.is_time:
            return bool(note.span) and term.holds(*note.span)
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

        names = {
            words: k.name for words, known in self.reader.names.items() for k in known if k.kind in NEAREST
        }
        near = get_close_matches(" ".join(fold(text)), names, n=1, cutoff=0.72)
        return names[near[0]] if near else None


def _did(event: EventRow, planting: PlantingRow, term: Term) -> bool:
    """Whether a thing done to a planting meets a term that names nothing of the garden.

    A plain word is of the planting only where the line that has it as its subject names the crop.
    """
    if term.is_time:
        return term.holds(event.first, event.last)
    if term.verbs:
        return event.verb in term.verbs
    is_of_it = not set(event.crops).isdisjoint(planting.crops)
    return is_of_it and has_words(event.subject, term.words, begins=term.begins)


def has_words(text: str, words: tuple[str, ...], *, begins: bool = False) -> bool:
    """Whether the words stand in the text one behind the other; case, accents and plurals do not matter.

    Args:
        begins: whether the last may be only the beginning of a word.
    """
    if not words:
        return False
    if text.isascii() and words[0] not in IRREGULAR.values() and words[0][:3] not in text.lower():
        return False  # most texts; saves folding them
    return any(_stand(run, words, begins) for run in _runs(text))


def _stand(run: tuple[str, ...], words: tuple[str, ...], begins: bool) -> bool:
    size = len(words)
    for place in range(len(run) - size + 1):
        found = run[place : place + size]
        if found == words or (begins and found[:-1] == words[:-1] and found[-1].startswith(words[-1])):
            return True
    return False


def _runs(text: str) -> Iterator[tuple[str, ...]]:
    """The folded words of a text, as far as no stop or comma parts them."""
    return map(fold, PARTED.split(text))
