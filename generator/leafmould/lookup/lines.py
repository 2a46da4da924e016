"""The line of a file that a problem speaks of, to be shown beside it.

Runs after everything else, for people only: what cannot be read any more is left out.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path

from leafmould.values.problems import Location

LONGEST = 100
"""More of a line than this is not quoted."""


def lines_of(folder: Path) -> Callable[[Location], str | None]:
    """Gives the words at a place in a garden folder, in quotes; None where there are none to be had."""

    @cache
    def rows(file: str) -> tuple[str, ...]:
        try:
            text = (folder / file).read_text(encoding="utf-8-sig")
        except (OSError, ValueError):
            return ()
        return tuple(text.split("\n"))

    def words(at: Location) -> str | None:
        number = at.line or 0
        if not 0 < number <= len(rows(at.file)):
            return None
        row = "".join(c for c in rows(at.file)[number - 1] if c.isprintable()).strip()
        short = row if len(row) <= LONGEST else f"{row[:LONGEST].rstrip()} …"
        return f"“{short}”" if short else None

    return words
