"""Measures the build beside the bare library floor of the same notes; prints, never judges.

How to run it, from the top of the repository, with the package installed:

    python tests/benchmarks/run.py                     # 3,000 and 30,000 notes
    python tests/benchmarks/run.py 300 3000 --times 3  # other sizes; the best of three runs each

Every figure is that of a whole process, start of Python and imports included, on one worker. Gardens are
made afresh in a temporary folder by `make_garden`, the same every time. For each size it prints the cost
of the floor (`floor.py`), of a cold build, of a build with nothing changed, of one after a note changed
and of one on the next day: seconds by the clock and of the processor, and peak memory. The multiples of the
floor are of processor seconds, which are steadier. Then comes the growth from the first size to the last as
an exponent (1.00 is linear), and what the matcher needs a line. Nothing here is a test.
"""

from __future__ import annotations

import argparse
import json
import math
import os
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from make_garden import make_garden

HERE = Path(__file__).parent


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """What one process took."""

    seconds: float  # by the clock
    cpu_seconds: float  # of the processor, both ours and the system's; steadier on a busy machine
    peak_mb: float


def measure(command: list[str]) -> Cost:
    """Run a command to its end; its output is thrown away unless it fails."""
    begun = time.perf_counter()
    with tempfile.TemporaryFile() as said:
        process = subprocess.Popen(command, stdout=said, stderr=subprocess.STDOUT)
        _, status, used = os.wait4(process.pid, 0)
        seconds = time.perf_counter() - begun
        process.returncode = os.waitstatus_to_exitcode(status)
        said.seek(0)
        words = said.read().decode(errors="replace")
    # 1 is said of errors in the notes, which keep nothing from being built, and of a fault of ours.
    if process.returncode not in (0, 1) or "Traceback" in words:
        sys.exit(f"{' '.join(command)} ended with {process.returncode}:\n{words}")
    unit = 1_000_000 if sys.platform == "darwin" else 1_000  # ru_maxrss is bytes there, kilobytes here
    return Cost(seconds=seconds, cpu_seconds=used.ru_utime + used.ru_stime, peak_mb=used.ru_maxrss / unit)


def keep_compiled(folder: Path) -> None:
    """Let Python keep compiled modules, as it does for an installed program; nothing is left behind."""
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    os.environ["PYTHONPYCACHEPREFIX"] = str(folder)
    for module in ("leafmould.build", "yaml, jinja2, markdown_it"):
        measure([sys.executable, "-c", f"import {module}"])


def build_command(garden: Path, out: Path, on: str = "2026-07-15") -> list[str]:
    """The command line of a build on one worker."""
    options = ["--to", str(out), "--on", on, "--workers", "1"]
    return [sys.executable, "-m", "leafmould", "build", str(garden), *options]


def measure_size(notes: int, times: int, folder: Path) -> dict[str, Cost]:
    """The best of so many runs of each kind of work on one garden, the floor in turn with the build."""
    found: dict[str, list[Cost]] = {}
    for number in range(times):
        for name, cost in _one_round(notes, folder / f"{notes}-{number}"):
            found.setdefault(name, []).append(cost)
    return {name: min(costs, key=lambda c: c.cpu_seconds) for name, costs in found.items()}


def _one_round(notes: int, folder: Path) -> list[tuple[str, Cost]]:
    garden, out = folder / "garden", folder / "site"
    make_garden(garden, notes=notes)
    floor = measure([sys.executable, str(HERE / "floor.py"), str(garden), str(folder / "floor")])
    costs = [("floor", floor), ("cold build", measure(build_command(garden, out)))]
    costs.append(("nothing changed", measure(build_command(garden, out))))
    _change_one(garden)
    costs.append(("one note changed", measure(build_command(garden, out))))
    costs.append(("the next day", measure(build_command(garden, out, on="2026-07-16"))))
    return costs


def _change_one(garden: Path) -> None:
    notes = sorted((garden / "notes").rglob("*.md"))
    changed = notes[len(notes) // 2]
    with changed.open("a", encoding="utf-8") as note:
        note.write("\nOne more word about the Arch.\n")


def show(notes: int, costs: dict[str, Cost]) -> None:
    """One row for each kind of work."""
    floor = costs["floor"]
    for name, cost in costs.items():
        sys.stdout.write(
            f"{notes:>7,}  {name:<17} {cost.seconds:8.2f} s, processor {cost.cpu_seconds:7.2f} s"
            f" {cost.cpu_seconds / floor.cpu_seconds:6.2f} x floor, {cost.peak_mb:8.0f} MB {cost.peak_mb / floor.peak_mb:6.2f} x floor\n"
        )
    sys.stdout.flush()


def show_growth(small: int, large: int, costs: dict[int, dict[str, Cost]]) -> None:
    """How cost grows from the small size to the large one."""
    for name in ("floor", "cold build"):
        first, last = costs[small][name], costs[large][name]
        size = math.log(large / small)
        seconds = math.log(last.cpu_seconds / first.cpu_seconds) / size
        memory = math.log(last.peak_mb / first.peak_mb) / size
        sys.stdout.write(f"growth of the {name}: time n^{seconds:.2f}, memory n^{memory:.2f}\n")


def show_matcher(notes: int, folder: Path) -> None:
    """Microseconds a unique line."""
    garden = folder / "lines"
    make_garden(garden, notes=notes)
    said = subprocess.run(
        [sys.executable, str(HERE / "matcher.py"), str(garden)], check=True, capture_output=True
    )
    found = json.loads(said.stdout)
    sys.stdout.write(f"matcher: {found['us']:.1f} µs a line over {found['lines']:,} unique lines\n")


def main() -> None:
    """Read the command line, measure, print."""
    parser = argparse.ArgumentParser(description="Measure builds beside the library floor.")
    parser.add_argument("notes", type=int, nargs="*", default=[3000, 30000], help="sizes of gardens")
    parser.add_argument("--times", type=int, default=1, help="the best of so many runs")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        keep_compiled(Path(name) / "compiled")
        costs = {}
        for notes in sorted(given.notes):
            costs[notes] = measure_size(notes, given.times, Path(name))
            show(notes, costs[notes])
        if len(costs) > 1:
            show_growth(min(costs), max(costs), costs)
        show_matcher(min(costs), Path(name))


if __name__ == "__main__":
    main()
