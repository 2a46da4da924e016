"""Seeds faults in the code, one at a time, and tells which of them the tests catch.

    python tests/seed_faults.py [--faults 40] [--seed 1] [--workers 2]

Each fault changes one operator, constant or branch in `notes`, in `garden` or in the step that decides what is
visible. The tests of that room run on a copied tree. Of 40 faults at least 38 should be caught; a fault that
changes nothing anybody could see stands in EQUIVALENT with the reason, and another takes its place.
"""

from __future__ import annotations

import argparse
import ast
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from queue import Queue
from random import Random

ROOT = Path(__file__).resolve().parents[1]
CODE = Path("generator/leafmould")
VISIBLE = ("garden/visible*.py", "garden/left_out.py", "garden/leaving_out.py", "garden/disguise.py", "garden/people.py",
           "notes/meant_private.py", "notes/bed_privacy.py", "notes/left_out.py")  # fmt: skip
ROOMS = {"notes": ("notes/*.py",), "garden": ("garden/*.py",), "visible": VISIBLE}
SHARE = {"notes": 16, "garden": 14, "visible": 10}
"""Of every 40 faults so many."""

PRIVATE = (
    "test_visible.py test_meant_private.py test_meant_left_out.py test_told_otherwise.py test_secrets.py"
)
READ = "test_lines.py test_bare_lines.py test_amounts_matched.py test_day_phrases.py test_headers.py test_reading.py test_reading_more.py"
MATCHED = "test_matching.py test_matching_beds.py test_matching_doubt.py test_matching_lifted.py test_matching_more.py"
MATCHED_MORE = "test_matching_pickings.py test_matching_untidy.py test_matching_untidy_more.py test_checks.py test_queries.py"
TESTS = {
    "notes": f"test_site_demo.py {READ} test_settings.py test_find_notes.py test_kept_notes.py test_note_lists.py test_out_of_range.py {MATCHED}",
    "garden": f"test_site_demo.py {MATCHED} {MATCHED_MORE} test_waits.py test_recollect.py test_photos_found.py test_data.py test_pages.py",
    "visible": PRIVATE,
}
"""What is run first: the tests nearest to each room."""
NOT_NEAR = (
    "test_again",
    "test_browser",
    "test_build_faults",
    "test_docs",
    "test_output",
    "test_photos",
    "test_preview",
    "test_two_builds",
    "test_watch",
)
"""Tests of other rooms, which are not run even for what slips through the nearest."""
LONGEST = 400
"""A run that takes longer hangs, and is caught by that [seconds]."""

EQUIVALENT: dict[str, str] = {}
"""Faults that change no behaviour, by how they are printed, each with the reason."""

