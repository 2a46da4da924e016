"""Pictures found by the names notes give them; whatever is wrong is one sentence and a line of text.

Every test builds a whole garden: what stands beside the picture must be built, whatever the picture is.
"""

from __future__ import annotations

import os
import unicodedata
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from photo_garden import built, bytes_of, exif_of, garden_with, jpeg, page, pictures, told, view

NOTE = """\
    ---
    date: 2026-06-20
    bed: Arch
    photo: {photo}
    ---
    Rain at last.
    """


def with_photo(folder: Path, typed: str, **photos: bytes) -> Path:
    """A garden with one note that names one picture; pictures by path, `__` for a slash."""
    return garden_with(
        folder,
        {"2026/arch.md": NOTE.format(photo=typed)},
        {k.replace("__", "/"): v for k, v in photos.items()},
    )


def shown(garden: Path) -> bool:
    """Whether the note shows a picture."""
    return "<img " in page(garden, "notes/2026/arch.html")


@pytest.mark.parametrize(
    ("typed", "path"),
    [
        ("peas.jpg", "photos/peas.jpg"),
        ("photos/peas.jpg", "photos/peas.jpg"),
        ("./peas.jpg", "photos/peas.jpg"),
        ("peas", "photos/peas.jpg"),
        ("peas.jpg", "photos/2026/june/peas.jpg"),
        ("june/peas.jpg", "photos/2026/june/peas.jpg"),
        ("photos\\june\\peas.jpg", "photos/june/peas.jpg"),
        ("peas.jpg", "notes/2026/peas.jpg"),
        ("../../photos/peas.jpg", "photos/peas.jpg"),
        ("two pods (2).jpg", "photos/two pods (2).jpg"),
        ("Möhre.png", "photos/Möhre.png"),
        ("プランター.jpg", "photos/プランター.jpg"),
        ("peas.JPG", "photos/peas.JPG"),
        ("peas", "photos/peas.jpeg"),
        ("peas.jpg", "photos/deep/er/and/deeper/peas.jpg"),
    ],
)
def test_a_picture_is_found_by_its_name(tmp_path: Path, typed: str, path: str) -> None:
    garden = garden_with(tmp_path, {"2026/arch.md": NOTE.format(photo=f"'{typed}'")}, {path: jpeg()})
    assert told(built(garden)) == []
    assert shown(garden) and len(pictures(garden)) == 3


def test_f91_an_accent_written_either_way_is_the_same(tmp_path: Path) -> None:
    apart = unicodedata.normalize("NFD", "Möhre.jpg")
    garden = garden_with(
        tmp_path, {"2026/arch.md": NOTE.format(photo="Möhre.jpg")}, {f"photos/{apart}": jpeg()}
    )
    assert told(built(garden)) == []
    assert shown(garden)


def test_a_name_wrong_in_capitals_is_found_and_told(tmp_path: Path) -> None:
    garden = with_photo(tmp_path, "Peas.JPG", **{"photos__peas.jpg": jpeg()})
    assert told(built(garden)) == [
        'hint: notes/2026/arch.md:4: photo: "Peas.JPG" is taken for "peas.jpg", which differs in capitals.'
    ]
    assert shown(garden)


def test_a_missing_picture_is_told_with_the_nearest_name(tmp_path: Path) -> None:
    garden = with_photo(tmp_path, "betroot.jpg", **{"photos__beetroot.jpg": jpeg()})
    said = told(built(garden))
    assert said[0] == (
        'error: notes/2026/arch.md:4: photo: "betroot.jpg" is neither in photos/ nor beside the note. '
        'Did you mean "beetroot.jpg"?'
    )
    html = page(garden, "notes/2026/arch.html")
    assert '<p class="picture">Picture: betroot.jpg</p>' in html and "Rain at last." in html
    assert pictures(garden) == {}


def test_two_pictures_of_one_name_are_asked_about(tmp_path: Path) -> None:
    photos = {"photos__2025__peas.jpg": jpeg(), "photos__2026__peas.jpg": jpeg(green=90)}
    garden = with_photo(tmp_path, "peas.jpg", **photos)
    assert told(built(garden))[0] == (
        'error: notes/2026/arch.md:4: photo: "peas.jpg" may be "photos/2025/peas.jpg" or "photos/2026/peas.jpg". '
        "Write its folder too."
    )
    assert not shown(garden)


def test_a_folder_settles_which_of_two_is_meant(tmp_path: Path) -> None:
    photos = {"photos__2025__peas.jpg": jpeg(), "photos__2026__peas.jpg": jpeg(green=90)}
    garden = with_photo(tmp_path, "2026/peas.jpg", **photos)
    built(garden)
    assert shown(garden)


