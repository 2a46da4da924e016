"""The identity of a planting: what its own first note says, and nothing else.

Crop, bed at its start, start date (as written if coarse), then variety and part where that note names
them. So a later note, or one that fills in something, never changes it. What does change an id: writing
another crop, bed, date, variety or part in the note of the start; for a start nobody noted, an older
note of the same crop, bed and year; a second start that reads the same on the same day gets "_2"; and
what was only sown into gaps, or found again self-sown, goes under the id of the older planting it joins.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from datetime import date

from leafmould.garden.draft import Draft
from leafmould.values.names import slug
from leafmould.values.when import When


def give_ids(drafts: Iterable[Draft]) -> None:
    """Give each draft its id; they must come oldest first."""
    numbers: Counter[str] = Counter()
    taken: Counter[str] = Counter()
    for draft in drafts:
        draft.id = _unique(draft.from_setting or _id(draft, numbers), taken)


def date_word(when: When) -> str:
    """A start date as it stands in an id: ISO, or as written, with its year."""
    if when.is_exact:
        return when.first.isoformat()
    year = str(when.first.year)
    return slug(when.written) if year in when.written else f"{slug(when.written)}-{year}"


def joined(*words: str) -> str:
    """The parts of an id, each as a slug."""
    return "_".join(slug(word) for word in words)


def _id(draft: Draft, numbers: Counter[str]) -> str:
    crops = "-".join(draft.written_crops) or "unknown"
    further = ["-".join(draft.written_varieties)] if draft.written_varieties else []
    if draft.part:
        further.append(draft.part)
    bed = draft.written_bed or draft.beds[0]
    if draft.start_written is not None:
        return joined(crops, bed, date_word(draft.start_written), *further)
    stem = joined(crops, bed, _year(draft.begins))
    numbers[stem] += 1
    return "_".join([f"{stem}-{numbers[stem]}", *map(slug, further)])


def _year(day: date) -> str:
    return str(day.year)


def _unique(wanted: str, taken: Counter[str]) -> str:
    taken[wanted] += 1
    if taken[wanted] == 1:
        return wanted
    number = taken[wanted]
    while f"{wanted}_{number}" in taken:
        number += 1
    taken[f"{wanted}_{number}"] += 1
    return f"{wanted}_{number}"
