"""What a gardener should be warned of, by crop and by kind of work, and whom to ask.

Read once, on first use. A row without a source is common practice and says so; none gives leave to do
anything: each defers to somebody who knows.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from leafmould.facts.tables import DATA, Source, sources


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One warning."""

    words: str
    ask: str  # whom to ask, or what comes before this; never empty
    sources: tuple[Source, ...]  # none: common practice


def cautions(about: str) -> tuple[Caution, ...]:
    """The warnings about a crop, by its key, or about "work:animals" and the like."""
    return _by_subject().get(about, ())


def every_caution() -> tuple[Caution, ...]:
    """Every warning there is, each once, in the order of the table."""
    return tuple(dict.fromkeys(caution for found in _by_subject().values() for caution in found))


@cache
def _by_subject() -> Mapping[str, tuple[Caution, ...]]:
    found: dict[str, tuple[Caution, ...]] = {}
    text = (DATA / "cautions.csv").read_text(encoding="utf-8")
    for row in csv.DictReader(text.splitlines()):
        known = tuple(sources()[key] for key in row["source"].split(";") if key)
        caution = Caution(words=row["words"], ask=row["ask"], sources=known)
        for about in row["about"].split(";"):
            found[about] = (*found.get(about, ()), caution)
    return found
