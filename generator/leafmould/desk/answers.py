"""What a new garden is made from: answers, read as people write them, and the questions that get them.

Asks through a function it is handed, so that it knows no terminal. The files are made by `start`.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Literal, TypeVar

from leafmould.values.dates import read_date, written_day
from leafmould.values.problems import WrongUse
from leafmould.values.when import When

KINDS = ("container", "row", "tree", "shrub", "cane row", "vine", "mound", "under glass")
SIZE = re.compile(r"^(?P<name>.*\S)\s+(?P<size>\d+(?:[.,]\d+)?\s*[x×]\s*\d+(?:[.,]\d+)?(?:\s*(?:m|ft|l))?)$")
YEAR = re.compile(r"(?:19|20)\d\d")

Read = TypeVar("Read")

Ask = Callable[[str], str]
"""Puts a question and gives the answer; an empty answer means "not known"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A bed, container or tree, as answered."""

    name: str
    size: str | None = None
    kind: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A crop that stands somewhere on the day the notes begin."""

    bed: str
    crop: str  # as answered: "leek", "tomato 'Stupice'"
    since: When  # as coarse as it was answered; the year of the answer where nothing was said


@dataclass(frozen=True, slots=True, kw_only=True)
class Answers:
    """What a new garden is made from. Only the name is needed."""

    name: str
    last_frost: str | None = None  # "22 May"
    first_frost: str | None = None
    latitude: float | None = None  # degrees north
    units: Literal["metric", "imperial"] = "metric"
    places: tuple[Place, ...] = ()
    stands: tuple[Standing, ...] = ()
    before: tuple[tuple[int, str, str], ...] = ()  # year, bed, crop as answered


def ask_all(ask: Ask, tell: Callable[[str], None], given: Answers, on: date) -> Answers:
    """Ask for whatever was not given already; an answer that cannot be read is asked for again."""
    answers = replace(given, name=given.name or one_line(ask("What is the garden called?")))
    if answers.last_frost is None:
        last = _until_read(ask, tell, "Average last frost of spring, such as 22 May", read_frost)
        answers = replace(answers, last_frost=last)
    if answers.first_frost is None:
        first = _until_read(ask, tell, "Average first frost of autumn, such as 25 September", read_frost)
        answers = replace(answers, first_frost=first)
    if answers.latitude is None:
        question = "Latitude in degrees, such as 46.5, or -33 in the south (never published)"
        answers = replace(answers, latitude=_until_read(ask, tell, question, read_latitude))
    if not answers.places:
        named = ask("Beds, pots and trees, with commas between, such as Long border, Old pear (tree)")
        answers = replace(answers, places=tuple(map(read_place, _items(named))))
    return _ask_by_place(ask, tell, answers, on)


def named(answers: Answers, folder: Path) -> Answers:
    """The answers with the folder's name for the garden's, if none was given."""
    if answers.name:
        return answers
    words = one_line(folder.resolve().name.replace("-", " ").replace("_", " "))
    return replace(answers, name=words[:1].upper() + words[1:] or "The garden")


def read_frost(text: str) -> str:
    """A day of the year as garden.yaml holds it: "22 May".

    Raises:
        WrongUse: if it is no such day.
    """
    leap = When(
        first=date(2024, 1, 1), last=date(2024, 12, 31), written="2024"
    )  # so that 29 February is a day
    found = read_date(text, order=None, base=leap, is_southern=False)
    day = found.when.day if found and found.when else None
    if found is None or day is None or found.other:
        raise WrongUse(f'"{text}" is not a day of the year. Write it like 22 May.')
    return written_day(day).removesuffix(f" {day.year}")


def read_latitude(text: str) -> float:
    """Degrees north.

    Raises:
        WrongUse: if it is no such number.
    """
    try:
        degrees = float(text.strip().replace("−", "-").replace(",", ".").removesuffix("°"))
    except ValueError:
        degrees = 91.0
    if not -90 <= degrees <= 90:
        raise WrongUse(f'"{text}" is not a latitude. Write degrees from -90 to 90, such as 46.5.')
    return degrees


