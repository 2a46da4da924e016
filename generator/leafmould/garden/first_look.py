"""A first look at every entry: its words in one text, whom it names, and whether anything in them may tell.

Each entry is looked at once for all that `visible` does. Signs of money, places, people and privacy are
looked for in the texts of all entries at one go: most entries hold none, and need no closer look.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from leafmould.garden.figures import CODE_BEFORE, CODES, NUMBER_BEFORE, SIGNS, THREE_DECIMALS
from leafmould.garden.people import GIVING, openings, people_told
from leafmould.garden.view import View
from leafmould.notes.entries import Entry, Named

MONEY_CODES = CODES.split("|")
PLACE = ("°",)
PRIVATE = ("pri", "vate")
"""What stands, in small letters, in every text that may tell of these."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """What there is to know of one entry, whatever is to be hidden."""

    entry: Entry
    text: str  # everything the gardener wrote in it, and the names it was understood by
    has_table: bool
    has_money: bool  # the texts with these signs need a closer look
    has_place: bool
    has_private: bool
    has_giving: bool
    people: tuple[str, ...]  # who is named as giver, helper or the like
    somebody: tuple[str, ...]  # who is named by a title, by kinship, as somebody's or as who said so
    openings: tuple[str, ...]  # what may be a name: a word with a capital before a verb


def looks_at(entries: Sequence[Entry], view: View) -> tuple[Look, ...]:
    """A first look at each of these entries, in their order."""
    texts = ["\n".join(texts_of(entry)) for entry in entries]
    lower = [text.lower() for text in texts]
    money = holding(lower, SIGNS, NUMBER_BEFORE) | holding(lower, MONEY_CODES, only=CODE_BEFORE)
    place = holding(lower, (*PLACE, *view.place_signs), THREE_DECIMALS) if view.place else set()
    private, giving = holding(lower, PRIVATE), holding(lower, GIVING)
    shows = view.shows_people
    return tuple(
        Look(
            entry=entry,
            text=text,
            has_table="|" in entry.body,
            has_money=number in money,
            has_place=number in place,
            has_private=number in private,
            has_giving=number in giving,
            people=() if shows else tuple(people_told(entry, gives=number in giving)),
            somebody=() if shows else tuple(view.namer.names(_written_in(entry))),
            openings=() if shows else tuple(openings(entry, view.known)),
        )
        for number, (entry, text) in enumerate(zip(entries, texts, strict=True))
    )


def holding(
    texts: Sequence[str],
    signs: Iterable[str],
    pattern: re.Pattern[str] | None = None,
    *,
    only: re.Pattern[str] | None = None,
) -> set[int]:
    """The numbers of the texts in which any of the signs stands, or the pattern.

    Args:
        pattern: where it goes on over the end of a text, the text counts: rather once too often.
        only: a sign counts only where this begins: the "aud" of "Claudia" is no money.
    """
    whole = "\n".join(texts)
    starts = [0, *accumulate(len(text) + 1 for text in texts)]
    places = [place for sign in signs for place in _places(sign, whole, starts, only)]
    places += [m.start() for m in pattern.finditer(whole)] if pattern else []
    return {bisect_right(starts, place) - 1 for place in places}


def _places(sign: str, whole: str, starts: Sequence[int], only: re.Pattern[str] | None) -> Iterator[int]:
    """Where a sign stands, once a text."""
    place = whole.find(sign)
    while place >= 0:
        if only is None or only.match(whole, place):
            yield place
            place = whole.find(sign, starts[bisect_right(starts, place)])
        else:
            place = whole.find(sign, place + 1)


def texts_of(entry: Entry) -> list[str]:
    """Everything the gardener wrote in it, and the names it was understood by."""
    found = [entry.id, entry.title or "", entry.body, entry.part or "", entry.again or ""]
    found += [*entry.photos, *entry.tags, *entry.lesson, *(words.text for words in entry.words)]
    for named in named_in(entry):
        found += (named.name, named.written)
    for a in entry.actions:
        found.append(a.text)
        found += filter(None, (a.remark, a.subject, a.cause, a.part, a.batch, a.spacing))
        for amount in a.amounts:
            found += (amount.written, amount.unit)
        for fate in a.fates:
            found += (fate.amount.written, fate.amount.unit) if fate.amount else ()
        for name, amount in a.readings:
            found += (name, amount.written, amount.unit)
    return found


def _written_in(entry: Entry) -> str:
    """The gardener's own words, without the names they were understood by."""
    texts = [entry.title or "", entry.body, entry.part or "", entry.again or "", *entry.tags, *entry.lesson]
    texts += (words.text for words in entry.words if words.text not in entry.body)
    texts += (action.text for action in entry.actions if action.text not in entry.body)
    return "\n".join([*texts, *entry.photos])


def named_in(entry: Entry) -> Iterator[Named]:
    """Everything an entry names."""
    yield from (*entry.beds, *entry.crops, *entry.varieties)
    for a in entry.actions:
        yield from (*a.places, *a.origins, *a.but, *a.crops, *a.varieties)
