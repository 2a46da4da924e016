"""Beds named without a preposition, and names that are both a bed and a crop.

Steps of the walk; places behind prepositions are in `places`.
"""

from __future__ import annotations

from leafmould.notes.entries import Named, Sureness
from leafmould.notes.parts import part_behind
from leafmould.notes.places import more_places
from leafmould.notes.short_places import take_short_place
from leafmould.notes.signs import is_arrow
from leafmould.notes.walk import Walk, add_place
from leafmould.notes.words import nouns
from leafmould.values.names import Kind, slug
from leafmould.values.problems import Level


def take_bed(walk: Walk) -> bool:
    """A place without a preposition: "Sowed Boltardy beetroot Long border", "weeded Arch"."""
    i = walk.past_articles(walk.i)
    size, known = walk.bed_at(i)
    if known is None:
        if (
            walk.word(i) == "bed"
            and walk.typed.is_number(i + 1)
            and (walk.word(i + 2) == "in" or walk.word(i + 2) not in nouns.UNITS)
            and walk.has("place")
            and not walk.draft.places
        ):
            return _undeclared_number(walk, i)
        is_bare = not (walk.draft.places or walk.draft.has_crop or walk.is_topic) and walk.has("bed")
        return is_bare and take_short_place(walk, walk.i, "at")
    if any(k.kind in (Kind.CROP, Kind.CROP_GROUP) for k in walk.typed.names(i)[1]) and not is_bed_not_crop(
        walk, i, size
    ):
        return False
    if (
        walk.verb.name == "moved"
        and not walk.draft.has_crop
        and not walk.draft.origins
        and not walk.is_topic
        and not walk.draft.everything
    ):
        walk.draft.origins.append(walk.named(known, i, i + size))
        walk.span("origin", i, i + size)
        walk.i = i + size
        return True
    role = "from" if is_arrow(walk.typed, i + size) else "at"  # "CF -> B2"
    add_place(walk, walk.named(known, i, i + size), role, i, i + size)
    walk.i = i + size
    part_behind(walk)
    more_places(walk, "at", walk.typed.words[i])
    return True


def _undeclared_number(walk: Walk, i: int) -> bool:

    written = walk.typed.written(i, i + 2)
    walk.draft.places.append(Named(key=slug(written), name=written, written=written, sureness=Sureness.NEW))
    walk.span("place", i, i + 2)
    walk.ask(Level.HINT, f'"{written}" is a new bed.', i)
    walk.i = i + 2
    return True


def is_bed_not_crop(walk: Walk, i: int, size: int) -> bool:
    """A name that is both: the bed alone behind a whole-bed verb, or where the crop is already named."""
    if walk.draft.has_crop and not walk.joined:
        return True
    if walk.draft.item.amounts or not walk.has("bed") or walk.draft.places:
        return False
    return not any(walk.typed.kind(j, Kind.BED)[0] for j in range(i + size, walk.end)) and not (
        walk.draft.has_crop or (walk.joined and not walk.after_comma)
    )
