"""`check` groups what is wrong by file, the newest five first, and ends with the counts."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from leafmould.cli import main

GARDEN = "garden: Tansy Hill\ndates: day first\nbeds:\n  - {name: Long border}\n  - {name: Arch}\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    (tmp_path / "notes").mkdir()
    return tmp_path


def put(folder: Path, day: str, *lines: str) -> None:
    work = "".join(f"  - {line}\n" for line in lines)
    (folder / "notes" / f"{day}.md").write_text(f"---\ndate: {day}\nwork:\n{work}---\n", encoding="utf-8")


def check(folder: Path, *options: str) -> Result:
    return CliRunner().invoke(main, ["check", "--garden", str(folder), "--on", "2026-06-20", *options])


def test_a_sound_garden(folder: Path) -> None:
    put(folder, "2026-06-18", "sowed peas in Arch")
    result = check(folder)
    assert (result.output, result.exit_code) == ("Nothing to mend.\n", 0)


def test_a_question_is_no_failure(folder: Path) -> None:
    put(folder, "2026-06-18", "sowed peas in Acrh")
    result = check(folder)
    lines = result.output.splitlines()
    assert lines[0] == "notes/2026-06-18.md"
    assert lines[1] == "  line 4, “- sowed peas in Acrh”"
    assert lines[2] == '    question: No bed is called "Acrh"; read as "Arch".'
    assert lines[-1] == "1 question."
    assert result.exit_code == 0


def test_an_error_is(folder: Path) -> None:
    (folder / "notes" / "2026-06-18.md").write_text(
        "---\ndate: 31 June 2026\nwork:\n  - sowed peas in Arch\n---\n", encoding="utf-8"
    )
    result = check(folder)
    assert result.output == (
        "notes/2026-06-18.md\n"
        "  line 2, “date: 31 June 2026”\n"
        "    error: date: 31 June 2026 does not exist.\n\n"
        "1 error.\n"
    )
    assert result.exit_code == 1


def test_the_newest_five_files_then_a_count(folder: Path) -> None:
    for day in range(1, 9):
        put(folder, f"2026-06-{day:02}", "sowed peas in Acrh")
    files = [line for line in check(folder).output.splitlines() if line.startswith("notes/")]
    assert files == [f"notes/2026-06-{day:02}.md" for day in (8, 7, 6, 5, 4)]
    assert check(folder).output.splitlines()[-3:] == [
        "… and 3 more in 3 older files: leafmould check --all",
        "",
        "8 questions.",
    ]
    everything = check(folder, "--all").output
    assert everything.count("notes/") == 8
    assert everything.splitlines()[-1] == "8 questions."


def test_private_notes_are_checked_too(folder: Path) -> None:
    (folder / "notes" / "2026-06-18.md").write_text(
        "---\ndate: 2026-06-18\nprivate: yes\nwork:\n  - sowed peas in Acrh\n---\n", encoding="utf-8"
    )
    assert check(folder).output.splitlines()[-1] == "1 question."


def test_the_same_as_json(folder: Path) -> None:
    put(folder, "2026-06-18", "sowed peas in Acrh")
    told = json.loads(check(folder, "--json").output)
    assert (told["version"], told["on"]) == (1, "2026-06-20")
    (problem,) = told["problems"]
    assert {key: problem[key] for key in ("file", "line", "field", "level", "suggestion")} == {
        "file": "notes/2026-06-18.md",
        "line": 4,
        "field": "work[0]",
        "level": "question",
        "suggestion": "Arch",
    }


def test_a_garden_file_nobody_can_read(folder: Path) -> None:
    (folder / "garden.yaml").write_bytes(b"\xff\xfe\x00garden")
    result = check(folder)
    assert result.stdout == ""
    assert result.stderr.startswith("garden.yaml")
    assert result.stderr.count("\n") == 1
    assert result.exit_code == 1


def test_frosts_noted_far_from_the_average_are_a_warning_where_the_average_stands(folder: Path) -> None:
    (folder / "garden.yaml").write_text(
        GARDEN + "frost: {last: 9 May, first: 6 October}\n", encoding="utf-8", newline="\n"
    )
    for day in ("2023-05-28", "2024-05-20", "2025-05-19"):
        put(folder, day, "frost −1")
    put(folder, "2025-10-12", "frost −1")
    result = check(folder)
    assert result.output == (
        "garden.yaml\n"
        "  line 6, “frost: {last: 9 May, first: 6 October}”\n"
        "    warning: The last frost of spring was noted 19 May to 28 May, in 3 years: in the middle of them 11 "
        "days later than 9 May, which sowing dates are reckoned from.\n\n"
        "1 warning.\n"
    )
    assert result.exit_code == 0


def test_frosts_noted_near_the_average_or_in_two_years_only_are_none(folder: Path) -> None:
    (folder / "garden.yaml").write_text(GARDEN + "frost: {last: 9 May}\n", encoding="utf-8", newline="\n")
    for day in ("2024-05-28", "2025-05-29"):
        put(folder, day, "frost −1")
    assert check(folder).output == "Nothing to mend.\n"
    put(folder, "2023-05-12", "frost −1")
    put(folder, "2022-05-12", "frost −1")
    assert check(folder).output == "Nothing to mend.\n"
