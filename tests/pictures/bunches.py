"""Plates of leeks laid side by side, and of a bunch of carrots."""

from __future__ import annotations

import math

from pictures.leaves import stalk
from pictures.plate import Colour, Plate
from pictures.shapes import Path, along, arc, part, ring, sides, smooth

STRAW: Colour = (222, 204, 158)
STRAW_DEEP: Colour = (168, 142, 100)
PURPLE: Colour = (146, 92, 132)


def leeks(plate: Plate) -> None:
    """Three leeks as they come out of the ground in late October, washed, laid side by side."""
    for foot, lean, size in (
        (400 + 1660j, -0.06, 0.90),
        (1150 + 1640j, 0.09, 0.86),
        (790 + 1690j, 0.015, 1.03),
    ):
        _leek(plate, foot, lean, size)


def _leek(plate: Plate, foot: complex, lean: float, grow: float) -> None:
    random = plate.random

    def at(x: float, y: float) -> complex:
        return foot + complex(x + lean * y, -y) * grow

    neck = at(0, 760)
    fans = ((-1, 690, 226), (1, 720, 218), (-1, 800, 158), (1, 826, 168), (-1, 890, 92), (1, 910, 84))
    for n, (side, long, out) in enumerate(fans):
        start = at(side * (24 - n * 3), 600 + n * 28)
        tip = neck + complex(side * out * 1.18 + lean * 300, -long * 0.86 + out * 0.62) * grow
        path = smooth(
            [
                start,
                neck + complex(side * out * 0.20, -long * 0.42) * grow,
                neck + complex(side * out * 0.62 + lean * 200, -long * 0.76) * grow,
                tip,
            ],
            steps=14,
        )
        left, right = sides(
            path, 104 * grow, lambda t: min(1.0, 0.30 + t * 1.9) * (1 - t**1.7) ** 0.8, steps=40
        )
        plate.wash(
            left + right[::-1], (112, 146, 118), into=(84, 122, 104), strength=0.9, rim=0.3, dark=(52, 84, 70)
        )
        middle = [(a + b) / 2 for a, b in zip(left, right, strict=True)]
        plate.wash(middle + (right if side > 0 else left)[::-1], (60, 96, 82), strength=0.35, rim=0, lift=0)
        plate.lines(
            [
                [a + (b - a) * s for a, b in zip(left, right, strict=True)]
                for s in (0.15, 0.3, 0.42, 0.6, 0.72, 0.86)
            ],
            1.2,
            colour=(48, 78, 66),
            strength=0.5,
            thin=0.1,
        )
        plate.line(middle, 3.0, colour=(176, 200, 168), strength=0.9, thin=0.2)
        plate.lines([left, right], 2.3)
    shaft = smooth(
        [
            at(-52, 0),
            at(-58, 40),
            at(-50, 120),
            at(-50, 400),
            at(-58, 640),
            at(-40, 790),
            at(0, 840),
            at(40, 790),
            at(58, 640),
            at(50, 400),
            at(50, 120),
            at(58, 40),
            at(52, 0),
            at(0, -14),
        ],
        closed=True,
    )
    plate.wash(
        shaft,
        (248, 246, 232),
        into=(240, 240, 220),
        strength=0.8,
        shade=0.5,
        dark=(150, 156, 128),
        reach=0.05,
    )
    for low, strength in ((420, 0.22), (540, 0.3), (640, 0.42), (730, 0.5)):
        plate.glaze(
            [at(-42, low), at(42, low), at(38, 790), at(0, 820), at(-38, 790)],
            (112, 152, 96),
            strength=strength,
            soft=10,
        )
    plate.lines(
        [
            smooth([at(x, 30), at(x * 0.94, 400), at(x * 1.1, 640), at(x * 0.8, 790)])
            for x in (-40, -28, -14, 2, 16, 30, 42)
        ],
        1.3,
        colour=(110, 124, 92),
        strength=0.55,
        thin=0.1,
    )
    for side in (-1, 1):
        plate.line(smooth([at(side * 56, 610), at(side * 20, 700), at(-side * 4, 800)]), 2.4, strength=0.8)
    plate.outline(shaft, 2.7)
    beard = []
    for _ in range(60):
        start = at(random.uniform(-48, 48), random.uniform(-12, 4))
        beard.append(
            smooth(
                [
                    start,
                    start + complex(random.gauss(0, 18), random.uniform(28, 60)) * grow,
                    start + complex(random.gauss(0, 44), random.uniform(64, 132)) * grow,
                ],
                steps=6,
            )
        )
    plate.lines(beard, 2.6, colour=(172, 150, 112), thin=0.2)
    plate.lines(beard[:24], 1.2, strength=0.5, thin=0.2)


