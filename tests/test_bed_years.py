"""Years of a bed in which nobody wrote a word of what stood there: one line together, and every year can still be led to."""

from __future__ import annotations

from datetime import date

from bs4 import BeautifulSoup, Tag

from gardens import garden_of
from leafmould.render.html import Renderer
from pages_garden import site_of

ON = date(2026, 7, 15)


def years(notes: str, address: str = "beds/arch.html") -> dict[str, Tag]:
    """The sections of a bed's years, by their headings."""
    site = site_of(garden_of(notes, on=ON))
    page = next(page for page in site.pages if page.address == address)
    tree = BeautifulSoup(Renderer(site).page(page), "html.parser")
    return {section.h2.get_text(): section for section in tree.select("section.year") if section.h2}


def said(section: Tag) -> str:
    told = section.select_one(".silence")
    return " ".join(told.get_text().split()) if told else ""


RHUBARB = """
2018-03-20
- planted rhubarb in Arch
2022-05-02
- picked 400 g rhubarb from Arch
2026-05-02
- picked 500 g rhubarb from Arch
"""


def test_quiet_years_of_what_stays_are_one_line() -> None:
    found = years(RHUBARB)
    assert list(found) == ["2026", "2023–2025", "2022", "2019–2021", "2018"]
    assert said(found["2023–2025"]) == "Stood, nothing noted: rhubarb."
    assert found["2023–2025"].select(".strip, details") == []
    assert said(found["2022"]) == "" and found["2022"].select(".strip")


def test_every_year_can_still_be_led_to() -> None:
    section = years(RHUBARB)["2023–2025"]
    assert section["id"] == "year-2025"
    assert [span["id"] for span in section.select("span[id]")] == ["year-2024", "year-2023"]
    (link,) = section.select(".silence a")
    assert link["href"] == "../beds/arch.html#rhubarb_arch_2018-03-20"


def test_the_season_that_runs_is_never_quiet() -> None:
    assert list(years("2024-03-20\n- planted rhubarb in Arch\n")) == ["2026", "2025", "2024"]


def test_one_quiet_year_is_a_line_too() -> None:
    found = years("2024-03-20\n- planted rhubarb in Arch\n")
    assert said(found["2025"]) == "Stood, nothing noted: rhubarb."


def test_a_year_with_a_word_about_the_bed_is_not_quiet() -> None:
    found = years(RHUBARB + "2024-04-01\n- weeded Arch\n")
    assert list(found)[:4] == ["2026", "2025", "2024", "2023"]
    assert found["2024"].select(".strip") and said(found["2023"]) == "Stood, nothing noted: rhubarb."


def test_years_with_other_things_in_them_are_told_apart() -> None:
    found = years(RHUBARB + "2020-03-20\n- planted gooseberry in Arch\n")
    assert list(found) == ["2026", "2023–2025", "2022", "2021", "2020", "2019", "2018"]
    assert said(found["2023–2025"]) == "Stood, nothing noted: rhubarb, gooseberry."
    assert said(found["2019"]) == "Stood, nothing noted: rhubarb."


def test_what_is_only_presumed_to_have_stood_is_not_said_to_have() -> None:
    """Nobody wrote when the leeks ended: their bar is drawn open into the next year, and stays."""
    found = years(
        "2024-05-20\n- planted leek in Arch\n2024-12-20\n- picked 3 leeks from Arch\n2026-05-01\n- weeded Arch\n"
    )
    assert all("Stood, nothing noted" not in said(section) for section in found.values())


def test_what_was_done_in_another_season_than_the_one_it_stands_under_has_its_year() -> None:
    section = years(RHUBARB + "2018-05-01\n- weeded Arch\n")["2018"]
    days = [one.get_text() for one in section.select(".doings time")]
    assert days == ["20 March", "1 May", "2 May 2022", "2 May 2026"]
