"""What is known of a crop, for the terminal: the published figures source by source, and what was seen here.

Works with a garden and without one; without, nothing is said of the gardener's own record. How a crop's
page shows the same lines is another module's affair.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from textwrap import wrap

from leafmould.facts import tables
from leafmould.facts.cautions import cautions
from leafmould.facts.tables import Source, families, sources
from leafmould.garden.load import Loaded
from leafmould.garden.model import Garden
from leafmould.garden.vocabulary import build_vocabulary
from leafmould.notes.settings import Settings
from leafmould.reckon.almanac import Almanac, almanac
from leafmould.reckon.known import KnownLine, known_of
from leafmould.report import JSON_VERSION
from leafmould.values.names import Kind, Known, Vocabulary
from leafmould.values.problems import WrongUse

WIDTH = 100
"""Columns of the terminal that are used at most."""
LABEL = 30


@dataclass(frozen=True, slots=True, kw_only=True)
class CropAnswer:
    """A crop, and all that is known of it."""

    key: str
    like: str  # key of the published crop whose facts serve: its own, or that of the one crops.yaml says it is like
    name: str  # as it was asked for
    botanical: str  # "" for a crop in no table
    family: str | None
    known: tuple[KnownLine, ...]

    def lines(self) -> tuple[str, ...]:
        """For the terminal: the crop, a line a subject, then the sources by their numbers."""
        numbers = _numbers(self.known)
        return (
            self._heading(),
            *(row for line in self.known for row in _rows(line, numbers)),
            *(f"Take care: {caution.words} {caution.ask}" for caution in cautions(self.like)),
            *_sources(numbers),
            *(() if self.known else ("Nothing is published of it in the tables here.",)),
        )

    def _heading(self) -> str:
        family = families()[self.family].name if self.family else "family not known"
        return f"{self.name}: {', '.join(filter(None, (self.botanical, family)))}"

    def json(self) -> dict[str, object]:
        """For other programs."""
        return {
            "version": JSON_VERSION,
            "crop": self.key,
            "family": self.family,
            "facts": [_line_json(line) for line in self.known],
            "cautions": [{"words": c.words, "ask": c.ask} for c in cautions(self.like)],
            "sources": {key: _source_words(sources()[key]) for key in _numbers(self.known)},
        }


def ask_facts(words: Sequence[str], loaded: Loaded | None, on: date) -> CropAnswer:
    """What is known of the crop that some words name, in a garden or without one.

    Raises:
        WrongUse: if they name no crop, with the nearest; or several, with all of them.
    """
    if loaded is None:
        vocabulary, reckoned = build_vocabulary(Settings(), tables.crops()), Almanac(on=on)
        known = _crop_named(" ".join(words), vocabulary)
        return _answer(known, reckoned, None)
    known = _crop_named(" ".join(words), loaded.vocabulary)
    return _answer(known, almanac(loaded.shown, loaded.garden), loaded.garden)


def _crop_named(asked: str, vocabulary: Vocabulary) -> Known:
    found = vocabulary.exactly(asked, Kind.CROP, Kind.CROP_GROUP)
    for known in found:
        if known.kind is Kind.CROP:
            return known
    if found:
        names = sorted(tables.crops()[key].name for key in found[0].of if key in tables.crops())
        raise WrongUse(f'"{asked}" may be {_either(names)}. Ask for one of them.')
    near = vocabulary.closest(asked, Kind.CROP, Kind.CROP_GROUP)
    raise WrongUse(f'No crop is called "{asked}".' + (f' Did you mean "{near}"?' if near else ""))


def _either(names: Sequence[str]) -> str:
    return f"{', '.join(names[:-1])} or {names[-1]}" if len(names) > 1 else names[0]


def _answer(known: Known, reckoned: Almanac, garden: Garden | None) -> CropAnswer:
    fact = reckoned.fact(known.key)
    own = garden.crops.get(known.key) if garden else None
    family = own.family if own else fact.family if fact else None
    plantings = [p for p in garden.plantings if known.key in p.crops] if garden else []
    return CropAnswer(
        key=known.key,
        like=fact.key if fact else known.key,
        name=known.name,
        botanical=fact.botanical if fact else "",
        family=family,
        known=known_of(known.key, family, plantings, reckoned),
    )


def _line_json(line: KnownLine) -> dict[str, object]:
    return {
        "label": line.label,
        "words": line.words,
        "said": [{"words": s.words, "note": s.note, "source": s.source} for s in line.said],
        "packet": line.packet,
        "seen": line.seen.words if line.seen else None,
        "is_common_practice": line.is_common_practice,
    }


def _numbers(known: Sequence[KnownLine]) -> dict[str, int]:
    used = dict.fromkeys(said.source for line in known for said in line.said)
    return {key: number for number, key in enumerate(used, start=1)}


def _rows(line: KnownLine, numbers: dict[str, int]) -> Iterator[str]:
    agree = {said.words for said in line.said} in ({line.words}, {""})
    refs = "".join(f" [{numbers[said.source]}]" for said in line.said) if agree else ""
    common = ", common practice, no source" if line.is_common_practice else ""
    parts = [
        f"here {line.seen.words}" if line.seen else "",
        f"your own figures: {line.packet}" if line.packet else "",
        f"{line.words}{common}{refs}" if line.words else "",
        "" if agree else "; ".join(f"{s.words} [{numbers[s.source]}]" for s in line.said),
    ]
    rows = [row for part in parts if part for row in wrap(part, WIDTH - LABEL)]
    for number, row in enumerate(rows):
        yield f"{'' if number else line.label:<{LABEL}}{row}"


def _sources(numbers: dict[str, int]) -> Iterator[str]:
    if numbers:
        yield "Sources"
    for key, number in numbers.items():
        first = f"[{number}] "
        yield from wrap(
            _source_words(sources()[key]), WIDTH, initial_indent=first, subsequent_indent=" " * len(first)
        )


def _source_words(source: Source) -> str:
    return f"{source.publisher}: {source.title} ({source.year}; {source.part})."
