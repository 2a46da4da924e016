"""What looks wrong in a garden: notes as typed, and each sentence in full."""

from __future__ import annotations

from datetime import date

import pytest

from gardens import garden_of, settings_of
from leafmould.garden.model import Garden
from leafmould.notes.entries import Entry
from leafmould.values.problems import Level


def problems(garden: Garden) -> list[tuple[Level, str]]:
    return [(problem.level, problem.sentence) for problem in garden.problems]


@pytest.mark.parametrize(
    ("typed", "level", "sentence"),
    [
        (
            "2026-05-02\n- picked 300 g peas from Arch\n2026-05-10\n- sowed peas in Arch",
            Level.WARNING,
            "notes/2026-05-02.md:4: work[0]: picked on 2 May 2026, before sowing on 10 May 2026.",
        ),
        (
            "2026-05-02\n- picked 300 g peas from Arch\n2026-05-10\n- planted 6 peas in Arch",
            Level.WARNING,
            "notes/2026-05-02.md:4: work[0]: picked on 2 May 2026, before planting on 10 May 2026.",
        ),
        (
            "2026-06-02\n- picked 300 g peas from Arch",
            Level.HINT,
            "notes/2026-06-02.md:4: work[0]: no note says when pea in Arch was sown or planted.",
        ),
        (
            "2026-04-20\n- sowed spinach in Long border\n2026-06-02\n- cleared spinach from Arch",
            Level.WARNING,
            "notes/2026-06-02.md:4: work[0]: no spinach stands in Arch on 2 June 2026, so nothing was ended. "
            'Did you mean "Long border"?',
        ),
        (
            "2026-05-20\n- planted 3 kale in Arch\n2026-06-02\n- lost 9 of 3 kale in Arch",
            Level.WARNING,
            "notes/2026-06-02.md:4: work[0]: 9 of 3 is more than there were.",
        ),
        (
            "2026-04-20\n- sowed peas in Arch\n- sowed peas in Top bed\n2026-08-02\n- cleared peas",
            Level.HINT,
            "notes/2026-08-02.md:4: work[0]: pea stands in Arch and Top bed, so none of it is ended.",
        ),
        (
            "2026-04-20\n- sowed peas",
            Level.HINT,
            'notes/2026-04-20.md:4: work[0]: no place is given, so it stands under "Place not noted".',
        ),
    ],
)  # fmt: skip
def test_one_sentence_each(typed: str, level: Level, sentence: str):
    assert problems(garden_of(typed)) == [(level, sentence)]


def test_a_bed_is_used_after_its_last_day_or_before_its_first():
    settings = settings_of("""
        garden: Ends
        beds:
          - {name: Old frame, until: 2025-12-31}
          - {name: New frame, from: 2026-06-01}
    """)
    garden = garden_of("2026-04-10\n- sowed peas in Old frame\n- sowed kale in New frame", settings)
    assert problems(garden) == [
        (
            Level.WARNING,
            'notes/2026-04-10.md:4: work[0]: "Old frame" ended on 31 December 2025, before this.',
        ),
        (Level.WARNING, 'notes/2026-04-10.md:5: work[1]: "New frame" begins on 1 June 2026, after this.'),
    ]


def test_shares_that_are_more_than_the_picking():
    garden = garden_of(
        "2026-04-10\n- sowed peas in Arch\n2026-06-20\n- picked 1 kg peas from Arch, gave away 600 g, ate 600 g"
    )
    assert problems(garden) == [
        (Level.WARNING, "notes/2026-06-20.md:4: work[0]: more went away than the 1 kg picked.")
    ]


def test_a_note_without_a_date_counts_nowhere_and_says_so():
    garden = garden_of({"x.md": "---\nwork:\n- sowed peas in Arch\n---"})
    assert garden.events == ()
    assert [(p.level, p.at.file, p.field) for p in garden.problems] == [(Level.ERROR, "notes/x.md", "date")]


def test_an_entry_without_a_date_is_reported_even_if_its_reader_was_silent(undated: Entry):
    from leafmould.facts.tables import crops
    from leafmould.garden.assemble import assemble
    from leafmould.notes.settings import Settings

    garden = assemble(Settings(), (undated,), crops(), on=date(2026, 7, 1))
    assert problems(garden) == [
        (
            Level.ERROR,
            "notes/x.md:1: date: this note has no date, so what was done is shown but counts nowhere.",
        )
    ]


@pytest.fixture
def undated() -> Entry:
    from leafmould.notes.entries import Action
    from leafmould.values.problems import Location

    at = Location(file="notes/x.md", line=1)
    action = Action(verb="sowed", text="sowed", at=at, field="work[0]")
    return Entry(id="x", at=at, when=None, date_from="nowhere", actions=(action,))


ORDINARY = """
    2025-03-10
    - started tomatoes 'Stupice' on the windowsill
    2025-04-10
    - sowed peas in Arch
    - sowed carrots in Long border, south half
    2025-05-25
    - planted 6 tomatoes in Hoop bed
    - potted on the rest of the tomatoes
    2025-06-20
    - picked a colander of peas
    - picked peas from Arch, ate the lot
    2025-07-20
    - cleared Arch
    - sowed turnips in Arch
    2025-08-15
    - picked 2 kg tomatoes, gave away 500 g
    - weeded everything
    2026-04-10
    - sowed peas in Arch
    - cleared Hoop bed
"""


def test_ordinary_untidy_notes_raise_no_alarm():
    garden = garden_of(ORDINARY, on=date(2026, 5, 1))
    assert problems(garden) == []


@pytest.mark.parametrize(
    "copy",
    [
        "2026-06-06 (conflicted copy).txt",
        "2026-06-06.sync-conflict-20260607-081500.txt",
        "2026-06-06 (1).txt",
    ],
)
def test_a_line_in_a_file_and_in_its_copy_is_told_once_with_both_names(copy: str) -> None:
    garden = garden_of({"2026-06-06.txt": TWO_LINES, copy: TWO_LINES})
    told = [sentence for level, sentence in problems(garden) if level is Level.WARNING]
    assert told == [
        f'notes/{copy}:1: The same stands in "notes/2026-06-06.txt", on the same day, and counts twice. '
        "Keep one of the two files."
    ]


def test_the_same_line_in_two_files_of_their_own_is_no_copy() -> None:
    garden = garden_of({"2026-06-06.txt": TWO_LINES, "2026-06-06-evening.txt": TWO_LINES})
    assert [sentence for level, sentence in problems(garden) if level is Level.WARNING] == []


TWO_LINES = "picked 600 g strawberries from Tub 1\nwatered Arch"
