"""Loads the tables of published facts. Every row has a source; `sources` explains each.

Each table is read once, on first use, and kept. Knows nothing of any garden. Rows that are common
practice and not published anywhere we looked say so and are never shown as sourced.

Left out of the package on purpose, so that the tests can check against them: days, OKSU-6004 (Oklahoma
Garden Planning Guide) · days by variety, MSSTATE-VEG and ISU-RADISH (Mississippi State and Iowa State
University Extension) · families, the lists named in tests/test_facts.py.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Literal

from leafmould.values.names import fold

DATA = Path(__file__).parent / "data"

GrownAs = Literal["annual", "overwintered", "biennial", "perennial"]
StartsAs = Literal["seed", "plants", "sets"]
CountsFrom = Literal["sowing", "planting out", "unclear"]


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
    family: str | None  # None: a mixture, or no plant at all (mushrooms)
    grown_as: GrownAs
    is_tender: bool
    part_eaten: str
    sort: str  # vegetable, herb, small fruit, fruit tree, green manure, companion flower
    source: str
    seen: bool  # False: from memory, never shown as sourced
    starts_as: StartsAs = (
        "seed"  # seed: sown in place · plants: raised and set out · sets: bulbs, tubers, crowns
    )
    broader: str | None = (
        None  # crop whose plain name gardeners use for this one too: "cabbage" for spring cabbage
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysFact:
    """Days from a start to a first harvest, as one source prints them."""

    crop: str  # crop key
    variety: str | None
    low: int
    high: int
    counts_from: CountsFrom
    region: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualDays:
    """A wide range of days for a start without published ones, as in autumn: common practice, no source."""

    crop: str
    low: int
    high: int
    counts_from: Literal["sowing", "planting out"]
    season: Literal["", "spring", "autumn", "before winter"]  # when it was started; "": whenever


@dataclass(frozen=True, slots=True, kw_only=True)
class Cultivar:
    """A name under which seed and plants are widely sold, with the crops that have it.

    Known from memory: it tells which crop a note means and is never shown as a fact.
    """

    name: str
    crops: tuple[str, ...]
    is_word: bool  # also an ordinary word, or what people are called


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyFact:
    """A botanical family under its everyday name."""

    family: str  # "Amaranthaceae"
    name: str  # "beet family"
    mark: str  # two letters, unique


@cache
def crops() -> Mapping[str, CropFact]:
    """Every crop by key, in the order of the keys."""
    return MappingProxyType({row["key"]: _crop(row) for row in _rows("crops.csv")})


@cache
def cultivars() -> tuple[Cultivar, ...]:
    """Widely known varieties, and those of the published days, each with all its crops."""
    listed = {
        row["variety"]: (row["crops"].split(";"), row["is_word"] == "yes") for row in _rows("cultivars.csv")
    }
    names = {fold(name): name for name in listed}
    crops_by_name: dict[str, set[str]] = {name: set(of) for name, (of, _) in listed.items()}
    for row in _rows("variety_days.csv"):
        name = names.setdefault(fold(row["variety"]), row["variety"])
        crops_by_name.setdefault(name, set()).add(row["crop"])
    return tuple(
        Cultivar(name=name, crops=tuple(sorted(of)), is_word=name not in listed or listed[name][1])
        for name, of in sorted(crops_by_name.items())
    )


@cache
def families() -> Mapping[str, FamilyFact]:
    """Every family by its botanical name."""
    facts = (FamilyFact(family=r["family"], name=r["name"], mark=r["mark"]) for r in _rows("families.csv"))
    return MappingProxyType({fact.family: fact for fact in facts})


@cache
def sources() -> Mapping[str, Source]:
    """Every source by its id."""
    facts = (
        Source(id=r["id"], title=r["title"], publisher=r["publisher"], year=r["year"], part=r["part"])
        for r in _rows("sources.csv")
    )
    return MappingProxyType({fact.id: fact for fact in facts})


def days_facts(crop_key: str) -> tuple[DaysFact, ...]:
    """Days to the first harvest of a crop, a row a source; empty where nothing is published."""
    return _days_by_crop().get(crop_key, ())


def variety_days(crop_key: str, variety: str) -> tuple[DaysFact, ...]:
    """Days to the first harvest of one variety; case, accents and plurals of its name do not matter."""
    return _days_by_variety().get((crop_key, fold(variety)), ())


def days_of_varieties(crop_key: str) -> tuple[DaysFact, ...]:
    """Days of every variety of a crop in the tables."""
    return _variety_days_by_crop().get(crop_key, ())


def usual_days(crop_key: str) -> tuple[UsualDays, ...]:
    """The wide ranges of common practice, for crops whose days nobody we read has published."""
    return _usual_days().get(crop_key, ())


@cache
def crop_by_name(name: str) -> CropFact | None:
    """The crop that has this everyday name; None if none has."""
    return _crops_by_name().get(fold(name))


@cache
def _crops_by_name() -> Mapping[tuple[str, ...], CropFact]:
    return {fold(name): fact for fact in crops().values() for name in (fact.name, *fact.also)}


def _rows(table: str) -> Iterator[dict[str, str]]:
    text = (DATA / table).read_text(encoding="utf-8")
    return csv.DictReader(text.splitlines())


def _crop(row: dict[str, str]) -> CropFact:
    return CropFact(
        key=row["key"],
        name=row["name"],
        also=tuple(row["also"].split(";")) if row["also"] else (),
        group=row["group"] or None,
        botanical=row["botanical"],
        family=row["family"] or None,
        grown_as=row["grown_as"],  # type: ignore[arg-type]  # the tests read every row
        is_tender=row["is_tender"] == "yes",
        part_eaten=row["part_eaten"],
        sort=row["sort"],
        source=row["source"],
        seen=row["seen"] == "yes",
        starts_as=row["starts_as"],  # type: ignore[arg-type]
        broader=row["broader"] or None,
    )


@cache
def _days_by_crop() -> Mapping[str, tuple[DaysFact, ...]]:
    by_crop: dict[str, list[DaysFact]] = {}
    for row in _rows("days.csv"):
        by_crop.setdefault(row["crop"], []).append(_days(row, None))
    return {key: tuple(facts) for key, facts in by_crop.items()}


@cache
def _days_by_variety() -> Mapping[tuple[str, tuple[str, ...]], tuple[DaysFact, ...]]:
    by_variety: dict[tuple[str, tuple[str, ...]], list[DaysFact]] = {}
    for facts in _variety_days_by_crop().values():
        for fact in facts:
            by_variety.setdefault((fact.crop, fold(fact.variety or "")), []).append(fact)
    return {key: tuple(facts) for key, facts in by_variety.items()}


@cache
def _variety_days_by_crop() -> Mapping[str, tuple[DaysFact, ...]]:
    by_crop: dict[str, list[DaysFact]] = {}
    for row in _rows("variety_days.csv"):
        by_crop.setdefault(row["crop"], []).append(_days(row, row["variety"]))
    return {key: tuple(facts) for key, facts in by_crop.items()}


def _days(row: dict[str, str], variety: str | None) -> DaysFact:
    return DaysFact(
        crop=row["crop"],
        variety=variety,
        low=int(row["low"]),
        high=int(row["high"]),
        counts_from=row["counts_from"],  # type: ignore[arg-type]
        region=row["region"],
        source=row["source"],
    )


@cache
def _usual_days() -> Mapping[str, tuple[UsualDays, ...]]:
    by_crop: dict[str, list[UsualDays]] = {}
    for row in _rows("usual_days.csv"):
        fact = UsualDays(
            crop=row["crop"],
            low=int(row["low"]),
            high=int(row["high"]),
            counts_from=row["counts_from"],  # type: ignore[arg-type]
            season=row["season"],  # type: ignore[arg-type]
        )
        by_crop.setdefault(fact.crop, []).append(fact)
    return {key: tuple(facts) for key, facts in by_crop.items()}
