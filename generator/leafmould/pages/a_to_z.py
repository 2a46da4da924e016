"""Everything that has a name, from A to Z: the way to it for whoever has no script, and what search finds first.

Crops, varieties, beds, troubles, seasons, people where they are shown, and the gardener's own pages. Made from the
ledger, so a public build names nothing that it may not show.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from leafmould.garden.bed_lines import NOWHERE_KEY
from leafmould.notes.words.nouns import HELPERS, TROUBLES
from leafmould.pages.addresses import FIND
from leafmould.pages.figures import when_figure
from leafmould.pages.free import free_title
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link, Page
from leafmould.pages.ways import ours
from leafmould.values.names import fold

MOST_TOLD = 12
"""Notes named beside a trouble or a person, newest first."""
OTHER = "#"
"""Where names stand that begin with no letter."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Name:
    """Something with a name, and where it stands."""

    kind: str  # crop, variety, bed, trouble, season, person, page
    link: Link
    also: tuple[str, ...] = ()  # other names it goes by; of a variety its crop
    told: tuple[Link, ...] = ()  # notes that tell of it, where it has no page of its own
    more: int = 0  # notes that are not named here


@dataclass(frozen=True, slots=True, kw_only=True)
class NameLetter:
    """The names under one letter."""

    letter: str
    anchor: str
    names: tuple[Name, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FindPage:
    """The values of the page of names."""

    letters: tuple[NameLetter, ...]
    seasons: tuple[Link, ...]  # the lists of notes, season by season


def find_page(ledger: Ledger) -> Page:
    """All names by their first letter."""
    by_letter: defaultdict[str, list[Name]] = defaultdict(list)
    for name in sorted(names_of(ledger), key=lambda n: (n.link.text.casefold(), n.kind, n.link.to)):
        by_letter[_letter(name.link.text)].append(name)
    letters = sorted(letter for letter in by_letter if letter != OTHER)
    letters += [OTHER] if OTHER in by_letter else []
    values = FindPage(
        letters=tuple(
            NameLetter(letter=letter, anchor=f"letter-{place}", names=tuple(by_letter[letter]))
            for place, letter in enumerate(letters, start=1)
        ),
        seasons=tuple(
            Link(text=ledger.year_name(year), to=ledger.to_season(year))
            for year in ledger.years
            if ledger.to_season(year)
        ),
    )
    return Page(address=FIND, template="find.html", title="From A to Z", section="find", values=values)


def _letter(text: str) -> str:
    """The letter a name stands under: without its accent, capital."""
    words = fold(text)
    first = words[0][:1].upper() if words else ""
    return first if first.isalpha() else OTHER


def names_of(ledger: Ledger) -> Iterator[Name]:
    """Every name this build may show, kind by kind."""
    garden = ledger.garden
    for key, crop in garden.crops.items():
        yield Name(kind="crop", link=ledger.crop_links[key], also=_other_words(key, crop.name, ledger))
    yield from _varieties(ledger)
    for key, bed in garden.beds.items():
        if key != NOWHERE_KEY or ledger.plantings_by_bed.get(key):
            yield Name(kind="bed", link=ledger.bed_links[key], also=(*bed.also, *bed.parts))
    for year in sorted(ledger.years, reverse=True):
        yield Name(kind="season", link=Link(text=ledger.year_name(year), to=ledger.to_season(year)))
    yield from _told_in_notes("trouble", _troubles(ledger), ledger)
    people = ((entry.by, entry.id) for entry in garden.entries if entry.by)
    yield from _told_in_notes("person", people, ledger)
    for page in garden.free_pages:
        if to := ledger.free_addresses.get(page.id):
            yield Name(kind="page", link=Link(text=free_title(page), to=to))
    yield from (Name(kind="page", link=page) for page in ours(ledger))


def _other_words(crop: str, name: str, ledger: Ledger) -> tuple[str, ...]:
    """What the notes call a crop besides its name."""
    words = {
        word
        for planting in ledger.plantings_by_crop.get(crop, ())
        for key, word in zip(planting.crops, planting.words, strict=False)
        if key == crop and fold(word) != fold(name)
    }
    return tuple(sorted(words))


def _varieties(ledger: Ledger) -> Iterator[Name]:
    for key, crop in ledger.garden.crops.items():
        for variety in sorted(ledger.varieties_by_crop.get(key, ())):
            yield Name(kind="variety", link=Link(text=variety, to=ledger.crop_pages[key]), also=(crop.name,))


def _troubles(ledger: Ledger) -> Iterator[tuple[str, str]]:
    """What was seen, treated or lost to, where it is a trouble and no guest that helps; with the note that tells it."""
    for event in ledger.garden.events:
        for written in (event.action.subject, event.action.cause):
            if written and (words := fold(written)) and words[-1] in TROUBLES and words[-1] not in HELPERS:
                yield written, event.entry


def _told_in_notes(kind: str, found: Iterable[tuple[str, str]], ledger: Ledger) -> Iterator[Name]:
    """Names that have no page: each leads to the newest note that tells of it, and names some more."""
    notes: defaultdict[tuple[str, ...], dict[str, None]] = defaultdict(dict)
    written: dict[tuple[str, ...], str] = {}
    for word, entry in found:
        written.setdefault(fold(word), word)
        notes[fold(word)][entry] = None
    for words in sorted(notes):
        newest = list(reversed(notes[words]))
        yield Name(
            kind=kind,
            link=Link(text=written[words], to=ledger.to_note(newest[0])),
            told=tuple(_day(entry, ledger) for entry in newest[:MOST_TOLD]),
            more=max(0, len(newest) - MOST_TOLD),
        )


def _day(entry: str, ledger: Ledger) -> Link:
    when = ledger.garden.entry_by_id[entry].when
    return Link(text=when_figure(when).text if when else "no date", to=ledger.to_note(entry))
