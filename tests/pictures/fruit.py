"""Plates of fruit on the branch: plums and blackcurrants."""

from __future__ import annotations

import math

from pictures.leaves import leaf, palm, stalk
from pictures.plate import Colour, Plate
from pictures.shapes import Path, along, arc, oval, ring, smooth

TWIG: Colour = (122, 96, 74)


def twig(plate: Plate, path: Path, width: float, *, end: float | None = None, colour: Colour = TWIG) -> None:
    """A woody shoot with its buds' scars."""
    stalk(plate, path, width, end=end, colour=colour, into=(92, 74, 62), shade=0.6, ink=2.2)
    marks = []
    for _n in range(int(abs(path[-1] - path[0]) / 26)):
        here, way = along(path, plate.random.random())
        marks.append(arc(here - way * 1j * width * 0.3, here + way * 1j * width * 0.25, bend=0.2, steps=5))
    plate.lines(marks, 1.3, strength=0.5, thin=0.2)


def plums(plate: Plate) -> None:
    """A hanging branch of the old plum with its fruit, one split to the stone."""
    branch = smooth([120 + 250j, 420 + 330j, 760 + 330j, 1080 + 420j, 1340 + 600j])
    spots = [(0.20, 1), (0.33, -1), (0.46, 1), (0.62, -1), (0.74, 1), (0.86, -1)]
    for t, side in spots:
        for more in (-0.05, 0.03):
            _plum_leaf(plate, branch, t + more, side * (1 if more < 0 else -1))
    twig(plate, branch, 34, end=12)
    places = (330 + 640j, 560 + 760j, 800 + 640j, 735 + 900j, 1010 + 800j, 1225 + 960j)
    roots = (0.20, 0.38, 0.50, 0.46, 0.70, 0.86)
    for spot, t in zip(places, roots, strict=True):
        stalk(
            plate,
            arc(along(branch, t)[0], spot - 150j, bend=plate.random.uniform(-0.10, 0.10)),
            12,
            end=10,
            colour=(146, 152, 92),
            into=(96, 106, 62),
        )
    for n, spot in enumerate(places):
        _plum(plate, spot, 128 + 10 * (n % 3), turn=plate.random.uniform(-10, 10))
    for t, side in ((0.28, 1), (0.56, 1), (0.8, 1)):
        _plum_leaf(plate, branch, t, side)
    _half_plum(plate, 420 + 1130j, 135)


def _plum_leaf(plate: Plate, branch: Path, t: float, side: int) -> None:
    random = plate.random
    foot, way = along(branch, t)
    out = way * complex(0.45, side * 0.9)
    if out.imag < 0:
        out = complex(out.real, out.imag * 0.8)
    long = random.uniform(250, 320)
    start = foot + out * 34
    plate.line(arc(foot, start, steps=5), 6, colour=(130, 138, 80), thin=0.7)
    spine = arc(start, start + out * long + 40j, bend=random.uniform(-0.12, 0.12))
    leaf(
        plate,
        spine,
        long * 0.48,
        colour=random.choice([(128, 152, 84), (144, 160, 92), (112, 142, 80)]),
        into=(82, 112, 64),
        profile=oval,
        teeth=18,
        bite=0.07,
        veins=7,
        vein=(186, 196, 138),
        rib=4.5,
        slope=0.7,
    )


