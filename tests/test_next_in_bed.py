"""What may come next in a bed: seasons between, diseases, gaps in the record, and what stays for years.

The general interval: West Virginia University Extension 2025, two to three years; University of
Nebraska-Lincoln Extension 2013, three to five; Royal Horticultural Society 2025, a plan of three or four years,
which leaves two or three seasons between.
"""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from gardens import garden_of, settings_of
from leafmould.garden.model import Garden
from leafmould.reckon.next_in_bed import Verdict, advised, parts_where_fine, verdicts
from pages_garden import site_of

TO_2026 = date(2026, 12, 31)


def told(notes: str, family: str, bed: str = "arch", *, on: date = TO_2026) -> Verdict:
    return _all(garden_of(notes, on=on))[bed, family]


def _all(garden: Garden) -> dict[tuple[str, str], Verdict]:
    return dict(verdicts(garden, garden.on.year + 1, year_of=lambda day: day.year))


def grown(*crops: str) -> str:
    """A crop a year in the Arch, the last in 2026."""
    first = 2027 - len(crops)
    return "\n".join(f"{first + n}-05-01\n- grew {crop} in Arch" for n, crop in enumerate(crops))


def test_the_general_interval_is_what_most_say() -> None:
    rule = advised()
    assert (rule.least, rule.safe, rule.low, rule.high) == (2, 3, 2, 5)
    assert rule.sources == ("WVU-ROT", "UNL-ROT", "RHS-ROT")


@pytest.mark.parametrize(
    ("crops", "kind", "until", "reason"),
    [
        (("pea", "leek", "potato", "kale"), "not yet", 2029, "Stood here in 2026 (kale); 2–5 seasons between are advised."),
        (("pea", "kale", "potato", "leek"), "sooner than some advise", None,
         "Stood here in 2024 (kale), 2 seasons between; 2–5 seasons between are advised."),
        (("kale", "pea", "potato", "leek"), "fine", None,
         "Stood here in 2023 (kale), 3 seasons between; 2–5 seasons between are advised."),
        (("beetroot", "pea", "kale", "leek"), "not yet", 2028, "Stood here in 2025 (kale); 2–5 seasons between are advised."),
    ],
)  # fmt: skip
def test_seasons_between(crops: tuple[str, ...], kind: str, until: int | None, reason: str) -> None:
    found = told(grown(*crops), "Brassicaceae")
    assert (found.kind, found.until, found.reason) == (kind, until, reason)


def test_relatives_under_other_names_count() -> None:
    found = told(grown("pea", "leek", "potato", "rocket"), "Brassicaceae")
    assert (found.kind, found.until) == ("not yet", 2029)
    assert found.reason == "Stood here in 2026 (rocket); 2–5 seasons between are advised."


def test_a_season_without_a_record_leaves_it_not_known() -> None:
    notes = """
        2024-05-01
        - grew pea in Arch
        2026-05-01
        - grew leek in Arch
        - grew kale in Top bed
        """
    found = told(notes, "Brassicaceae")
    assert (found.kind, found.reason) == ("not known", "No record for 2 of the last 4 years, so not known.")


def test_a_family_known_to_have_stood_too_lately_is_not_yet_whatever_else_is_missing() -> None:
    assert told("2025-05-01\n- grew kale in Arch", "Brassicaceae").until == 2028


def test_a_disease_noted_in_the_bed_makes_the_wait_longer() -> None:
    """University of Connecticut IPM: clubroot, seven years."""
    notes = grown("kale", "pea", "potato", "leek") + "\n2023-08-01\n- saw clubroot on kale in Arch"
    found = told(notes, "Brassicaceae")
    assert (found.kind, found.until, found.sources) == ("not yet", 2031, ("UCONN-ROT",))
    assert found.reason == "Clubroot was noted in 2023; advised: seven years. Avoid turnip and radish too."
    assert told(notes, "Fabaceae").kind == "sooner than some advise"


def test_a_disease_that_never_goes_is_told_by_how_long_it_lives() -> None:
    """University of California IPM: white rot, over 20 years in the soil."""
    notes = grown("leek", "pea", "potato", "kale") + "\n2023-08-01\n- lost leeks in Arch to white rot"
    assert told(notes, "Amaryllidaceae").until == 2044


def test_of_two_diseases_the_one_without_a_figure_keeps_the_family_away() -> None:
    """University of Connecticut IPM on beans: anthracnose two years, pod white mold "several years"."""
    seen = "\n2025-08-01\n- saw {} on French beans in Arch"
    notes = grown("kale", "potato", "leek", "French bean", "lettuce")
    assert told(notes + seen.format("anthracnose"), "Fabaceae").until == 2028
    both = told(notes + seen.format("anthracnose") + seen.format("pod white mold"), "Fabaceae")
    assert (both.kind, both.until) == ("not yet", None)
    assert both.reason.startswith("Pod white mold was noted in 2025; advised: several years.")


def test_what_stays_for_years_does_not_count_for_its_family() -> None:
    notes = (
        grown("pea", "leek", "potato", "kale")
        + "\n2023-04-01\n- planted rhubarb in Arch\n- grew buckwheat in Top bed"
    )
    assert told(notes, "Polygonaceae").kind == "fine"


