"""A garden put together by hand for tests of pages: what the notes said, line by line, and what stood.

Lines are given as a gardener would write them beside what they mean, so that pages can be tested without
reading a single note. Invented, as everything here.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from leafmould.facts import tables
from leafmould.garden.model import Bed, Crop, Event, Garden, Picking, Planting, Season
from leafmould.notes.entries import Action, Entry, Named
from leafmould.notes.settings import Settings
from leafmould.pages.site import Site, make_site
from leafmould.reckon.almanac import almanac
from leafmould.values.names import Kind, Known, Vocabulary, slug
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.quantities import Amount
from leafmould.values.when import When, on

ON = date(2026, 7, 15)


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of work and what it means."""

    day: str
    verb: str
    text: str
    crop: str | None = None
    variety: str | None = None
    bed: str | None = None
    grams: float | None = None
    title: str | None = None
    body: str = ""
    lesson: str | None = None


def lines_of_three_years() -> list[Line]:
    """A small garden's doings, 2024 to July 2026."""
    return [
        Line(day="2024-04-12", verb="sowed", text="sowed beetroot 'Boltardy' in Long border", crop="beetroot", variety="Boltardy", bed="Long border"),
        Line(day="2024-05-20", verb="planted", text="planted out 8 tomato 'Stupice' in Hoop bed, under cover", crop="tomato", variety="Stupice", bed="Hoop bed"),
        Line(day="2024-07-02", verb="picked", text="picked 900 g beetroot from Long border", crop="beetroot", variety="Boltardy", bed="Long border", grams=900),
        Line(day="2024-07-14", verb="picked", text="picked 1.1 kg beetroot from Long border", crop="beetroot", variety="Boltardy", bed="Long border", grams=1100),
        Line(day="2024-07-30", verb="picked", text="picked first tomatoes 300 g from Hoop bed", crop="tomato", variety="Stupice", bed="Hoop bed", grams=300),
        Line(day="2024-08-20", verb="picked", text="picked 2.4 kg tomatoes from Hoop bed", crop="tomato", variety="Stupice", bed="Hoop bed", grams=2400, lesson="Next year plant the tomatoes a week later, the frost on 21 May took two."),
        Line(day="2024-09-02", verb="cleared", text="cleared beetroot from Long border", crop="beetroot", variety="Boltardy", bed="Long border"),
        Line(day="2024-10-05", verb="cleared", text="cleared tomatoes from Hoop bed", crop="tomato", variety="Stupice", bed="Hoop bed"),
        Line(day="2025-04-02", verb="sowed", text="sowed pea 'Meteor' in Arch", crop="pea", variety="Meteor", bed="Arch"),
        Line(day="2025-04-20", verb="sowed", text="sowed carrot 'Nantes' in Long border, north half", crop="carrot", variety="Nantes", bed="Long border"),
        Line(day="2025-06-14", verb="picked", text="picked 1.2 kg pea 'Meteor' from Arch, gave away 400 g", crop="pea", variety="Meteor", bed="Arch", grams=1200),
        Line(day="2025-07-01", verb="picked", text="picked 800 g pea from Arch", crop="pea", variety="Meteor", bed="Arch", grams=800),
        Line(day="2025-07-13", verb="saw", text="saw aphids on pea in Arch", crop="pea", variety="Meteor", bed="Arch", body="They came up the south side first, where it is **dry**.\n\n- 4 °C at dawn, in July!\n\nThe carrot rows in the Long border are clean."),
        Line(day="2025-07-22", verb="lost", text="lost pea 'Meteor', mildew", crop="pea", variety="Meteor", bed="Arch", lesson="Next year sow the peas in March and water them."),
        Line(day="2025-08-12", verb="picked", text="picked 3 kg carrot from Long border", crop="carrot", variety="Nantes", bed="Long border", grams=3000),
        Line(day="2026-04-12", verb="sowed", text="sowed beetroot 'Boltardy' in Arch", crop="beetroot", variety="Boltardy", bed="Arch", title="A dry April start"),
        Line(day="2026-04-25", verb="sowed", text="sowed pea 'Hurst's Green Shaft' in Long border, south half", crop="pea", variety="Hurst's Green Shaft", bed="Long border"),
        Line(day="2026-05-28", verb="planted", text="planted out 6 tomato 'Stupice' in Hoop bed, under cover", crop="tomato", variety="Stupice", bed="Hoop bed"),
        Line(day="2026-06-20", verb="planted", text="planted 12 leek in Long border, north half", crop="leek", bed="Long border"),
        Line(day="2026-07-03", verb="picked", text="picked 600 g pea from Long border", crop="pea", variety="Hurst's Green Shaft", bed="Long border", grams=600),
        Line(day="2026-07-12", verb="picked", text="picked 750 g pea from Long border", crop="pea", variety="Hurst's Green Shaft", bed="Long border", grams=750, title="After the storm", body="# Peas again\n\nPicked 14 pods by hand,\nthen the rest in a hurry. The Hoop bed stood up well.\n\n14. April seems long ago.\n\n| bed | peas |\n|---|---|\n| Long border | many |\n\n![pods](my pods.jpg)"),
        Line(day="2026-07-13", verb="limed", text="limed Root yard 200 g/m²", bed="Root yard"),
    ]  # fmt: skip


