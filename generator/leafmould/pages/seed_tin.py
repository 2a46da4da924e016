"""The seed tin: what seed there is, how old against its life, how it did on trial, where it was sown.

Packets come reckoned; here they get their words and links. Sellers and prices stand here only where the build
lets them through.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass

from leafmould.pages.addresses import SEED_TIN, SOURCES, source_anchor
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Figure, Link, Page
from leafmould.reckon.amounts import enough_for
from leafmould.reckon.seed_life import Standing, Trial
from leafmould.reckon.seed_tin import Lot
from leafmould.values.wording import counted

LOOK_AT: tuple[Standing, ...] = ("test first", "sow thicker", "likely spent")
"""What is said first, before the whole list."""
MOST_ROWS = 400
"""Packets in the table: more than a tin holds, and about 150 kB."""
MOST_NAMED = 100
"""Packets named that are used up or long spent."""
KEPT_ON = 2
"""Years beyond its life after which seed that only a note tells of is taken to have left the tin."""
MOST_SOWN = 4
"""Sowings named beside a packet, the newest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SeedLine:
    """One packet."""

    crop: Link
    variety: str
    amount: str
    got: str  # "2024"; empty where nobody wrote it
    told: tuple[Figure, ...]  # the notes of its buying or saving
    source: str
    price: str
    age: str  # "3 years, of 4–5 years"
    tried: tuple[Figure, ...]  # told by notes
    tried_besides: tuple[str, ...]  # told by the table alone
    standing: str
    kind: str  # the standing as a class
    why: str
    sown: tuple[Link, ...]
    more_sown: int
    note: str
    left: str  # "8 of 20 seeds left by the notes"; empty where it was not counted, or nothing taken since
    enough_for: str  # "about 11 plants"; empty where it is not counted


@dataclass(frozen=True, slots=True, kw_only=True)
class SeedGroup:
    """Packets that are to be looked at, by what is to be done."""

    heading: str
    seeds: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeedTinPage:
    """The values of the page."""

    groups: tuple[SeedGroup, ...]
    rows: tuple[SeedLine, ...]
    more_rows: int  # packets that would make the page too heavy
    used_up: tuple[str, ...]
    long_ago: tuple[str, ...]  # told by notes alone, and spent for years
    has_table: bool  # records/seeds.csv is there, and may be shown
    sources: tuple[Link, ...]


def seed_tin_page(ledger: Ledger) -> Page:
    """Every packet there is, those to look at named first, those used up last."""
    there = [lot for lot in ledger.reckoned.tin if lot.judged.standing != "used up"]
    lots = [lot for lot in there if not _is_long_ago(lot)]
    long_ago = [lot for lot in there if _is_long_ago(lot)]
    gone = [lot for lot in ledger.reckoned.tin if lot.judged.standing == "used up"]
    keys = dict.fromkeys(key for lot in lots if lot.life for key in lot.life.sources)
    values = SeedTinPage(
        groups=_groups(lots),
        rows=tuple(seed_line(lot, ledger) for lot in lots[:MOST_ROWS]),
        more_rows=max(0, len(lots) - MOST_ROWS),
        used_up=_names(gone),
        long_ago=_names(long_ago),
        has_table=any(lot.row for lot in ledger.reckoned.tin),
        sources=tuple(
            Link(text=ledger.reckoned.sources[key].publisher, to=f"{SOURCES}#{source_anchor(key)}")
            for key in keys
        ),
    )
    return Page(address=SEED_TIN, template="seed-tin.html", title="Seed tin", section="crops", values=values)


def seed_line(lot: Lot, ledger: Ledger) -> SeedLine:
    """One packet with its words and links."""
    row = lot.row
    return SeedLine(
        crop=Link(text=lot.word, to=ledger.to_crop(lot.crop)),
        variety=lot.variety or "",
        amount=row.amount if row else "",
        got=str(lot.year) if lot.year else "",
        told=tuple(_told(event, ledger) for event in lot.got),
        source=(row.source or "") if row else "",
        price=(row.price or "") if row else "",
        age=_age(lot),
        tried=tuple(_tried(trial, trial.event, ledger) for trial in reversed(lot.trials) if trial.event),
        tried_besides=tuple(_tried_words(trial) for trial in reversed(lot.trials) if not trial.event),
        standing=lot.judged.standing,
        kind=lot.judged.standing.replace(" ", "-"),
        why="" if lot.judged.is_by_age else lot.judged.why[:1].upper() + lot.judged.why[1:],
        sown=tuple(_sown(planting, ledger) for planting in lot.sown[: -MOST_SOWN - 1 : -1]),
        more_sown=max(0, len(lot.sown) - MOST_SOWN),
        note=row.note if row else "",
        left=lot.left.words if lot.left else "",
        enough_for=_enough(lot),
    )


def _groups(lots: list[Lot]) -> tuple[SeedGroup, ...]:
    found = defaultdict[Standing, list[str]](list)
    for lot in lots:
        found[lot.judged.standing].append(_name(lot))
    return tuple(
        SeedGroup(heading=kind[:1].upper() + kind[1:], seeds=tuple(found[kind]))
        for kind in LOOK_AT
        if found[kind]
    )


def _is_long_ago(lot: Lot) -> bool:
    """Whether notes alone tell of it and it is spent for years: nobody has written that it was thrown away."""
    if lot.row is not None or lot.age is None or lot.life is None or lot.judged.standing != "likely spent":
        return False
    return lot.age > lot.life.high + KEPT_ON


def _names(lots: list[Lot]) -> tuple[str, ...]:
    """The newest, and how many more there were."""
    newest = sorted(lots, key=lambda lot: lot.year or 0, reverse=True)
    more = len(newest) - MOST_NAMED
    names = [_name(lot) for lot in newest[:MOST_NAMED]]
    return (*names, f"and {more:,} more before") if more > 0 else tuple(names)


def _name(lot: Lot) -> str:
    variety = f" ‘{lot.variety}’" if lot.variety else ""
    return f"{lot.word}{variety}" + (f", {lot.year}" if lot.year else "")


def _age(lot: Lot) -> str:
    if lot.age is None:
        return ""
    old = counted(lot.age, "year") if lot.age > 0 else "this year’s"
    if lot.life is None:
        return old
    relative = f" (as {lot.life.of})" if lot.life.of else ""
    return f"{old}, of {lot.life.words}{relative}"


def _enough(lot: Lot) -> str:
    plants = enough_for(lot)
    if plants is None:
        return ""
    low, high = plants
    return (
        f"enough for about {counted(high, 'plant')}" if low == high else f"enough for {low:,}–{high:,} plants"
    )


def _told(event: str, ledger: Ledger) -> Figure:
    found = ledger.garden.event_by_id[event]
    word = "saved" if found.verb == "saved seed" else "bought"
    value = str(found.when.last.year)
    return Figure(text=word, value=value, to=ledger.to_note(found.entry))


def _tried(trial: Trial, event: str, ledger: Ledger) -> Figure:
    entry = ledger.garden.event_by_id[event].entry
    value = f"{trial.came_up}/{trial.tried}"
    return Figure(text=_tried_words(trial), value=value, to=ledger.to_note(entry))


def _tried_words(trial: Trial) -> str:
    return f"{trial.came_up} of {trial.tried}" + (f" in {trial.year}" if trial.year else "")


def _sown(planting: str, ledger: Ledger) -> Link:
    found = ledger.garden.planting_by_id[planting]
    bed = ledger.garden.beds[found.bed]
    return Link(text=f"{bed.name} {ledger.year_name(ledger.home_year(found))}", to=ledger.sections[planting])
