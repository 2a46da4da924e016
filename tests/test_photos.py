"""One picture made small: upright, in sRGB, never larger than it was, and without anything else in it.

Faults F40 to F58 are those other software has met; each is a test here or in `test_photos_found.py`.
"""

from __future__ import annotations

import struct
import warnings
import zlib
from datetime import date
from io import BytesIO
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageCms, ImageOps, PngImagePlugin

from leafmould.photos.colour import PAPER
from leafmould.photos.fault import CUT_SHORT, Fault
from leafmould.photos.look import SVG_WHY, UNREADABLE, Head, look_at
from leafmould.photos.resize import Job, Outcome, shrink
from leafmould.photos.sizes import TALLEST, sizes_of
from photo_garden import bytes_of, exif_of, jpeg, segments, view

WIDTHS = (40, 80, 160)


def shrunk(tmp_path: Path, raw: bytes, widths: tuple[int, ...] = WIDTHS) -> Outcome:
    file = tmp_path / "picture"
    file.write_bytes(raw)
    return shrink(Job(path=str(file), widths=widths))


def largest(tmp_path: Path, raw: bytes) -> Image.Image:
    """The largest of what is made of a picture."""
    outcome = shrunk(tmp_path, raw)
    assert outcome.why == ""
    return Image.open(BytesIO(outcome.files[-1]))


def looked_at(tmp_path: Path, raw: bytes) -> Head | Fault:
    file = tmp_path / "picture"
    file.write_bytes(raw)
    return look_at(file)


def colour(image: Image.Image, x: int = 80, y: int = 20) -> tuple[int, ...]:
    """A dot of a picture in red, green and blue."""
    dot = image.convert("RGB").getpixel((x, y))
    assert isinstance(dot, tuple)
    return tuple(int(part) for part in dot)


def near(found: tuple[int, ...], wanted: tuple[int, ...], by: int = 3) -> bool:
    return all(abs(a - b) <= by for a, b in zip(found, wanted, strict=True))


# --- sizes


def test_a_picture_is_made_in_the_widths_asked_for_and_never_above_its_own() -> None:
    assert sizes_of(4000, 3000, (480, 960, 1600)) == ((480, 360), (960, 720), (1600, 1200))
    assert sizes_of(1200, 900, (480, 960, 1600)) == ((480, 360), (960, 720), (1200, 900))
    assert sizes_of(1000, 750, (480, 960, 1600)) == ((480, 360), (960, 720))  # 1000 would gain nothing
    assert sizes_of(300, 200, (480, 960, 1600)) == ((300, 200),)


@given(
    width=st.integers(1, 70_000),
    height=st.integers(1, 70_000),
    widths=st.sets(st.integers(16, 8000), min_size=1, max_size=5),
)
def test_sizes_keep_the_proportions_and_stay_within_the_source(
    width: int, height: int, widths: set[int]
) -> None:
    sizes = sizes_of(width, height, widths)
    assert sizes and sizes == tuple(sorted(set(sizes)))
    for wide, tall in sizes:
        assert 1 <= wide <= width and 1 <= tall <= min(TALLEST, max(height, 1))
        assert abs(tall - wide * height / width) <= max(1, height / width)


def test_f58_sides_too_long_for_the_format_are_made_smaller_first(tmp_path: Path) -> None:
    long = shrunk(tmp_path, bytes_of(Image.new("L", (70_000, 1), 90), "PNG"))
    tall = shrunk(tmp_path, bytes_of(Image.new("L", (100, 70_000), 90), "PNG"))
    assert (long.sizes, long.why) == (((40, 1), (80, 1), (160, 1)), "")
    assert (tall.sizes[-1], tall.why) == ((17, 12_000), "")


# --- nothing else in it

SECRETS = (
    b"secretplaceword",
    b"secretcommentword",
    b"secretnameword",
    b"secretthumbword",
    b"secretprofileword",
)


