"""The two tables of weather with faults: one sentence each with file and line, and what is sound goes on being used.

Tables are mangled in many ways too (seeded): nothing ends in a traceback, and a fault costs no other row.
"""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leafmould.build import build
from leafmould.garden.load import load
from leafmould.notes.setting_values import MonthNormal, WeatherDay
from leafmould.notes.settings import read_settings
from leafmould.notes.weather_files import read_normals, read_weather
from leafmould.values.problems import Problem

HIGHS = (-1, 1, 6, 14, 21, 26, 28, 27, 23, 15, 8, 2)
MONTHS = tuple(MonthNormal(month=m, low=high - 11, high=high) for m, high in enumerate(HIGHS, 1))
NORMALS = ["month,low,high", *(f"{m},{high - 11},{high}" for m, high in enumerate(HIGHS, 1))]
FIRST = date(2026, 4, 1)
DAYS = [FIRST + timedelta(days=n) for n in range(30)]
WEATHER = ["date,low,high,rain", *(f"{on},{n % 7},{n % 7 + 11},{n % 3}" for n, on in enumerate(DAYS))]


def told(problems: tuple[Problem, ...]) -> list[str]:
    return [f"{p.level}: {p.sentence}" for p in problems]


def weather(rows: list[str], **how: Any) -> tuple[tuple[WeatherDay, ...], list[str]]:
    days, problems = read_weather("\n".join(rows) + "\n", **how)
    return days, told(problems)


def replaced(table: list[str], **rows: str) -> list[str]:
    """The table with other rows, by their line: line_4="..."."""
    by_line = {int(name.removeprefix("line_")): text for name, text in rows.items()}
    return [by_line.get(line, row) for line, row in enumerate(table, 1)]


def test_a_number_no_air_can_be_is_a_slip_and_costs_its_day_alone() -> None:
    days, said = weather(replaced(WEATHER, line_4="2026-04-03,2,85,1"))
    assert said == [
        "error: records/weather.csv:4: high: A high of 85 °C cannot be, so neither low nor high of that day is used."
    ]
    assert len(days) == 30
    assert days[2] == WeatherDay(on=date(2026, 4, 3), rain=1)


def test_a_column_of_fahrenheit_is_told_by_its_numbers() -> None:
    rows = ["date,low,high", *(f"{on},{40 + n},{62 + n}" for n, on in enumerate(DAYS))]
    assert weather(rows) == (
        (),
        [
            "error: records/weather.csv:2: A high of 62 is Fahrenheit, and the garden's units are metric. Put the unit "
            'into the heading, such as "high F"; until then the table is not used.'
        ],
    )
    assert weather(["date,low C,high C", *rows[1:]])[1] == [
        "error: records/weather.csv:2: A high of 62 is Fahrenheit, and the heading says Celsius. Put the unit into the "
        'heading, such as "high F"; until then the table is not used.'
    ]


def test_a_cold_month_in_fahrenheit_is_told_by_what_is_usual() -> None:
    """30 to 36 °F could be Celsius by themselves; in January they are not, where -1 °C is usual."""
    rows = ["date,low,high", *(f"2026-01-{d:02},14,{30 + d % 7}" for d in range(1, 21))]
    assert weather(rows, months=MONTHS) == (
        (),
        [
            "error: records/weather.csv:2: A mean high of 33, where -1 °C is usual, is Fahrenheit, and the garden's units "
            'are metric. Put the unit into the heading, such as "high F"; until then the table is not used.'
        ],
    )
    assert len(weather(rows)[0]) == 20  # without a table of the months nobody can tell


def test_celsius_in_an_imperial_garden_is_told_by_what_is_usual() -> None:
    rows = ["date,low,high", *(f"2026-07-{d:02},14,{26 + d % 4}" for d in range(1, 21))]
    assert weather(rows, months=MONTHS, units="imperial") == (
        (),
        [
            "error: records/weather.csv:2: These look like degrees Celsius, and the garden's units are imperial. Put the "
            'unit into the heading, such as "high C"; until then the table is not used.'
        ],
    )


def test_a_hot_spell_is_no_fahrenheit() -> None:
    rows = ["date,low,high", *(f"2026-04-{d:02},12,{31 + d % 4}" for d in range(1, 21))]
    days, said = weather(rows, months=MONTHS)
    assert (len(days), said) == (20, [])


def test_a_slip_made_in_every_row_is_told_once() -> None:
    rows = ["date,high,low", *(f"{on},{n % 7},{n % 7 + 11}" for n, on in enumerate(DAYS))]
    days, said = weather(rows)
    assert said == [
        "warning: records/weather.csv:2: low: The low of 1 April 2026 is above its high. They are taken the other way "
        "round. So it is in 29 more rows."
    ]
    assert (days[0].low, days[0].high) == (0, 11)


@pytest.mark.parametrize(
    ("header", "row", "read"),
    [
        ("date,low_f,high_f,rain_in", "2026-04-01,50,68,1", (10, 20, 25.4)),
        ("date;low (°C);high (°C);rain (mm)", "2026-04-01;10;20;3", (10, 20, 3)),
        ("date,min in C,max in C,rain", "2026-04-01,10,20,3", (10, 20, 3)),
        ("date,tmin,tmax,rain in", "2026-04-01,10,20,1", (10, 20, 25.4)),
        ("date,low,high,rain", "2026-04-01,50F,68 °F,1 in", (10, 20, 25.4)),
        ("date;low;high;rain", "2026-04-01;10;20;1 inch", (10, 20, 25.4)),
    ],
)
def test_units_in_the_heading_or_the_cell(header: str, row: str, read: tuple[float, float, float]) -> None:
    days, problems = read_weather(f"{header}\n{row}\n")
    assert [p for p in problems if p.level != "hint"] == []
    assert (days[0].low, days[0].high, days[0].rain) == pytest.approx(read)


