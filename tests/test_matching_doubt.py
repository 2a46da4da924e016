"""Estimates and doubts: what a presumed end, a "?" and an "or" may not decide; notes as typed.

The rules are the project's own.
"""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of, reached, sentences, told
from leafmould.reckon.badges import badges

# A presumed end is an estimate: a later note of that crop in that bed shows that it lived

ONIONS_BETWEEN_LEEKS = """
    2024-04-20
    - planted 100 onion sets in Long border, north half
    2024-05-25
    - planted 60 leeks in Long border, north half, between the onions
"""


@pytest.mark.parametrize(
    ("line", "end"),
    [
        (
            "picked 19 onions from Long border, 2.2 kg",
            "picked 2024-09-14 to 2024-09-14: 2.2 kg, 19 · ended 2024-11-13 (estimated), "
            "presumed over: lifted, then 60 days without a picking",
        ),
        (
            "weeded onions in Long border",
            "ended 2025-04-20 (estimated), presumed over: 12 months since it began",
        ),
        ("cleared onions from Long border", "cleared 2024-09-14 · ended 2024-09-14, cleared"),
    ],
)
def test_another_crop_in_its_place_gives_way_to_a_note_that_names_the_first(line: str, end: str):
    garden = garden_of(f"{ONIONS_BETWEEN_LEEKS}\n2024-09-14\n- {line}")
    assert told(garden) == [
        "onion_long-border_2024-04-20_north-half · planted · 100 plants · planted 2024-04-20 · " + end,
        "leek_long-border_2024-05-25_north-half · planted · 60 plants · planted 2024-05-25 "
        "· ended 2026-05-25 (estimated), presumed over: 24 months since it began",
    ]
    assert garden.problems == ()


def test_it_does_not_give_way_to_a_new_start_of_the_crop_or_to_a_bed_cleared():
    started_anew = garden_of(f"""{ONIONS_BETWEEN_LEEKS}
        2024-06-10
        - planted 20 onion sets in Long border
        2024-08-20
        - picked 3 onions from Long border
    """)
    assert reached(started_anew)["picked 3 onions from Long border"] == ("onion_long-border_2024-06-10",)
    bed_cleared = garden_of(f"{ONIONS_BETWEEN_LEEKS}\n2024-09-14\n- cleared Long border")
    assert reached(bed_cleared)["cleared Long border"] == ("leek_long-border_2024-05-25_north-half",)


def test_nor_to_a_note_after_it_would_have_been_over_in_any_case():
    garden = garden_of("""
        2024-04-20
        - sowed tomatoes in Tub 1
        2024-08-25
        - sowed spinach in Tub 1
        2025-06-01
        - picked 4 tomatoes from Tub 1
    """)
    assert reached(garden)["picked 4 tomatoes from Tub 1"] == ("tomato_tub-1_2025-1",)


# A place in doubt, and plants nobody sowed, end nothing of others


def test_a_doubtful_place_ends_nothing():
    garden = garden_of("2026-06-13\n- sowed lettuce in Tub 1\n2026-07-12\n- sowed spinach in Tub 1?")
    assert told(garden) == [
        "lettuce_tub-1_2026-06-13 · sown · sown 2026-06-13",
        "spinach_tub-1_2026-07-12 · sown · sown 2026-07-12",
    ]
    [event] = [e for e in garden.events if e.action.text == "sowed spinach in Tub 1?"]
    assert event.inferred == ("bed: in doubt, as it is written",)


def test_clearing_a_doubtful_place_asks_and_ends_nothing():
    garden = garden_of("2026-06-13\n- sowed lettuce in Tub 1\n2026-07-12\n- cleared Tub 1?")
    assert told(garden) == ["lettuce_tub-1_2026-06-13 · sown · sown 2026-06-13"]
    assert sentences(garden) == [
        'notes/2026-07-12.md:4: work[0]: is it sure that "Tub 1" was cleared? Nothing was ended.'
    ]


def test_clearing_one_of_two_places_ends_nothing_in_either():
    garden = garden_of("2026-06-13\n- sowed lettuce in Tub 1\n2026-07-12\n- cleared Tub 1 or Tub 2")
    assert told(garden) == ["lettuce_tub-1_2026-06-13 · sown · sown 2026-06-13"]
    assert sentences(garden) == [
        'notes/2026-07-12.md:4: work[0]: "Tub 1" or "Tub 2": which was cleared? Nothing was ended.'
    ]


def test_one_of_two_places_holds_one_planting_and_asks_which():
    garden = garden_of("2026-07-12\n- sowed chard in Tub 1 or Tub 2")
    assert told(garden) == ["chard_tub-1_2026-07-12 · sown · sown 2026-07-12"]
    assert sentences(garden) == [
        'notes/2026-07-12.md:4: work[0]: "Tub 1" or "Tub 2": which was it? It stands in the first of them.'
    ]


