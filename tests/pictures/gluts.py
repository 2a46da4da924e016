"""Plates of what was too much: the pumpkin that came by itself, the courgettes in their basket."""

from __future__ import annotations

import math

from pictures.leaves import palm, stalk, tendril
from pictures.plate import Colour, Plate
from pictures.shapes import along, arc, part, ring, sides, smooth

ORANGE: Colour = (226, 116, 48)
VINE: Colour = (140, 160, 88)
VINE_DEEP: Colour = (86, 112, 60)


def pumpkin(plate: Plate) -> None:
    """The pumpkin on the Mound, among its leaves, with one flower still open."""
    soil = smooth([0 + 900j, 300 + 830j, 800 + 800j, 1300 + 850j, 1600 + 920j])
    plate.wash([*soil, 1600 + 1200j, 0 + 1200j], (134, 106, 80), into=(110, 88, 68), strength=0.85, rim=0.1)
    plate.dots(
        [complex(plate.random.uniform(40, 1560), plate.random.uniform(880, 1120)) for _ in range(500)],
        4.0,
        colour=(86, 64, 50),
        strength=0.5,
    )
    vine = smooth([60 + 560j, 330 + 480j, 640 + 420j, 960 + 430j, 1260 + 500j, 1500 + 420j], steps=16)
    for t, towards, size in (
        (0.10, -0.5 - 1j, 230),
        (0.28, 0.2 - 1j, 285),
        (0.52, -0.1 - 1j, 270),
        (0.72, 0.6 - 1j, 265),
        (0.95, 0.7 - 1j, 170),
    ):
        foot = along(vine, t)[0]
        base = foot + towards / abs(towards) * 60
        stalk(plate, arc(foot, base, bend=0.1), 20, end=15, colour=VINE, into=VINE_DEEP)
        palm(
            plate,
            base,
            towards,
            size,
            lobes=5,
            depth=0.20,
            teeth=5,
            gap=40,
            bite=0.05,
            colour=plate.random.choice([(116, 144, 84), (132, 154, 88)]),
            into=(70, 102, 62),
            vein=(190, 200, 144),
            flat=0.9,
        )
    stalk(plate, vine, 32, end=20, colour=VINE, into=VINE_DEEP)
    for t in (0.18, 0.62, 0.86):
        tendril(plate, along(vine, t)[0], complex(0.6, 0.8), 190, colour=VINE_DEEP)
    _squash_flower(plate, 1290 + 610j, 150)
    _ribbed(plate, 720 + 770j, 350)
    for base, towards, size in ((300 + 800j, -0.9 - 0.2j, 225), (1190 + 900j, 1 - 0.15j, 250)):
        palm(
            plate,
            base,
            towards,
            size,
            lobes=5,
            depth=0.20,
            teeth=5,
            gap=40,
            bite=0.05,
            colour=(124, 150, 84),
            into=(72, 104, 62),
            vein=(190, 200, 144),
            flat=0.8,
        )
    grass = [
        arc(
            complex(x, 1120),
            complex(x + plate.random.gauss(0, 16), 1120 - plate.random.uniform(20, 60)),
            bend=0.1,
            steps=5,
        )
        for x in range(60, 1560, 13)
    ]
    plate.lines(grass, 4.4, colour=(116, 140, 76), strength=0.8, thin=0.1)


def _ribbed(plate: Plate, centre: complex, size: float) -> None:
    plate.glaze(
        ring(centre + complex(30, size * 0.78), size * 1.24, size * 0.24), (66, 48, 38), strength=0.6, soft=24
    )
    for x, wide in (
        (-0.92, 0.46),
        (0.92, 0.46),
        (-0.68, 0.54),
        (0.68, 0.54),
        (-0.36, 0.56),
        (0.36, 0.56),
        (0.0, 0.50),
    ):
        lobe = ring(
            centre + complex(x * size * 0.92, size * 0.04 * abs(x)),
            size * wide * 0.74,
            size * (0.80 - 0.14 * abs(x)),
            turn=x * 7,
        )
        plate.wash(
            lobe, ORANGE, into=(236, 146, 66), strength=0.96, shade=0.55, dark=(150, 56, 26), reach=0.13
        )
        plate.body(
            ring(
                centre + complex(x * size * 0.92 - size * 0.10, -size * 0.34),
                size * 0.06,
                size * 0.24,
                turn=x * 12 + 6,
            ),
            (255, 214, 160),
            strength=0.42,
            soft=size * 0.035,
        )
        lines = [
            arc(
                centre + complex((x * 0.92 + d) * size, -size * (0.62 - 0.1 * abs(x))),
                centre + complex((x * 0.92 + d) * size, size * (0.66 - 0.1 * abs(x))),
                bend=-d * 0.5,
            )
            for d in (-0.12, 0.02, 0.14)
        ]
        plate.lines(lines, 1.4, colour=(140, 60, 26), strength=0.45, thin=0.1)
        plate.outline(lobe, 2.6)
    top = centre - 1j * size * 0.72
    stem = smooth(
        [
            top + 1j * size * 0.08,
            top - 1j * size * 0.16 - size * 0.03,
            top + complex(-size * 0.16, -size * 0.36),
        ],
        steps=10,
    )
    left, right = sides(stem, size * 0.19, lambda t: 1.15 - 0.5 * t + 0.7 * (1 - t) ** 8)
    plate.wash(
        left + right[::-1], (142, 146, 86), into=(112, 120, 70), strength=0.96, shade=0.5, dark=(72, 80, 46)
    )
    plate.lines(
        [[a + (b - a) * s for a, b in zip(left, right, strict=True)] for s in (0.25, 0.5, 0.75)],
        2.2,
        strength=0.6,
    )
    plate.lines([left, right], 2.6, thin=0.5)


