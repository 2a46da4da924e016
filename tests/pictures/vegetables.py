"""Plates of what climbs and hangs: peas, tomatoes, beans, squash; and herbs with their guests."""

from __future__ import annotations

from pictures.leaves import YOUNG, leaf, stalk, tendril
from pictures.plate import Colour, Plate
from pictures.shapes import Path, along, arc, egg, oval, part, ring, sides, smooth

PEA: Colour = (150, 178, 92)
PEA_DEEP: Colour = (92, 130, 70)


def peas(plate: Plate) -> None:
    """A pea shoot on its stick with leaves, tendrils, flowers and pods, and one pod opened."""
    stick = arc(500 + 1890j, 690 + 70j, bend=0.01, steps=30)
    stalk(plate, stick, 26, end=12, colour=(150, 122, 92), into=(112, 90, 70))
    vine = smooth(
        [560 + 1880j, 720 + 1600j, 590 + 1290j, 770 + 980j, 660 + 680j, 790 + 400j, 730 + 190j], steps=20
    )
    nodes = (0.14, 0.31, 0.47, 0.64, 0.80, 0.94)
    stalk(plate, vine, 24, end=11, colour=PEA, into=PEA_DEEP)
    for n, t in enumerate(nodes):
        _pea_leaf(plate, vine, t, 1 if n % 2 else -1, min(1.36, 1.62 - t * 0.75))
    _pea_pod(plate, along(vine, 0.31)[0], 1120 + 1420j, 84, 1.0)
    _pea_pod(plate, along(vine, 0.31)[0], 1240 + 1300j, 74, 0.8)
    _pea_pod(plate, along(vine, 0.47)[0], 240 + 1160j, 84, -1.0)
    _pea_pod(plate, along(vine, 0.64)[0], 1200 + 790j, 66, 0.9)
    for t, way, size in ((0.80, -1 + 0.12j, 124), (0.94, 1 - 0.1j, 112)):
        foot = along(vine, t)[0]
        end = foot + way * 190
        stalk(plate, arc(foot, end, bend=0.1), 9, end=7, colour=PEA)
        _pea_flower(plate, end, size, 1 if way.real > 0 else -1)
    _open_pod(plate, 1060 + 1700j, 400)


def _pea_leaf(plate: Plate, vine: Path, t: float, side: int, grow: float) -> None:
    random = plate.random
    node, _ = along(vine, t)
    axis = smooth([node, node + complex(side * 170, -70) * grow, node + complex(side * 330, -60) * grow])
    for turn in (1, -1):
        stip = arc(
            node + complex(0, 16),
            node + complex(side * 120 * turn * 0.9, -70 + 60 * (turn < 0)) * grow,
            bend=0.15 * side,
        )
        leaf(
            plate,
            stip,
            116 * grow,
            colour=(158, 184, 104),
            into=PEA_DEEP,
            profile=egg,
            veins=4,
            vein=(200, 214, 150),
            rib=3.2,
        )
    stalk(plate, axis, 9 * grow, end=5, colour=PEA)
    for share, size in ((0.55, 150), (0.92, 128)):
        foot = along(axis, share)[0]
        for up in (-1, 1):
            tip = foot + complex(side * 0.55, up * 0.85) * size * grow
            leaf(
                plate,
                arc(foot, tip, bend=0.1 * up * side),
                size * 0.60 * grow,
                colour=random.choice([PEA, (136, 168, 92), YOUNG]),
                into=PEA_DEEP,
                profile=oval,
                veins=5,
                vein=(204, 216, 156),
                rib=3.2,
            )
    end, way = along(axis, 1.0)
    tendril(plate, end, way * complex(1, -0.2), 190 * grow, colour=(112, 142, 76))
    tendril(plate, end, way * complex(0.8, 0.6), 130 * grow, colour=(112, 142, 76))


def _pod_shape(start: complex, end: complex, width: float, side: float) -> tuple[Path, Path, Path]:
    spine = arc(start, end, bend=0.10 * side, steps=30)
    left, right = sides(spine, width, lambda t: min(1.0, (t + 0.02) * 7, (1.02 - t) * 8) ** 0.6)
    return spine, left, right