def with_every_secret() -> bytes:
    """A JPEG with a secret in every place a JPEG has for one."""
    exif = exif_of(description="secretplaceword", artist="secretnameword", taken="2026:06:20 10:11:12")
    exif.get_ifd(0x8825).update(
        {1: "N", 2: (46.0, 30.0, 46.0), 3: "E", 4: (6.0, 37.0, 6.0), 29: "secretplaceword"}
    )
    exif.get_ifd(0x8769).update({0x9286: b"ASCII\0\0\0secretcommentword", 0x927C: b"secretnameword"})
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    profile += b"secretprofileword"
    profile[:4] = struct.pack(">I", len(profile))
    raw = bytes_of(
        view(),
        exif=exif,
        comment=b"secretcommentword",
        icc_profile=bytes(profile),
        xmp=b"<x:xmpmeta xmlns:x='adobe:ns:meta/'>secretplaceword</x:xmpmeta>",
        dpi=(301, 301),
    )
    iptc = b"Photoshop 3.0\x008BIM\x04\x04\0\0\0\0\0\x14\x1c\x02\x78\0\x0fsecretnameword."
    thumb = b"JFXX\0\x10secretthumbword"
    extra = b"".join(
        b"\xff" + bytes([mark]) + struct.pack(">H", len(body) + 2) + body
        for mark, body in (
            (0xE0, thumb),
            (0xED, iptc),
            (0xEC, b"Ducky secretcommentword"),
            (0xE5, b"secretplaceword"),
        )
    )
    return raw[:2] + extra + raw[2:] + b"secretplaceword behind the end"


def test_f40_f41_nothing_of_what_the_camera_noted_leaves(tmp_path: Path) -> None:
    raw = with_every_secret()
    assert all(secret in raw for secret in SECRETS)  # so that the search is known to find them
    outcome = shrunk(tmp_path, raw)
    assert len(outcome.files) == 3
    for made in outcome.files:
        assert not any(secret in made for secret in SECRETS)
        assert {mark for mark, _ in segments(made)} == {0xE0, 0xDB, 0xC0, 0xC4, 0xDA}
        assert segments(made)[0] == (0xE0, b"JFIF\0\1\1\0\0\1\0\1\0\0")  # no density, no small copy


@pytest.mark.parametrize("form", ["PNG", "WEBP", "TIFF", "AVIF", "GIF"])
def test_f40_nothing_leaves_of_other_forms_either(tmp_path: Path, form: str) -> None:
    exif = exif_of(description="secretplaceword")
    ways: dict[str, object] = {"exif": exif, "xmp": b"<x>secretplaceword</x>"}
    if form == "PNG":
        notes = PngImagePlugin.PngInfo()
        notes.add_text("Comment", "secretplaceword")
        notes.add_itxt("XML:com.adobe.xmp", "secretplaceword")
        ways = {"pnginfo": notes, "exif": exif}
    if form == "GIF":
        ways = {"comment": b"secretplaceword"}
    raw = bytes_of(view(), form, **ways)
    outcome = shrunk(tmp_path, raw)
    assert len(outcome.files) == 3
    for made in outcome.files:
        assert b"secretplaceword" not in made
        assert {mark for mark, _ in segments(made)} == {0xE0, 0xDB, 0xC0, 0xC4, 0xDA}


# --- upright


@pytest.mark.parametrize("turn", range(1, 9))
def test_f42_all_eight_ways_of_holding_a_camera_come_out_upright(tmp_path: Path, turn: int) -> None:
    held = Image.open(BytesIO(jpeg((200, 120), exif=exif_of(turn=turn))))
    wanted = ImageOps.exif_transpose(held).convert("RGB")  # the library's own turning is the outside check
    made = largest(tmp_path, jpeg((200, 120), exif=exif_of(turn=turn))).convert("RGB")
    head = looked_at(tmp_path, jpeg((200, 120), exif=exif_of(turn=turn)))
    assert isinstance(head, Head) and (head.width, head.height) == wanted.size
    assert made.size[0] == min(160, wanted.size[0])
    small = wanted.resize(made.size)
    for x, y in ((5, 5), (-6, 5), (5, -6), (-6, -6)):
        at = (x % made.width, y % made.height)
        assert near(colour(made, *at), colour(small, *at), 20), (turn, at)


