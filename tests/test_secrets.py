"""Nothing leaks: a secret word in every kind of place, and every byte of a public build searched for it.

The household build of the same garden must hold the words, so that the search is known to find them.
"""

from __future__ import annotations

import html
import json
import re
import unicodedata
from datetime import date
from pathlib import Path
from urllib.parse import quote, quote_plus

import pytest

from leafmould.build import build
from leafmould.values.names import slug

ON = date(2026, 7, 15)

GARDEN = """\
# yamlcommentword
garden: Stair Hill of the Privatewordone family
place: {latitude: 46.512873, longitude: 6.618394, elevation: 6197 m}
people: 3
units: unitsmistakeword
caretaker: gardenextraword
measures: {tray: 400 g}
show: [notaword]
leave out: [Leftbedword, leftcropword, 2019]
private words: [privatewordone, Grünspëcht & Söhne, Privatewordtwo Lane]
beds:
  - {name: Arch, also: [bow], size: 1.2 x 6 m}
  - {name: Long border, parts: [north half], at: 2 x 3 m, size: 1.2 x 6 m, sun: full but for Privatewordone Villa, water: from the Hiddenbedword strip}
  - {name: Privatewordone strip}
  - name: Hiddenbedword strip
    also: [hiddenalsoword]
    parts: [north half, hiddenpartword]
    soil: hiddensoilword
    at: 7 x 3 m
    size: 1 x 2 m
    sun: hiddensunword
    mood: hiddenbedextraword
    was: Hiddenwasword patch
    private: yes
  - {name: Leftbedword terrace, also: [Leftbedword]}
"""

CROPS = """\
leftcropword:
  also: [leftaliasword]
  varieties: [Leftvarietyword]
  family: Fabaceae
onlyprivatecropword:
  also: [onlyprivatealiasword]
  varieties: [Onlyprivatevarietyword]
  family: Brassicaceae
"""

SEEDS = """\
crop,variety,year,amount,from,price,tried,tried in,note
pea,Meteor,2024,half of Tinpersonword's,Tinsellerword,7531.86,9 of 10,2025,tinremarkword
leek,,2025,1 packet,Privatewordone,,,,from the Hiddenbedword strip
kale,Tinhiddenvarietyword,2025,some,,,,,saved in the Hiddenbedword strip
leftcropword,Tinleftvarietyword,2025,some,,,,,
chard,Tinyearvarietyword,2019,some,,,,,
"""

NOTES = {
    "2026/03-01-privatefileword.md": """\
        ---
        date: 2026-03-01
        bed: Arch
        title: Privatetitleword
        private: yes
        tags: [privatetagword]
        privatekeyword: privatevalueword
        photo: privatephotoword.jpg
        lesson: Next year privatelessonword
        work:
          - sowed onlyprivatecropword 'Onlyprivatevarietyword' in Arch, privateremarkword
          - picked 2 kg privatenewcropword from Privatenewbed
        ---
        A privatebodyword for nobody else, and ![](privatepictureword.jpg).
        """,
    "2026/04-02-arch.md": """\
        ---
        date: 2026-04-02 # headercommentword
        bed: Arch
        by: Bypersonword
        author: authorpersonword
        price: 4711 pricekeyword
        work:
          - sowed pea 'Meteor' in Arch
          - bought 2 packets beetroot 'Boltardy' from Sellerword, 8675.31
          - sowed radish in Arch, lineremarkword, private
          - weeded Hiddenbedword strip, hiddenlineword
          - planted 3 leek in hiddenalsoword, hiddenlinetwoword
          - weeded the hiddenpartword, hiddenlinethreeword
          - picked 300 g leftcropword 'Leftvarietyword' from Arch
          - picked 200 g mint from Leftbedword terrace, leftlineword
          - weeded Privatewordone strip
        ---
        Rain at last. <!-- bodycommentword -->

        The Hiddenbedword strip is wet, hiddenproseword says so.

        ## Hiddenwasword patch

        hiddensectionword under its heading.

        ## Other things

        The leftaliasword came up, leftproseword.

        In 2019 it was dry, yearproseword.

        - money talk bodylineword, private
        - Bypersonword came with PRIVATEWORDONE and Grünspëcht & Söhne of Privatewordtwo Lane.
        """,
    "2026/04-03-privatewordone.md": """\
        ---
        date: 2026-04-03
        title: Tea with Privatewordone
        tags: [privatewordone, tea]
        company: privatewordone
        lesson: Next year without privatewordone
        work:
          - sowed beetroot 'Privatewordone Red' in Long border, with privatewordone's rake
        ---
        Much said.
        """,
    "2026/04-04-hiddenbedword.md": """\
        ---
        date: 2026-04-04
        bed: [Long border, Hiddenbedword strip]
        title: hiddentitleword
        work:
          - watered Long border
        ---
        Both hiddenbothword.
        """,
    "2026/04-05-hiddenonly.md": """\
        ---
        date: 2026-04-05
        bed: hiddenalsoword
        did: sowed
        crop: hiddencropword
        ---
        hiddenonlybodyword
        """,
    "2019/05-05-yearfileword.md": """\
        ---
        date: 2019-05-05
        bed: Arch
        work:
          - sowed spinach 'Yearvarietyword' in Arch
        ---
        yearbodyword
        """,
    "2026/06-01-loose.txt": """\
        ## 2026-06-01
        - picked 400 g pea from Arch
        - picked 100 g radish from Arch, looselineword, private
        ## 2026-06-02
        - weeded Long border

        Anna was here, and hiddenalsoword is looseproseword.
        """,
    "2027/01-01-futurefileword.md": """\
        ---
        date: 2027-01-01
        bed: Arch
        ---
        futurebodyword
        """,
}

