"""The rules of matching from 21 on, and what the grammar leaves to the matching; notes as typed."""

from __future__ import annotations

from datetime import date

import pytest

from gardens import TANSY_HILL, TANSY_HILL_YAML, garden_of, reached, sentences, settings_of, stories, told

# 21. Trees, shrubs, vines, cane rows

FRUIT = settings_of("""
    garden: Fruit
    beds:
      - {name: Old pear, kind: tree, planted: 2015}
      - {name: Vine, kind: vine, crop: grape, variety: Phoenix, planted: 2019-03-10}
      - {name: Shed corner, kind: shrub}
      - {name: Plum, kind: tree}
      - {name: Orchard row, kind: row}
""")


def test_21_they_open_their_plantings_by_themselves():
    assert stories(garden_of({}, FRUIT)) == [
        "plum_plum_standing · unknown",
        "pear_old-pear_2015 · planted · planted 2015",
        "grape_vine_2019-03-10_phoenix · planted · 'Phoenix' · planted 2019-03-10",
    ]


def test_21_a_noted_planting_is_the_same_one_and_a_numbered_tree_its_own():
    garden = garden_of(
        """
        2015-11-03
        - planted pear in Old pear
        2026-04-10
        - planted apple 'Bramley' in Orchard row, tree 3
        2026-09-01
        - picked 2 kg apples from Orchard row, tree 3
        - picked 1 kg apples from Orchard row, tree 4
        - cleared Old pear
    """,
        FRUIT,
    )
    assert stories(garden)[1:] == [
        "pear_old-pear_2015 · planted · planted 2015-11-03",
        "grape_vine_2019-03-10_phoenix · planted · 'Phoenix' · planted 2019-03-10",
        "apple_orchard-row_2026-1_tree-4 · unknown · picked 2026-09-01 to 2026-09-01: 1 kg · season 2026: 1000 g",
        "apple_orchard-row_2026-04-10_bramley_tree-3 · planted · 'Bramley' · planted 2026-04-10 "
        "· picked 2026-09-01 to 2026-09-01: 2 kg · season 2026: 2000 g",
    ]


# 22. Private is decided before the assembling, in `visible`; here only that nothing depends on it.


def test_22_a_note_left_out_is_as_if_never_written():
    both = {
        "a.md": "---\ndate: 2026-04-10\nwork:\n- sowed peas in Arch\n---",
        "b.md": "---\ndate: 2026-04-11\nprivate: yes\nwork:\n- picked 1 kg kale from Top bed\n---",
    }
    assert stories(garden_of({"a.md": both["a.md"]})) == [
        s for s in stories(garden_of(both)) if "kale" not in s
    ]


# 23. Settled


def test_23_settled_silences_a_note_and_as_is_a_line():
    garden = garden_of(
        {
            "2026-06-10.md": "---\ndate: 2026-06-10\nsettled: yes\nwork:\n- picked 1 kg chard from Arch\n---",
            "2026-06-11.md": "---\ndate: 2026-06-11\nwork:\n- picked 1 kg kale from Arch, as is\n- picked 1 kg leeks from Arch\n---",
        }
    )
    assert sentences(garden) == [
        "notes/2026-06-11.md:5: work[1]: no note says when leek in Arch was sown or planted."
    ]


# What the grammar leaves to the matching


def test_a_kind_word_means_the_one_kind_that_stands_there():
    garden = garden_of("""
        2026-04-20
        - sowed runner beans in Arch
        - sowed beans in Top bed
        2026-07-20
        - picked 1 kg beans from Arch
        - picked 2 kg beans from Top bed
    """)
    assert reached(garden) == {
        "sowed runner beans in Arch": ("runner-bean_arch_2026-04-20",),
        "sowed beans in Top bed": ("bean_top-bed_2026-04-20",),
        "picked 1 kg beans from Arch": ("runner-bean_arch_2026-04-20",),
        "picked 2 kg beans from Top bed": ("bean_top-bed_2026-04-20",),
    }
    assert (garden.crops["bean"].family, garden.crops["bean"].group) == ("Fabaceae", "bean")


def test_a_fate_on_its_own_draws_on_that_days_picking_then_on_the_store():
    garden = garden_of("""
        2026-06-20
        - picked 12 courgettes from Arch, gave away 4
        - ate 3 courgettes
        - gave away 20 courgettes
        2026-06-21
        - ate 2 courgettes
    """)
    [picking] = garden.pickings
    assert [(f.kind, f.amount.written if f.amount else None) for f in picking.fates] == [
        ("gave away", "4"),
        ("ate", "3"),
        ("gave away", "5"),
    ]
    assert [p.id for p in garden.plantings if "summer-squash" in p.crops] == ["summer-squash_arch_2026-1"]
    assert [a.written for a in garden.planting_by_id["summer-squash_arch_2026-1"].picked] == ["12"]


