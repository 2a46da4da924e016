"""records/normals.csv and records/weather.csv: the usual warmth of each month, and each day's as it was measured.

Read once with the settings, into degrees Celsius and millimetres. In an imperial garden plain numbers are
Fahrenheit and inches, unless the heading says otherwise ("low C"). A row that cannot be used costs only itself; a table
that is plainly in the other unit is not used at all, because every sum from it would be wrong.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from leafmould.notes.setting_values import MonthNormal, WeatherDay
from leafmould.notes.tables import Row, read_table
from leafmould.values.date_forms import month_of
from leafmould.values.dates import read_date
from leafmould.values.problems import Level, Location, Problem, in_file_order
from leafmould.values.wording import MONTHS, counted
from leafmould.values.wording import day as day_words

NORMALS = "records/normals.csv"
WEATHER = "records/weather.csv"

LOW = ("low", "min", "minimum", "tmin", "lowest", "night", "lo", "mean low", "average low")
HIGH = ("high", "max", "maximum", "tmax", "highest", "day", "hi", "mean high", "average high")
RAIN = ("rain", "rainfall", "precipitation", "precip", "wet", "rain fall")
DEGREES = {"c": ("c", "°c", "(c)", "(°c)", "celsius"), "f": ("f", "°f", "(f)", "(°f)", "fahrenheit")}
DEPTHS = {"mm": ("mm", "(mm)"), "in": ("in", "(in)", "inches", "inch")}
MONTH_HEADINGS = ("month", "monat", "mois", "mes", "mese", "maand")
DATE_HEADINGS = ("date", "day", "when", "datum", "jour", "fecha", "data")

NUMBER = re.compile(r"[-−–]?\d{1,4}(?:[.,]\d{1,3})?")
TRACE = frozenset({"trace", "tr", "t", "none", "nil", "dry"})
BELIEVED = (-60.0, 55.0)
"""What the air may be [°C]: beyond it a number is a slip."""
MOST_RAIN = 1000.0
"""What a day's rain may be [mm]."""
HOTTEST = 140.0
"""A number no thermometer shows, in either unit."""
WARMEST = 50.0
"""A high above this is a Fahrenheit number [°C]."""
COLDEST_SUMMER = 8.0
"""Where the warmest month's high is below this, nobody gardens: the numbers are Celsius [°C]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Units:
    """In which units the columns stand."""

    is_fahrenheit: bool
    is_inches: bool


def read_normals(
    text: str, file: str = NORMALS, *, units: str = "metric"
) -> tuple[tuple[MonthNormal, ...], tuple[Problem, ...]]:
    """Twelve months in order, or none: a year with a hole in it makes no curve.

    Args:
        units: "metric" or "imperial": what plain numbers are in.
    """
    columns = {"month": MONTH_HEADINGS, "low": _with(LOW, DEGREES), "high": _with(HIGH, DEGREES)}
    table = read_table(text, file, columns, {"rain": _with(RAIN, DEPTHS)})
    problems = list(table.problems)
    measured = _units(text, units)
    months: dict[int, MonthNormal] = {}
    for row in table.rows:
        found = _normal(row, measured, file, problems)
        if found is None:
            continue
        if found.month in months:
            message = f"{MONTHS[found.month - 1]} stands here a second time. The first row counts."
            problems.append(_told(file, row.line, Level.WARNING, message))
        else:
            months[found.month] = found
    if not months:
        return (), in_file_order(problems)
    missing = [MONTHS[month - 1] for month in range(1, 13) if month not in months]
    if missing:
        message = f"{' and '.join(missing)} {'is' if len(missing) == 1 else 'are'} missing, so the table is not used."
        problems.append(_told(file, None, Level.ERROR, message))
        return (), in_file_order(problems)
    year = tuple(months[month] for month in range(1, 13))
    if fault := _other_unit([m.high for m in year], measured, is_year=True):
        problems.append(_told(file, None, Level.ERROR, fault))
        return (), in_file_order(problems)
    return year, in_file_order(problems)


def read_weather(
    text: str, file: str = WEATHER, *, units: str = "metric", order: str | None = None
) -> tuple[tuple[WeatherDay, ...], tuple[Problem, ...]]:
    """The days of the table in order, each once, and what is wrong with the others.

    Args:
        units: "metric" or "imperial": what plain numbers are in.
        order: "day first" or "month first": how 3/4/2026 is read.
    """
    others = {
        "low": _with(LOW, DEGREES),
        "high": _with(HIGH[:4] + HIGH[5:], DEGREES),
        "rain": _with(RAIN, DEPTHS),
    }
    table = read_table(text, file, {"date": DATE_HEADINGS}, others)
    problems = list(table.problems)
    measured = _units(text, units)
    days: dict[date, WeatherDay] = {}
    for row in table.rows:
        read = _day(row, measured, order, file, problems)
        if read is None:
            continue
        if (before := days.get(read.on)) is not None:
            same = (before.low, before.high, before.rain) == (read.low, read.high, read.rain)
            if not same:
                message = f"{day_words(read.on)} stands here a second time. The first row counts."
                problems.append(_told(file, row.line, Level.WARNING, message))
            continue
        days[read.on] = read
    found = [days[day] for day in sorted(days)]
    if fault := _other_unit([d.high for d in found if d.high is not None], measured, is_year=False):
        problems.append(_told(file, None, Level.ERROR, fault))
        return (), in_file_order(problems)
    problems += _gaps(found, file)
    return tuple(found), in_file_order(problems)


def _with(headings: Sequence[str], units: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """Headings alone, and with a unit behind them: "low", "low C", "low (°F)"."""
    behind = [word for words in units.values() for word in words]
    return (*headings, *(f"{heading} {word}" for heading in headings for word in behind))


def _units(text: str, units: str) -> _Units:
    """What the header row says, else what the garden's units are."""
    header = next((line for line in text.split("\n") if line.strip()), "").casefold()
    words = set(re.split(r"[\s,;_\t()\"]+", header))
    is_imperial = units == "imperial"
    fahrenheit = bool(words & {"f", "°f", "fahrenheit"})
    celsius = bool(words & {"c", "°c", "celsius"})
    return _Units(
        is_fahrenheit=fahrenheit or (is_imperial and not celsius),
        is_inches=bool(words & {"in", "inch", "inches"}) or (is_imperial and "mm" not in words),
    )


