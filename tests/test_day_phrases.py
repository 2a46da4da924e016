"""Days as people say them: feasts, counted back from the note, spelled out."""

from __future__ import annotations

from datetime import date

import pytest

from leafmould.values.dates import resolve_date
from leafmould.values.day_phrases import scan_day
from leafmould.values.feasts import easter
from leafmould.values.when import on

EASTERS = ["1818-03-22", "1961-04-02", "2000-04-23", "2019-04-21", "2024-03-31", "2025-04-20", "2026-04-05", "2027-03-28", "2038-04-25"]  # fmt: skip
"""As printed in almanacs (from memory); 1818 and 2038 are the earliest and latest there can be in their centuries."""


@pytest.mark.parametrize("day", EASTERS)
def test_easter_falls_where_the_almanacs_print_it(day: str) -> None:
    assert easter(int(day[:4])).isoformat() == day


def test_easter_is_a_sunday_between_22_march_and_25_april_in_every_year() -> None:
    for year in range(1800, 2200):
        sunday = easter(year)
        assert sunday.weekday() == 6
        assert date(year, 3, 22) <= sunday <= date(year, 4, 25)


def read(written: str, base: date = date(2026, 6, 21), *, is_southern: bool = False) -> str | None:
    """The days read from the start of a text, and how many letters were taken."""
    found = scan_day(written)
    if found is None:
        return None
    reading = resolve_date(found[0], order="day first", base=on(base), is_southern=is_southern)
    if reading.when is None:
        return reading.fault
    return f"{reading.when.first} {reading.when.last} {found[0].written}"


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("last weekend", "2026-06-13 2026-06-14 last weekend"),  # 21 June 2026 is a Sunday
        ("the weekend", "2026-06-20 2026-06-21 the weekend"),
        ("last month", "2026-05-01 2026-05-31 last month"),
        ("a week ago Tuesday", "2026-06-09 2026-06-09 a week ago Tuesday"),
        ("Good Friday", "2026-04-03 2026-04-03 Good Friday"),
        ("Christmas", "2025-12-24 2025-12-26 Christmas"),
        ("June the tenth", "2026-06-10 2026-06-10 June the tenth"),
        ("Sun was out", None),
        ("sat in the shade", None),
        ("Christmas Lima beans", "2025-12-24 2025-12-26 Christmas"),
        ("Mother's Day", None),
        ("Memorial Day", "2026-05-25 2026-05-25 Memorial Day"),  # the last Monday of May
        ("Remembrance Sunday", "2025-11-09 2025-11-09 Remembrance Sunday"),
        ("Thanksgiving", None),
        ("Mothering Sunday", "2026-03-15 2026-03-15 Mothering Sunday"),
    ],
)
def test_what_is_read_of_a_day(written: str, expected: str | None) -> None:
    assert read(written) == expected


def test_the_weekend_ends_with_the_note_s_day() -> None:
    assert read("the weekend", date(2026, 6, 20)) == "2026-06-20 2026-06-20 the weekend"


def test_a_week_in_the_middle_knows_the_weekend_before() -> None:
    assert read("the weekend", date(2026, 6, 24)) == "2026-06-20 2026-06-21 the weekend"


def test_the_shortest_day_is_in_june_south_of_the_equator() -> None:
    assert read("the shortest day", is_southern=True) == "2026-06-20 2026-06-22 the shortest day"
