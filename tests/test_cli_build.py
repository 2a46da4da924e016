"""`build` makes the site beside the notes and says what it did."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from leafmould.cli import main

GARDEN = "garden: Tansy Hill\ndates: day first\nbeds:\n  - {name: Arch}\n"
NOTE = "---\ndate: 2026-06-18\nwork:\n  - sowed peas in Arch\n---\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    garden = tmp_path / "garden"
    (garden / "notes").mkdir(parents=True)
    (garden / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    (garden / "notes/2026-06-18.md").write_text(NOTE, encoding="utf-8")
    return garden


def build(folder: Path, *options: str) -> Result:
    return CliRunner().invoke(main, ["build", str(folder), "--on", "2026-06-20", *options])


def test_it_builds_into_site_unless_told_otherwise(folder: Path) -> None:
    first = build(folder).output.splitlines()
    assert first[0].endswith(" written, 0 removed.")
    assert first[0].split(" from ")[1].startswith("1 note and 1 planting: ")
    assert first[1] == "Left out: what tells of people, place, prices and problems."
    assert first[2:] == ["In the notes: Nothing to mend.", f"Open {folder / 'site' / 'index.html'}"]
    assert (folder / "site/index.html").is_file()
    assert build(folder).output.splitlines()[0].endswith(": nothing has changed.")


def test_another_place_and_the_household(folder: Path, tmp_path: Path) -> None:
    result = build(folder, "--to", str(tmp_path / "out"), "--household", "--workers", "2")
    assert result.output.splitlines()[-1] == f"Open {tmp_path / 'out' / 'index.html'}"
    assert (tmp_path / "out/data/problems.json").is_file()
    assert not (folder / "site").exists()


def test_the_garden_may_be_named_either_way(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(folder / "notes")
    for words in (["build"], ["build", ".."], ["build", "--garden", ".."]):
        assert CliRunner().invoke(main, [*words, "--on", "2026-06-20"]).exit_code == 0


def test_an_error_in_the_notes_still_builds_and_is_1(folder: Path) -> None:
    (folder / "notes/slip.md").write_text(NOTE.replace("2026-06-18", "31 June 2026"), encoding="utf-8")
    result = build(folder)
    assert result.output.splitlines()[2].endswith(" See: leafmould check")
    assert result.exit_code == 1
    assert (folder / "site/index.html").is_file()


def test_a_folder_of_somebody_elses_is_refused(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out/letters.txt").write_text("dear", encoding="utf-8")
    result = build(folder, "--to", str(tmp_path / "out"))
    assert result.output == (
        f'"{tmp_path / "out"}" is not empty and was not made by leafmould (it holds "letters.txt"). '
        "Choose an empty folder with --to.\n"
    )
    assert result.exit_code == 2


def test_the_outcome_as_json(folder: Path) -> None:
    told = json.loads(build(folder, "--json").output)
    assert (told["version"], told["on"], told["household"]) == (1, "2026-06-20", False)
    assert (told["notes"], told["plantings"], told["removed"], told["problems"]) == (1, 1, 0, [])
    assert told["to"] == str(folder / "site")
