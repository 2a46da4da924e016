"""The plate of the tools on the shed wall."""

from __future__ import annotations

import math
from collections.abc import Callable

from pictures.plate import Colour, Plate
from pictures.shapes import Path, arc, ring, sides, smooth

ASH: tuple[Colour, Colour] = (206, 166, 112), (176, 134, 86)
STEEL: tuple[Colour, Colour] = (136, 140, 148), (110, 114, 126)


def tools(plate: Plate) -> None:
    """What hangs on the shed wall: rake, spade, hoe, trowel, hand fork, dibber, and the can below."""
    plate.glaze([40 + 40j, 1560 + 40j, 1560 + 1170j, 40 + 1170j], (96, 86, 76), strength=0.9)
    for n in range(7):
        board = [
            complex(40 + n * 218, 40),
            complex(40 + (n + 1) * 218 - 4, 40),
            complex(40 + (n + 1) * 218 - 4, 1170),
            complex(40 + n * 218, 1170),
        ]
        plate.wash(board, (206, 196, 178), into=(190, 180, 164), strength=0.7, rim=0.25, dark=(130, 120, 108))
        grain = [
            arc(
                complex(60 + n * 218 + x, 60),
                complex(60 + n * 218 + x + plate.random.uniform(-8, 8), 1150),
                bend=plate.random.uniform(-0.01, 0.01),
                steps=30,
            )
            for x in (10, 44, 90, 128, 170)
        ]
        plate.lines(grain, 1.5, strength=0.28)
        knot = complex(60 + n * 218 + plate.random.uniform(30, 160), plate.random.uniform(200, 1000))
        plate.lines([ring(knot, r, r * 1.7) for r in (6, 13, 20)], 1.6, strength=0.4)
    floor = [40 + 1080j, 1560 + 1080j, 1560 + 1180j, 40 + 1180j]
    plate.wash(floor, (150, 136, 118), strength=0.9)
    _hung(plate, 250, 980, _spade)
    _hung(plate, 470, 1010, _rake)
    _hung(plate, 680, 900, _hoe)
    _small(plate)
    _can(plate, 1180 + 850j)


def _shadow(plate: Plate, outline: Path) -> None:
    plate.glaze([p + 16 + 12j for p in outline], (96, 84, 78), strength=0.42, soft=7)


def _rod(plate: Plate, start: complex, end: complex, width: float) -> None:
    left, right = sides(arc(start, end, bend=0.004), width, lambda t: 1.0)
    _shadow(plate, left + right[::-1])
    plate.wash(
        left + right[::-1], ASH[0], into=ASH[1], strength=0.95, shade=0.45, dark=(120, 84, 54), reach=0.04
    )
    plate.lines(
        [[a + (b - a) * s for a, b in zip(left, right, strict=True)] for s in (0.3, 0.65)], 1.3, strength=0.35
    )
    plate.lines([left, right], 2.3)


def _metal(plate: Plate, outline: Path) -> None:
    _shadow(plate, outline)
    plate.wash(outline, STEEL[0], into=STEEL[1], strength=0.95, shade=0.45, dark=(72, 76, 90), reach=0.16)
    plate.outline(outline, 2.5)


def _hung(plate: Plate, x: float, foot: float, head: Callable[[Plate, complex], None]) -> None:
    plate.dots([complex(x - 22, 178), complex(x + 22, 178)], 8, strength=1.0)
    head(plate, complex(x, foot))


