"""The warnings that belong to a crop, or to what was lately done to a bed, each with whom to ask.

They stand on the pages where the thing comes up and nowhere else: a warning on every page is read by nobody.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.facts.cautions import Caution, cautions
from leafmould.facts.manure import CLEAR, TOUCHING
from leafmould.garden.model import Crop, Event
from leafmould.garden.queries import lineage
from leafmould.garden.waits import beds_of, cause_of, hot_days, is_raw, last_day
from leafmould.pages.doings import said
from leafmould.pages.figures import day_figure
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Figure
from leafmould.values.names import fold
from leafmould.values.wording import counted, day

LATELY = timedelta(days=120)
"""How long work is warned of; the longest wait after raw manure in the rule the table names."""
WAITS = (TOUCHING, CLEAR)
"""Days after raw manure: for what touches the soil, and for the rest."""
LEAD = frozenset({"lead", "arsenic"})
COMMON = "Common practice, no source"


@dataclass(frozen=True, slots=True, kw_only=True)
class CautionLine:
    """One warning as it is read."""

    on: Figure | None  # the day of the note it comes from
    begins: str  # that note's own line
    words: str
    ask: str
    source: str


def crop_cautions(crop: Crop, put_up: frozenset[str]) -> tuple[CautionLine, ...]:
    """What to mind about a crop: its poisonous parts, and keeping it in jars where that was done."""
    found = cautions(crop.like or crop.key)
    if crop.key in put_up:
        found += cautions("work:preserving")
    return tuple(_line(caution) for caution in found)


def crops_put_up(ledger: Ledger) -> frozenset[str]:
    """The crops that were put up, by any note."""
    return frozenset(
        crop
        for event in ledger.garden.events
        if event.verb == "put up" or any(fate.kind == "put up" for fate in event.action.fates)
        for crop in event.crops
    )


Work = Mapping[str, Mapping[str, Event]]
"""By bed and by what is warned of: the latest work."""


def work_lately(ledger: Ledger) -> Work:
    """Animals, manure and treatments of the last days, the latest of each in each bed."""
    found: defaultdict[str, dict[str, Event]] = defaultdict(dict)
    hot = hot_days(ledger.garden)
    for event in ledger.garden.events:
        subject = _warned_of(event, hot)
        if subject is None or ledger.garden.on - last_day(event, ledger.garden.on) > LATELY:
            continue
        for bed in beds_of(event, ledger.garden):
            before = found[bed].get(subject)
            if before is None or last_day(before, ledger.garden.on) <= last_day(event, ledger.garden.on):
                found[bed][subject] = event
    return found


def _warned_of(event: Event, hot: Sequence[date]) -> str | None:
    """What an event is warned of: a cause to wait, or animals that were let out; not a compost with a record."""
    cause = cause_of(event)
    if cause == "manure" and not is_raw(event, hot):
        return None
    return "animals" if event.verb == "let out" else cause


def bed_cautions(bed: str, work: Work, ledger: Ledger) -> tuple[CautionLine, ...]:
    """What to mind in a bed, from what was done there lately."""
    return tuple(
        line
        for subject, event in sorted(work.get(bed, {}).items())
        for line in _work_lines(subject, event, ledger)
    ) + _lead(bed, ledger)


def _lead(bed: str, ledger: Ledger) -> tuple[CautionLine, ...]:
    """What to mind where lead was looked for in the soil, here or in what this bed was before; it stays there."""
    beds = set(lineage(ledger.garden, bed))
    tests = [e for e in ledger.garden.events if e.verb == "tested soil" and beds.intersection(e.beds)]
    found = [e for e in tests if LEAD & set(fold(e.action.text))]
    if not found:
        return ()
    last = found[-1]
    on = day_figure(last_day(last, ledger.garden.on), to=ledger.to_note(last.entry))
    return tuple(_line(caution, on=on, begins=said(last.action)) for caution in cautions("work:lead"))


def _work_lines(subject: str, event: Event, ledger: Ledger) -> tuple[CautionLine, ...]:
    on = day_figure(last_day(event, ledger.garden.on), to=ledger.to_note(event.entry))
    first, *others = cautions(f"work:{subject}")
    waits = _not_before(subject, event, ledger)
    return (
        _line(first, on=on, begins=said(event.action), adds=waits),
        *(_line(other) for other in others),
    )


def _not_before(subject: str, event: Event, ledger: Ledger) -> str:
    """The days the waits run out, reckoned from the note."""
    last = last_day(event, ledger.garden.on)
    if subject == "treatment":
        days = event.action.wait_days
        if not days:
            return " Days to wait not recorded: see the label."
        return f" The note says {counted(days, 'day')}: until {_after(last, days)}."
    return f" Here that is until {' and '.join(_after(last, days) for days in WAITS)}."


def _after(last: date, days: int) -> str:
    return day(last + timedelta(days=days))


def _line(caution: Caution, *, on: Figure | None = None, begins: str = "", adds: str = "") -> CautionLine:
    named = "; ".join(", ".join((source.title, source.publisher, source.year)) for source in caution.sources)
    return CautionLine(
        on=on,
        begins=begins,
        words=f"{caution.words}{adds}",
        ask=caution.ask,
        source=f"Source: {named}" if named else COMMON,
    )
