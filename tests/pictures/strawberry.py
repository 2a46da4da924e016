"""The plate of the strawberries on the Low wall."""

from __future__ import annotations

import math

from pictures.buildings import wall
from pictures.leaves import pinnate, stalk
from pictures.plate import Colour, Plate
from pictures.shapes import arc, ring, sides, smooth

ORANGE: Colour = (226, 116, 48)
VINE: Colour = (140, 160, 88)
VINE_DEEP: Colour = (86, 112, 60)


def strawberries(plate: Plate) -> None:
    """Strawberries hanging over the Low wall in June."""
    top = smooth([-20 + 590j, 400 + 604j, 800 + 586j, 1200 + 602j, 1620 + 590j])
    wall(plate, top, 760, rows=6, stone=150, strength=0.55)
    plate.wash([*[p - 30j for p in top], *[p + 8j for p in top[::-1]]], (128, 100, 74), strength=0.9, rim=0.2)
    crown = 800 + 570j
    for end, bend in (
        (300 + 350j, -0.1),
        (490 + 250j, -0.06),
        (820 + 250j, 0.03),
        (1120 + 260j, 0.06),
        (1320 + 350j, 0.1),
        (1240 + 480j, 0.14),
        (350 + 500j, -0.14),
    ):
        pinnate(
            plate,
            arc(crown + complex((end.real - 800) * 0.06, 0), end, bend=bend),
            178,
            pairs=1,
            width=0.86,
            colours=((112, 148, 78), (134, 164, 86), (98, 134, 72)),
            into=(66, 102, 56),
            teeth=7,
            bite=0.34,
            vein=(184, 200, 136),
            wave=2,
        )
    strings = (
        (330 + 900j, 1),
        (520 + 1010j, 1),
        (690 + 860j, 0.9),
        (860 + 1060j, 1.1),
        (1030 + 880j, 0.9),
        (1220 + 960j, 1.05),
        (1390 + 830j, 0.7),
    )
    for n, (spot, grow) in enumerate(strings):
        path = smooth(
            [
                crown + complex((spot.real - 800) * 0.10, 0),
                complex(spot.real * 0.9 + 80, 560),
                complex(spot.real, 650),
                spot - 60j * grow,
            ],
            steps=12,
        )
        stalk(plate, path, 11, end=8, colour=(150, 164, 92), into=(110, 124, 68))
        _strawberry(plate, spot, 92 * grow, ripe=n not in (2, 6))
    for spot, size in ((640 + 500j, 78), (980 + 470j, 84), (1150 + 640j, 70)):
        plate.line(arc(crown, spot, bend=0.1), 7, colour=(140, 158, 88), thin=0.8)
        _strawberry_flower(plate, spot, size)
    leafy = arc(crown - 40, 640 + 660j, bend=0.12)
    pinnate(
        plate,
        leafy,
        120,
        pairs=1,
        width=0.86,
        colours=((124, 156, 82),),
        into=(66, 102, 56),
        teeth=7,
        bite=0.34,
        vein=(184, 200, 136),
        wave=2,
    )


def _strawberry(plate: Plate, top: complex, size: float, *, ripe: bool) -> None:
    random = plate.random
    lean = random.uniform(-0.12, 0.12)

    def at(x: float, y: float) -> complex:
        return top + complex(x + lean * y, y) * size

    skin = smooth(
        [
            at(0, -0.72),
            at(0.52, -0.70),
            at(0.88, -0.34),
            at(0.80, 0.28),
            at(0.42, 0.92),
            at(0.0, 1.22),
            at(-0.42, 0.92),
            at(-0.80, 0.28),
            at(-0.88, -0.34),
            at(-0.52, -0.70),
        ],
        closed=True,
    )
    plate.glaze([p + 16 + 14j for p in skin], (70, 60, 60), strength=0.45, soft=10)
    if ripe:
        plate.wash(
            skin, (206, 38, 44), into=(224, 64, 52), strength=0.98, shade=0.65, dark=(112, 12, 28), reach=0.18
        )
    else:
        plate.wash(
            skin,
            (236, 226, 180),
            into=(226, 150, 120),
            strength=0.95,
            shade=0.55,
            dark=(150, 110, 80),
            reach=0.18,
        )
    seeds = []
    for row in range(8):
        y = -0.5 + row * 0.21
        half = 0.78 * math.cos(min(1.45, max(0.0, (y + 0.3) * 0.98))) + 0.05
        for n in range(max(1, round(half * 7))):
            x = (n + 0.5 * (row % 2) + 0.25) / max(1, round(half * 7)) * 2 * half - half
            seeds.append(at(x * 0.94, y))
    plate.dots(
        [p + 2 + 2.4j for p in seeds], 5.4, colour=(110, 16, 26) if ripe else (160, 120, 90), strength=0.55
    )
    left = [arc(p - 4.2j, p + 4.2j, steps=4) for p in seeds]
    plate.lines(left, 5.6, colour=(248, 214, 116), strength=0.95, thin=0.4)
    plate.body(
        ring(at(-0.36, -0.22), size * 0.12, size * 0.24, turn=26),
        (255, 244, 240),
        strength=0.5,
        soft=size * 0.07,
    )
    plate.outline(skin, 2.7)
    for swing in (-112, -74, -36, 0, 36, 74, 112):
        turn = math.radians(swing + random.uniform(-8, 8))
        tip = at(0, -0.70) + complex(math.sin(turn) * 0.74, math.cos(turn) * 0.36 - 0.10) * size
        a, b = sides(
            arc(at(0, -0.70), tip, bend=0.12),
            size * 0.26,
            lambda t: math.sin(math.pi * (0.1 + 0.9 * t)) ** 0.7,
        )
        plate.wash(a + b[::-1], (118, 152, 76), into=(84, 118, 56), strength=0.96, rim=0.25)
        plate.lines([a, b], 1.8)


def _strawberry_flower(plate: Plate, at: complex, size: float) -> None:
    first = plate.random.uniform(0, 72)
    for n in range(5):
        turn = math.radians(first + 72 * n)
        heart = ring(
            at + complex(math.sin(turn), -math.cos(turn)) * size * 0.56,
            size * 0.46,
            size * 0.50,
            turn=first + 72 * n,
        )
        plate.wash(
            heart,
            (254, 252, 246),
            into=(240, 238, 236),
            strength=0.6,
            rim=0.3,
            dark=(170, 168, 170),
            shade=0.25,
        )
        plate.outline(heart, 2.0)
    plate.wash(
        ring(at, size * 0.30),
        (238, 196, 70),
        into=(220, 170, 60),
        strength=0.97,
        shade=0.4,
        dark=(150, 110, 40),
    )
    plate.dots(
        [at + plate.random.uniform(0.1, 0.36) * size * complex(math.cos(a), math.sin(a)) for a in range(26)],
        3.4,
        colour=(180, 130, 40),
        strength=0.9,
    )
    plate.outline(ring(at, size * 0.30), 1.6)
