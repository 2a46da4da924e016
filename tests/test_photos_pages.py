"""Pictures on the pages: with their note, bed, crop and season, dated and told; and left out where they must be."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from photo_garden import built, exif_of, garden_with, jpeg, page, pictures, told

SOWED = "---\ndate: 2026-04-12\nwork:\n  - sowed pea 'Meteor' in Arch\n---\n"
PICKED = """\
    ---
    date: 2026-06-20
    bed: Arch
    crop: pea
    did: picked
    amount: 1.2 kg
    photo: IMG_1.jpg
    ---
    Rain at last.
    """


def figures(garden: Path, name: str) -> list[Tag]:
    """The plates of a page."""
    return BeautifulSoup(page(garden, name), "html.parser").select(".plate")


def words(plate: Tag) -> str:
    """What is said below a plate."""
    caption = plate.select_one("figcaption, .caption")
    return " ".join(caption.get_text(" ").split()).replace(" ,", ",") if caption else ""


def image(plate: Tag) -> dict[str, str]:
    """What a plate's picture says of itself."""
    found = plate.find("img")
    assert isinstance(found, Tag)
    return {name: str(value) for name, value in found.attrs.items()}


def pea_garden(folder: Path, **ways: str) -> Path:
    notes = {"2026/04-12.md": SOWED, "2026/06-20-peas.md": PICKED}
    return garden_with(folder, notes, {"photos/IMG_1.jpg": jpeg((400, 300))}, **ways)


def test_a_picture_stands_on_its_note_bed_planting_crop_and_season(tmp_path: Path) -> None:
    garden = pea_garden(tmp_path)
    assert told(built(garden)) == []
    for name in ("notes/2026/06-20-peas.html", "beds/arch.html", "crops/pea.html", "seasons/2026.html"):
        assert len(figures(garden, name)) == 1, name
    planting = BeautifulSoup(page(garden, "beds/arch.html"), "html.parser").find(id=re.compile("^pea_arch"))
    assert isinstance(planting, Tag) and planting.select_one(".plate img")


def test_a_picture_says_its_sizes_so_that_nothing_moves(tmp_path: Path) -> None:
    garden = pea_garden(tmp_path)
    built(garden)
    (plate,) = figures(garden, "notes/2026/06-20-peas.html")
    told_of = image(plate)
    key = told_of["src"].removeprefix("../../photos/").removesuffix("-160.jpg")
    assert re.fullmatch("[0-9a-f]{20}", key)
    assert told_of["srcset"] == ", ".join(f"../../photos/{key}-{w}.jpg {w}w" for w in (40, 80, 160))
    assert (told_of["width"], told_of["height"]) == ("160", "120")
    assert told_of["sizes"] and told_of["decoding"] == "async"
    assert set(pictures(garden)) == {f"{key}-{w}.jpg" for w in (40, 80, 160)}


def test_one_width_needs_no_choice(tmp_path: Path) -> None:
    garden = pea_garden(tmp_path)
    text = (garden / "garden.yaml").read_text("utf-8").replace("[40, 80, 160]", "[80]")
    (garden / "garden.yaml").write_text(text, "utf-8")
    built(garden)
    (plate,) = figures(garden, "notes/2026/06-20-peas.html")
    assert "srcset" not in image(plate) and image(plate)["width"] == "80"


def test_only_the_first_picture_at_the_top_of_a_page_is_loaded_at_once(tmp_path: Path) -> None:
    garden = garden_with(
        tmp_path,
        {"2026/06-20-peas.md": PICKED.replace("IMG_1.jpg", "[IMG_1.jpg, IMG_2.jpg]")},
        {f"photos/IMG_{n}.jpg": jpeg(green=n) for n in (1, 2)},
    )
    built(garden)
    lazy = {
        name: [image(plate).get("loading") for plate in figures(garden, name)]
        for name in ("notes/2026/06-20-peas.html", "beds/arch.html", "seasons/2026.html")
    }
    assert lazy == {
        "notes/2026/06-20-peas.html": [None, "lazy"],
        "beds/arch.html": ["lazy", "lazy"],
        "seasons/2026.html": [None, "lazy"],
    }


def test_the_caption_has_day_bed_and_crop_and_leads_there(tmp_path: Path) -> None:
    garden = pea_garden(tmp_path)
    built(garden)
    (plate,) = figures(garden, "seasons/2026.html")
    assert words(plate) == "20 June 2026, Arch, pea"
    leads = [str(a["href"]) for a in plate.find_all("a")]
    note = "../notes/2026/06-20-peas.html"
    assert leads == [note, note, "../beds/arch.html", "../crops/pea.html"]


def test_without_a_caption_a_picture_is_told_in_a_plain_sentence(tmp_path: Path) -> None:
    garden = pea_garden(tmp_path)
    built(garden)
    (plate,) = figures(garden, "notes/2026/06-20-peas.html")
    assert image(plate)["alt"] == "Pea in Arch, 20 June 2026."


