"""What was typed after `find`, understood: names of the garden, families, times, actions, and words.

The longest name wins; what is no name may be a day, a month or a year, then an action; whatever is left is a
word to be looked for. Several years, or several months, are asked for one or another; all else must fit.
What meets a question is told by `memory`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from leafmould.lookup.recollection import Name, Recollection
from leafmould.values.date_words import MONTHS, SHORT_MONTHS
from leafmould.values.names import WORD, Kind, fold

SILENT = frozenset(
    fold("in on at of and with from what grew when did was is my for a an our the which where how")
)
"""Words that ask nothing by themselves."""

YEARS_KNOWN = range(1800, 2200)
ORDINALS = frozenset(("st", "nd", "rd", "th"))
SPAN = frozenset("-–—")
LONGEST_SPAN = timedelta(days=100)
"""What is known no nearer than this is of no month, only of its years."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """One thing asked for. Whatever meets one of its meanings meets it; its words are always one."""

    written: str
    words: tuple[str, ...]  # folded
    beds: frozenset[str] = frozenset()
    crops: frozenset[str] = frozenset()
    varieties: frozenset[str] = frozenset()
    family: str | None = None
    years: frozenset[int] = frozenset()
    months: frozenset[int] = frozenset()
    days: frozenset[int] = frozenset()  # of the months
    verbs: frozenset[str] = frozenset()
    begins: bool = False  # the beginning of a word will do

    @property
    def is_name(self) -> bool:
        """Whether it names a bed, crop, variety or family."""
        return bool(self.beds or self.crops or self.varieties or self.family)

    @property
    def is_time(self) -> bool:
        """Whether it says when."""
        return bool(self.years or self.months)

    def holds(self, first: str, last: str) -> bool:
        """Whether it says when, and what happened from one ISO day to another did then."""
        if not self.months:
            return any(int(first[:4]) <= year <= int(last[:4]) for year in self.years)
        day, end = date.fromisoformat(first), date.fromisoformat(last)
        if end - day > LONGEST_SPAN:
            return False
        return any(self._is_on(day + timedelta(days=more)) for more in range((end - day).days + 1))

    def _is_on(self, day: date) -> bool:
        if self.years and day.year not in self.years:
            return False
        return day.month in self.months and (not self.days or day.day in self.days)


ASKED = Term(written="", words=())


class Reader:
    """Understands questions by what a garden remembers."""

    def __init__(self, held: Recollection) -> None:
        """Take the names."""
        self.held = held
        self.names: dict[str, list[Name]] = {}
        for name in held.names:
            self.names.setdefault(name.words, []).append(name)
        self.longest = max((words.count(" ") + 1 for words in self.names), default=0)

    def understand(self, text: str) -> tuple[Term, ...]:
        """The question's terms: the longest names first, then single words."""
        spots, words = list(WORD.finditer(text)), fold(text)
        terms: list[Term] = []
        place = 0
        while place < len(words):
            size, term = self._term(words, place)
            if term is not None:
                start, end = spots[place].start(), spots[place + size - 1].end()
                term = replace(term, written=text[start:end], words=words[place : place + size])
                between = text[spots[place - 1].end() : start].strip() if place else ""
                _take(terms, term, is_span=between in SPAN)
            place += size
        return tuple(terms)

    def begun(self, terms: Sequence[Term]) -> tuple[Term, ...]:
        """The same, where a plain word may also be the beginning of a name or of a word."""
        return tuple(self._begun(term) for term in terms)

    def at(self, words: Sequence[str], place: int) -> tuple[int, Sequence[Name]]:
        """The longest name that begins at a word: how many words, and what it may mean."""
        for size in range(min(self.longest, len(words) - place), 0, -1):
            if found := self.names.get(" ".join(words[place : place + size])):
                return size, found
        return 0, ()

    def _term(self, words: tuple[str, ...], place: int) -> tuple[int, Term | None]:
        """What begins at a word, and how many words it takes; None for a word that asks nothing."""
        named, known = self.at(words, place)
        for size in range(min(4, len(words) - place), named, -1):
            if family := self.held.families.get(" ".join(words[place : place + size])):
                return size, replace(ASKED, family=family)
        if named:
            return named, self._named(known)
        return _time(words[place:], int(self.held.on[:4])) or _deed(words, place)

    def _named(self, known: Sequence[Name]) -> Term:
        beds = {bed for k in known if k.kind == Kind.BED for bed in self.held.kin.get(k.key, (k.key,))}
        crops = {key for k in known if k.kind in (Kind.CROP, Kind.CROP_GROUP) for key in (k.key, *k.of)}
        varieties = frozenset(k.key for k in known if k.kind == Kind.VARIETY)
        return replace(ASKED, beds=frozenset(beds), crops=frozenset(crops), varieties=varieties)

    def _begun(self, term: Term) -> Term:
        if term.is_name or term.is_time or term.verbs or len(term.words[0]) < 3:
            return term
        known = [k for words, names in self.names.items() if words.startswith(term.words[0]) for k in names]
        return replace(self._named(known), written=term.written, words=term.words, begins=True)


