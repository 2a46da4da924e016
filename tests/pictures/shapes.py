"""Lines and outlines for drawings. A point is a complex number: x to the right, y downwards, in plate units."""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable, Sequence
from random import Random

Path = list[complex]


def smooth(points: Sequence[complex], *, closed: bool = False, steps: int = 12) -> Path:
    """A soft curve through all points (Catmull and Rom)."""
    at = list(points)
    ring = [at[-1], *at, at[0], at[1]] if closed else [2 * at[0] - at[1], *at, 2 * at[-1] - at[-2]]
    out: Path = []
    for a, b, c, d in zip(ring, ring[1:], ring[2:], ring[3:], strict=False):
        for step in range(steps):
            t = step / steps
            out.append(
                0.5
                * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - a - 3 * c + d) * t**3)
            )
    return out if closed else [*out, at[-1]]


def arc(start: complex, end: complex, *, bend: float = 0.0, steps: int = 24) -> Path:
    """From start to end, bowed sideways by `bend` of the distance; to the left of the way if it is positive."""
    side = (end - start) * -1j * bend * 2
    middle = (start + end) / 2 + side
    return [
        (1 - t) ** 2 * start + 2 * t * (1 - t) * middle + t**2 * end
        for t in (n / steps for n in range(steps + 1))
    ]


def ring(centre: complex, rx: float, ry: float | None = None, *, turn: float = 0.0, steps: int = 48) -> Path:
    """An ellipse, turned by so many degrees."""
    ry = rx if ry is None else ry
    swing = cmath.exp(1j * math.radians(turn))
    angles = (2 * math.pi * n / steps for n in range(steps))
    return [centre + swing * complex(rx * math.cos(a), ry * math.sin(a)) for a in angles]


def along(path: Sequence[complex], t: float) -> tuple[complex, complex]:
    """The place at the share `t` of a path's points, and the direction there."""
    t = min(max(t, 0.0), 1.0) * (len(path) - 1)
    n = min(int(t), len(path) - 2)
    ahead = path[n + 1] - path[n]
    return path[n] + ahead * (t - n), ahead / (abs(ahead) or 1)


def part(path: Sequence[complex], start: float, end: float, steps: int = 20) -> Path:
    """A piece of a path, between two shares of it."""
    return [along(path, start + (end - start) * n / steps)[0] for n in range(steps + 1)]


def moved(path: Sequence[complex], by: complex, *, turn: float = 0.0, grow: float = 1.0) -> Path:
    """The path turned and grown about the origin, then carried away."""
    swing = cmath.exp(1j * math.radians(turn)) * grow
    return [point * swing + by for point in path]


def hand(path: Sequence[complex], random: Random, amount: float, *, wave: int = 7) -> Path:
    """The path as a hand would draw it: a slow tremble, closed paths stay closed."""
    knots = max(2, len(path) // wave)
    shake = [complex(random.gauss(0, 1), random.gauss(0, 1)) * amount for _ in range(knots)]
    out: Path = []
    for n, point in enumerate(path):
        where = n / len(path) * knots
        k, t = int(where), where % 1
        t = t * t * (3 - 2 * t)
        out.append(point + shake[k % knots] * (1 - t) + shake[(k + 1) % knots] * t)
    return out


Profile = Callable[[float], float]


def oval(t: float) -> float:
    """Widest in the middle."""
    return math.pow(math.sin(math.pi * t), 0.8)


def egg(t: float) -> float:
    """Widest near the stalk."""
    return math.pow(math.sin(math.pi * t**0.65), 0.85)


def heart(t: float) -> float:
    """Widest at once, then drawn out to a point."""
    return math.pow(math.sin(math.pi * (0.12 + 0.88 * t) ** 0.6), 0.9) * (1 if t > 0.02 else 0.6)


def spoon(t: float) -> float:
    """Widest near the tip."""
    return math.pow(math.sin(math.pi * t**1.5), 0.8)


def strap(t: float) -> float:
    """As wide as it is for most of its length."""
    return min(1.0, (t + 0.08) * 6) * math.pow(1 - t**6, 0.9)


def sides(
    spine: Sequence[complex],
    width: float,
    profile: Profile,
    *,
    teeth: int = 0,
    bite: float = 0.0,
    steps: int = 40,
) -> tuple[Path, Path]:
    """Both edges of a leaf along its spine, from stalk to tip; `teeth` a side, each `bite` of the width deep."""
    left: Path = []
    right: Path = []
    steps = max(steps, teeth * 5)
    for n in range(steps + 1):
        t = n / steps
        here, way = along(spine, t)
        half = width / 2 * profile(t)
        saw = (teeth * t) % 1 if teeth else 0.0
        half *= 1 + bite * (saw - 0.5)
        left.append(here + way * -1j * half)
        right.append(here + way * 1j * half)
    return left, right


def bounds(paths: Sequence[Sequence[complex]], pad: float) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of all the paths, with room around them."""
    xs = [p.real for path in paths for p in path]
    ys = [p.imag for path in paths for p in path]
    return min(xs) - pad, min(ys) - pad, max(xs) + pad, max(ys) + pad
