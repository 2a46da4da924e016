"""Quick looks spare the reader of lines most of its questions; without any of them it must read the same.

Each look below is switched off in turn, so that everything is asked that it would have spared, and all lines
of the case files are read again.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leafmould.notes import (
    clauses,
    day_words,
    kept,
    lines,
    measured,
    numbers,
    slots,
    steps,
    typed,
    whole_amounts,
)
from leafmould.values import day_phrases
from line_cases import Case, groups

CASES = [case for group in groups() for case in group.cases]


class Everything:
    """A set of words that holds every word."""

    def __contains__(self, word: object) -> bool:
        return True


class Unsure(dict[str, Any]):
    """First looks that settle nothing: every word is looked up with the words behind it."""

    def get(self, word: str, default: Any = None) -> None:
        """Nothing is known yet."""


def always(answer: object) -> Callable[..., object]:
    """A look that gives one answer to everything."""
    return lambda *asked: answer


def every_step(key: str, name: int, verb: str, spot: str, has_batch: bool) -> tuple[steps.Step, ...]:
    """All steps that may begin at a word, whatever the verb and wherever it stands."""
    return tuple(
        step
        for step, words in steps.STEPS
        if words is None or key in words or (name and step in steps.NAME_STEPS)
    )


LOOKS: list[tuple[Any, str, object]] = [
    (slots, "steps_at", every_step),
    (typed, "_first_looks", always(Unsure())),
    (clauses, "_last_begin", always(10_000)),
    (lines, "_is_all_taken", always(False)),
    (kept, "PLAN_STARTS", Everything()),
    (numbers, "_plain_digits", always(None)),
    (whole_amounts, "_may_go_on", always(True)),
    (whole_amounts, "_may_be_odd", always(True)),
    (measured, "_may_be_paid", always(True)),
    (day_words, "_is_decimal", always(False)),
    (day_phrases, "_forms_at", always(day_phrases.FORMS)),
]


@pytest.fixture(scope="module")
def read_with_all() -> list[object]:
    """Every case as it is read with all quick looks."""
    return [case.read() for case in CASES]


@pytest.mark.parametrize(("room", "name", "instead"), LOOKS, ids=[name for _, name, _ in LOOKS])
def test_a_line_reads_the_same_without_a_quick_look(
    room: Any, name: str, instead: object, read_with_all: list[object], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(room, name, instead)
    others = [_told(case) for case, read in zip(CASES, read_with_all, strict=True) if case.read() != read]
    assert others == []


def _told(case: Case) -> str:
    return f"{case.place}: {case.typed}"
