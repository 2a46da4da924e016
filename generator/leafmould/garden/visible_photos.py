"""Which pictures of a note a public build may show.

Part of `visible`. A picture cannot be searched for what it shows, so in doubt it is private: where something of
a note had to be left out, only the pictures stay that are said to show something that may be shown.
"""

from __future__ import annotations

import re

from leafmould.garden.sight import Sight, is_hidden
from leafmould.notes.entries import Entry
from leafmould.notes.line_ends import is_private_block
from leafmould.notes.pictured import EMBEDDED, PICTURE, name_in
from leafmould.values.names import fold

LONGEST_NAME = 4
"""Words of the longest name looked for in a picture's name."""


class Pictures:
    """The pictures of one note."""

    def __init__(self, entry: Entry, shown: Entry, sight: Sight, *, is_cut: bool) -> None:
        """Take the note as written and as shown so far.

        Args:
            is_cut: whether a block of its text was left out.
        """
        self._sight = sight
        lost = len(shown.actions) < len(entry.actions) or len(shown.words) < len(entry.words)
        self._is_doubtful = is_cut or lost
        self._is_about_shown = any(
            not is_hidden(named, sight.view.beds, sight.view.bed_names) for named in entry.beds
        )

    def may_show(self, photo: str) -> bool:
        """Whether a picture named in the header may be shown."""
        if "private" not in self._sight.view.show and is_private_block(_spaced(photo)):
            return False
        return not self._is_doubtful or self._is_about_shown or self._names_something(photo)

    def in_text(self, body: str) -> str:
        """The text as shown so far, without the pictures that must go."""
        return PICTURE.sub(self._kept, body) if self._is_doubtful and "![" in body else body

    def _kept(self, m: re.Match[str]) -> str:
        is_told = m["caption"].strip() or self._names_something(name_in(m))
        return m[0] if is_told else ""

    def _names_something(self, name: str) -> bool:
        """Whether a bed, crop or variety is named in the picture's name; hidden ones were looked for before."""
        words = fold(_spaced(name))
        return any(
            words[start : start + size] in self._sight.told
            for start in range(len(words))
            for size in range(1, LONGEST_NAME + 1)
        )


def without_pictures(body: str) -> str:
    """A text without any picture."""
    return EMBEDDED.sub("", PICTURE.sub("", body)) if "![" in body else body


def _spaced(name: str) -> str:
    return name.replace("_", " ").replace("-", " ").replace("/", " ")
