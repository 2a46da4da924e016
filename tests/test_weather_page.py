"""The page of the weather: tables as typed under records/, and what is shown of them."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from leafmould.build import build
from leafmould.charts.line import height_at, points, ticks
from leafmould.notes.setting_values import MonthNormal, WeatherDay
from leafmould.reckon.warmth import Warmth
from leafmould.reckon.weather_told import season_weather, usual_sums

ON = date(2026, 7, 15)
NORMALS = "month,low,high\n" + "".join(
    f"{m},{low},{low + 10}\n" for m, low in enumerate((-12, -11, -6, 0, 6, 11, 14, 13, 9, 3, -2, -7), 1)
)
DAYS = "date,low,high,rain\n" + "".join(f"2026-07-{d:02},12,24,{1 if d == 3 else 0}\n" for d in range(1, 16))


def page(folder: Path, name: str = "weather.html", **files: str) -> BeautifulSoup | None:
    """A page of a garden with these tables; None where it was not made."""
    garden = folder / "garden"
    (garden / "records").mkdir(parents=True)
    (garden / "notes").mkdir(exist_ok=True)
    settings = files.pop("settings", "")
    (garden / "garden.yaml").write_text(f"garden: Tansy Hill\nbeds: [Arch]\n{settings}", "utf-8")
    (garden / "notes/2026-07-01.txt").write_text("sowed peas in Arch\n", "utf-8")
    for table, text in files.items():
        (garden / f"records/{table}.csv").write_text(text, "utf-8")
    build(garden, to=folder / "site", on=ON, household=False)
    file = folder / "site" / name
    return BeautifulSoup(file.read_text("utf-8"), "html.parser") if file.is_file() else None


def rows(tree: BeautifulSoup) -> dict[str, list[str]]:
    found = tree.select_one("table.weather tbody")
    assert found
    return {
        row.th.get_text(): [cell.get_text() for cell in row.select("td")]
        for row in found.select("tr")
        if row.th
    }


def test_without_tables_there_is_no_page_and_no_link(tmp_path: Path) -> None:
    tree = page(tmp_path, "when-to-sow.html")
    assert tree and not tree.select('a[href="weather.html"]')
    assert not (tmp_path / "site/weather.html").exists()


def test_measured_days_beside_the_usual(tmp_path: Path) -> None:
    """Fifteen days of 18 °C in the middle are 120 degree days above 10 °C; usual is 19 °C."""
    tree = page(tmp_path, normals=NORMALS, weather=DAYS)
    assert tree
    heat, usual, *others = rows(tree)["July"]
    assert heat == "120"
    assert float(usual) == pytest.approx(15 * 9, abs=4)
    assert others == ["12 °C", "24 °C", "0", "1 mm", "15 of 15", "1 note"]
    assert rows(tree)["June"][0] == ""  # nothing was measured: only the usual stands there
    assert tree.select_one("svg[role=group][aria-label] polyline.here")


def test_an_imperial_garden_is_told_in_its_units(tmp_path: Path) -> None:
    """53.6 and 75.2 °F are 12 and 24 °C; 120 °C d are 216 °F d."""
    days = DAYS.replace(",12,24,", ",53.6,75.2,").replace(",1\n", ",0.5\n")
    tree = page(tmp_path, weather=days, settings="units: imperial\n")
    assert tree
    assert rows(tree)["July"] == ["216", "", "53.6 °F", "75.2 °F", "0", "0.5 in", "15 of 15", "1 note"]


def test_the_weather_can_be_left_out(tmp_path: Path) -> None:
    assert page(tmp_path, normals=NORMALS, weather=DAYS, settings="leave out: [weather]\n") is None
    assert "weather.html" not in (tmp_path / "site/when-to-sow.html").read_text("utf-8")


def test_days_after_today_and_of_years_left_out_are_not_there(tmp_path: Path) -> None:
    days = DAYS + "2026-07-16,1,45,99\n2025-07-01,1,44,98\n"
    tree = page(tmp_path, normals=NORMALS, weather=days, settings="leave out: [2025]\n")
    assert tree
    assert "45 °C" not in tree.get_text() and "44 °C" not in tree.get_text()
    assert [h.get_text() for h in tree.select("h2")] == ["2026", "The usual year"]


def test_what_is_usual_is_rounded_so_that_no_station_can_be_told_by_it(tmp_path: Path) -> None:
    tree = page(tmp_path, normals=NORMALS.replace("7,14,24", "7,14.3,24.7"))
    assert (
        tree
        and "14 °C" in tree.get_text()
        and "14.3" not in tree.get_text()
        and "24.7" not in tree.get_text()
    )


def test_a_week_with_notes_leads_to_the_first_of_them_and_a_month_to_its_notes(tmp_path: Path) -> None:
    """Weeks are counted from the season's first day: the 26th is 25 June to 1 July, the 27th 2 to 8 July."""
    notes = tmp_path / "garden/notes"
    notes.mkdir(parents=True)
    for name in ("2026-07-02-hoe.txt", "2026-07-08-hoe.txt", "2026-04-09-hoe.txt"):
        (notes / name).write_text("weeded Arch\n", "utf-8")
    (notes / "june.txt").write_text("June 2026\nweeded Arch\n", "utf-8")
    tree = page(tmp_path, normals=NORMALS, weather=DAYS)
    assert tree
    assert [(week["aria-label"], week["href"]) for week in tree.select(".heat a.week")] == [
        ("9–15 April: 1 note", "notes/2026-04-09-hoe.html"),
        ("25 June – 1 July: 1 note", "notes/2026-07-01.html"),
        ("2–8 July: 2 notes", "notes/2026-07-02-hoe.html"),
    ]
    assert rows(tree)["April"][-1] == "1 note" and rows(tree)["May"][-1] == ""
    link = tree.select("table.weather a")[-1]
    assert (link.get_text(), link["href"]) == ("3 notes", "by-date/2026.html#month-2026-07")


