"""Every garden of the case files is understood as the file says: beds, plantings, pickings, events, questions."""

from __future__ import annotations

from pathlib import Path

import pytest

from garden_cases import GardenCase, View, garden_cases

CASES = [(case, view) for case in garden_cases() for view in case.views]


@pytest.mark.parametrize(("case", "view"), CASES, ids=[f"{c.path.stem}-{v.said}" for c, v in CASES])
def test_a_garden_is_understood_as_its_case_says(case: GardenCase, view: View, tmp_path: Path) -> None:
    assert view.shown(case.lay_out(tmp_path)) == view.expected
