"""Measures the commands one waits for, beside what it costs to start Python and click; prints, never judges.

How to run it, from the top of the repository, with the package installed:

    python tests/benchmarks/commands.py             # gardens of 100 and 3,000 notes
    python tests/benchmarks/commands.py 300 --times 5

Every figure is that of a whole process. `note` puts down one line (taken away again before the next, so that no
garden grows), `find` asks for a crop, once with nothing kept from before and then from what was kept. The
multiples are of the processor seconds of `python -c "import click"`. As with an installed program, Python may
keep its compiled modules; they lie in the temporary folder.
"""

from __future__ import annotations

import argparse
import shutil
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from make_garden import make_garden
from run import Cost, keep_compiled, measure

CLICK = [sys.executable, "-c", "import click"]
LEAFMOULD = [sys.executable, "-m", "leafmould"]
ON = ["--on", "2026-07-15"]


def best(times: int, command: Callable[[], list[str]]) -> Cost:
    """The cheapest of so many runs; the command is made anew for each."""
    return min((measure(command()) for _ in range(times)), key=lambda cost: cost.cpu_seconds)


def measure_garden(garden: Path, times: int) -> dict[str, Cost]:
    """What each command costs in one garden."""
    kept, notes = garden / ".leafmould", garden / "notes"
    before = set(notes.rglob("*.md"))
    find = [*LEAFMOULD, "find", "--garden", str(garden), *ON, "pea"]
    note = [*LEAFMOULD, "note", "--garden", str(garden), *ON, "picked 1.2 kg peas from Arch"]

    def fresh_find() -> list[str]:
        shutil.rmtree(kept, ignore_errors=True)
        return find

    def fresh_note() -> list[str]:
        for written in set(notes.rglob("*.md")) - before:
            written.unlink()
        return note

    costs = {"find, nothing kept": best(times, fresh_find), "find": best(times, lambda: find)}
    return costs | {"note": best(times, fresh_note)}


def show(name: str, cost: Cost, floor: Cost) -> None:
    """One row."""
    sys.stdout.write(
        f"{name:<28} {cost.seconds:7.3f} s, processor {cost.cpu_seconds:7.3f} s"
        f" {cost.cpu_seconds / floor.cpu_seconds:6.1f} x click, {cost.peak_mb:6.0f} MB\n"
    )
    sys.stdout.flush()


def main() -> None:
    """Read the command line, measure, print."""
    parser = argparse.ArgumentParser(description="Measure the commands beside starting click.")
    parser.add_argument("notes", type=int, nargs="*", default=[100, 3000], help="sizes of gardens")
    parser.add_argument("--times", type=int, default=3, help="the best of so many runs")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        keep_compiled(Path(name) / "compiled")
        floor = best(given.times, lambda: CLICK)
        show("python and click", floor, floor)
        help_text = [*LEAFMOULD, "--help"]
        show("--help", best(given.times + 1, lambda: help_text), floor)
        for notes in sorted(given.notes):
            garden = Path(name) / str(notes)
            make_garden(garden, notes=notes)
            for command, cost in measure_garden(garden, given.times).items():
                show(f"{notes:,} notes: {command}", cost, floor)


if __name__ == "__main__":
    main()
