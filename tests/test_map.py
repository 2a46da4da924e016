"""The garden map as a page: a garden.yaml and notes as typed, and what is drawn, season by season."""

from __future__ import annotations

import re
from datetime import date
from itertools import combinations
from pathlib import Path

import pytest

from browsers import chromium
from leafmould.build import build
from leafmould.charts.plan import Box, shared
from leafmould.pages.map_place import sun_sign, wet_sign

ON = date(2026, 7, 15)
GARDEN = """\
garden: Tansy Hill
north: 30
plot: 20 x 20 m
paths: [1 x 18 m at 8 x 1 m]
beds:
  - {name: Long border, size: 6 x 2.4 m, at: 1 x 2 m, sun: full, water: stands wet in March}
  - {name: Old arch, size: 2 x 3 m, at: 1 x 8 m, until: 2025-03-01}
  - {name: New arch, was: Old arch, from: 2025-03-01, size: 2 x 3 m, at: 1 x 8 m}
  - {name: Old plum, kind: tree, crop: plum, planted: 1999, canopy: 5 m, at: 15 x 15 m}
  - {name: Far corner}
  - {name: Secret strip, size: 2 x 2 m, at: 16 x 2 m, private: yes}
"""
NOTES = """\
2024-04-12 sowed beetroot in Long border
2024-05-12 planted 3 leek in Old arch
2024-09-01 cleared beetroot from Long border
2024-10-01 cleared leek from Old arch
2025-05-02 sowed peas in New arch
2025-08-01 cleared peas from New arch
2026-03-02 sowed spinach in Long border
2026-05-02 cleared spinach from Long border
2026-05-12 planted 6 tomatoes in Long border
2026-05-13 sowed kale in Secret strip
"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return made(tmp_path_factory.mktemp("garden"), GARDEN)


def made(folder: Path, settings: str, *, household: bool = False) -> Path:
    (folder / "notes").mkdir()
    (folder / "garden.yaml").write_text(settings, encoding="utf-8")
    for line in NOTES.splitlines():
        day, _, work = line.partition(" ")
        name = f"{day}-{re.sub('[^a-z]', '', work)}.md"
        (folder / "notes" / name).write_text(f"---\ndate: {day}\nwork:\n  - {work}\n---\n", encoding="utf-8")
    build(folder, to=folder / "site", on=ON, household=household)
    return folder / "site"


def names(page: str) -> list[str]:
    """The names on a map, in the order they are drawn."""
    return re.findall(r'<text class="name[^>]*>([^<]+)</text>', page)


def grown(page: str) -> list[tuple[str, bool]]:
    """What is hatched on a map, and whether it is over."""
    found = re.findall(r'aria-label="([^"]+)" class="band( over)?"', page)
    return [(name, bool(over)) for name, over in found]


def test_the_map_of_today_and_of_earlier_years(site: Path) -> None:
    now = (site / "map/index.html").read_text(encoding="utf-8")
    before = (site / "map/2024.html").read_text(encoding="utf-8")
    assert names(now) == ["Long border", "New arch", "Old plum"]
    assert names(before) == ["Long border", "Old arch", "Old plum"]
    assert grown(now) == [("spinach", True), ("tomato", False), ("plum", False)]
    assert [name for name, _ in grown(before)] == ["beetroot", "leek", "plum"]


def test_of_two_plantings_of_one_name_the_one_that_stands_is_drawn(tmp_path: Path) -> None:
    (tmp_path / "notes").mkdir()
    (tmp_path / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    (tmp_path / "notes" / "all.txt").write_text(
        "2026-03-02\nsowed lettuce in Long border\n\n2026-05-02\ncleared lettuce from Long border\n\n"
        "2026-06-12\nsowed lettuce in Long border\n",
        encoding="utf-8",
    )
    build(tmp_path, to=tmp_path / "site", on=ON, household=False)
    assert grown((tmp_path / "site/map/index.html").read_text(encoding="utf-8")) == [
        ("lettuce", False),
        ("plum", False),
    ]


def test_every_year_leads_to_the_others_in_plain_links(site: Path) -> None:
    page = (site / "map/2025.html").read_text(encoding="utf-8")
    ways = re.search(r'<nav class="map-years".*?</nav>', page, re.S)
    assert ways is not None
    assert re.findall(r'href="([^"]+)"', ways[0]) == ["../map/2024.html", "../map/index.html"]
    assert '<span aria-current="page">2025</span>' in ways[0]


def test_what_is_not_placed_is_said_and_what_is_private_is_not_there(site: Path) -> None:
    page = (site / "map/index.html").read_text(encoding="utf-8")
    assert "Without a place on the map" in page
    assert page.count(">Far corner</a>") == 2  # said to have no place, and in the table
    for file in (site / "map").iterdir():
        assert "Secret strip" not in file.read_text(encoding="utf-8")


def test_the_seasons_before_stand_in_the_bed_under_the_names_it_had(site: Path) -> None:
    page = (site / "map/index.html").read_text(encoding="utf-8")
    assert re.findall(r'<text class="past"[^>]*>([^<]+)<', page) == ["2025 – · 2024 Be"]


def before(page: str) -> list[tuple[str, str]]:
    """The beds whose seasons before stand below the key."""
    return re.findall(r'<li><a[^>]*>([^<]+)</a> <span class="past">([^<]+)</span>', page)


def test_where_there_is_no_room_the_seasons_before_stand_below_the_key(site: Path) -> None:
    page = (site / "map/index.html").read_text(encoding="utf-8")
    assert before(page) == [("New arch", "2025 Pe · 2024 On"), ("Old plum", "2025 Ro · 2024 Ro")]
    key = page[page.index("map-key") : page.index("</figcaption>")]
    assert "pea family" in key and "onion family" in key  # neither is drawn this season
    assert 'stand <a href="#map-before">below the key</a>' in page
    assert before((site / "map/2024.html").read_text(encoding="utf-8")) == []


def test_wet_and_sunny_ground_is_drawn_where_it_lies_and_the_key_says_what_it_is(tmp_path: Path) -> None:
    settings = GARDEN + "wet ground: [6 x 3 m at 0 x 0 m]\nsunny ground: [2 x 2 m at 16 x 16 m]\n"
    page = (made(tmp_path, settings) / "map/index.html").read_text(encoding="utf-8")
    assert re.findall(r'<rect class="zone" fill="url\(#(zone-\w+)\)" [^>]*><title>([^<]+)<', page) == [
        ("zone-wet", "wet ground"),
        ("zone-sunny", "sunny ground"),
    ]
    assert re.findall(r"</svg> (\w+ ground)</span>", page) == ["wet ground", "sunny ground"]
    assert page.count('<pattern id="zone-') == 2
    # 6 m of 21.6 m across, drawn 720 wide: the plot is 20 m, with 0.8 m around.
    width = re.search(r'<rect class="zone" fill="url\(#zone-wet\)" x="[^"]+" y="[^"]+" width="([^"]+)"', page)
    assert width is not None and float(width[1]) == pytest.approx(720 * 6 / 21.6, abs=0.1)


def test_a_garden_without_such_ground_has_none_in_its_key(site: Path) -> None:
    assert "zone" not in (site / "map/index.html").read_text(encoding="utf-8")


def test_a_garden_without_places_has_no_map(tmp_path: Path) -> None:
    site = made(tmp_path, "garden: Tansy Hill\n")
    assert not (site / "map").exists()
    assert not (site / "look/map-years.js").exists()
    assert ">Map</a>" not in (site / "index.html").read_text(encoding="utf-8")


CROWDED = """\
garden: Tansy Hill
plot: 8 x 8 m
beds:
  - {name: Long border, size: 6 x 2.4 m, at: 1 x 1 m, parts: [west half, east half]}
