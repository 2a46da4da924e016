"""Puts a site's files into the output folder: new and changed ones written, old own ones removed.

Last in a build, one build at a time. Files are taken one by one as they are made and lie aside (`stage`) until
there are no more; then the site changes from old to new, by one rename or along a `journal`. A file that would
not change is neither read nor written, and only what the folder's own list (`built`) names is ever removed.
Knows names and bytes, not what they mean.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from types import TracebackType

from leafmould.output import disk
from leafmould.output.built import (
    LIST_NAME,
    UNSURE,
    Made,
    OwnList,
    digest_of,
    list_bytes,
    read_list,
    stands_as,
)
from leafmould.output.journal import BOTH, LAST, Journal, carry_out, keep_journal, settle
from leafmould.output.lock import LOCK_NAME, PATIENCE, Lock
from leafmould.output.names import NameBook
from leafmould.output.stage import SITE, Stage, beside, may_write_beside
from leafmould.output.stamps import Row, stamps_of
from leafmould.output.way import check_way, must_go_first
from leafmould.values.problems import LeafmouldError, WrongUse
from leafmould.values.refusals import refusal

LEFT_BY_SYSTEMS = frozenset({"thumbs.db", "desktop.ini"})
"""What some systems put into every folder; like names that begin with a dot, it takes up no room."""

UNTOUCHED = "Nothing was changed."
DONE = "The new site is in its place."
HALFWAY = "The new site is ready, but not all of it is in its place. Build again to finish it."


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What a build did to the output folder; names sorted, the list itself not counted."""

    made: int  # files the site now has
    changed: tuple[str, ...] = ()  # written, because new or different
    removed: tuple[str, ...] = ()  # no longer made
    stamps: Mapping[str, Row] = field(default_factory=dict, compare=False)  # of all files and the list


def check_folder(to: Path) -> OwnList:
    """The list of our own files in the output folder; empty where nothing was made yet.

    Raises:
        WrongUse: if something else is kept there.
    """
    own = read_list(to)
    if own is not None:
        return own
    if to.is_dir():
        held = sorted(p.name for p in to.iterdir() if not _takes_no_room(p.name))
        if LIST_NAME in held and (own := read_list(to)) is not None:
            return own  # another build's, made since we looked
        if held:
            raise WrongUse(
                f'"{to}" is not empty and was not made by leafmould (it holds "{held[0]}"). '
                "Choose an empty folder with --to."
            )
    elif to.exists() or to.is_symlink():
        raise WrongUse(f'"{to}" is a file, so no site can be put there. Choose a folder with --to.')
    return OwnList(files={})


