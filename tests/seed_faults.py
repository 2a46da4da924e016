"""Seeds faults in the code, one at a time, and tells which of them the tests catch.

    python tests/seed_faults.py [--draw notes] [--faults 40] [--seed 1] [--workers 2] [--runs FILE]

Each fault changes one operator, constant or branch: `--draw notes` in `notes`, in `garden` and in the step that
decides what is visible; `--draw reckon` in `reckon` and `facts`. First each file of tests is run alone on sound
code, to learn which lines it runs and how long it takes; then every fault is tried on a copied tree, on the tests
that run its line, the quickest first. A fault in a line no test runs has slipped at once. Of 40 faults at least 38
should be caught. `--runs` keeps what was learned, for the next draw: of a file of code changed since, all tests
that ran anything of it are tried.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import asdict, dataclass, field
from pathlib import Path
from queue import Queue

from coverage.numbits import numbits_to_nums

from faults import CODE, DRAWS, ROOT, Fault, chosen

NOT_NEAR = (
    "test_again", "test_browser", "test_build_faults", "test_docs", "test_layers", "test_output", "test_photos_browser",
    "test_preview", "test_two_builds", "test_watch",
)  # fmt: skip
"""Tests of other rooms, which are not run."""
SPARE = 10
"""A run that takes so many times as long as on sound code hangs, and is caught by that."""
LIKELY = (
    "test_lines", "test_garden_cases", "test_matching", "test_reckoned_cases", "test_visible", "test_told", "test_meant", "test_site_demo",
    "test_through",
)  # fmt: skip
"""What catches most, and is run first."""
TREE = ("generator", "tests", "content", "layouts", "pyproject.toml", "README.md", "DEVELOPERS.md", "LICENSE")


@dataclass(kw_only=True)
class Run:
    """A file of tests on sound code: the lines it ran, how long it took, and what failed."""

    seconds: float = 0.0
    lines: dict[str, list[int]] = field(default_factory=dict)
    failed: list[str] = field(default_factory=list)


@dataclass(kw_only=True)
class Runs:
    """What is known of all files of tests, and of which code."""

    digests: dict[str, str] = field(default_factory=dict)
    runs: dict[str, Run] = field(default_factory=dict)

    def trying(self, fault: Fault) -> list[str]:
        """The files of tests that run a fault's line: likely and quick ones first."""
        is_same = self.digests.get(fault.path) == digest(ROOT / fault.path)
        lines = set(range(fault.first, fault.last + 1))
        found = [
            name
            for name, run in self.runs.items()
            if fault.path in run.lines and (not is_same or lines & set(run.lines[fault.path]))
        ]
        return sorted(found, key=lambda n: (not Path(n).stem.startswith(LIKELY), self.runs[n].seconds))


def digest(path: Path) -> str:
    """What tells one state of a file from another."""
    return hashlib.sha256(path.read_bytes()).hexdigest()


def learned(trees: Queue[Path], kept: Path | None, pool: ThreadPoolExecutor) -> Runs:
    """What the tests run on sound code: kept from before, or found out now."""
    runs = Runs()
    if kept is not None and kept.is_file():
        said = json.loads(kept.read_text("utf-8"))
        runs = Runs(digests=said["digests"], runs={n: Run(**r) for n, r in said["runs"].items()})
    now = {p.relative_to(ROOT).as_posix(): digest(p) for p in sorted((ROOT / CODE).rglob("*.py"))}
    fresh = [
        name for name in tests_of(ROOT) if name not in runs.runs or now_of(name) != runs.digests.get(name)
    ]
    runs.digests = {**(runs.digests or now), **{name: now_of(name) for name in fresh}}

    def run(name: str) -> None:
        tree = trees.get()
        try:
            runs.runs[name] = watched(name, tree)
        finally:
            trees.put(tree)
        print(f"{runs.runs[name].seconds:6.1f} s {name}", *runs.runs[name].failed, flush=True)

    list(pool.map(run, fresh))
    if kept is not None:
        kept.write_text(json.dumps(asdict(runs)), encoding="utf-8")
    return runs


def now_of(test: str) -> str:
    """The state of a file of tests."""
    return digest(ROOT / test)


def tests_of(tree: Path) -> list[str]:
    """Every file of tests that may have to do with notes, the garden or what is reckoned from it."""
    found = [*tree.glob("tests/test_*.py"), *tree.glob("tests/properties/test_*.py")]
    return sorted(path.relative_to(tree).as_posix() for path in found if not path.stem.startswith(NOT_NEAR))


def watched(test: str, tree: Path) -> Run:
    """A file of tests run on sound code, with every line of the code it runs written down."""
    data = tree / "ran.sqlite"
    begun = time.monotonic()
    said = pytest(
        [test], tree, 3600, watch=["-m", "coverage", "run", f"--data-file={data}", "--source=leafmould"]
    )
    found = Run(seconds=round(time.monotonic() - begun, 1), failed=failures(said))
    if data.exists():
        with sqlite3.connect(data) as base:
            rows = base.execute(
                "SELECT path, numbits FROM line_bits JOIN file ON file.id = file_id"
            ).fetchall()
        found.lines = {Path(p).relative_to(tree).as_posix(): sorted(numbits_to_nums(b)) for p, b in rows}
        data.unlink()
    return found


