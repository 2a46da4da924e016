"""What a page is made of: small finished values that a template only has to print.

Page values are built after reckoning and know nothing of HTML. Every link in them is an address inside the
site, seen from its top ("beds/long-border.html#id"); rendering makes it relative to the page it stands on.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One page: where it goes, which template prints it, and the values it shows."""

    address: str  # path inside the site, file named: "beds/long-border.html"
    template: str  # "bed.html"
    title: str
    section: str  # which word of the masthead it belongs to: "beds"
    values: object  # one of the frozen values of this package, known to the template as `it`
    same: str = ""  # what the page is told by if its address changes


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """A name and where it leads."""

    text: str
    to: str = ""  # "": nothing to lead to in this build


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A number or a date as it is read, as a machine reads it, and the way home to where it was noted."""

    text: str
    value: str
    is_time: bool = False
    to: str = ""  # the note, or the table whose rows lead to the notes
    is_estimated: bool = False
    why: str = ""  # what it was reckoned or inferred from


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """How far along a wait for a first picking is, in hundredths of the way to the latest day."""

    gone: int
    opens: int  # where the earliest day stands


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """A plant label, the same wherever a planting appears."""

    kind: str
    tone: str  # growing, ripening, resting, warning, planned
    text: str
    value: str = ""
    to: str = ""
    counted_from: str = ""  # ISO day the count starts; "": nothing to move on
    before: str = ""
    after: str = ""
    why: str = ""
    wait: Wait | None = None
    is_plain: bool = False  # words after the labels, because others tell more


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyMark:
    """A family as it is shown: name, two letters, and a hatch chosen by them."""

    key: str  # its id on the page of families
    name: str
    mark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantingLine:
    """A planting in one line, as it appears on any page."""

    name: str  # "beetroot ‘Boltardy’"
    to: str  # its section on its bed's page
    bed: Link
    part: str = ""
    number: Figure | None = None  # how many stand or stood, as far as written
    families: tuple[FamilyMark, ...] = ()
    tags: tuple[Tag, ...] = ()
    year: str = ""  # of its start


@dataclass(frozen=True, slots=True, kw_only=True)
class Doing:
    """One thing done, in the gardener's own words, dated, leading to its note."""

    on: Figure
    text: str
    remarks: tuple[str, ...] = ()  # what was inferred


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteLine:
    """A note in a list: its day, its name and how it begins."""

    on: Figure
    link: Link
    begins: str = ""
    is_private: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A stretch or a stroke on a year's strip, in tenths of a month from its left end."""

    kind: str  # raised, ground, picking, expected
    x: float
    width: float
    is_open: bool = False  # estimated: drawn as an outline
    told: str = ""  # its days, for the table behind the strip
    is_guess: bool = False  # nothing tells that it still stood


@dataclass(frozen=True, slots=True, kw_only=True)
class StripRow:
    """One planting in one year, drawn along the months."""

    link: Link
    note: str  # beside the name: the part, the bed, the year
    bars: tuple[Bar, ...]
    says: str  # the same in words
    today: float | None = None  # where the garden's day stands on this strip


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """Something to remember, and where it was written."""

    text: str
    on: Figure
    about: tuple[Link, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureFile:
    """A picture in one width."""

    to: str  # its address
    width: int  # [px]
    height: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """A picture with what is said of it; without files a line of text in its place."""

    files: tuple[PictureFile, ...]  # smallest first
    alt: str  # what it shows, in words
    caption: str = ""
    on: Figure | None = None
    dated_by: str = ""  # what tells its day, where that is not its note
    about: tuple[Link, ...] = ()
    to: str = ""  # where it leads: its note, or on the note's page the largest file
