"""Waits before picking: raw manure and animals on a bed, treatments, and pickings noted too soon.

The days: 7 CFR 205.203(c), 120 where the eaten part touches the soil, 90 where it does not, "not less than", so
that the day itself is the first allowed. Counting hens' last day as one application: common practice, no source.
"""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of, settings_of
from leafmould.facts.manure import days_after_manure
from leafmould.garden.model import Garden
from leafmould.garden.waits import Waits
from leafmould.reckon.badges import badges


def safe_days(garden: Garden) -> dict[str, str]:
    """By crop and bed: the first day it may be picked, of what stands and must wait."""
    waits = Waits(garden)
    found = {f"{' '.join(p.words)}, {p.bed_now}": waits.safe_day(p) for p in garden.plantings}
    return {name: safe.day.isoformat() for name, safe in found.items() if safe}


def told(garden: Garden) -> list[str]:
    return [p.message for p in garden.problems if "the wait is" in p.message]


# The date arithmetic of the rule, worked out on a calendar: day 0 and the days 90 and 120 after it.
@pytest.mark.parametrize(
    ("manured", "clear", "touching"),
    [
        ("2026-02-01", "2026-05-02", "2026-06-01"),
        ("2026-03-01", "2026-05-30", "2026-06-29"),
        ("2026-03-15", "2026-06-13", "2026-07-13"),
        ("2026-04-15", "2026-07-14", "2026-08-13"),
        ("2025-10-15", "2026-01-13", "2026-02-12"),
    ],
)
def test_the_first_day_is_day_90_or_120_itself(manured: str, clear: str, touching: str) -> None:
    notes = f"{manured}\n- manured Arch\n- sowed carrots in Arch\n- planted 4 sweet corn in Arch"
    assert safe_days(garden_of(notes, on=date.fromisoformat(manured))) == {
        "carrot, arch": touching,
        "sweet corn, arch": clear,
    }


@pytest.mark.parametrize(
    ("crop", "days"),
    [("lettuce", 120), ("strawberry", 120), ("melon", 120), ("potato", 120), ("tomato", 90), ("apple", 90),
     ("sweet-corn", 90), ("phacelia", 0), ("a-crop-of-my-own", 120)],
)  # fmt: skip
def test_days_by_where_the_eaten_part_grows(crop: str, days: int) -> None:
    """Sweet corn and melon: University of Florida; the others common practice, the longer wait where not known."""
    assert days_after_manure(crop) == days


def test_hens_count_from_the_day_they_left() -> None:
    notes = """
        2026-03-01
        - penned 4 hens on Arch
        2026-03-20
        - hens off Arch
        2026-05-01
        - sowed lettuce in Arch
        """
    assert safe_days(garden_of(notes, on=date(2026, 6, 1))) == {"lettuce, arch": "2026-07-18"}


def test_hens_nobody_let_out_were_gone_by_the_next_sowing() -> None:
    notes = "2026-03-01\n- penned 4 hens on Arch\n2026-04-11\n- sowed lettuce in Arch"
    assert safe_days(garden_of(notes, on=date(2026, 6, 1))) == {"lettuce, arch": "2026-08-08"}


def test_hens_still_there_have_no_day_yet() -> None:
    notes = "2026-03-01\n- sowed leeks in Arch\n2026-05-20\n- penned 4 hens on Arch"
    garden = garden_of(notes, on=date(2026, 6, 1))
    (leeks,) = (p for p in garden.plantings if p.bed == "arch")
    *_, badge = badges(leeks, garden, None, Waits(garden).safe_day(leeks))
    assert badge.text == "not to be picked for 120 days after the animals leave"


def test_a_later_application_starts_the_count_again() -> None:
    notes = "2026-03-01\n- manured Arch\n2026-04-15\n- sowed leeks in Arch\n- fed Arch with chicken manure"
    assert safe_days(garden_of(notes, on=date(2026, 6, 1))) == {"leek, arch": "2026-08-13"}


def test_compost_that_grew_hot_and_pellets_give_no_wait_and_old_muck_does() -> None:
    sowed = "\n2026-04-15\n- sowed leeks in Arch"
    on = date(2026, 5, 1)
    assert safe_days(garden_of("2026-04-01\n- manured Arch with pellets" + sowed, on=on)) == {}
    assert safe_days(garden_of("2026-04-01\n- manured Arch with well rotted muck" + sowed, on=on)) != {}


def test_the_label_on_a_planting_says_until_when_and_why() -> None:
    garden = garden_of("2026-04-15\n- manured Arch\n- sowed leeks in Arch", on=date(2026, 6, 1))
    (leeks,) = (p for p in garden.plantings if p.bed == "arch")
    *_, badge = badges(leeks, garden, None, Waits(garden).safe_day(leeks))
    assert (badge.kind, badge.text) == ("wait", "not to be picked before 13 August")
    assert badge.basis == (
        "raw manure, as far as is known, on 15 April 2026: 120 days to wait; your local rules come first"
    )


