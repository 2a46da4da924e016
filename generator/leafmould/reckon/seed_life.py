"""How long seed keeps, and what a packet's age and its trials say of it.

Years are those published for the crop, for seed kept cool and dry; a trial of the garden's own beats them for a
year. Of a crop without figures the nearest relative's under the same kind word serve, and are named. Pure.
"""

from __future__ import annotations

from dataclasses import dataclass
from statistics import median_low
from typing import Literal

from leafmould.facts import tables
from leafmould.facts.published import Fact, published
from leafmould.values.wording import counted

Standing = Literal["still good", "sow thicker", "test first", "likely spent", "not known", "used up"]

USUAL_LEAST = 0.6
"""Share that should come up where no rule names one for the crop. Common practice."""
WEAK = 0.25
"""Below this share of the least that should come up, seed is not worth its row. Common practice."""
TRIAL_HOLDS = 1
"""Years a trial speaks for a packet. Common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Life:
    """How long seed of a crop keeps, in years."""

    low: int  # the lower of what is published: until then it should be good
    high: int  # the highest anybody gives
    of: str  # "" or the relative whose figures these are
    sources: tuple[str, ...]

    @property
    def words(self) -> str:
        """ "3–4 years"."""
        return counted(self.low, "year") if self.low == self.high else f"{self.low}–{self.high} years"


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """How many came up of how many."""

    came_up: int
    tried: int
    year: int | None
    event: str | None  # None: written in the table

    @property
    def share(self) -> float:
        """The part that came up, 0 to 1."""
        return self.came_up / self.tried


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """What is to be thought of a packet, and why."""

    standing: Standing
    why: str  # one sentence without its full stop
    is_by_age: bool = False  # it says no more than age and life do


def life_of(crop: str) -> Life | None:
    """How long seed of a crop keeps; None where nobody has published it."""
    if found := _years(crop):
        return _life(found, "")
    fact = tables.crops().get(crop)
    kin = [
        other
        for other in tables.crops().values()
        if fact and fact.group and other.group == fact.group and other.family == fact.family
    ]
    return next((_life(found, other.name) for other in kin if (found := _years(other.key))), None)


def least_share(crop: str) -> float:
    """The share of seed that should come up, 0 to 1: the legal minimum for seed for sale, else a usual one."""
    found = [f.low for f in published(crop) if f.subject == "least that must come up" and f.low]
    return min(found) / 100 if found else USUAL_LEAST


def judge(crop: str, age: int | None, life: Life | None, trial: Trial | None, this_year: int) -> Judged:
    """Whether seed is good, by its latest trial if that is recent, else by its age.

    Args:
        age: years since it was got; None where that was not written.
        trial: the latest.
        this_year: the year of the garden's day.
    """
    since = None if trial is None or trial.year is None else this_year - trial.year
    if trial and since is not None and since <= TRIAL_HOLDS:
        return _by_trial(trial, least_share(crop))
    if age is None:
        return Judged(standing="not known", why="no year is written for it")
    if life is None:
        return Judged(standing="not known", why="nobody in the tables says how long it keeps")
    old = f"{_age(age)}, and seed of {life.of or 'this crop'} keeps {life.words}"
    if age <= life.low:
        return Judged(standing="still good", why=old, is_by_age=True)
    return Judged(standing="test first" if age <= life.high else "likely spent", why=old, is_by_age=True)


def _by_trial(trial: Trial, least: float) -> Judged:
    told = f"{trial.came_up} of {trial.tried} came up in {trial.year}"
    if trial.share >= least:
        return Judged(standing="still good", why=told)
    if trial.share < least * WEAK or not trial.came_up:
        return Judged(standing="likely spent", why=told)
    return Judged(standing="sow thicker", why=f"{told}: sow it {_thicker(least / trial.share)}")


def _thicker(times: float) -> str:
    if times < 1.75:
        return "a little thicker" if times < 1.35 else "half as thick again"
    return "twice as thick" if times < 2.5 else f"{round(times)} times as thick"


def _age(age: int) -> str:
    return "got this year" if age <= 0 else f"{counted(age, 'year')} old"


def _years(crop: str) -> list[Fact]:
    return [f for f in published(crop) if f.subject == "seed keeps" and f.low is not None]


def _life(found: list[Fact], of: str) -> Life:
    return Life(
        low=median_low([int(f.low) for f in found if f.low is not None]),
        high=max(int(f.high) for f in found if f.high is not None),
        of=of,
        sources=tuple(dict.fromkeys(f.source for f in found)),
    )
