"""Every form a gardener writes a date in. Outside sources are named beside the checks."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leafmould.values.dates import read_date, scan_date
from leafmould.values.half_years import northern_month
from leafmould.values.when import When, on

BASE = on(date(2026, 6, 20))  # a Saturday


def read(
    text: str, order: str | None = "day first", base: When | None = BASE, *, south: bool = False
) -> str | None:
    """The day or span read, or the fault."""
    reading = read_date(text, order=order, base=base, is_southern=south)
    if reading is None:
        return None
    if reading.when is None:
        return reading.fault
    when = reading.when
    return when.first.isoformat() if when.is_exact else f"{when.first}..{when.last}"


EXACT = """
2026-04-12                     2026-04-12
2026-4-1                       2026-04-01
2026/04/01                     2026-04-01
1.4.2026                       2026-04-01
01.04.26                       2026-04-01
1. 4. 2026                     2026-04-01
3/4/2026                       2026-04-03
11/30/23                       2023-11-30
12 June                        2026-06-12
12 june 2025                   2025-06-12
June 12th                      2026-06-12
June 12, 2025                  2025-06-12
12 jun 26                      2026-06-12
12-Jun-2025                    2025-06-12
the 12th of June               2026-06-12
Sept. 3                        2025-09-03
Friday 12 June                 2026-06-12
Fri, 12 June 2026              2026-06-12
12 mai                         2026-05-12
le 12 mai                      2026-05-12
1er mai 2024                   2024-05-01
9 avr                          2026-04-09
3 août 2024                    2024-08-03
3 aout 2024                    2024-08-03
12. Juni 2025                  2025-06-12
am 3. März                     2026-03-03
12. Jänner                     2026-01-12
12 de junio de 2025            2025-06-12
1º de mayo                     2026-05-01
3 luglio 2024                  2024-07-03
3 mrt 2024                     2024-03-03
12 augustus 2024               2024-08-12
2024年5月1日                    2024-05-01
12.6.                          2026-06-12
14. April 2021                 2021-04-14
Tue Apr 03 07:12:44 MDT 2018   2018-04-03
Tue, 03 Apr 2018 07:12:44 -0600  2018-04-03
today                          2026-06-20
yesterday                      2026-06-19
3 days ago                     2026-06-17
gestern                        2026-06-19
avant-hier                     2026-06-18
aujourd'hui                    2026-06-20
Saturday                       2026-06-20
Monday                         2026-06-15
last Saturday                  2026-06-13
sat                            2026-06-20
21 June                        2025-06-21
29 February                    2024-02-29
"""


@pytest.mark.parametrize("line", EXACT.strip().splitlines())
def test_forms_of_one_day(line: str) -> None:
    written, day = line.rsplit(maxsplit=1)
    assert read(written) == day


COARSE = """
2026-04              2026-04-01..2026-04-30
April 2026           2026-04-01..2026-04-30
avril 2024           2024-04-01..2024-04-30
04/2026              2026-04-01..2026-04-30
June '25             2025-06-01..2025-06-30
May                  2026-05-01..2026-05-31
2024                 2024-01-01..2024-12-31
early May            2026-05-01..2026-05-10
mid-May              2026-05-11..2026-05-20
late February 2024   2024-02-21..2024-02-29
end of July          2025-07-21..2025-07-31
~Late July           2025-07-21..2025-07-31
mi-mai               2026-05-11..2026-05-20
Anfang Mai           2026-05-01..2026-05-10
fin juillet 2024     2024-07-21..2024-07-31
early 2024           2024-01-01..2024-04-30
spring 2024          2024-03-01..2024-05-31
printemps 2024       2024-03-01..2024-05-31
fall 2024            2024-09-01..2024-11-30
spring               2026-03-01..2026-05-31
autumn               2025-09-01..2025-11-30
early spring 2024    2024-03-01..2024-03-31
spring/summer 2019   2019-03-01..2019-08-31
winter 2023/24       2023-12-01..2024-02-29
winter 2023          2023-12-01..2024-02-29
winter 2026          2025-12-01..2026-02-28
"""


@pytest.mark.parametrize("line", COARSE.strip().splitlines())
def test_forms_of_a_span(line: str) -> None:
    written, days = line.rsplit(maxsplit=1)
    assert read(written) == days


def test_p14_seasons_are_those_of_the_half_of_the_world() -> None:
    # Whole months, as weather services count seasons (from memory).
    assert read("summer 2019", base=None) == "2019-06-01..2019-08-31"
    assert read("summer 2019", base=None, south=True) == "2019-12-01..2020-02-29"
    assert read("spring/summer 2019", base=None, south=True) == "2019-09-01..2020-02-29"
    assert read("winter 2019", base=None, south=True) == "2019-06-01..2019-08-31"


def test_p54_a_southern_summer_is_the_one_that_has_begun() -> None:
    february = on(date(2026, 2, 10))
    assert read("summer", base=february, south=True) == "2025-12-01..2026-02-28"
    assert read("summer 2026", base=february, south=True) == "2025-12-01..2026-02-28"


def test_words_of_a_date_are_kept_as_written() -> None:
    reading = read_date("~Late July ", order=None, base=BASE, is_southern=False)
    assert reading is not None and reading.when is not None and reading.when.written == "~Late July"


def test_numeric_order_follows_the_garden() -> None:
    assert read("3/4/2026", "day first") == "2026-04-03"
    assert read("3/4/2026", "month first") == "2026-03-04"
    assert read("2/9", "month first") == "2026-02-09"
    assert read("13/4/2026", "month first") == "2026-04-13"
    assert read("1.4.2026", None) == "2026-04-01"


def test_p01_an_ambiguous_date_gives_both_readings() -> None:
    reading = read_date("3/4/2026", order=None, base=None, is_southern=False)
    assert reading is not None and reading.when is not None and reading.other is not None
    assert (reading.when.first, reading.other.first) == (date(2026, 4, 3), date(2026, 3, 4))
    same = read_date("4/4/2026", order=None, base=None, is_southern=False)
    assert same is not None and same.other is None


@pytest.mark.parametrize(
    ("written", "fault"),
    [
        ("2023-02-29", "29 February 2023 does not exist."),
        ("2024-02-30", "30 February 2024 does not exist."),
        ("31 April 2025", "31 April 2025 does not exist."),
        ("31 June", "31 June does not exist."),
        ("30.2.2024", "30 February 2024 does not exist."),
        ("0000-00-00", '"0000-00-00" does not exist.'),
        ("2026-13-01", '"2026-13-01" does not exist.'),
    ],
)
def test_f05_a_day_that_does_not_exist_is_said_so(written: str, fault: str) -> None:
    assert read(written) == fault


@pytest.mark.parametrize(
    "written", ["2024-05-01", "2024-5-1", "01.05.2024", "1/5/2024", "2024/05/01", "1 May 2024"]
)
def test_f07_all_known_forms_give_the_same_kind_of_value(written: str) -> None:
    assert read(written) == "2024-05-01"


@pytest.mark.parametrize(
    "written",
    [
        "2024-05-01 08:30", "2024-05-01 08:30:00", "2024-05-01T08:30:00Z", "2024-05-01 23:30:00 +02:00",
        "2024-05-01, 8:30 am", "1 May 2024 at 8h30", "5/1/2024 8:30:00 PM",
    ],
)  # fmt: skip
def test_f08_the_clock_is_dropped_and_the_zone_does_not_move_the_day(written: str) -> None:
    assert read(written, "month first" if written.startswith("5/") else "day first") == "2024-05-01"


def test_f96_a_29_february_without_a_year_is_the_last_there_was() -> None:
    assert read("29 February", base=on(date(2024, 2, 28))) == "2020-02-29"
    assert read("29 February", base=on(date(2024, 2, 29))) == "2024-02-29"
    assert read("29 Feb 2023") == "29 February 2023 does not exist."


def test_f103_compact_dates_and_week_dates_are_refused() -> None:
    assert read("20240501") == '"20240501" is not read as a date. Write 2024-05-01.'
    assert read("2024-W18-3") == '"2024-W18-3" names a week. Write the day, such as 2026-04-12.'


def test_without_a_year_and_anything_near_the_fault_says_so() -> None:
    assert read("12 June", base=None) == '"12 June" has no year, and nothing near it gives one.'
    assert read("yesterday", base=None) == '"yesterday" needs the date of the note.'


@pytest.mark.parametrize(
    "written", ["", "soon", "Day 5", "12.6", "June-bearing", "12 boxes", "2024-25", "Agostro", "3:2"]
)
def test_what_is_no_date_is_none(written: str) -> None:
    assert read(written) is None


@pytest.mark.parametrize(
    ("line", "start", "words"),
    [
        ("12 June: picked peas", 0, "12 June"),
        ("picked peas, on 12 June", 16, "12 June"),
        ("picked 12 peas", 7, None),
        ("planted 3 June-bearing strawberries", 8, None),
        ("picked 3/4 bucket of peas", 7, None),
        ("sowed peas 3/4", 11, "3/4"),
        ("2024-05-01 08:30 picked peas", 0, "2024-05-01 08:30"),
        ("sat: picked peas", 0, "sat"),
        ("the cat sat: on peas", 8, None),
        ("put 1.5.2024", 6, None),
        ("12 June 2000 g peas", 0, "12 June"),
    ],
)
def test_scanning_begins_exactly_there_and_takes_the_longest(
    line: str, start: int, words: str | None
) -> None:
    found = scan_date(line, start)
    assert (found[0].written if found else None) == words
    assert found is None or found[1] == start + len(found[0].written)


days = st.dates(date(1900, 1, 1), date(2100, 12, 31))


@given(days)
def test_iso_dates_read_as_python_reads_them(day: date) -> None:
    # ISO 8601-1:2019, calendar date; Python's datetime as the other reader.
    assert read(day.isoformat()) == day.isoformat()
    assert datetime.fromisoformat(day.isoformat()).date() == day


@given(days)
def test_python_writes_dates_that_read_back(day: date) -> None:
    # Python's strftime in the C locale writes them; ours must read the same day.
    for form in ("%d %B %Y", "%B %d, %Y", "%a %b %d %Y", "%d-%b-%Y", "%A, %d %B %Y", "%Y/%m/%d", "%d.%m.%Y"):
        assert read(day.strftime(form)) == day.isoformat()


@given(days, st.integers(0, 6))
def test_a_weekday_is_the_nearest_not_after_the_base(base: date, number: int) -> None:
    # Python's date.weekday as the other reader.
    name = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"][number]
    found = read_date(name, order=None, base=on(base), is_southern=False)
    assert found is not None and found.when is not None
    assert found.when.first.weekday() == number
    assert timedelta(0) <= base - found.when.first < timedelta(7)


@given(days, days)
def test_a_day_without_a_year_is_the_nearest_not_after_the_base(day: date, base: date) -> None:
    found = read_date(day.strftime("%d %B"), order=None, base=on(base), is_southern=False)
    assert found is not None and found.when is not None
    read_day = found.when.first
    assert (read_day.month, read_day.day) == (day.month, day.day)
    assert read_day <= base
    assert (base - read_day).days < (366 if day.month != 2 or day.day != 29 else 9 * 366)


@pytest.mark.parametrize(
    ("month", "in_the_south"), [(1, 7), (5, 11), (6, 12), (7, 1), (12, 6)]
)  # January is as July six months on: what half a year means, no source
def test_the_same_time_of_year_in_the_south(month: int, in_the_south: int) -> None:
    assert northern_month(month, is_southern=True) == in_the_south
    assert northern_month(in_the_south, is_southern=True) == month
    assert northern_month(month, is_southern=False) == month
