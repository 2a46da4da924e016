"""The page of a note: its words, what was understood of it, and the way to the notes before and after.

The words are shown as written. Questions and problems of the note stand here in a household build only.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from leafmould.garden.model import Entry, Event, Planting
from leafmould.pages.addresses import by_date_address
from leafmould.pages.doings import about, cut, entry_day, note_name
from leafmould.pages.figures import when_figure
from leafmould.pages.labels import planting_name
from leafmould.pages.ledger import Ledger, once
from leafmould.pages.moved import same_words
from leafmould.pages.page import Figure, Lesson, Link, Page, Plate
from leafmould.pages.plates import note_plates


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood:
    """One line of work: as written, what was taken from it, and the plantings it reached."""

    text: str
    verb: str
    slots: tuple[str, ...]  # "1.2 kg", "from the cold frame": what was read beside names
    plantings: tuple[Link, ...]
    remarks: tuple[str, ...]  # what was filled in, and from what
    on: Figure | None  # its own date, where it differs from the note's


@dataclass(frozen=True, slots=True, kw_only=True)
class Neighbours:
    """The notes before and after this one that are about the same thing."""

    about: Link
    before: Link | None
    after: Link | None


@dataclass(frozen=True, slots=True, kw_only=True)
class NotePage:
    """The values of a note's page."""

    name: str  # the title; "" for a note that goes by its day
    on: Figure
    about: tuple[Link, ...]  # beds and crops that are not among the neighbours
    body: str  # Markdown
    file: str  # where it stands in the garden folder
    understood: tuple[Understood, ...]
    words: tuple[str, ...]  # lines kept as text
    lessons: tuple[Lesson, ...]
    in_text: Mapping[str, Plate]  # by the names the body has for them
    plates: tuple[Plate, ...]  # below the body
    facts: tuple[tuple[str, str], ...]
    neighbours: tuple[Neighbours, ...]
    before: Link | None  # by date
    after: Link | None
    season: Link | None
    problems: tuple[str, ...]
    is_private: bool


def note_pages(ledger: Ledger) -> Iterator[Page]:
    """A page for every note."""
    problems = _problems_by_file(ledger)
    ways = _ways(ledger)
    entries = ledger.garden.entries
    links = [None, *(_link(entry, ledger) for entry in entries), None]
    return (
        Page(
            address=ledger.note_pages[entry.id],
            template="note.html",
            title=_title(entry, ledger),
            section="notes",
            values=_note(
                entry,
                ledger,
                ways=ways.get(entry.id, ()),
                before=links[place],
                after=links[place + 2],
                problems=problems.get(entry.at.file, ()),
            ),
            same=same_words(entry),
        )
        for place, entry in enumerate(entries)
    )


def _title(entry: Entry, ledger: Ledger) -> str:
    """Title and day; an untitled note goes by its day and what it is about."""
    name = note_name(entry, ledger)
    if entry.when is None:
        return name
    day = entry_day(entry, ledger).text
    return f"{entry.title}, {day}" if entry.title else f"{day}: {name}"


def _note(
    entry: Entry,
    ledger: Ledger,
    *,
    ways: tuple[Neighbours, ...],
    before: Link | None,
    after: Link | None,
    problems: tuple[str, ...],
) -> NotePage:
    on = entry_day(entry, ledger)
    in_text, plates = note_plates(entry, ledger)
    among_ways = {way.about.to for way in ways}
    return NotePage(
        name=entry.title or ("" if entry.when else note_name(entry, ledger)),
        on=Figure(text=on.text, value=on.value, is_time=on.is_time),
        about=tuple(link for link in about(entry, ledger) if link.to not in among_ways),
        body=entry.body,
        file=entry.at.file,
        understood=_understood(entry, ledger),
        words=tuple(words.text for words in entry.words),
        lessons=tuple(Lesson(text=text, on=on) for text in entry.lesson if text not in entry.body),
        in_text=in_text,
        plates=plates,
        facts=_facts(entry),
        neighbours=ways,
        before=before,
        after=after,
        season=_season(entry, ledger),
        problems=problems,
        is_private=entry.is_private,
    )


def _season(entry: Entry, ledger: Ledger) -> Link | None:
    if entry.when is None:
        return None
    name = ledger.year_name(ledger.year_of(entry.when.first))
    return Link(text=name, to=by_date_address(name))


