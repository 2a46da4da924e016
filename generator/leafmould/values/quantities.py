"""Amounts as gardeners write them, and what can be added.

An Amount keeps its words and its unit. Only amounts of one kind are ever added; grams exist only where
a weight was written or the garden says what its own measure weighs.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Whole = Literal["all", "half", "the rest", "the last", "some", "a few"]

GRAMS = {
    "g": 1.0, "dag": 10.0, "hg": 100.0, "kg": 1000.0, "t": 1_000_000.0,
    "oz": 28.349523125, "lb": 453.59237, "stone": 14 * 453.59237, "cwt": 112 * 453.59237,
}  # fmt: skip
"""Weight of one unit [g]. Sources: SI brochure for the prefixes and the tonne; international avoirdupois
pound, 0.45359237 kg exactly (1959); 14 pounds to the stone and 112 to the hundredweight by the United
Kingdom's Weights and Measures Act 1985."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """How much or how many, as written and as far as it can be reckoned with."""

    written: str  # "about 2 kg", "two trays", "3 lb 4 oz", "all"
    low: float | None  # in `unit`; None where no number was given ("a few", "all")
    high: float | None  # equal to low unless a range was written
    unit: str  # "kg", "g", "m", "jar", "tray", "seed", "row"; "piece" for a bare count; singular
    is_about: bool = False  # "about", "~", a range, or a fraction of something uncounted
    of: float | None = None  # "4 of 12": 12.0
    whole: Whole | None = None  # words instead of a number
    measure_g: float | None = None  # what one `unit` weighs by garden.yaml, for own measures

    @property
    def value(self) -> float | None:
        """The number, the middle of a range, or None."""
        if self.low is None or self.high is None:
            return None
        return (self.low + self.high) / 2

    @property
    def grams(self) -> float | None:
        """Weight [g]; None where it was not weighed and no measure is known."""
        if self.value is None:
            return None
        if self.unit in GRAMS:
            return self.value * GRAMS[self.unit]
        return None if self.measure_g is None else self.value * self.measure_g

    @property
    def is_estimated(self) -> bool:
        """Whether grams are a guess: an "about", a range or the garden's own measure."""
        return self.is_about or self.measure_g is not None or self.low != self.high

    @property
    def count(self) -> int | None:
        """How many plants or pieces, where it is a whole count; None for weights and lengths."""
        if self.unit in NOT_COUNTS or self.value is None or self.value != int(self.value):
            return None
        return int(self.value)


NOT_COUNTS = frozenset(
    {
        *GRAMS, "%", "ml", "cl", "dl", "l", "pint", "quart", "gallon", "cup", "bushel",
        "cm", "m", "ft", "yd", "in", "mm", "m²", "g/m²", "°C", "°F", "row", "packet",
    }
)  # fmt: skip
"""Units that do not count plants or pieces."""