def test_a_caption_in_the_text_is_what_is_told(tmp_path: Path) -> None:
    note = '---\ndate: 2026-06-20\nbed: Arch\n---\nBefore.\n\n![First <pods> & "more"](IMG_1.jpg)\n\nAfter.\n'
    garden = garden_with(tmp_path, {"2026/06-20-peas.md": note}, {"photos/IMG_1.jpg": jpeg()})
    built(garden)
    (plate,) = figures(garden, "notes/2026/06-20-peas.html")
    assert plate.name == "figure" and image(plate)["alt"] == 'First <pods> & "more"'
    assert words(plate) == "First <pods> & “more”. 20 June 2026, Arch"
    html = page(garden, "notes/2026/06-20-peas.html")
    assert html.index("Before.") < html.index("<figure") < html.index("After.")


def test_a_picture_named_in_header_and_text_stands_once_in_the_text(tmp_path: Path) -> None:
    note = "---\ndate: 2026-06-20\nphoto: IMG_1.jpg\n---\n![Pods](IMG_1.jpg)\n\nAfter.\n"
    garden = garden_with(tmp_path, {"2026/06-20-peas.md": note}, {"photos/IMG_1.jpg": jpeg()})
    built(garden)
    assert len(figures(garden, "notes/2026/06-20-peas.html")) == 1


@pytest.mark.parametrize(
    "line",
    [
        "Here ![pods](IMG_1.jpg) they are",
        "- ![pods](IMG_1.jpg)",
        "Rain.\n\n## ![pods](IMG_1.jpg)",
        "| a | b |\n|---|---|\n| ![pods](IMG_1.jpg) | c |",
        "> ![pods](IMG_1.jpg)",
        "[![pods](IMG_1.jpg)](https://example.org/)",
        "![pods](<IMG_1.jpg>)",
        '![pods](IMG_1.jpg "a title")',
        "![pods](../../photos/IMG_1.jpg)",
        "![pods](IMG%5F1.jpg)",
    ],
)
def test_f65_a_picture_may_stand_anywhere_in_the_text(tmp_path: Path, line: str) -> None:
    note = f"---\ndate: 2026-06-20\n---\n{line}\n"
    garden = garden_with(tmp_path, {"2026/06-20-peas.md": note}, {"photos/IMG_1.jpg": jpeg()})
    assert told(built(garden)) == []
    (plate,) = figures(garden, "notes/2026/06-20-peas.html")
    assert image(plate)["alt"] == "pods"
    assert not plate.select("a a") and not [a for a in plate.parents if a.name == "a" and plate.select("a")]


def test_f65_names_with_spaces_and_brackets_stand_in_the_text(tmp_path: Path) -> None:
    note = "---\ndate: 2026-06-20\n---\n![pods](two pods (2).jpg)\n"
    garden = garden_with(tmp_path, {"2026/06-20-peas.md": note}, {"photos/two pods (2).jpg": jpeg()})
    assert told(built(garden)) == []
    assert len(figures(garden, "notes/2026/06-20-peas.html")) == 1
    listed = BeautifulSoup(page(garden, "by-date/2026.html"), "html.parser").get_text(" ")
    assert "pods" in listed and ".jpg" not in listed


# --- days and captions

DATED = "---\ndate: 2026-06-20\nbed: Arch\nphoto: {photo}\n---\nRain.\n"


@pytest.mark.parametrize(
    ("name", "taken", "caption"),
    [
        (
            "2026-06-18 first peas.jpg",
            "2026:06:19 10:00:00",
            "First peas. 18 June 2026 (by its file’s name), Arch",
        ),
        ("IMG_20260618_101112.jpg", "2026:06:19 10:00:00", "18 June 2026 (by its file’s name), Arch"),
        ("IMG_1234.jpg", "2026:06:19 10:00:00", "19 June 2026 (by the camera’s clock), Arch"),
        ("IMG_1234.jpg", "", "20 June 2026, Arch"),
        ("IMG_1234.jpg", "2031:01:01 00:00:00", "20 June 2026, Arch"),  # a clock that runs ahead
        ("18 june pods.jpg", "", "Pods. 18 June 2026 (by its file’s name), Arch"),
        ("2026-06-18/IMG_1.jpg", "", "18 June 2026 (by its file’s name), Arch"),
        ("arch.jpg", "", "20 June 2026, Arch"),  # says nothing that does not stand there
    ],
)
def test_p49_days_and_captions_come_from_the_name_then_the_camera_then_the_note(
    tmp_path: Path, name: str, taken: str, caption: str
) -> None:
    raw = jpeg(exif=exif_of(taken=taken)) if taken else jpeg()
    garden = garden_with(tmp_path, {"2026/rain.md": DATED.format(photo=f'"{name}"')}, {f"photos/{name}": raw})
    built(garden)
    (plate,) = figures(garden, "notes/2026/rain.html")
    assert words(plate).replace(" (", " (").replace("( ", "(") == caption


