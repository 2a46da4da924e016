"""Gardens made by chance whose truth is known: what is sown, when it could first be picked, and what was noted of it.

Imports nothing that reckons expectations. Every crop has days of its own here, off what is published by a factor of the
garden and one of the crop; years differ, plantings differ, pickings are noted some days after they were due, and one date in
ten is written down a few days wrong. Everything follows from the seed.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from random import Random

PUBLISHED = {
    "beetroot": 58, "carrot": 70, "french bean": 56, "pea": 64, "lettuce": 52, "radish": 27, "turnip": 48,
    "summer squash": 52, "cucumber": 58, "spinach": 43,
}  # fmt: skip
"""Days from sowing where gardens lie in the middle, near what services print. From memory."""
FRUITING = frozenset({"french bean", "pea", "summer squash", "cucumber"})
SOWN_IN = {
    "summer squash": (138, 165),
    "cucumber": (140, 165),
    "french bean": (135, 190),
    "pea": (85, 135),
    "spinach": (80, 125),
}
"""First and last day of the year on which each is sown; of others day 95 to 190."""
BEDS = tuple(f"Bed {n}" for n in range(1, 9))


@dataclass(frozen=True, slots=True, kw_only=True)
class Sown:
    """One planting as it truly went, and the days the notes give."""

    crop: str
    bed: str
    sown: date
    came_up: date
    flowered: date | None
    picked: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Nature:
    """How far things differ: standard deviations of the logarithm, and days.

    In one real garden (cold continental, two seasons) a variety differed by 17 days between its years, of some 75: years
    and plantings together about 0.2 (two that differ by 17 of 75 days on average). The other spreads are guesses, from memory of no source.
    """

    garden: float = 0.08
    crop: float = 0.15
    year: float = 0.17
    planting: float = 0.10
    delay: float = 4.0  # mean days from ripe to noted
    wrong: float = 0.1  # share of dates noted wrongly, by up to nine days


def synthetic(seed: int, *, years: int = 6, each_year: int = 2, nature: Nature = Nature()) -> list[Sown]:
    """All plantings of a garden from 2018 on, by the day they were sown."""
    chance = Random(seed)
    whole = chance.gauss(0, nature.garden)
    of_crop = {crop: whole + chance.gauss(0, nature.crop) for crop in PUBLISHED}
    found: list[Sown] = []
    for year in range(2018, 2018 + years):
        weather = chance.gauss(0, nature.year * 0.7071)
        for crop, days in PUBLISHED.items():
            of_year = weather + chance.gauss(0, nature.year * 0.7071)
            for _ in range(each_year):
                first, last = SOWN_IN.get(crop, (95, 190))
                sown = date(year, 1, 1) + timedelta(days=chance.randint(first, last))
                factor = 2.718281828 ** (of_crop[crop] + of_year + chance.gauss(0, nature.planting))
                ripe = days * factor
                up = max(4, round(chance.gauss(10, 3)))
                flower = (
                    round(ripe * min(0.85, max(0.5, chance.gauss(0.68, 0.06)))) if crop in FRUITING else None
                )
                noted = round(ripe + chance.expovariate(1 / nature.delay))
                found.append(
                    Sown(
                        crop=crop,
                        bed=chance.choice(BEDS),
                        sown=sown,
                        came_up=sown + timedelta(days=_noted(up, chance, nature, least=2)),
                        flowered=sown + timedelta(days=flower) if flower else None,
                        picked=sown + timedelta(days=_noted(noted, chance, nature, least=12)),
                    )
                )
    return sorted(found, key=lambda one: (one.sown, one.crop, one.bed))


def _noted(days: int, chance: Random, nature: Nature, *, least: int) -> int:
    wrong = chance.randint(-9, 9) if chance.random() < nature.wrong else 0
    return max(least, days + wrong)
