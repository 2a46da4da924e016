"""What has been gathered from one clause so far: items, places, details, and what to ask.

A Draft is filled by `slots` word by word and turned into actions by `actions`. It is the only value of
the reader that changes while it is made.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from leafmould.notes.entries import Fate, Named
from leafmould.notes.words.verbs import Verb
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount
from leafmould.values.when import When

Span = tuple[str, int, int]


@dataclass(slots=True)
class Asked:
    """One thing to tell the gardener, not yet placed in a file."""

    level: Level
    message: str
    column: int | None = None  # from 0, in the line
    suggestion: str | None = None


@dataclass(slots=True)
class Item:
    """One thing the verb was done to: a crop, or a mix, with its varieties and amounts."""

    crops: list[Named] = field(default_factory=list)
    varieties: list[Named] = field(default_factory=list)
    amounts: list[Amount] = field(default_factory=list)
    spans: list[Span] = field(default_factory=list)
    thing: str | None = None  # "eggs", "honey": what it is of, where that is no crop
    made: str | None = None  # "tomato sauce", of the crop
    is_mix: bool = False
    crop_end: int = -1  # word behind the last crop read
    places: list[Named] = field(default_factory=list)  # its own, where the line gives each its own amount
    part: str | None = None  # its own, where the line names several
    places_before: int = 0  # how many places were read when its last amount was
    is_after_comma: bool = False
    takes_crop_before: bool = False  # 4 'Krim': the crop is that of the item before


@dataclass(slots=True)
class Draft:
    """All of one clause."""

    items: list[Item] = field(default_factory=lambda: [Item()])
    fates: list[Fate] = field(default_factory=list)  # "half to Ann"
    total: list[Amount] = field(default_factory=list)  # one amount over all the items
    places: list[Named] = field(default_factory=list)
    origins: list[Named] = field(default_factory=list)
    place_items: list[tuple[Named, int]] = field(default_factory=list)  # places, each with the item before it
    part: str | None = None
    is_each: bool = False
    everything: bool = False
    but: list[Named] = field(default_factory=list)
    when: When | None = None
    until: When | None = None
    subject: str | None = None
    cause: str | None = None
    batch: str | None = None
    source: str | None = None
    price: str | None = None
    wait_days: int | None = None
    crop_year: int | None = None
    readings: list[tuple[str, Amount]] = field(default_factory=list)
    spacing: str | None = None
    is_under_cover: bool = False
    spans: list[Span] = field(default_factory=list)
    left: list[tuple[int, int, bool]] = field(default_factory=list)  # words left over; whether after a comma
    asked: list[Asked] = field(default_factory=list)
    is_loose: bool = False
    said: set[int] = field(default_factory=set)  # words of the remark that are no more than that
    relative: range = range(0)  # "I sowed in March", of "the peas I sowed in March have come up"

    @property
    def item(self) -> Item:
        """The item being read."""
        return self.items[-1]

    @property
    def has_crop(self) -> bool:
        """Whether any crop or variety has been read."""
        first = self.items[0]
        if first.crops or first.varieties:
            return True
        return len(self.items) > 1 and any(item.crops or item.varieties for item in self.items)

    @property
    def has_crop_named(self) -> bool:
        """Whether any crop has been read, not only a variety."""
        return bool(self.items[0].crops) or (len(self.items) > 1 and any(item.crops for item in self.items))

    def covers(self, char: int, *slots: str) -> bool:
        """Whether a character lies in a span of one of these slots."""
        return any(s[0] in slots and s[1] <= char < s[2] for s in self.spans)

    def ask(
        self, level: Level, message: str, column: int | None = None, suggestion: str | None = None
    ) -> None:
        """Note one thing to tell."""
        self.asked.append(Asked(level, message, column, suggestion))

    def leave(self, start: int, end: int, is_after_comma: bool) -> None:
        """Keep words `start` to `end` as part of the remark."""
        if self.left and self.left[-1][1] == start and not is_after_comma:
            first, _, was_after = self.left[-1]
            self.left[-1] = (first, end, was_after)
        elif self.left and self.left[-1][1] == start and self.left[-1][2]:
            self.left[-1] = (self.left[-1][0], end, True)
        else:
            self.left.append((start, end, is_after_comma))


@dataclass(slots=True)
class Done:
    """One clause read: its verb, its draft, and fates of its harvest that later clauses gave."""

    verb: Verb
    draft: Draft
    object_left: str | None = None  # words right behind the verb that no slot took
    is_pronoun: bool = False  # "cleared them": the crops of the clause before
    is_bare: bool = False  # nothing but the verb: "thinned and weeded carrots"
    is_after_comma: bool = False  # joined to the clause before by a comma
    fates: list[Fate] = field(default_factory=list)
    fates_of: list[tuple[Fate, frozenset[str]]] = field(default_factory=list)  # of some of its crops only