PAGES = {
    "privatepagefileword.md": "---\nprivate: yes\ntitle: privatepagetitleword\n---\nprivatepagebodyword",
    "about-privatewordone.md": "# About Privatewordone\n\nThe Arch is old.\n\nThe Hiddenbedword strip, pageproseword.",
    "walk.md": "# A walk\n\n## The Arch\n\nHere.\n\n## The hiddenalsoword\n\nwalkhiddenword.\n\n## Long border\n\nwalkline, walklineword, private",
    "2026.md": "The year of Privatewordone.\n\nIn 2019 seasonproseword.",
    "2019.md": "leftseasonword 2019",
}

RECORDS = (
    "year,bed,crop\n2018,Hiddenbedword strip,onlyprivatecropword\n2017,Arch,leftcropword\n2019,Arch,pea\n"
)

WEATHER = "date,low,high,rain\n2019-07-01,1,37.7,2\n2026-07-01,2,23.4,0\n2026-07-16,3,41.93,0\n"
NORMALS = "month,low,high\n" + "".join(f"{month},6.137,16.284\n" for month in range(1, 13))

NOWHERE = {
    "yamlcommentword",
    "headercommentword",
    "bodycommentword",
    "46.512873",
    "6.618394",
    "6197",
    "gardenextraword",
    "futurebodyword",
    "41.93",
    "6.137",
    "16.284",
}
"""What even the household build does not show: comments, the exact place, settings it does not know, the future,
and what is usual of a month more finely than in whole degrees."""

WORDS = """
privatefileword privatetitleword privatetagword privatekeyword privatevalueword privatephotoword
privatelessonword onlyprivatecropword onlyprivatealiasword onlyprivatevarietyword privateremarkword
privatenewcropword privatenewbed privatebodyword privatepictureword
bypersonword authorpersonword pricekeyword unitsmistakeword sellerword 8675.31 lineremarkword
hiddenbedword hiddenlineword hiddenlinetwoword hiddenlinethreeword hiddenalsoword hiddenpartword
hiddenproseword hiddensectionword hiddenwasword hiddentitleword hiddenbothword hiddencropword
hiddenonlybodyword hiddenbedextraword hiddensoilword hiddensunword
leftcropword leftaliasword leftvarietyword leftbedword leftlineword leftproseword
yearproseword yearfileword yearvarietyword yearbodyword
tinpersonword tinsellerword 7531.86 tinremarkword tinhiddenvarietyword tinleftvarietyword tinyearvarietyword
pageproseword walkhiddenword walklineword seasonproseword leftseasonword
privatepagefileword privatepagetitleword privatepagebodyword
bodylineword looselineword looseproseword notaword 37.7 futurefileword privatewordone privatewordtwo
"""

