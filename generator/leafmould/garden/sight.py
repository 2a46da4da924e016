"""What has to be known of all entries before one can be judged: people, and varieties of hidden crops.

Gathered once for a public build, at the start of `visible`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from leafmould.garden.blank import Folded, Names
from leafmould.garden.figures import may_tell_a_place
from leafmould.garden.first_look import Look, named_in
from leafmould.garden.people import (
    ALSO_WORDS,
    OPENS_A_LINE,
    folk_told,
    is_a_name,
    is_source,
    spans_in,
)
from leafmould.garden.somebody import Namer, is_also_word, is_given_name, whole_names
from leafmould.garden.view import View
from leafmould.notes.entries import Action, Named, Sureness
from leafmould.notes.line_ends import may_be_private
from leafmould.values.names import fold, slug
from leafmould.values.when import When

CALENDAR = frozenset(
    {
        "january", "february", "march", "april", "may", "june", "july", "august", "september", "october",
        "november", "december", "jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov",
        "dec", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "mon", "tue",
        "wed", "thu", "fri", "sat", "sun", "easter", "whitsun", "christma", "midsummer", "i",
    }
)  # fmt: skip
"""Folded words with a capital that are no people."""

SEEN_ELSEWHERE = frozenset({"people", "prices", "plan"})
"""Subjects of `leave out` that are left out anyway, or are no matter of the notes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sight:
    """A view, with what had to be known of all entries first."""

    view: View
    others: Names  # hidden crops, their varieties, hidden years
    people: Names  # written with a capital as who did, sold, gave, got or helped
    folk: Names  # said to be people by a key: in small letters too
    namer: Namer  # finds others by what stands beside them
    told: frozenset[tuple[str, ...]]  # folded names of beds, crops and varieties, known or told in notes


def sight_of(looks: Sequence[Look], view: View) -> Sight:
    """The view of these entries."""
    people, folk = (set(), set()) if view.shows_people else _people_in(looks, view)
    plants, beds, hidden = _names_told(looks, view)
    told = plants | beds
    namer = view.namer.and_also(plants, beds)
    folk = {name for name in folk - told if is_a_name(name) and not CALENDAR.issuperset(name)}
    people |= {name for name in folk if ALSO_WORDS.issuperset(name)}
    return Sight(
        view=view,
        others=view.other_names.and_also(hidden - told),
        people=Names(
            (name for name in people - told if is_a_name(name) and not CALENDAR.issuperset(name)),
            namer.longer,
        ),
        folk=Names(name for name in folk if not ALSO_WORDS.issuperset(name)),
        namer=namer,
        told=view.known | told,
    )


def _names_told(
    looks: Sequence[Look], view: View
) -> tuple[frozenset[Folded], frozenset[Folded], frozenset[Folded]]:
    """Folded names of plants and of beds that the notes name, and of varieties of hidden crops.

    A name in no table that elsewhere is somebody's is theirs.
    """
    plants, beds, hidden = set[str](), set[str](), set[str]()
    hides_crops = bool(view.crops or view.other_names)
    people = whole_names(name for look in looks for name in look.somebody)

    def is_somebody(n: Named) -> bool:
        return n.sureness is not Sureness.KNOWN and (fold(n.name) in people or bool(view.namer.spans(n.name)))

    def names(found: Iterable[Named]) -> Iterator[str]:
        return (n.name for n in found if not is_somebody(n))

    for entry in (look.entry for look in looks):
        beds.update(names(entry.beds))
        plants.update(names((*entry.crops, *entry.varieties)))
        for action in entry.actions:
            is_of_hidden = hides_crops and any(
                is_hidden(crop, view.crops, view.other_names) for crop in action.crops
            )
            (hidden if is_of_hidden else plants).update(names(action.varieties))
            plants.update(names(action.crops))
            beds.update(names(place for place in action.places if not is_source(action, place)))
    return whole_names(plants), whole_names(beds), whole_names(hidden)


