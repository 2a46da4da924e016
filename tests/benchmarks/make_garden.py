"""Makes a garden folder of any number of notes, for measuring: the same seed gives the same bytes.

Every year each bed gets its crops, every crop its life (started or sown, up, thinned, picked, cleared),
and what happened between two visits is written down in one note, in the shapes people use: work lines in
a header, one action with a paragraph, no header at all, several dated parts in one file, prose alone.

    python tests/benchmarks/make_garden.py FOLDER --notes 3000 [--seed 1]
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from random import Random

from garden_words import (
    BED_NAMES,
    CHORES,
    CROPS,
    FATES,
    LESSONS,
    OPENINGS,
    SENTENCES,
    SIGHTINGS,
    CropWords,
)

LAST_DAY = date(2026, 7, 15)
"""No note is later; builds are measured as of this day."""

LINES_A_NOTE = 2.5
"""Work lines a note holds on average."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """How big a garden: a journal of N notes runs over N / 150 years, but at least 10 and at most 60, if not told."""

    notes: int
    over: int | None = None  # so many years

    @property
    def years(self) -> int:
        """Years of notes."""
        return self.over or max(10, min(60, self.notes // 150))

    @property
    def beds(self) -> int:
        """Places: 12 and more, at most 40."""
        return min(40, 12 + self.notes // 250)

    def notes_in(self, index: int) -> int:
        """Notes of the year with this number, from 0; they add up to all."""
        return self.notes * (index + 1) // self.years - self.notes * index // self.years


@dataclass(frozen=True, slots=True, kw_only=True)
class Deed:
    """One thing done, with all that a header would name."""

    on: date
    line: str
    verb: str
    bed: str = ""
    crop: str = ""
    variety: str = ""


def make_garden(folder: Path, *, notes: int, seed: int = 1, years: int | None = None) -> None:
    """Write the whole garden; the folder must be new or empty."""
    size = Size(notes=notes, over=years)
    rng = Random(seed)
    beds = BED_NAMES[: size.beds]
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "garden.yaml").write_text(_settings(beds), encoding="utf-8")
    first_year = LAST_DAY.year - size.years + 1
    for index in range(size.years):
        year = first_year + index
        _write_year(folder / "notes" / str(year), year, beds, size.notes_in(index), rng)


def _settings(beds: tuple[str, ...]) -> str:
    rows = "".join(
        f"  - {{name: {name}, size: 1.2 x {4 + i % 5} m, at: {2 + i % 4 * 3} x {i // 4 * 8} m, "
        "parts: [north half, south half]}\n"
        for i, name in enumerate(beds)
    )
    return (
        "garden: Measuring ground\nplace: {latitude: 46}\nfrost: {last: 12 May, first: 1 October}\n"
        "units: metric\ndecimal: point\ndates: day first\npeople: 4\n"
        f"measures: {{tray: 400 g, bucket: 6 kg}}\nbeds:\n{rows}"
    )


def _write_year(folder: Path, year: int, beds: tuple[str, ...], quota: int, rng: Random) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    days = _visits(year, quota, rng)
    deeds = sorted(_deeds(year, beds, int(quota * LINES_A_NOTE), days[-1], rng), key=lambda d: (d.on, d.line))
    start = 0
    for number, day in enumerate(days, start=1):
        end = start
        while end < len(deeds) and deeds[end].on <= day:
            end += 1
        name, text = _note(day, deeds[start:end], beds, rng)
        (folder / f"{day:%m-%d}-{number:04}{name}").write_text(text, encoding="utf-8")
        start = end


def _visits(year: int, quota: int, rng: Random) -> list[date]:
    """Days of the notes in order: most from April to October."""
    last = min(LAST_DAY, date(year, 12, 31)).timetuple().tm_yday
    days = [min(last, max(1, round(rng.gauss(190, 70)))) for _ in range(quota)]
    return sorted(date(year, 1, 1) + timedelta(days=day - 1) for day in days)


def _deeds(year: int, beds: tuple[str, ...], wanted: int, last: date, rng: Random) -> list[Deed]:
    """About as many things done as wanted, from whole lives of crops, chores and sightings."""
    deeds: list[Deed] = []
    place = 0
    while len(deeds) < wanted:
        bed = beds[place % len(beds)]
        crop = CROPS[(place * 7 + year * 3) % len(CROPS)]
        deeds.extend(d for d in _life(crop, bed, year, rng) if d.on <= last)
        deeds.extend(d for d in _by_the_way(bed, year, rng) if d.on <= last)
        place += 1
    return deeds


def _life(crop: CropWords, bed: str, year: int, rng: Random) -> Iterator[Deed]:
    variety = rng.choice(crop.varieties)
    known = {"bed": bed, "crop": crop.name, "variety": variety}
    part = rng.choice(("", "", "", ", north half", ", south half"))
    begun = date(year, crop.month, 1) + timedelta(days=rng.randrange(28))
    if crop.is_raised:
        yield Deed(
            on=begun, verb="started", line=f"started {rng.randrange(6, 40)} {crop.name} '{variety}'", **known
        )
        begun += timedelta(days=45)
        line = f"planted {rng.randrange(4, 24)} {crop.name} '{variety}' in {bed}{part}"
        yield Deed(on=begun, verb="planted", line=line, **known)
    else:
        line = f"sowed {crop.name} '{variety}' in {bed}{part}, {rng.randrange(1, 6)} rows"
        yield Deed(on=begun, verb="sowed", line=line, **known)
        yield Deed(on=begun + timedelta(days=13), verb="came up", line=f"{crop.name} up in {bed}", **known)
    if rng.random() < 0.3:
        line = f"saw {rng.choice(SIGHTINGS)} on {crop.name} in {bed}"
        yield Deed(on=begun + timedelta(days=rng.randrange(15, 40)), verb="saw", line=line, **known)
    yield from _harvest(crop, bed, begun + timedelta(days=crop.days + rng.randrange(-8, 15)), variety, rng)


def _harvest(crop: CropWords, bed: str, first: date, variety: str, rng: Random) -> Iterator[Deed]:
    known = {"bed": bed, "crop": crop.name, "variety": variety}
    if rng.random() < 0.08:
        line = f"lost {crop.name} in {bed}, {rng.choice(('slugs', 'drought', 'pigeons', 'mildew'))}"
        yield Deed(on=first - timedelta(days=20), verb="lost", line=line, **known)
        return
    pickings = rng.randrange(1, 6)
    for n in range(pickings):
        amount = rng.choice(
            (f"{rng.randrange(150, 990)} g", f"{rng.randrange(10, 60) / 10} kg", "two trays", "a bucket")
        )
        fate = rng.choice(FATES)
        line = f"picked {amount} {crop.name} '{variety}' from {bed}{fate}"
        yield Deed(on=first + timedelta(days=6 * n), verb="picked", line=line, **known)
    if rng.random() < 0.6:
        line = f"cleared {crop.name} from {bed}"
        yield Deed(on=first + timedelta(days=6 * pickings + 9), verb="cleared", line=line, **known)


def _by_the_way(bed: str, year: int, rng: Random) -> Iterator[Deed]:
    day = date(year, 3, 1) + timedelta(days=rng.randrange(240))
    if rng.random() < 0.5:
        chore = rng.choice(CHORES)
        yield Deed(on=day, verb=chore, line=f"{chore} {bed}", bed=bed)


def _note(day: date, deeds: list[Deed], beds: tuple[str, ...], rng: Random) -> tuple[str, str]:
    """How the file name goes on, and the text."""
    prose = _prose(beds, rng)
    shape = rng.random()
    if not deeds:
        return "-talk.md", f"---\ndate: {day.isoformat()}\n---\n{prose or rng.choice(OPENINGS)}\n"
    if shape < 0.2 and len(deeds) == 1 and deeds[0].crop:
        return "-one.md", _single(day, deeds[0], prose)
    lines = "".join(f"- {deed.line}\n" for deed in deeds)
    if shape < 0.35:
        return "-list.md", f"{lines}\n{prose}\n"
    if shape < 0.4:
        earlier = day - timedelta(days=1)
        return "-diary.md", f"## {day.isoformat()}\n\n{lines}\n## {earlier.isoformat()}\n\n{prose}\n"
    work = "".join(f"  - {deed.line}\n" for deed in deeds)
    return "-work.md", f"---\ndate: {day.isoformat()}\nwork:\n{work}---\n{prose}\n"


def _single(day: date, deed: Deed, prose: str) -> str:
    return (
        f"---\ndate: {day.isoformat()}\nbed: {deed.bed}\ncrop: {deed.crop}\nvariety: {deed.variety}\n"
        f"did: {deed.verb}\n---\n{prose}\n"
    )


def _prose(beds: tuple[str, ...], rng: Random) -> str:
    """None to three short paragraphs that name beds and crops in passing."""
    paragraphs = []
    for _ in range(rng.choice((0, 1, 1, 2, 3))):
        told = [rng.choice(OPENINGS), *(rng.choice(SENTENCES) for _ in range(rng.randrange(1, 4)))]
        told += [rng.choice(LESSONS)] if rng.random() < 0.05 else []
        text = " ".join(told).format(
            bed=rng.choice(beds), crop=rng.choice(CROPS).name, days=rng.randrange(3, 40)
        )
        paragraphs.append(text)
    return "\n\n".join(paragraphs)


def main() -> None:
    """Read the command line and write the garden."""
    parser = argparse.ArgumentParser(description="Make a garden for measuring.")
    parser.add_argument("folder", type=Path)
    parser.add_argument("--notes", type=int, default=3000)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    make_garden(given.folder, notes=given.notes, seed=given.seed)


if __name__ == "__main__":
    main()
