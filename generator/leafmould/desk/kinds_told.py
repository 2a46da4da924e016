"""What a place is by its name: a greenhouse, a tub, a tree; and what to tell of all that was taken so.

Used while a garden is made. A name that says nothing of the kind makes a plain bed.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from leafmould.facts.tables import crops
from leafmould.garden.vocabulary import vocabulary_of
from leafmould.notes.bed_settings import WORDS_TO_KIND
from leafmould.notes.settings import Settings
from leafmould.values.names import Kind, Vocabulary, fold

GLASS = "under glass"
BY_NAME = {
    GLASS: (
        "greenhouse", "green house", "glasshouse", "glass house", "polytunnel", "poly tunnel", "tunnel",
        "hoop house", "hoophouse", "cold frame", "coldframe", "conservatory", "propagator",
    ),
    "container": (
        "container", "pot", "tub", "trough", "bag", "grow bag", "growbag", "planter", "bucket", "barrel", "window box",
        "windowbox", "basket", "crate", "sack", "dustbin",
    ),
    "tree": ("tree", "espalier", "cordon"),
}  # fmt: skip
SIDES = "left right north south east west front back middle big small large little one two three"
"""What tells places of one kind apart, behind the word for it."""
IN_A_HOUSE = "bed border bench staging shelf ground soil"
ANIMALS = "hen chicken duck goose geese poultry rabbit bee apiary"
NAMED_IN_WORDS = {"under glass": "under glass", "container": "a container", "tree": "a tree"}


@dataclass(frozen=True, slots=True, kw_only=True)
class ByName:
    """What a name says of its place."""

    kind: str | None = None
    crop: str | None = None  # where the name alone would not tell it
    variety: str | None = None


SAYS_NOTHING = ByName()


def kind_in_words(text: str) -> str | None:
    """The kind somebody wrote in brackets."""
    return WORDS_TO_KIND.get(" ".join(text.casefold().split()))


def kind_by_name(name: str) -> ByName:
    """The kind of place that is called so, if its name says one."""
    words = list(fold(name))
    while len(words) > 1 and (words[-1] in SIDES.split() or len(words[-1]) == 1 or words[-1].isdecimal()):
        words.pop()
    if (
        len(words) > 1
        and words[-1] in IN_A_HOUSE.split()
        and kind_by_name(" ".join(words[:-1])).kind == GLASS
    ):
        return ByName(kind=GLASS)
    for kind, known in BY_NAME.items():
        if any(_ends_with(words, fold(word)) for word in known):
            return ByName(kind=kind)
    return _tree(words)


def is_for_animals(name: str) -> bool:
    """Whether a place is called after the animals kept there."""
    return not set(ANIMALS.split()).isdisjoint(fold(name))


def assumed(places: Iterable[tuple[str, ByName]]) -> tuple[str, ...]:
    """A line for each place with what was taken by its name."""
    lines = []
    for name, known in places:
        if is_for_animals(name):
            lines.append(f"  {name}: a place like a bed. Animals there are noted so: penned hens in {name}")
        elif known.kind:
            of = f", {known.crop} '{known.variety}'" if known.variety else ""
            lines.append(f"  {name}: {NAMED_IN_WORDS[known.kind]}{of}")
    return ("Taken by their names; change it in garden.yaml where it is not so:", *lines) if lines else ()


def unknown_crops(told: Iterable[str]) -> tuple[str, ...]:
    """A sentence for each crop in which no table knows a word."""
    return tuple(
        f'"{crop}" is in no table of crops, so it stands as a crop of its own.'
        for crop in sorted(set(told), key=str.casefold)
        if not _is_known(crop)
    )


def _tree(words: list[str]) -> ByName:
    """A place called by a tree's crop or variety: "Old pear", "Bramley"."""
    for start in range(len(words)):
        for known in _names().exactly(" ".join(words[start:]), Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY):
            if known.kind is Kind.CROP and crops()[known.key].sort == "fruit tree":
                return ByName(kind="tree")
            if known.kind is Kind.VARIETY and not known.is_word and len(known.of) == 1:
                fact = crops().get(known.of[0])
                if fact and fact.sort == "fruit tree":
                    return ByName(kind="tree", crop=fact.name, variety=known.name)
            return SAYS_NOTHING
    return SAYS_NOTHING


def _ends_with(words: list[str], end: tuple[str, ...]) -> bool:
    return tuple(words[-len(end) :]) == end


def _is_known(crop: str) -> bool:
    words = fold(crop)
    return any(
        _names().exactly(" ".join(words[start:end]), Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)
        for start in range(len(words))
        for end in range(start + 1, len(words) + 1)
    )


@cache
def _names() -> Vocabulary:
    return vocabulary_of(Settings())
