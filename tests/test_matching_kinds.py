"""What the words of a note are told apart by: kinds of one crop, rows of one bed, months without a day."""

from __future__ import annotations

import pytest

from gardens import OWN, garden_of, settings_of
from leafmould.garden.first_look import holding
from leafmould.garden.ground import are_apart
from leafmould.garden.model import Garden, Planting

BEANS = """
    2026-04-20
    - sowed french beans in Arch
    2026-04-21
    - started runner beans on the sill
    {day}
    - {line}
"""


def made(garden: Garden) -> list[Planting]:
    """What the notes made, without what stood there before."""
    return [p for p in garden.plantings if p.id not in OWN]


def test_beans_planted_out_are_the_ones_that_wait_on_the_sill_though_others_stand_there():
    garden = garden_of(BEANS.format(day="2026-06-01", line="planted beans in Arch"))
    assert [(p.crops, p.bed_now) for p in made(garden)] == [
        (("french-bean",), "arch"),
        (("runner-bean",), "arch"),
    ]


def test_beans_picked_are_the_ones_that_stand_there_and_not_those_on_the_sill():
    garden = garden_of(BEANS.format(day="2026-06-30", line="picked 300 g beans in Arch"))
    assert [(p.crops, len(p.pickings)) for p in made(garden)] == [
        (("french-bean",), 1),
        (("runner-bean",), 0),
    ]


def test_a_month_without_a_day_begins_a_sowing_on_its_first_and_ends_anything_else_on_its_last():
    settings = settings_of("""
        garden: Changed
        beds:
          - {name: Long border}
          - {name: New border, was: Long border, from: 2026-06-15}
    """)
    garden = garden_of(
        """
        2026-06
        - sowed carrots in Long border
        - mulched Long border
    """,
        settings,
    )
    assert [(p.bed, p.bed_now) for p in garden.plantings] == [("long-border", "new-border")]
    assert [(e.verb, e.beds) for e in garden.events] == [
        ("sowed", ("long-border",)),
        ("mulched", ("new-border",)),
    ]


@pytest.mark.parametrize(
    ("one", "other", "apart"),
    [
        ("row 1", "row 2", True),
        ("row 1", "row 1", False),
        ("rows 1 2", "row 2", False),
        ("north half", "south half", True),
        ("north half", "row 2", False),
        ("middle", "end", False),
    ],
)
def test_parts_of_a_bed_are_apart_only_where_they_surely_are(one: str, other: str, apart: bool):
    assert are_apart(one, other) is apart


def test_what_stands_at_the_very_start_of_the_first_text_is_found_too():
    assert holding(["Joe came", "nobody", "with Joe"], ["Joe"]) == {0, 2}
