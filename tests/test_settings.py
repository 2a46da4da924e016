"""garden.yaml, crops.yaml and the years beforehand: what they take, and one sentence for each bad value."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from textwrap import dedent

import pytest

from leafmould.notes.beforehand import read_beforehand
from leafmould.notes.crops_file import read_crops
from leafmould.notes.setting_values import Settings
from leafmould.notes.settings import read_settings
from leafmould.values.problems import UnreadableGarden
from notes_as_typed import settings, told

DESIGN = """
    garden: Tansy Hill
    place: {latitude: 46.5, elevation: 620 m}      # never published; longitude optional
    frost: {last: 22 May, first: 25 September}
    units: metric
    decimal: point
    dates: day first
    people: 5
    measures: {tray: 400 g, bucket: 7 kg}
    words: {semé: sowed, s: sowed}
    show: [people]
    leave out: [larder, 2023]
    photo widths: [480, 960, 1600]
    private words: [Berta, the blue house]
    beds:
      - {name: Long border, also: [border, LB], size: 1.2 x 6 m, at: 2 x 3 m, sun: full, parts: [north half, south half]}
      - {name: Bag row, kind: container, size: 8 x 60 l}
      - {name: Old pear, kind: tree, at: 14 x 2 m, planted: 2015}
      - {name: New long border, was: Long border, from: 2025}
      - {name: Back shed strip, private: yes}
