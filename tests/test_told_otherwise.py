"""What is private told in other words and letters: names in disguise, prices in words, figures of the place, people.

Every byte of a public build is searched, as in `test_secrets`.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from test_meant_private import ARCH, public
from test_secrets import found_in

HIDING = """\
garden: Hill
place: {latitude: 46.51287, longitude: 6.61839, elevation: 619 m}
private words: [Zzmiller, Grey Otter Lane]
beds:
  - Arch
  - {name: Back shed strip, also: [BSS], private: yes}
"""

DISGUISED = (
    "The Backshed strip is wet, zzword.",
    "The backshedstrip is wet, zzword.",
    "The Back-shed-strip is wet, zzword.",
    "The Back&#32;shed&#32;strip is wet, zzword.",
    "The Back sh\u00aded str\u200bip is wet, zzword.",
    "The Back<br>shed strip is wet, zzword.",
    "The [Back shed][s] strip is wet, zzword.",
    "The [Back shed](x.html) strip is wet, zzword.",
    "The Back **shed** strip is wet, zzword.",
    "The back_shed_strip is wet, zzword.",
    "The BS\u200bS is wet, zzword.",
    "The B&#83;S is wet, zzword.",
    "![wet](photos/IMG_backshedstrip.jpg) zzword",
    "[zzword](notes/back%20shed%20strip.html)",
    "Zz&#109;iller was here, zzword.",
    "Zz**miller** was here, zzword.",
    "Zz\u00admiller was here, zzword.",
    "Down Grey o**t**ter lane, zzword.",
    "Down greyotterlane, zzword.",
)


@pytest.mark.parametrize("is_line", [False, True])
@pytest.mark.parametrize("written", DISGUISED)
def test_a_hidden_name_in_disguise_hides_its_block(tmp_path: Path, written: str, is_line: bool) -> None:
    text = f"- weeded Arch, {written}\n" if is_line else f"Rain.\n\n{written}\n"
    site, _ = public(tmp_path, HIDING, {"2026-06-01.md": f"{text}\n- watered Arch\n"})
    assert found_in(site, "zzword") == []
    assert found_in(site, "watered arch")


def test_titles_photos_tags_and_file_names_tell_no_hidden_bed(tmp_path: Path) -> None:
    note = "---\ntitle: Rain on backshedstrip\nphoto: IMG_backshedstrip.jpg\ntags: [backshedstrip, tea]\n---\nGood rain.\n"
    site, _ = public(tmp_path, HIDING, {"2026-06-01-backshedstrip.md": note})
    assert found_in(site, "backshedstrip") == []
    assert found_in(site, "good rain")


def test_a_longer_name_of_a_shown_bed_is_no_disguise(tmp_path: Path) -> None:
    yaml = "garden: Hill\nbeds: [Long border end, {name: Long border, private: yes}]\n"
    site, _ = public(tmp_path, yaml, {"2026-06-01.md": "The **Long** border end is wet.\n"})
    assert found_in(site, "is wet")


PRICES = (
    "62.20 euros", "EUR 63.20", "64 quid", "65.20 dollars", "CHF 66.-", "67 zł", "68,20 €", "€69.20", "70p", "71 kr",
    "US$ 72.20", "73.20 GBP",
)  # fmt: skip


@pytest.mark.parametrize("price", PRICES)
def test_a_price_in_prose_is_blanked(tmp_path: Path, price: str) -> None:
    number = "".join(c for c in price if c.isdigit() or c in ".,").strip(".,")
    note = f"The rake was {price}, zzword.\n\n- weeded Arch, the hoe was {price}\n"
    site, _ = public(tmp_path, ARCH, {"2026-06-01.md": note})
    assert not any(number in text for name, text in site.items() if name.endswith("2026-06-01.html"))
    assert found_in(site, "zzword")


@pytest.mark.parametrize("head", ["| Item | Price |", "| Item | Cost |", "| Item | € |", "Item | Paid"])
def test_a_table_of_prices_is_left_out(tmp_path: Path, head: str) -> None:
    note = f"Rain.\n\n{head}\n|---|---|\n| Zzrake | 62.21 |\n\nSun.\n"
    site, _ = public(tmp_path, ARCH, {"2026-06-01.md": note})
    assert (found_in(site, "62.21"), found_in(site, "zzrake")) == ([], [])
    assert found_in(site, "sun.")


@pytest.mark.parametrize(
    "key", ["bought for", "price each", "they cost", "amount-paid", "money_spent", "bought"]
)
def test_keys_that_tell_prices_are_left_out(tmp_path: Path, key: str) -> None:
    site, _ = public(tmp_path, ARCH, {"2026-06-01.md": f"---\n{key}: 62.22\nmood: zzword\n---\nRain.\n"})
    assert found_in(site, "62.22") == []
    assert found_in(site, "zzword")


FIGURES = (
    "46.51287", "6.61839", "46.5128, 6.6183", "46,51287", "619 m", "46.51287,6.61839", "46°30'46\"N 6°37'06\"E",
    "geo:46.5129,6.6184", "46.51287°",
)  # fmt: skip


@pytest.mark.parametrize("figure", FIGURES)
def test_figures_of_the_place_are_blanked_in_notes(tmp_path: Path, figure: str) -> None:
    note = (
        f"---\ntitle: Zzword at {figure}\ntags: ['{figure}']\nspot: '{figure}'\ncoords: zzcoords\nmap: zzmap\nwhere: zzwhere\n"
        f"---\nAt {figure} it rained, [map](https://example.org/?at={figure.replace(' ', '')}).\n\n- weeded Arch, at {figure}\n"
    ).replace("'46°30'46\"N 6°37'06\"E'", "46°30'46\"N 6°37'06\"E")
    site, _ = public(tmp_path, HIDING, {"2026-06-01.md": note})
    for secret in {figure, figure.replace(" ", ""), "zzcoords", "zzmap", "zzwhere"}:
        assert found_in(site, secret) == []
    assert found_in(site, "zzword")


def test_amounts_are_no_figures_of_the_place(tmp_path: Path) -> None:
    yaml = "garden: Hill\nplace: {latitude: 46.5, longitude: 6.6, elevation: 620 m}\nbeds: [Arch]\n"
    note = "- picked 620 g peas from Arch\n- picked 46.5 kg squash from Arch\n\nAt 46.5 north.\n"
    site, _ = public(tmp_path, yaml, {"2026-06-01.md": note})
    assert found_in(site, "620 g")
    assert found_in(site, "46.5 kg")
    assert found_in(site, "at 46.5 north") == []


PEOPLE = (
    ("---\nby: zzanna\n---\nZzanna helped.\n", "helped"),
    ("---\nby: Zzanna Berg\n---\nzzanna helped.\n", "helped"),
    ("- picked 2 kg peas from Arch, gave away 400 g to zzmarta\n", "gave away"),
    ("- picked 2 kg peas from Arch, gave away 400 g to the Zzmillers\n", "gave away"),
    ("- gave away 400 g peas to my neighbour Zzlisa\n\nZzlisa was glad.\n", "glad"),
    ("- gave 400 g peas to zztom and zzkim, weeded Arch\n", "weeded"),
    ("- Zzjim watered Arch\n\nThanks to zz's rake, Zzjim.\n", "watered"),
    ("- Zzjim and Zzbea watered Arch\n", "watered"),
    ("- Zzpeter: picked 2 kg peas from Arch\n", "picked"),
    ("- watered Arch (Zzkarl)\n", "watered"),
    ("- picked 2 kg peas from Arch, zzheidi took half\n", "picked"),
    ("- took cuttings of sage from Zzmax\n", "took cuttings"),
    ("- planted 3 leeks in Arch from zzmax\n", "planted"),
    ("- bought 3 leeks from zzmax, planted in Arch\n", "planted"),
    ("---\nhelped: zzanna\n---\nRain.\n", "rain"),
    ("---\nsold to: Zzanna\nneighbours: zzbea\nmy guests: Zzkim\nname: Zzfred\nwith: zzgus\n---\nRain, zzbea.\n", "rain"),
)  # fmt: skip


@pytest.mark.parametrize(("note", "stays"), PEOPLE)
def test_people_are_blanked_however_they_are_told(tmp_path: Path, note: str, stays: str) -> None:
    site, _ = public(tmp_path, ARCH, {"2026-06-01.md": note.replace("zz's", "the")})
    assert found_in(site, "zz") == []
    assert found_in(site, stays)


@pytest.mark.parametrize(("note", "stays"), PEOPLE)
def test_people_who_are_opened_all_stay(tmp_path: Path, note: str, stays: str) -> None:
    site, _ = public(tmp_path, "garden: Hill\nshow: [people]\nbeds: [Arch]\n", {"2026-06-01.md": note})
    assert found_in(site, "zz")


NO_PEOPLE = (
    "- picked 2 kg peas from Arch, gave away 400 g to compost\n- picked 1 kg peas from Zzshed\n",
    "- moved 3 leeks from Zzpot to Arch\n",
    "- Then watered Arch, zzword\n- Carefully weeded Arch\n",
    "- Rain, watered Arch, zzword\n",
)


@pytest.mark.parametrize("note", NO_PEOPLE)
def test_what_is_nobody_stays(tmp_path: Path, note: str) -> None:
    site, _ = public(tmp_path, ARCH, {"2026-06-01.md": note})
    assert found_in(site, "zz")
    assert not any("…" in text for name, text in site.items() if name.startswith("notes/2026"))


def test_a_year_left_out_is_named_nowhere(tmp_path: Path) -> None:
    notes = {
        "2018-10-05.md": "- planted 20 garlic in Arch\n",
        "2019-04-05.md": "- weeded Arch\n- sowed peas in Arch\n",
        "2020-07-20.md": "- cleared garlic from Arch\n",
    }
    shown, _ = public(tmp_path, ARCH, notes)
    assert "seasons/2019.html" in shown
    site, _ = public(tmp_path, f"{ARCH}leave out: [2019]\n", notes)
    assert {name for name, text in site.items() if "2019" in name or "2019" in text} == set()
    assert {"seasons/2018.html", "seasons/2020.html"} <= site.keys()
