"""Notices when a garden folder changes. Runs beside `preview`, which rebuilds when it is told.

File events are only a sign that something may have changed: they are gathered until all is quiet, then the
folder is looked at, and the contents decide. A slow look now and then finds what no event told of; where
that happens, looking takes the place of events for good. What is then done is left to the caller.
"""

from __future__ import annotations

import errno
import hashlib
import logging
import os
import sys
import threading
import time
from collections.abc import Callable, Iterable, Iterator, Mapping, Set
from dataclasses import dataclass, field
from pathlib import Path
from stat import S_ISREG

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer
from watchdog.observers.api import BaseObserver, ObservedWatch

from leafmould.values.problems import WrongUse

FILES = ("garden.yaml", "crops.yaml")
ROOMS = ("look", "notes", "pages", "photos", "plans", "records")
"""What a build reads; nothing else in the garden folder is watched, least of all what is built."""

ACTED_ON = frozenset({"created", "modified", "moved", "deleted", "attrib"})
"""Kinds of events that can mean new content. Opening and closing a file cannot."""

READ_UP_TO = 1_000_000
"""Larger files are judged by time and size alone, or photos would all be read at the start. [bytes]"""

SHARES = frozenset(
    {
        "nfs",
        "nfs4",
        "cifs",
        "smb3",
        "smbfs",
        "afs",
        "9p",
        "vboxsf",
        "fuse.sshfs",
        "fuse.rclone",
        "davfs",
        "fuse",
    }
)
"""Kinds of file systems that send no events for what others change. Source: common practice."""

LIMIT = (
    "This computer watches only so many folders at once, and that limit is reached. "
    "Looking for changes every {every} instead."
)
SHARE = (
    "The garden lies on a network share ({kind}), where changes come unannounced. "
    "Looking for changes every {every} instead."
)
UNTOLD = (
    "A change came unannounced, so the system does not tell of changes here. Looking every {every} instead."
)
HOME = "The garden is your whole home folder, too much to watch. Move garden.yaml and the notes into a folder of their own."


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """How long to wait. [s]"""

    quiet: float = 0.3  # no event for so long: the saving is over
    patience: float = 5.0  # a writer that never rests is not waited for any longer
    look: float = 10.0  # now and then, even without an event
    poll: float = 2.0  # where events do not come


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """A file as it was last looked at."""

    stamp: tuple[int, int, int]  # time of change [ns], size [bytes], number on the disk
    digest: bytes | None  # None: too large to read each time


def look(folder: Path, before: Mapping[str, Seen], distrust: Set[str] = frozenset()) -> dict[str, Seen]:
    """Every file a build could read, with its contents' digest.

    Args:
        before: the last look; what has kept its stamp is not read again.
        distrust: paths an event named, read again whatever their stamp says.
    """
    found: dict[str, Seen] = {}
    for path in _files(folder):
        name = path.relative_to(folder).as_posix()
        seen = _see(path, None if name in distrust else before.get(name))
        if seen is not None:
            found[name] = seen
    return found


def differences(before: Mapping[str, Seen], after: Mapping[str, Seen]) -> tuple[str, ...]:
    """The files that are new, gone, or have other contents, in order of name."""
    names = before.keys() | after.keys()
    return tuple(sorted(name for name in names if _differs(before.get(name), after.get(name))))


