"""Laws of the line reader: it never raises, its spans are true, and nothing but the words matters."""

from __future__ import annotations

import random
import unicodedata

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from leafmould.notes.lines import Defaults, Habits, LineReading, read_line
from leafmould.values.names import Vocabulary
from line_cases import AT, BASE, groups, shown
from line_garden import VOCABULARY, names
from long_runs import LONG

TYPED = [case.typed for group in groups() for case in group.cases]
PLAIN = Habits(vocabulary=VOCABULARY, order="day first")


def read(text: str, habits: Habits = PLAIN, *, is_prose: bool = False) -> LineReading:
    """A line read in the cases' garden, with no header."""
    return read_line(
        text, at=AT, field="work[1]", base=BASE, habits=habits, defaults=Defaults(), is_prose=is_prose
    )


def check(text: str) -> None:
    """What must be true of any reading."""
    reading = read(text)
    for action in reading.actions:
        assert action.text == text
        for _, start, end in action.spans:
            assert 0 <= start < end <= len(text)
        for named in (*action.crops, *action.places, *action.origins):
            assert named.key
    for problem in reading.problems:
        assert problem.message.endswith((".", "?")), problem.message
        assert problem.at.column is None or 1 <= problem.at.column <= len(text) + 1
    assert read(text) == reading
    read(text, is_prose=True)


def mutated(text: str, seed: int) -> str:
    """A line with slips: letters dropped, doubled, swapped, changed; words moved; signs thrown in."""
    chance = random.Random(seed)
    letters = list(text)
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(letters) + 1)
        match chance.randrange(5):
            case 0:
                del letters[at : at + chance.randint(1, 3)]
            case 1:
                letters.insert(at, chance.choice("'\"“”‘’,;:()[]{}?!~–−+&/#.½ 0123456789xé🥕\t"))
            case 2:
                letters[at:at] = letters[max(0, at - 3) : at]
            case 3:
                letters[at : at + 2] = letters[at : at + 2][::-1]
            case _:
                letters[at:at] = list(chance.choice(TYPED))[: chance.randint(1, 40)]
    return "".join(letters)


@settings(max_examples=5_000 * LONG)
@given(st.sampled_from(TYPED), st.integers(0, 2**32))
def test_a_line_with_slips_never_stops_the_reader(text: str, seed: int) -> None:
    check(mutated(text, seed))


@settings(max_examples=500 * LONG)
@given(st.text(max_size=200))
@example("sowed " + "(" * 900 + "pea" + ")" * 900)
@example("'" * 50 + " sowed 'peas")
@example("12/0 sowed 1/0 kg peas, 0/0 came up")
@example("picked 999999999999999999999999999999999999 kg peas and ½½½ beans")
@example("picked " + "9" * 400 + " kg peas")
@example("\u0301\u0301 sowed \u0301 peas ² m² №5 ⅚")
@example("picked ٣ kg peas")
def test_any_text_at_all_never_stops_the_reader(text: str) -> None:
    check(text)


HOSTILE = {
    "brackets": "sowed " + "(" * 900 + "pea",
    "list": "sowed peas in Arch and ",
    "commas": ",",
    "quotes": "'a ",
    "digits": "1,",
    "joins": "and ",
    "crops": "peas ",
    "prepositions": "in ",
    "number": "9",
    "carrots": "🥕 ",
    "unknown": "sowed blorb ",
    "halves": "half of ",
    "dates": "3 May ",
    "spans": "from 3 to ",
    "curly": "‘Krim ",
}


@pytest.mark.parametrize("name", HOSTILE)
def test_ten_thousand_hostile_characters_do_no_harm(name: str) -> None:
    text = (HOSTILE[name] * 10_000)[:10_000]
    check(text)


@settings(max_examples=300 * LONG)
@given(st.sampled_from(TYPED), st.randoms(use_true_random=False))
def test_the_order_in_which_names_are_learned_does_not_matter(text: str, chance: random.Random) -> None:
    shuffled = names()
    chance.shuffle(shuffled)
    habits = Habits(vocabulary=Vocabulary(shuffled), order="day first")
    assert read(text, habits) == read(text)


def without_writing(rows: list[str]) -> list[str]:
    """Case rows without what shows the writing itself."""
    return [row.casefold() for row in rows if not row.startswith("  ")]


KEPT_APART = ("semé",)  # in the garden's own words an accent counts as any other: folded


@pytest.mark.parametrize("text", [t for t in TYPED if t.islower() or t[:1].isupper()], ids=ascii)
def test_accents_set_apart_do_not_change_the_reading(text: str) -> None:
    apart = unicodedata.normalize("NFD", text)
    assert [a.verb for a in read(apart).actions] == [a.verb for a in read(text).actions]
    assert [c.key for a in read(apart).actions for c in a.crops] == [
        c.key for a in read(text).actions for c in a.crops
    ]


@pytest.mark.parametrize(
    "text", [t for group in groups() for t in [c.typed for c in group.cases]][:200], ids=ascii
)
def test_curly_and_straight_quotes_mean_the_same(text: str) -> None:
    curly = text.replace("'", "’")
    assert without_writing(shown(read(curly), curly)) == [
        r.replace("'", "’") for r in without_writing(shown(read(text), text))
    ]


def meant(reading: LineReading) -> list[object]:
    """What was done to what, and where, without the writing."""
    return [
        (a.verb, [c.key for c in a.crops], [p.key for p in a.places], a.amounts and a.amounts[0].low)
        for a in reading.actions
    ]


CAPITALS_TELL = (
    "Sue",
    "Ann",
    "Charlotte picked",
    "Cox",
    "Deborah",
    "Maura",
    "Harry",
    "gave Tom",
    "OR +",
    "J picked",
    "Karla picked",
    "Charlotte 3.2",
    "Tom took",
    "Sam took",
    "Sam picked",
    "Jean dropped",
    "Mr Hobday",
    "Declan took",
    "Mum got",
    "Ellie had",
    "Nan had",
    "for Kath",
    "Ruthie gets",
    "corn Swift",
)  # a capital marks a person, a new place or the letters of a bed; without it the line is asked about


@pytest.mark.parametrize("text", [t for t in TYPED if not any(w in t for w in CAPITALS_TELL)], ids=ascii)
def test_typing_without_capitals_means_the_same(text: str) -> None:
    reading, small = read(text), read(text.lower())
    if not any(a.is_loose for a in (*reading.actions, *small.actions)):
        assert meant(small) == meant(reading)
