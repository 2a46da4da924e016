"""The plate of the disease: a cabbage pulled up, and the fists it stood on."""

from __future__ import annotations

import math

from pictures.plate import Colour, Plate
from pictures.shapes import Path, along, arc, hand, ring, sides, smooth

LEAF: Colour = (140, 164, 138)
LEAF_DEEP: Colour = (92, 122, 108)
ROOT: Colour = (214, 190, 150)
ROOT_DEEP: Colour = (134, 100, 70)


def clubroot(plate: Plate) -> None:
    """One of the seven, with the earth shaken off."""
    ground = 900j
    plate.line(smooth([90 + ground, 420 + ground - 12j, 640 + ground + 6j]), 2.2, strength=0.5)
    plate.line(smooth([960 + ground, 1220 + ground - 8j, 1510 + ground + 4j]), 2.2, strength=0.5)
    heart = 800 + 600j
    for swing, long, wide, hang in (
        (-96, 560, 330, 150),
        (97, 560, 330, 170),
        (-64, 520, 340, 40),
        (62, 530, 340, 60),
        (-30, 500, 330, 0),
        (28, 490, 330, 0),
        (-112, 440, 260, 190),
        (112, 450, 260, 200),
    ):
        _leaf(plate, heart, swing, long, wide, hang)
    _head(plate, heart + 20j, 215)
    _stump(plate)
    _roots(plate)


def _leaf(plate: Plate, heart: complex, swing: float, long: float, wide: float, hang: float) -> None:
    turn = math.radians(swing)
    way = complex(math.sin(turn), -math.cos(turn))
    spine = smooth([heart + 150j, heart + 60j + way * long * 0.45, heart + way * long + hang * 1j], steps=24)
    left, right = sides(
        spine, wide, lambda t: math.sin(math.pi * (0.02 + 0.97 * t) ** 1.35) ** 0.62, steps=60
    )
    left, right = (hand(side, plate.random, 11, wave=4) for side in (left, right))
    pale = 1 if abs(swing) < 90 else 0
    plate.wash(
        left + right[::-1],
        LEAF if pale else (176, 172, 120),
        into=LEAF_DEEP if pale else LEAF,
        strength=0.9,
        rim=0.35,
        dark=(70, 98, 88),
    )
    middle = [along(spine, n / 60)[0] for n in range(61)]
    plate.wash(middle + (right if swing > 0 else left)[::-1], LEAF_DEEP, strength=0.35, rim=0, lift=0)
    veins = []
    for n in range(7):
        foot = along(spine, 0.18 + n * 0.105)[0]
        for side in (left, right):
            tip = along(side, min(0.95, 0.36 + n * 0.10))[0]
            veins.append(arc(foot, foot + (tip - foot) * 0.88, bend=0.10 if side is left else -0.10))
            veins.append(
                arc(
                    foot + (tip - foot) * 0.5,
                    along(side, min(0.97, 0.46 + n * 0.10))[0] * 0.4 + (foot + (tip - foot) * 0.5) * 0.6,
                    bend=0.05,
                )
            )
    plate.lines(veins, 4.2, colour=(222, 228, 206), strength=0.85, thin=0.15)
    plate.line(middle, 15, colour=(228, 232, 212), strength=0.95, thin=0.15)
    plate.lines([left, right], 2.4, thin=0.4)


def _head(plate: Plate, centre: complex, size: float) -> None:
    ball = smooth(
        [
            centre + size * complex(1.04 * math.cos(a), 0.94 * math.sin(a))
            for a in (n * math.pi / 5 for n in range(10))
        ],
        closed=True,
    )
    plate.wash(ball, (190, 204, 158), into=(160, 184, 146), strength=0.95, shade=0.55, dark=(82, 112, 90))
    for start, end, bulge in (
        (-0.9 - 0.4j, 0.5 + 0.86j, -0.30),
        (0.95 - 0.3j, -0.3 + 0.9j, 0.26),
        (-0.5 - 0.84j, 0.92 + 0.3j, -0.26),
    ):
        wrap = arc(centre + start * size, centre + end * size, bend=bulge, steps=40)
        edge = hand(wrap, plate.random, 5, wave=4)
        plate.glaze([*edge, *[p + complex(14, 20) for p in edge[::-1]]], (84, 112, 86), strength=0.5, soft=6)
        plate.line(edge, 3.0, strength=0.85)
    rib = arc(centre + complex(-0.1, 0.92) * size, centre + complex(0.05, -0.5) * size, bend=0.06)
    veins = []
    for n in range(6):
        foot = along(rib, 0.15 + n * 0.13)[0]
        for x in (-1, 1):
            veins.append(arc(foot, foot + complex(x * (0.66 - 0.06 * n), -0.34) * size, bend=0.12 * x))
    plate.lines(veins, 3.4, colour=(232, 236, 214), strength=0.8, thin=0.1, within=ball)
    plate.line(rib, 11, colour=(234, 238, 218), strength=0.95, thin=0.2)
    plate.body(
        ring(centre + complex(-0.4, -0.44) * size, size * 0.2, size * 0.12, turn=-36),
        (248, 250, 236),
        strength=0.5,
        soft=size * 0.08,
    )
    plate.outline(ball, 2.6)


