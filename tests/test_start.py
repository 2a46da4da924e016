"""A garden begins with a few answers, and builds without errors whatever its beds are called."""

from __future__ import annotations

import csv
import os
import shlex
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import given
from hypothesis import strategies as st

from leafmould.cli import main
from leafmould.desk.answers import Answers, Place, named, one_line, read_frost, read_place
from leafmould.desk.start import make_garden
from leafmould.garden.load import load
from leafmould.notes.settings import read_settings
from leafmould.values.names import slug
from leafmould.values.problems import Level, WrongUse

ON = date(2026, 6, 20)
SETTINGS = """\
# The garden. Change anything; only the name is needed. A line that begins with # is not read.
garden: Tansy Hill

# Degrees north, with a minus sign in the south. Tells summer from winter; never published.
place: {latitude: 46.5}

# The average last frost of spring and first frost of autumn.
frost: {last: 22 May, first: 25 September}

# Sums are shown in these units, metric or imperial. What you write keeps its own.
units: metric

# How 3/4/2026 is read: "day first" or "month first". Until this is said, such dates are asked about.
# dates: day first

# How many people the garden feeds.
# people: 4

# Where things grow. Also possible: also (other names), kind (container, row, tree, shrub, cane row, vine,
# mound, under glass), size, parts, sun, private. A bed that only a note names is added by itself.
#   - {name: Bag row, also: [bags], kind: container, sun: full, parts: [left, right]}
beds:
  - {name: Long border, size: 1.2 x 6 m}
  - {name: Old pear, kind: tree}
"""
STANDING = """\
---
date: 2026
title: What stood here when the notes began
work:
  - planted leek in Long border
  - planted kale 'Nero' in Long border
---
Put down at the start, with the date as near as it was known. Change it above when you know better.
"""
OPTIONS = (
    "--name", "Tansy Hill", "--last-frost", "May 22", "--first-frost", "25 September", "--latitude", "46.5",
    "--bed", "Long border 1.2 x 6 m", "--bed", "Old pear (tree)",
    "--stands", "Long border: leek, kale 'Nero', garlic October 2025",
    "--before", "2025: Long border: potato, peas", "--before", "2024: Long border: onion",
)  # fmt: skip
TYPED = """\
Tansy Hill
22 May
25 September
46.5
Long border 1.2 x 6 m, Old pear (tree)
leek, kale 'Nero', garlic October 2025
2025 potato, peas, 2024 onion


"""


