"""What a note's header says, key by key, each value in its type.

Between `header`, which gives the tree, and `read`, which makes entries. Knows the keys of a note.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from difflib import get_close_matches

from leafmould.notes.entries import Named, Words
from leafmould.notes.fields import Fields, is_blank, nearest, one_space, shown
from leafmould.notes.habits import Habits
from leafmould.notes.header import NOTE_KEYS, Header
from leafmould.notes.header_names import Crops, read_bed, read_crop, read_variety
from leafmould.notes.meant_private import is_private_note
from leafmould.notes.mending import leaves
from leafmould.notes.tree import Branch, Items, Key, Leaf
from leafmould.notes.work_lines import WorkLine
from leafmould.values.dates import DateReading, read_date
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.when import When

EMPTY = Branch(keys=(), line=1, column=1)
AGAIN = {
    "yes": "yes", "y": "yes", "true": "yes", "ja": "yes", "oui": "yes", "si": "yes", "sí": "yes",
    "no": "no", "n": "no", "false": "no", "never": "no", "nein": "no", "non": "no", "nee": "no",
    "perhaps": "perhaps", "maybe": "perhaps", "possibly": "perhaps", "vielleicht": "perhaps",
    "peut-être": "perhaps", "quizás": "perhaps", "forse": "perhaps", "misschien": "perhaps",
}  # fmt: skip
PICTURE = re.compile(r"\S.*\.(?:jpe?g|png|gif|webp|heic|heif|tiff?|avif|bmp|svg)", re.IGNORECASE)

ASK_ORDER = (
    'Some dates, such as 3/4/2026, can be read two ways. They are read with the day first. Write "dates: day '
    'first" or "dates: month first".'
)
"""Asked once for the whole garden: the same words and place each time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bed:
    """A bed of the header, with the part written behind it."""

    named: Named
    part: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """The header in types. Lists keep the order they were written in."""

    dates: tuple[When, ...] = ()
    dated_at: Location | None = None
    beds: tuple[Bed, ...] = ()
    crops: tuple[Crops, ...] = ()
    varieties: tuple[Named, ...] = ()
    did: tuple[Leaf, ...] = ()
    amounts: tuple[Leaf, ...] = ()
    parts: tuple[Leaf, ...] = ()
    work: tuple[WorkLine, ...] = ()
    photos: tuple[str, ...] = ()
    photo_lines: tuple[tuple[str, int], ...] = ()
    tags: tuple[str, ...] = ()
    title: str | None = None
    by: str | None = None
    lesson: tuple[str, ...] = ()
    again: Leaf | None = None
    is_private: bool = False
    is_settled: bool = False
    extra: tuple[tuple[str, str], ...] = ()
    words: tuple[Words, ...] = ()


def read_head(
    header: Header | None, file: str, base: When | None, habits: Habits, problems: list[Problem]
) -> Head:
    """All the header says; an empty Head where there is none.

    Args:
        base: what the file name says, for a date without a year.
    """
    if header is None:
        return Head()
    fields = Fields(_singular(header.tree or EMPTY), file, problems)

    def tell(name: str, level: Level, message: str, leaf: Leaf, suggestion: str | None) -> None:
        fields.tell(level, message, leaf, name, suggestion)

    vocabulary = habits.vocabulary
    beds = [
        Bed(named=named, part=part)
        for leaf in fields.leaves("bed")
        for named, part in read_bed(leaf, vocabulary, lambda *a: tell("bed", *a))
    ]
    crops = [
        crop
        for leaf in fields.leaves("crop", unknown=True)
        for crop in read_crop(leaf, vocabulary, lambda *a: tell("crop", *a))
    ]
    named = [crop.crop for crop in crops]
    varieties = [
        v for leaf in fields.leaves("variety", unknown=True) for v in read_variety(leaf, vocabulary, named)
    ]
    dates = _dates(fields, base, habits)
    words = [Words(text=s.text, at=_at(file, s), kind="text") for s in header.stray]
    photos = _photos(fields)
    return Head(
        dates=dates,
        dated_at=next((_at(file, leaf) for leaf in fields.leaves("date")), None),
        beds=tuple(beds),
        crops=tuple(crops),
        varieties=tuple(varieties),
        did=fields.leaves("did"),
        amounts=fields.leaves("amount"),
        parts=fields.leaves("part"),
        work=(*header.work, *_work_in_tree(fields)),
        photos=tuple(photos),
        photo_lines=tuple(photos.items()),
        tags=tuple(tag.removeprefix("#") for tag in fields.texts("tags") if tag.strip("#")),
        title=fields.text("title"),
        by=", ".join(fields.texts("by")) or None,
        lesson=fields.texts("lesson", split=False),
        again=_again(fields),
        is_private=is_private_note(fields, header.stray),
        is_settled=_is_settled(fields),
        extra=(*_extra(fields), *_unpaired(fields)),
        words=tuple(words),
    )