def _take(terms: list[Term], term: Term, *, is_span: bool) -> None:
    """Add a term; a further year or month to the one there is, with the years between where it ends a span."""
    if term.is_time:
        for place, other in enumerate(terms):
            if _likeness(other) == _likeness(term):
                terms[place] = _either(other, term, is_span=is_span)
                return
    terms.append(term)


def _likeness(term: Term) -> tuple[bool, bool, bool]:
    return bool(term.years), bool(term.months), bool(term.days)


def _either(one: Term, other: Term, *, is_span: bool) -> Term:
    years = one.years | other.years
    if is_span and not one.months:
        years = frozenset(range(min(years), max(years) + 1))
    return replace(
        one,
        written=f"{one.written} {other.written}",
        words=(*one.words, *other.words),
        years=years,
        months=one.months | other.months,
        days=one.days | other.days,
    )


def _time(words: Sequence[str], this_year: int) -> tuple[int, Term] | None:
    """The day, month or year that words begin with, and how many they are."""
    if tuple(words[:2]) in (("last", "year"), ("this", "year")):
        return 2, replace(ASKED, years=frozenset((this_year - (words[0] == "last"),)))
    year = _year(words[0])
    size = 1 if year else 0
    day, month, used = _day_of_month(words[size:], is_iso=bool(year), has_year=bool(year))
    size += used
    if not year and month and size < len(words):
        year = _year(words[size])
        size += bool(year)
    if not (year or month):
        return None
    return size, replace(ASKED, years=_only(year), months=_only(month), days=_only(day))


def _day_of_month(
    words: Sequence[str], *, is_iso: bool, has_year: bool
) -> tuple[int | None, int | None, int]:
    """ "5th july", "july 5", "july"; after a year also "07 05": the day, the month, and how many words."""
    if is_iso and words and words[0].isdigit() and len(words[0]) == 2 and 1 <= int(words[0]) <= 12:
        day, size = _day(words[1:])
        return day, int(words[0]), 1 + size
    day, size = _day(words)
    month = _month(words[size : size + 1], is_sure=size > 0 or has_year or _followed(words[size + 1 :]))
    if month is None:
        return None, None, 0
    if size:
        return day, month, size + 1
    day, size = _day(words[1:])
    return day, month, 1 + size


def _day(words: Sequence[str]) -> tuple[int | None, int]:
    if not (words and words[0].isdigit() and len(words[0]) <= 2 and 1 <= int(words[0]) <= 31):
        return None, 0
    return int(words[0]), 2 if len(words) > 1 and words[1] in ORDINALS else 1


def _month(words: Sequence[str], *, is_sure: bool) -> int | None:
    """A month by its name; by its short name only where a number stands beside it."""
    known: Mapping[str, int] = MONTHS | SHORT_MONTHS if is_sure else MONTHS
    return known.get(words[0]) if words else None


def _followed(words: Sequence[str]) -> bool:
    return bool(words) and words[0].isdigit()


def _year(word: str) -> int | None:
    return int(word) if len(word) == 4 and word.isdecimal() and int(word) in YEARS_KNOWN else None


def _only(number: int | None) -> frozenset[int]:
    return frozenset() if number is None else frozenset((number,))


def _deed(words: tuple[str, ...], place: int) -> tuple[int, Term | None]:
    """The action that begins at a word; else the word itself, unless it asks nothing."""
    from leafmould.notes.words.verbs import PAST

    for size in range(min(3, len(words) - place), 0, -1):
        if verbs := PAST.get(words[place : place + size]):
            return size, replace(ASKED, verbs=frozenset(verbs))
    return 1, None if words[place] in SILENT else ASKED