BEDS = (
    Bed(key="long-border", name="Long border", also=("border", "LB"), size_written="1.2 x 6 m", area_m2=7.2, sun="full", soil="loam over chalk", parts=("north half", "south half")),
    Bed(key="hoop-bed", name="Hoop bed", kind="under glass", size_written="2 x 3 m", area_m2=6.0),
    Bed(key="arch", name="Arch", sun="half"),
    Bed(key="root-yard", name="Root yard", is_declared=False),
    Bed(key="old-pear", name="Old pear", kind="tree"),
    Bed(key="new-arch", name="New arch", begun=date(2026, 9, 1), came_from=("arch",)),
)  # fmt: skip


def hand_made(
    lines: Iterable[Line] | None = None,
    *,
    beds: Iterable[Bed] = BEDS,
    day: date = ON,
    is_southern: bool = False,
    with_pear: bool = True,
) -> Garden:
    """The garden of these lines; every crop and year in a bed is one planting."""
    said = list(lines_of_three_years() if lines is None else lines)
    by_name = {bed.name: bed for bed in beds}
    entries = [_entry(line, number) for number, line in enumerate(said)]
    plantings: dict[str, Planting] = {}
    events, pickings = [], []
    for line, entry in zip(said, entries, strict=True):
        bed = by_name[line.bed].key if line.bed else None
        planting = _planting(line, bed, plantings)
        event = _event(line, entry, bed, planting)
        events.append(event)
        if line.verb == "picked":
            pickings.append(_picking(line, event, bed, planting))
        if planting:
            plantings[planting.id] = _grown(planting, line, event, entry)
    if with_pear:
        plantings["pear"] = _pear()
    ordered = tuple(sorted(plantings.values(), key=lambda p: (p.start.first if p.start else day, p.id)))
    crops = {key: _crop(key) for p in ordered for key in p.crops}
    return Garden(
        name="Tansy Hill",
        on=day,
        people=3,
        units="metric",
        is_southern=is_southern,
        beds={bed.key: bed for bed in beds},
        crops=crops,
        plantings=ordered,
        pickings=tuple(pickings),
        events=tuple(events),
        entries=tuple(entries),
        planting_by_id={p.id: p for p in ordered},
        picking_by_id={p.id: p for p in pickings},
        event_by_id={e.id: e for e in events},
        entry_by_id={e.id: e for e in entries},
    )


def site_of(garden: Garden, *, household: bool = False, problems: tuple[Problem, ...] = ()) -> Site:
    """The site of a garden, with a vocabulary of its own names."""
    return make_site(
        garden,
        almanac(Settings(), garden),
        vocabulary=vocabulary_of(garden),
        household=household,
        problems=problems,
    )


def vocabulary_of(garden: Garden) -> Vocabulary:
    """The names of a garden's beds, crops and varieties."""
    names = [
        *((bed.name, Known(kind=Kind.BED, key=bed.key, name=bed.name)) for bed in garden.beds.values()),
        *((crop.name, Known(kind=Kind.CROP, key=crop.key, name=crop.name)) for crop in garden.crops.values()),
    ]
    for planting in garden.plantings:
        for variety in planting.varieties:
            known = Known(kind=Kind.VARIETY, key=variety, name=variety, of=planting.crops)
            names.append((variety, known))
    return Vocabulary(names)


def a_problem(file: str = "notes/2026/06-20.md", message: str = 'no bed is called "Nroth".') -> Problem:
    """A question as the checks would put it."""
    at = Location(file=file, line=4)
    return Problem(at=at, level=Level.QUESTION, message=message, field="work[2]", suggestion="North")


