"""Plates of what is lifted: beetroot, carrots, garlic, leeks, potatoes."""

from __future__ import annotations

import math

from pictures.leaves import leaf, stalk
from pictures.plate import Colour, Plate
from pictures.shapes import Path, arc, egg, part, ring, smooth

WINE: Colour = (122, 28, 62)
WINE_DARK: Colour = (72, 14, 40)
STEM: Colour = (176, 44, 84)
SOIL: Colour = (150, 122, 92)


def _hatch_round(plate: Plate, outline: Path, centre: complex, size: float, *, rows: int = 16) -> None:
    """Engraver's lines that follow a round body on its dark side."""
    strokes = []
    for n in range(rows):
        r = size * (0.62 + 0.36 * n / rows)
        start = math.radians(plate.random.uniform(-28, -8))
        end = math.radians(plate.random.uniform(78, 112))
        strokes.append(
            [
                centre + complex(r * math.cos(a), r * math.sin(a))
                for a in (start + (end - start) * k / 16 for k in range(17))
            ]
        )
    plate.lines(strokes, 1.2, strength=0.4, thin=0.1, within=outline)


def beetroot(plate: Plate) -> None:
    """Two beetroots with their leaves, and one cut to show the rings."""
    _beet(plate, 1085 + 1265j, 172, lean=7)
    _beet(plate, 640 + 1190j, 232, lean=-4)
    _cut_beet(plate, 345 + 1680j, 158)


def _beet(plate: Plate, centre: complex, size: float, *, lean: float) -> None:
    random = plate.random
    crown = centre - 1j * size * 0.93 + lean
    for n, swing in enumerate((-52, 47, -33, 36, -20, 21, -2, 8)):
        angle = math.radians(swing + lean)
        long = size * (3.55 - abs(swing) / 42 + random.uniform(-0.25, 0.25))
        way = complex(math.sin(angle) * 0.72, -math.cos(angle))
        hang = complex(math.sin(angle) * 0.5 * size, size * (0.1 + 0.75 * abs(math.sin(angle))))
        foot = crown + complex(math.sin(angle) * size * 0.28, 0)
        spine = smooth(
            [foot, foot + way * long * 0.45, foot + way * long * 0.75 + hang * 0.3, foot + way * long + hang]
        )
        stalk(plate, part(spine, 0, 0.55), size * 0.12, end=size * 0.05, colour=STEM, into=WINE)
        leaf(
            plate,
            part(spine, 0.40, 1.0),
            size * random.uniform(0.84, 1.02),
            colour=(118, 146, 84) if n % 3 else (136, 152, 92),
            into=(72, 100, 62),
            profile=egg,
            vein=(160, 40, 78),
            veins=7,
            rib=size * 0.034,
            wave=size * 0.045,
        )
    root = smooth(
        [
            crown + complex(-size * 0.30, -size * 0.02),
            centre + complex(-size * 0.82, -size * 0.50),
            centre + complex(-size * 0.97, size * 0.12),
            centre + complex(-size * 0.60, size * 0.72),
            centre + complex(-size * 0.16, size * 1.06),
            centre + complex(-size * 0.03, size * 1.5),
            centre + complex(size * 0.13, size * 2.0),
            centre + complex(size * 0.05, size * 1.45),
            centre + complex(size * 0.20, size * 1.04),
            centre + complex(size * 0.66, size * 0.68),
            centre + complex(size * 0.99, size * 0.08),
            centre + complex(size * 0.80, -size * 0.52),
            crown + complex(size * 0.32, -size * 0.02),
            crown + complex(0, -size * 0.06),
        ],
        closed=True,
    )
    plate.wash(root, WINE, into=(146, 40, 70), strength=0.95, shade=0.75, dark=WINE_DARK, reach=0.16)
    plate.body(
        ring(centre + complex(-size * 0.40, -size * 0.36), size * 0.20, size * 0.10, turn=-40),
        (236, 190, 190),
        strength=0.34,
        soft=size * 0.08,
    )
    for n in range(9):
        y = -0.62 + n * 0.20
        half = math.sqrt(max(0.02, 1 - y * y)) * size
        line = arc(
            centre + complex(-half * random.uniform(0.5, 0.96), y * size),
            centre + complex(half * random.uniform(-0.2, 0.5), y * size + size * 0.04),
            bend=-0.10,
        )
        plate.line(line, 1.3, colour=WINE_DARK, strength=0.5, thin=0.1)
    _hatch_round(plate, root, centre, size)
    rootlets = []
    for _ in range(16):
        side = random.choice((-1, 1))
        t = random.uniform(0.9, 1.7)
        foot = centre + complex(side * size * 0.10 * (2.0 - t), size * t)
        rootlets.append(
            arc(
                foot,
                foot + complex(side * size * random.uniform(0.1, 0.34), size * random.uniform(0.05, 0.25)),
                bend=side * 0.2,
                steps=8,
            )
        )
    plate.lines(rootlets, 1.6, colour=WINE_DARK, strength=0.7, thin=0.1)
    plate.outline(root, 3.0)
    plate.dots(
        [centre + random.uniform(0.1, 0.85) * size * complex(math.cos(a), math.sin(a)) for a in range(44)],
        1.8,
        colour=WINE_DARK,
    )


def _cut_beet(plate: Plate, centre: complex, size: float) -> None:
    random = plate.random
    plate.glaze(
        ring(centre + complex(26, size * 0.72), size * 1.05, size * 0.32),
        (180, 160, 140),
        strength=0.5,
        soft=16,
    )
    rim = smooth(
        [
            centre + size * complex(math.cos(a), math.sin(a)) * random.uniform(0.95, 1.04)
            for a in (k * math.pi / 5 for k in range(10))
        ],
        closed=True,
    )
    plate.wash(rim, WINE, strength=0.95, dark=WINE_DARK, shade=0.3)
    for k, share in enumerate((0.90, 0.74, 0.58, 0.42, 0.26)):
        line = [centre + (p - centre) * share for p in rim]
        plate.wash(
            line, (206, 92, 118) if k % 2 == 0 else WINE, strength=0.62, rim=0.4, lift=0.5, dark=WINE_DARK
        )
        plate.outline(line, 1.3, colour=WINE_DARK, strength=0.6)
    rays = []
    for n in range(60):
        a = 2 * math.pi * n / 60 + random.uniform(-0.03, 0.03)
        way = complex(math.cos(a), math.sin(a)) * size
        rays.append(
            arc(centre + way * random.uniform(0.1, 0.5), centre + way * random.uniform(0.6, 0.92), steps=6)
        )
    plate.lines(rays, 1.0, colour=WINE_DARK, strength=0.4, thin=0.1)
    plate.outline(rim, 3.0)
