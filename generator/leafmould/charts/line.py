"""A line over the twelve months of a strip, as the points of a drawing.

Pure geometry: the months run from 0 to 120 as on every strip, heights from 0 at the foot to a given height at the top.
Drawing is left to the templates.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise


def points(values: Iterable[tuple[float, float]], most: float, height: float) -> str:
    """Points of a polyline: each a place along the strip and a value, the largest value at the top.

    Args:
        values: place along the strip (0 to 120) and value (0 to `most`).
        most: the value that stands at the top.
        height: of the drawing, in its own units.
    """
    return " ".join(f"{x:g},{round(height - _share(value, most) * height, 1):g}" for x, value in values)


def height_at(x: float, line: Sequence[tuple[float, float]], most: float, height: float) -> float:
    """How high a line stands at a place along the strip, in the drawing's units; the foot where it does not reach."""
    for (left, before), (right, after) in pairwise(line):
        if left <= x <= right and right > left:
            value = before + (after - before) * (x - left) / (right - left)
            return round(height - _share(value, most) * height, 1)
    return height


def ticks(most: float) -> Sequence[float]:
    """Round values for the axis, from the first above zero up to the largest that fits; at most five."""
    if most <= 0:
        return ()
    step = 1.0
    while most / step > 5:
        step *= 2 if _leading(step) in (1, 5) else 2.5
    return [step * n for n in range(1, int(most / step) + 1)]


def _leading(number: float) -> int:
    while number >= 10:
        number /= 10
    return round(number)


def _share(value: float, most: float) -> float:
    return min(1.0, max(0.0, value / most)) if most > 0 else 0.0
