"""What looks wrong on the map: places over each other, places beyond the plot, trees without a canopy.

Checks like those of `checks`, which lists them. Only beds with a place are asked, and only beds that were there
at the same time are held against each other.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from leafmould.charts.plan import Box, beyond, shared
from leafmould.garden.footprint import CROWNED, SPOT, Footprint, footprint
from leafmould.garden.model import Bed, Garden
from leafmould.notes.garden_file import GARDEN_FILE
from leafmould.values.problems import Level, Location, Problem

LEAST_SHARED = 0.05
"""Two places may share so much of the smaller one: nobody measures to the hand."""
LEAST_BEYOND = 0.05
"""[m]"""

Placed = tuple[Bed, Footprint]


def lies_over_another(garden: Garden) -> Iterator[Problem]:
    """Two beds on one piece of ground at one time; crowns and pots may stand over anything."""
    flat = [(bed, found) for bed, found in _placed(garden) if found.form == "box" and bed.kind not in CROWNED]
    flat.sort(key=lambda p: (p[1].box.x, p[0].key))
    for one, other in _neighbours(flat):
        (bed, a), (beside, b) = sorted((one, other), key=lambda placed: _line(placed[0]))
        lost = shared(a.box, b.box)
        if (
            lost <= LEAST_SHARED * min(a.box.area, b.box.area)
            or not _met(bed, beside)
            or _covers(bed, beside)
        ):
            continue
        told = f'"{beside.name}" lies over "{bed.name}" on the map: they share {lost:.1f} m². Look at "at" and "size".'
        yield _problem(beside, Level.WARNING, told, "at")


def reaches_beyond_the_plot(garden: Garden) -> Iterator[Problem]:
    """A place that is not wholly inside the plot."""
    if garden.plan.plot is None:
        return
    width, length = garden.plan.plot
    plot = Box(x=0, y=0, width=width, height=length)
    for bed, found in _placed(garden):
        out = beyond(found.box, plot)
        if out > LEAST_BEYOND and not (found.form == "round" and bed.kind in CROWNED):
            told = f'"{bed.name}" reaches {out:.1f} m beyond the plot of {width:g} x {length:g} m.'
            yield _problem(bed, Level.WARNING, told, "at")


def size_not_known_on_the_map(garden: Garden) -> Iterator[Problem]:
    """A tree without a canopy, or a place of no size."""
    for bed, found in _placed(garden):
        if bed.kind in CROWNED and found.guessed:
            told = f'"{bed.name}" has no canopy, so it is drawn {found.box.width:g} m across. Write such as "canopy: 4 m".'
            yield _problem(bed, Level.HINT, told, "canopy")
        elif found.guessed and found.box.width == SPOT:
            told = f'"{bed.name}" has a place on the map but no size, so it is drawn as a spot. Write such as "size: 1.2 x 6 m".'
            yield _problem(bed, Level.HINT, told, "size")


def _placed(garden: Garden) -> list[Placed]:
    return [(bed, found) for bed in garden.beds.values() if (found := footprint(bed))]


def _neighbours(placed: list[Placed]) -> Iterator[tuple[Placed, Placed]]:
    """Pairs that meet from left to right; few of all pairs in a large garden."""
    for number, one in enumerate(placed):
        for other in placed[number + 1 :]:
            if other[1].box.x >= one[1].box.right:
                break
            yield one, other


def _met(one: Bed, other: Bed) -> bool:
    """Whether both were there at one time, and neither came from the other."""
    if one.key in other.came_from or other.key in one.came_from:
        return False
    begun = max(one.begun or date.min, other.begun or date.min)
    return begun < min(one.ended or date.max, other.ended or date.max)


def _covers(one: Bed, other: Bed) -> bool:
    """Whether one of them is glass over the other."""
    return (one.kind == "under glass") != (other.kind == "under glass")


def _line(bed: Bed) -> int:
    return (bed.at.line or 0) if bed.at else 0


def _problem(bed: Bed, level: Level, message: str, field: str) -> Problem:
    return Problem(at=bed.at or Location(file=GARDEN_FILE), level=level, message=message, field=field)


PLAN_CHECKS = (lies_over_another, reaches_beyond_the_plot, size_not_known_on_the_map)
