"""The rules of matching, 13 to 20: beds through time, doubt, coarse dates, identity; notes as typed."""

from __future__ import annotations

from datetime import date

import pytest

from gardens import OWN, garden_of, reached, sentences, settings_of, told
from leafmould.garden.queries import Past

# 13. Beds renamed, split, joined

CHANGED = settings_of("""
    garden: Changed
    beds:
      - {name: Long border}
      - {name: New border, was: Long border, from: 2026-06-01}
      - {name: Old patch}
      - {name: North patch, was: Old patch, from: 2026-06-01}
      - {name: South patch, was: Old patch, from: 2026-06-01}
      - {name: A}
      - {name: B}
      - {name: Big bed, was: [A, B], from: 2026-06-01}
""")


def test_13_a_renamed_bed_keeps_its_plantings_and_their_ids():
    garden = garden_of(
        """
        2026-04-10
        - sowed carrots in Long border
        2026-07-10
        - picked 1 kg carrots from New border
        - picked 2 kg carrots from Long border
        - sowed turnips in Long border
    """,
        CHANGED,
    )
    assert told(garden) == [
        "carrot_long-border_2026-04-10 · sown · in long-border then new-border, now new-border · sown 2026-04-10 "
        "· picked 2026-07-10 to 2026-07-10: 3 kg",
        "turnip_new-border_2026-07-10 · sown · sown 2026-07-10",
    ]
    assert garden.beds["long-border"].ended == date(2026, 5, 31)


def test_13_a_joined_bed_holds_what_stood_in_each():
    garden = garden_of(
        "2026-04-10\n- sowed leeks in A\n- sowed kale in B\n2026-07-10\n- cleared Big bed", CHANGED
    )
    assert reached(garden)["cleared Big bed"] == ("kale_b_2026-04-10", "leek_a_2026-04-10")


def test_13_after_a_split_a_part_or_a_new_name_tells_where_it_stands():
    garden = garden_of(
        """
        2026-04-10
        - sowed chard in Old patch, north end
        - sowed kale in Old patch
        2026-07-10
        - picked 1 kg kale from South patch
    """,
        CHANGED,
    )
    assert told(garden) == [
        "chard_old-patch_2026-04-10_north-end · sown · in old-patch then north-patch, now north-patch · sown 2026-04-10",
        "kale_old-patch_2026-04-10 · sown · in old-patch then south-patch, now south-patch · sown 2026-04-10 "
        "· picked 2026-07-10 to 2026-07-10: 1 kg",
    ]
    assert garden.problems == ()


def test_13_a_split_that_nothing_settles_asks_and_stands_in_both():
    garden = garden_of("2026-04-10\n- sowed kale in Old patch", CHANGED)
    assert told(garden) == [
        "kale_old-patch_2026-04-10 · sown · in old-patch then north-patch then south-patch, now north-patch "
        "· sown 2026-04-10"
    ]
    past = Past(garden)
    assert past.plantings_by_bed["north-patch"] == past.plantings_by_bed["south-patch"]
    assert sentences(garden) == [
        'notes/2026-04-10.md:4: work[0]: "Old patch" has been split. Does kale stand in "North patch" or '
        '"South patch"? Name one in a note about it.'
    ]


# 14. Unknown


def test_14_an_unknown_crop_occupies_its_bed_and_may_be_settled():
    garden = garden_of(
        """
        2026-04-10
        - sowed unknown in Arch
        - planted tomato unknown variety in Hoop bed
        2026-06-10
        - tomato in Hoop bed turned out to be 'Black Krim'
    """,
        on=date(2026, 7, 1),
    )
    assert told(garden) == [
        "tomato_hoop-bed_2026-04-10 · planted · 'Black Krim' · planted 2026-04-10",
        "unknown_arch_2026-04-10 · sown · sown 2026-04-10",
    ]
    assert garden.planting_by_id["unknown_arch_2026-04-10"].crops == ()


def test_14_a_doubtful_variety_stays_in_doubt():
    garden = garden_of("2026-06-01\n- planted 'Krim' or 'Cherokee' tomato in Hoop bed", on=date(2026, 7, 1))
    assert told(garden) == [
        "tomato_hoop-bed_2026-06-01_krim-cherokee · planted · 'Krim' · 'Cherokee' · in doubt · planted 2026-06-01"
    ]


# 15. A line without a bed


