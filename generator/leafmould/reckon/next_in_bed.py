"""What may come next in a bed, family by family: how long it has been, how long is advised, and a verdict.

Counts whole seasons between: what stood in 2023 and comes back in 2026 had two between. What the published
intervals say in general is taken by most of them (their middle); a disease noted in the bed makes it longer.
A season without a record is never taken for one without the family. Runs on an assembled garden, pure.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from statistics import median_low
from typing import Literal

from leafmould.facts.published import RotationFact, rotation_facts
from leafmould.garden.bed_lines import NOWHERE_KEY
from leafmould.garden.model import Bed, Event, Garden, Planting
from leafmould.garden.queries import lineage
from leafmould.reckon.rotation import Occupancy, YearsSince, years_since
from leafmould.values.names import fold
from leafmould.values.wording import counted

Kind = Literal["fine", "sooner than some advise", "not yet", "not known"]
ORDER: tuple[Kind, ...] = ("fine", "sooner than some advise", "not known", "not yet")


MOST_NAMED = 3
"""Crops named of what stood there."""
NO_ROTATION = frozenset({"tree", "shrub", "vine", "cane row"})
"""Kinds of place where the same plants stay for years."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Illness:
    """A disease that was noted in a bed and that a published interval is known for."""

    fact: RotationFact
    year: int  # the latest it was noted
    event: str  # id of that event


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """Whether a family may come next in a bed."""

    bed: str
    family: str  # botanical
    year: int  # the season asked about
    kind: Kind
    since: YearsSince
    between: int | None  # whole seasons since it last stood there; None: not known to have stood
    until: int | None  # "not yet": the first season it may; None: nobody says
    illness: Illness | None
    reason: str  # one or two sentences
    sources: tuple[str, ...]  # source ids


@dataclass(frozen=True, slots=True, kw_only=True)
class Advised:
    """Whole seasons between, as the general rules give them."""

    least: int  # by most: the middle of the lower ends
    safe: int  # the middle of the upper ends
    low: int  # the lowest anybody gives
    high: int  # the highest
    sources: tuple[str, ...]


@cache
def advised() -> Advised:
    """The general interval between crops of one family."""
    general = [f for f in rotation_facts() if f.is_general and f.low is not None and f.high is not None]
    lows, highs = [int(f.low or 0) for f in general], [int(f.high or 0) for f in general]
    return Advised(
        least=median_low(lows),
        safe=median_low(highs),
        low=min(lows),
        high=max(highs),
        sources=tuple(fact.source for fact in general),
    )


def verdict(
    garden: Garden,
    bed: str,
    family: str,
    year: int,
    *,
    within: Occupancy,
    ill: Mapping[str, tuple[Illness, ...]],
    part: str | None = None,
) -> Verdict:
    """Whether a family may stand in a bed in a season, by the record and what is advised.

    Args:
        part: ask of one part of the bed alone.
        within: the garden's occupancy, made once for many questions; it spares what stays for years.
        ill: by bed, the diseases noted there (`illnesses`).
    """
    since = years_since(garden, bed, family, year, within=within, part=part)
    rule = advised()
    between = None if since.years_ago is None else max(0, since.years_ago - 1)
    illness = _worst(
        illness
        for b in lineage(garden, bed)
        for illness in ill.get(b, ())
        if illness.fact.concerns(family) and (part is None or _reaches(illness, part, garden))
    )
    kind, until = _judge(since, between, year, rule, illness)
    sources = (illness.fact.source,) if illness and kind == "not yet" else rule.sources
    return Verdict(
        bed=bed,
        family=family,
        year=year,
        kind=kind,
        since=since,
        between=between,
        until=until,
        illness=illness,
        reason=_reason(kind, since, between, until, rule, illness, _what_stood(since, garden)),
        sources=sources,
    )


def _reaches(illness: Illness, part: str, garden: Garden) -> bool:
    """Whether a disease was noted in that part, or without naming one."""
    event = garden.event_by_id[illness.event]
    parts = {event.part} | {
        garden.planting_by_id[key].part for key in event.plantings if key in garden.planting_by_id
    }
    return parts <= {None} or part in parts


def parts_of(bed: Bed, garden: Garden) -> tuple[str, ...]:
    """The parts of a bed in which something is known to have stood apart from the rest, as declared first."""
    noted = {p.part for p in garden.plantings if p.part and p.bed_now == bed.key}
    return tuple(dict.fromkeys((*(part for part in bed.parts if part in noted), *sorted(noted))))


def _judge(
    since: YearsSince, between: int | None, year: int, rule: Advised, illness: Illness | None
) -> tuple[Kind, int | None]:
    """The verdict, and the first season the family may come back."""
    if illness and _cured(illness) is None:
        return "not yet", None
    back = 0 if since.last_year is None else since.last_year + 1 + rule.least
    first = max(back, _cured(illness) or 0 if illness else 0)
    if first > year:
        return "not yet", first
    if since.answer in ("not known", "perhaps"):
        return "not known", None
    if between is not None and between < rule.safe:
        return "sooner than some advise", None
    return "fine", None


def _cured(illness: Illness) -> int | None:
    """The first season after a disease's interval; None where nobody gives one in years."""
    longest = illness.fact.high or illness.fact.low
    return None if longest is None else illness.year + 1 + int(longest)


def _worst(found: Iterator[Illness]) -> Illness | None:
    """The disease that keeps the family away longest; one without a figure before any other."""
    return max(found, key=lambda i: (_cured(i) is None, _cured(i) or 0, i.year, i.fact.source), default=None)


