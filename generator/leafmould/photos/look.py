"""A picture's head: what it is, how large it is upright, when it was taken. Decodes nothing.

Judges by what a file holds, never by its name. Serves the notes' readers, who have to know sizes and days,
and the worker (`resize`), which goes on to decode. The one place that says what is accepted as a picture.
"""

from __future__ import annotations

import logging
import os
import re
import struct
import warnings
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from importlib import import_module
from io import BytesIO
from pathlib import Path
from typing import BinaryIO

from PIL import Image, UnidentifiedImageError

from leafmould.photos.fault import CUT_SHORT, Fault

FORMATS = ("JPEG", "PNG", "WEBP", "TIFF", "GIF", "BMP", "AVIF")
"""What is accepted; a camera's file of two pictures (MPO) is a JPEG with one more behind it."""

MOST_PIXELS = 89_478_485
"""Larger pictures are refused before they are decoded; the library warns from here on."""

BROKEN = (
    OSError, SyntaxError, ValueError, TypeError, LookupError, ArithmeticError, AttributeError, EOFError,
    RuntimeError, MemoryError, struct.error, zlib.error, Image.DecompressionBombError,
)  # fmt: skip
"""What a broken picture makes its decoder raise."""

ORIENTATION = 0x0112
EXIF_BLOCK = 0x8769
TAKEN = (0x9003, 0x9004)
"""When a picture was taken, and when it was made digital."""
CHANGED = 0x0132
SIDEWAYS = frozenset({5, 6, 7, 8})
"""Orientations in which width and height change places."""

ERRORS = 2
"""The number of the stream that errors are written to."""

HEIC = re.compile(rb".{4}ftyp(?:hei[cxms]|hev[cxms]|mif[12]|msf1)", re.DOTALL)
SVG = re.compile(rb"\s*(?:\xef\xbb\xbf)?(?:<\?xml[^>]*>|<!--.*?-->|<!DOCTYPE[^>]*>|\s)*<svg[\s>]", re.DOTALL)
DAY = re.compile(r"\s*(\d{4})\D(\d{1,2})\D(\d{1,2})(?!\d)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """What is known of a picture before it is decoded."""

    width: int  # upright [px]
    height: int
    turn: int = 1  # as EXIF counts: 1 is upright
    taken: date | None = None  # by the camera's clock
    moves: bool = False  # holds several pictures, of which the first is used
    is_exif_broken: bool = False


HEIC_WHY = "is a HEIC picture, which is not read here. Export it as JPEG, or install the library pillow-heif."
SVG_WHY = "is an SVG drawing, which is not accepted. Save it as PNG or JPEG."
UNREADABLE = "is no picture that can be read. JPEG, PNG, WebP, TIFF, GIF, BMP and AVIF are."


def look_at(path: Path) -> Head | Fault:
    """The head of a picture file, or why it is none."""
    try:
        if not path.is_file():
            return Fault(why="is no file.")
        with path.open("rb") as file:
            return head_of(file)
    except OSError as fault:
        return Fault(why=f"cannot be opened: {fault.strerror or 'unknown reason'}.")


def head_of(file: BinaryIO) -> Head | Fault:
    """The head of an open picture; the file is left wherever reading it ended."""
    begins = file.read(1024)
    if not begins:
        return Fault(why="is empty (0 bytes). Copy it anew from the camera.")
    is_heic = bool(HEIC.match(begins))
    if is_heic and not reads_heic():
        return Fault(why=HEIC_WHY)
    if SVG.match(begins):
        return Fault(why=SVG_WHY)
    file.seek(0)
    try:
        with quiet(), Image.open(file, formats=_formats(is_heic)) as image:
            return _head(image)
    except UnidentifiedImageError:
        return Fault(why=CUT_SHORT if is_heic else UNREADABLE)
    except Image.DecompressionBombError:
        return Fault(why=_too_large("more than 178 million"))
    except BROKEN:
        return Fault(why=CUT_SHORT)


@lru_cache(maxsize=1)
def reads_heic() -> bool:
    """Whether the library for HEIC is here; it is asked for only when the first such picture is met."""
    try:
        import_module("pillow_heif").register_heif_opener()
    except ImportError:
        return False
    return True


def _formats(is_heic: bool) -> tuple[str, ...]:
    return ("HEIF",) if is_heic else FORMATS


@contextmanager
def quiet() -> Iterator[None]:
    """Keep the library's warnings from the gardener: what matters of them is said in our own words."""
    said = logging.getLogger("PIL")
    level = said.level
    said.setLevel(logging.CRITICAL + 1)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    finally:
        said.setLevel(level)


@contextmanager
def mute() -> Iterator[None]:
    """Keep what the library for TIFF itself writes to the terminal away from it."""
    try:
        kept = os.dup(ERRORS)
    except OSError:  # there is no terminal
        yield
        return
    try:
        with Path(os.devnull).open("wb") as nowhere:
            os.dup2(nowhere.fileno(), ERRORS)
        yield
    finally:
        os.dup2(kept, ERRORS)
        os.close(kept)


def _head(image: Image.Image) -> Head | Fault:
    width, height = image.size
    if width * height > MOST_PIXELS:
        return Fault(why=_too_large(f"{width:,} × {height:,}"))
    if width < 1 or height < 1:
        return Fault(why=CUT_SHORT)
    is_exif_broken, turn, taken = _told_by_exif(image)
    if turn in SIDEWAYS:
        width, height = height, width
    return Head(
        width=width,
        height=height,
        turn=turn,
        taken=taken,
        moves=image.format != "MPO" and bool(getattr(image, "is_animated", False)),
        is_exif_broken=is_exif_broken,
    )


def _too_large(size: str) -> str:
    return f"is too large: {size} dots. Make it smaller than {MOST_PIXELS // 1_000_000} million dots in all."


def _told_by_exif(image: Image.Image) -> tuple[bool, int, date | None]:
    """Whether the block is broken, how the picture is to be turned, and its day."""
    try:
        exif = image.getexif()
        turn = exif.get(ORIENTATION, 1)
        block = exif.get_ifd(EXIF_BLOCK)
        days = [*(block.get(tag) for tag in TAKEN), exif.get(CHANGED)]
    except BROKEN:
        return True, 1, None
    is_turn = isinstance(turn, int) and 1 <= turn <= 8
    taken = next((day for words in days if (day := _day(words)) is not None), None)
    return not is_turn, turn if is_turn else 1, taken


def _day(words: object) -> date | None:
    """The calendar day as the camera wrote it; the hour and its zone change nothing."""
    m = DAY.match(words) if isinstance(words, str) else None
    try:
        return date(int(m[1]), int(m[2]), int(m[3])) if m else None
    except ValueError:
        return None


def opened(raw: bytes) -> Image.Image:
    """A picture whose head was found sound, ready to be decoded.

    Raises:
        one of BROKEN: if it changed since.
    """
    return Image.open(BytesIO(raw), formats=_formats(bool(HEIC.match(raw[:1024])) and reads_heic()))
