"""Words beside a verb that settle what it means; `senses` asks them by name."""

from __future__ import annotations

from collections.abc import Callable

from leafmould.notes.clause import Clause
from leafmould.notes.typed import Typed
from leafmould.values.names import Kind


def is_pest_eggs(typed: Typed, clause: Clause) -> bool:
    """ "found eggs under the kale leaves": no hen laid those."""
    words = typed.words[clause.start : clause.end]
    return "egg" in words and "leaf" in words


def for_something(typed: Typed, clause: Clause) -> bool:
    """ "swapped leeks for pepper plants": what went comes first."""
    words = typed.words[clause.verb_end : clause.end]
    crop = next(
        (i for i in range(clause.verb_end, clause.end) if typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0]), None
    )
    return "for" in words and crop is not None and crop < clause.verb_end + words.index("for")


def followed_by(*words: str) -> Callable[[Typed, Clause], bool]:
    """Whether these words stand in the clause in this order, one behind the other."""

    def test(typed: Typed, clause: Clause) -> bool:
        spots = range(clause.verb_end, clause.end - len(words) + 1)
        return any(tuple(typed.words[i : i + len(words)]) == words for i in spots)

    return test


def given_on(typed: Typed, clause: Clause) -> bool:
    """ "took a box to the food bank"."""
    words = typed.words[clause.verb_end : clause.end]
    return "to" in words and bool(
        {"bank", "neighbour", "neighbor", "office", "school", "work", "church", "fair"} & set(words)
    )


PLANTS = frozenset({"plant", "vine", "tree", "bush", "cane", "row", "stalk"})


def off_plants(typed: Typed, clause: Clause) -> bool:
    """ "got 7 off one vine": picked, where "got 7 off a neighbour" is not."""
    words = typed.words[clause.verb_end : clause.end]
    return "off" in words and not PLANTS.isdisjoint(words[words.index("off") + 1 :][:4])