def _plum(plate: Plate, centre: complex, size: float, *, turn: float) -> None:
    swing = complex(math.cos(math.radians(turn)), math.sin(math.radians(turn)))

    def at(x: float, y: float) -> complex:
        return centre + complex(x, y) * size * swing

    skin = smooth(
        [
            at(0.03, -1.10),
            at(0.55, -1.0),
            at(0.90, -0.35),
            at(0.86, 0.45),
            at(0.45, 1.06),
            at(0, 1.16),
            at(-0.48, 1.04),
            at(-0.88, 0.42),
            at(-0.88, -0.38),
            at(-0.5, -1.02),
        ],
        closed=True,
    )
    plate.wash(
        skin, (98, 62, 118), into=(152, 66, 104), strength=0.96, shade=0.8, dark=(46, 28, 74), reach=0.2
    )
    plate.glaze(
        [*smooth([at(-0.8, 0.5), at(-0.3, 0.2), at(-0.1, 0.7), at(-0.35, 1.0)], closed=True)],
        (190, 90, 90),
        strength=0.5,
        soft=size * 0.12,
    )
    plate.body(
        smooth(
            [
                at(-0.62, -0.62),
                at(-0.2, -0.86),
                at(0.1, -0.5),
                at(-0.15, 0.2),
                at(-0.55, 0.35),
                at(-0.7, -0.1),
            ],
            closed=True,
        ),
        (196, 204, 232),
        strength=0.42,
        soft=size * 0.14,
    )
    plate.body(
        ring(at(0.45, 0.5), size * 0.2, size * 0.4, turn=30), (170, 180, 220), strength=0.16, soft=size * 0.14
    )
    plate.line(
        smooth([at(0.03, -1.08), at(0.26, -0.5), at(0.32, 0.2), at(0.14, 1.1)]),
        4.0,
        colour=(50, 30, 74),
        strength=0.7,
        thin=0.2,
    )
    plate.line(
        [p + 5 for p in smooth([at(0.03, -1.0), at(0.26, -0.5), at(0.32, 0.2), at(0.14, 1.0)])],
        3.0,
        colour=(176, 176, 214),
        strength=0.35,
        thin=0.2,
    )
    plate.dots(
        [at(plate.random.uniform(-0.6, 0.6), plate.random.uniform(-0.8, 0.9)) for _ in range(26)],
        1.8,
        colour=(206, 190, 214),
        strength=0.6,
    )
    plate.body(
        ring(at(-0.40, -0.48), size * 0.09, size * 0.16, turn=turn + 25),
        (250, 250, 255),
        strength=0.6,
        soft=size * 0.04,
    )
    plate.outline(skin, 2.8)


def _half_plum(plate: Plate, centre: complex, size: float) -> None:
    plate.glaze(
        ring(centre + complex(20, size * 0.95), size * 1.0, size * 0.24),
        (180, 160, 140),
        strength=0.5,
        soft=16,
    )
    skin = ring(centre, size * 0.98, size * 1.12, turn=8)
    plate.wash(skin, (100, 58, 108), strength=0.95, dark=(46, 28, 74))
    flesh = ring(centre + complex(-3, -2), size * 0.89, size * 1.02, turn=8)
    plate.wash(
        flesh, (238, 190, 92), into=(226, 160, 78), strength=0.9, rim=0.5, dark=(190, 104, 60), shade=0.25
    )
    rays = []
    for n in range(70):
        a = 2 * math.pi * n / 70
        way = complex(0.86 * math.cos(a), math.sin(a)) * size
        rays.append(arc(centre + way * 0.55, centre + way * plate.random.uniform(0.75, 0.95), steps=4))
    plate.lines(rays, 1.2, colour=(188, 110, 60), strength=0.5, thin=0.1)
    stone = smooth(
        [
            centre + size * p
            for p in (
                -0.02 - 0.62j,
                0.28 - 0.38j,
                0.34 + 0.1j,
                0.12 + 0.55j,
                -0.06 + 0.62j,
                -0.28 + 0.36j,
                -0.34 - 0.1j,
                -0.22 - 0.45j,
            )
        ],
        closed=True,
    )
    plate.wash(stone, (172, 122, 76), into=(140, 94, 62), strength=0.95, shade=0.7, dark=(84, 54, 40))
    plate.lines(
        [
            arc(centre + size * complex(x, -0.45), centre + size * complex(x * 0.8, 0.45), bend=-x * 0.5)
            for x in (-0.2, -0.08, 0.06, 0.18)
        ],
        1.6,
        strength=0.6,
    )
    plate.outline(stone, 2.4)
    plate.outline(flesh, 1.4, strength=0.5)
    plate.outline(skin, 2.8)


