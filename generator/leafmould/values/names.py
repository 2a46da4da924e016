"""Every name the garden knows, and finding them in what a gardener typed.

Names are compared folded: case, accents, apostrophes and plurals do not matter, whole words do. The
longest name wins. The Vocabulary is built from settings and facts and handed to the readers; its
`digest` is part of every cache key.
"""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

FRACTIONS = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_LETTERS = rf"(?:[^\W\d_{FRACTIONS}]|[\u0300-\u036f])+"
WORD = re.compile(rf"{_LETTERS}(?:['’]{_LETTERS})*|\d+|[{FRACTIONS}]")
"""One word: letters (an apostrophe inside belongs to them), digits, or a fraction sign.

Letters and digits are apart, so that "bed2", "bed 2" and "bed #2" are one name.
"""
WORD_ASCII = re.compile(r"[A-Za-z]+(?:'[A-Za-z]+)*|[0-9]+")
"""The same words in a text without other letters, found in half the time."""


class Kind(StrEnum):
    """What a name is the name of."""

    BED = "bed"
    PART = "part"  # a named part of one bed
    CROP = "crop"
    CROP_GROUP = "crop group"  # bean, pepper, squash: the one kind that stands there, else the family
    VARIETY = "variety"
    MEASURE = "measure"  # tray, bucket: a gardener's own
    VERB = "verb"  # a gardener's own word or code for an action


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """One name and what it stands for."""

    kind: Kind
    key: str  # identity: bed key, crop key, variety as first written, verb
    name: str  # how it is shown: "Long border", "courgette"
    of: tuple[str, ...] = ()  # part: its beds · variety and crop group: their crops · measure: grams as text
    is_public: bool = False  # a name from a public list, which yields to every name of the garden's own
    is_word: bool = False  # also an ordinary word or a person's name: counts only as it is written for a name


@lru_cache(maxsize=50_000)
def fold_word(word: str) -> str:
    """A word without case, accents, apostrophes and plural ending."""
    plain = word.casefold()
    if not plain.isascii():
        plain = unicodedata.normalize("NFKD", plain)
        plain = "".join(c for c in plain if not unicodedata.combining(c) and c != "’")
    return _singular(plain.replace("'", ""))


IRREGULAR = {
    "leaves": "leaf",
    "loaves": "loaf",
    "halves": "half",
    "knives": "knife",
    "mice": "mouse",
    "hoes": "hoe",
    "cloches": "cloche",
    "quiches": "quiche",
    "earlies": "earlie",
    "tatties": "tattie",
    "chillies": "chilli",
    "chilies": "chili",
}


def _singular(word: str) -> str:
    if word in IRREGULAR:
        return IRREGULAR[word]
    if len(word) < 4 or not word.endswith("s") or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("oes", "shes", "ches", "xes", "sses")):
        return word[:-2]
    return word[:-1]


@lru_cache(maxsize=20_000)
def fold(text: str) -> tuple[str, ...]:
    """The folded words of a name or a piece of text, in order."""
    words = WORD_ASCII if text.isascii() else WORD
    return tuple(map(fold_word, words.findall(text)))


