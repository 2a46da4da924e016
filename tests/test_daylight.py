"""Day length against ephem, against published tables, and at the poles.

ephem: PyEphem, an independent library after XEphem, with the almanac's definition (horizon -34', upper limb, no
pressure). The tolerance was stated before the first run: 2 minutes below 60 degrees, 6 minutes at 65.
"""

from __future__ import annotations

from datetime import date, timedelta
from math import cos, radians

import ephem
import pytest

from leafmould.reckon.daylight import day_length, midwinter, short_days


def by_ephem(latitude: float, on: date) -> float:
    observer = ephem.Observer()
    observer.lat, observer.lon, observer.pressure, observer.horizon = str(latitude), "0", 0, "-0:34"
    observer.date = ephem.Date(on.isoformat() + " 12:00:00")
    sun = ephem.Sun()
    return float(observer.next_setting(sun) - observer.previous_rising(sun)) * 24


@pytest.mark.parametrize("latitude", [0, 20, 30, 35, 40, 44.1, 50, 51.5, 55, 59.9, -20, -35, -41, -45, -55])
def test_every_week_of_a_year_agrees_with_ephem(latitude: float) -> None:
    for week in range(53):
        on = date(2025, 1, 1) + timedelta(weeks=week)
        assert day_length(latitude, on) == pytest.approx(by_ephem(latitude, on), abs=2 / 60), on


def test_near_the_polar_circle_it_agrees_within_six_minutes() -> None:
    for month in range(1, 13):
        on = date(2025, month, 10)
        assert day_length(65, on) == pytest.approx(by_ephem(65, on), abs=6 / 60), on


def test_at_the_poles_the_sun_stays_up_or_down() -> None:
    assert [day_length(90, date(2026, m, 21)) for m in (6, 12)] == [24, 0]
    assert [day_length(-90, date(2026, m, 21)) for m in (6, 12)] == [0, 24]
    assert [day_length(70, date(2026, m, 21)) for m in (6, 12)] == [24, 0]


# FAO Irrigation and Drainage Paper 56, example 9: daylight hours of 3 September at 20 degrees south are 11.7, for
# the centre of the disk without refraction. The sun crosses the 50 minutes of arc between the two definitions
# twice a day, at 15 degrees an hour times the cosines of latitude and declination (7 degrees north): 7 minutes.
def test_the_worked_example_of_the_fao() -> None:
    between = 2 * (50 / 60) / (15 * cos(radians(20)) * cos(radians(7)))
    assert day_length(-20, date(2026, 9, 3)) - between == pytest.approx(11.7, abs=0.1)


# First and last day under ten hours by two general libraries, winter 2025/26 and southern 2025 (ephem 4.2.1 and
# astral 3.2; computed, not printed in a source). Tolerance: one day.
@pytest.mark.parametrize(
    ("latitude", "around", "first", "last"),
    [
        (34, date(2025, 12, 21), date(2025, 12, 5), date(2026, 1, 6)),
        (40, date(2025, 12, 21), date(2025, 11, 15), date(2026, 1, 26)),
        (44, date(2025, 12, 21), date(2025, 11, 7), date(2026, 2, 3)),
        (50, date(2025, 12, 21), date(2025, 10, 29), date(2026, 2, 12)),
        (51.5, date(2025, 12, 21), date(2025, 10, 27), date(2026, 2, 14)),
        (55, date(2025, 12, 21), date(2025, 10, 23), date(2026, 2, 18)),
        (60, date(2025, 12, 21), date(2025, 10, 17), date(2026, 2, 23)),
        (-36, date(2025, 6, 21), date(2025, 5, 25), date(2025, 7, 17)),
        (-40, date(2025, 6, 21), date(2025, 5, 13), date(2025, 7, 30)),
        (-46, date(2025, 6, 21), date(2025, 5, 1), date(2025, 8, 10)),
    ],
)
def test_the_days_under_ten_hours(latitude: float, around: date, first: date, last: date) -> None:
    found = short_days(latitude, around)
    assert found is not None
    assert abs((found.first - first).days) <= 1
    assert abs((found.last - last).days) <= 1


@pytest.mark.parametrize("latitude", [0, 15, 30, 32, -30])
def test_nearer_the_equator_no_day_is_under_ten_hours(latitude: float) -> None:
    assert short_days(latitude, midwinter(2025, is_southern=latitude < 0)) is None