@pytest.mark.parametrize(
    "block",
    [
        b"",
        b"Exif\0\0",
        b"Exif\0\0Exif\0\0II*\0\x08\0\0\0\0\0",
        b"Exif\0\0II*\0\xff\xff\xff\xff",
        b"Exif\0\0II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0\x63\0\0\0\0\0\0\0",
        b"Exif\0\0II*\0\x08\0\0\0\x01\0\x1a\x01\x05\0\x01\0\0\0\xff\xff\xff\0\0\0\0\0",
        b"Exif\0\0MM\0*\0\0\0\x08\xff\xff" + b"\x01\x12\0\x02\0\0\0\x04sid\0" * 3,
        b"Exif\0\0\x00\x01\x02\x03\x04\x05",
    ],
)  # fmt: skip
def test_f44_broken_camera_notes_leave_the_picture_as_it_lies(tmp_path: Path, block: bytes) -> None:
    raw = jpeg()
    broken = raw[:2] + b"\xff\xe1" + struct.pack(">H", len(block) + 2) + block + raw[2:]
    head = looked_at(tmp_path, broken)
    assert isinstance(head, Head) and (head.width, head.height, head.turn) == (200, 100, 1)
    assert largest(tmp_path, broken).size == (160, 80)


def test_f44_an_impossible_orientation_is_told(tmp_path: Path) -> None:
    head = looked_at(tmp_path, jpeg(exif=exif_of(turn=99)))
    assert isinstance(head, Head) and (head.turn, head.is_exif_broken) == (1, True)


def test_the_day_a_picture_was_taken_is_the_cameras(tmp_path: Path) -> None:
    def taken(words: str) -> date | None:
        head = looked_at(tmp_path, jpeg(exif=exif_of(taken=words)))
        assert isinstance(head, Head)
        return head.taken

    assert taken("2026:06:20 23:59:59") == date(2026, 6, 20)
    assert taken("2026-06-20T10:11:12+13:00") == date(2026, 6, 20)
    assert (taken("0000:00:00 00:00:00"), taken("2026:02:30 10:00:00"), taken("   ")) == (None, None, None)


# --- what cannot be shown


