"""From a garden folder to its garden: the run as far as every command needs it.

Settings, names, notes, what may be shown, then the garden. Looking back from the terminal uses it too, so
it loads no template and no Markdown.
"""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from leafmould.facts import tables
from leafmould.garden.assemble import Written, assemble_shown
from leafmould.garden.frosts import frosts_apart
from leafmould.garden.left_out import misplaced, without_later_rows
from leafmould.garden.left_out_told import left_out
from leafmould.garden.model import Garden
from leafmould.garden.seeds import unknown_seeds
from leafmould.garden.view import View, unknown_words, view_of
from leafmould.garden.visible import Showing, visible_settings
from leafmould.garden.vocabulary import vocabulary_of
from leafmould.notes.cache import Kept
from leafmould.notes.entries import Entry
from leafmould.notes.find import NoteFile, find_free_pages, find_notes
from leafmould.notes.free_pages import MARK, read_free_pages
from leafmould.notes.habits import Habits
from leafmould.notes.read import as_beds, files_naming, learned_places, learned_varieties, read_all
from leafmould.notes.setting_values import Settings
from leafmould.notes.settings import read_settings
from leafmould.report import LeftOut
from leafmould.values.names import Vocabulary
from leafmould.values.problems import Level, Problem, in_file_order
from leafmould.values.wording import counted, day


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """A garden, and what it was made from."""

    garden: Garden
    settings: Settings  # as written
    shown: Settings  # as this build may use them
    view: View
    vocabulary: Vocabulary  # with the varieties learned from the notes
    files: int  # note files read
    written: tuple[Entry, ...]  # the entries up to today, shown or not
    free_pages: tuple[Entry, ...]  # the gardener's own pages, shown or not
    dates: Mapping[str, date]  # the last day each note file tells of
    problems: tuple[Problem, ...]  # of everything written, shown or not, in file order
    left_out: LeftOut  # of what was written
    tells_hidden: Callable[[str], bool]  # whether a name of a file would tell something hidden


@contextmanager
def collector_paused() -> Iterator[None]:
    """Let Python not look for values that have gone: all that a run makes lives until its end.

    Looking costs a fifth of the time of a large garden's build, and finds nothing.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


@collector_paused()
def load(folder: Path, *, on: date, household: bool, keep: bool = True) -> Loaded:
    """Read a garden folder.

    Args:
        on: "today"; notes dated later are as if unwritten.
        household: whether private things are in.
        keep: use and renew what was kept from reading before, in .leafmould/.
    Raises:
        UnreadableGarden: if garden.yaml cannot be read at all.
    """
    settings, later_rows = without_later_rows(read_settings(folder), on)
    vocabulary = vocabulary_of(settings)
    view, problems = view_of(settings, vocabulary, household=household)
    files = find_notes(folder)
    kept = Kept.load(folder) if keep else None
    showing = Showing(view)
    entries, vocabulary = _read(files, habits_of(settings, vocabulary), kept, showing, on)
    if kept:
        kept.save(folder)
    past = tuple(entry for entry in entries if not _is_later(entry, on))
    free = read_free_pages(find_free_pages(folder), habits_of(settings, vocabulary))
    free = tuple(page for page in free if not _is_later(page, on))
    shown = visible_settings(settings, view)
    seen, free_seen = _parted(showing.of((*past, *free)))
    garden, told = assemble_shown(
        Written(settings=shown, entries=seen),
        Written(settings=settings, entries=past),
        tables.crops(),
        on=on,
    )
    problems += (*misplaced(folder), *later_rows)
    problems += tuple(unknown_seeds(settings.seeds, vocabulary))
    problems += unknown_words(view, _names_in(past), vocabulary)
    problems += _later(entries, on)
    problems += tuple(frosts_apart(garden, shown))
    problems += tuple(problem for page in free for problem in page.problems)
    open_to = tuple(problem for page in free_seen for problem in page.problems)
    garden = replace(
        garden,
        hidden_years=view.years,
        free_pages=free_seen,
        problems=in_file_order((*garden.problems, *open_to)) if open_to else garden.problems,
    )
    return Loaded(
        garden=garden,
        settings=settings,
        shown=shown,
        view=view,
        vocabulary=vocabulary,
        files=len(files),
        written=past,
        free_pages=free,
        dates=_dates(entries),
        problems=in_file_order((*told, *problems)),
        left_out=left_out((*past, *free), showing, settings, shown, view),
        tells_hidden=showing.tells_hidden,
    )


def _parted(entries: Iterable[Entry]) -> tuple[tuple[Entry, ...], tuple[Entry, ...]]:
    """Notes, and the gardener's own pages."""
    notes: list[Entry] = []
    free: list[Entry] = []
    for entry in entries:
        (free if entry.id.startswith(MARK) else notes).append(entry)
    return tuple(notes), tuple(free)


