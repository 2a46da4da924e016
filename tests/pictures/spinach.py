"""The plate of the experiment that paid: spinach in March, in the ring where the snow has gone."""

from __future__ import annotations

import math

from pictures.buildings import SNOW
from pictures.leaves import leaf, stalk
from pictures.plate import Colour, Plate
from pictures.shapes import arc, hand, part, ring, smooth

GREENS: tuple[Colour, ...] = ((72, 118, 70), (88, 134, 76), (62, 106, 68), (104, 146, 82))


def spinach(plate: Plate) -> None:
    """Rosettes in their rows, the fleece turned back, snow all round."""
    plate.body([0j, 1600 + 0j, 1600 + 1180j, 1180j], SNOW, strength=1.0)
    for _ in range(26):
        spot = complex(plate.random.uniform(0, 1600), plate.random.uniform(0, 1180))
        plate.glaze(
            ring(spot, plate.random.uniform(90, 220), plate.random.uniform(30, 70)),
            (176, 194, 226),
            strength=0.34,
            soft=40,
        )
    edge = [
        complex(
            800 + 610 * math.cos(a) * plate.random.uniform(0.96, 1.04),
            640 + 420 * math.sin(a) * plate.random.uniform(0.95, 1.05),
        )
        for a in (n * math.pi / 11 for n in range(22))
    ]
    hole = smooth(edge, closed=True)
    plate.glaze([800 + 640j + (p - 800 - 640j) * 1.06 for p in hole], (150, 170, 206), strength=0.5, soft=16)
    plate.wash(hole, (118, 92, 72), into=(92, 72, 58), strength=0.95, rim=0.4, dark=(70, 54, 46), rough=4)
    crumbs = [
        800 + 640j + (p - 800 - 640j) * math.sqrt(plate.random.random()) for p in hole for _ in range(4)
    ]
    plate.dots(crumbs, 5.0, colour=(70, 52, 42), strength=0.5)
    plate.dots(crumbs[::3], 4.0, colour=(168, 140, 110), strength=0.5)
    _fleece(plate)
    rows = (
        ((470, 410), (680, 380), (900, 390), (1110, 430)),
        ((390, 590), (640, 580), (880, 590), (1150, 600)),
        ((420, 780), (660, 800), (920, 800), (1140, 770)),
        ((560, 920), (800, 940), (1030, 915)),
    )
    for row in rows:
        for x, y in row:
            _rosette(
                plate,
                complex(x + plate.random.uniform(-16, 16), y + plate.random.uniform(-12, 12)),
                0.72 + y / 2300,
            )
    _rim(plate, hole)


def _rosette(plate: Plate, heart: complex, grow: float) -> None:
    random = plate.random
    plate.glaze(
        ring(heart + complex(10, 16) * grow, 116 * grow, 66 * grow), (50, 36, 30), strength=0.6, soft=12
    )
    first = random.uniform(0, 40)
    for ring_no, (count, long, wide) in enumerate(((9, 132, 82), (7, 98, 70), (5, 62, 52), (4, 34, 36))):
        for n in range(count):
            turn = math.radians(first + 360 / count * n + 18 * ring_no + random.uniform(-8, 8))
            reach = long * grow * random.uniform(0.9, 1.1)
            tip = heart + complex(math.cos(turn) * reach, math.sin(turn) * reach * 0.66)
            foot = heart + (tip - heart) * 0.10
            spine = arc(foot, tip, bend=random.uniform(-0.12, 0.12), steps=14)
            if ring_no == 0:
                stalk(plate, part(spine, 0, 0.4), 11 * grow, end=7 * grow, colour=(150, 176, 110), ink=1.4)
            leaf(
                plate,
                part(spine, 0.22, 1.0),
                wide * grow,
                colour=random.choice(GREENS[min(ring_no, 2) :]),
                into=(46, 88, 56),
                veins=4,
                vein=(166, 192, 124),
                rib=4.2 * grow,
                wave=3.0 * grow,
                ink=1.8,
            )
    dust = [heart + complex(random.gauss(0, 62), random.gauss(0, 40)) * grow for _ in range(16)]
    plate.dots(dust, 7, colour=SNOW, strength=0.9)


def _fleece(plate: Plate) -> None:
    """The cloth, frozen stiff, turned back over itself along the far side."""
    front = smooth([210 + 330j, 420 + 250j, 640 + 270j, 860 + 225j, 1100 + 262j, 1390 + 320j])
    back = smooth([160 + 190j, 420 + 120j, 640 + 150j, 860 + 100j, 1120 + 140j, 1440 + 200j])
    cloth = front + back[::-1]
    plate.glaze([p + 10 + 22j for p in cloth], (110, 124, 156), strength=0.5, soft=14)
    plate.wash(
        cloth, (250, 250, 248), into=(232, 236, 242), strength=0.5, rim=0.4, shade=0.3, dark=(150, 160, 186)
    )
    folds = [
        arc(a, b, bend=0.06 * (-1) ** n) for n, (a, b) in enumerate(zip(back[::5], front[::5], strict=True))
    ]
    plate.lines(folds, 1.8, colour=(130, 142, 170), strength=0.7, thin=0.1)
    for n, fold in enumerate(folds):
        if n % 2:
            plate.glaze([*fold, *[p + 14 for p in fold[::-1]]], (150, 162, 192), strength=0.4, soft=4)
    roll = hand(front, plate.random, 4)
    plate.lines([[p + 1j * k for p in roll] for k in (0, 12)], 2.4, thin=0.5)
    plate.outline(cloth, 2.4)
    for spot in (250 + 300j, 1340 + 290j):
        stone = smooth([spot + complex(54 * math.cos(a), 34 * math.sin(a)) for a in range(6)], closed=True)
        plate.wash(stone, (164, 156, 146), into=(140, 134, 130), strength=0.97, shade=0.6, dark=(84, 80, 84))
        plate.body(ring(spot - 22j, 34, 12), SNOW, strength=0.95, soft=3)
        plate.outline(stone, 2.2)


def _rim(plate: Plate, hole: list[complex]) -> None:
    """The edge of the snow, a hand high, with its shadow."""
    front = [p for p in hole if p.imag > 700]
    front.sort(key=lambda p: p.real)
    lip = [p + complex(0, -14 + 8 * math.sin(n)) for n, p in enumerate(front)]
    plate.body([*lip, *[p + 46j for p in front[::-1]]], SNOW, strength=1.0, soft=4)
    plate.glaze(
        [*[p + 10j for p in lip], *[p + 40j for p in front[::-1]]], (164, 182, 216), strength=0.5, soft=10
    )
    plate.line(lip, 1.8, colour=(110, 118, 146), strength=0.6)
