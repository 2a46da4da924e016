"""How many days a planting has been going. Only exact dates are counted from."""

from __future__ import annotations

from datetime import date

from leafmould.values.when import When


def days_since(when: When | None, on: date) -> int | None:
    """Calendar days from an exact date to `on`; None for coarse and later dates."""
    if when is None or when.day is None or when.day > on:
        return None
    return (on - when.day).days
