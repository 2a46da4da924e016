"""Which sizes a picture is made in. Knows numbers only, so that pages can tell sizes before any is made."""

from __future__ import annotations

from collections.abc import Iterable

TALLEST = 12_000
"""A strip taller than this is made narrower; no file format or screen takes more. [px]"""

WORTH_IT = 1.2
"""A size that a small source cuts down is made only if it is so much wider than the one before."""

Size = tuple[int, int]
"""Width and height. [px]"""


def sizes_of(width: int, height: int, widths: Iterable[int]) -> tuple[Size, ...]:
    """The sizes made of an upright picture, smallest first; never none, and none above the source.

    Args:
        widths: those wished for; one above the source becomes the source's own width.
    """
    found: list[int] = []
    for wish in sorted(set(widths)) or [width]:
        cut = min(wish, width)
        if not found or (cut > found[-1] and (cut == wish or cut > found[-1] * WORTH_IT)):
            found.append(cut)
    sizes = dict.fromkeys(_fitted(wish, width, height) for wish in found)
    return tuple(sizes)


def _fitted(wish: int, width: int, height: int) -> Size:
    tall = max(1, round(height * wish / width))
    if tall <= TALLEST:
        return wish, tall
    return max(1, round(width * TALLEST / height)), TALLEST
