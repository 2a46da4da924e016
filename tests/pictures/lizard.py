"""The plate of the lizard on the warm wall, under the thyme."""

from __future__ import annotations

import math

from pictures.buildings import wall
from pictures.plate import Plate
from pictures.shapes import Path, Profile, along, arc, ring, sides, smooth


def lizard(plate: Plate) -> None:
    """The first lizard seen here, on the third wall in July, with the thyme in flower above it."""
    top = smooth([-20 + 420j, 400 + 436j, 800 + 416j, 1200 + 432j, 1620 + 420j])
    wall(plate, top, 800, rows=5, stone=230, strength=0.62, ink=2.2)
    plate.glaze([0 + 420j, 1600 + 420j, 1600 + 1160j, 0 + 1160j], (244, 206, 140), strength=0.22)
    cushion = smooth([complex(x, 424 - 62 * abs(math.sin(x / 150))) for x in range(-20, 1700, 60)], steps=4)
    plate.wash(
        [*cushion, 1640 + 446j, -20 + 446j],
        (104, 112, 82),
        into=(84, 92, 66),
        strength=0.85,
        rim=0.1,
        rough=5,
    )
    for n in range(3):
        _thyme(plate, complex(300 + 460 * n, 430), 1.0 + 0.12 * (n % 2))
    _legs(plate)
    back = [
        380 + 640j,
        300 + 640j,
        250 + 740j,
        330 + 860j,
        470 + 890j,
        600 + 830j,
        720 + 775j,
        850 + 725j,
        980 + 675j,
        1080 + 605j,
        1150 + 560j,
    ]
    _skin(plate, smooth(back, steps=14), 118, _girth)
    _lizard_head(plate, 1144 + 566j)


def _girth(t: float) -> float:
    """How wide the lizard is, from the tip of its tail to its neck."""
    if t < 0.5:
        return 0.06 + 0.56 * math.pow(t / 0.5, 1.2)
    if t < 0.76:
        return 0.62 + 0.40 * math.sin(math.pi / 2 * (t - 0.5) / 0.26)
    return 1.02 - 0.34 * math.pow((t - 0.76) / 0.24, 1.4)


def _skin(plate: Plate, spine: Path, width: float, profile: Profile) -> None:
    random = plate.random
    left, right = sides(spine, width, profile, steps=50)
    skin = left + right[::-1]
    plate.glaze([p + 14 + 20j for p in skin], (70, 60, 56), strength=0.55, soft=11)
    plate.wash(
        skin, (158, 146, 96), into=(128, 134, 88), strength=0.96, shade=0.5, dark=(76, 66, 46), reach=0.06
    )
    scales = []
    for _ in range(620):
        here, way = along(spine, random.uniform(0.02, 0.98))
        here += way * 1j * random.uniform(-0.5, 0.5) * width * 0.9
        scales.append(arc(here - way * 5, here + way * 5, bend=0.5, steps=5))
    plate.lines(scales, 1.6, strength=0.45, within=skin)
    back = [along(spine, 0.1 + 0.88 * n / 40)[0] for n in range(41)]
    plate.dots(back, 8.5, colour=(72, 58, 42), strength=0.8)
    for share in (0.2, 0.8):
        plate.dots(
            [a + (b - a) * share for a, b in zip(left[8::2], right[8::2], strict=True)],
            6,
            colour=(66, 52, 38),
            strength=0.75,
        )
    plate.lines(
        [[a + (b - a) * s for a, b in zip(left, right, strict=True)] for s in (0.3, 0.7)],
        3.4,
        colour=(224, 214, 156),
        strength=0.7,
        thin=0.2,
    )
    plate.lines([left, right], 2.6, thin=0.4)


