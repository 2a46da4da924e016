"""When a planting nobody cleared is presumed over, and from what.

Used while matching (may a picking still mean this planting?) and once more at the end. Fills no written
date: what comes out is always marked as estimated.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable
from datetime import date, timedelta

from leafmould.garden.draft import Draft, Over

DAYS_AFTER_AVERAGE_FROST = 14
"""A frost that kills comes some time after the average first one. Common practice, no source."""
DAYS_WITHOUT_PICKING = 60
DAYS_FROSTED_STANDS = 183
"""What a frost killed, or what was called finished, may be cleared as late as the next spring."""
DAYS_IN_TRAYS = 150
"""After these a raised batch is no longer taken as waiting to be planted out."""


class KillingFrosts:
    """The frosts that end tender plants: noted ones, else the average first frost and a fortnight."""

    def __init__(
        self, noted: Iterable[date], average: tuple[int, int] | None, *, years: range, is_southern: bool
    ) -> None:
        by_autumn: dict[int, list[date]] = defaultdict(list)
        for day in noted:
            autumn = _autumn_of(day, is_southern)
            if autumn is not None:
                by_autumn[autumn].append(day)
        self._is_noted = {day: True for days in by_autumn.values() for day in days}
        for year in years if average else ():
            if year not in by_autumn and average:
                day = _average_in(year, average, is_southern)
                by_autumn[year].append(day)
                self._is_noted.setdefault(day, False)
        self._days = sorted(self._is_noted)

    def first_from(self, day: date) -> Over | None:
        """The first killing frost from a day on; what was picked that day was saved from it."""
        place = bisect_left(self._days, day)
        if place == len(self._days):
            return None
        frost = self._days[place]
        told = "a noted frost" if self._is_noted[frost] else "the average first frost and 14 days"
        return Over(on=frost, basis=f"presumed over: {told}", days_open=DAYS_FROSTED_STANDS)


def presumed_end(draft: Draft, frosts: KillingFrosts) -> Over | None:
    """The first thing that would end it after it was last seen alive; None for a lasting plant."""
    if draft.is_perennial:
        return None
    if draft.is_raised and draft.picked_first is None and draft.moved is None:
        on = draft.begins + timedelta(days=DAYS_IN_TRAYS)
        return Over(on=on, basis="presumed over: 150 days since it was started, never planted out")
    alive = max(draft.begins, draft.last_sign or draft.begins)
    likely = [_too_long(draft, alive)]
    if draft.finished is not None and draft.finished >= alive:
        on = draft.finished
        likely.append(Over(on=on, basis="finished", days_open=DAYS_FROSTED_STANDS, is_noted=True))
    if draft.is_lifted and draft.pickings:
        on = alive + timedelta(days=DAYS_WITHOUT_PICKING)
        likely.append(Over(on=on, basis="presumed over: lifted, then 60 days without a picking"))
    displaced = [day for day in draft.displaced if day >= alive]
    if draft.is_tender:
        frost = frosts.first_from(alive)
        likely.extend([frost] if frost else [])
    if draft.rival_on is not None:
        on = max(draft.rival_on, alive) + timedelta(days=DAYS_WITHOUT_PICKING)
        likely.append(Over(on=on, basis="presumed over: started anew, then 60 days without a picking"))
    else_over = min(likely, key=_soonest)
    if not displaced:
        return else_over
    likely = [_displaced(min(displaced), else_over, is_alone=draft.rival_on is None), else_over]
    return min(likely, key=_soonest)


def _displaced(on: date, else_over: Over, *, is_alone: bool) -> Over:
    """Another crop in its place is weak proof: till it would be over in any case, its name revives it.

    Unless the same crop was started there anew: then the name means that.
    """
    longer = (else_over.on - on).days + else_over.days_open
    return Over(
        on=on,
        basis="presumed over: another crop was started in its place",
        days_open_by_name=longer if is_alone else 0,
    )


def _soonest(over: Over) -> tuple[date, bool]:
    return (over.on, not over.is_noted)


def _too_long(draft: Draft, alive: date) -> Over:
    on = add_months(draft.begins, draft.months)
    if alive <= on:
        return Over(on=on, basis=f"presumed over: {draft.months} months since it began")
    on = alive + timedelta(days=DAYS_WITHOUT_PICKING)
    return Over(on=on, basis=f"presumed over: more than {draft.months} months, then 60 days without a note")


def add_months(day: date, months: int) -> date:
    """The same day so many whole years later; 29 February falls back to the 28th."""
    year = day.year + months // 12
    return day.replace(year=year, day=28) if (day.month, day.day) == (2, 29) else day.replace(year=year)


def _autumn_of(day: date, is_southern: bool) -> int | None:
    """The year in whose autumn or winter a frost falls; None for a frost of spring."""
    if is_southern:
        return day.year if day.month <= 8 else None
    if day.month >= 7:
        return day.year
    return day.year - 1 if day.month <= 2 else None


def _average_in(autumn: int, average: tuple[int, int], is_southern: bool) -> date:
    month, number = average
    year = autumn + 1 if not is_southern and month <= 6 else autumn
    day = date(year, month, min(number, 28) if month == 2 else number)
    return day + timedelta(days=DAYS_AFTER_AVERAGE_FROST)
