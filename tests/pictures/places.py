"""Plates of the garden itself: the terraces in snow and in summer, walls, trees, the house above."""

from __future__ import annotations

import itertools
import math

from pictures.plate import Colour, Plate
from pictures.shapes import Path, along, arc, part, ring, sides, smooth

STONES: tuple[Colour, ...] = (
    (186, 176, 158),
    (168, 160, 148),
    (198, 184, 158),
    (154, 150, 144),
    (180, 164, 140),
)
SHADOW: Colour = (120, 130, 158)
SLATE: Colour = (104, 108, 120)
BARK: Colour = (104, 84, 68)
SNOW: Colour = (252, 251, 250)


def wall(
    plate: Plate,
    top: Path,
    height: float,
    *,
    rows: int = 4,
    stone: float = 62,
    strength: float = 0.85,
    ink: float = 1.7,
) -> None:
    """A dry stone wall below a line that runs from left to right: stones in rows, no two alike."""
    random = plate.random
    foot = [p + 1j * height for p in top]
    plate.wash(top + foot[::-1], (96, 88, 82), strength=0.8, rim=0.2)
    long = sum(abs(b - a) for a, b in itertools.pairwise(top))
    for row in range(rows):
        x = -random.uniform(0, stone)
        upper, lower = height * row / rows, height * (row + 1) / rows
        while x < long:
            wide = stone * random.uniform(0.5, 1.5)
            a, b = max(0.0, x) / long, min(long, x + wide) / long
            if b - a > 0.15 * stone / long:
                _stone(plate, top, a, b, upper + 1.5, lower - 1.5, strength, ink)
            x += wide + 2.5


def _stone(
    plate: Plate, top: Path, a: float, b: float, upper: float, lower: float, strength: float, ink: float
) -> None:
    random = plate.random
    left, right = along(top, a)[0], along(top, b)[0]
    wide = abs(right - left)
    tall = lower - upper

    def at(u: float, v: float) -> complex:
        here = left + (right - left) * u
        return (
            here
            + 1j * (upper + tall * v)
            + complex(random.gauss(0, 0.02 * wide), random.gauss(0, 0.05 * tall))
        )

    outline = smooth(
        [
            at(0.04, 0.2),
            at(0.12, 0.03),
            at(0.5, 0.0),
            at(0.88, 0.04),
            at(0.97, 0.25),
            at(0.97, 0.75),
            at(0.88, 0.97),
            at(0.5, 1.0),
            at(0.1, 0.97),
            at(0.03, 0.75),
        ],
        closed=True,
        steps=4,
    )
    colour = random.choice(STONES)
    plate.wash(
        outline,
        colour,
        into=random.choice(STONES),
        strength=strength,
        shade=0.55,
        dark=(92, 84, 84),
        rough=0.3,
        reach=0.16,
    )
    plate.outline(outline, ink, strength=0.7)
    if random.random() < 0.25:
        plate.dots(
            [at(random.uniform(0.2, 0.8), random.uniform(0.2, 0.8)) for _ in range(4)], 1.3, strength=0.5
        )


def _tapered(t: float) -> float:
    return 1 - 0.38 * t


def _flared(t: float) -> float:
    """A trunk, wider where it goes into the ground."""
    return 1 - 0.38 * t + 0.5 * (1 - t) ** 6


