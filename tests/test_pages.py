"""Page values: what stands on each page, that nothing leads nowhere, and that silence is told as silence."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from gardens import garden_of
from leafmould.pages import addresses
from leafmould.pages.bed import BedPage
from leafmould.pages.beds import BedYearsPage
from leafmould.pages.by_date import ByDatePage, NotesPage
from leafmould.pages.chapters import MOST_ROWS, chapters
from leafmould.pages.crop import CropPage, CropsPage
from leafmould.pages.families import FamiliesPage
from leafmould.pages.figures import day_figure, total_figures, when_figure
from leafmould.pages.lists import LessonsPage
from leafmould.pages.note import NotePage
from leafmould.pages.now import NowPage
from leafmould.pages.page import Figure
from leafmould.pages.problems import ProblemsPage
from leafmould.pages.season import SeasonPage
from leafmould.pages.site import Site
from leafmould.pages.turned_out import TurnedOutPage
from leafmould.values.quantities import Amount
from leafmould.values.when import When
from pages_garden import BEDS, ON, Line, a_problem, hand_made, site_of


@pytest.fixture(scope="module")
def site() -> Site:
    return site_of(hand_made())


def values(site: Site, address: str) -> Any:
    """The values of the page at an address."""
    return next(page.values for page in site.pages if page.address == address)


# --- addresses -----------------------------------------------------------------------------------------


def test_every_page_has_an_address_of_its_own_whatever_the_disk_takes_for_the_same(site: Site) -> None:
    found = [page.address.casefold() for page in site.pages]
    assert len(found) == len(set(found))


def test_f92_names_that_differ_only_by_capitals_or_marks_get_files_of_their_own() -> None:
    found = addresses.note_addresses(["2026/pea", "2026/Pea", "2026/PEA", "2026/pea "])
    assert found["2026/pea"] == "notes/2026/pea.html"
    assert len({address.casefold() for address in found.values()}) == 4


def test_f93_slugs_never_collide_or_vanish() -> None:
    names = ["Möhre", "Mohre", "トマト", "½", "C+", "C", "Bed 1/2", "Bed 1-2", "..", "a\\b", "CON", "%2e"]
    found = addresses.note_addresses(names)
    assert len({address.casefold() for address in found.values()}) == len(names)
    assert all(address.startswith("notes/") and ".." not in address for address in found.values())


def test_a_further_dated_part_of_a_file_is_numbered_and_cannot_meet_another_file() -> None:
    found = addresses.note_addresses(["2026/june", "2026/june#2", "2026/june-2", "2026/june.2"])
    assert found["2026/june#2"] == "notes/2026/june.2.html"
    assert len(set(found.values())) == 4


def test_a_bed_called_index_does_not_take_the_page_of_all_beds() -> None:
    assert addresses.bed_addresses(["index"])["index"] != addresses.BEDS


def test_an_address_does_not_change_because_another_note_is_added() -> None:
    alone = addresses.note_addresses(["2026/Peas in june"])
    both = addresses.note_addresses(["2026/Peas in june", "2026/06-01"])
    assert alone["2026/Peas in june"] == both["2026/Peas in june"]


# --- dates and amounts ---------------------------------------------------------------------------------


def test_dates_are_read_by_people_and_machines_and_coarse_ones_stay_as_written() -> None:
    spring = When(first=date(2024, 3, 1), last=date(2024, 5, 31), written="spring 2024")
    april = When(first=date(2026, 4, 1), last=date(2026, 4, 30), written="2026-04")
    year = When(first=date(2015, 1, 1), last=date(2015, 12, 31), written="2015")
    late = When(first=date(2024, 8, 21), last=date(2024, 8, 31), written="late August")
    assert day_figure(date(2026, 6, 12)) == Figure(text="12 June 2026", value="2026-06-12", is_time=True)
    assert when_figure(spring) == Figure(text="spring 2024", value="2024-03-01/2024-05-31")
    assert when_figure(april) == Figure(text="April 2026", value="2026-04", is_time=True)
    assert when_figure(year) == Figure(text="2015", value="2015", is_time=True)
    assert when_figure(late).text == "late August 2024"


def test_only_what_can_be_added_is_added_and_a_guess_makes_the_sum_a_guess() -> None:
    def amount(written: str, value: float | None, unit: str, **more: Any) -> Amount:
        return Amount(written=written, low=value, high=value, unit=unit, **more)

    found = total_figures(
        [
            amount("1.2 kg", 1.2, "kg"),
            amount("about 300 g", 300, "g", is_about=True),
            amount("2 bunches", 2, "bunch"),
            amount("a bunch", 1, "bunch"),
            amount("a few", None, "piece", whole="a few"),
        ],
        "metric",
    )
    assert [(f.text, f.value, f.is_estimated) for f in found] == [
        ("1.5 kg", "1500", True),
        ("3 bunches", "3", False),
        ("a few", "a few", False),
    ]


# --- the first page ------------------------------------------------------------------------------------


def test_now_shows_what_stands_where_and_which_beds_have_no_record(site: Site) -> None:
    now: NowPage = values(site, addresses.NOW)
    assert [(bed.link.text, [p.name for p in bed.standing]) for bed in now.beds] == [
        ("Long border", ["carrot ‘Nantes’", "pea ‘Hurst's Green Shaft’", "leek"]),
        ("Hoop bed", ["tomato ‘Stupice’"]),
        ("Arch", ["beetroot ‘Boltardy’"]),
        ("Old pear", ["pear"]),
    ]
    assert [(bed.link.text, bed.nothing_stands) for bed in now.unused] == [
        ("Root yard", "Nothing is recorded here yet. No record does not mean the bed is empty."),
        ("New arch", "This bed begins on 1 September 2026."),
    ]


def test_now_remembers_this_week_of_earlier_years_and_lessons_from_before(site: Site) -> None:
    now: NowPage = values(site, addresses.NOW)
    assert now.week == "12–22 July"
    assert [(year.name, [n.link.text for n in year.notes]) for year in now.earlier] == [
        ("2025", ["saw aphids on pea in Arch", "lost pea 'Meteor', mildew"]),
        ("2024", ["picked 1.1 kg beetroot from Long border"]),
    ]
    assert [lesson.text for lesson in now.lessons] == [
        "Next year sow the peas in March and water them.",
        "Next year plant the tomatoes a week later, the frost on 21 May took two.",
    ]


def test_f96_a_leap_day_belongs_to_the_week_around_it_in_every_year() -> None:
    lines = [Line(day="2024-02-29", verb="noted weather", text="frost −6")]
    for day in (date(2025, 2, 28), date(2025, 3, 1)):
        now: NowPage = values(site_of(hand_made(lines, day=day, with_pear=False)), addresses.NOW)
        assert [n.link.text for year in now.earlier for n in year.notes] == ["frost −6"]


def test_due_lines_are_at_most_seven_and_lapse() -> None:
    lines = [
        Line(day="2026-05-10", verb="sowed", text=f"sowed radish '{n}' in Arch", crop="radish", variety=f"R{n}", bed="Arch")
        for n in range(1)
    ]  # fmt: skip
    beds = [*BEDS, *(replace(BEDS[2], key=f"arch-{n}", name=f"Arch {n}") for n in range(12))]
    many = [replace(lines[0], bed=f"Arch {n}") for n in range(9)]
    now: NowPage = values(site_of(hand_made(many, beds=beds, day=date(2026, 6, 8))), addresses.NOW)
    assert (len(now.due), now.more_due) == (7, 2)
    later: NowPage = values(site_of(hand_made(many, beds=beds, day=date(2026, 9, 1))), addresses.NOW)
    said = (*later.pick, *later.due, *later.overdue)
    assert [line.name for line in said] == ["pear"]  # the old tree is; no radish any more


def test_weeks_without_a_note_are_said_to_be_silent() -> None:
    now: NowPage = values(site_of(hand_made(day=date(2026, 8, 20))), addresses.NOW)
    assert now.quiet_since is not None
    assert (now.quiet_since.text, now.quiet_for) == ("13 July 2026", "38 days")


def test_a_garden_with_a_name_alone_has_all_its_pages() -> None:
    empty = site_of(hand_made([], beds=(), with_pear=False))
    now: NowPage = values(empty, addresses.NOW)
    assert now.is_new
    assert {page.template for page in empty.pages} >= {"beds.html", "crops.html", "families.html"}


# --- beds ----------------------------------------------------------------------------------------------


def test_every_planting_has_its_section_on_its_beds_page(site: Site) -> None:
    found = {
        section.id: page.address
        for page in site.pages
        if isinstance(page.values, BedPage)
        for year in page.values.years
        for section in year.sections
    }
    assert found.keys() == {planting.id for planting in hand_made().plantings}


def test_a_bed_tells_its_years_newest_first_with_what_was_done(site: Site) -> None:
    bed: BedPage = values(site, "beds/arch.html")
    assert [(y.name, [s.line.name for s in y.sections]) for y in bed.years] == [
        ("2026", ["beetroot ‘Boltardy’"]),
        ("2025", ["pea ‘Meteor’"]),
    ]
    pea = bed.years[1].sections[0]
    assert [(d.on.text, d.text, d.on.to) for d in pea.doings][:2] == [
        ("2 April", "sowed pea 'Meteor' in Arch", "notes/2025/04-02-arch-8.html"),
        ("14 June", "picked 1.2 kg pea 'Meteor' from Arch, gave away 400 g", "notes/2025/06-14-arch-10.html"),
    ]
    assert [(f.text, f.to) for f in pea.totals] == [("2 kg", "beds/arch.html#pea_arch_2025-04-02_meteor")]


def test_what_was_done_to_a_whole_bed_stands_under_its_year(site: Site) -> None:
    bed: BedPage = values(site, "beds/root-yard.html")
    assert [(y.name, [d.text for d in y.doings]) for y in bed.years] == [
        ("2026", ["limed Root yard 200 g/m²"])
    ]


def test_families_by_year_tell_silence_from_emptiness(site: Site) -> None:
    bed: BedPage = values(site, "beds/hoop-bed.html")
    assert [(f.year.text, [m.mark for m in f.families], f.silence) for f in bed.families] == [
        ("2026", ["Ni"], ""),
        ("2025", [], "no record"),
        ("2024", ["Ni"], ""),
    ]


def test_a_long_history_is_split_by_years_and_each_year_stands_once() -> None:
    found = chapters("beds/arch.html", dict.fromkeys(range(2016, 2027), MOST_ROWS // 2), str)
    assert [c.address for c in found[:2]] == ["beds/arch.html", "beds/arch/2024.html"]
    assert found[1].name == "2023–2024"
    assert [y for c in found for y in c.years] == list(range(2026, 2015, -1))


def test_a_bed_without_a_record_has_one_page() -> None:
    found = chapters("beds/arch.html", {}, str)
    assert [(c.address, c.years) for c in found] == [("beds/arch.html", ())]


# --- beds by years -------------------------------------------------------------------------------------


def test_every_bed_in_every_year_leads_to_its_plantings(site: Site) -> None:
    table: BedYearsPage = values(site, addresses.BED_YEARS)
    assert [year.text for year in table.years] == ["2026", "2025", "2024"]
    shown = {
        row.bed.text: [[s.link.text for s in c.stood] or c.silence for c in row.cells] for row in table.rows
    }
    assert shown["Arch"] == [["beetroot ‘Boltardy’"], ["pea ‘Meteor’"], "no record"]
    assert shown["Old pear"] == [["pear"], ["pear"], ["pear"]]
    assert shown["New arch"][1:] == ["not yet a bed", "not yet a bed"]
    assert all(s.link.to for row in table.rows for c in row.cells for s in c.stood)


def test_a_year_without_any_note_is_told_apart_from_a_bed_without_one() -> None:
    lines = [
        Line(day="2023-04-01", verb="sowed", text="sowed pea in Arch", crop="pea", bed="Arch"),
        Line(day="2023-08-01", verb="cleared", text="cleared pea from Arch", crop="pea", bed="Arch"),
        Line(day="2026-04-01", verb="sowed", text="sowed pea in Hoop bed", crop="pea", bed="Hoop bed"),
    ]
    table: BedYearsPage = values(site_of(hand_made(lines, with_pear=False)), addresses.BED_YEARS)
    arch = next(row for row in table.rows if row.bed.text == "Arch")
    assert [cell.silence for cell in arch.cells] == ["no record", "no notes", "no notes", ""]


def test_a_new_bed_leads_back_to_the_one_it_came_from(site: Site) -> None:
    table: BedYearsPage = values(site, addresses.BED_YEARS)
    row = next(row for row in table.rows if row.bed.text == "New arch")
    assert [[link.text for link in cell.was] for cell in row.cells] == [["Arch"], ["Arch"], []]


def test_southern_seasons_turn_on_the_first_of_july() -> None:
    lines = [
        Line(day="2025-11-02", verb="sowed", text="sowed pea in Arch", crop="pea", bed="Arch"),
        Line(day="2026-01-20", verb="picked", text="picked 2 kg pea from Arch", crop="pea", bed="Arch", grams=2000),
        Line(day="2026-02-02", verb="cleared", text="cleared pea from Arch", crop="pea", bed="Arch"),
    ]  # fmt: skip
    south = site_of(hand_made(lines, day=date(2026, 3, 1), is_southern=True, with_pear=False))
    table: BedYearsPage = values(south, addresses.BED_YEARS)
    assert [(year.text, year.to) for year in table.years] == [("2025/26", "seasons/2025-26.html")]
    assert "".join(south.months) == "JASONDJFMAMJ"
    season: SeasonPage = values(south, "seasons/2025-26.html")
    assert [p.first.text for p in season.picked] == ["20 January"]


# --- crops ---------------------------------------------------------------------------------------------


def test_a_crop_shows_years_with_days_taken_and_totals_that_lead_home(site: Site) -> None:
    crop: CropPage = values(site, "crops/beetroot.html")
    rows = [
        (y.year.text, [b.text for b in y.beds], y.first_sown and y.first_sown.text, y.days and y.days.text)
        for y in crop.years
    ]
    assert rows == [
        ("2026", ["Arch"], "12 April", None),
        ("2024", ["Long border"], "12 April", "81 days"),
    ]
    assert [f.text for f in crop.years[1].totals.figures] == ["2 kg"]
    assert crop.years[1].totals.figures[0].to == "seasons/2024.html#picked-beetroot"


def test_varieties_stand_side_by_side(site: Site) -> None:
    crop: CropPage = values(site, "crops/pea.html")
    assert [(v.name, [y.text for y in v.years], v.endings) for v in crop.varieties] == [
        ("Hurst's Green Shaft", ["2026"], ""),
        ("Meteor", ["2025"], "1 of 1 lost"),
    ]


def test_several_plantings_of_a_variety_in_one_year_are_told_apart_by_their_beds() -> None:
    notes = """
        2024-04-02
        - sowed pea 'Meteor' in Arch
        2025-04-02
        - sowed pea 'Meteor' in Arch
        - sowed pea 'Meteor' in Top bed
        """
    crop: CropPage = values(site_of(garden_of(notes)), "crops/pea.html")
    assert [[y.text for y in v.years] for v in crop.varieties] == [["2024", "2025 (Arch)", "2025 (Top bed)"]]


def test_crops_stand_from_a_to_z_by_their_own_words(site: Site) -> None:
    crops: CropsPage = values(site, addresses.CROPS)
    assert [(x.letter, [c.link.text for c in x.crops]) for x in crops.letters] == [
        ("B", ["beetroot"]),
        ("C", ["carrot"]),
        ("L", ["leek"]),
        ("P", ["pea", "pear"]),
        ("T", ["tomato"]),
    ]


def test_families_name_their_beds_with_the_newest_first(site: Site) -> None:
    page: FamiliesPage = values(site, addresses.FAMILIES)
    beet = next(f for f in page.families if f.botanical == "Amaranthaceae")
    assert [(b.bed.text, b.last) for b in beet.beds] == [
        ("Arch", "this year"),
        ("Long border", "2 years ago"),
    ]


# --- seasons, notes, lessons, problems -----------------------------------------------------------------


def test_a_season_gives_firsts_sums_and_its_silences(site: Site) -> None:
    season: SeasonPage = values(site, "seasons/2025.html")
    assert [f.text for f in season.numbers] == ["7 notes", "3 plantings", "3 pickings", "2 crops"]
    assert [f.text for f in season.weighed] == ["5 kg"]
    assert [(p.crop.text, p.first.text, p.last.text) for p in season.picked] == [
        ("carrot", "12 August", "12 August"),
        ("pea", "14 June", "1 July"),
    ]
    assert [(g.first.text, g.last.text, g.days) for g in season.gaps] == [("20 April", "14 June", "55 days")]


def test_notes_stand_by_date_newest_first(site: Site) -> None:
    index: ByDatePage = values(site, addresses.BY_DATE)
    assert [s.text for s in index.seasons] == ["2026", "2025", "2024"]
    year: NotesPage = values(site, "by-date/2026.html")
    assert [m.name for m in year.months] == ["July 2026", "June 2026", "May 2026", "April 2026"]


def test_a_year_of_very_many_notes_is_split_by_months() -> None:
    days = [date(2026, month, day) for month in (1, 2, 3) for day in range(1, 29)]
    lines = [
        Line(day=day.isoformat(), verb="noted weather", text=f"frost −{n}") for day in days for n in range(8)
    ]
    long = site_of(hand_made(lines, with_pear=False))
    year: NotesPage = values(long, "by-date/2026.html")
    assert [(m.name, m.page and m.page.to) for m in year.months] == [
        ("March 2026", "by-date/2026-03.html"),
        ("February 2026", "by-date/2026-02.html"),
        ("January 2026", "by-date/2026-01.html"),
    ]
    month: NotesPage = values(long, "by-date/2026-02.html")
    assert len(month.months[0].notes) == 224


def test_a_note_leads_to_the_notes_before_and_after_it_in_its_bed_and_crop(site: Site) -> None:
    note: NotePage = values(site, "notes/2025/07-13-arch-12.html")
    ways = [(n.about.text, n.before and n.before.text, n.after and n.after.text) for n in note.neighbours]
    assert ways == [
        ("pea", "1 July", "22 July"),
        ("Arch", "1 July", "22 July"),
    ]
    assert note.before is not None
    assert note.before.text == "1 July 2025: pea, Arch"


def test_a_note_says_what_was_understood_and_leads_to_the_planting(site: Site) -> None:
    note: NotePage = values(site, "notes/2025/06-14-arch-10.html")
    line = note.understood[0]
    assert (line.verb, line.slots) == ("picked", ("1200 g",))
    assert [(p.text, p.to) for p in line.plantings] == [
        ("pea ‘Meteor’, Arch", "beds/arch.html#pea_arch_2025-04-02_meteor")
    ]


def test_lessons_come_newest_first(site: Site) -> None:
    page: LessonsPage = values(site, addresses.LESSONS)
    assert [(y.name, len(y.lessons)) for y in page.years] == [("2025", 1), ("2024", 1)]


def test_problems_are_for_the_household_alone() -> None:
    problems = (a_problem(), a_problem(file="garden.yaml"))
    public = site_of(hand_made(), problems=problems)
    assert addresses.PROBLEMS not in {page.address for page in public.pages}
    assert not any(isinstance(page.values, NotePage) and page.values.problems for page in public.pages)
    household = site_of(hand_made(), household=True, problems=problems)
    page: ProblemsPage = values(household, addresses.PROBLEMS)
    assert page.counts == "2 things"
    (group,) = page.groups
    assert group.heading == "To be asked"
    (slip,) = group.slips
    assert slip.said == ("No bed is called “Nroth”. Did you mean “North”?",)
    assert [(spot.link.text, spot.where) for spot in slip.spots] == [
        ("garden.yaml", "line 4"),
        ("notes/2026/06-20.md", "line 4"),
    ]


def test_the_same_garden_gives_the_same_values() -> None:
    one, two = site_of(hand_made(day=ON)), site_of(hand_made(day=ON))
    assert list(one.pages) == list(two.pages)


def test_a_bed_that_was_only_tended_is_not_said_to_be_without_record(site: Site) -> None:
    table: BedYearsPage = values(site, addresses.BED_YEARS)
    row = next(row for row in table.rows if row.bed.text == "Root yard")
    assert [cell.silence for cell in row.cells] == ["no planting noted", "no record", "no record"]


def test_what_belongs_to_two_batches_together_is_told_at_both_and_given_to_neither() -> None:
    lines = [
        Line(day="2026-04-01", verb="sowed", text="sowed pea in Arch", crop="pea", bed="Arch"),
        Line(day="2026-05-01", verb="sowed", text="sowed pea in Hoop bed", crop="pea", bed="Hoop bed"),
        Line(day="2026-07-01", verb="picked", text="picked 500 g pea", crop="pea", grams=500),
    ]
    made = hand_made(lines, with_pear=False)
    batches = tuple(replace(p, group="g", bed="arch", bed_now="arch", beds=("arch",)) for p in made.plantings)
    events = (*made.events[:2], replace(made.events[2], group="g"))
    pickings = tuple(replace(p, group="g") for p in made.pickings)
    garden = replace(
        made,
        plantings=batches,
        pickings=pickings,
        events=events,
        planting_by_id={p.id: p for p in batches},
        event_by_id={e.id: e for e in events},
        picking_by_id={p.id: p for p in pickings},
        plantings_by_group={"g": tuple(p.id for p in batches)},
    )
    bed: BedPage = values(site_of(garden), "beds/arch.html")
    told = [
        (s.batches, [d.text for d in s.shared], [f.text for f in s.shared_totals], s.totals)
        for year in bed.years
        for s in year.sections
    ]
    together = "One of 2 batches. Noted for them together, without saying which:"
    assert told == [(together, ["picked 500 g pea"], ["500 g"], ())] * 2


def test_expectations_that_did_not_hold_come_first(site: Site) -> None:
    page: TurnedOutPage = values(site, addresses.TURNED_OUT)
    assert page.shown == len(page.missed) + len(page.held) == page.in_all
    assert all(row.verdict.endswith((" later", " sooner")) for row in page.missed)
    assert not any(row.verdict.endswith((" later", " sooner")) for row in page.held)