def _work_in_tree(fields: Fields) -> list[WorkLine]:
    """Work lines under a `work:` that was not at the edge of its line, so that YAML met them."""
    found = [leaf for key in fields.branch.keys if key.name == "work" for leaf in leaves(key.value)]
    return [WorkLine(text=one_space(f.text), line=f.line, column=f.column) for f in found if f.text.strip()]


PLURALS = {
    "beds": "bed", "crops": "crop", "varieties": "variety", "photos": "photo", "dates": "date",
    "amounts": "amount", "lessons": "lesson", "tag": "tags",
}  # fmt: skip


def _singular(branch: Branch) -> Branch:
    """The header with `crops: [pea, bean]` taken as `crop:`, where it holds plain words."""
    taken = {key.name for key in branch.keys}
    keys = []
    for key in branch.keys:
        meant = PLURALS.get(key.name)
        is_plain = isinstance(key.value, Leaf) or (
            isinstance(key.value, Items) and all(isinstance(item, Leaf) for item in key.value.items)
        )
        keys.append(replace(key, written=meant) if meant and meant not in taken and is_plain else key)
    return replace(branch, keys=tuple(keys))


def _dates(fields: Fields, base: When | None, habits: Habits) -> tuple[When, ...]:
    """The dates, each told about if it cannot be one."""
    found = []
    for leaf in fields.leaves("date"):
        reading = _date(leaf.text, base, habits)
        if reading is None or reading.when is None:
            fault = reading.fault if reading else None
            message = fault or f'"{leaf.text.strip()}" is no date. Write it such as 2026-06-20.'
            fields.tell(Level.ERROR, message, leaf, "date")
            fields.lost.add("date")
            continue
        when = reading.when
        if reading.other is not None:
            if base is not None and reading.other.meets(base) and not when.meets(base):
                when = reading.other
            elif base is None or not when.meets(base):
                fields.problems.append(ask_order())
        found.append(when)
    return tuple(found)


def ask_order() -> Problem:
    """The question about the order of day and month."""
    at = Location(file="garden.yaml")
    return Problem(at=at, level=Level.QUESTION, message=ASK_ORDER, field="dates")


RANGE = re.compile(r"\s+(?:to|until|till|bis|au|al|tot)\s+|\s*[–—]\s*|\s+-\s+|(?<=\d)/(?=\d{4}-)")
DAYS_IN_MONTH = re.compile(r"(\d{1,2})(?:st|nd|rd|th|\.)?\s*(?:-|–|—|to|/|and|&)\s*(?=\d{1,2}\D)")


def _date(text: str, base: When | None, habits: Habits) -> DateReading | None:
    """One date, or the span from one to another: "20–22 June 2026"."""

    def read(part: str) -> DateReading | None:
        return read_date(part, order=habits.order, base=base, is_southern=habits.is_southern)

    whole = read(text)
    if whole is not None:
        return whole
    if (m := DAYS_IN_MONTH.match(text.strip())) is not None and (
        end := read(text.strip()[m.end() :])
    ) is not None:
        if end.when is None or not end.when.is_exact or int(m[1]) not in range(1, end.when.first.day):
            return None
        first = end.when.first.replace(day=int(m[1]))
        return DateReading(when=When(first=first, last=end.when.last, written=text.strip()))
    for m in RANGE.finditer(text):
        begin, end = read(text[: m.start()]), read(text[m.end() :])
        if begin is None and end is not None and end.when is not None:
            begin = read_date(
                text[: m.start()], order=habits.order, base=end.when, is_southern=habits.is_southern
            )
        if begin and end and begin.when and end.when and begin.when.first <= end.when.last:
            return DateReading(when=When(first=begin.when.first, last=end.when.last, written=text.strip()))
    return None


