"""Where the names of places stand on the map: inside where there is room, else beside, where they meet least.

Works on finished places, after their outlines are drawn. A name that would lie over another name or place everywhere becomes a number,
which the key under the map explains.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from leafmould.charts.plan import Box, Words, covered, length_of, shared
from leafmould.pages.map_place import NAME, ROOMY, SUN_ROOM, Place

LINE = 12.0
"""Room a name takes up across its letters [units]."""
OVER_NAME, OVER_PLACE, OVER_GROUND = 40.0, 40.0, 0.4
"""How much worse it is to lie over a name, over another place, over a wall or building; beyond the sheet is no better than over a name."""
TOO_MUCH = 20.0
"""From here on, an eighth of a name over what it must not cover, there is no room for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A place a name may stand in, and the room it takes up there."""

    at: Words
    room: Box


def named(places: Sequence[Place], ground: Sequence[Box], sheet: Box) -> tuple[Place, ...]:
    """The same places, each with its name where it meets least; numbers count in the order of the places."""
    taken = [place.sun_box for place in places if place.sun_box]
    found: dict[str, Place] = {}
    for place in sorted(places, key=lambda p: not is_roomy(p)):
        spot, cost = _best(place, place.link.text, places, ground, taken, sheet)
        if cost >= TOO_MUCH and not is_roomy(place):
            found[place.key] = replace(place, is_numbered=True)
            continue
        taken.append(spot.room)
        found[place.key] = replace(place, name_at=spot.at, name=place.link.text)
    return _numbered([found[place.key] for place in places])


def is_roomy(place: Place) -> bool:
    """Whether a name has room inside its outline."""
    return not place.is_round and min(place.box.width, place.box.height) >= ROOMY


def _numbered(places: Iterable[Place]) -> tuple[Place, ...]:
    """Places without room for a name get a number in their middle."""
    number, done = 0, []
    for place in places:
        if place.is_numbered:
            number += 1
            middle = Words(
                x=round(place.box.x + place.box.width / 2, 1),
                y=round(place.box.y + place.box.height / 2 + NAME / 3, 1),
            )
            place = replace(place, name=str(number), name_at=replace(middle, is_middle=True))
        done.append(place)
    return tuple(done)


def _best(
    place: Place, name: str, places: Sequence[Place], ground: Sequence[Box], taken: Sequence[Box], sheet: Box
) -> tuple[Spot, float]:
    """The spot that costs least, and what it costs for each square unit of the name; the first of equals."""
    others = [other.box for other in places if other.key != place.key]
    area = LINE * length_of(name, NAME)

    def cost(spot: Spot) -> float:
        beyond = spot.room.area - shared(spot.room, sheet)
        over = OVER_NAME * (covered(spot.room, taken) + beyond) + OVER_PLACE * covered(spot.room, others)
        return round((over + OVER_GROUND * covered(spot.room, ground)) / area * 4, 1)

    found = [(cost(spot), n, spot) for n, spot in enumerate(_spots(place, name))]
    least, _, best = min(found, key=lambda one: one[:2])
    return best, least


def _spots(place: Place, name: str) -> Iterator[Spot]:
    """Where a name may stand, the usual spot first."""
    box, long = place.box, length_of(name, NAME)
    middle = box.x + box.width / 2
    if place.is_round:
        if box.height >= long:
            yield _across(middle - long / 2, box.y + box.height / 2 - 5, long, is_middle=True)
        yield _across(middle - long / 2, box.y - 4, long, is_middle=True)
        yield _across(middle - long / 2, box.far + 12, long, is_middle=True)
    elif is_roomy(place):
        if box.is_tall:
            yield _upwards(box.x + 11, box.far - 4, long)
        else:
            yield _across(box.x + 4, box.y + 11, long)
            yield _across(box.right - SUN_ROOM - long, box.y + 11, long)
        return
    elif box.is_tall:
        yield _upwards(box.x - 4, box.far - 4, long)
        yield _upwards(box.right + 12, box.far - 4, long)
    if not place.is_round:
        yield _across(box.x + 4, box.y - 4, long)
        yield _across(box.right - SUN_ROOM - long, box.y - 4, long)
    yield _across(box.right + 5, box.y + box.height / 2 + 4, long)
    if not place.is_round:
        yield _across(box.x + 4, box.far + 12, long)
    yield _across(box.x - 5 - long, box.y + box.height / 2 + 4, long)


def _across(x: float, y: float, long: float, *, is_middle: bool = False) -> Spot:
    at = Words(x=round(x + (long / 2 if is_middle else 0), 1), y=round(y, 1), is_middle=is_middle)
    return Spot(at=at, room=Box(x=x, y=y - 9, width=long, height=LINE))


def _upwards(x: float, y: float, long: float) -> Spot:
    at = Words(x=round(x, 1), y=round(y, 1), is_turned=True)
    return Spot(at=at, room=Box(x=x - 9, y=y - long, width=LINE, height=long))
