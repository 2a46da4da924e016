"""Looking back: notes as typed, questions, and full answers."""

from __future__ import annotations

from datetime import date

from gardens import garden_of, settings_of
from leafmould.garden import queries
from leafmould.garden.queries import BedYear, EmptyBed, Gap

SMALL = settings_of(
    """
    garden: Small
    frost: {last: 22 May, first: 25 September}
    beds:
      - {name: Long border, parts: [north half, south half]}
      - {name: New border, was: Long border, from: 2026-01-01}
      - {name: Arch}
      - {name: Top bed}
      - {name: Never noted}
    """,
    beforehand=((2022, "Long border", "leeks"),),
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


def test_a_bed_year_by_year_through_its_renaming():
    garden = garden_of(NOTES, SMALL, on=ON)
    assert queries.bed_history(garden, "new-border") == (
        BedYear(
            bed="new-border", year=2026, told="grown",
            plantings=("carrot_new-border_2026-04-12",), families=("Apiaceae",),
        ),
        BedYear(bed="new-border", year=2025, told="nothing grown", plantings=(), families=()),
        BedYear(
            bed="new-border", year=2024, told="grown",
            plantings=("beetroot_long-border_2024-04-10_south-half", "pea_long-border_2024-04-10_north-half"),
            families=("Amaranthaceae", "Fabaceae"),
        ),
        BedYear(bed="new-border", year=2023, told="no record", plantings=(), families=()),
        BedYear(
            bed="new-border", year=2022, told="grown",
            plantings=("leek_long-border_2022",), families=("Amaryllidaceae",),
        ),
    )  # fmt: skip


def test_a_part_leaves_out_what_stood_in_another():
    garden = garden_of(NOTES, SMALL, on=ON)
    told = queries.bed_year(garden, "long-border", 2024, part="north half")
    assert (told.plantings, told.families) == (("pea_long-border_2024-04-10_north-half",), ("Fabaceae",))


def test_a_bed_without_any_note_has_no_history():
    garden = garden_of(NOTES, SMALL, on=ON)
    assert queries.bed_history(garden, "never-noted") == ()
    assert queries.bed_year(garden, "never-noted", 2026).told == "no record"


def test_the_last_year_of_a_family():
    garden = garden_of(NOTES, SMALL, on=ON)
    assert queries.last_year_of_family(garden, "new-border", "Fabaceae") == 2024
    assert queries.last_year_of_family(garden, "new-border", "Fabaceae", part="south half") is None
    assert queries.last_year_of_family(garden, "new-border", "Amaryllidaceae") == 2022
    assert queries.last_year_of_family(garden, "new-border", "Solanaceae") is None


def test_what_is_in_the_ground_on_a_day():
    garden = garden_of(NOTES, SMALL, on=ON)
    assert [p.id for p in queries.in_the_ground(garden, date(2024, 5, 1))] == [
        "beetroot_long-border_2024-04-10_south-half",
        "pea_long-border_2024-04-10_north-half",
    ]
    assert [p.id for p in queries.in_the_ground(garden, ON)] == [
        "chard_top-bed_2026-1",
        "carrot_new-border_2026-04-12",
    ]
    assert [p.id for p in queries.in_the_ground(garden, ON, "new-border")] == ["carrot_new-border_2026-04-12"]
    assert queries.in_the_ground(garden, date(2024, 7, 20)) == ()


def test_an_empty_bed_and_a_silent_one_are_told_apart():
    garden = garden_of(NOTES, SMALL, on=ON)
    assert queries.empty_beds(garden) == (
        EmptyBed(bed="arch", told="empty", since=date(2026, 5, 20), is_estimated=False),
        EmptyBed(bed="never-noted", told="no record", since=None, is_estimated=False),
    )


def test_a_bed_is_empty_after_what_was_moved_away():
    garden = garden_of(
        "2026-04-10\n- planted 3 leeks in Arch\n2026-06-01\n- moved leeks from Arch to Top bed", SMALL, on=ON
    )
    assert queries.in_the_ground(garden, ON, "arch") == ()
    assert [p.id for p in queries.in_the_ground(garden, ON, "top-bed")] == ["leek_arch_2026-04-10"]
    assert [p.id for p in queries.in_the_ground(garden, date(2026, 5, 1), "arch")] == ["leek_arch_2026-04-10"]


def test_this_week_in_earlier_years():
    garden = garden_of(
        "2024-12-30\n- sowed broad beans in Arch\n2025-01-04\n- weeded Arch\n2025-01-06\n- weeded Top bed\n2026-01-02\n- weeded Arch",
        SMALL,
        on=date(2026, 1, 2),
    )
    assert [e.id for e in queries.this_week_earlier(garden)] == ["2025-01-04:1", "2024-12-30:1"]


def test_lessons_come_newest_first_and_by_bed_or_crop():
    garden = garden_of(
        {
            "2025.md": "---\ndate: 2025-06-10\nbed: Arch\ncrop: peas\ndid: sowed\nlesson: Net the peas at once.\n---",
            "2026.md": "---\ndate: 2026-06-10\nbed: Top bed\n---\nNext year sow the chard later.",
        },
        SMALL,
        on=ON,
    )
    assert [(x.text, x.year) for x in queries.lessons(garden)] == [
        ("Next year sow the chard later.", 2026),
        ("Net the peas at once.", 2025),
    ]
    assert [x.entry for x in queries.lessons(garden, bed="arch")] == ["2025"]
    assert [x.entry for x in queries.lessons(garden, crop="pea")] == ["2025"]
    assert queries.lessons(garden, bed="top-bed", crop="pea") == ()


def test_months_without_notes_are_gaps():
    garden = garden_of(NOTES, SMALL, on=ON)
    assert queries.gaps(garden) == (
        Gap(first=date(2024, 4, 11), last=date(2024, 7, 19)),
        Gap(first=date(2024, 7, 21), last=date(2025, 6, 9)),
        Gap(first=date(2025, 6, 11), last=date(2026, 4, 11)),
    )
    assert queries.gaps(garden)[0].days == 100
    assert not queries.has_notes(garden, date(2025, 1, 1), date(2025, 5, 31))
    assert queries.has_notes(garden, date(2025, 6, 1), date(2025, 6, 30))


def test_totals_by_crop_and_year():
    garden = garden_of(NOTES, SMALL, on=ON)
    totals = {
        (t.crop, t.year): ([a.written for a in t.picked], t.picked_g, t.pickings)
        for t in queries.totals(garden)
    }
    assert totals == {
        ("chard", 2026): (["1.5 kg"], 1500.0, ("2026-06-14:1", "2026-06-14:2")),
        ("radish", 2026): (["20"], None, ("2026-05-20:1",)),
    }
    assert [t.crop for t in queries.totals(garden, crop="chard", year=2026)] == ["chard"]
    assert queries.totals(garden, crop="chard", year=2025) == ()


def test_imperial_gardens_add_in_pounds():
    garden = garden_of(
        "2026-06-14\n- picked 3 lb 4 oz chard from Arch\n- picked 12 oz chard from Arch",
        settings_of("garden: I\nunits: imperial\nbeds: [{name: Arch}]"),
        on=ON,
    )
    assert [a.written for a in queries.totals(garden)[0].picked] == ["4 lb"]


def test_varieties_of_a_crop_side_by_side():
    garden = garden_of(
        "2025-04-10\n- sowed pea 'Meteor' in Arch\n2026-04-10\n- sowed pea 'meteor' in Arch\n- sowed peas in Top bed",
        SMALL,
        on=ON,
    )
    assert queries.varieties_of(garden, "pea") == {
        "": ("pea_top-bed_2026-04-10",),
        "Meteor": ("pea_arch_2025-04-10_meteor", "pea_arch_2026-04-10_meteor"),
    }
    assert [p.id for p in queries.crop_history(garden, "pea", "METEOR")] == [
        "pea_arch_2025-04-10_meteor",
        "pea_arch_2026-04-10_meteor",
    ]


def test_the_notes_before_and_after_in_a_bed():
    garden = garden_of(NOTES, SMALL, on=ON)
    before, after = queries.neighbours(garden, "2026-05-20")
    assert (before and before.id, after and after.id) == ("2026-04-12", "2026-06-14")
    before, after = queries.neighbours(garden, "2026-05-20", ids=garden.entries_by_bed["arch"])
    assert (before and before.id, after) == ("2026-04-12", None)
