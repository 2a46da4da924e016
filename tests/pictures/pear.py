"""The plate of the pear trained on its wall."""

from __future__ import annotations

import math

from pictures.buildings import wall
from pictures.fruit import twig
from pictures.leaves import leaf
from pictures.plate import Plate
from pictures.shapes import Path, along, arc, oval, part, ring, smooth


def wall_pear(plate: Plate) -> None:
    """The pear trained flat against the terrace wall, in September, two arms a side."""
    top = smooth([0 + 60j, 400 + 74j, 800 + 58j, 1200 + 76j, 1600 + 62j])
    wall(plate, top, plate.tall - 220, rows=10, stone=170, strength=0.42, ink=1.4)
    plate.body([0j, 1600 + 0j, 1600 + plate.tall * 1j, plate.tall * 1j], (248, 243, 230), strength=0.34)
    plate.glaze(
        [
            0 + (plate.tall - 170) * 1j,
            1600 + (plate.tall - 150) * 1j,
            1600 + plate.tall * 1j,
            plate.tall * 1j,
        ],
        (120, 96, 72),
        strength=0.75,
        soft=12,
    )
    ground = (plate.tall - 120) * 1j
    trunk = smooth([792 + ground, 806 + ground - 300j, 796 + ground - 600j, 800 + 200j])
    arms = []
    for y in (800, 440):
        for side in (-1, 1):
            arms.append(
                smooth(
                    [
                        800 + (y + 70) * 1j,
                        complex(800 + side * 130, y + 4),
                        complex(800 + side * 380, y - 8),
                        complex(800 + side * 690, y - 16),
                    ]
                )
            )
    wires = [arc(complex(40, y), complex(1560, y - 6), bend=0.002, steps=30) for y in (438, 800, 200)]
    plate.lines(wires, 2.0, strength=0.6, thin=1.0, colour=(90, 90, 96))
    for arm in arms:
        twig(plate, arm, 36, end=16, colour=(126, 104, 86))
    twig(plate, trunk, 62, end=20, colour=(120, 98, 80))
    for arm in arms:
        for n in range(7):
            _spur(plate, arm, 0.16 + n * 0.135)
    for n in range(3):
        _spur(plate, part(trunk, 0.82, 1.0), 0.2 + 0.38 * n)
    for nth, t, long in (
        (0, 0.33, 1.0),
        (0, 0.72, 0.92),
        (1, 0.28, 0.95),
        (1, 0.62, 1.05),
        (1, 0.90, 0.9),
        (2, 0.45, 1.0),
        (2, 0.82, 0.95),
        (3, 0.38, 0.92),
        (3, 0.75, 1.02),
    ):
        _pear(plate, along(arms[nth], t)[0], 82 * long)
    _grass_foot(plate)


def _spur(plate: Plate, arm: Path, t: float) -> None:
    random = plate.random
    foot, _ = along(arm, t)
    tip = foot + complex(random.uniform(-24, 24), -random.uniform(30, 70))
    twig(plate, arc(foot, tip, bend=0.1, steps=8), 13, end=9)
    for swing in random.sample([-80, -52, -24, 8, 36, 62, 88], 4):
        turn = math.radians(swing + random.uniform(-8, 8))
        long = random.uniform(95, 135)
        way = complex(math.sin(turn), -math.cos(turn) * 0.9)
        start = tip + way * 26
        plate.line(arc(tip, start, steps=4), 4.4, colour=(136, 142, 84), thin=0.7)
        leaf(
            plate,
            arc(start, start + way * long + 14j, bend=random.uniform(-0.14, 0.14), steps=14),
            long * 0.50,
            colour=random.choice([(116, 146, 78), (136, 158, 86), (150, 160, 84), (176, 158, 80)]),
            into=(76, 106, 60),
            profile=oval,
            veins=5,
            ink=1.7,
            vein=(190, 198, 136),
            rib=3.2,
        )


def _pear(plate: Plate, hang: complex, size: float) -> None:
    random = plate.random
    lean = random.uniform(-0.10, 0.10)

    def at(x: float, y: float) -> complex:
        return hang + complex(x + y * lean, y) * size

    plate.line(smooth([hang, at(0.06, 0.3), at(0.0, 0.62)]), 8, colour=(104, 82, 60), thin=0.8)
    skin = smooth(
        [
            at(0.0, 0.58),
            at(0.24, 0.72),
            at(0.34, 1.25),
            at(0.62, 1.9),
            at(0.78, 2.45),
            at(0.62, 2.98),
            at(0.18, 3.16),
            at(-0.18, 3.16),
            at(-0.62, 2.98),
            at(-0.78, 2.45),
            at(-0.62, 1.9),
            at(-0.34, 1.25),
            at(-0.24, 0.72),
        ],
        closed=True,
        steps=8,
    )
    plate.glaze(
        [p + complex(size * 0.22, size * 0.16) for p in skin], (96, 88, 90), strength=0.35, soft=size * 0.1
    )
    plate.wash(
        skin, (196, 188, 92), into=(168, 172, 84), strength=0.95, shade=0.75, dark=(104, 102, 48), reach=0.16
    )
    plate.glaze(
        ring(at(-0.28, 2.3), size * 0.34, size * 0.55, turn=10),
        (214, 128, 72),
        strength=0.45,
        soft=size * 0.2,
    )
    plate.glaze(ring(at(0.0, 0.85), size * 0.26, size * 0.30), (160, 118, 66), strength=0.55, soft=size * 0.1)
    plate.glaze(ring(at(0.05, 3.0), size * 0.4, size * 0.22), (150, 112, 66), strength=0.5, soft=size * 0.1)
    plate.body(
        ring(at(-0.32, 2.0), size * 0.10, size * 0.26, turn=14),
        (250, 244, 214),
        strength=0.55,
        soft=size * 0.06,
    )
    plate.dots(
        [at(random.uniform(-0.5, 0.55), random.uniform(1.5, 2.95)) for _ in range(46)],
        1.7,
        colour=(122, 92, 56),
        strength=0.7,
    )
    plate.lines([arc(at(0.03, 3.14), at(x, 3.24), steps=4) for x in (-0.1, 0.0, 0.1)], 3.0, thin=0.5)
    plate.outline(skin, 2.6)


def _grass_foot(plate: Plate) -> None:
    random = plate.random
    tufts = []
    for _ in range(150):
        foot = complex(random.uniform(40, 1560), plate.tall - random.uniform(60, 120))
        tufts.append(
            arc(
                foot,
                foot + complex(random.gauss(0, 14), -random.uniform(24, 60)),
                bend=random.uniform(-0.15, 0.15),
                steps=6,
            )
        )
    plate.lines(tufts[:100], 4.5, colour=(104, 132, 72), strength=0.85, thin=0.1)
    plate.lines(tufts[100:], 4.0, colour=(150, 158, 88), strength=0.85, thin=0.1)
