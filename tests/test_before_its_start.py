"""Seedlings and work noted before the only sowing belong to nothing: that is told, with both days."""

from __future__ import annotations

import pytest

from gardens import garden_of

LATER = "\n2026-04-20\n- sowed peas in Arch\n"


@pytest.mark.parametrize(
    ("line", "done"),
    [
        ("peas came up in Arch", "came up"),
        ("peas came up", "came up"),
        ("thinned peas in Arch", "thinned"),
        ("staked the peas in Arch", "staked"),
    ],
)
def test_what_comes_before_the_sowing_is_told_with_both_days(line: str, done: str) -> None:
    garden = garden_of(f"2026-04-10\n- {line}{LATER}")
    assert [p.message for p in garden.problems] == [
        f"{done} on 10 April 2026, before sowing on 20 April 2026."
    ]


@pytest.mark.parametrize(
    "notes",
    [
        "2026-04-10\n- watered peas in Arch" + LATER,  # nothing need stand there yet
        "2026-02-01\n- peas came up in Arch" + LATER.replace("04", "06"),  # another crop of peas
        "2026-04-10\n- peas came up in Arch\n2026-04-20\n- planted 12 peas in Arch",  # raised elsewhere
        "2026-04-02\n- sowed peas in Arch\n2026-04-10\n- peas came up in Arch",
    ],
)
def test_what_may_well_be_is_not_told(notes: str) -> None:
    assert [p.message for p in garden_of(notes).problems if "before sowing" in p.message] == []
