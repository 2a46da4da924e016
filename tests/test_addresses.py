"""Addresses: written on every disk, one page each, all scripts kept; what changes them."""

from __future__ import annotations

import unicodedata
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leafmould.output.names import is_safe
from leafmould.output.write import write_site
from leafmould.pages.addresses import bed_addresses, crop_addresses, note_addresses
from leafmould.values.file_names import LONGEST, disk_name, length
from leafmould.values.names import slug


@pytest.mark.parametrize(
    ("written", "address"),
    [
        ("2026/06-20-long-border", "notes/2026/06-20-long-border.html"),
        ("2026/06-20-long-border#2", "notes/2026/06-20-long-border.2.html"),
        ("2026/Möhre", "notes/2026/möhre.html"),
        ("2026/Mo\u0308hre", "notes/2026/möhre.html"),
        ("2026/Грядка у забора", "notes/2026/грядка-у-забора.html"),
        ("2026/Κήπος", "notes/2026/κήποσ.html"),
        ("2026/トマトの畝", "notes/2026/トマトの畝.html"),
        ("2026/番茄", "notes/2026/番茄.html"),
        ("2026/حديقة الخضار", "notes/2026/حديقة-الخضار.html"),
        ("2026/הגינה", "notes/2026/הגינה.html"),
        ("2026/हिन्दी बाग", "notes/2026/हिन्दी-बाग.html"),
        ("2026/สวนครัว", "notes/2026/สวนครัว.html"),
        ("2026/தோட்டம்", "notes/2026/தோட்டம்.html"),
        ("2026/한국 텃밭", "notes/2026/한국-텃밭.html"),
        ("2026/bed 🌱\ufe0f", f"notes/2026/{slug('bed 🌱️')}.html"),
    ],
)
def test_a_note_stands_under_its_own_path_in_its_own_letters(written: str, address: str) -> None:
    assert note_addresses([written]) == {written: address}
    assert is_safe(address)


@pytest.mark.parametrize("name", ["con", "prn", "aux", "nul", "com1", "lpt9"])
def test_a_name_that_windows_keeps_for_itself_gets_a_suffix(name: str) -> None:
    page = bed_addresses([name])[name]
    assert page.startswith(f"beds/{name}-")
    assert is_safe(page)
    assert not is_safe(f"beds/{name}.html")
    assert is_safe(note_addresses([f"{name}/2026-06-20"])[f"{name}/2026-06-20"])


@pytest.mark.parametrize(
    "name", ["x" * 240, "я" * 80, "番" * 80, "𠮷" * 80, "한" * 80, "ி" * 80, "a\u0301\u0323" * 60, "ŵ" * 300]
)
def test_a_long_name_is_cut_within_what_disks_take(name: str, tmp_path: Path) -> None:
    pages = note_addresses([f"2026/{name}", f"2026/{name}a", f"2026/{name}#12"])
    assert len({disk_name(page) for page in pages.values()}) == 3
    for page in pages.values():
        assert max(map(length, page.split("/"))) <= LONGEST
    write_site(tmp_path / "site", dict.fromkeys(pages.values(), b"page"))


def test_a_path_deeper_than_systems_take_is_cut_too(tmp_path: Path) -> None:
    deep = "/".join(["a very long name of a folder of notes"] * 60)
    pages = note_addresses([f"{deep}/one", f"{deep}/two"])
    assert len(set(pages.values())) == 2
    assert all(length(page) < 1000 for page in pages.values())
    write_site(tmp_path / "site", dict.fromkeys(pages.values(), b"page"))


def test_what_a_forgetful_disk_takes_for_one_stands_apart() -> None:
    beds = [
        "Straße",
        "strasse",
        "STRASSE",
        "Möhre",
        "Mo\u0308hre",
        "möhre",
        "Bed 1/2",
        "bed 1-2",
        "C+",
        "C",
        "index",
    ]
    pages = bed_addresses(beds)
    assert len({disk_name(page) for page in pages.values()}) == len(beds)
    assert pages["strasse"] == "beds/strasse.html"  # the plain name keeps the plain address
    assert pages["index"] != "beds/index.html"


names = st.text(st.characters(codec="utf-8"), min_size=1, max_size=90).map(lambda text: text.replace("#", ""))
paths = st.lists(names, min_size=1, max_size=3).map("/".join)


@given(ids=st.lists(paths, max_size=8, unique=True))
def test_every_address_is_safe_and_nobody_elses(ids: list[str]) -> None:
    for pages in (note_addresses(ids), bed_addresses(ids), crop_addresses(ids)):
        assert all(map(is_safe, pages.values()))
        assert len({disk_name(page) for page in pages.values()}) == len(ids)


@given(ids=st.lists(paths, min_size=2, max_size=8, unique=True))
def test_an_address_does_not_depend_on_the_order_of_notes(ids: list[str]) -> None:
    assert note_addresses(ids) == note_addresses(list(reversed(ids)))


@given(name=names)
def test_composed_or_not_a_name_has_one_slug(name: str) -> None:
    assert slug(unicodedata.normalize("NFD", name)) == slug(unicodedata.normalize("NFC", name))
    assert slug(slug(name)) == slug(name)
