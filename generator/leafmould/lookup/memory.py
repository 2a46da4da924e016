"""Looking back from the terminal: what the garden remembers about a bed, a crop, a family, a year or a word.

Runs on a loaded garden, with private things in it. Understands the words by the garden's own names first,
then by families, years and actions; whatever is left is looked for in what the notes say. Loads no
template and no Markdown. How the answer is worded is in `wording`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

from leafmould.facts.tables import FamilyFact
from leafmould.garden.model import Event, Garden, Planting
from leafmould.garden.queries import Past, kin, years_in_bed
from leafmould.notes.words.verbs import PAST
from leafmould.values.names import IRREGULAR, WORD, Kind, Known, Vocabulary, fold

YEAR = re.compile(r"(?:18|19|20|21)\d\d")
SILENT = frozenset(fold("in on at of and with from what grew when did was is my for a an our the"))
"""Words that ask nothing by themselves."""

TRADE_WORDS = {
    "brassica": "Brassicaceae",
    "crucifer": "Brassicaceae",
    "allium": "Amaryllidaceae",
    "legume": "Fabaceae",
    "nightshade": "Solanaceae",
    "cucurbit": "Cucurbitaceae",
    "umbellifer": "Apiaceae",
    "chenopod": "Amaranthaceae",
}
"""What gardeners call a family besides its table names. Common practice, no source."""


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
    day: date | None  # None: no date, or a coarse one
    written: str  # the date as written; "" for none
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The answer, newest first."""

    terms: tuple[Term, ...]
    plantings: tuple[Planting, ...] = ()
    notes: tuple[FoundNote, ...] = ()
    nearest: str | None = None  # where nothing was found: the name that may have been meant


