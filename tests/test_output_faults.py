"""Every call that changes the disk made to fail, and the process killed at each: the site stays one site.

What a reader finds straight after, before the next build: every page whole, old or new. As soon as the next
build has looked at the folder: wholly the old site or wholly the new one. After that build: its own.
"""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from faulty_disk import FaultyDisk, Killed
from leafmould.output import disk, write
from leafmould.output.built import digest_of
from leafmould.output.stage import ENDING
from leafmould.output.write import HALFWAY, UNTOUCHED, Writing, write_site
from leafmould.values.problems import LeafmouldError, WrongUse

OLD = {
    "index.html": b"old first page",
    "same.html": b"same",
    "beds/arch.html": b"old arch",
    "beds/gone.html": b"old and gone",
    "notes/2025/a.html": b"old note",
    "crops/Pea.html": b"old pea",
    "plan": b"old plan",
}
NEW = {
    "index.html": b"new first page",
    "same.html": b"same",
    "beds/arch.html": b"new arch",
    "beds/new/2026.html": b"new chapter",
    "crops/pea.html": b"new pea",
    "plan/2027.html": b"new plan",
}
NEXT = {**NEW, "index.html": b"the next first page", "lessons.html": b"lessons"}

STARTS = ("no folder", "empty folder", "old site", "old site, nothing beside it")
CODES = (errno.ENOSPC, errno.EACCES)


@pytest.fixture(autouse=True)
def _no_waiting_for_the_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is written down at once here is of no use to anybody."""
    monkeypatch.setattr(os, "fsync", lambda handle: None)


def begin(out: Path, start: str, monkeypatch: pytest.MonkeyPatch) -> Mapping[str, bytes]:
    """The output folder as a build finds it; the site in it."""
    if start == "no folder":
        return {}
    out.mkdir()
    if start == "empty folder":
        return {}
    if start.endswith("nothing beside it"):
        for module in ("stage", "write"):
            monkeypatch.setattr(f"leafmould.output.{module}.may_write_beside", lambda to: False)
    write_site(out, OLD)
    return OLD


def site(out: Path) -> dict[str, bytes]:
    """Every page and file a reader of the folder finds, by name; what is hidden is no page."""
    found = (p for p in sorted(out.rglob("*")) if p.is_file())
    names = {p.relative_to(out).as_posix(): p.read_bytes() for p in found}
    return {name: content for name, content in names.items() if name != "made.txt" and name[0] != "."}


def left(base: Path) -> list[str]:
    """What stands beside the pages and the list."""
    return sorted(p.name for p in base.rglob("*") if p.name.startswith("."))


def calls_of(base: Path, start: str, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Every call of a build that changes the disk."""
    base.mkdir()
    begin(base / "site", start, monkeypatch)
    with FaultyDisk(base).used() as counted:
        write_site(base / "site", NEW)
    return counted.calls


def check_whole_pages(out: Path, old: Mapping[str, bytes]) -> None:
    """Every page is old or new, as a whole."""
    for name, content in site(out).items():
        assert content in (old.get(name), NEW.get(name)), name


def check_next_build(base: Path, old: Mapping[str, bytes]) -> None:
    """As soon as a build looks, the site is wholly one of the two; after the build, its own."""
    out = base / "site"
    with Writing(out, patience=0):
        assert site(out) in (old, NEW)
    written = write_site(out, NEXT, patience=0)
    assert site(out) == NEXT
    assert written.made == len(NEXT)
    assert left(base) == []
    again = write_site(out, NEXT, patience=0)
    assert (again.changed, again.removed) == ((), ())


