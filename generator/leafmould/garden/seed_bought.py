"""Whether what was bought is seed, and no plants.

Asked when plants are raised, when the seed tin is told, and when what is of seeds is left out.
"""

from __future__ import annotations

import re

from leafmould.notes.entries import Action

SEED_UNITS = frozenset({"packet", "seed"})


def is_seed_bought(action: Action) -> bool:
    """Whether the action is the buying of seed: counted in packets or seeds, of a year, or called so."""
    if action.verb != "bought":
        return False
    counted = any(amount.unit in SEED_UNITS for amount in action.amounts)
    return counted or action.crop_year is not None or _is_called_seed(action)


def _is_called_seed(action: Action) -> bool:
    """ "bought parsnip seed": the word stands right behind every crop that is named."""
    return bool(action.crops) and all(
        re.search(rf"{re.escape(crop.written)}\s+seeds?\b", action.text, re.IGNORECASE)
        for crop in action.crops
    )
