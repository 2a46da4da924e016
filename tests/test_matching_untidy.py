"""The rules of matching 1 to 8 again, with notes that are less tidy than their own tests: as typed, and what comes of it.

The rules are the project's own; a figure that is common practice is said so where the module holds it.
"""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of, reached, sentences, told

# 1 and 7. The last one picked


@pytest.mark.parametrize(
    "line", ["dug the last of the parsnips from Arch", "picked the rest of the parsnips"]
)
def test_1_picking_the_last_is_its_end_though_it_may_still_be_cleared(line: str):
    notes = f"2025-05-10\n- sowed parsnips in Arch\n2026-02-20\n- {line}"
    picked = (
        "parsnip_arch_2025-05-10 · sown · sown 2025-05-10 · picked 2026-02-20 to 2026-02-20: nothing counted"
    )
    assert told(garden_of(notes)) == [f"{picked} · ended 2026-02-20, finished"]
    assert told(garden_of(f"{notes}\n2026-03-10\n- cleared parsnips")) == [
        f"{picked} · cleared 2026-03-10 · ended 2026-03-10, cleared"
    ]


def test_1_the_last_ripe_ones_leave_others():
    garden = garden_of(
        "2026-06-10\n- planted 6 peppers in Arch\n2026-09-01\n- picked the last ripe peppers from Arch",
        on=date(2026, 9, 2),
    )
    assert garden.planting_by_id["pepper_arch_2026-06-10"].ended_on is None


# 2. Two sowings


def test_2_the_second_sowing_is_the_second_though_the_first_is_over():
    garden = garden_of(
        """
        2025-04-10
        - sowed lettuce in Arch
        2026-04-10
        - sowed lettuce in Arch
        2026-05-10
        - sowed lettuce in Arch
        2026-06-10
        - sowed lettuce in Arch
        2026-07-01
        - cleared lettuce from Arch, first sowing
        2026-07-20
        - picked 2 lettuces from Arch, second sowing
        - picked 3 lettuces from Arch, third sowing
    """,
        on=date(2026, 7, 21),
    )
    assert reached(garden)["cleared lettuce from Arch, first sowing"] == ("lettuce_arch_2026-04-10",)
    assert reached(garden)["picked 2 lettuces from Arch, second sowing"] == ("lettuce_arch_2026-05-10",)
    assert reached(garden)["picked 3 lettuces from Arch, third sowing"] == ("lettuce_arch_2026-06-10",)


# 3. Resowed


def test_3_watering_is_no_sign_that_anything_came_up_and_the_place_need_not_be_named():
    garden = garden_of("""
        2026-04-10
        - sowed carrots in Arch
        2026-04-12
        - watered carrots in Arch
        2026-05-10
        - resowed carrots
    """)
    assert told(garden) == [
        "carrot_arch_2026-04-10 · sown · sown 2026-04-10 · lost 2026-05-10 · ended 2026-05-10 (estimated), "
        "presumed lost: resowed before anything came up",
        "carrot_place-not-noted_2026-05-10 · sown · sown 2026-05-10",
    ]
    assert garden.planting_by_id["carrot_place-not-noted_2026-05-10"].bed == "arch"
    assert garden.problems == ()


def test_3_what_is_resown_in_trays_is_a_raised_batch_again():
    garden = garden_of(
        """
        2026-03-01
        - started 12 peppers in Cold frame
        2026-03-15
        - resowed 6 peppers
        2026-03-20
        - peppers came up
        2026-03-25
        - resowed 6 peppers in Cold frame
        2026-05-20
        - planted 6 peppers in Hoop bed
        2026-05-21
        - gave away the rest of the pepper seedlings
        2026-05-22
        - planted 6 peppers in Tub 1
    """,
        on=date(2026, 6, 2),
    )
    assert told(garden) == [
        "pepper_cold-frame_2026-03-01 · started · 12 plants · started 2026-03-01 · lost 2026-03-15 "
        "· ended 2026-03-15 (estimated), presumed lost: resowed before anything came up",
        "pepper_hoop-bed_2026-05-20 · planted · 6 plants · started 2026-03-15 · planted 2026-05-20 "
        "· raised in cold-frame",
        "pepper_tub-1_2026-05-22 · planted · 6 plants · planted 2026-05-22",
    ]


# 5. Self-sown


def test_5_a_year_later_it_is_the_next_to_come_up_and_may_be_named_as_such():
    garden = garden_of(
        """
        2025-06-10
        - saw self-sown dill in Arch
        2026-04-20
        - sowed dill in Arch
        2026-06-12
        - saw self-sown dill in Arch
        2026-07-10
        - cleared self-sown dill from Arch
    """,
        on=date(2026, 7, 11),
    )
    assert [(p.id, p.end_basis) for p in garden.plantings if p.bed == "arch"] == [
        ("dill_arch_2025-06-10", "presumed over: 12 months since it began"),
        ("dill_arch_2026-04-20", None),
        ("dill_arch_2026-06-12", "cleared"),
    ]


# 6. Perennials


def test_6_clearing_their_leaves_does_not_end_them():
    garden = garden_of("""
        2024-06-10
        - planted 6 rhubarb crowns in Top bed
        2025-11-01
        - cleared rhubarb leaves from Top bed
        - rhubarb in Top bed died down
        2026-05-01
        - lost 2 rhubarb in Top bed
    """)
    assert told(garden) == ["rhubarb_top-bed_2024-06-10 · planted · 4 plants · planted 2024-06-10"]


def test_6_dividing_them_leaves_as_many_as_there_were():
    garden = garden_of(
        "2024-03-10\n- planted 3 rhubarb in Arch\n2026-03-10\n- divided rhubarb in Arch, planted 3 in Top bed"
    )
    assert told(garden) == [
        "rhubarb_arch_2024-03-10 · planted · 3 plants · planted 2024-03-10",
        "rhubarb_top-bed_2026-03-10 · planted · 3 plants · planted 2026-03-10 · parent rhubarb_arch_2024-03-10",
    ]


# 8. A picking with no planting


def test_8_a_picking_before_plants_were_moved_there_says_so():
    garden = garden_of("""
        2026-06-10
        - picked 2 kg tomatoes from Arch
        2026-06-12
        - moved 3 tomatoes from Hoop bed to Arch
        2026-06-20
        - planted tomatoes in Arch
    """)
    assert sentences(garden) == [
        "notes/2026-06-10.md:4: work[0]: picked on 10 June 2026, before moving on 12 June 2026."
    ]