def test_months_of_a_season_in_the_south() -> None:
    months = tuple(MonthNormal(month=m, low=10, high=20) for m in range(1, 13))
    days = [WeatherDay(on=date(2025, 8, 1), low=-1, high=3, rain=2), WeatherDay(on=date(2025, 8, 2), low=0)]
    warmth = Warmth(months, days)
    found = season_weather(warmth, days, date(2025, 7, 1), date(2025, 9, 10))
    assert [(m.first.month, m.last.day, m.frosts, m.rain, m.measured) for m in found] == [
        (7, 31, 0, None, 0),
        (8, 31, 2, 2, 1),
        (9, 10, 0, None, 0),
    ]
    sums = usual_sums(warmth, date(2025, 7, 1))
    assert len(sums) == 12 and sums[-1] == pytest.approx(365 * 5)
    assert usual_sums(Warmth((), days), date(2025, 7, 1)) == ()


def test_lines_of_a_chart() -> None:
    assert points([(0, 0), (60, 50), (120, 100)], 100, 60) == "0,60 60,30 120,0"
    assert points([(0, -5), (120, 500)], 100, 60) == "0,60 120,0"
    line = [(0.0, 0.0), (60.0, 50.0)]
    assert [height_at(x, line, 100, 60) for x in (0, 30, 60, 61)] == [60, 45, 30, 60]
    assert list(ticks(1334)) == [500, 1000]
    assert list(ticks(90)) == [20, 40, 60, 80]
    assert list(ticks(4)) == [1, 2, 3, 4]
    assert list(ticks(0)) == []


def usual_year(tree: BeautifulSoup) -> dict[str, list[str]]:
    table = tree.select("table.weather")[-1]
    return {
        row.th.get_text(): [cell.get_text() for cell in row.select("td")]
        for row in table.select("tr")
        if row.th
    }


def test_the_usual_year_has_its_heat_rain_and_dark_weeks(tmp_path: Path) -> None:
    """Days under ten hours at 44° are 7 November to 3 February (ephem and astral, winter 2025/26)."""
    months = "month,low,high,rain\n" + "".join(f"{m},10,20,{m * 10}\n" for m in range(1, 13))
    tree = page(tmp_path, normals=months, settings="place: {latitude: 44.1}\n")
    assert tree
    table = usual_year(tree)
    assert table["January"] == ["10 °C", "20 °C", "155", "10 mm", "4"]
    assert table["June"] == ["10 °C", "20 °C", "150", "60 mm", ""]
    assert [table[m][-1] for m in ("October", "November", "December", "January", "February")] == [
        "",
        "3",
        "4",
        "4",
        "",
    ]


def test_no_sum_of_a_public_page_is_finer_than_whole_degrees(tmp_path: Path) -> None:
    """14.3 and 24.7 °C are shown, and summed, as 14 and 25."""
    fine = "month,low,high\n" + "".join(f"{m},14.3,24.7\n" for m in range(1, 13))
    whole = "month,low,high\n" + "".join(f"{m},14,25\n" for m in range(1, 13))
    tables = []
    for name, months in (("fine", fine), ("whole", whole)):
        (tmp_path / name).mkdir()
        tree = page(tmp_path / name, normals=months)
        assert tree
        tables.append(tree.get_text())
    assert tables[0] == tables[1]


def test_the_usual_year_is_told_by_other_ways_of_counting_too(tmp_path: Path) -> None:
    months = "month,low,high\n" + "".join(f"{m},12,22\n" for m in range(1, 13))
    tree = page(tmp_path, normals=months)
    assert (
        tree
        and (
            "The usual year makes 2,555 degree days counted so, 2,555 by the mean of low and high alone, 2,555 with the low "
            "raised to the base and the high cut at 30 °C, as for maize, and 2,555 by the four cases"
        )
        in tree.get_text()
    )


@pytest.mark.parametrize(
    ("on", "months"),
    [
        (date(2025, 9, 1), [("2025-07-01", "2025-07-31"), ("2025-08-01", "2025-08-31"), ("2025-09-01", "2025-09-01")]),
        (date(2025, 8, 31), [("2025-07-01", "2025-07-31"), ("2025-08-01", "2025-08-31")]),
        (date(2025, 7, 1), [("2025-07-01", "2025-07-01")]),
    ],
)  # fmt: skip
def test_a_season_is_told_to_its_day_and_a_month_from_its_first(
    on: date, months: list[tuple[str, str]]
) -> None:
    found = season_weather(Warmth((), ()), (), date(2025, 7, 1), on)
    assert [(month.first.isoformat(), month.last.isoformat()) for month in found] == months
