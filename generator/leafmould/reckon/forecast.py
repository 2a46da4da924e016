"""When a planting may first be picked: earliest, likely, latest, and on what basis."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True, kw_only=True)
class Forecast:
    """An expected first picking, with its reason."""

    earliest: date
    likely: date
    latest: date
    basis: str  # one sentence: "packet says 60–70 days from sowing, counted from 12 April 2026"
    sources: tuple[str, ...]  # source ids; empty for packet days and common practice
    is_common_practice: bool = False
