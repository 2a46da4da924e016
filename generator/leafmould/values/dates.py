"""Reading dates in all the ways gardeners write them.

Scanning finds the words of a date; resolving gives them days, with the garden's day order, hemisphere
and the date of the note. Our own strict forms, so that every Python version agrees; no clock, no zone.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.values.when import When


@dataclass(frozen=True, slots=True, kw_only=True)
class DateWords:
    """The parts of a date as written, not yet a day."""

    written: str
    year: int | None = None
    month: int | None = None
    day: int | None = None
    other: tuple[int, int] | None = None  # (month, day) of the other reading of 3/4/2026
    third: str | None = None  # "early", "mid", "late"
    season: str | None = None  # "spring", "summer", "autumn", "winter"
    weekday: int | None = None  # 0 Monday; alone, without day and month


@dataclass(frozen=True, slots=True, kw_only=True)
class DateReading:
    """What a date turned out to be."""

    when: When | None  # None: see fault
    fault: str | None = None  # "29 February 2023 does not exist."
    other: When | None = None  # the second reading of an ambiguous one; `when` holds the first


def scan_date(text: str, start: int = 0) -> tuple[DateWords, int] | None:
    """The longest date that begins exactly at `start`, and where it ends; None if none does."""
    raise NotImplementedError


def resolve_date(words: DateWords, *, order: str | None, base: When | None, is_southern: bool) -> DateReading:
    """The day or span meant.

    Args:
        order: "day first", "month first", or None where garden.yaml does not say.
        base: the note's date, for dates without a year and for weekdays: the nearest not after it.
    """
    raise NotImplementedError


def read_date(text: str, *, order: str | None, base: When | None, is_southern: bool) -> DateReading | None:
    """A text that is a date and nothing else; None if it is no date at all."""
    raise NotImplementedError
