"""How much of a bed each planting took up, as far as the notes say: rows, metres of row, or a half of the bed.

Asked for each bed of the map. Where the notes do not say, every planting has an equal part, and the page says that it was guessed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from leafmould.garden.model import Planting
from leafmould.pages.ledger import Ledger
from leafmould.values.names import fold

OF_A_BED = {"half": 1 / 2, "quarter": 1 / 4}
"""Words a part ends in that say how much of the bed it is; "third" does not, since it may be the one after the second."""
LEAST = 0.04
"""A part that would be drawn smaller than this is not believed."""
LENGTHS = ("row", "m")


@dataclass(frozen=True, slots=True, kw_only=True)
class Shares:
    """The part of the bed each planting has, all of them together 1."""

    parts: tuple[float, ...]
    is_noted: bool  # whether the notes say so


def shares_of(plantings: Sequence[Planting], ledger: Ledger) -> Shares:
    """The parts of a bed these plantings have, in their order."""
    for unit in LENGTHS:
        long = [_as_started(planting, unit, ledger) for planting in plantings]
        if len(long) > 1 and all(long):
            return _noted(long)
    return _by_parts(plantings)


def _as_started(planting: Planting, unit: str, ledger: Ledger) -> float:
    """So many rows, or metres, as the note of its beginning says; 0 where it does not."""
    for key in planting.events:
        event = ledger.garden.event_by_id[key]
        for amount in event.action.amounts:
            if amount.unit == unit and amount.value and len(event.crops) == 1:
                return amount.value
    return 0.0


def _by_parts(plantings: Sequence[Planting]) -> Shares:
    """Halves and quarters, shared by those that stood in the same; what is left over is for the others."""
    parts = [planting.part or "" for planting in plantings]
    standing = Counter(parts)
    told = [OF_A_BED.get((fold(part) or ("",))[-1], 0.0) / standing[part] for part in parts]
    silent = told.count(0.0)
    left = (1 - sum(told)) / silent if silent else 0.0
    if not any(told) or (silent and left < LEAST):
        return Shares(parts=(1 / len(parts),) * len(parts), is_noted=False)
    return _noted([share or left for share in told])


def _noted(long: Sequence[float]) -> Shares:
    return Shares(parts=tuple(one / sum(long) for one in long), is_noted=True)