def test_15_it_joins_the_only_open_planting_and_says_so():
    garden = garden_of("2026-04-10\n- sowed carrots in Arch\n2026-06-10\n- thinned carrots")
    [event] = [e for e in garden.events if e.verb == "thinned"]
    assert event.plantings == ("carrot_arch_2026-04-10",)
    assert event.inferred == ("bed: the only place where it stands",)


def test_15_where_two_stand_it_stays_with_the_crop_and_asks_nothing():
    garden = garden_of("""
        2026-04-10
        - sowed peas in Arch
        - sowed peas in Top bed
        2026-06-10
        - picked 500 g peas
    """)
    [picking] = garden.pickings
    assert (picking.planting, picking.group, picking.bed, picking.crops) == (None, None, None, ("pea",))
    assert garden.problems == ()


def test_15_two_varieties_in_one_bed_share_what_names_neither():
    garden = garden_of(
        """
        2026-05-28
        - planted 3 tomato 'Stupice' in Hoop bed
        - planted 3 tomato 'Black Krim' in Hoop bed
        2026-08-01
        - picked 2 kg tomatoes from Hoop bed
        - picked 1 kg tomato 'Stupice' from Hoop bed
    """,
        on=date(2026, 8, 2),
    )
    assert [(p.planting, p.group, p.bed) for p in garden.pickings] == [
        (None, None, "hoop-bed"),
        ("tomato_hoop-bed_2026-05-28_stupice", None, "hoop-bed"),
    ]


# 16. Coarse dates


def test_16_coarse_dates_that_could_agree_agree():
    garden = garden_of("""
        2026-06-20
        - sowed turnips in Arch
        2026-06
        - picked 2 kg turnips from Arch
    """)
    assert told(garden) == [
        "turnip_arch_2026-06-20 · sown · sown 2026-06-20 · picked 2026-06 to 2026-06: 2 kg"
    ]


# 17. What reaches everything


def test_17_feed_and_treatment_reach_what_only_later_notes_tell_of():
    garden = garden_of("""
        2026-06-10
        - sowed peas in Arch
        2026-06-20
        - treated Arch with soap
        - covered Arch with fleece
        2026-07-01
        - picked 1 kg chard from Arch
        - picked 2 kg kale from Top bed
    """)
    assert reached(garden)["treated Arch with soap"] == ("chard_arch_2026-1", "pea_arch_2026-06-10")
    assert reached(garden)["covered Arch with fleece"] == ("chard_arch_2026-1", "pea_arch_2026-06-10")


# 18. Known by year only


def test_18_grew_counts_for_its_year_and_takes_no_picking():
    settings = settings_of("garden: G\nbeds: [{name: Arch}]", beforehand=((2022, "Arch", "leeks"),))
    garden = garden_of(
        "2026-06-10\n- grew peas in Arch (2023)\n2023-07-01\n- picked 1 kg peas from Arch", settings
    )
    assert told(garden) == [
        "leek_arch_2022 · year only",
        "pea_arch_2023 · year only",
        "pea_arch_2023-1 · unknown · picked 2023-07-01 to 2023-07-01: 1 kg · ended 2024-07-01 (estimated), "
        "presumed over: 12 months since it began",
    ]


# 19. Undeclared beds


def test_19_an_undeclared_bed_makes_a_bed_with_one_hint():
    garden = garden_of("2026-06-10\n- sowed peas in Sun terrace\n2026-06-11\n- sowed kale in Sun terrace")
    assert garden.beds["sun-terrace"].is_declared is False
    assert sentences(garden) == ['notes/2026-06-10.md:4: work[0]: "Sun terrace" is a new bed.']


# 20. Identity


def test_20_an_id_holds_what_the_first_note_says():
    garden = garden_of("""
        spring 2026
        - sowed pea 'Meteor' in Long border, north half
        2026-04-10
        - sowed pea 'Meteor' in Arch
        - sowed pea 'Meteor' in Arch
        - sowed carrots and radish in Arch
        - sowed mix of lettuce, rocket and mizuna in Tub 1
    """)
    assert [p.id for p in garden.plantings if p.id not in OWN] == [
        "pea_long-border_spring-2026_meteor_north-half",
        "carrot_arch_2026-04-10",
        "lettuce-rocket-mizuna_tub-1_2026-04-10",
        "pea_arch_2026-04-10_meteor",
        "pea_arch_2026-04-10_meteor_2",
        "radish_arch_2026-04-10",
    ]


