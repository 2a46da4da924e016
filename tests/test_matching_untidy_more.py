"""The rules of matching from 9 on again, with notes that are less tidy than their own tests: as typed.

The rules are the project's own; a figure that is common practice is said so where the module holds it.
"""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of, reached, settings_of, told

# 9. cleared BED, some time


def test_9_cleared_some_time_in_july_spares_what_was_sown_in_july_after_it():
    garden = garden_of("""
        2026-04-10
        - sowed peas in Arch
        2026-07
        - cleared Arch
        2026-07-10
        - sowed kale in Arch
    """)
    assert reached(garden)["cleared Arch"] == ("pea_arch_2026-04-10",)
    alone = garden_of("2026-07-10\n- sowed kale in Arch\n2026\n- cleared Arch")
    assert reached(alone)["cleared Arch"] == ("kale_arch_2026-07-10",)


# 10. Moved


def test_10_a_container_put_into_a_bed_keeps_its_plants():
    garden = garden_of(
        """
        2026-05-10
        - planted 3 peppers in Tub 1
        2026-06-10
        - moved Tub 1 into Hoop bed
        2026-07-10
        - moved everything from Tub 1 to Tub 2
        2026-08-10
        - picked 3 peppers from Tub 2
    """,
        on=date(2026, 9, 1),
    )
    assert told(garden) == [
        "pepper_tub-1_2026-05-10 · planted · in tub-1 then tub-2, now tub-2 · 3 plants · planted 2026-05-10 "
        "· picked 2026-08-10 to 2026-08-10: 3"
    ]
    assert [e.beds for e in garden.events if e.verb == "moved"] == [("tub-1",), ("tub-2",)]


# 12. Raised batches


def test_12_batches_of_two_varieties_give_no_variety_to_what_names_none():
    garden = garden_of(
        """
        2026-03-01
        - started 12 tomato 'Stupice' in Cold frame
        2026-03-20
        - started 12 tomato 'Krim' in Cold frame
        2026-05-28
        - planted 8 tomatoes in Hoop bed
        - planted 4 tomato 'Krim' in Tub 1
    """,
        on=date(2026, 6, 2),
    )
    assert told(garden) == [
        "tomato_tub-1_2026-05-28_krim · planted · 'Krim' · 4 plants · started 2026-03-20 "
        "· planted 2026-05-28 · raised in cold-frame",
        "tomato_hoop-bed_2026-05-28 · planted · 8 plants · planted 2026-05-28 "
        "· started between 2026-03-01 and 2026-03-20 · raised in cold-frame",
    ]


def test_12_once_some_were_drawn_uncounted_counts_cover_nothing():
    garden = garden_of(
        """
        2026-03-01
        - started 20 lettuce in Cold frame
        2026-03-20
        - started 20 lettuce in Cold frame
        2026-04-20
        - planted 12 lettuce in Arch
        2026-04-25
        - planted lettuce in Top bed
        2026-04-30
        - planted 6 lettuce in Tub 1
    """,
        on=date(2026, 5, 20),
    )
    starts = {p.bed: (p.started and p.started.written, p.started_between) for p in garden.plantings}
    assert starts["arch"] == ("2026-03-01", None)
    assert starts["tub-1"] == (None, (date(2026, 3, 1), date(2026, 3, 20)))


def test_12_what_befalls_the_batch_later_is_not_told_of_what_was_planted_out_before():
    garden = garden_of(
        """
        2026-03-01
        - started 20 lettuce in Cold frame
        2026-03-20
        - pricked out 20 lettuce
        2026-04-20
        - planted 12 lettuce in Arch
        2026-05-02
        - lost 3 lettuce seedlings in Cold frame to slugs
        2026-05-03
        - composted the rest of the lettuce seedlings
        2026-05-04
        - planted 2 lettuce in Tub 1
    """,
        on=date(2026, 5, 20),
    )
    at = reached(garden)
    assert at["pricked out 20 lettuce"] == ("lettuce_arch_2026-04-20",)
    assert at["lost 3 lettuce seedlings in Cold frame to slugs"] == ("crop lettuce",)
    assert at["composted the rest of the lettuce seedlings"] == ("crop lettuce",)
    assert garden.planting_by_id["lettuce_arch_2026-04-20"].number == 12
    assert garden.planting_by_id["lettuce_tub-1_2026-05-04"].started is None