def test_what_is_found_self_sown_ends_nothing_and_may_be_found_again():
    garden = garden_of("""
        2025-04-12
        - sowed parsley in Long border, north half
        - sowed chard in Tub 1
        2025-06-10
        - saw self-sown borage in Long border, north half
        - saw self-sown dill in Tub 1
        2025-07-01
        - saw about 20 self-sown borage in Long border
    """)
    assert told(garden) == [
        "chard_tub-1_2025-04-12 · sown · sown 2025-04-12",
        "parsley_long-border_2025-04-12_north-half · sown · sown 2025-04-12",
        "borage_long-border_2025-06-10_north-half · self-sown · 20 plants or so · found 2025-06-10 "
        "· ended 2026-06-10 (estimated), presumed over: 12 months since it began",
        "dill_tub-1_2025-06-10 · self-sown · found 2025-06-10 · ended 2026-06-10 (estimated), "
        "presumed over: 12 months since it began",
    ]


def test_finding_again_what_was_picked_before_is_no_early_picking():
    garden = garden_of("2026-06-10\n- picked 30 g dill from Arch\n2026-06-20\n- saw self-sown dill in Arch")
    assert [(p.id, p.origin, p.found) for p in garden.plantings if p.bed == "arch"] == [
        ("dill_arch_2026-1", "unknown", None)
    ]


# What a crop in doubt may be decides nothing else


def test_a_doubtful_crop_takes_neither_start_nor_variety_of_a_raised_batch():
    garden = garden_of(
        """
        2026-03-21
        - started 9 aubergine 'Black Beauty' in Cold frame
        2026-04-30
        - bought 3 peppers from the market
        2026-06-07
        - planted 2 aubergine or pepper in Hoop bed, the label has washed off
        2026-06-08
        - planted 5 aubergines in Hoop bed
    """,
        on=date(2026, 7, 15),
    )
    assert told(garden) == [
        "aubergine_hoop-bed_2026-06-08 · planted · 'Black Beauty' · 5 plants · started 2026-03-21 "
        "· planted 2026-06-08 · raised in cold-frame",
        "aubergine-pepper_hoop-bed_2026-06-07 · planted · in doubt · 2 plants · planted 2026-06-07",
    ]


def test_a_doubtful_crop_is_no_new_start_of_what_stands_there():
    garden = garden_of("2026-05-01\n- sowed chard in Arch\n2026-06-01\n- sowed chard or beetroot in Arch")
    assert garden.planting_by_id["chard_arch_2026-05-01"].ended_on is None


def test_nor_is_it_a_resowing_that_ends_what_stands_there():
    garden = garden_of("2026-05-01\n- sowed chard in Arch\n2026-06-01\n- resowed chard or beetroot in Arch")
    assert garden.planting_by_id["chard_arch_2026-05-01"].ended_on is None


def test_what_was_raised_in_doubt_is_planted_out_in_the_same_doubt_or_out_of_it():
    garden = garden_of(
        """
        2026-03-01
        - started chard or beetroot in Cold frame
        2026-05-01
        - planted 5 chard in Arch
        2026-05-03
        - planted 5 chard or beetroot in Top bed
    """,
        on=date(2026, 6, 1),
    )
    assert told(garden) == [
        "chard-beetroot_top-bed_2026-05-03 · planted · in doubt · 5 plants · started 2026-03-01 "
        "· planted 2026-05-03 · raised in cold-frame",
        "chard_arch_2026-05-01 · planted · 5 plants · started 2026-03-01 · planted 2026-05-01 "
        "· raised in cold-frame",
    ]


def test_of_two_varieties_in_doubt_the_start_lies_between_their_batches():
    garden = garden_of(
        """
        2026-03-21
        - started 9 tomato 'Krim' in Cold frame
        2026-03-25
        - started 9 tomato 'Cherokee' in Cold frame
        2026-05-23
        - planted 5 'Krim' or 'Cherokee' tomato in Hoop bed
        - planted 2 tomatoes in Arch
    """,
        on=date(2026, 7, 15),
    )
    assert told(garden) == [
        "tomato_arch_2026-05-23 · planted · 2 plants · planted 2026-05-23 "
        "· started between 2026-03-21 and 2026-03-25 · raised in cold-frame",
        "tomato_hoop-bed_2026-05-23_krim-cherokee · planted · 'Krim' · 'Cherokee' · in doubt · 5 plants "
        "· planted 2026-05-23 · started between 2026-03-21 and 2026-03-25 · raised in cold-frame",
    ]


# No label invents a start


@pytest.mark.parametrize(
    ("lines", "labels"),
    [
        ("2023-07-01\n- picked 30 g thyme from Arch", ["known since 2023", "picked 2023 from 1 July, 30 g"]),
        ("2025-04-12\n- divided chives in Arch", ["known since 2025"]),
        ("2025-04-12\n- planted thyme in Arch", ["planted 12 April 2025"]),
        ("2025-03-12\n- started rhubarb in Cold frame", ["started indoors 12 March 2025"]),
        ("2025-06-12\n- saw self-sown mint in Arch", ["found 12 June 2025"]),
        ("2025-06-12\n- moved 3 rhubarb to Arch", ["moved here 12 June 2025"]),
    ],
)
def test_a_lasting_plant_says_planted_only_where_that_was_noted(lines: str, labels: list[str]):
    garden = garden_of(lines, on=date(2026, 7, 15))
    [one] = [p for p in garden.plantings if p.bed in ("arch", "cold-frame")]
    assert [badge.text for badge in badges(one, garden, None)] == labels
