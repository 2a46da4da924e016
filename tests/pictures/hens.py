"""The plate of the hens at work on the winter rye."""

from __future__ import annotations

import math

from pictures.buildings import wall
from pictures.leaves import blades
from pictures.plate import Colour, Plate
from pictures.shapes import Path, arc, ring, smooth

RED: Colour = (196, 52, 44)
BEE: Colour = (222, 164, 62)


def hens(plate: Plate) -> None:
    """Three hens at work on the winter rye, the terrace wall behind them."""
    plate.glaze([0j, 1600 + 0j, 1600 + 330j, 0 + 330j], (176, 204, 226), strength=0.75, soft=40)
    for y, colour in ((150, (176, 190, 196)), (196, (160, 178, 162))):
        ridge = smooth(
            [
                complex(x, y + 34 * math.sin(x / 210 + y) + 12 * math.sin(x / 67))
                for x in range(-60, 1700, 80)
            ],
            steps=4,
        )
        plate.wash([*ridge, 1660 + 330j, -60 + 330j], colour, strength=0.7, rim=0.1)
    wall(
        plate,
        smooth([-20 + 250j, 400 + 262j, 900 + 244j, 1300 + 258j, 1620 + 248j]),
        220,
        rows=4,
        stone=96,
        strength=0.6,
    )
    plate.wash(
        [-20 + 462j, 1620 + 462j, 1620 + 1200j, -20 + 1200j],
        (160, 164, 104),
        into=(134, 126, 88),
        strength=0.85,
        rim=0,
    )
    random = plate.random
    greens: tuple[Colour, ...] = ((126, 156, 82), (146, 172, 92), (104, 138, 74), (164, 182, 104))
    blades(
        plate,
        [complex(random.uniform(-10, 1610), random.uniform(470, 560)) for _ in range(240)],
        84,
        colours=greens,
        width=8,
    )
    _hen(plate, 1190 + 560j, 0.86, -1, (66, 62, 70), (96, 92, 104), (30, 28, 38), pecking=False)
    blades(
        plate,
        [complex(random.uniform(-10, 1610), random.uniform(640, 760)) for _ in range(200)],
        92,
        colours=greens,
        width=9,
    )
    _hen(plate, 420 + 700j, 1.12, 1, (178, 104, 60), (206, 140, 84), (100, 52, 34), pecking=False)
    _hen(plate, 1010 + 830j, 1.16, 1, (244, 238, 226), (228, 218, 200), (176, 160, 146), pecking=True)
    blades(
        plate,
        [complex(random.uniform(-10, 1610), random.uniform(900, 1180)) for _ in range(330)],
        116,
        colours=greens,
        width=11,
    )


