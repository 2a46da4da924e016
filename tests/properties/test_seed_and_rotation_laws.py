"""Laws of seed, amounts and rotation: what must hold whatever the garden is like. Fixed seeds; the long run looks further."""

from __future__ import annotations

import random
from datetime import date
from itertools import pairwise

import pytest

from gardens import TANSY_HILL, garden_of, settings_of
from leafmould.facts.published import published
from leafmould.facts.tables import crops
from leafmould.garden.model import Garden
from leafmould.reckon.almanac import almanac
from leafmould.reckon.amounts import amounts
from leafmould.reckon.coming_up import days_at
from leafmould.reckon.next_in_bed import ORDER, Verdict, illnesses, parts_where_fine, verdict, verdicts
from leafmould.reckon.rotation import Occupancy
from leafmould.reckon.seed_life import Trial, judge, life_of
from long_runs import LONG

TIMES = 40 * LONG
GROWN = ("kale", "rocket", "pea", "leek", "potato", "tomato", "lettuce", "beetroot", "dahlia", "rhubarb")
PARTS = ("", ", north half", ", south half")
ILLS = ("saw clubroot in", "saw white mold in", "saw white rot in")
NEXT = 2027
STANDINGS = ("still good", "test first", "likely spent")


def lines(chance: random.Random) -> list[str]:
    """Years of a bed, some silent, some in parts, some ill."""
    found = [
        f"{year}-05-01\n- grew {crop} in Long border{chance.choice(PARTS)}"
        for year in range(2020, 2027)
        if chance.random() < 0.8
        for crop in chance.sample(GROWN, chance.choice((1, 1, 2)))
    ]
    if chance.random() < 0.4:
        year = chance.randrange(2020, 2027)
        found.append(f"{year}-08-01\n- {chance.choice(ILLS)} Long border{chance.choice(PARTS)}")
    return found or ["2026-05-01\n- weeded Long border"]


def garden(found: list[str]) -> Garden:
    return garden_of("\n".join(found), on=date(2026, 12, 31))


def told(found: list[str]) -> dict[str, Verdict]:
    all_of_them = verdicts(garden(found), NEXT, year_of=lambda day: day.year)
    return {family: one for (bed, family), one in all_of_them.items() if bed == "long-border"}


@pytest.mark.parametrize("seed", range(TIMES))
def test_more_of_a_family_never_brings_it_back_sooner(seed: int) -> None:
    chance = random.Random(seed)
    found = lines(chance)
    before = told(found)
    after = told([*found, f"{chance.randrange(2020, 2027)}-06-01\n- grew kale in Long border"])
    one, other = before.get("Brassicaceae"), after["Brassicaceae"]
    if one is None or one.kind == "not known" or other.kind == "not known":
        return
    assert ORDER.index(other.kind) >= ORDER.index(one.kind)
    assert one.kind != "not yet" or one.until is None or (other.until or 9999) >= one.until


@pytest.mark.parametrize("seed", range(TIMES))
def test_what_is_fine_in_the_whole_bed_is_not_forbidden_in_a_part(seed: int) -> None:
    grown = garden(lines(random.Random(seed)))
    within, ill = Occupancy(grown, spares_perennials=True), illnesses(grown, lambda day: day.year)
    whole = verdicts(grown, NEXT, year_of=lambda day: day.year)
    better = parts_where_fine(grown, whole, year_of=lambda day: day.year)
    for (bed, family), one in whole.items():
        for part in ("north half", "south half") if bed == "long-border" else ():
            of_part = verdict(grown, bed, family, NEXT, within=within, ill=ill, part=part)
            assert one.kind != "fine" or of_part.kind in ("fine", "not known")
            assert (part in better.get((bed, family), ())) <= (of_part.kind == "fine" and one.kind != "fine")


@pytest.mark.parametrize("seed", range(TIMES))
def test_a_verdict_says_until_when_or_that_nobody_knows(seed: int) -> None:
    for one in told(lines(random.Random(seed))).values():
        assert one.reason.endswith(".") and one.sources
        assert one.until is None or (one.kind == "not yet" and one.until > NEXT)
        assert one.kind != "fine" or not one.since.unrecorded


def test_older_seed_is_never_judged_better() -> None:
    for key in crops():
        life = life_of(key)
        if life is None:
            continue
        known = [judge(key, age, life, None, 2026).standing for age in range(12)]
        places = [STANDINGS.index(standing) for standing in known]
        assert places == sorted(places), key
        assert known[0] == "still good" and known[-1] == "likely spent"


def test_seed_of_which_more_came_up_is_never_judged_worse() -> None:
    order = ("likely spent", "sow thicker", "still good")
    for key in crops():
        trials = [Trial(came_up=up, tried=20, year=2026, event=None) for up in range(21)]
        places = [order.index(judge(key, 3, life_of(key), trial, 2026).standing) for trial in trials]
        assert places == sorted(places), key


def test_warmer_soil_up_to_the_best_brings_seedlings_no_later() -> None:
    for key in crops():
        at = [f for f in published(key) if f.subject.startswith("comes up at") and f.low]
        if len(at) < 2:
            continue
        best = min(at, key=lambda f: f.low or 0)
        warmths = range(int(at[0].subject.split()[-2]), int(best.subject.split()[-2]) + 1)
        days = [found for celsius in warmths if (found := days_at(key, celsius))]
        assert all(later <= sooner + 1 for sooner, later in pairwise(days)), key


@pytest.mark.parametrize("seed", range(10 * LONG))
def test_a_larger_bed_takes_no_fewer_plants_and_no_less_seed(seed: int) -> None:
    chance = random.Random(seed)
    width, length = chance.uniform(0.3, 3), chance.uniform(0.5, 9)
    rooms = []
    for factor in (1.0, 1.0 + chance.random()):
        yaml = f"garden: A\nbeds: [{{name: B, size: {width * factor:.2f} x {length * factor:.2f} m}}]\n"
        settings = settings_of(yaml)
        grown = garden_of("2026-05-01\n- sowed carrots in B", settings, on=date(2026, 7, 1))
        found = amounts("carrot", grown, almanac(settings, grown), ())
        assert found is not None
        rooms.append(found.rooms[0])
    small, large = rooms
    assert (
        small.rows <= large.rows and small.plants[0] <= large.plants[0] and small.plants[1] <= large.plants[1]
    )
    assert small.seeds and large.seeds and small.seeds[0] <= large.seeds[0]
    assert small.plants[0] <= small.plants[1] and small.seeds[0] >= small.plants[0]


def test_the_same_garden_in_another_order_is_told_the_same() -> None:
    found = lines(random.Random(7))
    assert TANSY_HILL.beds
    assert told(found) == told(found[::-1])