def _squash_flower(plate: Plate, at: complex, size: float) -> None:
    tube = [at + complex(-20, 60), at + complex(20, 60), at + complex(14, 130), at + complex(-14, 130)]
    plate.wash(tube, VINE, strength=0.9, shade=0.4)
    for swing in (-88, 88, -46, 46, 0):
        turn = math.radians(swing)
        tip = at + complex(math.sin(turn) * size * 1.1, -math.cos(turn) * size * 0.8 + 8)
        left, right = sides(
            arc(at + 64j, tip, bend=0.06 * swing / 60),
            size * 0.78,
            lambda t: math.sin(math.pi * t**0.9) ** 0.7 * (0.4 + 0.6 * t),
            steps=24,
        )
        plate.wash(
            left + right[::-1],
            (248, 190, 60),
            into=(240, 158, 46),
            strength=0.95,
            shade=0.3,
            dark=(196, 104, 26),
            rough=2.5,
        )
        plate.lines(
            [arc(at + 50j, at + 50j + (tip - at - 50j) * 0.9, bend=b) for b in (-0.05, 0, 0.05)],
            1.5,
            colour=(190, 104, 30),
            strength=0.6,
            thin=0.1,
        )
        plate.lines([left, right], 2.2)
    plate.glaze(ring(at + 20j, size * 0.2, size * 0.26), (160, 100, 30), strength=0.6, soft=12)


def courgettes(plate: Plate) -> None:
    """The week's courgettes in the willow basket, two with their flowers."""
    plate.glaze(ring(810 + 1050j, 640, 80), (150, 128, 108), strength=0.5, soft=30)
    handle = smooth([330 + 650j, 420 + 280j, 800 + 130j, 1180 + 280j, 1270 + 650j], steps=20)
    for shift, colour in ((-8j, (150, 108, 68)), (10j, (176, 132, 86))):
        left, right = sides([p + shift for p in handle], 34, lambda t: 1.0)
        plate.wash(left + right[::-1], colour, strength=0.9, shade=0.4, dark=(96, 66, 42))
        plate.lines([left, right], 2.2)
    plate.lines(
        [
            arc(along(handle, t)[0] - 20, along(handle, t + 0.02)[0] + 20, bend=0.1, steps=4)
            for t in (n / 60 for n in range(59))
        ],
        2.0,
        strength=0.6,
    )
    back = ring(800 + 640j, 490, 110)
    plate.wash(back, (120, 88, 60), strength=0.9)
    for at, turn, long, bloom in (
        (600 + 560j, -104, 430, False),
        (1010 + 570j, -70, 440, False),
        (480 + 640j, -132, 420, False),
        (1130 + 640j, -48, 420, True),
        (700 + 560j, -80, 500, True),
        (900 + 560j, -98, 470, False),
        (560 + 690j, -112, 430, False),
        (1050 + 690j, -64, 420, False),
        (800 + 660j, -90, 420, False),
        (680 + 730j, -122, 380, False),
        (930 + 730j, -66, 390, True),
    ):
        _courgette(plate, at, turn, long, bloom=bloom)
    _basket(plate)
    _courgette(plate, 420 + 1090j, 172, 410, bloom=True)
    _courgette(plate, 1090 + 1110j, 8, 440, bloom=False)


