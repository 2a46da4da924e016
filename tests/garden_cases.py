"""Case files of whole gardens: notes as typed, and everything that is understood of them.

A file is a title, a sentence, then the files of a garden, each behind "=== " and its path; notes may also be told
in short behind "=== days", a day and then what was done on it. Behind "=== household" or "=== public" and a day
stands all that this view makes of them on that day: beds, plantings, pickings, events, entries, problems. What is
as it is by default is not printed; all else is, so that a case holds everything. A view may name the parts it
prints: "=== public on 2026-12-31: entries, events".

`python tests/garden_cases.py FILE` writes what is understood today into a file; read the difference before
accepting it.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterable, Iterator
from dataclasses import MISSING, dataclass, field, fields, is_dataclass
from datetime import date
from pathlib import Path
from typing import Any

from gardens import TANSY_HILL_YAML, day_notes
from leafmould.garden.load import Loaded, load
from leafmould.garden.model import Bed, Crop, Entry, Event, Photo, Picking, Planting
from leafmould.notes.entries import Action, Named
from leafmould.values.problems import Location, Problem
from leafmould.values.quantities import Amount
from leafmould.values.when import When
from line_cases import amount_shown, meant, measured, names_shown, slots

FOLDER = Path(__file__).parent / "cases" / "gardens"
PARTS = ("beds", "crops", "plantings", "pickings", "events", "entries", "photos", "problems")
WIDTH = 112


@dataclass
class View:
    """One way of looking at a garden, and what is expected to be seen."""

    said: str  # "public on 2026-12-31: entries, events"
    expected: list[str] = field(default_factory=list)

    @property
    def parts(self) -> tuple[str, ...]:
        """What is printed of it."""
        _, _, named = self.said.partition(": ")
        return tuple(named.split(", ")) if named else PARTS

    def shown(self, folder: Path) -> list[str]:
        """What is seen today."""
        view, _, day = self.said.partition(":")[0].partition(" on ")
        loaded = load(folder, on=date.fromisoformat(day), household=view == "household", keep=False)
        return [row for part in self.parts for row in printed(part, loaded)]


@dataclass
class GardenCase:
    """One case file."""

    path: Path
    title: str
    about: str
    texts: dict[str, str] = field(default_factory=dict)
    views: list[View] = field(default_factory=list)

    def lay_out(self, folder: Path) -> Path:
        """The garden's files in a folder."""
        texts = {name: text for name, text in self.texts.items() if name != "days"}
        texts |= {f"notes/{name}": text for name, text in day_notes(self.texts.get("days", "")).items()}
        texts.setdefault("garden.yaml", "\n".join(row[4:] for row in TANSY_HILL_YAML.splitlines()))
        for name, text in texts.items():
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_text(text.strip("\n") + "\n", encoding="utf-8")
        return folder


def garden_cases() -> list[GardenCase]:
    """All case files, in order of their names."""
    return [read_case(path) for path in sorted(FOLDER.glob("*.txt"))]


def read_case(path: Path) -> GardenCase:
    """One case file as values."""
    first, *blocks = path.read_text(encoding="utf-8").split("\n=== ")
    title, _, about = first.removeprefix("# ").partition("\n")
    case = GardenCase(path, title, about.strip())
    for block in blocks:
        name, _, text = block.partition("\n")
        if name.startswith(("household on ", "public on ")):
            case.views.append(View(name, text.strip("\n").split("\n")))
        else:
            case.texts[name] = text
    return case


def written(case: GardenCase, folder: Path) -> str:
    """A case file with what is understood today."""
    case.lay_out(folder)
    rows = [f"# {case.title}", case.about]
    for name, text in case.texts.items():
        rows += ["", f"=== {name}", text.strip("\n")]
    for view in case.views:
        rows += ["", f"=== {view.said}", *view.shown(folder)]
    return "\n".join(rows) + "\n"


