"""What a line carries beside its words: whether one amount is shared, and what was seen of a crop."""

from __future__ import annotations

import pytest

from gardens import entries_of
from leafmould.notes.entries import Action


def actions(line: str) -> tuple[Action, ...]:
    return entries_of(f"2026-06-20\n- {line}\n")[0].actions


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("picked 2 kg peas from Arch and Top bed", [(("Arch", "Top bed"), True)]),
        ("picked 2 kg peas from Arch", [(("Arch",), False)]),
        ("planted 2 tomatoes each in Tub 1 and Tub 2", [(("Tub 1",), False), (("Tub 2",), False)]),
    ],
)
def test_one_amount_over_several_places_is_told_apart_from_as_much_in_each(
    line: str, told: list[tuple[tuple[str, ...], bool]]
) -> None:
    assert [(tuple(p.name for p in a.places), a.is_together) for a in actions(line)] == told


@pytest.mark.parametrize(
    ("line", "subject"),
    [
        ("saw pea seedlings in Arch", "seedlings"),
        ("saw ripe tomatoes in Arch", "ripe"),
        ("saw pea flowers in Arch", "in flower"),
        ("saw peas in Arch", ""),
    ],
)
def test_what_was_seen_of_a_crop(line: str, subject: str) -> None:
    assert [action.subject or "" for action in actions(line)] == [subject]
