"""Notes that only look: tied to what grew in their bed that day."""

from __future__ import annotations

from collections.abc import Iterable

from leafmould.garden.care import Standing
from leafmould.garden.draft import Draft
from leafmould.garden.ground import Ground
from leafmould.notes.entries import Entry
from leafmould.values.when import When


def observe(ground: Ground, entries: Iterable[Entry]) -> None:
    """Tell each planting of the notes without an action that look at it."""
    standing = Standing(ground)
    looking = [(e.when, e) for e in entries if e.when and not e.actions and (e.beds or e.crops)]
    for when, entry in sorted(looking, key=lambda pair: (pair[0].last, pair[1].id)):
        for draft in _seen(ground, standing, entry, when):
            draft.observed.append(entry)


def _seen(ground: Ground, standing: Standing, entry: Entry, when: When) -> list[Draft]:
    crops = {k for n in entry.crops for k in ground.kinds.may_mean(ground.kinds.key_of(n) or "")}
    if not entry.beds:
        drafts = [d for crop in sorted(crops) for d in standing.at(("crop", crop), when)]
        return list(dict.fromkeys(d for d in drafts if d.is_row))
    found: list[Draft] = []
    for named in entry.beds:
        for bed in ground.lines.on(ground.lines.key_of(named), when.last, entry.part):
            for name in ground.lines.family_of(bed):
                there = standing.at(("bed", name), when)
                found.extend(d for d in there if bed in ground.beds_of(d, when.last) and d.is_row)
    return [d for d in dict.fromkeys(found) if not crops or crops & set(d.crops)]
