"""What the words of `leave out` name: subjects, years, beds and crops; words that name none of these.

Part of making a view. A word is taken apart rather than passed over: "Larch row and peas", "the bed Larch row",
and a name one slip away is left out as well, with a warning.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from leafmould.values.names import Kind, Vocabulary, fold
from leafmould.values.problems import Level, Location, Problem

KINDS = (Kind.BED, Kind.CROP, Kind.CROP_GROUP)
ONLY_YEARS = re.compile(
    r"(?:\b(?:years?|seasons?|the|of|to|and|until)\b|[\s\-–—,&/]|(?:19|20)\d\d(?!\d))+", re.I
)
YEAR = re.compile(r"(?:19|20)\d\d")
SPAN = re.compile(r"((?:19|20)\d\d)\s*(?:[-–—]|\bto\b|\buntil\b)\s*((?:19|20)\d\d)", re.I)
OPENS = re.compile(
    r"(?:(?:the|all|my|our|everything|beds?|crops?|variety|varieties|in|of|from|on)[\s:]+)+", re.I
)
CUT = re.compile(r"\s*[,;/&+]\s*|\s+(?:and|or)\s+", re.I)
MOST_NEAR = 0.78


@dataclass(slots=True, kw_only=True)
class LeftOut:
    """What has been named so far."""

    vocabulary: Vocabulary
    subject_of: Callable[[str], str | None]
    subjects: set[str] = field(default_factory=set)
    years: set[int] = field(default_factory=set)
    beds: set[str] = field(default_factory=set)
    crops: set[str] = field(default_factory=set)
    unsure: list[str] = field(default_factory=list)  # may still be named in a note alone
    near: set[str] = field(default_factory=set)  # of these, those told about as being near a name
    problems: list[Problem] = field(default_factory=list)

    def take(self, words: Iterable[str]) -> LeftOut:
        """Resolve these words too."""
        for word in words:
            if self._is_known(word.strip()) or not fold(word):
                continue
            pieces = [piece for piece in CUT.split(word) if fold(piece)]
            if len(pieces) > 1:
                self.take(pieces)
            else:
                self._unsure(word)
        return self

    def _is_known(self, word: str) -> bool:
        """Whether the word names something, as it stands or without "the bed" before it."""
        if subject := self.subject_of(word):
            self.subjects.add(subject)
        elif YEAR.search(word) and ONLY_YEARS.fullmatch(word):
            self.years.update(int(year) for year in YEAR.findall(word))
            for first, last in SPAN.findall(word):
                self.years.update(range(int(first), int(last) + 1))
        elif known := self.vocabulary.exactly(word, *KINDS):
            self.beds |= {k.key for k in known if k.kind is Kind.BED}
            self.crops |= {key for k in known if k.kind is not Kind.BED for key in (k.key, *k.of)}
        elif (m := OPENS.match(word)) and m.end() < len(word):
            return self._is_known(word[m.end() :])
        else:
            return False
        return True

    def _unsure(self, word: str) -> None:
        """A word nobody knows is left out as it stands, and what is nearest to it too."""
        plain = OPENS.sub("", word, count=1) if OPENS.match(word) else word
        self.unsure += dict.fromkeys((word, plain))
        near = self.vocabulary.closest(plain, *KINDS)
        if near is None or not _is_one_slip(plain, near):
            return
        self._is_known(near)
        self.near |= {word, plain}
        message = f'"{word}" is left out as a name, and as "{near}" too, to be safe.'
        at = Location(file="garden.yaml")
        self.problems.append(
            Problem(at=at, level=Level.WARNING, message=message, field="leave out", suggestion=near)
        )


def _is_one_slip(word: str, near: str) -> bool:
    """Whether a word may be a slip for a name: bed 1 is none for bed 2."""
    from difflib import SequenceMatcher

    one, other = " ".join(fold(word)), " ".join(fold(near))
    is_same_number = re.findall(r"\d+", one) == re.findall(r"\d+", other)
    return len(one) > 3 and is_same_number and SequenceMatcher(None, one, other).ratio() >= MOST_NEAR
