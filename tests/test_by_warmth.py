"""The usual warmth in expectations: how it slows what is started outside of spring, and how it has to earn its place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from leafmould.garden.model import Planting
from leafmould.notes.setting_values import MonthNormal, WeatherDay
from leafmould.notes.settings import CropSetting, Settings
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.forecast import expected
from leafmould.reckon.here import Here, forecasts_here
from leafmould.reckon.hindsight import way_scores
from made_by_hand import NOWHERE, an_almanac, garden, packet, planting

COLD_WINTER = Settings(
    months=tuple(
        MonthNormal(month=month, low=mean - 5.0, high=mean + 5.0)
        for month, mean in enumerate((-3.0, -2.0, 2.0, 7.0, 12.0, 15.0, 18.0, 17.0, 13.0, 8.0, 3.0, -1.0), 1)
    )
)
"""The months of a garden with a cold winter, from January on [°C]."""


def book(on: str = "2026-06-20", settings: Settings = COLD_WINTER) -> Almanac:
    return an_almanac(on, settings)


def looked(plantings: Sequence[Planting], settings: Settings = COLD_WINTER, on: str = "2026-06-20") -> Here:
    return forecasts_here(garden(*plantings, on=on), book(on, settings))


def spinach(year: int, days: int, number: int = 0, month: str = "09-15") -> Planting:
    sown = date.fromisoformat(f"{year}-{month}")
    picked = (sown + timedelta(days=days)).isoformat()
    return planting("spinach", sown=sown.isoformat(), first_picked=picked, id=f"s{year}-{number}")


def likely(one: Planting, *, by_warmth: bool) -> int:
    found = expected(one, book("2025-01-01"), by_warmth=by_warmth)
    assert found is not None and found.begun is not None
    return (found.likely - found.begun).days


def test_what_is_sown_in_autumn_waits_for_the_warmth_of_spring_and_what_is_sown_in_spring_does_not() -> None:
    """45 days of spinach from 15 September: some thirty are grown by November, the rest in March and April."""
    autumn, spring = planting("spinach", sown="2025-09-15"), planting("spinach", sown="2025-05-01")
    assert likely(autumn, by_warmth=False) == 45
    assert 60 < likely(autumn, by_warmth=True) < 215
    assert likely(spring, by_warmth=True) == likely(spring, by_warmth=False)


def test_what_is_sown_while_it_is_cold_hardly_grows_until_it_is_warm() -> None:
    early = planting("radish", sown="2025-03-05")
    assert likely(early, by_warmth=True) >= likely(early, by_warmth=False) + 14


@given(
    start=st.dates(date(2000, 1, 1), date(2040, 1, 1)), days=st.integers(1, 400), is_southern=st.booleans()
)
def test_the_dark_months_counted_in_stretches_are_the_same_as_day_by_day(
    start: date, days: int, is_southern: bool
) -> None:
    """From 1 November to 10 February in the north, 1 May to 10 August in the south, a day counts for a quarter."""
    settings = Settings(crops=(CropSetting(name="spinach", at=NOWHERE, days=packet(days, days)),))
    found = expected(
        planting("spinach", sown=start.isoformat()),
        an_almanac(start.isoformat(), settings, is_southern=is_southern),
    )
    grown, on = 0.0, start
    while grown < days:
        dark = (on.month, on.day) >= (11, 1) or (on.month, on.day) <= (2, 10)
        if is_southern:
            dark = (5, 1) <= (on.month, on.day) <= (8, 10)
        grown += 0.25 if dark else 1.0
        on += timedelta(days=1)
    assert found is not None and found.likely == on


def test_tender_crops_and_gardens_without_a_table_are_left_as_they_are() -> None:
    bean, radish = planting("french-bean", sown="2025-08-05"), planting("radish", sown="2025-03-05")
    assert expected(bean, book(), by_warmth=True) == expected(bean, book())
    bare = book(settings=Settings())
    assert expected(radish, bare, by_warmth=True) == expected(radish, bare)


LATE = [spinach(year, 185, number) for year in range(2018, 2024) for number in range(2)]
"""Twelve sowings of September that were picked in March."""


def test_warmth_that_did_clearly_better_is_used_and_said() -> None:
    found = looked([*LATE, planting("spinach", sown="2025-09-15", id="now")], on="2025-10-01")
    assert found.uses_warmth
    basis = found.forecasts["now"].basis
    assert "growth is slowed by the usual cold and dark here" in basis and "nearly stops" not in basis
    assert [score.kind for score in way_scores(found.turned)] == [
        "published days alone",
        "with the dark months",
        "with warmth and light",
        "with this garden's own record",
    ]


def test_seven_plantings_are_too_few_and_a_loss_is_a_loss() -> None:
    assert not looked(LATE[:7]).uses_warmth
    assert not looked([spinach(year, 45, n) for year in range(2018, 2024) for n in range(2)]).uses_warmth


def test_a_garden_without_a_table_of_the_months_has_no_such_way() -> None:
    found = looked(LATE, Settings())
    assert not found.uses_warmth and len(way_scores(found.turned)) == 3


def measured(first: str, days: int, mean: float) -> Settings:
    """The cold winter's garden with so many days measured, all of one mean."""
    start = date.fromisoformat(first)
    rows = (WeatherDay(on=start + timedelta(days=n), low=mean - 5.0, high=mean + 5.0) for n in range(days))
    return replace(COLD_WINTER, weather=tuple(rows))


def spinach_of_autumn(settings: Settings, on: str) -> tuple[date, str]:
    found = expected(planting("spinach", sown="2025-09-15"), book(on, settings), by_warmth=True)
    assert found is not None
    return found.likely, found.basis


def test_measured_days_count_up_to_the_day_and_the_usual_ones_from_then_on() -> None:
    """A warm September and October grow all 45 days; a frosty one grows a tenth of each, and spring must do the rest."""
    usual, said = spinach_of_autumn(COLD_WINTER, "2025-10-31")
    assert "as measured" not in said
    warm, _ = spinach_of_autumn(measured("2025-09-15", 46, 15.0), "2025-10-31")
    cold, why = spinach_of_autumn(measured("2025-09-15", 46, 0.0), "2025-10-31")
    assert warm == date(2025, 9, 15) + timedelta(days=45) < usual < cold
    assert "slowed by the cold here, as measured so far and as usual from then on, and by the dark" in why


def test_what_was_measured_after_the_day_is_not_known_on_it() -> None:
    settings = measured("2025-09-20", 41, 0.0)
    assert spinach_of_autumn(settings, "2025-09-19") == spinach_of_autumn(COLD_WINTER, "2025-09-19")


def test_looking_back_knows_no_weather_that_came_after_the_sowing() -> None:
    with_table = looked(LATE, measured("2018-09-15", 2200, 0.0)).turned
    assert [t.warm for t in with_table] == [t.warm for t in looked(LATE).turned]


def test_the_expectation_of_a_garden_with_a_table_of_weather_goes_by_it_once_warmth_has_earned_its_place() -> (
    None
):
    now = planting("spinach", sown="2025-09-15", id="now")
    plain = looked([*LATE, now], on="2025-11-10").forecasts["now"]
    cold = looked([*LATE, now], measured("2025-09-15", 56, 0.0), on="2025-11-10").forecasts["now"]
    assert cold.likely > plain.likely
