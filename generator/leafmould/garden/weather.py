"""Which of the weather tables a build may show, and how finely. Part of `visible`."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from leafmould.garden.view import View
from leafmould.notes.setting_values import MonthNormal, WeatherDay


def shown_weather(days: Iterable[WeatherDay], view: View) -> tuple[WeatherDay, ...]:
    """The days, without those of years that are left out; none where the weather is."""
    if "weather" in view.leave_out:
        return ()
    return tuple(row for row in days if row.on.year not in view.years)


def shown_months(months: Iterable[MonthNormal], view: View) -> tuple[MonthNormal, ...]:
    """The usual months to whole degrees and centimetres of rain: to the tenth they would tell their station.

    What is reckoned from them is as coarse, so no sum of a public page leads back to the place either.
    """
    if "weather" in view.leave_out:
        return ()
    if "place" in view.show:
        return tuple(months)
    return tuple(
        replace(
            month,
            low=float(round(month.low)),
            high=float(round(month.high)),
            rain=None if month.rain is None else round(month.rain, -1),
        )
        for month in months
    )