def printed(part: str, loaded: Loaded) -> Iterator[str]:
    """A part of the garden as the rows of a case."""
    garden = loaded.garden
    match part:
        case "beds":
            values: Iterable[Any] = garden.beds.values()
        case "crops":
            values = (crop for crop in garden.crops.values() if _is_told_of(crop, loaded))
        case "problems":
            yield from (f"{p.level.value}: {p.sentence}" for p in garden.problems)
            hidden = [p for p in loaded.problems if p not in garden.problems]
            yield from (f"told at home: {p.level.value}: {p.sentence}" for p in hidden)
            return
        case _:
            values = getattr(garden, part)
    for value in values:
        yield from wrapped([_head(value), *_rest(value)])


def _is_told_of(crop: Crop, loaded: Loaded) -> bool:
    grown = {key for planting in loaded.garden.plantings for key in planting.crops}
    return crop.key in grown | {key for event in loaded.garden.events for key in event.crops}


def wrapped(pieces: list[str]) -> Iterator[str]:
    """Pieces in rows of some width, all but the first set in."""
    row = pieces[0]
    for piece in pieces[1:]:
        if len(row) + len(piece) + 3 > WIDTH:
            yield row
            row = f"    {piece}"
        else:
            row = f"{row} · {piece}"
    yield row


NAMED_BY = {
    Bed: "bed",
    Crop: "crop",
    Planting: "planting",
    Picking: "picking",
    Event: "event",
    Entry: "note",
    Photo: "photo",
}


def _head(value: Any) -> str:
    name = getattr(value, "id", None) or getattr(value, "name", None) or value.key
    return f"{NAMED_BY[type(value)]} {name}"


LEFT_OUT = {
    "bed": {"at"}, "crop": set(), "planting": {"events", "pickings", "entries"}, "picking": {"at"},
    "event": {"entry"}, "note": {"at", "problems"}, "photo": set(),
}  # fmt: skip
"""What is printed elsewhere: a planting's events and pickings name it, and problems have a part of their own."""


def _rest(value: Any) -> Iterator[str]:
    left_out = LEFT_OUT[NAMED_BY[type(value)]] | {"id", "name"}
    if isinstance(value, Planting) and value.beds == (value.bed,) and value.bed_now == value.bed:
        left_out |= {"beds", "bed_now"}
    yield from _told(value, left_out)


def _told(value: Any, left_out: set[str]) -> Iterator[str]:
    """Every field that is not as it is by default."""
    for f in fields(value):
        now = getattr(value, f.name)
        default = f.default if f.default_factory is MISSING else f.default_factory()
        if f.name in left_out or now == default or now in (None, ()):
            continue
        name = f.name.replace("_", " ")
        if now is True:
            yield name.removeprefix("is ")
        elif now is False:
            yield f"not {name.removeprefix('is ')}"
        else:
            yield f"{name}: {said(now)}"


def said(value: Any) -> str:
    """A value in words."""
    match value:
        case When():
            days = f"{value.first}" if value.is_exact else f"{value.first}..{value.last}"
            return days if value.written == days else f"{days} “{value.written}”"
        case Amount():
            return " ".join(
                [
                    f"“{value.written}”",
                    amount_shown(value),
                    *(f"({m})" for m in measured(value, [value.written])),
                ]
            )
        case Named():
            return " ".join(
                [names_shown((value,)), *(f"({m})" for m in meant(value, [value.written, value.name]))]
            )
        case Action():
            return " · ".join([f"“{value.text}”", *[*slots(value)][1:]])
        case Location():
            return f"{value.file}:{value.line}"
        case Problem():
            return value.sentence
        case tuple():
            return ", ".join(
                f"[{said(v)}]" if isinstance(v, tuple) or _is_long(v) else said(v) for v in value
            )
        case float():
            return f"{value:g}"
        case str():
            return value.replace("\n", "⏎")
    if is_dataclass(value):
        return "; ".join(_told(value, set()))
    return str(value)


def _is_long(value: Any) -> bool:
    return is_dataclass(value) and not isinstance(value, When | Amount | Named | Location)


if __name__ == "__main__":
    for path in map(Path, sys.argv[1:]):
        with tempfile.TemporaryDirectory() as top:
            path.write_text(written(read_case(path), Path(top)), encoding="utf-8")
