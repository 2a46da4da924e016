"""Loads the tables of published facts. Every row has a source; `sources` explains each.

Loaded once, on first use. Knows nothing of any garden.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

GrownAs = Literal["annual", "overwintered", "biennial", "perennial"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where a fact was read."""

    id: str
    title: str
    publisher: str
    year: str
    part: str  # table, page, or how far it was read


@dataclass(frozen=True, slots=True, kw_only=True)
class CropFact:
    """A crop by its everyday names."""

    key: str  # "beetroot", "summer-squash"
    name: str  # everyday display name, no comma
    also: tuple[str, ...]  # every other everyday name, singular
    group: str | None  # the kind word it answers to: bean, pepper, corn, squash, cress, currant …
    botanical: str
    family: str
    grown_as: GrownAs
    is_tender: bool
    part_eaten: str
    sort: str  # vegetable, herb, small fruit, fruit tree, green manure, companion flower
    source: str
    seen: bool  # False: from memory, never shown as sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysFact:
    """Days from a start to a first harvest, as one source prints them."""

    crop: str  # crop key
    variety: str | None
    low: int
    high: int
    counts_from: Literal["sowing", "planting out", "unclear"]
    region: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyFact:
    """A botanical family under its everyday name."""

    family: str  # "Amaranthaceae"
    name: str  # "beet family"
    mark: str  # two letters, unique
