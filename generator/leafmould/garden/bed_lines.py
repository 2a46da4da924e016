"""Beds through time: declared, made from a note, renamed, split and joined.

Runs first in the assembling. Says which bed a name means on a day; what grows there is the ground's.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date, timedelta

from leafmould.garden.model import NOWHERE, Bed
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.settings import BedSetting, Settings
from leafmould.values.names import fold, slug
from leafmould.values.problems import Level, Location, Problem

PERENNIAL_KINDS = frozenset({"tree", "shrub", "vine", "cane row"})
"""Kinds of bed that hold one lasting plant, or a row of one kind."""

NOWHERE_KEY = "place-not-noted"
EVERYDAY_PART_WORDS = frozenset({"half", "end", "part", "side", "row", "the", "of", "bed", "border"})


class BedLines:
    """All beds of a garden, and what their names mean on a day."""

    def __init__(self, settings: Settings) -> None:
        self.settings_by_key: dict[str, BedSetting] = {slug(bed.name): bed for bed in settings.beds}
        self._keys_by_name = _keys_by_name(settings.beds)
        self.beds = _declared_beds(settings.beds, self._keys_by_name)
        self.is_ever_renamed = any(bed.became for bed in self.beds.values())
        self.is_ever_ended = any(bed.ended for bed in self.beds.values())
        self.problems: list[Problem] = []
        self._families: dict[str, tuple[str, ...]] = {}  # a bed made later comes from none

    def key_of(self, named: Named) -> str:
        """The bed key a note's word stands for, before any renaming."""
        if named.key in self.beds:
            return named.key
        return self._keys_by_name.get(fold(named.name), slug(" ".join(fold(named.key))))

    def key_of_text(self, name: str) -> str:
        """The bed key for a name that stands in a table or setting."""
        return self._keys_by_name.get(fold(name), slug(" ".join(fold(name))))

    def add_undeclared(self, uses: Iterable[tuple[Named, Location, date]]) -> None:
        """Make a bed of every name that is declared nowhere, with one hint each, at its first use."""
        names: dict[str, Counter[str]] = {}
        first: dict[str, tuple[date, str, int, int, Location]] = {}
        for named, at, day in uses:
            key = self.key_of(named)
            if key in self.beds:
                continue
            names.setdefault(key, Counter())[named.name] += 1
            place = (day, at.file, at.line or 0, at.column or 0, at)
            first[key] = min(first.get(key, place), place, key=lambda p: p[:4])
        declared = [bed.name for bed in self.beds.values()]
        for key in sorted(names):
            self._make(key, _most_used(names[key]), first[key][4], declared)

    def _make(self, key: str, name: str, at: Location, declared: list[str]) -> None:
        from difflib import get_close_matches

        near = get_close_matches(name, declared, n=1, cutoff=0.72)
        self.beds[key] = Bed(key=key, name=name, is_declared=False, at=at)
        self.problems.append(
            Problem(
                at=at,
                level=Level.HINT,
                message=f'"{name}" is not among the beds of garden.yaml, so a bed was made for it.',
                suggestion=near[0] if near else None,
            )
        )

    def make_if_new(self, key: str, name: str, at: Location) -> None:
        """A bed for a name in a table, unless there is one."""
        if key not in self.beds:
            self._make(key, name, at, [bed.name for bed in self.beds.values()])

    def nowhere(self) -> str:
        """The stand-in for a place that was not noted; made when first needed."""
        if NOWHERE_KEY not in self.beds:
            self.beds[NOWHERE_KEY] = Bed(
                key=NOWHERE_KEY, name="Place not noted", kind=NOWHERE, is_declared=False
            )
        return NOWHERE_KEY

    def on(self, key: str, day: date, part: str | None = None) -> tuple[str, ...]:
        """What this bed is on a day: itself, its successor, or each of them after a split."""
        current: tuple[str, ...] = (key,)
        bed = self.beds.get(key)
        if bed is None or not (bed.became or bed.came_from):
            return current
        for _ in range(len(self.beds) + 1):
            following = tuple(dict.fromkeys(k for now in current for k in self.step(now, day, part)))
            if following == current:
                break
            current = following
        return current

    def step(self, key: str, day: date, part: str | None) -> tuple[str, ...]:
        """The next bed in line on a day: the successors begun by then, or the one before."""
        bed = self.beds.get(key)
        if bed is None:
            return (key,)
        begun = tuple(k for k in bed.became if self._has_begun(k, day))
        if len(begun) > 1 and part:
            named = tuple(k for k in begun if self._holds_part(k, part))
            return named if len(named) == 1 else begun
        if begun:
            return begun
        if bed.begun and day < bed.begun and len(bed.came_from) == 1:
            return bed.came_from
        return (key,)

    def _has_begun(self, key: str, day: date) -> bool:
        begun = self.beds[key].begun
        return begun is None or begun <= day

    def _holds_part(self, key: str, part: str) -> bool:
        bed = self.beds[key]
        wanted = set(fold(part)) - EVERYDAY_PART_WORDS
        own = {word for name in (bed.name, *bed.also, *bed.parts) for word in fold(name)}
        return bool(wanted) and wanted <= own

    def family_of(self, key: str) -> tuple[str, ...]:
        """This bed, all it came from and all it became, by key; for looking through renamings."""
        if key not in self._families:
            self._families[key] = self._family_of(key)
        return self._families[key]

    def _family_of(self, key: str) -> tuple[str, ...]:
        found: dict[str, None] = {}
        waiting = [key]
        while waiting:
            now = waiting.pop()
            if now in found or now not in self.beds:
                continue
            found[now] = None
            waiting.extend((*self.beds[now].came_from, *self.beds[now].became))
        return tuple(sorted(found)) or (key,)

    def is_container(self, key: str) -> bool:
        """Whether the whole bed is one place, so that a new crop in it ends the old one."""
        return key in self.beds and self.beds[key].kind == "container"

    def is_for_perennials(self, key: str) -> bool:
        """Whether the kind of bed makes its own crop a lasting one."""
        return key in self.beds and self.beds[key].kind in PERENNIAL_KINDS


