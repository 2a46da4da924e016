"""Which figures of days serve for a crop, from the most trusted to the least.

Packet days come first; for what is started in autumn and picked next year, what is usual of such a start, since printed
days are those of spring; then days published for the variety, then for the crop, then for other varieties
of the crop, then common practice, and of a crop in no table those of its family. Each step tells what its days count from. What that means for a
planting is left to `forecast`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from statistics import median
from typing import Literal

from leafmould.facts import tables
from leafmould.facts.tables import CropFact, DaysFact, UsualDays
from leafmould.reckon.almanac import Almanac
from leafmould.values.half_years import northern_month
from leafmould.values.wording import counted

Start = Literal["sowing", "planting out"]

BEFORE_WINTER = (10, 11)
"""Months in which what is sown stands small until spring; what is sown before is picked before. Common practice."""

LONGEST = 1_500
"""A packet's days are taken as at most this many, so that a slip of the pen stays a date: as in crops.yaml."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Days:
    """Days from one kind of start to the first picking, and who says so."""

    low: int
    likely: float
    high: int
    counts_from: Start
    says: str  # "packet says 60–70 days from sowing"
    sources: tuple[str, ...] = ()
    is_common_practice: bool = False


def steps(
    crop: str, varieties: tuple[str, ...], started_on: date, almanac: Almanac
) -> Iterator[tuple[Days, ...]]:
    """The steps of trust that have figures; in each at most one for sowing and one for planting out."""
    fact = almanac.fact(crop)
    packet = almanac.packet(crop, varieties[0] if len(varieties) == 1 else None)
    if packet:
        yield (_packet(packet.low, packet.high, packet.counts_from),)
    if fact is None:
        if crop in almanac.family_by_crop:
            yield _of_family(almanac.family_by_crop[crop])
        return
    over_winter = [
        row for row in tables.usual_days(fact.key) if _stands_over_winter(row, started_on, almanac)
    ]
    if over_winter:
        yield tuple(_usual(row, fact) for row in over_winter)
    of_variety = [row for variety in varieties for row in tables.variety_days(fact.key, variety)]
    others = tables.days_of_varieties(fact.key)
    for rows, of in (
        (of_variety, "figures published for the variety say"),
        (tables.days_facts(fact.key), "published figures say"),
        (others, "figures published for other varieties say"),
    ):
        if rows:
            yield _published(rows, fact, of)
    usual = [row for row in tables.usual_days(fact.key) if row.season in ("", season(started_on, almanac))]
    if usual:
        yield tuple(_usual(row, fact) for row in usual)


def _stands_over_winter(row: UsualDays, day: date, almanac: Almanac) -> bool:
    """Whether days are those of a start before winter: the ones printed for the crop are counted from spring."""
    if not almanac.has_winter or season(day, almanac) != "autumn":
        return False
    month = northern_month(day.month, is_southern=almanac.is_southern)
    return row.season == "autumn" or (row.season == "before winter" and month in BEFORE_WINTER)


def season(day: date, almanac: Almanac) -> Literal["spring", "autumn"]:
    """Whether a start counts as an autumn one: August to November, six months apart in the south."""
    month = northern_month(day.month, is_southern=almanac.is_southern)
    return "autumn" if 8 <= month <= 11 else "spring"


def start_of(row: DaysFact, fact: CropFact) -> Start:
    """What the days count from; where the print does not say, the way the crop is usually started."""
    if row.counts_from == "unclear":
        return "sowing" if fact.starts_as == "seed" else "planting out"
    return row.counts_from


def days_words(low: int, high: int) -> str:
    """A count of days, or a range of it."""
    return counted(low, "day") if low == high else f"{low:,}–{high:,} days"


def _packet(low: int, high: int, counts_from: str) -> Days:
    start: Start = "planting out" if counts_from == "planting out" else "sowing"
    low, high = sorted(min(max(days, 1), LONGEST) for days in (low, high))
    says = f"packet says {days_words(low, high)} from {start}"
    return Days(low=low, likely=(low + high) / 2, high=high, counts_from=start, says=says)


def _usual(row: UsualDays, fact: CropFact) -> Days:
    span = f"{days_words(row.low, row.high)} from {_start_words(row.counts_from, fact)}"
    says = f"common practice, not a published figure, is {span}"
    likely = (row.low + row.high) / 2
    return Days(
        low=row.low,
        likely=likely,
        high=row.high,
        counts_from=row.counts_from,
        says=says,
        is_common_practice=True,
    )


def _published(rows: Iterable[DaysFact], fact: CropFact, of: str) -> tuple[Days, ...]:
    by_start: dict[Start, list[DaysFact]] = {"sowing": [], "planting out": []}
    for row in rows:
        by_start[start_of(row, fact)].append(row)
    return tuple(_together(found, start, fact, of) for start, found in by_start.items() if found)


def _of_family(family: str) -> tuple[Days, ...]:
    """The days of a family's other crops of one season: most of them, as a crop of it may be slow or quick."""
    kin = [fact for fact in tables.crops().values() if fact.family == family and fact.grown_as == "annual"]
    rows = [row for fact in kin for row in tables.days_facts(fact.key) if start_of(row, fact) == "sowing"]
    if not rows:
        return ()
    known = tables.families().get(family)
    lows, highs = sorted(row.low for row in rows), sorted(row.high for row in rows)
    low, high = lows[len(lows) // 10], highs[-1 - len(highs) // 10]
    return (
        Days(
            low=low,
            likely=median((row.low + row.high) / 2 for row in rows),
            high=high,
            counts_from="sowing",
            says=f"figures published for other crops of the {known.name if known else family} say "
            f"{days_words(low, high)} from sowing",
            sources=tuple(sorted({row.source for row in rows})),
        ),
    )


def _start_words(start: Start, fact: CropFact) -> str:
    """The start in words; bulbs and tubers are planted, not planted out."""
    return "planting" if start == "planting out" and fact.starts_as == "sets" else start


def _together(rows: list[DaysFact], start: Start, fact: CropFact, of: str) -> Days:
    """All sources as one range: the lowest, the median of their middles, the highest."""
    low, high = min(row.low for row in rows), max(row.high for row in rows)
    says = f"{of} {days_words(low, high)} from {_start_words(start, fact)}"
    if all(row.counts_from == "unclear" for row in rows):
        says += " (the start is not printed, it is taken so)"
    return Days(
        low=low,
        likely=median((row.low + row.high) / 2 for row in rows),
        high=high,
        counts_from=start,
        says=says,
        sources=tuple(sorted({row.source for row in rows})),
    )
