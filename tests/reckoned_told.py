"""What the reckoning says of a whole garden on a day, written down in lines that can be read and compared.

    python tests/reckoned_told.py

writes the files of `tests/cases/reckoned/` anew, after a change that was meant. Read the difference before it is kept:
each line is something a gardener would be told.
"""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from datetime import date, timedelta
from functools import cache
from pathlib import Path
from textwrap import dedent

from leafmould.garden.load import load
from leafmould.garden.model import Garden, Planting
from leafmould.garden.queries import Past
from leafmould.pages.site import reckon
from leafmould.reckon.almanac import Almanac, almanac
from leafmould.reckon.amounts import enough_for
from leafmould.reckon.next_in_bed import verdicts
from leafmould.reckon.season_told import Seasons
from leafmould.reckon.weather_told import season_weather, usual_sums
from leafmould.values.when import When
from synthetic_garden import Sown, synthetic
from through_life import life

FOLDER = Path(__file__).parent / "cases" / "reckoned"
CONTENT = Path(__file__).resolve().parents[1] / "content"
DAYS = (date(2024, 5, 20), date(2025, 3, 10), date(2025, 8, 25), date(2026, 10, 20))
"""A spring, a late winter, a high summer and an autumn of the example garden."""
IN_THE_SOUTH = {"south": date(2022, 1, 20), "south-in-winter": date(2021, 7, 10)}
"""A high summer and a midwinter of the made garden."""

NAMES = (*(day.isoformat() for day in DAYS), *IN_THE_SOUTH, "labels")
AS_PRINTED = ("families", "sources", "warmth")
"""Facts as printed, which have tests of their own; and the warmth, which is told by months."""
LATEST = ("turned_out", "amounts", "known")
"""What hardly changes from one day to the next, and is long."""
UNSAID = ("family", "bed", "year", "before", "after", "verbs")
"""Parts of a value that its line names already, or that only dress it."""

SOUTH = """
    garden: South Bank
    place: {latitude: -38.2, elevation: 60 m}
    frost: {last: 12 September, first: 30 May}
    cover: {fleece: 2 weeks, glass: 5 weeks}
    units: imperial
    dates: day first
    decimal: point
    beds:
      - {name: Bed 1, size: 12 x 4 ft}
      - {name: Bed 2, size: 12 x 4 ft}
      - {name: Bed 3, size: 12 x 4 ft}
      - {name: Bed 4, size: 12 x 4 ft}
      - {name: Bed 5, size: 12 x 4 ft}
      - {name: Bed 6, size: 12 x 4 ft}
      - {name: Bed 7, size: 12 x 4 ft}
      - {name: Bed 8, size: 12 x 4 ft}
      - {name: Hothouse, kind: under glass}
      - {name: Quince, kind: tree, crop: quince, planted: 2011}
"""
MONTHS = (
    (54, 77),
    (54, 77),
    (50, 72),
    (46, 64),
    (43, 59),
    (39, 54),
    (37, 52),
    (39, 55),
    (41, 59),
    (45, 64),
    (48, 68),
    (52, 73),
)
"""Usual lows and highs [°F], invented."""
ALSO = """
2019-08-04
- sowed tomatoes 'Red Gem' in Hothouse
- bought 2 packets leeks
2019-10-20
- planted 6 tomatoes 'Red Gem' in Hothouse
2020-01-12
- picked 2 kg tomatoes in Hothouse
2020-05-02
- planted 40 garlic in Bed 8
2020-06-01
- frost -1
2020-09-20
- frost -2
2021-02-14
- manured Bed 3 with horse muck
- saw clubroot in Bed 5
2021-02-20
- sowed carrots and beetroot together in Bed 5
2021-03-20
- sowed spinach in Hothouse
2021-04-05
- sowed turnips in Bed 2
2021-04-11
- picked 9 kg quinces
2021-04-28
- planted 20 lettuce in Bed 4
- planted 12 leeks in Bed 4
2021-05-15
- sowed broad beans in Bed 1
- soil 50 °F in Bed 1
2021-05-20
- started onions in Hothouse
2021-06-18
- sowed radishes in Hothouse
- fleece over the turnips
2021-07-02
- spinach came up
2021-08-15
- sowed broad beans in Bed 3
- tested seed parsnips, 4 of 10 came up
2021-10-03
- planted 8 tomatoes in Hothouse
- treated tomatoes with soap, wait 3 days
2021-12-20
- penned hens on Bed 6
"""


