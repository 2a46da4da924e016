"""A planting's year along the months: raised, in the ground, picked, expected.

What was noted is drawn solid, what was estimated or is only expected is drawn open, and where nothing is
known nothing is drawn. Each row says the same in words, and each bar its days for the table behind the strip.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from leafmould.charts.strip import place, stretch
from leafmould.garden.model import Planting
from leafmould.pages.figures import day_text
from leafmould.pages.labels import planting_name
from leafmould.pages.ledger import Ledger, once
from leafmould.pages.page import Bar, Link, StripRow
from leafmould.values.when import When
from leafmould.values.wording import day, day_range, when_words


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
    spans = [*_ground(planting, ledger), *_picking(planting, ledger), *_expected(planting, ledger)]
    return {year: _bars(planting, year, spans, ledger) for year in ledger.years_of[planting.id]}


GUESS = " (estimated)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A stretch of a planting's life, over all its seasons."""

    kind: str
    first: date
    last: date
    is_open: bool = False  # drawn as an outline
    begun: str = ""  # its beginning as written, where that is no day
    done: str = ""  # its end likewise
    is_guess: bool = False  # nothing tells that it still stood


def _bars(planting: Planting, year: int, spans: list[Span], ledger: Ledger) -> tuple[Bar, ...]:
    begins, ends = ledger.year_begins(year), ledger.year_ends(year)
    still = ledger.garden.on if planting.is_open else None
    found = [
        _bar(span, (begins, ends), still) for span in spans if span.first <= ends and span.last >= begins
    ]
    return tuple([bar for bar in found if bar])


def _ground(planting: Planting, ledger: Ledger) -> Iterable[Span]:
    """Raised under glass until planted out, then in the ground until it ended or to this day."""
    start, placed = planting.start, planting.in_bed_from
    if start is None or placed is None:
        return
    last = planting.ended_on or ledger.garden.on
    if start.first < placed.first:
        yield Span(
            kind="raised",
            first=start.first,
            last=placed.first,
            is_open=not start.is_exact,
            begun=_coarse(start),
            done=_coarse(placed),
        )
    if placed.first <= last:
        is_open = planting.end_is_estimated or not placed.is_exact
        sure = min(last, _last_known(planting, ledger)) if is_open and placed.is_exact else last
        done = f"{day(last, last.year)}{GUESS}" if planting.end_is_estimated and sure == last else ""
        yield Span(
            kind="ground",
            first=placed.first,
            last=sure,
            is_open=not placed.is_exact,
            begun=_coarse(placed),
            done=done,
        )
        if sure < last:
            yield Span(kind="ground", first=sure, last=last, is_open=True, is_guess=True)


def _coarse(when: When) -> str:
    """A date that is no day, as the gardener wrote it."""
    return "" if when.is_exact else when_words(when)


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
        first, last = min(moments, key=lambda m: m.first), max(moments, key=lambda m: m.last)
        is_open = not all(m.is_exact for m in moments)
        yield Span(
            kind="picking",
            first=first.first,
            last=last.last,
            is_open=is_open,
            begun=_coarse(first),
            done=_coarse(last),
        )


def _expected(planting: Planting, ledger: Ledger) -> Iterable[Span]:
    forecast = ledger.reckoned.forecasts.get(planting.id)
    if forecast and planting.is_open and planting.first_picked is None:
        yield Span(kind="expected", first=forecast.earliest, last=forecast.latest, is_open=True)


def _bar(span: Span, season: tuple[date, date], still: date | None) -> Bar | None:
    """A span in a season, unless it misses it; one in the ground that ends on the day `still` has not ended."""
    found = stretch(span.first, span.last, season[0])
    if found is None:
        return None
    is_still = span.kind == "ground" and span.last == still and still <= season[1]
    told = _since(span, season[0]) if is_still else _days_told(span, season)
    told += GUESS if span.is_guess else ""
    return Bar(
        kind=span.kind, x=found[0], width=found[1], is_open=span.is_open, told=told, is_guess=span.is_guess
    )


def _since(span: Span, begins: date) -> str:
    return f"since {span.begun or day(span.first, span.first.year if span.first >= begins else None)}"


def _days_told(span: Span, season: tuple[date, date]) -> str:
    """The days of a span, as far as they lie in the season it is drawn in."""
    first, last = span.first, span.last
    begun, done = span.begun or day(first, first.year), span.done or day(last, last.year)
    if first < season[0]:
        return f"until {done}" if last <= season[1] else "all year"
    if last > season[1]:
        return f"from {begun}"
    if begun == done:
        return begun
    return f"{begun} – {done}" if span.begun or span.done else day_range(first, last)


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
