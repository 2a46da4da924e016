"""Looking back: notes as typed, questions, and full answers."""

from __future__ import annotations

from datetime import date

from gardens import garden_of, settings_of
from leafmould.garden.model import Planting
from leafmould.garden.queries import BedYear, EmptyBed, Past, kin, lineage, years_in_bed
from leafmould.notes.setting_values import Settings
from pages_garden import site_of

BEDS = """
    beds:
      - {name: Long border, parts: [north half, south half]}
      - {name: New border, was: Long border, from: 2026-01-01}
      - {name: Arch}
      - {name: Top bed}
      - {name: Never noted}
"""
SMALL = settings_of(
    f"garden: Small\nfrost: {{last: 22 May, first: 25 September}}{BEDS}",
    beforehand=((2022, "Long border", "leeks"),),
)
SOUTHERN = settings_of(
    """
    garden: Tern Bay
    place: {latitude: -42}
    frost: {last: 12 October, first: 1 May}
    beds: [{name: Arch}, {name: Top bed}]
    """
)
NOTES = """
    2024-04-10
    - sowed peas in Long border, north half
    - sowed beetroot in Long border, south half
    2024-07-20
    - cleared Long border
    2025-06-10
    - weeded Long border
    2026-04-12
    - sowed carrots in New border
    - sowed radishes in Arch
    2026-05-20
    - picked 20 radishes from Arch, cleared Arch
    2026-06-14
    - picked 1 kg chard from Top bed
    - picked 500 g chard from Top bed
"""
ON = date(2026, 7, 1)


def past_of(notes: str | dict[str, str] = NOTES, settings: Settings = SMALL, *, on: date = ON) -> Past:
    return Past(garden_of(notes, settings, on=on))


def ids(plantings: list[Planting] | tuple[Planting, ...]) -> list[str]:
    return [planting.id for planting in plantings]


def told(years: tuple[BedYear, ...]) -> list[tuple[int, str, list[str], tuple[str, ...]]]:
    return [(one.year, one.told, ids(one.plantings), one.families) for one in years]


def said(past: Past) -> dict[str, str]:
    """What the first page says of the beds with nothing in them."""
    page = next(iter(site_of(past.garden).pages))
    return {bed.link.text: bed.nothing_stands for bed in page.values.unused}


# Beds


def test_a_bed_year_by_year_with_silence_told_apart() -> None:
    assert told(past_of().bed_history("long-border")) == [
        (2025, "no planting noted", [], ()),
        (
            2024,
            "grown",
            ["beetroot_long-border_2024-04-10_south-half", "pea_long-border_2024-04-10_north-half"],
            ("Amaranthaceae", "Fabaceae"),
        ),
        (2023, "no notes", [], ()),
        (2022, "grown", ["leek_long-border_2022"], ("Amaryllidaceae",)),
    ]


def test_a_bed_nothing_was_noted_of_while_others_were_has_no_record() -> None:
    past = past_of()
    assert past.bed_year("arch", 2025).told == "no record"
    assert past.bed_year("new-border", 2025).told == "not yet a bed"
    assert past.bed_year("long-border", 2026).told == "no longer a bed"
    assert past.bed_year("never-noted", 2026).told == "no record"
    assert past.bed_history("never-noted") == ()


def test_a_part_leaves_out_what_stood_in_another() -> None:
    past = past_of()
    assert told(past.bed_history("long-border", part="North half"))[1:] == [
        (2024, "grown", ["pea_long-border_2024-04-10_north-half"], ("Fabaceae",)),
        (2023, "no notes", [], ()),
        (2022, "grown", ["leek_long-border_2022"], ("Amaryllidaceae",)),
    ]


def test_what_was_done_to_a_bed_alone_stands_in_its_year() -> None:
    year = past_of().bed_year("long-border", 2025)
    assert [(event.verb, event.when.day) for event in year.events] == [("weeded", date(2025, 6, 10))]


def test_in_the_south_a_bed_is_told_by_seasons_from_july_to_june() -> None:
    notes = """
        2025-10-12
        - sowed peas in Arch
        2026-01-20
        - cleared Arch
        2026-08-02
        - weeded Arch
    """
    past = past_of(notes, SOUTHERN, on=date(2026, 9, 1))
    assert told(past.bed_history("arch")) == [
        (2026, "no planting noted", [], ()),
        (2025, "grown", ["pea_arch_2025-10-12"], ("Fabaceae",)),
    ]
    assert [past.year_name(year) for year in past.years] == ["2026/27", "2025/26"]
    assert (past.year_begins(2025), past.year_ends(2025)) == (date(2025, 7, 1), date(2026, 6, 30))
    (peas,) = past.garden.plantings
    assert years_in_bed(peas, past.garden) == range(2025, 2027)


