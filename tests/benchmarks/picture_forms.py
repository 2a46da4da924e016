"""Weighs JPEG against WebP and AVIF on the same pictures at the same likeness; prints, never judges.

How to run it, from the top of the repository, with the package installed:

    python tests/benchmarks/picture_forms.py               # the example's plates, and three pictures like photographs
    python tests/benchmarks/picture_forms.py FOLDER        # the pictures of a folder

A picture is made small as a build would, and written as JPEG at our quality. WebP and AVIF are then tried at every
quality, and the lowest taken that is as like the picture as the JPEG is (the mean square difference of its dots, which
favours none of them). Printed are bytes and seconds, in multiples of the JPEG's; one core.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from random import Random
from typing import Any

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageStat

from leafmould.photos.resize import QUALITY, SHARPNESS

PLATES = Path(__file__).resolve().parents[2] / "content" / "photos"
WIDTHS = (480, 1600)
EACH = 4
"""Of a folder's pictures one in so many; they are many, and trying every quality takes its time."""
FORMS: dict[str, dict[str, Any]] = {
    "JPEG, optimised": {"optimize": True, "progressive": True},
    "WEBP": {"method": 4},
    "AVIF, speed 8": {"speed": 8, "max_threads": 1},
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """A picture as written: its weight, what that took, and how far it is from the picture."""

    bytes: int
    seconds: float
    unlike: float


def written(image: Image.Image, form: str, quality: int, **ways: Any) -> Made:
    """The picture in one form and quality, timed, and read again."""
    out, begun = BytesIO(), time.process_time()
    image.save(out, form, quality=quality, **ways)
    seconds = time.process_time() - begun
    again = Image.open(BytesIO(out.getvalue())).convert("RGB")
    unlike = sum(ImageStat.Stat(ImageChops.difference(image, again)).sum2) / (image.width * image.height)
    return Made(bytes=len(out.getvalue()), seconds=seconds, unlike=unlike)


def as_like(image: Image.Image, form: str, wanted: float, ways: dict[str, Any]) -> Made:
    """The lightest that is as like the picture as is wanted, found by halving."""
    low, high = 1, 100
    while low < high:
        middle = (low + high) // 2
        if written(image, form, middle, **ways).unlike <= wanted:
            high = middle
        else:
            low = middle + 1
    return written(image, form, low, **ways)


def photographs(count: int = 3) -> Iterator[tuple[str, Image.Image]]:
    """Pictures with what a photograph has: detail of every size, soft and sharp edges, a little grain of the chip."""
    size = (2400, 1800)
    for number in range(count):
        rng = Random(number)
        bands = []
        for _ in range(3):
            band = Image.new("L", size, 128)
            for step in range(1, 8):
                grain = Image.effect_noise((size[0] >> step, size[1] >> step), 55).resize(
                    size, Image.Resampling.BICUBIC
                )
                band = Image.blend(band, grain, 0.32)
            bands.append(band)
        image = Image.merge("RGB", bands)
        leaves = ImageDraw.Draw(image)
        for _ in range(260):
            x, y, r = rng.randrange(size[0]), rng.randrange(size[1]), rng.randrange(12, 160)
            leaves.ellipse(
                (x, y, x + r, y + r // 2),
                fill=(rng.randrange(30, 120), rng.randrange(70, 180), rng.randrange(20, 80)),
            )
        image = Image.blend(image.filter(ImageFilter.GaussianBlur(1.2)), Image.merge("RGB", bands), 0.25)
        grain = Image.merge("RGB", [Image.effect_noise(size, 12) for _ in range(3)])
        yield f"photograph {number + 1}", Image.blend(image, grain, 0.08)


def plates(folder: Path) -> Iterator[tuple[str, Image.Image]]:
    """The pictures of a folder."""
    for path in sorted(folder.glob("*.jpg"))[::EACH]:
        yield path.name, Image.open(path).convert("RGB")


def show(title: str, pictures: list[tuple[str, Image.Image]]) -> None:
    """Weigh some pictures at every width, and print what they come to together."""
    for width in WIDTHS:
        sums = {form: [0.0, 0.0] for form in ("JPEG", *FORMS)}
        for _, picture in pictures:
            wide = min(width, picture.width)
            image = picture.resize((wide, round(picture.height * wide / picture.width)), SHARPNESS)
            plain = written(image, "JPEG", QUALITY)
            rows = {"JPEG": plain} | {
                form: as_like(image, form.split(",")[0], plain.unlike, ways) for form, ways in FORMS.items()
            }
            for form, made in rows.items():
                sums[form][0] += made.bytes
                sums[form][1] += made.seconds
        print(
            f"\n{title}, {width} wide: JPEG {sums['JPEG'][0] / len(pictures) / 1000:.1f} kB, {sums['JPEG'][1] / len(pictures) * 1000:.1f} ms each"
        )
        for form, (weight, seconds) in sums.items():
            print(
                f"{form:16} {weight / sums['JPEG'][0]:6.2f} x the bytes {seconds / sums['JPEG'][1]:8.1f} x the time"
            )


def main() -> None:
    """Weigh what is asked for."""
    if len(sys.argv) > 1:
        show(sys.argv[1], list(plates(Path(sys.argv[1]))))
        return
    show("The example's plates", list(plates(PLATES)))
    show("Like photographs", list(photographs()))


if __name__ == "__main__":
    main()
