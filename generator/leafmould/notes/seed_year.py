"""The year of seed: "sowed 2024 parsnip seed", "tested parsnip seed from 2019", "bought leek seed 2025".

Called while a clause is walked, where a year stands alone. Such a year is neither a count of seeds nor a day.
"""

from __future__ import annotations

import re

from leafmould.notes.walk import Walk

YEAR_ALONE = re.compile(r"(?:19|20)\d\d")
OF_SEED = frozenset({"tried seed", "sowed", "resowed", "started", "bought", "saved seed"})
"""Verbs beside which a year may be that of the seed."""
SEED_WORDS = frozenset({"seed", "seeds", "packet", "packets", "pack", "pkt", "pkts", "sachet"})
FAR = 6
"""So many words on, the seed may still be named: "2024 white lisbon onion seed"."""


def take_seed_year(walk: Walk, i: int, lead: int) -> bool:
    """A year beside the word for seed, at `lead`; `i` is where its "of" or "from" stands."""
    if walk.verb.name not in OF_SEED or not YEAR_ALONE.fullmatch(walk.word(lead)):
        return False
    year = int(walk.word(lead))
    if walk.draft.crop_year or (walk.base is not None and year > walk.base.last.year + 1):
        return False
    if not (_is_before_seed(walk, lead) or _is_behind_seed(walk, i)):
        return False
    walk.draft.crop_year = year
    walk.span("crop year", lead, lead + 1)
    walk.i = lead + 1
    return True


def _is_before_seed(walk: Walk, lead: int) -> bool:
    """Whether the seed is named soon, with no number between: "2024 parsnip seed"."""
    for j in range(lead + 1, min(lead + 1 + FAR, walk.end)):
        if walk.typed.breaks[j] or walk.typed.is_number(j):
            return False
        if walk.word(j) in SEED_WORDS:
            return True
    return False


def _is_behind_seed(walk: Walk, i: int) -> bool:
    """Whether the word for seed stands right before it, or the crop that is tried: "seed 2024", "tested parsnip 2019"."""
    return walk.word(i - 1) in SEED_WORDS or (
        walk.verb.name == "tried seed" and walk.draft.has_crop and i > 0
    )
