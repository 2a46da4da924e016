"""When a lesson is due again, and the beginnings of notes in lists."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from gardens import garden_of
from leafmould.pages.doings import cut, first_lines
from leafmould.pages.lessons_due import due_on
from pages_garden import site_of

ON = date(2026, 7, 15)


@pytest.mark.parametrize(
    ("written", "text", "due"),
    [
        ("2025-09-20", "Bags on the pears by the end of July.", date(2026, 7, 31)),
        ("2025-09-20", "Next year sow them in March.", date(2027, 3, 31)),
        ("2025-08-01", "Next year two plants, not six.", date(2026, 8, 1)),
        (
            "2025-07-05",
            "Next year two plants, not six.",
            date(2026, 7, 5),
        ),  # a fortnight late is not too late
        ("2025-06-30", "Next year two plants, not six.", date(2027, 6, 30)),
        ("2024-02-29", "Next year nothing today.", date(2027, 2, 28)),
        ("2025-08-01", "Next year we may lose them.", date(2026, 8, 1)),  # no month
    ],
)
def test_a_lesson_is_due_at_its_time_of_the_year(written: str, text: str, due: date) -> None:
    garden = garden_of({"a.md": f"---\ndate: {written}\n---\n{text}\n"}, on=ON)
    assert due_on(text, garden.entries[0], ON) == due


def test_the_page_of_lessons_begins_with_those_due_next_of_earlier_seasons() -> None:
    notes = {
        "2024/a.md": "---\ndate: 2024-03-01\n---\nNext year sow the leeks sooner.\n",
        "2025/b.md": "---\ndate: 2025-11-01\n---\nNext year bag the pears in July.\n",
        "2025/c.md": "---\ndate: 2025-08-20\n---\nNext year half as many beans.\n",
        "2026/d.md": "---\ndate: 2026-07-10\n---\nNext year fewer radishes in August.\n",
    }
    page: Any = next(p.values for p in site_of(garden_of(notes, on=ON)).pages if p.address == "lessons.html")
    assert [lesson.text for lesson in page.due] == [
        "Next year bag the pears in July.",
        "Next year half as many beans.",
    ]


@pytest.mark.parametrize(
    ("text", "length", "shown"),
    [
        ("Two rows.", 20, "Two rows."),
        ("The rain came. Then the sun came too.", 20, "The rain came."),
        ("A row. Then it rained for a whole week on us.", 30, "A row. Then it rained\u00a0…"),
        ("watered the beans from Long terrace today", 30, "watered the beans\u00a0…"),
        ("tied in raspberries in Canes", 25, "tied in raspberries\u00a0…"),
        ("planted 2 courgettes 'Black Beauty' there", 32, "planted 2 courgettes\u00a0…"),
        ("otherwise: 1. Next year we sow it late", 22, "otherwise\u00a0…"),
    ],
)
def test_a_beginning_ends_at_a_sentence_or_a_word_and_not_in_a_name(
    text: str, length: int, shown: str
) -> None:
    assert cut(text, length) == shown


def test_lines_of_work_are_taken_whole() -> None:
    assert (
        first_lines(["weeded Arch", "watered Arch", "picked 3 figs"], 30)
        == "weeded Arch; watered Arch\u00a0…"
    )
    assert first_lines(["weeded Arch", "watered Arch"], 30) == "weeded Arch; watered Arch"
