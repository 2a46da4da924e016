"""Dates as they are given to a command: "yesterday", "12 June", "2026-06-12"."""

from __future__ import annotations

from datetime import date, timedelta

from leafmould.values.dates import read_date
from leafmould.values.problems import WrongUse
from leafmould.values.when import When, on
from leafmould.values.wording import day

BESIDE_TODAY = {"today": 0, "yesterday": -1}


def read_when(
    text: str, today: date, *, order: str | None = None, is_southern: bool = False, or_else: str = ""
) -> When:
    """A date, perhaps a coarse one.

    Args:
        today: what dates without a year and weekdays are counted back from.
        order: "day first" or "month first", where the garden says so.
        or_else: what else settles which of two days is meant.
    Raises:
        WrongUse: if it is no date, or may be two.
    """
    if (away := BESIDE_TODAY.get(text.strip().casefold())) is not None:
        return on(today + timedelta(days=away))
    found = read_date(text, order=order, base=on(today), is_southern=is_southern)
    if found is None or found.when is None:
        fault = found.fault if found and found.fault else f'"{text}" is not a date.'
        raise WrongUse(f"{fault} Write it like {today.isoformat()}.")
    if found.other is not None:
        both = f"{day(found.when.first)} or {day(found.other.first)}"
        raise WrongUse(f'"{text}" may be {both}. Write it like {found.when.first.isoformat()}{or_else}.')
    return found.when


def read_day(text: str, today: date) -> date:
    """A date that is one day.

    Raises:
        WrongUse: if it is not.
    """
    when = read_when(text, today)
    if when.day is None:
        raise WrongUse(f'"{text}" is not one day. Write it like {today.isoformat()}.')
    return when.day
