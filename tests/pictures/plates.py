"""All plates: the name of the file, how tall the sheet is, and what is drawn on it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PIL import Image

from pictures import fruit, places, roots, vegetables
from pictures.plate import Plate


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """What a plate shows."""

    draw: Callable[[Plate], None]
    tall: int
    number: str


PLATES: dict[str, Drawing] = {
    "2023-10-08-beetroot": Drawing(draw=roots.beetroot, tall=1960, number="V"),
    "2024-01-20-terraces-in-snow": Drawing(draw=places.terraces_in_snow, tall=1180, number="VI"),
    "2025-07-06-blackcurrants": Drawing(draw=fruit.currants, tall=1740, number="X"),
    "2025-08-30-plums": Drawing(draw=fruit.plums, tall=1400, number="XI"),
    "2025-09-20-wall-pear": Drawing(draw=fruit.wall_pear, tall=1240, number="XII"),
    "2023-07-22-peas": Drawing(draw=vegetables.peas, tall=1960, number="III"),
}


def drawn(name: str, *, scale: float = 2.0) -> Image.Image:
    """One plate; at a smaller scale the same picture, coarser."""
    drawing = PLATES[name]
    plate = Plate(name, tall=drawing.tall, scale=scale)
    drawing.draw(plate)
    plate.frame(drawing.number)
    return plate.picture()