"""


def test_every_key_of_garden_yaml_is_read() -> None:
    read = settings(DESIGN)
    assert read.problems == ()
    assert (read.name, read.latitude, read.elevation_m, read.people) == ("Tansy Hill", 46.5, 620, 5)
    assert (read.last_frost, read.first_frost) == ((5, 22), (9, 25))
    assert (read.units, read.decimal, read.dates) == ("metric", "point", "day first")
    assert [(name, amount.grams) for name, amount in read.measures] == [("tray", 400), ("bucket", 7000)]
    assert read.words == (("semé", "sowed"), ("s", "sowed"))
    assert (read.show, read.leave_out) == (("people",), ("larder", "2023"))
    assert read.private_words == ("Berta", "the blue house")
    border, bags, pear, new, strip = read.beds
    assert (border.also, border.size_m, border.position_m) == (("border", "LB"), (1.2, 6.0), (2.0, 3.0))
    assert (border.sun, border.parts, border.at.line) == ("full", ("north half", "south half"), 16)
    assert (bags.kind, bags.size_m, bags.size_written) == ("container", None, "8 x 60 l")
    assert (pear.kind, pear.planted) == ("tree", "2015")
    assert (new.was, new.begun) == (("Long border",), date(2025, 1, 1))
    assert strip.is_private


def test_a_garden_with_a_name_alone_and_an_empty_one_have_defaults() -> None:
    assert settings("garden: Small") == Settings(name="Small")
    assert settings("") == Settings()


def test_degrees_with_a_comma_are_two_entries_and_told_to_be() -> None:
    found = settings("place: {latitude: 44,1}")
    assert found.latitude == 44
    assert [problem.message for problem in found.problems] == [
        '"1" stands alone behind a comma. Write degrees with a point, such as 46.5.'
    ]


def test_the_south_is_told_by_latitude() -> None:
    assert settings("place: {latitude: -37.8}").is_southern
    assert settings("place: {latitude: 44° 30' S}").latitude == -44.5


@pytest.mark.parametrize(
    ("size", "metres"),
    [
        ("1.2 x 6 m", (1.2, 6.0)), ("4 x 8 ft", (1.219, 2.438)), ("1,2 × 6 m", (1.2, 6.0)), ("120 x 600 cm", (1.2, 6.0)),
        ("1.2m x 6m", (1.2, 6.0)), ("4ft by 8ft", (1.219, 2.438)), ("4' x 8'", (1.219, 2.438)),
    ],
)  # fmt: skip
def test_sizes(size: str, metres: tuple[float, float]) -> None:
    # A foot is 0.3048 m exactly (international yard, 1959).
    (bed,) = settings(f"beds:\n  - name: A\n    size: {size}").beds
    assert (bed.size_m, bed.size_written) == (metres, size)


@pytest.mark.parametrize("size", ["60 l", "8 x 60 l", "4 m", "30 cm", "12 m²"])
def test_sizes_without_width_and_length_are_kept_as_written(size: str) -> None:
    read = settings(f"beds:\n  - name: A\n    size: {size}")
    assert (read.beds[0].size_m, read.beds[0].size_written, read.problems) == (None, size, ())


@pytest.mark.parametrize(
    "text",
    [
        "beds: [Arch, North]",
        "beds: Arch, North",
        "beds:\n  - Arch\n  - North",
        "beds:\n  - name: Arch\n  - name: North",
        "beds:\n  Arch: {size: 1 x 2 m}\n  North:",
        "beds:\n  - Arch: {size: 1 x 2 m}\n  - North",
    ],
)
def test_beds_may_be_written_in_many_ways(text: str) -> None:
    read = settings(text)
    assert ([bed.name for bed in read.beds], read.problems) == (["Arch", "North"], ())


BAD = """
    garden: Tansy Hill
    place: {latitude: 95, elevation: high, altitude: 3}
    frost: {last: 31 June, first: sometime}
    units: metrical
    decimal: dot
    dates: us
    people: many
    measures: {tray: heavy, bucket: 7 kg}
    words: {x: sowd, s: sowed}
    show: [fotos, photos]
    leave out: [larderr, Arch]
    photo widths: [480, wide]
    colour: green
    unit: metric
    beds:
      - {name: Arch, kind: contaner, size: 0 x 2 m, at: here, from: 2023-02-29, private: maybe, colour: red}
      - {size: 1 x 2 m}
      - {name: arch}
      - [a, b]
      - {name: North, size: large, prts: [a]}
      - {name: Wall, size: 1 x 2, from: 3/4/2026}
    """


def test_every_bad_value_costs_one_sentence_and_the_rest_is_used() -> None:
    read = settings(BAD)
    assert told(read.problems) == [
        '3 error: place.latitude: "95" is no latitude. Write degrees from -90 to 90, such as 46.5.',
        '3 error: place.elevation: "high" is no height above the sea. Write it such as "620 m" or "2000 ft".',
        '3 warning: place.altitude: "altitude" is not used here. Did you mean "latitude"?',
        '4 error: frost.last: "31 June" is no day of the year. Write it such as "22 May".',
        '4 error: frost.first: "sometime" is no day of the year. Write it such as "22 May".',
        '5 error: units: "metrical" is not known here. Write "metric" or "imperial". Did you mean "metric"?',
        '6 error: decimal: "dot" is not known here. Write "point" or "comma".',
        '7 error: dates: "us" is not known here. Write "day first" or "month first".',
        '8 error: people: "many" is no number of people. Write a whole number.',
        '9 error: measures.tray: "heavy" is no weight. Write it such as "400 g" or "7 kg".',
        '10 error: words.x: "sowd" is no action known here, so "x" is not read as one. Did you mean "sowed"?',
        '11 error: show: "fotos" is nothing that can be shown. Did you mean "photos"?',
        '12 warning: leave out: "larderr" is left out as a name, and as "larder" too, to be safe. Did you mean "larder"?',
        '13 error: photo widths: "wide" is no width in dots from 16 to 8000.',
        '14 hint: colour: "colour" is not used here.',
        '15 warning: unit: "unit" is not used here. Did you mean "units"?',
        '17 error: beds[0].kind: "contaner" is no kind of place known here, so it is taken as a bed. Kinds are bed, container, row, tree, shrub, cane row, vine, mound, under glass. Did you mean "container"?',
        '17 error: beds[0].size: "0 x 2 m" gives no width and length. Write it such as "1.2 x 6 m".',
        '17 error: beds[0].at: "here" is no place on the map. Write how far it is to the right and up, such as "2 x 3 m".',
        "17 error: beds[0].from: 29 February 2023 does not exist.",
        '17 error: beds[0].private: "maybe" is neither "yes" nor "no".',
        '18 error: beds[1]: This bed has no "name".',
        '19 error: beds[2]: "arch" already names the bed on line 17. Give this one another name.',
        '20 warning: beds[3]: "a" is taken as a private bed, since what is written of it cannot be read.',
        '20 warning: beds[3]: "b" is taken as a private bed, since what is written of it cannot be read.',
        '20 error: beds[3]: A bed is a name, or keys such as "name" and "size"; this is a list.',
        '21 warning: beds[4].size: "large" gives no width and length. Write it such as "1.2 x 6 m".',
        '21 warning: beds[4].prts: "prts" is kept as it stands, but not used. Did you mean "parts"?',
        '22 warning: beds[5].size: "1 x 2" has no unit; it is read in metres.',
    ]
    assert (read.name, read.units, read.last_frost, read.people) == ("Tansy Hill", "metric", None, None)
    assert (read.words, read.show, read.leave_out) == (
        (("s", "sowed"),),
        ("photos",),
        ("larder", "larderr", "Arch"),
    )
    assert [name for name, _ in read.measures] == ["bucket"]
    assert read.photo_widths == (480,)
    assert [bed.name for bed in read.beds] == ["Arch", "a", "b", "North", "Wall"]
    assert (read.beds[0].is_private, read.beds[0].extra) == (True, (("colour", "red"),))


def test_a_line_yaml_cannot_read_costs_that_line_alone() -> None:
    read = settings("""
        garden: Hill: the steep one
        beds:
          - {name: A, size: [}
          - {name: B}
          - name: C
            sun: full: all day
        people: 4
        """)
    assert (read.name, read.people) == ("Hill: the steep one", 4)
    assert [(bed.name, bed.sun, bed.is_private) for bed in read.beds] == [
        ("A", None, True),
        ("B", None, False),
        ("C", "full: all day", False),
    ]
    assert [t.split(":")[0] for t in told(read.problems)] == [
        "2 warning",
        "4 error",
        "4 warning",
        "7 warning",
    ]


@pytest.mark.parametrize("text", ["- a\n- b", "just words", "[[[[", "garden: [unclosed"])
def test_a_garden_yaml_without_any_key_is_refused_whole(text: str) -> None:
    with pytest.raises(UnreadableGarden, match=r"^garden\.yaml cannot be read"):
        settings(text)


def test_a_missing_or_undecodable_garden_yaml_is_refused(tmp_path: Path) -> None:
    with pytest.raises(UnreadableGarden, match=r'^There is no garden\.yaml in "'):
        read_settings(tmp_path)
    (tmp_path / "garden.yaml").write_bytes("garden: x".encode("utf-16"))
    with pytest.raises(UnreadableGarden, match="saved as UTF-16"):
        read_settings(tmp_path)
    (tmp_path / "garden.yaml").unlink()
    (tmp_path / "garden.yaml").mkdir()
    with pytest.raises(UnreadableGarden, match=r"^garden\.yaml cannot be opened"):
        read_settings(tmp_path)


def test_the_whole_folder(tmp_path: Path) -> None:
    (tmp_path / "records").mkdir()
    (tmp_path / "garden.yaml").write_text("garden: Hill\nbeds: [Arch]\n", encoding="utf-8")
    (tmp_path / "crops.yaml").write_text("oca: {days: 160}\n", encoding="utf-8")
    (tmp_path / "records" / "beforehand.csv").write_text("year,bed,crop\n2021,Arch,pea\n", encoding="utf-8")
    read = read_settings(tmp_path)
    assert [c.name for c in read.crops] == ["oca"]
    assert [(b.year, b.bed, b.crop, b.at.line) for b in read.beforehand] == [(2021, "Arch", "pea", 2)]
    assert [p.sentence for p in read.problems] == [
        'crops.yaml:1: oca.days: It is not said what the days count from; "from: sowing" is taken. '
        'Or write "from: planting out".'
    ]


CROPS = """
    courgette:
      days: {low: 50, high: 55, from: sowing}
      varieties: [Black Beauty]
    beetroot:
      days: 60-70
      from: sowing
      varieties:
        Boltardy: {days: 60, from: sowing}
        Cylindra: 65 – 75 days
        "No":
    oca: {also: [knobbly things], family: Oxalidaceae, grown: annual, tender: yes, like: potato}
    rocket:
    """


def test_crops_yaml_gives_names_days_and_varieties() -> None:
    crops, problems = read_crops(dedent(CROPS))
    assert problems == ()
    courgette, beetroot, oca, rocket = crops
    assert courgette.days is not None and (courgette.days.low, courgette.days.high) == (50, 55)
    assert beetroot.varieties == ("Boltardy", "Cylindra", "No")
    assert [(name, d.low, d.high, d.counts_from) for name, d in beetroot.days_by_variety] == [
        ("Boltardy", 60, 60, "sowing"),
        ("Cylindra", 65, 75, "sowing"),
    ]
    assert (oca.also, oca.family, oca.grown, oca.is_tender, oca.like) == (
        ("knobbly things",), "Oxalidaceae", "annual", True, "potato",
    )  # fmt: skip
    assert (rocket.name, rocket.days) == ("rocket", None)


def test_every_bad_value_of_crops_yaml_costs_one_sentence() -> None:
    crops, problems = read_crops(
        dedent("""
        pea: {days: soon, grown: anual, tender: maybe, dayz: 3}
        peas: {days: 60}
        kale: {days: 70-60, from: planting}
        leek: {days: 100, from: sowin}
        chard: 60
        """)
    )
    assert told(problems) == [
        '2 error: pea.days: "soon" is no number of days. Write "60" or "60-70".',
        '2 error: pea.grown: "anual" is not known here. Write "annual", "overwintered", "biennial" or "perennial". Did you mean "annual"?',
        '2 error: pea.tender: "maybe" is neither "yes" nor "no".',
        '2 warning: pea.dayz: "dayz" is not used here. Did you mean "days"?',
        '3 error: peas: "peas" is the same crop as "pea" on line 2. Only the first is used.',
        '3 question: peas.days: It is not said what the days count from; "from: sowing" is taken. Or write "from: planting out".',
        "4 error: kale.days: 70 to 60 days cannot be: the smaller number comes first, and both are from 1 to 1500.",
        '5 question: leek.days: It is not said what the days count from; "from: sowing" is taken. Or write "from: planting out".',
        '5 error: leek.from: "sowin" is not known here. Write "sowing" or "planting out". Did you mean "sowing"?',
        '6 error: chard: "chard" needs keys of its own, such as "name: value".',
    ]
    assert [c.name for c in crops] == ["pea", "kale", "leek", "chard"]


def test_a_list_of_crops_is_names_alone() -> None:
    assert [c.name for c in read_crops("- oca\n- yacon")[0]] == ["oca", "yacon"]


def rows(text: str) -> list[tuple[int, str, str]]:
    return [(b.year, b.bed, b.crop) for b in read_beforehand(text)[0]]


def test_f105_a_byte_mark_hides_no_column(tmp_path: Path) -> None:
    (tmp_path / "records").mkdir()
    (tmp_path / "garden.yaml").write_text("garden: x", encoding="utf-8")
    (tmp_path / "records" / "beforehand.csv").write_bytes(b"\xef\xbb\xbfyear,bed,crop\r\n2021,Arch,pea\r\n")
    assert [b.crop for b in read_settings(tmp_path).beforehand] == ["pea"]


@pytest.mark.parametrize(("mark", "name"), [(";", "semicolons"), ("\t", "tabs")])
def test_f106_the_mark_between_columns_is_found_by_the_header_and_said(mark: str, name: str) -> None:
    text = f"Year{mark}Bed{mark}Crop{mark}{mark}\n2021{mark}Arch{mark}pea{mark}{mark}\n"
    found, problems = read_beforehand(text)
    assert [(b.year, b.bed, b.crop) for b in found] == [(2021, "Arch", "pea")]
    assert told(problems) == [f"1 hint: The columns are taken to be parted by {name}."]


def test_columns_in_any_order_with_quotes_blank_rows_and_a_total() -> None:
    text = '\nplot,"crop",notes,year\n"Arch, left","peas, beans",x,2021\n,,,\n\nNorth,kale,,2022\nTotal,,,2\n'
    assert rows(text) == [
        (2021, "Arch, left", "peas"),
        (2021, "Arch, left", "beans"),
        (2022, "North", "kale"),
    ]


def test_bad_rows_cost_themselves() -> None:
    found, problems = read_beforehand(
        'year,bed,crop\n21,Arch,pea\n2021,NA,pea\n2021,Arch,\n2021,"Arch,pea\n2022,Arch,kale\n'
    )
    assert [b.crop for b in found] == ["kale"]
    assert told(problems) == [
        '2 error: "21" is no year. Write it in four figures, such as 2021.',
        "3 error: This row has no bed, so it is not used.",
        "4 error: This row has no crop, so it is not used.",
        "5 error: A quote is opened in this row and not closed in it, so the row is not used.",
    ]


def test_a_table_without_the_columns_says_what_was_expected() -> None:
    found, problems = read_beforehand("what\nx\n")
    assert found == ()
    assert told(problems) == [
        '1 error: The first row names no column "year" and "bed". It was expected to be "year,bed,crop".'
    ]


@pytest.mark.parametrize(
    ("size", "area"),
    [("12 m²", 12.0), ("12,5 sqm", 12.5), ("3 m2", 3.0), ("100 sq ft", 9.29), ("about 12 m²", 12.0)],
)
def test_an_area_is_an_area_without_its_sides(size: str, area: float) -> None:
    # A square foot is 0.3048 m squared (international foot, 1959).
    read = settings(f"beds:\n  - name: A\n    size: {size}")
    assert (read.beds[0].area_m2, read.beds[0].size_m, read.problems) == (area, None, ())


@pytest.mark.parametrize("size", ["60 l", "4 m", "8 x 60 l"])
def test_what_is_no_area_gives_none(size: str) -> None:
    assert settings(f"beds:\n  - name: A\n    size: {size}").beds[0].area_m2 is None


@pytest.mark.parametrize(
    ("written", "name"),
    [
        (r'"It\"s #1"', 'It"s #1'),
        (r'"It' + "'" + r's \"ours\": #1"', 'It\'s "ours": #1'),
        ("'It''s ours: #1'", "It's ours: #1"),
    ],
)
def test_a_quote_inside_a_quoted_value_closes_nothing(written: str, name: str) -> None:
    read = settings(f"garden: {written}\nbeds: [Arch]")
    assert (read.name, read.problems) == (name, ())


def test_crops_may_be_a_list_of_maps() -> None:
    crops, problems = read_crops(
        "- name: beetroot\n  days: 60\n  from: sowing\n- pea\n- leek: {days: 120-150, from: sowing}\n"
        "- {days: 3}\n- [a, b]\n- {name: pea}\n"
    )
    assert [(c.name, c.days.low if c.days else None) for c in crops] == [
        ("beetroot", 60),
        ("pea", None),
        ("leek", 120),
    ]
    assert [p.sentence for p in problems] == [
        'crops.yaml:6: A crop has no name here. Write it such as "name: beetroot".',
        'crops.yaml:7: A crop is a name, or keys such as "name" and "days"; this is a list.',
        'crops.yaml:8: pea: "pea" is the same crop as "pea" on line 4. Only the first is used.',
    ]


def test_a_crop_with_an_empty_name_is_an_error_and_the_others_stay() -> None:
    crops, problems = read_crops('- name: ""\n  days: 60\n- "": {days: 3}\n- " "\n- pea\n')
    assert [crop.name for crop in crops] == ["pea"]
    assert [p.message for p in problems] == [
        'A crop has no name here. Write it such as "name: beetroot".'
    ] * 2
