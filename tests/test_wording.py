"""Days, ranges and amounts in words."""

from __future__ import annotations

from datetime import date

import pytest

from leafmould.values.quantities import Amount
from leafmould.values.wording import (
    amount_words,
    counted,
    day,
    day_range,
    number_words,
    plural,
    weight,
    when_words,
)
from made_by_hand import coarse, exact


def test_a_day_names_its_year_unless_it_is_this_one() -> None:
    assert day(date(2026, 6, 12)) == "12 June 2026"
    assert day(date(2026, 6, 12), 2026) == "12 June"
    assert day(date(2025, 6, 12), 2026) == "12 June 2025"


@pytest.mark.parametrize(
    ("first", "last", "this_year", "said"),
    [
        ("2026-07-04", "2026-07-18", None, "4–18 July"),
        ("2026-06-20", "2026-07-04", None, "20 June – 4 July"),
        ("2026-06-20", "2026-07-04", 2026, "20 June – 4 July"),
        ("2027-06-20", "2027-07-04", 2026, "20 June – 4 July 2027"),
        ("2027-07-04", "2027-07-18", 2026, "4–18 July 2027"),
        ("2026-12-20", "2027-01-04", 2026, "20 December 2026 – 4 January 2027"),
        ("2026-07-04", "2026-07-04", None, "4 July"),
        ("2025-07-04", "2025-07-04", 2026, "4 July 2025"),
    ],
)
def test_ranges_of_days(first: str, last: str, this_year: int | None, said: str) -> None:
    assert day_range(date.fromisoformat(first), date.fromisoformat(last), this_year) == said


def test_coarse_dates_stay_as_written() -> None:
    assert when_words(coarse("late August", "2026-08-21", "2026-08-31")) == "late August"
    assert when_words(exact("2026-08-21")) == "21 August 2026"


@pytest.mark.parametrize(
    ("grams", "metric", "imperial"),
    [
        (0, "0 g", "0 oz"), (0.2, "under 1 g", "under 1 oz"), (340, "340 g", "12 oz"),
        (999.6, "1 kg", "2 lb 3 oz"), (1000, "1 kg", "2 lb 3 oz"), (1389.1, "1.4 kg", "3 lb 1 oz"),
        (453.59237, "454 g", "1 lb"), (12_345, "12.3 kg", "27 lb 3 oz"),
        (1_234_567, "1,234.6 kg", "2,721 lb 12 oz"),
    ],
)  # fmt: skip
def test_weights_in_the_gardens_units(grams: float, metric: str, imperial: str) -> None:
    assert (weight(grams, "metric"), weight(grams, "imperial")) == (metric, imperial)


@pytest.mark.parametrize(
    ("number", "unit", "about", "said"),
    [
        (12, "piece", False, "12"), (1, "jar", False, "1 jar"), (3, "jar", False, "3 jars"),
        (2.5, "tray", True, "about 2½ trays"), (2, "bunch", False, "2 bunches"), (2, "l", False, "2 l"),
        (2, "kg", False, "2 kg"), (2, "kg", True, "about 2 kg"), (3, "box", False, "3 boxes"),
        (2, "berry", False, "2 berries"), (2, "tray", False, "2 trays"),
        (0.5, "bushel", False, "½ bushel"), (1.5, "l", False, "1.5 l"), (0.3, "row", False, "0.3 row"),
    ],
)  # fmt: skip
def test_amounts_in_their_own_units(number: float, unit: str, about: bool, said: str) -> None:
    amount = Amount(written="as written", low=number, high=number, unit=unit, is_about=about)
    assert amount_words(amount, "metric") == said


def test_an_amount_without_a_number_stays_as_written() -> None:
    assert amount_words(Amount(written="a few", low=None, high=None, unit="piece"), "metric") == "a few"


def test_counts_and_numbers() -> None:
    assert (counted(1, "day"), counted(0, "day"), counted(1200, "day")) == ("1 day", "0 days", "1,200 days")
    assert counted(2, "person", "people") == "2 people"
    assert (number_words(3.0), number_words(2.50), number_words(1250)) == ("3", "2.5", "1,250")
    assert (plural("loaf"), plural("dish"), plural("kg")) == ("loaves", "dishes", "kg")
