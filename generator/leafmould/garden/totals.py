"""Adding up pickings: weights with weights, each other unit by itself; shares are none."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable

from leafmould.garden.model import Picking
from leafmould.values.quantities import GRAMS, Amount

BIG_UNIT = {"metric": "kg", "imperial": "lb"}


def add_up(pickings: Iterable[Picking], *, units: str) -> tuple[Amount, ...]:
    """One total for each unit that can be added; weights come first, in the garden's own unit."""
    by_unit: dict[str, list[Amount]] = defaultdict(list)
    weight = BIG_UNIT.get(units, "kg")
    for picking in pickings:
        for amount in picking.amounts:
            if amount.value is not None and amount.unit != "%":
                by_unit[weight if amount.unit in GRAMS else amount.unit].append(amount)
    order = sorted(by_unit, key=lambda unit: (unit != weight, unit))
    return tuple(_sum(by_unit[unit], unit) for unit in order)


def _sum(amounts: list[Amount], unit: str) -> Amount:
    low = sum((a.low or 0.0) * _factor(a, unit) for a in amounts)
    high = sum((a.high or 0.0) * _factor(a, unit) for a in amounts)
    measures = {a.measure_g for a in amounts}
    return Amount(
        written=_written(low, high, unit),
        low=low,
        high=high,
        unit=unit,
        is_about=any(a.is_about for a in amounts),
        measure_g=measures.pop() if len(measures) == 1 else None,
    )


def _factor(amount: Amount, unit: str) -> float:
    if amount.unit == unit:
        return 1.0
    return GRAMS[amount.unit] / GRAMS[unit]


def _written(low: float, high: float, unit: str) -> str:
    number = _number(low) if abs(high - low) < 1e-9 else f"{_number(low)}–{_number(high)}"
    return number if unit == "piece" else f"{number} {unit}"


def _number(value: float) -> str:
    return f"{round(value, 3):,.10g}"
