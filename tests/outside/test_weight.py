"""What a page weighs before its pictures: for a slow telephone at the far end of a garden.

`tests/benchmarks/weights.py` weighs a garden of 3,000 notes in the same way, and prints the heaviest pages.
"""

from __future__ import annotations

import gzip
from pathlib import Path

import pytest

from leafmould.build import build
from leafmould.pages.addresses import FIND_INDEX
from leafmould.render.environment import layouts_folder
from make_garden import make_garden
from sites import ON

MOST_RAW, MOST_SENT = 300_000, 60_000
MOST_SCRIPT = 15_000


def sent(raw: bytes) -> int:
    """The weight a plain host sends it with."""
    return len(gzip.compress(raw, 6))


@pytest.fixture(scope="module")
def ten_years(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A garden written of three times a week, for ten years."""
    top = tmp_path_factory.mktemp("ten-years")
    make_garden(top / "garden", notes=1000, years=10)
    build(top / "garden", to=top / "site", on=ON, household=True)
    return top / "site"


@pytest.mark.parametrize("site", ["household_folder", "public_folder", "ten_years"])
def test_no_page_is_too_heavy(site: str, request: pytest.FixtureRequest) -> None:
    folder: Path = request.getfixturevalue(site)
    raws = {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*.html")}
    assert len(raws) > 200
    assert {name: len(raw) for name, raw in raws.items() if len(raw) > MOST_RAW} == {}
    assert {name: sent(raw) for name, raw in raws.items() if sent(raw) > MOST_SENT} == {}


MOST_OF_TEXT, MOST_OF_LITTLE = 0.25, 0.30
"""What the index of the search may weigh, to the text of the notes: all bytes of all files under notes/.

In a garden of few notes its names, families and what stood in every bed year by year are a larger part of it.
"""


@pytest.mark.parametrize(
    ("site", "most"), [("household_folder", MOST_OF_LITTLE), ("ten_years", MOST_OF_TEXT)]
)
def test_the_index_is_light_beside_the_text_it_finds(
    site: str, most: float, request: pytest.FixtureRequest
) -> None:
    folder: Path = request.getfixturevalue(site)
    garden = folder.parent / ("garden" if site == "ten_years" else "content")
    text = sum(path.stat().st_size for path in (garden / "notes").rglob("*") if path.is_file())
    assert (folder / FIND_INDEX).stat().st_size / text <= most


def test_all_script_together_is_light() -> None:
    scripts = [path.read_bytes() for path in sorted(layouts_folder().rglob("*.js"))]
    assert scripts
    assert sum(map(sent, scripts)) <= MOST_SCRIPT
