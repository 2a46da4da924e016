"""The state of a preview: how often it was built, and what there is to tell about the last time.

Rebuilds through a function it is handed. The server's threads read the state while a build writes it.
"""

from __future__ import annotations

import os
import threading
from collections.abc import Callable
from dataclasses import dataclass

from leafmould.values.problems import LeafmouldError, Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """What the open page is told."""

    version: str  # changes with every build, also across two previews
    problems: tuple[Problem, ...] = ()
    fault: str | None = None  # why the last build kept the old site


class Live:
    """The last build's state; `rebuild` makes the next one."""

    def __init__(self, build: Callable[[], tuple[Problem, ...]]) -> None:
        """Take what builds the site and gives its problems; nothing is built yet."""
        self._build = build
        self._lock = threading.Lock()
        self._builds = 0
        self._state = State(version=f"{os.getpid()}-0")

    @property
    def state(self) -> State:
        """What is true now."""
        with self._lock:
            return self._state

    def rebuild(self) -> State:
        """Build once. Where that cannot be done the old site stays, and the state says why."""
        try:
            problems, fault = self._build(), None
        except LeafmouldError as error:
            problems, fault = self.state.problems, error.sentence
        with self._lock:
            self._builds += 1
            self._state = State(version=f"{os.getpid()}-{self._builds}", problems=problems, fault=fault)
            return self._state
