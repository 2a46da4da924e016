"""What is published of a crop beside its days: sowing, warmth, spacing, seed, harvest, store and soil.

One row a fact, as its source prints it (Fahrenheit, inches and pounds turned into metric, to a tenth).
Sources that disagree stand apart here; whoever shows them shows the range. Read once, on first use.

Left out of the package on purpose, so that the tests can check against them: germination, TAMU-EK15 · days to
come up, OSU-HARR · hardiness, UIUC-VEGGUIDE · weeks indoors, PSU-INDOOR · seed life, OSU-SEED · spacing, CSU-720
(but for leeks, which nobody else gives) and TSU-ANR3 · seed for a row, MU-G6201-OLD, UGA-C963 and TSU-ANR3 · length of harvest, TSU-ANR3 · store, UCD-STORAGE-2001 ·
years to a first crop, MO-CAREER-SF · heat to a first harvest, OSU-DD and PEA-HU-2024. Left out because a gardener could not go by
it: the cold that FAO-ECOCROP says a plant at rest dies of, far too mild for most fruit.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from leafmould.facts.tables import DATA

SUBJECTS = (
    "least soil warmth",
    "best soil warmth",
    "most soil warmth",
    *(f"comes up at {warmth} °C" for warmth in range(0, 45, 5)),
    "depth",
    "apart in the row",
    "between rows",
    "seed for 10 m",
    "seeds in a gram",
    "seed keeps",
    "least that must come up",
    "raised indoors",
    "put out from the last frost",
    "frost class",
    "stands down to",
    "killed in growth at",
    "killed unprotected at",
    "grows best",
    "grows between",
    "warmth counts above",
    "heat to the first harvest",
    "from flower to picking",
    "from pollination to picking",
    "ready at",
    "picked every",
    "picked for",
    "first crop",
    "good crop",
    "keeps",
    "kept at",
    "kept in air of",
    "soil pH, best",
    "soil pH, grows at",
)
"""Everything a fact may be about, in the order it is read in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One figure of one source."""

    crop: str  # crop key
    subject: str  # one of SUBJECTS
    low: (
        float | None
    )  # None: the source gives words alone; "put out": days after the last frost, before it negative
    high: float | None  # the same as `low` where one figure is given
    unit: str  # "°C", "degree days", "cm", "g", "days", "weeks", "months", "years", "%", "% humidity", "seeds", "pH", ""
    note: str  # for which kind, and how it was measured
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RotationFact:
    """How long one source says to wait before the same family, in general or because of a disease."""

    is_general: bool
    families: str  # botanical, as listed; "all families"
    crops: str  # as printed
    disease: str  # "": in general
    low: float | None  # years; None: the source gives words alone
    high: float | None  # None: at least `low`
    printed: str  # "seven years as a minimum"
    is_survival: bool  # how long it lives in the soil, rather than what is advised
    note: str
    source: str

    def concerns(self, family: str) -> bool:
        """Whether it is said of this family by name."""
        return family in self.families


def published(crop_key: str) -> tuple[Fact, ...]:
    """The published figures of a crop in the order of SUBJECTS, then of their sources; empty where none are."""
    return _by_crop().get(crop_key, ())


@cache
def rotation_facts() -> tuple[RotationFact, ...]:
    """Every interval between crops of a family, in the order of the table."""
    return tuple(_rotation(*row) for row in _rows("rotation.csv"))


@cache
def _by_crop() -> Mapping[str, tuple[Fact, ...]]:
    order = {subject: number for number, subject in enumerate(SUBJECTS)}
    by_crop: dict[str, list[tuple[int, str, str, int, Fact]]] = {}
    for path in sorted((DATA / "published").glob("*.csv")):
        for number, row in enumerate(_rows(f"published/{path.name}")):
            fact = _fact(*row)
            place = (order[fact.subject], fact.source, fact.note, number)
            by_crop.setdefault(fact.crop, []).append((*place, fact))
    return MappingProxyType({crop: tuple(f for *_, f in sorted(found)) for crop, found in by_crop.items()})


def _rows(table: str) -> Iterator[list[str]]:
    """The rows below the names of the columns."""
    rows = csv.reader((DATA / table).read_text(encoding="utf-8").splitlines())
    next(rows)
    return rows


def _fact(crop: str, subject: str, low: str, high: str, unit: str, note: str, source: str) -> Fact:
    return Fact(
        crop=crop,
        subject=subject,
        low=_number(low),
        high=_number(high),
        unit=unit,
        note=note,
        source=source,
    )


def _rotation(
    scope: str,
    families: str,
    crops: str,
    disease: str,
    low: str,
    high: str,
    printed: str,
    basis: str,
    note: str,
    source: str,
) -> RotationFact:
    return RotationFact(
        is_general=scope == "general",
        families=families,
        crops=crops,
        disease=disease,
        low=_number(low),
        high=_number(high),
        printed=printed,
        is_survival=basis == "survival in soil",
        note=note,
        source=source,
    )


def _number(text: str) -> float | None:
    return float(text) if text else None