def test_years_in_a_bed_leave_out_the_time_under_glass() -> None:
    past = past_of("2025-11-20\n- sowed onions in trays\n2026-04-10\n- planted out onions in Arch", on=ON)
    onions = past.garden.plantings[-1]
    assert past.years_of[onions.id] == (2025, 2026)
    assert years_in_bed(onions, past.garden) == range(2026, 2027)


def test_what_a_bed_came_from_and_all_its_kin() -> None:
    garden = past_of().garden
    assert lineage(garden, "new-border") == ("new-border", "long-border")
    assert lineage(garden, "long-border") == ("long-border",)
    assert kin(garden, ["long-border"]) == ("long-border", "new-border")
    assert kin(garden, ["nowhere"]) == ("nowhere",)


# On a day


def test_what_is_in_the_ground_on_a_day() -> None:
    past = past_of()
    assert ids(past.in_the_ground(date(2024, 5, 1))) == [
        "beetroot_long-border_2024-04-10_south-half",
        "pea_long-border_2024-04-10_north-half",
    ]
    assert past.in_the_ground(date(2024, 4, 9)) == []
    assert past.in_the_ground(date(2024, 7, 20)) == []
    assert ids(past.in_the_ground(ON)) == ["chard_top-bed_2026-1", "carrot_new-border_2026-04-12"]
    assert ids(past.in_the_ground(ON, "new-border")) == ["carrot_new-border_2026-04-12"]


def test_a_bed_known_by_year_only_holds_nothing_on_a_day() -> None:
    assert past_of().in_the_ground(date(2022, 7, 1)) == []


def test_an_empty_bed_and_a_silent_one_are_told_apart() -> None:
    past = past_of()
    (radishes,) = past.plantings_by_bed["arch"]
    assert past.empty_beds(ON) == (
        EmptyBed(bed="arch", told="empty", since=date(2026, 5, 20), last=radishes),
        EmptyBed(bed="never-noted", told="no record"),
    )


def test_beds_are_empty_as_of_the_day_asked_about() -> None:
    past = past_of()
    assert past.empty_bed("new-border", date(2025, 12, 31)) == EmptyBed(
        bed="new-border", told="not yet a bed", since=date(2026, 1, 1)
    )
    assert past.empty_bed("long-border", ON) == EmptyBed(
        bed="long-border", told="no longer a bed", since=date(2025, 12, 31)
    )
    assert past.empty_bed("arch", date(2026, 5, 1)) == EmptyBed(bed="arch", told="no record")


def test_a_bed_is_empty_since_what_stood_there_was_moved_away() -> None:
    past = past_of(
        """
        2026-04-10
        - planted 3 leeks in Arch
        2026-06-01
        - moved leeks from Arch to Top bed
        2026-06-20
        - cleared Top bed
    """
    )
    leeks = past.garden.plantings[-1]
    assert past.empty_bed("arch", ON) == EmptyBed(
        bed="arch", told="empty", since=date(2026, 6, 1), last=leeks, gone_to="top-bed"
    )
    assert past.empty_bed("top-bed", ON) == EmptyBed(
        bed="top-bed", told="empty", since=date(2026, 6, 20), last=leeks
    )
    assert ids(past.in_the_ground(date(2026, 5, 1), "arch")) == ["leek_arch_2026-04-10"]
    assert past.in_the_ground(date(2026, 6, 1), "arch") == []
    assert ids(past.in_the_ground(date(2026, 6, 1), "top-bed")) == ["leek_arch_2026-04-10"]


def test_a_lasting_plant_stands_under_the_name_its_bed_had_that_day() -> None:
    past = past_of("2024-04-10\n- planted rhubarb in Long border")
    assert ids(past.in_the_ground(date(2025, 5, 1), "long-border")) == ["rhubarb_long-border_2024-04-10"]
    assert past.in_the_ground(date(2025, 5, 1), "new-border") == []
    assert ids(past.in_the_ground(date(2025, 12, 31), "long-border")) == ["rhubarb_long-border_2024-04-10"]
    assert past.in_the_ground(date(2026, 5, 1), "long-border") == []
    assert ids(past.in_the_ground(date(2026, 5, 1), "new-border")) == ["rhubarb_long-border_2024-04-10"]


def test_a_bed_known_by_its_years_only_is_not_called_unrecorded() -> None:
    settings = settings_of(
        f"garden: Small{BEDS}", beforehand=((2021, "Arch", "peas"), (2022, "Arch", "leeks"))
    )
    past = past_of("2026-04-10\n- sowed peas in Top bed", settings)
    assert past.empty_bed("arch", ON) == EmptyBed(
        bed="arch", told="no record", last=past.garden.planting_by_id["leek_arch_2022"]
    )
    assert said(past)["Arch"] == "Nothing is recorded here since leeks in 2022."


def test_pages_say_since_when_a_bed_is_empty_and_where_the_last_went() -> None:
    past = past_of(
        """
        2026-04-10
        - planted 3 leeks in Arch
        2026-06-01
        - moved leeks from Arch to Top bed
    """
    )
    assert said(past) == {
        "Arch": "Nothing is recorded as standing here since 1 June 2026, 30 days ago: "
        "leek (moved to Top bed).",
        "Never noted": "Nothing is recorded here yet. No record does not mean the bed is empty.",
        "New border": "Nothing is recorded here yet. No record does not mean the bed is empty.",
    }


