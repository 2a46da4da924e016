"""Measures the making of pictures beside bare Pillow on the same files; prints, never judges.

How to run it, from the top of the repository, with the package installed:

    python tests/benchmarks/photos.py                  # 24 pictures of 12 million dots
    python tests/benchmarks/photos.py 48 --times 3     # more of them; the best of three runs each

The floor opens each file, has it decoded at about the largest size (draft), makes the three sizes one from the
other, and writes them: no turning (but the same sizes), no colours, no look for what else is in the file, no list of what was made. Ours is what a
build does: found, looked at, made, kept. Both on one core, in turn, in this process; the multiples are of
processor seconds, which are steadier. Then come all cores, in seconds by the clock, and a second build in
which nothing changed. The budget is 1.2 times the floor a core. Pictures are drawn afresh, the same every time.
"""

from __future__ import annotations

import argparse
import os
import shutil
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

from PIL import Image

from leafmould.photos.darkroom import Darkroom
from leafmould.photos.pool import cores

WIDTHS = (480, 960, 1600)
SIZE = (4000, 3000)


def draw(folder: Path, count: int) -> None:
    """Pictures as full of detail as a telephone's, a third of them held upright."""
    (folder / "photos").mkdir(parents=True)
    grain = Image.effect_noise((SIZE[0] // 4, SIZE[1] // 4), 40).resize(SIZE, Image.Resampling.BICUBIC)
    slope = Image.linear_gradient("L").resize(SIZE)
    for number in range(count):
        parts = (Image.blend(grain, slope.rotate(90 * n), 0.3 + 0.1 * ((number + n) % 4)) for n in range(3))
        exif = Image.Exif()
        exif[0x0112] = 6 if number % 3 == 0 else 1
        file = folder / "photos" / f"IMG_{number:04}.jpg"
        Image.merge("RGB", tuple(parts)).save(file, quality=92, exif=exif)


def bare(folder: Path, out: Path) -> None:
    """The floor: the library alone."""
    out.mkdir()
    for file in sorted((folder / "photos").iterdir()):
        with Image.open(file) as image:
            is_held_upright = image.getexif().get(0x0112) == 6
            sizes = [_lying(image.size, width, is_held_upright) for width in WIDTHS]
            image.draft("RGB", sizes[-1])
            for size in reversed(sizes):
                image.thumbnail(size, reducing_gap=None)  # the next size is made from this one
                image.save(out / f"{file.stem}-{size[0]}.jpg", quality=80)


def _lying(whole: tuple[int, int], width: int, is_held_upright: bool) -> tuple[int, int]:
    """The size that has this width once it is turned; as many dots as ours."""
    if is_held_upright:
        return round(whole[0] * width / whole[1]), width
    return width, round(whole[1] * width / whole[0])


def ours(folder: Path, workers: int) -> None:
    """What a build does with the pictures its notes name."""
    room = Darkroom(folder, WIDTHS)
    room.make([path for path in room.in_photos if room.head(path)], workers=workers)
    room.keep()


def timed(work: Callable[[], None]) -> tuple[float, float]:
    """Seconds by the clock, and of the processor in this process and those it started."""
    begun, used = time.perf_counter(), _used()
    work()
    return time.perf_counter() - begun, _used() - used


def _used() -> float:
    spent = os.times()
    return spent.user + spent.system + spent.children_user + spent.children_system


def forget(folder: Path) -> None:
    """Let nothing be kept from earlier runs."""
    shutil.rmtree(folder / ".leafmould", ignore_errors=True)


def measure(folder: Path, times: int) -> dict[str, tuple[float, float]]:
    """The best of so many runs of each, in turn."""
    found: dict[str, list[tuple[float, float]]] = {}
    for number in range(times):
        out = folder / f"bare-{number}"
        found.setdefault("bare Pillow, one core", []).append(timed(partial(bare, folder, out)))
        forget(folder)
        found.setdefault("ours, one core", []).append(timed(lambda: ours(folder, 1)))
        found.setdefault("ours, nothing changed", []).append(timed(lambda: ours(folder, 1)))
        forget(folder)
        found.setdefault(f"ours, {cores()} cores", []).append(timed(lambda: ours(folder, cores())))
    return {name: min(runs, key=lambda run: run[1] or run[0]) for name, runs in found.items()}


def main() -> None:
    """Draw, measure, print."""
    asked = argparse.ArgumentParser(description="Pictures beside bare Pillow.")
    asked.add_argument("pictures", nargs="?", type=int, default=24)
    asked.add_argument("--times", type=int, default=3)
    args = asked.parse_args()
    with tempfile.TemporaryDirectory() as aside:
        folder = Path(aside)
        draw(folder, args.pictures)
        costs = measure(folder, args.times)
    floor = costs["bare Pillow, one core"]
    for name, (seconds, used) in costs.items():
        sys.stdout.write(
            f"{args.pictures} pictures, {name:<22} {seconds:7.2f} s {seconds / floor[0]:5.2f} x floor,"
            f" processor {used:7.2f} s {used / floor[1]:5.2f} x floor\n"
        )


if __name__ == "__main__":
    main()