"""
TUBS = "".join(
    f"  - {{name: Tub by the cellar stair {n}, kind: container, diameter: 50 cm, at: {3 + n % 3 * 0.55:g} x {5 + n // 3 * 0.55:g} m}}\n"
    for n in range(9)
)


def test_names_do_not_lie_over_each_other_and_what_has_no_room_has_a_number(tmp_path: Path) -> None:
    page = (made(tmp_path, CROWDED + TUBS) / "map/index.html").read_text(encoding="utf-8")
    numbered = [name for name in names(page) if name.isdigit()]
    assert numbered and numbered == [str(n + 1) for n in range(len(numbered))]
    key = re.search(r"<b>By number:</b> (.*?)</p>", page)
    assert key is not None
    assert len(re.findall(r"\d <a ", key[1])) == len(numbered)
    rooms = []
    for attributes, name in re.findall(r'<text class="name([^>]*)>([^<]+)</text>', page):
        x, y = (float(n) for n in re.findall(r' [xy]="([\d.-]+)"', attributes)[:2])
        long = len(name) * 11.5 * 0.54
        rooms.append(Box(x=x - (long / 2 if "middle" in attributes else 0), y=y - 9, width=long, height=12))
    assert [(a, b) for a, b in combinations(rooms, 2) if shared(a, b) > 0.25 * min(a.area, b.area)] == []


def drawn(page: str) -> dict[str, float]:
    """How wide each stretch of the Long border is drawn [m]."""
    found = re.findall(r'aria-label="([^"]+)" class="band[^>]*>.*?<rect [^>]*width="([\d.]+)"', page)
    whole = sum(float(width) for _, width in found)
    return {name: round(6 * float(width) / whole, 2) for name, width in found}


@pytest.mark.parametrize(
    ("lines", "metres"),
    [
        (
            ["sowed 4 rows carrots in Long border", "sowed 2 rows peas in Long border"],
            {"carrot": 4.0, "pea": 2.0},
        ),
        (
            [
                "planted 9 cabbages in Long border, west half",
                "planted 4 kale in Long border, west half",
                "planted 3 leeks in Long border, east half",
            ],
            {"cabbage": 1.5, "kale": 1.5, "leek": 3.0},
        ),
        (["sowed 4 rows carrots in Long border", "sowed peas in Long border"], {"carrot": 3.0, "pea": 3.0}),
    ],
)
def test_stretches_are_as_long_as_the_notes_say(
    lines: list[str], metres: dict[str, float], tmp_path: Path
) -> None:
    (tmp_path / "notes").mkdir()
    (tmp_path / "garden.yaml").write_text(CROWDED, encoding="utf-8")
    (tmp_path / "notes" / "2026-05-02.txt").write_text(
        "2026-05-02\n" + "\n".join(lines) + "\n", encoding="utf-8"
    )
    build(tmp_path, to=tmp_path / "site", on=ON, household=False)
    page = (tmp_path / "site/map/index.html").read_text(encoding="utf-8")
    assert drawn(page) == metres
    is_guessed = len(set(metres.values())) == 1
    assert ("<b>In equal parts:</b>" in page) is is_guessed


@pytest.mark.browser
def test_the_slider_goes_by_keyboard(site: Path) -> None:
    """Arrows choose a year and tell its name; only Enter leads there."""
    with chromium() as browser:
        page = browser.new_page()
        page.goto((site / "map/index.html").as_uri())
        slider = page.get_by_role("slider")
        assert slider.get_attribute("aria-valuetext") == "2026"
        slider.focus()
        page.keyboard.press("ArrowLeft")
        page.keyboard.press("ArrowLeft")
        assert slider.get_attribute("aria-valuetext") == "2024"
        assert page.url.endswith("/map/index.html")
        page.keyboard.press("Enter")
        page.wait_for_url("**/map/2024.html")
        assert page.get_by_role("slider").get_attribute("aria-valuetext") == "2024"


def test_the_household_sees_its_private_bed(tmp_path: Path) -> None:
    page = (made(tmp_path, GARDEN, household=True) / "map/index.html").read_text(encoding="utf-8")
    assert "Secret strip" in names(page)


@pytest.mark.parametrize(
    ("written", "sign"),
    [("full", "full"), ("full until three", "half"), ("half the day", "half"), ("shade", "shade"), ("?", "")],
)
def test_sun_as_gardeners_write_it(written: str, sign: str) -> None:
    assert sun_sign(written) == sign


@pytest.mark.parametrize(
    ("written", "sign"),
    [("moist", "wet"), ("dries out first", "dry"), ("dry above, moist below", ""), ("", "")],
)
def test_water_as_gardeners_write_it(written: str, sign: str) -> None:
    assert wet_sign(written) == sign
