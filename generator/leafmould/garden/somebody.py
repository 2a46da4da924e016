"""Where a text names somebody: by a title or kinship, whose something was, who said, gave, got or brought it.

Used by `visible` for every text a public build shows. In doubt somebody is meant; but names of beds, and of
plants and varieties that only sound like people, stay.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator
from itertools import compress, count

from leafmould.garden.beside_somebody import JOINED, TITLES, beside, may_be_told, title_before
from leafmould.garden.blank import Folded, Span
from leafmould.garden.called import BYNAMES, CALLED_AFTER, GIVEN, KIN, NO_NAMES, NOT_OWNERS
from leafmould.garden.people import ALSO_WORDS
from leafmould.values.names import WORD, fold, fold_word

CAPITAL = re.compile(r"(?<![\w'’])[^\W\d_a-zà-öø-ÿ][^\W\d_]*(?:[’'-][^\W\d_]+)*")
CAPITAL_ASCII = re.compile(r"\b(?<!')[A-Z][A-Za-z]*(?:['-][A-Za-z]+)*")
OWNS = re.compile(r"['’]s?$", re.IGNORECASE)

ANY_TITLE = re.compile(rf"\b(?:{'|'.join(sorted(TITLES))}|old\s+man)\.?\s+[^\W\d_]")
ANY_KIN = re.compile(rf"\b(?:mr|mrs|ms|{'|'.join(sorted(KIN))})\b")
LOWER_TITLE = re.compile(r"\b(?:mr|mrs|ms)\.?\s+[^\W\d_A-Z][\w’'-]*")
KINSHIP = re.compile(
    rf"(?<![\w'’-])(?:(?:my|our|his|her|their|your)\s+)?(?:{'|'.join(sorted(KIN))})(?:['’]s)?(?![\w-]|['’]\w)",
    re.IGNORECASE,
)
TITLE_SIGNS = (
    "Dr", "Doctor", "Prof", "Rev", "Father", "Sir", "Lady", "Lord", "Dame", "Canon", "Cap", "Major", "Col", "Sgt", "Madame", "Mme", "Herr", "Frau",
    "Signora", "Señora", "Cousin", "cousin", "Sister", "sister", "Brother", "brother", "ld man", "armer", "Miss", "miss", "Mx",
)  # fmt: skip
FAR = 8
"""So many letters stand at the most between two names that are told in one breath."""
KIN_SIGNS = ("aunt", "uncle", "nan", "gran", "mum", "mam", "mom", "dad", "mr", "ms")
QUOTED = re.compile(
    r"(?<!\w)['‘](?=[^\W\d_a-z])(?:[^'’\n.!?]|['’](?=s\b|\w)){2,40}['’](?!\w)|(?<!\w)[\"“](?:[^\W\d_a-z][\w'’-]*\s?){1,4}[\"”](?!\w)"
)


QUOTES = ("'", "‘", '"', "“")
"""What `QUOTED` begins with."""


class Namer:
    """Finds people in texts of one garden, whose beds and plants it knows by name."""

    def __init__(self, plants: Iterable[Folded], beds: Iterable[Folded]) -> None:
        """Take the folded names of all crops, varieties and other plants, and of all beds and parts."""
        self._beds = frozenset(beds)
        self._plants = frozenset(plants)
        known = self._beds | self._plants | CALLED_AFTER
        self._single = frozenset(name[0] for name in known if len(name) == 1)
        self._longer: dict[str, list[Folded]] = {}
        for name in known:
            if len(name) > 1:
                self._longer.setdefault(name[0], []).append(name)
        self.longer = frozenset(name for name in known if len(name) > 1)
        self._kinds: dict[str, str] = {}
        self._line, self._in_line = "", list[Span]()

    def and_also(self, plants: Collection[Folded], beds: Collection[Folded]) -> Namer:
        """One that knows some more names."""
        return Namer(self._plants | frozenset(plants), self._beds | frozenset(beds))

    def spans(self, text: str) -> list[Span]:
        """Where the text names somebody, from left to right."""
        lower = text.lower()
        has_kin = any(map(lower.__contains__, KIN_SIGNS)) and ANY_KIN.search(lower) is not None
        has_title = has_kin or (
            any(map(text.__contains__, TITLE_SIGNS)) and ANY_TITLE.search(lower) is not None
        )
        found = self._by_capital(text, has_title=has_title)
        return _joined([*found, *self._by_kinship(text)]) if has_kin else found

    def names(self, text: str) -> Iterator[str]:
        """The names themselves, without whose they are."""
        for start, end in self.spans(text):
            name = OWNS.sub("", text[start:end])
            yield name
            yield from (
                m.group() for m in CAPITAL.finditer(name) if self._kind(m.group()) in ("given", "open")
            )

    def _by_capital(self, text: str, *, has_title: bool) -> list[Span]:
        found: list[Span] = []
        last = -9  # where the name before ends
        kinds = self._kinds
        for m in (CAPITAL_ASCII if text.isascii() else CAPITAL).finditer(text):
            kind = kinds.get(word := m.group()) or self._kind(word)
            if kind == "nobody" and not has_title and (not found or m.start() - last > 2):
                continue
            if kind == "open" and (not found or m.start() - last > FAR) and not may_be_told(text, *m.span()):
                continue  # as most: neither a title nor anybody else stands before it
            begins = self._begins(text, m, kind, found)
            if begins is not None:
                found.append((begins, last := m.end()))
        return found

    def _begins(self, text: str, m: re.Match[str], kind: str, found: list[Span]) -> int | None:
        """Where a name begins that has a word with a capital in it; None if it names nobody."""
        start = m.start()
        last = found[-1][1] if found else -9
        if found and _is_rest_of(text, last, start):
            return None if self._is_plant(m.group()) else found.pop()[0]
        title = title_before(text, start)
        if title is None and (kind == "nobody" or not self._is_somebody(text, m, kind, last)):
            return None
        return None if self._is_shielded(text, start) else start if title is None else title

    def _is_somebody(self, text: str, m: re.Match[str], kind: str, last: int) -> bool:
        """Whether a word, by what it is and what stands beside it, is somebody's name."""
        start, end = m.span()
        if kind == "given":
            return True
        is_next = 0 <= start - last <= FAR and JOINED.fullmatch(text, last, start) is not None
        if kind == "open" and not is_next and not may_be_told(text, start, end):
            return False
        near = beside(text, start, end)
        if kind in ("plant", "byname"):
            is_theirs = kind == "byname" and (near.is_given or _is_next_of_them(text, last, m))
            return is_theirs or near.is_spoken_of
        is_first = near.is_first
        if (kind == "word" or near.is_given) and not is_first:
            return True
        return near.is_related or near.is_spoken_of or is_next or _is_owner(m.group())

    def _by_kinship(self, text: str) -> Iterator[Span]:
        for m in (*KINSHIP.finditer(text), *LOWER_TITLE.finditer(text)):
            if not (self._is_shielded(text, m.start()) or self._is_shielded(text, m.end() - 1)):
                yield m.span()

    def _kind(self, written: str) -> str:
        """What a word with a capital may be: somebody's given name, a plant, any word, nobody."""
        kind = self._kinds.get(written)
        if kind is None:
            word = OWNS.sub("", written)
            kind = self._kinds[written] = self._kind_of(word, fold_word(word))
        return kind

    def _is_plant(self, word: str) -> bool:
        """Whether one word names a plant or bed, and ends whoever's name stands before it."""
        return fold_word(OWNS.sub("", word)) in self._single

    def _kind_of(self, word: str, folded: str) -> str:
        is_given = folded in GIVEN or word.casefold() in GIVEN
        if (folded,) in self._beds:
            return "nobody"
        if folded in self._single:
            return "byname" if folded in BYNAMES else "plant" if is_given else "nobody"
        if is_given:
            return "word" if folded in ALSO_WORDS else "given"
        is_sign = word in ("I", "A") or (word.isupper() and 1 < len(word) < 5)
        return "nobody" if is_sign or folded in NO_NAMES or word.casefold() in NO_NAMES else "open"

    def _is_shielded(self, text: str, start: int) -> bool:
        """Whether it stands in a longer name of a bed or plant, or in quotes: nobody is named there."""
        first = text.rfind("\n", 0, start) + 1
        line = text[first : end if (end := text.find("\n", start)) >= 0 else len(text)]
        if line != self._line:  # a long paragraph is asked about several times over
            self._line, self._in_line = line, self._shields(line)
        return any(a <= start - first < b for a, b in self._in_line)

    def _shields(self, line: str) -> list[Span]:
        found = [m.span() for m in QUOTED.finditer(line)] if any(map(line.__contains__, QUOTES)) else []
        places = [m.span() for m in WORD.finditer(line)]
        words = tuple([fold_word(line[start:end]) for start, end in places])
        for at in compress(count(), map(self._longer.__contains__, words)):
            for name in self._longer[words[at]]:
                if words[at : at + len(name)] == name:
                    found.append((places[at][0], places[at + len(name) - 1][1]))
        return found


