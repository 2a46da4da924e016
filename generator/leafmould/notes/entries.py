"""What one note says, action by action, as it was written.

An Entry may be incomplete, misspelt or contradictory: that is normal. What it means is decided in
`garden.assemble`, the only reader of these values. Entries are plain data and go to and from JSON
(`cache`), one record per file.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from leafmould.values.problems import Location, Problem
from leafmould.values.quantities import Amount
from leafmould.values.when import When


class Sureness(StrEnum):
    """How a name was come by."""

    KNOWN = "known"
    NEW = "new"  # not declared anywhere; taken as written
    PERHAPS = "perhaps"  # unquoted words beside a crop, perhaps a variety
    DOUBTFUL = "doubtful"  # "?", or one of several: "Krim or Cherokee"
    UNKNOWN = "unknown"  # the gardener says so


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """A bed, crop or variety, as a note names it."""

    key: str  # identity of the known thing; for a new one, its folded words joined by spaces
    name: str  # the known name that matched ("courgette"), or the words as written
    written: str
    sureness: Sureness = Sureness.KNOWN
    of: tuple[str, ...] = ()  # a crop group's crop keys; a variety's crop keys where known


@dataclass(frozen=True, slots=True, kw_only=True)
class Fate:
    """Where some of a harvest went."""

    kind: str  # "gave away", "ate", "composted", "stored", "put up"
    amount: Amount | None  # None: not said how much


@dataclass(frozen=True, slots=True, kw_only=True)
class Action:
    """One thing done to one item. A line of several verbs or items gives several actions."""

    verb: str  # one of words.verbs: "sowed", "planted", "came up", "gave away"
    text: str  # the whole line as written
    at: Location
    field: str  # "work[2]", "did", "body"
    when: When | None = None  # the line's own date; None: the entry's
    until: When | None = None  # "from 3 to 20 May"
    crops: tuple[Named, ...] = ()
    is_together: bool = False  # the crops or varieties are one mix, or share one amount
    varieties: tuple[Named, ...] = ()
    places: tuple[Named, ...] = ()  # where it happened; with `from A to B`, B
    origins: tuple[Named, ...] = ()  # raised in, stood in, moved from
    part: str | None = None  # "north half", "tree 3"
    amounts: tuple[Amount, ...] = ()  # several dimensions of one thing: 12 pieces, 1.4 kg
    fates: tuple[Fate, ...] = ()
    subject: str | None = None  # what was seen, treated, fed or covered with: "aphids", "fleece"
    cause: str | None = None  # of a loss
    batch: str | None = None  # "first sowing", "March sowing"
    everything: bool = False  # "everything", "all beds", "all"
    but: tuple[Named, ...] = ()  # everything but these (beds or crops)
    source: str | None = None  # who sold or gave it
    price: str | None = None  # as written
    wait_days: int | None = None  # days to wait, only if written
    crop_year: int | None = None  # "2024 beans" out of the larder
    readings: tuple[tuple[str, Amount], ...] = ()  # ("pH", 6.4), ("temperature", −3 °C), ("rain", …)
    spacing: str | None = None  # as written
    is_under_cover: bool = False
    remark: str | None = None  # words left over
    is_private: bool = False
    is_settled: bool = False
    is_loose: bool = False  # a variety learned from another note could change this reading
    spans: tuple[tuple[str, int, int], ...] = ()  # slot, start, end in `text`


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """A line kept as text: an intention, a remark, something not understood."""

    text: str
    at: Location
    kind: str  # "intention", "observation", "text"
    is_private: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One dated part of one note file; most files give exactly one."""

    id: str  # path under notes/ without the ending; further dated parts add "#2", "#3"
    at: Location
    when: When | None  # None: no date anywhere
    date_from: str  # "heading", "header", "file name", "first line", "photo", "nowhere"
    title: str | None = None
    actions: tuple[Action, ...] = ()
    words: tuple[Words, ...] = ()
    body: str = ""  # Markdown, comments taken out, line ends kept
    body_line: int = 1  # where the body starts in the file
    beds: tuple[Named, ...] = ()  # from the header
    crops: tuple[Named, ...] = ()
    varieties: tuple[Named, ...] = ()
    part: str | None = None
    photos: tuple[str, ...] = ()
    photo_lines: tuple[tuple[str, int], ...] = ()  # where in the file each of them is named
    tags: tuple[str, ...] = ()
    lesson: tuple[str, ...] = ()  # `lesson:` and sentences with "next year"
    again: str | None = None  # "yes", "no", "perhaps"
    by: str | None = None
    extra: tuple[tuple[str, str], ...] = ()  # unknown keys, kept and shown
    is_private: bool = False
    is_settled: bool = False
    problems: tuple[Problem, ...] = ()