def test_20_what_is_filled_in_from_another_note_is_not_part_of_it():
    alone = garden_of("2026-05-28\n- planted 6 tomatoes in Arch")
    with_batch = garden_of("2026-03-01\n- started tomato 'Stupice'\n2026-05-28\n- planted 6 tomatoes in Arch")
    assert [p.id for p in alone.plantings] == [p.id for p in with_batch.plantings]


def test_20_a_kind_word_stays_in_the_id_whatever_it_turns_out_to_mean():
    garden = garden_of(
        "2026-04-20\n- sowed runner beans in Arch\n2026-05-20\n- sowed beans in Arch", on=date(2026, 6, 1)
    )
    assert [(p.id, p.crops) for p in garden.plantings if p.id not in OWN] == [
        ("runner-bean_arch_2026-04-20", ("runner-bean",)),
        ("bean_arch_2026-05-20", ("runner-bean",)),
    ]


def test_19_a_new_bed_is_told_once_where_it_was_first_named():
    garden = garden_of(
        {
            "a.md": "---\ndate: 2026-06-11\nbed: Sun Terrace\nwork:\n  - sowed kale in sun terrace\n---",
            "b.md": "---\ndate: 2026-06-10\nwork:\n  - sowed kale in Sun terrace, parsley in nosuch mint\n---",
            "c.md": "---\ndate: 2026-06-12\nbed: Sun terrace\n---",
        }
    )
    assert [s for s in sentences(garden) if "new bed" in s or "a bed was made" in s] == [
        'notes/b.md:4: work[0]: "Sun terrace" is a new bed.'
    ]


def test_10_plants_moved_stand_in_their_bed_from_the_day_of_the_move():
    garden = garden_of("""
        2026-04-12
        - sowed leeks in Cold frame
        - sowed 30 lettuce in Arch
        2026-06-12
        - moved leeks from Cold frame to Top bed
        - moved 10 lettuce from Arch to Long border
        - moved 3 chives to Arch
    """)
    placed = {
        p.id: (p.moved and p.moved.written, p.in_bed_from and p.in_bed_from.written)
        for p in garden.plantings
        if p.id not in OWN
    }
    assert placed == {
        "leek_cold-frame_2026-04-12": ("2026-06-12", "2026-04-12"),
        "lettuce_arch_2026-04-12": (None, "2026-04-12"),
        "lettuce_long-border_2026-06-12": ("2026-06-12", "2026-06-12"),
        "chives_arch_2026-06-12": ("2026-06-12", "2026-06-12"),
    }


def test_a_bed_whose_name_begins_like_another_phrase_is_still_a_bed() -> None:
    """ "in front" says where something is; "in Front row" names the bed."""
    settings = settings_of("garden: G\nbeds: [Front row, Arch]\n")
    (planting,) = garden_of("2026-04-12\n- sowed peas in Front row", settings).plantings
    assert planting.bed == "front-row"


@pytest.mark.parametrize(
    ("line", "where"),
    [
        ("sowed a row of peas in North", [("pea", "north", "a row")]),
        ("sowed 12 carrots in North", [("carrot", "north", "12")]),
        ("sowed peas in 12", [("pea", "12", "")]),
        ("sowed peas A", [("pea", "a", "")]),
        ("planted a leek in b and 12 in A", [("leek", "b", "a"), ("leek", "a", "12")]),
    ],
)
def test_beds_that_are_called_by_a_letter_or_a_number(line: str, where: list[tuple[str, str, str]]) -> None:
    garden = garden_of(
        f"2026-05-01\n- {line}\n", settings_of('garden: Lettered\nbeds: [A, B, "2", "12", North]\n')
    )
    told = [(*e.crops, *e.beds, "".join(a.written for a in e.action.amounts)) for e in garden.events]
    assert told == where


@pytest.mark.parametrize(
    ("note", "planting"),
    [
        ("moved leeks from Cold frame to Arch", "leek_arch_2026-06-03"),
        ("moved 20 leeks from the cold frame to Tub 1", "leek_tub-1_2026-06-03"),
        ("moved leeks from Cold frame to Hoop bed", "leek_cold-frame_2026-02-20"),
    ],
)
def test_what_was_raised_and_is_moved_into_the_open_is_planted_out(note: str, planting: str) -> None:
    garden = garden_of(
        f"""
        2026-02-20
        - started 60 leeks in Cold frame
        2026-06-03
        - {note}
        2026-10-04
        - picked 2 leeks
        """
    )
    (picking,) = garden.pickings
    found = next(p for p in garden.plantings if p.id == planting)
    assert picking.id in found.pickings
    assert (found.planted is not None) == ("Hoop" not in note)
    assert found.ended_on is None
