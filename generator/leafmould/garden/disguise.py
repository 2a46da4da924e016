"""Hidden names in disguise: run together, with marks, signs or entities between their letters.

Used by `visible` and its helpers beside `blank`, which finds names as they are plainly written. A page shows the
decoded, joined text, and an address drops the spaces: what reads as the name there must not stand here.
"""

from __future__ import annotations

import html
import re
import unicodedata
from collections.abc import Iterable
from urllib.parse import unquote

from leafmould.garden.blank import STEM, Folded, Names, shortened

INVISIBLE = "\u00ad\u034f\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u2064\ufe00-\ufe0f\ufeff"
DRESSED = re.compile(rf"[&%<*_~`\\\[{INVISIBLE}]|-\n")
LEFT_BARE = re.compile(rf"<[^<>]{{0,200}}>|\]\([^()\n]*\)|\]\[[^\]\n]*\]|[*_~`\\\[\]{INVISIBLE}]|-\n\s*")
LINK_TARGET = re.compile(r"\]\(([^()\n]*)\)|<([^<>\s]{4,200})>")
BETWEEN = r"[\W_]{0,9}"
LONG = 10
"""Letters of a name of several words that is known again even inside a longer word."""


class Disguise:
    """Names that are left out, as they may be hidden in a text that does not plainly hold them."""

    def __init__(self, names: Iterable[Names], words: Names) -> None:
        """Take the names, and the private words, which elsewhere are blanked where they stand plainly."""
        self._names = tuple(filter(None, names))
        self._words = words
        self._joined = [j for j in map(_joined, (*self._names, words)) if j is not None]

    def __bool__(self) -> bool:
        return bool(self._names or self._words)

    def are_in(self, text: str | None) -> bool:
        """Whether a name stands in the text in disguise, or run together."""
        if not text or not self:
            return False
        if spans := self._words.spans(text):
            text = shortened(text, spans).text
        bare = bare_text(text)
        if bare != text and any(
            names.are_in(bare) and not names.are_in(text) for names in (*self._names, self._words)
        ):
            return True
        lower = _lower(bare)
        if targets := "\n".join(a or b for a, b in LINK_TARGET.findall(text)):
            lower = f"{lower}\n{_lower(unquote(targets))}"
        return any(joined.is_in(lower) for joined in self._joined)


def bare_text(text: str) -> str:
    """The text as a page shows it: decoded, without marks, tags, link targets and signs nobody sees."""
    if DRESSED.search(text) is None:
        return text
    if "&" in text:
        text = html.unescape(text)
    return LEFT_BARE.sub("", unquote(text) if "%" in text else text)


class _Joined:
    """Names of several words, with anything or nothing between them; longer ones in which they do not count."""

    def __init__(self, hidden: frozenset[Folded], longer: Iterable[Folded]) -> None:
        self._names = sorted({*hidden, *longer}, key=lambda n: (-len("".join(n)), n))
        self._hidden = hidden
        self._stems = tuple(sorted({name[0][:STEM] for name in hidden}))
        self._pattern = re.compile("|".join(f"({_pattern(name)})" for name in self._names))

    def is_in(self, lower: str) -> bool:
        if not any(stem in lower for stem in self._stems):
            return False
        found = self._pattern.finditer(lower)
        return any(self._names[(m.lastindex or 1) - 1] in self._hidden for m in found)


def _joined(names: Names) -> _Joined | None:
    hidden = frozenset(name for name in names.names if len(name) > 1)
    return _Joined(hidden, names.longer) if hidden else None


def _pattern(name: Folded) -> str:
    """A name's words in a row, each perhaps with a plural ending."""
    inside = BETWEEN.join(f"{re.escape(word)}(?:e?s)?" for word in name)
    is_long = len("".join(name)) >= LONG
    return inside if is_long else rf"(?<![^\W\d_]){inside}(?![^\W\d_])"


def _lower(text: str) -> str:
    if text.isascii():
        return text.lower()
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(c for c in apart if not unicodedata.combining(c))
