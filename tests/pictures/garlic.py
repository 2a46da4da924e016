"""The plate of the garlic in its plait."""

from __future__ import annotations

import itertools
import math

from pictures.plate import Colour, Plate
from pictures.shapes import arc, part, ring, sides, smooth

STRAW: Colour = (222, 204, 158)
STRAW_DEEP: Colour = (168, 142, 100)
PURPLE: Colour = (146, 92, 132)


def garlic(plate: Plate) -> None:
    """A plait of the nameless purple garlic on its nail, and one head opened into cloves."""
    plate.dots([800 + 150j], 15, strength=1.0)
    plate.line(
        smooth([780 + 250j, 770 + 180j, 800 + 142j, 832 + 180j, 822 + 250j]),
        9,
        colour=(188, 160, 112),
        thin=0.9,
    )
    heads = (
        (662, 480),
        (942, 520),
        (645, 700),
        (950, 750),
        (660, 920),
        (940, 970),
        (700, 1140),
        (910, 1190),
        (804, 1350),
    )
    for x, y in heads:
        _neck(plate, complex(x, y), complex(802, max(300, y - 240)))
    _plait(plate, 802 + 240j, 830)
    for n, (x, y) in enumerate(heads):
        _bulb(plate, complex(x, y), 152 - (n % 3) * 8, turn=(26 if x < 800 else -28) * (y < 1300))
    _open_head(plate)


def _plait(plate: Plate, top: complex, long: float) -> None:
    rows = 11
    for n in range(rows):
        y = long * n / rows
        for side in (1, -1):
            start = top + complex(side * 46, y - 30)
            end = top + complex(-side * 42, y + 78)
            path = smooth([start, (start + end) / 2 + complex(side * 18, -14), end])
            left, right = sides(path, 46, lambda t: 0.7 + 0.3 * math.sin(math.pi * t))
            plate.wash(
                left + right[::-1], STRAW, into=(200, 178, 128), strength=0.92, shade=0.4, dark=STRAW_DEEP
            )
            plate.lines(
                [[a + (b - a) * s for a, b in zip(left, right, strict=True)] for s in (0.25, 0.5, 0.75)],
                1.4,
                colour=(120, 98, 66),
                strength=0.6,
                thin=0.2,
            )
            plate.lines([left, right], 2.2)
    loose = [
        smooth([top + x, top + complex(x * 2.2, -60), top + complex(x * 4.5, -84 + abs(x))])
        for x in (-26, -12, 14, 28)
    ]
    plate.lines(loose, 9, colour=(206, 186, 138), thin=0.1)


def _neck(plate: Plate, bulb: complex, end: complex) -> None:
    """The dry stem of a head, on its way into the plait."""
    left, right = sides(
        arc(bulb, end, bend=0.14 if bulb.real < end.real else -0.14), 54, lambda t: 1 - 0.3 * t
    )
    plate.wash(left + right[::-1], STRAW, into=(206, 186, 140), strength=0.92, shade=0.3, dark=STRAW_DEEP)
    plate.lines(
        [[a + (b - a) * s for a, b in zip(left, right, strict=True)] for s in (0.3, 0.6)], 1.4, strength=0.5
    )
    plate.lines([left, right], 2.2)