class Memory:
    """A garden ready to be asked."""

    def __init__(self, garden: Garden, vocabulary: Vocabulary, families: Mapping[str, FamilyFact]) -> None:
        """Take the garden and the names by which it may be asked."""
        self.garden = garden
        self.past = Past(garden)
        self.vocabulary = vocabulary.with_names(_own_names(garden))
        self.families = {
            **{fold(name): family for name, family in TRADE_WORDS.items()},
            **{fold(name): fact.family for fact in families.values() for name in (fact.name, fact.family)},
        }

    def find(self, words: Sequence[str]) -> Found:
        """Plantings and notes that meet every term of the question."""
        terms = self.understand(" ".join(words))
        if not terms:
            return Found(terms=())
        plantings = tuple(p for p in self.garden.plantings if all(self._planting_meets(p, t) for t in terms))
        notes = tuple(note for id_ in self._entry_ids if (note := self._note(id_, terms)))
        nearest = None if plantings or notes else self._nearest(terms)
        return Found(terms=terms, plantings=plantings[::-1], notes=notes[::-1], nearest=nearest)

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
        named, known = self.vocabulary.at(words, place, Kind.BED, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)
        for size in range(min(4, len(words) - place), named, -1):
            if family := self.families.get(words[place : place + size]):
                return size, Term(written="", words=(), family=family)
        if named:
            return named, self._named(known)
        if YEAR.fullmatch(words[place]):
            return 1, Term(written="", words=(), year=int(words[place]))
        for size in range(min(3, len(words) - place), 0, -1):
            if verbs := PAST.get(words[place : place + size]):
                return size, Term(written="", words=(), verbs=frozenset(verbs))
        return 1, None if words[place] in SILENT else Term(written="", words=())

    def _named(self, known: Sequence[Known]) -> Term:
        beds = {k.key for k in known if k.kind is Kind.BED}
        crops = {key for k in known if k.kind in (Kind.CROP, Kind.CROP_GROUP) for key in (k.key, *k.of)}
        return Term(
            written="",
            words=(),
            beds=frozenset(kin(self.garden, sorted(beds))),
            crops=frozenset(crops),
            varieties=frozenset(k.key for k in known if k.kind is Kind.VARIETY),
        )

    def _planting_meets(self, planting: Planting, term: Term) -> bool:
        if self._names_meet(term, planting.beds, planting.crops, planting.varieties):
            return True
        if term.year is not None:
            return term.year in years_in_bed(planting, self.garden)
        events = (self.garden.event_by_id[id_] for id_ in planting.events)
        return any(_does(event, term) or has_words(event.action.text, term.words) for event in events)

    def _names_meet(
        self, term: Term, beds: Sequence[str], crops: Sequence[str], varieties: Sequence[str]
    ) -> bool:
        """Whether a bed, crop, variety or family is the one asked for."""
        if not (term.beds.isdisjoint(beds) and term.crops.isdisjoint(crops)):
            return True
        if term.varieties and not term.varieties.isdisjoint(varieties):
            return True
        return term.family is not None and any(
            crop.family == term.family for key in crops if (crop := self.garden.crops.get(key))
        )

    def _note(self, entry_id: str, terms: Sequence[Term]) -> FoundNote | None:
        """The note with the lines that meet all terms together; None if nothing in it does."""
        entry = self.garden.entry_by_id[entry_id]
        events = self.past.events_by_entry.get(entry_id, ())
        meeting = [event for event in events if all(self._event_meets(event, t) for t in terms)]
        lines = [self._told(event) for event in meeting] or self._prose(entry_id, terms)
        if not lines:
            return None
        when = entry.when
        return FoundNote(
            file=entry.at.file,
            line=meeting[0].action.at.line if meeting else entry.at.line,
            day=when.day if when else None,
            written=when.written if when else "",
            lines=tuple(dict.fromkeys(lines)),
        )

    def _told(self, event: Event) -> str:
        """The line as written; a bare "sowed" from a header with what the rest of the header says."""
        text = event.action.text
        if len(fold(text)) > 1:
            return text
        crops = [named.name for named in event.action.crops]
        beds = [self.garden.beds[key].name for key in event.beds if key in self.garden.beds]
        named = ", ".join(" and ".join(names) for names in (crops, beds) if names)
        return f"{text}: {named}" if named else text

    def _event_meets(self, event: Event, term: Term) -> bool:
        if self._names_meet(term, event.beds, event.crops, event.varieties) or _does(event, term):
            return True
        if term.year is not None:
            return event.when.first.year <= term.year <= event.when.last.year
        return has_words(event.action.text, term.words)

    def _prose(self, entry_id: str, terms: Sequence[Term]) -> list[str]:
        """The lines of a note's prose that have one of the terms, if its prose and header have them all."""
        entry = self.garden.entry_by_id[entry_id]
        texts = [entry.title or "", *entry.body.splitlines(), *(w.text for w in entry.words), *entry.lesson]
        texts += [*entry.tags, *(f"{key}: {value}" for key, value in entry.extra)]
        whole = "\n".join(texts)
        if not all(self._header_meets(entry_id, t) or has_words(whole, t.words) for t in terms):
            return []
        lines = [text.strip() for text in texts if any(has_words(text, t.words) for t in terms)]
        return lines or [next((text.strip() for text in texts if text.strip()), entry_id)]

    def _header_meets(self, entry_id: str, term: Term) -> bool:
        entry = self.garden.entry_by_id[entry_id]
        if term.year is not None:
            return entry.when is not None and entry.when.first.year <= term.year <= entry.when.last.year
        keys = [[named.key for named in names] for names in (entry.beds, entry.crops, entry.varieties)]
        return self._names_meet(term, *keys)

    def _nearest(self, terms: Sequence[Term]) -> str | None:
        """The known name most like the question, or like one of its words."""
        for text in (" ".join(t.written for t in terms), *(t.written for t in terms)):
            near = self.vocabulary.closest(text, Kind.BED, Kind.CROP, Kind.VARIETY)
            if near and fold(near) != fold(text):
                return near
        return None

    @cached_property
    def _entry_ids(self) -> tuple[str, ...]:
        return tuple(entry.id for entry in self.garden.entries)


def has_words(text: str, words: tuple[str, ...]) -> bool:
    """Whether the words stand in the text one behind the other; case, accents and plurals do not matter."""
    if not words:
        return False
    if text.isascii() and words[0] not in IRREGULAR.values() and words[0][:3] not in text.lower():
        return False  # most texts; saves folding them
    folded = fold(text)
    size = len(words)
    return any(folded[place : place + size] == words for place in range(len(folded) - size + 1))


def _does(event: Event, term: Term) -> bool:
    return event.verb in term.verbs


def _own_names(garden: Garden) -> Iterator[tuple[str, Known]]:
    """Names that only the notes gave: beds and crops no setting and no table has, and varieties."""
    for bed in garden.beds.values():
        for name in (bed.name, *bed.also):
            yield name, Known(kind=Kind.BED, key=bed.key, name=bed.name)
    for crop in garden.crops.values():
        yield crop.name, Known(kind=Kind.CROP, key=crop.key, name=crop.name)
    for planting in garden.plantings:
        for variety in planting.varieties:
            yield variety, Known(kind=Kind.VARIETY, key=variety, name=variety, of=planting.crops)
