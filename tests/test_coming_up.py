"""When seedlings should show: by the soil's warmth as noted, by the usual warmth, by the garden's own sowings."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardens import TANSY_HILL, garden_of
from leafmould.facts.published import published
from leafmould.facts.tables import crops
from leafmould.garden.model import Garden
from leafmould.pages.site import reckon
from leafmould.reckon.almanac import almanac
from leafmould.reckon.coming_up import Usual, coming_up, days_at
from leafmould.reckon.soil_warmth import noted_warmth
from pages_garden import site_of

APRIL = date(2026, 4, 20)


def told(notes: str | dict[str, str], on: date = APRIL, usual: Usual | None = None) -> list[str]:
    """What is waited for, in one line each: the planting, its days, and why."""
    garden = garden_of(notes, on=on)
    found = coming_up(garden, almanac(TANSY_HILL, garden), usual)
    return [f"{key}: {up.first:%d.%m.}–{up.last:%d.%m.} {up.basis}" for key, up in found.items()]


def badges_of(notes: str, on: date) -> list[str]:
    garden: Garden = garden_of(notes, on=on)
    shown = reckon(garden, almanac(TANSY_HILL, garden)).badges
    return [badge.text for badges in shown.values() for badge in badges]


# University of California, Santa Cruz, after Harrington and Minges 1954: beet, 17 days at 10 °C, 10 at 15 °C.
def test_days_lie_on_the_published_figures_and_between_them_in_the_middle_of_the_speeds() -> None:
    assert days_at("beetroot", 10) == pytest.approx(17)
    assert days_at("beetroot", 15) == pytest.approx(10)
    assert days_at("beetroot", 12.5) == pytest.approx(2 / (1 / 17 + 1 / 10))


def test_in_soil_too_cold_or_outside_the_table_no_days_are_told() -> None:
    assert days_at("french-bean", 10) is None  # "none came up" in the table
    assert days_at("beetroot", 0) is None  # not tested
    assert days_at("dahlia", 15) is None


def test_soil_noted_beside_the_sowing_tells_the_days() -> None:
    # 17 days at 10 °C; 0.8 and 1.5 of them: common practice
    assert told("2026-04-12\n- sowed beetroot in Arch, soil 10 °C") == [
        "beetroot_arch_2026-04-12: 25.04.–08.05. about 17 days in soil of 10 °C, as noted; sown 12 April 2026"
    ]


@pytest.mark.parametrize(
    "line",
    [
        "soil 10 °C in Arch",
        "soil temperature in Arch was 10 °C",
        "tested soil in Arch: 10 °C",
        "the soil in Arch 50 F",
    ],
)
def test_soil_noted_for_its_bed_within_days_tells_them_too(line: str) -> None:
    (found,) = told(f"2026-04-10\n- {line}\n2026-04-12\n- sowed beetroot in Arch")
    assert "about 17 days in soil of 10 °C, as noted" in found


@pytest.mark.parametrize(
    "line", ["soil 10 °C in Top bed", "low of 10 °C", "sowed peas in Arch, 10 °C", "soil 95 °C in Arch"]
)
def test_soil_of_another_bed_air_and_slips_of_the_pen_do_not(line: str) -> None:
    found = told(f"2026-04-12\n- {line}\n- sowed beetroot in Arch")
    assert any("6–17 days in soil of 20–10 °C; how warm it was is not noted" in one for one in found)


def test_soil_told_in_the_words_of_a_note_counts() -> None:
    note = """
        ---
        date: 2026-04-12
        bed: Long border
        crop: beetroot
        did: sowed
        ---
        Two rows along the south half, soil 9 °C at breakfast.
        """
    (found,) = told({"2026-04-12.md": note})
    assert "days in soil of 9 °C, as noted" in found


def test_the_usual_warmth_of_the_weeks_serves_where_nothing_is_noted_and_is_said_to_be_rough() -> None:
    (found,) = told("2026-04-12\n- sowed beetroot in Arch", usual=lambda _: 12.0)
    # 15 °C: 10 days; 9 °C lies between 42 days at 5 °C and 17 at 10 °C, by the speeds 19.4
    assert found == (
        "beetroot_arch_2026-04-12: 22.04.–02.05. 10–20 days in the usual warmth of these weeks, which is a rough"
        " guide; sown 12 April 2026"
    )


def test_soil_that_warms_brings_seedlings_sooner_than_soil_that_stays_cold() -> None:
    def warming(day: date) -> float:
        return 10 + 0.5 * (day - date(2026, 4, 12)).days

    def last(usual: Usual) -> date:
        garden = garden_of("2026-04-12\n- sowed beetroot in Arch", on=APRIL)
        return coming_up(garden, almanac(TANSY_HILL, garden), usual)["beetroot_arch_2026-04-12"].last

    assert last(warming) < last(lambda _: 10.0)


def test_a_gardens_own_sowings_serve_where_nothing_is_published() -> None:
    notes = "2025-04-10\n- sowed phacelia in Arch\n2025-04-20\n- phacelia up\n2026-04-12\n- sowed phacelia in Top bed"
    (found,) = told(notes)
    assert found == "phacelia_top-bed_2026-04-12: 20.04.–27.04. sowings here took 10 days; sown 12 April 2026"
    assert told("2026-04-12\n- sowed phacelia in Top bed") == []


def test_seed_under_glass_is_not_judged_by_the_soil_outside() -> None:
    (found,) = told("2026-03-21\n- started 12 tomato 'Stupice'", date(2026, 3, 25), usual=lambda _: 3.0)
    assert "days in soil of 25–15 °C; how warm it was is not noted" in found


@pytest.mark.parametrize("place", ["Cold frame", "Arch, under cover"])
def test_a_bed_under_glass_is_not_judged_by_the_weather_but_by_its_own_soil(place: str) -> None:
    (found,) = told(f"2026-03-21\n- sowed radishes in {place}", date(2026, 3, 25), usual=lambda _: 3.0)
    assert "days in soil of 25–15 °C; how warm it was is not noted" in found
    (found,) = told(f"2026-03-21\n- sowed radishes in {place}, soil 10 °C", date(2026, 3, 25))
    assert "days in soil of 10 °C, as noted" in found


@pytest.mark.parametrize(
    "line",
    ["beetroot up in Arch", "thinned beetroot in Arch", "picked 3 beetroot from Arch", "cleared beetroot from Arch",
     "lost beetroot in Arch, slugs"],
)  # fmt: skip
def test_once_they_are_seen_used_or_gone_nothing_is_waited_for(line: str) -> None:
    assert told(f"2026-04-01\n- sowed beetroot in Arch\n2026-04-18\n- {line}") == []


SOWN = "2026-04-12\n- sowed beetroot in Arch, soil 10 °C"


@pytest.mark.parametrize(
    ("on", "label"),
    [
        (date(2026, 4, 20), "seedlings about 25 April – 8 May"),
        (date(2026, 5, 8), "seedlings about 25 April – 8 May"),
        (date(2026, 5, 9), "not seen up by 8 May: look"),
        (date(2026, 5, 29), "not seen up by 8 May: look"),
        (date(2026, 5, 30), None),
    ],
)
def test_a_planting_wears_its_wait_then_asks_to_be_looked_at_then_is_left_alone(
    on: date, label: str | None
) -> None:
    shown = [text for text in badges_of(SOWN, on) if text.startswith(("seedlings", "not seen"))]
    assert shown == ([label] if label else [])


TABLED = sorted(key for key in crops() if any(f.subject.startswith("comes up at") for f in published(key)))


@given(crop=st.sampled_from(TABLED), celsius=st.floats(0, 40), day=st.integers(0, 60))
def test_seedlings_are_never_expected_before_their_sowing(crop: str, celsius: float, day: int) -> None:
    days = days_at(crop, celsius)
    assert days is None or 1 <= days <= 120
    name = crops()[crop].name
    on = date(2026, 4, 1) + timedelta(days=day)
    garden = garden_of(f"2026-04-01\n- sowed {name} in Arch", on=on)
    for up in coming_up(garden, almanac(TANSY_HILL, garden), lambda _: celsius).values():
        assert date(2026, 4, 1) < up.first <= up.last


def test_readings_are_kept_with_their_beds() -> None:
    garden = garden_of("2026-04-12\n- soil 7.5 °C in Top bed\n- soil 8 °C")
    assert [(warm.celsius, sorted(warm.beds)) for warm in noted_warmth(garden).readings] == [
        (7.5, ["top-bed"]),
        (8.0, []),
    ]


def test_the_section_of_a_planting_gives_the_reason_and_its_source() -> None:
    site = site_of(garden_of(SOWN, on=APRIL))
    bed: Any = next(page.values for page in site.pages if page.address == "beds/arch.html")
    (section,) = bed.years[0].sections
    assert section.seedlings == "Seedlings: about 17 days in soil of 10 °C, as noted; sown 12 April 2026"
    assert [link.text for link in section.seedling_sources] == [
        "University of California, Santa Cruz, after Harrington and Minges 1954"
    ]


@pytest.mark.parametrize(("on", "is_told"), [(date(2026, 5, 8), False), (date(2026, 5, 9), True)])
def test_the_first_page_tells_what_to_look_at(on: date, is_told: bool) -> None:
    site = site_of(garden_of(SOWN, on=on))
    now: Any = next(page.values for page in site.pages if page.address == "index.html")
    assert [line.name for line in now.look] == (["beetroot"] if is_told else [])