def _facts(entry: Entry) -> tuple[tuple[str, str], ...]:
    known = (
        ("variety", ", ".join(named.name for named in entry.varieties)),
        ("part", entry.part or ""),
        ("tags", ", ".join(entry.tags)),
        ("grow again", entry.again or ""),
        ("by", entry.by or ""),
        *entry.extra,
    )
    return tuple((label, words) for label, words in known if words)


def _understood(entry: Entry, ledger: Ledger) -> tuple[Understood, ...]:
    return tuple(_line(event, entry, ledger) for event in ledger.events_by_entry.get(entry.id, ()))


def _line(event: Event, entry: Entry, ledger: Ledger) -> Understood:
    by_id = ledger.garden.planting_by_id
    plantings = [_planting_link(by_id[key], ledger) for key in event.plantings if key in by_id]
    return Understood(
        text=event.action.text,
        verb=event.verb,
        slots=_slots(event),
        plantings=tuple(plantings),
        remarks=event.inferred,
        on=_own_day(event, entry),
    )


@once
def _planting_link(planting: Planting, ledger: Ledger) -> Link:
    name = f"{planting_name(planting)}, {ledger.garden.beds[planting.bed_now].name}"
    return Link(text=name, to=ledger.sections[planting.id])


def _own_day(event: Event, entry: Entry) -> Figure | None:
    return when_figure(event.when) if event.when != entry.when else None


def _slots(event: Event) -> tuple[str, ...]:
    """What was read beside verb, crop and bed, in the gardener's own words."""
    action = event.action
    known = [amount.written for amount in action.amounts]
    known += (event.part or "", action.subject or "", action.cause or "", action.spacing or "")
    known.append("under cover" if action.is_under_cover else "")
    for fate in action.fates:
        known.append(f"{fate.kind} {fate.amount.written if fate.amount else ''}".strip())
    for name, amount in action.readings:
        known.append(f"{name} {amount.written}")
    known.append(f"from {action.source}" if action.source else "")
    known.append(action.price or "")
    known.append(f"{action.wait_days} days to wait" if action.wait_days is not None else "")
    known.append(action.remark or "")
    return tuple(filter(None, dict.fromkeys(known)))


def _link(entry: Entry, ledger: Ledger) -> Link:
    day = entry_day(entry, ledger).text
    name = cut(note_name(entry, ledger), NAME_LENGTH)
    return Link(text=f"{day}: {name}", to=ledger.note_pages[entry.id])


NAME_LENGTH = 40
"""How much of the name of the note before and after is shown [characters]."""
MOST_WAYS = 6
"""Beds and crops whose neighbouring notes are linked; a session may touch thirty."""


def _ways(ledger: Ledger) -> dict[str, tuple[Neighbours, ...]]:
    """For every note, its neighbours in each bed and crop it is about."""
    garden = ledger.garden
    things = [
        *((ledger.crop_links[key], ledger.entries_by_crop.get(key, [])) for key in garden.crops),
        *((ledger.bed_links[key], ledger.entries_by_bed.get(key, [])) for key in garden.beds),
    ]
    found: dict[str, list[Neighbours]] = {}
    for about_it, entries in things:
        for place, entry in enumerate(entries):
            ways = found.setdefault(entry.id, [])
            if len(ways) < MOST_WAYS:
                ways.append(
                    Neighbours(
                        about=about_it,
                        before=_day_link(entries[place - 1], entry, ledger) if place else None,
                        after=_day_link(entries[place + 1], entry, ledger)
                        if place + 1 < len(entries)
                        else None,
                    )
                )
    return {key: tuple(ways) for key, ways in found.items()}


def _day_link(entry: Entry, here: Entry, ledger: Ledger) -> Link:
    """A neighbour by its day, without its year where that is the same."""
    is_same = entry.when and here.when and entry.when.first.year == here.when.first.year
    return _short_link(entry, ledger) if is_same else _long_link(entry, ledger)


@once
def _short_link(entry: Entry, ledger: Ledger) -> Link:
    return Link(text=entry_day(entry, ledger, short=True).text, to=ledger.note_pages[entry.id])


@once
def _long_link(entry: Entry, ledger: Ledger) -> Link:
    return Link(text=entry_day(entry, ledger).text, to=ledger.note_pages[entry.id])


def _problems_by_file(ledger: Ledger) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for problem in ledger.problems:
        where = f"line {problem.at.line}: " if problem.at.line else ""
        found.setdefault(problem.at.file, []).append(f"{where}{problem.said}")
    return {file: tuple(sentences) for file, sentences in found.items()}