@dataclass(slots=True, eq=False)
class Signs(FileSystemEventHandler):
    """Gathers the paths that events name, until all is quiet."""

    folder: Path
    pace: Pace
    paths: set[str] = field(default_factory=set)
    bell: threading.Event = field(default_factory=threading.Event)
    lock: threading.Lock = field(default_factory=threading.Lock)

    def on_any_event(self, event: FileSystemEvent) -> None:
        """Take in one event; a move has two ends, and either may be the note."""
        if event.event_type not in ACTED_ON or (event.is_directory and event.event_type == "modified"):
            return
        named = {name for name in map(self._inside, (event.src_path, event.dest_path)) if name}
        if named:
            with self.lock:
                self.paths |= named
            self.bell.set()

    def gather(self, wait: float, stop: threading.Event) -> frozenset[str] | None:
        """The paths named by one burst of events; None if none came within `wait` seconds."""
        if not _wait(self.bell, wait, stop):
            return None
        end = time.monotonic() + self.pace.patience
        while self.bell.is_set() and time.monotonic() < end:
            self.bell.clear()
            stop.wait(self.pace.quiet)
        with self.lock:
            named, self.paths = frozenset(self.paths), set()
        return named

    def _inside(self, path: bytes | str) -> str | None:
        name = os.path.relpath(os.fsdecode(path), self.folder) if path else ""
        parts = Path(name).parts
        if not parts or any(part.startswith(".") or part.endswith("~") for part in parts):
            return None
        return "/".join(parts) if parts[0] in ROOMS or name in FILES else None


class Watch:
    """Watches one garden folder from the moment it is made."""

    def __init__(
        self, folder: Path, *, tell: Callable[[str], None], poll: bool = False, pace: Pace | None = None
    ) -> None:
        """Take a first look. `tell` is given a plain sentence when looking takes the place of events.

        Raises:
            WrongUse: the garden folder is the whole home folder, or holds it.
        """
        self.folder = folder.resolve()
        if self.folder in (Path.home().resolve(), *Path.home().resolve().parents):
            raise WrongUse(HOME)
        self.tell, self.polls, self.pace = tell, poll, pace or Pace()
        self.seen = look(self.folder, {})
        self.signs = Signs(self.folder, self.pace)
        self._watched: dict[str, tuple[ObservedWatch, tuple[int, int]]] = {}

    def run(self, on_change: Callable[[tuple[str, ...]], None], stop: threading.Event) -> None:
        """Call `on_change` with the changed files after each burst of changes, until `stop` is set."""
        observer = self._start()
        try:
            changed = self._look()  # what happened since the watch was made, before anyone listened
            while True:
                if changed:
                    on_change(changed)
                if stop.is_set():
                    return
                changed = self._next(observer, stop)
        finally:
            if observer is not None:
                observer.stop()
                observer.join()

    def _next(self, observer: BaseObserver | None, stop: threading.Event) -> tuple[str, ...]:
        """Wait for a burst of events or for the time of the next look, then say what changed."""
        named = self.signs.gather(self.pace.poll if self.polls else self.pace.look, stop)
        if observer is not None and not self.polls:
            self._follow(observer)
        if named is None and not self.polls and differences(self.seen, look(self.folder, self.seen)):
            # The event may only be late; if none comes, none will.
            named = self.signs.gather(self.pace.quiet, stop)
            if named is None and not stop.is_set():
                self._poll(UNTOLD)
        return self._look(named or frozenset())

    def _look(self, distrust: frozenset[str] = frozenset()) -> tuple[str, ...]:
        before, self.seen = self.seen, look(self.folder, self.seen, distrust)
        return differences(before, self.seen)

    def _start(self) -> BaseObserver | None:
        """Begin to listen for events, or say why looking takes their place."""
        kind = share_kind(self.folder)
        if self.polls or kind:
            self._poll(SHARE, kind=kind or "") if kind else None
            return None
        if _folders(self.folder) > _most_watches():
            self._poll(LIMIT)
            return None
        # An event that comes while listening ends is logged there as a fault; it is none, and the looks
        # at the files tell whatever the events do not.
        logging.getLogger("watchdog").setLevel(logging.CRITICAL)
        observer = Observer()
        observer.start()
        self._follow(observer)
        return observer

    def _follow(self, observer: BaseObserver) -> None:
        """Listen at the garden folder and at each of its rooms, also those that are new or made anew."""
        for name in (".", *ROOMS):
            place = self.folder / name
            here = _identity(place)
            watched = self._watched.get(name)
            if watched and watched[1] == here:
                continue
            if watched:
                del self._watched[name]
                observer.unschedule(watched[0])
            if here and not self.polls:
                self._listen(observer, name, place, here)

    def _listen(self, observer: BaseObserver, name: str, place: Path, here: tuple[int, int]) -> None:
        try:
            self._watched[name] = observer.schedule(self.signs, str(place), recursive=name != "."), here
        except FileNotFoundError:
            return  # gone again since we saw it
        except OSError as fault:
            if fault.errno not in (errno.ENOSPC, errno.EMFILE):
                raise
            self._poll(LIMIT)

    def _poll(self, sentence: str, **words: str) -> None:
        self.polls = True
        self.tell(sentence.format(every=f"{self.pace.poll:g} seconds", **words))


