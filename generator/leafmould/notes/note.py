"""One note to its entries: header, dated parts, list lines, lessons, and what to tell the gardener.

Every line is read by `lines.read_line`; this module decides which lines count, with which date and which
defaults. Loaded by `read` only when a note has to be read.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from leafmould.notes.bare_lines import read_bare, read_list
from leafmould.notes.body import ListLine, Section, split_body
from leafmould.notes.entries import Action, Entry, Named, Words
from leafmould.notes.find import NoteFile
from leafmould.notes.habits import Defaults, Habits, LineReading
from leafmould.notes.head import Head, ask_order, read_head
from leafmould.notes.head_events import defaults_of, read_event
from leafmould.notes.header import split_note
from leafmould.notes.lessons import all_lessons
from leafmould.notes.lines import read_line
from leafmould.notes.meant_private import with_marks
from leafmould.notes.note_dates import (
    Source,
    date_in_name,
    date_of_photo,
    date_within,
    day_told,
    days_of_sections,
    disagreement,
    finest_first,
    said_day,
    stands_apart,
    year_in,
)
from leafmould.notes.too_long import long_prose
from leafmould.values.dates import DateReading, resolve_date
from leafmould.values.names import Kind, Vocabulary
from leafmould.values.problems import Level, Location, Problem, in_file_order
from leafmould.values.when import When

NO_DATE = (
    'No date is written here. Write "date: 2026-06-20" at the top, or put the date into the file\'s name.'
)


NO_YEAR = "has no year"
ORDER_ASKED = "Set `dates` in garden.yaml."
WRITE_YEAR = "Write it once: in the first date, the title or the file's name."


@dataclass(frozen=True, slots=True, kw_only=True)
class _Note:
    """What all parts of one note share."""

    file: NoteFile
    head: Head
    habits: Habits
    has_header: bool
    defaults: Defaults


def read_note(file: NoteFile, habits: Habits) -> tuple[Entry, ...]:
    """The entries of one note file: one for its header and what stands above any date, one for each date."""
    if not file.text.strip() and not file.problems:
        return ()
    problems = list(file.problems)
    parts = split_note(file.text, file.path)
    problems += parts.problems
    in_name = date_in_name(file.path, habits)
    named = in_name.when if in_name else None
    if in_name and in_name.fault:
        problems.append(_problem(file, None, Level.ERROR, f"In the file name: {in_name.fault}", "date"))
    head = read_head(parts.header, file.path, named, habits, problems)
    note = _Note(
        file=file, head=head, habits=habits, has_header=parts.header is not None, defaults=defaults_of(head)
    )
    sections = split_body(parts.body, parts.body_line)
    return _entries(note, sections, named, problems)


def _entries(
    note: _Note, sections: tuple[Section, ...], named: When | None, problems: list[Problem]
) -> tuple[Entry, ...]:
    """Entries from the parts of a note, its own date settled first."""
    top, dated = _top_and_dated(note, sections)
    first_line = _first_line(note, top, named or year_in(_title(note, top)))
    if top.date is not None:
        problems += _faults(note, (top,), (first_line,))
    first_day = first_line.when if first_line else None
    sources = list(_sources(note, named, first_day, bool(dated)))
    if sources and (message := disagreement(sources)) is not None:
        at = note.head.dated_at or Location(file=note.file.path)
        problems.append(Problem(at=at, level=Level.WARNING, message=message, field="date"))
    sources = finest_first(sources)
    when = sources[0].when if sources else None
    readings = days_of_sections(dated, when or year_in(_title(note, top)), note.habits)
    days = [reading.when if reading else None for reading in readings]
    problems += _faults(note, dated, readings)
    sure = [d for d in days if d]
    if when and stands_apart(when, sure):
        says = f"The {sources[0].name} says {said_day(when)}, a heading or line below {said_day(sure[0])}."
        message = f"{says} Each is used for what stands under it."
        problems.append(_problem(note.file, None, Level.WARNING, message, "date"))
    own = _own_entry(note, top, when, sources[0].name if sources else "nowhere")
    if top.date is not None and first_day is None:
        own = replace(own, title=" – ".join(filter(None, (own.title, top.date))))
    has_lines = bool(note.head.did or note.head.work)
    entries = [] if dated and not has_lines and _is_empty(own) else [own]
    parts = [_dated_entry(note, section, day) for section, day in zip(dated, days, strict=True)]
    return _numbered(note, [*entries, *(parts if entries else _titled(parts, own.title))], problems)


def _titled(parts: list[Entry], title: str | None) -> list[Entry]:
    """Dated parts under nothing but a title: those without a title of their own take it."""
    if title is None:
        return parts
    first, *others = parts
    own = f"{title} – {first.title}" if first.title else title
    return [replace(first, title=own), *(replace(e, title=e.title or title) for e in others)]


def _faults(
    note: _Note, dated: tuple[Section, ...], readings: tuple[DateReading | None, ...]
) -> Iterator[Problem]:
    """What is wrong with the dates of parts; a year that is missing everywhere is asked for once."""
    is_year_asked = False
    for section, reading in zip(dated, readings, strict=True):
        if reading is None:
            continue
        if reading.other is not None:
            yield ask_order()
        fault = reading.fault
        if fault is not None and section.date is not None and NO_YEAR in fault:
            fault = None if is_year_asked else f'"{section.date}" has no year. {WRITE_YEAR}'
            is_year_asked = True
        if fault is not None:
            yield _problem(note.file, section.line, Level.ERROR, fault, "date")


def _top_and_dated(note: _Note, sections: tuple[Section, ...]) -> tuple[Section, tuple[Section, ...]]:
    """The part without a date of its own, and the others.

    A date that merely stands on the first line, with no other below, is the date of the whole note, less
    trusted than its header and file name; under a header whose date is coarse it dates what stands below it.
    """
    nothing = Section(line=1)
    if not sections:
        return nothing, ()
    if sections[0].date is None:
        return sections[0], sections[1:]
    is_coarse = bool(note.head.dates) and not note.head.dates[0].is_exact
    if len(sections) == 1 and not sections[0].is_heading and not is_coarse:
        return sections[0], ()
    return nothing, sections


def _sources(note: _Note, named: When | None, first_line: When | None, has_parts: bool) -> Iterator[Source]:
    """Every place that dates the note as a whole, most trusted first."""
    if note.head.dates:
        yield Source(name="header", when=note.head.dates[0])
    if named is not None:
        yield Source(name="file name", when=named)
    if first_line is not None:
        yield Source(name="first line", when=first_line)
    if not (note.head.dates or named or first_line or has_parts):
        photos = [when for photo in note.head.photos if (when := date_of_photo(photo)) is not None]
        if photos:
            yield Source(name="photo", when=photos[0])


def _first_line(note: _Note, top: Section, base: When | None) -> DateReading | None:
    """The date on a note's first line, or in its first heading."""
    if top.date is not None:
        base = note.head.dates[0] if note.head.dates else base
        return days_of_sections((top,), base, note.habits)[0]
    if note.head.dates:
        return None
    words = date_within(top.title or "", needs_year=base is None)
    if words is None:
        is_coarse = base is not None and not base.is_exact and not top.title
        first = top.body.partition("\n")[0]
        return day_told(first, base, note.habits) if base and is_coarse else None
    habits = note.habits
    return resolve_date(words, order=habits.order, base=base, is_southern=habits.is_southern)


