"""Small gardens and plantings put together by hand, for tests of what is reckoned from them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Any

from leafmould.facts.tables import crops
from leafmould.garden.model import Bed, Crop, Event, Garden, Picking, Planting
from leafmould.notes.entries import Action
from leafmould.notes.settings import PacketDays, Settings
from leafmould.reckon.almanac import Almanac, almanac
from leafmould.values.problems import Location
from leafmould.values.when import When

NOWHERE = Location(file="by hand")


def coarse(written: str, first: str, last: str) -> When:
    """A date known only coarsely."""
    return When(first=date.fromisoformat(first), last=date.fromisoformat(last), written=written)


def exact(day: str) -> When:
    """One day, written as ISO."""
    return When(first=date.fromisoformat(day), last=date.fromisoformat(day), written=day)


def planting(crop: str | None = "beetroot", **given: Any) -> Planting:
    """A planting in Arch; dates may be given as ISO text."""
    dates = {"started", "sown", "planted", "found", "first_picked", "last_picked", "cleared", "lost"}
    for name in dates & given.keys():
        if isinstance(given[name], str):
            given[name] = exact(given[name])
    if "origin" not in given:
        known = [name for name in ("started", "sown", "planted") if given.get(name)]
        given["origin"] = known[0] if known else "unknown"
    if isinstance(given.get("ended_on"), str):
        given["ended_on"] = date.fromisoformat(given["ended_on"])
    bed = given.pop("bed", "arch")
    given = {"id": f"{crop}_{bed}", "bed_now": bed, "beds": (bed,), **given}
    return Planting(bed=bed, crops=(crop,) if crop else (), **given)


def garden(
    *plantings: Planting,
    on: str = "2026-06-20",
    beds: Iterable[Bed] = (),
    events: Iterable[Event] = (),
    pickings: Iterable[Picking] = (),
    units: str = "metric",
    is_southern: bool = False,
) -> Garden:
    """A garden of these plantings, with the crops they name and the beds they stand in."""
    named = {bed.key: bed for bed in beds}
    for one in plantings:
        for key in one.beds:
            named.setdefault(key, Bed(key=key, name=key.replace("-", " ").title()))
    return Garden(
        name="By hand",
        on=date.fromisoformat(on),
        people=None,
        units=units,
        is_southern=is_southern,
        beds=named,
        crops=_crops(plantings),
        plantings=plantings,
        pickings=tuple(pickings),
        events=tuple(events),
        entries=(),
        planting_by_id={one.id: one for one in plantings},
        event_by_id={event.id: event for event in events},
        picking_by_id={picking.id: picking for picking in pickings},
    )


def event(id: str, verb: str, day: When, entry: str) -> Event:
    """An event of one note."""
    action = Action(verb=verb, text=verb, at=NOWHERE, field="did")
    return Event(id=id, verb=verb, when=day, entry=entry, action=action)


def an_almanac(on: str = "2026-06-20", settings: Settings | None = None, **given: Any) -> Almanac:
    """The almanac of an empty garden with these settings."""
    return almanac(settings or Settings(), garden(on=on, **given))


def packet(low: int, high: int, counts_from: str = "sowing") -> PacketDays:
    """What a packet says."""
    return PacketDays(low=low, high=high, counts_from=counts_from, at=NOWHERE)


def _crops(plantings: Iterable[Planting]) -> Mapping[str, Crop]:
    found: dict[str, Crop] = {}
    for one in plantings:
        for key in one.crops:
            fact = crops().get(key)
            found[key] = Crop(
                key=key,
                name=fact.name if fact else key,
                family=fact.family if fact else None,
                grown_as=fact.grown_as if fact else "annual",
                is_tender=bool(fact and fact.is_tender),
                is_known=fact is not None,
            )
    return found
