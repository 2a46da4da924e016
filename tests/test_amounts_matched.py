"""Amounts that change what stands: shares, none at all, more than there are; and totals that agree."""

from __future__ import annotations

import pytest

from gardens import garden_of, sentences, told

LEEKS = "2026-06-10\n- planted 12 leek in Arch\n2026-07-01\n"
LEEK = "leek_arch_2026-06-10 · planted"


@pytest.mark.parametrize(
    ("line", "left"),
    [
        ("lost 25% of the leek in Arch", "9 plants or so"),
        ("lost half the leek in Arch", "6 plants or so"),
        ("lost 100% of the leek in Arch", "0 plants"),
        ("lost 150% of the leek in Arch", "12 plants"),
        ("lost 3.5 leek in Arch", "12 plants"),
        ("lost -4 leek in Arch", "12 plants"),
        ("lost 0 leek in Arch", "12 plants"),
    ],
)
def test_a_share_lost_leaves_the_rest_and_what_is_no_number_leaves_all(line: str, left: str):
    garden = garden_of(f"{LEEKS}- {line}")
    assert told(garden)[0].split(" · ")[2] == left


def test_more_lost_than_stand_is_told():
    garden = garden_of(f"{LEEKS}- lost 20 leek in Arch")
    assert told(garden) == [
        f"{LEEK} · 0 plants · planted 2026-06-10 · lost 2026-07-01 · ended 2026-07-01, lost"
    ]
    assert sentences(garden) == [
        "notes/2026-07-01.md:4: work[0]: 20 were lost, but only 12 stood there by the notes."
    ]


def test_half_that_moves_leaves_half():
    garden = garden_of(f"{LEEKS}- moved half the leek to Long border")
    assert [row.split(" · ")[:3] for row in told(garden)] == [
        ["leek_arch_2026-06-10", "planted", "6 plants"],
        ["leek_long-border_2026-07-01", "moved", "6 plants or so"],
    ]


@pytest.mark.parametrize("line", ["planted 0 kale in Top bed", "moved 0 leek to Long border"])
def test_none_opens_no_planting(line: str):
    garden = garden_of(f"{LEEKS}- {line}")
    assert told(garden) == [f"{LEEK} · 12 plants · planted 2026-06-10"]
    (verb, *_) = line.split()
    assert sentences(garden) == [
        f'notes/2026-07-01.md:4: work[0]: "0" were {verb}, so nothing changes. Is that meant?'
    ]


def test_more_seedlings_than_seeds_are_asked_about():
    garden = garden_of("2026-03-10\n- tested 10 seeds pea, 12 came up")
    assert sentences(garden) == ["notes/2026-03-10.md:4: work[0]: 12 came up of 10 seeds. Which is right?"]


def test_more_given_away_than_was_ever_picked_is_told():
    garden = garden_of(
        "2026-05-01\n- sowed pea in Arch\n2026-07-01\n- picked 1 kg pea from Arch\n2026-07-02\n- gave away 9 kg pea"
    )
    assert sentences(garden) == [
        "notes/2026-07-02.md:4: work[0]: 9 kg is more than the 1 kg of pea picked so far."
    ]


@pytest.mark.parametrize(
    ("written", "total"),
    [
        ("2 kg 300 g", "2.3 kg"),
        ("½ kg and ¼ kg", "0.75 kg"),
        ("12 500 g", "12.5 kg"),
        ("3 bags of 500 g", "1.5 kg"),
        ("2 t", "2,000 kg"),
        ("5 dag", "0.05 kg"),
        ("1 cwt", "50.802 kg"),
        ("1.2.3 kg", "nothing counted"),
        ("-5 kg", "nothing counted"),
        ("5000000 t", "nothing counted"),
        ("100 t", "100,000 kg"),
        ("101 t", "nothing counted"),
    ],
)
def test_totals_hold_what_was_written_or_nothing(written: str, total: str):
    garden = garden_of(f"2026-05-01\n- sowed pea in Arch\n2026-07-01\n- picked {written} pea from Arch")
    assert told(garden) == [
        f"pea_arch_2026-05-01 · sown · sown 2026-05-01 · picked 2026-07-01 to 2026-07-01: {total}"
    ]


@pytest.mark.parametrize(
    ("written", "total", "asked"),
    [
        ("2 kg 300 g", "2.3 kg", []),
        ("-5 kg", "nothing counted", ['"-5 kg" is no amount that can be reckoned with. How much was it?']),
        ("3/0 kg", "nothing counted", ['"3/0 kg" is no amount that can be reckoned with. How much was it?']),
    ],
)
def test_an_amount_in_a_header_is_read_as_in_a_line(written: str, total: str, asked: list[str]):
    header = f"date: 2026-07-01\ndid: picked\ncrop: pea\nbed: Arch\namount: {written}"
    garden = garden_of(
        {"2026-05-01.md": "---\nwork: sowed pea in Arch\n---", "2026-07-01.md": f"---\n{header}\n---"}
    )
    assert told(garden)[0].endswith(f"picked 2026-07-01 to 2026-07-01: {total}")
    assert [p.message for p in garden.problems] == asked


def test_a_share_of_a_crop_is_no_part_of_a_total():
    garden = garden_of("2026-05-01\n- sowed pea in Arch\n2026-07-01\n- picked 10% of the pea from Arch")
    assert told(garden)[0].endswith("picked 2026-07-01 to 2026-07-01: nothing counted")


def test_a_share_given_away_counts_by_what_was_picked():
    garden = garden_of(
        "2026-05-01\n- sowed pea in Arch\n2026-07-01\n- picked 4 kg pea from Arch, gave away 50%\n- ate 3 kg pea"
    )
    (picking,) = garden.pickings
    assert [(f.kind, f.amount and f.amount.written) for f in picking.fates] == [
        ("gave away", "50%"),
        ("ate", "2 kg"),
    ]


def test_weights_of_one_line_are_added_alike_everywhere():
    garden = garden_of(
        "2026-05-01\n- planted butternut in Arch\n2026-09-01\n- picked 5 butternut 6kg and 4 buttercup 7 kg from Arch"
    )
    for planting in garden.plantings:
        weights = [a.grams for a in planting.picked if a.unit == "kg"]
        assert planting.picked_g == (sum(w or 0 for w in weights) if weights else None)


def test_a_weight_each_is_multiplied_for_one_thing_in_one_place_only() -> None:
    one = garden_of("2026-09-01\n- picked 4 squash from Arch, 1.5 kg each")
    (picking,) = one.pickings
    assert [a.grams for a in picking.amounts] == [None, 6000]
    two = garden_of("2026-09-01\n- picked 4 squash from Arch and Long border, 1.5 kg each")
    assert [[a.grams for a in p.amounts] for p in two.pickings] == [[None, 1500], [None, 1500]]
