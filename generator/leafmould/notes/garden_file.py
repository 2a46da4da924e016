"""garden.yaml to Settings: the garden's own facts, habits and beds.

The first file of a run. One bad value costs one sentence and leaves its default; a file in which no
"key: value" can be found at all is refused whole.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any
from urllib.parse import urlsplit

from leafmould.notes.amounts import read_amount
from leafmould.notes.bed_settings import Ways, read_beds
from leafmould.notes.cover_settings import read_cover
from leafmould.notes.fields import Fields, is_blank, nearest
from leafmould.notes.frost_settings import in_order, read_frosts
from leafmould.notes.left_out import is_leave_out, is_private_words, words_to_blank, words_to_leave_out
from leafmould.notes.measures import read_degrees, read_length
from leafmould.notes.mending import read_tree
from leafmould.notes.plan_settings import PLAN_KEYS, read_plan
from leafmould.notes.setting_values import BedSetting, Settings
from leafmould.notes.text import Text
from leafmould.notes.tree import Branch, Key, Leaf
from leafmould.notes.typed import Typed
from leafmould.notes.words.verbs import PAST, PLAIN, VERBS
from leafmould.values.names import Vocabulary, fold
from leafmould.values.problems import Level, UnreadableGarden, in_file_order
from leafmould.values.quantities import Amount

GARDEN_FILE = "garden.yaml"

KEYS = (
    "garden", "name", "address", "place", "frost", "normals", "units", "decimal", "dates", "people", "measures", "words",
    "cover", "covers", "show", "leave out", "private words", "photo widths", "beds",
    *PLAN_KEYS,
)  # fmt: skip

PLACE = ("latitude", "longitude", "elevation")

HIDEABLE = ("people", "prices", "plan", "notes", "photos", "seeds", "larder", "soil", "animals", "weather")
"""What is shown or left out by a word; beds, crops and years by their names."""


def read_garden_file(text: Text) -> Settings:
    """The settings of garden.yaml, without crops.yaml and the years beforehand.

    Raises:
        UnreadableGarden: no "key: value" stands in it, though something does.
    """
    mended = read_tree(text.text, GARDEN_FILE)
    if not isinstance(mended.tree, Branch):
        if mended.tree is None and not mended.problems and not text.problems:
            return Settings()
        raise UnreadableGarden(
            f'{GARDEN_FILE} cannot be read: "key: value" lines such as "garden: Tansy Hill" are expected.'
        )
    problems = [*text.problems, *mended.problems]
    fields = Fields(mended.tree, GARDEN_FILE, problems)
    if all(isinstance(key.value, Leaf) and key.value.is_refused for key in mended.tree.keys):
        raise UnreadableGarden(f"{GARDEN_FILE} cannot be read: {problems[0].message}")
    values: dict[str, Any] = {}
    for read in READERS:
        values |= {name: value for name, value in read(fields).items() if value is not None}
    _without_crossed_frosts(fields, values)
    _unknown_keys(fields)
    return Settings(**values, problems=in_file_order(problems))


def _without_crossed_frosts(fields: Fields, values: dict[str, Any]) -> None:
    """Take out frosts that make no season."""
    last, first = values.get("last_frost"), values.get("first_frost")
    is_southern = (values.get("latitude") or 0) < 0
    if last and first and not in_order(fields, last, first, is_southern=is_southern):
        for name in ("last_frost", "first_frost", "last_chances", "first_chances"):
            values.pop(name, None)


def _plain_facts(fields: Fields) -> dict[str, object]:
    """Name, habits and the like: one value each."""
    return {
        "name": fields.text("garden", "name"),
        "address": _web_address(fields),
        "units": fields.choice(("metric", "imperial"), "units"),
        "decimal": fields.choice(("point", "comma"), "decimal"),
        "dates": fields.choice(("day first", "month first"), "dates"),
        "private_words": words_to_blank(fields),
    }


def _web_address(fields: Fields) -> str | None:
    """Where the site is put online, ending in a slash."""
    leaf = fields.leaf("address")
    if leaf is None:
        return None
    text = leaf.text.strip()
    try:
        parts = urlsplit(text)
        is_sound = parts.scheme.lower() in ("http", "https") and bool(parts.hostname) and not parts.username
    except ValueError:
        is_sound = False
    if not is_sound or any(c.isspace() or c in '<>"' for c in text) or parts.query or parts.fragment:
        message = f'"{leaf.text}" is no address of a site. Write it such as "https://example.org/garden/".'
        fields.tell(Level.ERROR, message, leaf, "address")
        return None
    return text if text.endswith("/") else f"{text}/"


def _place(fields: Fields) -> dict[str, object]:
    """Where the garden lies."""
    place = fields.branch_of("place")
    if place is None:
        return {}
    for key in place.unused(PLACE):
        near = nearest(key.name, PLACE)
        said = f'"{key.written}" is not used here.'
        if key.written.isdecimal():
            said = f'"{key.written}" stands alone behind a comma. Write degrees with a point, such as 46.5.'
        place.tell(Level.WARNING, said, key, key.name, near)
    return {
        "latitude": _degrees(place, "latitude", 90),
        "longitude": _degrees(place, "longitude", 180),
        "elevation_m": _elevation(place),
        "place_written": tuple(place.text(name) or "" for name in PLACE),
    }


def _degrees(place: Fields, name: str, most: float) -> float | None:
    leaf = place.leaf(name)
    if leaf is None:
        return None
    degrees = read_degrees(leaf.text)
    if degrees is None or abs(degrees) > most:
        message = f'"{leaf.text}" is no {name}. Write degrees from -{most:.0f} to {most:.0f}, such as 46.5.'
        place.tell(Level.ERROR, message, leaf, name)
        return None
    return degrees


def _elevation(place: Fields) -> float | None:
    leaf = place.leaf("elevation")
    if leaf is None:
        return None
    metres = read_length(leaf.text)
    if metres is None or not -450 <= metres <= 9000:
        message = f'"{leaf.text}" is no height above the sea. Write it such as "620 m" or "2000 ft".'
        place.tell(Level.ERROR, message, leaf, "elevation")
        return None
    return metres


def _people(fields: Fields) -> dict[str, object]:
    """Whom the garden feeds."""
    leaf = fields.leaf("people")
    if leaf is None:
        return {}
    if not re.fullmatch(r"[1-9]\d{0,4}", leaf.text.strip()):
        fields.tell(
            Level.ERROR, f'"{leaf.text}" is no number of people. Write a whole number.', leaf, "people"
        )
        return {}
    return {"people": int(leaf.text)}


def _measures(fields: Fields) -> dict[str, object]:
    """What the gardener's own measures weigh."""
    measures = fields.branch_of("measures")
    if measures is None:
        return {}
    decimal = fields.text("decimal")
    found: list[tuple[str, Amount]] = []
    for key in measures.by_name.values():
        leaf = measures.leaf(key.name)
        amount = whole_amount(leaf.text, decimal) if leaf else None
        if leaf and (amount is None or not amount.grams):
            message = f'"{leaf.text}" is no weight. Write it such as "400 g" or "7 kg".'
            measures.tell(Level.ERROR, message, leaf, key.name)
        elif amount:
            found.append((key.written.strip(), amount))
    return {"measures": tuple(found)}


