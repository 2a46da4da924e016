"""Lessons by the crops their own words name, for the pages of crops.

A note of a long day is about ten crops, and its lesson about one of them. A lesson that names no crop at all stays
with all of its note.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from leafmould.pages.doings import entry_day
from leafmould.pages.ledger import Ledger
from leafmould.pages.mentions import Mentions
from leafmould.pages.page import Lesson


def lessons_by_crop(ledger: Ledger, mentions: Mentions) -> Mapping[str, Sequence[Lesson]]:
    """Every lesson under each crop it is about, newest first."""
    crop_of = {page: crop for crop, page in ledger.crop_pages.items()}
    found: defaultdict[str, list[Lesson]] = defaultdict(list)
    for entry in ledger.lessons():
        for text in entry.lesson:
            pages = (to.partition("#")[0] for _, to in mentions.pieces(text))
            named = dict.fromkeys(crop_of[page] for page in pages if page in crop_of)
            for crop in named or ledger.touched(entry)[1]:
                found[crop].append(Lesson(text=text, on=entry_day(entry, ledger)))
    return found
