"""The labels of plantings through their life, day after day: what a gardener would read, and from which day on.

`python tests/reckoned_told.py` writes `tests/cases/reckoned/labels.txt` anew. A count that only grows is written N.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta

from gardens import TANSY_HILL_YAML, entries_of, settings_of
from leafmould.facts.tables import crops
from leafmould.garden.assemble import assemble
from leafmould.garden.model import Garden
from leafmould.garden.waits import Waits
from leafmould.notes.settings import Settings
from leafmould.reckon.almanac import almanac
from leafmould.reckon.badges import Badge, badges
from leafmould.reckon.coming_up import coming_up
from leafmould.reckon.here import forecasts_here

RANGE = re.compile(r"(?<=expected )[\d A-Za-z]+–[\d A-Za-z]+")
"""What moves on by a day at a time while it is waited for: told twice a month."""
FIRST, LAST = date(2025, 9, 20), date(2026, 12, 31)
OWN_CROPS = """
oca:
  like: potato
  days: 160-200 from planting
skirret:
  family: Apiaceae
beetroot:
  varieties:
    Long Red: 70 from sowing
"""
NOTES = """
2024-05-12
- sowed beetroot 'Long Red' in Long border
2024-07-30
- picked 2 kg beetroot from Long border
2025-09-20
- planted strawberries in Tub 2
2025-10-14
- planted 40 garlic in Top bed
2025-11-02
- sowed broad beans in Arch
2026-02-20
- started leeks in Cold frame
- sowed tomatoes in Hoop bed
2026-03-02
- spread fresh horse manure on Long border, north half
2026-04-02
- soil 9 °C in Long border
- sowed parsnips in Long border, north half
- sowed lettuce in Long border, south half
2026-04-12
- sowed peas 'Meteor' in Arch
- sowed beetroot 'Long Red' in Top bed
- planted 12 potatoes in Top bed
2026-04-20
- planted oca in Tub 1
- sowed skirret in Top bed
2026-04-28
- peas came up in Arch
- planted asparagus in Raspberry row
2026-05-20
- planted 6 tomatoes in Hoop bed
- planted 3 courgettes in Long border, south half
2026-05-27
- lost 1 courgette to slugs
2026-06-03
- first flower on peas in Arch
- moved leeks from Cold frame to Arch
- sprayed tomatoes with soap, wait 5 days
2026-06-14
- picked 300 g peas from Arch
2026-06-20
- picked strawberries in Tub 2
- picked 200 g peas from Arch
2026-07-08
- lifted the garlic
- picked 600 g broad beans
2026-07-12
- first courgette picked, 300 g
- sprayed the courgettes with sulphur
2026-07-30
- picked 1 kg tomatoes
2026-09-14
- picked 8 kg pears
2026-09-20
- penned hens on Top bed
2026-10-04
- let the hens out of Top bed
- picked 2 leeks
2026-10-06
- cleared tomatoes
"""


def life() -> Iterator[str]:
    """Every change of a planting's labels but that days go by."""
    settings = settings_of(TANSY_HILL_YAML, crops_yaml=OWN_CROPS)
    entries = entries_of(NOTES, settings)
    before: dict[str, str] = {}
    found: dict[str, list[str]] = {}
    for number in range((LAST - FIRST).days + 1):
        on = FIRST + timedelta(days=number)
        told = [entry for entry in entries if entry.when is None or entry.when.first <= on]
        garden = assemble(settings, tuple(told), crops(), on=on)
        for key, labels in _labels(garden, settings).items():
            last = before.get(key, "")
            if labels != last and (on.day in (1, 16) or RANGE.sub("", labels) != RANGE.sub("", last)):
                found.setdefault(key, []).append(f"{on}: {labels}")
                before[key] = labels
    for key, changes in found.items():
        yield f"# {key}"
        yield from changes


def _labels(garden: Garden, settings: Settings) -> dict[str, str]:
    taken = almanac(settings, garden)
    forecasts, waits = forecasts_here(garden, taken).forecasts, Waits(garden)
    up = coming_up(garden, taken, taken.warmth.mean)
    return {
        p.id: " · ".join(
            _words(badge)
            for badge in badges(
                p, garden, forecasts.get(p.id), waits.safe_day(p), up.get(p.id), waits.unrecorded(p)
            )
        )
        for p in garden.plantings
    }


def _words(badge: Badge) -> str:
    counted = badge.counted_from is not None
    text = (
        f"{badge.before} N days{badge.after if badge.after[:1] == ',' else ' ' + badge.after}"
        if counted
        else badge.text
    )
    return f"{text} [{badge.entry or 'no note'}]"