def test_a_picture_of_a_coarsely_dated_note_has_its_own_day(tmp_path: Path) -> None:
    note = "---\ndate: 2026-06\nphoto: IMG_20260618.jpg\n---\nRain.\n"
    garden = garden_with(tmp_path, {"rain.md": note}, {"photos/IMG_20260618.jpg": jpeg()})
    built(garden)
    assert words(figures(garden, "seasons/2026.html")[0]).startswith("18 June 2026")


def test_a_picture_goes_to_the_part_of_a_diary_that_is_about_its_day(tmp_path: Path) -> None:
    note = (
        "---\nphoto: [IMG_20260619_1.jpg, IMG_7.jpg]\n---\n## 18 June 2026\nRain.\n\n## 19 June 2026\nSun.\n"
    )
    garden = garden_with(
        tmp_path, {"diary.md": note}, {"photos/IMG_20260619_1.jpg": jpeg(), "photos/IMG_7.jpg": jpeg(green=9)}
    )
    built(garden)
    folder = tmp_path / "site" / "notes"
    shown = {file.name: file.read_text("utf-8").count("<img ") for file in folder.rglob("*.html")}
    assert shown == {"diary.html": 1, "diary.2.html": 0, "diary.3.html": 1}


# --- what a picture is of


def test_a_session_of_many_beds_says_of_a_picture_only_what_its_name_tells(tmp_path: Path) -> None:
    note = (
        "---\ndate: 2026-06-20\nphoto: [IMG_1.jpg, long border beans.jpg]\nwork:\n"
        "  - picked 1 kg peas from Arch\n  - sowed runner bean in Long border\n  - sowed kale in Top bed\n---\n"
    )
    garden = garden_with(
        tmp_path,
        {"2026/long.md": note},
        {"photos/IMG_1.jpg": jpeg(), "photos/long border beans.jpg": jpeg(green=9)},
    )
    built(garden)
    said = [words(plate) for plate in figures(garden, "notes/2026/long.html")]
    assert said == ["20 June 2026", "20 June 2026, Long border, runner bean"]
    assert len(figures(garden, "beds/long-border.html")) == 1
    assert len(figures(garden, "beds/arch.html")) == 0
    assert len(figures(garden, "seasons/2026.html")) == 2


# --- moderation


def test_long_pages_show_a_few_pictures_and_say_how_many_there_are(tmp_path: Path) -> None:
    days = [f"2026-0{month}-{day:02}" for month in (4, 5, 6) for day in range(1, 21)]
    notes = {f"{d}.md": f"---\ndate: {d}\nbed: Arch\ncrop: pea\nphoto: {d}.jpg\n---\nLooked.\n" for d in days}
    photos = {f"photos/{d}.jpg": jpeg((60, 40), green=4 * n) for n, d in enumerate(days)}
    garden = garden_with(tmp_path, notes, photos)
    built(garden)
    counts = {
        name: len(figures(garden, name)) for name in ("seasons/2026.html", "beds/arch.html", "crops/pea.html")
    }
    assert counts == {"seasons/2026.html": 12, "beds/arch.html": 4, "crops/pea.html": 6}
    assert "60 pictures in all; the notes have the others." in page(garden, "seasons/2026.html")
    _, first, *_, last = figures(garden, "seasons/2026.html")  # before them the one the page opens with
    assert (words(first)[:12], words(last)[:12]) == ("1 April 2026", "20 June 2026")


# --- private things


def build_both(garden: Path) -> None:
    built(garden)
    built(garden, household=True, to="home")


def everything(garden: Path, to: str = "site") -> str:
    """All text of a site, and the names of its files."""
    files = sorted(file for file in (garden.parent / to).rglob("*") if file.is_file())
    texts = (file.read_text("utf-8") for file in files if file.suffix != ".jpg")
    return "\n".join([*texts, *(file.name for file in files)])


