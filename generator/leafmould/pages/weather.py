"""The weather of each season as far as it was written down, beside what is usual here, and the heat it makes.

Made only where the garden has a table of weather or of the months. What is usual is rounded to whole degrees: to the
tenth it would tell which station it was taken from.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.charts.line import height_at, points, ticks
from leafmould.charts.strip import place
from leafmould.garden.model import Entry
from leafmould.pages.addresses import WEATHER
from leafmould.pages.by_date import month_address
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link, Page
from leafmould.reckon.heat_methods import MAIZE_UPPER, counted_otherwise
from leafmould.reckon.warmth import BASE, Warmth, degree_days
from leafmould.reckon.weather_told import MonthWeather, season_weather, usual_sums
from leafmould.values.wording import MONTHS, counted, day_range

HEIGHT = 60.0
"""The height of the drawing, where its months run from 0 to 120."""
INCH = 25.4


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A round value on the axis."""

    y: float
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekMark:
    """A week with notes, on the line of its season's heat."""

    to: str  # the first of its notes
    says: str  # "6–12 July: 3 notes"
    left: float
    width: float
    x: float
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatChart:
    """Heat summed through a season: the usual, and the one that was."""

    usual: str  # points of a line; "" where it is not known
    here: str
    ticks: tuple[Tick, ...]
    weeks: tuple[WeekMark, ...]
    says: str  # the same in words


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthLine:
    """One month as it is read; a cell that nothing is known of is empty."""

    name: str
    heat: str
    usual: str
    lowest: str
    highest: str
    frosts: str
    rain: str
    measured: str
    notes: Link | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonWeather:
    """A season with its months, oldest first."""

    name: str
    season: Link
    chart: HeatChart | None
    months: tuple[MonthLine, ...]
    words: str  # the season so far in a sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualMonth:
    """What is usual of one month; a cell that nothing is known of is empty."""

    name: str
    low: str
    high: str
    heat: str
    rain: str
    dark: str  # weeks with days under ten hours


@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherPage:
    """The values of the page."""

    seasons: tuple[SeasonWeather, ...]
    base: str  # "10 °C"
    usual: tuple[UsualMonth, ...]
    has_usual_rain: bool
    has_dark: bool  # some month has days under ten hours
    otherwise: str  # the usual year by other ways of counting
    has_days: bool


def has_weather(ledger: Ledger) -> bool:
    """Whether there is anything to show."""
    return ledger.reckoned.warmth.has_usual or bool(ledger.reckoned.warmth.weather)


def weather_page(ledger: Ledger) -> Page:
    """Every season with a measured day, newest first; this one always."""
    measured = {ledger.year_of(row.on) for row in ledger.reckoned.warmth.weather}
    years = sorted((measured | {ledger.this_year}) & set(ledger.years), reverse=True)
    usual = _usual_months(ledger)
    values = WeatherPage(
        seasons=tuple(_season(year, ledger) for year in years),
        base=_degrees(BASE, ledger),
        usual=usual,
        has_usual_rain=any(month.rain for month in usual),
        has_dark=any(month.dark for month in usual),
        otherwise=_counted_otherwise(ledger),
        has_days=bool(ledger.reckoned.warmth.weather),
    )
    return Page(
        address=WEATHER, template="weather.html", title="Weather and warmth", section="seasons", values=values
    )


def _season(year: int, ledger: Ledger) -> SeasonWeather:
    warmth = ledger.reckoned.warmth
    begins, on = ledger.year_begins(year), min(ledger.garden.on, ledger.year_ends(year))
    months = season_weather(warmth, ledger.reckoned.warmth.weather, begins, on)
    return SeasonWeather(
        name=ledger.year_name(year),
        season=Link(text=ledger.year_name(year), to=ledger.to_season(year)),
        chart=_chart(months, warmth, year, ledger),
        months=tuple(_line(month, year, ledger) for month in months),
        words=_words(months, ledger),
    )


def _chart(months: Sequence[MonthWeather], warmth: Warmth, year: int, ledger: Ledger) -> HeatChart | None:
    begins = ledger.year_begins(year)
    usual = usual_sums(warmth, begins)
    here: list[tuple[float, float]] = [(0.0, 0.0)]
    total = 0.0
    for month in months:
        if month.heat is None:
            break
        total += month.heat
        here.append((round(place(month.last, begins), 1), total))
    most = max((*usual, total), default=0.0)
    if most <= 0 or (len(here) < 2 and not usual):
        return None
    line = [(0.0, 0.0), *((10.0 * n, value) for n, value in enumerate(usual, start=1))]
    return HeatChart(
        usual=points(line, most, HEIGHT) if usual else "",
        here=points(here, most, HEIGHT) if len(here) > 1 and any(m.measured for m in months) else "",
        ticks=tuple(
            Tick(y=round(HEIGHT - value / most * HEIGHT, 1), words=f"{value:,.0f}") for value in ticks(most)
        ),
        weeks=tuple(_weeks(year, here, most, ledger)),
        says=f"Heat summed through {ledger.year_name(year)}, beside the usual; the table below has it month by month.",
    )


