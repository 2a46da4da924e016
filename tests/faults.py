"""The faults that `seed_faults.py` seeds: one operator, constant or branch of a function changed.

Says where faults can be, draws some of them, and knows those that nobody could see. Runs nothing.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[1]
CODE = Path("generator/leafmould")
VISIBLE = ("garden/visible*.py", "garden/left_out.py", "garden/leaving_out.py", "garden/disguise.py", "garden/people.py",
           "garden/sight.py", "garden/view.py", "notes/meant_private.py", "notes/bed_privacy.py", "notes/left_out.py")  # fmt: skip
ROOMS = {
    "notes": ("notes/*.py",),
    "garden": ("garden/*.py",),
    "visible": VISIBLE,
    "reckon": ("reckon/*.py",),
    "facts": ("facts/*.py",),
}
DRAWS = {"notes": {"notes": 16, "garden": 14, "visible": 10}, "reckon": {"reckon": 30, "facts": 10}}
"""Of every 40 faults so many from each room, for what is understood and for what is reckoned."""

EQUIVALENT: dict[str, str] = {
    "generator/leafmould/garden/visible_lines.py: gap[0] < gap[1] -> (gap[0] <= gap[1])":
        "two stretches that were understood never touch: a blank or a mark stands between",
    "generator/leafmould/reckon/amounts.py: count < ROUGHLY -> (count <= ROUGHLY)":
        "a hundred is a hundred, rounded to the nearest ten or not",
    "generator/leafmould/reckon/heat_methods.py: high <= base -> (high < base)":
        "where the high is the base itself, the last of the four cases gives nothing too",
}  # fmt: skip
"""Faults that change nothing anybody could see, by how they are printed, each with the reason."""

SWAPS: dict[type[ast.AST], str] = {
    ast.Lt: "<=", ast.LtE: "<", ast.Gt: ">=", ast.GtE: ">", ast.Eq: "!=", ast.NotEq: "==",
    ast.In: "not in", ast.NotIn: "in", ast.Is: "is not", ast.IsNot: "is",
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One edit: a stretch of a file and what takes its place."""

    room: str
    path: str
    first: int  # the line its statement begins at
    line: int
    last: int
    start: int  # in the bytes of the file
    end: int
    old: str
    new: str

    def __str__(self) -> str:
        return f"{self.path}:{self.line}: {' '.join(self.old.split())} -> {' '.join(self.new.split())}"

    @property
    def known_as(self) -> str:
        """The fault without its line, which moves."""
        return str(self).replace(f":{self.line}:", ":", 1)


def chosen(draw: str, number: int, seed: int) -> list[Fault]:
    """Faults drawn from the rooms of a draw, the same for the same seed and code; at most one a line."""
    random = Random(seed)
    found: list[Fault] = []
    for room, share in DRAWS[draw].items():
        files = sorted({p for pattern in ROOMS[room] for p in (ROOT / CODE).glob(pattern)})
        all_of_it = [f for p in files for f in faults_of(p.relative_to(ROOT), room)]
        random.shuffle(all_of_it)
        known = {(f.path, f.line) for f in found}
        fresh = [f for f in all_of_it if f.known_as not in EQUIVALENT and (f.path, f.line) not in known]
        found += fresh[: round(number * share / 40)]
    return found


def faults_of(path: Path, room: str) -> Iterator[Fault]:
    """Every fault that can be seeded in the functions of a file."""
    source = (ROOT / path).read_bytes()
    lines = [0]
    for line in source.splitlines(keepends=True):
        lines.append(lines[-1] + len(line))
    for statement, node in _expressions(ast.parse(source)):
        new = changed(node, statement)
        if new is not None:
            start = lines[node.lineno - 1] + node.col_offset
            end = lines[(node.end_lineno or 0) - 1] + (node.end_col_offset or 0)
            old = source[start:end].decode(errors="replace")
            if _is_same(old, node):
                yield Fault(
                    room=room, path=path.as_posix(), first=statement.lineno, line=node.lineno, last=node.end_lineno or 0,
                    start=start, end=end, old=old, new=new,
                )  # fmt: skip


def _is_same(old: str, node: ast.expr) -> bool:
    """Whether the text is the node's: inside an f-string Python 3.11 tells another place."""
    try:
        return ast.dump(ast.parse(f"({old})", mode="eval").body) == ast.dump(node)
    except SyntaxError:
        return False


def _expressions(tree: ast.Module) -> Iterator[tuple[ast.stmt, ast.expr]]:
    """Every expression of every function, with the statement it stands in; no signature, no decorator."""
    functions = [n for n in ast.walk(tree) if isinstance(n, ast.FunctionDef)]
    inside = {id(s): s for f in functions for b in f.body for s in ast.walk(b) if isinstance(s, ast.stmt)}
    for statement in inside.values():
        if isinstance(statement, ast.FunctionDef | ast.ClassDef):
            continue
        for part in ast.iter_child_nodes(statement):
            if isinstance(part, ast.expr | ast.withitem):
                yield from ((statement, node) for node in ast.walk(part) if isinstance(node, ast.expr))


def changed(node: ast.expr, statement: ast.stmt) -> str | None:
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
        return _other_sign(node)
    if isinstance(node, ast.Constant) and isinstance(node.value, bool):
        return None if _is_own_check(node, statement) else str(not node.value)
    if isinstance(node, ast.Constant) and isinstance(node.value, int):
        return str(node.value + 1)
    if isinstance(statement, ast.If | ast.While) and node is statement.test:
        return f"(not {ast.unparse(node)})"
    return None


def _other_sign(node: ast.BinOp) -> str | None:
    sides = (node.left, node.right)
    if not any(isinstance(side, ast.Constant) and isinstance(side.value, int) for side in sides):
        return None
    sign = "-" if isinstance(node.op, ast.Add) else "+"
    return f"({ast.unparse(node.left)} {sign} {ast.unparse(node.right)})"


def _is_own_check(node: ast.Constant, statement: ast.stmt) -> bool:
    """`strict=True`: the two are of one length wherever it is written, so without it nothing changes."""
    keywords = (k for n in ast.walk(statement) if isinstance(n, ast.Call) for k in n.keywords)
    return any(k.arg == "strict" and k.value is node for k in keywords)
