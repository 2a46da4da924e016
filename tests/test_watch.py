"""Changes in the garden folder are noticed, once each, however an editor saves; reading is not a change."""

from __future__ import annotations

import errno
import os
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from watchdog.events import (
    DirCreatedEvent,
    DirModifiedEvent,
    FileClosedEvent,
    FileClosedNoWriteEvent,
    FileModifiedEvent,
    FileMovedEvent,
    FileOpenedEvent,
)

from leafmould import watch as watching
from leafmould.values.problems import WrongUse
from leafmould.watch import Pace, Signs, Watch, differences, look, share_kind

QUICK = Pace(quiet=0.25, patience=2.0, look=0.6, poll=0.15)
NO_LOOKS = Pace(quiet=0.25, patience=2.0, look=60.0, poll=0.15)
NOTE = "notes/2026/06-20-arch.md"


class Running:
    """A watch at work beside the test."""

    def __init__(self, folder: Path, *, poll: bool = False, pace: Pace = NO_LOOKS) -> None:
        self.said: list[str] = []
        self.bursts: list[tuple[str, ...]] = []
        self.stop = threading.Event()
        self.watch = Watch(folder, tell=self.said.append, poll=poll, pace=pace)
        self.thread = threading.Thread(target=self.watch.run, args=(self.bursts.append, self.stop))
        self.thread.start()
        time.sleep(0.1)

    def after(self, bursts: int, *, within: float = 10.0) -> list[tuple[str, ...]]:
        """What was noticed, once so many bursts have come and no more follows."""
        end = time.monotonic() + within
        while len(self.bursts) < bursts and time.monotonic() < end:
            time.sleep(0.02)
        time.sleep(0.6)
        return self.bursts

    def end(self) -> None:
        self.stop.set()
        self.thread.join(timeout=5)
        assert not self.thread.is_alive()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "notes" / "2026").mkdir(parents=True)
    (tmp_path / "garden.yaml").write_text("garden: Arch House\n", encoding="utf-8")
    (tmp_path / NOTE).write_text("sowed peas in Arch\n", encoding="utf-8")
    return tmp_path


@pytest.fixture
def running(folder: Path) -> Iterator[Running]:
    started = Running(folder)
    yield started
    started.end()


def replace(path: Path, text: str) -> None:
    """Save as many editors do: write beside, then put in place."""
    beside = path.with_name("." + path.name + ".tmp")
    beside.write_text(text, encoding="utf-8")
    beside.replace(path)


def test_f81_a_note_saved_by_renaming_is_noticed(running: Running, folder: Path) -> None:
    replace(folder / NOTE, "sowed peas in Arch\npicked 300 g peas from Arch\n")
    assert running.after(1) == [(NOTE,)]
    replace(folder / NOTE, "sowed peas in Arch\n")
    assert running.after(2) == [(NOTE,), (NOTE,)]


def test_f81_both_ends_of_a_move_count(running: Running, folder: Path) -> None:
    (folder / NOTE).rename(folder / "notes/2026/06-21-arch.md")
    assert running.after(1) == [(NOTE, "notes/2026/06-21-arch.md")]
    (folder / "notes/2026/06-21-arch.md").rename(folder / "out.md")
    assert running.after(2)[1:] == [("notes/2026/06-21-arch.md",)]
    (folder / "out.md").rename(folder / NOTE)
    assert running.after(3)[2:] == [(NOTE,)]


def test_f83_one_save_is_one_change(running: Running, folder: Path) -> None:
    for count in range(8):
        (folder / NOTE).write_text(f"sowed {count + 1} peas in Arch\n", encoding="utf-8")
        time.sleep(0.03)
    assert running.after(1) == [(NOTE,)]


def test_f83_a_writer_that_never_rests_is_not_waited_for_for_ever(folder: Path) -> None:
    signs = Signs(folder, Pace(quiet=0.05, patience=0.3))
    stop = threading.Event()

    def write_on() -> None:
        while not stop.is_set():
            signs.on_any_event(FileModifiedEvent(str(folder / NOTE)))
            time.sleep(0.01)

    writer = threading.Thread(target=write_on)
    writer.start()
    began = time.monotonic()
    assert signs.gather(1.0, stop) == frozenset({NOTE})
    assert time.monotonic() - began < 3
    stop.set()
    writer.join()


