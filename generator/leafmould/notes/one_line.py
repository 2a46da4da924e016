"""One work line while it is read: how it was typed, what it is read with, what is asked so far.

The state that `line_start`, `deeds` and `lines` share.
"""

from __future__ import annotations

from leafmould.notes.draft import Asked, Draft
from leafmould.notes.entries import Words
from leafmould.notes.habits import Defaults, Habits, LineReading
from leafmould.notes.line_ends import strip_ends
from leafmould.notes.typed import Typed
from leafmould.notes.walk import Walk
from leafmould.notes.words.verbs import VERBS
from leafmould.values.problems import Location, Problem
from leafmould.values.when import When


class OneLine:
    """One line while it is read."""

    def __init__(
        self,
        text: str,
        at: Location,
        field: str,
        base: When | None,
        habits: Habits,
        defaults: Defaults,
        is_prose: bool,
    ) -> None:
        self.text, self.at, self.field, self.base = text, at, field, base
        self.habits, self.defaults, self.is_prose = habits, defaults, is_prose
        body, self.is_private, self.is_settled = strip_ends(text)
        self.typed = Typed(body, habits.vocabulary)
        self.asked: list[Asked] = []
        self.opening: Draft | None = None  # what a day at its start gave

    def behind(self, start: int) -> Typed:
        """The line from word `start`, positions kept by blanking what went before."""
        if not start:
            return self.typed
        cut = self.typed.starts[start]
        return Typed(" " * cut + self.typed.text[cut:], self.habits.vocabulary)

    def walk(self, typed: Typed, draft: Draft, verb: str) -> Walk:
        """A walk over one clause, for this verb."""
        habits = self.habits
        return Walk(
            typed, VERBS[verb], draft, base=self.base, order=habits.order, decimal=habits.decimal,
            is_southern=habits.is_southern,
        )  # fmt: skip

    def as_text(self, kind: str, asked: Asked | None) -> LineReading:
        """The line kept as text; where it may be prose, nothing at all."""
        if self.is_prose:
            return LineReading()
        problems = tuple(map(self.problem, [*self.asked, *([asked] if asked else [])]))
        words = Words(text=self.text, at=self.at, kind=kind, is_private=self.is_private)
        return LineReading(words=(words,), problems=() if self.is_settled else problems)

    def problem(self, asked: Asked) -> Problem:
        """What is asked, with where the line stands."""
        column = None if asked.column is None else asked.column + 1
        at = Location(file=self.at.file, line=self.at.line, column=column)
        return Problem(
            at=at, level=asked.level, message=asked.message, field=self.field, suggestion=asked.suggestion
        )
