"""The plate of the terraces in snow, and bare trees."""

from __future__ import annotations

import math

from pictures.buildings import SNOW, flight, hills, house, wall
from pictures.plate import Colour, Plate
from pictures.shapes import Path, along, arc, part, ring, sides, smooth

BARK: Colour = (104, 84, 68)


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
    hills(plate, ((400, (158, 166, 190), 0.5), (465, (132, 146, 174), 0.55)))
    slope = smooth([0 + 590j, 300 + 530j, 700 + 480j, 1100 + 425j, 1600 + 400j])
    plate.body([*slope, 1600 + 1200j, 0 + 1200j], SNOW, strength=1.0)
    plate.glaze([*slope, 1600 + 1200j, 0 + 1200j], (176, 190, 220), strength=0.20)
    house(plate, 1110 + 448j, is_winter=True)
    for x, tall in ((330, 250), (480, 190), (1520, 240)):
        bare_tree(plate, complex(x, 580 - x * 0.09 if x < 1000 else 430), tall)
    tops = (520, 640, 775, 925, 1095)
    for n, y in enumerate(tops):
        _terrace(plate, n, y)
    bare_tree(plate, 240 + 1225j, 620, lean=6)
    _flakes(plate)


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
    flight(plate, top, height, 0.62 - 0.13 * (n % 2) + 0.015 * n, n, is_winter=True)
    _winter_rows(plate, top, n)


def _cap(plate: Plate, top: Path, thick: float) -> None:
    upper = [p - 1j * thick * (0.8 + 0.3 * math.sin(k * 0.7)) for k, p in enumerate(top)]
    lower = [p + 1j * thick * (0.25 + 0.2 * math.sin(k * 1.9)) for k, p in enumerate(top)]
    plate.body([*upper, *lower[::-1]], SNOW, strength=1.0)
    plate.glaze(
        [*lower, *[p - 1j * thick * 0.45 for p in lower[::-1]]], (150, 168, 206), strength=0.5, soft=2
    )
    plate.lines([lower], 1.4, strength=0.5, thin=0.6)


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