class Vocabulary:
    """All known names; lookups are by folded words.

    Names from public lists stand apart (`with_public`): only who reads a line as typed, or asks for a whole
    text, meets them.
    """

    def __init__(self, names: Iterable[tuple[str, Known]]) -> None:
        """Take (name as it may be written, what it means) pairs; the order does not matter."""
        found = {row: known for written, known in names if (row := _row(written, known))[0]}
        own = {row[0] for row, known in found.items() if not known.is_public}
        rows = [row for row in sorted(found) if not found[row].is_public or row[0] not in own]
        pairs = [(row[0], found[row]) for row in rows if not found[row].is_public]
        public = [(row[0], found[row]) for row in rows if found[row].is_public]
        by_words: dict[tuple[str, ...], list[Known]] = {}
        longest: dict[str, int] = {}
        for words, known in (*pairs, *public):
            by_words.setdefault(words, []).append(known)
            longest[words[0]] = max(longest.get(words[0], 0), len(words))
        self.pairs, self.public = tuple(pairs), tuple(public)
        self.with_public = {words: tuple(known) for words, known in by_words.items()}
        self.by_words = {words: self.with_public[words] for words, _ in pairs}
        self.longest_by_first_word = longest
        self.digest = hashlib.blake2b(repr(rows).encode(), digest_size=16).hexdigest()

    def exactly(self, text: str, *kinds: Kind) -> tuple[Known, ...]:
        """What the whole text names; only of these kinds, if any are given."""
        found = self.with_public.get(fold(text), ())
        if not kinds or not found:
            return found
        if len(found) == 1:  # as most names
            return found if found[0].kind in kinds else ()
        return tuple(k for k in found if k.kind in kinds)

    def at(self, words: Sequence[str], start: int, *kinds: Kind) -> tuple[int, tuple[Known, ...]]:
        """The longest name that begins at word `start`: how many words, and what it may mean."""
        most = min(self.longest_by_first_word.get(words[start], 0), len(words) - start)
        for size in range(most, 0, -1):
            found = self.by_words.get(tuple(words[start : start + size]))
            if found and kinds:
                found = tuple(k for k in found if k.kind in kinds)
            if found:
                return size, found
        return 0, ()

    def closest(self, text: str, *kinds: Kind) -> str | None:
        """The known name nearest to a text that is not known, for "Did you mean"."""
        from difflib import get_close_matches

        wanted = " ".join(fold(text))
        names = {
            " ".join(words): known.name for words, known in self.pairs if not kinds or known.kind in kinds
        }
        near = get_close_matches(wanted, names, n=1, cutoff=0.72)
        return names[near[0]] if near else None

    def with_names(self, names: Iterable[tuple[str, Known]]) -> Vocabulary:
        """A vocabulary that knows these too (varieties learned from other notes, say)."""
        known = (*self.pairs, *self.public)
        return Vocabulary([*((" ".join(words), meant) for words, meant in known), *names])


Row = tuple[tuple[str, ...], str, str, str, tuple[str, ...], bool, bool]


def _row(written: str, known: Known) -> Row:
    """A name and what it means as plain values, which sort, compare and print at once."""
    kind = known.kind.value
    return (fold(written), kind, known.key, known.name, known.of, known.is_public, known.is_word)


SLUG_LENGTH = 80
"""Longest slug, in characters; keeps any file name far below 255 bytes."""


NO_LETTER = re.compile(r"[^\w]|_")
LOST = re.compile(r"[^\w\s'’-]|_")
VARIANTS = re.compile("[\ufe00-\ufe0f\u034f\U000e0100-\U000e01ef]")
"""Marks that only choose how a sign is drawn."""


@lru_cache(maxsize=50_000)
def slug(text: str) -> str:
    """A name as it stands in addresses, file names and ids.

    Letters and digits of all scripts are kept with the vowel signs and accents on them, in lower case and
    composed form; all else becomes "-".
    Where something other than spaces, hyphens and apostrophes was lost, or the name was cut, a short
    suffix made from the whole name keeps two names apart. Never empty.
    """
    plain = unicodedata.normalize("NFC", text.casefold())
    kept = NO_LETTER.sub(_sign_kept, plain.replace("'", "").replace("’", ""))
    short = re.sub("-+", "-", kept).strip("-")
    is_lost = any(not _is_sign(found) for found in LOST.finditer(plain))
    lost = is_lost or not short or len(short) > SLUG_LENGTH
    if lost:
        mark = hashlib.blake2b(plain.encode("utf-8", "surrogatepass"), digest_size=2).hexdigest()
        short = f"{short[:SLUG_LENGTH].rstrip('-')}-{mark}".lstrip("-")
    return unicodedata.normalize("NFC", short)


def _sign_kept(found: re.Match[str]) -> str:
    return found.group() if _is_sign(found) else "-"


def _is_sign(found: re.Match[str]) -> bool:
    """Whether it is a vowel sign or accent on a letter, as many scripts write them."""
    sign, before = found.group(), found.string[: found.start()][-1:]
    is_mark = unicodedata.category(sign) in ("Mn", "Mc") and VARIANTS.match(sign) is None
    return is_mark and (before.isalnum() or unicodedata.category(before or " ") in ("Mn", "Mc"))
