"""When a family last stood in a bed, and how much of the time between is on record.

Runs on an assembled garden, so names are resolved; follows a bed back through renaming, splitting and
joining. Says only what the record shows: years without a record are told as such, never as years without
the family. What may follow what is left to a later step.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from leafmould.facts.tables import families
from leafmould.garden.model import Garden, Planting
from leafmould.garden.queries import lineage, years_in_bed
from leafmould.values.wording import counted

YEARS_BACK = 4
"""Years looked back on: the four-year plan. Source: Royal Horticultural Society, crop rotation, 2025,
three- or four-year plan; West Virginia University Extension, 2025, two to three years."""

Answer = Literal["standing", "stood", "perhaps", "not known", "clear"]


@dataclass(frozen=True, slots=True, kw_only=True)
class YearsSince:
    """What the record says of one family in one bed before a year."""

    bed: str
    family: str  # botanical
    year: int  # the year asked about
    answer: Answer
    last_year: int | None  # the last year the family is known to have stood there, this one included
    years_ago: int | None
    looked_back: int  # how many years before `year` were looked at
    unrecorded: tuple[int, ...]  # of those, and since the family last stood there, years without a record
    doubtful: tuple[int, ...]  # years in which something of a family not known stood there
    plantings: tuple[str, ...]  # ids of the family's plantings in `last_year`

    @property
    def words(self) -> str:
        """The answer as one sentence."""
        return _words(self)


class Occupancy:
    """Which plantings stood in which bed in which year; made once for many questions to one garden.

    Args:
        spares_perennials: what stays for years makes its year one with a record, but counts for no family.
    """

    def __init__(self, garden: Garden, *, spares_perennials: bool = False) -> None:
        self.garden = garden
        self.spares_perennials = spares_perennials
        self.plantings_by_year: dict[tuple[str, int], list[Planting]] = {}
        self.years_by_bed: dict[str, set[int]] = {}
        for planting in garden.plantings:
            for year in years_in_bed(planting, garden):
                for bed in dict.fromkeys((planting.bed, *planting.beds, planting.bed_now)):
                    self.plantings_by_year.setdefault((bed, year), []).append(planting)
                    self.years_by_bed.setdefault(bed, set()).add(year)

    @cached_property
    def families_by_crop(self) -> dict[str, str | None]:
        """The botanical family of each crop of the garden."""
        return {key: crop.family for key, crop in self.garden.crops.items()}

    def families(self, planting: Planting) -> frozenset[str | None]:
        """The families of a planting; None stands for one that is not known."""
        if self.spares_perennials and planting.is_perennial:
            return frozenset()
        if not planting.crops:
            return frozenset({None})
        return frozenset(self.families_by_crop.get(crop) for crop in planting.crops)


def years_since(
    garden: Garden,
    bed: str,
    family: str,
    year: int,
    *,
    within: Occupancy | None = None,
    part: str | None = None,
) -> YearsSince:
    """When a family last stood in a bed, as seen from a year (the one to be planted, mostly).

    Args:
        within: the garden's occupancy, if it was made before for other questions.
        part: ask of one part of the bed; what names no part stood in all of them.
    """
    standing = within or Occupancy(garden)
    ground = _Ground(standing=standing, bed=bed, beds=lineage(garden, bed), part=part)
    found = _last_stood(ground, family, year)
    back = range(year - 1, year - 1 - YEARS_BACK, -1)
    since = [y for y in back if found is None or y > found]
    doubtful = tuple(y for y in (year, *since) if _is_doubtful(ground, y))
    unrecorded = tuple(y for y in since if not _is_recorded(ground, bed, y))
    return YearsSince(
        bed=bed,
        family=family,
        year=year,
        answer=_answer(found, year, doubtful, unrecorded),
        last_year=found,
        years_ago=None if found is None else year - found,
        looked_back=YEARS_BACK,
        unrecorded=unrecorded,
        doubtful=doubtful,
        plantings=() if found is None else _ids(ground, family, found),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ground:
    """What is asked about: a bed with all it came from, or one part of it."""

    standing: Occupancy
    bed: str
    beds: tuple[str, ...]
    part: str | None

    def stood(self, bed: str, year: int) -> list[Planting]:
        """What stood in one of the beds in a year; the parts of earlier beds are not those of this one."""
        found = self.standing.plantings_by_year.get((bed, year), [])
        if self.part is None or bed != self.bed:
            return found
        return [p for p in found if p.part is None or p.bed_now != bed or p.part == self.part]


def _answer(found: int | None, year: int, doubtful: tuple[int, ...], unrecorded: tuple[int, ...]) -> Answer:
    if found == year:
        return "standing"
    if doubtful:
        return "perhaps"
    if unrecorded:
        return "not known"
    return "clear" if found is None else "stood"


def _stood(ground: _Ground, year: int) -> list[Planting]:
    return [p for bed in ground.beds for p in ground.stood(bed, year)]


def _last_stood(ground: _Ground, family: str, year: int) -> int | None:
    years = {y for bed in ground.beds for y in ground.standing.years_by_bed.get(bed, ()) if y <= year}
    return next((y for y in sorted(years, reverse=True) if _ids(ground, family, y)), None)


def _ids(ground: _Ground, family: str, year: int) -> tuple[str, ...]:
    found = (p.id for p in _stood(ground, year) if family in ground.standing.families(p))
    return tuple(dict.fromkeys(found))


def _is_doubtful(ground: _Ground, year: int) -> bool:
    return any(None in ground.standing.families(p) for p in _stood(ground, year))


def _is_recorded(ground: _Ground, bed: str, year: int, seen: frozenset[str] = frozenset()) -> bool:
    """Whether something is noted as growing there that year, in the bed or in all it came from."""
    if ground.stood(bed, year):
        return True
    known = ground.standing.garden.beds.get(bed)
    before = known.came_from if known and bed not in seen else ()
    return bool(before) and all(_is_recorded(ground, b, year, seen | {bed}) for b in before)


def _words(since: YearsSince) -> str:
    name = families()[since.family].name if since.family in families() else since.family
    if since.answer == "standing":
        return f"The {name} stands here in {since.year}."
    last = None
    if since.last_year is not None and since.years_ago is not None:
        last = f"The {name} last stood here in {since.last_year}, {counted(since.years_ago, 'year')} before."
    missing = [_gap(since)] if since.unrecorded else []
    if since.doubtful:
        missing.append(f"What stood here in {_listed(since.doubtful)} is of a family not known.")
    if last:
        return " ".join([last, *missing])
    return (
        " ".join(missing)
        or f"No {name} here in the last {counted(since.looked_back, 'year')}, all on record."
    )


def _gap(since: YearsSince) -> str:
    missing = len(since.unrecorded)
    if since.last_year is not None:
        return f"No record for {_listed(since.unrecorded)}, so not known for that time."
    return f"No record for {missing} of the last {counted(since.looked_back, 'year')}, so not known."


def _listed(years: tuple[int, ...]) -> str:
    words = [str(year) for year in sorted(years)]
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
