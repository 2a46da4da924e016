"""The data files keep their contract: the schemas, the words for what is unknown, stable bytes."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from typing import Any

import jsonschema

from leafmould.garden.model import Bed, Crop, Entry, Fate, Garden, Picking, Planting, Season
from leafmould.output.schemas import HERE, schema_files
from leafmould.pages.data import data_files
from leafmould.reckon.forecast import Forecast
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.quantities import Amount
from leafmould.values.when import When, on

KILO = Amount(written="1.4 kg", low=1.4, high=1.4, unit="kg")
DOZEN = Amount(written="12", low=12, high=12, unit="piece")
BEETROOT = Planting(
    id="beetroot_long-border_2026-04-12_boltardy",
    bed="long-border",
    bed_now="long-border",
    beds=("long-border",),
    crops=("beetroot",),
    words=("beet",),
    varieties=("Boltardy",),
    origin="sown",
    sown=on(date(2026, 4, 12)),
    entries=("2026/04-12-beetroot", "2026/06-20-long-border", "2026/06-20-long-border#2"),
)


def entry(name: str) -> Entry:
    file = name.partition("#")[0]
    return Entry(id=name, at=Location(file=f"notes/{file}.md"), when=None, date_from="nowhere")


def garden(*plantings: Planting, pickings: tuple[Picking, ...] = ()) -> Garden:
    names = {name for p in plantings for name in p.entries} | {p.entry for p in pickings}
    entries = tuple(entry(name) for name in sorted(names))
    return Garden(
        name="Hill",
        on=date(2026, 7, 1),
        people=None,
        units="metric",
        is_southern=False,
        beds={"long-border": Bed(key="long-border", name="Long border")},
        crops={
            "beetroot": Crop(
                key="beetroot", name="beetroot", family="Amaranthaceae", grown_as="annual", is_tender=False
            ),
            "quillroot": Crop(
                key="quillroot", name="quillroot", family=None, grown_as="annual", is_tender=False
            ),
        },
        plantings=plantings,
        pickings=pickings,
        events=(),
        entries=entries,
        planting_by_id={p.id: p for p in plantings},
        entry_by_id={e.id: e for e in entries},
    )


def read(files: dict[str, bytes], name: str) -> Any:
    """A data file as other programs read it, checked against its schema."""
    found = json.loads(files[f"data/{name}.json"])
    schema = json.loads(schema_files([f"data/{name}.json"])[f"data/{name}.schema.json"])
    jsonschema.validate(found, schema, format_checker=jsonschema.FormatChecker())
    return found


def test_a_planting_as_other_programs_read_it() -> None:
    forecast = Forecast(
        earliest=date(2026, 6, 20),
        likely=date(2026, 7, 2),
        latest=date(2026, 7, 14),
        basis="packet says 69–93 days from sowing, counted from 12 April 2026",
        sources=(),
    )
    found = read(data_files(garden(BEETROOT), {BEETROOT.id: forecast}, None), "plantings")
    assert found == {
        "version": 1,
        "on": "2026-07-01",
        "plantings": [
            {
                "id": "beetroot_long-border_2026-04-12_boltardy",
                "bed": "Long border",
                "bed_now": "Long border",
                "beds": ["Long border"],
                "part": None,
                "crop": "beet",
                "crops": ["beet"],
                "variety": "Boltardy",
                "varieties": ["Boltardy"],
                "family": "Amaranthaceae",
                "families": ["Amaranthaceae"],
                "origin": "sown",
                "number": None,
                "started_on": None,
                "started_between": None,
                "sown_on": "2026-04-12",
                "planted_on": None,
                "found_on": None,
                "start_written": None,
                "first_picked_on": None,
                "last_picked_on": None,
                "cleared_on": None,
                "lost_on": None,
                "ended_on": None,
                "end_basis": None,
                "expected": {
                    "earliest": "2026-06-20",
                    "likely": "2026-07-02",
                    "latest": "2026-07-14",
                    "basis": "packet says 69–93 days from sowing, counted from 12 April 2026",
                },
                "picked_g": None,
                "picked": [],
                "seasons": [],
                "group": None,
                "notes": ["notes/2026/04-12-beetroot.md", "notes/2026/06-20-long-border.md"],
            }
        ],
    }


def test_an_ended_planting_expects_nothing_and_coarse_dates_are_no_days() -> None:
    spring = When(first=date(2024, 3, 1), last=date(2024, 5, 31), written="spring 2024")
    ended = replace(
        BEETROOT,
        crops=("quillroot",),
        words=(),
        sown=spring,
        started_between=(date(2024, 2, 1), date(2024, 2, 9)),
        ended_on=date(2024, 9, 1),
        end_basis="cleared",
        picked=(KILO, DOZEN),
        picked_g=1474.1752,
        seasons=(Season(name="2024/25", first_picked=spring, last_picked=None, picked_g=None),),
    )
    forecast = Forecast(
        earliest=ended.ended_on or date.max,
        likely=date.max,
        latest=date.max,
        basis="b",
        sources=(),
    )
    [found] = read(data_files(garden(ended), {ended.id: forecast}, None), "plantings")["plantings"]
    assert (found["crop"], found["family"], found["families"]) == ("quillroot", None, [])
    assert (found["sown_on"], found["start_written"]) == (None, "spring 2024")
    assert found["started_between"] == ["2024-02-01", "2024-02-09"]
    assert (found["ended_on"], found["end_basis"], found["expected"]) == ("2024-09-01", "cleared", None)
    assert found["picked_g"] == 1474.175
    assert found["picked"] == [
        {"amount": 1.4, "unit": "kg", "estimated": False},
        {"amount": 12, "unit": "piece", "estimated": False},
    ]
    assert found["seasons"] == [
        {"season": "2024/25", "first_picked_on": None, "last_picked_on": None, "picked_g": None}
    ]


def test_a_planting_known_by_year_alone_says_the_year() -> None:
    by_year = replace(BEETROOT, sown=None, origin="year only", year=2023, crops=(), words=(), varieties=())
    [found] = read(data_files(garden(by_year), {}, None), "plantings")["plantings"]
    assert (found["start_written"], found["crop"], found["crops"], found["variety"]) == (
        "2023",
        None,
        [],
        None,
    )


def test_a_picking_as_other_programs_read_it() -> None:
    picking = Picking(
        id="2026/06-20-long-border:1",
        when=on(date(2026, 6, 20)),
        crops=("beetroot",),
        varieties=("Boltardy",),
        bed="long-border",
        planting=BEETROOT.id,
        group=None,
        amounts=(DOZEN, KILO),
        fates=(
            Fate(kind="gave away", amount=replace(KILO, low=0.4, high=0.4)),
            Fate(kind="ate", amount=None),
        ),
        entry="2026/06-20-long-border",
        at=Location(file="notes/2026/06-20-long-border.md", line=4),
    )
    found = read(data_files(garden(BEETROOT, pickings=(picking,)), {}, None), "harvests")
    assert found["pickings"] == [
        {
            "on": "2026-06-20",
            "crop": "beet",
            "crops": ["beet"],
            "variety": "Boltardy",
            "varieties": ["Boltardy"],
            "planting": "beetroot_long-border_2026-04-12_boltardy",
            "bed": "Long border",
            "amount": 12,
            "unit": "piece",
            "grams": 1400,
            "estimated": False,
            "fates": [
                {"fate": "gave away", "amount": 0.4, "unit": "kg", "grams": 400},
                {"fate": "ate", "amount": None, "unit": None, "grams": None},
            ],
            "note": "notes/2026/06-20-long-border.md",
        }
    ]


def test_problems_are_in_household_builds_only() -> None:
    slip = Problem(
        at=Location(file="notes/a.md", line=4, column=9),
        level=Level.QUESTION,
        message='no bed is called "Nroth".',
        field="bed",
        suggestion="North",
    )
    assert sorted(data_files(garden(), {}, None)) == ["data/harvests.json", "data/plantings.json"]
    assert read(data_files(garden(), {}, [slip]), "problems")["problems"] == [
        {
            "file": "notes/a.md",
            "line": 4,
            "column": 9,
            "field": "bed",
            "level": "question",
            "message": 'no bed is called "Nroth".',
            "suggestion": "North",
        }
    ]


def test_the_bytes_are_plain_and_end_with_a_line() -> None:
    files = data_files(garden(), {}, None)
    assert files["data/plantings.json"] == b'{"version": 1, "on": "2026-07-01", "plantings": []}\n'


def test_every_schema_is_sound_and_offered() -> None:
    for path in sorted(HERE.glob("*.json")):
        jsonschema.Draft202012Validator.check_schema(json.loads(path.read_text("utf-8")))
    assert sorted(schema_files(data_files(garden(), {}, []))) == [
        "data/harvests.schema.json",
        "data/plantings.schema.json",
        "data/problems.schema.json",
    ]
