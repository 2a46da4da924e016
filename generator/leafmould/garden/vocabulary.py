"""The names this garden knows, from its settings and the published crop table.

Built once before any note is read. Varieties learned from notes are added later by whoever reads them.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache

from leafmould.facts.tables import CropFact, cultivars
from leafmould.facts.tables import crops as published_crops
from leafmould.notes.bed_aliases import other_ways
from leafmould.notes.settings import BedSetting, CropSetting, Settings
from leafmould.values.names import Kind, Known, Vocabulary, fold, slug
from leafmould.values.quantities import Amount

Pair = tuple[str, Known]


def vocabulary_of(settings: Settings) -> Vocabulary:
    """The names of a garden and of the published crops: the very same as long as no name changes.

    A note put down is read with them twice, and each reader of lines keeps what it made of them.
    """
    return _vocabulary(settings.beds, settings.crops, settings.measures, settings.words)


@lru_cache(maxsize=2)
def _vocabulary(
    beds: tuple[BedSetting, ...],
    crops: tuple[CropSetting, ...],
    measures: tuple[tuple[str, Amount], ...],
    words: tuple[tuple[str, str], ...],
) -> Vocabulary:
    named = Settings(beds=beds, crops=crops, measures=measures, words=words)
    return build_vocabulary(named, published_crops())


def build_vocabulary(settings: Settings, crops: Mapping[str, CropFact]) -> Vocabulary:
    """Every bed, part, crop, crop group, variety, measure and own word, as they may be written."""
    keys = own_crop_keys(settings, crops)
    return Vocabulary(
        [
            *_bed_names(settings.beds),
            *other_ways(_bed_names(settings.beds)),
            *_part_names(settings.beds),
            *_crop_names(settings, crops, keys),
            *_group_names(settings, crops, keys),
            *_variety_names(settings, keys),
            *_public_varieties(),
            *_wide_names(settings, crops),
            *((name, _measure(name, amount.grams)) for name, amount in settings.measures),
            *((word, Known(kind=Kind.VERB, key=verb, name=word)) for word, verb in settings.words),
        ]
    )


def own_crop_keys(settings: Settings, crops: Mapping[str, CropFact]) -> dict[str, str]:
    """The key of each crop in crops.yaml, by its name there: the published crop's where one is meant."""
    published = names_of_crops(crops)
    return {
        own.name: next(
            (published[words] for words in map(fold, (own.name, *own.also)) if words in published),
            slug(own.name),
        )
        for own in settings.crops
    }


def names_of_crops(crops: Mapping[str, CropFact]) -> dict[tuple[str, ...], str]:
    """Crop keys by the folded words of every everyday name; a main name beats another's by-name."""
    names: dict[tuple[str, ...], str] = {}
    for fact in sorted(crops.values(), key=lambda f: f.key):
        names.setdefault(fold(fact.name), fact.key)
    for fact in sorted(crops.values(), key=lambda f: f.key):
        for name in fact.also:
            names.setdefault(fold(name), fact.key)
    return names


def groups_of(crops: Mapping[str, CropFact]) -> dict[str, tuple[str, ...]]:
    """The crops each kind word stands for: "bean" to every bean."""
    members: dict[str, list[str]] = defaultdict(list)
    for fact in sorted(crops.values(), key=lambda f: f.key):
        if fact.group:
            members[fact.group].append(fact.key)
    return {group: tuple(keys) for group, keys in members.items()}


WIDE_GROUPS: Mapping[str, tuple[str, ...]] = {
    "Brassicaceae": ("brassica", "cabbage family", "crucifer"),
    "Amaryllidaceae": ("allium", "onion family"),
    "Fabaceae": ("legume", "pulse"),
    "Cucurbitaceae": ("cucurbit", "squash family", "gourd family"),
    "Solanaceae": ("nightshade", "solanum", "potato family"),
    "Apiaceae": ("umbellifer", "carrot family"),
    "herb": ("herb",),
    "small fruit": ("soft fruit", "berry", "bush fruit", "cane fruit"),
    "fruit tree": ("top fruit", "fruit tree", "tree fruit"),
    "root": ("root veg", "root vegetable", "root crop"),
    "leaf": ("greens", "leafy green", "leafy veg", "salad plant", "salad crop"),
}
"""Words for many crops: a family, a sort, or the part that is eaten."""


def wide_groups(crops: Mapping[str, CropFact]) -> dict[str, tuple[str, ...]]:
    """The crops each wide word stands for: "brassica" to every vegetable of that family."""
    members: dict[str, list[str]] = defaultdict(list)
    for fact in sorted(crops.values(), key=lambda f: f.key):
        part = (
            fact.part_eaten.split()[0].rstrip("s;,") if fact.part_eaten and fact.sort == "vegetable" else ""
        )
        families = fact.family if fact.sort == "vegetable" else None
        for trait in {families, fact.sort, part} & WIDE_GROUPS.keys():
            for word in WIDE_GROUPS[trait or ""]:
                members[word].append(fact.key)
    return {word: tuple(keys) for word, keys in members.items()}