def _normal(row: Row, units: _Units, file: str, problems: list[Problem]) -> MonthNormal | None:
    """A month of the table; None, and why, where the row cannot be used."""
    cells = row.cells

    def tell(level: Level, message: str, field: str | None = None) -> None:
        problems.append(_told(file, row.line, level, message, field))

    cell = cells.get("month", "")
    month = _month(cell)
    if month is None:
        tell(
            Level.ERROR,
            f'"{cell}" is no month.' if cell else "This row has no month, so it is not used.",
            "month",
        )
        return None
    name = MONTHS[month - 1]
    found: dict[str, float] = {}
    for column in ("low", "high"):
        cell = cells.get(column, "")
        degrees = _degrees(cell, units)
        if degrees is None:
            tell(Level.ERROR, f'"{cell}" is no temperature.' if cell else f"{name} has no {column}.", column)
            return None
        found[column] = degrees
    low, high = sorted(found.values())
    if found["low"] > found["high"]:
        tell(
            Level.WARNING, f"The low of {name} is above its high. They are taken the other way round.", "low"
        )
    return MonthNormal(month=month, low=low, high=high, rain=_depth(cells.get("rain", ""), units))


def _day(row: Row, units: _Units, order: str | None, file: str, problems: list[Problem]) -> WeatherDay | None:
    """A day of the table; None, and why, where its date cannot be used. A cell that cannot be costs only itself."""
    cells = row.cells

    def tell(level: Level, message: str, field: str | None = None) -> None:
        problems.append(_told(file, row.line, level, message, field))

    cell = cells.get("date", "")
    on = _date(cell, order)
    if on is None:
        message = (
            f'"{cell}" is no day. Write it such as 2026-06-20.'
            if cell
            else "This row has no date, so it is not used."
        )
        tell(Level.ERROR, message, "date")
        return None
    found: dict[str, float | None] = {}
    for column in ("low", "high"):
        cell = cells.get(column, "")
        found[column] = _degrees(cell, units)
        if cell and found[column] is None:
            tell(Level.ERROR, f'"{cell}" is no temperature, so it is not used.', column)
    cell = cells.get("rain", "")
    rain = _depth(cell, units)
    if cell and rain is None:
        tell(Level.ERROR, f'"{cell}" is no amount of rain, so it is not used.', "rain")
    low, high = found["low"], found["high"]
    if low is not None and high is not None and low > high:
        tell(
            Level.WARNING,
            f"The low of {day_words(on)} is above its high. They are taken the other way round.",
            "low",
        )
        low, high = high, low
    return WeatherDay(on=on, low=low, high=high, rain=rain)


