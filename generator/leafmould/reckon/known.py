"""What is known of a crop: the published figures, source by source, beside what this garden has seen.

One line a subject. Where sources disagree the line gives the whole range and each source keeps its own figure.
Pure: asks the tables and the plantings handed in, no files, no clock. Pages and the terminal show the same lines.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from leafmould.facts import tables
from leafmould.facts.published import Fact, RotationFact, published, rotation_facts
from leafmould.garden.model import Planting
from leafmould.notes.settings import PacketDays
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.known_words import (
    COMES_UP,
    LABELS,
    comes_up_words,
    distance_words,
    figure_words,
    range_words,
)
from leafmould.reckon.own_record import Seen, days_to_come_up, days_to_first_picking, weeks_of_picking
from leafmould.values.wording import counted

FIRST_HARVEST = "first harvest"


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What one source says."""

    words: str  # "10–29 °C"
    source: str  # source id
    note: str = ""  # for which kind, or how it was measured


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownLine:
    """One subject: what is published of it and what was seen here."""

    label: str  # "Soil to sow in, best"
    words: str  # the whole range; empty where nothing is published
    said: tuple[Said, ...]
    seen: Seen | None = None  # in this garden
    packet: str = ""  # what crops.yaml says; it comes before anything published
    is_common_practice: bool = False  # `words` has no source


def known_of(
    crop: str, family: str | None, plantings: Sequence[Planting], almanac: Almanac
) -> tuple[KnownLine, ...]:
    """All that is known of a crop, in the order of a plant's life; empty for a crop nobody has written of.

    Args:
        crop: the crop's key; an own crop that is "like" another takes the figures of that one.
        family: botanical; None if not known, and then nothing is said of rotation, nor of what stays for years.
        plantings: this garden's plantings of the crop, in any order.
    """
    fact = almanac.fact(crop)
    key = fact.key if fact else crop
    lines = (
        *_published(crop, published(key), plantings, almanac),
        *_distances(crop, published(key), almanac),
        *_first_harvest(crop, key, plantings, almanac),
        *_picking(plantings),
        *_rotation(None if fact and fact.grown_as == "perennial" else family),
    )
    order = {label: number for number, label in enumerate(LABELS.values())}
    return tuple(sorted(lines, key=lambda line: order.get(line.label, len(order))))


def _published(
    crop: str, facts: Sequence[Fact], plantings: Sequence[Planting], almanac: Almanac
) -> Iterator[KnownLine]:
    came_up, units = days_to_come_up(plantings), almanac.units
    own = {LABELS[subject]: words for subject, words in _own_distances(crop, almanac).items()}
    for label, found in groupby(facts, key=_label):
        same = tuple(found)
        is_up = label == LABELS[COMES_UP]
        yield KnownLine(
            label=label,
            words=comes_up_words(same, units) if is_up else range_words(same, units),
            said=_said_of_coming_up(same) if is_up else tuple(_said(fact, units) for fact in same),
            seen=came_up if is_up else None,
            packet=own.get(label, ""),
        )
    if came_up and not any(fact.subject.startswith(COMES_UP) for fact in facts):
        yield KnownLine(label=LABELS[COMES_UP], words="", said=(), seen=came_up)


def _label(fact: Fact) -> str:
    return LABELS[COMES_UP if fact.subject.startswith(COMES_UP) else fact.subject]


def _said(fact: Fact, units: str) -> Said:
    return Said(
        words=figure_words(fact, units), source=fact.source, note=fact.note if fact.low is not None else ""
    )


def _said_of_coming_up(facts: Iterable[Fact]) -> tuple[Said, ...]:
    return tuple(Said(words="", source=source) for source in dict.fromkeys(fact.source for fact in facts))


