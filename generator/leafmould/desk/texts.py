"""The texts of a new garden's files, and names in them written so that nothing can break them."""

from __future__ import annotations

import re

PLAIN = re.compile(r"[^\W\d_][^\W_]*(?: [^\W_]+)*")
"""Words of letters and digits need no quotes in a header or in garden.yaml."""

SETTINGS_TEXT = """\
# The garden. Change anything; only the name is needed. A line that begins with # is not read.
garden: {name}

# Degrees north, with a minus sign in the south. Tells summer from winter; never published.
{place}

# The average last frost of spring and first frost of autumn.
{frost}

# Sums are shown in these units, metric or imperial. What you write keeps its own.
units: {units}

# How 3/4/2026 is read: "day first" or "month first". Until this is said, such dates are asked about.
# dates: day first

# How many people the garden feeds.
# people: 4

# Where things grow. Also possible: also (other names), kind (container, row, tree, shrub, cane row, vine,
# mound, under glass), size, parts, sun, private. A bed that only a note names is added by itself.
#   - {{name: Bag row, also: [bags], kind: container, sun: full, parts: [left, right]}}
{beds}
"""

STANDING_TEXT = """\
---
{head}
title: What stood here when the notes began
work:
{work}
---
Put down at the start, with the date as near as it was known. Change it above when you know better.
"""


def quoted(text: str) -> str:
    """A text as a YAML value: plain where that is safe, else in double quotes with escapes."""
    if PLAIN.fullmatch(text):
        return text
    return '"' + "".join(map(_escaped, text)) + '"'


def _escaped(letter: str) -> str:
    if letter in '"\\':
        return "\\" + letter
    number = ord(letter)
    if number < 0x20 or 0x7F <= number <= 0xA0 or number in (0x2028, 0x2029, 0xFEFF):
        return f"\\u{number:04x}"
    return letter
