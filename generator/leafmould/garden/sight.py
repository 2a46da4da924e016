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
from leafmould.values.when import When

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


MONEY = "£$€¥₤"

SEEN_ELSEWHERE = frozenset({"people", "prices", "plan"})
"""Subjects of `leave out` that are left out anyway, or are no matter of the notes."""


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


def has_nothing_to_hide(entry: Entry, sight: Sight) -> bool:
    """Whether the entry may be shown as it is; most may, and need no closer look.

    Says no too often rather than too seldom: a closer look changes nothing where nothing is to be hidden.
    """
    view = sight.view
    if view.leave_out - SEEN_ELSEWHERE or entry.is_private or entry.by or entry.extra:
        return False
    if is_in_years(entry.when, view.years) or any(_needs_a_look(action, view) for action in entry.actions):
        return False
    if (view.beds or view.crops) and any(_is_named_hidden(named, sight) for named in _named(entry)):
        return False
    text = "\n".join(_texts(entry))
    if any(sign in text for sign in MONEY) or "private" in text.casefold():
        return False
    tell = (view.bed_names, sight.others, view.words)
    return not (any(names.are_in(text) for names in tell) or sight.people.spans(text, capitals=True))


def is_in_years(when: When | None, years: frozenset[int]) -> bool:
    """Whether any day of it may lie in a hidden year."""
    return when is not None and any(when.first.year <= year <= when.last.year for year in years)


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


def _needs_a_look(action: Action, view: View) -> bool:
    return bool(
        action.is_private
        or action.price
        or action.source
        or is_in_years(action.when, view.years)
        or is_in_years(action.until, view.years)
        or action.crop_year in view.years
    )


def _is_named_hidden(named: Named, sight: Sight) -> bool:
    view = sight.view
    return is_hidden(named, view.beds, view.bed_names) or is_hidden(named, view.crops, sight.others)


def _named(entry: Entry) -> Iterator[Named]:
    yield from (*entry.beds, *entry.crops, *entry.varieties)
    for a in entry.actions:
        yield from (*a.places, *a.origins, *a.but, *a.crops, *a.varieties)


def _texts(entry: Entry) -> Iterator[str]:
    """Everything the gardener wrote in it, and the names it was understood by."""
    yield from (entry.id, entry.title or "", entry.body, entry.part or "", entry.again or "")
    yield from (*entry.photos, *entry.tags, *entry.lesson, *(words.text for words in entry.words))
    for named in _named(entry):
        yield from (named.name, named.written)
    for a in entry.actions:
        yield a.text
        yield from filter(None, (a.remark, a.subject, a.cause, a.part, a.batch, a.spacing))
        amounts = (
            *a.amounts,
            *(amount for _, amount in a.readings),
            *(f.amount for f in a.fates if f.amount),
        )
        for amount in amounts:
            yield from (amount.written, amount.unit)
        yield from (name for name, _ in a.readings)
