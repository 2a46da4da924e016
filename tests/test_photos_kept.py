"""Pictures are made once: by as many processes as there are, kept between builds, the same bytes either way."""

from __future__ import annotations

import shutil
from collections.abc import Iterator, Sequence
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path

import pytest

from leafmould.photos import darkroom, pool
from leafmould.photos.resize import Job, Outcome, shrink
from photo_garden import built, garden_with, jpeg, pictures, told


def garden_of(folder: Path, count: int = 3) -> Path:
    """A garden with a note for each of so many pictures."""
    notes = {f"2026/06-{n + 1:02}.md": f"---\nbed: Arch\nphoto: p{n}.jpg\n---\nRain.\n" for n in range(count)}
    return garden_with(folder, notes, {f"photos/p{n}.jpg": jpeg(green=8 * n) for n in range(count)})


def whole(garden: Path, to: str = "site") -> dict[str, bytes]:
    """Every file of a site."""
    top = garden.parent / to
    return {file.relative_to(top).as_posix(): file.read_bytes() for file in top.rglob("*") if file.is_file()}


@pytest.fixture
def done(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the pictures that were made, as they are."""
    made: list[str] = []
    outcomes = pool.outcomes

    def counted(jobs: Sequence[Job], workers: int | None) -> Iterator[Outcome]:
        made.extend(Path(job.path).name for job in jobs)
        return outcomes(jobs, workers)

    monkeypatch.setattr(pool, "outcomes", counted)
    return made


# --- processes


def test_one_worker_and_eight_give_the_same_bytes(tmp_path: Path) -> None:
    garden = garden_of(tmp_path, 10)
    built(garden, workers=1)
    shutil.rmtree(garden / ".leafmould")
    built(garden, workers=8, to="other")
    assert whole(garden) == whole(garden, "other")
    assert len(pictures(garden)) == 30


def jobs_of(tmp_path: Path, count: int) -> list[Job]:
    found = []
    for n in range(count):
        (tmp_path / f"{n}.jpg").write_bytes(jpeg(green=8 * n) if n != 1 else b"")
        found.append(Job(path=str(tmp_path / f"{n}.jpg"), widths=(40,)))
    return found


def test_eight_pictures_are_worth_processes_and_seven_are_not(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[tuple[int, int]] = []

    def noted(jobs: Sequence[Job], workers: int) -> Iterator[Outcome]:
        asked.append((len(jobs), workers))
        return map(shrink, jobs)

    monkeypatch.setattr(pool, "_in_processes", noted)
    jobs = jobs_of(tmp_path, 9)
    for count, workers in ((7, 4), (8, 4), (9, 1), (9, 20)):
        assert len(list(pool.outcomes(jobs[:count], workers))) == count
    assert asked == [(8, 4), (9, 9)]


def test_processes_give_outcomes_in_the_order_of_the_jobs(tmp_path: Path) -> None:
    jobs = jobs_of(tmp_path, 9)
    assert list(pool.outcomes(jobs, 2)) == list(map(shrink, jobs))


@pytest.mark.parametrize("fault", [BrokenProcessPool(), PermissionError(1, "no"), NotImplementedError()])
def test_where_processes_end_the_rest_is_made_here(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: Exception
) -> None:
    jobs = jobs_of(tmp_path, 9)

    def broken(jobs: Sequence[Job], workers: int) -> Iterator[Outcome]:
        yield from map(shrink, jobs[:3])
        raise fault

    monkeypatch.setattr(pool, "_in_processes", broken)
    assert list(pool.outcomes(jobs, 4)) == list(map(shrink, jobs))


# --- what was made before


def test_an_unchanged_picture_is_not_made_again(tmp_path: Path, done: list[str]) -> None:
    garden = garden_of(tmp_path)
    built(garden)
    assert done == ["p0.jpg", "p1.jpg", "p2.jpg"]
    done.clear()
    assert built(garden).changed == ()
    built(garden, to="other")
    built(garden, household=True, to="home")
    assert done == []
    assert pictures(garden) == pictures(garden, "other") == pictures(garden, "home")


def test_a_changed_picture_is_made_again_and_its_old_files_go(tmp_path: Path, done: list[str]) -> None:
    garden = garden_of(tmp_path)
    built(garden)
    before = set(pictures(garden))
    done.clear()
    (garden / "photos" / "p1.jpg").write_bytes(jpeg((210, 100)))
    built(garden)
    after = set(pictures(garden))
    assert done == ["p1.jpg"]
    assert len(before & after) == 6 and len(after) == 9
    assert {file.name for file in (garden / ".leafmould" / "photos").iterdir()} == after


def test_other_widths_make_all_pictures_again(tmp_path: Path, done: list[str]) -> None:
    garden = garden_of(tmp_path)
    built(garden)
    done.clear()
    text = (garden / "garden.yaml").read_text("utf-8").replace("[40, 80, 160]", "[80, 100]")
    (garden / "garden.yaml").write_text(text, "utf-8")
    built(garden)
    assert len(done) == 3
    assert {file.name.rpartition("-")[2] for file in (garden / ".leafmould" / "photos").iterdir()} == {
        "80.jpg",
        "100.jpg",
    }


def test_deleting_what_was_kept_changes_nothing(tmp_path: Path, done: list[str]) -> None:
    garden = garden_of(tmp_path)
    built(garden)
    before = whole(garden)
    shutil.rmtree(garden / ".leafmould")
    done.clear()
    assert built(garden).changed == ()
    assert (len(done), whole(garden)) == (3, before)


@pytest.mark.parametrize("text", ["", "null", "[]", '{"program": "x"}', '{"photos": {"a": 1}}', "{" * 99_999])
def test_a_list_that_cannot_be_read_is_an_empty_one(tmp_path: Path, text: str) -> None:
    garden = garden_of(tmp_path)
    built(garden)
    before = whole(garden)
    (garden / ".leafmould" / "photos.json").write_text(text, "utf-8")
    assert built(garden).changed == ()
    assert whole(garden) == before


def test_a_kept_file_cut_short_is_made_again(tmp_path: Path, done: list[str]) -> None:
    garden = garden_of(tmp_path)
    built(garden)
    before = whole(garden)
    done.clear()
    kept = sorted((garden / ".leafmould" / "photos").iterdir())
    kept[0].write_bytes(kept[0].read_bytes()[:100])
    kept[-1].unlink()
    built(garden, to="other")
    assert len(done) == 2
    assert pictures(garden, "other") == {
        k.partition("/")[2]: v for k, v in before.items() if k.endswith(".jpg")
    }


def test_a_garden_that_cannot_be_written_to_is_built_all_the_same(tmp_path: Path, done: list[str]) -> None:
    garden = garden_of(tmp_path)
    (garden / ".leafmould").write_text("a file in the way", "utf-8")
    built(garden)
    built(garden)
    assert len(done) == 6 and len(pictures(garden)) == 9


def test_a_failure_is_never_remembered(tmp_path: Path, done: list[str]) -> None:
    garden = garden_of(tmp_path)
    sound = (garden / "photos" / "p1.jpg").read_bytes()
    (garden / "photos" / "p1.jpg").write_bytes(sound[:700])
    for _ in range(2):
        assert told(built(garden)) == [
            'error: notes/2026/06-02.md:3: photo: "p1.jpg" is broken or cut short. Copy it anew from the camera.'
        ]
    assert done == ["p0.jpg", "p1.jpg", "p2.jpg", "p1.jpg"]
    (garden / "photos" / "p1.jpg").write_bytes(sound)
    assert told(built(garden)) == [] and len(pictures(garden)) == 9


def test_what_the_public_does_not_see_stays_kept_for_the_household(tmp_path: Path, done: list[str]) -> None:
    garden = garden_of(tmp_path)
    note = garden / "notes" / "2026" / "06-02.md"
    note.write_text("---\nprivate: yes\nphoto: p1.jpg\n---\nRain.\n", "utf-8")
    built(garden, household=True, to="home")
    built(garden)
    done.clear()
    built(garden, household=True, to="home")
    assert done == [] and (len(pictures(garden)), len(pictures(garden, "home"))) == (6, 9)


def test_a_picture_is_known_by_what_it_holds(tmp_path: Path) -> None:
    """Another name or another day gives the same files, so that a site need not be sent anew."""
    garden = garden_of(tmp_path / "one", 1)
    built(garden)
    other = garden_with(
        tmp_path / "two",
        {"2025/05-05.md": "---\nphoto: other name.jpg\n---\nSun.\n"},
        {"photos/other name.jpg": jpeg(green=0)},
    )
    built(other)
    assert pictures(garden) == pictures(other) != {}


def test_a_build_without_pictures_loads_no_library_for_them(tmp_path: Path) -> None:
    import subprocess
    import sys

    garden = garden_with(tmp_path, {"2026/06-20.txt": "sowed peas in Arch\n"}, {})
    code = (
        "import sys; from pathlib import Path; from datetime import date; from leafmould.build import build; "
        "build(Path(sys.argv[1]), to=Path(sys.argv[2]), on=date(2026, 7, 15), household=False); "
        "print([name for name in sys.modules if name.partition('.')[0] in ('PIL', 'multiprocessing')])"
    )
    run = subprocess.run(
        [sys.executable, "-c", code, str(garden), str(tmp_path / "site")],
        capture_output=True,
        check=True,
        text=True,
    )
    assert run.stdout == "[]\n"


def test_the_darkroom_has_no_pictures_of_a_garden_without_any(tmp_path: Path) -> None:
    room = darkroom.Darkroom(tmp_path, (480,))
    assert room.in_photos == () and room.make([], workers=8) == {}
    room.keep()
    assert list(tmp_path.iterdir()) == []