def _stump(plate: Plate) -> None:
    left, right = sides(smooth([800 + 780j, 806 + 880j, 798 + 1010j]), 92, lambda t: 1 + 0.3 * t)
    plate.wash(
        left + right[::-1], (186, 186, 140), into=(170, 156, 116), strength=0.95, shade=0.5, dark=ROOT_DEEP
    )
    scars = [ring(complex(776 + 24 * (n % 3), 826 + 34 * n), 17, 8) for n in range(4)]
    for scar in scars:
        plate.outline(scar, 1.8, strength=0.7)
    plate.lines([left, right], 2.4)


def _roots(plate: Plate) -> None:
    """Where fine roots should be: fists, spindles and knuckles."""
    random = plate.random
    clubs: tuple[tuple[list[complex], float], ...] = (
        ([790 + 1000j, 700 + 1120j, 560 + 1220j, 400 + 1250j], 120),
        ([820 + 1000j, 930 + 1120j, 1080 + 1200j, 1230 + 1210j], 116),
        ([780 + 1010j, 720 + 1200j, 640 + 1400j, 520 + 1520j], 150),
        ([826 + 1010j, 900 + 1220j, 1010 + 1390j, 1120 + 1480j], 142),
        ([800 + 1000j, 806 + 1200j, 780 + 1430j, 826 + 1620j], 190),
    )
    hairs: list[Path] = []
    for points, _ in clubs:
        spine = smooth(points, steps=18)
        for _ in range(9):
            foot, way = along(spine, random.uniform(0.3, 1.0))
            turn = random.choice((-1j, 1j))
            hairs.append(arc(foot, foot + way * (0.6 + turn) * random.uniform(50, 120), bend=0.15, steps=8))
    plate.lines(hairs, 3.2, colour=(176, 148, 110), thin=0.1)
    for points, wide in clubs:
        _club(plate, smooth(points, steps=18), wide)
    _fist(plate, 800 + 1090j, 142)


def _club(plate: Plate, spine: Path, wide: float) -> None:
    phase = plate.random.uniform(0, 6)

    def swollen(t: float) -> float:
        return (0.42 + 0.62 * math.sin(math.pi * t**0.8) + 0.16 * math.sin(t * 15 + phase)) * math.pow(
            max(0.0, 1.0 - t), 0.22
        )

    left, right = sides(spine, wide, swollen, steps=60)
    club = left + right[::-1]
    plate.wash(
        club, ROOT, into=(196, 164, 120), strength=0.96, shade=0.68, dark=ROOT_DEEP, reach=0.12, rough=2.5
    )
    rings = []
    for n in range(16):
        t = 0.06 + n * 0.058
        a, b = along(left, t)[0], along(right, t)[0]
        start = plate.random.uniform(0, 0.4)
        rings.append(
            arc(a + (b - a) * start, a + (b - a) * min(1, start + plate.random.uniform(0.3, 0.6)), bend=-0.16)
        )
    plate.lines(rings, 1.8, colour=ROOT_DEEP, strength=0.6, thin=0.1, within=club)
    spots = [
        along(spine, plate.random.uniform(0.1, 0.9))[0]
        + complex(plate.random.gauss(0, 0.14), plate.random.gauss(0, 0.14)) * wide
        for _ in range(26)
    ]
    plate.dots(spots, 3.4, colour=(122, 90, 62), strength=0.5)
    plate.lines([left, right], 2.7, thin=0.4)


def _fist(plate: Plate, centre: complex, size: float) -> None:
    knuckles = (
        (-0.72 - 0.1j, 0.56),
        (0.70 - 0.06j, 0.58),
        (-0.36 + 0.42j, 0.62),
        (0.40 + 0.46j, 0.60),
        (0.0 - 0.22j, 0.66),
    )
    for offset, share in knuckles:
        spot = centre + offset * size
        lump = smooth(
            [
                spot
                + size * share * complex(math.cos(a), 0.92 * math.sin(a)) * plate.random.uniform(0.9, 1.08)
                for a in (n * math.pi / 4 for n in range(8))
            ],
            closed=True,
        )
        plate.wash(lump, ROOT, into=(200, 168, 124), strength=0.96, shade=0.68, dark=ROOT_DEEP, reach=0.2)
        wrinkles = [
            arc(
                spot + size * share * complex(-0.6, y), spot + size * share * complex(0.5, y + 0.1), bend=-0.2
            )
            for y in (-0.4, -0.1, 0.25, 0.5)
        ]
        plate.lines(wrinkles, 1.6, colour=ROOT_DEEP, strength=0.5, thin=0.1, within=lump)
        plate.outline(lump, 2.5)