def _spade(plate: Plate, foot: complex) -> None:
    _rod(plate, foot - 740j, foot - 250j, 34)
    grip = smooth(
        [
            foot + p
            for p in (
                -17 - 720j,
                -60 - 800j,
                -56 - 832j,
                56 - 832j,
                60 - 800j,
                17 - 720j,
                14 - 750j,
                34 - 796j,
                -34 - 796j,
                -14 - 750j,
            )
        ],
        closed=True,
        steps=6,
    )
    _shadow(plate, grip)
    plate.wash(grip, ASH[1], strength=0.95, shade=0.4)
    plate.outline(grip, 2.4)
    _metal(
        plate,
        [
            foot + p
            for p in (
                -19 - 400j,
                19 - 400j,
                24 - 290j,
                92 - 282j,
                96 - 268j,
                88 - 40j,
                60 - 6j,
                0 + 4j,
                -60 - 6j,
                -88 - 40j,
                -96 - 268j,
                -92 - 282j,
                -24 - 290j,
            )
        ],
    )
    plate.lines(
        [
            arc(foot - 270j, foot - 60j, bend=0.01),
            arc(foot - 20 - 262j, foot - 34 - 120j),
            arc(foot + 20 - 262j, foot + 34 - 120j),
        ],
        1.8,
        strength=0.5,
    )
    plate.wash(
        smooth(
            [foot + p for p in (-84 - 62j, -30 - 84j, 34 - 58j, 86 - 74j, 62 - 8j, 0 + 2j, -60 - 8j)],
            closed=True,
        ),
        (132, 104, 76),
        strength=0.75,
        lift=0.3,
        rough=4,
    )


def _rake(plate: Plate, foot: complex) -> None:
    _rod(plate, foot - 850j, foot - 40j, 26)
    bar = [foot + p for p in (-106 - 42j, 106 - 42j, 106 - 18j, -106 - 18j)]
    _metal(plate, bar)
    for n in range(9):
        x = -98 + n * 24.5
        _metal(
            plate,
            [
                foot + complex(x - 5, -20),
                foot + complex(x + 5, -20),
                foot + complex(x + 2, 44),
                foot + complex(x - 2, 44),
            ],
        )


def _hoe(plate: Plate, foot: complex) -> None:
    _rod(plate, foot - 740j, foot - 60j, 26)
    neck = smooth([foot - 70j, foot - 10j, foot + 24 + 26j], steps=8)
    left, right = sides(neck, 20, lambda t: 1.0)
    _metal(plate, left + right[::-1])
    _metal(plate, [foot + p for p in (-64 + 10j, 74 + 10j, 86 + 84j, -76 + 84j)])


def _small(plate: Plate) -> None:
    """Trowel, hand fork, dibber, a ball of twine, and labels."""
    for x in (900, 1080, 1260, 1430):
        plate.dots([complex(x, 160)], 9, strength=1.0)
    for x in (900, 1080):
        plate.line(
            smooth([complex(x - 6, 190), complex(x, 156), complex(x + 6, 190)]),
            6,
            colour=(170, 120, 70),
            thin=0.8,
        )
        _rod(plate, complex(x, 190), complex(x, 330), 36)
    _metal(
        plate,
        smooth(
            [900 + 320j, 890 + 372j, 850 + 400j, 852 + 480j, 900 + 556j, 948 + 480j, 950 + 400j, 910 + 372j],
            closed=True,
        ),
    )
    plate.line(arc(900 + 392j, 900 + 530j), 2, strength=0.6)
    for x in (-36, 0, 36):
        prong = smooth(
            [1080 + 370j, complex(1080 + x, 400), complex(1080 + x, 470), complex(1080 + x * 0.94, 540)],
            steps=8,
        )
        left, right = sides(prong, 19, lambda t: 1 - 0.6 * t)
        _metal(plate, left + right[::-1])
    _metal(plate, [1070 + 320j, 1090 + 320j, 1088 + 384j, 1072 + 384j])
    plate.line(smooth([1254 + 196j, 1260 + 156j, 1266 + 196j]), 6, colour=(170, 120, 70), thin=0.8)
    dibber = smooth(
        [
            1214 + 200j,
            1306 + 200j,
            1308 + 226j,
            1282 + 236j,
            1284 + 380j,
            1262 + 480j,
            1258 + 480j,
            1236 + 380j,
            1238 + 236j,
            1212 + 226j,
        ],
        closed=True,
        steps=6,
    )
    _shadow(plate, dibber)
    plate.wash(dibber, ASH[0], into=ASH[1], strength=0.95, shade=0.5, dark=(120, 84, 54))
    plate.lines(
        [arc(complex(1238, y), complex(1282, y), bend=-0.06) for y in (270, 310, 350)],
        2.0,
        colour=(150, 60, 50),
        strength=0.8,
    )
    plate.outline(dibber, 2.4)
    ball = ring(1430 + 270j, 76, 82)
    plate.line(smooth([1430 + 160j, 1426 + 180j, 1432 + 200j]), 6, colour=(180, 146, 96), thin=0.9)
    _shadow(plate, ball)
    plate.wash(ball, (204, 172, 120), into=(182, 146, 96), strength=0.95, shade=0.6, dark=(120, 88, 56))
    turns = []
    for k in range(3):
        swing = complex(math.cos(k * 1.1 + 0.3), math.sin(k * 1.1 + 0.3))
        turns += [
            arc(
                1430 + 270j - swing * 76 + swing * 1j * d,
                1430 + 270j + swing * 76 + swing * 1j * d,
                bend=0.22 - d / 300,
            )
            for d in range(-54, 56, 12)
        ]
    plate.lines(turns, 2.0, colour=(116, 86, 54), strength=0.55, within=ball)
    plate.outline(ball, 2.6)
    plate.line(
        smooth([1490 + 320j, 1530 + 400j, 1500 + 470j, 1528 + 540j]), 6, colour=(190, 156, 104), thin=0.7
    )


