"""One slip of the pen: whether two words differ by one letter, and the known name so near.

One letter dropped, added or changed, or two neighbours swapped, in words of four letters and more; never
a digit. Used only for words that were not understood, so its cost does not matter to sound lines.
"""

from __future__ import annotations

import re
from collections import defaultdict
from functools import lru_cache

from leafmould.values.names import Kind, Known, Vocabulary

SHORTEST = 4


def is_slip(typed: str, known: str) -> bool:
    """Whether `typed` is `known` with one slip."""
    if typed == known or min(len(typed), len(known)) < SHORTEST or abs(len(typed) - len(known)) > 1:
        return False
    start = 0
    while start < min(len(typed), len(known)) and typed[start] == known[start]:
        start += 1
    a, b = typed[start:], known[start:]
    if not all(c.isalpha() for c in a[:2] + b[:2]):
        return False
    return a[1:] == b[1:] or a[1:] == b or a == b[1:] or (a[:2] == b[1::-1] and len(a) > 1 and a[2:] == b[2:])


def is_short_slip(typed: str, known: str) -> bool:
    """A slip in a word of three, beside other words that are right: "Topp bed", "orchard rwo"."""
    if len(typed) == len(known) == SHORTEST - 1 and known.isalpha():
        return known in (typed[1] + typed[0] + typed[2], typed[0] + typed[2] + typed[1])
    short, long = sorted((typed, known), key=len)
    if (len(short), len(long)) != (SHORTEST - 1, SHORTEST) or not long.isalpha():
        return False
    return any(long[:k] + long[k + 1 :] == short for k in range(len(long)))


LONG = 6
REAL = frozenset(
    {
        "reddish",
        "create",
        "creates",
        "created",
        "lattice",
        "papers",
        "current",
        "currents",
        "parsley",
        "planted",
        "plenty",
        "pointed",
        "painted",
        "garlicky",
        "peppery",
        "turning",
        "burning",
    }
)
"""Words of their own that sound like a crop with other vowels."""
DOUBLED = re.compile(r"(.)\1")
VOWELS = str.maketrans("", "", "aeiouy")


def sounds_alike(typed: str, known: str) -> bool:
    """ "cold fraim": the same but for its vowels, beside other words that are right."""
    if min(len(typed), len(known)) < SHORTEST or typed[0] != known[0] or not typed.isalpha():
        return False
    left = DOUBLED.sub(r"\1", typed.translate(VOWELS))
    return len(left) > 2 and left == DOUBLED.sub(r"\1", known.translate(VOWELS))


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


ORDINARY = _words(
    """
    after alive anything apply arrow asked bale ball balls bare barrow basin beach bead beam bear beast beat been beer
    bees belt best bill blog board boast boat born bread broad burnt cage came care carry chart cheery chill
    chilly clever clog close closer coast coat come cord core cork corm course cover crest cross dale dare
    date dear deep dice did dive drape dress each end fare faster fear feel felt ferry fetch fill fine finger
    five flag flat flog food forage fork frog gale gate gear get give go going gone good got grade grave
    happy hard harrow hate heap hear hill hint hive horn hose keep kept knew know late lawn lead lean
    leap left line linger live loan long look looked lose lots lover low made make male master mate mean meek neem tape chip
    merry mice middle mill mind mine mist mood narrow near nice nose nothing olive-oil over page pale parrot
    peat peek pill pine pint plug plumb plump plus pocket pork press price puppy racket rage rake rate raw
    reach rear rest rhyme rise roast rope row safe said sale savage say seek seen shard singer socket
    something song speed spice spine squish stage start still storage swine take tale tame taster teach tear
    teen tell theme thing think those thought till tint toast told took torn tow tried try tweed used very
    vine wage way wear week went what will wine wood word work worn year
    """
)
"""Words everybody writes: none of them is a slip for a crop ("beer" for beet, "year" for pear)."""


@lru_cache(maxsize=20_000)
def near_name(vocabulary: Vocabulary, words: tuple[str, ...], kinds: tuple[Kind, ...]) -> Known | None:
    """The known name one slip away from these folded words; None if there is none or more than one."""
    if len(words) == 1 and words[0] in ORDINARY and Kind.BED not in kinds:
        return None
    size = len("".join(words))
    names = _by_length(vocabulary, kinds)
    near = [
        (place, known)
        for length in (size - 1, size, size + 1)
        for place, name, known in names.get(length, ())
        if _is_near(words, name)
    ]
    found: dict[tuple[Kind, str], Known] = {}
    for _, known in sorted(near, key=lambda pair: pair[0]):
        found.setdefault((known.kind, known.key), known)
    return next(iter(found.values())) if len(found) == 1 else None


@lru_cache(maxsize=100)
def _by_length(
    vocabulary: Vocabulary, kinds: tuple[Kind, ...]
) -> dict[int, list[tuple[int, tuple[str, ...], Known]]]:
    """The names of some kinds, with their place in the order of all, by how many letters they have."""
    names: dict[int, list[tuple[int, tuple[str, ...], Known]]] = defaultdict(list)
    for place, (name, known) in enumerate(vocabulary.pairs):
        if known.kind in kinds:
            names[len("".join(name))].append((place, name, known))
    return dict(names)


def _is_near(words: tuple[str, ...], name: tuple[str, ...]) -> bool:
    if len(words) != len(name):
        return len("".join(words)) >= 2 * SHORTEST and "".join(words) == "".join(name)
    different = [(a, b) for a, b in zip(words, name, strict=True) if a != b]
    if len(different) != 1:
        return False
    if len(words) == 1 and len(words[0]) >= LONG and sounds_alike(*different[0]) and words[0] not in REAL:
        return True  # "corgettes", "letice"
    return is_slip(*different[0]) or (
        len(words) > 1 and (is_short_slip(*different[0]) or sounds_alike(*different[0]))
    )


@lru_cache(maxsize=5_000)
def near_word(word: str, table: frozenset[str]) -> str | None:
    """The only word of a table one slip away."""
    near = sorted(known for known in table if is_slip(word, known))
    return near[0] if len(near) == 1 else None