def share_kind(folder: Path, mounts: str | None = None) -> str | None:
    """The kind of network share a folder lies on, as the system calls it; None for a disk of this computer.

    Args:
        mounts: the system's table of mounts, as Linux writes /proc/self/mounts; None: read it.
    """
    if str(folder).startswith("\\\\"):
        return "a network path"
    best: tuple[int, str] = (0, "")
    for line in (_mounts() if mounts is None else mounts).splitlines():
        words = line.split(" ")
        if len(words) > 2:
            mounted = Path(words[1].replace("\\040", " "))
            if folder.is_relative_to(mounted) and len(mounted.parts) >= best[0]:
                best = (len(mounted.parts), words[2])
    return best[1] if best[1] in SHARES else None


def _mounts() -> str:
    path = Path("/proc/self/mounts")
    return path.read_text(encoding="utf-8", errors="replace") if path.exists() else ""


def _most_watches() -> int:
    path = Path("/proc/sys/fs/inotify/max_user_watches")
    return int(path.read_text(encoding="ascii")) if path.exists() else sys.maxsize


def _wait(bell: threading.Event, seconds: float, stop: threading.Event) -> bool:
    """Wait for the bell, but not longer than a moment after `stop`."""
    end = time.monotonic() + seconds
    while not stop.is_set() and time.monotonic() < end:
        if bell.wait(min(0.2, max(0.0, end - time.monotonic()))):
            return True
    return False


def _files(folder: Path) -> Iterator[Path]:
    yield from (folder / name for name in FILES)
    for room in ROOMS:
        for inside, folders, names in os.walk(folder / room):
            folders[:] = _plain(folders)
            yield from (Path(inside, name) for name in _plain(names))


def _folders(folder: Path) -> int:
    return 1 + sum(1 for room in ROOMS for _ in os.walk(folder / room))


def _plain(names: Iterable[str]) -> list[str]:
    """Names that are no editor's or system's own business."""
    return sorted(name for name in names if not name.startswith(".") and not name.endswith("~"))


def _see(path: Path, before: Seen | None) -> Seen | None:
    try:
        stat = path.stat()
        if not S_ISREG(stat.st_mode):
            return None  # a pipe would never end
        stamp = (stat.st_mtime_ns, stat.st_size, stat.st_ino)
        if before is not None and before.stamp == stamp:
            return before
        large = stat.st_size > READ_UP_TO
        digest = None if large else hashlib.blake2b(path.read_bytes(), digest_size=16).digest()
    except OSError:
        return None  # gone or locked since it was listed: as if it were not there, until the next look
    return Seen(stamp=stamp, digest=digest)


def _identity(place: Path) -> tuple[int, int] | None:
    try:
        stat = place.stat()
    except OSError:
        return None
    return stat.st_dev, stat.st_ino


def _differs(before: Seen | None, after: Seen | None) -> bool:
    if before is None or after is None:
        return before is not after
    if before.digest is None or after.digest is None:
        return before.stamp != after.stamp
    return before.digest != after.digest
