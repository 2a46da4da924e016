"""The page of problems: each under its note's day and name, with the line as typed and what to write instead.

Household builds only, unless `show` says otherwise. What is said of several places in the same words is said once, with its places.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import groupby

from leafmould.garden.model import Entry, Garden
from leafmould.pages.addresses import PROBLEMS
from leafmould.pages.doings import entry_day, note_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link, Page
from leafmould.values.problems import WORK_LINE, Level, Problem, asking
from leafmould.values.wording import counted

HEADINGS = {
    Level.ERROR: ("Not used", "These were written and could not be used. All the rest was."),
    Level.WARNING: (
        "Used, but doubtful",
        "These were taken as they stand. Something about them cannot be right.",
    ),
    Level.QUESTION: (
        "To be asked",
        "Here the notes leave something open. Write the line otherwise, and it is settled.",
    ),
    Level.HINT: (
        "As it was understood",
        "Nothing needs to be done about these, unless they were meant otherwise.",
    ),
}
"""What each kind of problem is called, the weightiest first."""

ADVICE = (
    (r"names no currency", "Write its sign with it: “£2.80” or “2.80 €”."),
    (
        r"No action is named, so|named; read as",
        "Say what was done, seen or picked: “saw”, “sowed”, “picked”.",
    ),
    (r"No action is (named|read)", "If it was work, say what was done: “sowed”, “picked”, “saw”."),
    (r"stands without an action", "Write the number beside what it counts: “saw about 20 dill”."),
    (r"are two amounts of one thing", "Write a line for each amount."),
    (
        r"(is|are) kept as (a remark|remarks)\.$",
        "It stays beside the line. If it was a deed of its own, give it a line of its own.",
    ),
    (r"How much was it|does not say how much", "Write a number, or “all”."),
    (r"No crop is named\.$", "Name the crop in the line."),
    (
        r"no note says when",
        "If you know the day, a note of that day that says “sowed” or “planted” settles it.",
    ),
    (r"is a new bed\.$", "If it is one, add it to the beds in garden.yaml. If not, set its name right."),
    (r"is no crop known here, so its family", "Give its family in crops.yaml, and it counts for rotation."),
    (r"is perhaps a variety", ""),
    (r"[Rr]ead as (.+)\.$", "If that is right, nothing needs to be done."),
)
"""What helps, by what is said; where the words say it themselves, nothing is added."""

TOGETHER = ((r"names no currency", "These prices name no currency."),)
"""What is said of several places, where that is not what is said of one."""

REPEATED = 2
"""What is said at so many places is said once."""
QUOTED = re.compile(r'"([^"]*)"')


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A place in the notes that something is said of."""

    link: Link  # "8 June 2025: Small things"; a table or settings go by their file
    typed: tuple[str, ...]  # the lines as they were typed
    where: str  # "notes/2025/06-08.md, line 7"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """What is said of one place, or of several in the same words."""

    said: tuple[str, ...]
    advice: tuple[str, ...]
    spots: tuple[Spot, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SlipGroup:
    """Slips that weigh the same."""

    heading: str
    words: str
    slips: tuple[Slip, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProblemsPage:
    """The values of the page of problems."""

    counts: str
    groups: tuple[SlipGroup, ...]


def problems_page(ledger: Ledger) -> Page:
    """What is wrong or doubtful in the notes, the weightiest first."""
    notes = _entries_by_file(ledger.garden)
    lines = _typed(ledger.garden, with_body=ledger.household)
    place = partial(_spot, notes=notes, lines=lines, ledger=ledger)
    found: dict[Level, list[Slip]] = {level: [] for level in HEADINGS}
    for problems in _together(_newest_first(ledger.problems, notes)):
        found[_weightiest(problems)].append(_slip(problems, place))
    groups = tuple(
        SlipGroup(heading=HEADINGS[level][0], words=HEADINGS[level][1], slips=tuple(slips))
        for level, slips in found.items()
        if slips
    )
    values = ProblemsPage(groups=groups, counts=counted(len(ledger.problems), "thing"))
    return Page(
        address=PROBLEMS, template="problems.html", title="Problems", section="problems", values=values
    )


def _newest_first(problems: Iterable[Problem], notes: Mapping[str, list[Entry]]) -> list[Problem]:
    """What is wrong in settings and tables first, since it touches every note; then the newest notes."""

    def day(problem: Problem) -> int:
        entry = _entry_at(problem, notes)
        return -entry.when.first.toordinal() if entry and entry.when else -(10**7)

    return sorted(problems, key=lambda p: (day(p), p.at.file, p.at.line or 0))


def _together(problems: Sequence[Problem]) -> list[tuple[Problem, ...]]:
    """What is said in the same words at several places, and else what is said of one line."""
    same: dict[tuple[str, str], list[Problem]] = {}
    for problem in problems:
        same.setdefault((problem.level, _pattern(problem)), []).append(problem)
    by_first = {id(found[0]): found for found in same.values() if len(set(map(_line, found))) >= REPEATED}
    repeated = {id(p) for found in by_first.values() for p in found}
    rest = [p for p in problems if id(p) not in repeated]
    by_line = {id(found[0]): found for _, f in groupby(rest, key=_line) if (found := list(f))}
    firsts = by_first | by_line
    return [tuple(firsts[id(p)]) for p in problems if id(p) in firsts]


def _line(problem: Problem) -> tuple[str, int | None]:
    return problem.at.file, problem.at.line


def _pattern(problem: Problem) -> str:
    return re.sub(r"\d+", "0", QUOTED.sub('"…"', problem.message))


def _weightiest(problems: Iterable[Problem]) -> Level:
    levels = {p.level for p in problems}
    return next(level for level in HEADINGS if level in levels)


def _slip(problems: tuple[Problem, ...], place: partial[Spot]) -> Slip:
    by_file: dict[str, list[Problem]] = {}
    for problem in problems:
        by_file.setdefault(problem.at.file, []).append(problem)
    spots = tuple(place(found) for found in by_file.values())
    is_repeated = len(set(map(_line, problems))) > 1 and len({p.message for p in problems}) > 1
    told = [_pattern_said(problems[0])] if is_repeated else [_said(p) for p in _weighty_first(problems)]
    advice = dict.fromkeys(filter(None, (_advice(p.message) for p in _weighty_first(problems))))
    return Slip(said=tuple(dict.fromkeys(told)), advice=tuple(advice), spots=spots)


def _weighty_first(problems: Iterable[Problem]) -> list[Problem]:
    return sorted(problems, key=lambda p: list(HEADINGS).index(p.level))


def _pattern_said(problem: Problem) -> str:
    """What is said at several places, without what differs."""
    known = (words for pattern, words in TOGETHER if re.search(pattern, problem.message))
    return next(known, _capital(QUOTED.sub("“…”", problem.message)))


def _said(problem: Problem) -> str:
    """The sentence, in the quotes of print; a spot of settings goes by its name."""
    field = f"{problem.field}: " if problem.field and not WORK_LINE.match(problem.field) else ""
    words = f"{problem.message}{asking(problem.message, problem.suggestion)}"
    return field + QUOTED.sub(r"“\1”", words if field else _capital(words))


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _advice(message: str) -> str:
    return next((words for pattern, words in ADVICE if re.search(pattern, message)), "")


def _spot(
    problems: Sequence[Problem],
    *,
    notes: Mapping[str, list[Entry]],
    lines: Mapping[tuple[str, int], str],
    ledger: Ledger,
) -> Spot:
    """Where something stands: one place of a file, or several."""
    file, numbers = problems[0].at.file, sorted({p.at.line for p in problems if p.at.line})
    listed = _listed([str(number) for number in numbers])
    where = f"line{'s' if len(numbers) > 1 else ''} {listed}" if numbers else ""
    entry = _entry_at(problems[0], notes)
    if entry is None:
        return Spot(link=Link(text=file), typed=(), where=where)
    day = entry_day(entry, ledger)
    name = note_name(entry, ledger)
    link = Link(text=f"{day.text}: {name}" if entry.when else name, to=day.to)
    typed = tuple(lines[file, number] for number in numbers if (file, number) in lines)
    return Spot(link=link, typed=typed, where=", ".join(filter(None, (file, where))))


def _listed(words: Sequence[str]) -> str:
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1]))) if words else ""


def _entries_by_file(garden: Garden) -> dict[str, list[Entry]]:
    found: dict[str, list[Entry]] = {}
    for entry in garden.entries:
        found.setdefault(entry.at.file, []).append(entry)
    return {file: sorted(parts, key=lambda e: e.at.line or 0) for file, parts in found.items()}


def _entry_at(problem: Problem, notes: Mapping[str, list[Entry]]) -> Entry | None:
    """The note, or the dated part of one, that a line stands in."""
    parts = notes.get(problem.at.file, [])
    before = [part for part in parts if (part.at.line or 0) <= (problem.at.line or 0)]
    return before[-1] if before else next(iter(parts), None)


def _typed(garden: Garden, *, with_body: bool) -> dict[tuple[str, int], str]:
    """The lines of the notes this build may show, by file and number."""
    found: dict[tuple[str, int], str] = {}
    for entry in garden.entries:
        if with_body:
            for number, text in enumerate(entry.body.splitlines(), start=entry.body_line):
                found[entry.at.file, number] = text.strip().removeprefix("- ").strip()
        found |= {(words.at.file, words.at.line or 0): words.text for words in entry.words}
        found |= {(action.at.file, action.at.line or 0): action.text for action in entry.actions}
    return found
