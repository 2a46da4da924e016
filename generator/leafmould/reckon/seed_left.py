"""How much of a packet is left: what was counted, less what notes tell of sowing and trying since.

A count stands in the table of the tin with the day it was made ("counted"), or in the note of the buying or saving. Seeds
and grams only; a bare number sown is so many seeds. What was sown by the row or the tray is told as not counted. Pure.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from leafmould.garden.model import Event, Garden
from leafmould.notes.setting_values import KeptSeed
from leafmould.values.quantities import Amount
from leafmould.values.wording import counted, number_words

SEEDS = frozenset({"seed", "piece"})
USES = frozenset({"started", "sowed", "resowed", "tried seed"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What is left of a packet, as far as it was counted."""

    seeds: float | None  # one of the two
    grams: float | None
    words: str  # "8 of 20 seeds left by the notes"; empty where nothing was taken since


@dataclass(frozen=True, slots=True, kw_only=True)
class _Counted:
    """What there was, and from which day on it is taken from."""

    amount: float
    is_weighed: bool
    since: date


def seed_left(
    row: KeptSeed | None,
    got: Sequence[str],
    sown: Iterable[str],
    tried: Iterable[str],
    garden: Garden,
) -> Left | None:
    """What is left of one packet; None where nobody counted it, or wrote when.

    Args:
        row: the packet in the table.
        got: ids of the events of its buying or saving.
        sown: ids of the plantings from it.
        tried: ids of the events of its trials.
    """
    had = _had(row, [garden.event_by_id[key] for key in got])
    if had is None:
        return None
    keys = {key for planting in sown for key in garden.planting_by_id[planting].events} | set(tried)
    uses = [garden.event_by_id[key] for key in sorted(keys)]
    uses = [event for event in uses if event.verb in USES and event.when.first >= had.since]
    taken = [_taken(event, is_weighed=had.is_weighed) for event in uses]
    used, unknown = sum(one for one in taken if one is not None), taken.count(None)
    left = max(0.0, had.amount - used)
    return Left(
        seeds=None if had.is_weighed else left,
        grams=left if had.is_weighed else None,
        words=_words(had, used, unknown) if uses else "",
    )


def _had(row: KeptSeed | None, got: Sequence[Event]) -> _Counted | None:
    """What the table says was counted on a day, else what the notes say was got."""
    if row is not None and row.amount:
        amount = row.seeds or row.grams
        if row.counted is None or not amount:
            return None
        return _Counted(amount=amount, is_weighed=not row.seeds, since=row.counted)
    for is_weighed in (False, True):
        amounts = [_of(event.action.amounts, is_weighed=is_weighed) for event in got]
        known = [amount for amount in amounts if amount is not None]
        if known and len(known) == len(amounts):
            since = min(event.when.first for event in got)
            return _Counted(amount=sum(known), is_weighed=is_weighed, since=since)
    return None


def _taken(event: Event, *, is_weighed: bool) -> float | None:
    """What one sowing or trial took; None where it was not counted, or for several crops together."""
    if len(event.crops) != 1 or len(event.varieties) > 1:
        return None
    if event.verb == "tried seed":
        tried = next((a.of for a in event.action.amounts if a.of), None)
        return None if is_weighed else tried
    return _of(event.action.amounts, is_weighed=is_weighed)


def _of(amounts: Iterable[Amount], *, is_weighed: bool) -> float | None:
    """The one count or weight among some amounts."""
    found = [
        amount.grams if is_weighed else amount.value
        for amount in amounts
        if (amount.grams is not None if is_weighed else amount.unit in SEEDS and amount.value is not None)
    ]
    return found[0] if len(found) == 1 else None


def _words(had: _Counted, used: float, unknown: int) -> str:
    """ "8 of 20 seeds left by the notes; 1 sowing not counted"."""
    whole = (
        f"{number_words(round(had.amount, 1))} g" if had.is_weighed else counted(round(had.amount), "seed")
    )
    if used >= had.amount:
        said = f"none of {whole} left by the notes"
    elif used:
        said = f"{number_words(round(had.amount - used, 1))} of {whole} left by the notes"
    else:
        said = f"of {whole}"
    more = f"{counted(unknown, 'sowing')} not counted" if unknown else ""
    return "; ".join(filter(None, (said, more)))