def test_two_pictures_of_one_name_are_one_if_they_are_the_same(tmp_path: Path) -> None:
    photos = {"photos__2025__peas.jpg": jpeg(), "photos__2026__peas.jpg": jpeg()}
    garden = with_photo(tmp_path, "peas.jpg", **photos)
    built(garden)
    assert shown(garden)


def test_the_picture_beside_the_note_goes_before_one_in_photos(tmp_path: Path) -> None:
    garden = with_photo(
        tmp_path,
        "peas.jpg",
        **{"notes__2026__peas.jpg": jpeg((400, 100)), "photos__peas.jpg": jpeg((100, 400))},
    )
    built(garden)
    assert 'width="160" height="40"' in page(garden, "notes/2026/arch.html")


@pytest.mark.parametrize(
    ("raw", "why"),
    [
        (b"", "is empty (0 bytes). Copy it anew from the camera."),
        (b"<html>", "is no picture that can be read. JPEG, PNG, WebP, TIFF, GIF, BMP and AVIF are."),
        (b"<svg xmlns='x'/>", "is an SVG drawing, which is not accepted. Save it as PNG or JPEG."),
        (jpeg()[:900], "is broken or cut short. Copy it anew from the camera."),
        (
            bytes_of(Image.new("1", (9_500, 9_500)), "PNG"),
            "is too large: 9,500 × 9,500 dots. Make it smaller than 89 million dots in all.",
        ),
    ],
)
def test_f48_f49_f51_what_cannot_be_shown_is_one_sentence_and_a_line_of_text(
    tmp_path: Path, raw: bytes, why: str
) -> None:
    garden = with_photo(tmp_path, "peas.jpg", **{"photos__peas.jpg": raw})
    assert told(built(garden)) == [f'error: notes/2026/arch.md:4: photo: "peas.jpg" {why}']
    assert '<p class="picture">Picture: peas.jpg</p>' in page(garden, "notes/2026/arch.html")
    assert pictures(garden) == {} and "Rain at last." in page(garden, "notes/2026/arch.html")


def test_a_picture_that_moves_is_told_and_shown_still(tmp_path: Path) -> None:
    raw = bytes_of(view(), "GIF", save_all=True, append_images=[Image.new("RGB", (200, 100))])
    garden = with_photo(tmp_path, "peas.gif", **{"photos__peas.gif": raw})
    assert told(built(garden)) == [
        'hint: notes/2026/arch.md:4: photo: "peas.gif" holds several pictures. The first is shown.'
    ]
    assert shown(garden)


def test_f44_broken_camera_notes_are_told_once(tmp_path: Path) -> None:
    garden = with_photo(tmp_path, "peas.jpg", **{"photos__peas.jpg": jpeg(exif=exif_of(turn=99))})
    assert told(built(garden)) == [
        'hint: notes/2026/arch.md:4: photo: "peas.jpg" has camera notes that cannot be read. '
        "It is shown as it lies, not turned."
    ]


def test_a_folder_that_is_called_like_a_picture_is_told(tmp_path: Path) -> None:
    garden = with_photo(tmp_path, "peas.jpg", **{"photos__peas.jpg__other.txt": b"text"})
    assert told(built(garden)) == [
        'error: notes/2026/arch.md:4: photo: "peas.jpg" is a folder, not a picture.'
    ]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes")
def test_a_pipe_is_never_opened(tmp_path: Path) -> None:
    garden = with_photo(tmp_path, "peas.jpg", **{"photos__other.txt": b"text"})
    os.mkfifo(garden / "photos" / "peas.jpg")
    assert told(built(garden)) == ['error: notes/2026/arch.md:4: photo: "peas.jpg" is no file.']


def test_a_link_out_of_the_garden_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "elsewhere.jpg").write_bytes(jpeg())
    garden = with_photo(tmp_path, "peas.jpg", **{"photos__pods.jpg": jpeg(green=99)})
    (garden / "photos" / "peas.jpg").symlink_to(tmp_path / "elsewhere.jpg")
    assert told(built(garden))[0] == (
        'error: notes/2026/arch.md:4: photo: "peas.jpg" leads out of the garden folder. '
        "Copy the picture into photos/."
    )
    assert pictures(garden) == {}


def test_a_photos_folder_that_is_a_link_out_of_the_garden_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "away").mkdir()
    (tmp_path / "away" / "peas.jpg").write_bytes(jpeg())
    garden = with_photo(tmp_path, "peas.jpg")
    (garden / "photos").symlink_to(tmp_path / "away")
    built(garden)
    assert not shown(garden) and pictures(garden) == {}


