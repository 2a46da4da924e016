"""Lessons in the text of a note: which sentences they are, and what of them is told."""

from __future__ import annotations

import pytest

from leafmould.notes.lessons import all_lessons, lessons_in

PICTURE = "![The barrow](plums in the barrow.jpg)"


@pytest.mark.parametrize(
    ("body", "lessons"),
    [
        (f"Next year: potatoes in Bed 4.\n{PICTURE}\n\nGood.", ("Next year: potatoes in Bed 4.",)),
        (f"{PICTURE} Next year: potatoes.", ("Next year: potatoes.",)),
        ("Plums!\n\n![next year's barrow](b.jpg)", ()),
    ],
)
def test_a_picture_is_no_word_of_a_lesson(body: str, lessons: tuple[str, ...]) -> None:
    assert lessons_in(body) == lessons


def test_a_private_line_keeps_its_lesson_though_it_has_a_picture() -> None:
    line = f"Next year: no party. {PICTURE}"
    assert all_lessons((), line, (), (line,)) == ()


def test_a_private_picture_hides_no_other_lesson() -> None:
    assert all_lessons((), "Next year: leeks.", (), (PICTURE,)) == ("Next year: leeks.",)
