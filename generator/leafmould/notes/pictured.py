"""Pictures in the text of a note: how they are written, and where they stand.

One pattern for all who have to know it, so that what is shown, what is left out and what is looked for are the
same. `![caption](name.jpg)`, with spaces or brackets in the name, in angle brackets, or with a title.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

# Every part has an end, so that a text of nothing but openings is not searched to its end from each of them.
PICTURE = re.compile(
    r"!\[(?P<caption>[^\]\n]{0,500})\]"
    r"\(\s*(?:<(?P<held>[^<>\n]{1,300})>|(?P<name>(?:[^()<>\n\"]|\([^()<>\n\"]{0,300}\)){1,300}?))(?:\s+\"[^\"\n]*\")?\s*\)"
)

EMBEDDED = re.compile(r"!\[\[[^\]\n]{0,300}\]\]")
"""What some editors write; shown as typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pictured:
    """A picture in a text."""

    name: str
    caption: str
    line: int  # of the text, counted from 0


def pictures_in(text: str) -> Iterator[Pictured]:
    """The pictures of a text, in order."""
    if "![" not in text:
        return
    for m in PICTURE.finditer(text):
        yield Pictured(
            name=name_in(m), caption=" ".join(m["caption"].split()), line=text.count("\n", 0, m.start())
        )


def name_in(m: re.Match[str]) -> str:
    """The name in a match of PICTURE."""
    return str(m["held"] or m["name"]).strip()


def without_pictures(text: str) -> str:
    """A text without its pictures, for where it is told in words alone."""
    return PICTURE.sub("", text) if "![" in text else text
