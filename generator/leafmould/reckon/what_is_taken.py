"""What is taken from each published source, over all the tables: for the page that says where figures come from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache

from leafmould.facts import tables
from leafmould.facts.cautions import every_caution
from leafmould.facts.manure import sources_of_clear
from leafmould.facts.published import published, rotation_facts
from leafmould.reckon.known_words import COMES_UP, LABELS

DAYS, OF_VARIETIES = "days to the first harvest", "days to the first harvest, by variety"
NAMES = "crops, their names and families"
ROTATION, CAUTIONS, MANURE = "years between crops of a family", "cautions", "days to wait after raw manure"


@cache
def what_is_taken() -> Mapping[str, tuple[str, ...]]:
    """By source id: what its figures are about, each once, in the order of the tables."""
    found: dict[str, dict[str, None]] = {}
    for source, about in _everything():
        found.setdefault(source, {})[about] = None
    return {source: tuple(abouts) for source, abouts in found.items()}


def _everything() -> Iterator[tuple[str, str]]:
    for key, crop in tables.crops().items():
        if crop.seen:
            yield crop.source, NAMES
        yield from ((fact.source, DAYS) for fact in tables.days_facts(key))
        yield from ((fact.source, OF_VARIETIES) for fact in tables.days_of_varieties(key))
        yield from ((fact.source, _label(fact.subject)) for fact in published(key))
    yield from ((fact.source, ROTATION) for fact in rotation_facts())
    yield from ((source.id, CAUTIONS) for caution in every_caution() for source in caution.sources)
    yield from ((source, MANURE) for source in sources_of_clear())


def _label(subject: str) -> str:
    label = LABELS[COMES_UP if subject.startswith(COMES_UP) else subject]
    return label[:1].lower() + label[1:]
