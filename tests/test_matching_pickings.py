"""The rules of matching, 7 to 12: pickings, clearing, moving, buying, raising; notes as typed."""

from __future__ import annotations

from datetime import date

import pytest

from gardens import OWN, garden_of, reached, sentences, told

# 7. Biennials and overwintered crops


def test_7_running_to_seed_does_not_end_an_overwintered_crop():
    garden = garden_of(
        """
        2025-06-10
        - planted 12 kale in Top bed
        2026-04-10
        - kale in Top bed ran to seed
    """,
        on=date(2026, 4, 15),
    )
    assert told(garden) == ["kale_top-bed_2025-06-10 · planted · 12 plants · planted 2025-06-10"]


# 8. A picking with no planting


def test_8_a_picking_opens_a_planting_whose_start_nobody_noted():
    garden = garden_of("""
        2026-06-10
        - picked 1 kg chard from Arch
        2026-06-20
        - picked 2 kg chard from Arch
    """)
    assert told(garden) == ["chard_arch_2026-1 · unknown · picked 2026-06-10 to 2026-06-20: 3 kg"]
    assert sentences(garden) == [
        "notes/2026-06-10.md:4: work[0]: no note says when chard in Arch was sown or planted."
    ]


def test_8_a_start_within_60_days_leaves_the_picking_without_a_planting():
    garden = garden_of("""
        2026-06-10
        - picked 1 kg chard from Arch
        2026-07-10
        - sowed chard in Arch
    """)
    assert told(garden) == ["chard_arch_2026-07-10 · sown · sown 2026-07-10"]
    assert [p.planting for p in garden.pickings] == [None]
    assert sentences(garden) == [
        "notes/2026-06-10.md:4: work[0]: picked on 10 June 2026, before sowing on 10 July 2026."
    ]


def test_8_after_more_than_60_days_the_two_are_different_plantings():
    garden = garden_of("""
        2026-04-10
        - picked 1 kg chard from Arch
        2026-07-10
        - sowed chard in Arch
    """)
    assert [p.id for p in garden.plantings if p.id not in OWN] == [
        "chard_arch_2026-1",
        "chard_arch_2026-07-10",
    ]


# 9. cleared BED


@pytest.mark.parametrize(
    "lines", [("planted 10 leeks in Arch", "cleared Arch"), ("cleared Arch", "planted 10 leeks in Arch")]
)
def test_9_clearing_and_replanting_on_one_day_work_in_any_order(lines: tuple[str, str]):
    garden = garden_of(
        "2026-04-10\n- sowed peas in Arch\n2026-07-05\n" + "\n".join(f"- {line}" for line in lines)
    )
    assert told(garden) == [
        "pea_arch_2026-04-10 · sown · sown 2026-04-10 · cleared 2026-07-05 · ended 2026-07-05, cleared",
        "leek_arch_2026-07-05 · planted · 10 plants · planted 2026-07-05",
    ]


def test_9_a_part_cleared_ends_what_stands_in_that_part():
    garden = garden_of("""
        2026-04-10
        - sowed peas in Long border, north half
        - sowed carrots in Long border, south half
        - sowed chard in Long border
        2026-07-05
        - cleared Long border, north half
    """)
    assert reached(garden)["cleared Long border, north half"] == ("pea_long-border_2026-04-10_north-half",)


def test_9_everything_but_one_crop():
    garden = garden_of("""
        2026-04-20
        - sowed leeks in Top bed
        - sowed kale in Top bed
        2026-07-20
        - cleared everything but leeks from Top bed
        - cleared half of Arch
    """)
    assert reached(garden)["cleared everything but leeks from Top bed"] == ("kale_top-bed_2026-04-20",)
    assert reached(garden)["cleared half of Arch"] == ()


# 10. Moved


def test_10_a_container_moves_house_and_plants_are_split_off_by_count():
    garden = garden_of(
        """
        2026-05-10
        - planted 12 strawberries in Cold frame
        - planted 3 peppers in Tub 1
        2026-07-05
        - moved 3 strawberries from Cold frame to Tub 2
        - moved Tub 1 to Landing
        2026-08-01
        - moved strawberries from Cold frame to Top bed
    """,
        on=date(2026, 9, 1),
    )
    assert told(garden) == [
        "pepper_tub-1_2026-05-10 · planted · 3 plants · planted 2026-05-10",
        "strawberry_cold-frame_2026-05-10 · planted · in cold-frame then top-bed, now top-bed · 9 plants "
        "· planted 2026-05-10",
        "strawberry_tub-2_2026-07-05 · moved · 3 plants · planted 2026-05-10 "
        "· parent strawberry_cold-frame_2026-05-10",
    ]
    assert "landing" not in garden.beds


# 11. Bought


def test_11_bought_plants_count_from_planting_out():
    garden = garden_of(
        """
        2026-05-10
        - bought 6 pepper 'Padron' from the market
        2026-05-28
        - planted 6 peppers in Hoop bed
    """,
        on=date(2026, 6, 1),
    )
    assert told(garden) == [
        "pepper_hoop-bed_2026-05-28 · bought · 'Padron' · 6 plants · planted 2026-05-28 · from market"
    ]
    assert reached(garden)["bought 6 pepper 'Padron' from the market"] == ("pepper_hoop-bed_2026-05-28",)


