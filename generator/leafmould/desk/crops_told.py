"""Crops as people tell them in one answer, each with when it was: "plum, 2005", "2022 broad beans; kale 2021".

Used while a garden is made. A year may stand before or behind its crop; "nothing" and "don't know" are answers
too. What is no crop is refused in a sentence, so that it can be asked again.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from leafmould.values.dates import read_date
from leafmould.values.names import fold
from leafmould.values.problems import WrongUse
from leafmould.values.when import When, on

SAID_OF_NOTHING = """
nothing|nothing yet|nothing now|nothing at all|nothing much|not much|nowt|none|no|nil|empty|bare|bare soil|bare earth
fallow|weeds|don't know|dont know|do not know|i don't know|i dont know|not known|unknown|no idea|not sure|can't remember
cannot remember|don't remember|forgotten|forgot|n/a|na|n.a|never anything
"""
NOTHING = frozenset(re.split(r"[|\n]", SAID_OF_NOTHING.strip()))
NEVER_PLANTED = """
hen chicken duck goose geese quail bee rabbit goat pig sheep cat dog lawn grass compost shed pond path rubble gravel
"""
NO_CROPS = frozenset(NEVER_PLANTED.split())
"""What stands in gardens and was never planted."""

YEAR = re.compile(r"(?:1[89]|20)\d\d")
SPAN = re.compile(r"((?:1[89]|20)\d\d)\s*(?:-|–|to|and|&|\+|/)\s*((?:1[89]|20)\d\d)")
EDGES = " .:()[]-–—"
LEADS_TO = r"(?:since|from|in|of|on|about|around|ca?\.|circa|planted|sown|sowed|put in|set out)"
CUE = re.compile(rf"{LEADS_TO}\s+", re.IGNORECASE)
LEFT_OVER = re.compile(rf"(?:\s{LEADS_TO})+$", re.IGNORECASE)
YEARS_AGO = re.compile(r"(\d+|one|two|three|four|five|ten) years? ago", re.IGNORECASE)
NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "ten": 10}


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A piece of an answer: a crop, or a date, or both."""

    crop: str  # "" where the piece is a date alone
    when: When | None = None
    leads: bool = False  # the date stands before the crop
    is_for_all: bool = False  # "2019: asparagus, rhubarb"


def is_nothing(text: str) -> bool:
    """Whether an answer says that there is nothing, or that nobody knows."""
    words = " ".join(text.replace("’", "'").casefold().split()).strip(" .!?-–—")
    return not words or words in NOTHING


def standing(text: str, today: date) -> tuple[tuple[str, When | None], ...]:
    """What stands there, each crop with since when, as far as that is told.

    Raises:
        WrongUse: if a piece is no crop, or its date lies ahead.
    """
    found: list[Told] = []
    for group in _groups(text, today):
        ahead: When | None = None
        for told in group:
            if told.crop:
                found.append(replace(told, when=told.when or ahead))
                ahead = told.when if told.is_for_all else ahead if group[0].is_for_all else None
            elif found and found[-1].when is None and told is not group[0]:
                found[-1] = replace(found[-1], when=told.when)
            else:
                ahead = told.when
    return tuple((told.crop, told.when) for told in found if not is_nothing(told.crop))


def grew(text: str, today: date) -> tuple[tuple[int, str], ...]:
    """What grew there, each crop with its year; one without has the year that stands nearest.

    Raises:
        WrongUse: if a piece is no crop, has no year, or its year lies ahead.
    """
    found: list[Told] = []
    last: When | None = None
    for group in _groups(text, today):
        dated = next((told for told in group if told.when), None)
        leads = dated is None or dated.leads or (dated is group[0] and not dated.crop)
        found += _forward(group, last) if leads else reversed(_forward(group[::-1], None))
        last = found[-1].when if found else None
    return tuple(
        (year, told.crop)
        for told in found
        if told.when and not is_nothing(told.crop)
        for year in _years(told.when)
    )


def _forward(group: list[Told], when: When | None) -> list[Told]:
    """Each crop with its own date or the one met before it."""
    found = []
    for told in group:
        when = told.when or when
        if told.crop and when is None and not is_nothing(told.crop):
            raise WrongUse(f'"{told.crop}" has no year. Write it like potato 2025, peas 2024.')
        if told.crop:
            found.append(replace(told, when=when))
    return found


def _years(when: When) -> Iterator[int]:
    """The years of a span; else the one in which it began: a winter is one season."""
    span = SPAN.fullmatch(when.written)
    if span and re.search(r"-|–|to", when.written):
        yield from range(when.first.year, when.last.year + 1)
    else:
        yield from dict.fromkeys((when.first.year, when.last.year if span else when.first.year))


def _groups(text: str, today: date) -> list[list[Told]]:
    """The pieces between commas, in the groups between semicolons."""
    groups = []
    for group in re.split(r"[;\n]", text):
        pieces = [" ".join(piece.split()) for piece in group.split(",")]
        if told := [_told(piece, today) for piece in pieces if not is_nothing(piece)]:
            groups.append(told)
    return groups


def _told(piece: str, today: date) -> Told:
    """One piece, its date apart.

    Raises:
        WrongUse: if it is no crop, or its date lies ahead.
    """
    words = piece.split(" ")
    if when := _when(piece, today):
        return Told(crop="", when=when)
    for size in range(len(words) - 1, 0, -1):
        if when := _when(head := " ".join(words[:size]), today):
            is_for_all = head.endswith(":")
            return Told(
                crop=_crop(" ".join(words[size:]), piece), when=when, leads=True, is_for_all=is_for_all
            )
        if when := _when(" ".join(words[-size:]), today):
            return Told(crop=_crop(" ".join(words[:-size]), piece), when=when)
    return Told(crop=_crop(piece, piece))


def _crop(words: str, piece: str) -> str:
    crop = words.strip(EDGES)
    while (shorter := LEFT_OVER.sub("", crop).strip(EDGES)) != crop:
        crop = shorter
    if is_nothing(crop):
        return "nothing"
    if not any(unicodedata.category(c).startswith("L") for c in crop):
        raise WrongUse(f'"{piece}" names no crop. Write it like leek, asparagus 2019, or press Enter.')
    if " ".join(fold(crop)) in NO_CROPS:
        raise WrongUse(
            f'"{crop}" is no crop. Name only what was sown or planted, such as leek, or press Enter.'
        )
    return crop


def _when(text: str, today: date) -> When | None:
    """The date a few words are; without a year only where a word such as "since" leads to it."""
    words = text.strip(EDGES)
    bare = words
    while cue := CUE.match(bare):
        bare = bare[cue.end() :]
    when = _span(bare) or _read(_in_figures(bare, today), today if bare != words else None)
    if when and when.first > today:
        raise WrongUse(f'"{bare}" is yet to come. Name what stands or stood there.')
    return when


def _read(text: str, base: date | None) -> When | None:
    if base is None and not YEAR.search(text):
        return None
    found = read_date(text, order=None, base=on(base) if base else None, is_southern=False)
    return found.when if found and not found.other else None


def _span(text: str) -> When | None:
    if not (span := SPAN.fullmatch(text)) or int(span[1]) > int(span[2]):
        return None
    return When(first=date(int(span[1]), 1, 1), last=date(int(span[2]), 12, 31), written=text)


def _in_figures(text: str, today: date) -> str:
    """ "last year" and "three years ago" as a year."""
    words = text.casefold()
    if words in ("last year", "this year"):
        return str(today.year - (words == "last year"))
    if ago := YEARS_AGO.fullmatch(words):
        return str(today.year - (NUMBERS.get(ago[1]) or int(ago[1])))
    return text
