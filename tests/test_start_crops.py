"""What stands in a bed and what grew there before, told in people's own words, is written down as it is meant."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from leafmould.cli import main
from leafmould.desk.crops_told import grew, is_nothing, standing
from leafmould.desk.kinds_told import kind_by_name
from leafmould.garden.load import load
from leafmould.values.problems import WrongUse

TODAY = date(2026, 6, 20)


@pytest.mark.parametrize(
    "said",
    ["-", "–", "nothing", "Nothing yet.", "none", "empty", "don't know", "don’t know", "?", "??", "n/a", "no idea"],
)  # fmt: skip
def test_nothing_is_an_answer(said: str) -> None:
    assert is_nothing(said)
    assert (standing(said, TODAY), grew(said, TODAY)) == ((), ())


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("leek, kale 'Nero'", [("leek", None), ("kale 'Nero'", None)]),
        ("plum, 2005", [("plum", "2005")]),
        ("bramley 1998", [("bramley", "1998")]),
        ("1998 bramley", [("bramley", "1998")]),
        ("Bramley (1998)", [("Bramley", "1998")]),
        ("parsley, 2022", [("parsley", "2022")]),
        ("plum, 2005, apple, 1998", [("plum", "2005"), ("apple", "1998")]),
        ("2005, plum, leek", [("plum", "2005"), ("leek", None)]),
        ("2019: asparagus, rhubarb", [("asparagus", "2019"), ("rhubarb", "2019")]),
        ("rhubarb since 2015", [("rhubarb", "2015")]),
        ("rhubarb planted in 2015", [("rhubarb", "2015")]),
        ("rhubarb, about 2015", [("rhubarb", "2015")]),
        ("rhubarb three years ago", [("rhubarb", "2023")]),
        ("rhubarb last year; leek", [("rhubarb", "2025"), ("leek", None)]),
        ("garlic October 2025", [("garlic", "October 2025")]),
        ("garlic, October 2025", [("garlic", "October 2025")]),
        ("leeks planted in May", [("leeks", "May")]),
        ("nothing, leek", [("leek", None)]),
        ("sprouts from seed", [("sprouts from seed", None)]),
    ],
)
def test_what_stands_is_read_with_its_year(said: str, stands: list[tuple[str, str | None]]) -> None:
    assert [(crop, when and when.written) for crop, when in standing(said, TODAY)] == stands


@pytest.mark.parametrize(
    ("said", "rows"),
    [
        ("2022 broad beans; 2021 courgette", [(2022, "broad beans"), (2021, "courgette")]),
        ("broad beans 2022, courgette 2021", [(2022, "broad beans"), (2021, "courgette")]),
        ("parsley, 2022", [(2022, "parsley")]),
        ("parsley, 2022; quince 2019", [(2022, "parsley"), (2019, "quince")]),
        ("2025 potato, kale, 2024 peas", [(2025, "potato"), (2025, "kale"), (2024, "peas")]),
        ("potato, kale 2025, peas 2024", [(2025, "potato"), (2025, "kale"), (2024, "peas")]),
        ("2025: potato, kale; 2024: peas", [(2025, "potato"), (2025, "kale"), (2024, "peas")]),
        ("2025 potato; kale", [(2025, "potato"), (2025, "kale")]),
        ("2022, broad beans, 2021, courgette", [(2022, "broad beans"), (2021, "courgette")]),
        ("raspberries 2022-2024", [(2022, "raspberries"), (2023, "raspberries"), (2024, "raspberries")]),
        ("2022 and 2024 leeks", [(2022, "leeks"), (2024, "leeks")]),
        ("potatoes last year", [(2025, "potatoes")]),
        ("garlic winter 2024", [(2024, "garlic")]),
        ("2025 nothing, 2024 peas", [(2024, "peas")]),
    ],
)
def test_what_grew_is_read_with_its_years(said: str, rows: list[tuple[int, str]]) -> None:
    assert list(grew(said, TODAY)) == rows


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        (
            "hens since 2020",
            '"hens" is no crop. Name only what was sown or planted, such as leek, or press Enter.',
        ),
        ("123", '"123" names no crop. Write it like leek, asparagus 2019, or press Enter.'),
        ("leek 2030", '"2030" is yet to come. Name what stands or stood there.'),
    ],
)
def test_what_is_no_crop_is_told(said: str, sentence: str) -> None:
    for read in (standing, grew):
        with pytest.raises(WrongUse) as refused:
            read(said, TODAY)
        assert refused.value.sentence == sentence


@pytest.mark.parametrize(("said", "crop"), [("leek", "leek"), ("peas 2024, leek", "leek")])
def test_a_crop_that_grew_wants_a_year(said: str, crop: str) -> None:
    with pytest.raises(WrongUse) as refused:
        grew(said, TODAY)
    assert refused.value.sentence == f'"{crop}" has no year. Write it like potato 2025, peas 2024.'


def begin(folder: Path, typed: str) -> Result:
    return CliRunner().invoke(main, ["start", str(folder), "--on", "2026-06-20"], input=typed)


SEVEN = "Greenhouse, Tub A, Hen run, Old pear, Bramley, The swamp, Bed 4 (pot)"
ANSWERED = f"""\
Hill
-
don't know
?
{SEVEN}
tomatoes
2025 tomatoes; 2024 peppers
strawberries, 2023
nothing

