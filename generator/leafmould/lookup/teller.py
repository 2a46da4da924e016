"""A planting in one line, as it stands on the garden's day.

Shared by `find` and `note`, so that both say of a planting what its page says.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache

from leafmould.garden.load import Loaded
from leafmould.garden.model import Garden, Planting
from leafmould.garden.waits import Waits
from leafmould.reckon.almanac import Almanac, almanac
from leafmould.reckon.badges import badges
from leafmould.reckon.coming_up import ComingUp, coming_up
from leafmould.reckon.forecast import Forecast
from leafmould.reckon.here import forecasts_here
from leafmould.values.when import When
from leafmould.values.wording import when_words


@dataclass(frozen=True, slots=True, kw_only=True)
class Teller:
    """Says how plantings stand on the garden's day."""

    garden: Garden
    almanac: Almanac
    waits: Waits
    up: Mapping[str, ComingUp]
    forecasts: Callable[[], Mapping[str, Forecast]]  # of all plantings: asked only for one that waits

    def line(self, planting: Planting) -> str:
        """ "beetroot, Long border: sown today, expected 4–18 July"."""
        return f"{self.name(planting)}: {self.labels(planting)}"

    def labels(self, planting: Planting) -> str:
        """ "sown today, expected 4–18 July"; of what is over, also when it began."""
        forecast = self.forecasts().get(planting.id) if _may_be_expected(planting) else None
        safe = self.waits.safe_day(planting)
        up, unrecorded = self.up.get(planting.id), self.waits.unrecorded(planting)
        labels = [badge.text for badge in badges(planting, self.garden, forecast, safe, up, unrecorded)]
        if planting.ended_on and planting.start and planting.origin != "year only":
            labels.insert(0, _begun(planting, planting.start))
        return ", ".join(labels)

    def name(self, planting: Planting) -> str:
        """ "leek 'Musselburgh', Long border, north half"."""
        varieties = (" or " if planting.is_doubtful else " and ").join(f"'{v}'" for v in planting.varieties)
        words = " and ".join(dict.fromkeys(planting.words)) or "crop not known"
        place = [self.garden.beds[planting.bed_now].name, *([planting.part] if planting.part else [])]
        return ", ".join([f"{words} {varieties}".strip(), *place])


def teller_of(loaded: Loaded) -> Teller:
    """What says how the plantings of a loaded garden stand."""
    garden = loaded.garden
    book = almanac(loaded.shown, garden)
    return Teller(
        garden=garden,
        almanac=book,
        waits=Waits(garden),
        up=coming_up(garden, book, book.warmth.mean),
        forecasts=cache(lambda: forecasts_here(garden, book).forecasts),
    )


def _may_be_expected(planting: Planting) -> bool:
    """Whether a first picking may be expected of it; to know when, the garden's whole past is gone through."""
    return planting.ended_on is None and (planting.is_perennial or planting.first_picked is None)


def _begun(planting: Planting, start: When) -> str:
    """ "sown 12 April 2023"; of what was raised first, both days: "started 14 February 2026, planted out 16 May 2026"."""
    words = {"self-sown": "found", "unknown": "noted first"}
    for told, when in (("started", planting.started), ("sown", planting.sown)):
        if when == start:
            later = planting.planted if planting.planted != start else None
            out = f", planted out {when_words(later)}" if later else ""
            return f"{told} {when_words(start)}{out}"
    return f"{words.get(planting.origin, 'planted')} {when_words(start)}"
