"""The plate of the terraces in July, with thunder behind the hill."""

from __future__ import annotations

import itertools
import math

from pictures.buildings import flight, hills, house, wall
from pictures.plate import Plate
from pictures.shapes import Path, along, arc, ring, sides, smooth


def before_the_rain(plate: Plate) -> None:
    """The terraces on a July evening, a thunderhead behind the hill and not a drop yet."""
    plate.glaze([0j, 1600 + 0j, 1600 + 760j, 0 + 760j], (226, 212, 190), strength=0.9)
    plate.glaze(ring(420 + 520j, 900, 150), (246, 196, 128), strength=0.6, soft=90)
    _thunderhead(plate)
    hills(plate, ((430, (148, 156, 168), 0.75), (490, (120, 140, 124), 0.8)))
    slope = smooth([0 + 590j, 300 + 530j, 700 + 480j, 1100 + 425j, 1600 + 400j])
    plate.wash([*slope, 1600 + 1250j, 0 + 1250j], (142, 164, 98), into=(122, 146, 90), strength=0.9, rim=0.1)
    house(plate, 1110 + 448j, is_winter=False)
    for x, y, size in ((330, 560, 120), (480, 530, 92)):
        _round_tree(plate, complex(x, y), size)
    for n, y in enumerate((520, 640, 775, 925, 1095)):
        _green_terrace(plate, n, y)
    plate.glaze([0j, 1600 + 0j, 1600 + 330j, 0 + 260j], (96, 104, 132), strength=0.16, soft=80)


def _thunderhead(plate: Plate) -> None:
    """Heap upon heap, white where the low sun still reaches, slate below."""
    random = plate.random
    for layer, (low, size) in enumerate(((250, 92), (320, 98), (400, 104))):
        for n in range(15):
            rise = (170 - 60 * layer) * math.sin(math.pi * (n + 0.5) / 15)
            spot = complex(520 + 78 * n + random.uniform(-34, 34), low - rise + random.uniform(-24, 24))
            _puff(plate, spot, size * random.uniform(0.7, 1.15))
    plate.glaze(ring(1120 + 440j, 660, 110), (72, 80, 112), strength=0.72, soft=56)
    plate.glaze(ring(1180 + 350j, 520, 90), (96, 100, 132), strength=0.5, soft=60)
    fall = [arc(complex(x, 440), complex(x - 70, 560), steps=6) for x in range(760, 1120, 17)]
    plate.lines(fall, 3.0, colour=(112, 118, 142), strength=0.35, thin=0.3)
    bolt = [900 + 350j, 882 + 400j, 908 + 404j, 876 + 452j, 898 + 456j, 862 + 520j]
    for start, end in itertools.pairwise(bolt):
        plate.line(
            [start, (start + end) / 2, end], 4.6, colour=(255, 246, 214), strength=0.95, thin=0.9, shake=0
        )


def _puff(plate: Plate, spot: complex, size: float) -> None:
    edge = [
        spot + size * complex(math.cos(a), 0.84 * math.sin(a)) * plate.random.uniform(0.88, 1.12)
        for a in (k * math.pi / 4 for k in range(8))
    ]
    puff = smooth(edge, closed=True)
    plate.body(puff, (228, 222, 220), strength=0.94, soft=size * 0.07)
    plate.glaze(
        [p + complex(size * 0.16, size * 0.20) for p in puff],
        (138, 140, 164),
        strength=0.42,
        soft=size * 0.18,
    )
    plate.body(
        ring(spot + complex(-size * 0.34, -size * 0.36), size * 0.36, size * 0.26),
        (250, 240, 226),
        strength=0.6,
        soft=size * 0.16,
    )


def _foliage(plate: Plate, centre: complex, size: float, *, leaf: float, flat: float = 0.8) -> None:
    """A crown or a bush of many small leaves, dark inside, light where the sun is."""
    random = plate.random
    for colour, share, many in (
        ((62, 92, 58), 0.0, 1.5),
        ((88, 124, 70), 0.10, 1.2),
        ((122, 156, 84), 0.22, 0.8),
        ((164, 186, 108), 0.34, 0.35),
    ):
        spots = []
        for _ in range(round(many * 3.4 * (size / leaf) ** 2 / 4)):
            a, r = random.uniform(0, 2 * math.pi), size * (1 - share * 0.9) * math.sqrt(random.random())
            spots.append(
                centre
                + complex(-share * 0.8, -share) * size * 0.7
                + complex(math.cos(a), flat * math.sin(a)) * r
            )
        plate.dots(spots, leaf, colour=colour, strength=0.92)