def _hen(
    plate: Plate,
    at: complex,
    grow: float,
    side: int,
    colour: Colour,
    into: Colour,
    dark: Colour,
    *,
    pecking: bool,
) -> None:
    def spot(x: float, y: float) -> complex:
        return at + complex(x * side, y) * grow

    for x in (-18, 34):
        leg = [spot(x, 120), spot(x + 6, 170), spot(x, 232)]
        plate.line(smooth(leg), 13 * grow, colour=(214, 164, 70), thin=0.8, strength=1.0)
        plate.lines(
            [arc(spot(x, 228), spot(x + d, 248), steps=4) for d in (-34, 30, 48)],
            9 * grow,
            colour=(214, 164, 70),
            thin=0.5,
            strength=1.0,
        )
    tail = smooth(
        [
            spot(-130, -20),
            spot(-236, -170),
            spot(-282, -196),
            spot(-268, -120),
            spot(-300, -118),
            spot(-262, -56),
            spot(-270, -40),
            spot(-190, 40),
        ],
        closed=True,
    )
    plate.wash(tail, into, into=dark, strength=0.95, shade=0.4, dark=dark)
    plate.lines(
        [
            arc(spot(-150, -10), spot(x, y), bend=-0.12 * side)
            for x, y in ((-262, -174), (-264, -118), (-276, -92), (-252, -50))
        ],
        2.2,
        strength=0.6,
    )
    plate.outline(tail, 2.6)
    if pecking:
        neck = [spot(120, -70), spot(196, 10), spot(232, 92), spot(214, 140), spot(176, 128), spot(120, 74)]
        head, beak = spot(226, 128), complex(0.5 * side, 0.86)
    else:
        neck = [
            spot(96, -60),
            spot(150, -150),
            spot(178, -236),
            spot(222, -250),
            spot(244, -214),
            spot(226, -120),
            spot(196, 0),
        ]
        head, beak = spot(214, -232), complex(side, 0.12)
    body = smooth(
        [
            spot(-196, -36),
            spot(-110, -104),
            spot(10, -108),
            *neck,
            spot(150, 96),
            spot(70, 150),
            spot(-50, 156),
            spot(-150, 100),
        ],
        closed=True,
        steps=10,
    )
    plate.wash(body, colour, into=into, strength=0.95, shade=0.6, dark=dark, reach=0.14)
    _feathers(plate, body, dark, grow)
    plate.outline(body, 3.0)
    wing = smooth(
        [
            spot(60, -50),
            spot(92, 10),
            spot(50, 66),
            spot(-60, 92),
            spot(-166, 70),
            spot(-206, 36),
            spot(-90, -48),
        ],
        closed=True,
    )
    plate.wash(wing, into, into=colour, strength=0.9, lift=0.7, shade=0.5, dark=dark)
    quills = [
        arc(spot(20 - 26 * n, 14 + 15 * n), spot(-200 + 22 * n, 40 + 11 * n), bend=0.08 * side)
        for n in range(5)
    ]
    plate.lines(quills, 2.4, colour=dark, strength=0.85)
    scales = []
    for row in range(4):
        for n in range(7):
            here = spot(66 - 26 * n - 6 * row, -26 + 17 * row + 3 * n)
            scales.append(arc(here, here + complex(-2 * side, 20) * grow, bend=-0.55 * side, steps=8))
    plate.lines(scales, 2.2, colour=dark, strength=0.8, within=wing)
    plate.outline(wing, 2.4)
    _hen_head(plate, head, beak, side, grow, colour, dark)


def _feathers(plate: Plate, body: Path, dark: Colour, grow: float) -> None:
    random = plate.random
    xs = [p.real for p in body]
    ys = [p.imag for p in body]
    scales = []
    for _ in range(190):
        here = complex(random.uniform(min(xs), max(xs)), random.uniform(min(ys), max(ys)))
        scales.append(
            arc(
                here,
                here + complex(random.uniform(12, 20), random.uniform(-4, 8)) * grow,
                bend=-0.45,
                steps=6,
            )
        )
    plate.lines(scales, 1.8, colour=dark, strength=0.55, thin=0.2, within=body)


def _hen_head(
    plate: Plate, head: complex, beak: complex, side: int, grow: float, colour: Colour, dark: Colour
) -> None:
    up = beak * -1j * side
    ball = ring(head, 36 * grow, 33 * grow)
    plate.wash(ball, colour, strength=0.95, shade=0.4, dark=dark)
    comb = smooth(
        [
            head + (beak * x + up * y) * grow
            for x, y in (
                (28, 24),
                (34, 44),
                (20, 42),
                (16, 62),
                (2, 46),
                (-8, 64),
                (-16, 44),
                (-32, 52),
                (-26, 24),
            )
        ],
        closed=True,
        steps=6,
    )
    plate.wash(comb, RED, strength=0.95, shade=0.3, dark=(120, 20, 26))
    plate.outline(comb, 2.2)
    bill = smooth(
        [head + (beak * x + up * y) * grow for x, y in ((30, 12), (66, -4), (30, -12))], closed=True, steps=5
    )
    plate.wash(bill, (218, 176, 84), strength=0.95, shade=0.3)
    plate.outline(bill, 2.0)
    wattle = smooth(
        [
            head + (beak * x + up * y) * grow
            for x, y in ((26, -14), (36, -34), (24, -54), (10, -36), (14, -16))
        ],
        closed=True,
        steps=6,
    )
    plate.wash(wattle, RED, strength=0.95, shade=0.3, dark=(120, 20, 26))
    plate.outline(wattle, 2.0)
    eye = head + (beak * 12 + up * 6) * grow
    plate.wash(ring(eye, 8 * grow), (226, 150, 60), strength=1.0)
    plate.dots([eye], 5.5 * grow, strength=1.0)
    plate.outline(ring(eye, 8 * grow), 1.8)
