"""However a preview ends, the household's pages do not stay behind; and no fault of a look ends it."""

from __future__ import annotations

import os
import shlex
import signal
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Protocol

import pytest

from previews import preview_command

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="wants the signals of a terminal that closes")


class Begin(Protocol):
    """Starts a preview; its process and address."""

    def __call__(self, before: str = "") -> tuple[subprocess.Popen[str], str]: ...


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "garden" / "notes").mkdir(parents=True)
    (tmp_path / "garden" / "look").mkdir()
    (tmp_path / "garden" / "garden.yaml").write_text("garden: Tansy Hill\n", encoding="utf-8")
    (tmp_path / "aside").mkdir()
    return tmp_path / "garden"


@pytest.fixture
def begin(folder: Path) -> Iterator[Begin]:
    running: list[subprocess.Popen[str]] = []

    def start(before: str = "") -> tuple[subprocess.Popen[str], str]:
        plain = [sys.executable, "-u", "-m", "leafmould", "preview", "--on", "2026-06-20"]
        words = plain if "INT" in before else preview_command("2026-06-20")
        command = f"{before} exec {shlex.join(words)}"
        process = subprocess.Popen(
            ["sh", "-c", command],
            cwd=folder,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            env={**os.environ, "TMPDIR": str(folder.parent / "aside")},
        )
        running.append(process)
        assert process.stdout is not None
        return process, process.stdout.readline().split()[4]

    yield start
    for process in running:
        process.kill()
        process.communicate()


def aside(folder: Path) -> list[Path]:
    return sorted((folder.parent / "aside").glob("leafmould-preview-*"))


def fetch(address: str) -> str:
    with urllib.request.urlopen(address, timeout=5) as answer:
        return str(answer.read().decode("utf-8"))


def shows(address: str, words: str, *, not_any_more: bool = False) -> bool:
    """Whether the page comes to show these words, or to show them no longer."""
    end = time.monotonic() + 15
    while time.monotonic() < end:
        if (words in fetch(address)) is not not_any_more:
            return True
        time.sleep(0.05)
    return False


@pytest.mark.parametrize("name", ["SIGHUP", "SIGTERM", "SIGINT"])
def test_nothing_stays_when_it_is_told_to_end(folder: Path, begin: Begin, name: str) -> None:
    process, address = begin()
    assert "Tansy Hill" in fetch(address)
    assert len(aside(folder)) == 1
    process.send_signal(getattr(signal, name))
    assert process.wait(timeout=15) == 0
    assert aside(folder) == []


def test_one_that_outlives_its_terminal_by_wish_goes_on(begin: Begin) -> None:
    process, address = begin("trap '' HUP;")
    process.send_signal(signal.SIGHUP)
    time.sleep(0.3)
    assert "Tansy Hill" in fetch(address)


def test_what_a_killed_one_left_is_swept_by_the_next(folder: Path, begin: Begin) -> None:
    killed, _ = begin()
    killed.kill()
    killed.wait()
    (left,) = aside(folder)
    alive, address = begin()
    (held,) = aside(folder)
    assert held != left
    begin()
    assert held in aside(folder)
    assert "Tansy Hill" in fetch(address)
    alive.terminate()
    alive.wait(timeout=15)


def test_what_others_named_alike_is_left_alone(folder: Path, begin: Begin) -> None:
    other = folder.parent / "aside" / "leafmould-preview-notes"
    other.mkdir()
    (other / "mine.txt").write_text("mine", encoding="utf-8")
    begin()
    assert (other / "mine.txt").exists()


@pytest.mark.parametrize("before", ["", "trap '' INT;"])
def test_a_look_nobody_can_read_is_shown_and_got_over(folder: Path, begin: Begin, before: str) -> None:
    _, address = begin(before)
    own = folder / "look" / "base.html"
    own.write_bytes(b"\xff\xfe")
    assert shows(address, "look/base.html:1: this file cannot be read")
    own.unlink()
    (folder / "garden.yaml").write_text("garden: Yarrow Field\n", encoding="utf-8")
    assert shows(address, "Yarrow Field")
    # The new pages stand a moment before the strip above them is told.
    assert shows(address, "this file cannot be read", not_any_more=True)
