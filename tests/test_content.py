"""The example garden is as large and as varied as it is meant to be: counted, so that it stays so.

What is counted: places and their kinds, crops, notes, actions, shapes of notes; sentences that say the same in
other numbers; what `check` has to tell.
"""

from __future__ import annotations

import re
from collections import Counter
from datetime import date
from functools import lru_cache
from pathlib import Path

import pytest

from leafmould.garden.load import Loaded, load
from leafmould.values.problems import Level

CONTENT = Path(__file__).parents[1] / "content"
ON = date(2026, 7, 15)

KINDS = {"bed", "container", "row", "tree", "shrub", "cane row", "vine", "mound", "under glass"}
"""Every kind of place there is."""


@lru_cache(maxsize=1)
def example() -> Loaded:
    return load(CONTENT, on=ON, household=True, keep=False)


def note_files() -> list[Path]:
    return sorted(file for file in (CONTENT / "notes").rglob("*") if file.suffix in (".md", ".txt"))


# how much there is


def test_there_are_places_of_every_kind() -> None:
    declared = [bed for bed in example().garden.beds.values() if bed.is_declared]
    assert len(declared) >= 14
    assert {bed.kind for bed in declared} == KINDS


def test_a_bed_was_renamed_and_a_bed_was_split() -> None:
    beds = example().garden.beds
    assert beds["potato-terrace"].became == ("long-terrace",)
    assert beds["long-terrace"].came_from == ("potato-terrace",)
    assert beds["middle-terrace"].became == ("wall-bed", "stair-bed")
    assert beds["middle-terrace"].ended == date(2025, 2, 28)


def test_there_are_crops_enough_for_a_real_garden() -> None:
    grown = {crop for planting in example().garden.plantings for crop in planting.crops}
    assert len(grown) >= 30


def test_there_are_notes_from_four_years() -> None:
    years = Counter(file.relative_to(CONTENT / "notes").parts[0] for file in note_files())
    assert sum(years.values()) >= 120
    assert sorted(years) == ["2023", "2024", "2025", "2026"]
    assert min(years.values()) >= 20


def test_many_kinds_of_work_are_noted() -> None:
    verbs = Counter(action.verb for entry in example().garden.entries for action in entry.actions)
    assert len(verbs) >= 30
    assert verbs["picked"] < sum(verbs.values()) / 4  # not a list of pickings with a garden round it


def test_the_notes_have_many_shapes() -> None:
    texts = [file.read_text(encoding="utf-8") for file in note_files()]
    shapes = {
        "no header": [t for t in texts if not t.startswith(("---", "—-"))],
        "a phone's dashes": [t for t in texts if t.startswith("—-")],
        "work lines": [t for t in texts if "\nwork:\n" in t],
        "lists in the text": [t for t in texts if "\n- " in t.split("\n---\n")[-1]],
        "one event in the header": [t for t in texts if "\ndid: " in t],
        "lists in the header": [t for t in texts if "crop: [" in t],
        "several days": [
            t for t in texts if len(re.findall(r"^(?:## )?\d{4}-\d\d-\d\d(?::|$)", t, re.M)) > 1
        ],
        "a coarse date": [t for t in texts if re.search(r"^date: (?:late|early|spring)", t, re.M)],
        "a table": [t for t in texts if "\n|---" in t],
        "own words": [t for t in texts if re.search(r"^\s*- (?:s|pk|pl|gejätet) ", t, re.M)],
        "a picture": [t for t in texts if "![" in t],
        "private": [t for t in texts if "private" in t],
        "prose alone": [t for t in texts if not re.search(r"^\s*[-•] |^did:|^work:", t, re.M)],
    }
    assert {shape for shape, found in shapes.items() if not found} == set()


# the story


@pytest.mark.parametrize(
    ("cause", "crops"),
    [
        ("crust and slugs", ["carrot"]),
        ("clubroot", ["cabbage"]),
        ("blight", ["tomato"]),
        ("frost", ["pumpkin", "runner-bean"]),
    ],
)
def test_failures_are_told_as_plainly_as_the_rest(cause: str, crops: list[str]) -> None:
    lost = [a for e in example().garden.entries for a in e.actions if a.verb == "lost" and a.cause == cause]
    assert [named.key for action in lost for named in action.crops] == crops


def test_an_experiment_is_told_with_its_sums() -> None:
    """Tomatoes under glass and under an open roof: the words of September 2025 are what the record adds up to."""
    garden = example().garden
    kilos = {
        p.bed: round(sum(garden.picking_by_id[i].grams or 0 for i in p.pickings) / 1000, 1)
        for p in garden.plantings
        if p.varieties == ("Stupice",) and p.planted is not None and p.planted.first == date(2025, 5, 24)
    }
    assert kilos == {"lean-to": 9.5, "stair-bed": 8.0}


