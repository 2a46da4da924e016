"""Bulbs and tubers are out of the ground once they are picked: all of them, or presumed so after a while."""

from __future__ import annotations

from datetime import date

from gardens import garden_of
from leafmould.garden.model import Planting


def in_arch(*days: str) -> list[Planting]:
    """The plantings in the Arch, of days and what was done: "2026-04-01: planted …"."""
    garden = garden_of("\n".join(day.replace(": ", "\n- ", 1) for day in days), on=date(2026, 7, 15))
    return [p for p in garden.plantings if p.bed == "arch"]


def ends(*days: str) -> list[tuple[str, str | None, str | None]]:
    """Each planting's crop, last day and why."""
    return [(p.crops[0], p.ended_on and p.ended_on.isoformat(), p.end_basis) for p in in_arch(*days)]


def test_all_the_garlic_lifted_ends_it() -> None:
    assert ends(
        "2024-10-20: planted 33 garlic in Arch",
        "2025-07-10: lifted all the garlic from Arch, only 22 bulbs",
    ) == [("garlic", "2025-07-10", "finished")]


def test_some_onions_pulled_and_no_more_are_presumed_to_have_been_all() -> None:
    assert ends(
        "2025-04-01: planted 50 onion in Arch",
        "2025-08-02: pulled onions from Arch, 14 lb",
    ) == [("onion", "2025-10-01", "presumed over: lifted, then 60 days without a picking")]


def test_potatoes_dug_again_and_again_stand_in_between() -> None:
    assert ends(
        "2026-04-01: planted 20 potatoes in Arch",
        "2026-06-20: dug 1 kg potatoes from Arch",
        "2026-07-10: dug 2 kg potatoes from Arch",
    ) == [("potato", None, None)]


def test_next_years_garlic_is_not_mixed_with_what_was_lifted() -> None:
    found = in_arch(
        "2024-10-20: planted garlic in Arch",
        "2025-07-10: lifted garlic from Arch, 2 kg",
        "2025-10-20: planted garlic in Arch",
        "2026-07-10: lifted garlic, 33 bulbs, 2.4 kg",
    )
    assert [p.picked_g for p in found] == [2000, 2400]


def test_beans_picked_all_at_once_go_on() -> None:
    assert ends("2026-05-10: sowed beans in Arch", "2026-07-10: picked all the beans from Arch, 2 kg") == [
        ("bean", None, None)
    ]