def _title(note: _Note, top: Section) -> str | None:
    return note.head.title or top.title


def _own_entry(note: _Note, top: Section, when: When | None, date_from: str) -> Entry:
    """The entry of the header and of what stands above any date."""
    head, file, habits = note.head, note.file, note.habits
    event = read_event(head, file.path, when, habits)
    work = [
        read_line(
            line.text,
            at=Location(file=file.path, line=line.line, column=line.column),
            field=f"work[{index}]",
            base=when,
            habits=habits,
            defaults=note.defaults,
        )
        for index, line in enumerate(head.work)
    ]
    counts = not (head.did or head.work)
    lists = _lines_in(top, note, when) if counts else []
    said = _said([event, *work, *lists], head.lesson, head.words, top)
    entry = Entry(
        id=_first_id(file),
        at=Location(file=file.path, line=1 if note.has_header else top.line),
        when=when,
        date_from=date_from,
        title=_title(note, top),
        body=top.body,
        body_line=top.body_line,
        beds=note.defaults.beds,
        crops=note.defaults.crops,
        varieties=note.defaults.varieties,
        part=note.defaults.part,
        photos=head.photos,
        photo_lines=head.photo_lines,
        tags=head.tags,
        again=head.again.text if head.again else None,
        by=head.by,
        extra=(*head.extra, *_unspent(head, event)),
        is_private=head.is_private,
        is_settled=head.is_settled,
        actions=said.actions,
        words=said.words,
        lesson=said.lesson,
        problems=said.problems,
    )
    return _with_long_prose(entry)


def _unspent(head: Head, event: LineReading) -> Iterator[tuple[str, str]]:
    """Amounts of the header that no action took up, as written."""
    if "amount" in (name.casefold() for name, _ in head.extra):
        return
    spent = {amount.written for action in event.actions for amount in action.amounts}
    left = [leaf.text.strip() for leaf in head.amounts if leaf.text.strip() not in spent]
    if left:
        yield "amount", ", ".join(left)


def _dated_entry(note: _Note, section: Section, when: When | None) -> Entry:
    """The entry of a dated heading or line. Privacy and settledness are the whole note's."""
    head = note.head
    said = _said(_lines_in(section, note, when), (), (), section)
    entry = Entry(
        id="",  # its number is known once all parts are
        at=Location(file=note.file.path, line=section.line),
        when=when,
        date_from="heading" if when else "nowhere",
        title=section.title if when else " – ".join(filter(None, (section.date, section.title))),
        body=section.body,
        body_line=section.body_line,
        beds=note.defaults.beds,
        crops=note.defaults.crops,
        varieties=note.defaults.varieties,
        part=note.defaults.part,
        tags=head.tags,
        by=head.by,
        is_private=head.is_private,
        is_settled=head.is_settled,
        actions=said.actions,
        words=said.words,
        lesson=said.lesson,
        problems=said.problems,
    )
    return _with_long_prose(entry)