def read_place(text: str) -> Place:
    """A bed as answered: its name, perhaps its size, perhaps its kind in brackets."""
    name, kind = one_line(text), None
    for known in KINDS:
        if name.casefold().endswith(f"({known})"):
            name, kind = name[: -len(known) - 2].strip(), known
    sized = SIZE.match(name)
    return Place(name=sized["name"], size=sized["size"], kind=kind) if sized else Place(name=name, kind=kind)


def read_stands(text: str, on: date) -> tuple[Standing, ...]:
    """ "Long border: leek, garlic October 2025" as one value a crop.

    Raises:
        WrongUse: if it names no bed or no crop.
    """
    bed, crops = _bed_and_crops(text)
    if not bed or not crops:
        raise WrongUse(f'"{text}" does not say what stands where. Write it like "Long border: leek, kale".')
    return tuple(_standing(bed, crop, on) for crop in crops)


def read_before(text: str) -> tuple[tuple[int, str, str], ...]:
    """ "2025: Long border: potato" as year, bed and crop, one row a crop.

    Raises:
        WrongUse: if it names no year, bed or crop.
    """
    year, _, rest = text.partition(":")
    bed, crops = _bed_and_crops(rest)
    if not YEAR.fullmatch(year.strip()) or not bed or not crops:
        raise WrongUse(
            f'"{text}" does not say what grew where in which year. Write it like "2025: Long border: potato".'
        )
    return tuple((int(year), bed, crop) for crop in crops)


def one_line(text: str) -> str:
    """Words as typed, on one line, without control characters and outer spaces."""
    plain = "".join(" " if unicodedata.category(c) in ("Cc", "Zl", "Zp", "Cs") else c for c in text)
    return " ".join(plain.split())


def _ask_by_place(ask: Ask, tell: Callable[[str], None], answers: Answers, on: date) -> Answers:
    """What stands in each bed, and what grew there before."""
    stands, before = list(answers.stands), list(answers.before)
    for place in answers.places:
        if not answers.stands:
            crops = ask(f"What stands in {place.name} now, such as leek, asparagus 2019")
            stands += [_standing(place.name, crop, on) for crop in _items(crops)]
        if not answers.before:
            question = f"What grew in {place.name} before, such as 2025 potato, 2024 peas"
            grew = _until_read(ask, tell, question, _read_years)
            before += [(year, place.name, crop) for year, crop in grew or ()]
    return replace(answers, stands=tuple(stands), before=tuple(before))


def _bed_and_crops(text: str) -> tuple[str, list[str]]:
    bed, _, crops = text.rpartition(":")
    return one_line(bed), _items(crops)


def _standing(bed: str, answer: str, on: date) -> Standing:
    """A crop with its date, if the last words of the answer are one."""
    words = answer.split(" ")
    for start in range(1, len(words)):
        tail = " ".join(words[start:])
        found = read_date(tail, order=None, base=None, is_southern=False) if YEAR.search(tail) else None
        if found and found.when and found.when.first <= on:
            return Standing(bed=bed, crop=" ".join(words[:start]), since=found.when)
    this_year = When(first=date(on.year, 1, 1), last=date(on.year, 12, 31), written=str(on.year))
    return Standing(bed=bed, crop=answer, since=this_year)


def _read_years(text: str) -> tuple[tuple[int, str], ...]:
    """ "2025 potato, kale, 2024 peas": a crop without a year has the year before it."""
    year: int | None = None
    found = []
    for item in _items(text):
        first, _, rest = item.partition(" ")
        if YEAR.fullmatch(first.rstrip(":")):
            year, item = int(first.rstrip(":")), rest.strip()
        if year is None or not item:
            raise WrongUse(f'"{text}" does not say which year. Write it like 2025 potato, 2024 peas.')
        found.append((year, item))
    return tuple(found)


def _until_read(
    ask: Ask, tell: Callable[[str], None], question: str, read: Callable[[str], Read]
) -> Read | None:
    """Ask until the answer can be read; None for an empty one."""
    while answer := one_line(ask(question)):
        try:
            return read(answer)
        except WrongUse as fault:
            tell(fault.sentence)
    return None


def _items(text: str) -> list[str]:
    return [item for item in map(one_line, text.split(",")) if item]
