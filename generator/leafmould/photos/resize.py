"""The worker: one picture file in, its sizes as bytes out. Runs in a process of its own, or in ours.

Turns the picture upright, brings it to sRGB and encodes it afresh, so that nothing but the picture itself
leaves: no camera's notes, place, comment, profile or small copy. Writes nothing; says what was wrong.
"""

from __future__ import annotations

import hashlib
from contextlib import nullcontext
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

from PIL import Image

from leafmould.photos.colour import plain, srgb
from leafmould.photos.fault import CUT_SHORT, Fault
from leafmould.photos.look import BROKEN, SIDEWAYS, Head, head_of, mute, opened, quiet
from leafmould.photos.sizes import Size, sizes_of

RECIPE = b"2"
"""Counted up whenever the same source would give other bytes: it is part of every file's name."""

QUALITY = 80

SHARPNESS = Image.Resampling.BICUBIC
"""How dots are put together: a third quicker than the library's sharpest, and no eye tells them apart here."""

UPRIGHT = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
"""What brings each orientation upright (EXIF 2.32, tag 0x0112)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """A picture to be made small."""

    path: str  # where the original lies on this computer
    widths: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What became of it: its sizes with their bytes, smallest first, or why there are none."""

    key: str = ""  # names these bytes: the original's content and how it was made
    sizes: tuple[Size, ...] = ()
    files: tuple[bytes, ...] = ()
    why: str = ""


def shrink(job: Job) -> Outcome:
    """Do one job."""
    try:
        raw = Path(job.path).read_bytes()
    except OSError as fault:
        return Outcome(why=f"cannot be opened: {fault.strerror or 'unknown reason'}.")
    with quiet():
        head = head_of(BytesIO(raw))
        if isinstance(head, Fault):
            return Outcome(why=head.why)
        sizes = sizes_of(head.width, head.height, job.widths)
        try:
            files = _made(raw, head, sizes)
        except BROKEN:
            return Outcome(why=CUT_SHORT)
    return Outcome(key=key_of(raw), sizes=sizes, files=files)


def key_of(raw: bytes) -> str:
    """A name for what is made of exactly these bytes."""
    return hashlib.blake2b(raw, digest_size=10, key=RECIPE).hexdigest()


def _made(raw: bytes, head: Head, sizes: tuple[Size, ...]) -> tuple[bytes, ...]:
    """The files of all sizes; each is made from the next larger one."""
    image = _largest(raw, head, sizes[-1])
    files = []
    for size in reversed(sizes):
        image = image if image.size == size else image.resize(size, SHARPNESS)
        image.info = {}
        files.append(_encoded(image))
    return tuple(reversed(files))


def _largest(raw: bytes, head: Head, size: Size) -> Image.Image:
    """The picture in its largest size, upright and in sRGB."""
    lying = (size[1], size[0]) if head.turn in SIDEWAYS else size
    with opened(raw) as image:
        image.draft(None, lying)
        with mute() if image.format == "TIFF" else nullcontext():
            image.load()
        found = plain(image)
        if found.size != lying:
            found = found.resize(lying, SHARPNESS, reducing_gap=2.0)
        found = srgb(found)
    turn = UPRIGHT.get(head.turn)
    return found if turn is None else found.transpose(turn)


def _encoded(image: Image.Image) -> bytes:
    out = BytesIO()
    image.save(out, "JPEG", quality=QUALITY)
    return out.getvalue()