@pytest.mark.parametrize("code", CODES, ids=errno.errorcode.get)
@pytest.mark.parametrize("start", STARTS)
def test_each_call_that_fails_is_one_sentence_and_the_next_build_is_whole(
    tmp_path: Path, start: str, code: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls = calls_of(tmp_path / "counted", start, monkeypatch)
    ended = set()
    for at in range(1, len(calls) + 1):
        base = tmp_path / str(at)
        base.mkdir()
        old = begin(base / "site", start, monkeypatch)
        try:
            with FaultyDisk(base, at=at, code=code).used():
                write_site(base / "site", NEW, patience=0)
        except LeafmouldError as fault:
            ended.add(check_told(fault, base / "site", old))
        else:
            ended.add("new")
            assert site(base / "site") == NEW, calls[at - 1]
        check_next_build(base, old)
    assert UNTOUCHED in ended
    assert (HALFWAY in ended) == (start != "no folder")


def check_told(fault: LeafmouldError, out: Path, old: Mapping[str, bytes]) -> str:
    """One sentence with what is true of the site; which of the two."""
    assert fault.exit_code == 3
    assert fault.sentence.startswith(f'Could not write "{out.parent}')
    if fault.sentence.endswith(f". {UNTOUCHED}"):
        assert (site(out) if out.exists() else {}) == old
        assert not [name for name in left(out.parent) if name.endswith(ENDING)]
        return UNTOUCHED
    assert fault.sentence.endswith(f". {HALFWAY}")
    check_whole_pages(out, old)
    return HALFWAY


@pytest.mark.parametrize("start", STARTS)
def test_killed_at_each_call_every_page_is_whole_and_the_next_build_too(
    tmp_path: Path, start: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls = calls_of(tmp_path / "counted", start, monkeypatch)
    seen = []
    for at in range(1, len(calls) + 1):
        base = tmp_path / str(at)
        base.mkdir()
        old = begin(base / "site", start, monkeypatch)
        with pytest.raises(Killed), FaultyDisk(base, at=at, dies=True).used():
            write_site(base / "site", NEW, patience=0)
        check_whole_pages(base / "site", old)
        seen.append(site(base / "site"))
        check_next_build(base, old)
    assert NEW in seen
    assert {} in seen if start in STARTS[:2] else OLD in seen


@pytest.mark.parametrize("start", ["empty folder", "old site"])
def test_killed_while_the_next_build_finishes_the_last(
    tmp_path: Path, start: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls = calls_of(tmp_path / "counted", start, monkeypatch)
    decided = calls.index("replace journal.part") + 3  # the list is in its place, the first page not yet
    for at in range(1, 30):
        base = tmp_path / str(at)
        base.mkdir()
        old = begin(base / "site", start, monkeypatch)
        with pytest.raises(Killed), FaultyDisk(base, at=decided, dies=True).used():
            write_site(base / "site", NEW, patience=0)
        try:
            with FaultyDisk(base, at=at, dies=True).used():
                write_site(base / "site", NEXT, patience=0)
        except Killed:
            for name, content in site(base / "site").items():
                assert content in (old.get(name), NEW.get(name), NEXT.get(name))
        write_site(base / "site", NEXT, patience=0)
        assert site(base / "site") == NEXT
        assert left(base) == []


DIE = """\
import sys
from pathlib import Path
from faulty_disk import DyingDisk
from test_output_faults import NEW
from leafmould.output.write import write_site
base = Path(sys.argv[1])
with DyingDisk(base, at=int(sys.argv[2]), dies=True).used():
    write_site(base / "site", NEW, patience=0)
"""


@pytest.mark.parametrize("start", ["no folder", "old site"])
def test_a_process_that_truly_ends_leaves_the_same(
    tmp_path: Path, start: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    number = len(calls_of(tmp_path / "counted", start, monkeypatch))
    env = os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)}
    for at in range(2, number, number // 6):
        base = tmp_path / str(at)
        base.mkdir()
        old = begin(base / "site", start, monkeypatch)
        died = subprocess.run([sys.executable, "-c", DIE, str(base), str(at)], env=env, check=False)
        assert died.returncode == 9
        check_whole_pages(base / "site", old)
        check_next_build(base, old)


def test_what_the_power_took_from_the_stage_is_not_used(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Files that were not yet on the disk when the power failed are empty afterwards."""
    out = tmp_path / "site"
    begin(out, "old site", monkeypatch)
    calls = calls_of(tmp_path / "counted", "old site", monkeypatch)
    with (
        pytest.raises(Killed),
        FaultyDisk(tmp_path, at=calls.index("replace journal.part") + 2, dies=True).used(),
    ):
        write_site(out, NEW)
    stage = tmp_path / ".site.leafmould-new"
    for number in "0123":
        (stage / number).write_bytes(b"")
    with Writing(out):
        check_whole_pages(out, OLD)
    assert write_site(out, NEW).changed == (
        "beds/arch.html",
        "beds/new/2026.html",
        "crops/pea.html",
        "index.html",
    )
    assert site(out) == NEW


def test_a_journal_nobody_can_read_is_none(tmp_path: Path) -> None:
    out, stage = tmp_path / "site", tmp_path / ".site.leafmould-new"
    write_site(out, OLD)
    (tmp_path / "letter.txt").write_bytes(b"dear aunt")
    up = f'"put": [["0", "../up", "{digest_of(b"a")}"]]'
    for text in (
        "",
        "[1",
        '{"put": 1}',
        f'{{"first": [], {up}, "gone": []}}',
        '{"first": ["../letter.txt"], "put": [], "gone": []}',
        '{"first": [], "put": [], "gone": ["../letter.txt"]}',
    ):
        stage.mkdir()
        (stage / "journal").write_text(text, "utf-8")
        (stage / "0").write_bytes(b"a")
        write_site(out, OLD)
        assert site(out) == OLD
        assert sorted(p.name for p in tmp_path.iterdir()) == ["letter.txt", "site"]


def test_a_stage_that_cannot_be_cleared_away_holds_no_journal_any_more(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_site(tmp_path / "site", OLD)
    with monkeypatch.context() as patched:
        patched.setattr(disk, "remove_tree", lambda folder: None)
        write_site(tmp_path / "site", NEW)
    assert [p.name for p in (tmp_path / ".site.leafmould-new").iterdir()] == []
    write_site(tmp_path / "site", NEW)
    assert left(tmp_path) == []


def test_a_folder_that_turns_out_to_be_another_disk_is_written_from_inside(tmp_path: Path) -> None:
    out = tmp_path / "site"
    write_site(out, OLD)
    with FaultyDisk(tmp_path).used() as counted:
        write_site(out, NEW)
    write_site(out, OLD)
    at = counted.calls.index("replace .leafmould-probe") + 1
    with FaultyDisk(tmp_path, at=at, code=errno.EXDEV).used() as other:
        write_site(out, NEW)
    assert "mkdir .leafmould-new" in other.calls
    assert site(out) == NEW
    assert left(tmp_path) == []


def test_lists_and_journal_are_on_the_disk_before_the_site_changes(tmp_path: Path) -> None:
    write_site(tmp_path / "site", OLD)
    with FaultyDisk(tmp_path).used() as counted:
        write_site(tmp_path / "site", NEW)
    calls = [call.split()[0] for call in counted.calls]
    decided = counted.calls.index("replace journal.part")
    assert calls[:decided].count("fsync") == 3
    assert calls[decided - 1] == "fsync"
    assert "fsync" not in calls[decided:]


def test_a_disk_that_cannot_be_asked_to_write_down_at_once_is_written_all_the_same(tmp_path: Path) -> None:
    write_site(tmp_path / "site", OLD)
    with FaultyDisk(tmp_path).used() as counted:
        write_site(tmp_path / "site", NEW)
    write_site(tmp_path / "site", OLD)
    at = counted.calls.index("fsync ") + 1
    with FaultyDisk(tmp_path, at=at, code=errno.ENOTSUP).used():
        write_site(tmp_path / "site", NEW)
    assert site(tmp_path / "site") == NEW


def test_a_disk_that_takes_a_few_bytes_at_a_time_gets_them_all(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    some = os.write
    monkeypatch.setattr(os, "write", lambda handle, content: some(handle, content[:3]))
    write_site(tmp_path / "site", OLD)
    assert site(tmp_path / "site") == OLD


def test_what_a_killed_build_tried_the_folder_with_is_cleared_away(tmp_path: Path) -> None:
    write_site(tmp_path / "site", OLD)
    (tmp_path / "site" / ".leafmould-probe").write_bytes(b"")
    write_site(tmp_path / "site", OLD)
    assert left(tmp_path) == []


def test_a_journal_does_not_reach_into_a_folder_of_somebody_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "site"
    begin(out, "old site", monkeypatch)
    calls = calls_of(tmp_path / "counted", "old site", monkeypatch)
    with (
        pytest.raises(Killed),
        FaultyDisk(tmp_path, at=calls.index("replace journal.part") + 2, dies=True).used(),
    ):
        write_site(out, NEW)
    out.rename(tmp_path / "elsewhere")
    out.mkdir()
    (out / "letter.txt").write_text("dear aunt", "utf-8")
    with pytest.raises(WrongUse, match="is not empty and was not made by leafmould"):
        write_site(out, NEW)
    assert site(out) == {"letter.txt": b"dear aunt"}


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EROFS, "the disk can only be read"),
        (errno.EACCES, "reading or writing is not allowed there"),
        (errno.EIO, "the disk or the terminal does not answer"),
    ],
)
def test_what_the_disk_refuses_is_said_in_plain_words(tmp_path: Path, code: int, words: str) -> None:
    out = tmp_path / "site"
    write_site(out, OLD)
    with pytest.raises(LeafmouldError) as refused, FaultyDisk(tmp_path, at=8, code=code).used() as faulty:
        write_site(out, NEW)
    assert faulty.calls[-3] == "open 0"
    assert (
        refused.value.sentence == f'Could not write "{out / "beds/arch.html"}": {words}. Nothing was changed.'
    )


class HeldOpen(FaultyDisk):
    """A reader holds a page open, as Windows knows it: it cannot be replaced for a while."""

    tries = 0

    def _count(self, call: str, path: object, half: object = None) -> None:
        if call == "replace" and str(path).endswith("/0"):
            self.tries += 1
            if self.tries <= self.at:
                fault = PermissionError(errno.EACCES, "Access is denied", str(path))
                fault.winerror = 32  # type: ignore[attr-defined]
                raise fault


@pytest.mark.parametrize("start", STARTS[2:])
def test_a_page_held_open_is_waited_for_and_then_named(
    tmp_path: Path, start: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(disk, "PAUSES", (0.0, 0.0, 0.0))
    out = tmp_path / "site"
    begin(out, start, monkeypatch)
    with HeldOpen(tmp_path, at=3).used() as held:
        write_site(out, NEW)
    assert held.tries == 4
    write_site(out, OLD)
    with pytest.raises(LeafmouldError) as refused, HeldOpen(tmp_path, at=4).used():
        write_site(out, NEW)
    assert refused.value.sentence == (
        f'Could not write "{out / "beds/arch.html"}": another program holds it open. {write.HALFWAY}'
    )
    assert write_site(out, NEW).changed == ()
    assert site(out) == NEW
