"""Names: how they are compared, found, and written into addresses."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leafmould.values.names import SLUG_LENGTH, WORD, WORD_ASCII, Kind, Known, Vocabulary, fold, slug

SAME = [
    ("Tomatoes", "tomato"),
    ("courgettes", "Courgette"),
    ("runner beans", "Runner Bean"),
    ("cherries", "cherry"),
    ("leaves", "leaf"),
    ("radishes", "radish"),
    ("cloches", "cloche"),
    ("Möhre", "mohre"),
    ("Mo\u0308hre", "Möhre"),
    ("Hurst's Green Shaft", "hurst’s green shaft"),
    ("bed #3", "Bed 3"),
    ("bed3", "bed 3"),
    ("Long-border", "long border"),
    ("Weiß", "WEISS"),
]


@pytest.mark.parametrize(("one", "other"), SAME)
def test_case_accents_plurals_and_signs_do_not_matter(one: str, other: str) -> None:
    assert fold(one) == fold(other)


DIFFERENT = [
    ("cress", "cres"),
    ("asparagus", "asparagu"),
    ("Tub 1", "Tub 2"),
    ("bed 12", "bed 1 2"),
    ("leek", "leak"),
]


@pytest.mark.parametrize(("one", "other"), DIFFERENT)
def test_other_words_stay_apart(one: str, other: str) -> None:
    assert fold(one) != fold(other)


def known(kind: Kind, name: str) -> tuple[str, Known]:
    """A name as the vocabulary takes it."""
    return name, Known(kind=kind, key=slug(name), name=name)


GARDEN = Vocabulary(
    [
        known(Kind.CROP, "bean"),
        known(Kind.CROP, "broad bean"),
        known(Kind.BED, "Bean row"),
        known(Kind.BED, "North"),
    ]
)


def test_the_longest_name_wins() -> None:
    size, found = GARDEN.at(fold("broad beans in bean row"), 0)
    assert (size, [k.name for k in found]) == (2, ["broad bean"])
    size, found = GARDEN.at(fold("broad beans in bean row"), 3)
    assert (size, [k.name for k in found]) == (2, ["Bean row"])


def test_a_shorter_name_of_the_kind_asked_for_is_found_too() -> None:
    size, found = GARDEN.at(fold("bean row"), 0, Kind.CROP)
    assert (size, [k.name for k in found]) == (1, ["bean"])


def test_whole_words_only() -> None:
    assert GARDEN.at(fold("beanpole"), 0) == (0, ())


def test_the_nearest_name_is_offered() -> None:
    assert GARDEN.closest("Nroth", Kind.BED) == "North"
    assert GARDEN.closest("zzz") is None


def test_learning_keeps_what_was_known_and_changes_the_digest() -> None:
    more = GARDEN.with_names(
        [("Stupice", Known(kind=Kind.VARIETY, key="Stupice", name="Stupice", of=("tomato",)))]
    )
    assert more.exactly("stupice")[0].of == ("tomato",)
    assert more.exactly("broad beans") == GARDEN.exactly("broad beans")
    assert more.digest != GARDEN.digest


def test_order_and_repeats_leave_the_digest_alone() -> None:
    names = [known(Kind.BED, "A"), known(Kind.BED, "B"), known(Kind.CROP, "pea")]
    assert Vocabulary(names).digest == Vocabulary([*reversed(names), names[0]]).digest


# F91 to F95: names on disk.


def test_both_ways_of_writing_an_accent_give_one_address() -> None:
    assert slug("Möhre") == slug("Mo\u0308hre") == "möhre"


def test_case_never_makes_two_addresses() -> None:
    assert slug("Pea") == slug("pea") == "pea"


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Möhre", "Mohre"),
        ("Bed 1/2", "Bed 1-2"),
        ("C+", "C"),
        ("½", "12"),
        ("Ærø", "r"),
        ("Bed 1/2", "Bed 12"),
    ],
)
def test_two_things_never_share_an_address(one: str, other: str) -> None:
    assert slug(one) != slug(other)


@pytest.mark.parametrize("name", ["トマト", "½", "🥕", "///", "", "\ud800", "..", "Weiß"])
def test_an_address_is_never_empty_and_holds_nothing_a_disk_refuses(name: str) -> None:
    address = slug(name)
    assert address
    assert not set(address) & set('/\\:*?"<>|.\0 ')


def test_a_long_name_is_cut_and_stays_apart_from_its_like() -> None:
    long = "very long bed name " * 40
    assert slug(long + "a") != slug(long + "b")
    assert len(slug(long).encode()) < 255
    assert len(slug(long)) <= SLUG_LENGTH + 5


@given(st.text())
def test_an_address_reads_back_as_itself(name: str) -> None:
    address = slug(name)
    assert slug(address) == address
    assert unicodedata.normalize("NFC", address) == address
    assert address == address.casefold()


@given(st.text(alphabet=st.characters(max_codepoint=127)))
def test_the_quick_way_finds_the_same_words(text: str) -> None:
    assert WORD_ASCII.findall(text) == [m.group() for m in WORD.finditer(text)]