def test_there_was_too_much_of_something_and_a_lesson_from_it() -> None:
    garden = example().garden
    assert any(
        "Next year two plants, not six" in lesson for entry in garden.entries for lesson in entry.lesson
    )
    planted = [
        (p.planted.first.year, p.number)
        for p in garden.plantings
        if "summer-squash" in p.crops and p.planted is not None
    ]
    assert planted == [(2023, 6), (2024, 2), (2025, 2), (2026, 2)]


# no two notes on one frame

NUMBER = re.compile(
    r"\b(?:\d[\d.,:/–-]*|½|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|twenty|thirty|"
    r"forty|fifty|sixty|hundred|thousand)\b"
)
TIME = re.compile(
    r"\b(?:january|february|march|april|may|june|july|august|september|october|november|december|"
    r"monday|tuesday|wednesday|thursday|friday|saturday|sunday|spring|summer|autumn|winter)s?\b"
)


@lru_cache(maxsize=1)
def _names() -> re.Pattern[str]:
    """Everything with a name in this garden: beds and their other names, crops in the gardener's words, varieties, people."""
    loaded = example()
    garden = loaded.garden
    names = {name for bed in garden.beds.values() for name in (bed.name, *bed.also)}
    names |= {crop.name for crop in garden.crops.values()}
    names |= {
        named.name for e in garden.entries for a in e.actions for named in (*a.crops, *a.places, *a.varieties)
    }
    names |= {"Ilse", "Tobin", "Fenna"}
    longest_first = sorted((re.escape(name.lower()) for name in names), key=lambda n: (-len(n), n))
    return re.compile(r"\b(?:" + "|".join(longest_first) + r")(?:s|es)?\b")


def frame(sentence: str) -> str:
    """A sentence with every name, number and time in it replaced: "picked # of N from N"."""
    text = re.sub(r"['‘’\"“”*]", "", sentence.lower())
    text = NUMBER.sub("#", TIME.sub("T", _names().sub("N", text)))
    return " ".join(re.findall(r"[\w#]+", re.sub(r"(?:# ?)+(?:kg|g|cm|mm|m|l|%)?\b", "# ", text)))


def sentences(text: str) -> list[str]:
    """The sentences of a note's prose: no header, no list, no table, no caption."""
    body = re.sub(r"\A[—-]{2,3}\n.*?\n[—-]{2,3}\n", "", text, flags=re.S)
    lines = [line for line in body.splitlines() if not re.match(r"\s*(?:[-•|#!]|\d+\. )", line)]
    return [
        part
        for part in re.split(r"(?<=[.!?:;])\s+|\n\n+", "\n".join(lines).replace("\n", " "))
        if part.strip()
    ]


def test_a_frame_keeps_the_words_and_drops_names_and_numbers() -> None:
    assert frame("Picked 2.5 kg beetroots from the Top terrace in June.") == "picked # N from the N in T"
    assert frame("Two courgettes.") == "# N"


def test_no_sentence_is_said_twice_with_other_names_and_numbers() -> None:
    seen: dict[str, list[str]] = {}
    for file in note_files():
        for sentence in sentences(file.read_text(encoding="utf-8")):
            if len((said := frame(sentence)).split()) >= 4:
                seen.setdefault(said, []).append(file.name)
    assert len(seen) > 300
    assert {said: files for said, files in seen.items() if len(files) > 1} == {}


def test_no_two_notes_are_built_on_the_same_lines() -> None:
    def built(file: Path) -> tuple[str, ...]:
        text = re.sub(
            r"^(?:date|by|photo|tags|title): .*\n", "", file.read_text(encoding="utf-8"), flags=re.M
        )
        return tuple(said for line in text.splitlines() if (said := frame(line)))

    frames = [built(file) for file in note_files()]
    assert [one for one, times in Counter(frames).items() if times > 1] == []


# what check tells


def test_the_example_shows_few_questions_and_no_errors() -> None:
    told = example().problems
    assert [problem.message for problem in told if problem.level is Level.ERROR] == []
    assert [problem.message for problem in told if problem.level is Level.WARNING] == []
    asked = [
        problem.at.file for problem in told if problem.level is Level.QUESTION and problem.at is not None
    ]
    assert asked == ["notes/2025/06-08-small-things.md"]  # on purpose