class Writing:
    """One build's hold on an output folder: while entered, files are taken; `finish` makes them the site.

    Left without `finish`, or by a fault before the site began to change, the old site stands as it was.
    """

    def __init__(self, to: Path, *, patience: float = PATIENCE) -> None:
        """Take the output folder, made if need be, and how long another build of it is waited for. [s]"""
        self._shown, self._to = to, to.resolve()
        self._lock = Lock(to, patience=patience)
        self._is_decided = False
        self._made: dict[str, Made] = {}
        self._changed: dict[str, str] = {}  # names to their numbers in the stage
        self._names = NameBook(LIST_NAME)

    def __enter__(self) -> Writing:
        """Wait for the folder, bring what a build cut short left there to its end, and look what is ours.

        Raises:
            WrongUse: if the folder holds something else.
            LeafmouldError: if another build does not end, or the disk refuses.
        """
        check_folder(self._shown)
        with self._told(UNTOUCHED):
            disk.make_folders(self._to.parent)
            is_inside = self._to.exists() and not may_write_beside(self._to)
            self._lock.take(self._to / LOCK_NAME if is_inside else beside(self._to, LOCK_NAME))
        try:
            with self._told(HALFWAY):
                settle(self._to)
            self.own = check_folder(self._shown)
            self._stage = Stage(self._to)
        except BaseException:
            self._lock.let_go()
            raise
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Clear away what was not made the site, unless the next run has to finish it; let go."""
        try:
            if not self._is_decided:
                self._stage.discard()
        finally:
            self._lock.let_go()

    def add(self, name: str, content: bytes, mark: str = "") -> None:
        """Take a file of the site.

        Args:
            name: relative, with forward slashes.
            mark: what the next build is to be told of it; one line, without tabs.
        Raises:
            LeafmouldError: if the disk refuses; nothing of the site has changed.
            ValueError: if the name is not safe or meets another; our own mistake.
        """
        self._names.add(name)
        made = Made(digest=digest_of(content), mark=mark)
        self._made[name] = made
        try:
            if not self._stands(name, made):
                self._changed[name] = self._stage.add(name, content)
        except OSError as fault:
            raise self._refused(fault, UNTOUCHED, name) from fault

    def keep(self, name: str, mark: str) -> bool:
        """Keep a file as the last build made it, if that build gave it this mark and it stands there whole.

        If it does not, the file has to be made and added.
        """
        made = self.own.files.get(name)
        if made is None or not mark or made.mark != mark or not self._stands(name, made):
            return False
        self._names.add(name)
        self._made[name] = made
        return True

    @property
    def marks_before(self) -> Mapping[str, str]:
        """The files the last build made, with the marks it gave them."""
        return {name: made.mark for name, made in self.own.files.items()}

    @property
    def marks(self) -> Mapping[str, str]:
        """The files taken so far, with their marks."""
        return {name: made.mark for name, made in self._made.items()}

    def is_there(self, name: str) -> bool:
        """Whether a file of the last build still stands there."""
        return (self._to / name).is_file()

    def finish(self) -> Written:
        """Make the files taken the site.

        Raises:
            LeafmouldError: if a file of somebody else is in the way - nothing has been changed then - or the
                disk refuses.
        """
        gone = self.own.files.keys() - self._made.keys()
        check_way(self._shown, self._made, self._changed, self.own.files)
        removed: tuple[str, ...] = ()
        if self._changed or gone or self.own.files != self._made:
            removed = self._whole() if self._stage.is_whole else self._piecewise(sorted(gone))
        with self._told(DONE):
            stamps = stamps_of(self._to, sorted((*self._made, LIST_NAME)))
        changed = tuple(sorted(self._changed))
        return Written(made=len(self._made), changed=changed, removed=removed, stamps=stamps)

    def _whole(self) -> tuple[str, ...]:
        """A first build: the site becomes the output folder in one step."""
        with self._told(UNTOUCHED):
            listed = self._stage.note(f"{SITE}/{LIST_NAME}", list_bytes(self._made))
            disk.rename(listed.parent, self._to)
        return ()

    def _piecewise(self, gone: Collection[str]) -> tuple[str, ...]:
        """Write down what is to be done, then do it."""
        journal = self._journal(gone)
        with self._told(UNTOUCHED):
            unsure = dict.fromkeys([*gone, *self._changed], Made())
            self._stage.note(BOTH, list_bytes({**self._made, **unsure}))
            self._stage.note(LAST, list_bytes(self._made))
            stage = keep_journal(self._stage, journal)
        self._is_decided = True
        with self._told(HALFWAY):
            removed = carry_out(stage, self._to, journal)
        self._is_decided = False
        return removed

    def _journal(self, gone: Collection[str]) -> Journal:
        first = must_go_first(gone, self._made)
        return Journal(
            first=first,
            put=[(number, name, self._made[name].digest) for name, number in sorted(self._changed.items())],
            gone=sorted(set(gone).difference(first)),
        )

    def _stands(self, name: str, made: Made) -> bool:
        """Whether the file is ours and holds this already."""
        own = self.own.files.get(name)
        if own is None or own.digest not in (UNSURE, made.digest):
            return False
        written = self.own.written if own.digest else 0
        return stands_as(self._to / name, made, written)

    @contextmanager
    def _told(self, state: str) -> Iterator[None]:
        """Let what the disk refuses be told in one sentence, with the state the site is in."""
        try:
            yield
        except OSError as fault:
            raise self._refused(fault, state) from fault

    def _refused(self, fault: OSError, state: str, name: str | None = None) -> LeafmouldError:
        about = self._shown / name if name else fault.filename or self._shown
        return LeafmouldError(f'Could not write "{about}": {refusal(fault)}. {state}')


def write_site(to: Path, files: Mapping[str, bytes], *, patience: float = PATIENCE) -> Written:
    """Make the output folder hold exactly these files of ours; as `Writing` does."""
    with Writing(to, patience=patience) as writing:
        for name in sorted(files):
            writing.add(name, files[name])
        return writing.finish()


def _takes_no_room(name: str) -> bool:
    return name.startswith(".") or name.casefold() in LEFT_BY_SYSTEMS
