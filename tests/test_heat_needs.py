"""Published heat sums up to a harvest, beside what was made since the sowing."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta

import pytest

from leafmould.facts.published import Fact, published
from leafmould.garden.model import Bed, Planting
from leafmould.notes.setting_values import MonthNormal, WeatherDay
from leafmould.notes.settings import CropSetting, Settings
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.heat_needs import HeatNeed, heat_needs
from made_by_hand import NOWHERE, an_almanac, coarse, garden, planting

EVEN = tuple(MonthNormal(month=month, low=14.4, high=14.4) for month in range(1, 13))
"""Ten degrees above the base of peas, day and night, all the year: ten degree days a day."""


def book(on: str, *weather: WeatherDay, units: str = "metric", crops: Iterable[CropSetting] = ()) -> Almanac:
    settings = Settings(months=EVEN, weather=weather, crops=tuple(crops))
    return replace(an_almanac(on, settings), units=units)


def told(one: Planting, almanac: Almanac, kind: str = "bed") -> HeatNeed | None:
    bed = Bed(key="arch", name="Arch", kind=kind)
    return heat_needs(garden(one, on=almanac.on.isoformat(), beds=[bed]), almanac).get(one.id)


def test_heat_made_so_far_and_the_day_it_is_complete() -> None:
    """694 at ten a day: the seventieth day from 1 April on, both counted, is 9 June."""
    need = told(planting("pea", sown="2026-04-01"), book("2026-04-20"))
    assert need == HeatNeed(
        words=(
            "By heat: 694 degree days above 4.4 °C are published up to the harvest (the earliest varieties, from "
            "sowing). 200 are made so far; at the usual warmth they are complete about 9 June"
        ),
        sources=("UDEL-2025",),
    )


def test_measured_days_count_as_measured() -> None:
    """Twenty days of 24.4 °C make twice as much, so that it is complete twenty days sooner."""
    warm = [
        WeatherDay(on=date(2026, 4, 1) + timedelta(days=n), low=24.4, high=24.4, rain=None) for n in range(20)
    ]
    need = told(planting("pea", sown="2026-04-01"), book("2026-04-20", *warm))
    assert need is not None
    assert need.words.endswith("400 are made so far; at the usual warmth they are complete about 20 May")


def test_what_is_complete_is_said_to_be() -> None:
    need = told(planting("pea", sown="2026-04-01"), book("2026-06-20"))
    assert need is not None and need.words.endswith("They were complete on 9 June")


def test_heat_that_is_just_enough_is_enough() -> None:
    """Sixteen days of 43.375 degrees above the base, as no garden has them, are 694 to the last."""
    hot = [
        WeatherDay(on=date(2026, 4, 1) + timedelta(days=n), low=4.4 + 43.375, high=4.4 + 43.375)
        for n in range(16)
    ]
    need = told(planting("pea", sown="2026-04-01"), book("2026-04-20", *hot))
    assert need is not None and need.words.endswith("They were complete on 16 April")


def test_a_range_of_heat_is_a_range_of_days() -> None:
    """Above 10 °C these days make 4.4 each: 972 are complete on the 221st of them, 1,050 on the 239th."""
    need = told(planting("sweet-corn", sown="2026-03-01"), book("2026-03-01"))
    assert need is not None
    assert "972–1,050 degree days above 10 °C are published" in need.words
    first, last = date(2026, 3, 1) + timedelta(days=220), date(2026, 3, 1) + timedelta(days=238)
    assert (first, last) == (date(2026, 10, 7), date(2026, 10, 25))
    assert need.words.endswith("4 are made so far; at the usual warmth they are complete about 7–25 October")


def test_heat_of_which_only_the_least_is_ever_made_tells_nothing() -> None:
    """Four degrees a day above 10 °C: 972 are made in 243 days, 1,050 in none of the 250 that are looked at."""
    cool = tuple(MonthNormal(month=month, low=14.0, high=14.0) for month in range(1, 13))
    one = planting("sweet-corn", sown="2026-03-01")
    assert told(one, an_almanac("2026-03-02", Settings(months=cool))) is None


def test_imperial_gardens_count_in_their_degrees() -> None:
    """1,250 above 40 °F, as the source prints it; twenty days of 18 each."""
    need = told(planting("pea", sown="2026-04-01"), book("2026-04-20", units="imperial"))
    assert need is not None
    assert "1,250 degree days above 40 °F are published" in need.words and "360 are made" in need.words


def test_a_crop_like_another_takes_its_figures() -> None:
    own = CropSetting(name="mystery pod", at=NOWHERE, like="pea")
    one = planting("mystery-pod", sown="2026-04-01")
    assert told(one, book("2026-04-20", crops=[own])) is not None
    assert told(one, book("2026-04-20")) is None


@pytest.mark.parametrize(
    "one",
    [
        planting("pea", sown="2026-04-01", first_picked="2026-04-19"),
        planting("pea", started="2026-03-01", planted="2026-04-01"),
        planting("pea", sown="2026-04-01", planted="2026-04-10"),
        planting("pea", sown="2026-04-01", is_under_cover=True),
        planting("pea", sown=coarse("April 2026", "2026-04-01", "2026-04-30")),
        planting("pea", sown="2026-04-01", ended_on="2026-04-15", end_basis="lost"),
        planting("carrot", sown="2026-04-01"),
        planting("cabbage", sown="2026-04-01"),
    ],
    ids=["picked", "raised", "set out", "covered", "coarse", "ended", "nothing known", "base alone"],
)
def test_of_what_grew_elsewhere_or_is_no_more_waited_for_nothing_is_said(one: Planting) -> None:
    assert told(one, book("2026-04-20")) is None


def test_nor_of_what_grows_under_glass_or_where_no_warmth_is_known() -> None:
    one = planting("pea", sown="2026-04-01")
    assert told(one, book("2026-04-20"), "under glass") is None
    assert told(one, an_almanac("2026-04-20", Settings())) is None


def heat(crop: str) -> Fact:
    (fact,) = [f for f in published(crop) if f.subject == "heat to the first harvest"]
    return fact


def test_published_sums_agree_with_those_that_are_not_loaded() -> None:
    """Set aside: sweet corn ‘Jubilee’, 1,539 °F days from 50 °F to fresh harvest (Oregon State University Extension,
    Scheduling vegetables with degree-day models, 2016), which counts nothing above 86 °F and so comes out lower; twelve
    spring peas, 612–986 °C days (abstract of 2024, "Growing season length and the method of heat units in spring
    vegetable pea production"). Tolerance, written before the run: 15 in 100 below the lower end."""
    corn, pea = heat("sweet-corn"), heat("pea")
    assert corn.low is not None and corn.high is not None and pea.low is not None
    assert corn.low * 0.85 <= 1539 / 1.8 <= corn.high
    assert 612.1 <= pea.low <= 986.3
