"""The beds of garden.yaml: names alone, maps, or names over their settings.

Part of reading garden.yaml. A bed is kept as far as it can be read; only one without a name is lost.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from leafmould.notes.bed_privacy import WRITE, is_mark_alone, is_private_bed, names_in, plain_name
from leafmould.notes.fields import Fields, is_blank, nearest, one_space, shown
from leafmould.notes.line_ends import mark_in
from leafmould.notes.measures import has_unit, is_other_size, read_area, read_length, read_pair
from leafmould.notes.setting_values import BedSetting
from leafmould.notes.tree import Branch, Items, Key, Leaf, Tree
from leafmould.values.dates import read_date
from leafmould.values.names import fold
from leafmould.values.problems import Level, Location, Problem

KINDS = {
    "bed": "raised bed, border, plot, patch, strip, garden, terrace, square",
    "container": "pot, tub, trough, box, bag, planter, bucket, barrel, window box, hanging basket, growbag",
    "row": "line",
    "tree": "fruit tree, nut tree, espalier, cordon",
    "shrub": "bush, hedge, fruit bush",
    "cane row": "canes, cane, raspberry row, bramble row",
    "vine": "grape, climber, kiwi",
    "mound": "hill, hugel, heap, berm",
    "under glass": "greenhouse, glasshouse, polytunnel, hoop house, cold frame, frame, tunnel, cover, conservatory",
}
"""Kinds of places, each with other words that mean it."""

WORDS_TO_KIND = {word: kind for kind, words in KINDS.items() for word in (kind, *words.split(", "))}

KEYS = (
    "name", "also", "kind", "size", "at", "sun", "water", "soil", "parts", "was", "from", "until", "planted",
    "crop", "variety", "private", "canopy",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Ways:
    """How this garden writes sizes and dates."""

    units: str = "metric"
    order: str | None = None


def read_beds(key: Key, file: str, problems: list[Problem], ways: Ways) -> tuple[BedSetting, ...]:
    """All the beds, in the order they stand."""
    found: list[BedSetting] = []
    taken: dict[tuple[str, ...], BedSetting] = {}
    for index, (name, tree) in enumerate(_declared(key.value)):
        bed = _read_bed(name, tree, file, problems, f"beds[{index}]", ways)
        if bed is None:
            found += _unreadable(tree, file, problems, f"beds[{index}]", taken)
        elif found and is_mark_alone(bed.name):
            found[-1] = _made_private(found[-1], problems)
        elif not _is_taken(bed, taken, problems, f"beds[{index}]"):
            found.append(bed)
        elif bed.is_private:
            found = [_made_private(b, problems) if fold(b.name) == fold(bed.name) else b for b in found]
    return tuple(found)


def _made_private(bed: BedSetting, problems: list[Problem]) -> BedSetting:
    message = f'"{bed.name}" is taken as a private bed. {WRITE}'
    problems.append(Problem(at=bed.at, level=Level.WARNING, message=message, field="beds"))
    return replace(bed, is_private=True)


def _unreadable(
    tree: Tree, file: str, problems: list[Problem], path: str, taken: dict[tuple[str, ...], BedSetting]
) -> Iterator[BedSetting]:
    """Private beds in the place of one that cannot be read, by what may be its name."""
    at = Location(file=file, line=tree.line, column=tree.column)
    for name in dict.fromkeys(names_in(tree)):
        bed = BedSetting(name=plain_name(name), at=at, is_private=True)
        if fold(bed.name) and taken.setdefault(fold(bed.name), bed) is bed:
            message = f'"{bed.name}" is taken as a private bed, since what is written of it cannot be read.'
            problems.append(Problem(at=at, level=Level.WARNING, message=message, field=path))
            yield bed


def _declared(tree: Tree) -> Iterator[tuple[Leaf | Key | None, Tree]]:
    """Each bed: its name where that stands outside its settings, and its settings."""
    if isinstance(tree, Leaf) and tree.is_refused:
        yield None, tree
    elif isinstance(tree, Leaf):
        parts = [tree.text] if tree.is_quoted else tree.text.split(",")
        for part in filter(None, map(str.strip, parts)):
            leaf = Leaf(text=part, line=tree.line, column=tree.column)
            yield leaf, leaf
    elif isinstance(tree, Branch):
        for key in tree.keys:
            yield key, key.value
    else:
        for item in tree.items:
            yield from _in_list(item)


def _in_list(item: Tree) -> Iterator[tuple[Leaf | Key | None, Tree]]:
    """A list item: a name, a map with a name, or a name over its settings."""
    if isinstance(item, Leaf):
        yield item, item
    elif isinstance(item, Branch) and len(item.keys) == 1 and _is_name_over(item.keys[0]):
        yield item.keys[0], item.keys[0].value
    else:
        yield None, item


def _is_name_over(key: Key) -> bool:
    """Whether a key is a bed's name, over its settings or beside "private"."""
    return isinstance(key.value, Branch) or (
        isinstance(key.value, Leaf) and key.name not in KEYS and mark_in(key.value.text) is not None
    )


