"""The seed tin: which crop each row of records/seeds.csv means, and which rows a build may show.

Rows are matched by everyday names as notes are; a name in no table stays a crop of its own. Rows go through
`visible` like everything else.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from leafmould.facts.tables import crops
from leafmould.garden.view import View, masker
from leafmould.garden.vocabulary import names_of_crops, own_crop_keys
from leafmould.notes.setting_values import KeptSeed, Settings
from leafmould.values.names import FRACTIONS, WORD, Kind, Vocabulary, fold, slug
from leafmould.values.problems import Level, Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class TinRow:
    """A row of the table with the crop it means."""

    crop: str  # crop key
    row: KeptSeed


def tin_rows(settings: Settings) -> tuple[TinRow, ...]:
    """The rows of the tin by crop key, in the order of the table."""
    own = own_crop_keys(settings, crops())
    keys = names_of_crops(crops()) | {
        fold(name): own[crop.name] for crop in settings.crops for name in (crop.name, *crop.also)
    }
    return tuple(TinRow(crop=keys.get(fold(row.crop)) or slug(row.crop), row=row) for row in settings.seeds)


def unknown_seeds(seeds: Iterable[KeptSeed], vocabulary: Vocabulary) -> Iterator[Problem]:
    """A question for each crop of the tin that is one slip away from a known one."""
    for row in seeds:
        if vocabulary.exactly(row.crop, Kind.CROP, Kind.CROP_GROUP):
            continue
        near = vocabulary.closest(row.crop, Kind.CROP)
        message = f'no crop is called "{row.crop}"; it is taken as a crop of its own.'
        level = Level.QUESTION if near else Level.HINT
        yield Problem(at=row.at, level=level, message=message, field="crop", suggestion=near)


def shown_seeds(seeds: Iterable[KeptSeed], view: View) -> tuple[KeptSeed, ...]:
    """The rows a public build may show, without sellers and prices unless they are opened.

    A remark may name both, so it needs both; rows of hidden crops and years go as a whole.
    """
    if "seeds" in view.leave_out:
        return ()
    return tuple(_shown(row, view) for row in seeds if not _is_hidden(row, view))


def _is_hidden(row: KeptSeed, view: View) -> bool:
    """Whether a row names anything that is left out, in whatever column."""
    told = (row.crop, row.variety or "", row.amount, row.source or "", row.note)
    hidden = (view.bed_names, view.other_names, view.disguise)
    is_named = any(names.are_in(text) for text in told for names in hidden)
    return (
        is_named
        or row.year in view.years
        or _counted_in(row) in view.years
        or row.tried_year in view.years
        or slug(row.crop) in view.crops
    )


def _counted_in(row: KeptSeed) -> int | None:
    return row.counted.year if row.counted else None


AMOUNT_WORDS = frozenset(
    [
        "a",
        "about",
        "all",
        "an",
        "and",
        "another",
        "bag",
        "box",
        "ca",
        "could",
        "enough",
        "envelope",
        "few",
        "for",
        "full",
        "g",
        "gram",
        "half",
        "handful",
        "in",
        "is",
        "it",
        "jar",
        "jars",
        "kg",
        "left",
        "less",
        "lot",
        "lots",
        "many",
        "more",
        "most",
        "much",
        "no",
        "nothing",
        "of",
        "one",
        "only",
        "oz",
        "pack",
        "packet",
        "packets",
        "packs",
        "part",
        "pinch",
        "plenty",
        "pot",
        "quarter",
        "rest",
        "seed",
        "seeds",
        "small",
        "some",
        "still",
        "the",
        "there",
        "three",
        "tin",
        "tiny",
        "two",
        "unopened",
        "open",
        "opened",
        "used",
        "year",
        "years",
    ]
)
"""Words of an amount that name nobody."""


def _is_plain(amount: str) -> bool:
    """Whether an amount holds nothing but figures and such words: a table's cell may say whose seed it was."""
    words = (found.group().casefold() for found in WORD.finditer(amount))
    return all(word.isdecimal() or word in AMOUNT_WORDS or word in FRACTIONS for word in words)


def _shown(row: KeptSeed, view: View) -> KeptSeed:
    mask = masker(view.words)
    is_all_open = view.shows_people and view.shows_prices and "notes" not in view.leave_out
    return replace(
        row,
        crop=mask(row.crop),
        variety=row.variety and mask(row.variety),
        amount=mask(row.amount) if view.shows_people or _is_plain(row.amount) else "",
        source=mask(row.source) if row.source and view.shows_people else None,
        price=row.price if view.shows_prices else None,
        note=mask(row.note) if is_all_open else "",
    )
