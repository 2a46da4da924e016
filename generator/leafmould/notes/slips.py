"""Words mistyped by one letter, or typed without their vowels: what each was meant to be.

Asked by `typed` for the words of a line that stand in no table, which are few; words that are known cost one
look at a set. A word is mended only where one known word alone can be meant: two are asked about. Ordinary
words are never bent (`words/ordinary`), nor is a word of four letters, nor a name in the middle of a line.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from leafmould.notes.nearness import ORDINARY, is_slip
from leafmould.notes.words import clipped, families, meanings, nouns, prepositions, quiet, spellings, verbs
from leafmould.notes.words.ordinary import ORDINARY_WORDS
from leafmould.values import date_words
from leafmould.values.names import Kind, Vocabulary, fold_word

SHORTEST = 5
"""A shorter word is too often a word of its own: "bean" and "been", "leek" and "leak"."""
SHORTEST_NAME = 6
"""A word with a capital may be anybody's name; longer ones seldom are."""
SHORTEST_BARE = 4
"""So many letters a word without vowels has at least: "wtrd"."""
CONSONANTS = 3
"""And so many of them are consonants."""
VOWELS = re.compile("[aeiou]")
DOUBLED = re.compile(r"(.)\1")
LETTERS = re.compile("[a-z]+")
TABLES = (clipped, nouns, prepositions, quiet, verbs, meanings, families, spellings, date_words)


def strange_words(words: Iterable[str], vocabulary: Vocabulary) -> set[str]:
    """The words that no table holds, and that may be slips of one that does."""
    strange = set(words) - known_words(vocabulary)
    return {word for word in strange if len(word) >= SHORTEST_BARE and meant_by(word, vocabulary)}


@lru_cache(maxsize=20_000)
def meant_by(word: str, vocabulary: Vocabulary) -> tuple[str, ...]:
    """What a strange word was meant to be: one word, none, or several that are as near."""
    if not word.isascii() or not word.isalpha() or word in ORDINARY_WORDS or word in ORDINARY:
        return ()
    near = _near(word, vocabulary) if len(word) >= SHORTEST else []
    return tuple(near) if near else _without_vowels(word, vocabulary)


def mend(
    words: list[str], spots: dict[int, bool], vocabulary: Vocabulary,
    mended: dict[int, str], torn: dict[int, tuple[str, ...]],
) -> None:  # fmt: skip
    """Put what was meant in the place of strange words, and note which.

    Args:
        spots: where strange words stand, and whether each is written like a name.
    """
    for i, is_like_name in spots.items():
        meant = meant_by(words[i], vocabulary)
        if i == 0 and len(meant) > 1:
            meant = _likeliest_deed(meant)
        if len(meant) > 1:
            torn[i] = meant
        elif meant:
            typed, words[i] = words[i], meant[0]
            is_meant = is_part_of_name(words, i, vocabulary)
            if is_like_name and not _is_long_crop(typed, meant[0], vocabulary):
                is_meant = _is_in_bed_name(words, i, vocabulary)
            if is_meant:
                mended[i] = meant[0]
            else:
                words[i] = typed


def _is_in_bed_name(words: list[str], i: int, vocabulary: Vocabulary) -> bool:
    """The "Orchrad" of "Orchrad row", beside a word that is right."""
    phrases = (tuple(words[start : start + size]) for size in (2, 3) for start in range(max(0, i - 2), i + 1))
    return any(k.kind is Kind.BED for words in phrases for k in vocabulary.by_words.get(words, ()))


def _likeliest_deed(meant: tuple[str, ...]) -> tuple[str, ...]:
    """ "clrd peas": cleared, no collards; "pcked": picked, sooner than pecked."""
    deeds = tuple(word for word in meant if (word,) in verbs.PAST) or meant
    common = tuple(word for word in deeds if word in EVERYDAY)
    return common if len(common) == 1 else deeds


EVERYDAY = frozenset(
    {
        "sowed",
        "planted",
        "picked",
        "watered",
        "weeded",
        "mulched",
        "pruned",
        "harvested",
        "lifted",
        "thinned",
        "cleared",
        "froze",
    }
)


def _is_long_crop(typed: str, meant: str, vocabulary: Vocabulary) -> bool:
    return len(typed) >= SHORTEST_NAME and meant in _crop_words(vocabulary)


def is_part_of_name(words: list[str], i: int, vocabulary: Vocabulary) -> bool:
    """Whether the word at `i` means something by itself, or together with those beside it."""
    if (words[i],) in vocabulary.by_words or words[i] in alone():
        return True
    for start in range(max(0, i - 3), i + 1):
        for size in range(max(2, i + 1 - start), 5):
            phrase = tuple(words[start : start + size])
            if phrase in vocabulary.by_words or phrase in verbs.PAST or phrase in verbs.STATE_FORMS:
                return True
    return False


@lru_cache(maxsize=8)
def known_words(vocabulary: Vocabulary) -> frozenset[str]:
    """Every word of our tables and of this garden's names."""
    names = {word for words in vocabulary.with_public for word in words}
    joined = {"".join(words) for words in vocabulary.with_public if len(words) == 2}
    return frozenset({*_table_words(), *names, *joined})


@lru_cache(maxsize=1)
def _table_words() -> frozenset[str]:
    held: set[str] = set()
    for module in TABLES:
        for name, value in vars(module).items():
            if name.isupper() and not isinstance(value, str):
                _gather(value, held)
    found = set(LETTERS.findall(" ".join(held).casefold().replace("'", "")))
    return frozenset({*found, *map(fold_word, found)})


