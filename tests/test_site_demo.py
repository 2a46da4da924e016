"""The golden example: `site-demo/` is `content/` built on 15 July 2026: texts byte for byte, pictures by likeness.

Another version of the library that encodes pictures may give other bytes for the same picture.

When it differs, read the difference before accepting it:
leafmould build content --to site-demo --on 2026-07-15
"""

from __future__ import annotations

import filecmp
import shutil
from datetime import date
from pathlib import Path

import pytest
from PIL import Image, ImageChops, ImageStat

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


def listed(folder: Path) -> list[str]:
    """The lines of its own list; those of pictures by their names alone, which encoders write differently."""
    lines = (folder / "made.txt").read_text("utf-8").split("\n")
    return [line.partition("\t")[0] if ".jpg\t" in line else line for line in lines]


def test_the_demo_holds_no_pages_that_lead_on_from_old_addresses() -> None:
    listed = (DEMO / "made.txt").read_text("utf-8")
    assert " > " not in listed, "a page has moved: remove site-demo, then build it afresh"


def test_the_demo_has_the_pages_a_fresh_build_makes(fresh: Path) -> None:
    assert names(DEMO) == names(fresh)


def test_every_text_file_of_the_demo_is_the_same_byte_for_byte(fresh: Path) -> None:
    texts = sorted(name for name in names(fresh) - {"made.txt"} if not name.endswith(".jpg"))
    _, different, unreadable = filecmp.cmpfiles(DEMO, fresh, texts, shallow=False)
    assert (different, unreadable) == ([], [])
    assert listed(DEMO) == listed(fresh)


def test_every_picture_of_the_demo_has_the_same_size_and_looks_the_same(fresh: Path) -> None:
    pictures = sorted(name for name in names(fresh) if name.endswith(".jpg"))
    assert len(pictures) >= 6
    for name in pictures:
        with Image.open(DEMO / name) as kept, Image.open(fresh / name) as made:
            assert made.size == kept.size, name
            far = ImageStat.Stat(ImageChops.difference(made.convert("RGB"), kept.convert("RGB"))).mean
        assert max(far) < 2, name  # of 255; what encoders differ by
