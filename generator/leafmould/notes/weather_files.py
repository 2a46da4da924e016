"""records/normals.csv and records/weather.csv: the usual warmth of each month, and each day's as it was measured.

Read once with the settings. A row that cannot be used costs only itself; a table that is plainly in the other unit
is not used at all, because every sum from it would be wrong. The cells are read by `weather_cells`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from itertools import pairwise
from statistics import mean

from leafmould.notes.setting_values import MonthNormal, WeatherDay
from leafmould.notes.tables import Row, read_table
from leafmould.notes.weather_cells import (
    DEGREES,
    DEPTHS,
    MOST_RAIN,
    Units,
    day,
    degrees,
    depth,
    from_fahrenheit,
    month,
    units_of,
    with_units,
)
from leafmould.values.problems import Level, Location, Problem, in_file_order
from leafmould.values.wording import MONTHS, counted
from leafmould.values.wording import day as day_words

NORMALS = "records/normals.csv"
WEATHER = "records/weather.csv"

LOW = ("low", "min", "minimum", "tmin", "lowest", "night", "lo", "mean low", "average low")
HIGH = ("high", "max", "maximum", "tmax", "highest", "hi", "mean high", "average high")
RAIN = ("rain", "rainfall", "precipitation", "precip", "wet", "rain fall")
MONTH_HEADINGS = ("month", "monat", "mois", "mes", "mese", "maand")
DATE_HEADINGS = ("date", "day", "when", "datum", "jour", "fecha", "data")

WARMEST = 50.0
"""A high above this is a Fahrenheit number [°C]."""
COLDEST_SUMMER = 8.0
"""Where the warmest month's high is below this, nobody gardens: the numbers are Celsius [°C]."""
FEW = 0.1
"""Up to this share of highs no air can be are slips of a pen; above it the column is in Fahrenheit."""
ASTRAY = 12.0
"""Highs whose mean is so far from the usual [°C] may be in the other unit. Own choice."""
AT_HOME = 6.0
"""They are in the other unit if read so they come as near to the usual as this [°C]. Own choice."""
ENOUGH = 5
"""Days from which on that is asked."""
MOST_TOLD = 3
"""Faults of one kind that are told one by one; of more the first is told, with their number."""


@dataclass(slots=True)
class _Faults:
    """What is wrong in one file, by kind, so that one slip made in every row is told once."""

    file: str
    by_kind: dict[str, list[Problem]] = field(default_factory=dict)

    def tell(
        self, kind: str, line: int | None, level: Level, message: str, column: str | None = None
    ) -> None:
        """Note one."""
        at = Location(file=self.file, line=line)
        problem = Problem(at=at, level=level, message=message, field=column)
        self.by_kind.setdefault(kind, []).append(problem)

    def told(self, others: Sequence[Problem]) -> tuple[Problem, ...]:
        """All of them, in the order of the file."""
        found = list(others)
        for problems in self.by_kind.values():
            found += problems if len(problems) <= MOST_TOLD else [_with_number(problems)]
        return in_file_order(found)


def _with_number(problems: Sequence[Problem]) -> Problem:
    first = problems[0]
    more = f"{first.message} So it is in {len(problems) - 1} more rows."
    return Problem(at=first.at, level=first.level, message=more, field=first.field)


