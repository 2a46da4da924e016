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
    part: float | None = None  # 0.5 for half of what stands
    is_none: bool = False  # "0 leeks": nothing changes
    number: int | None = None
    of: int | None = None  # "4 of 12": how many there were

    @property
    def is_known(self) -> bool:
        """Whether it says how much at all."""
        return self.is_all or self.part is not None or self.number is not None

    def left_of(self, number: int) -> int:
        """How many of so many plants are left once the written part of them went."""
        return number if self.part is None else int(number * (1 - self.part) + 1e-9)


def portion(amounts: Iterable[Amount]) -> Portion:
    """The share amounts mean; no amount at all means everything."""
    amounts = tuple(amounts)
    if not amounts or any(a.whole in ("all", "the rest", "the last") for a in amounts):
        return Portion(is_all=True)
    if any(a.whole == "half" for a in amounts):
        return Portion(part=0.5)
    percent = next((a.value for a in amounts if a.unit == "%" and a.value is not None), None)
    if percent is not None:
        return Portion(part=percent / 100)
    counted = next((a for a in amounts if a.unit in PLANTS and a.count is not None), None)
    if counted is None:
        return Portion()
    if counted.count == 0:
        return Portion(is_none=True)
    return Portion(number=counted.count, of=None if counted.of is None else int(counted.of))


def plants(amounts: Iterable[Amount]) -> tuple[int | None, bool]:
    """How many plants or seeds, and whether that is a guess."""
    for amount in amounts:
        if amount.unit in PLANTS and amount.value is not None:
            return round(amount.value), amount.is_about or amount.count is None
    return None, False
