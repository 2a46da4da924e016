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
from leafmould.pages.find_numbers import DIGITS, FEWEST_ENDS, MOST_ENDS, Letters, letters_for
from leafmould.pages.find_years import years_written
from leafmould.pages.site import Site
from leafmould.values.stems import stem
from pages_garden import Line, hand_made, site_of

FEW = Letters(MOST_ENDS)
"""How numbers are written where there are few notes."""

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


def read_numbers(text: str, letters: Letters = FEW) -> list[int]:
    """The same as the script in the browser does."""
    found, high, before = [], 0, -1
    for letter in text:
        digit = DIGITS.index(letter)
        if digit >= letters.ends:
            high = high * (len(DIGITS) - letters.ends) + digit - letters.ends + 1
            continue
        before += high * letters.ends + digit + 1
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
@given(
    st.sets(st.integers(min_value=0, max_value=5_000_000)),
    st.integers(min_value=FEWEST_ENDS, max_value=MOST_ENDS).map(Letters),
)
def test_numbers_come_back_as_they_were(found: set[int], letters: Letters) -> None:
    assert read_numbers(letters.numbers(sorted(found)), letters) == sorted(found)


@settings(derandomize=True)
@given(st.integers(min_value=0, max_value=40_000))
def test_the_number_of_any_note_has_two_letters_where_there_are_few(notes: int) -> None:
    letters = letters_for(notes)
    assert FEWEST_ENDS <= letters.ends <= MOST_ENDS
    if letters.ends > FEWEST_ENDS:
        assert len(letters.of(notes - 1)) <= 2
    if letters.ends < MOST_ENDS:
        assert len(Letters(letters.ends + 1).of(notes - 1)) > 2


def read_years(rows: list[str]) -> dict[int, str]:
    """What stood in which year back from the newest, read as the script in the browser reads it."""
    found, at = {}, 0
    for row in rows:
        parts = re.fullmatch("([a-z]*)([^a-z]+)([a-z]*)", row)
        assert parts
        nothing, more = (sum(ord(letter) - 96 for letter in parts[some]) for some in (1, 3))
        at += nothing
        found.update(dict.fromkeys(range(at, at + more + 1), parts[2]))
        at += more + 1
    return found


@settings(derandomize=True)
@given(st.dictionaries(st.integers(min_value=0, max_value=120), st.sampled_from(["!", "#", "!#"])))
def test_years_come_back_as_they_were(stood: dict[int, str]) -> None:
    assert read_years(years_written(stood)) == stood


def test_years_with_the_same_are_told_at_once() -> None:
    assert years_written({0: "!", 1: "!", 2: "#", 40: "#"}) == ["!a", "#", "zk#"]


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
    assert read_words(words_written(words, FEW)) == {word: sorted(notes) for word, notes in words.items()}


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
    assert ["pea", FEW.numbers([0, 1])] in rows(held, "crop")
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
    assert held["newest"] == "2026"
    assert arch == f" {FEW.of(crop)}"


def test_a_family_has_its_words_and_its_crops() -> None:
    held = index_of(site_of(hand_made(LINES)))
    crops = [row[0] for row in rows(held, "crop")]
    found = {row[0]: row[1:] for row in (line.split("\t") for line in held["families"].split("\n"))}
    assert found["Fab"] == ["pea", FEW.numbers([crops.index("pea")]), "legume"]


def test_a_title_that_two_notes_after_each_other_have_is_written_once() -> None:
    lines = [
        Line(day=f"2026-06-0{day}", verb="weeded", text="weeded Arch", bed="Arch", title=title)
        for day, title in [(1, "Log"), (2, "Log"), (3, "Rain")]
    ]
    notes = index_of(site_of(hand_made(lines, with_pear=False)))["notes"].split("\n")
    assert [note.split("\t")[1] for note in notes] == ["Rain", "Log", "="]


def test_a_word_that_is_another_name_of_a_bed_is_told_by_the_bed() -> None:
    garden = hand_made(LINES, with_pear=False)
    garden = replace(garden, beds={**garden.beds, "arch": replace(garden.beds["arch"], also=("bower",))})
    garden = replace(garden, entries=[replace(entry, body="the bower") for entry in garden.entries])
    held = index_of(site_of(garden))
    assert "bower" not in read_words(held["words"])
    assert ["Arch", FEW.numbers([0, 1]), "bower"] in rows(held, "bed")


def test_beds_that_became_one_another_know_their_names() -> None:
    garden = hand_made(LINES, with_pear=False)
    old = replace(garden.beds["arch"], became=("bower",))
    new = replace(garden.beds["arch"], key="bower", name="Bower", came_from=("arch",), became=())
    garden = replace(garden, beds={**garden.beds, "arch": old, "bower": new})
    held = index_of(site_of(garden))
    beds = [row[0] for row in rows(held, "bed")]
    assert held["kin"][str(beds.index("Arch"))] == FEW.numbers([beds.index("Bower")])
    assert held["kin"][str(beds.index("Bower"))] == FEW.numbers([beds.index("Arch")])
