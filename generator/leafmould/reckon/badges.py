"""The short labels a planting wears wherever it appears: "sown 23 days ago".

A badge holds its words as of the garden's day, and what a reader's browser needs to move a day count on.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True, kw_only=True)
class Badge:
    """One label. `text` is right as of the garden's day; `counted_from` lets script move it on."""

    kind: str  # "sown", "planted", "started", "found", "expected", "picking", "picked", "ended", "unknown"
    text: str  # "sown 23 days ago"
    counted_from: date | None = None  # the day the count starts; None: nothing to move on
    before: str = ""  # words before the count: "sown"
    after: str = ""  # words after "23 days": "ago"
    entry: str | None = None  # entry id the date was noted in
    basis: str | None = None  # the reason, for an expectation or an estimate