def test_f84_reading_a_note_is_not_a_change(running: Running, folder: Path) -> None:
    for _ in range(5):
        (folder / NOTE).read_text(encoding="utf-8")
    list((folder / "notes").rglob("*"))
    assert running.after(1, within=0.5) == []


def test_f84_opening_and_closing_ring_no_bell(folder: Path) -> None:
    signs = Signs(folder, QUICK)
    path = str(folder / NOTE)
    for event in (
        FileOpenedEvent(path),
        FileClosedNoWriteEvent(path),
        FileClosedEvent(path),
        DirModifiedEvent(str(folder / "notes")),
    ):
        signs.on_any_event(event)
    assert not signs.bell.is_set()
    signs.on_any_event(FileMovedEvent(str(folder / "elsewhere.md"), path))
    assert signs.paths == {NOTE}


@pytest.mark.parametrize(
    "own",
    [
        "site/index.html",
        ".leafmould/preview/index.html",
        "notes/.note.md.swp",
        "notes/note.md~",
        ".git/index",
    ],
)
def test_f84_what_is_built_and_what_editors_keep_is_ignored(folder: Path, own: str) -> None:
    signs = Signs(folder, QUICK)
    signs.on_any_event(FileModifiedEvent(str(folder / own)))
    signs.on_any_event(DirCreatedEvent(str((folder / own).parent)))
    assert own not in signs.paths
    (folder / own).parent.mkdir(parents=True, exist_ok=True)
    before = look(folder, {})
    (folder / own).write_text("built", encoding="utf-8")
    assert differences(before, look(folder, before)) == ()


def test_f85_a_touch_and_a_change_of_rights_are_not_changes(running: Running, folder: Path) -> None:
    os.utime(folder / NOTE, (1, 1))
    (folder / NOTE).chmod(0o640)
    (folder / NOTE).write_bytes((folder / NOTE).read_bytes())
    assert running.after(1, within=0.5) == []


def test_f85_the_contents_decide(folder: Path) -> None:
    before = look(folder, {})
    os.utime(folder / NOTE, (1, 1))
    assert differences(before, look(folder, before)) == ()
    stat = (folder / NOTE).stat()
    (folder / NOTE).write_text("sowed beet in Arch\n", encoding="utf-8")  # as many letters
    os.utime(folder / NOTE, ns=(stat.st_atime_ns, stat.st_mtime_ns))
    after = look(folder, look(folder, {}), frozenset({NOTE}))
    assert differences(before, after) == (NOTE,)


