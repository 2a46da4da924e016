"""Distances, frost and stores beside tables the package does not load; rows copied by hand, as printed.

Each tolerance was written down before the check was run. Of a crop outside it the reason is told beside it. Seeds
in a gram have one source only (Kew), so there is nothing to hold them against; seed life, weeks indoors, warmth to
germinate and days to come up are held against others in tests/test_published.py, seed for a row in
tests/test_amounts.py.
"""

from __future__ import annotations

import pytest

from leafmould.facts.published import published
from leafmould.facts.tables import crops

CM = 2.54
"""Centimetres in an inch."""


def figures(crop: str, subject: str) -> tuple[float, float]:
    """The whole range the package gives."""
    found = [f for f in published(crop) if f.subject == subject and f.low is not None]
    assert found, f"{crop} has no {subject}"
    return min(f.low for f in found if f.low is not None), max(f.high for f in found if f.high is not None)


def apart(one: tuple[float, float], other: tuple[float, float]) -> float:
    """How far two ranges lie from each other; 0 where they meet."""
    return max(0.0, other[0] - one[1], one[0] - other[1])


# Tennessee State University, Guide to Fall Cool-Season Vegetable Crops, ANR-3, 2011: inches in the row, inches
# between rows.
ANR3 = {
    "broccoli": ((18, 18), (24, 36)), "cabbage": ((18, 18), (24, 36)), "chinese-cabbage": ((12, 12), (24, 36)),
    "cauliflower": ((18, 18), (24, 36)), "collards": ((18, 18), (18, 36)), "cucumber": ((12, 12), (72, 72)),
    "kale": ((12, 15), (18, 36)), "kohlrabi": ((3, 6), (14, 36)), "lettuce": ((6, 6), (14, 36)),
    "mustard-greens": ((5, 10), (14, 36)),
}  # fmt: skip


@pytest.mark.parametrize("crop", ANR3)
def test_distances_in_the_row_lie_near_another_services(crop: str) -> None:
    """Tolerance: the ranges meet, or lie no more than 5 cm apart."""
    low, high = ANR3[crop][0]
    assert apart(figures(crop, "apart in the row"), (low * CM, high * CM)) <= 5


@pytest.mark.parametrize("crop", ANR3)
def test_distances_between_rows_lie_near_another_services(crop: str) -> None:
    """Tolerance: the ranges meet, or lie no more than 10 cm apart."""
    low, high = ANR3[crop][1]
    assert apart(figures(crop, "between rows"), (low * CM, high * CM)) <= 10


# Colorado State University, Block Style Layout, GardenNotes 720: inches each way in a block, without paths.
CSU_720 = {
    "beetroot": (4, 6), "broccoli": (18, 18), "cabbage": (18, 18), "carrot": (2, 3), "cauliflower": (18, 18),
    "kohlrabi": (7, 9), "lettuce": (7, 9), "spring-onion": (2, 3), "onion": (4, 6), "parsnip": (5, 6),
}  # fmt: skip


@pytest.mark.parametrize("crop", CSU_720)
def test_distances_in_a_block_lie_near_those_in_a_row(crop: str) -> None:
    """Tolerance: the ranges meet, or lie no more than 6 cm apart; plants in a block have no path beside them."""
    low, high = CSU_720[crop]
    assert apart(figures(crop, "apart in the row"), (low * CM, high * CM)) <= 6


# University of Illinois Extension, Illinois Vegetable Garden Guide, Table 3, as quoted in a newspaper of 2022.
FROST = {
    "asparagus": "hardy", "lima-bean": "very tender", "broccoli": "half-hardy", "carrot": "half-hardy",
    "cauliflower": "half-hardy", "cucumber": "very tender", "lettuce": "half-hardy", "pea": "half-hardy",
    "sweet-pepper": "very tender", "potato": "half-hardy", "pumpkin": "very tender", "radish": "half-hardy",
    "rhubarb": "hardy", "spinach": "hardy", "sweet-potato": "very tender", "tomato": "very tender",
}  # fmt: skip


@pytest.mark.parametrize("crop", FROST)
def test_what_a_frost_kills_agrees_with_another_services_classes(crop: str) -> None:
    """Tolerance: none; "very tender" is tender here, all else is not.

    Outside it: potato, which that guide plants with the half-hardy ones, since its shoots are still below ground;
    its leaves die of a frost, and here that is what counts.
    """
    expected = FROST[crop] == "very tender" or crop == "potato"
    assert crops()[crop].is_tender is expected


WEEK, MONTH = 7.0, 30.4
# University of California, Davis, conditions for long-term storage, November 2001: days, weeks or months.
STORE = {
    "onion": (1 * MONTH, 8 * MONTH), "okra": (7, 10), "apricot": (1 * WEEK, 3 * WEEK), "asparagus": (2 * WEEK, 3 * WEEK),
    "french-bean": (7, 10), "beetroot": (10, 4 * MONTH), "blackberry": (3, 6), "apple": (1 * MONTH, 6 * MONTH),
}  # fmt: skip
"""Of the crops in that table, those for which the package has a life in store."""
DAYS_IN = {"days": 1.0, "weeks": WEEK, "months": MONTH}


@pytest.mark.parametrize("crop", STORE)
def test_life_in_store_lies_near_another_services(crop: str) -> None:
    """Tolerance: the ranges meet once either is stretched by half (two thirds of the shortest to half as long again)."""
    found = [f for f in published(crop) if f.subject == "keeps" and f.low is not None]
    assert found, crop
    low = min((f.low or 0) * DAYS_IN[f.unit] for f in found)
    high = max((f.high or 0) * DAYS_IN[f.unit] for f in found)
    first, last = STORE[crop]
    assert first / 1.5 <= high and low / 1.5 <= last
