"""Notes in lists: on the page of a bed or crop a note begins with what it says of that one."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from gardens import garden_of
from pages_garden import site_of

ON = date(2026, 7, 15)
SEVERAL = "2026-06-20\n- planted 12 leeks in Arch\n- sowed carrots in Top bed\n- sowed kale in Top bed"
ALONE = "2026-06-20\n- sowed carrots in Top bed"


def listed(typed: str, address: str) -> list[str]:
    """The notes listed on a page, as they are read."""
    site = site_of(garden_of(typed, on=ON))
    values: Any = next(page.values for page in site.pages if page.address == address)
    return [note.link.text for note in values.notes]


@pytest.mark.parametrize(
    ("typed", "address", "begins"),
    [
        (SEVERAL, "crops/carrot.html", "sowed carrots in Top bed\u00a0…"),
        (SEVERAL, "beds/top-bed.html", "sowed carrots in Top bed; sowed kale in Top bed\u00a0…"),
        (ALONE, "crops/carrot.html", "sowed carrots in Top bed"),
        (ALONE, "beds/top-bed.html", "sowed carrots in Top bed"),
    ],
)
def test_a_note_begins_with_the_bed_or_crop_whose_page_it_stands_on(
    typed: str, address: str, begins: str
) -> None:
    assert listed(typed, address) == [begins]


def test_what_is_long_is_cut_once() -> None:
    many = "\n".join(f"- sowed row {n} of carrots in Top bed" for n in range(1, 9))
    (begins,) = listed(f"2026-06-20\n{many}\n- planted leeks in Arch", "crops/carrot.html")
    assert begins.startswith("sowed row 1 of carrots in Top bed")
    assert begins.count("…") == 1