SECRETS = sorted({*NOWHERE, *WORDS.split(), "Grünspëcht & Söhne"})

QUIET = {"onlyprivatealiasword"}
"""Names of things that a note calls by another name: no build has a reason to show them."""


def write_garden(folder: Path) -> Path:
    """The garden on disk, as the gardener keeps it."""
    files = {f"notes/{name}": text for name, text in NOTES.items()}
    files |= {f"pages/{name}": text for name, text in PAGES.items()}
    files |= {"garden.yaml": GARDEN, "crops.yaml": CROPS, "records/beforehand.csv": RECORDS}
    files |= {"records/seeds.csv": SEEDS, "records/weather.csv": WEATHER, "records/normals.csv": NORMALS}
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        lines = text.split("\n")
        path.write_text("\n".join(line.removeprefix(" " * 8) for line in lines), "utf-8")
    return folder


def forms(secret: str) -> set[str]:
    """How a word may look in a page, an address, an id or a data file, folded."""
    written = {
        secret,
        html.escape(secret),
        quote(secret),
        quote_plus(secret),
        slug(secret),
        json.dumps(secret)[1:-1],
    }
    written |= {secret.replace(" ", "-"), secret.replace(" ", "_")}
    return {folded(form) for form in written}


def folded(text: str) -> str:
    return unicodedata.normalize("NFKC", text).casefold()


DIGEST = re.compile(r"\b\d+-[0-9a-f]{24}\b")
"""In the list of files: any four figures of a secret may stand in one by chance."""


def everything(site: Path) -> dict[str, str]:
    """Every file's name and bytes as text, folded; undecodable bytes would be a fault by themselves."""
    files = [p for p in sorted(site.rglob("*")) if p.is_file()]
    found = {p.relative_to(site).as_posix(): p.read_text("utf-8") for p in files}
    found["made.txt"] = DIGEST.sub("", found["made.txt"])
    return {name: folded(f"{name}\n{text}") for name, text in found.items()}


def found_in(site: dict[str, str], secret: str) -> list[str]:
    return [name for name, text in site.items() if any(form in text for form in forms(secret))]


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> dict[bool, dict[str, str]]:
    """The garden built for the household, then in public from the same cache."""
    folder = write_garden(tmp_path_factory.mktemp("garden"))
    built = {}
    for household in (True, False):
        out = tmp_path_factory.mktemp("site") / "out"
        build(folder, to=out, on=ON, household=household)
        built[household] = everything(out)
    return built


def test_no_secret_is_in_a_public_build(sites: dict[bool, dict[str, str]]) -> None:
    leaks = {secret: where for secret in SECRETS if (where := found_in(sites[False], secret))}
    assert leaks == {}


def test_the_household_build_holds_them(sites: dict[bool, dict[str, str]]) -> None:
    missed = [s for s in SECRETS if s not in NOWHERE | QUIET and not found_in(sites[True], s)]
    assert missed == []


def test_the_household_build_shows_neither_comments_nor_the_place(sites: dict[bool, dict[str, str]]) -> None:
    shown = {secret: where for secret in NOWHERE if (where := found_in(sites[True], secret))}
    assert shown == {}


def test_what_is_not_secret_is_in_both(sites: dict[bool, dict[str, str]]) -> None:
    for word in ("long border", "meteor", "boltardy", "rain at last", "other things"):
        assert found_in(sites[True], word), word
        assert found_in(sites[False], word), word


def test_no_problem_stands_in_a_public_build(sites: dict[bool, dict[str, str]]) -> None:
    assert "data/problems.json" in sites[True]
    assert not [name for name in sites[False] if "problem" in name]


def test_no_total_gives_a_private_picking_away(sites: dict[bool, dict[str, str]]) -> None:
    """The radish of the private line was the only one: nothing of it may count."""
    assert not found_in(sites[False], "radish_")
    assert found_in(sites[True], "radish_")