def _people_in(looks: Sequence[Look], view: View) -> tuple[set[Folded], set[Folded]]:
    """Folded names of people: those written with a capital, and those that a key says are people's."""
    told = {name for look in looks for name in look.people}
    opened = {name for look in looks for name in look.openings}
    opened = {
        name
        for name in opened
        if fold(name) not in view.known and name.casefold() not in OPENS_A_LINE and not name.endswith("ly")
    }
    somebody = {name for look in looks for name in look.somebody}
    told |= {name for name in somebody if is_given_name(name)}
    opened |= {name for name in somebody if not is_also_word(name)}
    if opened:
        small = re.compile(rf"\b(?:{'|'.join(sorted(re.escape(name.lower()) for name in opened))})\b")
        common = {word for look in looks for word in small.findall(look.text)}
        told |= {name for name in opened if name.lower() not in common}
    entries = (look.entry for look in looks)
    folk = {fold(name) for entry in entries if entry.by or entry.extra for name in folk_told(entry)}
    return {fold(name) for name in told}, folk


def people_spans(text: str, sight: Sight) -> list[tuple[int, int]]:
    """Where people are named in a text."""
    if sight.view.shows_people:
        return []
    named = [*sight.people.spans(text, capitals=True), *sight.folk.spans(text)]
    return [*named, *spans_in(text, sight.told), *sight.namer.spans(text)]


def has_nothing_to_hide(look: Look, sight: Sight) -> bool:
    """Whether the entry may be shown as it is; most may, and need no closer look.

    Says no too often rather than too seldom: a closer look changes nothing where nothing is to be hidden.
    """
    entry, view = look.entry, sight.view
    if view.leave_out - SEEN_ELSEWHERE or entry.is_private or entry.by or entry.extra:
        return False
    if is_in_years(entry.when, view.years) or any(_needs_a_look(action, view) for action in entry.actions):
        return False
    if (view.beds or view.crops) and any(_is_named_hidden(named, sight) for named in named_in(entry)):
        return False
    if look.has_table or look.has_money or _tells(look, sight):
        return False
    tell = (view.bed_names, sight.others, view.words, view.disguise)
    return not any(names and names.are_in(look.text) for names in tell)


def _tells(look: Look, sight: Sight) -> bool:
    """Whether the words tell of a place or of somebody, or may say that they are private."""
    if look.has_private and may_be_private(look.text.lower()):
        return True
    if look.has_place and tells_place(look.text, sight.view):
        return True
    return bool(
        (look.has_giving or look.somebody or sight.people or sight.folk) and people_spans(look.text, sight)
    )


def without_people(names: tuple[Named, ...], text: str, sight: Sight) -> tuple[Named, ...]:
    """The names of a line without those in no table that are somebody's: "planted Mrs Hale's rhubarb"."""
    if sight.view.shows_people or all(named.sureness is Sureness.KNOWN for named in names):
        return names
    told = [text[start:end] for start, end in sight.namer.spans(text)]
    return tuple(
        n
        for n in names
        if n.sureness is Sureness.KNOWN or not any(n.written in name or name in n.written for name in told)
    )


def tells_place(text: str, view: View) -> bool:
    """Whether a figure in the text tells where the garden lies."""
    return (
        view.place is not None
        and may_tell_a_place(text, view.place_signs)
        and view.place.search(text) is not None
    )


def is_in_years(when: When | None, years: frozenset[int]) -> bool:
    """Whether any day of it may lie in a hidden year."""
    return when is not None and any(when.first.year <= year <= when.last.year for year in years)


def is_hidden(named: Named, keys: frozenset[str], names: Names) -> bool:
    """Whether a named thing is one of those hidden, by its key, its name or what it is a kind of."""
    is_by_name = named.key in keys or slug(named.name) in keys or fold(named.name) in names.names
    return is_by_name or (bool(named.of) and keys.issuperset(named.of))


def _needs_a_look(action: Action, view: View) -> bool:
    return bool(
        action.is_private
        or action.price
        or action.source
        or is_in_years(action.when, view.years)
        or is_in_years(action.until, view.years)
        or action.crop_year in view.years
        or (not view.shows_people and any(is_source(action, place) for place in action.places))
    )


def _is_named_hidden(named: Named, sight: Sight) -> bool:
    view = sight.view
    return is_hidden(named, view.beds, view.bed_names) or is_hidden(named, view.crops, sight.others)
