"""The plate of the borage nobody sowed, and of its bees."""

from __future__ import annotations

import math

from pictures.leaves import leaf, stalk
from pictures.plate import Colour, Plate
from pictures.shapes import Path, along, arc, egg, ring, sides, smooth

RED: Colour = (196, 52, 44)
BEE: Colour = (222, 164, 62)


def borage(plate: Plate) -> None:
    """Borage that sowed itself at the foot of the bank, and the bees that found it."""
    stem = smooth([660 + 1690j, 710 + 1420j, 670 + 1150j, 740 + 820j, 700 + 580j], steps=18)
    for t, end, width in (
        (0.06, 190 + 1440j, 270),
        (0.14, 1230 + 1560j, 280),
        (0.34, 200 + 1130j, 230),
        (0.46, 1200 + 1240j, 220),
        (0.62, 330 + 880j, 150),
        (0.86, 960 + 560j, 110),
    ):
        foot = along(stem, t)[0]
        leaf(
            plate,
            arc(foot, end, bend=0.12 if end.real < 640 else -0.12, steps=30),
            width,
            colour=(126, 152, 100),
            into=(84, 114, 82),
            profile=egg,
            veins=8,
            vein=(190, 202, 160),
            rib=8,
            wave=7,
        )
    arms = [
        smooth([along(stem, t)[0], *path], steps=16)
        for t, path in (
            (0.62, [960 + 950j, 1180 + 780j, 1300 + 800j]),
            (0.96, [570 + 420j, 440 + 300j, 300 + 330j]),
            (0.98, [820 + 400j, 960 + 270j, 1140 + 270j]),
            (0.80, [480 + 700j, 330 + 640j, 220 + 690j]),
        )
    ]
    stalk(plate, stem, 50, end=26, colour=(150, 158, 118), into=(104, 116, 84))
    _bristles(plate, stem, 24)
    for arm in arms:
        stalk(plate, arm, 22, end=10, colour=(150, 150, 116), into=(116, 110, 92))
        _bristles(plate, arm, 12)
    for arm in arms:
        _buds(plate, arm)
    flowers = (
        (arms[0], 0.55, 70 - 140j, 108),
        (arms[0], 0.88, 70 + 150j, 104),
        (arms[1], 0.62, 20 - 120j, 106),
        (arms[1], 0.95, -40 + 150j, 98),
        (arms[2], 0.58, 60 + 140j, 98),
        (arms[2], 0.92, 100 - 60j, 108),
        (arms[3], 0.80, -10 + 170j, 92),
    )
    for arm, t, offset, size in flowers:
        foot = along(arm, t)[0]
        head = foot + offset
        stalk(plate, arc(foot, head, bend=0.12), 9, end=7, colour=(150, 128, 118), into=(110, 92, 96))
        _star(plate, head, size * 1.32)
    _bee(plate, 1360 + 500j, 1.5, 160)
    _bee(plate, 226 + 236j, 1.25, 12)
    _bee(plate, 560 + 620j, 1.15, -18)


def _bristles(plate: Plate, path: Path, half: float) -> None:
    random = plate.random
    hairs = []
    for _ in range(int(abs(path[-1] - path[0]) / 5)):
        here, way = along(path, random.uniform(0.02, 0.98))
        side = random.choice((-1j, 1j))
        hairs.append(
            arc(here + way * side * half * 0.9, here + way * side * (half + random.uniform(6, 16)), steps=3)
        )
    plate.lines(hairs, 1.5, strength=0.5, thin=0.2)


def _star(plate: Plate, head: complex, size: float) -> None:
    first = plate.random.uniform(0, 72)
    for n in range(5):
        turn = math.radians(first + 36 + n * 72)
        way = complex(math.sin(turn), -math.cos(turn) * 0.94)
        left, right = sides(arc(head, head + way * size * 0.92), size * 0.16, lambda t: 1 - t)
        plate.wash(left + right[::-1], (122, 138, 100), strength=0.95, rim=0.2)
        plate.lines([left, right], 1.5)
    for n in range(5):
        turn = math.radians(first + n * 72)
        way = complex(math.sin(turn), -math.cos(turn) * 0.94)
        left, right = sides(
            arc(head, head + way * size, bend=0.03),
            size * 0.66,
            lambda t: math.sin(math.pi * (0.12 + 0.88 * t) ** 0.85) ** 0.75,
            steps=24,
        )
        plate.wash(
            left + right[::-1],
            (96, 120, 204),
            into=(132, 138, 220),
            strength=0.92,
            rim=0.4,
            dark=(56, 66, 160),
            shade=0.2,
        )
        plate.lines(
            [arc(head + way * size * 0.25, head + way * size * 0.86, bend=b) for b in (-0.08, 0, 0.08)],
            1.3,
            colour=(60, 66, 150),
            strength=0.55,
            thin=0.1,
        )
        plate.lines([left, right], 2.0)
    plate.body(ring(head, size * 0.22), (250, 248, 250), strength=0.95, soft=1)
    plate.outline(ring(head, size * 0.22), 1.4, strength=0.6)
    cone = [
        smooth(
            [
                head + size * complex(math.sin(a) * 0.12, -math.cos(a) * 0.12),
                head + size * 0.03j - 1j * size * 0.02,
            ],
            steps=4,
        )
        for a in (n * math.pi / 4 for n in range(8))
    ]
    plate.lines(cone, 7, colour=(44, 36, 56), strength=1.0, thin=0.5)


