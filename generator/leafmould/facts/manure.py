"""How long to wait before picking after raw manure, by where the eaten part grows.

The days are those of the rule for organic farms in the USA, 7 CFR 205.203(c): 120 where the eaten part
touches the soil or its particles, 90 where it does not, counted from the day the manure is worked in.
Which crops hang clear of the soil is common practice but for sweet corn (University of Florida); where
nothing is known the longer wait holds.
"""

from __future__ import annotations

import csv
from functools import cache

from leafmould.facts.tables import DATA, CropFact, crops

TOUCHING, CLEAR = 120, 90
"""Days; source: CFR-205.203."""
NOT_EATEN = "none"


def days_after_manure(crop_key: str) -> int:
    """Days from raw manure to the first picking of a crop; 0 for one that is not eaten."""
    fact = crops().get(crop_key)
    if fact is None:
        return TOUCHING
    if fact.part_eaten == NOT_EATEN:
        return 0
    return CLEAR if _hangs_clear(fact) else TOUCHING


def sources_of_clear() -> tuple[str, ...]:
    """Ids of the sources of the days, and of what is known to hang clear of the soil."""
    rows = csv.DictReader((DATA / "above_soil.csv").read_text(encoding="utf-8").splitlines())
    return tuple(dict.fromkeys(["CFR-205.203", *(row["source"] for row in rows if row["source"])]))


def _hangs_clear(fact: CropFact) -> bool:
    return fact.sort == "fruit tree" or fact.key in _above_soil()


@cache
def _above_soil() -> frozenset[str]:
    text = (DATA / "above_soil.csv").read_text(encoding="utf-8")
    return frozenset(row["crop"] for row in csv.DictReader(text.splitlines()))
