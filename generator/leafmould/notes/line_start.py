"""A day that opens a line: "12 June: picked peas", "Tuesday weeded Arch".

Runs before the verbs of a line are looked for.
"""

from __future__ import annotations

import re
from dataclasses import replace

from leafmould.notes.day_words import DAY_STARTS, is_fraction, set_date
from leafmould.notes.draft import Draft
from leafmould.notes.one_line import OneLine
from leafmould.notes.words import nouns
from leafmould.notes.words.verbs import LONGEST_PAST
from leafmould.values.day_phrases import day_of_month, scan_day


def open_line(line: OneLine) -> int:
    """A date at the start: "12 June: …", "Tuesday …". The first word behind it."""
    typed = line.typed
    word = typed.words[0]
    lead = 1 if word in ("on", "the") and typed.count > 1 else 0
    if not (typed.words[lead] in DAY_STARTS or typed.plain[typed.starts[lead]].isdigit()):
        return 0
    plain = typed.plain
    if is_fraction(typed, lead):
        return 0
    if typed.count > 2 and typed.gaps[1] == "." and typed.words[2] in LONGEST_PAST:
        plain = DOTTED_DAY.sub(r"\1/\2", plain, count=1)
    found = scan_day(plain, typed.starts[lead])
    if found is None and typed.count > 2 and typed.words[lead].isdigit() and (lead or typed.breaks[2]):
        found = day_of_month(plain, typed.starts[lead])
    if found is None or typed.names(lead)[0] or (typed.breaks[lead] and lead):
        return 0
    words, stop = found
    end = lead
    while end < typed.count and typed.starts[end] < stop:
        end += 1
    if typed.words[end : end + 1] == ["weekend"] and not words.is_bare:
        words, end = replace(words, is_weekend=True), end + 1
    if lead == 0 and typed.gaps[1] == "/" and end < typed.count and nouns.UNITS.get(typed.words[end]):
        return 0  # "1/2 kg spinach"
    if words.is_bare and end < typed.count and not typed.breaks[end] and words.third is None:
        return 0
    walk = line.walk(typed, Draft(), "noted weather")
    walk.end = typed.count
    set_date(walk, words, 0, end)
    line.opening, line.asked = walk.draft, list(walk.draft.asked)
    return end


DOTTED_DAY = re.compile(r"^(\s*\d{1,2})\.(\d{1,2})(?!\d)")
""" "20.06 picked peas": at the start of a line a day."""
