"""What can be done today, for the first page: what can be picked, what may still be begun, what wants a look.

Nothing here is ticked off: each line lapses by itself when its days are over or a note tells that it was done.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.garden.model import Planting
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link
from leafmould.pages.still_to_sow import still_to_sow
from leafmould.reckon.badges import STILL_PICKING

AHEAD = timedelta(days=7)
"""How long before its earliest day a picking is announced."""
AFTER = timedelta(days=14)
"""How long after its latest day an expected picking stays to be looked at; then the line lapses."""
WAITS = frozenset({"wait"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ToBegin:
    """A crop that may be begun today, and until when."""

    crop: Link  # leads to its days on the page of the crop
    words: str  # "sow until 9 August"
    has_seed: bool  # there is seed of it in the tin


def to_pick(ledger: Ledger) -> list[Planting]:
    """What was picked lately, the latest first, then what may be ripe by what is expected, the likeliest first."""
    open_now = [p for p in ledger.garden.plantings if p.is_open and not must_wait(p, ledger)]
    going = sorted(
        (p for p in open_now if _last_picked(p, ledger)),
        key=lambda p: (_last_picked(p, ledger), p.id),
        reverse=True,
    )
    forecasts = ledger.reckoned.forecasts
    ripe = [p for p in open_now if not _last_picked(p, ledger) and _may_be_ripe(p, ledger)]
    return [*going, *sorted(ripe, key=lambda p: (forecasts[p.id].likely, p.id))]


def soon(ledger: Ledger) -> list[Planting]:
    """Plantings whose first picking is near, the soonest likely day first."""
    forecasts, on = ledger.reckoned.forecasts, ledger.garden.on
    return [p for p in _waiting(ledger) if forecasts[p.id].earliest - AHEAD <= on < forecasts[p.id].earliest]


def overdue(ledger: Ledger) -> list[Planting]:
    """Plantings whose expected days went by without a picking noted, for a fortnight."""
    forecasts, on = ledger.reckoned.forecasts, ledger.garden.on
    return [
        p
        for p in _waiting(ledger)
        if forecasts[p.id].kind != "stands" and forecasts[p.id].latest < on <= forecasts[p.id].latest + AFTER
    ]


def must_wait(planting: Planting, ledger: Ledger) -> bool:
    """Whether something that was put on or let in wants days to pass before it is picked."""
    return any(badge.kind in WAITS for badge in ledger.reckoned.badges.get(planting.id, ()))


def waits(ledger: Ledger) -> list[Planting]:
    """What must not be picked yet though it is picked or near: nobody should have to look for that."""
    near = {p.id for p in (*soon(ledger), *overdue(ledger))}
    return [
        p
        for p in ledger.garden.plantings
        if p.is_open
        and must_wait(p, ledger)
        and (p.id in near or _last_picked(p, ledger) or _may_be_ripe(p, ledger))
    ]


def to_begin(ledger: Ledger) -> tuple[ToBegin, ...]:
    """The crops of the garden that may be begun in the open today, each in one way, what ends soonest first."""
    found = [(still, way.heading) for way in still_to_sow(ledger) for still in way.crops if still.is_open]
    by_crop = {still.crop.to: (still, heading) for still, heading in reversed(found)}
    with_seed = {f"{ledger.crop_pages[key]}#when" for key in ledger.lots if key in ledger.crop_pages}
    return tuple(
        ToBegin(
            crop=still.crop,
            words=f"{heading[:1].lower()}{heading[1:]} {still.words}",
            has_seed=still.crop.to in with_seed,
        )
        for still, heading in sorted(by_crop.values(), key=lambda one: (one[0].last, one[0].crop.text))
    )


def _waiting(ledger: Ledger) -> list[Planting]:
    forecasts = ledger.reckoned.forecasts
    found = [
        p
        for p in ledger.garden.plantings
        if p.is_open and (f := forecasts.get(p.id)) and (p.first_picked is None or f.kind == "season")
    ]
    return sorted(found, key=lambda p: (forecasts[p.id].likely, p.id))


def _may_be_ripe(planting: Planting, ledger: Ledger) -> bool:
    forecast, on = ledger.reckoned.forecasts.get(planting.id), ledger.garden.on
    if forecast is None or on < forecast.earliest:
        return False
    if forecast.kind == "stands":
        return True
    return on <= forecast.latest and (planting.first_picked is None or forecast.kind == "season")


def _last_picked(planting: Planting, ledger: Ledger) -> date | None:
    """The day it was last picked, if that was lately; of a lasting plant in its season."""
    on = ledger.garden.on
    last = planting.last_picked or planting.first_picked
    days = [last.last] if last else []
    days += [season.last_picked.last for season in planting.seasons if season.last_picked]
    latest = max(days, default=None)
    return latest if latest and 0 <= (on - latest).days <= STILL_PICKING else None