def _bulb(plate: Plate, centre: complex, size: float, *, turn: float) -> None:
    random = plate.random
    swing = complex(math.cos(math.radians(turn)), math.sin(math.radians(turn))) * size

    def at(x: float, y: float) -> complex:
        return centre + complex(x, y) * swing

    skin = smooth(
        [
            at(-0.15, -1.05),
            at(-0.42, -0.74),
            at(-0.92, -0.30),
            at(-1.02, 0.22),
            at(-0.72, 0.68),
            at(-0.2, 0.84),
            at(0.2, 0.84),
            at(0.72, 0.68),
            at(1.02, 0.22),
            at(0.92, -0.30),
            at(0.42, -0.74),
            at(0.15, -1.05),
        ],
        closed=True,
    )
    plate.glaze([p + 7 + 9j for p in skin], (120, 104, 90), strength=0.35, soft=9)
    plate.wash(
        skin,
        (248, 240, 230),
        into=(236, 222, 218),
        strength=0.75,
        shade=0.62,
        dark=(156, 130, 138),
        reach=0.16,
    )
    seams = [
        smooth([at(0.10 * x, -0.95), at(0.86 * x, -0.12), at(0.78 * x, 0.36), at(0.16 * x, 0.82)])
        for x in (-0.86, -0.5, -0.12, 0.28, 0.66, 0.95)
    ]
    for a, b in itertools.pairwise(seams):
        plate.glaze(
            [*part(a, 0.05, 0.95), *part(b, 0.05, 0.95)[::-1]],
            PURPLE,
            strength=random.uniform(0.05, 0.26),
            soft=6,
        )
    streaks = []
    for _ in range(34):
        x = random.uniform(-0.95, 0.95)
        whole = smooth([at(0.10 * x, -0.95), at(0.86 * x, -0.12), at(0.78 * x, 0.36), at(0.16 * x, 0.82)])
        start = random.uniform(0.02, 0.6)
        streaks.append(part(whole, start, min(0.98, start + random.uniform(0.15, 0.4))))
    plate.lines(streaks, 3.0, colour=PURPLE, strength=0.5, thin=0.1)
    plate.lines(seams, 1.9, strength=0.6, thin=0.2)
    plate.body(
        ring(at(-0.45, -0.15), size * 0.12, size * 0.26, turn=turn + 20),
        (255, 254, 250),
        strength=0.6,
        soft=size * 0.07,
    )
    beard = [
        arc(
            at(random.uniform(-0.22, 0.22), 0.80),
            at(random.uniform(-0.4, 0.4), random.uniform(0.98, 1.16)),
            bend=random.uniform(-0.2, 0.2),
            steps=6,
        )
        for _ in range(18)
    ]
    plate.lines(beard, 2.2, colour=(150, 122, 88), thin=0.2)
    plate.outline(skin, 2.7)


def _open_head(plate: Plate) -> None:
    plate.glaze(ring(1180 + 1640j, 300, 52), (176, 158, 136), strength=0.45, soft=20)
    for x, y, turn in ((1010, 1580, -52), (1130, 1600, -12), (1255, 1592, 18), (1365, 1610, 58)):
        _clove(plate, complex(x, y), 104, turn)
    plate.glaze(ring(350 + 1640j, 170, 40), (176, 158, 136), strength=0.45, soft=18)
    _clove(plate, 330 + 1590j, 112, -84)
    _clove(plate, 450 + 1560j, 96, 30)


def _clove(plate: Plate, centre: complex, size: float, turn: float) -> None:
    swing = complex(math.cos(math.radians(turn)), math.sin(math.radians(turn))) * size
    skin = smooth(
        [
            centre + swing * p
            for p in (
                0.0 - 1.05j,
                -0.26 - 0.55j,
                -0.44 + 0.05j,
                -0.36 + 0.62j,
                -0.1 + 0.8j,
                0.22 + 0.76j,
                0.38 + 0.3j,
                0.34 - 0.25j,
                0.12 - 0.8j,
            )
        ],
        closed=True,
    )
    plate.wash(
        skin, (240, 222, 214), into=(218, 178, 190), strength=0.85, shade=0.6, dark=(140, 96, 118), reach=0.16
    )
    lines = [
        smooth(
            [
                centre + swing * complex(0, -0.95),
                centre + swing * complex(x, 0.0),
                centre + swing * complex(x * 0.5, 0.74),
            ]
        )
        for x in (-0.26, -0.08, 0.1, 0.24)
    ]
    plate.lines(lines, 2.2, colour=PURPLE, strength=0.6, thin=0.1)
    plate.line(
        arc(centre + swing * (-0.14 + 0.8j), centre + swing * (0.22 + 0.77j), bend=-0.1),
        6,
        colour=(150, 120, 88),
        thin=0.6,
    )
    plate.body(
        ring(centre + swing * (-0.14 - 0.1j), size * 0.07, size * 0.24, turn=turn + 8),
        (255, 252, 248),
        strength=0.6,
        soft=5,
    )
    plate.outline(skin, 2.6)