def read_normals(
    text: str, file: str = NORMALS, *, units: str = "metric"
) -> tuple[tuple[MonthNormal, ...], tuple[Problem, ...]]:
    """Twelve months in order, or none: a year with a hole in it makes no curve.

    Args:
        units: "metric" or "imperial": what plain numbers are in.
    """
    columns = {"month": MONTH_HEADINGS, "low": with_units(LOW, DEGREES), "high": with_units(HIGH, DEGREES)}
    table = read_table(text, file, columns, {"rain": with_units(RAIN, DEPTHS)})
    faults, measured = _Faults(file), units_of(text, units)
    months: dict[int, MonthNormal] = {}
    for row in table.rows:
        found = _normal(row, measured, faults)
        if found is not None and found.month in months:
            message = f"{MONTHS[found.month - 1]} stands here a second time. The first row counts."
            faults.tell("twice", row.line, Level.WARNING, message)
        elif found is not None:
            months[found.month] = found
    missing = [MONTHS[number - 1] for number in range(1, 13) if number not in months]
    year = tuple(months[number] for number in sorted(months))
    if not year:
        return (), faults.told(table.problems)
    if missing:
        is_one = len(missing) == 1
        message = f"{_listed(missing)} {'is' if is_one else 'are'} missing, so the table is not used."
        faults.tell("missing", None, Level.ERROR, message)
    elif fault := _wrong_summer(max(m.high for m in year), measured):
        faults.tell("unit", None, Level.ERROR, fault)
    else:
        return year, faults.told(table.problems)
    return (), faults.told(table.problems)


def read_weather(
    text: str,
    file: str = WEATHER,
    *,
    units: str = "metric",
    order: str | None = None,
    months: Sequence[MonthNormal] = (),
) -> tuple[tuple[WeatherDay, ...], tuple[Problem, ...]]:
    """The days of the table in order, each once, and what is wrong with the others.

    Args:
        units: "metric" or "imperial": what plain numbers are in.
        order: "day first" or "month first": how 3/4/2026 is read.
        months: what is usual, to tell a table in the other unit by.
    """
    others = {
        "low": with_units(LOW, DEGREES),
        "high": with_units(HIGH, DEGREES),
        "rain": with_units(RAIN, DEPTHS),
    }
    table = read_table(text, file, {"date": DATE_HEADINGS}, others)
    faults, measured = _Faults(file), units_of(text, units)
    days: dict[date, WeatherDay] = {}
    lines: dict[date, int] = {}
    for row in table.rows:
        read = _day(row, measured, order, faults)
        if read is None:
            continue
        if read.on not in days:
            days[read.on], lines[read.on] = read, row.line
        elif days[read.on] != read:
            message = f"{day_words(read.on)} stands here a second time. The first row counts."
            faults.tell("twice", row.line, Level.WARNING, message)
    found = [days[on] for on in sorted(days)]
    if fault := _other_unit(found, lines, measured, months):
        faults.tell("unit", fault[0], Level.ERROR, fault[1])
        return (), faults.told(table.problems)
    found = [_believed(row, lines[row.on], faults) for row in found]
    _gaps(found, lines, faults)
    return tuple(found), faults.told(table.problems)


def _normal(row: Row, units: Units, faults: _Faults) -> MonthNormal | None:
    """A month of the table; None, and why, where the row cannot be used."""
    cell = row.cells.get("month", "")
    number = month(cell)
    if number is None:
        message = f'"{cell}" is no month.' if cell else "This row has no month, so it is not used."
        faults.tell("month", row.line, Level.ERROR, message, "month")
        return None
    name, found = MONTHS[number - 1], dict[str, float]()
    for column in ("low", "high"):
        cell = row.cells.get(column, "")
        read = degrees(cell, units)
        if read is None:
            message = f'"{cell}" is no temperature.' if cell else f"{name} has no {column}."
            faults.tell(column, row.line, Level.ERROR, message, column)
            return None
        found[column] = read
    if found["low"] > found["high"]:
        _swapped(name, row.line, faults)
    low, high = sorted(found.values())
    cell = row.cells.get("rain", "")
    rain = depth(cell, units, 3 * MOST_RAIN)
    if cell and rain is None:
        message = f'"{cell}" is no amount of rain, so it is not used.'
        faults.tell("rain", row.line, Level.ERROR, message, "rain")
    return MonthNormal(month=number, low=low, high=high, rain=rain)


