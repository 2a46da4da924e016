"""Other ways a bed's name is written that nobody need declare: "topbed", "bed two", "GH", "the poly".

Made once for a garden, where its vocabulary is; an alias never takes the place of a declared name, and
where two beds could be meant there is none.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import replace

from leafmould.notes.words.nouns import UNITS
from leafmould.values.names import Known, fold

NUMBERS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
SHORTEST_JOINED = 6
"""Shorter words run together would be words of their own too often."""
KINDS = (
    (frozenset({"greenhouse", "glasshouse", "hothouse"}), "greenhouse; green house; glasshouse; glass house; gh; ghouse; grnhouse"),
    (
        frozenset({"polytunnel", "tunnel", "hoop", "hoophouse", "poly"}),
        "polytunnel; poly tunnel; polly tunnel; poly; tunnel; hoop house; hoophouse; polytunel",
    ),
    (frozenset({"coldframe"}), "cold frame"),
    (frozenset({"seedbed"}), "seed bed"),
)  # fmt: skip
"""Words of a bed's name, and what such a bed is called as well."""


def other_ways(beds: Iterable[tuple[str, Known]]) -> list[tuple[str, Known]]:
    """The aliases of all beds, as pairs for a Vocabulary."""
    found: dict[str, set[Known]] = defaultdict(set)
    for name, known in beds:
        words = fold(name)
        for alias in _of_name(words):
            found[alias].add(replace(known, is_public=True))
        if (initials := _initials(words)) is not None:
            is_large = initials in ALSO_SHORT or not VOWELS.isdisjoint(initials)
            found[initials].add(replace(known, is_public=True, is_word=is_large))
    return [(alias, known) for alias in sorted(found) if len(found[alias]) == 1 for known in found[alias]]


def _letters(text: str) -> frozenset[str]:
    return frozenset(text.split())


NO_INITIALS = _letters(
    """in on at to of as so it is by up my we me he be do go if an ok am pm tv uk us eu ph mm cm kg ml oz ft dr mr ms bc
    ad no"""
)
"""Letters that stand for something else, also where they are written large."""
VOWELS = frozenset("aeiouy")
ALSO_SHORT = UNITS.keys() | _letters(
    """lb st nd rd th wk hr sw nw se ne pk tp bx bg hd bch rw pt qt pl ps bb rb fb fr gr sp spp cv vs pkt bd mth nr nt pr
    sm lg wd wt pp dd cc ww btw thx tbc tbd nb rn"""
)
"""Letters that stand for a bed only where they are written large."""


def _initials(words: tuple[str, ...]) -> str | None:
    """ "HB" for Herb bank: written large, it can be little else."""
    if not 2 <= len(words) <= 3 or not all(word.isalpha() for word in words):
        return None
    initials = "".join(word[0] for word in words)
    return None if initials in NO_INITIALS else initials


def _of_name(words: tuple[str, ...]) -> Iterable[str]:
    if len(words) > 1 and words[0] == "the":
        yield " ".join(words[1:])  # "in Swamp", where "The swamp" is declared
    if len(words) == 2 and words[1].isdigit() and 0 < int(words[1][:4]) <= len(NUMBERS):
        yield f"{words[0]} {NUMBERS[int(words[1]) - 1]}"
    joined = "".join(words)
    if len(words) > 1 and len(joined) >= SHORTEST_JOINED and joined.isalpha():
        yield joined
    if len(words) == 2 and words[1].isdigit() and len(words[0]) > 2 and words[0][0] != "f":  # no "F1"
        yield f"{words[0][0]} {words[1]}"  # "B2", "b2"
    for kinds, names in KINDS:
        if not kinds.isdisjoint(words):
            yield from (name.strip() for name in names.split(";"))
