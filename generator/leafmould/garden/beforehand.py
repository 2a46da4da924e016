"""What grew where before the notes began: known by year only, for rotation and nothing else."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from leafmould.garden.draft import Draft
from leafmould.garden.ground import Ground
from leafmould.notes.settings import Beforehand
from leafmould.values.when import When


def note_beforehand(ground: Ground, rows: Iterable[Beforehand]) -> None:
    """One planting by year for each row that no note repeats."""
    known = {(d.year, d.beds[0], crop) for d in ground.by_year for crop in d.crops}
    for row in sorted(rows, key=lambda r: (r.year, r.bed, r.crop)):
        bed, crop = ground.lines.key_of_text(row.bed), ground.kinds.key_of_text(row.crop)
        bed = ground.lines.on(bed, date(row.year, 12, 31))[0]
        if (row.year, bed, crop) in known:
            continue
        known.add((row.year, bed, crop))
        ground.lines.make_if_new(bed, row.bed, row.at)
        ground.by_year.append(_by_year(ground, row.year, bed, crop, row.crop))


def _by_year(ground: Ground, year: int, bed: str, crop: str, word: str) -> Draft:
    return Draft(
        serial=len(ground.drafts) + len(ground.by_year),
        beds=(bed,),
        begins=date(year, 1, 1),
        start_written=When(first=date(year, 1, 1), last=date(year, 12, 31), written=str(year)),
        crops=(crop,),
        words=(word,),
        varieties=(),
        written_crops=(crop,),
        origin="year only",
        year=year,
        is_perennial=ground.kinds.crop(crop).grown_as == "perennial",
    )
