"""What was given to plants and to beds: shade, a shake, the compost out of its bin. Asked by `senses`."""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.typed import Typed
from leafmould.notes.words.prepositions import ARTICLES
from leafmould.values.names import Kind

SHADES = frozenset({"shade", "fleece", "cloche", "mesh", "shading"})
SOMETHING = frozenset({"a", "an", "some", "another", "their", "its", "more", "plenty"})


def _past_crop(typed: Typed, clause: Clause) -> int:
    """The word behind a crop that stands right behind the verb; 0 if none does."""
    i = clause.verb_end
    while i < clause.end and typed.words[i] in ARTICLES:
        i += 1
    size = typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] if i < clause.end else 0
    return i + size if size and i + size < clause.end and not typed.breaks[i + size] else 0


def is_shade_given(typed: Typed, clause: Clause) -> bool:
    """ "gave the cucumbers some shade"."""
    behind = _past_crop(typed, clause)
    return behind > 0 and not SHADES.isdisjoint(typed.words[behind : min(behind + 4, clause.end)])


def is_plants_given(typed: Typed, clause: Clause) -> bool:
    """ "gave the peas a shake": nothing was given away; but "gave the peas a feed" has its own meaning."""
    behind = _past_crop(typed, clause)
    if not behind or typed.words[behind] not in SOMETHING or behind + 1 >= clause.end:
        return False
    return typed.words[behind + 1] in GIVEN


GIVEN = frozenset({"shake", "tidy", "wash", "brush", "talking", "check", "space", "chance", "break", "week", "rest", "turn", "sun", "air"})  # fmt: skip


def is_compost_onto(typed: Typed, clause: Clause) -> bool:
    """ "emptied the compost bin onto Bed 2"."""
    words = typed.words[clause.verb_end : clause.end]
    at = next((k for k, w in enumerate(words) if w in ("onto", "on", "over")), 0)
    is_stuff = not {"compost", "leafmould", "wormery"}.isdisjoint(words[:at])
    spots = range(clause.verb_end + at + 1, min(clause.verb_end + at + 4, clause.end))
    return bool(at) and is_stuff and any(typed.kind(i, Kind.BED)[0] for i in spots)
