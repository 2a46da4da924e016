"""The plate of the vine on the kitchen wall: two bunches under a leaf."""

from __future__ import annotations

import math

from pictures.fruit import twig
from pictures.leaves import palm, stalk, tendril
from pictures.plate import Plate
from pictures.shapes import Path, along, arc, ring, smooth

VINE_LEAF = (132, 152, 88)
VINE_DEEP = (84, 108, 62)


def grapes(plate: Plate) -> None:
    """Two bunches of 'Concord' on their cane, with the bloom still on."""
    cane = smooth([90 + 360j, 420 + 300j, 800 + 330j, 1180 + 280j, 1510 + 340j], steps=16)
    for t, way, size in ((0.17, -0.12 + 1j, 235), (0.46, -0.1 - 1j, 180), (0.86, 0.12 + 1j, 240)):
        _leaf(plate, cane, t, way, size)
    twig(plate, cane, 34, end=20, colour=(140, 104, 76))
    for t, way in ((0.22, 0.3 - 1j), (0.66, 0.5 + 0.9j), (0.80, 0.4 - 1j)):
        tendril(plate, along(cane, t)[0], way / abs(way), 260, colour=(128, 132, 78))
    _bunch(plate, along(cane, 0.36)[0], 20, 8)
    _bunch(plate, along(cane, 0.68)[0], -20, 7)
    _leaf(plate, cane, 0.53, 0.05 + 1j, 235)


def _leaf(plate: Plate, cane: Path, t: float, way: complex, size: float) -> None:
    foot = along(cane, t)[0]
    base = foot + way / abs(way) * 80
    stalk(plate, arc(foot, base, bend=0.1), 14, end=10, colour=(164, 140, 96), into=(128, 104, 72))
    colour = plate.random.choice([VINE_LEAF, (150, 164, 92), (164, 158, 86)])
    palm(
        plate,
        base,
        way,
        size,
        lobes=5,
        depth=0.26,
        teeth=5,
        gap=36,
        colour=colour,
        into=VINE_DEEP,
        vein=(196, 198, 142),
        bite=0.06,
    )


def _bunch(plate: Plate, start: complex, lean: float, rows: int) -> None:
    """Berries from the back to the front, wide at the shoulders, one at the tip."""
    random = plate.random
    stem = arc(start, start + complex(lean, 640), bend=0.03)
    plate.line(arc(start, along(stem, 0.3)[0], bend=0.03), 13, colour=(150, 138, 86), thin=0.8)
    spots = []
    for row in range(rows + 2):
        t = 0.26 + 0.74 * row / (rows + 1)
        half = 168 * math.sin(math.pi * (0.30 + 0.68 * row / (rows + 1))) ** 0.9
        for k in range(max(1, round(half / 34))):
            x = (k + 0.5) / max(1, round(half / 34)) * 2 - 1
            spot = along(stem, t)[0] + complex(
                x * half + random.uniform(-10, 10), random.uniform(-14, 14) + 30 * x * x
            )
            spots.append((abs(x) + random.uniform(-0.2, 0.2), spot))
    for _, spot in sorted(spots, key=lambda s: (-s[0], s[1].imag)):
        _berry(plate, spot, random.uniform(47, 54))


def _berry(plate: Plate, centre: complex, size: float) -> None:
    random = plate.random
    skin = ring(centre, size, size * 1.06, turn=random.uniform(0, 90))
    colour = random.choice([(62, 58, 108), (74, 56, 104), (54, 62, 112), (88, 58, 100)])
    plate.wash(skin, colour, into=(104, 72, 118), strength=0.97, shade=0.7, dark=(28, 26, 58), reach=0.24)
    plate.body(
        ring(centre + complex(-size * 0.16, -size * 0.12), size * 0.6, size * 0.5, turn=30),
        (178, 188, 222),
        strength=0.34,
        soft=size * 0.2,
    )
    plate.body(
        ring(centre + complex(size * 0.34, size * 0.42), size * 0.34, size * 0.18, turn=-44),
        (150, 150, 200),
        strength=0.3,
        soft=size * 0.12,
    )
    plate.body(
        ring(centre + complex(-size * 0.36, -size * 0.40), size * 0.15, size * 0.09, turn=-40),
        (248, 248, 255),
        strength=0.8,
        soft=size * 0.04,
    )
    plate.dots(
        [centre + complex(random.uniform(-0.5, 0.5), random.uniform(-0.5, 0.6)) * size for _ in range(5)],
        1.8,
        colour=(40, 36, 70),
        strength=0.6,
    )
    plate.outline(skin, 2.2)
