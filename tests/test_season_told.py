"""What a season's page tells first: firsts and lasts, best and worst, from days and what was done on them."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from gardens import garden_of, settings_of
from leafmould.garden.queries import Past
from leafmould.reckon.season_told import Mark, Seasons
from pages_garden import site_of

SOUTH = settings_of("garden: Low Paddock\nplace: {latitude: -43.5}\nbeds: [Arch]\n")


def told(found: tuple[Mark, ...]) -> list[str]:
    return [f"{m.day:%Y-%m-%d} {m.what} {' '.join(m.crops)} {m.beside}".strip() for m in found]


THREE_YEARS = """
    2024-03-02
    - sowed carrots in Arch
    2024-07-10
    - picked 2 kg carrots from Arch
    2024-07-20
    - picked 1 kg peas from Long border
    2025-03-10
    - sowed carrots in Arch
    2025-07-01
    - picked 3 kg carrots from Arch
    2025-07-21
    - picked 900 g peas from Long border
    2026-02-20
    - frost -4
    2026-03-01
    - started leeks
    2026-03-05
    - sowed carrots in Arch
    2026-05-11
    - frost -1
    2026-07-12
    - picked 6 kg carrots from Arch
    2026-07-14
    - picked 100 g peas from Long border
    2026-08-02
    - sowed spinach in Arch
    2026-10-09
    - frost -2
    2026-11-20
    - picked 1 kg carrots from Arch
    """


def test_firsts_and_lasts_of_a_season_in_the_order_of_days() -> None:
    past = Seasons(Past(garden_of(THREE_YEARS, on=date(2027, 1, 5))))
    assert told(past.marks(2026)) == [
        "2026-03-01 first sowing leek",
        "2026-05-11 last frost of spring",
        "2026-07-12 first picking carrot",
        "2026-08-02 last sowing spinach",
        "2026-10-09 first frost of autumn",
        "2026-11-20 last picking carrot",
    ]


def test_a_season_that_lasts_has_no_last_picking_and_in_spring_no_last_frost() -> None:
    past = Seasons(Past(garden_of(THREE_YEARS, on=date(2026, 6, 1))))
    assert told(past.marks(2026)) == ["2026-03-01 first sowing leek", "2026-03-05 last sowing carrot"]
    past = Seasons(Past(garden_of(THREE_YEARS, on=date(2026, 7, 13))))
    assert told(past.marks(2026))[1:] == [
        "2026-03-05 last sowing carrot",
        "2026-05-11 last frost of spring",
        "2026-07-12 first picking carrot",
    ]


def test_first_pickings_are_compared_with_the_season_before_that_had_one() -> None:
    past = Seasons(Past(garden_of(THREE_YEARS, on=date(2027, 1, 5))))
    assert told(past.first_pickings(2026)) == [
        "2026-07-12 first picked carrot 11 days later than in 2025",
        "2026-07-14 first picked pea 7 days earlier than in 2025",
    ]
    assert told(past.first_pickings(2025)) == ["2025-07-01 first picked carrot 9 days earlier than in 2024"]
    assert past.first_pickings(2024) == ()


def test_a_leap_day_makes_no_day_of_difference() -> None:
    """29 February 2024 lies before the first, none before the second: 5 to 10 March is five days in both."""
    typed = "2023-03-05\n- picked 1 kg leeks from Arch\n2024-03-10\n- picked 1 kg leeks from Arch"
    past = Seasons(Past(garden_of(typed)))
    assert told(past.first_pickings(2024)) == ["2024-03-10 first picked leek 5 days later than in 2023"]


def test_far_apart_or_almost_the_same_is_not_compared() -> None:
    """A kale of the winter and one of the summer are two sowings; four days are no news."""
    typed = """
        2024-02-03
        - picked 1 kg kale from Arch
        2024-07-01
        - picked 1 kg peas from Arch
        2025-07-05
        - picked 1 kg peas from Arch
        2025-10-03
        - picked 1 kg kale from Arch
        """
    assert Seasons(Past(garden_of(typed))).first_pickings(2025) == ()


def test_best_and_worst_are_told_beside_the_other_seasons() -> None:
    past = Seasons(Past(garden_of(THREE_YEARS, on=date(2027, 1, 5))))
    assert [(h.crop, h.grams, h.middle_g, h.seasons) for h in past.best(2026)] == [("carrot", 7000, 2500, 3)]
    assert [(h.crop, h.grams, h.middle_g, h.seasons) for h in past.worst(2026)] == [("pea", 100, 950, 3)]
    assert past.best(2025) == ()  # 3 kg of carrots are less than 7
    assert [(h.crop, h.grams, h.middle_g) for h in past.worst(2024)] == [("carrot", 2000, 5000)]


@pytest.mark.parametrize(
    ("grams", "best", "worst"),
    [("1250 g", ["pea"], []), ("1240 g", [], []), ("810 g", [], []), ("800 g", [], ["pea"])],
)
def test_a_quarter_more_is_the_least_that_makes_a_best_and_a_worst(
    grams: str, best: list[str], worst: list[str]
) -> None:
    """Beside two seasons of a kilogram: 1,250 g is a quarter more, and a kilogram is a quarter more than 800 g."""
    typed = "\n".join(
        f"{year}-07-01\n- picked {weight} peas from Arch"
        for year, weight in ((2023, "1 kg"), (2024, "1 kg"), (2025, grams))
    )
    past = Seasons(Past(garden_of(typed, on=date(2026, 7, 1))))
    assert [h.crop for h in past.best(2025)] == best
    assert [h.crop for h in past.worst(2025)] == worst


def test_a_season_that_lasts_is_nothing_s_worst() -> None:
    past = Seasons(Past(garden_of(THREE_YEARS, on=date(2026, 12, 1))))
    assert past.worst(2026) == ()
    assert [h.crop for h in past.best(2026)] == ["carrot"]


def test_what_was_not_weighed_or_was_shared_makes_no_best() -> None:
    typed = """
        2023-07-01
        - picked 1 kg peas from Arch
        2024-07-01
        - picked 1 kg peas from Arch
        2025-07-01
        - picked 9 kg peas from Arch
        2025-07-08
        - picked peas from Arch
        """
    assert Seasons(Past(garden_of(typed))).best(2025) == ()
    shared = typed.replace("picked peas", "picked 3 kg peas and carrots")
    assert Seasons(Past(garden_of(shared))).best(2025) == ()


def test_a_season_in_the_south_runs_over_the_new_year() -> None:
    typed = """
        2024-09-10
        - frost -1
        - sowed peas in Arch
        2025-01-05
        - picked 1 kg peas from Arch
        2025-05-20
        - frost -2
        2025-09-01
        - sowed peas in Arch
        2026-01-20
        - picked 1 kg peas from Arch
        """
    past = Seasons(Past(garden_of(typed, SOUTH, on=date(2026, 7, 15))))
    assert told(past.marks(2024)) == [
        "2024-09-10 first sowing pea",
        "2024-09-10 last frost of spring",
        "2025-01-05 first picking pea",
        "2025-05-20 first frost of autumn",
    ]
    assert told(past.first_pickings(2025)) == ["2026-01-20 first picked pea 15 days later than in 2024/25"]


def season(notes: str, year: int, on: date) -> Any:
    site = site_of(garden_of(notes, on=on))
    return next(page.values for page in site.pages if page.address == f"seasons/{year}.html")


SOWN_IN_TWO_YEARS = """
    2025-04-01
    - sowed peas in Arch
    2025-08-01
    - sowed spinach in Arch
    2026-04-01
    - sowed peas in Arch
    2026-04-12
    - sowed carrots in Arch
    """


def test_the_last_sowing_of_a_season_that_goes_on_is_the_last_so_far() -> None:
    found = {
        year: [mark.what for mark in season(SOWN_IN_TWO_YEARS, year, date(2026, 7, 15)).marks]
        for year in (2025, 2026)
    }
    assert found == {2025: ["first sowing", "last sowing"], 2026: ["first sowing", "last sowing so far"]}
    assert season(SOWN_IN_TWO_YEARS, 2026, date(2026, 7, 15)).is_running
    assert not season(SOWN_IN_TWO_YEARS, 2026, date(2026, 12, 31)).is_running


def test_a_sum_of_which_a_part_is_estimated_says_about() -> None:
    notes = "2026-06-01\n- picked 1 kg peas from Arch\n- picked about 2 kg carrots from Arch"
    (weighed,) = season(notes, 2026, date(2026, 7, 15)).weighed
    assert (weighed.text, weighed.is_estimated) == ("about 3 kg", False)


def test_a_month_that_gave_next_to_nothing_has_no_bar() -> None:
    notes = "2026-06-01\n- picked 100 g peas from Arch\n2026-07-01\n- picked 9 kg carrots from Arch"
    assert [month.bar for month in season(notes, 2026, date(2026, 7, 15)).months] == [0, 100]