def _round_tree(plate: Plate, foot: complex, size: float) -> None:
    random = plate.random
    plate.line(arc(foot, foot - 1j * size, bend=0.03), size * 0.16, colour=(104, 84, 68), thin=0.8)
    boughs = [
        arc(foot - 1j * size * 0.6, foot - 1j * size * 1.5 + x * size, bend=0.1) for x in (-0.5, -0.1, 0.4)
    ]
    plate.lines(boughs, size * 0.08, colour=(104, 84, 68), thin=0.4)
    for x, y in ((-0.5, -1.2), (0.5, -1.25), (0.0, -1.1), (-0.3, -1.65), (0.34, -1.7), (0.0, -1.95)):
        _foliage(
            plate, foot + complex(x + random.uniform(-0.06, 0.06), y) * size, size * 0.44, leaf=size * 0.040
        )


def _green_terrace(plate: Plate, n: int, y: float) -> None:
    random = plate.random
    drop = 30 - n * 4
    top = smooth(
        [
            complex(x, y + drop * math.cos(x / 1600 * 2.2 + n) + random.uniform(-5, 5))
            for x in range(-20, 1621, 164)
        ],
        steps=6,
    )
    height = 52 + n * 9
    back = [p - 1j * (40 + n * 6) for p in top]
    plate.wash([*back, *top[::-1]], (150, 120, 90), into=(126, 100, 78), strength=0.9, rim=0.1)
    _crop_rows(plate, top, n)
    wall(plate, top, height, rows=3 if n < 2 else 4, stone=40 + n * 7, strength=0.72, ink=1.5)
    foot = [p + 1j * height for p in top]
    plate.lines(
        [
            arc(p, p + complex(random.gauss(0, 5), -random.uniform(8, 20)), steps=3)
            for p in foot
            for _ in range(3)
        ],
        4,
        colour=(112, 142, 76),
        strength=0.85,
        thin=0.1,
    )
    flight(plate, top, height, 0.62 - 0.13 * (n % 2) + 0.015 * n, n, is_winter=False)


def _crop_rows(plate: Plate, top: Path, n: int) -> None:
    random = plate.random
    kinds = (
        ("leafy", "tall"),
        ("beans", "leafy"),
        ("tall", "leafy"),
        ("leafy", "beans"),
        ("squash", "squash"),
    )[n]
    for k in range(34):
        t = 0.02 + k / 35 + random.uniform(-0.006, 0.006)
        if 0.47 < t < 0.60 or (n == 0 and 0.6 < t < 0.68):
            continue
        foot = along(top, t)[0] - 1j * random.uniform(4, 22)
        kind = kinds[t > 0.5]
        grow = 1 + n * 0.22
        if kind == "beans":
            if k % 2:
                continue
            pole = arc(foot, foot + complex(random.uniform(-8, 8), -96 * grow), steps=8)
            plate.line(pole, 3.4, colour=(120, 92, 66), thin=0.7)
            spots = [
                along(pole, random.uniform(0.05, 0.95))[0] + random.uniform(-15, 15) * grow for _ in range(22)
            ]
            plate.dots(spots, 7 * grow, colour=random.choice([(94, 134, 70), (114, 152, 80)]), strength=0.9)
            plate.dots(spots[:6], 3.6 * grow, colour=(214, 66, 50), strength=0.95)
        elif kind == "tall":
            plate.lines(
                [
                    arc(
                        foot,
                        foot + complex(random.gauss(0, 16), -random.uniform(40, 58)) * grow,
                        bend=random.uniform(-0.2, 0.2),
                        steps=6,
                    )
                    for _ in range(6)
                ],
                5.5 * grow,
                colour=random.choice([(108, 142, 108), (126, 156, 100)]),
                strength=0.95,
                thin=0.1,
            )
        elif kind == "leafy":
            _lettuce(plate, foot, 25 * grow)
        else:
            _foliage(plate, foot - 26j, 46, leaf=9, flat=0.55)
            if k % 5 == 0:
                plate.dots([foot - complex(10, 30)], 13, colour=(232, 166, 52), strength=1.0)


def _lettuce(plate: Plate, foot: complex, size: float) -> None:
    random = plate.random
    colour = random.choice([(120, 154, 84), (150, 176, 98), (94, 130, 86), (136, 96, 92)])
    for swing in (-78, 78, -52, 50, -26, 24, 0):
        turn = math.radians(swing + random.uniform(-6, 6))
        tip = foot + complex(math.sin(turn) * 1.05, -math.cos(turn) * 1.0 - 0.1) * size
        left, right = sides(
            arc(foot, tip, bend=0.1 * math.sin(turn), steps=8),
            size * 0.62,
            lambda t: math.sin(math.pi * (0.06 + 0.94 * t) ** 1.3) ** 0.7,
            steps=12,
        )
        plate.wash(
            left + right[::-1],
            colour,
            into=(98, 134, 74),
            strength=0.95,
            rim=0.3,
            dark=(58, 90, 50),
            rough=1.4,
        )
        plate.lines([left, right], 1.1, strength=0.55)
        plate.line(
            arc(foot, foot + (tip - foot) * 0.8, steps=4), 1.6, colour=(214, 222, 180), strength=0.7, thin=0.2
        )
