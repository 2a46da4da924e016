"""Plates of the nightshades: a truss of tomatoes, and potatoes as they are lifted."""

from __future__ import annotations

import math

from pictures.leaves import pinnate, stalk
from pictures.plate import Colour, Plate
from pictures.shapes import along, arc, ring, sides, smooth

LEAF: tuple[Colour, ...] = ((122, 148, 84), (108, 138, 78), (140, 160, 92))
LEAF_DEEP: Colour = (70, 100, 58)
VEIN: Colour = (180, 192, 132)


def tomatoes(plate: Plate) -> None:
    """A tomato plant on its string: one truss ripening from the stem, one in flower."""
    stem = smooth([690 + 1900j, 720 + 1500j, 690 + 1080j, 740 + 640j, 720 + 220j, 735 + 60j], steps=20)
    plate.line(arc(760 + 30j, 640 + 1930j, bend=0.004), 6, colour=(190, 170, 130), thin=0.9)
    for t, end, bend in (
        (0.91, 410 + 236j, 0.08),
        (0.72, 330 + 600j, 0.12),
        (0.60, 1170 + 600j, -0.14),
        (0.38, 300 + 980j, 0.14),
        (0.16, 320 + 1440j, 0.12),
        (0.20, 1110 + 1720j, -0.14),
    ):
        pinnate(
            plate,
            arc(along(stem, t)[0], end, bend=bend),
            236,
            pairs=3,
            colours=LEAF,
            into=LEAF_DEEP,
            vein=VEIN,
            width=0.66,
        )
    stalk(plate, stem, 40, end=22, colour=(130, 152, 90), into=LEAF_DEEP)
    hairs = []
    for _ in range(130):
        here, way = along(stem, plate.random.random())
        side = plate.random.choice((-1j, 1j))
        hairs.append(arc(here + way * side * 14, here + way * side * plate.random.uniform(21, 29), steps=3))
    plate.lines(hairs, 1.4, strength=0.5, thin=0.2)
    _flowers(plate, along(stem, 0.86)[0])
    _truss(plate, along(stem, 0.50)[0])


def _flowers(plate: Plate, start: complex) -> None:
    line = smooth([start, start + 170 - 40j, start + 340 + 20j, start + 430 + 110j])
    stalk(plate, line, 11, end=6, colour=(138, 158, 92))
    for t, drop in ((0.5, 60), (0.75, 70), (1.0, 56)):
        foot = along(line, t)[0]
        head = foot + complex(10, drop)
        plate.line(arc(foot, head, bend=0.15), 6, colour=(126, 150, 84), thin=0.8)
        for swing in (-70, -35, 0, 35, 70):
            way = complex(math.sin(math.radians(swing)), math.cos(math.radians(swing)) * 0.8)
            left, right = sides(
                arc(head, head + way * 60, bend=0.12 * swing / 70),
                24,
                lambda t: math.sin(math.pi * t**0.8) ** 0.8,
            )
            plate.wash(
                left + right[::-1], (248, 208, 70), into=(240, 182, 60), strength=0.95, dark=(200, 140, 40)
            )
            plate.lines([left, right], 1.8)
        cone = smooth([head - 8, head + 8, head + 4 + 44j, head - 4 + 44j], closed=True)
        plate.wash(cone, (230, 164, 44), strength=0.95, shade=0.4)
        plate.outline(cone, 1.8)


