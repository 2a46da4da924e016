"""How much of a garden a public build leaves out, in numbers, for the gardener who is about to share it.

Compares what was written with what may be shown, once the one step that decides it (`visible`) is done.
Counts only; hides nothing.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from leafmould.garden.view import SHOWABLE, View
from leafmould.garden.visible import Showing
from leafmould.notes.entries import Action, Entry, Words
from leafmould.notes.pictured import pictures_in
from leafmould.notes.setting_values import Settings
from leafmould.report import LeftOut

NO_SUBJECTS = frozenset({"private", "note slip"})
"""What `show` may name that is counted by the piece, or is no part of the record."""


def left_out(
    entries: Iterable[Entry], showing: Showing, settings: Settings, shown: Settings, view: View
) -> LeftOut:
    """What a build leaves out of these entries and settings; nothing for a household's."""
    if view.household:
        return LeftOut()
    closed = (set(SHOWABLE) - view.show - NO_SUBJECTS) | view.leave_out
    total = LeftOut(beds=len(settings.beds) - len(shown.beds), subjects=tuple(sorted(closed)))
    for entry in entries:
        seen = showing.seen(entry)
        if seen is None:
            total = replace(total, notes=total.notes + 1, pictures=total.pictures + len(_pictures(entry)))
        elif seen is not entry:
            total = replace(
                total,
                lines=total.lines + _missing(_lines(entry), _lines(seen)),
                pictures=total.pictures + _missing(_pictures(entry), _pictures(seen)),
            )
    return total


def _missing(written: Iterable[str], shown: Iterable[str]) -> int:
    """How many of the first are not, as they are, among the second."""
    return (Counter(written) - Counter(shown)).total()


def _lines(entry: Entry) -> Iterator[str]:
    """The lines of a note: of its body, and those of its header that tell of work, each once."""
    yield from (line for line in entry.body.split("\n") if line.strip())
    told: tuple[Action | Words, ...] = (*entry.actions, *entry.words)
    in_header = {(one.at.line, one.text) for one in told if one.at.line and one.at.line < entry.body_line}
    yield from (text for _, text in sorted(in_header, key=lambda pair: (pair[0] or 0, pair[1])))
    yield from entry.lesson


def _pictures(entry: Entry) -> list[str]:
    return [*entry.photos, *(picture.name for picture in pictures_in(entry.body))]