def test_the_wait_follows_a_bed_that_was_renamed() -> None:
    yaml = """
        garden: Tansy Hill
        beds:
          - {name: Arch}
          - {name: New arch, was: Arch, from: 2026-01-01}
        """
    notes = (
        "2024-05-01\n- grew pea in Arch\n2025-05-01\n- grew kale in Arch\n2026-05-01\n- grew leek in New arch"
    )
    found = _all(garden_of(notes, settings_of(yaml), on=TO_2026))
    assert found["new-arch", "Brassicaceae"].until == 2028
    assert ("arch", "Brassicaceae") not in found


def test_trees_and_canes_have_no_rotation() -> None:
    found = _all(garden_of("2026-05-01\n- grew kale in Arch"))
    assert {bed for bed, _ in found}.isdisjoint({"old-pear", "raspberry-row"})


def test_years_known_from_before_the_notes_count() -> None:
    settings = settings_of(
        "garden: Hill\nbeds: [{name: Arch}]\n",
        beforehand=((2023, "Arch", "pea"), (2024, "Arch", "leek"), (2025, "Arch", "kale")),
    )
    found = _all(garden_of("2026-05-01\n- grew leek in Arch", settings, on=TO_2026))["arch", "Brassicaceae"]
    assert (found.kind, found.until) == ("not yet", 2028)


def test_a_disease_that_lives_on_other_families_keeps_them_away_too() -> None:
    """University of California IPM: white mold of beans, two years, also of lettuce, cole crops and cucurbits."""
    notes = grown("pea", "leek", "potato", "leek", "leek") + "\n2026-08-01\n- saw white mold in Arch"
    notes += "\n2026-05-01\n- sowed lettuce in Top bed\n- sowed kale in Top bed"
    assert told(notes, "Asteraceae").until == 2029
    assert told(notes, "Brassicaceae").until == 2029
    assert told(notes, "Solanaceae").kind == "sooner than some advise"


PARTS = """
    2023-05-01
    - grew pea in Long border
    2024-05-01
    - grew leek in Long border
    2025-05-01
    - grew potato in Long border, north half
    - grew leek in Long border, south half
    2026-05-01
    - grew kale in Long border, north half
    - grew lettuce in Long border, south half
    """


def fine_parts(notes: str) -> dict[str, tuple[str, ...]]:
    garden = garden_of(notes, on=TO_2026)
    found = parts_where_fine(garden, _all(garden), year_of=lambda day: day.year)
    return {family: parts for (bed, family), parts in found.items() if bed == "long-border"}


def test_a_family_that_stood_in_one_part_may_come_in_the_other() -> None:
    assert fine_parts(PARTS) == {
        "Brassicaceae": ("south half",),
        "Solanaceae": ("south half",),
        "Asteraceae": ("north half",),
    }


def test_what_names_no_part_stood_in_all_of_them_and_an_unrecorded_part_is_not_fine() -> None:
    assert "Amaryllidaceae" not in fine_parts(PARTS)  # leeks in 2024 named no part
    assert fine_parts("2026-05-01\n- grew kale in Long border, north half\n- grew leek in Arch") == {}


def test_a_disease_noted_in_one_part_keeps_its_family_out_of_that_part_alone() -> None:
    ill = PARTS + "\n2026-08-01\n- saw clubroot in Long border, south half"
    assert "Brassicaceae" not in fine_parts(ill)
    ill = PARTS + "\n2026-08-01\n- saw clubroot in Long border, north half"
    assert fine_parts(ill)["Brassicaceae"] == ("south half",)


def test_pages_name_the_parts_and_the_relatives() -> None:
    site = site_of(garden_of(PARTS, on=TO_2026))
    pages = {page.address: page.values for page in site.pages}
    bed: Any = pages["beds/long-border.html"]
    kale = next(row for group in bed.next for row in group.families if row.family.name == "cabbage family")
    assert kale.parts == "By what is noted of its parts, fine in the south half."
    crop: Any = pages["crops/kale.html"]
    (link,) = [link for row in crop.where_next for link in row.beds if link.to.startswith("beds/long-border")]
    assert link.text == "Long border (not before 2029, fine in the south half)"
    assert crop.relatives == ""
    garden = garden_of(
        "2026-05-01\n- grew kale in Arch\n- grew rocket in Arch\n- grew radish in Arch", on=TO_2026
    )
    crop = next(page.values for page in site_of(garden).pages if page.address == "crops/kale.html")
    assert crop.relatives == (
        "For rotation it counts as one with all the cabbage family, here radish and rocket: "
        "what harms one in the soil harms the others."
    )


def test_the_page_of_a_bed_says_who_advises_it() -> None:
    notes = grown("kale", "pea", "potato", "leek") + "\n2023-08-01\n- saw clubroot on kale in Arch"
    site = site_of(garden_of(notes, on=TO_2026))
    bed: Any = next(page.values for page in site.pages if page.address == "beds/arch.html")
    assert "University of Connecticut IPM" in " ".join(link.text for link in bed.next_sources)
    assert "West Virginia University Extension" in [link.text for link in bed.next_sources]
