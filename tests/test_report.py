"""How a run's problems are told in the terminal and to other programs."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from leafmould.report import (
    NEWEST,
    LeftOut,
    Made,
    by_file,
    count,
    exit_code,
    made_json,
    problem_lines,
    problems_json,
)
from leafmould.values.problems import Level, Location, Problem


def problem(file: str, line: int | None = None, level: Level = Level.WARNING, **parts: str) -> Problem:
    message = parts.pop("message", "this is odd.")
    return Problem(at=Location(file=file, line=line), level=level, message=message, **parts)


OLD, NEW, YAML = "notes/2025/06-20-arch.md", "notes/2026/06-20-arch.md", "garden.yaml"
DATES = {OLD: date(2025, 6, 20), NEW: date(2026, 6, 20)}


def test_problems_stand_file_by_file_settings_first_then_the_newest_note() -> None:
    found = [
        problem(OLD, 2),
        problem(NEW, 4, Level.ERROR, message='no bed is called "Nroth".', field="bed", suggestion="North"),
        problem(NEW, 3, Level.HINT, message="taken as a new bed."),
        problem(YAML, message="no beds are named."),
    ]
    assert problem_lines(found, DATES) == (
        "garden.yaml",
        "    warning: no beds are named.",
        "",
        "notes/2026/06-20-arch.md",
        "  line 3",
        "    hint: taken as a new bed.",
        "  line 4",
        '    error: bed: no bed is called "Nroth". Did you mean "North"?',
        "",
        "notes/2025/06-20-arch.md",
        "  line 2",
        "    warning: this is odd.",
        "",
        "1 error, 2 warnings and 1 hint.",
    )


def test_only_the_newest_files_are_shown_in_full() -> None:
    files = [f"notes/{year}.md" for year in range(2010, 2018)]
    dates = {file: date(int(file[6:10]), 1, 1) for file in files}
    lines = problem_lines([problem(file, 1) for file in files], dates)
    assert [line for line in lines if line.startswith("notes/")] == [
        f"notes/{year}.md" for year in (2017, 2016, 2015, 2014, 2013)
    ]
    assert lines[-3:] == ("… and 3 more in 3 older files: leafmould check --all", "", "8 warnings.")
    assert len(by_file([problem(file) for file in files], dates)) == len(files) > NEWEST
    assert problem_lines([problem(f, 1) for f in files], dates, most=None)[-2:] == ("", "8 warnings.")


def test_errors_are_shown_however_old_their_file_is() -> None:
    files = [f"notes/{year}.md" for year in range(2010, 2018)]
    dates = {file: date(int(file[6:10]), 1, 1) for file in files}
    found = [problem(file, 1) for file in files]
    found += [problem("notes/2010.md", 7, Level.ERROR), problem("notes/2012.md", 9, Level.ERROR)]
    lines = problem_lines(found, dates)
    assert lines[-11:] == (
        "notes/2012.md",
        "  line 9",
        "    error: this is odd.",
        "",
        "notes/2010.md",
        "  line 7",
        "    error: this is odd.",
        "",
        "… and 3 more in 3 older files: leafmould check --all",
        "",
        "2 errors and 8 warnings.",
    )


def test_what_is_said_twice_counts_once() -> None:
    assert count([problem(OLD, 1), problem(OLD, 1), problem(OLD, 2)]).sentence == "2 warnings."


def test_counts_in_words() -> None:
    levels = (Level.ERROR, Level.WARNING, Level.QUESTION, Level.HINT)
    assert count([problem(OLD, n, level) for n, level in enumerate(levels)]).sentence == (
        "1 error, 1 warning, 1 question and 1 hint."
    )
    assert count([]).sentence == "Nothing to mend."
    assert problem_lines([], {}) == ("Nothing to mend.",)


def test_only_errors_make_the_run_fail() -> None:
    assert [exit_code([problem(OLD, level=level)]) for level in Level] == [1, 0, 0, 0]
    assert exit_code([]) == 0


def test_problems_as_other_programs_read_them() -> None:
    found = problems_json([problem(NEW, 4, field="bed"), problem(NEW, 2)], date(2026, 7, 1))
    assert (found["version"], found["on"]) == (1, "2026-07-01")
    assert found["problems"] == [
        {
            "file": NEW,
            "line": line,
            "column": None,
            "field": field,
            "level": "warning",
            "message": "this is odd.",
            "suggestion": None,
        }
        for line, field in ((2, None), (4, "bed"))
    ]


MADE = Made(on=date(2026, 7, 1), household=True, notes=45, plantings=1, pages=1200, changed=14, removed=2)


def test_what_a_build_made_in_words_and_for_other_programs() -> None:
    assert MADE.sentence == "1,200 pages from 45 notes and 1 planting: 14 files written, 2 removed."
    assert replace(MADE, changed=0, removed=0).sentence == (
        "1,200 pages from 45 notes and 1 planting: nothing has changed."
    )
    assert made_json(MADE, []) == {
        "version": 1,
        "on": "2026-07-01",
        "household": True,
        "notes": 45,
        "plantings": 1,
        "pages": 1200,
        "changed": 14,
        "removed": 2,
        "left_out": {"beds": 0, "notes": 0, "lines": 0, "pictures": 0, "subjects": []},
        "problems": [],
    }
    assert MADE.left_out.sentence == ""


@pytest.mark.parametrize(
    ("left", "words"),
    [
        (LeftOut(beds=1, notes=2, lines=14, pictures=1, subjects=("people", "prices")), "Left out: 1 bed, 2 notes, 14 lines and 1 picture, and what tells of people and prices."),
        (LeftOut(lines=1), "Left out: 1 line."),
        (LeftOut(subjects=("people",)), "Left out: what tells of people."),
        (LeftOut(), ""),
    ],
)  # fmt: skip
def test_what_a_public_build_left_out_in_one_sentence(left: LeftOut, words: str) -> None:
    assert left.sentence == words