def test_every_household_page_says_so(sites: dict[bool, dict[str, str]]) -> None:
    pages = {name: text for name, text in sites[True].items() if name.endswith(".html")}
    assert [name for name, text in pages.items() if "household" not in text] == []
    assert [n for n, text in sites[False].items() if n.endswith(".html") and "household copy" in text] == []


def test_a_public_build_from_a_clean_cache_is_the_same(
    tmp_path: Path, sites: dict[bool, dict[str, str]]
) -> None:
    build(write_garden(tmp_path / "garden"), to=tmp_path / "out", on=ON, household=False)
    assert everything(tmp_path / "out") == sites[False]


SUBJECTS_NOTE = """\
---
date: 2026-04-02
bed: Arch
title: Titleword
tags: [tagword]
mood: moodword
photo: photoword.jpg
lesson: Next year lessonword
work:
  - sowed pea 'Meteor' in Arch, remarkword
  - bought 2 packets beetroot 'Seedvarietyword' from Sellerword, 8675.31
  - bought 3 tomato plants from Sellerword's stall for £44.55
  - saved seed from runner beans, savedseedword
  - picked 3 kg pea from Arch, gave away 400 g to Recipientword, stored 1 kg in fateword
  - put up 6 jars sauceword sauce from 4 kg tomatoes
  - stored 12 kg beetroot in the cellarword
  - tested soil in Arch: pH 6.4, phword
  - penned 4 hens on Arch, hensword
  - collected 9 eggs, eggword
  - frost -3, frostword
---
Bodyword ![picture](pictureword.jpg) with Recipientword.
"""

ALWAYS_OUT = {"sellerword", "recipientword", "8675.31", "44.55"}

OUT_WITH = {
    "notes": "titleword tagword moodword photoword lessonword remarkword savedseedword fateword cellarword "
    "hensword eggword frostword phword bodyword pictureword",
    "photos": "photoword pictureword",
    "seeds": "seedvarietyword savedseedword",
    "larder": "fateword sauceword cellarword",
    "soil": "phword soilkindword",
    "animals": "hensword eggword",
    "weather": "frostword",
    "people": "",
    "prices": "",
    "plan": "",
}


@pytest.mark.parametrize("subject", OUT_WITH)
def test_what_is_left_out_goes_and_the_rest_stays(tmp_path: Path, subject: str) -> None:
    (tmp_path / "notes").mkdir()
    (tmp_path / "notes/2026-04-02.md").write_text(SUBJECTS_NOTE, "utf-8")
    yaml = f"garden: Hill\nleave out: [{subject}]\nshow: [problems]\nbeds: [{{name: Arch, soil: soilkindword}}]\n"
    (tmp_path / "garden.yaml").write_text(yaml, "utf-8")
    build(tmp_path, to=tmp_path / "site", on=ON, household=False)
    site = everything(tmp_path / "site")
    words = {word for told in OUT_WITH.values() for word in told.split()} - {"soilkindword"}
    gone = {word for word in words | ALWAYS_OUT if not found_in(site, word)}
    assert gone == ALWAYS_OUT | (set(OUT_WITH[subject].split()) - {"soilkindword"})
    assert subject != "soil" or not found_in(site, "soilkindword")


def test_what_is_opened_is_shown(tmp_path: Path) -> None:
    (tmp_path / "notes").mkdir()
    (tmp_path / "notes/2026-04-02.md").write_text(SUBJECTS_NOTE, "utf-8")
    yaml = "garden: Hill\nshow: [people, prices, problems]\nbeds: [Arch, {name: Keptword, private: yes}]\n"
    (tmp_path / "garden.yaml").write_text(yaml, "utf-8")
    (tmp_path / "notes/2026-04-03.md").write_text(
        "---\nagain: answerword\nwork: sowed pea in Keptwrd\n---\n", "utf-8"
    )
    build(tmp_path, to=tmp_path / "site", on=ON, household=False)
    site = everything(tmp_path / "site")
    assert {word for word in ALWAYS_OUT if not found_in(site, word)} == set()
    assert "answerword" in site["problems.html"]
    assert "answerword" in site["data/problems.json"]
    assert not found_in(site, "keptword")
