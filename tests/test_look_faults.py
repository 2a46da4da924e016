"""A garden's own look may be broken in every way: one sentence names the file, and the old site stays."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from leafmould.build import build
from leafmould.values.problems import LeafmouldError

DAY = date(2026, 6, 20)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "garden.yaml").write_text("garden: Tansy Hill\n", encoding="utf-8")
    (tmp_path / "look" / "styles").mkdir(parents=True)
    return tmp_path


def refused(folder: Path) -> str:
    with pytest.raises(LeafmouldError) as fault:
        build(folder, to=folder / "site", on=DAY, household=True)
    assert fault.value.exit_code == 3
    assert not (folder / "site").exists()
    return fault.value.sentence


@pytest.mark.parametrize("name", ["base.html", "masthead.html", "styles/own.css"])
def test_a_look_in_other_letters_is_named(folder: Path, name: str) -> None:
    (folder / "look" / name).write_bytes("<p>\nMöhre</p>".encode("latin-1"))
    assert refused(folder) == (
        f"look/{name}:2: this file cannot be read: it is not saved as UTF-8. Save it as UTF-8."
    )


def test_a_layout_that_includes_itself_is_named(folder: Path) -> None:
    (folder / "look" / "base.html").write_text("<p>\n{% include 'base.html' %}\n", encoding="utf-8")
    assert refused(folder) == "look/base.html:2: this layout leads back to itself without end."


def test_a_layout_that_builds_on_itself_is_named(folder: Path) -> None:
    (folder / "look" / "base.html").write_text("{% extends 'base.html' %}\n", encoding="utf-8")
    assert refused(folder) == "look/base.html:1: this layout leads back to itself without end."