def test_a_mix_is_one_planting_and_each_repeats():
    garden = garden_of(
        """
        2026-04-20
        - sowed mix of lettuce, rocket and mizuna in Tub 1
        - planted tomatoes in Hoop bed and Tub 2, 3 each
        2026-07-20
        - picked 200 g rocket from Tub 1
        - lost half the tomatoes in Tub 2
        - lost 1 of 3 tomatoes in Hoop bed to slugs
    """,
        on=date(2026, 8, 1),
    )
    assert told(garden) == [
        "lettuce-rocket-mizuna_tub-1_2026-04-20 · sown · sown 2026-04-20 · picked 2026-07-20 to 2026-07-20: 0.2 kg",
        "tomato_hoop-bed_2026-04-20 · planted · 2 plants · planted 2026-04-20",
        "tomato_tub-2_2026-04-20 · planted · 1 plants or so · planted 2026-04-20",
    ]


def test_a_loss_with_its_cause_ends_the_planting():
    garden = garden_of("2026-05-20\n- planted 6 basil in Tub 1\n2026-06-02\n- lost basil, slugs")
    assert told(garden) == [
        "basil_tub-1_2026-05-20 · planted · 0 plants · planted 2026-05-20 · lost 2026-06-02 · ended 2026-06-02, "
        "lost to slugs"
    ]


def test_what_is_finished_may_still_be_cleared():
    finished = "2026-04-10\n- sowed peas in Arch\n2026-07-20\n- peas finished"
    assert told(garden_of(finished)) == [
        "pea_arch_2026-04-10 · sown · sown 2026-04-10 · ended 2026-07-20, finished"
    ]
    assert told(garden_of(f"{finished}\n2026-08-01\n- cleared peas from Arch")) == [
        "pea_arch_2026-04-10 · sown · sown 2026-04-10 · cleared 2026-08-01 · ended 2026-08-01, cleared"
    ]


def test_a_note_without_an_action_is_tied_to_what_grows_in_its_bed():
    garden = garden_of(
        {
            "a.md": "---\ndate: 2026-04-10\nwork:\n- sowed peas in Arch\n- sowed kale in Top bed\n---",
            "b.md": "---\ndate: 2026-05-10\nbed: Arch\n---\nLooking well after the rain.",
        }
    )
    assert garden.planting_by_id["pea_arch_2026-04-10"].entries == ("a", "b")
    assert garden.planting_by_id["kale_top-bed_2026-04-10"].entries == ("a",)


def test_a_sowing_without_a_place_stands_under_place_not_noted():
    garden = garden_of("2026-04-10\n- sowed radishes")
    assert told(garden) == ["radish_place-not-noted_2026-04-10 · sown · sown 2026-04-10"]
    assert garden.beds["place-not-noted"].kind == "not noted"


def test_the_crop_is_shown_under_the_word_used_most():
    garden = garden_of("""
        2026-05-20
        - planted 3 courgettes in Arch
        2026-07-20
        - picked 2 kg zucchini from Arch
        - picked 2 courgettes from Arch
    """)
    assert garden.crops["summer-squash"].name == "courgette"
    assert TANSY_HILL.crops == ()


@pytest.mark.parametrize(
    "written", ["Brassicaceae", "brassicaceae", "cabbage family", "Cabbage Family", "cabbage", "kale"]
)
def test_the_family_of_an_own_crop_may_be_given_by_any_of_its_names(written):
    own = settings_of(TANSY_HILL_YAML, crops_yaml=f"curlyhead:\n  family: {written}\n")
    garden = garden_of("2026-04-12\n- sowed curlyhead in Arch", own)
    assert garden.crops["curlyhead"].family == "Brassicaceae"


@pytest.mark.parametrize(
    ("sown", "picked"), [("spring cabbage", "cabbage"), ("perpetual spinach", "spinach")]
)
def test_the_wider_word_means_the_only_kind_of_it_that_stands_there(sown, picked):
    key = sown.replace(" ", "-")
    garden = garden_of(
        f"2026-02-12\n- sowed {sown} in Arch\n2026-06-12\n- picked 200 g {picked}\n- picked {picked} from Arch"
    )
    assert reached(garden) == {
        f"sowed {sown} in Arch": (f"{key}_arch_2026-02-12",),
        f"picked 200 g {picked}": (f"{key}_arch_2026-02-12",),
        f"picked {picked} from Arch": (f"{key}_arch_2026-02-12",),
    }
