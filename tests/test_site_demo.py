"""The golden example: `site-demo/` is `content/` built on 15 July 2026, byte for byte.

When it differs, read the difference before accepting it:
leafmould build content --to site-demo --on 2026-07-15
"""

from __future__ import annotations

import filecmp
import shutil
from datetime import date
from pathlib import Path

import pytest

from leafmould.build import build

ROOT = Path(__file__).parents[1]
DEMO = ROOT / "site-demo"
ON = date(2026, 7, 15)


@pytest.fixture(scope="module")
def fresh(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example garden, copied without its cache and built anew."""
    garden = tmp_path_factory.mktemp("example") / "content"
    shutil.copytree(ROOT / "content", garden, ignore=shutil.ignore_patterns(".leafmould", "site"))
    site = garden.parent / "site"
    build(garden, to=site, on=ON, household=False)
    return site


def names(folder: Path) -> set[str]:
    """Every file in a folder, by its path inside it."""
    return {p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file()}


def test_the_demo_has_the_pages_a_fresh_build_makes(fresh: Path) -> None:
    assert names(DEMO) == names(fresh)


def test_every_text_file_of_the_demo_is_the_same_byte_for_byte(fresh: Path) -> None:
    _, different, unreadable = filecmp.cmpfiles(DEMO, fresh, sorted(names(fresh)), shallow=False)
    assert (different, unreadable) == ([], [])