def is_new_place(named: Named) -> bool:
    """Whether a note named a place that was not known when it was read."""
    return named.sureness is Sureness.NEW


def _keys_by_name(beds: Iterable[BedSetting]) -> dict[tuple[str, ...], str]:
    names: dict[tuple[str, ...], str] = {}
    for bed in beds:
        names.setdefault(fold(bed.name), slug(bed.name))
    for bed in beds:
        for name in bed.also:
            names.setdefault(fold(name), slug(bed.name))
    for bed in beds:
        for name in bed.was:
            names.setdefault(fold(name), slug(name))
    return names


def _declared_beds(settings: tuple[BedSetting, ...], keys: Mapping[tuple[str, ...], str]) -> dict[str, Bed]:
    beds = {slug(bed.name): _bed(bed) for bed in settings}
    for setting in settings:
        key = slug(setting.name)
        for name in setting.was:
            old = keys[fold(name)]
            if old == key:
                continue
            predecessor = beds.get(old) or Bed(key=old, name=name, is_declared=False, at=setting.at)
            beds[old] = _ended_by(predecessor, key, setting.begun)
            beds[key] = replace(beds[key], came_from=(*beds[key].came_from, old))
    return {key: _on_its_ground(bed, beds) for key, bed in beds.items()}


def _on_its_ground(bed: Bed, beds: Mapping[str, Bed]) -> Bed:
    """A bed known only as what another was called before, where that one lies; split or joined ones lay elsewhere."""
    if bed.is_declared or len(bed.became) != 1:
        return bed
    now = beds[bed.became[0]]
    if now.came_from != (bed.key,):
        return bed
    return replace(
        bed,
        kind=now.kind,
        area_m2=now.area_m2,
        size_written=now.size_written,
        position_m=now.position_m,
        sides_m=now.sides_m,
        canopy_m=now.canopy_m,
        sun=now.sun,
    )


def _ended_by(old: Bed, successor: str, begun: date | None) -> Bed:
    """The old bed, ended the day before its first successor begins."""
    day = begun - timedelta(days=1) if begun else None
    known = [d for d in (old.ended, day) if d]
    return replace(old, became=(*old.became, successor), ended=min(known) if known else None)


def _bed(setting: BedSetting) -> Bed:
    return Bed(
        key=slug(setting.name),
        name=setting.name,
        also=setting.also,
        kind=setting.kind,
        area_m2=setting.area_m2,
        size_written=setting.size_written,
        position_m=setting.position_m,
        sides_m=setting.size_m,
        canopy_m=setting.canopy_m,
        sun=setting.sun,
        water=setting.water,
        soil=setting.soil,
        parts=setting.parts,
        begun=setting.begun,
        ended=setting.ended,
        at=setting.at,
        extra=setting.extra,
    )


def _most_used(names: Counter[str]) -> str:
    return min(names, key=lambda name: (-names[name], name))