RECORDS = {
    "garden.yaml": SOUTH,
    "crops.yaml": "oca: {family: Oxalidaceae, days: 200 from planting}\ncarrot: {varieties: {Stub: {days: 75 from sowing}}}\n",
    "records/normals.csv": "month,low,high,rain\n"
    + "".join(f"{n},{low},{high},1.6\n" for n, (low, high) in enumerate(MONTHS, start=1)),
    "records/weather.csv": "date,low,high,rain\n"
    + "".join(
        f"{date(2021, 11, 1) + timedelta(days=n)},{44 + n % 13},{63 + n % 21},{n % 3 / 10}\n"
        for n in range(70)
    ),
    "records/seeds.csv": "crop,variety,year,amount,counted,tried,tried in\n"
    "parsnip,Student,2017,1 packet,,,\ncarrot,Stub,2021,200 seeds,2021-06-01,8 of 10,2021\n"
    "onion,,2020,2 g,2021-01-01,,\nlettuce,,2019,40 seeds,,3 of 10,2021\nkale,,2016,none,,,\n",
    "records/beforehand.csv": "year,bed,crop\n2016,Bed 1,potato\n2017,Bed 2,cabbage\n",
}


@cache
def example() -> Path:
    """A copy of the example garden with nothing kept of earlier builds."""
    folder = Path(tempfile.mkdtemp()) / "garden"
    shutil.copytree(CONTENT, folder, ignore=shutil.ignore_patterns(".leafmould"))
    return folder


@cache
def south() -> Path:
    """A garden made by chance, half a year on, with what the chance leaves out."""
    folder = Path(tempfile.mkdtemp()) / "garden"
    notes = {"notes/all.md": "".join(_noted(s) for s in synthetic(7)) + ALSO}
    for name, text in {**RECORDS, **notes}.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(dedent(text), encoding="utf-8")
    return folder


def told(name: str) -> str:
    """The lines of one file: of the example garden on a day, of the garden in the south, or the labels through the days."""
    if name == "labels":
        return "\n".join(life()) + "\n"
    is_south = name in IN_THE_SOUTH
    folder, on = (south(), IN_THE_SOUTH[name]) if is_south else (example(), date.fromisoformat(name))
    loaded = load(folder, on=on, household=True)
    return "\n".join(lines(loaded.garden, almanac(loaded.shown, loaded.garden))) + "\n"


def _noted(sown: Sown) -> str:
    later = timedelta(days=182)
    rows = [
        (sown.sown, f"sowed {sown.crop} in {sown.bed}"),
        (sown.came_up, f"{sown.crop} came up in {sown.bed}"),
    ]
    if sown.flowered:
        rows.append((sown.flowered, f"first flower on {sown.crop} in {sown.bed}"))
    rows.append((sown.picked, f"picked 400 g {sown.crop} in {sown.bed}"))
    return "".join(f"{day + later}\n- {words}\n" for day, words in rows)


def lines(garden: Garden, taken: Almanac) -> Iterator[str]:
    """Everything reckoned for a garden, a line each, the subject first."""
    reckoned = reckon(garden, taken)
    for field in fields(reckoned):
        value = getattr(reckoned, field.name)
        if field.name in AS_PRINTED or (field.name in LATEST and garden.on in DAYS[:-1]):
            continue
        yield f"# {field.name.replace('_', ' ')}"
        yield from _lines(value)
    yield "# plants a packet is enough for"
    yield from (f"{lot.word} {lot.year}: {plain(enough_for(lot))}" for lot in reckoned.tin)
    past = Past(garden)
    begins = date(past.year_of(garden.on), 7 if garden.is_southern else 1, 1)
    yield "# the weather by months"
    yield from _lines(season_weather(reckoned.warmth, reckoned.warmth.weather, begins, garden.on))
    yield plain(usual_sums(reckoned.warmth, begins))
    yield "# next season"
    for (bed, family), found in verdicts(garden, past.year_of(garden.on) + 1, year_of=past.year_of).items():
        yield f"{bed}, {family}: {plain(found)}"
    seasons = Seasons(past)
    yield "# seasons"
    for year in seasons.events:
        for name in ("marks", "first_pickings", "best", "worst"):
            yield f"{year}, {name.replace('_', ' ')}: {plain(getattr(seasons, name)(year))}"


def _lines(value: object) -> Iterator[str]:
    if isinstance(value, Mapping):
        for key, one in value.items():
            if said := plain(one):
                yield f"{key}: {said}"
    elif isinstance(value, tuple):
        yield from (plain(one) for one in value)
    elif said := plain(value):
        yield said


def plain(value: object) -> str:
    """A value in few words: no names of classes, nothing of what is empty."""
    if value is None or value is False or value == "" or value == ():
        return ""
    if isinstance(value, Planting):
        return value.id
    if isinstance(value, When):
        return value.written
    if is_dataclass(value):
        said = [(f.name, plain(getattr(value, f.name))) for f in fields(value) if f.name not in UNSAID]
        return ", ".join(f"{name} {words}" for name, words in said if words)
    if isinstance(value, tuple | list):
        return "[" + "; ".join(plain(one) for one in value) + "]"
    if isinstance(value, Mapping):
        return "{" + "; ".join(f"{key} {plain(one)}" for key, one in value.items()) + "}"
    if isinstance(value, float):
        return f"{value:.4g}"
    return "yes" if value is True else str(value)


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for name in NAMES:
        (FOLDER / f"{name}.txt").write_text(told(name), encoding="utf-8")