def bare_tree(
    plate: Plate, foot: complex, tall: float, *, lean: float = 0.0, snow: bool = True, width: float = 0.085
) -> list[complex]:
    """A tree without leaves. Answers where its twigs end."""
    ends: list[complex] = []
    boughs: list[tuple[Path, float]] = []

    def grow(start: complex, way: complex, long: float, wide: float, left: int) -> None:
        bend = plate.random.uniform(-0.07, 0.07)
        end = start + way * long
        path = arc(start, end, bend=bend, steps=10)
        boughs.append((path, wide))
        if not left:
            ends.append(end)
            return
        for swing in plate.random.sample([-38, -20, -8, 14, 26, 40], 3 if left in (6, 5, 3) else 2):
            turn = math.radians(swing + plate.random.uniform(-8, 8))
            onward = way * complex(math.cos(turn), math.sin(turn))
            onward = (onward - 0.10j) / abs(onward - 0.10j)
            grow(
                along(path, plate.random.uniform(0.75, 1.0))[0],
                onward,
                long * plate.random.uniform(0.66, 0.84),
                wide * 0.60,
                left - 1,
            )

    grow(foot, complex(math.sin(math.radians(lean)), -1), tall * 0.27, tall * width, 6)
    for path, wide in boughs:
        if wide > tall * 0.014:
            left, right = sides(
                path,
                wide * 1.15,
                _flared if wide > tall * 0.08 else _tapered,
                steps=10,
            )
            plate.wash(
                left + right[::-1],
                BARK,
                into=(84, 72, 66),
                strength=0.85,
                shade=0.5,
                reach=0.1,
                rim=0.2,
                lift=0.9,
            )
            plate.lines([left, right], 1.5, thin=0.6)
        else:
            plate.line(path, max(1.3, wide * 0.9), colour=(84, 70, 62), thin=0.55)
        if snow and wide < tall * 0.06 and abs((path[-1] - path[0]).imag) < abs(path[-1] - path[0]) * 0.86:
            caps = [p - 1j * wide * 0.42 for p in part(path, 0.08, 0.92, 8)]
            plate.line(caps, max(1.8, wide * 0.75), colour=SNOW, strength=1.0, thin=0.3)
    return ends


def terraces_in_snow(plate: Plate) -> None:
    """The staircase of terraces after the great snow, the house at the top with a light in it."""
    sky = [0j, 1600 + 0j, 1600 + 720j, 0 + 720j]
    plate.glaze(sky, (196, 204, 218), strength=0.9)
    plate.glaze([0j, 1600 + 0j, 1600 + 130j, 0 + 190j], (136, 152, 186), strength=0.75, soft=130)
    plate.glaze(ring(1140 + 500j, 760, 120), (244, 190, 160), strength=0.5, soft=80)
    _far_hills(plate)
    slope = smooth([0 + 590j, 300 + 530j, 700 + 480j, 1100 + 425j, 1600 + 400j])
    plate.body([*slope, 1600 + 1200j, 0 + 1200j], SNOW, strength=1.0)
    plate.glaze([*slope, 1600 + 1200j, 0 + 1200j], (176, 190, 220), strength=0.20)
    _house(plate, 1110 + 448j)
    for x, tall in ((330, 250), (480, 190), (1520, 240)):
        bare_tree(plate, complex(x, 580 - x * 0.09 if x < 1000 else 430), tall)
    tops = (520, 640, 775, 925, 1095)
    for n, y in enumerate(tops):
        _terrace(plate, n, y)
    bare_tree(plate, 240 + 1225j, 620, lean=6)
    _flakes(plate)


def _far_hills(plate: Plate) -> None:
    for y, colour, strength in ((400, (158, 166, 190), 0.5), (465, (132, 146, 174), 0.55)):
        ridge = smooth(
            [
                complex(x, y + 46 * math.sin(x / 171 + y) + 20 * math.sin(x / 57))
                for x in range(-50, 1700, 60)
            ],
            steps=4,
        )
        plate.wash([*ridge, 1650 + 740j, -50 + 740j], colour, strength=strength, rim=0.1, lift=0.6)
        firs = [p for n, p in enumerate(ridge) if n % 3 == 0]
        plate.lines(
            [arc(p + 6j, p - 1j * plate.random.uniform(8, 20), steps=3) for p in firs],
            5,
            colour=(96, 112, 136),
            strength=0.5,
            thin=0.1,
        )


