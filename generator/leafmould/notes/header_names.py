"""Names in a header - bed, crop, variety - to what the garden knows by them.

Works on the texts of `bed`, `crop` and `variety`. A name within one slip of a known one is a question;
any other unknown name is new.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from leafmould.notes.entries import Named, Sureness
from leafmould.notes.nearness import near_name
from leafmould.notes.tree import Leaf
from leafmould.values.names import Kind, Known, Vocabulary, fold, slug
from leafmould.values.problems import Level

UNKNOWN = re.compile(r"\?+|unknown|unnamed|not known|unlabelled|unlabeled", re.IGNORECASE)
QUOTED = re.compile(
    r"^(?P<before>[^'\"‘’“”]*?)\s*(?P<open>['\"‘’“„])(?P<name>.+)['\"’”](?P<after>[^'\"’”]*)$"
)
JOINS = re.compile(r"\s*(?:,|;|\+|&)\s*|\s+(?:and|und|et|y|e|en)\s+")
OR = re.compile(r"\s+(?:or|oder|ou|o)\s+")

Tell = Callable[[Level, str, Leaf, str | None], None]
"""Note a problem: level, message, where, suggestion."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Crops:
    """What one text of `crop` names."""

    crop: Named
    varieties: tuple[Named, ...] = ()


def read_bed(leaf: Leaf, vocabulary: Vocabulary, tell: Tell) -> tuple[tuple[Named, str | None], ...]:
    """Beds, each with the part written behind it: "Long border, north half"."""
    text = leaf.text.strip()
    if (known := _known(text, vocabulary, Kind.BED)) is not None:
        return ((known, None),)
    place, comma, part = (piece.strip() for piece in text.partition(","))
    if comma and part and (known := _known(place, vocabulary, Kind.BED)) is not None:
        pieces = [place, *filter(None, (piece.strip() for piece in part.split(",")))]
        beds = [_known(piece, vocabulary, Kind.BED) for piece in pieces]
        if not all(beds):
            return ((known, part),)
    if not leaf.is_quoted and (several := _several(text, vocabulary, Kind.BED)):
        return tuple((bed, None) for bed in several)
    return ((_unknown_bed(leaf, vocabulary, tell), None),)


def _unknown_bed(leaf: Leaf, vocabulary: Vocabulary, tell: Tell) -> Named:
    text = leaf.text.strip()
    near = near_name(vocabulary, fold(text), (Kind.BED,))
    if near is not None:
        tell(Level.QUESTION, f'No bed is called "{text}"; read as "{near.name}".', leaf, near.name)
        return Named(key=near.key, name=near.name, written=text, sureness=Sureness.DOUBTFUL)
    tell(Level.HINT, f'"{text}" is a new bed.', leaf, vocabulary.closest(text, Kind.BED))
    return Named(key=slug(text), name=text, written=text, sureness=Sureness.NEW)


def read_crop(leaf: Leaf, vocabulary: Vocabulary, tell: Tell) -> tuple[Crops, ...]:
    """Crops, each with the varieties written beside it: "beetroot 'Boltardy'"."""
    text = leaf.text.strip()
    if UNKNOWN.fullmatch(text):
        return (Crops(crop=_not_known(text)),)
    plain = text.rstrip("? ")
    is_doubtful = plain != text
    if (known := _known(plain, vocabulary, Kind.CROP, Kind.CROP_GROUP)) is not None:
        return (Crops(crop=_doubted(known, text) if is_doubtful else known),)
    if (m := QUOTED.match(text)) is not None and (beside := (m["before"] + m["after"]).strip()):
        crop = read_crop(Leaf(text=beside, line=leaf.line, column=leaf.column), vocabulary, tell)
        variety = _variety(m["name"], vocabulary, tuple(c.crop.key for c in crop), Sureness.KNOWN)
        return (Crops(crop=crop[0].crop, varieties=(variety,)), *crop[1:])
    if not leaf.is_quoted and (several := _several(plain, vocabulary, Kind.CROP, Kind.CROP_GROUP)):
        return tuple(Crops(crop=crop) for crop in several)
    return _crop_among_words(leaf, vocabulary, tell)


