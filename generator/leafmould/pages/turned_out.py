"""How expectations turned out: what was expected of each planting on its first day, and when it was picked.

An honest look back, so that a gardener knows how far to trust a label. Reckoned in `reckon.hindsight`.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.pages.addresses import TURNED_OUT
from leafmould.pages.labels import planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Figure, Link, Page
from leafmould.reckon.here import Turned, outside
from leafmould.reckon.hindsight import Score, scores, way_scores
from leafmould.reckon.standing import stands
from leafmould.values.wording import counted, day, day_range

MOST_ROWS = 120
"""Plantings listed, the newest; the sums are of all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreRow:
    """How one kind of expectation did."""

    kind: str
    inside: str  # "14 of 17"
    share: str  # "82%"
    width: str  # "31 days"
    miss: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnedRow:
    """One planting."""

    planting: Link
    begun: str
    expected: str
    picked: Figure
    verdict: str  # "as expected", "34 days later", "5 days sooner"


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnedOutPage:
    """The values of the page."""

    ways: tuple[ScoreRow, ...]  # each adds something to the one before
    scores: tuple[ScoreRow, ...]  # as expectations are reckoned now, by what they start from
    uses_record: bool
    uses_warmth: bool | None  # None: there is no table of the usual warmth
    missed: tuple[TurnedRow, ...]  # the farthest off first
    held: tuple[TurnedRow, ...]  # as expected, or standing until wanted, the newest first
    shown: int
    in_all: int


def turned_out_page(ledger: Ledger) -> Page:
    """Sums first, then the plantings that were not picked as expected, then those that were."""
    turned = ledger.reckoned.turned_out
    newest = sorted(turned, key=lambda t: (t.begun, t.planting.id), reverse=True)[:MOST_ROWS]
    missed = sorted((t for t in newest if _is_missed(t, ledger)), key=lambda t: -abs(_outside(t, ledger)))
    values = TurnedOutPage(
        ways=tuple(_score(score) for score in way_scores(turned)),
        uses_record=ledger.reckoned.uses_record,
        uses_warmth=ledger.reckoned.uses_warmth if any(t.warm for t in turned) else None,
        scores=tuple(_score(score) for score in scores(turned, uses_record=ledger.reckoned.uses_record)),
        missed=tuple(_row(t, ledger) for t in missed),
        held=tuple(_row(t, ledger) for t in newest if not _is_missed(t, ledger)),
        shown=len(newest),
        in_all=len(turned),
    )
    return Page(
        address=TURNED_OUT,
        template="turned-out.html",
        title="How expectations turned out",
        section="sources",
        values=values,
    )


def _score(score: Score) -> ScoreRow:
    return ScoreRow(
        kind=score.kind,
        inside=f"{score.inside} of {score.count}",
        share=f"{100 * score.inside / score.count:.0f}%",
        width=counted(round(score.mean_width), "day"),
        miss=counted(round(score.mean_miss), "day"),
    )


def _outside(turned: Turned, ledger: Ledger) -> int:
    """How many days off the range it was picked, as expectations are reckoned now."""
    return outside(turned.here if ledger.reckoned.uses_record else turned.base, turned.picked)


def _is_missed(turned: Turned, ledger: Ledger) -> bool:
    off = _outside(turned, ledger)
    return off != 0 and not (off > 0 and stands(turned.planting))


def _row(turned: Turned, ledger: Ledger) -> TurnedRow:
    planting = turned.planting
    forecast = turned.here if ledger.reckoned.uses_record else turned.base
    picking = next(
        (p for p in planting.pickings if ledger.garden.picking_by_id[p].when.day == turned.picked), ""
    )
    entry = ledger.garden.picking_by_id[picking].entry if picking else None
    return TurnedRow(
        planting=Link(text=planting_name(planting), to=ledger.sections[planting.id]),
        begun=day(turned.begun),
        expected=day_range(forecast.earliest, forecast.latest),
        picked=Figure(
            text=day(turned.picked),
            value=turned.picked.isoformat(),
            is_time=True,
            to=ledger.to_note(entry) or ledger.sections[planting.id],
        ),
        verdict=_verdict(_outside(turned, ledger), is_standing=stands(planting)),
    )


def _verdict(outside: int, *, is_standing: bool) -> str:
    if outside == 0:
        return "as expected"
    if is_standing and outside > 0:
        return "stood until it was wanted"
    return f"{counted(abs(outside), 'day')} {'later' if outside > 0 else 'sooner'}"
