"""What garden.yaml says of the ground the beds lie on: which way is north, the plot, paths, walls, houses, ponds, where it is wet or sunny.

Read with garden.yaml. Lengths go to the right and up from the bottom left corner of the gardener's own plan.
"""

from __future__ import annotations

import re

from leafmould.notes.fields import Fields
from leafmould.notes.measures import read_degrees, read_pair
from leafmould.notes.setting_values import Piece, Plan
from leafmould.values.problems import Level

PIECES = {
    "paths": "path",
    "walls": "wall",
    "buildings": "building",
    "ponds": "pond",
    "wet ground": "wet",
    "dry ground": "dry",
    "sunny ground": "sunny",
    "shady ground": "shady",
}
"""The settings that list pieces of the ground, and what each is drawn as."""
PLAN_KEYS = ("north", "plot", *PIECES)
FURTHEST = 100_000
"""Nothing on a plan is larger or further away [m]."""
AT = re.compile(r"(?P<size>.+?),?\s+at\s+(?P<place>.+)", re.IGNORECASE)


def read_plan(fields: Fields) -> dict[str, object]:
    """The ground, as far as it is written and can be read."""
    unit = "ft" if fields.text("units") == "imperial" else "m"
    plan = Plan(north=_north(fields), plot=_plot(fields, unit), pieces=_pieces(fields, unit))
    return {"plan": plan}


def _north(fields: Fields) -> float:
    """Degrees clockwise from straight up to north."""
    leaf = fields.leaf("north")
    if leaf is None:
        return 0.0
    degrees = 0.0 if leaf.text.strip().casefold() == "up" else read_degrees(leaf.text)
    if degrees is None or not -360 <= degrees <= 360:
        message = f'"{leaf.text}" is no direction. Write how many degrees north lies to the right of straight up, such as 30.'
        fields.tell(Level.ERROR, message, leaf, "north")
        return 0.0
    return degrees % 360


def _plot(fields: Fields, unit: str) -> tuple[float, float] | None:
    leaf = fields.leaf("plot")
    if leaf is None:
        return None
    pair = read_pair(leaf.text, unit)
    if pair is None or not (min(pair) > 0 and max(pair) <= FURTHEST):
        message = f'"{leaf.text}" gives no width and length. Write it such as "20 x 30 m".'
        fields.tell(Level.ERROR, message, leaf, "plot")
        return None
    return pair


def _pieces(fields: Fields, unit: str) -> tuple[Piece, ...]:
    found = []
    for name, kind in PIECES.items():
        for leaf in fields.leaves(name):
            if (piece := _piece(leaf.text, kind, unit)) is not None:
                found.append(piece)
            else:
                message = f'"{leaf.text}" gives no size and place. Write it such as "0.8 x 12 m at 2 x 3 m".'
                fields.tell(Level.ERROR, message, leaf, name)
    return tuple(found)


def _piece(text: str, kind: str, unit: str) -> Piece | None:
    m = AT.fullmatch(text.strip())
    if m is None:
        return None
    size, place = read_pair(m["size"], unit), read_pair(m["place"], unit)
    if size is None or place is None or min(size) <= 0 or max(*size, *map(abs, place)) > FURTHEST:
        return None
    return Piece(kind=kind, size_m=size, position_m=place)
