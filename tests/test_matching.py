"""The rules of matching, 1 to 6: ends, batches, lasting plants; notes as typed, and the plantings they make.

Each rule is the project's own; where a figure in one is common practice, the module that holds it says so.
"""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of, reached, settings_of, stories, told

# 1. Never cleared


def test_1_another_crop_in_the_same_part_ends_the_first():
    garden = garden_of("""
        2026-04-10
        - sowed peas in Long border, north half
        2026-07-05
        - sowed beetroot in Long border, north half
    """)
    assert told(garden) == [
        "pea_long-border_2026-04-10_north-half · sown · sown 2026-04-10 · ended 2026-07-05 (estimated), "
        "presumed over: another crop was started in its place",
        "beetroot_long-border_2026-07-05_north-half · sown · sown 2026-07-05",
    ]


def test_1_a_planting_in_no_named_part_never_ends_another_crop():
    garden = garden_of("""
        2026-04-10
        - sowed peas in Long border
        2026-07-05
        - sowed beetroot in Long border, north half
    """)
    assert [p.ended_on for p in garden.plantings if p.crops == ("pea",)] == [None]


def test_1_a_container_is_one_place():
    garden = garden_of("""
        2026-04-10
        - sowed peas in Tub 1
        2026-07-05
        - sowed beetroot in Tub 1
    """)
    assert told(garden)[0] == (
        "pea_tub-1_2026-04-10 · sown · sown 2026-04-10 · ended 2026-07-05 (estimated), "
        "presumed over: another crop was started in its place"
    )


def test_1_a_noted_frost_ends_what_is_tender():
    garden = garden_of("""
        2026-05-28
        - planted 6 tomatoes in Arch
        - planted 12 leeks in Arch
        2026-09-30
        - frost −3
    """)
    assert told(garden) == [
        "leek_arch_2026-05-28 · planted · 12 plants · planted 2026-05-28",
        "tomato_arch_2026-05-28 · planted · 6 plants · planted 2026-05-28 · ended 2026-09-30 (estimated), "
        "presumed over: a noted frost",
    ]


def test_1_else_the_average_first_frost_and_14_days():
    garden = garden_of("""
        2026-05-28
        - planted 6 tomatoes in Arch
    """)
    assert told(garden) == [
        "tomato_arch_2026-05-28 · planted · 6 plants · planted 2026-05-28 · ended 2026-10-09 (estimated), "
        "presumed over: the average first frost and 14 days"
    ]


def test_1_a_frost_of_spring_kills_nothing():
    garden = garden_of(
        "2026-05-20\n- planted 6 tomatoes in Arch\n2026-05-24\n- frost −1", on=date(2026, 6, 1)
    )
    assert told(garden) == ["tomato_arch_2026-05-20 · planted · 6 plants · planted 2026-05-20"]


def test_1_a_picking_after_a_frost_shows_it_lived():
    garden = garden_of("""
        2026-05-28
        - planted 6 tomatoes in Hoop bed
        2026-09-30
        - frost −3
        2026-10-20
        - picked 1 kg tomatoes from Hoop bed
        2026-11-05
        - frost −6
    """)
    assert told(garden) == [
        "tomato_hoop-bed_2026-05-28 · planted · 6 plants · planted 2026-05-28 · picked 2026-10-20 to 2026-10-20: "
        "1 kg · ended 2026-11-05 (estimated), presumed over: a noted frost"
    ]


def test_1_a_new_start_and_60_days_without_picking_end_the_first_batch():
    garden = garden_of("""
        2026-04-10
        - sowed lettuce in Arch
        2026-06-01
        - sowed lettuce in Arch
        2026-06-20
        - picked lettuce from Arch
    """)
    assert told(garden)[0] == (
        "lettuce_arch_2026-04-10 · sown · sown 2026-04-10 · ended 2026-08-19 (estimated), presumed over: "
        "started anew, then 60 days without a picking · group lettuce_arch_2026-04-10_batches"
    )


@pytest.mark.parametrize(
    ("line", "ended"),
    [
        ("sowed carrots in Arch", "2025-04-10 (estimated), presumed over: 12 months since it began"),
        ("sowed parsley in Arch", "2026-04-10 (estimated), presumed over: 24 months since it began"),
        ("planted 20 leeks in Arch", "2026-04-10 (estimated), presumed over: 24 months since it began"),
    ],
)
def test_1_an_annual_lasts_12_months_a_biennial_or_overwintered_crop_24(line: str, ended: str):
    garden = garden_of(f"2024-04-10\n- {line}")
    assert told(garden)[0].split(" · ")[-1] == f"ended {ended}"


# 2. Two sowings of one variety in one bed