def _read_bed(
    name: Leaf | Key | None, tree: Tree, file: str, problems: list[Problem], path: str, ways: Ways
) -> BedSetting | None:
    """One bed, or None where no name can be found."""
    at = Location(file=file, line=tree.line, column=tree.column)
    written = name.text if isinstance(name, Leaf) else name.written if name else None
    if isinstance(tree, Leaf) and (tree.is_refused or is_blank(tree)) and not isinstance(name, Key):
        if not tree.is_refused:
            _no_name(at, problems, path)
        return None
    if isinstance(tree, Items):
        message = 'A bed is a name, or keys such as "name" and "size"; this is a list.'
        problems.append(Problem(at=at, level=Level.ERROR, message=message, field=path))
        return None
    branch = tree if isinstance(tree, Branch) else Branch(keys=(), line=at.line or 1, column=at.column or 1)
    fields = Fields(branch, file, problems, f"{path}.")
    called = one_space(fields.text("name") or written or "")
    if not called:
        _no_name(at, problems, path)
        return None
    is_private = is_private_bed(called, fields, tree)
    if not (isinstance(tree, Leaf) and is_mark_alone(tree.text)):
        _stray_value(name, tree, fields)
    return _bed(plain_name(called) if is_private else called, fields, at, ways, is_private=is_private)


def _no_name(at: Location, problems: list[Problem], path: str) -> None:
    problems.append(Problem(at=at, level=Level.ERROR, message='This bed has no "name".', field=path))


def _stray_value(name: Leaf | Key | None, tree: Tree, fields: Fields) -> None:
    """A bed written as `name: text`, whose text means nothing by itself."""
    if isinstance(name, Key) and isinstance(tree, Leaf) and not is_blank(tree) and not tree.is_refused:
        message = f'"{tree.text}" says nothing known about this bed. Write keys, such as "size: 1.2 x 6 m".'
        fields.tell(Level.ERROR, message, tree)


def _bed(name: str, fields: Fields, at: Location, ways: Ways, *, is_private: bool) -> BedSetting:
    """The settings of a named bed."""
    unknown = fields.unused(KEYS)
    for key in unknown:
        if (near := nearest(key.name, KEYS)) is not None:
            fields.tell(
                Level.WARNING, f'"{key.written}" is kept as it stands, but not used.', key, key.name, near
            )
    size, sides = fields.text("size"), _size(fields, ways.units)
    return BedSetting(
        name=name,
        at=at,
        also=tuple(other for other in fields.texts("also") if other != name),
        kind=_kind(fields),
        size_m=sides,
        area_m2=sides[0] * sides[1] if sides else read_area(size or ""),
        size_written=size,
        position_m=_position(fields, ways.units),
        canopy_m=_canopy(fields, ways.units),
        sun=_joined(fields, "sun"),
        water=_joined(fields, "water"),
        soil=_joined(fields, "soil"),
        parts=fields.texts("parts"),
        was=fields.texts("was", split=False),
        begun=_day(fields, "from", ways.order),
        ended=_day(fields, "until", ways.order),
        planted=fields.text("planted"),
        crop=fields.text("crop"),
        variety=fields.text("variety"),
        is_private=is_private,
        extra=tuple((key.written.strip(), shown(key.value)) for key in unknown),
    )