def _wide_names(settings: Settings, crops: Mapping[str, CropFact]) -> Iterator[Pair]:
    """Wide words, unless the garden or the crop table has a meaning of its own for them."""
    own = {fold(name) for crop in settings.crops for name in (crop.name, *crop.also)} | names_of_crops(
        crops
    ).keys()
    for word, members in wide_groups(crops).items():
        if fold(word) not in own:
            yield (
                word,
                Known(
                    kind=Kind.CROP_GROUP,
                    key=slug(word),
                    name=word,
                    of=members,
                    is_public=True,
                    is_word=word == "greens",
                ),
            )


def _public_varieties() -> Iterator[Pair]:
    """Varieties everybody knows, for notes that leave the crop out."""
    for cultivar in cultivars():
        yield (
            cultivar.name,
            Known(
                kind=Kind.VARIETY,
                key=cultivar.name,
                name=cultivar.name,
                of=cultivar.crops,
                is_public=True,
                is_word=cultivar.is_word,
            ),
        )


def _bed_names(beds: Iterable[BedSetting]) -> Iterator[Pair]:
    """Names of beds, and of the beds they came from, which go on working."""
    declared = {fold(name) for bed in beds for name in (bed.name, *bed.also)}
    for bed in beds:
        for name in (bed.name, *bed.also):
            yield name, Known(kind=Kind.BED, key=slug(bed.name), name=bed.name)
        for name in bed.was:
            if fold(name) not in declared:
                yield name, Known(kind=Kind.BED, key=slug(name), name=name)


def _part_names(beds: Iterable[BedSetting]) -> Iterator[Pair]:
    beds_by_part: dict[str, list[str]] = defaultdict(list)
    for bed in beds:
        for part in bed.parts:
            beds_by_part[part].append(slug(bed.name))
    for part, keys in beds_by_part.items():
        yield part, Known(kind=Kind.PART, key=part, name=part, of=tuple(sorted(set(keys))))


def _crop_names(settings: Settings, crops: Mapping[str, CropFact], keys: Mapping[str, str]) -> Iterator[Pair]:
    """Everyday names of crops; each keeps the word the gardener used."""
    own = {fold(name) for crop in settings.crops for name in (crop.name, *crop.also)}
    groups = {fold(group) for group in groups_of(crops)}
    for words, key in names_of_crops(crops).items():
        if words in own or words in groups:
            continue
        name = next(n for n in (crops[key].name, *crops[key].also) if fold(n) == words)
        yield name, Known(kind=Kind.CROP, key=key, name=name)
    for crop in settings.crops:
        for name in (crop.name, *crop.also):
            yield name, Known(kind=Kind.CROP, key=keys[crop.name], name=crop.name)


def _group_names(
    settings: Settings, crops: Mapping[str, CropFact], keys: Mapping[str, str]
) -> Iterator[Pair]:
    """Kind words, unless crops.yaml gives the word a meaning of its own."""
    own = {fold(name) for crop in settings.crops for name in (crop.name, *crop.also)}
    for group, members in groups_of(crops).items():
        if fold(group) not in own:
            yield group, Known(kind=Kind.CROP_GROUP, key=slug(group), name=group, of=members)


def _variety_names(settings: Settings, keys: Mapping[str, str]) -> Iterator[Pair]:
    """Varieties of crops.yaml, and those of trees and rows with a crop of their own."""
    crops_by_variety: dict[str, set[str]] = defaultdict(set)
    for crop in settings.crops:
        for variety in (*crop.varieties, *(name for name, _ in crop.days_by_variety)):
            crops_by_variety[variety].add(keys[crop.name])
    for bed in settings.beds:
        if bed.variety:
            crops_by_variety[bed.variety].update(_bed_crop(bed, settings.crops, keys))
    for variety, of in crops_by_variety.items():
        yield variety, Known(kind=Kind.VARIETY, key=variety, name=variety, of=tuple(sorted(of)))


def _bed_crop(bed: BedSetting, own: Iterable[CropSetting], keys: Mapping[str, str]) -> tuple[str, ...]:
    """The key of a bed's own crop as far as its setting says it plainly."""
    if not bed.crop:
        return ()
    words = fold(bed.crop)
    named = (keys[c.name] for c in own if words in {fold(n) for n in (c.name, *c.also)})
    return (next(named, "-".join(words)),)


def _measure(name: str, grams: float | None) -> Known:
    return Known(kind=Kind.MEASURE, key=name, name=name, of=() if grams is None else (repr(grams),))