def _house(plate: Plate, at: complex) -> None:
    wide, tall = 250, 170
    front = [at, at + wide, at + wide - 1j * tall, at - 1j * tall]
    plate.wash(
        front,
        (226, 208, 178),
        into=(214, 190, 160),
        strength=0.85,
        shade=0.4,
        dark=(140, 124, 120),
        reach=0.1,
    )
    plate.outline([*front, at], 2.4)
    roof = [
        at + complex(-26, -tall + 8),
        at + complex(wide + 26, -tall + 8),
        at + complex(wide - 24, -tall - 104),
        at + complex(28, -tall - 104),
    ]
    plate.wash(roof, (220, 224, 236), into=SNOW, strength=0.5, dark=SHADOW, shade=0.5)
    plate.body(roof, SNOW, strength=0.7)
    plate.outline(roof, 2.4)
    chimney = [
        at + complex(170, -tall - 92),
        at + complex(204, -tall - 92),
        at + complex(204, -tall - 160),
        at + complex(170, -tall - 160),
    ]
    plate.wash(chimney, (160, 110, 92), strength=0.8, shade=0.4)
    plate.outline(chimney, 2.0)
    plate.body([p - 8j for p in ring(at + complex(187, -tall - 156), 22, 9)], SNOW)
    smoke = smooth(
        [
            at + complex(187, -tall - 170),
            at + complex(204, -tall - 220),
            at + complex(176, -tall - 258),
            at + complex(210, -tall - 300),
        ]
    )
    left, right = sides(smoke, 44, lambda t: 0.25 + t)
    plate.body(left + right[::-1], (244, 240, 238), strength=0.55, soft=10)
    for x, y in ((30, -128), (110, -128), (190, -128), (190, -58), (30, -58)):
        pane = [
            at + complex(x, y),
            at + complex(x + 34, y),
            at + complex(x + 34, y + 44),
            at + complex(x, y + 44),
        ]
        lit = (x, y) in ((30, -58), (110, -128))
        plate.wash(pane, (250, 196, 92) if lit else (120, 126, 140), strength=0.95, rim=0.3)
        plate.outline(pane, 1.6)
        plate.lines(
            [arc(pane[0] + 17, pane[3] + 17, steps=4), arc(pane[0] + 20j, pane[1] + 20j, steps=4)], 1.4
        )
        if lit:
            plate.body(ring(pane[0] + 17 + 22j, 60, 52), (255, 222, 150), strength=0.28, soft=26)
    door = [at + complex(108, 0), at + complex(150, 0), at + complex(150, -84), at + complex(108, -84)]
    plate.wash(door, (96, 116, 108), strength=0.9, shade=0.3)
    plate.outline(door, 2.0)
    _glasshouse(plate, at + complex(wide + 6, 0))


def _glasshouse(plate: Plate, at: complex) -> None:
    frame = [at, at + 150, at + 150 - 66j, at + complex(0, -128)]
    plate.wash(frame, (196, 212, 208), strength=0.7, rim=0.3)
    plate.body(
        [at + complex(0, -128), at + 150 - 66j, at + 150 - 52j, at + complex(0, -108)], SNOW, strength=0.95
    )
    bars = [arc(at + x, at + complex(x, -128 + x * 62 / 150), steps=4) for x in (25, 50, 75, 100, 125)]
    plate.lines([*bars, arc(at - 40j, at + 150 - 40j, steps=8)], 1.8)
    plate.outline(frame, 2.2)


def _terrace(plate: Plate, n: int, y: float) -> None:
    """One step of the slope: snow on the bed, a capped wall below it, a flight of stairs through the wall."""
    random = plate.random
    left, right = -20.0, 1620.0
    drop = 30 - n * 4
    top = smooth(
        [
            complex(x, y + drop * math.cos(x / 1600 * 2.2 + n) + random.uniform(-5, 5))
            for x in range(int(left), int(right) + 1, 164)
        ],
        steps=6,
    )
    height = 52 + n * 9
    bed = [*[p - 1j * (34 + n * 6) for p in top], *top[::-1]]
    plate.body(bed, SNOW, strength=1.0, soft=5)
    plate.glaze(
        [p - 1j * 10 for p in top] + [p - 1j * 46 for p in top[::-1]], (166, 184, 218), strength=0.25, soft=12
    )
    wall(plate, top, height, rows=3 if n < 2 else 4, stone=40 + n * 7, strength=0.8, ink=1.5)
    plate.glaze([*top, *[p + 1j * height for p in top[::-1]]], (110, 116, 150), strength=0.26)
    _cap(plate, top, 14 + n * 3)
    foot = [p + 1j * height for p in top]
    drift = [*[p - 1j * random.uniform(4, 14) for p in foot[::4]], *[p + 30j for p in foot[::-4]]]
    plate.body(smooth(drift, closed=True, steps=4), SNOW, strength=1.0, soft=3)
    _flight(plate, top, height, 0.62 - 0.13 * (n % 2) + 0.015 * n, n)
    _winter_rows(plate, top, n)


