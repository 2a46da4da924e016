"""What the browser searches: names, stems and the steps between notes, and what it costs."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leafmould.pages.a_to_z import FindPage
from leafmould.pages.find_index import find_index, stems_in, words_written
from leafmould.pages.find_numbers import DIGITS, ENDS, GO_ON, letters_of, numbers
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


def rows(held: dict[str, Any], kind: str) -> list[list[str]]:
    return [line.split("\t") for line in held["names"][kind].split("\n")]


def read_numbers(text: str) -> list[int]:
    """The same as the script in the browser does."""
    found, high, before = [], 0, -1
    for letter in text:
        digit = DIGITS.index(letter)
        if digit >= ENDS:
            high = high * GO_ON + digit - ENDS + 1
            continue
        before += high * ENDS + digit + 1
        found.append(before)
        high = 0
    return found


def read_words(text: str) -> dict[str, list[int]]:
    """Words and their notes, read as the script in the browser reads them."""
    parts = re.split("([a-z\x80-\U0010ffff]+)", text)
    found: dict[str, list[int]] = {}
    word = ""
    for at in range(1, len(parts), 2):
        word = word[: DIGITS.index(parts[at - 1][-1])] + parts[at]
        notes = parts[at + 1]
        found[word] = read_numbers(notes if at + 2 == len(parts) else notes[:-1])
    return found


@settings(derandomize=True)
@given(st.sets(st.integers(min_value=0, max_value=5_000_000)))
def test_numbers_come_back_as_they_were(found: set[int]) -> None:
    assert read_numbers(numbers(sorted(found))) == sorted(found)


@settings(derandomize=True)
@given(
    st.dictionaries(
        st.text(st.characters(categories=["Ll", "Lo"]), min_size=1, max_size=32).filter(
            lambda word: not (set(word) & set(DIGITS))
        ),
        st.sets(st.integers(min_value=0, max_value=5_000), min_size=1),
    )
)
def test_words_come_back_as_they_were(words: dict[str, set[int]]) -> None:
    assert read_words(words_written(words)) == {word: sorted(notes) for word, notes in words.items()}


def test_no_letter_of_a_number_needs_an_escape_in_a_script() -> None:
    assert (len(DIGITS), len(set(DIGITS)), set(DIGITS) & set("\"\\<& '")) == (62, 62, set())
    assert not any(letter.islower() for letter in DIGITS)


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
    words = read_words(held["words"])
    assert words["kafer"] == [0]
    assert "pea" not in words  # the crop's own name brings these notes
    pea = next(row for row in rows(held, "crop") if row[0] == "pea")
    assert (pea[0], read_numbers(pea[1])) == ("pea", [0, 1])


def test_a_page_that_is_called_like_its_name_is_not_written() -> None:
    held = index_of(site_of(hand_made(LINES)))
    assert ["pea", numbers([0, 1])] in rows(held, "crop")
    assert all(len(row) < 4 for row in rows(held, "bed"))


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


def test_what_stood_in_a_bed_is_told_by_its_year_and_its_crops_number() -> None:
    held = index_of(site_of(hand_made(LINES, with_pear=False)))
    beds = [row[0] for row in rows(held, "bed")]
    arch = held["stood"].split("\n")[beds.index("Arch")]
    crop = [row[0] for row in rows(held, "crop")].index("pea")
    assert held["years"] == ["2026"]
    assert arch == f" {letters_of(0)}{letters_of(crop)}"


def test_a_family_has_its_words_and_its_crops() -> None:
    held = index_of(site_of(hand_made(LINES)))
    crops = [row[0] for row in rows(held, "crop")]
    found = {row[0]: row[1:] for row in (line.split("\t") for line in held["families"].split("\n"))}
    assert found["Fabaceae legume"] == ["pea family", numbers([crops.index("pea")])]


def test_beds_that_became_one_another_know_their_names() -> None:
    garden = hand_made(LINES, with_pear=False)
    old = replace(garden.beds["arch"], became=("bower",))
    new = replace(garden.beds["arch"], key="bower", name="Bower", came_from=("arch",), became=())
    garden = replace(garden, beds={**garden.beds, "arch": old, "bower": new})
    held = index_of(site_of(garden))
    beds = [row[0] for row in rows(held, "bed")]
    assert held["kin"][str(beds.index("Arch"))] == "Bower"
    assert held["kin"][str(beds.index("Bower"))] == "Arch"
