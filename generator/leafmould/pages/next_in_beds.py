"""What may come next: on a bed's page by family, on a crop's page by bed, and all of it on the page of rotation.

The verdicts come reckoned; here they get their links and their order. Places of what stays for years (trees,
canes, vines) are left out, and so are crops that stay.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from leafmould.garden.model import Bed, Crop
from leafmould.pages.addresses import ROTATION, SOURCES, source_anchor
from leafmould.pages.labels import family_mark
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import FamilyMark, Link, Page
from leafmould.reckon.next_in_bed import ORDER, Kind, Verdict, advised, rotating_beds, rotating_crops

SHORT: dict[Kind, str] = {"sooner than some advise": "rather soon"}
"""Verdicts that are too long for a table."""
MAY_COME: frozenset[Kind] = frozenset({"fine", "sooner than some advise"})
"""Verdicts under which a crop may go into a bed."""
MOST_CROPS = 8
"""Crops named beside a family."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NextFamily:
    """One family in one bed."""

    family: FamilyMark
    crops: tuple[Link, ...]
    reason: str
    parts: str  # "Fine in the gate end."
    to: str  # the planting or the note it rests on


@dataclass(frozen=True, slots=True, kw_only=True)
class NextGroup:
    """The families of one verdict."""

    verdict: str  # "Fine", "Not yet"
    families: tuple[NextFamily, ...]

    @property
    def lines(self) -> tuple[tuple[NextFamily, ...], ...]:
        """The families in lines, those of which the same is to be said in one."""
        found: dict[tuple[str, str], list[NextFamily]] = {}
        for row in self.families:
            found.setdefault((row.reason, row.parts), []).append(row)
        return tuple(tuple(rows) for rows in found.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class NextBeds:
    """The beds of one verdict, for a crop."""

    verdict: str
    beds: tuple[Link, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RotationCell:
    """A family in a bed."""

    last: str  # the season it last stood there; empty if it is not known to have
    to: str
    verdict: str  # "fine", "from 2029", "not known"
    kind: str  # the verdict as a class: "fine", "not-yet", "not-known", "sooner-than-some-advise"


@dataclass(frozen=True, slots=True, kw_only=True)
class RotationRow:
    """A bed with a cell for each family."""

    bed: Link
    cells: tuple[RotationCell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RotationPage:
    """The values of the page of rotation."""

    year: str
    families: tuple[FamilyMark, ...]
    rows: tuple[RotationRow, ...]
    least: int
    low: int
    high: int
    sources: tuple[Link, ...]


def next_year(ledger: Ledger) -> str:
    """The season the verdicts are for."""
    return ledger.year_name(ledger.this_year + 1)


def next_in_bed(bed: Bed, ledger: Ledger) -> tuple[NextGroup, ...]:
    """What may come next in a bed, the longest away first within each verdict; nothing where plants stay."""
    groups = defaultdict[Kind, list[Verdict]](list)
    for family in _families(ledger):
        if told := ledger.next_in_beds.get((bed.key, family)):
            groups[told.kind].append(told)
    return tuple(
        NextGroup(
            verdict=kind[:1].upper() + kind[1:],
            families=tuple(_family(v, ledger) for v in _ranked(groups[kind])),
        )
        for kind in ORDER
        if groups[kind]
    )


def next_sources(bed: Bed, ledger: Ledger) -> tuple[Link, ...]:
    """Who advises what the verdicts of a bed rest on."""
    keys = dict.fromkeys(
        key
        for family in _families(ledger)
        if (told := ledger.next_in_beds.get((bed.key, family))) and told.kind != "not known"
        for key in told.sources
    )
    return tuple(
        Link(text=ledger.reckoned.sources[key].publisher, to=f"{SOURCES}#{source_anchor(key)}")
        for key in keys
    )


def where_next(crop: Crop, ledger: Ledger) -> tuple[NextBeds, ...]:
    """Where a crop may go next, by verdict; nothing for one that stays for years or whose family is not known."""
    if crop.family is None or crop.grown_as == "perennial":
        return ()
    groups = defaultdict[Kind, list[Verdict]](list)
    for bed in rotating_beds(ledger.garden):
        told = ledger.next_in_beds[bed.key, crop.family]
        groups[told.kind].append(told)
    return tuple(
        NextBeds(
            verdict=kind[:1].upper() + kind[1:], beds=tuple(_bed(v, ledger) for v in _ranked(groups[kind]))
        )
        for kind in ORDER
        if groups[kind]
    )


def places_next(crop: Crop, ledger: Ledger) -> frozenset[str] | None:
    """The beds a crop may go into by the years between, or where no bed is known to be one, those not known not to be.

    None for a crop that stays for years, or of no known family.
    """
    if crop.family is None or crop.grown_as == "perennial":
        return None
    kinds = {bed.key: ledger.next_in_beds[bed.key, crop.family].kind for bed in rotating_beds(ledger.garden)}
    sure = frozenset(key for key, kind in kinds.items() if kind in MAY_COME)
    return sure or frozenset(key for key, kind in kinds.items() if kind == "not known")


def rotation_page(ledger: Ledger) -> Page:
    """Beds by families: when each last stood there, and whether it may come next."""
    names = _families(ledger)
    rule = advised()
    values = RotationPage(
        year=next_year(ledger),
        families=tuple(family_mark(name, ledger) for name in names),
        rows=tuple(
            RotationRow(
                bed=Link(text=bed.name, to=f"{ledger.bed_pages[bed.key]}#next"),
                cells=tuple(_cell(ledger.next_in_beds[bed.key, name], ledger) for name in names),
            )
            for bed in rotating_beds(ledger.garden)
        ),
        least=rule.least,
        low=rule.low,
        high=rule.high,
        sources=tuple(
            Link(text=ledger.reckoned.sources[key].publisher, to=f"{SOURCES}#{source_anchor(key)}")
            for key in rule.sources
        ),
    )
    return Page(
        address=ROTATION, template="rotation.html", title="Rotation", section="families", values=values
    )


def _families(ledger: Ledger) -> list[str]:
    """The families that rotate here, by their everyday names."""
    return sorted(
        {family for _, family in ledger.next_in_beds}, key=lambda name: family_mark(name, ledger).name
    )


def _ranked(found: Iterable[Verdict]) -> list[Verdict]:
    """What has been away longest first; never seen before all others."""
    return sorted(found, key=lambda v: (v.between is not None, -(v.between or 0), v.until or 0))


def _family(told: Verdict, ledger: Ledger) -> NextFamily:
    crops = rotating_crops(ledger.garden)[told.family]
    until = f"Not before {ledger.year_name(told.until)}. " if told.until else ""
    return NextFamily(
        family=family_mark(told.family, ledger),
        crops=tuple(ledger.crop_links[key] for key in crops[:MOST_CROPS]),
        reason=f"{until}{told.reason}",
        parts=_parts(told, ledger),
        to=_home(told, ledger),
    )


def _parts(told: Verdict, ledger: Ledger) -> str:
    """Where in the bed it may come all the same."""
    parts = ledger.fine_parts.get((told.bed, told.family), ())
    return (
        f"By what is noted of its parts, fine in {' and '.join(f'the {part}' for part in parts)}."
        if parts
        else ""
    )


def _bed(told: Verdict, ledger: Ledger) -> Link:
    """A bed with what is to be known of it: until when not, and what of the family stood there under another name."""
    bed = ledger.garden.beds[told.bed]
    until = f"not before {ledger.year_name(told.until)}" if told.until else ""
    parts = ledger.fine_parts.get((told.bed, told.family), ())
    fine = f"fine in {' and '.join(f'the {part}' for part in parts)}" if parts else ""
    aside = ", ".join(filter(None, (until, fine)))
    return Link(text=f"{bed.name} ({aside})" if aside else bed.name, to=f"{ledger.bed_pages[bed.key]}#next")


def relatives(crop: Crop, ledger: Ledger) -> str:
    """Which crops of this garden count as the same for rotation, under whatever names."""
    kin = [
        ledger.garden.crops[key].name
        for key in (rotating_crops(ledger.garden).get(crop.family, ()) if crop.family else ())
        if key != crop.key
    ]
    if crop.family is None or crop.grown_as == "perennial" or not kin:
        return ""
    family = family_mark(crop.family, ledger).name
    names = [*kin[:MOST_CROPS], *(["others"] if len(kin) > MOST_CROPS else [])]
    listed = " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))
    return f"For rotation it counts as one with all the {family}, here {listed}: what harms one in the soil harms the others."


def _cell(told: Verdict, ledger: Ledger) -> RotationCell:
    last = told.since.last_year
    return RotationCell(
        last="" if last is None else ledger.year_name(last),
        to=_home(told, ledger),
        verdict=f"from {ledger.year_name(told.until)}" if told.until else SHORT.get(told.kind, told.kind),
        kind=told.kind.replace(" ", "-"),
    )


def _home(told: Verdict, ledger: Ledger) -> str:
    """What the verdict rests on: the note of a disease, else the planting that stood there last."""
    if told.illness and told.kind == "not yet":
        return ledger.to_note(ledger.garden.event_by_id[told.illness.event].entry)
    return ledger.sections.get(told.since.plantings[0], "") if told.since.plantings else ""
