"""Warnings: they stand where the thing comes up, with whom to ask, and nowhere else."""

from __future__ import annotations

import csv
from datetime import date
from typing import Any

import pytest
from bs4 import BeautifulSoup

from gardens import TANSY_HILL_YAML, garden_of, settings_of
from leafmould.facts.cautions import cautions
from leafmould.facts.tables import DATA, crops, sources
from leafmould.pages.cautions import CautionLine
from leafmould.pages.site import Site
from leafmould.render.html import Renderer
from pages_garden import site_of

ON = date(2026, 7, 15)
GROUPS = {fact.group for fact in crops().values() if fact.group}
WORK = {"work:animals", "work:manure", "work:treatment", "work:preserving", "work:lead"}


def values(site: Site, address: str) -> Any:
    """The values of the page at an address."""
    return next(page.values for page in site.pages if page.address == address)


def warned(typed: str, address: str, on: date = ON) -> tuple[CautionLine, ...]:
    """The warnings on a page of the garden of these notes."""
    found: tuple[CautionLine, ...] = values(site_of(garden_of(typed, on=on)), address).cautions
    return found


def test_every_warning_is_about_something_known_has_sources_in_the_table_and_says_whom_to_ask() -> None:
    rows = list(csv.DictReader((DATA / "cautions.csv").read_text(encoding="utf-8").splitlines()))
    about = {key for row in rows for key in row["about"].split(";")}
    assert about - set(crops()) - GROUPS == WORK
    assert {key for row in rows for key in row["source"].split(";") if key} <= set(sources())
    assert all(caution.words and caution.ask for key in about for caution in cautions(key))


@pytest.mark.parametrize(
    ("crop", "words"),
    [
        # University of Wisconsin Extension 2020, as cited in the table
        (
            "rhubarb",
            "Eat the stalks only. The leaf blades hold much oxalic acid: do not eat them or feed them to animals.",
        ),
        # common practice, no source
        ("elderberry", "Do not eat the berries or any other part raw."),
        ("plum", "Do not eat the kernels in the stones."),
        ("broad-bean", "People with G6PD deficiency must not eat these beans."),
    ],
)
def test_the_page_of_a_crop_warns_of_its_poisonous_parts(crop: str, words: str) -> None:
    name = crops()[crop].name
    (line,) = warned(f"2026-04-11\n- planted {name} in Top bed", f"crops/{crop}.html")
    assert line.words == words


def test_a_warning_says_where_it_was_read_or_that_nobody_published_it() -> None:
    green, leaves = warned("2026-04-11\n- planted potatoes in Top bed", "crops/potato.html")
    assert green.source == (
        "Source: Green and strongly germinating potato tubers should be sorted out, German Federal Institute "
        "for Risk Assessment, 2018; Risk assessment of glycoalkaloids in feed and food, European Food Safety "
        "Authority, 2020"
    )
    assert leaves.source == "Common practice, no source"
    assert leaves.ask == "If some was eaten, ask a poison centre at once."


def test_an_own_crop_is_warned_of_as_the_one_it_is_like() -> None:
    settings = settings_of(TANSY_HILL_YAML, crops_yaml="sour stalk: {like: rhubarb}")
    garden = garden_of("2026-05-01\n- planted sour stalk in Arch", settings, on=ON)
    (caution,) = values(site_of(garden), "crops/sour-stalk.html").cautions
    assert caution.words.startswith("Eat the stalks only.")


def test_a_crop_nobody_was_ever_harmed_by_has_no_warning() -> None:
    assert warned("2026-04-11\n- sowed beetroot in Top bed", "crops/beetroot.html") == ()


def test_a_crop_that_was_put_up_says_what_to_mind_with_jars() -> None:
    typed = "2026-04-11\n- sowed beetroot in Top bed\n2026-07-10\n- put up 4 jars beetroot"
    (line,) = warned(typed, "crops/beetroot.html")
    assert line.words.startswith("When putting it up: use tested recipes only, exactly as written")


