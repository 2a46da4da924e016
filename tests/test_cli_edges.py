"""What every command keeps to: exit codes, one sentence for what went wrong, and loading only what it needs."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from datetime import date
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from leafmould import __version__, cli
from leafmould.cli import main
from leafmould.values.problems import LeafmouldError, UnreadableGarden, WrongUse

README = Path(__file__).parents[1] / "README.md"
HEAVY = ("jinja2", "markdown_it", "rich", "flask", "waitress", "watchdog", "PIL")
COMMANDS = ("build", "check", "facts", "find", "note", "preview", "start")

GARDEN = "garden: Tansy Hill\ndates: day first\nbeds:\n  - {name: Long border}\n  - {name: Arch}\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    put(tmp_path, "2026/06-18-arch.md", "sowed peas in Arch", "2026-06-18")
    return tmp_path


def put(folder: Path, name: str, line: str, day: str) -> None:
    path = folder / "notes" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(f"---\ndate: {day}\nwork:\n  - {line}\n---\n", encoding="utf-8")


def run(*words: str, typed: str | None = None) -> Result:
    return CliRunner().invoke(main, words, input=typed)


def outside(*words: str, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    """The program as its own process."""
    return subprocess.run(
        [sys.executable, "-m", "leafmould", *words],
        cwd=cwd,
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={**os.environ, "PYTHONUTF8": "1"},
        timeout=60,
        check=False,
    )


def test_the_commands_are_all_there_and_documented() -> None:
    assert tuple(sorted(main.commands)) == COMMANDS
    readme = README.read_text(encoding="utf-8")
    for name in COMMANDS:
        assert f"leafmould {name}" in readme
        assert main.commands[name].help


@pytest.mark.parametrize("name", [n for n in COMMANDS if n != "start"])
def test_every_command_on_a_garden_takes_the_shared_options(name: str) -> None:
    options = {o for p in main.commands[name].params for o in p.opts}
    assert {"--garden", "--on"} <= options


def test_every_option_says_what_it_does() -> None:
    silent = [
        (name, parameter.name)
        for name, command in main.commands.items()
        for parameter in command.params
        if isinstance(parameter, click.Option) and not parameter.help and parameter.name != "units"
    ]
    assert silent == []


def test_it_runs_as_a_module() -> None:
    assert outside("--version").stdout == f"leafmould {__version__}\n"
    assert outside("--help").stdout.startswith("Usage: leafmould [OPTIONS] COMMAND [ARGS]...\n")


@pytest.mark.parametrize(
    "words",
    [("note", "weeded", "Arch"), ("find", "peas", "in", "Arch"), ("check",), ("--help",), ("note", "--help")],
)
def test_what_is_quick_loads_nothing_heavy(folder: Path, words: tuple[str, ...]) -> None:
    listed = (
        "import sys\n"
        "from leafmould.cli import main\n"
        f"sys.argv = ['leafmould', *{words!r}]\n"
        "try:\n    main()\nexcept SystemExit as ended:\n    assert ended.code == 0, ended.code\n"
        f"print([name for name in {HEAVY!r} if name in sys.modules])\n"
    )
    result = subprocess.run(
        [sys.executable, "-c", listed],
        cwd=folder,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )
    assert result.stderr == ""
    assert result.stdout.splitlines()[-1] == "[]"


def test_an_unknown_command_is_wrong_use() -> None:
    assert run("grow").exit_code == 2
    assert run("build", "--workers", "0").exit_code == 2
    assert run("preview", "--port", "70000").exit_code == 2


@pytest.mark.parametrize(
    "words", [("build",), ("check",), ("find", "peas"), ("preview",), ("note", "weeded Arch")]
)
def test_a_missing_folder_is_one_sentence(tmp_path: Path, words: tuple[str, ...]) -> None:
    result = run(*words, "--garden", str(tmp_path / "gone"))
    assert (result.output, result.exit_code) == (f'There is no folder "{tmp_path / "gone"}".\n', 3)


@pytest.mark.parametrize(
    "words", [("build",), ("check",), ("find", "peas"), ("preview",), ("note", "weeded Arch")]
)
def test_no_garden_is_one_sentence(tmp_path: Path, words: tuple[str, ...]) -> None:
    result = run(*words, "--garden", str(tmp_path))
    assert result.output == (
        f'No garden.yaml stands in "{tmp_path}" or in any folder above it. '
        "Make a garden with: leafmould start FOLDER\n"
    )
    assert result.exit_code == 3


def test_the_nearest_garden_upwards_is_meant(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(folder / "notes" / "2026")
    assert run("check", "--on", "2026-06-20").output == "Nothing to mend.\n"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("soon", '"soon" is not a date. Write it like 2026-06-20.'),
        ("spring 2026", '"spring 2026" is not one day. Write it like 2026-06-20.'),
        ("3/4/2026", '"3/4/2026" may be 3 April 2026 or 4 March 2026. Write it like 2026-04-03.'),
    ],
)
def test_a_day_that_is_none_is_one_sentence(
    folder: Path, monkeypatch: pytest.MonkeyPatch, text: str, sentence: str
) -> None:
    monkeypatch.setattr(cli, "today", lambda: date(2026, 6, 20))
    result = run("check", "--garden", str(folder), "--on", text)
    assert (result.output, result.exit_code) == (sentence + "\n", 2)


def test_today_is_the_clocks_unless_given(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cli, "today", lambda: date(2026, 6, 20))
    assert json.loads(run("check", "--garden", str(folder), "--json").output)["on"] == "2026-06-20"
    given = run("check", "--garden", str(folder), "--json", "--on", "yesterday")
    assert json.loads(given.output)["on"] == "2026-06-19"


@pytest.mark.parametrize(
    ("fault", "code"),
    [(UnreadableGarden("Cannot."), 1), (WrongUse("Not so."), 2), (LeafmouldError("Disk."), 3)],
)
def test_what_the_surroundings_did_is_said_once(
    folder: Path, monkeypatch: pytest.MonkeyPatch, fault: LeafmouldError, code: int
) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise fault

    monkeypatch.setattr("leafmould.garden.pictures.load", refuse)
    result = run("check", "--garden", str(folder))
    assert (result.stdout, result.stderr, result.exit_code) == ("", fault.sentence + "\n", code)


def test_our_own_mistakes_keep_their_traceback(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def slip(*_: object, **__: object) -> None:
        raise KeyError("bed")

    monkeypatch.setattr("leafmould.garden.pictures.load", slip)
    assert isinstance(run("check", "--garden", str(folder)).exception, KeyError)


def test_stopping_is_no_traceback(tmp_path: Path) -> None:
    result = run("start", str(tmp_path / "garden"), typed="")
    assert result.stderr == "\nStopped.\n"
    assert result.exit_code == 3
    assert not (tmp_path / "garden").exists()


def test_letters_a_terminal_lacks_are_no_traceback(folder: Path) -> None:
    put(folder, "2026/06-19-arch.md", "sowed 芽 in Arch", "2026-06-19")
    result = subprocess.run(
        [sys.executable, "-m", "leafmould", "find", "arch", "--on", "2026-06-20"],
        cwd=folder,
        capture_output=True,
        env={**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"},
        timeout=60,
        check=False,
    )
    assert result.returncode == 0
    assert b"sowed ? in Arch" in result.stdout


def test_progress_is_shown_to_a_terminal_only(folder: Path) -> None:
    result = outside("check", "--on", "2026-06-20", cwd=folder)
    assert (result.stdout, result.stderr) == ("Nothing to mend.\n", "")