bramley 1998
hens since 2020
nothing
bog all 2024
-
none
"""


def test_a_garden_told_in_plain_words(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    result = begin(folder, ANSWERED)
    assert result.exit_code == 0, result.output
    assert '"hens" is no crop.' in result.output
    assert result.output.split("records/beforehand.csv\n")[1].split("Next,")[0] == (
        "Taken by their names; change it in garden.yaml where it is not so:\n"
        "  Greenhouse: under glass\n"
        "  Tub A: a container\n"
        "  Hen run: a place like a bed. Animals there are noted so: penned hens in Hen run\n"
        "  Old pear: a tree\n"
        "  Bramley: a tree, apple 'Bramley'\n"
        '"bog all" is in no table of crops, so it stands as a crop of its own.\n'
    )
    beds = (folder / "garden.yaml").read_text(encoding="utf-8").split("\nbeds:\n")[1]
    assert beds == (
        "  - {name: Greenhouse, kind: under glass}\n"
        "  - {name: Tub A, kind: container}\n"
        "  - {name: Hen run}\n"
        "  - {name: Old pear, kind: tree}\n"
        "  - {name: Bramley, kind: tree, crop: apple, variety: Bramley}\n"
        "  - {name: The swamp}\n"
        "  - {name: Bed 4, kind: container}\n"
    )
    loaded = load(folder, on=TODAY, household=True)
    assert [p.sentence for p in loaded.problems] == []
    stands = [(p.bed, p.crops, p.planted and p.planted.written) for p in loaded.garden.plantings if p.is_open]
    assert sorted(stands) == [
        ("bramley", ("apple",), "1998"),
        ("greenhouse", ("tomato",), "2026"),
        ("old-pear", ("pear",), None),
        ("tub-a", ("strawberry",), "2023"),
    ]
    assert (folder / "records/beforehand.csv").read_text(encoding="utf-8") == (
        "year,bed,crop\n2024,Greenhouse,peppers\n2024,The swamp,bog all\n2025,Greenhouse,tomatoes\n"
    )


def test_who_stops_in_the_middle_keeps_what_was_said(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    result = begin(folder, "Hill\n\n\n\nBed 1, Bed 2\nleek\n2025 peas\n")
    assert "Stopped asking. What was answered is kept; the rest can be put down later.\n" in result.output
    assert result.exit_code == 0
    loaded = load(folder, on=TODAY, household=True)
    assert [p.sentence for p in loaded.problems] == []
    assert sorted(loaded.garden.beds) == ["bed-1", "bed-2"]
    assert [p.words for p in loaded.garden.plantings if p.is_open] == [("leek",)]


def test_who_stops_before_saying_anything_has_no_garden(tmp_path: Path) -> None:
    result = begin(tmp_path / "garden", "")
    assert "\nStopped.\n" in result.output
    assert result.exit_code == 3
    assert not (tmp_path / "garden").exists()


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("Greenhouse", "under glass"),
        ("Polytunnel 2", "under glass"),
        ("Greenhouse border left", "under glass"),
        ("Cold frame", "under glass"),
        ("Cold frame side", None),
        ("Tub A", "container"),
        ("Blue pots", "container"),
        ("Bag row", None),
        ("Old pear", "tree"),
        ("Victoria plum", "tree"),
        ("Apple trees", "tree"),
        ("Bramley", "tree"),
        ("Pear bed", None),
        ("Apple mint", None),
        ("Victoria", None),
        ("Long border", None),
        ("North bed", None),
    ],
)
def test_a_name_may_say_the_kind(name: str, kind: str | None) -> None:
    assert kind_by_name(name).kind == kind


def test_hens_are_noted_as_the_start_says(tmp_path: Path) -> None:
    begin(tmp_path / "garden", "Hill\n\n\n\nHen run\n")
    command = ["note", "--garden", str(tmp_path / "garden"), "--on", "2026-06-20"]
    told = CliRunner().invoke(main, [*command, "penned", "hens", "in", "Hen", "run"])
    assert told.output.splitlines()[:-1] == ["Hen run: penned hens"]
