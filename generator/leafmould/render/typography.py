"""Text as it is set: curly quotes, numbers that keep to their units, short words that are not broken at their hyphen.

Only what is read is set so; what machines read (addresses, values, the data files) stays as it was written. Each sign
takes the place of one other, so that a set text can be cut where the written one is.
"""

from __future__ import annotations

import re
from functools import lru_cache

from markupsafe import escape

UNITS = "kg|g|m²|mm|cm|m|ml|cl|dl|l|oz|lb|ft|°C|°F|%"
NUMBER = re.compile(rf"(?<=[\d½¼¾]) (?=(?:{UNITS})(?![\w²]))")
OPENING = re.compile(r"(?:(?<=[\s(\[–—/-])|^)(['\"])(?=\w)")
APOSTROPHE = re.compile(r"(?<=[^\W\d])'|(?<=[.,;:!?)])'|(?<=[\d])'(?=s\b)")
CLOSING = re.compile(r'(?<=[^\s\d])"')
HYPHENED = re.compile(r"(?<![\w-])(?:[^\W\d_]{1,8}-[^\W\d_]{1,3}|[^\W\d_]{1,3}-[^\W\d_]{1,8})(?![\w-])")
OPEN = {"'": "‘", '"': "“"}


def set_text(text: str) -> str:
    """A text with curly quotes and numbers that keep to their units, sign for sign as long as it was."""
    if "'" in text or '"' in text:
        text = OPENING.sub(lambda m: OPEN[m[1]], text)
        text = CLOSING.sub("”", APOSTROPHE.sub("’", text))
    return NUMBER.sub("\u00a0", text)


def unbroken(written: str) -> str:
    """HTML of a plain text in which no short word is broken at its hyphen: "Lean-to"."""
    return HYPHENED.sub(r'<span class="one">\g<0></span>', written) if "-" in written else written


@lru_cache(maxsize=1 << 14)
def shown(text: str) -> str:
    """A text that is read, as HTML."""
    return unbroken(str(escape(set_text(text))))
