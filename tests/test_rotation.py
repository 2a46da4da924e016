"""When a family last stood in a bed: with gaps in the record, through renamed, split and joined beds."""

from __future__ import annotations

from datetime import date

import pytest

from leafmould.garden.model import Bed, Garden, Planting
from leafmould.garden.queries import lineage, years_in_bed
from leafmould.reckon.rotation import Occupancy, years_since
from made_by_hand import garden, planting


def grew(crop: str | None, year: int, bed: str = "arch") -> Planting:
    return planting(crop, id=f"{crop}_{bed}_{year}", bed=bed, origin="year only", year=year)


def asked(where: Garden, family: str = "Brassicaceae", bed: str = "arch", year: int = 2026) -> str:
    return years_since(where, bed, family, year).words


FULL = (grew("pea", 2025), grew("carrot", 2024), grew("kale", 2023), grew("potato", 2022))


def test_the_last_year_and_how_long_ago() -> None:
    found = years_since(garden(*FULL), "arch", "Brassicaceae", 2026)
    assert (found.answer, found.last_year, found.years_ago) == ("stood", 2023, 3)
    assert found.plantings == ("kale_arch_2023",)
    assert found.words == "The cabbage family last stood here in 2023, 3 years before."


def test_relatives_under_other_names_count() -> None:
    """Radish and rocket are of the cabbage family; Missouri Botanical Garden lists both."""
    assert asked(garden(grew("radish", 2025))).startswith(
        "The cabbage family last stood here in 2025, 1 year before."
    )
    assert asked(garden(grew("rocket", 2025))).startswith(
        "The cabbage family last stood here in 2025, 1 year before."
    )


def test_a_full_record_without_the_family_is_clear() -> None:
    found = years_since(garden(*FULL), "arch", "Cucurbitaceae", 2026)
    assert (found.answer, found.unrecorded) == ("clear", ())
    assert found.words == "No cucumber family here in the last 4 years, all on record."


def test_years_without_a_record_are_never_years_without_the_family() -> None:
    found = years_since(garden(grew("pea", 2025), grew("potato", 2022)), "arch", "Brassicaceae", 2026)
    assert (found.answer, found.unrecorded) == ("not known", (2024, 2023))
    assert found.words == "No record for 2 of the last 4 years, so not known."


def test_a_gap_after_the_family_last_stood_there_leaves_it_not_known() -> None:
    found = years_since(garden(grew("pea", 2025), grew("kale", 2023)), "arch", "Brassicaceae", 2026)
    assert (found.answer, found.last_year) == ("not known", 2023)
    assert found.words == (
        "The cabbage family last stood here in 2023, 3 years before. "
        "No record for 2024, so not known for that time."
    )


def test_gaps_before_the_family_last_stood_there_do_not_matter() -> None:
    assert asked(garden(grew("kale", 2025))) == "The cabbage family last stood here in 2025, 1 year before."


def test_an_empty_record_says_so() -> None:
    assert (
        asked(garden(beds=[Bed(key="arch", name="Arch")]))
        == "No record for 4 of the last 4 years, so not known."
    )


def test_what_stands_there_now() -> None:
    assert asked(garden(planting("kale", sown="2026-04-01"))) == "The cabbage family stands here in 2026."


def test_a_crop_of_no_known_family_may_have_been_of_this_one() -> None:
    standing = garden(grew("pea", 2025), grew(None, 2024), grew("carrot", 2023), grew("potato", 2022))
    found = years_since(standing, "arch", "Brassicaceae", 2026)
    assert (found.answer, found.doubtful) == ("perhaps", (2024,))
    assert found.words == "What stood here in 2024 is of a family not known."


def test_a_planting_counts_in_every_year_it_stood() -> None:
    leeks = planting("leek", sown="2024-04-01", ended_on="2025-03-20")
    assert years_in_bed(leeks, garden(leeks)) == range(2024, 2026)
    assert (
        asked(garden(leeks), "Amaryllidaceae") == "The onion family last stood here in 2025, 1 year before."
    )


def test_a_planting_found_by_its_picking_counts_in_that_year() -> None:
    kale = planting("kale", first_picked="2025-02-01", ended_on="2025-04-01")
    assert list(years_in_bed(kale, garden(kale))) == [2025]
    assert list(years_in_bed(planting("kale"), garden())) == []


def test_a_mix_counts_for_all_its_families() -> None:
    mix = Planting(
        id="mix", bed="arch", bed_now="arch", beds=("arch",), crops=("carrot", "radish"),
        origin="year only", year=2025,
    )  # fmt: skip
    for family in ("Apiaceae", "Brassicaceae"):
        assert years_since(garden(mix), "arch", family, 2026).last_year == 2025


# ---- beds that changed ------------------------------------------------------------------------------

OLD = Bed(key="border", name="Border", ended=date(2025, 1, 1), became=("new-border",))
NEW = Bed(key="new-border", name="New border", begun=date(2025, 1, 1), came_from=("border",))


def test_a_renamed_bed_keeps_its_history() -> None:
    before = [grew("kale", 2023, "border"), grew("pea", 2024, "border"), grew("carrot", 2025, "new-border")]
    assert asked(garden(*before, beds=[OLD, NEW]), bed="new-border") == (
        "The cabbage family last stood here in 2023, 3 years before."
    )


@pytest.mark.parametrize("half", ["top", "foot"])
def test_both_halves_of_a_split_bed_keep_its_history(half: str) -> None:
    halves = [
        Bed(key=key, name=key, begun=date(2025, 1, 1), came_from=("border",)) for key in ("top", "foot")
    ]
    past = [grew("kale", 2023, "border"), grew("pea", 2024, "border"), grew("carrot", 2025, half)]
    assert asked(garden(*past, beds=[OLD, *halves]), bed=half).startswith(
        "The cabbage family last stood here in 2023"
    )


def test_beds_joined_need_a_record_of_each() -> None:
    joined = Bed(key="big", name="Big", begun=date(2025, 1, 1), came_from=("left", "right"))
    past = [
        grew("pea", 2022, "left"),
        grew("pea", 2023, "left"),
        grew("pea", 2024, "left"),
        grew("pea", 2025, "big"),
    ]
    right = [grew("leek", 2022, "right"), grew("leek", 2024, "right")]
    found = years_since(garden(*past, *right, beds=[joined]), "big", "Brassicaceae", 2026)
    assert (found.answer, found.unrecorded) == ("not known", (2023,))


def test_beds_that_came_from_each_other_do_not_loop() -> None:
    beds = [Bed(key="a", name="A", came_from=("b",)), Bed(key="b", name="B", came_from=("a",))]
    where = garden(beds=beds)
    assert lineage(where, "a") == ("a", "b")
    assert asked(where, bed="a") == "No record for 4 of the last 4 years, so not known."


def test_a_planting_moved_to_another_bed_counts_in_both() -> None:
    moved = planting("kale", sown="2025-04-01", beds=("arch", "hoop"), bed_now="hoop", ended_on="2025-11-01")
    where = Occupancy(garden(moved))
    for bed in ("arch", "hoop"):
        found = years_since(where.garden, bed, "Brassicaceae", 2026, within=where)
        assert found.last_year == 2025
