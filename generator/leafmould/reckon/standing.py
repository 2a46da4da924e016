"""Crops that stand ready in the bed for weeks or months, and lasting plants, which are picked again each season.

Of these a first picking tells when the kitchen asked, not when they were ripe: they are no measure of days, and are
never overdue (common practice, no source). A lasting plant is expected when it was first picked in earlier seasons. Pure.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from math import ceil, sqrt
from statistics import median, pvariance

from leafmould.garden.model import Planting
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.forecast import Forecast
from leafmould.reckon.own_days import TENTH
from leafmould.values.names import fold
from leafmould.values.wording import day as day_words

STANDING = frozenset(
    {
        "leek", "kale", "kalette", "parsnip", "brussels-sprouts", "celeriac", "swede", "salsify", "scorzonera",
        "jerusalem-artichoke", "chinese-artichoke", "chard", "perpetual-spinach", "corn-salad",
        "winter-purslane", "land-cress", "parsley", "chicory", "horseradish",
    }
)  # fmt: skip
"""Crop keys. Common practice, no source."""


def stands(planting: Planting) -> bool:
    """Whether every crop of a planting waits in the bed to be picked."""
    waits = (crop in STANDING or (crop == "cabbage" and _is_of_winter(planting)) for crop in planting.crops)
    return bool(planting.crops) and all(waits)


def _is_of_winter(planting: Planting) -> bool:
    """Whether a cabbage is one of those that wait, by the gardener's word for it or its variety's name."""
    said = {word for name in (*planting.words, *planting.varieties) for word in fold(name)}
    return bool(said & OF_WINTER)


OF_WINTER = frozenset({"winter", "savoy", "january"})
"""Words in what a winter cabbage is called: "winter cabbage", "savoy", 'January King'. Common practice."""


YEARS_DIFFER = 8.0
"""Standard deviation of a lasting plant's first picking between years, at least [days]. Common practice."""
GIVEN_UP = 30
"""Days after its last likely day from which on a picking is looked for in the next season."""
MOST_NAMED = 3
"""Earlier first pickings named as the reason."""


def next_season(planting: Planting, almanac: Almanac) -> Forecast | None:
    """When a lasting plant should first be picked this season, or the next; None before any season was noted to the day.

    Nothing either while this season's picking is noted: what is there needs no expectation.
    """
    if not planting.is_open:
        return None
    first = [s.first_picked.day for s in planting.seasons if s.first_picked and s.first_picked.day]
    earlier = [day for day in first if day <= almanac.on]
    if not earlier or (almanac.on - max(earlier)).days < HALF_A_YEAR:
        return None
    for year in (almanac.on.year - 1, almanac.on.year, almanac.on.year + 1):
        found = _in_year(earlier, year)
        if (almanac.on - found.latest).days <= GIVEN_UP and found.likely > max(earlier) + timedelta(
            days=HALF_A_YEAR
        ):
            return found
    return None


HALF_A_YEAR = 183
"""Days between two first pickings of two seasons, at least."""


def _in_year(earlier: Sequence[date], year: int) -> Forecast:
    middle = date(earlier[-1].year, earlier[-1].month, 1)
    days = [_apart(day, middle) for day in earlier]
    spread = sqrt(max(YEARS_DIFFER**2, pvariance(days)) * (1 + 1 / len(days)))
    likely = date(year, middle.month, 1) + timedelta(days=round(median(days)))
    reach = timedelta(days=ceil(TENTH * spread))
    return Forecast(
        earliest=likely - reach,
        likely=likely,
        latest=likely + reach,
        basis=f"first picked here on {' and '.join(_named(earlier))}",
        sources=(),
        kind="season",
    )


def _apart(day: date, middle: date) -> int:
    """Days from the first of a month to a day of the year, by the nearer way round."""
    gone = (day - date(day.year, middle.month, 1)).days
    return gone - 365 if gone > HALF_A_YEAR else gone + 365 if gone < -HALF_A_YEAR else gone


def _named(earlier: Sequence[date]) -> Iterator[str]:
    return (day_words(day) for day in sorted(earlier)[-MOST_NAMED:])