def test_2_a_picking_belongs_to_both_batches_unless_the_line_says_which():
    garden = garden_of("""
        2026-04-10
        - sowed pea 'Meteor' in Arch
        2026-05-02
        - sowed pea 'Meteor' in Arch
        2026-07-01
        - picked 1 kg peas from Arch
        - picked 300 g peas from Arch, first sowing
        - picked 200 g peas from Arch, April sowing
    """)
    assert told(garden) == [
        "pea_arch_2026-04-10_meteor · sown · 'Meteor' · sown 2026-04-10 · picked 2026-07-01 to 2026-07-01: 0.5 kg "
        "· ended 2026-08-30 (estimated), presumed over: started anew, then 60 days without a picking "
        "· group pea_arch_2026-04-10_meteor_batches",
        "pea_arch_2026-05-02_meteor · sown · 'Meteor' · sown 2026-05-02 · group pea_arch_2026-04-10_meteor_batches",
    ]
    assert reached(garden)["picked 1 kg peas from Arch"] == ("pea_arch_2026-04-10_meteor_batches",)
    assert [(p.planting, p.group) for p in garden.pickings] == [
        (None, "pea_arch_2026-04-10_meteor_batches"),
        ("pea_arch_2026-04-10_meteor", None),
        ("pea_arch_2026-04-10_meteor", None),
    ]
    assert garden.problems == ()


def test_2_with_one_batch_over_a_picking_belongs_to_the_other():
    garden = garden_of("""
        2026-04-10
        - sowed radish in Arch
        2026-05-20
        - cleared radish from Arch
        - sowed radish in Arch
        2026-06-20
        - picked 12 radishes from Arch
    """)
    assert told(garden) == [
        "radish_arch_2026-04-10 · sown · sown 2026-04-10 · cleared 2026-05-20 · ended 2026-05-20, cleared",
        "radish_arch_2026-05-20 · sown · sown 2026-05-20 · picked 2026-06-20 to 2026-06-20: 12",
    ]


# 3. Resowed


def test_3_resowing_ends_as_lost_what_never_came_up():
    garden = garden_of("""
        2026-04-10
        - sowed carrots in Arch
        2026-05-10
        - resowed carrots in Arch
    """)
    assert told(garden) == [
        "carrot_arch_2026-04-10 · sown · sown 2026-04-10 · lost 2026-05-10 · ended 2026-05-10 (estimated), "
        "presumed lost: resowed before anything came up",
        "carrot_arch_2026-05-10 · sown · sown 2026-05-10",
    ]


def test_3_resowing_fills_the_gaps_of_what_had_come_up():
    garden = garden_of("""
        2026-04-10
        - sowed carrots in Arch
        2026-05-01
        - carrots in Arch came up
        2026-05-10
        - resowed carrots in Arch
    """)
    assert told(garden) == ["carrot_arch_2026-04-10 · sown · sown 2026-04-10 · came_up 2026-05-01"]


# 4. Thinned


def test_4_thinnings_set_elsewhere_have_their_parents_start():
    garden = garden_of("""
        2026-04-10
        - sowed 60 beetroot in Long border
        2026-05-20
        - thinned beetroot in Long border, replanted 8 in Arch
        2026-05-25
        - thinned beetroot in Long border to 20
        2026-05-26
        - thinned beetroot in Long border
    """)
    assert told(garden) == [
        "beetroot_arch_2026-05-20 · planted · 8 plants · sown 2026-04-10 · planted 2026-05-20 "
        "· parent beetroot_long-border_2026-04-10",
        "beetroot_long-border_2026-04-10 · sown · 20 plants · sown 2026-04-10",
    ]


# 5. Self-sown


def test_5_self_sown_plants_have_no_start():
    garden = garden_of("""
        2026-05-10
        - saw self-sown borage in Arch
    """)
    assert told(garden) == ["borage_arch_2026-05-10 · self-sown · found 2026-05-10"]


# 6. Perennials


def test_6_only_their_own_name_ends_perennials():
    garden = garden_of("""
        2025-06-10
        - picked 2 kg rhubarb from Top bed
        2026-06-10
        - picked 3 kg rhubarb from Top bed
        2026-08-01
        - cleared Top bed
        - cut back rhubarb in Top bed
        2026-08-20
        - picked 3 kg raspberries from Raspberry row
        2026-10-01
        - grubbed out raspberries in Raspberry row
    """)
    assert stories(garden) == [
        "raspberry_raspberry-row_standing · unknown · picked 2026-08-20 to 2026-08-20: 3 kg · cleared 2026-10-01 "
        "· ended 2026-10-01, cleared · season 2026: 3000 g",
        "pear_old-pear_2015 · planted · planted 2015",
        "rhubarb_top-bed_2025-1 · unknown · picked 2025-06-10 to 2026-06-10: 5 kg "
        "· season 2025: 2000 g · season 2026: 3000 g",
    ]


def test_6_a_season_turns_on_1_july_in_the_south():
    south = settings_of("garden: South\nplace: {latitude: -40}\nbeds: [{name: Top bed}]")
    garden = garden_of(
        "2026-06-20\n- picked 1 kg rhubarb from Top bed\n2026-07-02\n- picked 2 kg rhubarb from Top bed",
        south,
    )
    assert [(s.name, s.picked_g) for s in garden.plantings[0].seasons] == [
        ("2025/26", 1000.0),
        ("2026/27", 2000.0),
    ]
