"""Names in prose and in lines, and the pages they lead to.

Built once from the garden's vocabulary, the pages that exist in this build, and nothing else: a name
without a page stays plain text. The longest name wins; whole words only. A bed or crop in a name that is
both is the bed after a word such as "in" or "from".
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import compress, count

from leafmould.pages.crop_tables import variety_anchor
from leafmould.pages.ledger import Ledger
from leafmould.values.names import WORD, Kind, Known, Vocabulary, fold, fold_word

BEFORE_PLACES = frozenset(
    {"in", "into", "from", "at", "on", "onto", "to", "off", "under", "along", "the", "bed"}
)


SPLIT = re.compile(f"({WORD.pattern})")
SPLIT_ASCII = re.compile(r"([A-Za-z]+(?:'[A-Za-z]+)*|[0-9]+)")
"""The same words in a text without other letters, found in half the time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """A page a name leads to; a variety of several crops has one for each."""

    kind: Kind
    name: str
    to: str


Piece = tuple[str, str]
"""A stretch of text, and the page it leads to; "" for plain text."""
Meaning = tuple[int, tuple[str, ...]]
"""How many words a name has, and the pages it may lead to."""
NO_NAME: Meaning = (0, ())


class Mentions:
    """Finds the names that have a page in this build."""

    def __init__(self, vocabulary: Vocabulary, ledger: Ledger) -> None:
        self._targets: dict[tuple[str, ...], tuple[Target, ...]] = {}
        self._found: dict[str, tuple[Piece, ...]] = {}
        self._meant: dict[tuple[str, tuple[str, ...]], Meaning] = {}
        longest: dict[str, int] = {}
        for words, targets in _targets(vocabulary, ledger):
            self._targets[words] = targets
            longest[words[0]] = max(longest.get(words[0], 0), len(words))
        self._begins = _Beginnings(longest)

    def pieces(self, text: str) -> tuple[Piece, ...]:
        """A text cut into plain stretches and links, each page led to once."""
        if text not in self._found:
            self._found[text] = self._cut(text)
        return self._found[text]

    def _cut(self, text: str) -> tuple[Piece, ...]:
        split = SPLIT_ASCII if text.isascii() else SPLIT
        parts = split.split(text)  # what stands between words, and the words, by turns
        words, begins = parts[1::2], self._begins
        found: list[Piece] = []
        done: set[str] = set()
        end, free = 0, 0  # the first part after the last link, and the first word after the last name
        for place in compress(count(), map(begins.__getitem__, words)):
            if place < free:
                continue
            size, ways = self._at(words, place)
            if not size:
                continue
            free = place + size
            to = _way(ways, done)
            if not to or to in done:
                continue
            done.add(to)
            first, last = 2 * place + 1, 2 * free
            found += (("".join(parts[end:first]), ""), ("".join(parts[first:last]), to))
            end = last
        found.append(("".join(parts[end:]), ""))
        return tuple([piece for piece in found if piece[0]])

    def _at(self, words: list[str], place: int) -> Meaning:
        """How many words the longest name that begins at a word has, and where it may lead; 0 for none."""
        name = tuple(words[place : place + self._begins[words[place]]])
        key = (words[place - 1] if place else "", name)
        if key not in self._meant:
            self._meant[key] = self._meaning(*key)
        return self._meant[key]

    def _meaning(self, before: str, words: tuple[str, ...]) -> Meaning:
        folded = [fold_word(word) for word in words]
        for size in range(len(folded), 0, -1):
            targets = self._targets.get(tuple(folded[:size]))
            found = _chosen(targets, words[0], fold_word(before)) if targets else None
            if targets and found:
                alike = (
                    [t for t in targets if t.kind is Kind.VARIETY] if found.kind is Kind.VARIETY else [found]
                )
                return size, tuple(dict.fromkeys(t.to for t in alike))
        return NO_NAME


def _way(ways: tuple[str, ...], done: set[str]) -> str:
    """Where a name leads: a variety of several crops to the one crop named before it, if there is one."""
    if len(ways) == 1:
        return ways[0]
    near = [way for way in ways if way.partition("#")[0] in done]
    return near[0] if len(near) == 1 else ""


