"""The gardener's own pages, the garden walk and the words of a season: as typed under pages/, and as shown."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from textwrap import dedent

import pytest
from bs4 import BeautifulSoup, Tag

from leafmould.pages.walk import Stop, cut_into_stops
from photo_garden import built, garden_with, jpeg, page, pictures, told

NOTES = {
    "2025/05-01.md": "---\ndate: 2025-05-01\nwork:\n  - sowed carrots in Long border\n  - sowed pea in Back strip\n---\n",
    "2026/03-01.md": "---\ndate: 2026-03-01\nwork:\n  - sowed leeks in Long border\n  - sowed kale in Back strip\n---\n",
    "2026/04-12.md": "---\ndate: 2026-04-12\nphoto: old-arch.jpg\nbed: Arch\nwork:\n  - sowed pea 'Meteor' in Arch\n---\n",
}


def with_pages(
    folder: Path, pages: Mapping[str, str], photos: Mapping[str, bytes] | None = None, **ways: str
) -> Path:
    garden = garden_with(folder, NOTES, {"photos/old-arch.jpg": jpeg((60, 40)), **(photos or {})}, **ways)
    for name, text in pages.items():
        file = garden / "pages" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(dedent(text), "utf-8")
    return garden


def tree(garden: Path, name: str) -> BeautifulSoup:
    return BeautifulSoup(page(garden, name), "html.parser")


def main(garden: Path, name: str) -> str:
    """What a page says, as one line of words."""
    found = tree(garden, name).find("main")
    assert isinstance(found, Tag)
    return " ".join(found.get_text(" ").split())


def links(garden: Path, name: str, select: str) -> dict[str, str]:
    return {a.get_text(strip=True): str(a["href"]) for a in tree(garden, name).select(select)}


def test_a_free_page_is_shown_with_its_names_linked_and_found_from_every_page(tmp_path: Path) -> None:
    garden = with_pages(tmp_path, {"about.md": "# About us\n\nThe **Arch** faces south.\n"})
    assert told(built(garden)) == []
    assert main(garden, "pages/about.html") == "About us The Arch faces south."
    assert links(garden, "pages/about.html", "main a") == {"Arch": "../beds/arch.html"}
    for name in ("index.html", "beds/arch.html", "pages/about.html"):
        assert "About us" in links(garden, name, ".foot a"), name


@pytest.mark.parametrize(
    ("text", "title", "words"),
    [
        ("---\ntitle: Who we are\n---\nThree of us.\n", "Who we are", "Three of us."),
        ("---\ntitle: Who we are\n---\n# Who we are\n\nThree of us.\n", "Who we are", "Three of us."),
        ("---\ntitle: Who we are\n---\n# In short\n\nThree of us.\n", "Who we are", "In short Three of us."),
        ("Three of us.\n", "About us", "Three of us."),
        ("#hashtag is no heading\n", "About us", "#hashtag is no heading"),
    ],
)
def test_a_title_comes_from_the_header_the_first_heading_or_the_files_name(
    tmp_path: Path, text: str, title: str, words: str
) -> None:
    garden = with_pages(tmp_path, {"about-us.txt": text})
    built(garden)
    assert main(garden, "pages/about-us.html") == f"{title} {words}"


def test_pages_lead_to_each_other_and_to_notes_by_their_files(tmp_path: Path) -> None:
    text = "See [the other](rules/water.md), [a note](../notes/2026/04-12.md) and [nothing](gone.md).\n"
    garden = with_pages(tmp_path, {"about.md": text, "rules/water.md": "Evenings only.\n"})
    built(garden)
    assert links(garden, "pages/about.html", "main a") == {
        "the other": "../pages/rules/water.html",
        "a note": "../notes/2026/04-12.html",
    }


def test_a_picture_of_a_free_page_is_made_and_stands_on_its_beds_page_too(tmp_path: Path) -> None:
    photos = {"photos/2026-05-01 arch.jpg": jpeg((70, 40), green=90)}
    garden = with_pages(tmp_path, {"about.md": "Look.\n\n![The Arch in May](2026-05-01 arch.jpg)\n"}, photos)
    assert told(built(garden)) == []
    assert len(pictures(garden)) == 2 * 2  # two pictures, each 40 pixels wide and as it is
    assert len(tree(garden, "pages/about.html").select("main img")) == 1
    assert "../pages/about.html" in {
        str(a["href"]) for a in tree(garden, "beds/arch.html").select(".plate a")
    }


def test_a_picture_that_is_not_there_is_told_with_its_line(tmp_path: Path) -> None:
    garden = with_pages(tmp_path, {"about.md": "# About\n\n![The gate](gate.jpg)\n"})
    assert told(built(garden)) == [
        'error: pages/about.md:3: body: "gate.jpg" is neither in photos/ nor beside the note.'
    ]
    assert main(garden, "pages/about.html") == "About Picture: gate.jpg, The gate"


def test_keys_that_only_a_note_has_a_use_for_are_told_once(tmp_path: Path) -> None:
    garden = with_pages(
        tmp_path, {"about.md": "---\nwork:\n  - sowed beetroot in Arch\ndid: sowed\n---\nHello.\n"}
    )
    assert told(built(garden)) == [
        'hint: pages/about.md:1: did: "did" and "work" count in notes only. A page under pages/ is shown, and '
        "nothing is reckoned from it."
    ]
    assert "beetroot" not in page(garden, "crops/index.html")


def test_private_pages_and_words_stay_at_home(tmp_path: Path) -> None:
    pages = {
        "us.md": "---\nprivate: yes\n---\nOnly for us.\n",
        "about.md": "The Arch is old.\n\nThe Back strip holds a secret.\n\nAnna lives here.\n",
        "back-strip.md": "Everything here is told of the Back strip.\n",
    }
    garden = with_pages(tmp_path, pages, **{"private words": "[Anna]"})
    report = built(garden)
    assert main(garden, "pages/about.html") == "About The Arch is old. … lives here."
    assert not (garden.parent / "site/pages/us.html").exists()
    assert not (garden.parent / "site/pages/back-strip.html").exists()
    assert "secret" not in " ".join(page(garden, name) for name in ("index.html", "pages/about.html"))
    assert report.made.left_out.notes == 1
    built(garden, household=True, to="home")
    assert "Only for us." in page(garden, "pages/us.html", "home")


def test_a_page_dated_later_than_today_is_not_there_yet(tmp_path: Path) -> None:
    garden = with_pages(tmp_path, {"autumn.md": "---\ndate: 2026-10-01\n---\nLater.\n"})
    built(garden)
    assert not (garden.parent / "site/pages/autumn.html").exists()


def test_a_page_named_as_a_season_opens_it_and_has_no_page_of_its_own(tmp_path: Path) -> None:
    text = "---\ntitle: The dry year\nphoto: old-arch.jpg\n---\nIt did not rain.\n"
    garden = with_pages(tmp_path, {"2025.md": text, "1999.md": "Before the record.\n"})
    built(garden)
    words = main(garden, "seasons/2025.html")
    assert "The dry year" in words and "It did not rain." in words
    assert len(tree(garden, "seasons/2025.html").select(".season-opening img")) == 1
    assert not (garden.parent / "site/pages/2025.html").exists()
    assert (garden.parent / "site/pages/1999.html").exists()


# The garden walk


def test_without_a_walk_there_is_none(tmp_path: Path) -> None:
    garden = with_pages(tmp_path, {"about.md": "Hello.\n"})
    built(garden)
    assert "Walk" not in links(garden, "index.html", ".masthead nav a")


def test_a_walk_leads_from_stop_to_stop_with_what_grows_there(tmp_path: Path) -> None:
    text = """\
        # Round the garden

        Mind the step.

        ## By the door

        The **Arch** is old.

        ## At the back

        The Long border, and beyond it the Back strip.
        """
    garden = with_pages(tmp_path, {"walk.md": text})
    assert told(built(garden, household=True)) == []
    assert links(garden, "index.html", ".masthead nav a")["Walk"] == "walk/index.html"
    assert links(garden, "walk/index.html", "main h2 a") == {
        "By the door": "../walk/by-the-door.html",
        "At the back": "../walk/at-the-back.html",
    }
    first = main(garden, "walk/by-the-door.html")
    assert first.startswith("Stop 1 of 2 · At the back → By the door The Arch is old.")
    assert "pea ‘Meteor’" in first
    assert len(tree(garden, "walk/by-the-door.html").select(".plate img")) == 1
    assert links(garden, "walk/by-the-door.html", ".neighbours a") == {
        "Round the garden": "../walk/index.html",
        "At the back →": "../walk/at-the-back.html",
    }
    second = main(garden, "walk/at-the-back.html")
    assert "Long border leek" in second and "Back strip kale" in second
    assert not tree(garden, "walk/at-the-back.html").select(".plate img")  # the one picture was shown before


def test_a_public_walk_passes_by_a_private_bed(tmp_path: Path) -> None:
    text = "## One\n\nThe Arch.\n\n## The Back strip\n\nNobody should see it.\n\n## Two\n\nThe Long border.\n"
    garden = with_pages(tmp_path, {"walk.md": text})
    built(garden)
    assert list(links(garden, "walk/index.html", "main h2 a")) == ["One", "Two"]


def test_a_walk_that_names_no_place_says_so(tmp_path: Path) -> None:
    garden = with_pages(tmp_path, {"walk.md": "Just go.\n"})
    built(garden)
    assert "Just go. No stops yet" in main(garden, "walk/index.html")


def test_stops_of_one_name_have_pages_of_their_own(tmp_path: Path) -> None:
    garden = with_pages(
        tmp_path, {"walk.md": "## Stairs\n\nUp.\n\n## Stairs\n\nDown.\n\n## Index\n\nHome.\n"}
    )
    built(garden)
    assert [str(a["href"]) for a in tree(garden, "walk/index.html").select("main h2 a")] == [
        "../walk/stairs.html",
        "../walk/stairs-2.html",
        *[str(a["href"]) for a in tree(garden, "walk/index.html").select("main h2 a")][2:],
    ]
    assert len(list((garden.parent / "site/walk").glob("*.html"))) == 4


@pytest.mark.parametrize(
    ("body", "opening", "stops"),
    [
        ("", "", ()),
        ("Only words.", "Only words.", ()),
        ("Hello.\n\n## A\n\nx\n\n### part\n\ny\n\n## B", "Hello.", (("A", "x\n\n### part\n\ny"), ("B", ""))),
        ("Hello.\n\n1. the Arch\n2. the border,\n   which is long\n\n   and wide\n", "Hello.", (("", "the Arch"), ("", "the border,\nwhich is long\n\nand wide"))),
        ("Hello.\n\nThe Arch is old.\n\nVery old.\n\nThe Long border.", "Hello.", (("", "The Arch is old.\n\nVery old."), ("", "The Long border."))),
    ],
)  # fmt: skip
def test_where_a_stop_begins(body: str, opening: str, stops: tuple[tuple[str, str], ...]) -> None:
    found = cut_into_stops(body, lambda text: "Arch" in text or "border" in text)
    assert found == (opening, tuple(Stop(title=title, body=words) for title, words in stops))


def test_a_page_of_many_parts_names_them_before_the_first(tmp_path: Path) -> None:
    body = "Words before.\n\n" + "".join(
        f"## Part {name}\n\nText.\n\n" for name in ("a", "b", "c", "d", "*e*")
    )
    short = "[there](long.md#part-5)\n\n## One\n\n## Two\n"
    garden = with_pages(tmp_path, {"long.md": body, "short.md": short})
    assert told(built(garden)) == []
    parts = links(garden, "pages/long.html", "nav.near-here a")
    assert parts == {f"Part {name}": f"#part-{number}" for number, name in enumerate("abcde", start=1)}
    assert [h["id"] for h in tree(garden, "pages/long.html").select("h2")] == [
        f"part-{n}" for n in range(1, 6)
    ]
    assert links(garden, "pages/short.html", ".prose a") == {"there": "../pages/long.html#part-5"}
    assert [h.get_text() for h in tree(garden, "pages/short.html").select("h2")] == ["One", "Two"]
