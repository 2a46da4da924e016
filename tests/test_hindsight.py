"""Looking backwards: each planting as it would have been expected on its first day, and as it came."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from gardens import garden_of, settings_of
from leafmould.cli import main
from leafmould.reckon.almanac import almanac
from leafmould.reckon.here import Turned, forecasts_here
from leafmould.reckon.hindsight import scores
from pages_garden import site_of

YAML = "garden: G\nfrost: {last: 9 May, first: 6 October}\nbeds: [Arch, Top bed]"
PACKETS = "beetroot: {days: 60, from: sowing}"


def turned(notes: str, *, on: date = date(2026, 12, 31)) -> tuple[Turned, ...]:
    settings = settings_of(YAML, crops_yaml=PACKETS)
    garden = garden_of(notes, settings, on=on)
    return forecasts_here(garden, almanac(settings, garden)).turned


SOWN = "2026-05-01\n- sowed beetroot in Arch\n"


def test_a_planting_is_judged_as_of_its_first_day() -> None:
    (found,) = turned(SOWN + "2026-07-04\n- picked beetroot from Arch")
    assert (found.begun, found.picked, found.kind) == (
        date(2026, 5, 1),
        date(2026, 7, 4),
        "packets and own figures",
    )
    assert (found.forecast.earliest, found.forecast.likely, found.forecast.latest) == (
        date(2026, 6, 21), date(2026, 6, 30), date(2026, 7, 15)
    )  # fmt: skip
    assert (found.miss, found.is_inside, found.outside) == (4, True, 0)


@pytest.mark.parametrize(("picked", "outside"), [("2026-06-11", -10), ("2026-07-25", 10), ("2026-07-15", 0)])
def test_how_far_a_range_was_missed(picked: str, outside: int) -> None:
    (found,) = turned(f"{SOWN}{picked}\n- picked beetroot from Arch")
    assert found.outside == outside


def test_what_came_later_does_not_change_what_was_expected() -> None:
    early, late = (
        SOWN + "2026-07-04\n- picked beetroot from Arch",
        "\n2026-08-01\n- sowed beetroot in Top bed",
    )
    assert turned(early)[0].forecast == turned(early + late)[0].forecast


def test_coarse_days_perennials_and_what_was_never_picked_do_not_count() -> None:
    notes = """
        2026-05
        - sowed beetroot in Top bed
        2026-05-02
        - sowed carrots in Arch
        - planted rhubarb in Arch
        2026-07-20
        - picked beetroot from Top bed
        - picked rhubarb from Arch
        """
    assert turned(notes) == ()


def test_the_sums() -> None:
    notes = (
        SOWN
        + "2026-05-01\n- sowed beetroot in Top bed\n2026-07-04\n- picked beetroot from Arch\n"
        + "2026-07-25\n- picked beetroot from Top bed"
    )
    (score,) = scores(turned(notes), uses_record=False)
    assert (score.count, score.inside, score.mean_width, score.mean_miss) == (2, 1, 25.0, 14.5)


def test_kinds_are_judged_as_they_are_reckoned_now_and_what_stands_is_no_measure() -> None:
    """Two beetroots by their packet, beans by published days; the leek stands in the bed until somebody wants it."""
    notes = """
        2026-05-01
        - sowed beetroot in Arch
        - sowed beetroot in Top bed
        - sowed French beans in Arch
        - planted leeks in Top bed
        2026-07-01
        - picked beetroot from Arch
        - picked French beans from Arch
        2026-07-25
        - picked beetroot from Top bed
        2026-12-20
        - dug leeks from Top bed
        """
    found = turned(notes)
    assert [(s.kind, s.count) for s in scores(found, uses_record=True)] == [
        ("packets and own figures", 2),
        ("published days", 1),
        ("all together", 3),
    ]
    beetroot = [t for t in found if t.kind == "packets and own figures"]
    for uses in (True, False):
        widths = [((f := t.here if uses else t.base).latest - f.earliest).days + 1 for t in beetroot]
        assert scores(found, uses_record=uses)[0].mean_width == sum(widths) / 2
    assert scores(found, uses_record=True)[0].mean_width > scores(found, uses_record=False)[0].mean_width


def test_the_page_says_of_what_stands_that_it_stood_and_of_the_rest_how_far_off_it_was() -> None:
    notes = """
        2026-04-20
        - sowed kale in Top bed
        2026-05-01
        - sowed beetroot in Arch
        2026-09-30
        - picked beetroot from Arch
        2026-11-20
        - picked kale from Top bed
        """
    settings = settings_of(YAML, crops_yaml=PACKETS)
    pages = site_of(garden_of(notes, settings)).pages
    values: Any = next(page.values for page in pages if page.address == "turned-out.html")
    assert {row.planting.text: row.verdict for row in (*values.missed, *values.held)} == {
        "beetroot": "67 days later",
        "kale": "stood until it was wanted",
    }


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "notes").mkdir()
    (tmp_path / "garden.yaml").write_text(YAML, encoding="utf-8")
    (tmp_path / "crops.yaml").write_text(PACKETS, encoding="utf-8")
    return tmp_path


def asked(folder: Path, *more: str) -> str:
    return (
        CliRunner()
        .invoke(main, ["check", "--forecasts", "--garden", str(folder), "--on", "2026-12-31", *more])
        .output
    )


def test_the_command(folder: Path) -> None:
    assert asked(folder) == "No planting has both its start and its first picking noted to the day yet.\n"
    (folder / "notes" / "2026-05-01.txt").write_text("sowed beetroot in Arch\n", encoding="utf-8")
    (folder / "notes" / "2026-07-04.txt").write_text("picked beetroot from Arch\n", encoding="utf-8")
    off = "off the likely day by 4 days on average."
    assert asked(folder).splitlines() == [
        f"published days alone: 1 of 1 picked as expected (100%); ranges 25 days wide, {off}",
        f"with the dark months: 1 of 1 picked as expected (100%); ranges 25 days wide, {off}",
        f"with this garden's own record: 1 of 1 picked as expected (100%); ranges 43 days wide, {off}",
        "",
        "As reckoned now, by what it starts from:",
        f"packets and own figures: 1 of 1 picked as expected (100%); ranges 43 days wide, {off}",
    ]
    (planting,) = json.loads(asked(folder, "--json"))["plantings"]
    assert (planting["likely"], planting["picked"]) == ("2026-06-30", "2026-07-04")