def _entry(line: Line, number: int) -> Entry:
    stem = f"{line.day[:4]}/{line.day[5:]}-{slug(line.bed or 'garden')}-{number}"
    at = Location(file=f"notes/{stem}.md", line=1)
    action = _action(line, at)
    return Entry(
        id=stem,
        at=at,
        when=on(date.fromisoformat(line.day)),
        date_from="header",
        title=line.title,
        actions=(action,),
        body=line.body,
        lesson=(line.lesson,) if line.lesson else (),
    )


def _action(line: Line, at: Location) -> Action:
    def named(name: str | None) -> tuple[Named, ...]:
        return (Named(key=slug(name), name=name, written=name),) if name else ()

    return Action(
        verb=line.verb,
        text=line.text,
        at=at,
        field="work[0]",
        crops=named(line.crop),
        varieties=named(line.variety),
        places=named(line.bed),
        amounts=_amounts(line),
    )


def _amounts(line: Line) -> tuple[Amount, ...]:
    if line.grams is None:
        return ()
    return (Amount(written=f"{line.grams:g} g", low=line.grams, high=line.grams, unit="g"),)


def _event(line: Line, entry: Entry, bed: str | None, planting: Planting | None) -> Event:
    assert entry.when is not None
    return Event(
        id=f"{entry.id}:1",
        verb=line.verb,
        when=entry.when,
        entry=entry.id,
        action=entry.actions[0],
        beds=(bed,) if bed else (),
        crops=(line.crop,) if line.crop else (),
        varieties=(line.variety,) if line.variety else (),
        plantings=(planting.id,) if planting else (),
    )


def _picking(line: Line, event: Event, bed: str | None, planting: Planting | None) -> Picking:
    return Picking(
        id=event.id,
        when=event.when,
        crops=event.crops,
        varieties=event.varieties,
        bed=bed,
        planting=planting.id if planting else None,
        group=None,
        amounts=_amounts(line),
        fates=(),
        entry=event.entry,
        at=event.action.at,
    )


def _planting(line: Line, bed: str | None, known: dict[str, Planting]) -> Planting | None:
    if line.crop is None or bed is None:
        return None
    for planting in known.values():
        if planting.crops == (line.crop,) and planting.bed == bed and planting.ended_on is None:
            return planting
    id = "_".join(filter(None, (slug(line.crop), bed, line.day, slug(line.variety) if line.variety else "")))
    return Planting(
        id=id,
        bed=bed,
        bed_now=bed,
        beds=(bed,),
        crops=(line.crop,),
        words=(line.crop,),
        varieties=(line.variety,) if line.variety else (),
        origin="sown" if line.verb == "sowed" else "planted",
    )


def _grown(planting: Planting, line: Line, event: Event, entry: Entry) -> Planting:
    """The planting after one more line."""
    grown = replace(
        planting, events=(*planting.events, event.id), entries=tuple({*planting.entries, entry.id})
    )
    if line.verb == "sowed":
        return replace(grown, sown=event.when)
    if line.verb == "planted":
        return replace(grown, planted=event.when)
    if line.verb in ("cleared", "lost"):
        return _ended(grown, line, event.when)
    if line.verb == "picked" and line.grams is not None:
        grams = (grown.picked_g or 0) + line.grams
        total = Amount(written=f"{grams:g} g", low=grams, high=grams, unit="g")
        first = grown.first_picked or event.when
        return replace(
            grown,
            pickings=(*grown.pickings, event.id),
            first_picked=first,
            last_picked=event.when,
            picked=(total,),
            picked_g=grams,
        )
    return grown


def _ended(planting: Planting, line: Line, when: When) -> Planting:
    ended = replace(planting, ended_on=when.last, end_basis=line.text)
    return replace(ended, cleared=when) if line.verb == "cleared" else replace(ended, lost=when)


def _pear() -> Planting:
    year = When(first=date(2015, 1, 1), last=date(2015, 12, 31), written="2015")
    return Planting(
        id="pear_old-pear_2015",
        bed="old-pear",
        bed_now="old-pear",
        beds=("old-pear",),
        crops=("pear",),
        words=("pear",),
        origin="planted",
        planted=year,
        is_perennial=True,
        seasons=(
            Season(name="2025", first_picked=on(date(2025, 9, 12)), last_picked=None, picked_g=14000.0),
        ),
    )


def _crop(key: str) -> Crop:
    fact = tables.crops().get(key)
    return Crop(
        key=key,
        name=fact.name if fact else key,
        family=fact.family if fact else None,
        grown_as=fact.grown_as if fact else "annual",
        is_tender=bool(fact and fact.is_tender),
        is_known=fact is not None,
    )
