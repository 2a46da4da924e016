"""A whole build on a disk that fails, or killed in the middle: what a reader of the site finds, and the next build.

The calls of every room count: what is kept for the next build, pictures, pages, lists. Every nineteenth of them
goes wrong here; each one of `output` does in `test_output_faults`.
"""

from __future__ import annotations

import errno
import os
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from PIL import Image

from faulty_disk import FaultyDisk, Killed
from leafmould.again import build_again
from leafmould.build import build
from leafmould.values.problems import LeafmouldError

ON = date(2026, 7, 15)


@pytest.fixture(autouse=True)
def _no_waiting_for_the_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "fsync", lambda handle: None)


def garden_of(top: Path) -> Path:
    """A small garden with a picture."""
    garden = top / "garden"
    (garden / "notes").mkdir(parents=True)
    (garden / "photos").mkdir()
    (garden / "garden.yaml").write_text(
        "garden: Hill\nbeds: [Arch, Long border]\nphoto widths: [30]\n", "utf-8"
    )
    (garden / "notes" / "2026-05-01.md").write_text("- sowed pea in Arch\n", "utf-8")
    (garden / "notes" / "2026-06-01.md").write_text("- sowed beetroot in Long border\n", "utf-8")
    return garden


def edit(garden: Path) -> None:
    """What the gardener did since: one note more with a picture, one changed, one gone."""
    Image.new("RGB", (40, 30), "green").save(garden / "photos" / "arch.png")
    (garden / "notes" / "2026-06-20.md").write_text(
        "---\nphoto: arch.png\nwork:\n  - picked 1 kg pea from Arch\n---\n", "utf-8"
    )
    (garden / "notes" / "2026-05-01.md").write_text("- sowed pea 'Meteor' in Arch\n", "utf-8")
    (garden / "notes" / "2026-06-01.md").unlink()


def files(site: Path) -> dict[str, bytes]:
    return {p.relative_to(site).as_posix(): p.read_bytes() for p in sorted(site.rglob("*")) if p.is_file()}


def run(garden: Path) -> None:
    build_again(garden, to=garden / "site", on=ON, household=False, workers=1)


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> tuple[dict[str, bytes], dict[str, bytes]]:
    """The site before the edit, and after it."""
    garden = garden_of(tmp_path_factory.mktemp("sites"))
    build(garden, to=garden / "site", on=ON, household=False, workers=1)
    before = files(garden / "site")
    edit(garden)
    build(garden, to=garden / "site", on=ON, household=False, workers=1)
    return before, files(garden / "site")


def prepared(top: Path, start: str) -> Path:
    garden = garden_of(top)
    if start == "again":
        run(garden)
    edit(garden)
    return garden


def spots(top: Path, start: str) -> Iterator[int]:
    """Every nineteenth call of the build, and the last ones."""
    garden = prepared(top, start)
    with FaultyDisk(top).used() as counted:
        run(garden)
    number = len(counted.calls)
    assert number > 60
    return iter(sorted({*range(1, number + 1, 19), number - 1, number}))


@pytest.mark.parametrize("start", ["first", "again"])
@pytest.mark.parametrize("dies", [False, True], ids=["fails", "dies"])
def test_whatever_goes_wrong_each_page_is_whole_and_the_next_build_is_as_if_nothing_had_been(
    tmp_path: Path, start: str, dies: bool, sites: tuple[dict[str, bytes], dict[str, bytes]]
) -> None:
    old, new = ({} if start == "first" else sites[0]), sites[1]
    for at in spots(tmp_path / "counted", start):
        garden = prepared(tmp_path / str(at), start)
        try:
            with FaultyDisk(tmp_path / str(at), at=at, code=errno.ENOSPC, dies=dies).used():
                run(garden)
        except LeafmouldError as fault:
            assert fault.exit_code == 3
            assert "the disk is full" in fault.sentence
        except Killed:
            assert dies
        for name, content in files(garden / "site").items():
            assert name == "made.txt" or content in (old.get(name), new.get(name)), name
        run(garden)
        assert files(garden / "site") == new
        assert [p.name for p in garden.iterdir() if p.name.startswith(".")] == [".leafmould"]
        assert not any(p.name.endswith((".tmp", ".part")) for p in garden.rglob("*"))


def test_a_layout_that_breaks_halfway_leaves_the_old_site(tmp_path: Path) -> None:
    garden = garden_of(tmp_path)
    run(garden)
    old = files(garden / "site")
    (garden / "look").mkdir()
    (garden / "look" / "sources.html").write_text("{{ it.nothing }}", "utf-8")  # the last page to be made
    edit(garden)
    with pytest.raises(LeafmouldError, match="asks for something unknown: nothing"):
        run(garden)
    assert files(garden / "site") == old
    assert sorted(p.name for p in garden.iterdir() if p.name.startswith(".")) == [".leafmould"]
