"""In which years a lasting plant that was set out may first give a crop, by the published years from its planting.

Told in years, since no source is finer. Once anything was picked of it, or its last year has passed, nothing is told. Pure.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.facts.published import published
from leafmould.garden.model import Planting
from leafmould.values.wording import counted

FIRST_CROP = "first crop"


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstCrop:
    """The years of a first crop, and why."""

    first: int
    last: int
    basis: str  # "published figures say 2–3 years from planting to the first crop"


def first_crop(planting: Planting, year: int, like: str | None = None) -> FirstCrop | None:
    """The years from `year` on in which a first crop may come; None where nothing can be said.

    Counted from the year of planting; plants that only came here when they were older are sooner. A variety's stock is not
    known, so that all of a crop's figures count.

    Args:
        like: the published crop whose figures serve, where its own has none.
    """
    if not planting.is_open or not planting.planted or len(planting.crops) != 1:
        return None
    if planting.first_picked or any(season.first_picked for season in planting.seasons):
        return None
    spans = [(f.low, f.high) for f in published(like or planting.crops[0]) if f.subject == FIRST_CROP]
    known = [(int(low), int(high)) for low, high in spans if low is not None and high is not None]
    if not known:
        return None
    least, most = min(low for low, _ in known), max(high for _, high in known)
    begun = planting.planted.first.year
    if planting.planted.last.year != begun or year > begun + most:
        return None
    return FirstCrop(first=max(year, begun + least), last=begun + most, basis=_basis(least, most))


def _basis(least: int, most: int) -> str:
    span = counted(most, "year") if least == most else f"{least}–{most} years"
    return f"published figures say {span} from planting to the first crop"
