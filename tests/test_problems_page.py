"""The page of problems: what is told under which note, in which words, and what is said once."""

from __future__ import annotations

import pytest

from leafmould.pages import addresses
from leafmould.pages.problems import ProblemsPage, Slip
from leafmould.values.problems import Level, Location, Problem
from pages_garden import a_problem, hand_made, site_of

NOTE = "notes/2025/06-14-arch-10.md"


def slips(*problems: Problem) -> list[tuple[str, Slip]]:
    """What the page says of these, each with the heading it stands under."""
    site = site_of(hand_made(), household=True, problems=problems)
    page = next(page for page in site.pages if page.address == addresses.PROBLEMS)
    assert isinstance(page.values, ProblemsPage)
    return [(group.heading, slip) for group in page.values.groups for slip in group.slips]


def hint(message: str, line: int, level: Level = Level.HINT) -> Problem:
    return Problem(at=Location(file=NOTE, line=line), level=level, message=message, field="work[1]")


def test_a_line_is_headed_by_its_note_and_quoted_as_typed() -> None:
    ((heading, slip),) = slips(hint('"1.2 kg" and "two" are two amounts of one thing.', 1, Level.QUESTION))
    assert heading == "To be asked"
    assert slip.said == ("“1.2 kg” and “two” are two amounts of one thing.",)
    assert slip.advice == ("Write a line for each amount.",)
    (spot,) = slip.spots
    assert spot.link.text.startswith("14 June 2025: ")
    assert spot.where == f"{NOTE}, line 1"
    assert len(spot.typed) == 1


def test_what_repeats_is_said_once_with_its_places() -> None:
    ((heading, slip),) = slips(
        *(hint(f'"{price}" names no currency.', n) for n, price in ((6, "2.80"), (8, "5.40")))
    )
    assert heading == "As it was understood"
    assert slip.said == ("These prices name no currency.",)
    assert [spot.where for spot in slip.spots] == [f"{NOTE}, lines 6 and 8"]


def test_what_is_said_of_one_line_stands_together_under_what_weighs_most() -> None:
    ((heading, slip),) = slips(
        hint('"gave away" is kept as a remark.', 3),
        hint('What was "two"? No crop is named.', 3, Level.QUESTION),
    )
    assert heading == "To be asked"
    assert slip.said == ("What was “two”? No crop is named.", "“gave away” is kept as a remark.")


@pytest.mark.parametrize(
    ("message", "advice"),
    [
        ('"2.80" names no currency.', ("Write its sign with it: “£2.80” or “2.80 €”.",)),
        (
            '"Nroth" is a new bed.',
            ("If it is one, add it to the beds in garden.yaml. If not, set its name right.",),
        ),
        ('"x" is a plan, so the line is kept as text. Write "sowed" once it is done.', ()),
    ],
)
def test_what_helps_is_said_where_it_is_known(message: str, advice: tuple[str, ...]) -> None:
    ((_, slip),) = slips(hint(message, 2))
    assert slip.advice == advice


def test_settings_come_first_and_name_their_spot() -> None:
    field = Problem(
        at=Location(file="garden.yaml", line=4), level=Level.HINT, message="this is new.", field="beds[2]"
    )
    found = slips(a_problem(), hint("it is so.", 2), field)
    assert [(heading, slip.said) for heading, slip in found] == [
        ("To be asked", ("No bed is called “Nroth”. Did you mean “North”?",)),
        ("As it was understood", ("beds[2]: this is new.",)),
        ("As it was understood", ("It is so.",)),
    ]
