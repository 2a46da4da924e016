"""Long histories split by years, so that no page grows too heavy for a phone.

Runs before addresses are given. Weighs in rows, which are alike enough in size for a safe limit.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from leafmould.pages.addresses import chapter_address

MOST_ROWS = 360
"""Rows on one page; about 250 bytes each, well under the 300 kB a page may weigh."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """One page of a history and the years it holds, newest first."""

    address: str
    name: str  # "2024–2026"
    years: tuple[int, ...]


def chapters(
    whole: str, rows_by_year: Mapping[int, int], name_of: Callable[[int], str], most_rows: int = MOST_ROWS
) -> tuple[Chapter, ...]:
    """The pages of a history, newest first; the first keeps the address of the whole. Never none."""
    groups: list[list[int]] = [[]]
    held = 0
    for year in sorted(rows_by_year, reverse=True):
        if groups[-1] and held + rows_by_year[year] > most_rows:
            groups.append([])
            held = 0
        groups[-1].append(year)
        held += rows_by_year[year]
    return tuple(
        Chapter(
            address=chapter_address(whole, name_of(years[0])) if number else whole,
            name=_span(years, name_of),
            years=tuple(years),
        )
        for number, years in enumerate(groups)
    )


def _span(years: list[int], name_of: Callable[[int], str]) -> str:
    if not years:
        return ""
    first, last = name_of(years[-1]), name_of(years[0])
    return first if first == last else f"{first}–{last}"
