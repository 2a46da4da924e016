"""The pictures of one note, set where its text names them.

Works on what the Markdown reader gave, before it is printed. A paragraph of pictures alone becomes figures; a
picture within a line stays in it; one that cannot be shown is named in a quiet line.
"""

from __future__ import annotations

import posixpath
from collections.abc import Mapping, Sequence
from urllib.parse import unquote

from markdown_it.token import Token
from markupsafe import Markup

from leafmould.pages.page import Plate
from leafmould.render.pieces import plates_at

PICTURES = "pictures"
"""Under which name the printing is handed an InText."""

FIGURE = "figure"
IN_LINK = "in a link"
"""Told of a picture that is the text of a link, and so can lead nowhere else."""

BREAKS = frozenset({"softbreak", "hardbreak"})


class InText:
    """Draws the pictures of one text, the first of them without waiting for the reader to come near."""

    def __init__(self, plates: Mapping[str, Plate], root: str) -> None:
        """Take the plates by the names the text has for them, and the way to the top of the site."""
        self._plates = {unquote(name): plate for name, plate in plates.items()}
        self._drawn = plates_at(root)
        self._count = 0

    def set_apart(self, tokens: Sequence[Token]) -> list[Token]:
        """The tokens, with figures in place of paragraphs that hold nothing but pictures."""
        found: list[Token] = []
        for token in tokens:
            is_alone = token.type == "inline" and found and found[-1].type == "paragraph_open"
            if is_alone and not found[-1].hidden and (figures := self._figures(token.children or ())):
                found[-1] = Token(FIGURE, "", 0, content=figures)
            elif not (token.type == "paragraph_close" and found and found[-1].type == FIGURE):
                found.append(token)
        return found

    def within(self, token: Token) -> str:
        """A picture in a line of text."""
        plate = self._plate(token)
        if plate is None:
            return _named(token)
        return self._drawn.within(plate, is_first=self._is_first(), leads=IN_LINK not in token.meta)

    def _figures(self, children: Sequence[Token]) -> str:
        """The pictures of a paragraph as figures; "" if it holds anything else."""
        plates = []
        for child in children:
            if child.type == "image" and IN_LINK not in child.meta and (plate := self._plate(child)):
                plates.append(plate)
            elif child.type not in BREAKS and (child.type != "text" or child.content.strip()):
                return ""
        return "".join([self._drawn.alone(plate, is_first=self._is_first()) for plate in plates])

    def _plate(self, token: Token) -> Plate | None:
        return self._plates.get(unquote(str(token.attrs.get("src", ""))))

    def _is_first(self) -> bool:
        self._count += 1
        return self._count == 1


def _named(token: Token) -> str:
    """The line that stands for a picture nobody found."""
    name = posixpath.basename(unquote(str(token.attrs.get("src", ""))))
    words = f"Picture: {name}" + (f", {token.content}" if token.content else "")
    return str(Markup('<span class="picture">{}</span>').format(words))