def whole_amount(text: str, decimal: str | None, vocabulary: Vocabulary | None = None) -> Amount | None:
    """A text that is an amount and nothing else."""
    typed = Typed(text.strip(), vocabulary or NO_NAMES)
    if not typed.count:
        return None
    read = read_amount(typed, 0, decimal)
    return read.amount if read and read.end >= typed.count and not read.is_bare_word else None


NO_NAMES = Vocabulary([])


def _words(fields: Fields) -> dict[str, object]:
    """Own words and codes for actions."""
    words = fields.branch_of("words")
    if words is None:
        return {}
    found: list[tuple[str, str]] = []
    for key in words.by_name.values():
        leaf = words.leaf(key.name)
        if leaf is None:
            continue
        if (verb := verb_named(leaf.text)) is not None:
            found.append((key.written.strip(), verb))
            continue
        near = nearest(leaf.text.casefold(), [*VERBS, *(" ".join(form) for form in PAST)])
        message = f'"{leaf.text}" is no action known here, so "{key.written}" is not read as one.'
        words.tell(Level.ERROR, message, leaf, key.name, near)
    return {"words": tuple(found)}


def verb_named(text: str) -> str | None:
    """The action a word stands for: by its name, or by any form with one meaning."""
    words = fold(text)
    meant = PAST.get(words, ())
    by_name = {fold(name): name for name in VERBS}
    return by_name.get(words) or (meant[0] if len(meant) == 1 else None) or PLAIN.get(words)


