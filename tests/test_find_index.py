"""What the browser searches: names, stems and the steps between notes, and what it costs."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leafmould.pages.a_to_z import FindPage
from leafmould.pages.find_index import DIGITS, HALF, find_index, front_coded, numbers, stems_in
from leafmould.pages.site import Site
from leafmould.values.stems import stem
from pages_garden import Line, hand_made, site_of

LINES = [
    Line(day="2026-04-12", verb="sowed", text="sowed peas in Arch", crop="pea", bed="Arch"),
    Line(
        day="2026-06-20", verb="saw", text="aphids on the peas", crop="pea", bed="Arch", body="A Käfer came."
    ),
]


def index_of(site: Site) -> dict[str, Any]:
    text = find_index(site.ledger)
    assert text.startswith("window.leafmouldIndex={") and text.endswith("};\n")
    found: dict[str, Any] = json.loads(text.removeprefix("window.leafmouldIndex=").removesuffix(";\n"))
    return found


def read_numbers(text: str) -> list[int]:
    """The same as the script in the browser does."""
    found, high, before = [], 0, -1
    for letter in text:
        digit = DIGITS.index(letter)
        if digit >= HALF:
            high = high * HALF + digit - HALF + 1
            continue
        before += high * HALF + digit + 1
        found.append(before)
        high = 0
    return found


def read_front_coded(text: str) -> list[str]:
    found: list[str] = []
    for line in text.split("\n") if text else []:
        found.append((found[-1] if found else "")[: DIGITS.index(line[0])] + line[1:])
    return found


@settings(derandomize=True)
@given(st.sets(st.integers(min_value=0, max_value=5_000_000)))
def test_numbers_come_back_as_they_were(found: set[int]) -> None:
    assert read_numbers(numbers(sorted(found))) == sorted(found)


@settings(derandomize=True)
@given(st.lists(st.text(st.characters(exclude_characters="\n"), max_size=60)))
def test_texts_come_back_as_they_were(texts: list[str]) -> None:
    assert read_front_coded(front_coded(texts)) == texts


def test_no_letter_of_a_number_needs_an_escape_in_a_script() -> None:
    assert (len(DIGITS), len(set(DIGITS)), set(DIGITS) & set("\"\\<& '")) == (88, 88, set())


@pytest.mark.parametrize(
    ("written", "found"),
    [
        ("sowing", "sow"),
        ("sowed", "sow"),
        ("Sowed", "sow"),
        ("netted", "net"),
        ("pulled", "pull"),
        ("beans", "bean"),
        ("berries", "berry"),
        ("leaves", "leaf"),
        ("Käfer", "kafer"),
        ("ring", "ring"),
        ("pruned", "prun"),
        ("prune", "prun"),
        ("the", ""),
        ("400", ""),
    ],
)
def test_a_word_is_cut_down_to_what_its_forms_share(written: str, found: str) -> None:
    assert stem(written) == found


def test_words_lead_to_their_notes_and_names_to_theirs() -> None:
    held = index_of(site_of(hand_made(LINES)))
    words = dict(zip(read_front_coded(held["words"]), held["in"].split(" "), strict=True))
    assert read_numbers(words["kafer"]) == [0]
    assert "pea" not in words  # the crop's own name brings these notes
    pea = next(row for row in held["names"] if row[:2] == ["crop", "pea"])
    assert (pea[2], read_numbers(pea[4])) == ("crops/pea.html", [0, 1])


def test_the_same_garden_gives_the_same_index() -> None:
    assert find_index(site_of(hand_made()).ledger) == find_index(site_of(hand_made()).ledger)


def test_what_has_a_name_stands_from_a_to_z() -> None:
    site = site_of(hand_made())
    page = next(page for page in site.pages if page.address == "find.html")
    assert isinstance(page.values, FindPage)
    names = {(n.kind, n.link.text) for letter in page.values.letters for n in letter.names}
    garden = site.ledger.garden
    assert {("crop", crop.name) for crop in garden.crops.values()} <= names
    assert {("variety", v) for p in garden.plantings for v in p.varieties} <= names
    letters = [letter.letter for letter in page.values.letters]
    assert letters == [*sorted(letter for letter in letters if letter != "#"), "#"]


def test_words_without_worth_are_left_out() -> None:
    assert stems_in("The peas, and 400 g of it; " + "x" * 40) == {"pea"}