def test_days_to_come_are_left_for_later(tmp_path: Path) -> None:
    garden = folder(tmp_path, weather="\n".join(WEATHER))
    loaded = load(garden, on=date(2026, 4, 28), household=True)
    assert loaded.settings.weather[-1].on == date(2026, 4, 28)
    assert [p.sentence for p in loaded.problems] == [
        "records/weather.csv: 2 days after 28 April 2026: as if not yet measured."
    ]


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("records/months.csv", 'garden.yaml: normals: There is no table "records/months.csv", which garden.yaml names for the usual warmth of the months.'),
        ("../elsewhere.csv", 'garden.yaml: normals: "../elsewhere.csv" is not read. Keep the table of the months under records/, such as records/normals.csv.'),
        ("records/../../elsewhere.csv", 'garden.yaml: normals: "records/../../elsewhere.csv" is not read. Keep the table of the months under records/, such as records/normals.csv.'),
        ("/etc/hosts", 'garden.yaml: normals: "/etc/hosts" is not read. Keep the table of the months under records/, such as records/normals.csv.'),
    ],
)  # fmt: skip
def test_a_table_that_is_not_there_or_lies_outside_the_garden(tmp_path: Path, path: str, said: str) -> None:
    garden = folder(tmp_path, settings=f"frost: {{normals: {path}}}\n")
    (tmp_path / "elsewhere.csv").write_text("\n".join(NORMALS), "utf-8")
    read = read_settings(garden)
    assert [p.sentence for p in read.problems] == [said]
    assert read.months == ()


def folder(where: Path, *, settings: str = "", **tables: str) -> Path:
    """A small garden with these tables."""
    garden = where / "garden"
    (garden / "records").mkdir(parents=True)
    (garden / "notes").mkdir()
    (garden / "garden.yaml").write_text(f"garden: Tansy Hill\nbeds: [Arch]\n{settings}", "utf-8")
    (garden / "notes/2026-04-01.txt").write_text("sowed peas in Arch\n", "utf-8")
    for name, text in tables.items():
        (garden / f"records/{name}.csv").write_text(text, "utf-8")
    return garden


# Mangled tables

CELLS = st.sampled_from(
    [
        "",
        "-",
        "x",
        "99",
        "-99",
        "1e9",
        "12,5",
        "60°F",
        '"',
        '"open',
        "2026-02-30",
        "2026-04-09",
        "T",
        "0",
        "½",
        "nan",
        "٣",
    ]
)
LINES = st.integers(1, 31)


@settings(derandomize=True, max_examples=150, deadline=None)
@given(LINES, st.integers(0, 3), CELLS)
def test_one_bad_cell_costs_no_other_day(line: int, column: int, cell: str) -> None:
    rows = list(WEATHER)
    cells = rows[line - 1].split(",")
    cells[column] = cell
    rows[line - 1] = ",".join(cells)
    whole, _ = weather(WEATHER)
    days, _ = weather(rows)
    if line == 1:
        return  # the heading: what a column is called decides over all rows
    kept = {row.on: row for row in days}
    assert all(kept[row.on] == row for n, row in enumerate(whole, 2) if n not in (line, 10))


@settings(derandomize=True, max_examples=150, deadline=None)
@given(
    st.sampled_from(["drop", "twice", "swap", "shuffle", "cut", "wide", "blank"]),
    LINES,
    st.sampled_from([",", ";", "\t"]),
    st.booleans(),
)
def test_mangled_tables_are_read_as_far_as_they_are_sound(
    way: str, line: int, mark: str, is_months: bool
) -> None:
    rows = list(NORMALS if is_months else WEATHER)
    at = min(line, len(rows) - 1)
    mangled = {
        "drop": rows[:at] + rows[at + 1 :],
        "twice": [*rows, rows[at]],
        "swap": [*rows[:at], ",".join(reversed(rows[at].split(","))), *rows[at + 1 :]],
        "shuffle": [rows[0], *rows[:0:-1]],
        "cut": [*rows[:at], rows[at][: len(rows[at]) // 2]],
        "wide": [f"{row},,,more" for row in rows],
        "blank": [row for each in rows for row in (each, "")],
    }[way]
    text = "\n".join(row.replace(",", mark) for row in mangled)
    months, problems = read_normals(text)
    days, others = read_weather(text)
    assert len(months) in (0, 12)
    assert [row.on for row in days] == sorted({row.on for row in days})
    assert all(p.at.file.startswith("records/") and p.message.endswith(".") for p in (*problems, *others))
    if way in ("twice", "shuffle", "blank") and not is_months:
        assert len(days) == 30


@settings(derandomize=True, max_examples=12, deadline=None)
@given(st.lists(st.tuples(LINES, st.integers(0, 3), CELLS), min_size=1, max_size=12))
def test_a_garden_with_mangled_tables_is_built_all_the_same(
    tmp_path_factory: pytest.TempPathFactory, slips: list[tuple[int, int, str]]
) -> None:
    tables = []
    for table in (NORMALS, WEATHER):
        rows = [row.split(",") for row in table]
        for line, column, cell in slips:
            row = rows[line % len(rows)]
            row[column % len(row)] = cell
        tables.append("\n".join(",".join(row) for row in rows))
    where = tmp_path_factory.mktemp("mangled")
    garden = folder(where, normals=tables[0], weather=tables[1])
    for household in (True, False):
        build(garden, to=where / f"site-{household}", on=date(2026, 7, 15), household=household)
        assert (where / f"site-{household}/when-to-sow.html").is_file()
