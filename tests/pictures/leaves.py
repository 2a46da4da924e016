"""Leaves and stalks: what most plates are made of."""

from __future__ import annotations

import math
from collections.abc import Sequence

from pictures.plate import INK, Colour, Plate
from pictures.shapes import Path, Profile, along, arc, egg, hand, part, sides

GREEN: Colour = (122, 150, 84)
DEEP: Colour = (74, 108, 66)
DULL: Colour = (134, 146, 108)
YOUNG: Colour = (166, 184, 100)


def leaf(
    plate: Plate,
    spine: Sequence[complex],
    width: float,
    *,
    colour: Colour = GREEN,
    into: Colour = DEEP,
    profile: Profile = egg,
    teeth: int = 0,
    bite: float = 0.2,
    veins: int = 6,
    vein: Colour | None = None,
    rib: float = 3.0,
    ink: float = 2.2,
    lean: float = 0.6,
    wave: float = 0.0,
    slope: float = 0.55,
) -> None:
    """A simple leaf with its midrib: one half in the light, one in the shade, veins, an inked edge.

    `lean` is how much darker the shaded half is; `wave` how far the edge swings in and out, in units.
    """
    left, right = sides(spine, width, profile, teeth=teeth, bite=bite)
    if wave:
        left, right = (_waved(plate, side, wave) for side in (left, right))
    middle = [along(spine, n / 30)[0] for n in range(31)]
    whole = left + right[::-1]
    plate.wash(whole, colour, into=into, strength=0.8, rim=0.3, dark=into, rough=0.4)
    lit_left = (middle[15] - left[len(left) // 2]).real > 0
    shaded = (right if lit_left else left) + middle[::-1]
    plate.wash(shaded, into, strength=0.42 * lean, rim=0.1, lift=0, rough=0.4)
    _veins(plate, middle, left, right, veins, vein, rib, slope)
    plate.lines([left, right], ink, thin=0.3)


def _waved(plate: Plate, side: Path, wave: float) -> Path:
    """An edge that swings, but less and less towards stalk and tip."""
    last = len(side) - 1
    swung = hand(side, plate.random, wave, wave=5)
    return [
        a + (b - a) * math.sin(math.pi * n / last) ** 0.6
        for n, (a, b) in enumerate(zip(side, swung, strict=True))
    ]


def _veins(
    plate: Plate,
    middle: Path,
    left: Path,
    right: Path,
    veins: int,
    vein: Colour | None,
    rib: float,
    slope: float,
) -> None:
    """The midrib and its branches, in a colour of their own or as fine ink."""
    branches: list[Path] = []
    for n in range(veins):
        t = (n + 0.6) / (veins + 0.6)
        for side in (left, right):
            foot = along(middle, t * 0.92)[0]
            end = along(side, min(0.97, t * 0.92 + slope / (veins + 1) * 1.1 + 0.05))[0]
            branches.append(
                arc(foot, foot + (end - foot) * 0.9, bend=0.06 if side is left else -0.06, steps=8)
            )
    if vein is not None:
        plate.lines(branches, rib * 0.5, colour=vein, strength=0.75, thin=0.2)
        plate.line(middle, rib, colour=vein, strength=0.9, thin=0.15)
    else:
        plate.lines(branches, 1.1, strength=0.45, thin=0.1)
        plate.line(middle, 1.7, strength=0.7, thin=0.1)


def stalk(
    plate: Plate,
    path: Sequence[complex],
    width: float,
    *,
    end: float | None = None,
    colour: Colour = GREEN,
    into: Colour = DEEP,
    ink: float = 2.0,
    shade: float = 0.5,
) -> None:
    """A stalk that narrows from `width` to `end`."""
    end = width * 0.6 if end is None else end

    def narrowing(t: float) -> float:
        return 1 - (1 - end / width) * t

    left, right = sides(path, width, narrowing)
    plate.wash(left + right[::-1], colour, into=into, strength=0.9, rim=0.15, dark=into, rough=0.3)
    middle = [(a + b) / 2 for a, b in zip(left, right, strict=True)]
    plate.wash(middle + right[::-1], into, strength=0.6 * shade, rim=0.0, lift=0, rough=0.3)
    plate.lines([left, right], ink, thin=0.5)


def palm(
    plate: Plate,
    base: complex,
    towards: complex,
    size: float,
    *,
    lobes: int = 5,
    depth: float = 0.35,
    teeth: int = 5,
    colour: Colour = GREEN,
    into: Colour = DEEP,
    flat: float = 1.0,
    vein: Colour | None = None,
    gap: float = 70,
    bite: float = 0.07,
    ink: float = 2.2,
) -> None:
    """A leaf shaped like a hand, as of currants, squashes, vines: lobes with teeth around the stalk's end.

    Args:
        towards: direction of the middle lobe. size: length of the middle lobe.
        depth: how deep the bays go. gap: width of the bay at the stalk, in degrees. flat: seen how much from the side.
    """
    way = towards / abs(towards)
    spread = 360 - gap
    steps = lobes * (teeth * 6 + 6)
    outline: Path = []
    tips: list[complex] = []
    for n in range(steps + 1):
        u = n / steps
        angle = math.radians(-spread / 2 + spread * u)
        lobe = (u * lobes) % 1 if u < 1 else 1.0
        length = 1 - 0.42 * abs(2 * u - 1) ** 1.6
        bay = 1 - depth * abs(2 * lobe - 1) ** 1.7
        saw = 1 + bite * (1 - 2 * abs(((u * lobes * teeth) % 1) - 0.5) * 2) if teeth else 1.0
        reach = size * length * bay * saw
        outline.append(base + way * complex(reach * math.cos(angle), reach * math.sin(angle) * flat))
    for n in range(lobes):
        u = (n + 0.5) / lobes
        angle = math.radians(-spread / 2 + spread * u)
        reach = size * (1 - 0.42 * abs(2 * u - 1) ** 1.6) * 0.93
        tips.append(base + way * complex(reach * math.cos(angle), reach * math.sin(angle) * flat))
    outline.append(base + way * size * 0.04)
    plate.wash(outline, colour, into=into, strength=0.8, rim=0.35, dark=into, rough=0.8)
    half = [*outline[len(outline) // 2 :], base]
    plate.wash(half, into, strength=0.3, lift=0, rim=0.0, rough=0.4)
    _palm_veins(plate, base, tips, vein, size)
    plate.outline(outline, ink)


def _palm_veins(plate: Plate, base: complex, tips: list[complex], vein: Colour | None, size: float) -> None:
    main = [arc(base, tip, bend=plate.random.uniform(-0.04, 0.04), steps=12) for tip in tips]
    side: list[Path] = []
    for rib in main:
        long = abs(rib[-1] - rib[0])
        for n in range(1, 6):
            foot, way = along(rib, n / 6.5)
            for turn in (0.75 - 0.62j, 0.75 + 0.62j):
                side.append(arc(foot, foot + way * turn * long * 0.24 * (1.05 - n / 9), bend=0.05, steps=6))
    if vein is None:
        plate.lines(side, 1.0, strength=0.4, thin=0.1)
        plate.lines(main, 1.6, strength=0.65, thin=0.15)
    else:
        plate.lines(side, max(1.2, size * 0.006), colour=vein, strength=0.6, thin=0.1)
        plate.lines(main, max(2.0, size * 0.014), colour=vein, strength=0.85, thin=0.15)


def pinnate(
    plate: Plate,
    spine: Sequence[complex],
    size: float,
    *,
    pairs: int = 3,
    width: float = 0.62,
    colours: Sequence[Colour] = (GREEN,),
    into: Colour = DEEP,
    teeth: int = 5,
    bite: float = 0.3,
    vein: Colour | None = None,
    wave: float = 3.0,
) -> None:
    """A leaf of several leaflets along a stalk, the largest at the tip: tomato, potato, strawberry with one pair."""
    stalk(plate, spine, size * 0.07, end=size * 0.035, colour=colours[0], into=into, ink=1.6)
    for n in range(pairs):
        t = 0.34 + 0.54 * n / max(1, pairs - 1) if pairs > 1 else 0.98
        foot, way = along(spine, t)
        long = size * (0.62 + 0.28 * math.sin(math.pi * (n + 0.8) / (pairs + 0.6)))
        for side in (-1j, 1j):
            out = way * (0.5 + 0.85 * side)
            out = out / abs(out) * long * plate.random.uniform(0.88, 1.08)
            path = arc(foot, foot + out, bend=0.10 * (1 if side == 1j else -1))
            leaf(
                plate,
                path,
                long * width,
                colour=plate.random.choice(list(colours)),
                teeth=teeth,
                bite=bite,
                veins=5,
                rib=size * 0.02,
                ink=1.8,
                wave=wave,
                into=into,
                vein=vein,
            )
    tip, way = along(spine, 1.0)
    path = arc(tip, tip + way * size, bend=plate.random.uniform(-0.1, 0.1))
    leaf(
        plate,
        path,
        size * width * 1.1,
        colour=plate.random.choice(list(colours)),
        teeth=teeth,
        bite=bite,
        veins=6,
        rib=size * 0.022,
        ink=1.8,
        wave=wave,
        into=into,
        vein=vein,
    )


def tendril(plate: Plate, start: complex, way: complex, length: float, *, colour: Colour = DEEP) -> None:
    """A curl that looks for something to hold: nearly straight at first, then wound up."""
    points = [start]
    side = plate.random.choice((-1, 1))
    for n in range(80):
        turn = side * (0.01 + 0.30 * (n / 80) ** 2.2)
        way *= complex(math.cos(turn), math.sin(turn))
        points.append(points[-1] + way * length / 45 * (1 - 0.5 * n / 80))
    plate.line(points, 4.0, colour=colour, thin=0.4, strength=0.9, shake=0.2)


def blades(
    plate: Plate, roots: Sequence[complex], tall: float, *, colours: Sequence[Colour], width: float = 9
) -> None:
    """Grass: blades from each root, bowed this way and that, the hind ones first."""
    random = plate.random
    for root in sorted(roots, key=lambda p: p.imag):
        tip = root + complex(random.gauss(0, tall * 0.22), -tall * random.uniform(0.6, 1.15))
        path = arc(root, tip, bend=random.uniform(-0.16, 0.16), steps=14)
        left, right = sides(path, width, lambda t: (1 - t) ** 0.7, steps=14)
        plate.wash(
            left + right[::-1], random.choice(list(colours)), strength=0.85, rim=0.1, lift=0.75, rough=0.2
        )
        plate.lines([part(left, 0, 1, 10)], 1.2, colour=INK, strength=0.5, thin=0.2)
