"""Amounts: what can be added, what is counted, what is estimated."""

from __future__ import annotations

import pytest

from leafmould.values.quantities import Amount, Whole


def amount(
    low: float | None,
    unit: str,
    high: float | None = None,
    *,
    is_about: bool = False,
    whole: Whole | None = None,
    measure_g: float | None = None,
) -> Amount:
    """An amount with what the check is about."""
    return Amount(
        written="as written", low=low, high=low if high is None else high, unit=unit, is_about=is_about,
        whole=whole, measure_g=measure_g,
    )  # fmt: skip


def test_a_pound_weighs_what_the_treaty_of_1959_says() -> None:
    # International yard and pound agreement, 1959: 0.45359237 kg exactly, 16 ounces to the pound.
    assert amount(1, "lb").grams == 453.59237
    assert amount(16, "oz").grams == pytest.approx(453.59237, abs=1e-9)
    assert amount(3.25, "lb").grams == pytest.approx(1474.175, abs=0.001)


def test_a_measure_weighs_what_the_garden_says_and_is_estimated() -> None:
    trays = amount(2, "tray", measure_g=400.0)
    assert (trays.grams, trays.is_estimated) == (800.0, True)


def test_a_measure_nobody_weighed_has_no_weight() -> None:
    assert amount(2, "tray").grams is None


def test_a_range_gives_its_middle_and_is_estimated() -> None:
    some = amount(2, "kg", 3, is_about=True)
    assert (some.value, some.grams, some.is_estimated) == (2.5, 2500.0, True)


def test_words_for_an_amount_have_no_number() -> None:
    rest = amount(None, "piece", whole="the rest")
    assert (rest.value, rest.grams, rest.count) == (None, None, None)


COUNTS = [
    (12, "piece", 12),
    (40, "clove", 40),
    (1.5, "piece", None),
    (2, "kg", None),
    (3, "row", None),
    (2, "packet", None),
]


@pytest.mark.parametrize(("number", "unit", "count"), COUNTS)
def test_only_plants_and_pieces_are_counted(number: float, unit: str, count: int | None) -> None:
    assert amount(number, unit).count == count