def test_12_planting_out_the_rest_closes_the_batch_and_clearing_the_frame_does_not():
    garden = garden_of(
        """
        2026-02-20
        - started about 80 leek seeds in Cold frame
        - sowed radish in Cold frame
        2026-04-20
        - cleared Cold frame
        2026-06-01
        - planted 20 leeks in Arch
        2026-06-10
        - planted the rest of the leeks in Top bed
        2026-06-12
        - planted 5 leeks in Tub 1
    """,
        on=date(2026, 7, 1),
    )
    assert reached(garden)["cleared Cold frame"] == ("radish_cold-frame_2026-02-20",)
    starts = {p.bed: p.started and p.started.written for p in garden.plantings}
    assert (starts["arch"], starts["top-bed"], starts["tub-1"]) == ("2026-02-20", "2026-02-20", None)


def test_12_what_is_picked_where_it_was_raised_is_no_waiting_batch():
    garden = garden_of(
        """
        2026-03-29
        - started basil in Cold frame
        2026-07-15
        - picked 20 g basil from Cold frame
        2026-09-10
        - picked 30 g basil from Cold frame
    """,
        on=date(2026, 9, 11),
    )
    assert told(garden) == [
        "basil_cold-frame_2026-03-29 · started · started 2026-03-29 "
        "· picked 2026-07-15 to 2026-09-10: 0.05 kg"
    ]


# 13. Beds split


def test_13_clearing_one_of_two_new_beds_does_not_end_what_may_stand_in_the_other():
    patches = settings_of("""
        garden: Patches
        beds:
          - {name: Old patch}
          - {name: North patch, was: Old patch, from: 2026-06-01}
          - {name: South patch, was: Old patch, from: 2026-06-01}
    """)
    notes = "2026-04-10\n- sowed kale in Old patch\n2026-06-20\n- cleared North patch"
    assert reached(garden_of(notes, patches))["cleared North patch"] == ()
    both = garden_of(f"{notes}\n2026-07-20\n- cleared Old patch", patches)
    assert reached(both)["cleared Old patch"] == ("kale_old-patch_2026-04-10",)


# 17. What reaches everything


def test_17_a_treatment_of_one_half_does_not_reach_the_other():
    garden = garden_of("""
        2026-06-10
        - sowed peas in Long border, north half
        - sowed kale in Long border, sunny end
        - sowed chard in Long border
        2026-06-20
        - treated Long border, south half with soap
        - treated the shady end of Long border with milk
    """)
    assert reached(garden)["treated Long border, south half with soap"] == (
        "chard_long-border_2026-06-10",
        "kale_long-border_2026-06-10_sunny-end",
    )
    assert reached(garden)["treated the shady end of Long border with milk"] == (
        "chard_long-border_2026-06-10",
        "pea_long-border_2026-06-10_north-half",
    )


# 20. Identity


def test_20_what_joins_an_older_planting_goes_under_its_id():
    found = "2026-06-27\n- saw self-sown dill in Arch\n2026-05-20\n- resowed carrots in Arch"
    assert [p.id for p in garden_of(found).plantings if p.bed == "arch"] == [
        "carrot_arch_2026-05-20",
        "dill_arch_2026-06-27",
    ]
    older = "2026-05-01\n- saw self-sown dill in Arch\n- sowed carrots in Arch\n2026-05-10\n- carrots came up"
    assert [p.id for p in garden_of(f"{older}\n{found}").plantings if p.bed == "arch"] == [
        "carrot_arch_2026-05-01",
        "dill_arch_2026-05-01",
    ]


# 21. Trees and rows


@pytest.mark.parametrize(
    ("line", "end"),
    [
        ("felled Old pear", "cleared"),
        ("lost Old pear to honey fungus", "lost to honey fungus"),
        ("cleared Old pear", None),
        ("cleared around Old pear", None),
    ],
)
def test_21_a_bed_that_is_one_tree_is_its_own_name_when_it_is_lost_or_felled(line: str, end: str | None):
    garden = garden_of(f"2026-06-10\n- {line}")
    assert garden.planting_by_id["pear_old-pear_2015"].end_basis == end