def test_an_end_nobody_noted_is_said_to_be_presumed() -> None:
    past = past_of("2025-04-12\n- sowed radish in Arch\n2025-06-01\n- picked radish from Arch\n")
    assert said(past)["Arch"] == (
        "No note says how radish ended. It is presumed over since 12 April 2026, 80 days ago "
        "(12 months since it began); nothing is recorded as standing here since."
    )


# Crops and families


def test_a_crop_by_variety_and_by_year() -> None:
    past = past_of(
        """
        2025-04-10
        - sowed pea 'Meteor' in Arch
        2025-07-10
        - picked 1 kg peas from Arch, cleared Arch
        2026-04-10
        - sowed pea 'Meteor' in Arch
        - sowed peas in Top bed
    """
    )
    assert {name: ids(tuple(found)) for name, found in past.varieties_of("pea").items()} == {
        "Meteor": ["pea_arch_2025-04-10_meteor", "pea_arch_2026-04-10_meteor"],
        "": ["pea_top-bed_2026-04-10"],
    }
    assert {year: ids(tuple(found)) for year, found in past.crop_years("pea").items()} == {
        2025: ["pea_arch_2025-04-10_meteor"],
        2026: ["pea_arch_2026-04-10_meteor", "pea_top-bed_2026-04-10"],
    }
    assert {year: [p.grams for p in found] for year, found in past.picked_years("pea").items()} == {
        2025: [1000.0]
    }
    assert past.varieties_of("kale") == {}


def test_families_by_bed_and_year_count_what_is_not_known_apart() -> None:
    past = past_of("2026-04-10\n- sowed peas in Arch\n- sowed unknown in Arch\n- sowed beetroot in Top bed")
    year = past.bed_year("arch", 2026)
    assert (year.families, year.others) == (("Fabaceae",), 1)
    assert {
        (family, bed, season): planting.id
        for family, beds in past.family_beds.items()
        for bed, seasons in beds.items()
        for season, planting in seasons.items()
    } == {
        ("Fabaceae", "arch", 2026): "pea_arch_2026-04-10",
        ("Amaranthaceae", "top-bed", 2026): "beetroot_top-bed_2026-04-10",
        ("Amaryllidaceae", "long-border", 2022): "leek_long-border_2022",
    }


def test_families_of_a_bed_are_also_those_of_what_it_came_from() -> None:
    past = past_of()
    assert past.families_of_bed("new-border") == (
        "Apiaceae",
        "Amaryllidaceae",
        "Amaranthaceae",
        "Fabaceae",
    )
    assert past.families_of_bed("never-noted") == ()


# Notes


def test_this_week_in_earlier_years_across_new_year() -> None:
    past = past_of(
        """
        2024-12-29
        - weeded Arch
        2024-12-30
        - sowed broad beans in Arch
        2025-01-09
        - weeded Arch
        2025-01-10
        - weeded Top bed
        2026-01-01
        - weeded Arch
    """,
        on=date(2026, 1, 2),
    )
    assert [entry.id for entry in past.this_week_earlier()] == ["2024-12-30", "2025-01-09"]


def test_lessons_come_newest_first_by_bed_by_crop_and_of_earlier_years() -> None:
    past = past_of(
        {
            "2025.md": "---\ndate: 2025-06-10\nbed: Arch\ncrop: peas\ndid: sowed\nlesson: Net the peas at once.\n---",
            "2026.md": "---\ndate: 2026-06-10\nbed: Top bed\n---\nNext year sow the chard later.",
            "none.md": "---\ndate: 2026-06-11\nbed: Arch\n---\nA dry week.",
        }
    )
    assert [(entry.id, entry.lesson) for entry in past.lessons()] == [
        ("2026", ("Next year sow the chard later.",)),
        ("2025", ("Net the peas at once.",)),
    ]
    assert [entry.id for entry in past.lessons(bed="arch")] == ["2025"]
    assert [entry.id for entry in past.lessons(crop="pea")] == ["2025"]
    assert [entry.id for entry in past.lessons(before=2026)] == ["2025"]
    assert past.lessons(bed="top-bed", crop="pea") == []


def test_weeks_without_notes_are_gaps_until_today() -> None:
    gaps = past_of(on=date(2026, 7, 15)).gaps(2026, longer_than=30)
    assert [(g.first, g.last, g.days, g.before.id, g.after and g.after.id) for g in gaps] == [
        (date(2026, 4, 12), date(2026, 5, 20), 38, "2026-04-12", "2026-05-20"),
        (date(2026, 6, 14), date(2026, 7, 15), 31, "2026-06-14", None),
    ]
    assert past_of().gaps(2023, longer_than=30) == ()