def _legs(plate: Plate) -> None:
    for points in (
        [640 + 790j, 600 + 700j, 680 + 640j],
        [690 + 780j, 730 + 880j, 660 + 940j],
        [960 + 680j, 900 + 590j, 980 + 540j],
        [1010 + 660j, 1080 + 730j, 1040 + 800j],
    ):
        leg = smooth(points, steps=10)
        foot, way = along(leg, 1.0)
        toes = [
            arc(foot, foot + way * complex(math.cos(a), math.sin(a)) * 46, bend=0.1, steps=6)
            for a in (-1.0, -0.5, 0.0, 0.5, 0.9)
        ]
        plate.lines([[p + 8 + 12j for p in toe] for toe in toes], 10, colour=(90, 80, 74), strength=0.4)
        plate.lines(toes, 10, colour=(138, 128, 86), strength=1.0, thin=0.3)
        left, right = sides(leg, 42, lambda t: 1 - 0.5 * t)
        plate.glaze([p + 10 + 14j for p in left + right[::-1]], (70, 60, 56), strength=0.4, soft=8)
        plate.wash(
            left + right[::-1],
            (150, 138, 92),
            into=(124, 126, 84),
            strength=0.96,
            shade=0.4,
            dark=(80, 70, 48),
        )
        plate.lines([left, right], 2.2)


def _lizard_head(plate: Plate, neck: complex) -> None:
    way = complex(0.86, -0.50)

    def at(x: float, y: float) -> complex:
        return neck + way * complex(x, y)

    head = smooth(
        [
            at(-30, -40),
            at(30, -50),
            at(84, -36),
            at(132, -8),
            at(138, 8),
            at(90, 36),
            at(30, 46),
            at(-30, 40),
        ],
        closed=True,
    )
    plate.glaze([p + 12 + 18j for p in head], (70, 60, 56), strength=0.5, soft=10)
    plate.wash(head, (160, 148, 98), into=(132, 136, 92), strength=0.98, shade=0.5, dark=(76, 66, 46))
    plate.lines(
        [
            arc(at(10, -34), at(66, -20), bend=0.1),
            arc(at(10, 30), at(70, 18), bend=-0.1),
            arc(at(44, -40), at(44, 38), bend=0.1),
            arc(at(80, -30), at(84, 28), bend=0.1),
            arc(at(6, -44), at(4, 42), bend=0.1),
        ],
        1.7,
        strength=0.6,
    )
    plate.line(smooth([at(30, 40), at(90, 26), at(134, 6)]), 2.4, strength=0.8)
    plate.outline(head, 2.7)
    for side in (-27, 25):
        eye = ring(at(62, side), 13, 11)
        plate.wash(eye, (206, 150, 70), strength=1.0)
        plate.dots([at(63, side)], 8.5, strength=1.0)
        plate.body(ring(at(60, side) - 2 - 2j, 2.6), (255, 255, 250), strength=1.0)
        plate.outline(eye, 2.2)


def _thyme(plate: Plate, foot: complex, grow: float) -> None:
    random = plate.random
    sprigs = []
    for n in range(26):
        swing = math.radians(-84 + n * 6.7 + random.uniform(-6, 6))
        long = random.uniform(170, 290) * grow
        tip = foot + complex(
            math.sin(swing) * long, -math.cos(swing) * long * 0.9 + 46 * abs(math.sin(swing)) ** 3
        )
        sprigs.append(arc(foot + (n - 13) * 7, tip, bend=0.12 * math.sin(swing), steps=20))
    for sprig in sprigs:
        plate.line(sprig, 4.4, colour=(134, 104, 82), thin=0.4)
        for k in range(9):
            knot, way = along(sprig, 0.16 + 0.085 * k)
            for side in (-1j, 1j):
                tip = knot + way * (0.5 + 0.85 * side) * random.uniform(18, 26) * grow
                left, right = sides(
                    arc(knot, tip, steps=6), 12 * grow, lambda t: math.sin(math.pi * t**0.8) ** 0.8, steps=8
                )
                plate.wash(
                    left + right[::-1],
                    random.choice([(112, 136, 92), (136, 154, 104), (92, 118, 80)]),
                    strength=0.95,
                    rim=0.1,
                    rough=0.2,
                )
                plate.lines([left, right], 1.1, strength=0.6)
        tip, way = along(sprig, 1.0)
        for k in range(9):
            spot = tip - way * (k // 3) * 15 * grow + way * 1j * ((k % 3) - 1) * 12 * grow
            petals = ring(spot, random.uniform(6.5, 9) * grow)
            plate.wash(
                petals,
                random.choice([(190, 140, 190), (206, 160, 200), (168, 118, 176)]),
                strength=0.95,
                rim=0.4,
            )
            plate.outline(petals, 1.1, strength=0.6)
