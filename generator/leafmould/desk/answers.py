"""What a new garden is made from: answers, read as people write them, and the questions that get them.

Asks through a function it is handed, so that it knows no terminal. The files are made by `start`.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Literal, TypeVar

from leafmould.desk.crops_told import grew, is_nothing, standing
from leafmould.desk.kinds_told import SAYS_NOTHING, ByName, is_for_animals, kind_by_name, kind_in_words
from leafmould.values.dates import read_date, written_day
from leafmould.values.problems import WrongUse
from leafmould.values.when import When

IN_BRACKETS = re.compile(r"(?P<name>.*\S)\s*\((?P<kind>[^()]+)\)")
SIZE = re.compile(r"^(?P<name>.*\S)\s+(?P<size>\d+(?:[.,]\d+)?\s*[x×]\s*\d+(?:[.,]\d+)?(?:\s*(?:m|ft|l))?)$")
YEAR = re.compile(r"(?:1[89]|20)\d\d")

Read = TypeVar("Read")

Ask = Callable[[str], str]
"""Puts a question and gives the answer; an empty answer means "not known"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A bed, container or tree, as answered."""

    name: str
    size: str | None = None
    kind: str | None = None  # as it was said
    by_name: ByName = SAYS_NOTHING  # what its name tells where nothing was said


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


def ask_all(
    ask: Ask,
    tell: Callable[[str], None],
    given: Answers,
    on: date,
    *,
    stopped: type[Exception] = EOFError,
) -> Answers:
    """Ask for whatever was not given already; an answer that cannot be read is asked for again.

    Args:
        stopped: what `ask` raises when nobody answers any more. What was said before is kept.
    Raises:
        Exception: that same one, if nothing was said before.
    """
    tell("Press Enter to leave an answer out, Ctrl-C to stop asking; everything can be changed later.")
    answers, after = given, _answered(ask, tell, given, on)
    try:
        while further := next(after, None):
            answers = further
    except stopped:
        if answers == given:
            raise
        tell("\nStopped asking. What was answered is kept; the rest can be put down later.")
    return answers


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
    """A bed as answered: its name, perhaps its size, perhaps its kind in brackets, else the one its name says."""
    name, kind = one_line(text), None
    if (in_brackets := IN_BRACKETS.fullmatch(name)) and (known := kind_in_words(in_brackets["kind"])):
        name, kind = in_brackets["name"], known
    sized = SIZE.match(name)
    place = Place(name=sized["name"], size=sized["size"]) if sized else Place(name=name)
    if kind is not None:
        return replace(place, kind=kind)
    return replace(place, by_name=kind_by_name(place.name))


def read_stands(text: str, on: date) -> tuple[Standing, ...]:
    """ "Long border: leek, garlic October 2025" as one value a crop.

    Raises:
        WrongUse: if it names no bed or no crop.
    """
    bed, _, crops = text.rpartition(":")
    if not one_line(bed) or not one_line(crops):
        raise WrongUse(f'"{text}" does not say what stands where. Write it like "Long border: leek, kale".')
    return tuple(_standing(one_line(bed), crop, since, on) for crop, since in standing(crops, on))


def read_before(text: str, on: date) -> tuple[tuple[int, str, str], ...]:
    """ "2025: Long border: potato" as year, bed and crop, one row a crop.

    Raises:
        WrongUse: if it names no year, bed or crop.
    """
    year, _, rest = text.partition(":")
    bed, _, crops = rest.rpartition(":")
    if not YEAR.fullmatch(year.strip()) or not one_line(bed) or not one_line(crops):
        raise WrongUse(
            f'"{text}" does not say what grew where in which year. Write it like "2025: Long border: potato".'
        )
    told = grew(f"{year.strip()}: {crops}", on)
    return tuple((which, one_line(bed), crop) for which, crop in told)


def one_line(text: str) -> str:
    """Words as typed, on one line, without control characters and outer spaces."""
    plain = "".join(" " if unicodedata.category(c) in ("Cc", "Zl", "Zp", "Cs") else c for c in text)
    return " ".join(plain.split())


def _answered(ask: Ask, tell: Callable[[str], None], given: Answers, on: date) -> Iterator[Answers]:
    """The answers after every question."""
    yield (answers := replace(given, name=given.name or one_line(ask("What is the garden called?"))))
    if answers.last_frost is None:
        last = _until_read(ask, tell, "Average last frost of spring, such as 22 May", read_frost)
        yield (answers := replace(answers, last_frost=last))
    if answers.first_frost is None:
        first = _until_read(ask, tell, "Average first frost of autumn, such as 25 September", read_frost)
        yield (answers := replace(answers, first_frost=first))
    if answers.latitude is None:
        question = "Latitude in degrees, such as 46.5, or -33 in the south (never published)"
        yield (answers := replace(answers, latitude=_until_read(ask, tell, question, read_latitude)))
    if not answers.places:
        places = ask("Beds, pots and trees, with commas between, such as Long border, Old pear (tree)")
        named = [read_place(item) for item in _items(places) if not is_nothing(item)]
        yield (answers := replace(answers, places=tuple(named)))
    yield from _by_place(ask, tell, answers, on)


def _by_place(ask: Ask, tell: Callable[[str], None], answers: Answers, on: date) -> Iterator[Answers]:
    """What stands in each bed, and what grew there before; a tree has no before."""
    asks_stands, asks_before = not answers.stands, not answers.before
    for place in answers.places:
        if is_for_animals(place.name):
            continue
        if asks_stands:
            question = f"What stands in {place.name} now, such as leek, asparagus 2019"
            told = _until_read(ask, tell, question, lambda text: standing(text, on)) or ()
            stands = [_standing(place.name, crop, since, on) for crop, since in told]
            yield (answers := replace(answers, stands=(*answers.stands, *stands)))
        if asks_before and "tree" not in (place.kind, place.by_name.kind):
            question = f"What grew in {place.name} before, such as potato 2025, peas 2024"
            rows = _until_read(ask, tell, question, lambda text: grew(text, on)) or ()
            before = [(year, place.name, crop) for year, crop in rows]
            yield (answers := replace(answers, before=(*answers.before, *before)))


def _standing(bed: str, crop: str, since: When | None, on: date) -> Standing:
    """A crop of which nothing is said stands since some day of this year."""
    this_year = When(first=date(on.year, 1, 1), last=date(on.year, 12, 31), written=str(on.year))
    return Standing(bed=bed, crop=crop, since=since or this_year)


def _until_read(
    ask: Ask, tell: Callable[[str], None], question: str, read: Callable[[str], Read]
) -> Read | None:
    """Ask until the answer can be read; None where nothing is known."""
    while not is_nothing(answer := one_line(ask(question))):
        try:
            return read(answer)
        except WrongUse as fault:
            tell(fault.sentence)
    return None


def _items(text: str) -> list[str]:
    return [item for item in map(one_line, text.split(",")) if item]
