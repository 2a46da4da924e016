"""How much ground a place takes up: its outline on the map, and what of it had to be guessed.

Works on one bed as the settings have it. Where it is drawn, and what grows in it, is left to others.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import pi, sqrt
from typing import Literal

from leafmould.charts.plan import Box
from leafmould.garden.model import Bed
from leafmould.notes.measures import read_length

ROW_DEPTH = 0.6
"""How deep a row is drawn where only its length is written [m]."""
CROWN = 2.0
"""How wide a tree is drawn where its canopy is not written [m]."""
SPOT = 0.6
"""How wide a place is drawn of whose size nothing is known [m]."""
CROWNED = frozenset({"tree"})
LITRES = re.compile(r"(?:(\d{1,3})\s*[x×]\s*)?(\d{1,4}(?:[.,]\d)?)\s*(?:l|litres?|liters?)\.?", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Footprint:
    """The outline of a place."""

    box: Box  # [m]
    form: Literal["box", "round"]
    guessed: str = ""  # in words, what of its size was not written


def footprint(bed: Bed) -> Footprint | None:
    """The outline of a bed; None where its place is not written.

    `at` is the middle of what is round (a crown, a pot), else the bottom left corner.
    """
    if bed.position_m is None:
        return None
    x, y = bed.position_m
    if bed.canopy_m is not None:
        return _round(x, y, bed.canopy_m)
    if bed.sides_m is not None:
        return Footprint(box=Box(x=x, y=y, width=bed.sides_m[0], height=bed.sides_m[1]), form="box")
    return _guessed(bed, x, y)


def _guessed(bed: Bed, x: float, y: float) -> Footprint:
    """An outline from less than a width and a length."""
    size = bed.size_written or ""
    if bed.kind in CROWNED:
        return _round(x, y, CROWN, "its canopy is not noted")
    if m := LITRES.fullmatch(size.strip()):
        return _pots(x, y, int(m[1] or 1), float(m[2].replace(",", ".")))
    if bed.area_m2:
        side = round(sqrt(bed.area_m2), 3)
        box = Box(x=x, y=y, width=side, height=side)
        return Footprint(box=box, form="box", guessed="its area is noted, not its sides")
    length = read_length(size)
    if length and length > 0:
        box = Box(x=x, y=y, width=length, height=ROW_DEPTH)
        return Footprint(box=box, form="box", guessed="its length is noted, not its depth")
    return _round(x, y, SPOT, "its size is not noted")


def _pots(x: float, y: float, count: int, litres: float) -> Footprint:
    """Pots as wide as they are high: that is about what pots are."""
    across = round((4 * litres / 1000 / pi) ** (1 / 3), 3)
    guessed = "its litres are noted, not its width"
    if count == 1:
        return _round(x, y, across, guessed)
    return Footprint(box=Box(x=x, y=y, width=count * across, height=across), form="box", guessed=guessed)


def _round(x: float, y: float, across: float, guessed: str = "") -> Footprint:
    box = Box(x=x - across / 2, y=y - across / 2, width=across, height=across)
    return Footprint(box=box, form="round", guessed=guessed)
