"""Pictures as telephones and scanners make them: HEIC with its library and without, two pictures in one file, 16 bits."""

from __future__ import annotations

import struct
import unicodedata
import zlib
from collections.abc import Iterator
from datetime import date
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from leafmould.photos import look
from leafmould.photos.fault import CUT_SHORT, Fault
from leafmould.photos.look import Head, look_at
from leafmould.photos.resize import Job, Outcome, shrink
from photo_garden import built, bytes_of, exif_of, garden_with, page, pictures, segments, told, view

NOTE = "---\ndate: 2026-06-20\nbed: Arch\nphoto: {photo}\n---\nRain at last.\n"
SAID = "is a HEIC picture, which is not read here. Export it as JPEG, or install the library pillow-heif."


@pytest.fixture
def heic() -> bytes:
    """A picture as a telephone keeps it: a red corner at the top left, its day, and words nobody should read."""
    assert look.reads_heic()
    return bytes_of(
        view((400, 200)), "HEIF", exif=exif_of(taken="2026:06:19 07:00:00", description="secretplaceword")
    )


@pytest.fixture
def without_library(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """As where nobody installed the library for HEIC."""

    def absent(name: str) -> object:
        raise ImportError(name)

    monkeypatch.setattr(look, "import_module", absent)
    look.reads_heic.cache_clear()
    yield
    look.reads_heic.cache_clear()


def shrunk(tmp_path: Path, raw: bytes) -> Outcome:
    (tmp_path / "picture").write_bytes(raw)
    return shrink(Job(path=str(tmp_path / "picture"), widths=(80,)))


def dot(raw: bytes, x: int, y: int) -> tuple[int, ...]:
    found = Image.open(BytesIO(raw)).convert("RGB").getpixel((x, y))
    assert isinstance(found, tuple)
    return tuple(int(part) for part in found)


def is_near(found: tuple[int, ...], wanted: tuple[int, ...]) -> bool:
    return all(abs(a - b) <= 12 for a, b in zip(found, wanted, strict=True))


def test_f46_without_its_library_heic_is_one_sentence_and_a_line_of_text(
    tmp_path: Path, heic: bytes, without_library: None
) -> None:
    garden = garden_with(
        tmp_path, {"2026/arch.md": NOTE.format(photo="peas.heic")}, {"photos/peas.heic": heic}
    )
    assert told(built(garden)) == [f'error: notes/2026/arch.md:4: photo: "peas.heic" {SAID}']
    assert '<p class="picture">Picture: peas.heic</p>' in page(garden, "notes/2026/arch.html")
    assert shrunk(tmp_path, heic) == Outcome(why=SAID)


def test_f46_with_its_library_heic_is_a_picture_like_any_other(tmp_path: Path, heic: bytes) -> None:
    garden = garden_with(
        tmp_path, {"2026/arch.md": NOTE.format(photo="IMG_1.HEIC")}, {"photos/IMG_1.HEIC": heic}
    )
    assert told(built(garden)) == []
    assert "19 June 2026" in page(garden, "notes/2026/arch.html")
    assert [name.rpartition("-")[2] for name in pictures(garden)] == ["160.jpg", "40.jpg", "80.jpg"]
    for made in pictures(garden).values():
        assert b"secretplaceword" not in made
        assert {mark for mark, _ in segments(made)} == {0xE0, 0xDB, 0xC0, 0xC4, 0xDA}
    largest = next(made for name, made in pictures(garden).items() if name.endswith("160.jpg"))
    assert is_near(dot(largest, 5, 5), (200, 20, 20))


def test_f48_a_heic_cut_short_is_told(tmp_path: Path, heic: bytes) -> None:
    for length in (40, 300, len(heic) // 2, len(heic) - 20):
        assert shrunk(tmp_path, heic[:length]) == Outcome(why=CUT_SHORT)


def test_a_heic_is_known_by_what_it_holds_and_not_by_its_name(tmp_path: Path, heic: bytes) -> None:
    garden = garden_with(tmp_path, {"2026/arch.md": NOTE.format(photo="peas.jpg")}, {"photos/peas.jpg": heic})
    assert told(built(garden)) == []
    assert len(pictures(garden)) == 3


def png_of_16_bits(kind: int, *parts: int) -> bytes:
    """A PNG whose every dot has these parts of 16 bits (PNG 1.2, 11.2.2); Pillow reads these and does not write them."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))

    head = struct.pack(">IIBBBBB", 200, 100, 16, kind, 0, 0, 0)
    rows = (b"\0" + struct.pack(f">{len(parts)}H", *parts) * 200) * 100
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", head)
        + chunk(b"IDAT", zlib.compress(rows))
        + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize(
    ("raw", "wanted"),
    [
        (png_of_16_bits(2, 0xC800, 0x1400, 0x1400), (200, 20, 20)),
        (png_of_16_bits(6, 0xC800, 0x1400, 0x1400, 0xFFFF), (200, 20, 20)),
        (png_of_16_bits(6, 0xC800, 0x1400, 0x1400, 0), (248, 243, 231)),
        (png_of_16_bits(4, 0x8000, 0xFFFF), (128, 128, 128)),
        (png_of_16_bits(0, 0x8000), (128, 128, 128)),
    ],
    ids=["colour", "opaque", "transparent", "grey and opaque", "grey"],
)
def test_f52_sixteen_bits_become_eight(tmp_path: Path, raw: bytes, wanted: tuple[int, ...]) -> None:
    outcome = shrunk(tmp_path, raw)
    assert outcome.why == ""
    assert is_near(dot(outcome.files[0], 40, 20), wanted)


def test_f47_of_two_pictures_in_a_file_the_first_is_turned_and_dated(tmp_path: Path) -> None:
    notes = exif_of(turn=6, taken="2026:06:19 07:00:00", description="secretplaceword")
    raw = bytes_of(
        view((200, 100)), "MPO", save_all=True, append_images=[Image.new("RGB", (200, 100))], exif=notes
    )
    (tmp_path / "picture").write_bytes(raw)
    assert look_at(tmp_path / "picture") == Head(width=100, height=200, turn=6, taken=date(2026, 6, 19))
    outcome = shrunk(tmp_path, raw)
    assert outcome.sizes == ((80, 160),)
    assert b"secretplaceword" not in outcome.files[0] and b"MPF" not in outcome.files[0]
    assert is_near(dot(outcome.files[0], 75, 5), (200, 20, 20))  # held sideways, the corner is at the right


@pytest.mark.parametrize("form", ["NFC", "NFD"])
@pytest.mark.parametrize(
    "written",
    [
        "photo: première récolte 2.jpg",
        'photo: "première récolte 2.jpg"',
        "photo: photos/été/première récolte 2.jpg",
    ],
)
def test_f91_names_with_spaces_and_accents_in_header_and_text(
    tmp_path: Path, form: str, written: str
) -> None:
    """A disk may keep the accent apart from its letter, and a telephone may type it so; neither matters."""
    on_disk = unicodedata.normalize(form, "photos/été/première récolte 2.jpg")
    for typed in ("NFC", "NFD"):
        note = unicodedata.normalize(
            typed, f"---\ndate: 2026-06-20\n{written}\n---\nPeas.\n\n![pois](première récolte 2.jpg)\n"
        )
        garden = garden_with(tmp_path / typed, {"2026/arch.md": note}, {on_disk: bytes_of(view())})
        assert told(built(garden)) == []
        html = page(garden, "notes/2026/arch.html")
        assert html.count("<img ") == 1 and ">pois.<" in html


def test_f51_a_telephones_largest_panorama_is_refused_by_its_size_alone(tmp_path: Path) -> None:
    """Told from the head: 200 million dots would want 600 MB, and none of it is read."""
    head = bytearray(bytes_of(view(), "JPEG"))
    at = head.index(b"\xff\xc0") + 5
    head[at : at + 4] = struct.pack(">HH", 12_000, 16_000)
    (tmp_path / "picture").write_bytes(bytes(head))
    assert look_at(tmp_path / "picture") == Fault(
        why="is too large: more than 178 million dots. Make it smaller than 89 million dots in all."
    )
