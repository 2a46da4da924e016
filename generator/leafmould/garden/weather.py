"""Which days of the weather table a build may show. Part of `visible`."""

from __future__ import annotations

from collections.abc import Iterable

from leafmould.garden.view import View
from leafmould.notes.setting_values import WeatherDay


def shown_weather(days: Iterable[WeatherDay], view: View) -> tuple[WeatherDay, ...]:
    """The days, without those of years that are left out; none where the weather is."""
    if "weather" in view.leave_out:
        return ()
    return tuple(row for row in days if row.on.year not in view.years)