def _shown(fields: Fields) -> dict[str, object]:
    """What a public build opens or leaves out beyond its habit."""
    return {"show": _to_show(fields), "leave_out": _to_leave_out(fields)}


def _subject(text: str) -> tuple[str | None, str | None]:
    """The part of a site a word names, or else the one that is near it."""
    part = {fold(part): part for part in HIDEABLE}.get(fold(text))
    return part, None if part or len(text) < 4 else nearest(text.casefold(), HIDEABLE)


def _to_show(fields: Fields) -> tuple[str, ...]:
    """What is opened; a misspelt part is never shown as meant."""
    found: list[str] = []
    for leaf in fields.leaves("show", split=True):
        text = leaf.text.strip()
        part, near = _subject(text)
        if near is not None:
            fields.tell(Level.ERROR, f'"{text}" is nothing that can be shown.', leaf, "show", near)
        else:
            found.append(part or text)
    return tuple(dict.fromkeys(found))


def _to_leave_out(fields: Fields) -> tuple[str, ...]:
    """Names of parts, beds, crops and years; a misspelt part is left out as meant too."""
    found: list[str] = []
    for text in words_to_leave_out(fields):
        part, near = _subject(text)
        if near is not None:
            message = f'"{text}" is left out as a name, and as "{near}" too, to be safe.'
            at = fields.key("leave out") or fields.branch
            fields.tell(Level.WARNING, message, at, "leave out", near)
            found.append(near)
        found.append(part or text)
    return tuple(dict.fromkeys(found))


def _photo_widths(fields: Fields) -> dict[str, object]:
    """Widths photos are made in, smallest first."""
    found = set()
    for leaf in fields.leaves("photo widths", split=True):
        if re.fullmatch(r"\d{2,4}", leaf.text.strip()) and 16 <= int(leaf.text) <= 8000:
            found.add(int(leaf.text))
        else:
            message = f'"{leaf.text}" is no width in dots from 16 to 8000.'
            fields.tell(Level.ERROR, message, leaf, "photo widths")
    return {"photo_widths": tuple(sorted(found)) or None}


def _beds(fields: Fields) -> dict[str, object]:
    """The beds."""
    key = fields.key("beds")
    if key is None or is_blank(key.value):
        return {}
    ways = Ways(units=fields.text("units") or "metric", order=fields.text("dates"))
    beds = read_beds(key, GARDEN_FILE, fields.problems, ways)
    return {"beds": (*beds, *_private_elsewhere(fields, key, beds, ways))}


def _private_elsewhere(
    fields: Fields, used: Key, beds: tuple[BedSetting, ...], ways: Ways
) -> Iterator[BedSetting]:
    """Private beds under a second `beds`, of which nothing else is used."""
    taken = {fold(bed.name) for bed in beds}
    for key in fields.branch.keys:
        if key is not used and not is_blank(key.value) and key.name in ("beds", "bed"):
            for bed in read_beds(key, GARDEN_FILE, [], ways):
                if bed.is_private and fold(bed.name) not in taken:
                    taken.add(fold(bed.name))
                    yield bed


def _unknown_keys(fields: Fields) -> None:
    """Keys that mean nothing here, with the nearest that does."""
    for key in fields.unused(KEYS):
        if is_leave_out(key.name) or is_private_words(key.name):
            continue
        near = nearest(key.name, KEYS)
        level = Level.WARNING if near else Level.HINT
        fields.tell(level, f'"{key.written}" is not used here.', key, key.name, near)


READERS = (
    _plain_facts,
    _place,
    read_frosts,
    read_cover,
    _people,
    _measures,
    _words,
    _shown,
    _photo_widths,
    _beds,
    read_plan,
)
