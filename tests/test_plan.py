"""Plans drawn to scale: the geometry by itself, with lengths one can reckon in one's head."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leafmould.charts.plan import (
    TALLEST,
    WIDEST,
    Box,
    Words,
    around,
    arrow,
    beyond,
    drawing_of,
    round_length,
    shared,
    stretches,
    words_in,
)

LENGTHS = st.floats(min_value=0.1, max_value=500)
BOXES = st.builds(Box, x=LENGTHS, y=LENGTHS, width=LENGTHS, height=LENGTHS)


def test_metres_go_up_and_drawing_units_go_down() -> None:
    drawing = drawing_of(Box(x=0, y=0, width=36, height=20))
    assert drawing.scale == 20
    assert drawing.box(Box(x=2, y=3, width=1.2, height=6)) == Box(x=40.0, y=220.0, width=24.0, height=120.0)


@settings(derandomize=True, deadline=None)
@given(BOXES)
def test_a_drawing_keeps_within_its_sheet_and_keeps_proportions(ground: Box) -> None:
    drawing = drawing_of(ground)
    assert drawing.width <= WIDEST + 0.1
    assert drawing.height <= TALLEST + 0.1
    assert max(drawing.width / WIDEST, drawing.height / TALLEST) == pytest.approx(1, abs=0.001)


@settings(derandomize=True, deadline=None)
@given(BOXES, BOXES)
def test_what_two_boxes_share_is_the_same_from_both_sides(one: Box, other: Box) -> None:
    assert shared(one, other) == shared(other, one)
    assert shared(one, other) <= min(one.area, other.area) * 1.000001
    assert beyond(one, around((one, other), 0)) == pytest.approx(0, abs=1e-9)


def test_beds_side_by_side_share_nothing() -> None:
    assert shared(Box(x=0, y=0, width=2, height=3), Box(x=2, y=0, width=2, height=3)) == 0
    assert shared(Box(x=0, y=0, width=2, height=3), Box(x=1, y=1, width=2, height=3)) == 2


def test_how_far_a_box_reaches_out() -> None:
    plot = Box(x=0, y=0, width=10, height=10)
    assert beyond(Box(x=8, y=1, width=3.5, height=1), plot) == 1.5
    assert beyond(Box(x=-2, y=1, width=3, height=1), plot) == 2


def test_a_bed_is_cut_along_its_longer_side() -> None:
    across = stretches(Box(x=0, y=0, width=9, height=2), [1 / 3] * 3)
    assert [(b.x, b.width, b.height) for b in across] == [(0, 3, 2), (3, 3, 2), (6, 3, 2)]
    upwards = stretches(Box(x=0, y=0, width=2, height=9), [1 / 3] * 3)
    assert [(b.y, b.width, b.height) for b in upwards] == [(0, 2, 3), (3, 2, 3), (6, 2, 3)]


def test_words_are_set_across_or_turned_or_not_at_all() -> None:
    assert words_in("leek", Box(x=0, y=0, width=60, height=20), 10) == Words(x=30, y=10)
    assert words_in("leek", Box(x=0, y=0, width=20, height=60), 10) == Words(x=10, y=30, is_turned=True)
    assert words_in("leek", Box(x=0, y=0, width=20, height=20), 10) is None


@pytest.mark.parametrize(("across", "number"), [(4, 1), (10, 2), (22, 2), (25, 5), (60, 10), (400, 50)])
def test_the_bar_is_a_round_length_of_about_a_fifth(across: float, number: int) -> None:
    assert round_length(across) == (number, number)


def test_the_bar_in_feet() -> None:
    # 20 m are 65.6 ft, a fifth of which is 13 ft; 1 ft is 0.3048 m exactly (international yard, 1959).
    assert round_length(20, in_feet=True) == (pytest.approx(3.048), 10)


@pytest.mark.parametrize(("degrees", "tip"), [(0, (0, -10)), (90, (10, 0)), (180, (0, 10)), (270, (-10, 0))])
def test_the_needle_turns_clockwise(degrees: float, tip: tuple[float, float]) -> None:
    assert arrow(degrees, 10)[0] == pytest.approx(tip, abs=0.05)
