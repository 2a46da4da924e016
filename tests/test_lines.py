"""Every work line of the case files is read as the file says: slots, spans, questions."""

from __future__ import annotations

import importlib.util
from pathlib import Path

import pytest

from line_cases import Case, groups, plain_id, shown

GROUPS = groups()
CASES = [case for group in GROUPS for case in group.cases]


@pytest.mark.parametrize("case", CASES, ids=plain_id)
def test_a_line_is_read_as_its_case_says(case: Case) -> None:
    assert shown(case.read(), case.typed) == case.expected


def test_no_line_stands_in_two_cases() -> None:
    seen: dict[tuple[str, str], str] = {}
    for case in CASES:
        key = (case.typed, repr(sorted(case.settings.items())))
        assert key not in seen, f"{case.place} repeats {seen.get(key)}"
        seen[key] = case.place


def test_the_table_that_settles_the_grammar_and_many_lines_more_are_cases() -> None:
    settling = [g for g in GROUPS if g.path.name.startswith("00-")]
    assert len(settling) == 1
    assert len(CASES) - len(settling[0].cases) >= 150


def test_the_pages_for_gardeners_are_up_to_date() -> None:
    spec = importlib.util.spec_from_file_location(
        "make_reference", Path(__file__).parent / "cases" / "make_reference.py"
    )
    assert spec is not None and spec.loader is not None
    maker = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(maker)
    for page, made in ((maker.PAGE, maker.reference()), (maker.MORE, maker.more())):
        assert page.read_text(encoding="utf-8") == made, "run python tests/cases/make_reference.py"
