"""How strong a feed or spray was mixed: "20 ml to 5 litres", "1 capful per can".

Asked by `whole_amounts` for what is put on in water; such a rate is no amount of the whole.
"""

from __future__ import annotations

import re

from leafmould.notes.amounts import Read
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.values.names import fold_word
from leafmould.values.quantities import Amount

POURED = frozenset({"fed", "treated", "watered", "released"})
MIXED = re.compile(
    r"(?P<number>\d{1,4}(?:[.,]\d{1,3})?|an?|one|two|three|half an?)\s?(?P<unit>[^\W\d_]+)\s?(?:/|to|per|in|into)\s?"
    r"(?:an?\s|the\s|each\s|every\s)?(?:(?:big|large|full|small|watering)\s)?(?P<of>\d{1,4}(?:[.,]\d{1,3})?)?\s?"
    r"(?P<in>l|litres?|liters?|ltrs?|ml|gallons?|gals?|pints?|quarts?|cans?|buckets?|tanks?|sprayers?)(?!\w)",
    re.IGNORECASE,
)
WORDS = {"a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "half a": 0.5, "half an": 0.5}
SPOONS = nouns.VOLUMES | nouns.WEIGHTS
LITTLE = frozenset({"capful", "cap", "spoonful", "teaspoonful", "tablespoonful", "dessertspoon", "handful", "cupful", "scoop", "dose", "squirt", "drop", "sachet", "splash", "glug"})  # fmt: skip


def mixed_rate(walk: Walk, i: int) -> Read | None:
    """The rate that begins at word `i`, if one does."""
    if walk.verb.name not in POURED:
        return None
    m = MIXED.match(walk.typed.plain, walk.typed.starts[i])
    if m is None:
        return None
    word = fold_word(m["unit"])
    unit = nouns.UNITS.get(word, word)
    if unit not in SPOONS and word not in LITTLE:
        return None
    many = WORDS.get(m["number"].lower()) or float(m["number"].replace(",", "."))
    of = float((m["of"] or "1").replace(",", ".")) or 1.0
    into = nouns.UNITS.get(fold_word(m["in"]), fold_word(m["in"]))
    end = i
    while end < walk.end and walk.typed.starts[end] < m.end():
        end += 1
    amount = Amount(written=walk.typed.written(i, end), low=many / of, high=many / of, unit=f"{unit}/{into}")
    return Read(amount, end, True)