def _courgette(plate: Plate, at: complex, turn: float, long: float, *, bloom: bool) -> None:
    way = complex(math.cos(math.radians(turn)), math.sin(math.radians(turn)))
    spine = arc(
        at - way * long * 0.45, at + way * long * 0.45, bend=plate.random.uniform(-0.06, 0.06), steps=30
    )
    left, right = sides(
        spine,
        112,
        lambda t: (
            min(1.0, 0.66 + 0.5 * t) * (1 - max(0.0, (t - 0.86) / 0.14) ** 2.4) ** 0.5 if t < 1 else 0.12
        ),
        steps=50,
    )
    skin = left + right[::-1]
    end = along(spine, 1.0)[0]
    if bloom:
        for swing in (-50, 50, -22, 24, 0):
            turned = way * complex(math.cos(math.radians(swing)), math.sin(math.radians(swing)))
            a, b = sides(
                arc(end, end + turned * 118, bend=0.1), 62, lambda t: math.sin(math.pi * t**0.8) ** 0.8
            )
            plate.wash(
                a + b[::-1], (246, 184, 62), into=(236, 150, 50), strength=0.95, dark=(190, 100, 30), rough=2
            )
            plate.lines([a, b], 1.9)
    plate.wash(
        skin, (58, 96, 56), into=(80, 118, 62), strength=0.97, shade=0.6, dark=(26, 50, 32), reach=0.10
    )
    flecks = [
        along(spine, plate.random.uniform(0.04, 0.96))[0] + way * 1j * plate.random.uniform(-44, 44)
        for _ in range(150)
    ]
    plate.dots(flecks, 2.4, colour=(170, 192, 120), strength=0.6)
    ribs = [[a + (b - a) * s for a, b in zip(left, right, strict=True)] for s in (0.22, 0.42, 0.62, 0.8)]
    plate.lines([part(rib, 0.03, 0.97) for rib in ribs], 2.0, colour=(150, 178, 106), strength=0.45, thin=0.2)
    lit = 0.26 if (way * 1j).imag > 0 or (way * 1j).real > 0 else 0.74
    plate.line(
        part([a + (b - a) * lit for a, b in zip(left, right, strict=True)], 0.1, 0.9),
        11,
        colour=(206, 222, 176),
        strength=0.42,
        thin=0.1,
    )
    stem = arc(spine[0] + way * 8, spine[0] - way * 62, bend=0.08)
    a, b = sides(stem, 74, lambda t: 0.92 - 0.34 * min(1, t * 3))
    plate.wash(a + b[::-1], (156, 168, 96), into=(120, 140, 76), strength=0.96, shade=0.4, dark=(80, 98, 54))
    plate.lines([[p + (q - p) * s for p, q in zip(a, b, strict=True)] for s in (0.3, 0.6)], 1.8, strength=0.6)
    plate.lines([a, b, [a[-1], b[-1]]], 2.2)
    plate.outline(skin, 2.7)


def _basket(plate: Plate) -> None:
    """Woven willow: rods that go before and behind the stakes by turns."""
    random = plate.random
    browns: tuple[Colour, ...] = ((170, 124, 78), (150, 106, 66), (186, 142, 94), (136, 98, 64))

    def front(u: float, v: float) -> complex:
        half = 490 - 120 * v
        angle = math.pi * (1 - u)
        return complex(800 + half * math.cos(angle), 650 + 330 * v + (104 - 26 * v) * math.sin(angle))

    edge = [front(n / 60, 0) for n in range(61)]
    foot = [front(n / 60, 1) for n in range(61)]
    plate.wash(edge + foot[::-1], (112, 80, 54), strength=0.95, rim=0)
    rows, stakes = 11, 26
    for row in range(rows):
        v = (row + 0.5) / rows
        for n in range(stakes):
            if (n + row) % 2:
                continue
            u0, u1 = max(0, (n - 0.12) / stakes), min(1, (n + 1.14) / stakes)
            path = [
                front(u0 + (u1 - u0) * k / 8, v) + 1j * (-5 * math.sin(math.pi * k / 8)) for k in range(9)
            ]
            left, right = sides(path, 31, lambda t: 0.55 + 0.45 * math.sin(math.pi * t), steps=10)
            plate.wash(
                left + right[::-1],
                random.choice(browns),
                strength=0.95,
                shade=0.45,
                dark=(84, 56, 36),
                rough=0.3,
            )
            plate.lines([left, right], 1.6)
    for k in range(2):
        for n in range(30):
            a, b = n / 30, min(1.0, (n + 1.5) / 30)
            path = [
                front(a + (b - a) * i / 6, 0) + 1j * (-10 + 16 * (i / 6 if k else 1 - i / 6))
                for i in range(7)
            ]
            left, right = sides(path, 26, lambda t: 0.6 + 0.4 * math.sin(math.pi * t), steps=8)
            plate.wash(left + right[::-1], browns[(n + k) % 4], strength=0.96, shade=0.4, dark=(84, 56, 36))
            plate.lines([left, right], 1.7)