def _buds(plate: Plate, arm: Path) -> None:
    _end, way = along(arm, 1.0)
    for n in range(4):
        foot = along(arm, 1 - n * 0.05)[0]
        head = foot + way * (34 - n * 7) + complex((n - 1.5) * 20, 44 + 12 * (n % 2))
        plate.line(arc(foot, head, bend=0.14), 6, colour=(140, 122, 112), thin=0.8)
        left, right = sides(
            arc(head, head + complex((n - 1.5) * 7, 50)),
            28,
            lambda t: math.sin(math.pi * (0.1 + 0.9 * t)) ** 0.7,
        )
        plate.wash(left + right[::-1], (140, 140, 130), into=(150, 118, 150), strength=0.92, shade=0.4)
        plate.lines([left, right], 1.8)
        _bristles(plate, arc(head, head + complex(0, 46)), 11)


def _bee(plate: Plate, at: complex, grow: float, turn: float) -> None:
    """A honey bee from the side, flying."""
    swing = complex(math.cos(math.radians(turn)), math.sin(math.radians(turn))) * grow

    def spot(x: float, y: float) -> complex:
        return at + complex(x, y) * swing

    plate.lines(
        [smooth([spot(x, 16), spot(x + 4, 34), spot(x - 10, 50)], steps=6) for x in (-12, 4, 20)],
        3.4 * grow,
        thin=0.4,
    )
    belly = smooth(
        [
            spot(-4, -18),
            spot(-40, -24),
            spot(-78, -8),
            spot(-92, 10),
            spot(-70, 22),
            spot(-30, 22),
            spot(-4, 16),
        ],
        closed=True,
    )
    plate.wash(belly, BEE, into=(196, 132, 52), strength=0.97, shade=0.4, dark=(110, 66, 30))
    plate.lines(
        [arc(spot(x, -24), spot(x + 2, 23), bend=-0.22) for x in (-22, -38, -54, -70)],
        9 * grow,
        colour=(62, 44, 32),
        thin=0.5,
        within=belly,
    )
    plate.outline(belly, 2.2)
    chest = ring(spot(14, -4), 25 * grow, 22 * grow, turn=turn)
    plate.wash(chest, (150, 112, 66), into=(190, 150, 90), strength=0.97, shade=0.5, dark=(80, 56, 36))
    plate.lines(
        [
            arc(
                spot(14 + 18 * math.cos(a), -4 + 16 * math.sin(a)),
                spot(14 + 28 * math.cos(a), -4 + 26 * math.sin(a)),
                steps=3,
            )
            for a in (n * 0.42 for n in range(15))
        ],
        1.7,
        strength=0.6,
        thin=0.2,
    )
    head = ring(spot(44, 0), 15 * grow, 18 * grow, turn=turn)
    plate.wash(head, (70, 56, 46), strength=0.97)
    plate.outline(head, 2.0)
    plate.body(ring(spot(50, -4), 4 * grow, 7 * grow, turn=turn), (150, 140, 130), strength=0.6, soft=1)
    plate.lines(
        [
            smooth([spot(52, -12), spot(66, -24), spot(80, -18)], steps=6),
            smooth([spot(50, -14), spot(58, -32), spot(72, -34)], steps=6),
        ],
        2.6 * grow,
        thin=0.5,
    )
    for tip, width in ((-66 - 92j, 44), (-96 - 50j, 34)):
        left, right = sides(
            arc(spot(8, -18), spot(tip.real, tip.imag), bend=0.1),
            width * grow,
            lambda t: math.sin(math.pi * (0.05 + 0.9 * t) ** 1.3) ** 0.8,
        )
        wing = left + right[::-1]
        plate.body(wing, (244, 244, 246), strength=0.55)
        plate.glaze(wing, (170, 184, 200), strength=0.3)
        plate.lines(
            [arc(spot(8, -18), along(left, t)[0], bend=0.1) for t in (0.5, 0.7, 0.9)], 1.1, strength=0.5
        )
        plate.lines([left, right], 1.7)
