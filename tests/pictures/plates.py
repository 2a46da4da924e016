"""All plates: the name of the file, how tall the sheet is, and what is drawn on it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PIL import Image

from pictures import (
    borage,
    bunches,
    clubroot,
    fruit,
    garlic,
    gluts,
    grapes,
    hens,
    lizard,
    pear,
    roots,
    snow,
    spinach,
    strawberry,
    summer,
    tomato,
    tools,
    vegetables,
)
from pictures.plate import Plate


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """What a plate shows."""

    draw: Callable[[Plate], None]
    tall: int


PLATES: dict[str, Drawing] = {
    "2023-10-08-beetroot": Drawing(draw=roots.beetroot, tall=1960),
    "2024-01-20-terraces-in-snow": Drawing(draw=snow.terraces_in_snow, tall=1180),
    "2025-07-06-blackcurrants": Drawing(draw=fruit.currants, tall=1740),
    "2025-08-30-plums": Drawing(draw=fruit.plums, tall=1400),
    "2025-09-20-wall-pear": Drawing(draw=pear.wall_pear, tall=1240),
    "2023-07-22-peas": Drawing(draw=vegetables.peas, tall=1960),
    "2025-08-16-tomatoes": Drawing(draw=tomato.tomatoes, tall=1960),
    "2023-09-16-potatoes": Drawing(draw=tomato.potatoes, tall=1270),
    "2025-04-05-hens": Drawing(draw=hens.hens, tall=1160),
    "2026-06-10-borage": Drawing(draw=borage.borage, tall=1740),
    "2024-07-07-garlic": Drawing(draw=garlic.garlic, tall=1760),
    "2023-10-28-leeks": Drawing(draw=bunches.leeks, tall=1900),
    "2025-09-13-carrots": Drawing(draw=bunches.carrots, tall=1820),
    "2025-09-27-pumpkin": Drawing(draw=gluts.pumpkin, tall=1180),
    "2023-08-05-courgettes": Drawing(draw=gluts.courgettes, tall=1280),
    "2026-06-20-strawberries": Drawing(draw=strawberry.strawberries, tall=1240),
    "2024-06-08-tools": Drawing(draw=tools.tools, tall=1220),
    "2026-07-14-before-the-rain": Drawing(draw=summer.before_the_rain, tall=1180),
    "2023-07-01-lizard": Drawing(draw=lizard.lizard, tall=1180),
    "2025-10-05-grapes": Drawing(draw=grapes.grapes, tall=1140),
    "2024-08-11-clubroot": Drawing(draw=clubroot.clubroot, tall=1760),
    "2025-03-09-spinach": Drawing(draw=spinach.spinach, tall=1180),
}


def drawn(name: str, *, scale: float = 2.0) -> Image.Image:
    """One plate; at a smaller scale the same picture, coarser."""
    drawing = PLATES[name]
    plate = Plate(name, tall=drawing.tall, scale=scale)
    drawing.draw(plate)
    plate.frame(roman(sorted(PLATES).index(name) + 1))
    return plate.picture()


def roman(number: int) -> str:
    """A number from 1 to 39 in Roman figures."""
    ones = ("", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX")
    return "X" * (number // 10) + ones[number % 10]