def _truss(plate: Plate, start: complex) -> None:
    line = smooth(
        [
            start,
            start + complex(150, 10),
            start + complex(320, 150),
            start + complex(390, 420),
            start + complex(385, 690),
        ],
        steps=16,
    )
    stalk(plate, line, 18, end=9, colour=(138, 156, 90))
    green: Colour = (156, 178, 84)
    fruits = (
        (1.0, 20 + 70j, 62, green, (176, 190, 96), (88, 112, 48)),
        (0.86, -96 + 56j, 86, (214, 168, 70), (186, 178, 80), (140, 96, 40)),
        (0.80, 104 + 50j, 92, (226, 142, 62), (214, 170, 76), (150, 76, 36)),
        (0.64, -122 + 74j, 112, (222, 92, 52), (232, 138, 64), (140, 40, 30)),
        (0.56, 128 + 84j, 120, (208, 60, 44), (224, 100, 54), (118, 24, 28)),
        (0.40, -120 + 150j, 132, (204, 48, 40), (218, 80, 48), (110, 18, 26)),
    )
    for t, offset, size, colour, into, dark in fruits:
        foot = along(line, t)[0]
        _tomato(plate, foot, foot + offset, size, colour, into, dark)


def _tomato(
    plate: Plate, foot: complex, centre: complex, size: float, colour: Colour, into: Colour, dark: Colour
) -> None:
    random = plate.random
    top = centre - 1j * size * 0.82
    skin = [
        centre
        + size
        * complex(
            1.06 * math.cos(a),
            0.94 * math.sin(a)
            - (0.10 * math.exp(-((math.cos(a)) ** 2) * 9) * (-1 if math.sin(a) < 0 else 0)),
        )
        for a in (2 * math.pi * n / 60 for n in range(60))
    ]
    plate.wash(skin, colour, into=into, strength=0.97, shade=0.62, dark=dark, reach=0.2)
    plate.glaze(
        ring(centre + complex(0, -size * 0.66), size * 0.62, size * 0.2),
        (128, 128, 50),
        strength=0.35,
        soft=size * 0.1,
    )
    plate.body(
        ring(centre + complex(-size * 0.46, -size * 0.30), size * 0.12, size * 0.28, turn=28),
        (255, 250, 240),
        strength=0.75,
        soft=size * 0.06,
    )
    plate.body(
        ring(centre + complex(size * 0.5, size * 0.5), size * 0.3, size * 0.1, turn=-42),
        (250, 220, 190),
        strength=0.22,
        soft=size * 0.07,
    )
    plate.lines(
        [
            arc(top + 0.05j * size, centre + complex(x * size, 0.2 * size), bend=-x * 0.25)
            for x in (-0.55, -0.2, 0.25, 0.6)
        ],
        1.2,
        colour=dark,
        strength=0.35,
        thin=0.1,
    )
    plate.outline(skin, 2.8)
    plate.line(smooth([foot, (foot + top) / 2 + 6, top]), 9, colour=(112, 138, 74), thin=0.85)
    knee = (foot + top) / 2 + 6
    plate.line(arc(knee - 5, knee + 5, steps=3), 11, colour=(120, 144, 80), thin=0.8)
    for swing in (-128, -92, -50, -10, 34, 78, 118):
        turn = math.radians(swing + random.uniform(-8, 8))
        tip = top + complex(math.sin(turn) * 0.72, 0.16 + 0.40 * math.cos(turn)) * size * random.uniform(
            0.85, 1.05
        )
        left, right = sides(
            arc(top, tip, bend=0.16 if swing < 0 else -0.16),
            size * 0.19,
            lambda t: min(1.0, 0.5 + t * 2) * (1 - t) ** 0.7,
        )
        plate.wash(left + right[::-1], (112, 146, 72), into=(80, 116, 56), strength=0.97, rim=0.25)
        plate.lines([left, right], 1.7)


