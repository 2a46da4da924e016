"""Draws the pictures of the example garden into `content/photos`.

python tests/draw_pictures.py             all of them
python tests/draw_pictures.py beetroot    those whose name holds a word
"""

from __future__ import annotations

import io
import sys
from pathlib import Path

from PIL import Image

from pictures.plates import PLATES, drawn

PHOTOS = Path(__file__).parents[1] / "content" / "photos"
MOST = 240_000
"""What a picture may weigh. [bytes]"""


def squeezed(picture: Image.Image) -> bytes:
    """As JPEG, in the best quality that is light enough."""
    data = b""
    for quality in range(88, 50, -3):
        file = io.BytesIO()
        picture.save(file, "JPEG", quality=quality, optimize=True, progressive=True, subsampling=1)
        data = file.getvalue()
        if len(data) <= MOST:
            break
    return data


def main(words: list[str], folder: Path) -> None:
    """Draws the wanted plates, all of them where no word is given."""
    folder.mkdir(parents=True, exist_ok=True)
    for name in PLATES:
        if not words or any(word in name for word in words):
            data = squeezed(drawn(name))
            (folder / f"{name}.jpg").write_bytes(data)
            print(f"{name}.jpg, {len(data) // 1000} kB")


if __name__ == "__main__":
    main(sys.argv[1:], PHOTOS)
