"""How much of a planting an amount means: all, half, so many, or no telling."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leafmould.values.quantities import Amount

PLANTS = frozenset(
    {
        "piece", "plant", "seed", "seedling", "set", "clove", "tuber", "crown", "bulb", "corm",
        "cutting", "runner", "slip", "start", "tree", "bush", "cane", "root", "head", "bean", "pea",
    }
)  # fmt: skip
"""Units that count plants, or what one plant grows from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Portion:
    """A share of what stands."""

    is_all: bool = False
    is_half: bool = False
    number: int | None = None
    of: int | None = None  # "4 of 12": how many there were

    @property
    def is_known(self) -> bool:
        """Whether it says how much at all."""
        return self.is_all or self.is_half or self.number is not None


def portion(amounts: Iterable[Amount]) -> Portion:
    """The share amounts mean; no amount at all means everything."""
    amounts = tuple(amounts)
    if not amounts or any(a.whole in ("all", "the rest", "the last") for a in amounts):
        return Portion(is_all=True)
    if any(a.whole == "half" for a in amounts):
        return Portion(is_half=True)
    counted = next((a for a in amounts if a.unit in PLANTS and a.count is not None), None)
    if counted is None:
        return Portion()
    return Portion(number=counted.count, of=None if counted.of is None else int(counted.of))


def plants(amounts: Iterable[Amount]) -> tuple[int | None, bool]:
    """How many plants or seeds, and whether that is a guess."""
    for amount in amounts:
        if amount.unit in PLANTS and amount.value is not None:
            return round(amount.value), amount.is_about or amount.count is None
    return None, False
