"""A planting's year along the months: raised, in the ground, picked, expected.

What was noted is drawn solid, what was estimated or is only expected is drawn open, and where nothing is
known nothing is drawn. Each row says the same in words.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from leafmould.charts.strip import place, stretch
from leafmould.garden.model import Planting
from leafmould.pages.figures import day_text
from leafmould.pages.labels import planting_name
from leafmould.pages.ledger import Ledger, once
from leafmould.pages.page import Bar, Link, StripRow
from leafmould.values.when import When
from leafmould.values.wording import day, day_range


def strip_row(planting: Planting, year: int, ledger: Ledger, *, note: str = "") -> StripRow:
    """One planting along one season."""
    is_now = year == ledger.this_year
    return StripRow(
        link=_link(planting, ledger),
        note=note,
        bars=_bars_by_year(planting, ledger)[year],
        says=in_words(planting, ledger),
        today=round(place(ledger.garden.on, ledger.year_begins(year)), 1) if is_now else None,
    )


@once
def _link(planting: Planting, ledger: Ledger) -> Link:
    return Link(text=planting_name(planting), to=ledger.sections[planting.id])


@once
def _bars_by_year(planting: Planting, ledger: Ledger) -> dict[int, tuple[Bar, ...]]:
    """The bars of every season it stood in: its bed's page and its crop's draw the same."""
    others = [*_picking(planting, ledger), *_expected(planting, ledger)]
    return {year: _bars(planting, year, others, ledger) for year in ledger.years_of[planting.id]}


def _bars(planting: Planting, year: int, others: list[Span], ledger: Ledger) -> tuple[Bar, ...]:
    begins, ends = ledger.year_begins(year), ledger.year_ends(year)
    spans = [*_ground(planting, ledger, min(ends, ledger.garden.on)), *others]
    found = [
        _bar(kind, first, last, begins, is_open=is_open)
        for kind, first, last, is_open in spans
        if first <= ends and last >= begins
    ]
    return tuple([bar for bar in found if bar])


Span = tuple[str, date, date, bool]


def _ground(planting: Planting, ledger: Ledger, ends: date) -> Iterable[Span]:
    """Raised under glass until planted out, then in the ground until it ended or as far as is known."""
    start, placed = planting.start, planting.in_bed_from
    if start is None or placed is None:
        return
    last = planting.ended_on or ends
    if start.first < placed.first:
        yield "raised", start.first, placed.first, not start.is_exact
    if placed.first <= last:
        is_open = planting.end_is_estimated or not placed.is_exact
        sure = min(last, _last_known(planting, ledger)) if is_open and placed.is_exact else last
        yield "ground", placed.first, sure, not placed.is_exact
        if sure < last:
            yield "ground", sure, last, True


def _last_known(planting: Planting, ledger: Ledger) -> date:
    """The last day something was noted of it: beyond it, its end is a guess."""
    days = [ledger.garden.event_by_id[e].when.last for e in planting.events[-1:]]
    placed = planting.in_bed_from
    return max(days, default=placed.last if placed else ledger.garden.on)


def _picking(planting: Planting, ledger: Ledger) -> Iterable[Span]:
    by_year: dict[int, list[When]] = {}
    for key in planting.pickings:
        when = ledger.garden.picking_by_id[key].when
        by_year.setdefault(ledger.year_of(when.first), []).append(when)
    for moments in by_year.values():
        first, last = min(m.first for m in moments), max(m.last for m in moments)
        yield "picking", first, last, not all(m.is_exact for m in moments)


def _expected(planting: Planting, ledger: Ledger) -> Iterable[Span]:
    forecast = ledger.reckoned.forecasts.get(planting.id)
    if forecast and planting.is_open and planting.first_picked is None:
        yield "expected", forecast.earliest, forecast.latest, True


def _bar(kind: str, first: date, last: date, begins: date, *, is_open: bool) -> Bar | None:
    found = stretch(first, last, begins)
    return Bar(kind=kind, x=found[0], width=found[1], is_open=is_open) if found else None


@once
def in_words(planting: Planting, ledger: Ledger) -> str:
    """What the strip shows, as a sentence for those who cannot see it."""
    moments = (
        ("started", planting.started),
        ("sown", planting.sown),
        ("planted out" if planting.started else "planted", planting.planted),
        ("found", planting.found),
        ("first picked", planting.first_picked),
        ("last picked", planting.last_picked),
    )
    parts = [f"{verb} {day_text(when)}" for verb, when in moments if when]
    forecast = ledger.reckoned.forecasts.get(planting.id)
    if forecast and planting.is_open and planting.first_picked is None:
        parts.append(f"expected {day_range(forecast.earliest, forecast.latest)}")
    if planting.ended_on:
        sure = "presumed over" if planting.end_is_estimated else "ended"
        parts.append(f"{sure} {day(planting.ended_on)}")
    return "; ".join(parts) or "no dates noted"