def _gather(value: object, held: set[str]) -> None:
    """All the text a table holds, however deep."""
    if isinstance(value, str):
        held.add(value)
    elif isinstance(value, dict):
        _gather(value.keys(), held)
        _gather(value.values(), held)
    elif isinstance(value, Iterable):
        for one in value:
            _gather(one, held)


@lru_cache(maxsize=1)
def alone() -> frozenset[str]:
    """Words of the tables that mean something by themselves: a verb, a measure, a stuff."""
    forms = {form[0] for form in verbs.PAST if len(form) == 1}
    states = {form[0] for form in verbs.STATE_FORMS if len(form) == 1}
    stuffs = nouns.COVERS | nouns.MULCHES | nouns.MANURES | nouns.FEEDS | nouns.TROUBLES | nouns.PRODUCTS
    counted = nouns.COUNT_NOUNS | nouns.HOLDERS | nouns.PLACE_NOUNS | nouns.UNITS.keys()
    found = forms | states | stuffs | counted | nouns.WEEDS | nouns.TREATMENTS | nouns.FURNITURE
    return frozenset(word for word in found if word.isascii() and word.isalpha())


@lru_cache(maxsize=8)
def _crop_words(vocabulary: Vocabulary) -> frozenset[str]:
    kinds = (Kind.CROP, Kind.CROP_GROUP)
    named = (words for words, known in vocabulary.pairs if known.kind in kinds and not known.is_word)
    return frozenset(word for words in named for word in words if word.isascii() and word.isalpha())


@lru_cache(maxsize=8)
def _meant(vocabulary: Vocabulary) -> frozenset[str]:
    """Every word that may have been meant."""
    firsts = {form[0] for form in verbs.PAST if len(form) > 1 and form[0].endswith(("ed", "ing"))}
    beds = {w for words, known in vocabulary.pairs if known.kind is Kind.BED for w in words if w.isalpha()}
    return frozenset({*({*alone(), *firsts} - SAID_FOR_OTHERS), *_crop_words(vocabulary), *beds})


SAID_FOR_OTHERS = frozenset({*spellings.SPELLINGS, *prepositions.SHORTENED, *nouns.LOCAL_NAMES})
"""Words that are read for another already."""


@lru_cache(maxsize=8)
def _by_shorter(vocabulary: Vocabulary) -> dict[str, list[str]]:
    """The words that may be meant, by themselves and by what is left with any one letter dropped."""
    found: dict[str, list[str]] = {}
    for word in sorted(_meant(vocabulary)):
        if len(word) >= SHORTEST - 1:
            for shorter in {word, *_dropped(word)}:
                found.setdefault(shorter, []).append(word)
    return found


def _dropped(word: str) -> Iterator[str]:
    return (word[:k] + word[k + 1 :] for k in range(len(word)))


def _near(word: str, vocabulary: Vocabulary) -> list[str]:
    """The words one slip away; of several, the one of a doubled letter, of the same letters, or of the same ends."""
    by_shorter = _by_shorter(vocabulary)
    near = sorted({known for s in (word, *_dropped(word)) for known in by_shorter.get(s, ())})
    near = [known for known in near if is_slip(word, known) and not _is_other_first(word, known)]
    if not near or any(swapped in known_words(vocabulary) for swapped in _swapped(word)):
        return [known for known in near if known in _swapped(word)]  # "tierd" is tired, not tied
    for is_likelier in (_is_doubled, _is_same_letters, _has_same_ends):
        likely = [known for known in near if is_likelier(word, known)]
        near = likely if len(likely) == 1 else near
    return near


def _swapped(word: str) -> list[str]:
    return [word[:k] + word[k + 1] + word[k] + word[k + 2 :] for k in range(len(word) - 1)]


def _is_other_first(word: str, known: str) -> bool:
    """Another first letter makes another word: "gardened" is not "hardened"."""
    return word[0] != known[0] and word[1:] == known[1:]


def _is_doubled(word: str, known: str) -> bool:
    return _single(known) == _single(word)


def _is_same_letters(word: str, known: str) -> bool:
    return sorted(word) == sorted(known)


def _has_same_ends(word: str, known: str) -> bool:
    return (known[0], known[-1]) == (word[0], word[-1])


def _single(word: str) -> str:
    return DOUBLED.sub(r"\1", word)


@lru_cache(maxsize=8)
def _by_consonants(vocabulary: Vocabulary) -> dict[str, list[str]]:
    """Verbs, measures and crops by their first letter and their consonants."""
    found: dict[str, list[str]] = {}
    for word in sorted(_meant(vocabulary)):
        if len(word) > CONSONANTS:
            found.setdefault(_consonants(word), []).append(word)
    return found


def _consonants(word: str) -> str:
    return _single(word[0] + VOWELS.sub("", word[1:]))


def _without_vowels(word: str, vocabulary: Vocabulary) -> tuple[str, ...]:
    """ "plntd", "crrts", "lttce": the one word that has these letters, and no consonant more."""
    bare = _consonants(word)
    if (
        len(word) < SHORTEST_BARE
        or len(bare) < CONSONANTS
        or (len(bare) == CONSONANTS and VOWELS.search(word[1:-1]))
    ):
        return ()
    known = _by_consonants(vocabulary).get(bare, ())
    return tuple(one for one in known if len(one) > len(word) and _is_within(word, one))


def _is_within(word: str, whole: str) -> bool:
    """Whether the letters of a word stand in another in the same order."""
    letters = iter(whole)
    return all(letter in letters for letter in word)
