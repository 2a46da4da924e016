"""Two builds of one folder take turns."""

from __future__ import annotations

import subprocess
import sys
import threading
from pathlib import Path

import pytest

from leafmould.output.lock import LOCK_NAME, Lock, is_held
from leafmould.output.write import Writing, write_site
from leafmould.values.problems import LeafmouldError

PAGES = {"index.html": b"first page", "beds/arch.html": b"Arch"}
PUBLIC = {f"notes/{number}.html": b"public" * 300 for number in range(60)}
HOUSEHOLD = {f"notes/{number}.html": b"household" * 300 for number in range(60)}

HOLD = """\
import sys, time
from pathlib import Path
from leafmould.output.write import Writing
with Writing(Path(sys.argv[1])) as writing:
    writing.add("index.html", b"never to be seen")
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
    out = tmp_path / "site"
    with Writing(out), pytest.raises(LeafmouldError) as refused:
        write_site(out, PAGES, patience=0.1)
    sentence = refused.value.sentence
    assert sentence.startswith(f'Another build is writing to "{out}"; it began at ')
    assert sentence.endswith(". Wait for its end, then build again. Nothing was changed.")
    assert refused.value.exit_code == 3
    assert list(tmp_path.iterdir()) == []


def test_it_waits_for_the_other_to_end(tmp_path: Path) -> None:
    lock = Lock(tmp_path, patience=0)
    lock.take(tmp_path / f".site{LOCK_NAME}")
    ender = threading.Timer(0.3, lock.let_go)
    ender.start()
    assert write_site(tmp_path / "site", PAGES, patience=10).made == 2
    ender.join()


def test_a_build_that_was_killed_holds_nothing_up(tmp_path: Path) -> None:
    out = tmp_path / "site"
    with subprocess.Popen([sys.executable, "-c", HOLD, str(out)], stdout=subprocess.PIPE) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == b"held\n"
        with pytest.raises(LeafmouldError, match="Another build is writing"):
            write_site(out, PAGES, patience=0)
        other.kill()
        other.wait()
    assert sorted(p.name for p in tmp_path.iterdir()) == [".site.leafmould-lock", ".site.leafmould-new"]
    assert write_site(out, PAGES, patience=0).made == 2
    assert held(tmp_path) == ["site/beds/arch.html", "site/index.html", "site/made.txt"]


def test_a_lock_nobody_holds_any_more_is_none(tmp_path: Path) -> None:
    with Lock(tmp_path, patience=0):
        assert is_held(tmp_path)
        left = (tmp_path / LOCK_NAME).read_bytes()
    assert not (tmp_path / LOCK_NAME).exists()
    (tmp_path / LOCK_NAME).write_bytes(left)
    assert not is_held(tmp_path)


def test_a_folder_in_the_place_of_the_list_is_somebody_elses(tmp_path: Path) -> None:
    (tmp_path / "made.txt").mkdir()
    with pytest.raises(
        LeafmouldError, match=r'is not empty and was not made by leafmould \(it holds "made.txt"\)'
    ):
        write_site(tmp_path, PAGES)