def _cap(plate: Plate, top: Path, thick: float) -> None:
    upper = [p - 1j * thick * (0.8 + 0.3 * math.sin(k * 0.7)) for k, p in enumerate(top)]
    lower = [p + 1j * thick * (0.25 + 0.2 * math.sin(k * 1.9)) for k, p in enumerate(top)]
    plate.body([*upper, *lower[::-1]], SNOW, strength=1.0)
    plate.glaze(
        [*lower, *[p - 1j * thick * 0.45 for p in lower[::-1]]], (150, 168, 206), strength=0.5, soft=2
    )
    plate.lines([lower], 1.4, strength=0.5, thin=0.6)


def _flight(plate: Plate, top: Path, height: float, where: float, n: int) -> None:
    steps = 5 + n // 2
    start = along(top, where)[0]
    wide, go = 64 + n * 10, 13 + n * 2.2
    side = 1 if n % 2 else -1
    for k in range(steps):
        corner = start + complex(side * go * k, height * k / steps - 8)
        tread = [corner, corner + wide, corner + wide + 1j * height / steps, corner + 1j * height / steps]
        plate.wash(tread, (128, 126, 136), into=(150, 140, 136), strength=0.9, rim=0.2)
        plate.body(
            [
                corner - 5j,
                corner + wide - 5j,
                corner + wide + 1j * height / steps * 0.36,
                corner + 1j * height / steps * 0.36,
            ],
            SNOW,
        )
        plate.lines(
            [
                arc(tread[3], tread[2], steps=6),
                arc(tread[1], tread[2], steps=3),
                arc(tread[0], tread[3], steps=3),
            ],
            1.5,
            strength=0.7,
        )


def _winter_rows(plate: Plate, top: Path, n: int) -> None:
    """What stands out of the snow: kale, sticks, leeks."""
    random = plate.random
    for k in range(26):
        t = 0.04 + k / 27 + random.uniform(-0.008, 0.008)
        if (n == 1 and 0.10 < t < 0.45) or (n == 3 and 0.66 < t < 0.95):
            _kale(plate, along(top, t)[0] - 1j * random.uniform(12, 26), 52 + n * 13)
        elif n == 2 and (t < 0.3 or t > 0.75):
            foot = along(top, t)[0] - 20j
            plate.line(
                arc(foot, foot + complex(random.uniform(-6, 6), -46), steps=5), 2.6, colour=BARK, thin=0.7
            )


def _kale(plate: Plate, foot: complex, tall: float) -> None:
    """A kale that stands through the winter: a bare stem, a head of long leaves that hang, snow on them."""
    random = plate.random
    head = foot - 1j * tall * 0.8
    plate.line(
        arc(foot, head, bend=random.uniform(-0.06, 0.06)), tall * 0.10, colour=(112, 118, 96), thin=0.8
    )
    for swing in (-95, 95, -70, 72, -42, 45, -18, 20, 2):
        turn = math.radians(swing + random.uniform(-8, 8))
        tip = head + tall * complex(
            0.62 * math.sin(turn), -0.72 * math.cos(turn) + 0.30 * abs(math.sin(turn))
        )
        rise = head + tall * complex(0.34 * math.sin(turn), -0.5 * math.cos(turn) - 0.10)
        left, right = sides(
            smooth([head, rise, tip], steps=8),
            tall * 0.17,
            lambda t: math.sin(math.pi * t**0.9) ** 0.5,
            steps=16,
        )
        plate.wash(left + right[::-1], (86, 108, 100), into=(60, 88, 78), strength=0.92, rough=tall * 0.035)
        plate.lines([left, right], 1.1, strength=0.55)
        if random.random() < 0.6:
            plate.line(
                part(left if swing > 0 else right, 0.25, 0.8),
                tall * 0.055,
                colour=SNOW,
                strength=0.95,
                thin=0.2,
            )


def _flakes(plate: Plate) -> None:
    random = plate.random
    spots = [complex(random.uniform(20, 1580), random.uniform(20, plate.tall - 40)) for _ in range(420)]
    plate.dots(spots[:300], 3.4, colour=SNOW, strength=0.85)
    plate.dots(spots[300:], 5.6, colour=SNOW, strength=0.8)
