"""What has to be known of all entries before one can be judged: people, and varieties of hidden crops.

Gathered once for a public build, at the start of `visible`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from leafmould.garden.blank import Folded, Names
from leafmould.garden.view import View
from leafmould.notes.entries import Action, Entry, Named
from leafmould.values.names import fold, slug

SOMEBODY = re.compile(r"\b(?:to|with|by|from|for|and)\s+((?:[^\W\d_a-z][\w'’.-]*\s*)+)")
"""Words with a capital where somebody who gave, got or helped is named."""

AND = re.compile(r",|&|\band\b")

CALENDAR = frozenset(
    {
        "january", "february", "march", "april", "may", "june", "july", "august", "september", "october",
        "november", "december", "jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov",
        "dec", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "mon", "tue",
        "wed", "thu", "fri", "sat", "sun", "easter", "whitsun", "christma", "midsummer", "i",
    }
)  # fmt: skip
"""Folded words with a capital that are no people."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sight:
    """A view, with what had to be known of all entries first."""

    view: View
    others: Names  # hidden crops, their varieties, hidden years
    people: Names  # written with a capital as who did, sold, gave, got or helped


def sight_of(entries: Sequence[Entry], view: View) -> Sight:
    """The view of these entries."""
    shown: set[Folded] = set()
    hidden: set[Folded] = set()
    for entry in entries:
        shown.update(fold(n.name) for n in (*entry.beds, *entry.crops, *entry.varieties))
        for action in entry.actions:
            is_of_hidden = any(is_hidden(crop, view.crops, view.other_names) for crop in action.crops)
            (hidden if is_of_hidden else shown).update(fold(n.name) for n in action.varieties)
            shown.update(fold(n.name) for n in (*action.places, *action.crops))
    people = set() if view.shows_people else {fold(name) for entry in entries for name in _people(entry)}
    return Sight(
        view=view,
        others=view.other_names.and_also(hidden - shown),
        people=Names(name for name in people - shown if not CALENDAR.issuperset(name)),
    )


def is_hidden(named: Named, keys: frozenset[str], names: Names) -> bool:
    """Whether a named thing is one of those hidden, by its key, its name or what it is a kind of."""
    is_by_name = named.key in keys or slug(named.name) in keys or fold(named.name) in names.names
    return is_by_name or (bool(named.of) and keys.issuperset(named.of))


def _people(entry: Entry) -> Iterator[str]:
    """Everybody an entry names, whole and one by one; without a capital it may be anything."""
    named = [entry.by or "", *(name for action in entry.actions for name in _in_line(action))]
    for whole in named:
        yield from (name for name in (whole, *AND.split(whole)) if name.strip()[:1].isupper())


def _in_line(action: Action) -> Iterable[str]:
    return (action.source or "", *(m.group(1) for m in SOMEBODY.finditer(action.remark or "")))