def habits_of(settings: Settings, vocabulary: Vocabulary) -> Habits:
    """How the garden's lines are read."""
    return Habits(
        vocabulary=vocabulary,
        order=settings.dates,
        decimal=settings.decimal,
        units=settings.units,
        is_southern=settings.is_southern,
    )


def _read(
    files: Iterable[NoteFile], habits: Habits, kept: Kept | None, showing: Showing, on: date
) -> tuple[tuple[Entry, ...], Vocabulary]:
    """The entries of all notes, and the names known after reading them.

    Varieties named surely in any note a build may show let other notes leave theirs unquoted, and beds made by
    one are known in others; the notes in which that could matter are read a second time.
    """
    files = tuple(files)
    first = read_all(files, habits, kept)
    seen = showing.of([entry for entry in first if not _is_later(entry, on)])
    learned = learned_varieties(seen)
    vocabulary = habits.vocabulary.with_names(learned)
    loose = {e.at.file for e in first if any(action.is_loose for action in e.actions)}
    if vocabulary.digest == habits.vocabulary.digest:
        loose.clear()
    places = learned_places(seen)
    naming = files_naming(first, places)
    by_file: dict[str, list[Entry]] = {}
    for paths, words in ((loose - naming, vocabulary), (naming, vocabulary.with_names(as_beds(places)))):
        again = [f for f in files if f.path in paths]
        for entry in read_all(again, replace(habits, vocabulary=words), kept) if again else ():
            by_file.setdefault(entry.at.file, []).append(entry)
    return (_in_place(first, by_file) if by_file else first), vocabulary


def _in_place(first: Iterable[Entry], by_file: Mapping[str, list[Entry]]) -> tuple[Entry, ...]:
    """The first reading, with the second in its place where there is one; ids stay those of the first."""
    read = {file: iter(entries) for file, entries in by_file.items()}
    return tuple(replace(next(read[e.at.file]), id=e.id) if e.at.file in read else e for e in first)


def _is_later(entry: Entry, on: date) -> bool:
    return entry.when is not None and entry.when.first > on


def _later(entries: Iterable[Entry], on: date) -> tuple[Problem, ...]:
    """One hint for all notes dated after today."""
    later = sorted((e for e in entries if _is_later(e, on)), key=lambda e: (e.at.file, e.at.line or 0))
    if not later:
        return ()
    others = f", and {counted(len(later) - 1, 'other')} too" if len(later) > 1 else ""
    message = f"dated after {day(on)}{others}: as if not yet written."
    return (Problem(at=later[0].at, level=Level.HINT, message=message, field="date"),)


def _dates(entries: Iterable[Entry]) -> dict[str, date]:
    dates: dict[str, date] = {}
    for entry in entries:
        if entry.when:
            dates[entry.at.file] = max(entry.when.first, dates.get(entry.at.file, date.min))
    return dates


def _names_in(entries: Iterable[Entry]) -> set[str]:
    """Every bed and crop the notes name, in the words they were named by and in those known."""
    named: set[str] = set()
    for entry in entries:
        found = [*entry.beds, *entry.crops]
        for action in entry.actions:
            found += [*action.places, *action.origins, *action.crops]
        named.update(name for one in found for name in (one.name, one.written))
    return named
