"""What the first page says can be done today: picked, begun, looked at."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from gardens import garden_of, settings_of
from leafmould.pages.site import make_site
from leafmould.reckon.almanac import almanac
from pages_garden import vocabulary_of


def now(notes: str, on: date) -> Any:
    """The first page of a garden whose last frost is on 9 May and whose first on 6 October."""
    garden = garden_of(notes, on=on)
    settings = settings_of(
        "garden: Tansy Hill\nfrost: {last: 9 May, first: 6 October}\nbeds: [{name: Arch}]\n"
    )
    site = make_site(
        garden, almanac(settings, garden), vocabulary=vocabulary_of(garden), household=True, problems=()
    )
    return next(page.values for page in site.pages if page.address == "index.html")


def names(lines: Any) -> list[str]:
    return [line.name for line in lines]


PEAS = """2026-04-01
- sowed peas in Arch

2026-06-20
- picked 300 g peas from Arch
"""


def test_what_was_picked_lately_can_be_picked() -> None:
    found = now(PEAS, date(2026, 6, 22))
    assert names(found.pick) == ["pea"]
    assert [tag.text for tag in found.pick[0].tags] == [
        "picked once, on 20 June, 2 days ago, 300 g",
        "sown 82 days ago",
    ]
    assert [tag.is_plain for tag in found.pick[0].tags] == [False, True]


def test_after_a_month_without_a_picking_it_is_not_said_any_more() -> None:
    assert names(now(PEAS, date(2026, 7, 20)).pick) == ["pea"]
    assert names(now(PEAS, date(2026, 7, 21)).pick) == []


RADISHES = """2026-05-10
- sowed radishes in Arch
- radishes came up in Arch
"""


def test_what_is_near_and_what_is_overdue_are_two_things() -> None:
    told = []
    for days in range(100):
        found = now(RADISHES, date(2026, 5, 11) + timedelta(days=days))
        told.append([k for k in ("due", "pick", "overdue") if names(getattr(found, k)) == ["radish"]])
    order = [kinds for place, kinds in enumerate(told) if kinds and kinds != told[place - 1]]
    assert order == [["due"], ["overdue"]]  # every day without a picking puts it off by one


def test_what_must_not_be_picked_yet_is_said_and_not_offered() -> None:
    found = now(f"{PEAS}\n2026-06-21\n- spread fresh hen manure on Arch\n", date(2026, 6, 22))
    assert names(found.pick) == []
    assert names(found.waits) == ["pea"]
    assert any(tag.text.startswith("not to be picked before ") for tag in found.waits[0].tags)


def test_what_may_be_begun_is_told_with_its_last_day_the_soonest_first() -> None:
    crops = "2026-04-01\n- sowed peas in Arch\n- sowed French beans in Arch\n- planted 2 tomatoes in Arch\n"
    found = {
        on: [(one.crop.text, one.words) for one in now(crops, on).begin]
        for on in (date(2026, 4, 20), date(2026, 6, 15), date(2026, 12, 1))
    }
    assert found == {
        date(2026, 4, 20): [("pea", "sow until 6 August")],
        date(2026, 6, 15): [
            ("tomato", "set out or plant until 24 June"),
            ("French bean", "sow until 24 July"),
            ("pea", "sow until 6 August"),
        ],
        date(2026, 12, 1): [],
    }
