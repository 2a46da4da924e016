"""Looking back a second time reads no note, and says what the first time said; after any change it reads anew."""

from __future__ import annotations

import json
import subprocess
import sys
from datetime import date
from inspect import cleandoc
from pathlib import Path

import pytest
from click.testing import CliRunner

import leafmould.cli
from leafmould.cli import main
from leafmould.garden.load import Loaded, load
from leafmould.lookup.memory import Memory
from leafmould.lookup.recollect import recalled

ON = date(2026, 6, 20)
QUESTIONS = (
    ["beetroot"],
    ["Boltardy", "2024"],
    ["brassicas"],
    ["sowed"],
    ["clubroot"],
    ["New", "border"],
    ["bordr"],
    ["of"],
    ["tag", "of", "mine"],
)


@pytest.fixture
def garden(tmp_path: Path) -> Path:
    (tmp_path / "notes").mkdir()
    (tmp_path / "garden.yaml").write_text(
        "garden: Hill\nbeds: [Long border, {name: New border, was: Long border, from: 2025}]\n", "utf-8"
    )
    note = """
        ---
        date: 2024-04-12
        bed: Long border
        crop: beetroot
        variety: Boltardy
        did: sowed
        tags: [tag of mine]
        ---
        Kale 'Nero' had clubroot. Größer!

        2024-07-20
        - picked 2 kg beetroot from Long border
        - sowed kale 'Nero' in New border
        """
    (tmp_path / "notes/one.md").write_text(cleandoc(note) + "\n", "utf-8")
    return tmp_path


class Reader:
    """Reads the garden, and knows how often."""

    def __init__(self, garden: Path, on: date = ON) -> None:
        self.garden, self.on, self.times = garden, on, 0

    def __call__(self) -> Loaded:
        self.times += 1
        return load(self.garden, on=self.on, household=True)


def reads(garden: Path, on: date = ON) -> int:
    reader = Reader(garden, on)
    recalled(garden, on, reader)
    return reader.times


def test_what_was_kept_answers_as_what_was_read(garden: Path) -> None:
    reader = Reader(garden)
    first, second = Memory(recalled(garden, ON, reader)), Memory(recalled(garden, ON, reader))
    assert reader.times == 1
    assert [second.find(words) for words in QUESTIONS] == [first.find(words) for words in QUESTIONS]
    assert second.held == first.held


@pytest.mark.parametrize(
    ("file", "text"),
    [
        ("notes/one.md", "---\ndate: 2024-04-12\nwork:\n  - sowed pea in Long border\n---\n"),
        ("notes/2025/two.txt", ""),
        ("garden.yaml", "garden: Dale\n"),
        ("crops.yaml", "quillroot:\n  family: Fabaceae\n"),
        ("records/beforehand.csv", "year,bed,crop\n2019,Long border,pea\n"),
    ],
)
def test_any_change_is_read(garden: Path, file: str, text: str) -> None:
    assert [reads(garden), reads(garden)] == [1, 0]
    (garden / file).parent.mkdir(exist_ok=True)
    (garden / file).write_text(text, "utf-8")
    assert [reads(garden), reads(garden)] == [1, 0]


def test_another_day_is_another_answer(garden: Path) -> None:
    assert reads(garden) == 1
    assert reads(garden, date(2026, 6, 21)) == 1


@pytest.mark.parametrize("spoilt", [b"", b"[]", b"{}", b"\xff", b"null"])
def test_what_cannot_be_read_is_read_from_the_notes(garden: Path, spoilt: bytes) -> None:
    assert reads(garden) == 1
    (garden / ".leafmould/memory.json").write_bytes(spoilt)
    assert reads(garden) == 1


@pytest.mark.parametrize("rows", [[], {}, None, [1] * 8, [[[1]] * 8]])
def test_rows_of_another_shape_are_none_of_ours(garden: Path, rows: object) -> None:
    assert reads(garden) == 1
    kept = garden / ".leafmould/memory.json"
    kept.write_text(json.dumps(json.loads(kept.read_bytes()) | {"rows": rows}), "utf-8")
    assert reads(garden) == 1


def test_the_command_says_the_same_twice(garden: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    words = ["find", "--garden", str(garden), "--on", "2026-06-20", "beetroot", "--json"]
    first = CliRunner().invoke(main, words)
    monkeypatch.setattr(leafmould.cli, "_load", None)  # not called
    assert CliRunner().invoke(main, words).output == first.output


def test_asking_again_loads_nothing_that_reads_notes(garden: Path) -> None:
    """The command twice in processes of their own; the second tells what it has loaded."""
    tell = "import atexit, sys; atexit.register(lambda: print(*sorted(sys.modules), file=sys.stderr)); "
    code = tell + "from leafmould.cli import main; main(prog_name='leafmould')"
    words = [sys.executable, "-c", code, "find", "--garden", str(garden), "--on", "2026-06-20", "Boltardy"]
    subprocess.run(words, capture_output=True, check=True)
    loaded = subprocess.run(words, capture_output=True, check=True, text=True).stderr.split()
    heavy = {"yaml", "jinja2", "markdown_it", "rich", "PIL", "leafmould.garden.load", "leafmould.notes.lines"}
    assert heavy.intersection(loaded) == set()