def test_hens_in_a_bed_give_the_days_their_waits_run_out() -> None:
    # 120 and 90 days: 7 CFR 205.203(c)(1), raw manure; that hens count the same is common practice
    first, at_risk = warned("2026-05-04\n- penned 6 hens on Top bed", "beds/top-bed.html")
    assert first.on is not None
    assert (first.on.text, first.begins) == ("4 May 2026", "penned 6 hens on Top bed")
    assert first.words.endswith(" Here that is until 1 September 2026 and 2 August 2026.")
    assert first.ask == "Your local rules come first."
    assert at_risk.words == (
        "Pregnant people, very young children and people with a long illness: nothing uncooked from this bed."
    )


def test_hens_are_counted_from_their_last_day() -> None:
    typed = "2026-05-04\n- penned 6 hens on Top bed\n2026-06-01\n- hens off Top bed"
    first, _ = warned(typed, "beds/top-bed.html")
    assert first.on is not None
    assert first.on.text == "1 June 2026"


@pytest.mark.parametrize(("on", "is_warned"), [(date(2026, 8, 1), True), (date(2026, 8, 2), False)])
def test_manure_is_warned_of_for_120_days(on: date, is_warned: bool) -> None:
    found = warned("2026-04-03\n- manured Top bed", "beds/top-bed.html", on)
    assert bool(found) is is_warned


@pytest.mark.parametrize(
    ("typed", "is_warned"),
    [
        ("mulched Top bed with horse manure", True),
        ("top dressed Top bed with chicken manure", True),
        ("dug manure into Top bed", True),
        ("manured Top bed with pellets", False),
        ("spread composted horse manure on Top bed, the heap reached 60 °C", False),
        ("mulched Top bed with straw", False),
        ("fed Top bed with seaweed", False),
    ],
)
def test_manure_is_manure_whatever_it_was_put_on_as(typed: str, is_warned: bool) -> None:
    assert bool(warned(f"2026-07-01\n- {typed}", "beds/top-bed.html")) is is_warned


def test_a_treatment_defers_to_its_label_and_counts_only_days_that_were_written() -> None:
    (line,) = warned("2026-06-21\n- treated Top bed with sulphur, wait 14 days", "beds/top-bed.html")
    assert line.words == (
        "Keep the days to wait before picking that the label gives. Use it only on crops the label names. "
        "The note says 14 days: until 5 July 2026."
    )
    assert line.ask == "The label comes before anything said here."
    (line,) = warned("2026-06-21\n- treated Top bed with sulphur", "beds/top-bed.html")
    assert line.words.endswith(
        "Use it only on crops the label names. Days to wait not recorded: see the label."
    )


# Limits as the University of Minnesota Soil Testing Laboratory and Maryland's HG18 give them, cited in the table
def test_lead_that_was_measured_is_warned_of_in_its_bed_for_good_and_in_no_other() -> None:
    typed = "2024-04-21\n- tested soil in Top bed: lead 180 ppm\n2026-04-21\n- tested soil in Arch: pH 6.4"
    (line,) = warned(typed, "beds/top-bed.html")
    assert (line.begins, line.ask) == (
        "tested soil in Top bed: lead 180 ppm", "Ask your health department or the soil laboratory.",
    )  # fmt: skip
    assert line.words.startswith("Lead was measured in this soil. No soil is called safe here")
    assert warned(typed, "beds/arch.html") == ()


def test_a_treatment_of_plants_is_warned_of_in_the_bed_they_stand_in() -> None:
    typed = "2026-04-21\n- planted kale in Top bed\n2026-06-21\n- treated kale with soap"
    (line,) = warned(typed, "beds/top-bed.html")
    assert line.begins == "treated kale with soap"


def test_warnings_stand_under_a_heading_of_their_own_and_lead_to_their_note() -> None:
    site = site_of(garden_of("2026-05-04\n- penned 6 hens on Top bed", on=ON))
    page = next(page for page in site.pages if page.address == "beds/top-bed.html")
    tree = BeautifulSoup(Renderer(site).page(page), "html.parser")
    assert [h.get_text() for h in tree.select(".cautions h2")] == ["Take care"]
    assert [a["href"] for a in tree.select(".cautions a")] == ["../notes/2026-05-04.html"]