def _weeks(year: int, here: Sequence[tuple[float, float]], most: float, ledger: Ledger) -> Iterator[WeekMark]:
    """Each week that has notes, counted from the season's first day; notes without a day are in none."""
    begins = ledger.year_begins(year)
    found: defaultdict[int, list[Entry]] = defaultdict(list)
    for entry in ledger.entries_by_year.get(year, ()):
        if entry.when and entry.when.day:
            found[(entry.when.day - begins).days // 7].append(entry)
    for week, entries in sorted(found.items()):
        first = begins + timedelta(days=7 * week)
        last = min(first + timedelta(days=6), ledger.year_ends(year))
        left, right = place(first, begins), place(last + timedelta(days=1), begins)
        middle = round((left + right) / 2, 1)
        yield WeekMark(
            to=ledger.to_note(entries[0].id),
            says=f"{day_range(first, last)}: {counted(len(entries), 'note')}",
            left=round(left, 1),
            width=round(right - left, 1),
            x=middle,
            y=height_at(middle, here, most, HEIGHT),
        )


def _notes(month: MonthWeather, year: int, ledger: Ledger) -> Link | None:
    """The notes of a month, where there are any."""
    begun = [entry.when.first for entry in ledger.entries_by_year.get(year, ()) if entry.when]
    key = (month.first.year, month.first.month)
    count = sum((day.year, day.month) == key for day in begun)
    return Link(text=counted(count, "note"), to=month_address(year, key, ledger)) if count else None


def _line(month: MonthWeather, year: int, ledger: Ledger) -> MonthLine:
    days = (month.last - month.first).days + 1
    return MonthLine(
        name=MONTHS[month.first.month - 1],
        heat=_heat(month.heat, ledger) if month.measured else "",
        usual=_heat(month.usual_heat, ledger),
        lowest=_degrees(month.lowest, ledger, is_exact=True),
        highest=_degrees(month.highest, ledger, is_exact=True),
        frosts=str(month.frosts) if month.measured else "",
        rain=_rain(month.rain, ledger),
        measured=f"{month.measured} of {days}" if month.measured else "",
        notes=_notes(month, year, ledger),
    )


def _words(months: Sequence[MonthWeather], ledger: Ledger) -> str:
    """The season so far beside the usual, where both are known of the same days."""
    here = [m.heat for m in months]
    usual = [m.usual_heat for m in months]
    known = [h for h in here if h is not None]
    if len(known) < len(here) or not any(m.measured for m in months):
        return ""
    total = sum(known)
    said = (
        f"{_heat(total, ledger)} degree days so far"
        if months[-1].last == ledger.garden.on
        else f"{_heat(total, ledger)} degree days in all"
    )
    expected = sum(u for u in usual if u is not None)
    if None in usual or not expected:
        return f"{said}."
    part = round((total / expected - 1) * 100)
    beside = "as usual" if abs(part) < 3 else f"{abs(part)} % {'more' if part > 0 else 'less'} than usual"
    nights = sum(m.frosts for m in months)
    return f"{said}, {beside}; {counted(nights, 'night')} of frost measured."


def _usual_months(ledger: Ledger) -> tuple[UsualMonth, ...]:
    """The twelve months in the order of a season, each with what is known of it."""
    begins = ledger.year_begins(ledger.this_year)
    months, dark = ledger.reckoned.warmth.months, ledger.reckoned.dark_by_month
    turned = [*months[begins.month - 1 :], *months[: begins.month - 1]]
    sums = usual_sums(ledger.reckoned.warmth, begins)
    return tuple(
        UsualMonth(
            name=MONTHS[month.month - 1],
            low=_degrees(month.low, ledger),
            high=_degrees(month.high, ledger),
            heat=_heat(after - before, ledger),
            rain=_rain(month.rain, ledger),
            dark=str(dark[month.month - 1] or "") if dark else "",
        )
        for month, before, after in zip(turned, (0.0, *sums), sums, strict=False)
    )


def _counted_otherwise(ledger: Ledger) -> str:
    """What the usual year makes by each way of counting: the site's own first."""
    warmth, year = ledger.reckoned.warmth, ledger.garden.on.year
    days = [date(year, 1, 1) + timedelta(days=n) for n in range(365)]
    known = [found for day in days if (found := warmth.usual(day))]
    if not known:
        return ""
    own = sum(degree_days(day.low, day.high, BASE) for day in known)
    others = [
        f"{_heat(total, ledger)} {name.format(upper=_degrees(MAIZE_UPPER, ledger))}"
        for name, total in counted_otherwise(known, BASE)
    ]
    return f"The usual year makes {_heat(own, ledger)} degree days counted so, {', '.join(others[:-1])}, and {others[-1]}."


def _is_imperial(ledger: Ledger) -> bool:
    return ledger.garden.units == "imperial"


def _degrees(celsius: float | None, ledger: Ledger, *, is_exact: bool = False) -> str:
    if celsius is None:
        return ""
    value = celsius * 1.8 + 32 if _is_imperial(ledger) else celsius
    shown = f"{value:.1f}".removesuffix(".0") if is_exact else f"{value:.0f}"
    shown = "0" if shown == "-0" else shown.replace("-", "−")
    return f"{shown} °{'F' if _is_imperial(ledger) else 'C'}"


def _heat(sum_: float | None, ledger: Ledger) -> str:
    if sum_ is None:
        return ""
    value = sum_ * 1.8 if _is_imperial(ledger) else sum_
    return f"{value:,.0f}"


def _rain(mm: float | None, ledger: Ledger) -> str:
    if mm is None:
        return ""
    return f"{mm / INCH:.1f} in" if _is_imperial(ledger) else f"{mm:.0f} mm"