def _first_harvest(
    crop: str, key: str, plantings: Sequence[Planting], almanac: Almanac
) -> Iterator[KnownLine]:
    """Days to the first harvest: packet, published, or common practice; and as counted here."""
    seen = days_to_first_picking(plantings)
    packet = _packets(crop, almanac)
    printed = tables.days_facts(key)
    said = tuple(
        Said(words=f"{_span(d.low, d.high)} days, {_from(d.counts_from)}", source=d.source, note=d.region)
        for d in printed
    )
    said += _of_varieties(key, plantings)
    usual = () if printed else tables.usual_days(key)
    words = _whole_span([*((d.low, d.high) for d in printed), *((d.low, d.high) for d in usual)])
    if words or seen or packet or said:
        yield KnownLine(
            label=LABELS[FIRST_HARVEST],
            words=words,
            said=said,
            seen=seen,
            packet=packet,
            is_common_practice=bool(usual),
        )


def _packets(crop: str, almanac: Almanac) -> str:
    """The days of crops.yaml, of the crop and of each variety, with what they count from."""
    of_crop = almanac.packet(crop, None)
    told = [_packet_words(of_crop)] if of_crop else []
    told += [f"‘{name}’ {_packet_words(days)}" for name, days in almanac.varieties_by_crop.get(crop, ())]
    return "; ".join(told)


def _packet_words(days: PacketDays) -> str:
    return f"{_span(days.low, days.high)} days, {_from(days.counts_from)}"


def _of_varieties(key: str, plantings: Iterable[Planting]) -> tuple[Said, ...]:
    """What is published of the varieties grown here."""
    names = sorted({v for p in plantings if not p.is_doubtful for v in p.varieties}, key=str.casefold)
    return tuple(
        Said(
            words=f"‘{name}’ {_span(d.low, d.high)} days, {_from(d.counts_from)}",
            source=d.source,
            note=d.region,
        )
        for name in names
        for d in tables.variety_days(key, name)
    )


def _distances(crop: str, facts: Sequence[Fact], almanac: Almanac) -> Iterator[KnownLine]:
    """The distances of crops.yaml where nothing is published; where something is, they stand beside it."""
    told = {fact.subject for fact in facts}
    for subject, words in _own_distances(crop, almanac).items():
        if subject not in told:
            yield KnownLine(label=LABELS[subject], words="", said=(), packet=words)


def _own_distances(crop: str, almanac: Almanac) -> dict[str, str]:
    own = {
        "apart in the row": almanac.apart_by_crop.get(crop),
        "between rows": almanac.rows_by_crop.get(crop),
    }
    return {subject: distance_words(cm, almanac.units) for subject, cm in own.items() if cm}


def _picking(plantings: Sequence[Planting]) -> Iterator[KnownLine]:
    seen = weeks_of_picking(plantings)
    if seen:
        yield KnownLine(label=LABELS["picked here for"], words="", said=(), seen=seen)


def _rotation(family: str | None) -> Iterator[KnownLine]:
    """Years before the family comes back, in general and after its diseases."""
    if family is None:
        return
    facts = [f for f in rotation_facts() if f.is_general or f.concerns(family)]
    general = [f for f in facts if f.is_general]
    spans = [(int(f.low), int(f.high)) for f in general if f.low and f.high]
    said = tuple(Said(words=f.printed, source=f.source) for f in general)
    yield KnownLine(label="Years before the same family", words=_whole_span(spans, "year"), said=said)
    by_disease: dict[str, list[RotationFact]] = {}
    for fact in facts:
        if fact.disease:
            by_disease.setdefault(fact.disease, []).append(fact)
    for disease, found in by_disease.items():
        yield KnownLine(label=f"After {disease}", words="", said=tuple(_of_disease(f) for f in found))


def _of_disease(fact: RotationFact) -> Said:
    how = f"{fact.printed}, as long as it lives in the soil" if fact.is_survival else fact.printed
    return Said(words=f"{how} ({fact.crops})", source=fact.source, note=fact.note)


def _from(counts_from: str) -> str:
    return "start not stated" if counts_from == "unclear" else f"from {counts_from}"


def _span(low: int, high: int) -> str:
    return f"{low}" if low == high else f"{low}–{high}"


def _whole_span(spans: Sequence[tuple[int, int]], unit: str = "day") -> str:
    if not spans:
        return ""
    low, high = min(low for low, _ in spans), max(high for _, high in spans)
    return counted(low, unit) if low == high else f"{low}–{counted(high, unit)}"