def _month(cell: str) -> int | None:
    text = cell.strip()
    if text.isdecimal() and len(text) <= 2:
        return int(text) if 1 <= int(text) <= 12 else None
    return month_of(text)


def _date(cell: str, order: str | None) -> date | None:
    reading = read_date(cell, order=order, base=None, is_southern=False) if cell else None
    return reading.when.day if reading and reading.when else None


def _number(cell: str) -> float | None:
    """A number with a point or a comma, a unit behind it or none."""
    text = cell.strip().rstrip("°CcFf \u00a0")
    if not NUMBER.fullmatch(text):
        return None
    return float(text.replace("−", "-").replace("–", "-").replace(",", "."))


def _degrees(cell: str, units: _Units) -> float | None:
    """A temperature [°C]; None for what is none, or cannot be."""
    number = _number(cell)
    if number is None:
        return None
    unit = cell.strip()[-1:].casefold()
    is_fahrenheit = unit == "f" or (unit != "c" and units.is_fahrenheit)
    celsius = (number - 32) / 1.8 if is_fahrenheit else number
    # A Fahrenheit number in a Celsius table must get as far as being told so.
    return celsius if BELIEVED[0] <= celsius <= (BELIEVED[1] if is_fahrenheit else HOTTEST) else None


def _depth(cell: str, units: _Units) -> float | None:
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
    depth = float(text.replace(",", ".")) * (25.4 if is_inches else 1.0)
    return depth if depth <= MOST_RAIN else None


def _other_unit(highs: Sequence[float], units: _Units, *, is_year: bool) -> str:
    """What is said of a table that is plainly in the other unit; "" for one that need not be."""
    if not highs:
        return ""
    if not units.is_fahrenheit and max(highs) > WARMEST:
        return (
            f"A high of {max(highs):g} is Fahrenheit, and the garden's units are metric. Put the unit into the heading, "
            'such as "high F"; until then the table is not used.'
        )
    if units.is_fahrenheit and is_year and max(highs) < COLDEST_SUMMER:
        return (
            "These look like degrees Celsius, and the garden's units are imperial. Put the unit into the heading, such "
            'as "high C"; until then the table is not used.'
        )
    return ""


def _gaps(days: Sequence[WeatherDay], file: str) -> Iterator[Problem]:
    """One hint for all days that are missing between the first and the last."""
    if not days:
        return
    missing = (days[-1].on - days[0].on).days + 1 - len(days)
    if not missing:
        return
    after, before = max(pairwise(days), key=lambda pair: ((pair[1].on - pair[0].on).days, pair[0].on))
    first, last = after.on + timedelta(days=1), before.on - timedelta(days=1)
    longest = day_words(first) if first == last else f"{day_words(first)} to {day_words(last)}"
    message = (
        f"{counted(missing, 'day')} of {day_words(days[0].on)} to {day_words(days[-1].on)} "
        f"{'is' if missing == 1 else 'are'} missing ({'the longest gap is ' if missing > 1 else ''}{longest}). "
        "The usual warmth stands in for them, where the garden has a table of it."
    )
    yield _told(file, None, Level.HINT, message)


def _told(file: str, line: int | None, level: Level, message: str, field: str | None = None) -> Problem:
    return Problem(at=Location(file=file, line=line), level=level, message=message, field=field)
