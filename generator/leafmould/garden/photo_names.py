"""What the name of a picture's file tells: a day, and perhaps a caption.

"2026-06-20 first peas.jpg" tells both, "IMG_20260620_101112.jpg" the day alone, "DSC01234.JPG" nothing.
"""

from __future__ import annotations

import posixpath
import re

from leafmould.notes.note_dates import date_of_photo, date_within
from leafmould.values.dates import resolve_date
from leafmould.values.when import When

NEAR = 40
"""How far from its note a day without a year may lie. [days]"""

CAMERA = re.compile(
    r"(?:img|dsc[nf]?|pxl|mvimg|vid|pict?|photo|image|picture|screenshot|whatsapp image|signal|p|gopr|sam|cimg|imag)"
    r"\s*(?=\d|wa\d|$)",
    re.IGNORECASE,
)
"""How cameras and telephones begin the names of their files; common practice, no source."""

NUMBERS = re.compile(r"\b(?:\d[\d.:x]*|wa\d+|at|mp|hdr|burst|copy|edited|portrait|\(\d+\))\b", re.IGNORECASE)
BETWEEN_WORDS = re.compile(r"_|(?<!\d)-|-(?!\d)")
LETTERS = re.compile(r"[^\W\d_]{3}")


def day_in_name(path: str, near: When | None, order: str | None) -> When | None:
    """The day a picture's name gives, or the folder it lies in.

    Args:
        near: the note's own date, which gives a day without a year its year.
    """
    *folders, name = path.split("/")
    for step in (name, *reversed(folders)):
        if (day := date_of_photo(step)) is not None:
            return day
    words = date_within(_spaced(posixpath.splitext(name)[0]), needs_year=near is None)
    if words is None or words.day is None:
        return None
    found = resolve_date(words, order=order, base=near, is_southern=False).when
    if found is None or not found.is_exact:
        return None
    is_far = near is not None and words.year is None and abs((found.first - near.first).days) > NEAR
    return None if is_far else found


def words_in_name(name: str) -> str:
    """The words a gardener gave a picture's name, without its day, numbers and ending; "" if there are none."""
    stem = _spaced(posixpath.splitext(posixpath.basename(name))[0])
    if (m := CAMERA.match(stem)) is not None:
        stem = stem[m.end() :]
    found = date_within(stem, needs_year=False)
    if found is not None and found.day is not None:
        stem = stem.replace(found.written, " ", 1)
    words = " ".join(NUMBERS.sub(" ", stem).split()).strip(" .,;:()-")
    return words if LETTERS.search(words) else ""


def _spaced(stem: str) -> str:
    """Underscores and hyphens to spaces, but for those inside a date."""
    return " ".join(BETWEEN_WORDS.sub(" ", stem).split())