def carrots(plate: Plate) -> None:
    """A bunch of carrots tied with string, the tops as they grew."""
    knot = 800 + 800j
    for n in range(15):
        swing = math.radians(-64 + n * 9.1 + plate.random.uniform(-3, 3))
        long = 640 - abs(n - 7) * 26
        tip = knot + complex(math.sin(swing), -math.cos(swing)) * long
        _fern(plate, arc(knot + (n - 7) * 4, tip, bend=0.10 * math.sin(swing)), 200)
    roots = (
        (430 + 1520j, 74, -0.05),
        (1190 + 1500j, 70, 0.05),
        (610 + 1660j, 84, -0.03),
        (1010 + 1640j, 80, 0.03),
        (800 + 1720j, 92, 0.01),
    )
    for tip, width, bend in roots:
        head = knot + complex((tip.real - 800) * 0.42, 190)
        _carrot(plate, head, tip, width * 1.7, bend)
    stems = [
        arc(knot + x * 0.5, knot + complex(x * 1.9, 190), bend=0.02)
        for x in (-100, -84, -58, -40, -16, 4, 26, 44, 66, 92)
    ]
    for path in stems:
        stalk(plate, path, 17, end=21, colour=(150, 172, 94), into=(96, 126, 66))
    for y in (-16, -2, 12):
        plate.line(
            arc(knot + complex(-62, y), knot + complex(62, y + 5), bend=-0.10),
            9,
            colour=(196, 166, 118),
            thin=0.8,
            strength=1.0,
        )
        plate.line(arc(knot + complex(-62, y + 5), knot + complex(62, y + 10), bend=-0.10), 1.6, strength=0.6)
    for end, bend in ((96 + 110j, 0.2), (150 + 60j, -0.2)):
        plate.line(arc(knot + 58 + 8j, knot + 58 + end, bend=bend), 6, colour=(186, 156, 108), thin=0.7)


def _fern(plate: Plate, spine: Path, size: float) -> None:
    random = plate.random
    greens: tuple[Colour, ...] = ((78, 112, 58), (110, 146, 72), (150, 178, 92))
    fine: list[Path] = []
    for n in range(9):
        t = 0.34 + 0.08 * n
        foot, way = along(spine, t)
        for side in (-1j, 1j):
            out = way * (0.72 + 0.70 * side) * size * (1.06 - 0.62 * (n / 9)) * random.uniform(0.8, 1.1)
            twig = arc(foot, foot + out, bend=0.14 if side == 1j else -0.14, steps=10)
            fine.append(twig)
            for k in range(5):
                knot, ahead = along(twig, 0.30 + 0.15 * k)
                for turn in (-1j, 1j):
                    tip = knot + ahead * (0.75 + 0.66 * turn) * size * 0.26 * (1 - 0.10 * k)
                    fine.append(arc(knot, tip, bend=0.1, steps=4))
                    fine.append(arc((knot + tip) / 2, (knot + tip) / 2 + ahead * size * 0.10, steps=3))
    for n, colour in enumerate(greens):
        random.shuffle(fine)
        plate.lines(fine[: len(fine) * (3 - n) // 3], 4.4, colour=colour, strength=0.85, thin=0.35)
    plate.line(spine, 9, colour=(120, 150, 80), thin=0.3)
    plate.lines(fine[::4], 1.2, strength=0.4, thin=0.1)


def _carrot(plate: Plate, head: complex, tip: complex, width: float, bend: float) -> None:
    random = plate.random
    spine = arc(head, tip, bend=bend, steps=40)
    left, right = sides(
        spine,
        width,
        lambda t: min(1.0, (t + 0.012) * 12) ** 0.5 * (1 - t) ** 0.62 if t < 1 else 0.0,
        steps=60,
    )
    root = left + right[::-1]
    plate.wash(
        root, (236, 132, 46), into=(244, 158, 70), strength=0.96, shade=0.66, dark=(160, 70, 28), reach=0.07
    )
    plate.glaze(
        ring(head + (tip - head) * 0.02, width * 0.42, width * 0.12), (140, 128, 60), strength=0.45, soft=8
    )
    marks = []
    for _ in range(26):
        t = random.uniform(0.04, 0.9)
        a, b = along(left, t)[0], along(right, t)[0]
        start = random.uniform(0.0, 0.62)
        marks.append(
            arc(a + (b - a) * start, a + (b - a) * (start + random.uniform(0.14, 0.4)), bend=-0.10, steps=8)
        )
    plate.lines(marks, 2.0, colour=(150, 70, 26), strength=0.7, thin=0.1)
    shine = [a + (b - a) * 0.27 for a, b in zip(left, right, strict=True)]
    plate.line(part(shine, 0.08, 0.55), width * 0.10, colour=(252, 206, 146), strength=0.55, thin=0.1)
    hairs = []
    for _ in range(12):
        side = random.choice((left, right))
        foot, way = along(side, random.uniform(0.2, 0.96))
        hairs.append(
            arc(
                foot,
                foot + way * (0.4 + (1j if side is right else -1j)) * random.uniform(18, 44),
                bend=0.2,
                steps=5,
            )
        )
    plate.lines(hairs, 1.8, colour=(176, 100, 44), thin=0.1)
    plate.lines([left, right], 2.7, thin=0.4)
