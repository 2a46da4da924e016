"""How many days a planting has been going. Only exact dates are counted from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from leafmould.garden.model import Planting
from leafmould.values.when import When


@dataclass(frozen=True, slots=True, kw_only=True)
class Ages:
    """Calendar days up to a day; None where there is no date, or only a coarse one."""

    since_started: int | None
    since_sown: int | None
    since_planted: int | None
    since_found: int | None


def days_since(when: When | None, on: date) -> int | None:
    """Calendar days from an exact date to `on`; None for coarse and later dates."""
    if when is None or when.day is None or when.day > on:
        return None
    return (on - when.day).days


def ages(planting: Planting, on: date) -> Ages:
    """The days since each beginning of a planting."""
    return Ages(
        since_started=days_since(planting.started, on),
        since_sown=days_since(planting.sown, on),
        since_planted=days_since(planting.planted, on),
        since_found=days_since(planting.found, on),
    )
