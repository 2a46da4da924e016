"""Ways from what a page says to where it was noted, in small gardens as typed."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from bs4 import Tag

from gardens import day_notes
from sites import Book, site_of_notes

BEDS = "garden: Tansy Hill\nfrost: {last: 22 May, first: 25 September}\nbeds: [Arch, Long border]\n"


@pytest.fixture
def book_of(tmp_path: Path) -> Callable[..., Book]:
    def made(typed: str, on: date = date(2026, 12, 31), **more: str) -> Book:
        return Book(site_of_notes(tmp_path, BEDS, {**day_notes(typed), **more}, on=on))

    return made


def text(tag: Tag | None) -> str:
    assert tag is not None
    return tag.get_text(" ", strip=True)


def test_a_second_planting_of_one_name_in_a_bed_and_year_has_a_link_of_its_own(
    book_of: Callable[..., Book],
) -> None:
    book = book_of(
        """
        2026-03-01
        - sowed radish in Arch
        2026-04-02
        - cleared radish from Arch
        2026-05-03
        - sowed radish in Arch
        """
    )
    cell = book.pages["years.html"].select_one("td[data-year='2026'] ul")
    assert text(cell) == "Cb radish , again 3 May"
    assert [str(a["href"]) for a in cell.select("a:not(.family)")] == [
        "beds/arch.html#radish_arch_2026-03-01",
        "beds/arch.html#radish_arch_2026-05-03",
    ]


def test_a_variety_of_two_crops_leads_to_the_one_named_before_it(book_of: Callable[..., Book]) -> None:
    book = book_of(
        """
        2026-05-20
        - planted aubergine 'Black Beauty' in Arch
        - planted courgette 'Black Beauty' in Long border
        2026-06-01
        - watered 'Black Beauty'
        """
    )
    tree = book.pages["beds/long-border.html"]
    assert [a["href"] for a in tree.select(".doings a") if a.get_text() == "Black Beauty"] == [
        "../crops/summer-squash.html#variety-black-beauty"
    ]
    either = book.pages["notes/2026-06-01.html"]
    assert [a for a in either.select(".understood a") if a.get_text() == "Black Beauty"] == []


def test_a_note_without_an_action_stands_in_the_planting_it_is_about(book_of: Callable[..., Book]) -> None:
    words = "---\ndate: 2026-05-01\nbed: Arch\ncrop: pea\ntitle: Pods at last\n---\nFat ones.\n"
    book = book_of(
        """
        2026-04-01
        - sowed pea in Arch
        2026-06-20
        - picked 1 kg pea from Arch
        """,
        **{"pods.md": words},
    )
    section = book.ids["beds/arch.html"]["pea_arch_2026-04-01"]
    assert [text(line) for line in section.select(".doings li")] == [
        "1 April sowed pea in Arch",
        "1 May Pods at last",
        "20 June picked 1\u00a0kg pea from Arch",
    ]
    assert section.select_one("a[href='../notes/pods.html']")


def test_a_note_about_a_bed_alone_stands_under_its_year_and_is_no_planting(
    book_of: Callable[..., Book],
) -> None:
    words = "---\ndate: 2025-11-01\nbed: Arch\n---\nThe wood is rotten at the foot.\n"
    book = book_of("2026-04-01\n- sowed pea in Arch\n", **{"wood.md": words})
    year = book.ids["beds/arch.html"]["year-2025"]
    assert text(year.select_one(".doings")) == "1 November The wood is rotten at the foot."
    cells = book.pages["years.html"].select("td[data-year='2025']")
    assert [text(cell) for cell in cells] == ["no planting noted", "no record"]


@pytest.mark.parametrize(
    ("typed", "ending", "note"),
    [
        (
            "2026-05-20\n- planted tomato in Arch\n2026-10-02\n- frost -3\n",
            "Presumed over: a noted frost, 2 October 2026 estimated",
            "2026-10-02",
        ),
        (
            "2026-05-20\n- planted tomato in Arch\n2026-08-01\n- picked 1 kg tomatoes from Arch\n",
            "Presumed over: the average first frost and 14 days, 9 October 2026 estimated",
            "2026-08-01",
        ),
    ],
)
def test_an_estimated_end_leads_to_the_note_it_rests_on(
    book_of: Callable[..., Book], typed: str, ending: str, note: str
) -> None:
    ended = book_of(typed).pages["beds/arch.html"].select_one(".ending")
    assert text(ended) == ending
    assert [str(a["href"]) for a in ended.select("a")] == [f"../notes/{note}.html"]


def test_a_place_nobody_noted_is_no_page_once_everything_has_its_bed(
    book_of: Callable[..., Book],
) -> None:
    sown = "2026-03-01\n- started 6 tomato\n"
    assert "beds/place-not-noted.html" in book_of(sown).pages
    planted = book_of(sown + "2026-05-25\n- planted 6 tomato in Arch\n").pages
    assert sorted(page for page in planted if page.startswith("beds/")) == [
        "beds/arch.html",
        "beds/index.html",
        "beds/long-border.html",
    ]


def test_a_sum_of_a_season_leads_to_the_list_of_just_its_pickings(book_of: Callable[..., Book]) -> None:
    book = book_of(
        """
        2026-04-01
        - sowed pea in Arch
        - sowed beetroot in Long border
        2026-06-20
        - picked 400 g peas
        2026-06-27
        - picked 1.1 kg peas, gave away 300 g
        2026-07-01
        - picked some beetroot
        """
    )
    row = book.pages["seasons/2026.html"].select_one("table.picked tbody tr:nth-of-type(2)")
    assert text(row) == "pea Pe 20 June 27 June 1.5\u00a0kg 2 pickings"
    assert row.select_one("data a")["href"] == "../seasons/2026.html#picked-pea"
    assert [text(one) for one in book.pages["seasons/2026.html"].select(".pickings > div")] == [
        "pea 20 June 400 g · 27 June 1.1 kg"  # the one picking of beetroot needs no list
    ]


def test_a_season_of_very_many_pickings_leads_to_its_notes(
    book_of: Callable[..., Book], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("leafmould.pages.ledger.MOST_PICKINGS", 1)
    typed = (
        "2026-04-01\n- sowed pea in Arch\n2026-06-20\n- picked 400 g peas\n2026-06-27\n- picked 1 kg peas\n"
    )
    page = book_of(typed).pages["seasons/2026.html"]
    assert page.select(".pickings") == []
    assert page.select_one("table.picked data a")["href"] == "../by-date/2026.html"


def test_what_is_known_from_the_table_of_the_years_before_says_so(tmp_path: Path) -> None:
    rows = "year,bed,crop\n2021,Arch,onion\n"
    site = site_of_notes(tmp_path, BEDS, {"../records/beforehand.csv": rows}, on=date(2026, 7, 15))
    section = Book(site).ids["beds/arch.html"]["onion_arch_2021"]
    assert text(section.select_one(".remark")) == ("From the table of the years before the notes.")
