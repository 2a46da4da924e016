"""What README and DEVELOPERS.md say is so."""

from __future__ import annotations

import re
import shlex
import subprocess
import sys
from pathlib import Path
from textwrap import dedent

import click
import pytest

from leafmould.cli import main
from leafmould.notes.settings import read_settings
from make_map import with_map

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_every_command_is_in_the_readme() -> None:
    missing = [name for name in main.commands if f"leafmould {name}" not in README]
    assert missing == []


@pytest.mark.parametrize("command", re.findall(r"leafmould ([a-z]+)", README))
def test_every_command_in_the_readme_exists(command: str) -> None:
    prose = {"lies", "turns", "gives"}
    assert command in main.commands or command in prose


def test_every_option_has_help() -> None:
    silent = [
        f"{name} {param.opts[0]}"
        for name, command in main.commands.items()
        for param in command.params
        if isinstance(param, click.Option) and not param.help and not param.hidden
    ]
    assert silent == []


def test_the_map_of_modules_is_up_to_date() -> None:
    assert with_map(DEVELOPERS) == DEVELOPERS, "run: python tests/make_map.py"


def test_every_file_named_in_the_docs_exists() -> None:
    named = re.findall(r"`((?:tests|layouts|content|generator|\.ci)/[\w./-]*)`", README + DEVELOPERS)
    made = {"content/site/index.html"}  # stands there once built
    gone = [name for name in named if name not in made and not (ROOT / name).exists()]
    assert named
    assert gone == []


@pytest.mark.parametrize("link", re.findall(r"(?<!!)\[[^\]]*\]\(([^)#]+)\)", README + DEVELOPERS))
def test_links_in_the_docs_lead_somewhere(link: str) -> None:
    assert link.startswith("https://") or (ROOT / link).exists()


def test_the_settings_shown_in_the_readme_are_read_without_a_word(tmp_path: Path) -> None:
    section = README.split("## The settings on half a screen")[1].split("\n## ")[0]
    blocks = re.findall(r"(?:^(?:    .*)?\n)+", section, re.MULTILINE)
    garden_yaml, crops_yaml = [dedent(block) for block in blocks if block.strip()]
    (tmp_path / "garden.yaml").write_text(garden_yaml, encoding="utf-8")
    (tmp_path / "crops.yaml").write_text(crops_yaml, encoding="utf-8")
    found = read_settings(tmp_path)
    assert found.problems == ()
    assert [bed.name for bed in found.beds][:2] == ["Long border", "Bag row"]
    assert [crop.name for crop in found.crops] == ["beetroot", "sea beet"]


def test_the_first_five_minutes_go_as_printed(tmp_path: Path) -> None:
    """Typed one after the other in one terminal, every question left out with Enter; the preview is not opened."""
    section = README.split("## Five minutes")[1].split("\n## ")[0]
    typed = [line.strip() for line in re.findall(r"^ {7}(\S.*)$", section, re.MULTILINE)]
    assert [line for line in typed if not line.startswith(("leafmould ", "cd "))] == []
    assert typed[-1] == "leafmould preview"
    answered = ["leafmould start my-garden <<-.\n" + "\n" * 8 + "."]
    program = f'leafmould() {{ {shlex.quote(sys.executable)} -m leafmould "$@"; }}\n'
    ran = subprocess.run(
        ["sh", "-e"],
        input=program + "\n".join([*answered, *typed[1:-1]]),
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=tmp_path,
        timeout=120,
    )
    assert (ran.stderr, ran.returncode) == ("", 0)
    made = [
        line for line in ran.stdout.splitlines() if line.startswith("beetroot, Long border: sown today, ")
    ]
    assert made
    assert "Place not noted" not in ran.stdout
    assert "Nothing is noted" not in ran.stdout
    assert (tmp_path / "my-garden/site/index.html").is_file()


def test_the_program_is_put_at_hand_before_it_is_used() -> None:
    commands = re.findall(r"^ {4,}(.*(?:leafmould [a-z]|activate).*)$", README, re.MULTILINE)
    assert commands[0].startswith("python3 -m venv .venv && ")  # one line from nothing to a site
    assert commands[1] == ". .venv/bin/activate"
    assert all(line.strip().startswith("leafmould ") for line in commands[2:])