def _kind(fields: Fields) -> str:
    leaf = fields.leaf("kind")
    if leaf is None:
        return "bed"
    word = " ".join(leaf.text.casefold().replace("-", " ").split())
    kind = WORDS_TO_KIND.get(word) or WORDS_TO_KIND.get(word.removesuffix("s"))
    if kind is None:
        near = WORDS_TO_KIND.get(nearest(word, WORDS_TO_KIND) or "")
        message = f'"{leaf.text}" is no kind of place known here, so it is taken as a bed. Kinds are {", ".join(KINDS)}.'
        fields.tell(Level.ERROR, message, leaf, "kind", near)
    return kind or "bed"


def _size(fields: Fields, units: str) -> tuple[float, float] | None:
    """Width and length [m]."""
    leaf = fields.leaf("size")
    if leaf is None or is_other_size(leaf.text):
        return None
    unit = "ft" if units == "imperial" else "m"
    pair = read_pair(leaf.text, unit)
    if pair is None or not (0 < pair[0] <= 10_000 and 0 < pair[1] <= 10_000):
        message = f'"{leaf.text}" gives no width and length. Write it such as "1.2 x 6 m".'
        fields.tell(Level.WARNING if pair is None else Level.ERROR, message, leaf, "size")
        return None
    if not has_unit(leaf.text):
        full = "feet" if unit == "ft" else "metres"
        fields.tell(Level.WARNING, f'"{leaf.text}" has no unit; it is read in {full}.', leaf, "size")
    return pair


def _position(fields: Fields, units: str) -> tuple[float, float] | None:
    """East and north of the garden's corner [m]."""
    leaf = fields.leaf("at")
    if leaf is None:
        return None
    pair = read_pair(leaf.text, "ft" if units == "imperial" else "m")
    if pair is None or max(map(abs, pair)) > 100_000:
        message = f'"{leaf.text}" is no place on the map. Write how far it is to the right and up, such as "2 x 3 m".'
        fields.tell(Level.ERROR, message, leaf, "at")
        return None
    return pair


def _canopy(fields: Fields, units: str) -> float | None:
    """How wide a crown is [m]."""
    leaf = fields.leaf("canopy")
    if leaf is None:
        return None
    across = read_length(leaf.text, "ft" if units == "imperial" else "m")
    if across is None or not 0 < across <= 100:
        message = f'"{leaf.text}" is no width of a crown. Write it such as "4 m".'
        fields.tell(Level.ERROR, message, leaf, "canopy")
        return None
    return round(across, 3)


def _joined(fields: Fields, name: str) -> str | None:
    """Free text, also where it was written as a list or by part."""
    key = fields.key(name)
    return None if key is None or is_blank(key.value) else shown(key.value)


def _day(fields: Fields, name: str, order: str | None) -> date | None:
    """The day a bed begins or ends; of a year or month, its first or last."""
    leaf = fields.leaf(name)
    if leaf is None:
        return None
    reading = read_date(leaf.text, order=order, base=None, is_southern=False)
    if reading is None or reading.when is None:
        message = (
            reading.fault if reading else None
        ) or f'"{leaf.text}" is no date. Write it such as 2025-03-01.'
        fields.tell(Level.ERROR, message, leaf, name)
        return None
    if reading.other is not None:
        message = f'"{leaf.text}" may be read two ways; it is read as {reading.when.first.isoformat()}.'
        fields.tell(Level.QUESTION, message, leaf, name)
    return reading.when.last if name == "until" else reading.when.first


def _is_taken(
    bed: BedSetting, taken: dict[tuple[str, ...], BedSetting], problems: list[Problem], path: str
) -> bool:
    """Whether the name already stands for another bed; doubled by-names are told and the first keeps them."""
    for name in (bed.name, *bed.also):
        other = taken.get(fold(name) or (name,))
        if other is not None and other is not bed:
            message = f'"{name}" already names the bed on line {other.at.line}. Give this one another name.'
            problems.append(Problem(at=bed.at, level=Level.ERROR, message=message, field=path))
            if name == bed.name:
                return True
    for name in (bed.name, *bed.also):
        taken.setdefault(fold(name) or (name,), bed)
    return False
