"""A plan drawn to scale: metres to drawing units, stretches of a shape, words along it, a bar of round length.

Pure geometry. Metres go to the right and up from a corner; drawing units go to the right and down, as
screens and paper have it. Drawing is left to the templates.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from math import cos, floor, log10, radians, sin

WIDEST, TALLEST = 720.0, 860.0
"""The drawing's greatest width and height, margin and all [units]."""
LETTER = 0.54
"""Width of a usual letter of a book face, as a part of its size."""
FEET = 0.3048


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """An upright rectangle. In metres `y` is its lower edge, in drawing units its upper one."""

    x: float
    y: float
    width: float
    height: float

    @property
    def area(self) -> float:
        """Its surface."""
        return self.width * self.height

    @property
    def right(self) -> float:
        """Its right edge."""
        return self.x + self.width

    @property
    def far(self) -> float:
        """The edge opposite `y`."""
        return self.y + self.height

    @property
    def is_tall(self) -> bool:
        """Whether words go along it better upwards than across."""
        return self.height > 1.25 * self.width


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """Where words stand: their middle or their beginning, and whether they are turned to read upwards."""

    x: float
    y: float
    is_turned: bool = False
    is_middle: bool = False  # x is the middle of them


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """What part of the ground is drawn, and how large."""

    ground: Box  # [m]
    scale: float  # units to the metre

    @property
    def width(self) -> float:
        """[units]"""
        return round(self.ground.width * self.scale, 1)

    @property
    def height(self) -> float:
        """[units]"""
        return round(self.ground.height * self.scale, 1)

    def box(self, box: Box) -> Box:
        """A box of metres in drawing units."""
        return Box(
            x=round((box.x - self.ground.x) * self.scale, 1),
            y=round((self.ground.far - box.far) * self.scale, 1),
            width=round(box.width * self.scale, 1),
            height=round(box.height * self.scale, 1),
        )


def drawing_of(ground: Box) -> Drawing:
    """The largest drawing of a piece of ground that keeps within the sheet."""
    return Drawing(ground=ground, scale=min(WIDEST / ground.width, TALLEST / ground.height))


def around(boxes: Iterable[Box], margin: float) -> Box:
    """The smallest box that holds all of these, and a margin."""
    found = list(boxes)
    left, low = min(b.x for b in found) - margin, min(b.y for b in found) - margin
    right, high = max(b.right for b in found) + margin, max(b.far for b in found) + margin
    return Box(x=left, y=low, width=right - left, height=high - low)


def shared(one: Box, other: Box) -> float:
    """How much of two boxes lies over each other."""
    width = min(one.right, other.right) - max(one.x, other.x)
    height = min(one.far, other.far) - max(one.y, other.y)
    return max(0.0, width) * max(0.0, height)


def covered(one: Box, others: Iterable[Box]) -> float:
    """How much of a box lies over others, added up."""
    left, low, right, far = one.x, one.y, one.right, one.far
    found = 0.0
    for other in others:
        x, y = other.x, other.y
        if x < right and y < far:
            width = min(right, x + other.width) - max(left, x)
            height = min(far, y + other.height) - max(low, y)
            if width > 0 and height > 0:
                found += width * height
    return found


def beyond(inner: Box, outer: Box) -> float:
    """How far a box reaches out of another at the most; 0 where it lies inside."""
    out = (outer.x - inner.x, outer.y - inner.y, inner.right - outer.right, inner.far - outer.far)
    return max(0.0, *out)


def stretches(box: Box, parts: Sequence[float]) -> tuple[Box, ...]:
    """A box cut along its longer side, one piece beside the other, each as large a part of it as is told."""
    ends = [0.0, *accumulate(parts)]
    pairs = list(pairwise(ends))
    if box.is_tall:
        return tuple(
            Box(
                x=box.x,
                y=round(box.y + a * box.height, 1),
                width=box.width,
                height=round((b - a) * box.height, 1),
            )
            for a, b in pairs
        )
    return tuple(
        Box(
            x=round(box.x + a * box.width, 1), y=box.y, width=round((b - a) * box.width, 1), height=box.height
        )
        for a, b in pairs
    )


def length_of(text: str, size: float) -> float:
    """About how long a text is, set in letters of a size."""
    return len(text) * size * LETTER


def words_in(text: str, box: Box, size: float) -> Words | None:
    """The middle of a box where a text fits into it, across or turned; None where it does not."""
    long = length_of(text, size) + size * 0.6
    x, y = round(box.x + box.width / 2, 1), round(box.y + box.height / 2, 1)
    if long <= box.width and size * 1.2 <= box.height:
        return Words(x=x, y=y)
    if long <= box.height and size * 1.2 <= box.width:
        return Words(x=x, y=y, is_turned=True)
    return None


def round_length(across: float, *, in_feet: bool = False) -> tuple[float, int]:
    """A round length of about a fifth of what is across, in metres, and the number written beside it."""
    unit = FEET if in_feet else 1.0
    wanted = max(1.0, across / unit / 5)
    power = 10 ** floor(log10(wanted))
    number = int(max(step * power for step in (1, 2, 5) if step * power <= wanted))
    return number * unit, number


def arrow(degrees: float, reach: float) -> tuple[tuple[float, float], ...]:
    """The points of a needle about the origin: its tip so many degrees clockwise of straight up."""
    turn = radians(degrees)
    points = ((0.0, -reach), (reach * 0.28, reach * 0.7), (0.0, reach * 0.4), (-reach * 0.28, reach * 0.7))
    return tuple(
        (round(x * cos(turn) - y * sin(turn), 1), round(x * sin(turn) + y * cos(turn), 1)) for x, y in points
    )
