"""Pictures for tests, drawn here, and garden folders with pictures in them."""

from __future__ import annotations

import struct
from collections.abc import Mapping
from datetime import date
from io import BytesIO
from pathlib import Path
from textwrap import dedent
from typing import Any

from PIL import Image, ImageDraw

from leafmould.build import build
from leafmould.report import BuildReport

ON = date(2026, 7, 15)

GARDEN_YAML = """\
garden: Tansy Hill
units: metric
decimal: point
dates: day first
photo widths: [40, 80, 160]
beds:
  - {name: Arch}
  - {name: Long border}
  - {name: Back strip, private: yes}
"""


def bytes_of(image: Image.Image, form: str = "JPEG", **ways: Any) -> bytes:
    """A picture as a file of some form."""
    out = BytesIO()
    image.save(out, form, **ways)
    return out.getvalue()


def view(size: tuple[int, int] = (200, 100), *, green: int = 120) -> Image.Image:
    """A picture no other looks like: a slope, a wall, a red corner at the top left."""
    image = Image.linear_gradient("L").resize(size).convert("RGB")
    draw = ImageDraw.Draw(image)
    wide, tall = size
    draw.rectangle((0, 0, wide // 4, tall // 4), fill=(200, 20, 20))
    draw.rectangle((wide // 2, tall // 2, wide, tall), fill=(30, green, 40))
    return image


def jpeg(size: tuple[int, int] = (200, 100), *, green: int = 120, **ways: Any) -> bytes:
    """A small JPEG; each `green` gives another picture."""
    return bytes_of(view(size, green=green), quality=90, **ways)


def exif_of(*, turn: int = 1, taken: str = "", **texts: str) -> Image.Exif:
    """What a camera notes: how it was held, when, and any text by the name of its tag."""
    exif = Image.Exif()
    exif[0x0112] = turn
    if taken:
        exif.get_ifd(0x8769)[0x9003] = taken
    for tag, text in texts.items():
        exif[{"description": 0x010E, "artist": 0x013B, "copyright": 0x8298, "make": 0x010F}[tag]] = text
    return exif


def garden_with(folder: Path, notes: Mapping[str, str], photos: Mapping[str, bytes], **ways: str) -> Path:
    """A garden folder: notes by path under notes/, pictures by path inside the garden."""
    garden = folder / "garden"
    garden.mkdir(parents=True)
    (garden / "garden.yaml").write_text(
        GARDEN_YAML + "".join(f"{k}: {v}\n" for k, v in ways.items()), "utf-8"
    )
    for path, text in notes.items():
        file = garden / "notes" / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(dedent(text), "utf-8")
    for path, raw in photos.items():
        file = garden / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(raw)
    return garden


def built(garden: Path, *, household: bool = False, workers: int = 1, to: str = "site") -> BuildReport:
    """The garden built into a folder beside it, on 15 July 2026."""
    return build(garden, to=garden.parent / to, on=ON, household=household, workers=workers)


def page(garden: Path, name: str, to: str = "site") -> str:
    """A page of the garden as built."""
    return (garden.parent / to / name).read_text("utf-8")


def pictures(garden: Path, to: str = "site") -> dict[str, bytes]:
    """The pictures of the site by name."""
    folder = garden.parent / to / "photos"
    return {file.name: file.read_bytes() for file in sorted(folder.glob("*"))} if folder.is_dir() else {}


def told(report: BuildReport) -> list[str]:
    """All there is to tell, as the gardener reads it, with how much it matters."""
    return [f"{problem.level}: {problem.sentence}" for problem in report.problems]


def segments(raw: bytes) -> list[tuple[int, bytes]]:
    """The marked pieces of a JPEG before its picture data (ISO/IEC 10918-1, B.1.1)."""
    assert raw[:2] == b"\xff\xd8"
    found, at = [], 2
    while True:
        mark, length = struct.unpack(">xBH", raw[at : at + 4])
        found.append((mark, raw[at + 4 : at + 2 + length]))
        at += 2 + length
        if mark == 0xDA:
            return found