def caught_by(fault: Fault, tree: Path, runs: Runs) -> str | None:
    """The first test that fails with a fault in a copied tree and passes without it; None where it slips."""
    path = tree / fault.path
    sound = path.read_bytes()
    faulty = sound[: fault.start] + fault.new.encode() + sound[fault.end :]
    try:
        for tests in batches(runs.trying(fault), runs):
            while True:
                path.write_bytes(faulty)
                known = [f"--deselect={test}" for name in tests for test in runs.runs[name].failed]
                said = pytest([*known, *tests], tree, 60 + SPARE * sum(runs.runs[n].seconds for n in tests))
                if said is not None and said.returncode in (0, 5):
                    break
                caught = next(iter(failures(said)), None)
                path.write_bytes(sound)
                if caught is None or passes(caught, tree):
                    return caught or ("no end" if said is None else "no start")
                runs.runs[caught.split("::")[0]].failed.append(caught)
    finally:
        path.write_bytes(sound)
    return None


def passes(test: str, tree: Path) -> bool:
    """Whether a test passes on sound code."""
    said = pytest([test], tree, 600)
    return said is not None and said.returncode == 0


def batches(tests: list[str], runs: Runs, limit: float = 12.0) -> Iterable[list[str]]:
    """The tests in order, in runs that grow longer: most faults are caught in the first."""
    batch: list[str] = []
    seconds = 0.0
    for name in tests:
        batch.append(name)
        seconds += runs.runs[name].seconds
        if seconds >= limit:
            yield batch
            batch, seconds, limit = [], 0.0, limit * 4
    if batch:
        yield batch


def pytest(
    tests: list[str], tree: Path, seconds: float, watch: list[str] | None = None
) -> subprocess.CompletedProcess[str] | None:
    """A run of some tests in a tree; None where it came to no end."""
    quick = ["-q", "-p", "no:cacheprovider", "--no-header", "--tb=no", *([] if watch else ["-x"])]
    environment = os.environ | {"PYTHONPATH": os.pathsep.join([str(tree / "generator"), *sys.path[1:]]),
                                "PYTHONDONTWRITEBYTECODE": "1"}  # fmt: skip
    try:
        return subprocess.run(
            [sys.executable, *(watch or []), "-m", "pytest", *quick, *tests],
            cwd=tree, env=environment, capture_output=True, text=True, timeout=seconds, check=False,
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        return None


def failures(said: subprocess.CompletedProcess[str] | None) -> list[str]:
    """The tests a run says have failed."""
    rows = said.stdout.splitlines() if said else []
    return [r.split(" ", 1)[1].split(" - ")[0] for r in rows if r.startswith(("FAILED ", "ERROR "))]


def copied(top: Path, number: int) -> Path:
    """A tree of its own for a worker, without what was compiled, and with the example built of this code."""
    tree = top / str(number)
    for name in TREE:
        if (ROOT / name).is_dir():
            ignored = shutil.ignore_patterns("__pycache__", "node_modules", ".leafmould")
            shutil.copytree(ROOT / name, tree / name, ignore=ignored)
        else:
            shutil.copy(ROOT / name, tree / name)
    subprocess.run(
        [sys.executable, "-m", "leafmould", "build", "content", "--to", "site-demo", "--on", "2026-07-15"],
        cwd=tree, env=os.environ | {"PYTHONPATH": str(tree / "generator")}, check=True, capture_output=True,
    )  # fmt: skip
    return tree


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--draw", choices=sorted(DRAWS), default="notes")
    options.add_argument("--faults", type=int, default=40)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--workers", type=int, default=2)
    options.add_argument("--runs", type=Path, help="a file that keeps which tests run which lines")
    given = options.parse_args()
    faults = chosen(given.draw, given.faults, given.seed)
    with tempfile.TemporaryDirectory() as top, ThreadPoolExecutor(given.workers) as pool:
        trees: Queue[Path] = Queue()
        for number in range(given.workers):
            trees.put(copied(Path(top).resolve(), number))
        runs = learned(trees, given.runs, pool)

        def tried(fault: Fault) -> bool:
            tree = trees.get()
            try:
                test = caught_by(fault, tree, runs)
            finally:
                trees.put(tree)
            print(f"caught  {fault}  by {test}" if test else f"SLIPPED {fault}", flush=True)
            return test is not None

        caught = sum(pool.map(tried, faults))
    print(f"{caught} of {len(faults)} seeded faults caught")
    sys.exit(0 if caught >= round(len(faults) * 38 / 40) else 1)


if __name__ == "__main__":
    main()
