"""A garden's pictures by what they are of: note, bed and season, crop, season, planting.

Each index is made once, when it is first asked for, in the order of days. A picture that cannot be shown has
its place with its note, and no other.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property

from leafmould.garden.indexes import K, grouped
from leafmould.garden.model import Photo, Planting
from leafmould.garden.queries import Past


class Album:
    """The pictures of one garden."""

    def __init__(self, past: Past) -> None:
        """Take the garden's past; nothing is sorted yet."""
        self._past = past
        self._shown = [photo for photo in past.garden.photos if photo.sizes]

    @cached_property
    def by_note(self) -> Mapping[str, Sequence[Photo]]:
        """Pictures by the entry they belong to, as they stand there; those that cannot be shown too."""
        return grouped((photo.entry, photo) for photo in self._past.garden.photos)

    @cached_property
    def by_bed_year(self) -> Mapping[tuple[str, int], Sequence[Photo]]:
        """Pictures by bed and season."""
        return _distinct(((bed, year), photo) for year, photo in self._dated() for bed in photo.beds)

    @cached_property
    def by_crop(self) -> Mapping[str, Sequence[Photo]]:
        """Pictures by crop."""
        return _distinct((crop, photo) for photo in self._shown for crop in photo.crops)

    @cached_property
    def by_year(self) -> Mapping[int, Sequence[Photo]]:
        """Pictures by season."""
        return _distinct(self._dated())

    @cached_property
    def by_planting(self) -> Mapping[str, Sequence[Photo]]:
        """Pictures by planting, as far as it is sure which one they show."""
        return _distinct((p.id, photo) for photo in self._shown for p in self._plantings(photo))

    @cached_property
    def in_notes(self) -> Mapping[str, Photo]:
        """The pictures that notes show, by what names their files; the first of each."""
        notes = self._past.garden.entry_by_id
        return {photo.key or photo.path: photo for photo in reversed(self._shown) if photo.entry in notes}

    def _dated(self) -> Iterator[tuple[int, Photo]]:
        return ((self._past.year_of(photo.when.first), photo) for photo in self._shown if photo.when)

    def _plantings(self, photo: Photo) -> list[Planting]:
        """The plantings of the crops on a picture: those its note tells of, else those standing there that day."""
        if not photo.crops:
            return []
        by_id = self._past.garden.planting_by_id
        events = self._past.events_by_entry.get(photo.entry, ())
        told = [by_id[key] for event in events for key in event.plantings if key in by_id]
        if found := _of_crops(told, photo):
            return found
        day = photo.when.day if photo.when else None
        if day is None:
            return []
        return _of_crops([p for bed in photo.beds for p in self._past.in_the_ground(day, bed)], photo)


def spread(photos: Sequence[Photo], most: int) -> list[Photo]:
    """So many of them at most, from the whole of their time, the first and the last among them."""
    if len(photos) <= most:
        return list(photos)
    return [photos[round(place * (len(photos) - 1) / (most - 1))] for place in range(most)]


def _of_crops(plantings: Iterable[Planting], photo: Photo) -> list[Planting]:
    beds, crops = set(photo.beds), set(photo.crops)
    unique = {p.id: p for p in plantings if crops.intersection(p.crops)}
    return [p for p in unique.values() if not beds or beds.intersection(p.beds)]


def _distinct(pairs: Iterable[tuple[K, Photo]]) -> Mapping[K, Sequence[Photo]]:
    """Grouped, the very same picture once in each group."""
    once = {(key, photo.key or photo.path): (key, photo) for key, photo in pairs}
    return grouped(once.values())
