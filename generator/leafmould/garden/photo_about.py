"""What a picture is of: the beds and crops its caption or name tells, else those of its note.

A note may tell of a whole session; a picture in it is said to be of a bed or crop only where that is told, or
where there are so few that it can be no other.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from leafmould.garden.indexes import Indexes
from leafmould.garden.model import Garden
from leafmould.notes.entries import Entry
from leafmould.values.names import Kind, Known, Vocabulary, fold

FEW = 2
"""So many beds or crops of a note may all be on one picture."""

Keys = tuple[str, ...]


class About:
    """Finds what pictures of one garden are of."""

    def __init__(self, garden: Garden, vocabulary: Vocabulary) -> None:
        """Take the assembled garden and the names its notes were read with."""
        self._garden = garden
        self._vocabulary = vocabulary
        self._indexes = Indexes(garden)

    def of(self, entry: Entry, words: str) -> tuple[Keys, Keys]:
        """The beds and crops on a picture.

        Args:
            words: its caption and its name.
        """
        beds, crops = self._named(words)
        pairs = [(e.beds, e.crops) for e in self._indexes.events_by_entry.get(entry.id, ())]
        if crops and not beds:
            beds = _few(bed for where, what in pairs if set(what) & set(crops) for bed in where)
        if beds and not crops:
            crops = _few(crop for where, what in pairs if set(where) & set(beds) for crop in what)
        if beds or crops:
            return beds, crops
        said = tuple(named.key for named in entry.beds if named.key in self._garden.beds)
        touched, grown = self._indexes.touched(entry)
        return said or _few(touched), _few(grown)

    def tells(self, entry: Entry, words: str) -> bool:
        """Whether a picture's name tells a bed or crop that the note is about."""
        beds, crops = self._named(words)
        touched, grown = self._indexes.touched(entry)
        return bool(set(beds) & set(touched) or set(crops) & set(grown))

    def is_told_by(self, words: str, entry: Entry) -> bool:
        """Whether the words say nothing but the beds and crops a picture of the note would be said to be of."""
        beds, crops = self.of(entry, words)
        names = {self._garden.beds[bed].name for bed in beds} | {
            self._garden.crops[crop].name for crop in crops
        }
        told = {word for name in names for word in fold(name)}
        return set(fold(words)) <= told

    def _named(self, text: str) -> tuple[Keys, Keys]:
        """The beds and crops of this garden that a text names, in order."""
        words = fold(text)
        beds: dict[str, None] = {}
        crops: dict[str, None] = {}
        start = 0
        while start < len(words):
            size, meant = self._vocabulary.at(
                words, start, Kind.BED, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY
            )
            if size:
                beds.update(dict.fromkeys(k.key for k in meant if k.key in self._garden.beds))
                crops.update(dict.fromkeys(filter(None, map(self._crop, meant))))
            start += size or 1
        return tuple(beds), tuple(crops)

    def _crop(self, known: Known) -> str | None:
        """The one crop of the garden that is meant."""
        if known.kind is Kind.BED:
            return None
        if known.kind is not Kind.VARIETY and known.key in self._garden.crops:
            return known.key
        grown = [crop for crop in known.of if crop in self._garden.crops]
        return grown[0] if len(grown) == 1 else None


def _few(keys: Iterable[str]) -> Keys:
    found: Sequence[str] = list(dict.fromkeys(keys))
    return tuple(found) if len(found) <= FEW else ()
