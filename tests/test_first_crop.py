"""Years to a lasting plant's first crop: the label of what was set out, and its figures beside a source kept aside."""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of, settings_of
from leafmould.facts.published import published
from leafmould.reckon.badges import badges
from leafmould.reckon.first_crop import first_crop
from made_by_hand import coarse, planting

YAML = "garden: G\nbeds: [Arch, {name: Old pear, kind: tree, planted: 2015}]"


def labels(notes: str, on: str) -> list[str]:
    garden = garden_of(notes, settings_of(YAML), on=date.fromisoformat(on))
    return [
        badge.text for one in garden.plantings if one.bed == "arch" for badge in badges(one, garden, None)
    ]


def told(crop: str, planted: str, year: int) -> tuple[int, int] | None:
    found = first_crop(planting(crop, planted=planted, is_perennial=True), year)
    return (found.first, found.last) if found else None


PLANTED = "2026-03-20\n- planted a gooseberry in Arch\n"


def test_a_bush_set_out_says_when_its_first_crop_may_come() -> None:
    assert labels(PLANTED, "2026-06-28") == ["planted 100 days ago", "first crop about 2027"]


def test_once_it_was_picked_or_its_years_are_over_nothing_is_expected() -> None:
    picked = PLANTED + "2027-07-10\n- picked 400 g gooseberries from Arch\n"
    assert labels(picked, "2027-12-01") == ["planted 20 March 2026", "picked 2027 from 10 July, 400 g"]
    assert labels(PLANTED, "2028-06-28") == ["planted 20 March 2026"]


@pytest.mark.parametrize(
    ("crop", "year", "years"),
    [
        ("quince", 2026, (2028, 2028)),  # 2 years: Farm and Garden Rule-Book, chapter VII
        ("pear", 2026, (2029, 2034)),  # 3–4, 5–8 and 5–7 years, three sources together
        ("pear", 2031, (2031, 2034)),  # years gone by without one are not told
        ("asparagus", 2026, (2027, 2029)),  # its second or third year, two extension services
        ("medlar", 2026, None),  # no figure is published
    ],
)
def test_years_of_a_plant_set_out_in_2026(crop: str, year: int, years: tuple[int, int] | None) -> None:
    assert told(crop, "2026-11-20", year) == years


def test_the_reason_is_told() -> None:
    one, several = (first_crop(planting(crop, planted="2026-03-01"), 2026) for crop in ("raspberry", "pear"))
    assert one and one.basis == "published figures say 1 year from planting to the first crop"
    assert several and several.basis == "published figures say 3–8 years from planting to the first crop"


def test_a_planting_known_no_better_than_over_a_new_year_tells_nothing() -> None:
    winter = coarse("winter 2025", "2025-12-01", "2026-02-28")
    assert first_crop(planting("pear", planted=winter), 2026) is None


@pytest.mark.parametrize(("crop", "low", "high"), [("blackberry", 1, 1), ("blueberry", 2, 3)])
def test_years_agree_with_a_source_kept_aside(crop: str, low: int, high: int) -> None:
    """Missouri Center for Career Education, charts of small fruits: within a year, written before the run."""
    facts = [
        f for f in published(crop) if f.subject == "first crop" and f.low is not None and f.high is not None
    ]
    assert facts
    assert all((f.low or 0) <= high + 1 and (f.high or 0) >= low - 1 for f in facts)


def test_an_own_crop_that_is_like_another_takes_its_years() -> None:
    """Raspberries: a year, by what is published."""
    settings = settings_of(YAML, crops_yaml="hedge raspberry: {like: raspberry}\nwhatnot: {grown: perennial}")
    notes = "2026-03-20\n- planted a hedge raspberry in Arch\n- planted a whatnot in Arch\n"
    garden = garden_of(notes, settings, on=date(2026, 6, 28))
    found = {
        one.crops[0]: [badge.text for badge in badges(one, garden, None)]
        for one in garden.plantings
        if one.bed == "arch"
    }
    assert found == {
        "hedge-raspberry": ["planted 100 days ago", "first crop about 2027"],
        "whatnot": ["planted 100 days ago"],
    }