def _crop_among_words(leaf: Leaf, vocabulary: Vocabulary, tell: Tell) -> tuple[Crops, ...]:
    """A crop with unquoted words beside it, one slip from a known crop, or a new crop."""
    text = leaf.text.strip()
    words = text.split()
    for size in range(len(words) - 1, 0, -1):
        for crop, rest in ((words[:size], words[size:]), (words[-size:], words[:-size])):
            known = _known(" ".join(crop), vocabulary, Kind.CROP, Kind.CROP_GROUP)
            if known is None:
                continue
            beside = " ".join(rest)
            is_known = bool(vocabulary.exactly(beside, Kind.VARIETY))
            variety = _variety(
                beside, vocabulary, (known.key,), Sureness.KNOWN if is_known else Sureness.PERHAPS
            )
            if not is_known:
                tell(
                    Level.HINT,
                    f'"{beside}" is taken as a variety, perhaps; write it under "variety".',
                    leaf,
                    None,
                )
            return (Crops(crop=known, varieties=(variety,)),)
    near = near_name(vocabulary, fold(text), (Kind.CROP, Kind.CROP_GROUP))
    if near is not None:
        tell(Level.QUESTION, f'No crop is called "{text}"; read as "{near.name}".', leaf, near.name)
        crop_named = Named(key=near.key, name=near.name, written=text, sureness=Sureness.DOUBTFUL, of=near.of)
        return (Crops(crop=crop_named),)
    tell(Level.HINT, f'"{text}" is a crop not known here.', leaf, vocabulary.closest(text, Kind.CROP))
    key = slug(" ".join(fold(text)) or text)
    return (Crops(crop=Named(key=key, name=text, written=text, sureness=Sureness.NEW)),)


def read_variety(leaf: Leaf, vocabulary: Vocabulary, crops: Sequence[Named]) -> tuple[Named, ...]:
    """Varieties; "Krim or Cherokee" and "Krim?" are doubtful, "unknown" is its own value."""
    text = leaf.text.strip()
    if UNKNOWN.fullmatch(text):
        return (_not_known(text),)
    of = tuple(dict.fromkeys(key for crop in crops for key in crop.of or (crop.key,)))
    bare = text[1:-1].strip() if len(text) > 2 and text[0] in "'\"‘“„" and text[-1] in "'\"’”" else text
    if bare == text and (m := QUOTED.match(text)) is not None:
        bare = m["name"].strip()
    if vocabulary.exactly(bare, Kind.VARIETY):
        return (replace(_variety(bare, vocabulary, of, Sureness.KNOWN), written=text),)
    choices = [choice.strip("'\"‘’“” ") for choice in OR.split(bare)]
    if len(choices) > 1 and all(choices):
        return tuple(_variety(choice, vocabulary, of, Sureness.DOUBTFUL) for choice in choices)
    if bare.endswith("?"):
        return (_variety(bare.rstrip("? "), vocabulary, of, Sureness.DOUBTFUL),)
    return (replace(_variety(bare, vocabulary, of, Sureness.KNOWN), written=text),)


def _variety(text: str, vocabulary: Vocabulary, crops: tuple[str, ...], sureness: Sureness) -> Named:
    found = vocabulary.exactly(text, Kind.VARIETY)
    known = next((k for k in found if set(k.of) & set(crops)), found[0] if found else None)
    if known is None:
        return Named(key=text, name=text, written=text, sureness=sureness, of=crops)
    return Named(key=known.key, name=known.name, written=text, sureness=sureness, of=known.of)


def _known(text: str, vocabulary: Vocabulary, *kinds: Kind) -> Named | None:
    found = vocabulary.exactly(text, *kinds)
    return _named(found[0], text) if found else None


def _named(known: Known, written: str) -> Named:
    return Named(key=known.key, name=known.name, written=written, of=known.of)


def _several(text: str, vocabulary: Vocabulary, *kinds: Kind) -> list[Named]:
    """The parts of "peas and beans", if each is known."""
    pieces = [piece for piece in JOINS.split(text) if piece]
    found = [named for piece in pieces if (named := _known(piece, vocabulary, *kinds)) is not None]
    return found if len(found) == len(pieces) > 1 else []


def _not_known(written: str) -> Named:
    return Named(key="unknown", name="unknown", written=written, sureness=Sureness.UNKNOWN)


def _doubted(named: Named, written: str) -> Named:
    return Named(key=named.key, name=named.name, written=written, sureness=Sureness.DOUBTFUL, of=named.of)
