"""A garden's preview as a whole: the household's site built aside, served, and built again on each change.

Joins build, watch and server; each knows nothing of the others.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

from leafmould.build import build
from leafmould.preview.aside import end_like_ctrl_c, folder_aside
from leafmould.preview.live import Live, State
from leafmould.preview.server import run
from leafmould.report import by_file, count, counted
from leafmould.values.problems import Problem
from leafmould.watch import Watch


def preview(
    garden: Path, *, day: Callable[[], date], port: int, poll: bool, tell: Callable[[str], None]
) -> None:
    """Serve the garden until Ctrl-C.

    Args:
        day: gives "today" for each build; a preview may be left open over midnight.
    """

    def build_once(site: Path) -> tuple[Problem, ...]:
        built = build(garden, to=site, on=day(), household=True)
        newest_first = by_file(built.problems, built.dates)
        return tuple(problem for file in newest_first for problem in file.problems)

    def changed(files: tuple[str, ...], state: State) -> None:
        what = files[0] if len(files) == 1 else counted(len(files), "file")
        verdict = state.fault or count(state.problems).sentence
        tell(f"{what} changed. {verdict}")

    watch = Watch(garden, tell=tell, poll=poll)
    end_like_ctrl_c()
    with folder_aside() as site:
        run(watch, Live(lambda: build_once(site)), site, port=port, tell=tell, changed=changed)