def _lines_in(section: Section, note: _Note, when: When | None) -> list[LineReading]:
    """What the lines of a part say: those of lists, and without a header also those without a mark."""

    def read(line: ListLine, is_prose: bool) -> LineReading:
        return _list_line(line, note, when, is_prose)

    found = list(read_list(section.lists, read))
    for paragraph in () if note.has_header else section.paragraphs:
        found += read_bare(paragraph, read)
    return [reading for _, reading in sorted(found, key=lambda pair: pair[0].line)]


def _list_line(line: ListLine, note: _Note, when: When | None, is_prose: bool) -> LineReading:
    """A list line, with the place or crop of the headings it stands under."""
    return read_line(
        line.text,
        at=Location(file=note.file.path, line=line.line, column=line.column),
        field="body",
        base=when,
        habits=note.habits,
        defaults=_under(line.under, note.defaults, note.habits.vocabulary),
        is_prose=is_prose,
    )


def _under(headings: Iterable[str], defaults: Defaults, vocabulary: Vocabulary) -> Defaults:
    """The defaults as headings change them, where a heading is a known place or crop and nothing else."""
    for heading in headings:
        for known in vocabulary.exactly(heading, Kind.BED, Kind.CROP, Kind.CROP_GROUP, Kind.PART)[:1]:
            named = Named(key=known.key, name=known.name, written=heading, of=known.of)
            if known.kind is Kind.BED:
                defaults = replace(defaults, beds=(named,), part=None)
            elif known.kind is Kind.PART:
                defaults = replace(defaults, part=known.name)
            else:
                defaults = replace(defaults, crops=(named,), varieties=())
    return defaults


class _Said(NamedTuple):
    """What the lines of a part say, and the lessons in all of it."""

    actions: tuple[Action, ...]
    words: tuple[Words, ...]
    lesson: tuple[str, ...]
    problems: tuple[Problem, ...]


def _said(
    read: Sequence[LineReading], lessons: tuple[str, ...], stray: tuple[Words, ...], part: Section
) -> _Said:
    """Readings of lines put together; `stray` are lines of the header that no key took."""
    actions = tuple(action for reading in read for action in reading.actions)
    words = (*stray, *(words for reading in read for words in reading.words))
    hidden = [a.text for a in actions if a.is_private] + [w.text for w in words if w.is_private]
    remarks = [a.remark for a in actions if a.remark and a.field != "body"]
    remarks += [w.text for w in words if not part.body or w.at.line is None or w.at.line < part.body_line]
    problems = tuple(_once(problem) for reading in read for problem in reading.problems)
    return _Said(actions, words, all_lessons(lessons, part.body, remarks, hidden), problems)


def _with_long_prose(entry: Entry) -> Entry:
    """The entry, with the hint about a body too long to be set."""
    told = long_prose(entry, entry.problems)
    return replace(entry, problems=(*entry.problems, *told)) if told else entry


def _once(problem: Problem) -> Problem:
    """The question about the order of day and month is one for the whole garden, wherever it comes up."""
    return ask_order() if problem.message.endswith(ORDER_ASKED) else problem


def _is_empty(entry: Entry) -> bool:
    """Whether nothing stands above the first date but perhaps a title."""
    return not (
        entry.body.strip() or entry.actions or entry.words or entry.photos or entry.extra or entry.lesson
    )


def _numbered(note: _Note, entries: list[Entry], problems: list[Problem]) -> tuple[Entry, ...]:
    """Ids in order, and the note's own problems with its first entry."""
    base = _first_id(note.file)
    is_told = not note.file.text or any(p.level is Level.ERROR and p.field == "date" for p in problems)
    if all(entry.when is None for entry in entries) and not is_told:
        is_lost = any(action.when is None for entry in entries for action in entry.actions)
        level = Level.ERROR if is_lost else Level.QUESTION
        problems.append(_problem(note.file, None, level, NO_DATE, "date"))
    found = []
    for number, entry in enumerate(map(with_marks, entries), 1):
        told = (*(problems if number == 1 else ()), *entry.problems)
        if note.head.is_settled:
            told = tuple(p for p in told if p.level is Level.ERROR)
        entry_id = base if number == 1 else f"{base}#{number}"
        told = in_file_order(told) if len(told) > 1 else told
        is_done = entry.id == entry_id and entry.problems == told
        found.append(entry if is_done else replace(entry, id=entry_id, problems=told))
    return tuple(found)


def _first_id(file: NoteFile) -> str:
    """The id of a file's first entry: its path without the ending."""
    return file.path.removeprefix("notes/").rsplit(".", 1)[0]


def _problem(file: NoteFile, line: int | None, level: Level, message: str, field: str | None) -> Problem:
    return Problem(at=Location(file=file.path, line=line), level=level, message=message, field=field)