def test_11_what_was_bought_more_than_60_days_before_is_no_source():
    garden = garden_of(
        "2026-03-10\n- bought 6 pepper from the market\n2026-05-28\n- planted 6 peppers in Arch",
        on=date(2026, 6, 1),
    )
    assert told(garden) == ["pepper_arch_2026-05-28 · planted · 6 plants · planted 2026-05-28"]


# 12. Raised batches


def test_12_one_batch_gives_its_date_to_all_that_is_planted_out():
    garden = garden_of(
        """
        2026-03-01
        - started tomato 'Stupice' in Cold frame
        2026-05-28
        - planted 8 tomatoes in Hoop bed
        2026-05-30
        - planted tomatoes in Arch
    """,
        on=date(2026, 6, 1),
    )
    assert told(garden) == [
        "tomato_arch_2026-05-30 · planted · 'Stupice' · started 2026-03-01 · planted 2026-05-30 · raised in cold-frame",
        "tomato_hoop-bed_2026-05-28 · planted · 'Stupice' · 8 plants · started 2026-03-01 · planted 2026-05-28 "
        "· raised in cold-frame",
    ]
    assert reached(garden)["started tomato 'Stupice' in Cold frame"] == (
        "tomato_hoop-bed_2026-05-28",
        "tomato_arch_2026-05-30",
    )


def test_12_of_two_batches_the_oldest_first_while_counts_cover_it():
    garden = garden_of(
        """
        2026-03-01
        - started 12 tomato 'Stupice' in Cold frame
        2026-03-20
        - started 12 tomato 'Stupice' in Cold frame
        2026-05-28
        - planted 8 tomatoes in Hoop bed
        2026-05-29
        - planted 6 tomatoes in Tub 1
        2026-05-30
        - planted tomatoes in Arch
        2026-06-01
        - gave away the rest of the tomato seedlings
    """,
        on=date(2026, 6, 2),
    )
    assert told(garden) == [
        "tomato_hoop-bed_2026-05-28 · planted · 'Stupice' · 8 plants · started 2026-03-01 · planted 2026-05-28 "
        "· raised in cold-frame",
        "tomato_arch_2026-05-30 · planted · 'Stupice' · started 2026-03-20 · planted 2026-05-30 · raised in cold-frame",
        "tomato_tub-1_2026-05-29 · planted · 'Stupice' · 6 plants · planted 2026-05-29 "
        "· started between 2026-03-01 and 2026-03-20 · raised in cold-frame",
    ]


def test_12_without_counts_the_start_lies_between_the_batches():
    garden = garden_of(
        """
        2026-03-01
        - started tomatoes in Cold frame
        2026-03-20
        - started tomatoes in Cold frame
        2026-05-28
        - planted tomatoes in Hoop bed
    """,
        on=date(2026, 6, 1),
    )
    assert told(garden) == [
        "tomato_hoop-bed_2026-05-28 · planted · planted 2026-05-28 · started between 2026-03-01 and 2026-03-20 "
        "· raised in cold-frame"
    ]


def test_12_a_batch_closes_after_150_days():
    garden = garden_of("2026-01-01\n- started leeks in Cold frame\n2026-06-20\n- planted leeks in Arch")
    assert told(garden) == [
        "leek_cold-frame_2026-01-01 · started · started 2026-01-01 · ended 2026-05-31 (estimated), "
        "presumed over: 150 days since it was started, never planted out",
        "leek_arch_2026-06-20 · planted · planted 2026-06-20",
    ]


def test_12_a_seedbed_is_the_parent_of_what_is_set_out_from_it():
    garden = garden_of("""
        2026-03-20
        - sowed leeks in Cold frame
        2026-06-20
        - planted 12 leeks in Long border, south half, from the cold frame
    """)
    assert told(garden) == [
        "leek_cold-frame_2026-03-20 · sown · sown 2026-03-20",
        "leek_long-border_2026-06-20_south-half · planted · 12 plants · started 2026-03-20 · planted 2026-06-20 "
        "· raised in cold-frame · parent leek_cold-frame_2026-03-20",
    ]


def test_what_is_put_up_is_a_share_of_the_days_picking_by_the_measure_of_the_picking():
    garden = garden_of("""
        2026-05-20
        - planted 6 tomatoes in Arch
        2026-08-12
        - picked 6 kg tomatoes from Arch
        - put up 6 jars tomato sauce from 4 kg tomatoes
    """)
    assert [p.id for p in garden.plantings if p.id not in OWN] == ["tomato_arch_2026-05-20"]
    (picking,) = garden.pickings
    assert picking.grams == 6000
    assert [(f.kind, f.amount and f.amount.written) for f in picking.fates] == [("put up", "4 kg")]


def test_what_is_put_up_from_an_unnoted_harvest_opens_and_picks_nothing():
    garden = garden_of("2026-08-12\n- put up 6 jars tomato sauce from 4 kg tomatoes", on=date(2026, 8, 20))
    assert [p.id for p in garden.plantings if p.id not in OWN] == []
    assert (garden.pickings, sentences(garden)) == ((), [])
