"""What the reckoning takes for granted and nobody we read has published: said as such on the page of sources."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache

from leafmould.facts.tables import DATA


@dataclass(frozen=True, slots=True, kw_only=True)
class Custom:
    """One thing that gardeners commonly go by."""

    about: str  # "coming up", "seed", "waits"
    words: str  # a whole sentence


@cache
def common_practice() -> tuple[Custom, ...]:
    """Everything that rests on no source, in the order it is told."""
    text = (DATA / "common_practice.csv").read_text(encoding="utf-8")
    return tuple(Custom(about=row["about"], words=row["words"]) for row in csv.DictReader(text.splitlines()))