def illnesses(garden: Garden, year_of: Callable[[date], int]) -> Mapping[str, tuple[Illness, ...]]:
    """By bed: the diseases with a published interval that were noted there, each in its latest year.

    Args:
        year_of: the season a day belongs to.
    """
    found: dict[str, dict[str, Illness]] = {}
    for event in garden.events:
        for fact in _named(event):
            year = year_of(event.when.first)
            for bed in _beds_of(event, garden):
                known = found.setdefault(bed, {}).get(f"{fact.source} {fact.disease}")
                if known is None or known.year <= year:
                    found[bed][f"{fact.source} {fact.disease}"] = Illness(
                        fact=fact, year=year, event=event.id
                    )
    return {bed: tuple(by_fact.values()) for bed, by_fact in found.items()}


def _named(event: Event) -> Iterator[RotationFact]:
    """The diseases an event names, by all the words of one of their names."""
    words = set(fold(" ".join(filter(None, (event.action.subject, event.action.cause)))))
    if event.verb not in ("saw", "lost", "treated") or not words:
        return
    for fact, names in _binding():
        if any(name <= words for name in names):
            yield fact


@cache
def _binding() -> tuple[tuple[RotationFact, tuple[frozenset[str], ...]], ...]:
    """The rows of diseases that bind, with the words of each name: advice where there is any, else survival."""
    ill = [fact for fact in rotation_facts() if fact.disease]
    is_advised = {fact.disease for fact in ill if not fact.is_survival}
    return tuple(
        (fact, tuple(frozenset(fold(name)) for name in fact.disease.split(", ")))
        for fact in ill
        if not (fact.is_survival and fact.disease in is_advised)
    )


def _beds_of(event: Event, garden: Garden) -> tuple[str, ...]:
    plantings = [garden.planting_by_id[key] for key in event.plantings if key in garden.planting_by_id]
    return tuple(dict.fromkeys((*event.beds, *(p.bed_now for p in plantings))))


def _reason(
    kind: Kind,
    since: YearsSince,
    between: int | None,
    until: int | None,
    rule: Advised,
    illness: Illness | None,
    what: str,
) -> str:
    if kind == "not known":
        return since.words
    if illness and kind == "not yet" and (until is None or until == _cured(illness)):
        fact = illness.fact
        note = f" {fact.note[:1].upper()}{fact.note[1:]}." if fact.note else ""
        return f"{fact.disease[:1].upper()}{fact.disease[1:]} was noted in {illness.year}; advised: {fact.printed}.{note}"
    span = f"{rule.low}–{counted(rule.high, 'season')} between are advised"
    if since.last_year is None or between is None:
        return f"Not here in the last {counted(since.looked_back, 'year')}, all on record."
    stood = "Stands here" if since.answer == "standing" else f"Stood here in {since.last_year}"
    stood += f" ({what})" if what else ""
    gap = "" if kind == "not yet" else f", {counted(between, 'season')} between"
    return f"{stood}{gap}; {span}."


def _what_stood(since: YearsSince, garden: Garden) -> str:
    """What of the family stood there last, in the gardener's words: "kale, rocket"."""
    words = [
        word
        for key in since.plantings
        for crop, word in _named_crops(garden.planting_by_id[key])
        if crop not in garden.crops or garden.crops[crop].family == since.family
    ]
    names = list(dict.fromkeys(words))
    if len(names) > MOST_NAMED:
        names = [*names[: MOST_NAMED - 1], "others"]
    return ", ".join(names)


def _named_crops(planting: Planting) -> Iterator[tuple[str, str]]:
    words = planting.words if len(planting.words) == len(planting.crops) else planting.crops
    return zip(planting.crops, words, strict=True)


def rotating_beds(garden: Garden) -> tuple[Bed, ...]:
    """The beds in which crops follow one another, in the garden's order."""
    return tuple(
        bed
        for bed in garden.beds.values()
        if bed.kind not in NO_ROTATION and bed.key != NOWHERE_KEY and bed.ended is None
    )


def rotating_crops(garden: Garden) -> Mapping[str, tuple[str, ...]]:
    """By family, the crops of this garden that do not stay for years, in the garden's order."""
    found: dict[str, list[str]] = {}
    for key, crop in garden.crops.items():
        if crop.family and crop.grown_as != "perennial":
            found.setdefault(crop.family, []).append(key)
    return {family: tuple(keys) for family, keys in found.items()}


def parts_where_fine(
    garden: Garden, told: Mapping[tuple[str, str], Verdict], *, year_of: Callable[[date], int]
) -> Mapping[tuple[str, str], tuple[str, ...]]:
    """By bed and family: the parts of a bed where the family may come, though not in the bed as a whole.

    Args:
        told: the verdicts of all beds (`verdicts`).
    """
    ill, within = illnesses(garden, year_of), Occupancy(garden, spares_perennials=True)
    parts = {bed.key: parts_of(bed, garden) for bed in rotating_beds(garden)}
    found: dict[tuple[str, str], tuple[str, ...]] = {}
    for (bed, family), whole in told.items():
        if whole.kind == "fine":
            continue
        each = (
            (p, verdict(garden, bed, family, whole.year, within=within, ill=ill, part=p)) for p in parts[bed]
        )
        if fine := tuple(part for part, one in each if one.kind == "fine"):
            found[bed, family] = fine
    return found


def verdicts(
    garden: Garden, year: int, *, year_of: Callable[[date], int]
) -> Mapping[tuple[str, str], Verdict]:
    """Every family of the garden in every bed where crops follow one another, for one season."""
    ill, within = illnesses(garden, year_of), Occupancy(garden, spares_perennials=True)
    return {
        (bed.key, family): verdict(garden, bed.key, family, year, within=within, ill=ill)
        for bed in rotating_beds(garden)
        for family in rotating_crops(garden)
    }
