"""A build is spared only if nothing at all has changed: no input, no option, no file of the site."""

from __future__ import annotations

import json
import os
import shutil
import sys
import tempfile
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import leafmould
import leafmould.build
from leafmould.again import build_again
from leafmould.inputs import FILES, ROOMS
from leafmould.output.stamps import COARSE_TICK, FINE_TICK, are_as_left, stamps_of
from leafmould.report import BuildReport
from properties.test_rebuild import ON, Edit, clean_build, edits, files, new_garden


def built(garden: Path, site: Path, *, on: date = ON, household: bool = True) -> BuildReport:
    return build_again(garden, to=site, on=on, household=household)


def is_spared(garden: Path, site: Path, **options: Any) -> bool:
    """Whether a build is answered without reading a note."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(leafmould.build, "build", _never)
        try:
            built(garden, site, **options)
        except NotSpared:
            return False
        return True


class NotSpared(Exception):
    """The build was done in full."""


def _never(*_: object, **__: object) -> BuildReport:
    raise NotSpared


others = st.builds(
    Edit,
    kind=st.just("write"),
    name=st.sampled_from(
        ("../look/styles/own.css", "../records/beforehand.csv", "../look/crops.html", "2026/new.txt")
    ),
    text=st.sampled_from(("", "p {}\n", "year,bed,crop\n2019,Arch,pea\n")),
)


@settings(max_examples=settings.default.max_examples // 8)
@given(steps=st.lists(st.one_of(edits, others), min_size=1, max_size=4), household=st.booleans())
def test_after_every_edit_the_site_is_that_of_a_clean_build(steps: list[Edit], household: bool) -> None:
    with tempfile.TemporaryDirectory() as place:
        garden, site = new_garden(Path(place) / "garden"), Path(place) / "site"
        built(garden, site, household=household)
        for step in steps:
            step.make(garden)
            built(garden, site, household=household)
            assert files(site) == clean_build(garden, household)
            assert is_spared(garden, site, household=household)


def _other_letter(path: Path) -> None:
    """Another content of the same size, and the time of change put back."""
    before, raw = path.stat(), path.read_bytes()
    path.write_bytes(raw[:-2] + b"x" + raw[-1:])
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))


def _as_another_file(path: Path) -> None:
    """The same, by way of a new file in its place."""
    beside = path.with_name("beside")
    shutil.copy2(path, beside)
    _other_letter(beside)
    beside.replace(path)


def _as_link(path: Path) -> None:
    target = path.with_name("target")
    path.replace(target)
    path.symlink_to(target.name)


def _as_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


HARM: tuple[Callable[[Path], object], ...] = (
    Path.unlink,
    _other_letter,
    _as_another_file,
    _as_link,
    _as_folder,
    lambda path: path.write_bytes(b""),
    lambda path: path.write_bytes(path.read_bytes() + b"\n"),
)


@settings(max_examples=settings.default.max_examples // 2)
@given(data=st.data())
def test_no_harm_done_to_the_site_stays(data: st.DataObject) -> None:
    with tempfile.TemporaryDirectory() as place:
        garden, site = new_garden(Path(place) / "garden"), Path(place) / "site"
        built(garden, site)
        assert is_spared(garden, site)
        name = data.draw(st.sampled_from(sorted(files(site))))
        data.draw(st.sampled_from(HARM))(site / name)
        assert not is_spared(garden, site)


def test_what_was_harmed_is_made_anew(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    built(garden, site)
    whole = files(site)
    _other_letter(site / "beds/arch.html")
    assert built(garden, site).changed == ("beds/arch.html",)
    assert files(site) == whole


def test_the_second_answer_is_the_first_with_nothing_changed(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    (garden / "notes/slip.md").write_text("---\ndate: 31 June 2026\nbed: [A\n---\nÜber.\n", "utf-8")
    first, second = built(garden, site), built(garden, site)
    assert second.made.sentence == first.made.sentence.split(": ")[0] + ": nothing has changed."
    assert (second.changed, second.removed) == ((), ())
    assert second.problems == first.problems
    assert second.dates == first.dates


def test_another_day_another_reader_and_another_folder_are_built(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    built(garden, site)
    assert not is_spared(garden, site, on=date(2026, 7, 16))
    assert not is_spared(garden, site, household=False)
    assert not is_spared(garden, tmp_path / "other")
    assert not is_spared(shutil.copytree(garden, tmp_path / "copy"), site)
    assert is_spared(garden, site)


def test_a_photo_is_known_by_its_stamp(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    photo = garden / "photos/pea.jpg"
    photo.parent.mkdir()
    photo.write_bytes(b"no picture")
    built(garden, site)
    assert is_spared(garden, site)
    _other_letter(photo)
    assert not is_spared(garden, site)


def test_another_version_builds(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    built(garden, site)
    monkeypatch.setattr(leafmould, "__version__", "99")
    assert not is_spared(garden, site)


def test_a_fault_of_a_build_is_never_remembered(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    built(garden, site)
    Edit(kind="write", name="../look/note.html", text="{% if %}").make(garden)
    for _ in range(2):
        with pytest.raises(Exception, match="this layout cannot be read"):
            built(garden, site)
    shutil.rmtree(garden / "look")
    assert is_spared(garden, site)


@pytest.mark.parametrize("spoilt", [b"", b"[]", b"null", b"\xff", b'{"made from": 1}', b"[" * 100_000])
def test_what_was_kept_and_cannot_be_read_is_nothing(tmp_path: Path, spoilt: bytes) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    built(garden, site)
    (kept,) = (garden / ".leafmould").glob("site-*.json")
    kept.write_bytes(spoilt)
    assert not is_spared(garden, site)


@pytest.mark.parametrize("part", ["files", "report"])
def test_half_of_what_was_kept_is_nothing(tmp_path: Path, part: str) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    built(garden, site)
    (kept,) = (garden / ".leafmould").glob("site-*.json")
    held = json.loads(kept.read_bytes())
    del held[part]
    kept.write_text(json.dumps(held), "utf-8")
    assert not is_spared(garden, site)


def test_what_another_build_left_at_work_is_not_passed_over(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    built(garden, site)
    (tmp_path / ".site.leafmould-new").mkdir()
    assert not is_spared(garden, site)
    built(garden, site)
    assert not (site / ".leafmould-new-1").exists()


def test_a_link_to_a_folder_is_not_looked_into_and_nothing_spared(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    (garden / "look").mkdir()
    (tmp_path / "elsewhere").mkdir()
    (garden / "look/styles").symlink_to(tmp_path / "elsewhere")
    built(garden, site)
    assert not is_spared(garden, site)


def test_a_build_reads_nothing_that_is_not_asked_about(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    Edit(kind="write", name="../look/styles/own.css", text="p {}").make(garden)
    Edit(kind="write", name="../records/beforehand.csv", text="year,bed,crop\n2019,Arch,pea\n").make(garden)
    opened: set[str] = set()

    def listen(event: str, values: tuple[Any, ...]) -> None:
        if event == "open" and isinstance(values[0], str) and values[0].startswith(str(garden)):
            opened.add(values[0])

    sys.addaudithook(listen)
    built(garden, site)
    rooms = {Path(path).relative_to(garden).parts[0] for path in opened}
    assert rooms <= {*FILES, *ROOMS, ".leafmould"}
    assert rooms >= {"garden.yaml", "notes", "look", "records"}


def _write(path: Path, mtime_ns: int) -> None:
    path.write_text("text", "utf-8")
    os.utime(path, ns=(mtime_ns, mtime_ns))


def test_files_written_just_before_the_last_one_are_known_by_their_contents(tmp_path: Path) -> None:
    newest = 1_700_000_000_123_456_789
    _write(tmp_path / "newest", newest)
    _write(tmp_path / "same tick", newest - FINE_TICK // 2)
    _write(tmp_path / "before", newest - 2 * FINE_TICK)
    rows = stamps_of(tmp_path, ("newest", "same tick", "before"))
    assert {name for name, row in rows.items() if row[-1]} == {"newest", "same tick"}
    rows["same tick"][1] = 0  # its stamp is not asked
    assert are_as_left(tmp_path, rows)
    rows["same tick"][-1] = "of other contents"
    assert not are_as_left(tmp_path, rows)


def test_a_disk_that_keeps_whole_seconds_is_trusted_later(tmp_path: Path) -> None:
    newest = 1_700_000_000_000_000_000
    _write(tmp_path / "newest", newest)
    _write(tmp_path / "same tick", newest - COARSE_TICK)
    _write(tmp_path / "before", newest - COARSE_TICK - 1_000_000_000)
    rows = stamps_of(tmp_path, ("newest", "same tick", "before"))
    assert {name for name, row in rows.items() if row[-1]} == {"newest", "same tick"}
