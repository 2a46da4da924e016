"""Frosts with their chances, cover, and dates that contradict each other, as typed in garden.yaml.

The chances of Lebanon, New Hampshire, are printed by the National Centers for Environmental Information (U.S. Climate
Normals 1991-2020, station USW00094765, 32 °F); the package loads none of them.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardens import garden_of, settings_of
from leafmould.notes.setting_values import Cover, Settings, WeatherDay
from leafmould.reckon.almanac import Almanac, almanac
from leafmould.reckon.season_here import cover_words, frost_lines
from leafmould.reckon.windows import windows


def told(read: Settings) -> list[str]:
    return [p.sentence for p in read.problems]


@pytest.mark.parametrize(
    "frost",
    [
        "frost: {last: {10%: 24 May, 50%: 9 May, 90%: 27 April}, first: 6 October}",
        "frost:\n  last:\n    90 %: 27 April\n    50 per cent: 9 May\n    10: 24 May\n  first: 6 October\n",
        "frost:\n  last: {one in ten: 24 May, average: 9 May, 90: 27 April}\n  first: {50%: 6 October}\n",
    ],
)
def test_chances_in_the_ways_they_are_written(frost: str) -> None:
    read = settings_of(frost)
    assert told(read) == []
    assert read.last_chances == ((10, (5, 24)), (50, (5, 9)), (90, (4, 27)))
    assert (read.last_frost, read.first_frost, read.first_chances) == ((5, 9), (10, 6), ())


# Tolerance, written before the run: one day. Between the printed 40 and 60 per cent stands the printed half.
@pytest.mark.parametrize(
    ("name", "at_40", "at_60", "half"),
    [("last", "12 May", "6 May", (5, 9)), ("first", "3 October", "8 October", (10, 6))],
)
def test_half_of_all_years_lies_between_the_chances_around_it(
    name: str, at_40: str, at_60: str, half: tuple[int, int]
) -> None:
    read = settings_of(f"frost: {{{name}: {{40%: {at_40}, 60%: {at_60}}}}}")
    found = read.last_frost if name == "last" else read.first_frost
    assert found is not None
    assert abs((date(2025, *found) - date(2025, *half)).days) <= 1


def test_without_a_half_the_nearest_chance_stands_in() -> None:
    assert settings_of("frost: {last: {10%: 24 May, 20%: 20 May}}").last_frost == (5, 20)


@pytest.mark.parametrize(
    ("yaml", "said"),
    [
        (
            "frost: {last: 6 October, first: 9 May}",
            "garden.yaml:1: frost: The last frost of spring (6 October) comes after the first of autumn (9 May), so "
            "neither is used. Are they the wrong way round? South of the equator garden.yaml says so: "
            '"place: {latitude: -42}".',
        ),
        (
            "place: {latitude: -42}\nfrost: {last: 1 May, first: 15 October}",
            "garden.yaml:2: frost: The last frost of spring (1 May) comes after the first of autumn (15 October), so "
            "neither is used. Are they the wrong way round?",
        ),
        (
            "frost: {last: {10%: 24 April, 50%: 9 May}}",
            "garden.yaml:1: frost.last: The days do not follow their chances, so none is used. The later a day of "
            "spring, the fewer years have frost after it.",
        ),
        (
            "frost: {first: {10%: 6 October, 50%: 9 September}}",
            "garden.yaml:1: frost.first: The days do not follow their chances, so none is used. The later a day of "
            "autumn, the more years have had frost before it.",
        ),
        (
            "frost: {last: {lots: 24 May}}",
            'garden.yaml:1: frost.last.lots: "lots" is no chance. Write a part of all years, such as "10%" or "50%".',
        ),
        (
            "cover: fleece",
            'garden.yaml:1: cover: "cover" needs what each cover gains, such as "cover: {fleece: 2 weeks}".',
        ),
        (
            "cover: {fleece: 2}",
            'garden.yaml:1: cover.fleece: "2" is no gain of fleece. Write it such as "2 weeks", at most 12.',
        ),
        (
            "cover: {glass: 20 weeks}",
            'garden.yaml:1: cover.glass: "20 weeks" is no gain of glass. Write it such as "2 weeks", at most 12.',
        ),
        (
            "place: {latitude: 144}",
            'garden.yaml:1: place.latitude: "144" is no latitude. Write degrees from -90 to 90, such as 46.5.',
        ),
    ],
)
def test_what_contradicts_itself_is_told_in_one_sentence(yaml: str, said: str) -> None:
    read = settings_of(yaml)
    assert told(read) == [said]
    assert (read.last_frost, read.first_frost, read.cover or ()) == (None, None, ())


@pytest.mark.parametrize(
    ("place", "last", "first"),
    [
        ("place: {latitude: -42}", "15 October", "1 May"),
        ("place: {latitude: -37}", "20 September", "10 June"),
        ("place: {latitude: 36}", "10 February", "5 January"),
        ("place: {latitude: 67}", "30 June", "2 August"),
    ],
)
def test_a_season_may_span_the_new_year(place: str, last: str, first: str) -> None:
    read = settings_of(f"{place}\nfrost: {{last: {last}, first: {first}}}")
    assert told(read) == []
    assert read.last_frost and read.first_frost


@settings(derandomize=True, max_examples=120, deadline=None)
@given(st.text(alphabet="frostlacove: {}%,0159MayOct\n-", max_size=80))
def test_nothing_typed_there_ends_in_a_traceback(text: str) -> None:
    for yaml in (f"frost: {text}", f"frost: {{last: {{{text}}}}}", f"cover: {text}", f"cover: {{{text}}}"):
        settings_of(f"garden: G\n{yaml}")


# Cover


def test_cover_as_typed_the_least_first() -> None:
    read = settings_of("cover: {glass: 4 weeks, fleece: a fortnight, hoops: 20 days}")
    assert read.cover == (
        Cover(name="fleece", days=14),
        Cover(name="hoops", days=20),
        Cover(name="glass", days=28),
    )
    assert settings_of("cover: none").cover == ()
    assert settings_of("garden: G").cover is None


HERE = replace(Almanac(on=date(2026, 7, 15)), last_frost=(5, 9), first_frost=(10, 6), latitude=44.0)


def test_a_cover_moves_both_ends_of_the_season() -> None:
    found = {w.kind: [(u.cover, u.words) for u in w.covered] for w in windows("french-bean", HERE, 2027)}
    assert found == {
        "sow or set out": [("fleece", "18–25 April"), ("glass", "4–11 April")],
        "last useful sowing": [("fleece", "until 7 August"), ("glass", "until 21 August")],
    }


def test_no_cover_lengthens_the_light() -> None:
    mild = replace(HERE, last_frost=(3, 25), first_frost=(11, 15), latitude=51.0)
    (last,) = [w for w in windows("beetroot", mild, 2027) if w.kind == "last useful sowing"]
    assert (last.words, last.covered) == ("until about 6–12 September", ())


def test_a_cover_may_carry_the_first_frost_over_the_new_year() -> None:
    mild = replace(HERE, last_frost=(2, 20), first_frost=(12, 20), latitude=None)
    (last,) = [w for w in windows("french-bean", mild, 2027) if w.kind == "last useful sowing"]
    assert last.covered[-1].first - last.first == date(2027, 1, 29) - date(2027, 1, 1)
    south = replace(mild, is_southern=True, last_frost=(8, 20), first_frost=(6, 20))
    (last,) = [w for w in windows("french-bean", south, 2027) if w.kind == "last useful sowing"]
    assert last.covered[-1].first - last.first == date(2027, 1, 29) - date(2027, 1, 1)


def test_who_says_what_a_cover_gains() -> None:
    assert cover_words(HERE) == (
        "fleece 2 weeks, glass 4 weeks at either end of the season: common practice, as nothing of "
        "cover is set down for this garden. A cover adds no light: in the darkest weeks little grows under it either."
    )
    own = replace(HERE, cover=(Cover(name="hoops", days=20),), is_usual_cover=False)
    assert cover_words(own) == (
        "hoops 20 days at either end of the season: as set down for this garden. A cover adds no light: in the darkest weeks little grows under it either."
    )
    assert cover_words(replace(HERE, cover=())) == ""


def test_frosts_are_told_with_their_chances() -> None:
    read = settings_of("frost: {last: {10%: 24 May, 50%: 9 May, 90%: 27 April}, first: 6 October}")
    garden = garden_of("2026-05-06\n- frost −1\n", read)
    spring, autumn = frost_lines(garden, almanac(read, garden))
    assert spring.words == (
        "9 May in half of all years, as set down for this garden; frost comes after 24 May in 10% of years, after 27 April "
        "in 90%. Noted here: 6 May, in 1 year."
    )
    assert autumn.words == "6 October on average, as set down for this garden."


# Frosts noted and measured


def spring_of(notes: str, rows: tuple[WeatherDay, ...], on: date = date(2026, 7, 15)) -> str:
    read = replace(settings_of("frost: {last: 9 May, first: 6 October}"), weather=rows)
    garden = garden_of(notes, read, on=on)
    return frost_lines(garden, almanac(read, garden))[0].words


def low(day: str, celsius: float) -> WeatherDay:
    return WeatherDay(on=date.fromisoformat(day), low=celsius, high=15)


def test_measured_frosts_count_as_noted_ones() -> None:
    rows = (low("2025-05-12", 0.0), low("2025-05-20", 0.4), low("2026-05-02", -1))
    assert spring_of("2026-05-06\n- frost −1\n", rows) == (
        "9 May on average, as set down for this garden. Noted here: 6 May to 12 May, in 2 years."
    )


def test_a_measured_frost_that_was_noted_too_leads_to_its_note() -> None:
    read = replace(settings_of("garden: G"), weather=(low("2026-05-02", -1), low("2026-05-06", -1)))
    garden = garden_of("2026-05-06\n- frost −1\n", read, on=date(2026, 7, 15))
    (noted,) = frost_lines(garden, almanac(read, garden))[0].noted
    assert (noted.day, noted.event) == (date(2026, 5, 6), "2026-05-06:1")
    autumn = (low("2025-10-02", -1),)
    read = replace(read, weather=autumn)
    garden = garden_of("2025-10-02\n- frost −1\n", read, on=date(2026, 7, 15))
    (noted,) = frost_lines(garden, almanac(read, garden))[1].noted
    assert noted.event == "2025-10-02:1"


@pytest.mark.parametrize(("on", "is_told"), [(date(2026, 6, 4), False), (date(2026, 6, 5), True)])
def test_the_last_frost_of_a_spring_is_known_a_month_later(on: date, is_told: bool) -> None:
    assert ("Noted here: 6 May" in spring_of("2026-05-06\n- frost −1\n", (), on)) is is_told


def test_noted_frosts_far_after_the_average_are_a_warning() -> None:
    rows = (low("2023-05-20", -1), low("2024-05-25", -1), low("2025-05-22", -1))
    assert spring_of("2026-06-01\n- weeded Arch\n", rows) == (
        "9 May on average, as set down for this garden. Noted here: 20 May to 25 May, in 3 years. That is 13 days later in the "
        "middle of the years: the later date is the one to go by until the average is set down anew."
    )
