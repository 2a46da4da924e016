"""Dates and weekdays, against Python's calendar and ISO weeks, and sums of days against its ordinals.

The program has a reader of dates of its own; the calendar of the standard library knows nothing of it.
"""

from __future__ import annotations

import calendar
from datetime import date, timedelta

import pytest
from dateutil.easter import easter
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from leafmould.values.dates import read_date
from leafmould.values.when import on
from leafmould.values.wording import day as day_words

DAYS = st.dates(date(1950, 1, 1), date(2099, 12, 31))
WEEKDAYS = list(calendar.day_name)


def read(text: str, base: date | None = None, order: str = "day first") -> date | str | None:
    """The day read, or the sentence why not."""
    found = read_date(text, order=order, base=on(base) if base else None, is_southern=False)
    if found is None:
        return None
    return found.when.day if found.when else found.fault


def test_every_day_of_forty_years_is_read_in_every_order_of_its_parts() -> None:
    day, last = date(1999, 12, 25), date(2040, 1, 5)
    while day <= last:
        month = calendar.month_name[day.month]
        assert read(day.isoformat()) == day
        assert read(f"{day.day} {month} {day.year}") == day
        assert read(f"{month} {day.day}, {day.year}") == day
        assert read(f"{day.day}.{day.month}.{day.year}") == day
        assert read(f"{day.month}/{day.day}/{day.year}", order="month first") == day
        assert read(day_words(day)) == day  # what pages print reads back the same
        day += timedelta(days=1)


def test_days_that_the_calendar_does_not_have_are_refused_and_no_others() -> None:
    for year in (1900, 2000, 2023, 2024, 2100):
        for month in range(1, 13):
            known = calendar.monthrange(year, month)[1]
            for day in range(1, 32):
                found = read(f"{year:04}-{month:02}-{day:02}")
                if day <= known:
                    assert found == date(year, month, day)
                else:
                    assert found == f"{day} {calendar.month_name[month]} {year} does not exist."


@given(base=DAYS, weekday=st.integers(0, 6))
def test_a_weekday_is_the_last_one_not_after_the_note(base: date, weekday: int) -> None:
    """ISO weeks number Monday 1 to Sunday 7: the day found is in this week or the one before."""
    found = read(WEEKDAYS[weekday], base)
    assert isinstance(found, date)
    assert found.isocalendar().weekday == weekday + 1
    same_week = found.isocalendar()[:2] == base.isocalendar()[:2]
    assert found <= base and (base - found).days < 7
    assert same_week == (weekday + 1 <= base.isocalendar().weekday)


@given(day=DAYS)
def test_a_weekday_before_a_date_agrees_with_the_calendar(day: date) -> None:
    name = WEEKDAYS[calendar.weekday(day.year, day.month, day.day)]
    assert read(f"{name} {day.day} {calendar.month_name[day.month]} {day.year}") == day


@given(day=DAYS)
def test_an_iso_week_is_never_taken_for_a_day_in_silence(day: date) -> None:
    year, week, weekday = day.isocalendar()
    for written in (f"{year}-W{week:02}-{weekday}", f"{year}-W{week:02}", f"{year}W{week:02}{weekday}"):
        assert read(written) == f'"{written}" names a week. Write the day, such as 2026-04-12.'


@given(base=DAYS, days=st.integers(1, 60))
def test_days_and_weeks_ago_agree_with_an_independent_library(base: date, days: int) -> None:
    if days > 1:
        assert read(f"{days} days ago", base) == base - relativedelta(days=days)
    if 1 < days <= 8:
        assert read(f"{days} weeks ago", base) == base - relativedelta(weeks=days)
    assert read("yesterday", base) == base - relativedelta(days=1)


@given(base=DAYS, month=st.integers(1, 12), day=st.integers(1, 28))
def test_a_day_without_a_year_is_the_nearest_not_after_the_note(base: date, month: int, day: int) -> None:
    this_year = date(base.year, month, day)
    wanted = this_year if this_year <= base else this_year - relativedelta(years=1)
    assert read(f"{day} {calendar.month_name[month]}", base) == wanted


@pytest.mark.parametrize("year", [1999, 2016, 2024, 2026, 2038])
def test_sums_of_days_over_leap_days_and_year_ends(year: int) -> None:
    """Easter moves from year to year: a day nobody's tables have by heart."""
    start = easter(year)
    assert read("12 days ago", start) == date.fromordinal(start.toordinal() - 12)
    assert read(day_words(start + timedelta(days=366))) == date.fromordinal(start.toordinal() + 366)
