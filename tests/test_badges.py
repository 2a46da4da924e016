"""The labels of a planting in every state it can be in, as of one day."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leafmould.facts.tables import crops
from leafmould.garden.model import Garden, Picking, Planting, Season
from leafmould.reckon.ages import days_since
from leafmould.reckon.badges import Badge, badges
from leafmould.reckon.forecast import Forecast, expected
from leafmould.values.quantities import Amount
from leafmould.values.wording import counted
from made_by_hand import NOWHERE, an_almanac, coarse, event, exact, garden, planting

ON = "2026-06-20"


def labels(one: Planting, on: str = ON, units: str = "metric", forecast: Forecast | None = None) -> list[str]:
    return [badge.text for badge in badges(one, garden(one, on=on, units=units), forecast)]


def amount(number: float, unit: str, **given: bool) -> Amount:
    return Amount(written=f"{number} {unit}", low=number, high=number, unit=unit, **given)


# ---- growing ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("one", "said"),
    [
        (planting("tomato", started="2026-05-11"), ["started indoors 40 days ago"]),
        (planting("beetroot", sown="2026-05-28"), ["sown 23 days ago"]),
        (planting("beetroot", sown="2026-06-19"), ["sown 1 day ago"]),
        (planting("beetroot", sown="2026-06-20"), ["sown today"]),
        (planting("tomato", started="2026-03-20", planted="2026-06-11"), ["planted out 9 days ago"]),
        (planting("tomato", planted="2026-06-11"), ["planted out 9 days ago"]),
        (planting("garlic", planted="2026-06-11"), ["planted 9 days ago"]),
        (planting("leek", sown="2026-03-01", planted="2026-06-11"), ["sown 111 days ago", "planted out 9 days ago"]),
        (planting("rocket", found="2026-06-08", origin="self-sown"), ["found 12 days ago"]),
        (planting("pea", sown=coarse("spring 2024", "2024-03-01", "2024-05-31")), ["sown spring 2024"]),
        (planting("pea", sown="2024-02-28"), ["sown 843 days ago"]),
        (planting("pea"), ["start not known"]),
    ],
)  # fmt: skip
def test_how_a_planting_began(one: Planting, said: list[str]) -> None:
    assert labels(one) == said


def test_one_of_several_sowings_tells_the_span() -> None:
    one = planting("leek", origin="started", started_between=(date(2026, 3, 1), date(2026, 3, 20)))
    assert labels(one) == ["started indoors between 1–20 March"]


def test_an_expectation_carries_its_reason() -> None:
    one = planting("beetroot", sown="2026-05-01")
    found = expected(one, an_almanac("2026-05-24"))
    assert found is not None
    sown, waiting = badges(one, garden(one, on="2026-05-24"), found)
    assert (sown.text, waiting.text) == ("sown 23 days ago", "expected 20 June – 15 July")
    assert waiting.basis == "published figures say 50–70 days from sowing, counted from 1 May 2026"
    assert waiting.kind == "expected" and waiting.counted_from is None


def test_an_expectation_next_year_tells_the_year() -> None:
    one = planting("garlic", planted="2026-10-15")
    assert labels(one, "2026-11-01", forecast=expected(one, an_almanac("2026-11-01"))) == [
        "planted 17 days ago",
        "expected 2 June – 11 August 2027",
    ]


def test_an_expectation_that_passed_is_not_repeated_as_if_it_were_to_come() -> None:
    one = planting("radish", sown="2026-04-01")
    assert labels(one, forecast=expected(one, an_almanac(ON))) == [
        "sown 80 days ago",
        "was expected 26 April – 21 May, no picking noted",
    ]


def test_counts_can_be_moved_on_by_the_reader() -> None:
    one = planting("beetroot", sown="2026-05-28", events=("e:1",))
    standing = garden(one, on=ON, events=[event("e:1", "sowed", exact("2026-05-28"), "2026/05-28-arch")])
    assert badges(one, standing, None) == (
        Badge(
            kind="sown",
            text="sown 23 days ago",
            counted_from=date(2026, 5, 28),
            before="sown",
            after="ago",
            entry="2026/05-28-arch",
        ),
    )


# ---- picking ----------------------------------------------------------------------------------------


def picked(**given: object) -> Planting:
    return planting("pea", sown="2026-03-20", first_picked="2026-06-08", last_picked="2026-06-18", **given)


@pytest.mark.parametrize(
    ("given", "units", "said"),
    [
        ({}, "metric", "picking for 12 days"),
        ({"picked_g": 3400.0}, "metric", "picking for 12 days, 3.4 kg so far"),
        ({"picked_g": 3400.0, "picked_estimated": True}, "metric", "picking for 12 days, about 3.4 kg so far"),
        ({"picked_g": 1389.0}, "imperial", "picking for 12 days, 3 lb 1 oz so far"),
        ({"picked": (amount(12, "piece"),)}, "metric", "picking for 12 days, 12 so far"),
        ({"picked": (amount(2, "tray"), amount(1, "bunch"))}, "metric", "picking for 12 days, 2 trays and 1 bunch so far"),
    ],
)  # fmt: skip
def test_picking_tells_the_days_and_what_came_of_it(given: dict[str, object], units: str, said: str) -> None:
    assert labels(picked(**given), units=units) == ["sown 92 days ago", said]


def test_the_first_day_of_picking() -> None:
    one = planting("pea", sown="2026-03-20", first_picked=ON, last_picked=ON, picked_g=250.0)
    assert labels(one) == ["sown 92 days ago", "picked today, 250 g so far"]


@pytest.mark.parametrize(
    ("pickings", "said"),
    [
        (("a",), "picked once, on 9 June, 11 days ago, 250 g"),
        (("a", "b"), "picked on 9 June, 11 days ago, 250 g"),
    ],
)
def test_one_day_of_picking_is_not_told_as_going_on(pickings: tuple[str, ...], said: str) -> None:
    one = planting(
        "pea", sown="2026-03-20", first_picked="2026-06-09", last_picked="2026-06-09", picked_g=250.0
    )
    assert labels(replace(one, pickings=pickings)) == ["sown 92 days ago", said]


def test_picking_that_stopped_is_told_by_its_dates() -> None:
    assert labels(picked(picked_g=900.0), "2026-09-01") == ["sown 165 days ago", "picked 8–18 June, 900 g"]


def test_picking_known_coarsely_is_not_counted() -> None:
    early = coarse("early June", "2026-06-01", "2026-06-10")
    one = planting("pea", sown="2026-03-20", first_picked=early, last_picked=early)
    assert labels(one)[1] == "picked early June"
    assert labels(replace(one, last_picked=exact("2026-06-18")))[1] == "picked from early June to 18 June"


def test_a_picking_leads_to_its_note() -> None:
    first = Picking(
        id="n:1", when=exact("2026-06-08"), crops=("pea",), varieties=(), bed="arch", planting="pea_arch",
        group=None, amounts=(), fates=(), entry="2026/06-08-arch", at=NOWHERE,
    )  # fmt: skip
    one = picked(pickings=("n:1",))
    assert badges(one, garden(one, on=ON, pickings=[first]), None)[1].entry == "2026/06-08-arch"


# ---- over -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("one", "said"),
    [
        (
            planting("pea", sown="2026-03-01", cleared="2026-06-03", ended_on="2026-06-03", end_basis="cleared",
                     picked_g=3400.0, first_picked="2026-05-20"),
            "cleared after 94 days, 3.4 kg",
        ),
        (
            planting("pea", sown="2026-05-01", lost="2026-05-31", ended_on="2026-05-31", end_basis="lost to slugs"),
            "lost after 30 days (slugs)",
        ),
        (
            planting("pea", sown="2026-05-01", lost="2026-05-02", ended_on="2026-05-02", end_basis="lost"),
            "lost after 1 day",
        ),
        (
            planting("pea", sown="2026-05-01", lost="2026-05-01", ended_on="2026-05-01", end_basis="lost"),
            "lost the same day",
        ),
        (
            planting("tomato", planted="2025-06-01", ended_on="2025-10-09", end_is_estimated=True,
                     end_basis="presumed over: the first frost, by the average"),
            "presumed over 9 October 2025, estimated",
        ),
        (
            planting("garlic", planted="2024-11-09", ended_on="2026-05-09", end_is_estimated=True,
                     end_basis="presumed over: 18 months since it began"),
            "presumed over 9 May 2026, estimated",
        ),
        (
            planting("pea", sown="2026-03-01", ended_on="2026-05-30", end_basis="finished"),
            "over after 90 days",
        ),
        (
            planting("pea", sown=coarse("March", "2026-03-01", "2026-03-31"), cleared="2026-06-03",
                     ended_on="2026-06-03", end_basis="cleared"),
            "cleared on 3 June",
        ),
        (
            planting("pea", sown="2025-03-01", cleared=coarse("autumn 2025", "2025-09-01", "2025-11-30"),
                     ended_on="2025-09-01", end_basis="cleared"),
            "cleared autumn 2025",
        ),
        (planting("pea", origin="year only", year=2023), "known by year only: 2023"),
    ],
)  # fmt: skip
def test_how_a_planting_ended(one: Planting, said: str) -> None:
    assert labels(one) == [said]


def test_a_presumed_end_carries_its_reason() -> None:
    reason = "presumed over: another crop was started in its place"
    one = planting("pea", sown="2025-03-01", ended_on="2025-09-01", end_is_estimated=True, end_basis=reason)
    (badge,) = badges(one, garden(one), None)
    assert (badge.kind, badge.basis) == ("ended", reason)


# ---- perennials -------------------------------------------------------------------------------------


def perennial(**given: object) -> Planting:
    return planting("rhubarb", is_perennial=True, origin="planted", **given)


def test_perennials_tell_their_planting_and_this_season() -> None:
    whole_year = coarse("2015", "2015-01-01", "2015-12-31")
    seasons = (
        Season(
            name="2025", first_picked=exact("2025-05-20"), last_picked=exact("2025-06-30"), picked_g=4000.0
        ),
        Season(
            name="2026", first_picked=exact("2026-06-03"), last_picked=exact("2026-06-18"), picked_g=2500.0
        ),
    )
    one = perennial(planted=whole_year, first_picked="2025-05-20", seasons=seasons)
    assert labels(one) == ["planted 2015", "picked 2026 from 3 June, 2.5 kg"]
    assert labels(perennial(planted=whole_year)) == ["planted 2015"]


def test_perennials_are_counted_in_days_in_their_first_year_only() -> None:
    assert labels(perennial(planted="2026-05-11")) == ["planted 40 days ago", "first crop about 2027"]
    assert labels(perennial(planted="2021-03-05")) == ["planted 5 March 2021"]
    assert labels(planting("rhubarb", is_perennial=True)) == ["start not known"]


def test_a_perennial_that_was_taken_out() -> None:
    one = perennial(
        planted="2021-03-05", cleared="2026-06-03", ended_on="2026-06-03", end_basis="grubbed out"
    )
    assert labels(one) == ["cleared on 3 June"]


# ---- ages and laws ----------------------------------------------------------------------------------


def test_ages_count_calendar_days_from_exact_dates_only() -> None:
    one = planting("leek", started="2026-02-28", planted="2026-06-11")
    counted = [
        days_since(when, date(2026, 6, 20)) for when in (one.started, one.sown, one.planted, one.found)
    ]
    assert counted == [112, None, 9, None]
    assert days_since(coarse("spring", "2026-03-01", "2026-05-31"), date(2026, 6, 20)) is None
    assert days_since(exact("2026-06-21"), date(2026, 6, 20)) is None
    assert days_since(exact("2024-02-28"), date(2024, 3, 1)) == 2


DAYS = st.dates(date(2020, 1, 1), date(2026, 6, 20)).map(date.isoformat)


@given(
    crop=st.sampled_from(sorted(crops())),
    dates=st.fixed_dictionaries(
        {}, optional=dict.fromkeys(("started", "sown", "planted", "found", "first_picked", "cleared", "lost"), DAYS)
    ),
    is_perennial=st.booleans(),
    is_over=st.booleans(),
)  # fmt: skip
def test_every_planting_wears_a_badge_and_its_words_can_be_rebuilt(
    crop: str, dates: dict[str, str], is_perennial: bool, is_over: bool
) -> None:
    one = planting(crop, is_perennial=is_perennial, ended_on="2026-06-20" if is_over else None, **dates)
    standing: Garden = garden(one, on=ON)
    shown = badges(one, standing, expected(one, an_almanac(ON)))
    assert shown and all(badge.text for badge in shown)
    for badge in shown:
        days = (standing.on - badge.counted_from).days if badge.counted_from else 0
        if days:
            gap = "" if badge.after.startswith(",") or not badge.after else " "
            assert badge.text == f"{badge.before} {counted(days, 'day')}{gap}{badge.after}"
