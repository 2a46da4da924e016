"""What lies beyond every range costs itself alone: years no garden knows, days no crop takes, rows from later."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner

from leafmould.build import build
from leafmould.cli import main
from leafmould.garden.load import load
from leafmould.reckon.days import days_words
from leafmould.values.dates import read_date
from leafmould.values.when import on

DAY = date(2026, 6, 20)
OUT_OF_RANGE = "The year {} is out of range: years from 1800 to 2199 are read."


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "garden.yaml").write_text("garden: Tansy Hill\nbeds:\n  - {name: Arch}\n", encoding="utf-8")
    put(tmp_path, "notes/2026/06-18-arch.md", "---\ndate: 2026-06-18\nwork:\n  - sowed peas in Arch\n---\n")
    return tmp_path


def put(folder: Path, name: str, text: str) -> None:
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def told(folder: Path) -> list[str]:
    problems = load(folder, on=DAY, household=True, keep=False).problems
    return [f"{problem.level}: {problem.sentence}" for problem in problems]


@pytest.mark.parametrize(
    ("written", "year"),
    [
        ("0001-01-01", 1),
        ("9999-12-31", 9999),
        ("1799-12-31", 1799),
        ("2200-01-01", 2200),
    ],
)
def test_a_year_out_of_range_is_no_date(written: str, year: int) -> None:
    read = read_date(written, order="day first", base=on(DAY), is_southern=False)
    assert read is not None
    assert (read.when, read.fault) == (None, OUT_OF_RANGE.format(year))


@pytest.mark.parametrize("written", ["1800-01-01", "2199-12-31", "winter 2199", "1800"])
def test_the_years_at_the_edge_are_read(written: str) -> None:
    read = read_date(written, order="day first", base=on(DAY), is_southern=False)
    assert read is not None
    assert read.when is not None


@pytest.mark.parametrize("written", ["0001-01-01", "9999-12-31"])
def test_a_note_with_such_a_date_costs_only_its_date(folder: Path, written: str) -> None:
    year = 9999 if written.startswith("9") else 1
    put(folder, "notes/old.md", f"---\ndate: {written}\nwork:\n  - picked 1 kg peas in Arch\n---\n")
    out = folder / "site"
    build(folder, to=out, on=DAY, household=True)
    assert "sown 2 days ago" in (out / "beds" / "arch.html").read_text("utf-8")
    assert [line for line in told(folder) if line.startswith("error")] == [
        f"error: notes/old.md:2: date: {OUT_OF_RANGE.format(year)}"
    ]


def test_a_note_is_refused_such_a_date_before_writing(folder: Path) -> None:
    words = ("note", "picked peas", "--date", "0001-01-01", "--garden", str(folder), "--on", "2026-06-20")
    result = CliRunner().invoke(main, words)
    assert (result.output, result.exit_code) == (
        f"{OUT_OF_RANGE.format(1)} Write it like 2026-06-20.\n",
        2,
    )
    assert not (folder / "notes" / "0001").exists()


@pytest.mark.parametrize("day", ["9999-12-31", "0001-01-01"])
@pytest.mark.parametrize("command", [("build",), ("check",), ("find", "peas"), ("note", "weeded Arch")])
def test_today_in_such_a_year_is_wrong_use(folder: Path, command: tuple[str, ...], day: str) -> None:
    result = CliRunner().invoke(main, [*command, "--garden", str(folder), "--on", day])
    assert result.output.startswith(f"{OUT_OF_RANGE.format(int(day[:4]))} Write it like ")
    assert (result.output.count("\n"), result.exit_code) == (1, 2)


def test_rows_of_years_to_come_are_as_if_unwritten(folder: Path) -> None:
    put(folder, "records/beforehand.csv", "year,bed,crop\n2024,Arch,leek\n2027,Arch,kale\n2031,Arch,onion\n")
    loaded = load(folder, on=DAY, household=True, keep=False)
    assert [p.crops for p in loaded.garden.plantings if p.origin == "year only"] == [("leek",)]
    assert told(folder) == [
        "hint: records/beforehand.csv:3: 2027 lies after 20 June 2026, and 1 other row too: as if not yet written."
    ]


def test_rows_of_impossible_years_are_an_error(folder: Path) -> None:
    put(folder, "records/beforehand.csv", "year,bed,crop\n1066,Arch,leek\n2999,Arch,kale\n2024,Arch,onion\n")
    assert told(folder) == [
        'error: records/beforehand.csv:2: "1066" is no year. Write it in four figures, such as 2021.',
        'error: records/beforehand.csv:3: "2999" is no year. Write it in four figures, such as 2021.',
    ]


def test_packet_days_are_shown_as_written(folder: Path) -> None:
    put(folder, "crops.yaml", "pea:\n  days: 1200\n  from: sowing\n")
    build(folder, to=folder / "site", on=DAY, household=True)
    page = (folder / "site" / "crops" / "pea.html").read_text("utf-8")
    assert "packet says 1,200 days from sowing" in page or "packet says 1200 days from sowing" in page


def test_one_day_is_no_days() -> None:
    assert [days_words(1, 1), days_words(60, 60), days_words(1, 3)] == ["1 day", "60 days", "1–3 days"]


@pytest.mark.parametrize("room", ["notes", "records", "look", "pages"])
def test_a_file_where_a_folder_belongs_is_named(folder: Path, room: str) -> None:
    if (folder / room).is_dir():
        (folder / room).rename(folder / "elsewhere")
    put(folder, room, "what is this?\n")
    build(folder, to=folder / "site", on=DAY, household=True)
    assert f'error: {room}: This is a file, and "{room}" must be a folder. Rename it.' in told(folder)
