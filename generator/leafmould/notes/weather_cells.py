"""The cells of the two tables of weather: temperatures, rain, months and days, each in the unit of its column.

Everything becomes degrees Celsius and millimetres. In an imperial garden plain numbers are Fahrenheit and inches,
unless a heading or the cell says otherwise. Serves `weather_files`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from leafmould.values.date_forms import month_of
from leafmould.values.dates import read_date

DEGREES = {"c": ("c", "°c", "(c)", "(°c)", "celsius"), "f": ("f", "°f", "(f)", "(°f)", "fahrenheit")}
DEPTHS = {"mm": ("mm", "(mm)"), "in": ("in", "(in)", "inches", "inch")}
BETWEEN = (" ", "_", " in ", "")
"""What stands between a heading and its unit."""

NUMBER = re.compile(r"[-−–]?\d{1,4}(?:[.,]\d{1,3})?")
PLAIN_DAY = re.compile(r"(\d{4})-(\d\d)-(\d\d)")
IN_MM = re.compile(r"\bmm\b")
IN_INCHES = re.compile(r"(?:rain\w*|precip\w*|wet)[\s_(]*(?:in[\s_]+)?(?:in|inch|inches)\b")
TRACE = frozenset({"trace", "tr", "t", "none", "nil", "dry"})
BELIEVED = (-60.0, 55.0)
"""What the air may be [°C]: beyond it a number is a slip."""
MOST_RAIN = 1000.0
"""What a day's rain may be [mm]; a month's may be three times that."""
HOTTEST = 140.0
"""A number no thermometer shows, in either unit."""
INCH = 25.4
"""Of rain [mm]. Source: international yard, 0.9144 m exactly (1959)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Units:
    """In which units the columns stand."""

    is_fahrenheit: bool
    is_inches: bool
    says_degrees: bool  # the heading does; else it is the garden's habit


def with_units(headings: Sequence[str], units: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """Headings alone, and with a unit behind them: "low", "low C", "low (°F)", "low_f"."""
    behind = [word for words in units.values() for word in words]
    joined = (
        f"{heading}{between}{word}"
        for heading in headings
        for word in behind
        for between in BETWEEN
        if between or word.startswith("(")
    )
    return (*headings, *joined)


def units_of(text: str, units: str) -> Units:
    """What the header row says, else what the garden's units are.

    Args:
        units: "metric" or "imperial".
    """
    header = next((line for line in text.split("\n") if line.strip()), "").casefold()
    words = set(re.split(r"[\s,;_()\"]+", header))
    is_imperial = units == "imperial"
    fahrenheit, celsius = bool(words & {"f", "°f", "fahrenheit"}), bool(words & {"c", "°c", "celsius"})
    return Units(
        is_fahrenheit=fahrenheit or (is_imperial and not celsius),
        is_inches=not IN_MM.search(header.replace("_", " "))
        and (is_imperial or IN_INCHES.search(header) is not None),
        says_degrees=fahrenheit or celsius,
    )


def degrees(cell: str, units: Units) -> float | None:
    """A temperature [°C]; None for what is none, or cannot be.

    A Fahrenheit number in a Celsius table must get as far as being told so.
    """
    text = cell.strip().rstrip("°CcFf \u00a0")
    if not NUMBER.fullmatch(text):
        return None
    number = float(text.replace("−", "-").replace("–", "-").replace(",", "."))
    unit = cell.strip()[-1:].casefold()
    is_fahrenheit = unit == "f" or (unit != "c" and units.is_fahrenheit)
    celsius = from_fahrenheit(number) if is_fahrenheit else number
    return celsius if BELIEVED[0] <= celsius <= (BELIEVED[1] if is_fahrenheit else HOTTEST) else None


def from_fahrenheit(number: float) -> float:
    """Degrees Celsius."""
    return (number - 32) / 1.8


def depth(cell: str, units: Units, most: float = MOST_RAIN) -> float | None:
    """Rain [mm]; a trace is none that counts."""
    text = cell.strip().casefold()
    if text in TRACE:
        return 0.0
    is_inches = units.is_inches
    for unit in ("mm", "inches", "inch", "in", '"'):
        if text.endswith(unit):
            text, is_inches = text.removesuffix(unit).strip(), unit != "mm"
            break
    if not NUMBER.fullmatch(text) or text[:1] in "-−–":
        return None
    found = float(text.replace(",", ".")) * (INCH if is_inches else 1.0)
    return found if found <= most else None


def month(cell: str) -> int | None:
    """The number of a month, by number or name."""
    text = cell.strip()
    if re.fullmatch(r"[0-9]{1,2}", text):
        return int(text) if 1 <= int(text) <= 12 else None
    return month_of(text)


def day(cell: str, order: str | None) -> date | None:
    """A day, written in any way the notes know; the usual form is read at once."""
    if m := PLAIN_DAY.fullmatch(cell):
        try:
            return date(int(m[1]), int(m[2]), int(m[3])) if m[1] >= "1800" else None
        except ValueError:
            return None
    reading = read_date(cell, order=order, base=None, is_southern=False) if cell else None
    return reading.when.day if reading and reading.when and reading.other is None else None
