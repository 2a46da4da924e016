"""What stands on the slope in every season: walls, stairs, the house, the glasshouse, the hills behind."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from pictures.plate import Colour, Plate
from pictures.shapes import Path, along, arc, ring, sides, smooth

STONES: tuple[Colour, ...] = (
    (186, 176, 158),
    (168, 160, 148),
    (198, 184, 158),
    (154, 150, 144),
    (180, 164, 140),
)
SHADOW: Colour = (120, 130, 158)
SNOW: Colour = (252, 251, 250)


def wall(
    plate: Plate,
    top: Path,
    height: float,
    *,
    rows: int = 4,
    stone: float = 62,
    strength: float = 0.85,
    ink: float = 1.7,
) -> None:
    """A dry stone wall below a line that runs from left to right: stones in rows, no two alike."""
    random = plate.random
    foot = [p + 1j * height for p in top]
    plate.wash(top + foot[::-1], (96, 88, 82), strength=0.8, rim=0.2)
    long = sum(abs(b - a) for a, b in itertools.pairwise(top))
    for row in range(rows):
        x = -random.uniform(0, stone)
        upper, lower = height * row / rows, height * (row + 1) / rows
        while x < long:
            wide = stone * random.uniform(0.5, 1.5)
            a, b = max(0.0, x) / long, min(long, x + wide) / long
            if b - a > 0.15 * stone / long:
                _stone(plate, top, a, b, upper + 1.5, lower - 1.5, strength, ink)
            x += wide + 2.5


def _stone(
    plate: Plate, top: Path, a: float, b: float, upper: float, lower: float, strength: float, ink: float
) -> None:
    random = plate.random
    left, right = along(top, a)[0], along(top, b)[0]
    wide = abs(right - left)
    tall = lower - upper

    def at(u: float, v: float) -> complex:
        here = left + (right - left) * u
        return (
            here
            + 1j * (upper + tall * v)
            + complex(random.gauss(0, 0.02 * wide), random.gauss(0, 0.05 * tall))
        )

    outline = smooth(
        [
            at(0.04, 0.2),
            at(0.12, 0.03),
            at(0.5, 0.0),
            at(0.88, 0.04),
            at(0.97, 0.25),
            at(0.97, 0.75),
            at(0.88, 0.97),
            at(0.5, 1.0),
            at(0.1, 0.97),
            at(0.03, 0.75),
        ],
        closed=True,
        steps=4,
    )
    colour = random.choice(STONES)
    plate.wash(
        outline,
        colour,
        into=random.choice(STONES),
        strength=strength,
        shade=0.55,
        dark=(92, 84, 84),
        rough=0.3,
        reach=0.16,
    )
    plate.outline(outline, ink, strength=0.7)
    if random.random() < 0.25:
        plate.dots(
            [at(random.uniform(0.2, 0.8), random.uniform(0.2, 0.8)) for _ in range(4)], 1.3, strength=0.5
        )


def hills(plate: Plate, rows: Sequence[tuple[float, Colour, float]]) -> None:
    """Ridges with firs, the farthest first: how far down, in which colour, how strong."""
    for y, colour, strength in rows:
        ridge = smooth(
            [
                complex(x, y + 46 * math.sin(x / 171 + y) + 20 * math.sin(x / 57))
                for x in range(-50, 1700, 60)
            ],
            steps=4,
        )
        plate.wash([*ridge, 1650 + 740j, -50 + 740j], colour, strength=strength, rim=0.1, lift=0.6)
        firs = [p for n, p in enumerate(ridge) if n % 3 == 0]
        plate.lines(
            [arc(p + 6j, p - 1j * plate.random.uniform(8, 20), steps=3) for p in firs],
            5,
            colour=(96, 112, 136),
            strength=0.5,
            thin=0.1,
        )


def house(plate: Plate, at: complex, *, is_winter: bool) -> None:
    """The house at the top of the stairs; in winter with snow on it, smoke, and lights."""
    wide, tall = 250, 170
    front = [at, at + wide, at + wide - 1j * tall, at - 1j * tall]
    plate.wash(
        front,
        (226, 208, 178),
        into=(214, 190, 160),
        strength=0.85,
        shade=0.4,
        dark=(140, 124, 120),
        reach=0.1,
    )
    plate.outline([*front, at], 2.4)
    roof = [
        at + complex(-26, -tall + 8),
        at + complex(wide + 26, -tall + 8),
        at + complex(wide - 24, -tall - 104),
        at + complex(28, -tall - 104),
    ]
    plate.wash(roof, (160, 104, 86), into=(128, 84, 76), strength=0.92, shade=0.4, dark=(96, 62, 60))
    if is_winter:
        plate.body(roof, SNOW, strength=0.95)
        plate.wash(roof, (214, 220, 234), strength=0.4, dark=SHADOW, shade=0.5, lift=0)
    else:
        tiles = [
            arc(roof[3] + (roof[0] - roof[3]) * k / 7, roof[2] + (roof[1] - roof[2]) * k / 7)
            for k in range(1, 7)
        ]
        plate.lines(tiles, 1.5, strength=0.4)
    plate.outline(roof, 2.4)
    chimney = [
        at + complex(170, -tall - 92),
        at + complex(204, -tall - 92),
        at + complex(204, -tall - 160),
        at + complex(170, -tall - 160),
    ]
    plate.wash(chimney, (160, 110, 92), strength=0.8, shade=0.4)
    plate.outline(chimney, 2.0)
    if is_winter:
        _smoke(plate, at + complex(187, -tall - 170))
    for x, y in ((30, -128), (110, -128), (190, -128), (190, -58), (30, -58)):
        pane = [
            at + complex(x, y),
            at + complex(x + 34, y),
            at + complex(x + 34, y + 44),
            at + complex(x, y + 44),
        ]
        lit = is_winter and (x, y) in ((30, -58), (110, -128))
        plate.wash(pane, (250, 196, 92) if lit else (120, 126, 140), strength=0.95, rim=0.3)
        plate.outline(pane, 1.6)
        plate.lines(
            [arc(pane[0] + 17, pane[3] + 17, steps=4), arc(pane[0] + 20j, pane[1] + 20j, steps=4)], 1.4
        )
        if lit:
            plate.body(ring(pane[0] + 17 + 22j, 60, 52), (255, 222, 150), strength=0.28, soft=26)
    door = [at + complex(108, 0), at + complex(150, 0), at + complex(150, -84), at + complex(108, -84)]
    plate.wash(door, (96, 116, 108), strength=0.9, shade=0.3)
    plate.outline(door, 2.0)
    glasshouse(plate, at + complex(wide + 6, 0), is_winter=is_winter)


def _smoke(plate: Plate, top: complex) -> None:
    plate.body(ring(top + 6j, 22, 9), SNOW)
    left, right = sides(
        smooth([top, top + 17 - 50j, top - 11 - 88j, top + 23 - 130j]), 44, lambda t: 0.25 + t
    )
    plate.body(left + right[::-1], (244, 240, 238), strength=0.55, soft=10)


def glasshouse(plate: Plate, at: complex, *, is_winter: bool) -> None:
    """The lean-to against the house."""
    frame = [at, at + 150, at + 150 - 66j, at + complex(0, -128)]
    plate.wash(frame, (196, 212, 208), strength=0.7, rim=0.3)
    if is_winter:
        ledge = [at + complex(0, -128), at + 150 - 66j, at + 150 - 52j, at + complex(0, -108)]
        plate.body(ledge, SNOW, strength=0.95)
    else:
        plants = [at + complex(x, -14 - 30 * plate.random.random()) for x in range(12, 142, 6)]
        plate.dots(plants, 15, colour=(108, 146, 84), strength=0.7)
        plate.dots(plants[::4], 6, colour=(204, 66, 50), strength=0.85)
    bars = [arc(at + x, at + complex(x, -128 + x * 62 / 150), steps=4) for x in (25, 50, 75, 100, 125)]
    plate.lines([*bars, arc(at - 40j, at + 150 - 40j, steps=8)], 1.8)
    plate.outline(frame, 2.2)


def flight(plate: Plate, top: Path, height: float, where: float, n: int, *, is_winter: bool) -> None:
    """Stone steps down through a wall, to the left and to the right by turns."""
    steps = 5 + n // 2
    start = along(top, where)[0]
    wide, go = 64 + n * 10, 13 + n * 2.2
    side = 1 if n % 2 else -1
    for k in range(steps):
        corner = start + complex(side * go * k, height * k / steps - 8)
        tread = [corner, corner + wide, corner + wide + 1j * height / steps, corner + 1j * height / steps]
        plate.wash(tread, (128, 126, 136), into=(150, 140, 136), strength=0.9, rim=0.2)
        face = 1j * height / steps * 0.36
        lit = [corner - 5j, corner + wide - 5j, corner + wide + face, corner + face]
        if is_winter:
            plate.body(lit, SNOW)
        else:
            plate.body(lit, (206, 198, 180), strength=0.9)
        plate.lines(
            [
                arc(tread[3], tread[2], steps=6),
                arc(tread[1], tread[2], steps=3),
                arc(tread[0], tread[3], steps=3),
            ],
            1.5,
            strength=0.7,
        )
