"""Whatever a picture file holds, it is shown or refused in a sentence: never a traceback, never a word of a library.

Sound pictures of every form are spoilt by chance, with fixed seeds: bits turned, bytes put in and cut out, ends
cut off. 100 files for each form; the long run takes ten times as many.
"""

from __future__ import annotations

import random
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from leafmould.photos.look import look_at
from leafmould.photos.resize import Job, shrink
from long_runs import LONG
from photo_garden import bytes_of, exif_of

FILES = 100 * LONG
NOISE = Image.effect_noise((90, 60), 60).convert("RGB")
EXIF = exif_of(turn=6, taken="2026:06:20 10:11:12", description="peas")
FORMS = {
    "JPEG": bytes_of(NOISE, exif=EXIF, comment=b"peas"),
    "progressive JPEG": bytes_of(NOISE, progressive=True),
    "CMYK JPEG": bytes_of(NOISE.convert("CMYK")),
    "two pictures": bytes_of(NOISE, "MPO", save_all=True, append_images=[NOISE]),
    "PNG": bytes_of(NOISE, "PNG", exif=EXIF),
    "few colours": bytes_of(NOISE.quantize(8), "PNG", transparency=3),
    "GIF": bytes_of(NOISE, "GIF", save_all=True, append_images=[NOISE.rotate(90)]),
    "WebP": bytes_of(NOISE, "WEBP", exif=EXIF),
    "TIFF": bytes_of(NOISE, "TIFF", compression="tiff_lzw"),
    "JPEG in TIFF": bytes_of(NOISE, "TIFF", compression="jpeg"),
    "BMP": bytes_of(NOISE, "BMP"),
    "AVIF": bytes_of(NOISE, "AVIF"),
}


def spoilt(chance: random.Random, raw: bytes) -> bytes:
    """A file with a few things wrong with it, most of them near its head."""
    found = bytearray(raw)
    for _ in range(chance.choice((1, 1, 2, 5, 20))):
        at = chance.randrange(chance.choice((len(found), min(len(found), 600))) or 1)
        kind, some = chance.random(), chance.choice((1, 2, 4, 50))
        if kind < 0.6 and at < len(found):
            found[at] = chance.choice((0, 255, chance.randrange(256), found[at] ^ (1 << chance.randrange(8))))
        elif kind < 0.75:
            del found[at : at + some]
        elif kind < 0.9:
            found[at:at] = chance.randbytes(some)
        else:
            del found[at:]
    return bytes(found)


@pytest.mark.parametrize("form", FORMS)
def test_a_spoilt_picture_is_shown_or_refused_in_a_sentence(
    tmp_path: Path, form: str, capfd: pytest.CaptureFixture[str]
) -> None:
    chance = random.Random(form)
    file = tmp_path / "picture"
    refused = 0
    for _ in range(FILES):
        file.write_bytes(spoilt(chance, FORMS[form]))
        look_at(file)
        outcome = shrink(Job(path=str(file), widths=(16, 40)))
        refused += bool(outcome.why)
        assert outcome.why.endswith(".") or [_size(raw) for raw in outcome.files] == list(outcome.sizes) != []
    assert refused > 0
    assert capfd.readouterr() == ("", "")


def _size(raw: bytes) -> tuple[int, int]:
    with Image.open(BytesIO(raw)) as image:
        image.load()
        return image.size
