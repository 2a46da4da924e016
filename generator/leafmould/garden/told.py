"""What there is to tell of an assembled garden, gathered: of settings and notes, of new beds, and the checks'.

The end of the assembling. A thing is told once, where it was first written, and not where the gardener has
settled it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from leafmould.garden.acts import undated
from leafmould.garden.bed_lines import BedLines
from leafmould.garden.ground import Ground
from leafmould.notes.entries import Entry
from leafmould.notes.settings import Settings
from leafmould.values.problems import Level, Location, Problem, in_file_order

NEW_BED = re.compile(r'"(.+)" is a new bed\.')
"""What the readers say of a place nobody declared, wherever it is named."""
NO_CROP = re.compile(r'What was ".+"\? No crop is named\.')
WHICH_CROP = re.compile(r'".+" is a variety of .+ or .+\. Which is meant\?')


def problems_of(
    settings: Settings, entries: Iterable[Entry], ground: Ground, checked: Iterable[Problem]
) -> tuple[Problem, ...]:
    """All there is to say, but for what the gardener has settled."""
    entries = tuple(entries)
    told = (
        p for entry in entries for p in entry.problems
        if not (_is_told_elsewhere(p, ground.lines) or _is_answered(p, ground))
    )  # fmt: skip
    read = list(_said_once(told))
    hinted = {_line(p.at) for p in read if NEW_BED.fullmatch(p.message)}
    made = (p for p in ground.lines.problems if _line(p.at) not in hinted)
    found = [*settings.problems, *read, *made, *ground.problems, *undated(entries), *checked]
    settled = {_line(a.at) for e in entries for a in e.actions if e.is_settled or a.is_settled}
    return in_file_order(p for p in found if p.level is Level.ERROR or _line(p.at) not in settled)


def differ_in_problems_only(one: Sequence[Entry], other: Sequence[Entry]) -> bool:
    """Whether two readings say the same but for what they ask and warn of."""
    pairs = zip(one, other, strict=False)
    return len(one) == len(other) and all(
        a is b or (a.id == b.id and replace(a, problems=b.problems) == b) for a, b in pairs
    )


def _is_told_elsewhere(problem: Problem, lines: BedLines) -> bool:
    """Whether it names a new bed that another line named first: each is told once, there."""
    m = NEW_BED.fullmatch(problem.message)
    bed = lines.beds.get(lines.key_of_text(m[1])) if m else None
    return bed is not None and bed.at is not None and _line(bed.at) != _line(problem.at)


def _is_answered(problem: Problem, ground: Ground) -> bool:
    """Whether it asks which crop is meant where the garden knows: only one stands there, or by that name."""
    acts = [a for a in ground.acts_by_line[_line(problem.at)] if not a.action.crops]
    if NO_CROP.fullmatch(problem.message):
        acts = [a for a in acts if a.verb == "picked"]
    elif not WHICH_CROP.fullmatch(problem.message):
        return False
    return bool(acts) and all(act.crops for act in acts)


def _line(at: Location) -> tuple[str, int | None]:
    return (at.file, at.line)


def _said_once(problems: Iterable[Problem]) -> Iterator[Problem]:
    """A hint that says the same of many lines is given at the first."""
    said: set[str] = set()
    for problem in in_file_order(problems):
        if problem.level is not Level.HINT or problem.message not in said:
            said.add(problem.message)
            yield problem
