"""Plates as HTML: a picture in real proportions with its sizes, its words, and a caption line.

Every picture says how large it is, so that nothing on the page moves when it comes. Those below the first are
asked for only when they are near. As a figure of its own, or within a line of text as a span.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from markupsafe import escape as safe

from leafmould.pages.page import Figure, Link, Plate
from leafmould.render.typography import shown

ROOMS = {
    "text": "(min-width: 56rem) 38rem, calc(100vw - 2.2rem)",
    "row": "(min-width: 56rem) 19rem, 46vw",
    "margin": "(min-width: 56rem) 15rem, calc(100vw - 2.2rem)",
    "stop": "14rem",
}
"""How wide a plate is shown in the text, in a row of plates, in the margin and beside a stop; as the styles have it."""


class Plates:
    """Writes the plates of one page."""

    def __init__(
        self, root: str, *, figure: Callable[[Figure], str], links: Callable[[Iterable[Link]], str]
    ) -> None:
        """Take the way to the top of the site, and how dates and names are written."""
        self._root, self._figure, self._links = root, figure, links

    def alone(self, plate: Plate, room: str = "text", *, is_first: bool = False) -> str:
        """A plate as a figure of its own; a line of text where there is no picture."""
        if not plate.files:
            return f'<p class="picture">{safe(plate.alt)}</p>\n'
        caption = self._caption(plate)
        told = f"<figcaption>{caption}</figcaption>\n" if caption else ""
        return f'<figure class="{_kind(plate)}">\n{self._picture(plate, room, is_first)}\n{told}</figure>\n'

    def within(self, plate: Plate, *, is_first: bool = False, leads: bool = True) -> str:
        """A plate in a line of text, a heading or a cell, where no figure can stand.

        Args:
            leads: False inside a link, where nothing else can lead anywhere.
        """
        if not plate.files:
            return f'<span class="picture">{safe(plate.alt)}</span>'
        if not leads:
            return f'<span class="{_kind(plate)}">{self._image(plate, "text", is_first)}</span>'
        caption = self._caption(plate)
        told = f'<span class="caption">{caption}</span>' if caption else ""
        return f'<span class="{_kind(plate)}">{self._picture(plate, "text", is_first)}{told}</span>'

    def row(self, plates: Iterable[Plate], *, is_first: bool = False) -> str:
        """Plates beside each other, as many as there is room for."""
        drawn = [self.alone(p, "row", is_first=is_first and not n) for n, p in enumerate(plates)]
        return f'<div class="plates">\n{"".join(drawn)}</div>'

    def _picture(self, plate: Plate, room: str, is_first: bool) -> str:
        return f'<a href="{self._root}{safe(plate.to)}">{self._image(plate, room, is_first)}</a>'

    def _image(self, plate: Plate, room: str, is_first: bool) -> str:
        largest = plate.files[-1]
        several = ", ".join(f"{self._root}{safe(file.to)} {file.width}w" for file in plate.files)
        choice = f' srcset="{several}" sizes="{ROOMS[room]}"' if len(plate.files) > 1 else ""
        lazy = "" if is_first else ' loading="lazy"'
        return (
            f'<img src="{self._root}{safe(largest.to)}"{choice} width="{largest.width}" '
            f'height="{largest.height}" alt="{safe(plate.alt)}"{lazy} decoding="async">'
        )

    def _caption(self, plate: Plate) -> str:
        """The gardener's words, then day, beds and crops."""
        day = self._figure(plate.on) if plate.on else ""
        day += f" ({safe(plate.dated_by)})" if plate.dated_by else ""
        line = ", ".join(filter(None, (day, self._links(plate.about) if plate.about else "")))
        words = f'<span class="said">{_closed(shown(plate.caption))}</span>' if plate.caption else ""
        return " ".join(filter(None, (words, f'<span class="aside">{line}</span>' if line else "")))


def _kind(plate: Plate) -> str:
    return "plate tall" if plate.files[-1].height > plate.files[-1].width else "plate"


def _closed(words: str) -> str:
    return words if words.endswith((".", "!", "?", "…")) else f"{words}."
