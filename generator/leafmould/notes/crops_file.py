"""crops.yaml: own crops and varieties, packet days, and what the garden knows better than the books.

Optional. Read once with the settings; nothing in it stops a build.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from leafmould.notes.fields import Fields, is_blank, nearest, one_space
from leafmould.notes.measures import read_length
from leafmould.notes.mending import read_tree
from leafmould.notes.setting_values import CropSetting, PacketDays
from leafmould.notes.tree import Branch, Items, Key, Leaf, Tree
from leafmould.values.names import fold
from leafmould.values.problems import Level, Location, Problem, in_file_order

CROPS_FILE = "crops.yaml"

KEYS = ("also", "family", "grown", "like", "tender", "days", "from", "apart", "rows", "varieties")
KEYS_LISTED = ("name", "crop", *KEYS)
GROWN = ("annual", "overwintered", "biennial", "perennial")
FROM = {
    "sowing": "sowing", "sown": "sowing", "sow": "sowing", "seed": "sowing", "direct sowing": "sowing",
    "planting out": "planting out", "planting": "planting out", "planted": "planting out",
    "planted out": "planting out", "transplanting": "planting out", "transplant": "planting out",
    "setting out": "planting out",
}  # fmt: skip
DAYS = re.compile(
    r"(?:about |~|ca\.? )?(\d{1,4})(?:\s*(?:-|–|—|to|\.\.)\s*(\d{1,4}))?(?:\s*(?:days?|d))?"
    r"(?:\s+(?:from|after)\s+(?P<start>[a-z ]+))?",
    re.IGNORECASE,
)


def read_crops(text: str, file: str = CROPS_FILE) -> tuple[tuple[CropSetting, ...], tuple[Problem, ...]]:
    """The crops that could be read, and what is wrong."""
    mended = read_tree(text, file)
    problems = list(mended.problems)
    found: list[CropSetting] = []
    if isinstance(mended.tree, Branch):
        names = Fields(mended.tree, file, problems)
        found = [_crop(key, names) for key in names.by_name.values() if one_space(key.written)]
    elif isinstance(mended.tree, Items):
        found = [crop for item in mended.tree.items for crop in _listed(item, file, problems)]
    crops = tuple(_once(found, problems))
    return crops, in_file_order(problems)


def _listed(item: Tree, file: str, problems: list[Problem]) -> Iterator[CropSetting]:
    """One item of a list of crops: a name, a map with the name in it, or a name over its map."""
    if isinstance(item, Leaf):
        if one_space(item.text):
            yield _plain_crop(item, file)
        return
    fault = 'A crop is a name, or keys such as "name" and "days"; this is a list.'
    if isinstance(item, Branch):
        fields = Fields(item, file, problems)
        name = fields.leaf("name", "crop")
        if name is not None and one_space(name.text):
            key = Key(written=name.text, line=name.line, column=name.column, value=item)
            yield _with_fields(key, fields, KEYS_LISTED)
            return
        if len(item.keys) == 1 and one_space(item.keys[0].written) and item.keys[0].name not in KEYS:
            yield _crop(item.keys[0], fields)
            return
        fault = 'A crop has no name here. Write it such as "name: beetroot".'
    at = Location(file=file, line=item.line)
    problems.append(Problem(at=at, level=Level.ERROR, message=fault))


def _plain_crop(leaf: Leaf, file: str) -> CropSetting:
    """A crop by its name alone, from a list."""
    return CropSetting(name=one_space(leaf.text), at=Location(file=file, line=leaf.line, column=leaf.column))


def _crop(key: Key, names: Fields) -> CropSetting:
    """One crop and what stands under it."""
    fields = None if is_blank(key.value) else names.branch_of(key.name)
    if fields is None:
        at = Location(file=names.file, line=key.line, column=key.column)
        return CropSetting(name=key.written.strip(), at=at)
    return _with_fields(key, fields, KEYS)


def _with_fields(key: Key, fields: Fields, known: tuple[str, ...]) -> CropSetting:
    """A named crop with what stands under it."""
    at = Location(file=fields.file, line=key.line, column=key.column)
    name = one_space(key.written)
    for unknown in fields.unused(known):
        near = nearest(unknown.name, KEYS)
        fields.tell(Level.WARNING, f'"{unknown.written}" is not used here.', unknown, unknown.name, near)
    counts_from = _counts_from(fields, "from")
    varieties, days_by_variety = _varieties(fields, counts_from)
    return CropSetting(
        name=name,
        at=at,
        also=fields.texts("also"),
        family=fields.text("family"),
        grown=fields.choice(GROWN, "grown"),
        like=fields.text("like"),
        is_tender=fields.yes("tender"),
        days=_days(fields, "days", counts_from),
        days_by_variety=days_by_variety,
        varieties=varieties,
        apart_cm=_distance(fields, "apart"),
        rows_cm=_distance(fields, "rows"),
    )


def _distance(fields: Fields, name: str) -> float | None:
    """A distance between plants or rows [cm]; centimetres where no unit is written."""
    leaf = fields.leaf(name)
    if leaf is None or not leaf.text.strip():
        return None
    metres = read_length(re.sub(r"\s+apart$", "", leaf.text.strip()), "cm")
    if metres is not None and 0.005 <= metres <= 20:
        return round(metres * 100, 1)
    fields.tell(Level.ERROR, f'"{leaf.text}" is no distance. Write it such as "30 cm".', leaf, name)
    return None


def _varieties(
    fields: Fields, counts_from: str | None
) -> tuple[tuple[str, ...], tuple[tuple[str, PacketDays], ...]]:
    """Names of varieties, and the packet days of those that have some."""
    key = fields.key("varieties")
    if key is None or is_blank(key.value) or not isinstance(key.value, Branch):
        return fields.texts("varieties"), ()
    inner = Fields(key.value, fields.file, fields.problems, f"{fields.path}varieties.")
    names: list[str] = []
    days: list[tuple[str, PacketDays]] = []
    for variety in inner.by_name.values():
        names.append(variety.written.strip())
        found = _variety_days(variety, inner, counts_from)
        if found is not None:
            days.append((names[-1], found))
    return tuple(names), tuple(days)


def _variety_days(variety: Key, inner: Fields, counts_from: str | None) -> PacketDays | None:
    """Days of one variety: beside its name, or under it."""
    if is_blank(variety.value):
        return None
    if not isinstance(variety.value, Branch):
        return _days(inner, variety.name, counts_from)
    fields = Fields(variety.value, inner.file, inner.problems, f"{inner.path}{variety.name}.")
    for unknown in fields.unused(("days", "from", "low", "high")):
        near = nearest(unknown.name, ("days", "from", "low", "high"))
        fields.tell(Level.WARNING, f'"{unknown.written}" is not used here.', unknown, unknown.name, near)
    if fields.key("low", "high") is not None:
        return _low_high(fields, variety.value, counts_from)
    return _days(fields, "days", _counts_from(fields, "from") or counts_from)


def _days(fields: Fields, name: str, counts_from: str | None) -> PacketDays | None:
    """Days as "60" or "60-70", or as a map of low, high and from."""
    key = fields.key(name)
    if key is None or is_blank(key.value):
        return None
    if isinstance(key.value, Branch):
        inner = Fields(key.value, fields.file, fields.problems, f"{fields.path}{name}.")
        return _low_high(inner, key.value, counts_from)
    leaf = fields.leaf(name)
    if leaf is None:
        return None
    m = DAYS.fullmatch(leaf.text.strip())
    if m is None:
        fields.tell(Level.ERROR, f'"{leaf.text}" is no number of days. Write "60" or "60-70".', leaf, name)
        return None
    start = FROM.get((m["start"] or "").strip().casefold()) or counts_from
    return _packet_days(fields, leaf, int(m[1]), int(m[2] or m[1]), start, name)


def _low_high(fields: Fields, tree: Tree, counts_from: str | None) -> PacketDays | None:
    """Days as a map: {low: 60, high: 70, from: sowing}."""
    low, high = fields.text("low"), fields.text("high")
    written = [number for number in (low, high) if number is not None]
    if not written or not all(re.fullmatch(r"\d{1,4}", number) for number in written):
        fields.tell(Level.ERROR, 'These are no days. Write "low: 60" and "high: 70", or "days: 60-70".', tree)
        return None
    start = _counts_from(fields, "from") or counts_from
    return _packet_days(fields, tree, int(written[0]), int(written[-1]), start, None)


def _packet_days(
    fields: Fields, tree: Tree, low: int, high: int, counts_from: str | None, name: str | None
) -> PacketDays | None:
    """The days, if they can be."""
    if not 0 < low <= high <= 1500:
        message = (
            f"{low} to {high} days cannot be: the smaller number comes first, and both are from 1 to 1500."
        )
        fields.tell(Level.ERROR, message, tree, name)
        return None
    if counts_from is None:
        message = (
            'It is not said what the days count from; "from: sowing" is taken. Or write "from: planting out".'
        )
        fields.tell(Level.QUESTION, message, tree, name)
    at = Location(file=fields.file, line=tree.line, column=tree.column)
    return PacketDays(low=low, high=high, counts_from=counts_from or "sowing", at=at)


def _counts_from(fields: Fields, name: str) -> str | None:
    """What days count from."""
    leaf = fields.leaf(name)
    if leaf is None:
        return None
    word = " ".join(leaf.text.casefold().replace("-", " ").split())
    if word in FROM:
        return FROM[word]
    near = FROM.get(nearest(word, FROM) or "")
    fields.tell(
        Level.ERROR, f'"{leaf.text}" is not known here. Write "sowing" or "planting out".', leaf, name, near
    )
    return None


def _once(crops: list[CropSetting], problems: list[Problem]) -> Iterator[CropSetting]:
    """Each crop once: two keys may fold to one name ("pea" and "peas")."""
    seen: dict[tuple[str, ...], CropSetting] = {}
    for crop in crops:
        first = seen.setdefault(fold(crop.name) or (crop.name,), crop)
        if first is crop:
            yield crop
            continue
        message = f'"{crop.name}" is the same crop as "{first.name}" on line {first.at.line}. Only the first is used.'
        problems.append(Problem(at=crop.at, level=Level.ERROR, message=message, field=crop.name))
