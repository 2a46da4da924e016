"""The crops of this garden: own crops, published ones, kind words, and names in no table.

Resolves a crop as a note names it to its key, and gives every key its facts and the word the gardener
uses most.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import TypeVar, get_args

from leafmould.facts.tables import CropFact, GrownAs, families
from leafmould.garden.model import Crop
from leafmould.garden.vocabulary import groups_of, names_of_crops, own_crop_keys, wide_groups
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.settings import CropSetting, Settings
from leafmould.values.names import fold, slug

T = TypeVar("T")
GROWN_AS: tuple[GrownAs, ...] = get_args(GrownAs)


LIFTED = ("bulb", "tuber")
"""Parts eaten that come out of the ground whole, so that picking ends the plant."""


class Kinds:
    """All crops a note can name."""

    def __init__(self, settings: Settings, facts: Mapping[str, CropFact]) -> None:
        self._facts = facts
        self._own: dict[str, CropSetting] = {}
        keys = own_crop_keys(settings, facts)
        for own in settings.crops:
            self._own.setdefault(keys[own.name], own)
        self._kind_words = {slug(group): of for group, of in groups_of(facts).items()}
        self._groups_by_crop = {crop: group for group, of in self._kind_words.items() for crop in of}
        wide = {slug(word): of for word, of in wide_groups(facts).items()}
        self.members = {key: of for key, of in wide.items() if key not in facts} | self._kind_words
        self._narrower: dict[str, tuple[str, ...]] = {}
        for fact in sorted(facts.values(), key=lambda f: f.key):
            if fact.broader:
                self._narrower[fact.broader] = (*self._narrower.get(fact.broader, ()), fact.key)
        self._published = names_of_crops(facts)
        self._keys_by_name = self._published | {
            fold(name): keys[own.name] for own in settings.crops for name in (own.name, *own.also)
        }
        self._meanings: dict[str, tuple[str, ...]] = {}
        self._crops: dict[str, Crop] = {}
        self._words: dict[str, Counter[str]] = {}

    def key_of(self, named: Named) -> str | None:
        """The crop key, the group's for a kind word; None where the gardener says it is unknown."""
        if named.sureness is Sureness.UNKNOWN:
            return None
        if named.key in self._facts or named.key in self._own or named.key in self.members:
            return named.key
        return self.key_of_text(named.key)

    def key_of_text(self, name: str) -> str:
        """The crop key for a name that stands in a table or setting."""
        words = fold(name)
        known = self._keys_by_name.get(words)
        if known is None and slug(" ".join(words)) in self.members:
            return slug(" ".join(words))
        return known or slug(" ".join(words) or name)

    def in_name(self, name: str) -> tuple[str, str] | None:
        """Key and word of the first crop named inside a bed's name: pear in "Old pear"."""
        written = name.split()
        for start in range(len(written)):
            for end in range(len(written), start, -1):
                words = fold(" ".join(written[start:end]))
                key = self._keys_by_name.get(words) or slug(" ".join(words) or "?")
                if words in self._keys_by_name or key in self._kind_words:
                    return key, " ".join(words)
        return None

    def hear(self, named: Named) -> None:
        """Count a word the gardener used for a crop."""
        key = self.key_of(named)
        if key is not None:
            self._words.setdefault(key, Counter())[named.name] += 1

    def may_mean(self, key: str) -> tuple[str, ...]:
        """The keys under which a crop so called may stand: itself, its kinds, or a wider word for it."""
        if key not in self._meanings:
            self._meanings[key] = self._may_mean(key)
        return self._meanings[key]

    def _may_mean(self, key: str) -> tuple[str, ...]:
        if key in self.members:
            return (key, *self.members[key])
        fact = self._facts.get(key)
        wider = (self._groups_by_crop.get(key), fact.broader if fact else None)
        names = (key, *self._narrower.get(key, ()), *(name for name in wider if name))
        return tuple(dict.fromkeys(names))

    def crop(self, key: str) -> Crop:
        """The facts of one crop, under its table name."""
        if key not in self._crops:
            self._crops[key] = self._make(key)
        return self._crops[key]

    def named(self, key: str) -> Crop:
        """The crop under the gardener's own word: crops.yaml first, else the one used most."""
        crop = self.crop(key)
        if key in self._own or key not in self._words:
            return crop
        words = self._words[key]
        name = min(words, key=lambda word: (-words[word], word))
        return replace(crop, name=_without_comma(name))

    def _make(self, key: str) -> Crop:
        if key in self.members and key not in self._own and key not in self._facts:
            return self._group(key)
        own = self._own.get(key)
        fact = self._facts.get(key) or (self._alike(own) if own else None)
        base = _published(key, fact) if fact else _unheard_of(key)
        if fact and fact.key != key:
            base = replace(base, like=fact.key)
        return self._with_own(base, own) if own else base

    def _alike(self, own: CropSetting) -> CropFact | None:
        return self._facts.get(self._published.get(fold(own.like or ""), ""))

    def _with_own(self, crop: Crop, own: CropSetting) -> Crop:
        grown = next((way for way in GROWN_AS if way == own.grown), crop.grown_as)
        return replace(
            crop,
            name=_without_comma(own.name),
            family=self._family(own.family) if own.family else crop.family,
            grown_as=grown,
            is_tender=crop.is_tender if own.is_tender is None else own.is_tender,
            is_known=True,
        )

    def _family(self, name: str) -> str:
        """The botanical family for its name, its everyday name or a crop of it, in any case."""
        known = families().values()
        names = {fold(n): fact.family for fact in known for n in (fact.name, fact.family)}
        words = fold(name)
        member = self._facts.get(self._published.get(words, ""))
        return (
            names.get(words) or names.get((*words, "family")) or (member.family if member else None) or name
        )

    def _group(self, key: str) -> Crop:
        of = [self._facts[crop] for crop in self.members[key]]
        return Crop(
            key=key,
            name=(of[0].group or key) if key in self._kind_words else key.replace("-", " "),
            family=_shared(fact.family for fact in of),
            grown_as=_shared(fact.grown_as for fact in of) or "annual",
            is_tender=all(fact.is_tender for fact in of),
            group=key,
        )


def _published(key: str, fact: CropFact) -> Crop:
    return Crop(
        key=key,
        name=_without_comma(fact.name),
        family=fact.family,
        grown_as=fact.grown_as,
        is_tender=fact.is_tender,
        is_lifted=fact.part_eaten.startswith(LIFTED),
    )


def _unheard_of(key: str) -> Crop:
    """A crop no table knows: grown as an annual, hardy, family not known."""
    name = key.replace("-", " ")
    return Crop(key=key, name=name, family=None, grown_as="annual", is_tender=False, is_known=False)


def _shared(values: Iterable[T]) -> T | None:
    """The value all share, if they do."""
    found = set(values)
    return found.pop() if len(found) == 1 else None


def _without_comma(name: str) -> str:
    return name.replace(",", "")