def _photos(fields: Fields) -> dict[str, int]:
    """Photo names and their lines; "a.jpg, b.jpg" are two."""
    found: dict[str, int] = {}
    for leaf in fields.leaves("photo"):
        pieces = [piece.strip() for piece in leaf.text.split(",")]
        is_several = len(pieces) > 1 and all(PICTURE.fullmatch(piece) for piece in pieces)
        for photo in pieces if is_several else [leaf.text.strip()]:
            if photo:
                found.setdefault(photo, leaf.line)
    return found


def _again(fields: Fields) -> Leaf | None:
    """Whether to grow it again, as one of three words."""
    leaf = fields.leaf("again")
    if leaf is None:
        return None
    word = AGAIN.get(leaf.text.strip().casefold())
    if word is None:
        near = AGAIN.get(nearest(leaf.text.strip().casefold(), AGAIN) or "")
        fields.tell(
            Level.ERROR, f'"{leaf.text.strip()}" is not "yes", "no" or "perhaps".', leaf, "again", near
        )
        fields.lost.add("again")
        return None
    return Leaf(text=word, line=leaf.line, column=leaf.column)


def _is_settled(fields: Fields) -> bool:
    """Whether warnings are silenced: any word but "no"."""
    key = fields.key("settled")
    if key is None or is_blank(key.value):
        return False
    return not (
        isinstance(key.value, Leaf)
        and key.value.text.strip().casefold() in ("no", "n", "false", "nein", "non")
    )


def _extra(fields: Fields) -> list[tuple[str, str]]:
    """Keys we do not use, and values we could not, as they were written."""
    found = []
    for key in fields.branch.keys:
        if key.name not in NOTE_KEYS or (key.name != "work" and _is_lost(key, fields)):
            found.append((key.written.strip(), shown(key.value)))
    for key in fields.unused(NOTE_KEYS):
        near = get_close_matches(key.name[:40], sorted(NOTE_KEYS), n=1, cutoff=0.8)
        if near and len(key.name) > 3 and not isinstance(key.value, Branch) and key.name not in PLURALS:
            fields.tell(
                Level.HINT, f'"{key.written}" is kept and shown, but not used.', key, key.name, near[0]
            )
    return [(name, value) for name, value in found if value]


LISTS = ("did", "crop", "bed", "variety", "date", "amount", "part")


def _unpaired(fields: Fields) -> list[tuple[str, str]]:
    """Lists that no action takes up whole, as written: nothing was done, or their lengths differ."""
    lengths = {name: len(fields.leaves(name, unknown=True)) for name in LISTS}
    most = max(lengths.values())
    is_even = lengths["did"] and all(length in (0, 1, most) for length in lengths.values())
    if is_even or (lengths["did"] and most <= 1):
        return []
    kept = ("amount", "part", "date", "did") if lengths["did"] else ("amount", "part", "date")
    least = {"amount": 1, "part": 2, "date": 2, "did": 2}
    found = [key for name in kept if (key := fields.key(name)) and lengths[name] >= least[name]]
    return [(key.written.strip(), shown(key.value)) for key in found if key.name not in fields.lost]


SINGLE = frozenset({"title", "again", "private"})


def _is_lost(key: Key, fields: Fields) -> bool:
    """Whether a known key says something that was not used: refused, doubled or of the wrong shape."""
    if is_blank(key.value):
        return False
    if fields.by_name[key.name] is not key or isinstance(key.value, Branch):
        return True
    if isinstance(key.value, Items):
        return key.name in SINGLE or any(not isinstance(i, Leaf) or i.is_refused for i in key.value.items)
    return key.value.is_refused or key.name in fields.lost


def _at(file: str, leaf: Leaf) -> Location:
    return Location(file=file, line=leaf.line, column=leaf.column)