def potatoes(plate: Plate) -> None:
    """A potato plant in September as the fork goes under it: what is above, and what was hidden."""
    ground = smooth([complex(x, 640 + 16 * math.sin(x / 130)) for x in range(0, 1700, 100)])
    for end, bend in (
        (300 + 420j, 0.16),
        (420 + 290j, 0.12),
        (660 + 240j, 0.04),
        (880 + 300j, -0.10),
        (1000 + 430j, -0.16),
    ):
        foot = 650 + 640j + complex((end.real - 650) * 0.08, 0)
        pinnate(
            plate,
            arc(foot, end, bend=bend),
            138,
            pairs=3,
            colours=((142, 150, 84), (164, 158, 84), (124, 142, 82)),
            into=(92, 104, 58),
            teeth=0,
            wave=5,
            vein=(196, 196, 136),
            width=0.66,
        )
    soil = [*ground, 1700 + 1300j, 0 + 1300j]
    plate.wash(soil, (124, 96, 72), into=(98, 76, 60), strength=0.92, rim=0.1)
    _crumbs(plate)
    for _ in range(30):
        spot = complex(plate.random.uniform(70, 1530), plate.random.uniform(720, 1180))
        pebble = smooth(
            [
                spot + plate.random.uniform(10, 26) * complex(math.cos(a), 0.7 * math.sin(a))
                for a in (0, 1, 2, 3, 4, 5)
            ],
            closed=True,
            steps=5,
        )
        plate.wash(
            pebble,
            plate.random.choice([(178, 168, 150), (160, 150, 138), (190, 176, 150)]),
            strength=0.9,
            shade=0.5,
        )
        plate.outline(pebble, 1.5)
    spots = (
        (360 + 850j, 105, 12),
        (560 + 930j, 122, -18),
        (780 + 870j, 112, 20),
        (930 + 1020j, 98, -8),
        (690 + 1090j, 92, 6),
        (450 + 1070j, 84, -30),
        (1010 + 830j, 74, 30),
        (270 + 1000j, 62, 15),
    )
    stolons = []
    for spot, size, _turn in spots:
        stolons.append(
            smooth(
                [
                    650 + 690j + (spot.real - 650) * 0.05,
                    (650 + 700j) * 0.5 + spot * 0.5 - 40j,
                    spot - 1j * size * 0.5,
                ]
            )
        )
    plate.lines(
        [arc(650 + 650j, 650 + 760j + x, bend=x / 900) for x in (-60, -25, 10, 45)],
        7,
        colour=(222, 206, 172),
        thin=0.2,
    )
    plate.lines(stolons, 6, colour=(228, 212, 178), thin=0.5, strength=0.95)
    for spot, size, turn in spots:
        _potato(plate, spot, size, turn)
    plate.line(ground, 2.6, thin=0.8)
    _fork(plate, 1300 + 655j)
    _thrown_up(plate)


def _thrown_up(plate: Plate) -> None:
    """The earth that heaves where the tines go in."""
    top = smooth([1090 + 650j, 1180 + 606j, 1270 + 622j, 1350 + 604j, 1430 + 618j, 1520 + 652j])
    heap = [*top, 1500 + 690j, 1300 + 712j, 1110 + 690j]
    plate.wash(heap, (124, 96, 72), into=(98, 76, 60), strength=0.95, rim=0, shade=0.25, dark=(84, 62, 48))
    random = plate.random
    dark = [complex(random.uniform(1120, 1490), random.uniform(630, 700)) for _ in range(60)]
    plate.dots(dark, 4.4, colour=(78, 58, 46), strength=0.6)
    plate.dots([p - complex(6, 9) for p in dark[::3]], 3.6, colour=(190, 164, 130), strength=0.55)
    plate.line(top, 2.4, thin=0.3)


def _crumbs(plate: Plate) -> None:
    random = plate.random
    dark = [complex(random.uniform(40, 1560), random.uniform(660, 1240)) for _ in range(900)]
    plate.dots(dark, 4.2, colour=(78, 58, 46), strength=0.55)
    pale = [complex(random.uniform(40, 1560), random.uniform(660, 1240)) for _ in range(340)]
    plate.dots(pale, 3.4, colour=(190, 164, 130), strength=0.5)


