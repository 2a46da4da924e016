"""What is reckoned for the example garden on four days, for a garden in the south, and day by day for one more: written down whole, read, and kept.

The files are in `tests/cases/reckoned/`, a line for each thing a gardener would be told. A change that was meant is
written with `python tests/reckoned_told.py`, and its difference read.
"""

from __future__ import annotations

from difflib import unified_diff

import pytest

from reckoned_told import FOLDER, NAMES, told


@pytest.mark.parametrize("name", NAMES)
def test_what_is_reckoned_is_what_was_written_down(name: str) -> None:
    kept = (FOLDER / f"{name}.txt").read_text(encoding="utf-8").splitlines()
    now = told(name).splitlines()
    changed = list(unified_diff(kept, now, "written down", "reckoned now", lineterm="", n=0))
    assert not changed, "\n".join(changed[:40])