def currants(plate: Plate) -> None:
    """Blackcurrants: strigs under their scented leaves."""
    shoot = smooth([250 + 190j, 540 + 400j, 850 + 560j, 1070 + 800j, 1240 + 1150j])
    for t, towards, size in (
        (0.10, -1 + 2.2j, 240),
        (0.30, 1 - 0.45j, 310),
        (0.56, 1 - 0.15j, 320),
        (0.88, 1 + 0.4j, 230),
    ):
        foot = along(shoot, t)[0]
        base = foot + towards / abs(towards) * 150
        stalk(plate, arc(foot, base, bend=0.08), 12, end=9, colour=(150, 150, 92))
        palm(
            plate,
            base,
            towards,
            size,
            lobes=5,
            depth=0.34,
            teeth=4,
            gap=60,
            colour=plate.random.choice([(134, 158, 86), (118, 148, 80)]),
            vein=(188, 198, 136),
            bite=0.06,
        )
    twig(plate, shoot, 26, end=12)
    strigs = ((0.24, 300 + 1150j), (0.40, 590 + 1400j), (0.58, 870 + 1500j), (0.78, 1160 + 1540j))
    for t, end in strigs:
        _strig(plate, along(shoot, t)[0], end)
    base = along(shoot, 0.45)[0] + complex(-150, -20)
    stalk(plate, arc(along(shoot, 0.45)[0], base, bend=-0.08), 11, end=9, colour=(150, 150, 92))
    palm(
        plate,
        base,
        -0.7 - 0.15j,
        250,
        lobes=5,
        depth=0.34,
        teeth=4,
        gap=60,
        colour=(142, 164, 92),
        vein=(188, 198, 136),
        bite=0.06,
    )


def _strig(plate: Plate, start: complex, end: complex) -> None:
    random = plate.random
    line = arc(start, end, bend=-0.08, steps=40)
    plate.line(line, 8, colour=(134, 146, 84), thin=0.5)
    count = 15
    berries = []
    for n in range(count):
        t = 0.24 + 0.76 * (n / (count - 1)) ** 0.86
        here, way = along(line, t)
        size = 50 - 20 * (n / count)
        side = (1 if n % 2 else -1) * (0.9 if n < count - 1 else 0)
        spot = here + way * 1j * side * size * random.uniform(0.7, 1.05) + complex(0, 10)
        plate.line(arc(here, spot, bend=0.1, steps=6), 4, colour=(142, 150, 90), thin=0.7)
        berries.append((spot, size * random.uniform(0.92, 1.06), n))
    for spot, size, n in berries:
        _blackcurrant(plate, spot, size, ripe=n < count - 2)


def _blackcurrant(plate: Plate, centre: complex, size: float, *, ripe: bool) -> None:
    skin = ring(centre, size, size * 1.02, turn=plate.random.uniform(0, 90))
    colour, into, dark = (
        ((56, 44, 74), (84, 48, 84), (22, 18, 34)) if ripe else ((120, 66, 76), (150, 120, 80), (70, 40, 50))
    )
    husk = [
        arc(centre + complex(x * 0.3, size * 0.92), centre + complex(x, size * 1.34), bend=x * 0.02, steps=5)
        for x in (-8, -3, 2, 7)
    ]
    plate.lines(husk, 3.2, colour=(120, 96, 70), strength=0.9, thin=0.4)
    plate.wash(skin, colour, into=into, strength=0.97, shade=0.7, dark=dark, reach=0.24)
    plate.body(
        ring(centre + complex(size * 0.3, size * 0.4), size * 0.4, size * 0.24, turn=-40),
        (120, 110, 160),
        strength=0.35,
        soft=size * 0.14,
    )
    plate.body(
        ring(centre + complex(-size * 0.34, -size * 0.38), size * 0.2, size * 0.13, turn=-40),
        (246, 246, 252),
        strength=0.85,
        soft=size * 0.05,
    )
    plate.lines(
        [arc(centre - 1j * size * 0.95, centre + 1j * size * 0.95, bend=b, steps=10) for b in (-0.2, 0.16)],
        1.2,
        colour=(150, 140, 176),
        strength=0.3,
        thin=0.1,
    )
    plate.outline(skin, 2.2)
