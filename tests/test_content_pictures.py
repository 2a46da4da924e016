"""The pictures in `content/photos` are what our own script draws, and each is shown by a note.

Compared by size and likeness, not by bytes: another Pillow may resample or squeeze a little otherwise.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image, ImageChops, ImageStat

from pictures.plate import WIDE
from pictures.plates import PLATES, drawn, roman

CONTENT = Path(__file__).parents[1] / "content"
PHOTOS = CONTENT / "photos"


def unlikeness(one: Image.Image, other: Image.Image) -> float:
    """How far two pictures differ on the whole, of 255; both made small first, so that grain is left out."""
    small = [picture.convert("RGB").resize((160, 160), Image.Resampling.BOX) for picture in (one, other)]
    return sum(ImageStat.Stat(ImageChops.difference(*small)).mean) / 3


def test_there_is_a_picture_for_every_plate_and_no_other() -> None:
    assert {file.name for file in PHOTOS.iterdir()} == {f"{name}.jpg" for name in PLATES}
    assert len(PLATES) >= 12


@pytest.mark.parametrize("name", sorted(PLATES))
def test_a_picture_is_what_the_script_draws(name: str) -> None:
    with Image.open(PHOTOS / f"{name}.jpg") as kept:
        assert kept.size == (WIDE, PLATES[name].tall)
        assert unlikeness(kept, drawn(name, scale=0.5)) < 5


def test_likeness_tells_two_plates_apart() -> None:
    beetroot, peas = (drawn(name, scale=0.25) for name in ("2023-10-08-beetroot", "2023-07-22-peas"))
    assert unlikeness(beetroot, peas) > 12


def test_the_same_plate_is_drawn_the_same_twice() -> None:
    once, again = (drawn("2025-08-30-plums", scale=0.25) for _ in range(2))
    assert once.tobytes() == again.tobytes()


def test_no_picture_is_heavy() -> None:
    assert [file.name for file in PHOTOS.iterdir() if file.stat().st_size > 250_000] == []


def test_pictures_carry_no_words_of_where_or_when_they_were_made() -> None:
    for file in PHOTOS.iterdir():
        with Image.open(file) as picture:
            assert not picture.getexif(), file.name
            assert "comment" not in picture.info, file.name


def test_every_picture_is_named_by_the_header_of_a_note_and_told_in_words() -> None:
    notes = [file.read_text(encoding="utf-8") for file in sorted((CONTENT / "notes").rglob("*.md"))]
    for name in PLATES:
        assert sum(f"photo: {name}.jpg" in note for note in notes) <= 1, name
        assert sum(f"]({name}.jpg)" in note for note in notes) == 1, name


def test_numbers_of_plates() -> None:
    assert [roman(n) for n in (1, 4, 9, 14, 19, 20)] == ["I", "IV", "IX", "XIV", "XIX", "XX"]