def _day(row: Row, units: Units, order: str | None, faults: _Faults) -> WeatherDay | None:
    """A day of the table; None, and why, where its date cannot be used. A cell that cannot be costs only itself."""
    cell = row.cells.get("date", "")
    on = day(cell, order)
    if on is None:
        message = f'"{cell}" is no day. Write it such as 2026-06-20.'
        message = message if cell else "This row has no date, so it is not used."
        faults.tell("date", row.line, Level.ERROR, message, "date")
        return None
    found: dict[str, float | None] = {}
    for column in ("low", "high", "rain"):
        cell = row.cells.get(column, "")
        found[column] = depth(cell, units) if column == "rain" else degrees(cell, units)
        if cell and found[column] is None:
            what = "amount of rain" if column == "rain" else "temperature"
            message = f'"{cell}" is no {what}, so it is not used.'
            faults.tell(column, row.line, Level.ERROR, message, column)
    low, high = found["low"], found["high"]
    if low is not None and high is not None and low > high:
        _swapped(day_words(on), row.line, faults)
        low, high = high, low
    return WeatherDay(on=on, low=low, high=high, rain=found["rain"])


def _swapped(name: str, line: int, faults: _Faults) -> None:
    message = f"The low of {name} is above its high. They are taken the other way round."
    faults.tell("swapped", line, Level.WARNING, message, "low")


def _wrong_summer(warmest: float, units: Units) -> str:
    """What is said of months that are plainly in the other unit; "" for those that need not be."""
    if not units.is_fahrenheit and warmest > WARMEST:
        return _told_fahrenheit(f"A high of {warmest:g}", units)
    if units.is_fahrenheit and warmest < COLDEST_SUMMER:
        return _told_celsius(units)
    return ""


def _other_unit(
    days: Sequence[WeatherDay], lines: Mapping[date, int], units: Units, months: Sequence[MonthNormal]
) -> tuple[int, str] | None:
    """The line of a day, and what is said of its table if that is plainly in the other unit."""
    highs = {row.on: row.high for row in days if row.high is not None}
    hot = [on for on, high in highs.items() if high > WARMEST]
    if hot and not units.is_fahrenheit and len(hot) > FEW * len(highs):
        return lines[hot[0]], _told_fahrenheit(f"A high of {highs[hot[0]]:g}", units)
    if len(highs) < ENOUGH or len(months) != 12:
        return None
    usual = mean(months[on.month - 1].high for on in highs)
    here = mean(highs.values())
    first = lines[min(highs)]
    if not units.is_fahrenheit and here - usual > ASTRAY and abs(from_fahrenheit(here) - usual) < AT_HOME:
        return first, _told_fahrenheit(f"A mean high of {here:.0f}, where {usual:.0f} °C is usual,", units)
    if units.is_fahrenheit and usual - here > ASTRAY and abs(here * 1.8 + 32 - usual) < AT_HOME:
        return first, _told_celsius(units)
    return None


def _told_fahrenheit(what: str, units: Units) -> str:
    habit = "the heading says Celsius" if units.says_degrees else "the garden's units are metric"
    return (
        f"{what} is Fahrenheit, and {habit}. Put the unit into the heading, "
        'such as "high F"; until then the table is not used.'
    )


def _told_celsius(units: Units) -> str:
    habit = "the heading says Fahrenheit" if units.says_degrees else "the garden's units are imperial"
    return (
        f"These look like degrees Celsius, and {habit}. Put the unit into the heading, such "
        'as "high C"; until then the table is not used.'
    )


def _believed(row: WeatherDay, line: int, faults: _Faults) -> WeatherDay:
    """A day without what no air can be; a few such numbers among many are slips."""
    for column, value in (("low", row.low), ("high", row.high)):
        if value is not None and value > WARMEST:
            message = f"A {column} of {value:g} °C cannot be, so neither low nor high of that day is used."
            faults.tell("hot", line, Level.ERROR, message, column)
            return WeatherDay(on=row.on, rain=row.rain)
    return row


def _gaps(days: Sequence[WeatherDay], lines: Mapping[date, int], faults: _Faults) -> None:
    """One hint for all days that are missing between the first and the last, at the longest gap."""
    missing = (days[-1].on - days[0].on).days + 1 - len(days) if days else 0
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
    faults.tell("gaps", lines[after.on], Level.HINT, message)


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
