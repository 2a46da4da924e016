"""Days, counts, amounts and weights in the words pages, messages and commands share.

Our own month names and number forms, so that no locale changes a byte.
"""

from __future__ import annotations

from datetime import date

from leafmould.values.quantities import GRAMS, Amount
from leafmould.values.when import When

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip

PLURALS = {"foot": "feet", "loaf": "loaves", "half": "halves", "leaf": "leaves", "box": "boxes"}

NEVER_PLURAL = frozenset(
    {"g", "kg", "oz", "lb", "ml", "l", "cm", "m", "ft", "in", "mm", "m²", "g/m²", "°C", "°F"}
)
"""Units that stay as they are: "2 kg"."""


def day(on: date, this_year: int | None = None) -> str:
    """A day as it stands in a sentence: "12 June 2026", or "12 June" in `this_year`."""
    words = f"{on.day} {MONTHS[on.month - 1]}"
    return words if on.year == this_year else f"{words} {on.year}"


def day_range(first: date, last: date, this_year: int | None = None) -> str:
    """A span of days: "4–18 July", "20 June – 4 July", "20 December 2026 – 4 January 2027".

    The year is told where the span crosses two, and where it is not `this_year` (if that is given).
    """
    if first.year != last.year:
        return f"{day(first)} – {day(last)}"
    year = "" if this_year in (None, first.year) else f" {first.year}"
    end = f"{last.day} {MONTHS[last.month - 1]}{year}"
    if first == last:
        return end
    if first.month == last.month:
        return f"{first.day}–{end}"
    return f"{first.day} {MONTHS[first.month - 1]} – {end}"


def when_words(when: When, this_year: int | None = None) -> str:
    """A day in words, or a coarse date as the gardener wrote it: "12 June 2026", "spring 2024"."""
    return when.written if when.day is None else day(when.day, this_year)


def counted(number: int, one: str, many: str | None = None) -> str:
    """A number with its word: "1 day", "12 days"."""
    return f"{number:,} {one if number == 1 else many or plural(one)}"


def plural(word: str) -> str:
    """The plural of a unit or noun."""
    if word in NEVER_PLURAL:
        return word
    if word in PLURALS:
        return PLURALS[word]
    if word.endswith("y") and word[-2:-1] not in "aeiou":
        return f"{word[:-1]}ies"
    return f"{word}es" if word.endswith(("s", "sh", "ch", "x")) else f"{word}s"


def number_words(value: float) -> str:
    """A number without needless zeros: "3", "2.5", "1,250"."""
    return f"{value:,.0f}" if value == int(value) else f"{value:,.2f}".rstrip("0").rstrip(".")


def weight(grams: float, units: str) -> str:
    """A weight in the garden's units: "340 g", "1.4 kg" or, imperial, "12 oz", "3 lb 1 oz"."""
    return _imperial(grams) if units == "imperial" else _metric(grams)


def amount_words(amount: Amount, units: str) -> str:
    """A total in words: weights in the garden's units, counts and measures in their own."""
    if amount.value is None:
        return amount.written
    about = "about " if amount.is_about else ""
    if amount.unit in GRAMS and amount.grams is not None:
        return about + weight(amount.grams, units)
    if amount.unit == "piece":
        return about + number_words(amount.value)
    unit = amount.unit if 0 < amount.value <= 1 else plural(amount.unit)
    number = number_words if amount.unit in DECIMAL_UNITS else _with_fraction
    return f"{about}{number(amount.value)} {unit}"


def _with_fraction(value: float) -> str:
    """ "½", "2½": quarters of a measure as one says them."""
    sign = FRACTION_SIGNS.get(value % 1)
    return number_words(value) if sign is None else f"{int(value):,}{sign}" if value >= 1 else sign


DECIMAL_UNITS = frozenset({"ml", "cl", "dl", "l", "mm", "cm", "m", "m²", "%"})
FRACTION_SIGNS = {0.25: "¼", 0.5: "½", 0.75: "¾"}
"""A part of one, with its sign."""


def _metric(grams: float) -> str:
    if 0 < grams < 0.5:
        return "under 1 g"
    if round(grams) < 1000:
        return f"{grams:.0f} g"
    return f"{grams / 1000:,.1f}".removesuffix(".0") + " kg"


def _imperial(grams: float) -> str:
    ounces = round(grams / GRAMS["oz"])
    if ounces == 0 and grams > 0:
        return "under 1 oz"
    pounds, rest = divmod(ounces, 16)
    if pounds == 0:
        return f"{rest} oz"
    return f"{pounds:,} lb {rest} oz" if rest else f"{pounds:,} lb"
