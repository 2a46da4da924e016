"""Frosts, dark weeks and sowing windows: from dates in garden.yaml, notes as typed and published figures."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from statistics import median_low

import pytest

from gardens import TANSY_HILL, garden_of, settings_of
from leafmould.facts.tables import days_facts
from leafmould.garden.frosts import noted_frosts
from leafmould.garden.model import Garden
from leafmould.notes.setting_values import MonthNormal, WeatherDay
from leafmould.notes.settings import Settings
from leafmould.reckon.almanac import Almanac, almanac
from leafmould.reckon.season_here import dark_by_month, dark_weeks, frost_lines
from leafmould.reckon.warmth import Warmth
from leafmould.reckon.windows import windows
from leafmould.values.wording import day
from made_by_hand import packet

HERE = replace(Almanac(on=date(2026, 7, 15)), last_frost=(5, 9), first_frost=(10, 6), latitude=44.0)


def shown(crop: str, here: Almanac = HERE) -> dict[str, str]:
    return {w.kind: w.words for w in windows(crop, here, 2027)}


# Published planting dates of places with known frosts. Montana State University Extension, Can I Grow That Here?,
# MontGuide MT199308AG, 2018, works an example for snap bean: planted a week before the last frost. University of
# Illinois Extension 2017 and 2019: very hardy crops four to six weeks before the average last frost, frost-tolerant
# ones two to three. Of one source each: a check that the day is reckoned rightly, not of the source.
@pytest.mark.parametrize(
    ("crop", "words"),
    [
        ("pea", "28 March – 11 April"),
        ("spinach", "28 March – 11 April"),
        ("carrot", "18–25 April"),
        ("beetroot", "18–25 April"),
        ("french-bean", "2–9 May"),
        ("tomato", "from 9 May"),
        ("sweet-pepper", "16–23 May"),
    ],
)
def test_days_from_the_last_frost(crop: str, words: str) -> None:
    assert shown(crop)["sow or set out"] == words


def test_weeks_indoors_count_back_from_the_first_day_out() -> None:
    assert shown("tomato")["start indoors"] == "28 March – 4 April"


def test_a_tender_crop_is_over_before_the_first_frost_and_a_hardy_one_four_weeks_after() -> None:
    assert shown("french-bean")["last useful sowing"] == "until 24 July"
    assert shown("beetroot")["last useful sowing"] == "until 16 August"


def test_raised_plants_have_a_last_day_to_be_set_out() -> None:
    """Days from planting out, the longer end of the middle source, and a fortnight: before frost, or four weeks after."""
    days = {
        crop: median_low([d.high for d in days_facts(crop) if d.counts_from == "planting out"])
        for crop in ("tomato", "cabbage")
    }
    frost = date(2027, 10, 6)
    tender, hardy = (
        frost - timedelta(days=days["tomato"] + 14),
        frost + timedelta(days=28 - days["cabbage"] - 14),
    )
    assert shown("tomato")["last setting out"] == f"until {day(tender).removesuffix(' 2027')}"
    assert shown("cabbage")["last setting out"] == f"until {day(hardy).removesuffix(' 2027')}"
    assert "last setting out" not in shown("carrot")


def test_a_season_that_ends_before_it_begins_is_too_short() -> None:
    (last,) = [w for w in windows("sweet-potato", HERE, 2027) if w.kind == "last setting out"]
    assert last.words == "the season is too short"
    assert last.why == (
        "150 days, and 14 more in autumn, before the first frost (6 October): that would be until 25 April"
    )
    assert [(u.cover, u.words) for u in last.covered] == [
        ("fleece", "until 9 May"),
        ("glass", "until 23 May"),
    ]


@pytest.mark.parametrize(("days", "words"), [(143, "until 2 May"), (144, "the season is too short")])
def test_a_season_of_one_day_is_no_season_too_short(days: int, words: str) -> None:
    """Out from 2 May, a week before the last frost; 143 days and a fortnight before 6 October are 2 May too."""
    book = replace(HERE, packet_by_crop={"french-bean": packet(days, days)})
    assert shown("french-bean", book)["last useful sowing"] == words


def test_where_frost_comes_late_the_light_closes_the_season_and_is_told_to_the_week_only() -> None:
    mild = replace(HERE, last_frost=(3, 25), first_frost=(11, 15), latitude=51.0)
    assert shown("beetroot", mild)["last useful sowing"] == "until about 6–12 September"


def test_the_south_has_its_spring_in_october() -> None:
    south = replace(HERE, is_southern=True, last_frost=(10, 15), first_frost=(5, 1), latitude=-42.0)
    found = {w.kind: (w.first, w.words) for w in windows("french-bean", south, 2026)}
    assert found["sow or set out"] == (date(2026, 10, 8), "8–15 October")
    assert found["last useful sowing"] == (date(2027, 2, 16), "until 16 February")


@pytest.mark.parametrize(
    ("last", "first", "frost"),
    [
        ((10, 15), (7, 5), date(2027, 7, 5)),  # the south, where it hardly freezes
        ((2, 20), (1, 5), date(2027, 1, 5)),  # the north, where it hardly freezes
        ((5, 9), (10, 6), date(2026, 10, 6)),
    ],
)
def test_the_first_frost_is_the_one_after_the_last(
    last: tuple[int, int], first: tuple[int, int], frost: date
) -> None:
    """French beans: 60 days at the longer end of the middle source, and a fortnight."""
    here = replace(HERE, is_southern=last[0] > 6, last_frost=last, first_frost=first, latitude=None)
    (end,) = [w for w in windows("french-bean", here, 2026) if w.kind == "last useful sowing"]
    assert end.last == frost - timedelta(days=74)


def test_a_leap_day_is_the_day_before_it_in_other_years() -> None:
    assert shown("tomato", replace(HERE, last_frost=(2, 29)))["sow or set out"] == "from 28 February"
    assert shown("tomato", replace(HERE, last_frost=(3, 31)))["sow or set out"] == "from 31 March"


def test_how_a_crop_is_begun_is_told() -> None:
    found = {
        crop: [w.how for w in windows(crop, HERE, 2027) if w.kind == "sow or set out"]
        for crop in ("potato", "cabbage", "carrot", "lettuce")
    }
    assert found == {
        "potato": ["plant"],
        "cabbage": ["set out"],
        "carrot": ["sow"],
        "lettuce": ["sow or set out"],
    }
    (indoors,) = [w for w in windows("tomato", HERE, 2027) if w.kind == "start indoors"]
    assert indoors.why == "5–6 weeks before they may go out"


def test_common_days_are_those_of_the_start_that_is_asked_for() -> None:
    """Florence fennel: 75–115 days from sowing, 50–90 from planting out; common practice, no source. Of both the middle."""
    found = {w.kind: w.why for w in windows("florence-fennel", HERE, 2027)}
    assert found["last useful sowing"].startswith("95 days (common practice, no source)")
    assert found["last setting out"].startswith("70 days (common practice, no source)")


def test_packet_days_come_before_published_ones() -> None:
    yaml = "garden: G\nfrost: {last: 9 May, first: 6 October}\nbeds: [Arch]"
    settings = settings_of(yaml, crops_yaml="French bean: {days: 80, from: sowing}")
    garden = garden_of("2026-06-01\n- sowed French beans in Arch", settings, on=date(2026, 7, 15))
    assert shown("french-bean", almanac(settings, garden))["last useful sowing"] == "until 4 July"


@pytest.mark.parametrize("crop", ["apple", "rhubarb", "a-crop-of-my-own"])
def test_nothing_is_said_of_what_stays_or_is_not_known(crop: str) -> None:
    assert shown(crop) == {}


def test_without_frost_dates_nothing_is_reckoned() -> None:
    assert shown("tomato", replace(HERE, last_frost=None, first_frost=None)) == {}


# --- common practice, no source ------------------------------------------------------------------------


def test_a_crop_of_which_nothing_is_published_goes_by_common_practice_and_says_so() -> None:
    """The bounds are common practice, no source; three weeks are the same everywhere."""
    (bean, last) = windows("runner-bean", HERE, 2027)
    assert (bean.words, bean.how, bean.sources) == ("16–30 May", "sow", ())
    assert bean.why == "1–3 weeks after the last frost (9 May); common practice, no source"
    assert last.why == (
        "85 days (common practice, no source), and 14 more in autumn, before the first frost (6 October)"
    )
    leek = {w.kind: (w.how, w.words) for w in windows("leek", HERE, 2027)}
    assert leek == {
        "start indoors": ("", "31 January – 28 February"),
        "sow or set out": ("set out", "25 April – 20 June"),
    }


def test_published_days_come_before_common_practice() -> None:
    (out,) = [w for w in windows("french-bean", HERE, 2027) if w.kind == "sow or set out"]
    assert out.sources and "common practice" not in out.why


@pytest.mark.parametrize("crop", ["mushroom", "microgreens", "purple-sprouting-broccoli", "sunflower"])
def test_what_the_general_rule_does_not_fit_gets_no_day(crop: str) -> None:
    assert "sow or set out" not in shown(crop)


# --- in autumn, for next year --------------------------------------------------------------------------


def in_autumn(crop: str, here: Almanac = HERE) -> tuple[str, str, str] | None:
    found = [w for w in windows(crop, here, 2027) if w.kind == "in autumn, for next year"]
    return (found[0].how, found[0].words, found[0].why) if found else None


def months(coldest: float) -> Warmth:
    lows = [coldest, coldest + 1, 0, 3, 6, 10, 12, 11, 8, 4, 1, coldest + 1]
    return Warmth([MonthNormal(month=n, low=low, high=low + 9) for n, low in enumerate(lows, start=1)], ())


def test_garlic_goes_in_around_the_first_frost_for_the_year_after() -> None:
    assert in_autumn("garlic") == (
        "plant",
        "22 September – 10 November",
        "from 2 weeks before to 5 weeks after the first frost (6 October); common practice, no source",
    )


def test_broad_beans_and_sets_go_in_where_the_winter_is_mild() -> None:
    """Without a table of the months the condition is told instead of judged."""
    said = in_autumn("broad-bean")
    assert said is not None and ", where winters are mild;" in said[2]
    assert in_autumn("broad-bean", replace(HERE, warmth=months(1.0))) == (
        "sow",
        "29 September – 3 November",
        "from 1 week before to 4 weeks after the first frost (6 October); common practice, no source",
    )
    assert in_autumn("onion", replace(HERE, warmth=months(-6.0))) == (
        "plant sets",
        "8 September – 20 October",
        "from 4 weeks before to 2 weeks after the first frost (6 October); common practice, no source",
    )


def test_where_the_winter_is_too_cold_that_is_told_instead_of_days() -> None:
    cold = replace(HERE, warmth=months(-6.0))
    assert in_autumn("broad-bean", cold) == (
        "sow",
        "the winter is too cold in the open",
        "lows of the coldest month are usually under −5 °C here: under cover only; common practice, no source",
    )
    assert in_autumn("garlic", replace(HERE, warmth=months(-20.0))) == in_autumn("garlic")
    just = in_autumn("broad-bean", replace(HERE, warmth=months(-5.0)))
    assert just is not None and just[1] == "29 September – 3 November"


def test_nothing_stands_over_a_winter_where_there_is_none_or_its_first_frost_is_not_known() -> None:
    assert in_autumn("garlic", replace(HERE, has_winter=False)) is None
    assert in_autumn("garlic", replace(HERE, first_frost=None)) is None
    assert in_autumn("tomato") is None


def test_autumn_comes_in_the_year_after_in_the_south() -> None:
    south = replace(HERE, is_southern=True, last_frost=(10, 15), first_frost=(5, 1), latitude=-42.0)
    (found,) = [w for w in windows("garlic", south, 2026) if w.kind == "in autumn, for next year"]
    assert (found.first, found.last) == (date(2027, 4, 17), date(2027, 6, 5))


# --- frosts as noted -----------------------------------------------------------------------------------


def said(notes: str, settings: Settings = TANSY_HILL) -> list[str]:
    garden: Garden = garden_of(notes, settings)
    return [line.words for line in frost_lines(garden, almanac(settings, garden))]


def test_frosts_as_written_and_as_noted_stand_side_by_side() -> None:
    notes = """
        2024-05-18
        - frost −1
        2025-05-02
        - frost −3
        2025-05-26
        - frost −1
        2025-09-20
        - frost
        """
    assert said(notes) == [
        "22 May on average, as set down for this garden. Noted here: 18 May to 26 May, in 2 years.",
        "25 September on average, as set down for this garden. Noted here: 20 September, in 1 year.",
    ]


def test_notes_that_differ_much_from_the_average_are_told() -> None:
    notes = "\n".join(f"{year}-06-0{year - 2022}\n- frost −1" for year in (2023, 2024, 2025))
    assert said(notes)[0] == (
        "22 May on average, as set down for this garden. Noted here: 1 June to 3 June, in 3 years. "
        "That is 11 days later in the middle of the years: the later date is the one to go by until the average is set down anew."
    )


def last_frosts(notes: str, on: str, *weather: WeatherDay) -> list[str]:
    """The last frosts of spring as they are known on a day."""
    garden = garden_of(notes, replace(TANSY_HILL, weather=weather), on=date.fromisoformat(on))
    spring, _ = noted_frosts(garden, weather)
    return [frost.day.isoformat() for frost in spring]


def test_a_night_at_freezing_was_one_of_frost_and_one_above_or_not_measured_was_none() -> None:
    nights = [
        (date(2025, 5, 1), -2.0),
        (date(2025, 5, 3), 0.0),
        (date(2025, 5, 5), 0.5),
        (date(2025, 5, 7), None),
    ]
    rows = [WeatherDay(on=day, low=low) for day, low in nights]
    assert last_frosts("2025-08-01\n- sowed kale in Arch", "2025-12-01", *rows) == ["2025-05-03"]


def test_other_weather_is_no_frost() -> None:
    notes = "2025-05-01\n- frost −1\n2025-06-10\n- rain 12 mm"
    assert last_frosts(notes, "2025-12-01") == ["2025-05-01"]


def test_a_spring_is_over_thirty_days_after_its_frost() -> None:
    notes = "2025-05-01\n- frost −1"
    assert last_frosts(notes, "2025-05-30") == []
    assert last_frosts(notes, "2025-05-31") == ["2025-05-01"]


def test_from_midsummer_on_a_frost_is_one_of_autumn() -> None:
    notes = "2025-06-30\n- frost −1\n2025-07-01\n- frost −1"
    spring, autumn = noted_frosts(garden_of(notes), ())
    assert [frost.day for frost in (*spring, *autumn)] == [date(2025, 6, 30), date(2025, 7, 1)]
    assert len(spring) == len(autumn) == 1


@pytest.mark.parametrize(("first", "is_told"), [(1, True), (31, False)])
def test_ten_days_between_notes_and_average_are_told_and_nine_are_not(first: int, is_told: bool) -> None:
    """The average is 22 May; the frosts of three years lie on 1 June or on 31 May."""
    day = f"0{6 if first == 1 else 5}-{first:02}"
    words = said("\n".join(f"{year}-{day}\n- frost −1" for year in (2023, 2024, 2025)))[0]
    assert ("10 days later in the middle of the years" in words) is is_told


def test_no_frost_noted_is_not_taken_for_none() -> None:
    assert said("2026-05-01\n- sowed peas in Arch")[0] == "22 May on average, as set down for this garden."


def test_the_dark_weeks_are_those_of_the_winter_to_come_or_going_on() -> None:
    coming = dark_weeks(HERE)
    assert coming is not None
    assert (coming.first, coming.last) == (date(2026, 11, 7), date(2027, 2, 4))
    going_on = dark_weeks(replace(HERE, on=date(2027, 1, 10)))
    assert going_on == coming
    assert dark_weeks(replace(HERE, latitude=10.0)) is None


def test_weeks_under_ten_hours_are_rounded_month_by_month() -> None:
    """At 44 degrees from 7 November to 3 February (ephem and astral): 24 days of November are 3 weeks, 31 are 4.

    At 40 degrees south from 13 May to 30 July: 19, 30 and 30 days.
    """
    assert dark_by_month(HERE) == (4, 0, 0, 0, 0, 0, 0, 0, 0, 0, 3, 4)
    assert dark_by_month(replace(HERE, latitude=-40.0)) == (0, 0, 0, 0, 3, 4, 4, 0, 0, 0, 0, 0)
    assert dark_by_month(replace(HERE, latitude=10.0)) == ()
    assert dark_by_month(replace(HERE, latitude=None)) == ()


@pytest.mark.parametrize(
    ("latitude", "has_winter"), [("30", True), ("29.9", False), ("-30", True), ("-29.9", False), ("60", True)]
)
def test_short_days_stop_growth_from_the_thirtieth_degree_on(latitude: str, has_winter: bool) -> None:
    settings = settings_of(f"garden: G\nplace: {{latitude: {latitude}}}\nbeds: [Arch]\n")
    assert almanac(settings, garden_of({}, settings)).has_winter is has_winter
