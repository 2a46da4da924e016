"""The ground in garden.yaml, as typed, and what the map makes of it: outlines, and a sentence for what looks wrong."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from textwrap import dedent
from typing import Any

import pytest

from gardens import garden_of, settings_of
from leafmould.charts.plan import Box
from leafmould.garden.footprint import Footprint, footprint
from leafmould.garden.model import Bed
from leafmould.garden.plan_checks import PLAN_CHECKS
from leafmould.notes.setting_values import Piece, Plan, Settings


def told(beds: str) -> list[str]:
    """What the checks say of a garden.yaml."""
    typed = dedent(beds)
    garden = garden_of("2026-04-20\n- sowed peas in Arch", settings=settings_of(typed))
    return [problem.sentence for check in PLAN_CHECKS for problem in check(garden)]


def test_the_ground_as_typed():
    plan = settings_of(
        "north: 30°\nplot: 20 x 30 m\npaths: [0.8 x 12 m at 2 x 3 m]\nwalls: 5 x 0.3 m, at 1 x 1 m\n"
        "ponds: [2 x 1 m at 4 x 4 m]\nbuildings: []\nwet ground: [3 x 2 m at 0 x 0 m]\nsunny ground: 1 x 2 m at 5 x 5 m\n"
    ).plan
    assert plan == Plan(
        north=30,
        plot=(20, 30),
        pieces=(
            Piece(kind="path", size_m=(0.8, 12), position_m=(2, 3)),
            Piece(kind="wall", size_m=(5, 0.3), position_m=(1, 1)),
            Piece(kind="pond", size_m=(2, 1), position_m=(4, 4)),
            Piece(kind="wet", size_m=(3, 2), position_m=(0, 0)),
            Piece(kind="sunny", size_m=(1, 2), position_m=(5, 5)),
        ),
    )


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("north: uphill", 'garden.yaml:1: north: "uphill" is no direction. Write how many degrees north lies to the right of straight up, such as 30.'),
        ("plot: big", 'garden.yaml:1: plot: "big" gives no width and length. Write it such as "20 x 30 m".'),
        ("paths: [by the wall]", 'garden.yaml:1: paths: "by the wall" gives no size and place. Write it such as "0.8 x 12 m at 2 x 3 m".'),
        ("walls: [0 x 2 m at 1 x 1 m]", 'garden.yaml:1: walls: "0 x 2 m at 1 x 1 m" gives no size and place. Write it such as "0.8 x 12 m at 2 x 3 m".'),
        ("wet ground: down there", 'garden.yaml:1: wet ground: "down there" gives no size and place. Write it such as "0.8 x 12 m at 2 x 3 m".'),
        ("beds: [{name: Old plum, kind: tree, canopy: wide}]", 'garden.yaml:1: beds[0].canopy: "wide" is no width of a crown. Write it such as "4 m".'),
    ],
)  # fmt: skip
def test_a_bad_value_costs_one_sentence(typed: str, sentence: str):
    read = settings_of(typed)
    assert [problem.sentence for problem in read.problems] == [sentence]
    assert read.plan == Plan()


def bed(**known: Any) -> Footprint | None:
    return footprint(replace(Bed(key="arch", name="Arch", position_m=(2, 3)), **known))


def test_outlines_from_what_is_written():
    assert footprint(Bed(key="arch", name="Arch")) is None
    assert bed(sides_m=(1.2, 6)) == Footprint(box=Box(x=2, y=3, width=1.2, height=6), form="box")
    assert bed(kind="tree", canopy_m=4) == Footprint(box=Box(x=0, y=1, width=4, height=4), form="round")


def test_what_is_guessed_says_so():
    assert bed(kind="tree") == Footprint(
        box=Box(x=1, y=2, width=2, height=2), form="round", guessed="its canopy is not noted"
    )
    assert bed(area_m2=9.0, size_written="9 m²") == Footprint(
        box=Box(x=2, y=3, width=3, height=3), form="box", guessed="its area is noted, not its sides"
    )
    assert bed(kind="cane row", size_written="6 m") == Footprint(
        box=Box(x=2, y=3, width=6, height=0.6), form="box", guessed="its length is noted, not its depth"
    )
    # A cylinder as wide as high that holds 60 l is 0.424 m across: (4 x 0.06 / pi) ^ (1/3).
    pots = bed(kind="container", size_written="2 x 60 l")
    assert pots is not None
    assert pots.box.width == pytest.approx(2 * 0.424)
    assert pots.guessed == "its litres are noted, not its width"


def test_places_over_each_other():
    assert told("""\
        beds:
          - {name: Arch, size: 2 x 3 m, at: 0 x 0 m}
          - {name: Long border, size: 2 x 3 m, at: 1 x 1 m}
        """) == [
        'garden.yaml:3: at: "Long border" lies over "Arch" on the map: they share 2.0 m². Look at "at" and "size".'
    ]  # fmt: skip


def test_what_may_share_its_ground():
    assert (
        told("""\
        beds:
          - {name: Arch, size: 2 x 3 m, at: 0 x 0 m, until: 2025-01-01}
          - {name: New arch, size: 2 x 3 m, at: 0 x 0 m, from: 2025-01-01}
          - {name: Lean-to, kind: under glass, size: 4 x 4 m, at: 10 x 0 m}
          - {name: Glass border, size: 4 x 1 m, at: 10 x 0 m}
          - {name: Old plum, kind: tree, canopy: 6 m, at: 10 x 1 m}
        """)
        == []
    )


def test_beyond_the_plot_and_of_no_size():
    assert told("""\
        plot: 8 x 10 m
        beds:
          - {name: Arch, size: 2 x 3 m, at: 7.5 x 0 m}
          - {name: Old plum, kind: tree, at: 5 x 5 m}
          - {name: Corner, at: 1 x 1 m}
        """) == [
        'garden.yaml:3: at: "Arch" reaches 1.5 m beyond the plot of 8 x 10 m.',
        'garden.yaml:5: size: "Corner" has a place on the map but no size, so it is drawn as a spot. Write such as "size: 1.2 x 6 m".',
        'garden.yaml:4: canopy: "Old plum" has no canopy, so it is drawn 2 m across. Write such as "canopy: 4 m".',
    ]  # fmt: skip


def test_the_map_shown_in_the_readme_is_read_without_a_word():
    readme = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")
    section = readme.split("## A map, to scale")[1].split("\n## ")[0]
    block = "".join(re.findall(r"^    .*\n", section, re.MULTILINE))
    read = settings_of(block)
    assert (read.problems, read.plan.north, len(read.plan.pieces)) == ((), 30, 2)
    assert [footprint(_bed(bed.name, read)) is not None for bed in read.beds] == [True, True, True]
    assert told(block) == []


def _bed(name: str, read: Settings) -> Bed:
    garden = garden_of("2026-04-20\n- sowed peas in Arch", settings=read)
    return next(bed for bed in garden.beds.values() if bed.name == name)