def test_a_link_inside_the_garden_is_followed(tmp_path: Path) -> None:
    garden = with_photo(tmp_path, "peas.jpg", **{"photos__2026__pods.jpg": jpeg()})
    (garden / "photos" / "peas.jpg").symlink_to(garden / "photos" / "2026" / "pods.jpg")
    built(garden)
    assert shown(garden)


@pytest.mark.parametrize("typed", ["../../../elsewhere.jpg", "/etc/elsewhere.jpg"])
def test_a_name_that_leads_out_of_the_garden_is_told(tmp_path: Path, typed: str) -> None:
    (tmp_path / "elsewhere.jpg").write_bytes(jpeg())
    garden = with_photo(tmp_path, typed)
    assert told(built(garden)) == [
        f'error: notes/2026/arch.md:4: photo: "{typed}" leads out of the garden folder. '
        "Copy the picture into photos/."
    ]
    assert pictures(garden) == {}


def test_nothing_is_fetched_from_elsewhere(tmp_path: Path) -> None:
    note = "---\ndate: 2026-06-20\n---\nSee ![pods](https://example.org/pods.jpg) there.\n"
    garden = garden_with(tmp_path, {"2026/arch.md": note}, {})
    assert told(built(garden)) == [
        'error: notes/2026/arch.md:4: body: "https://example.org/pods.jpg" is not in the garden folder, and nothing '
        "is fetched from elsewhere. Copy it into photos/."
    ]
    assert "example.org" not in page(garden, "notes/2026/arch.html")


def test_the_line_of_a_picture_in_the_text_is_told(tmp_path: Path) -> None:
    note = "---\ndate: 2026-06-20\n---\nRain.\n\n<!-- a\nb -->\n\n![Pods](pods.jpg)\n"
    garden = garden_with(tmp_path, {"2026/arch.md": note}, {})
    assert told(built(garden)) == [
        'error: notes/2026/arch.md:9: body: "pods.jpg" is neither in photos/ nor beside the note.'
    ]
    html = page(garden, "notes/2026/arch.html")
    assert '<p class="picture">Picture: pods.jpg, Pods</p>' in html


def test_the_same_picture_under_two_names_is_told_and_shown_once_in_a_note(tmp_path: Path) -> None:
    garden = with_photo(tmp_path, "[a.jpg, b.jpg]", **{"photos__a.jpg": jpeg(), "photos__b.jpg": jpeg()})
    assert told(built(garden)) == [
        'hint: notes/2026/arch.md:4: photo: "b.jpg" is the same picture as "photos/a.jpg".'
    ]
    assert page(garden, "notes/2026/arch.html").count("<img ") == 1
    assert len(pictures(garden)) == 3


def test_a_settled_note_is_told_only_what_is_not_shown(tmp_path: Path) -> None:
    note = "---\ndate: 2026-06-20\nphoto: [Peas.jpg, pods.jpg]\nsettled: yes\n---\nRain.\n"
    garden = garden_with(tmp_path, {"2026/arch.md": note}, {"photos/peas.jpg": jpeg()})
    assert told(built(garden)) == [
        'error: notes/2026/arch.md:3: photo: "pods.jpg" is neither in photos/ nor beside the note.'
    ]


def test_check_tells_what_a_build_tells(tmp_path: Path) -> None:
    from leafmould.garden.pictures import load_pictured
    from photo_garden import ON

    garden = with_photo(
        tmp_path, "[a.jpg, b.jpg]", **{"photos__a.jpg": jpeg()[:900], "photos__c.jpg": jpeg()}
    )
    checked = [f"{p.level}: {p.sentence}" for p in load_pictured(garden, on=ON).problems]
    assert checked == told(built(garden, household=True))
    assert len(checked) == 3


def test_pictures_no_note_names_are_told_in_one_hint(tmp_path: Path) -> None:
    photos = {f"photos/IMG_{n}.jpg": jpeg(green=n) for n in (1, 2, 3)}
    garden = garden_with(tmp_path, {"2026/06-20.txt": "sowed peas in Arch\n"}, photos)
    assert told(built(garden)) == [
        "hint: photos/IMG_1.jpg: No note names this picture, nor 2 others. The household's site shows it with a note "
        "of its day; name it in a note to share it."
    ]
    assert pictures(garden) == {}


def test_a_picture_that_may_not_be_opened_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    garden = with_photo(tmp_path, "peas.jpg", **{"photos__peas.jpg": jpeg()})
    open_any = Path.open

    def refuse(path: Path, *ways: Any, **more: Any) -> Any:
        if path.name == "peas.jpg":
            raise PermissionError(13, "Permission denied")
        return open_any(path, *ways, **more)

    monkeypatch.setattr(Path, "open", refuse)
    assert told(built(garden)) == [
        'error: notes/2026/arch.md:4: photo: "peas.jpg" cannot be opened: Permission denied.'
    ]
