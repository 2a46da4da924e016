"""Two builds of one folder take turns, and a disk that fills up is met before any page has changed."""

from __future__ import annotations

import subprocess
import sys
import threading
from pathlib import Path

import pytest

from leafmould.output.lock import LOCK_NAME, Lock, is_held
from leafmould.output.write import write_site
from leafmould.values.problems import LeafmouldError

PAGES = {"index.html": b"first page", "beds/arch.html": b"Arch"}
PUBLIC = {f"notes/{number}.html": b"public" * 300 for number in range(60)}
HOUSEHOLD = {f"notes/{number}.html": b"household" * 300 for number in range(60)}

HOLD = """\
import sys, time
from pathlib import Path
from leafmould.output.lock import Lock
with Lock(Path(sys.argv[1]), patience=0):
    print("held", flush=True)
    time.sleep(60)
"""


def held(folder: Path) -> list[str]:
    return sorted(p.relative_to(folder).as_posix() for p in folder.rglob("*") if not p.is_dir())


def test_a_site_is_of_one_build_however_many_write(tmp_path: Path) -> None:
    faults: list[BaseException] = []

    def write(files: dict[str, bytes]) -> None:
        try:
            for _ in range(4):
                write_site(tmp_path, files)
        except BaseException as fault:
            faults.append(fault)
            raise

    threads = [threading.Thread(target=write, args=(files,)) for files in (PUBLIC, HOUSEHOLD, PUBLIC)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert faults == []
    assert len({(tmp_path / name).read_bytes() for name in PUBLIC}) == 1
    assert held(tmp_path) == sorted([*PUBLIC, "made.txt"])


def test_a_second_build_says_who_is_at_it(tmp_path: Path) -> None:
    with Lock(tmp_path, patience=0), pytest.raises(LeafmouldError) as refused:
        write_site(tmp_path, PAGES, patience=0.1)
    sentence = refused.value.sentence
    assert sentence.startswith(f'Another build is writing to "{tmp_path}"; it began at ')
    assert sentence.endswith(". Wait for its end, then build again. Nothing was changed.")
    assert refused.value.exit_code == 3
    assert held(tmp_path) == []


def test_it_waits_for_the_other_to_end(tmp_path: Path) -> None:
    lock = Lock(tmp_path, patience=0)
    lock.__enter__()
    ender = threading.Timer(0.3, lock.__exit__, (None, None, None))
    ender.start()
    assert write_site(tmp_path, PAGES, patience=10).made == 2
    ender.join()


def test_a_build_that_was_killed_holds_nothing_up(tmp_path: Path) -> None:
    with subprocess.Popen([sys.executable, "-c", HOLD, str(tmp_path)], stdout=subprocess.PIPE) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == b"held\n"
        assert is_held(tmp_path)
        other.kill()
        other.wait()
    assert (tmp_path / LOCK_NAME).exists()
    assert not is_held(tmp_path)
    assert write_site(tmp_path, PAGES, patience=0).made == 2
    assert held(tmp_path) == ["beds/arch.html", "index.html", "made.txt"]


def test_what_a_build_cut_short_left_is_cleared_away(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES)
    (tmp_path / ".leafmould-new-17").mkdir()
    (tmp_path / ".leafmould-new-17" / "0").write_bytes(b"half")
    (tmp_path / "beds" / ".leafmould-new").write_bytes(b"half")
    (tmp_path / "beds" / "mine.leafmould-new").write_bytes(b"mine")
    write_site(tmp_path, PAGES)
    assert held(tmp_path) == ["beds/arch.html", "beds/mine.leafmould-new", "index.html", "made.txt"]
    assert not (tmp_path / ".leafmould-new-17").exists()


def test_a_full_disk_is_met_before_any_page_has_changed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_site(tmp_path, PAGES)
    before = {name: (tmp_path / name).read_bytes() for name in held(tmp_path)}
    write_bytes = Path.write_bytes

    def full_disk(self: Path, content: bytes) -> int:
        if content == b"last":
            raise OSError(28, "No space left on device", str(self))
        return write_bytes(self, content)

    with monkeypatch.context() as patched:
        patched.setattr(Path, "write_bytes", full_disk)
        with pytest.raises(LeafmouldError) as refused:
            write_site(tmp_path, {"beds/arch.html": b"new", "beds/bow.html": b"new", "index.html": b"last"})
    assert refused.value.sentence == (
        f'Could not write "{tmp_path / "index.html"}": No space left on device. Nothing was changed.'
    )
    assert {name: (tmp_path / name).read_bytes() for name in held(tmp_path)} == before
    assert sorted(p.name for p in tmp_path.iterdir()) == ["beds", "index.html", "made.txt"]


def test_a_folder_in_the_place_of_the_list_is_somebody_elses(tmp_path: Path) -> None:
    (tmp_path / "made.txt").mkdir()
    with pytest.raises(
        LeafmouldError, match=r'is not empty and was not made by leafmould \(it holds "made.txt"\)'
    ):
        write_site(tmp_path, PAGES)
