"""The drawing in DEVELOPERS.md cannot go stale: imports point one way, lowest room first."""

from __future__ import annotations

import ast
from pathlib import Path

PACKAGE = Path(__file__).parents[1] / "generator" / "leafmould"

# Lowest first. Rooms on one line don't import each other.
ORDER: tuple[tuple[str, ...], ...] = (
    ("values",),
    ("notes", "facts", "charts", "photos", "report"),
    ("garden",),
    ("reckon",),
    ("pages",),
    ("render",),
    ("output",),
    ("inputs",),
    ("build",),
    ("again",),
    ("lookup",),
    ("desk",),
    ("watch",),
    ("preview",),
    ("terminal",),
    ("cli",),
    ("__main__",),
)
RANK = {room: rank for rank, rooms in enumerate(ORDER) for room in rooms}

# Only assembling reads what was written; everything above reads what it means. `visible` and `load`
# stand before assembling and hand entries to it.
READERS_OF_ENTRIES = {"garden"}


def room_of(path: Path) -> str:
    """The room a module stands in: its folder in the package, or its own name."""
    return path.relative_to(PACKAGE).with_suffix("").parts[0]


def imports(path: Path) -> set[str]:
    """Every leafmould module the file imports, also inside functions."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            assert node.level == 0, f"{path}: import from where a thing is defined, in full"
            found |= {f"{node.module}.{alias.name}" for alias in node.names}
        elif isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
    return {name for name in found if name.startswith("leafmould.")}


def modules() -> list[Path]:
    """All modules of the package but its face."""
    return sorted(p for p in PACKAGE.rglob("*.py") if p != PACKAGE / "__init__.py")


def test_every_room_has_its_place_in_the_order() -> None:
    assert {room_of(path) for path in modules()} - set(RANK) == set()


def test_imports_point_downwards_only() -> None:
    upward = []
    for path in modules():
        here = room_of(path)
        for name in sorted(imports(path)):
            there = name.split(".")[1]
            if there not in RANK:
                continue  # a name of the package's face, such as __version__
            if there != here and RANK[there] >= RANK[here]:
                upward.append(f"{path.relative_to(PACKAGE)} imports {name}")
    assert upward == []


def test_only_the_garden_reads_entries() -> None:
    outside = [
        f"{path.relative_to(PACKAGE)} imports {name}"
        for path in modules()
        for name in sorted(imports(path))
        if name.startswith("leafmould.notes.entries") and room_of(path) not in READERS_OF_ENTRIES | {"notes"}
    ]
    assert outside == []


def test_no_module_imports_the_package_face_upwards() -> None:
    face = {
        str(path.relative_to(PACKAGE)): sorted(
            name for name in imports(path) if name in {"leafmould.load", "leafmould.Garden"}
        )
        for path in modules()
    }
    assert {path: names for path, names in face.items() if names} == {}