SWAPS: dict[type[ast.AST], str] = {
    ast.Lt: "<=", ast.LtE: "<", ast.Gt: ">=", ast.GtE: ">", ast.Eq: "!=", ast.NotEq: "==",
    ast.In: "not in", ast.NotIn: "in", ast.Is: "is not", ast.IsNot: "is",
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One edit: a stretch of a file and what takes its place."""

    room: str
    path: str
    line: int
    start: int  # in the bytes of the file
    end: int
    old: str
    new: str

    def __str__(self) -> str:
        return f"{self.path}:{self.line}: {' '.join(self.old.split())} -> {' '.join(self.new.split())}"


def faults_of(path: Path, room: str) -> Iterator[Fault]:
    """Every fault that can be seeded in the functions of a file."""
    source = (ROOT / path).read_bytes()
    lines = [0]
    for line in source.splitlines(keepends=True):
        lines.append(lines[-1] + len(line))

    def at(node: ast.AST, new: str) -> Fault:
        start = lines[node.lineno - 1] + node.col_offset  # type: ignore[attr-defined]
        end = lines[node.end_lineno - 1] + node.end_col_offset  # type: ignore[attr-defined]
        old = source[start:end].decode()
        return Fault(
            room=room, path=path.as_posix(), line=node.lineno, start=start, end=end, old=old, new=new
        )  # type: ignore[attr-defined]

    for function in [n for n in ast.walk(ast.parse(source)) if isinstance(n, ast.FunctionDef)]:
        for statement in function.body:
            for node in ast.walk(statement):
                new = changed(node)
                if new is not None:
                    yield at(node, new)


def changed(node: ast.AST) -> str | None:
    """The node with a fault in it, as text; None where it has nothing to change."""
    if isinstance(node, ast.Compare) and len(node.ops) == 1 and type(node.ops[0]) in SWAPS:
        sides = ast.unparse(node.left), ast.unparse(node.comparators[0])
        return f"({sides[0]} {SWAPS[type(node.ops[0])]} {sides[1]})"
    if isinstance(node, ast.BoolOp):
        word = " or " if isinstance(node.op, ast.And) else " and "
        return f"({word.join(f'({ast.unparse(value)})' for value in node.values)})"
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        return f"({ast.unparse(node.operand)})"
    if isinstance(node, ast.IfExp):
        return f"({ast.unparse(node.orelse)} if {ast.unparse(node.test)} else {ast.unparse(node.body)})"
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub):
        sign = "-" if isinstance(node.op, ast.Add) else "+"
        numbers = any(
            isinstance(side, ast.Constant) and isinstance(side.value, int) for side in (node.left, node.right)
        )
        return f"({ast.unparse(node.left)} {sign} {ast.unparse(node.right)})" if numbers else None
    if isinstance(node, ast.Constant) and isinstance(node.value, bool):
        return str(not node.value)
    if isinstance(node, ast.Constant) and isinstance(node.value, int):
        return str(node.value + 1)
    return None


def chosen(number: int, seed: int) -> list[Fault]:
    """Faults drawn from the rooms, the same for the same seed and code; at most one a function's line."""
    random = Random(seed)
    found: list[Fault] = []
    for room, patterns in ROOMS.items():
        files = sorted({p for pattern in patterns for p in (ROOT / CODE).glob(pattern)})
        all_of_it = [f for p in files for f in faults_of(p.relative_to(ROOT), room)]
        random.shuffle(all_of_it)
        known = {(f.path, f.line) for f in found}
        fresh = [f for f in all_of_it if str(f) not in EQUIVALENT and (f.path, f.line) not in known]
        found += fresh[: round(number * SHARE[room] / 40)]
    return found


def is_caught(fault: Fault, tree: Path) -> bool:
    """Whether the tests fail with a fault in a copied tree: those nearest to it, else all others."""
    path = tree / fault.path
    sound = path.read_bytes()
    path.write_bytes(sound[: fault.start] + fault.new.encode() + sound[fault.end :])
    near = [f"tests/{name}" for name in TESTS[fault.room].split()]
    try:
        return fails(near, tree) or fails(others(near, tree), tree)
    finally:
        path.write_bytes(sound)


def is_sound(tree: Path) -> bool:
    """Whether all tests that are run pass in a copied tree without a fault."""
    near = {f"tests/{name}" for tests in TESTS.values() for name in tests.split()}
    return not fails(sorted(near), tree) and not fails(others(sorted(near), tree), tree)


def others(near: list[str], tree: Path) -> list[str]:
    """Every other test that may have to do with notes, the garden or what is shown of it."""
    found = [*tree.glob("tests/test_*.py"), *tree.glob("tests/properties/test_*.py")]
    names = sorted(path.relative_to(tree).as_posix() for path in found if not path.stem.startswith(NOT_NEAR))
    return [name for name in names if name not in near]


def fails(tests: list[str], tree: Path) -> bool:
    """Whether a run of some tests in a tree ends in a failure, or in no end."""
    quick = ["-x", "-q", "-p", "no:cacheprovider", "--no-header", "--tb=no"]
    environment = os.environ | {"PYTHONPATH": str(tree / "generator"), "PYTHONDONTWRITEBYTECODE": "1"}
    try:
        ran = subprocess.run(
            [sys.executable, "-m", "pytest", *quick, *tests],
            cwd=tree, env=environment, capture_output=True, timeout=LONGEST, check=False,
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        return True
    return ran.returncode != 0


def copied(top: Path, number: int) -> Path:
    """A tree of its own for a worker, without what was compiled."""
    tree = top / str(number)
    for name in (
        "generator",
        "tests",
        "content",
        "layouts",
        "pyproject.toml",
        "README.md",
        "DEVELOPERS.md",
        "LICENSE",
        "site-demo",
    ):
        ignored = shutil.ignore_patterns("__pycache__", "node_modules", ".leafmould")
        if (ROOT / name).is_dir():
            shutil.copytree(ROOT / name, tree / name, ignore=ignored)
        else:
            shutil.copy(ROOT / name, tree / name)
    return tree


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--faults", type=int, default=40)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--workers", type=int, default=2)
    options.add_argument("--trust", action="store_true", help="do not try the tests on sound code first")
    given = options.parse_args()
    faults = chosen(given.faults, given.seed)
    with tempfile.TemporaryDirectory() as top:
        trees: Queue[Path] = Queue()
        for number in range(given.workers):
            trees.put(copied(Path(top), number))
        if not given.trust and not is_sound(trees.queue[0]):
            sys.exit("The tests fail without any fault, so nothing could be told.")

        def tried(fault: Fault) -> bool:
            tree = trees.get()
            try:
                caught = is_caught(fault, tree)
            finally:
                trees.put(tree)
            print("caught " if caught else "SLIPPED", fault, flush=True)
            return caught

        with ThreadPoolExecutor(given.workers) as pool:
            caught = sum(pool.map(tried, faults))
    print(f"{caught} of {len(faults)} seeded faults caught")
    sys.exit(0 if caught >= round(len(faults) * 38 / 40) else 1)


if __name__ == "__main__":
    main()