@pytest.fixture(autouse=True)
def _at_hand(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    """A terminal that finds the program by its name."""
    folder = tmp_path_factory.mktemp("commands")
    (folder / "leafmould").touch(mode=0o755)
    monkeypatch.setenv("PATH", f"{folder}{os.pathsep}{os.environ['PATH']}")


def start(folder: Path, *options: str, typed: str | None = None) -> Result:
    return CliRunner().invoke(main, ["start", str(folder), "--on", "2026-06-20", *options], input=typed)


def files(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def errors(folder: Path) -> list[str]:
    return [p.sentence for p in load(folder, on=ON, household=True).problems if p.level is Level.ERROR]


def test_options_say_everything(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    result = start(folder, *OPTIONS)
    assert result.output == (
        f"Made a garden in {folder}:\n"
        "  garden.yaml\n"
        "  pages/about.md\n"
        "  notes/2025/october-2025-start.md\n"
        "  notes/2026/2026-start.md\n"
        "  records/beforehand.csv\n"
        "Next, one after the other:\n"
        f"  cd {folder}\n"
        "  leafmould note sowed beetroot in Long border\n"
        "  leafmould build\n"
    )
    assert result.exit_code == 0
    made = files(folder)
    assert made["garden.yaml"] == SETTINGS
    assert made["notes/2026/2026-start.md"] == STANDING
    assert made["records/beforehand.csv"] == (
        "year,bed,crop\n2024,Long border,onion\n2025,Long border,peas\n2025,Long border,potato\n"
    )


def test_asking_gives_the_same_garden(tmp_path: Path) -> None:
    asked, told = tmp_path / "asked", tmp_path / "told"
    result = start(asked, typed=TYPED)
    assert result.exit_code == 0, result.output
    start(told, *OPTIONS)
    assert files(asked) == files(told)


def test_it_builds_without_a_problem(tmp_path: Path) -> None:
    start(tmp_path / "garden", *OPTIONS)
    loaded = load(tmp_path / "garden", on=ON, household=True)
    assert [p.sentence for p in loaded.problems] == []
    standing = [(p.words, p.varieties, p.bed, p.is_open) for p in loaded.garden.plantings if p.is_open]
    assert sorted(standing) == [
        (("garlic",), (), "long-border", True),
        (("kale",), ("Nero",), "long-border", True),
        (("leek",), (), "long-border", True),
        (("pear",), (), "old-pear", True),
    ]
    settings = read_settings(tmp_path / "garden")
    assert (settings.name, settings.last_frost, settings.first_frost) == ("Tansy Hill", (5, 22), (9, 25))


def test_a_bed_with_a_comma_in_its_name_stays_whole(tmp_path: Path) -> None:
    stands = "Bed, old: leek, kale"
    start(tmp_path / "garden", "--name", "Hill", "--bed", "Bed, old", "--stands", stands)
    loaded = load(tmp_path / "garden", on=ON, household=True)
    assert [p.sentence for p in loaded.problems] == []
    standing = [(p.words, p.bed) for p in loaded.garden.plantings]
    assert standing == [(("kale",), slug("Bed, old")), (("leek",), slug("Bed, old"))]


def test_no_planting_is_dated_by_guess(tmp_path: Path) -> None:
    start(tmp_path / "garden", *OPTIONS)
    loaded = load(tmp_path / "garden", on=ON, household=True)
    starts = [p.start for p in loaded.garden.plantings if p.start]
    assert [when.written for when in starts if when.is_exact] == []


def test_empty_answers_are_left_out(tmp_path: Path) -> None:
    folder = tmp_path / "my-first_garden"
    result = start(folder, typed="\n" * 5)
    assert result.exit_code == 0, result.output
    made = files(folder)
    assert list(made) == ["garden.yaml", "pages/about.md"]
    for line in ("garden: My first garden", "# place: {latitude: 46.5}", "# beds:"):
        assert line in made["garden.yaml"].splitlines()
    assert "# frost: {last: 22 May, first: 25 September}" in made["garden.yaml"].splitlines()
    assert load(folder, on=ON, household=True).problems == ()


def test_an_answer_that_cannot_be_read_is_asked_for_again(tmp_path: Path) -> None:
    result = start(tmp_path / "garden", typed="Hill\nsome time\n22 May\n\nfar north\n91\n46,5\n\n")
    assert result.exit_code == 0, result.output
    for sentence in (
        '"some time" is not a day of the year. Write it like 22 May.',
        '"far north" is not a latitude. Write degrees from -90 to 90, such as 46.5.',
        '"91" is not a latitude. Write degrees from -90 to 90, such as 46.5.',
    ):
        assert sentence in result.output
    assert "place: {latitude: 46.5}\n" in files(tmp_path / "garden")["garden.yaml"]
    assert "frost: {last: 22 May}\n" in files(tmp_path / "garden")["garden.yaml"]


@pytest.mark.parametrize(
    ("option", "value", "sentence"),
    [
        ("--last-frost", "3/4", '"3/4" is not a day of the year. Write it like 22 May.'),
        ("--first-frost", "autumn", '"autumn" is not a day of the year. Write it like 22 May.'),
        ("--latitude", "x", '"x" is not a latitude. Write degrees from -90 to 90, such as 46.5.'),
        (
            "--stands",
            "leek",
            '"leek" does not say what stands where. Write it like "Long border: leek, kale".',
        ),
        (
            "--before",
            "Arch: leek",
            '"Arch: leek" does not say what grew where in which year. '
            'Write it like "2025: Long border: potato".',
        ),
        ("--on", "soon", '"soon" is not a date. Write it like'),
    ],
)
def test_a_wrong_option_is_one_sentence(tmp_path: Path, option: str, value: str, sentence: str) -> None:
    result = CliRunner().invoke(main, ["start", str(tmp_path / "garden"), "--name", "Hill", option, value])
    assert result.output.startswith(sentence)
    assert result.output.count("\n") == 1
    assert result.exit_code == 2
    assert not (tmp_path / "garden").exists()


def test_a_folder_that_holds_something_else_is_refused(tmp_path: Path) -> None:
    (tmp_path / "letters.txt").write_text("dear", encoding="utf-8")
    result = start(tmp_path, "--name", "Hill")
    assert result.output == (
        f'"{tmp_path}" is not empty (it holds "letters.txt"). Name a new folder for the garden.\n'
    )
    assert result.exit_code == 2
    assert files(tmp_path) == {"letters.txt": "dear"}


def test_a_garden_is_not_started_twice(tmp_path: Path) -> None:
    start(tmp_path, "--name", "Hill")
    before = files(tmp_path)
    result = start(tmp_path, "--name", "Dale")
    assert result.output == f'"{tmp_path}" is a garden already. Write in it with: leafmould note\n'
    assert result.exit_code == 2
    assert files(tmp_path) == before


def test_a_file_is_no_garden(tmp_path: Path) -> None:
    (tmp_path / "x").write_text("", encoding="utf-8")
    result = start(tmp_path / "x", "--name", "Hill")
    assert result.output == f'"{tmp_path / "x"}" is a file. Name a new folder for the garden.\n'
    assert result.exit_code == 2


@pytest.mark.parametrize("left", [".git", ".DS_Store", "Thumbs.db", "desktop.ini"])
def test_what_systems_leave_behind_does_not_count(tmp_path: Path, left: str) -> None:
    (tmp_path / left).touch()
    assert start(tmp_path, "--name", "Hill").exit_code == 0


def test_a_folder_that_cannot_be_made_is_one_sentence(tmp_path: Path) -> None:
    (tmp_path / "x").write_text("", encoding="utf-8")
    result = start(tmp_path / "x" / "garden", "--name", "Hill")
    assert result.output == f'Could not write "{tmp_path / "x" / "garden" / "notes"}": Not a directory.\n'
    assert result.exit_code == 3


NAMES = [
    "O'Brien's plot", 'The "Hill"', "Plot: one", "Plot #3", "# plot", "- plot", "{plot}", "[plot]", "plot, two",
    "yes", "null", "~", "012", "1.5", "2026-06-20", "*anchor", "&anchor", "!tag", "%plot", "@plot", "`plot`",
    "Möhre & Söhne", "ベランダ", "🌱 plot", "back\\slash", "a: b # c", "trailing:", "<b>plot</b>", "\u2028x",
    "caf\u0065\u0301", "?", "|", ">", "x" * 300,
]  # fmt: skip


@pytest.mark.parametrize("name", NAMES)
def test_any_name_is_written_safely(tmp_path: Path, name: str) -> None:
    answers = Answers(name=one_line(name), places=(Place(name=one_line(name)),))
    make_garden(tmp_path, answers)
    settings = read_settings(tmp_path)
    assert settings.name == one_line(name)
    assert [bed.name for bed in settings.beds] == [one_line(name)]
    assert errors(tmp_path) == []


@given(st.text(min_size=1, max_size=40).map(one_line).filter(bool))
def test_what_is_written_reads_back_the_same(tmp_path_factory: pytest.TempPathFactory, name: str) -> None:
    folder = tmp_path_factory.mktemp("garden")
    make_garden(folder, Answers(name=name, places=(Place(name=name),)))
    settings = read_settings(folder)
    assert (settings.name, settings.beds[0].name) == (name, name)


def test_beforehand_may_hold_any_name(tmp_path: Path) -> None:
    make_garden(tmp_path, Answers(name="Hill", before=((2025, 'Bed "A", old', "peas; beans"),)))
    with (tmp_path / "records/beforehand.csv").open(encoding="utf-8", newline="") as table:
        assert list(csv.reader(table)) == [["year", "bed", "crop"], ["2025", 'Bed "A", old', "peas; beans"]]


@pytest.mark.parametrize(
    ("typed", "place"),
    [
        ("Long border", Place(name="Long border")),
        ("Long border 1.2 x 6 m", Place(name="Long border", size="1.2 x 6 m")),
        ("Bag row 8 x 60 l (container)", Place(name="Bag row", size="8 x 60 l", kind="container")),
        ("Old pear (Tree)", Place(name="Old pear", kind="tree")),
        ("Bed 2", Place(name="Bed 2")),
        ("Arch (by the gate)", Place(name="Arch (by the gate)")),
    ],
)
def test_a_bed_may_carry_its_size_and_kind(typed: str, place: Place) -> None:
    assert read_place(typed) == place


@pytest.mark.parametrize(
    ("typed", "day"),
    [("22 May", "22 May"), ("May 22nd", "22 May"), ("22.5.", "22 May"), ("29 February", "29 February")],
)
def test_frost_dates_are_read_as_people_write_them(typed: str, day: str) -> None:
    assert read_frost(typed) == day


@pytest.mark.parametrize("typed", ["", "May", "31 April", "5/4", "late May", "the 22nd"])
def test_what_is_no_day_of_the_year_is_refused(typed: str) -> None:
    with pytest.raises(WrongUse) as refused:
        read_frost(typed)
    assert refused.value.sentence == f'"{typed}" is not a day of the year. Write it like 22 May.'


def test_a_garden_without_a_name_is_called_after_its_folder(tmp_path: Path) -> None:
    assert named(Answers(name=""), tmp_path / "my-garden").name == "My garden"
    assert named(Answers(name="Hill"), tmp_path / "my-garden").name == "Hill"


def test_what_comes_next_can_be_typed_as_it_is_printed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where no terminal knows the program by its name, and the folder's name has a space."""
    monkeypatch.setenv("PATH", "/usr/bin:/bin")
    monkeypatch.chdir(tmp_path)
    printed = CliRunner().invoke(main, ["start", "my garden", "--name", "Hill"]).output
    python = shlex.quote(sys.executable)
    _, after = printed.split("Next, one after the other:\n")
    assert after == (
        "  cd 'my garden'\n"
        f"  {python} -m leafmould note sowed beetroot in Long border\n"
        f"  {python} -m leafmould build\n"
    )
    ran = subprocess.run(
        ["sh", "-e"], input=after, text=True, capture_output=True, encoding="utf-8", timeout=120
    )
    assert "beetroot, Long border: sown today" in ran.stdout, ran.stderr
    assert (ran.returncode, (tmp_path / "my garden/site/index.html").exists()) == (0, True)