def _potato(plate: Plate, centre: complex, size: float, turn: float) -> None:
    random = plate.random
    swing = complex(math.cos(math.radians(turn)), math.sin(math.radians(turn)))
    skin = smooth(
        [
            centre
            + swing * size * complex(1.22 * math.cos(a), 0.84 * math.sin(a)) * random.uniform(0.94, 1.06)
            for a in (2 * math.pi * n / 10 for n in range(10))
        ],
        closed=True,
    )
    plate.glaze([p + 6 + 10j for p in skin], (60, 44, 36), strength=0.5, soft=9)
    plate.wash(
        skin,
        (232, 204, 140),
        into=(216, 180, 118),
        strength=0.92,
        shade=0.72,
        dark=(142, 102, 62),
        reach=0.17,
    )
    plate.body(
        ring(centre + swing * complex(-0.4, -0.34) * size, size * 0.34, size * 0.15, turn=turn - 15),
        (255, 246, 214),
        strength=0.5,
        soft=size * 0.08,
    )
    for _ in range(6):
        spot = centre + swing * size * complex(random.uniform(-0.85, 0.85), random.uniform(-0.5, 0.5))
        plate.line(
            arc(spot - swing * size * 0.09, spot + swing * size * 0.09, bend=-0.4, steps=8),
            2.4,
            colour=(120, 84, 52),
            thin=0.2,
        )
        plate.glaze(
            ring(spot + 3j, size * 0.09, size * 0.05, turn=turn), (150, 106, 64), strength=0.6, soft=3
        )
    plate.dots(
        [
            centre + swing * size * complex(random.uniform(-0.9, 0.9), random.uniform(-0.6, 0.6))
            for _ in range(26)
        ],
        2.0,
        colour=(134, 98, 64),
        strength=0.6,
    )
    plate.outline(skin, 2.6)


def _fork(plate: Plate, at: complex) -> None:
    """A digging fork, its tines already in the ground; leaning a little."""
    lean = 0.10

    def spot(x: float, y: float) -> complex:
        return at + complex(x - y * lean, y)

    for x in (-84, -28, 28, 84):
        left, right = sides(arc(spot(x, -110), spot(x * 0.98, 330)), 20, lambda t: 1 - t * 0.75)
        plate.wash(left + right[::-1], (120, 122, 130), into=(96, 98, 108), strength=0.92, shade=0.4)
        plate.lines([left, right], 2.0)
    head = smooth(
        [
            spot(-98, -96),
            spot(-84, -132),
            spot(-30, -150),
            spot(30, -150),
            spot(84, -132),
            spot(98, -96),
            spot(60, -106),
            spot(0, -116),
            spot(-60, -106),
        ],
        closed=True,
    )
    plate.wash(head, (126, 128, 136), strength=0.92, shade=0.5, dark=(70, 72, 84))
    plate.outline(head, 2.4)
    socket = [spot(-19, -140), spot(19, -140), spot(15, -260), spot(-15, -260)]
    plate.wash(socket, (112, 114, 124), strength=0.95, shade=0.5)
    plate.outline(socket, 2.2)
    left, right = sides(arc(spot(0, -250), spot(0, -500)), 30, lambda t: 1.0)
    plate.wash(left + right[::-1], (196, 152, 98), into=(170, 126, 80), strength=0.92, shade=0.4)
    plate.lines([left, right], 2.4)
    plate.lines([arc(spot(x, -270), spot(x, -490), bend=0.01) for x in (-6, 2, 7)], 1.2, strength=0.4)
    outer = smooth(
        [
            spot(-15, -485),
            spot(-62, -560),
            spot(-52, -585),
            spot(52, -585),
            spot(62, -560),
            spot(15, -485),
            spot(14, -510),
            spot(34, -555),
            spot(-34, -555),
            spot(-14, -510),
        ],
        closed=True,
        steps=6,
    )
    plate.wash(outer, (186, 142, 90), strength=0.95, shade=0.5, dark=(110, 78, 50))
    plate.outline(outer, 2.4)
