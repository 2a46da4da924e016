"""What crops.yaml says beside what is published: packet days and what they count from, distances, family."""

from __future__ import annotations

from datetime import date
from typing import Any

from gardens import garden_of, settings_of
from leafmould.facts.tables import crops
from leafmould.garden.vocabulary import build_vocabulary
from leafmould.pages.site import make_site
from leafmould.reckon.almanac import almanac
from leafmould.reckon.known import KnownLine, known_of

YAML = "garden: Hill\nunits: {units}\nbeds: [Arch]\n"


def lines(own: str, crop: str, notes: str, units: str = "metric") -> dict[str, KnownLine]:
    settings = settings_of(YAML.format(units=units), crops_yaml=own)
    garden = garden_of(notes, settings, on=date(2026, 7, 15))
    grown = [p for p in garden.plantings if crop in p.crops]
    found = known_of(crop, garden.crops[crop].family, grown, almanac(settings, garden))
    return {line.label: line for line in found}


SOWN = "2026-05-01\n- sowed beetroot 'Boltardy' in Arch"


def test_packet_days_of_crop_and_varieties_say_what_they_count_from() -> None:
    own = """
        beetroot:
          days: 60-75
          from: sowing
          varieties:
            Boltardy: 60 from planting out
            Cylindra: {low: 65, high: 75}
        """
    found = lines(own, "beetroot", SOWN)["To the first harvest"]
    assert found.packet == (
        "60–75 days, from sowing; ‘Boltardy’ 60 days, from planting out; ‘Cylindra’ 65–75 days, from sowing"
    )
    assert found.said and not any(said.words.startswith("‘") for said in found.said)


def test_days_published_for_a_variety_grown_here_stand_beside_those_of_the_crop() -> None:
    # University of Illinois Extension, two lists in the tables: 58 days, the start not printed
    notes = "2026-05-01\n- sowed beetroot 'Detroit Dark Red' in Arch"
    told = [said.words for said in lines("", "beetroot", notes)["To the first harvest"].said]
    assert told.count("‘Detroit Dark Red’ 58 days, start not stated") == 2
    assert not [words for words in told if "‘Avenger’" in words]


def test_own_distances_stand_beside_the_published_ones_or_alone() -> None:
    found = lines("beetroot: {apart: 10 cm, rows: 25 cm}\n", "beetroot", SOWN)
    assert (found["Apart in the row"].packet, found["Between rows"].packet) == ("10 cm", "25 cm")
    assert found["Apart in the row"].words == "5–10 cm"
    alone = lines(
        "celeriac: {apart: 6 in}\n", "celeriac", "2026-05-01\n- planted 40 celeriac in Arch", "imperial"
    )
    assert (alone["Apart in the row"].packet, alone["Apart in the row"].words) == ("6 in", "")


def test_the_page_says_what_of_a_crops_nature_is_the_gardeners_own_word() -> None:
    settings = settings_of(
        YAML.format(units="metric"),
        crops_yaml="sea beet:\n  family: beet family\n  like: chard\n  tender: no\n",
    )
    garden = garden_of("2026-05-01\n- sowed sea beet in Arch", settings, on=date(2026, 7, 15))
    site = make_site(
        garden,
        almanac(settings, garden),
        vocabulary=build_vocabulary(settings, crops()),
        household=True,
        problems=(),
    )
    page: Any = next(page.values for page in site.pages if page.address == "crops/sea-beet.html")
    assert page.about[-1] == "By crops.yaml: family, whether frost kills it, that it is like chard."