@pytest.mark.parametrize(
    ("raw", "why"),
    [
        (b"", "is empty (0 bytes). Copy it anew from the camera."),
        (b"<!doctype html><p>Sign in</p>", UNREADABLE),
        (b"\xef\xbb\xbf<?xml version='1.0'?>\n<!-- drawn -->\n<svg xmlns='http://www.w3.org/2000/svg'/>", SVG_WHY),
        (b"%!PS-Adobe-3.0 EPSF-3.0\n", UNREADABLE),
        (b"%PDF-1.7\n", UNREADABLE),
    ],
)  # fmt: skip
def test_f49_what_is_no_picture_is_told_by_what_it_holds(tmp_path: Path, raw: bytes, why: str) -> None:
    head = looked_at(tmp_path, raw)
    assert head == Fault(why=why)
    assert shrunk(tmp_path, raw) == Outcome(why=why)


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP", "TIFF", "GIF", "AVIF"])
def test_f48_half_a_picture_is_refused_whatever_its_form(tmp_path: Path, form: str) -> None:
    noise = Image.effect_noise((300, 200), 60).convert("RGB")
    raw = bytes_of(noise, form)
    assert shrunk(tmp_path, raw[: len(raw) // 2]).why in (CUT_SHORT, UNREADABLE)


def test_f51_a_picture_far_too_large_is_refused_before_it_is_decoded(tmp_path: Path) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        large = bytes_of(Image.new("1", (10_000, 9_500)), "PNG")
        huge = bytes_of(Image.new("1", (20_000, 10_000)), "PNG")
    end = "Make it smaller than 89 million dots in all."
    assert looked_at(tmp_path, large) == Fault(why=f"is too large: 10,000 × 9,500 dots. {end}")
    assert looked_at(tmp_path, huge) == Fault(why=f"is too large: more than 178 million dots. {end}")
    assert shrunk(tmp_path, huge).why == f"is too large: more than 178 million dots. {end}"


def test_text_in_a_picture_that_swells_when_opened_is_refused(tmp_path: Path) -> None:
    chunk = b"zTXtComment\0\0" + zlib.compress(b"a" * 80_000_000, 9)
    body = struct.pack(">I", len(chunk) - 4) + chunk + struct.pack(">I", zlib.crc32(chunk))
    raw = bytes_of(view(), "PNG")
    assert shrunk(tmp_path, raw[:33] + body + raw[33:]).why == CUT_SHORT


def test_f47_a_cameras_file_of_two_pictures_is_its_first(tmp_path: Path) -> None:
    raw = bytes_of(view(), "MPO", save_all=True, append_images=[Image.new("RGB", (200, 100))])
    head = looked_at(tmp_path, raw)
    assert isinstance(head, Head) and not head.moves
    assert near(colour(largest(tmp_path, raw), 5, 5), (200, 20, 20), 20)


def test_a_picture_that_moves_is_its_first(tmp_path: Path) -> None:
    raw = bytes_of(view(), "GIF", save_all=True, append_images=[Image.new("RGB", (200, 100))])
    head = looked_at(tmp_path, raw)
    assert isinstance(head, Head) and head.moves
    assert near(colour(largest(tmp_path, raw), 5, 5), (200, 20, 20), 20)


# --- colours


@pytest.mark.parametrize(
    ("image", "form", "wanted"),
    [
        (Image.new("L", (200, 100), 128), "JPEG", (128, 128, 128)),
        (Image.new("1", (200, 100), 1), "PNG", (255, 255, 255)),
        (Image.new("I;16", (200, 100), 32768), "PNG", (128, 128, 128)),
        (Image.new("I", (200, 100), 32768), "TIFF", (128, 128, 128)),
        (Image.new("F", (200, 100), 0.5), "TIFF", (128, 128, 128)),
        (Image.new("RGB", (200, 100), (200, 10, 10)).quantize(), "PNG", (200, 10, 10)),
        (Image.new("LAB", (200, 100), (136, 208, 195)), "TIFF", (253, 0, 7)),  # L* 53, a* 80, b* 67: red
        (Image.new("CMYK", (200, 100), (0, 255, 255, 0)), "JPEG", (255, 0, 0)),
        (Image.new("CMYK", (200, 100), (0, 255, 255, 0)), "TIFF", (255, 0, 0)),
    ],
)  # fmt: skip
def test_f52_f55_every_kind_of_colour_becomes_the_screens(
    tmp_path: Path, image: Image.Image, form: str, wanted: tuple[int, ...]
) -> None:
    made = largest(tmp_path, bytes_of(image, form))
    assert made.mode in ("RGB", "L")
    assert near(colour(made), wanted, 6)


@pytest.mark.parametrize(
    "image",
    [
        Image.new("RGBA", (200, 100), (255, 0, 0, 0)),
        Image.new("LA", (200, 100), (10, 0)),
        Image.new("RGBA", (200, 100), (255, 0, 0, 0)).quantize(),
    ],
)
def test_f53_what_is_transparent_lies_on_the_page(tmp_path: Path, image: Image.Image) -> None:
    assert near(colour(largest(tmp_path, bytes_of(image, "PNG"))), PAPER)


def test_f53_a_colour_said_to_be_transparent_is(tmp_path: Path) -> None:
    raw = bytes_of(Image.new("RGB", (200, 100), (255, 0, 0)), "PNG", transparency=(255, 0, 0))
    assert near(colour(largest(tmp_path, raw)), PAPER)


def test_the_page_of_pictures_is_the_page_of_the_styles() -> None:
    tokens = (Path(__file__).parents[1] / "layouts" / "styles" / "tokens.css").read_text("utf-8")
    assert "--paper: #{:02x}{:02x}{:02x};".format(*PAPER) in tokens


P3 = ((0.5151, 0.2412, -0.0011), (0.2920, 0.6922, 0.0419), (0.1571, 0.0666, 0.7841))
"""Display P3's primaries in the profile connection space (D50), as its published profiles have them; from memory."""


def p3_profile() -> bytes:
    """A wide-gamut profile: sRGB's, with other primaries."""
    raw = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    for number in range(struct.unpack_from(">I", raw, 128)[0]):
        tag, at, _ = struct.unpack_from(">4sII", raw, 132 + 12 * number)
        if tag in (b"rXYZ", b"gXYZ", b"bXYZ"):
            for axis, value in enumerate(P3[b"rgb".index(tag[0])]):
                struct.pack_into(">i", raw, at + 8 + 4 * axis, round(value * 65536))
        if tag == b"desc":
            raw[at + 12 : at + 60] = (
                raw[at + 12 : at + 60].replace(b"s\0R\0G\0B", b"w\0i\0d\0e").replace(b"sRGB", b"wide")
            )
    return bytes(raw)


def in_srgb(dot: tuple[int, int, int]) -> tuple[int, ...]:
    """A colour in P3 as sRGB shows it, reckoned from the primaries (IEC 61966-2-1 for the curve)."""

    def straight(part: float) -> float:
        return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4

    def curved(part: float) -> float:
        part = min(1.0, max(0.0, part))
        return part * 12.92 if part <= 0.0031308 else 1.055 * part ** (1 / 2.4) - 0.055

    light = [straight(part / 255) for part in dot]
    x, y, z = (sum(light[n] * P3[n][axis] for n in range(3)) for axis in range(3))
    red = 3.1339 * x - 1.6169 * y - 0.4906 * z  # D50 to linear sRGB (Lindbloom)
    green = -0.9788 * x + 1.9161 * y + 0.0335 * z
    blue = 0.0719 * x - 0.2290 * y + 1.4052 * z
    return tuple(round(255 * curved(part)) for part in (red, green, blue))


@pytest.mark.parametrize("dot", [(200, 60, 60), (60, 180, 60), (90, 90, 200), (128, 128, 128), (255, 0, 0)])
def test_a_wide_gamut_is_brought_to_the_screens(tmp_path: Path, dot: tuple[int, int, int]) -> None:
    raw = bytes_of(Image.new("RGB", (200, 100), dot), quality=100, icc_profile=p3_profile())
    made = largest(tmp_path, raw)
    assert near(colour(made), in_srgb(dot), 6)
    assert "icc_profile" not in made.info


def printers_profile() -> bytes:
    """A printer's profile by which every ink but black is a green: L* 60, a* -60, b* 40 (ICC.1, lut8Type)."""
    inks = bytes(range(256)) * 4
    corners = b"".join(bytes((0 if corner & 1 else 153, 128 - 60, 128 + 40)) for corner in range(16))
    unity = struct.pack(">9i", *(65536 if n % 4 == 0 else 0 for n in range(9)))
    lut = b"mft1\0\0\0\0" + bytes((4, 3, 2, 0)) + unity + inks + corners + bytes(range(256)) * 3
    head = struct.pack(
        ">I4sI4s4s4s12s4s", 128 + 16 + len(lut), b"lcms", 0x02400000, b"prtr", b"CMYK", b"Lab ", b"", b"acsp"
    )
    head = head.ljust(68, b"\0") + struct.pack(">3i", 63190, 65536, 54061)  # the D50 white
    return head.ljust(128, b"\0") + struct.pack(">I4sII", 1, b"A2B0", 144, len(lut)) + lut


def test_f55_a_print_scan_is_read_by_its_profile(tmp_path: Path) -> None:
    inks = Image.new("CMYK", (200, 100), (0, 255, 255, 0))
    red, green, blue = colour(largest(tmp_path, bytes_of(inks, icc_profile=printers_profile())))
    assert green > 140 and red < 90 and blue < 110


def test_f55_a_print_scan_with_a_broken_profile_is_shown_all_the_same(tmp_path: Path) -> None:
    raw = bytes_of(Image.new("CMYK", (200, 100), (0, 255, 255, 0)), icc_profile=b"no profile at all" * 20)
    assert near(colour(largest(tmp_path, raw)), (255, 0, 0), 6)


def test_a_profile_that_does_not_fit_its_picture_is_passed_over(tmp_path: Path) -> None:
    raw = bytes_of(Image.new("L", (200, 100), 100), icc_profile=p3_profile())
    assert near(colour(largest(tmp_path, raw)), (100, 100, 100))