def test_f85_a_large_photo_is_judged_by_time_and_size(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(watching, "READ_UP_TO", 10)
    before = look(folder, {})
    assert before[NOTE].digest is None
    os.utime(folder / NOTE, (1, 1))
    assert differences(before, look(folder, before)) == (NOTE,)


def test_f87_a_share_is_looked_at_and_said_so(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(watching, "share_kind", lambda _: "nfs4")
    running = Running(folder, pace=QUICK)
    replace(folder / NOTE, "sowed beans in Arch\n")
    assert running.after(1) == [(NOTE,)]
    running.end()
    assert running.said == [
        "The garden lies on a network share (nfs4), where changes come unannounced. "
        "Looking for changes every 0.15 seconds instead."
    ]


@pytest.mark.parametrize(
    ("folder_name", "kind"),
    [
        ("/srv/garden", "nfs4"),
        ("/srv/garden/old", "ext4"),
        ("/srv", None),
        ("/mnt/my share/plot", "cifs"),
        ("\\\\nas\\plot", "a network path"),
    ],
)
def test_f87_shares_are_known_by_the_kind_of_mount(folder_name: str, kind: str | None) -> None:
    mounts = (
        "/dev/sda1 / ext4 rw 0 0\nnas:/plot /srv/garden nfs4 rw 0 0\n"
        "/dev/sdb1 /srv/garden/old ext4 rw 0 0\n//nas/plot /mnt/my\\040share cifs rw 0 0\n"
    )
    assert share_kind(Path(folder_name), mounts) == (None if kind == "ext4" else kind)


def test_f87_a_change_no_event_told_of_is_found_and_said_so(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Signs, "on_any_event", lambda self, event: None)
    running = Running(folder, pace=QUICK)
    replace(folder / NOTE, "sowed beans in Arch\n")
    assert running.after(1) == [(NOTE,)]
    replace(folder / NOTE, "sowed leeks in Arch\n")
    assert running.after(2) == [(NOTE,), (NOTE,)]
    running.end()
    assert running.said == [
        "A change came unannounced, so the system does not tell of changes here. "
        "Looking every 0.15 seconds instead."
    ]


LIMIT_REACHED = (
    "This computer watches only so many folders at once, and that limit is reached. "
    "Looking for changes every 0.15 seconds instead."
)


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EMFILE])
def test_f89_a_limit_reached_is_said_and_looking_goes_on(
    folder: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise OSError(number, "inotify limit reached")

    monkeypatch.setattr("watchdog.observers.api.BaseObserver.schedule", refuse)
    running = Running(folder, pace=QUICK)
    (folder / "notes/2026/07-01-arch.md").write_text("picked peas from Arch\n", encoding="utf-8")
    assert running.after(1) == [("notes/2026/07-01-arch.md",)]
    running.end()
    assert running.said == [LIMIT_REACHED]


def test_f89_more_folders_than_the_system_watches(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(watching, "_most_watches", lambda: 2)
    running = Running(folder, pace=QUICK)
    (folder / NOTE).unlink()
    assert running.after(1) == [(NOTE,)]
    running.end()
    assert running.said == [LIMIT_REACHED]


def test_f89_the_whole_home_folder_is_never_watched(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("HOME", str(folder / "notes"))
    monkeypatch.setenv("USERPROFILE", str(folder / "notes"))
    for home in (folder / "notes", folder):
        with pytest.raises(WrongUse) as refused:
            Watch(home, tell=print)
        assert refused.value.sentence == (
            "The garden is your whole home folder, too much to watch. "
            "Move garden.yaml and the notes into a folder of their own."
        )


def test_a_new_folder_and_a_room_made_anew_are_noticed(running: Running, folder: Path) -> None:
    (folder / "notes/2027").mkdir()
    (folder / "notes/2027/01-02.md").write_text("pruned Old pear\n", encoding="utf-8")
    assert running.after(1) == [("notes/2027/01-02.md",)]
    (folder / "pages").mkdir()
    (folder / "pages/about.md").write_text("# About\n", encoding="utf-8")
    assert running.after(2)[1:] == [("pages/about.md",)]
    (folder / "pages/about.md").write_text("# About us\n", encoding="utf-8")
    assert running.after(3)[2:] == [("pages/about.md",)]


def test_a_room_replaced_as_a_whole_is_watched_again(running: Running, folder: Path) -> None:
    (folder / "notes").rename(folder / "kept")
    assert running.after(1) == [(NOTE,)]
    (folder / "kept").rename(folder / "notes")
    assert running.after(2)[1:] == [(NOTE,)]
    replace(folder / NOTE, "sowed leeks in Arch\n")
    assert running.after(3)[2:] == [(NOTE,)]


def test_settings_are_watched_too(running: Running, folder: Path) -> None:
    replace(folder / "garden.yaml", "garden: Arch Cottage\n")
    assert running.after(1) == [("garden.yaml",)]


def test_polling_when_asked_says_nothing(folder: Path) -> None:
    running = Running(folder, poll=True, pace=QUICK)
    replace(folder / NOTE, "sowed leeks in Arch\n")
    assert running.after(1) == [(NOTE,)]
    running.end()
    assert running.said == []


def test_a_change_made_while_the_first_build_ran_is_not_lost(folder: Path) -> None:
    bursts: list[tuple[str, ...]] = []
    stop = threading.Event()
    watch = Watch(folder, tell=print, pace=NO_LOOKS)
    replace(folder / NOTE, "sowed leeks in Arch\n")

    def note(changed: tuple[str, ...]) -> None:
        bursts.append(changed)
        stop.set()

    watch.run(note, stop)
    assert bursts == [(NOTE,)]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes in folders")
def test_a_pipe_among_the_notes_is_passed_over(folder: Path) -> None:
    os.mkfifo(folder / "notes" / "pipe.md")
    assert NOTE in look(folder, {})
    assert "notes/pipe.md" not in look(folder, {})