def _can(plate: Plate, at: complex) -> None:
    """A zinc watering can on the floor."""
    zinc: tuple[Colour, Colour] = (168, 178, 182), (142, 154, 162)
    plate.glaze(ring(at + complex(20, 236), 270, 34), (90, 78, 70), strength=0.6, soft=14)
    spout = [at + p for p in (-130 + 150j, -150 + 90j, -330 - 110j, -352 - 92j, -190 + 170j, -130 + 214j)]
    rose = [at + p for p in (-372 - 66j, -304 - 138j, -330 - 178j, -412 - 92j)]
    brass: tuple[Colour, Colour] = (196, 158, 88), (164, 126, 68)
    hoop = smooth([at + p for p in (118 - 116j, 250 - 150j, 282 + 0j, 150 + 190j)], steps=12)
    left, right = sides(hoop, 26, lambda t: 1.0)
    for outline, (a, b) in ((left + right[::-1], zinc), (spout, zinc), (rose, brass)):
        _shadow(plate, outline)
        plate.wash(outline, a, into=b, strength=0.95, shade=0.5, dark=(86, 92, 104))
        plate.outline(outline, 2.6)
    body = smooth(
        [
            at + p
            for p in (
                -142 - 110j,
                142 - 110j,
                152 + 30j,
                160 + 228j,
                80 + 246j,
                -80 + 246j,
                -160 + 228j,
                -152 + 30j,
            )
        ],
        closed=True,
        steps=8,
    )
    _shadow(plate, body)
    plate.wash(body, zinc[0], into=zinc[1], strength=0.95, shade=0.6, dark=(84, 92, 106), reach=0.14)
    for y in (-84, 60, 204):
        plate.lines(
            [
                arc(at + complex(-150, y), at + complex(152, y), bend=-0.05),
                arc(at + complex(-150, y + 12), at + complex(152, y + 12), bend=-0.05),
            ],
            2.0,
            strength=0.6,
        )
    plate.body(ring(at + complex(-82, 40), 18, 110, turn=2), (240, 246, 248), strength=0.5, soft=12)
    plate.outline(body, 2.8)
    mouth = ring(at - 112j, 142, 34)
    plate.wash(mouth, (92, 100, 108), strength=0.95, shade=0.3)
    plate.outline(mouth, 2.6)
    top = smooth([at + p for p in (-110 - 130j, -60 - 262j, 60 - 262j, 110 - 130j)], steps=12)
    left, right = sides(top, 24, lambda t: 1.0)
    plate.wash(left + right[::-1], zinc[0], into=zinc[1], strength=0.95, shade=0.4, dark=(86, 92, 104))
    plate.lines([left, right], 2.5)