class _Beginnings(dict[str, int]):
    """Words as written, and how long the longest name is that begins with one; 0 for none. Grows as asked."""

    def __init__(self, longest: dict[str, int]) -> None:
        super().__init__()
        self._longest = longest

    def __missing__(self, word: str) -> int:
        self[word] = size = self._longest.get(fold_word(word), 0)
        return size


def _chosen(targets: tuple[Target, ...], written: str, before: str) -> Target | None:
    """Which of a name's meanings stands here; None where the word is too common to be meant as a name."""
    is_capital = written[:1].isupper()
    if len(targets) == 1 and targets[0].kind is Kind.CROP:
        return targets[0]
    fit = [t for t in targets if _is_meant(t, written, is_capital=is_capital, before=before)]
    if len(fit) > 1:
        wants_place = before in BEFORE_PLACES
        fit.sort(key=lambda t: ((t.kind is Kind.BED) != wants_place, t.kind, t.to))
    return fit[0] if fit else None


def _is_meant(target: Target, written: str, *, is_capital: bool, before: str) -> bool:
    """Short names and varieties need their capital, and a bare number is no name."""
    if target.kind is Kind.CROP:
        return True
    if written.isdecimal() and " " not in target.name:
        return False
    if target.kind is Kind.VARIETY:
        return is_capital or not target.name[:1].isupper()
    if " " in target.name:
        return True
    return is_capital or (before in BEFORE_PLACES and len(written) > 2)


Pair = tuple[tuple[str, ...], tuple[Target, ...]]


def _targets(vocabulary: Vocabulary, ledger: Ledger) -> Iterator[Pair]:
    leads: dict[Kind, Callable[[Known, Ledger], tuple[str, ...]]] = {
        Kind.BED: _to_bed,
        Kind.PART: _to_part,
        Kind.CROP: _to_crop,
        Kind.CROP_GROUP: _to_group,
        Kind.VARIETY: _to_varieties,
    }
    for words, knowns in _by_words(vocabulary, ledger):
        targets = tuple(
            Target(kind=Kind.BED if known.kind is Kind.PART else known.kind, name=known.name, to=to)
            for known in knowns
            if known.kind in leads
            for to in leads[known.kind](known, ledger)
        )
        if targets:
            yield words, targets


def _by_words(vocabulary: Vocabulary, ledger: Ledger) -> Iterable[tuple[tuple[str, ...], tuple[Known, ...]]]:
    """The vocabulary's names, and those of beds and crops that only the notes made."""
    found = dict(vocabulary.by_words)
    garden = ledger.garden
    made = [
        *(Known(kind=Kind.BED, key=bed.key, name=bed.name) for bed in garden.beds.values()),
        *(Known(kind=Kind.CROP, key=crop.key, name=crop.name) for crop in garden.crops.values()),
    ]
    for known in made:
        words = fold(known.name)
        if words and not any(k.kind == known.kind for k in found.get(words, ())):
            found[words] = (*found.get(words, ()), known)
    return sorted(found.items(), key=lambda item: item[0])


def _to_bed(known: Known, ledger: Ledger) -> tuple[str, ...]:
    return _found(ledger.bed_pages.get(known.key))


def _to_part(known: Known, ledger: Ledger) -> tuple[str, ...]:
    return _found(ledger.bed_pages.get(known.of[0]) if len(known.of) == 1 else None)


def _to_crop(known: Known, ledger: Ledger) -> tuple[str, ...]:
    return _found(ledger.to_crop(known.key))


def _to_group(known: Known, ledger: Ledger) -> tuple[str, ...]:
    """The one crop of the kind that the garden grows; a word for several leads nowhere."""
    grown = [crop for crop in (known.key, *known.of) if crop in ledger.crop_pages]
    return _found(ledger.crop_pages[grown[0]] if len(grown) == 1 else None)


def _to_varieties(known: Known, ledger: Ledger) -> tuple[str, ...]:
    return tuple(
        f"{ledger.crop_pages[crop]}#{variety_anchor(known.key)}"
        for crop in known.of
        if known.key in ledger.varieties_by_crop.get(crop, ())
    )


def _found(address: str | None) -> tuple[str, ...]:
    return (address,) if address else ()
