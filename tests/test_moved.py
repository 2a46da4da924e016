"""A link to a page that moved still leads somewhere sensible; a page that became private is gone."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from leafmould.build import build
from leafmould.output.write import write_site
from leafmould.pages.moved import MOST, Trail
from leafmould.report import BuildReport

ON = date(2026, 7, 15)
ROWS = "---\ndate: 2026-04-12\n---\nTwo rows of beetroot, soil 9 °C at breakfast.\n\n- sowed beetroot in Long border\n"


class Place:
    """A garden and its site, edited and built again and again."""

    def __init__(self, top: Path) -> None:
        self.garden, self.site = top / "garden", top / "site"
        (self.garden / "notes").mkdir(parents=True)
        self.settings("beds: [Long border, Arch]")
        self.note("2026/04-12-beetroot.md", ROWS)
        self.note("2026/05-01.md", "- sowed pea in Arch\n")

    def settings(self, text: str) -> None:
        (self.garden / "garden.yaml").write_text(f"garden: Hill\n{text}\n", "utf-8")

    def note(self, name: str, text: str) -> None:
        path = self.garden / "notes" / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, "utf-8")

    def rename(self, name: str, to: str) -> None:
        (self.garden / "notes" / to).parent.mkdir(exist_ok=True)
        (self.garden / "notes" / name).rename(self.garden / "notes" / to)

    def build(self, *, household: bool = False, on: date = ON) -> BuildReport:
        return build(self.garden, to=self.site, on=on, household=household)

    def leads(self, page: str) -> str | None:
        """Where the page of an old address leads on to; None if there is no page at all."""
        path = self.site / page
        if not path.exists():
            return None
        soup = BeautifulSoup(path.read_text("utf-8"), "html.parser")
        assert soup.h1 is not None
        assert soup.h1.text == "This page has moved"
        (link,) = soup.select("main a")
        refresh = soup.select_one('meta[http-equiv="refresh"]')
        assert refresh is not None
        assert refresh["content"] == f"1; url= {link['href']}"
        assert soup.script is not None
        assert (soup.script.text, str(soup.script["src"]).endswith("look/day-counts.js")) == ("", True)
        assert link["id"] == "leads-on"
        target = (path.parent / str(link["href"])).resolve()
        assert target.is_file()
        return target.relative_to(self.site.resolve()).as_posix()


@pytest.fixture
def place(tmp_path: Path) -> Place:
    found = Place(tmp_path)
    found.build()
    return found


OLD, NEW = "notes/2026/04-12-beetroot.html", "notes/2026/04-13-two-rows.html"


def test_a_note_file_that_was_renamed(place: Place) -> None:
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    report = place.build()
    assert place.leads(OLD) == NEW
    assert OLD in report.changed
    assert report.removed == ()
    again = place.build()
    assert (again.changed, again.removed) == ((), ())
    assert place.leads(OLD) == NEW


def test_a_note_file_that_was_renamed_twice_and_back(place: Place) -> None:
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    place.build()
    place.rename("2026/04-13-two-rows.md", "sown/beetroot.md")
    place.build()
    assert place.leads(OLD) == "notes/sown/beetroot.html"
    assert place.leads(NEW) == "notes/sown/beetroot.html"
    place.rename("sown/beetroot.md", "2026/04-12-beetroot.md")
    place.build()
    assert place.leads("notes/sown/beetroot.html") == OLD
    assert place.leads(NEW) == OLD
    assert "This page has moved" not in (place.site / OLD).read_text("utf-8")


def test_a_note_that_is_no_more_leads_nowhere(place: Place) -> None:
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    place.build()
    (place.garden / "notes/2026/04-13-two-rows.md").unlink()
    place.build()
    assert place.leads(OLD) is None
    assert place.leads(NEW) is None


def test_a_note_in_other_letters(place: Place) -> None:
    place.rename("2026/04-12-beetroot.md", "2026/Грядка & свёкла.md")
    place.build()
    address = place.leads(OLD)
    assert address is not None
    assert address.startswith("notes/2026/грядка-свёкла")
    assert "&" not in address


def test_a_page_that_leads_on_says_that_it_is_the_households(place: Place) -> None:
    place.build(household=True)
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    place.build(household=True)
    assert place.leads(OLD) == NEW
    said = BeautifulSoup((place.site / NEW).read_text("utf-8"), "html.parser").select_one(".household")
    assert said is not None
    assert str(said) in (place.site / OLD).read_text("utf-8")


def test_two_notes_that_say_the_same_are_not_guessed_between(place: Place) -> None:
    place.note("2026/06-01.md", "- weeded Arch\n")
    place.note("2026/06-02.md", "- weeded Arch\n")
    place.build()
    place.rename("2026/06-01.md", "2026/06-01-weeds.md")
    place.rename("2026/06-02.md", "2026/06-02-weeds.md")
    place.build()
    assert place.leads("notes/2026/06-01.html") is None


def test_all_notes_moved_at_once(place: Place) -> None:
    place.rename("2026/04-12-beetroot.md", "year/04-12-beetroot.md")
    place.rename("2026/05-01.md", "year/05-01.md")
    place.build()
    assert place.leads(OLD) == "notes/year/04-12-beetroot.html"
    assert place.leads("notes/2026/05-01.html") == "notes/year/05-01.html"


@pytest.mark.parametrize(
    "beds",
    [
        "beds: [{name: South border, also: [Long border]}, Arch]",
        "beds: [{name: South border, also: [LONG  BORDER]}, Arch]",
    ],
)
def test_a_bed_under_another_name_that_keeps_the_old_one_beside_it(place: Place, beds: str) -> None:
    place.settings(beds)
    place.build()
    assert place.leads("beds/long-border.html") == "beds/south-border.html"


@pytest.mark.parametrize(("name", "page"), [("Longborder", "longborder"), ("Long borders", "long-borders")])
def test_a_bed_spelled_differently_everywhere(place: Place, name: str, page: str) -> None:
    place.settings(f"beds: [{name}, Arch]")
    place.note("2026/04-12-beetroot.md", ROWS.replace("Long border", name))
    place.build()
    assert place.leads("beds/long-border.html") == f"beds/{page}.html"


def test_a_bed_renamed_with_was_keeps_its_page(place: Place) -> None:
    place.settings("beds: [Long border, Arch, {name: New border, was: Long border, from: 2026-06-01}]")
    place.build()
    assert (place.site / "beds/new-border.html").exists()
    assert "This page has moved" not in (place.site / "beds/long-border.html").read_text("utf-8")


def test_a_bed_with_another_number_is_another_bed(place: Place) -> None:
    place.settings("beds: [Long border 1, Arch]")
    place.note("2026/04-12-beetroot.md", ROWS.replace("Long border", "Long border 1"))
    place.build()
    place.settings("beds: [Long border 2, Arch]")
    place.note("2026/04-12-beetroot.md", ROWS.replace("Long border", "Long border 2"))
    place.build()
    assert place.leads("beds/long-border-1.html") is None


def test_a_crop_under_another_name(place: Place) -> None:
    place.note("2026/06-01.md", "---\ncrop: quilroot\nbed: Arch\ndid: sowed\n---\n")
    place.build()
    assert (place.site / "crops/quilroot.html").exists()
    (place.garden / "crops.yaml").write_text("quillroot:\n  also: [quilroot]\n  family: Fabaceae\n", "utf-8")
    place.build()
    assert place.leads("crops/quilroot.html") == "crops/quillroot.html"


def test_a_bed_that_became_private_is_gone(place: Place) -> None:
    place.settings("beds: [{name: Long border, private: yes}, Arch]")
    place.build()
    assert place.leads("beds/long-border.html") is None
    assert "long-border" not in (place.site / "made.txt").read_text("utf-8")


def test_a_note_that_was_renamed_and_became_private_is_gone(place: Place) -> None:
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    place.build()
    assert place.leads(OLD) == NEW
    place.note("2026/04-13-two-rows.md", ROWS.replace("---\nTwo", "private: yes\n---\nTwo"))
    place.build()
    assert place.leads(OLD) is None
    assert place.leads(NEW) is None


@pytest.mark.parametrize(
    "hidden",
    [
        "private words: [beetroot]",
        "leave out: [beetroot]",
        "beds: [{name: Beetroot, private: yes}, Long border, Arch]",
    ],
)
def test_an_old_address_that_tells_what_became_private_is_gone(place: Place, hidden: str) -> None:
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    place.build()
    assert place.leads(OLD) == NEW
    place.settings(f"beds: [Long border, Arch]\n{hidden}" if "beds" not in hidden else hidden)
    place.build()
    assert "beetroot" not in "\n".join(p.name for p in place.site.rglob("*"))
    assert "beetroot" not in (place.site / "made.txt").read_text("utf-8")


def test_an_old_address_with_a_name_of_a_person_is_gone_once_people_are_not_shown(place: Place) -> None:
    place.settings("beds: [Long border, Arch]\nshow: [people]")
    place.note(
        "2026/06-01-ida.md", "---\ndate: 2026-06-01\nby: Ida\n---\nThe arch leans a little to the north.\n"
    )
    place.build()
    place.rename("2026/06-01-ida.md", "2026/06-01-arch.md")
    place.build()
    assert place.leads("notes/2026/06-01-ida.html") == "notes/2026/06-01-arch.html"
    place.settings("beds: [Long border, Arch]")
    place.build()
    assert place.leads("notes/2026/06-01-ida.html") is None


def test_a_note_whose_name_gave_a_person_away_does_not_lead_on_from_it(place: Place) -> None:
    place.settings("beds: [Long border, Arch]\nshow: [people]")
    place.note(
        "2026/06-01-ida.md", "---\ndate: 2026-06-01\nby: Ida\n---\nThe arch leans a little to the north.\n"
    )
    place.build()
    place.settings("beds: [Long border, Arch]")
    report = place.build()
    assert "notes/2026/06-01-ida.html" in report.removed


def test_what_the_household_saw_is_not_led_on_from_in_public(place: Place) -> None:
    place.build(household=True)
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    place.build()
    assert place.leads(OLD) is None


def test_in_the_household_private_notes_lead_on_too(place: Place) -> None:
    place.note("2026/06-01-secret.md", "---\ndate: 2026-06-01\nprivate: yes\n---\nA pond for her birthday.\n")
    place.build(household=True)
    place.rename("2026/06-01-secret.md", "2026/06-01-pond.md")
    place.build(household=True)
    assert place.leads("notes/2026/06-01-secret.html") == "notes/2026/06-01-pond.html"
    place.build()
    assert "secret" not in (place.site / "made.txt").read_text("utf-8")
    assert place.leads("notes/2026/06-01-secret.html") is None


def test_a_page_that_leads_on_and_is_deleted_by_hand_stays_away(place: Place) -> None:
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    place.build()
    (place.site / OLD).unlink()
    place.build()
    assert place.leads(OLD) is None


def follow(before: dict[str, str], now: dict[str, str], on: date = ON) -> list[tuple[str, str, str]]:
    trail = Trail(household=False, on=on)
    found = trail.follow(before, now, by_name=lambda name, new: "", may_stay=lambda name: True)
    return [(m.address, m.to, m.since) for m in found]


def test_a_year_of_a_long_history_leads_to_the_page_that_holds_it_now() -> None:
    before = dict.fromkeys(["beds/arch.html", "beds/arch/2022.html", "beds/arch/2018.html"], "public")
    now = dict.fromkeys(["beds/arch.html", "beds/arch/2023.html", "beds/arch/2019.html"], "public")
    assert follow(before, now) == [
        ("beds/arch/2018.html", "beds/arch/2019.html", "2026-07-15"),
        ("beds/arch/2022.html", "beds/arch/2023.html", "2026-07-15"),
    ]
    assert follow(before, {"beds/arch.html": "public"}) == [
        ("beds/arch/2018.html", "beds/arch.html", "2026-07-15"),
        ("beds/arch/2022.html", "beds/arch.html", "2026-07-15"),
    ]


def test_a_month_of_a_long_year_leads_to_the_year() -> None:
    now = {"by-date/2026.html": "public"}
    assert follow({"by-date/2026-06.html": "public"}, now) == [
        ("by-date/2026-06.html", "by-date/2026.html", "2026-07-15")
    ]


def test_only_so_many_old_addresses_lead_on_and_the_oldest_go() -> None:
    before = {f"notes/{n}.html": f"public 20{n % 20:02}-01-01 > index.html" for n in range(MOST + 40)}
    found = follow(before, {"index.html": "public"})
    assert len(found) == MOST
    assert min(since for _, _, since in found) == "2002-01-01"


def test_files_that_are_no_pages_lead_nowhere() -> None:
    assert follow({"data/plan.json": "public", "look/x.css": ""}, {"index.html": "public"}) == []


def test_a_page_of_another_kind_of_list_leads_nowhere(tmp_path: Path) -> None:
    """Marks that were not written here, or not at all, are none of ours."""
    write_site(tmp_path / "site", {OLD: b"page"})
    place = Place(tmp_path)
    place.build()
    place.rename("2026/04-12-beetroot.md", "2026/04-13-two-rows.md")
    assert place.build().removed == ()
    assert place.leads(OLD) == NEW