def test_a_picking_inside_the_wait_is_a_warning_and_on_the_day_itself_is_not() -> None:
    notes = """
        2026-04-15
        - manured Arch
        - sowed radishes in Arch
        2026-05-20
        - picked 20 radishes from Arch
        2026-08-13
        - picked 10 radishes from Arch
        """
    assert told(garden_of(notes)) == [
        "picked 35 days after raw manure (15 April 2026); the wait is 120 days, until 13 August 2026. "
        "Do not eat it uncooked; your local rules come first."
    ]


def test_a_treatments_days_are_those_of_the_note_and_never_ours() -> None:
    notes = """
        2026-06-01
        - sowed beans in Arch
        - sowed peas in Top bed
        2026-06-20
        - treated beans in Arch with soap, wait 7 days
        - treated peas in Top bed with soap
        2026-06-24
        - picked 1 kg beans from Arch
        - picked 1 kg peas from Top bed
        """
    assert told(garden_of(notes)) == [
        "picked 4 days after a treatment (20 June 2026); the wait is 7 days, until 27 June 2026. "
        "Do not eat it before you have read the label: it has the say."
    ]


def test_a_treatment_whose_days_nobody_wrote_sends_to_the_label_and_gives_no_number() -> None:
    notes = "2026-06-01\n- sowed peas in Top bed\n2026-06-20\n- treated peas in Top bed with soap"
    garden = garden_of(notes, on=date(2026, 7, 1))
    (peas,) = (p for p in garden.plantings if p.bed == "top-bed")
    waits = Waits(garden)
    assert waits.safe_day(peas) is None
    *_, badge = badges(peas, garden, None, unrecorded=waits.unrecorded(peas))
    assert (badge.kind, badge.text, badge.basis) == (
        "wait", "days to wait not recorded: see the label", "treated on 20 June 2026; the label comes first",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("notes", "on"),
    [
        ("2026-06-20\n- treated peas in Top bed with soap, wait 7 days", date(2026, 7, 1)),
        (
            "2026-06-20\n- treated peas in Top bed with soap\n2026-06-25\n- cleared peas from Top bed",
            date(2026, 7, 1),
        ),
        ("2026-06-20\n- treated Arch with soap", date(2026, 7, 1)),
        ("2026-06-20\n- treated peas in Top bed with soap", date(2026, 10, 19)),
    ],
)
def test_the_label_is_not_asked_for_where_days_are_known_or_it_is_over(notes: str, on: date) -> None:
    garden = garden_of(f"2026-06-01\n- sowed peas in Top bed\n{notes}", on=on)
    waits = Waits(garden)
    assert [waits.unrecorded(p) for p in garden.plantings if p.bed == "top-bed"] == [None]


def heap(days: int) -> str:
    """A heap that was hot on so many days of March."""
    return "".join(f"2026-03-0{n}\n- watered Arch, the heap stood at 6{n} °C\n" for n in range(1, days + 1))


@pytest.mark.parametrize(
    ("notes", "must_wait"),
    [
        (f"{heap(3)}2026-04-01\n- spread composted horse manure on Arch", False),
        (f"{heap(3)}2026-04-01\n- manured Arch with horse manure", True),  # not called composted
        (
            f"{heap(2)}2026-04-01\n- spread composted horse manure on Arch",
            True,
        ),  # hot on too few days
        ("2026-04-01\n- spread composted horse manure on Arch", True),
        ("2026-04-01\n- spread composted horse manure on Arch, the heap reached 60 °C", False),
    ],
)
def test_composted_manure_with_a_record_of_its_heat_is_exempt(notes: str, must_wait: bool) -> None:
    # 131 °F (55 °C) for three days: 7 CFR 205.203(c)(2)
    garden = garden_of(f"{notes}\n2026-04-15\n- sowed leeks in Arch", on=date(2026, 5, 1))
    assert bool(safe_days(garden)) is must_wait


def test_a_bed_that_is_renamed_keeps_its_wait() -> None:
    settings = settings_of(
        "garden: Hill\nbeds:\n  - {name: Arch}\n  - {name: New arch, was: Arch, from: 2026-05-01}\n"
    )
    notes = "2026-04-15\n- manured Arch\n2026-05-10\n- sowed leeks in New arch"
    garden = garden_of(notes, settings, on=date(2026, 6, 1))
    assert safe_days(garden) == {"leek, new-arch": "2026-08-13"}


def test_another_bed_and_another_part_need_not_wait() -> None:
    notes = """
        2026-04-15
        - manured Long border, north half
        - sowed leeks in Long border, south half
        - sowed carrots in Long border, north half
        - sowed beetroot in Arch
        """
    assert safe_days(garden_of(notes, on=date(2026, 6, 1))) == {"carrot, long-border": "2026-08-13"}