def _is_next_of_them(text: str, last: int, m: re.Match[str]) -> bool:
    """Whether somebody else was given something right before: "gave Ann 3 plants, Tom 2"."""
    if last < 0 or "\n" in (between := text[last : m.start()]):
        return False
    ends = between.rstrip().endswith((",", "and", "&"))
    return ends and text[m.end() : m.end() + 4].lstrip()[:1].isdigit()


def _is_rest_of(text: str, last: int, start: int) -> bool:
    """Whether nothing parts two words of one name but a space, or the dot of an initial: "J. Hale"."""
    is_initial = not text[max(0, last - 2) : last - 1].isalpha()
    return text[last:start] in (" ", "-") or (is_initial and text[last:start] in (". ", "."))


def _is_owner(word: str) -> bool:
    """Whether something is said to be theirs: "Joe's beans"."""
    return OWNS.search(word) is not None and fold_word(OWNS.sub("", word)) not in NOT_OWNERS


def _joined(spans: Iterable[Span]) -> list[Span]:
    """The stretches from left to right, those that meet made one."""
    found: list[Span] = []
    for start, end in sorted(spans):
        if found and start < found[-1][1]:
            found[-1] = (found[-1][0], max(end, found[-1][1]))
        else:
            found.append((start, end))
    return found


def is_given_name(name: str) -> bool:
    """Whether a name found is somebody's wherever it stands, with a capital."""
    words = [fold_word(word) for word in WORD.findall(name)]
    return len(words) > 1 or (
        not is_also_word(name) and (not GIVEN.isdisjoint(words) or name.casefold() in KIN)
    )


def is_also_word(name: str) -> bool:
    """Whether it is a word besides, and somebody's only beside what says so."""
    return name.casefold() in ALSO_WORDS or fold_word(name) in NO_NAMES


def whole_names(names: Iterable[str]) -> frozenset[Folded]:
    """The names folded, without those of no letters."""
    return frozenset(words for name in names if (words := fold(name)))