def _pea_pod(plate: Plate, node: complex, end: complex, width: float, side: float) -> None:
    start = node + complex(70 * side, 30)
    plate.line(smooth([node, node + complex(40 * side, -14), start]), 7, colour=PEA_DEEP, thin=0.8)
    spine, left, right = _pod_shape(start, end, width, side)
    plate.wash(
        left + right[::-1],
        (148, 182, 88),
        into=(170, 194, 102),
        strength=0.92,
        shade=0.6,
        dark=(74, 112, 54),
        reach=0.07,
    )
    for n in range(7):
        bump = along(spine, 0.16 + n * 0.112)[0]
        plate.glaze(ring(bump + 5 + 6j, width * 0.34), (84, 124, 58), strength=0.30, soft=5)
        plate.body(
            ring(bump - 5 - 6j, width * 0.22, width * 0.16, turn=-30), (222, 234, 170), strength=0.55, soft=5
        )
    plate.line([p + (q - p) * 0.10 for p, q in zip(left, right, strict=True)], 1.6, strength=0.5, thin=0.1)
    calyx = [
        arc(start, start + complex(x * side, y), bend=0.1, steps=6)
        for x, y in ((44, 4), (36, 26), (20, 40), (40, -16))
    ]
    plate.lines(calyx, 11, colour=(112, 148, 78), thin=0.1)
    tip, way = along(spine, 1.0)
    plate.line(arc(tip, tip + way * 20 + 4j, bend=0.2, steps=5), 4, thin=0.2)
    plate.lines([left, right], 2.5, thin=0.4)


def _open_pod(plate: Plate, centre: complex, long: float) -> None:
    plate.glaze(ring(centre + 40j, long * 0.95, 62), (176, 158, 136), strength=0.45, soft=20)
    start, end = centre - long + 30j, centre + long - 20j
    spine = arc(start, end, bend=-0.05, steps=40)
    back, front = sides(spine, 150, lambda t: min(1.0, (t + 0.01) * 4, (1.01 - t) * 4) ** 0.6, steps=60)
    plate.wash(
        back + spine[::-1], (196, 210, 140), into=(172, 194, 110), strength=0.85, shade=0.3, dark=PEA_DEEP
    )
    plate.lines([back], 2.6, thin=0.4)
    for n in range(9):
        here = along(spine, 0.12 + n * 0.095)[0] + 6j
        size = 41 - abs(n - 4) * 2.6
        pea = ring(here, size, size * 0.97)
        plate.line(arc(here - 1j * size, here - 1j * (size + 26), steps=4), 4, colour=PEA_DEEP, thin=0.6)
        plate.wash(
            pea, (146, 184, 82), into=(164, 196, 92), strength=0.97, shade=0.7, dark=(66, 108, 46), reach=0.22
        )
        plate.body(
            ring(here - size * 0.34 - 1j * size * 0.36, size * 0.24, size * 0.15, turn=-40),
            (246, 250, 226),
            strength=0.8,
            soft=3,
        )
        plate.outline(pea, 2.2)
    low = [p + (q - p) * 0.26 for p, q in zip(part(spine, 0, 1, 60), front, strict=True)]
    plate.wash(
        low + front[::-1], (138, 172, 84), into=(118, 154, 76), strength=0.92, shade=0.4, dark=(70, 106, 52)
    )
    plate.lines([low, front], 2.6, thin=0.35)
    plate.line(arc(start, start - 60 - 34j, bend=0.2), 11, colour=PEA_DEEP, thin=0.5)
    plate.line(arc(end, end + 34 - 8j, bend=0.2, steps=6), 4, thin=0.2)


def _pea_flower(plate: Plate, at: complex, size: float, side: int) -> None:
    def spot(x: float, y: float) -> complex:
        return at + complex(x * side, y) * size

    banner = smooth(
        [
            spot(0.1, 0.1),
            spot(-0.1, -0.6),
            spot(0.25, -1.15),
            spot(0.75, -1.2),
            spot(1.1, -0.75),
            spot(0.85, -0.1),
            spot(0.4, 0.1),
        ],
        closed=True,
    )
    plate.wash(
        banner, (250, 246, 240), into=(232, 226, 224), strength=0.6, rim=0.3, dark=(176, 170, 176), shade=0.25
    )
    plate.lines(
        [arc(spot(0.3, 0.0), spot(x, -1.0), bend=0.06, steps=8) for x in (0.15, 0.4, 0.62, 0.85)],
        1.2,
        colour=(150, 140, 156),
        strength=0.6,
        thin=0.1,
    )
    plate.outline(banner, 2.2)
    wing = smooth(
        [
            spot(0.2, 0.05),
            spot(0.5, -0.55),
            spot(0.98, -0.62),
            spot(1.12, -0.2),
            spot(0.8, 0.2),
            spot(0.4, 0.2),
        ],
        closed=True,
    )
    plate.wash(wing, (252, 250, 246), strength=0.5, rim=0.4, dark=(180, 172, 180), shade=0.35)
    plate.outline(wing, 2.2)
    cup = smooth(
        [spot(-0.15, 0.0), spot(0.1, -0.22), spot(0.4, -0.02), spot(0.36, 0.22), spot(0.05, 0.22)],
        closed=True,
    )
    plate.wash(cup, (142, 170, 96), into=PEA_DEEP, strength=0.9, shade=0.4)
    plate.outline(cup, 2.2)
