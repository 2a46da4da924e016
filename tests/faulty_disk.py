"""A disk on which one call fails, or at one call of which the process dies.

Counts every call by which a program changes the files below a folder - open for writing, write, fsync,
replace, rename, mkdir, rmdir, unlink, ftruncate - and lets the call of a given number go wrong. What is dead
stays dead: after a death every further call dies too, so that no clearing up can happen that a killed process
could not have done.
"""

from __future__ import annotations

import errno
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any
from unittest import mock

BY_PATH = ("replace", "rename", "mkdir", "rmdir", "unlink")
BY_HANDLE = ("write", "fsync", "ftruncate")


class Killed(BaseException):
    """The process is dead."""


class FaultyDisk:
    """Lets call number `at` below a folder fail, or die there; counts and names the calls."""

    def __init__(self, base: Path, *, at: int = 0, code: int = errno.ENOSPC, dies: bool = False) -> None:
        self.base, self.at, self.code, self.dies = str(base), at, code, dies
        self.calls: list[str] = []
        self._handles: set[int] = set()
        self._real: dict[str, Callable[..., Any]] = {
            name: getattr(os, name) for name in (*BY_PATH, *BY_HANDLE, "open", "close")
        }

    @contextmanager
    def used(self) -> Iterator[FaultyDisk]:
        """Put this disk in place of the real one."""
        with mock.patch.multiple(
            os,
            open=self._open,
            close=self._close,
            **{name: self._by_path(name) for name in BY_PATH},
            **{name: self._by_handle(name) for name in BY_HANDLE},
        ):
            yield self

    @property
    def went_wrong(self) -> bool:
        return bool(self.at) and len(self.calls) >= self.at

    def _count(self, call: str, path: object, half: Callable[[], object] = lambda: None) -> None:
        self.calls.append(f"{call} {Path(str(path)).name}")
        if self.dies and self.went_wrong:
            if len(self.calls) == self.at:
                half()
            self.die()
        if len(self.calls) == self.at:
            half()
            raise OSError(self.code, os.strerror(self.code), str(path))

    def die(self) -> None:
        raise Killed

    def _is_below(self, path: object) -> bool:
        return str(path).startswith(self.base)

    def _by_path(self, name: str) -> Callable[..., Any]:
        def call(path: object, *rest: object, **named: object) -> Any:
            if self._is_below(path):
                self._count(name, path)
            return self._real[name](path, *rest, **named)

        return call

    def _by_handle(self, name: str) -> Callable[..., Any]:
        def call(handle: int, *rest: Any) -> Any:
            if handle in self._handles:
                half = (
                    (lambda: self._real["write"](handle, rest[0][: len(rest[0]) // 2]))
                    if name == "write"
                    else None
                )
                self._count(name, "", half or (lambda: None))
            return self._real[name](handle, *rest)

        return call

    def _open(self, path: object, flags: int, *rest: object, **named: object) -> int:
        changes = flags & (os.O_CREAT | os.O_TRUNC) and self._is_below(path)
        if changes:
            self._count("open", path)
        handle: int = self._real["open"](path, flags, *rest, **named)
        if changes:
            self._handles.add(handle)
        return handle

    def _close(self, handle: int) -> None:
        self._handles.discard(handle)
        self._real["close"](handle)


class DyingDisk(FaultyDisk):
    """A disk at one call of which the process truly ends, at once and without another word."""

    def die(self) -> None:
        os._exit(9)