@pytest.mark.parametrize(
    "note",
    [
        "---\ndate: 2026-06-20\nprivate: yes\nphoto: secretword.jpg\n---\nRain.\n",
        "---\ndate: 2026-06-20\nbed: Back strip\nphoto: secretword.jpg\n---\nRain.\n",
        "---\ndate: 2026-06-20\nphoto: secretword.jpg, private\n---\nRain.\n",
        "---\ndate: 2026-06-20\n---\nRain.\n\n![secretword](secretword.jpg), private\n",
        "---\ndate: 2026-06-20\n---\nThe Back strip ![so](secretword.jpg) is wet.\n",
        "---\ndate: 2026-06-20\nphoto: secretword.jpg\nwork:\n  - weeded Back strip\n  - weeded Arch\n---\n",
        "---\ndate: 2026-06-20\nphoto: secretword.jpg\nwork:\n  - weeded Arch, private\n---\nRain.\n",
        "---\ndate: 2026-06-20\n---\nThe Back strip is wet.\n\n![](secretword.jpg)\n\nRain.\n",
        "---\ndate: 2026-06-20\nphoto: secretword.jpg\nbed: [Arch, Back strip]\n---\nRain.\n",
    ],
)
def test_a_picture_of_something_private_is_neither_written_nor_named(tmp_path: Path, note: str) -> None:
    garden = garden_with(tmp_path, {"2026/rain.md": note}, {"photos/secretword.jpg": jpeg()})
    build_both(garden)
    assert pictures(garden) == {} and "secretword" not in everything(garden)
    assert len(pictures(garden, "home")) == 3 and "<img " in everything(garden, "home")


@pytest.mark.parametrize("left", ["photos", "pictures", "2026", "notes", "Arch"])
def test_pictures_go_with_what_is_left_out(tmp_path: Path, left: str) -> None:
    garden = pea_garden(tmp_path, **{"leave out": f"[{left}]"})
    build_both(garden)
    assert pictures(garden) == {} and "IMG_1" not in everything(garden)
    assert len(pictures(garden, "home")) == 3


def test_a_picture_taken_in_a_year_left_out_is_left_out(tmp_path: Path) -> None:
    note = "---\ndate: 2026-06-20\nphoto: [2023-06-01.jpg, IMG_1.jpg, 2026-06-19.jpg]\n---\nOld pictures.\n"
    photos = {
        "photos/2023-06-01.jpg": jpeg(),
        "photos/IMG_1.jpg": jpeg(green=9, exif=exif_of(taken="2023:07:01 10:00:00")),
        "photos/2026-06-19.jpg": jpeg(green=19),
    }
    garden = garden_with(tmp_path, {"2026/old.md": note}, photos, **{"leave out": "[2023]"})
    build_both(garden)
    assert len(figures(garden, "notes/2026/old.html")) == 1
    assert "2023" not in everything(garden)
    assert len(pictures(garden, "home")) == 9


def test_a_picture_whose_name_has_a_private_word_is_left_out(tmp_path: Path) -> None:
    note = "---\ndate: 2026-06-20\nphoto: Berta in the Arch.jpg\n---\nRain.\n"
    garden = garden_with(
        tmp_path,
        {"2026/rain.md": note},
        {"photos/Berta in the Arch.jpg": jpeg()},
        **{"private words": "[Berta]"},
    )
    build_both(garden)
    assert pictures(garden) == {} and "berta" not in everything(garden).casefold()
    assert len(pictures(garden, "home")) == 3


def test_of_a_mixed_session_a_picture_stays_that_says_what_it_shows(tmp_path: Path) -> None:
    note = (
        "---\ndate: 2026-06-20\nphoto: arch in june.jpg\nwork:\n  - weeded Back strip\n  - weeded Arch\n---\n"
    )
    garden = garden_with(tmp_path, {"2026/rain.md": note}, {"photos/arch in june.jpg": jpeg()})
    built(garden)
    assert len(pictures(garden)) == 3


def test_pictures_no_note_names_stand_with_their_day_in_the_household_only(tmp_path: Path) -> None:
    notes = {"2026/06-20 a.txt": "sowed peas in Arch\n", "2026/06-20 b.txt": "weeded Long border\n"}
    photos = {
        "photos/IMG_20260620_1.jpg": jpeg(green=1),
        "photos/2026-06-20 long border.jpg": jpeg(green=2),
        "photos/IMG_3.jpg": jpeg(green=3, exif=exif_of(taken="2026:06:20 10:00:00")),
        "photos/IMG_20260101.jpg": jpeg(green=4),  # no note of that day
        "photos/IMG_5.jpg": jpeg(green=5),  # no day at all
        "photos/broken.jpg": b"",
    }
    garden = garden_with(tmp_path, notes, photos)
    build_both(garden)
    assert pictures(garden) == {}
    assert len(pictures(garden, "home")) == 9
    site = garden.parent / "home" / "notes" / "2026"
    shown = {file.stem: file.read_text("utf-8").count("<img ") for file in site.glob("*.html")}
    assert shown == {"06-20-a": 2, "06-20-b": 1}


def test_the_originals_names_stand_nowhere(tmp_path: Path) -> None:
    """Of a picture that is shown nothing is told but what its note or name says of it."""
    garden = garden_with(
        tmp_path, {"2026/rain.md": DATED.format(photo="IMG_4711.jpg")}, {"photos/IMG_4711.jpg": jpeg()}
    )
    built(garden)
    assert "4711" not in everything(garden)
