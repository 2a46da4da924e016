"""Whatever the surroundings do to a command, it says so in one sentence with the right exit code."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from leafmould.desk.folders import add_file
from leafmould.desk.surroundings import CWD_GONE, sentence_of
from leafmould.values.problems import LeafmouldError

LONG = "x" * 300
TOO_LONG = "this name is longer than the disk allows"
ON_LINUX = pytest.mark.skipif(not Path("/dev/full").exists(), reason="wants /dev/full and a shell")
"""Closed and full streams are made by a shell; other systems have other means, and the same code."""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    garden = tmp_path / "garden"
    (garden / "notes").mkdir(parents=True)
    (garden / "garden.yaml").write_text("garden: Tansy Hill\nbeds:\n  - {name: Arch}\n", encoding="utf-8")
    (garden / "notes" / "2026-06-18.md").write_text("- sowed peas in Arch\n", encoding="utf-8")
    return garden


def shell(command: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    """The command as a shell runs it; "leafmould" stands for this program."""
    return subprocess.run(
        ["sh", "-c", command.replace("leafmould ", f"{sys.executable} -m leafmould ", 1)],
        cwd=cwd,
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={**os.environ, "PYTHONUTF8": "1"},
        timeout=60,
        check=False,
    )


def outcome(command: str, cwd: Path) -> tuple[str, int]:
    """What it said on standard error, and its exit code."""
    done = shell(command, cwd)
    assert "Traceback" not in done.stderr + done.stdout
    return done.stderr, done.returncode


@ON_LINUX
@pytest.mark.parametrize(
    "command", ["build --on 2026-06-20", "check --on 2026-06-20", "find peas", "--help", "--version"]
)
def test_full_output_is_one_sentence(folder: Path, command: str) -> None:
    said = outcome(f"leafmould {command} > /dev/full", folder)
    assert said == ("Could not go on: the disk is full.\n", 3)


@ON_LINUX
def test_output_and_errors_both_full_end_all_the_same(folder: Path) -> None:
    assert outcome("leafmould check > /dev/full 2>&1", folder) == ("", 3)


@ON_LINUX
@pytest.mark.parametrize(
    "closed", ["build --on 2026-06-20 >&-", "check --on 2026-06-20 >&-", "build --on 2026-06-20 2>&-"]
)
def test_closed_output_hinders_nothing(folder: Path, closed: str) -> None:
    assert outcome(f"leafmould {closed}", folder) == ("", 0)


@ON_LINUX
def test_a_closed_input_holds_no_note(folder: Path) -> None:
    nothing = "Say what was done, such as: leafmould note sowed beetroot Long border\n"
    assert outcome("leafmould note - <&-", folder) == (nothing, 2)


@ON_LINUX
@pytest.mark.parametrize("closed", ["<&-", ">&-"])
def test_nobody_there_to_be_asked_is_one_sentence(tmp_path: Path, closed: str) -> None:
    said, code = outcome(f"leafmould start new {closed}", tmp_path)
    assert said == "Nobody can be asked here. Give the answers as options; see: leafmould start --help\n"
    assert code == 2
    assert not (tmp_path / "new").exists()


@ON_LINUX
@pytest.mark.parametrize("command", ["build", "check", "find peas", "note weeded Arch"])
def test_a_folder_that_is_gone_is_one_sentence(tmp_path: Path, command: str) -> None:
    (tmp_path / "gone").mkdir()
    gone = "cd gone && rmdir ../gone && leafmould "
    assert outcome(f"{gone}{command}", tmp_path) == (CWD_GONE + "\n", 3)


@pytest.mark.parametrize(
    ("command", "code"),
    [
        (f"build --to {LONG}", 3),
        (f"check --garden {LONG}", 3),
        (f"build {LONG}", 3),
        (f"start {LONG} --name Hill", 3),
        (f"note weeded Arch --photo {LONG}.jpg", 3),
        (f"note weeded Arch --photo {LONG}", 2),
    ],
)
def test_a_name_too_long_is_one_sentence(folder: Path, command: str, code: int) -> None:
    said, ended = outcome(f"leafmould {command}", folder)
    assert said.count("\n") == 1
    assert ended == code
    if code == 3:
        assert TOO_LONG in said


def test_a_file_half_written_is_taken_away(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A disk that is full tells so when the file is closed, not when it is written to."""

    monkeypatch.setattr(Path, "open", lambda path, _: _Full(path))
    with pytest.raises(LeafmouldError) as refused:
        add_file(tmp_path / "notes", "06-20-arch", ".md", b"text", taken=lambda _: False)
    assert refused.value.sentence == (
        f'Could not write in "{tmp_path / "notes"}": No space left on device. Nothing was kept.'
    )
    assert list((tmp_path / "notes").iterdir()) == []


class _Full:
    """A file on a full disk."""

    def __init__(self, path: Path) -> None:
        path.touch(exist_ok=False)

    def write(self, content: bytes) -> int:
        return len(content)

    def __enter__(self) -> _Full:
        return self

    def __exit__(self, *_: object) -> None:
        raise OSError(28, "No space left on device")


def test_what_may_be_our_own_mistake_is_not_put_into_words(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError) as missing:
        (tmp_path / "layouts" / "base.html").read_bytes()
    assert sentence_of(missing.value) is None
