"""Beds named by less than their name: "the tubs", "both beds", "the border"; and beds from one to another.

Asked by `places` and `beds` where no known bed stands. What is read is told in a hint, unless the number
said is the number there is.
"""

from __future__ import annotations

from functools import lru_cache

from leafmould.notes.walk import Walk, add_place
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES
from leafmould.values.names import Kind, Known, Vocabulary
from leafmould.values.problems import Level

COUNTS = {"both": 2, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
UNSAID = frozenset({"bed", "garden", "pot", "plot", "box", "square", "field"})
"""Too many things are called so: one of them alone names no bed."""


@lru_cache(maxsize=8)
def _numbered(vocabulary: Vocabulary) -> dict[str, tuple[Known, ...]]:
    """The beds of one noun and a number: "tub" to Tub 1, Tub 2, Tub 3."""
    found: dict[str, list[tuple[int, Known]]] = {}
    for words, known in vocabulary.pairs:
        if known.kind is Kind.BED and len(words) == 2 and words[1].isdigit():
            found.setdefault(words[0], []).append((int(words[1][:9]), known))
    return {noun: tuple(k for _, k in sorted(beds, key=lambda b: b[0])) for noun, beds in found.items()}


@lru_cache(maxsize=8)
def _by_last_word(vocabulary: Vocabulary) -> dict[str, Known]:
    """The only bed whose name ends in a noun: "bank" to Herb bank."""
    found: dict[str, set[Known]] = {}
    for words, known in vocabulary.pairs:
        if known.kind is Kind.BED and words[-1].isalpha() and words[-1] in nouns.PLACE_NOUNS:
            found.setdefault(words[-1], set()).add(known)
    return {noun: next(iter(beds)) for noun, beds in found.items() if len({b.key for b in beds}) == 1}


def take_short_place(walk: Walk, first: int, role: str) -> bool:
    """Beds named by their noun, from word `first` on."""
    if walk.word(first) in ("all", "both") and walk.word(first + 1) == "bed":
        return _several(walk, first, first + 1, role, 2, True) if walk.word(first) == "both" else False
    if "tree" in walk.typed.words and _tree(walk, first, role):
        return True
    i, number, is_all = first, 0, False
    while i < walk.end and (
        walk.word(i) in ARTICLES or walk.word(i) in COUNTS or walk.word(i) in ("all", "of")
    ):
        number = COUNTS.get(walk.word(i), number)
        is_all = is_all or walk.word(i) in ("all", "both")
        i += 1
    noun = walk.word(i)
    if noun not in nouns.PLACE_NOUNS or walk.typed.names(i)[0] or walk.typed.is_number(i + 1):
        return False
    are_several = walk.typed.plain[walk.typed.ends[i] - 1] in "sS"
    if i == first and not (are_several and noun not in UNSAID):
        return False  # "tubs" says as much as "the tubs", "border" may be anything
    if are_several:
        return _several(walk, first, i, role, number, is_all)
    known = None if noun in UNSAID or number else _by_last_word(walk.typed.vocabulary).get(noun)
    if known is None or _goes_on(walk, i + 1):
        return False
    add_place(walk, walk.named(known, first, i + 1), role, i, i + 1)
    walk.ask(Level.HINT, f'"{walk.typed.written(first, i + 1)}" is read as "{known.name}".', first)
    walk.i = i + 1
    return True


def _tree(walk: Walk, first: int, role: str) -> bool:
    """ "2 trays of pears off the old tree": the only bed that is called after the crop."""
    i = first
    while walk.word(i) in ARTICLES or walk.word(i) in ("old", "big", "little", "young"):
        i += 1
    if walk.word(i) != "tree" or i == first or walk.typed.names(i)[0] or walk.typed.is_number(i + 1):
        return False
    keys = {c.key for item in walk.draft.items for c in item.crops}
    beds = {k.key: k for words, k in walk.typed.vocabulary.pairs if k.kind is Kind.BED and keys & set(words)}
    if len(beds) != 1:
        return False
    known = next(iter(beds.values()))
    add_place(walk, walk.named(known, first, i + 1), role, i, i + 1)
    walk.ask(Level.HINT, f'"{walk.typed.written(first, i + 1)}" is read as "{known.name}".', first)
    walk.i = i + 1
    return True


def has_numbered(walk: Walk, i: int) -> bool:
    """Whether the noun at `i` is that of several numbered beds, which are fewer than all: "all the tubs"."""
    return walk.word(i) != "bed" and len(_numbered(walk.typed.vocabulary).get(walk.word(i), ())) > 1


def beds_called(walk: Walk, i: int) -> tuple[Known, ...]:
    """The beds meant by the noun at `i`, told in a hint: the tubs of "everything but the tubs"."""
    noun = walk.word(i)
    if noun not in nouns.PLACE_NOUNS or walk.typed.names(i)[0] or walk.typed.is_number(i + 1):
        return ()
    is_plural = walk.typed.plain[walk.typed.ends[i] - 1] in "sS"
    one = None if is_plural or noun in UNSAID else _by_last_word(walk.typed.vocabulary).get(noun)
    found = _numbered(walk.typed.vocabulary).get(noun, ()) if is_plural else (one,) if one else ()
    if found:
        walk.ask(Level.HINT, f'"{walk.typed.written(i, i + 1)}" is read as {_listed(found)}.', i)
    return found


def _listed(beds: tuple[Known, ...]) -> str:
    names = [f'"{k.name}"' for k in beds]
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def take_each(walk: Walk, opener: int, role: str) -> bool:
    """ "2 lettuces in each tub", where there are numbered tubs: so many in every one of them."""
    i = opener + 2
    beds = _numbered(walk.typed.vocabulary).get(walk.word(i), ())
    if len(beds) < 2 or walk.typed.names(i)[0] or walk.draft.places or walk.word(i + 1) == "of":
        return False
    walk.i = i + 1
    but = None
    if walk.word(i + 1) in ("but", "except", "bar", "not"):
        size, but = walk.bed_at(i + 2)
        walk.span("but", i + 2, i + 2 + size)
        walk.i += 1 + size if but else 0
    beds = tuple(k for k in beds if but is None or k.key != but.key)
    for known in beds:
        add_place(walk, walk.named(known, i, i + 1), role, i, i + 1)
    walk.draft.is_each = True
    walk.ask(Level.HINT, f'"{walk.typed.written(opener + 1, i + 1)}" is read as {_listed(beds)}.', opener + 1)
    return True


def _goes_on(walk: Walk, i: int) -> bool:
    """Whether the noun is the beginning of a longer name: "the border by the wall"."""
    return (
        walk.word(i) in ("by", "next", "near", "under", "behind", "with", "beside")
        and not walk.typed.breaks[i]
    )


def _several(walk: Walk, first: int, i: int, role: str, number: int, is_all: bool) -> bool:
    beds = _numbered(walk.typed.vocabulary).get(walk.word(i), ())
    if len(beds) < 2 or (number and number != len(beds)) or (walk.word(i) == "bed" and not number):
        return False
    for known in beds:
        add_place(walk, walk.named(known, i, i + 1), role, i, i + 1)
    if not (is_all and number):
        walk.ask(Level.HINT, f'"{walk.typed.written(first, i + 1)}" is read as {_listed(beds)}.', first)
    walk.i = i + 1
    return True


def _is_moved(walk: Walk, i: int) -> bool:
    """ "from Tub 1 to Tub 3": no row of tubs."""
    return walk.verb.name == "moved" or walk.typed.words[max(0, i - 3)] in ("from", "off")


def beds_from_to(walk: Walk, noun: str, first: str) -> list[tuple[Known, int]]:
    """The beds behind the one just read: the 2 and 3 of "tubs 1-3", "tubs 1 to 3", "T1-T3"; with the word behind."""
    i = walk.i
    if not first.isdigit() or i >= walk.end:
        return []
    at = i if walk.typed.gaps[i].strip() == "-" else i + 1
    if at > i and walk.word(i) not in ("to", "through", "till", "until"):
        return []
    if walk.word(at) == noun and (at == i or not _is_moved(walk, i)):
        at += 1
    last = walk.word(at)
    if not last.isdigit():
        return []
    beds = []
    for number in range(int(first[:4]) + 1, int(last[:4]) + 1):
        known = walk.typed.vocabulary.with_public.get((noun, str(number)), ())
        bed = next((k for k in known if k.kind is Kind.BED), None)
        if bed is None:
            return []
        beds.append((bed, at + 1))
    return beds
