"""records/seeds.csv: the seed tin as a gardener types it, one sentence for each bad cell, and what a build may show."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from leafmould.garden.load import load
from leafmould.garden.seeds import tin_rows
from leafmould.notes.seeds_file import read_seeds

ON = date(2026, 7, 15)
TIN = """\
crop,variety,year,amount,from,price,tried,note
beetroot,Boltardy,2023,1 packet,Sellerword,8675.31,9 of 10 in 2024,remarkword
courgettes,Black Beauty,2024,about 12 seeds,,,,
French bean,Provider,2025,200 g,by post,,80 %,
parsnip,Tender and True,2022,half a packet,,,,all used
"""


def told(text: str) -> list[str]:
    return [
        f"{p.at.line} {p.level}: {p.field + ': ' if p.field else ''}{p.message}" for p in read_seeds(text)[1]
    ]


def test_a_tin_is_read_row_by_row() -> None:
    beetroot, courgette, bean, parsnip = read_seeds(TIN)[0]
    assert (beetroot.crop, beetroot.variety, beetroot.year, beetroot.amount) == (
        "beetroot", "Boltardy", 2023, "1 packet",
    )  # fmt: skip
    assert (beetroot.came_up, beetroot.tried, beetroot.tried_year) == (9, 10, 2024)
    assert (beetroot.source, beetroot.price, beetroot.note) == ("Sellerword", "8675.31", "remarkword")
    assert (courgette.seeds, courgette.grams) == (12, None)
    assert (bean.seeds, bean.grams, bean.came_up, bean.tried, bean.tried_year) == (None, 200.0, 80, 100, None)
    assert [row.is_used_up for row in (beetroot, courgette, bean, parsnip)] == [False, False, False, True]


@pytest.mark.parametrize(
    ("cell", "read"),
    [
        ("8 of 10", (8, 10, None)),
        ("8/10", (8, 10, None)),
        ("8 out of 10 came up", (8, 10, None)),
        ("0 of 20", (0, 20, None)),
        ("75%", (75, 100, None)),
        ("8 of 10, 2026", (8, 10, 2026)),
        ("8 of 10 on 2026-02-10", (8, 10, 2026)),
        ("?", (None, None, None)),
    ],
)
def test_a_trial_in_the_ways_it_is_written(cell: str, read: tuple[int | None, ...]) -> None:
    (row,), problems = read_seeds(f'crop,tried\npea,"{cell}"\n')
    assert (row.came_up, row.tried, row.tried_year) == read
    assert problems == ()


def test_only_the_crop_is_needed_and_headings_are_known_by_many_names() -> None:
    (row,), problems = read_seeds("vegetable;cultivar;got\npea;Meteor;2024-03-01\n")
    assert (row.crop, row.variety, row.year) == ("pea", "Meteor", 2024)
    assert [p.message for p in problems] == ["The columns are taken to be parted by semicolons."]


def test_bad_cells_cost_themselves_and_a_row_without_a_crop_is_not_used() -> None:
    text = 'crop,year,tried,shelf\npea,24,many,top\n,2024,,\nkale,2024,11 of 10,\nleek,"2024,,\nTotal,,,\n'
    assert [(row.crop, row.year, row.tried) for row in read_seeds(text)[0]] == [
        ("pea", None, None),
        ("kale", 2024, None),
    ]
    assert told(text) == [
        '1 hint: "shelf" is not read. The columns are crop, variety, year, amount, counted, from, price, tried, tried in and note.',
        '2 error: tried: "many" is no trial. Write how many came up of how many, such as "8 of 10".',
        '2 error: year: "24" is no year. Write it in four figures, such as 2024.',
        "3 error: This row has no crop, so it is not used.",
        '4 error: tried: "11 of 10" is no trial. Write how many came up of how many, such as "8 of 10".',
        "5 error: A quote is opened in this row and not closed in it, so the row is not used.",
    ]


def test_a_table_without_crops_says_what_was_expected() -> None:
    assert told("variety,year\nMeteor,2024\n") == [
        '1 error: The first row names no column "crop". It was expected to be "crop".'
    ]


def put(folder: Path, tin: str, yaml: str = "garden: Hill\n") -> Path:
    (folder / "records").mkdir()
    (folder / "garden.yaml").write_text(yaml, "utf-8")
    (folder / "records/seeds.csv").write_text(tin, "utf-8")
    return folder


def test_crops_are_known_by_their_everyday_names_and_a_slip_is_asked_about(tmp_path: Path) -> None:
    tin = "crop,year\ncourgettes,2024\nbeetrot,2024\nknobbly things,2025\npea,2027\npea,2028\n"
    loaded = load(put(tmp_path, tin), on=ON, household=True)
    assert [row.crop for row in tin_rows(loaded.shown)] == ["summer-squash", "beetrot", "knobbly-things"]
    assert [p.sentence for p in loaded.problems] == [
        'records/seeds.csv:3: crop: no crop is called "beetrot"; it is taken as a crop of its own.'
        ' Did you mean "beetroot"?',
        'records/seeds.csv:4: crop: no crop is called "knobbly things"; it is taken as a crop of its own.',
        "records/seeds.csv:5: 2027 lies after 15 July 2026, and 1 other row too: as if not yet written.",
    ]


@pytest.mark.parametrize(
    ("yaml", "crops", "kept"),
    [
        ("", ["beetroot", "courgettes", "French bean", "parsnip"], (None, None, "")),
        ("show: [people]", ["beetroot", "courgettes", "French bean", "parsnip"], ("Sellerword", None, "")),
        ("show: [prices]", ["beetroot", "courgettes", "French bean", "parsnip"], (None, "8675.31", "")),
        (
            "show: [people, prices]",
            ["beetroot", "courgettes", "French bean", "parsnip"],
            ("Sellerword", "8675.31", "remarkword"),
        ),
        ("leave out: [seeds]", [], None),
        ("leave out: [courgette]", ["beetroot", "French bean", "parsnip"], (None, None, "")),
        ("leave out: [2024]", ["French bean", "parsnip"], None),
    ],
)
def test_a_public_build_names_no_seller_and_no_price_and_nothing_left_out(
    tmp_path: Path, yaml: str, crops: list[str], kept: tuple[str | None, ...] | None
) -> None:
    folder = put(tmp_path, TIN, f"garden: Hill\n{yaml}\n")
    shown = load(folder, on=ON, household=False).shown.seeds
    assert [row.crop for row in shown] == crops
    if kept:
        assert (shown[0].source, shown[0].price, shown[0].note) == kept
    assert len(load(folder, on=ON, household=True).shown.seeds) == 4


def test_private_words_are_blanked_in_the_tin(tmp_path: Path) -> None:
    folder = put(tmp_path, "crop,variety\npea,Old Boltons\n", "garden: Hill\nprivate words: [Boltons]\n")
    (row,) = load(folder, on=ON, household=False).shown.seeds
    assert row.variety == "Old …"
