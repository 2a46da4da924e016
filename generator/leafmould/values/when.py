"""When something happened, as exactly as the gardener said it.

A When is an interval of calendar days with the words it was written in. Days have no clock and no zone.
The reading of dates is in `dates`; this module holds only the value.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True, kw_only=True)
class When:
    """A day, or a span of days known only coarsely ("spring 2024")."""

    first: date
    last: date
    written: str  # as in the note: "12 June", "2026-04", "late August"

    @property
    def is_exact(self) -> bool:
        """Whether it names one day; only then are days counted from it."""
        return self.first == self.last

    @property
    def day(self) -> date | None:
        """The day if exact, else None."""
        return self.first if self.is_exact else None

    def meets(self, other: When) -> bool:
        """Whether the two could be the same day; coarse dates that overlap agree."""
        return self.first <= other.last and other.first <= self.last


def on(day: date) -> When:
    """The When of one day, written as ISO."""
    return When(first=day, last=day, written=day.isoformat())
