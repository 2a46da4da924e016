"""Slips in garden.yaml that cost one true sentence and no bed: a tab, a day in figures, a name left out."""

from __future__ import annotations

from pathlib import Path

import pytest

from leafmould.notes.settings import Settings, read_settings

NAMES = ["Long border", "Kitchen bed", "Arch"]
ONE = "garden.yaml:{line}: A tab stands on line {line}. It is read as a space; write spaces."


def read(folder: Path, text: str) -> Settings:
    (folder / "garden.yaml").write_text(text, encoding="utf-8")
    return read_settings(folder)


@pytest.mark.parametrize(
    ("beds", "line"),
    [
        ("  - {name: Long border}\n\t- {name: Kitchen bed}\n  - {name: Arch}\n", 4),
        ("  - Long border\n  - Kitchen bed\n\t- Arch\n", 5),
        ("\t- Long border\n  - Kitchen bed\n  - Arch\n", 3),
        ("  - Long border\n  \t- Kitchen bed\n  - Arch\n", 4),
        ("- Long border\n\t\t- Kitchen bed\n- Arch\n", 4),
        ("  - name: Long border\n\t  size: 1.2 x 6 m\n  - name: Kitchen bed\n  - name: Arch\n", 4),
        ("  - name: Long border\n\tsize: 1.2 x 6 m\n  - name: Kitchen bed\n  - name: Arch\n", 4),
    ],
)
def test_one_tab_is_one_sentence_and_every_bed_is_read(tmp_path: Path, beds: str, line: int) -> None:
    found = read(tmp_path, f"garden: Hill\nbeds:\n{beds}")
    assert [p.sentence for p in found.problems] == [ONE.format(line=line)]
    assert [(bed.name, bed.is_private) for bed in found.beds] == [(name, False) for name in NAMES]
    assert found.beds[0].size_written == ("1.2 x 6 m" if "size" in beds else None)


def test_tabs_on_several_lines_are_one_sentence(tmp_path: Path) -> None:
    lines = "".join(f"\t- {name}\n" for name in NAMES)
    found = read(tmp_path, f"garden: Hill\nbeds:\n{lines}")
    assert [p.sentence for p in found.problems] == [
        "garden.yaml:3: Tabs stand on lines 3, 4 and 5. They are read as spaces; write spaces."
    ]
    many = read(tmp_path, f"garden: Hill\nbeds:\n{lines}{lines.replace('-', '- New')}")
    assert [p.sentence for p in many.problems] == [
        "garden.yaml:3: Tabs stand on 6 lines, from line 3 on. They are read as spaces; write spaces."
    ]
    assert [len(many.beds), len(found.beds)] == [6, 3]


def test_tabs_that_nest_keep_their_levels(tmp_path: Path) -> None:
    found = read(
        tmp_path,
        "garden: Hill\nfrost:\n\tlast:\n\t\t10%: 4 June\n\t\t50%: 22 May\n\tfirst: 1 October\n",
    )
    assert (found.last_frost, found.first_frost) == ((5, 22), (10, 1))


@pytest.mark.parametrize(
    ("order", "days", "told"),
    [
        ("", ((5, 15), None), True),
        ("dates: day first\n", ((5, 15), (10, 5)), False),
    ],
)
def test_a_frost_in_figures_follows_the_gardens_order(
    tmp_path: Path, order: str, days: object, *, told: bool
) -> None:
    found = read(tmp_path, f"garden: Hill\n{order}frost: {{last: 15/5, first: 5/10}}\n")
    sentence = (
        'garden.yaml:2: frost.first: "5/10" may be 5 October or 10 May. Write it such as "5 October", '
        'or say "dates: day first" or "dates: month first".'
    )
    assert [p.sentence for p in found.problems] == [sentence] * told
    assert (found.last_frost, found.first_frost) == days


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("beds: [Arch]\n", True),
        ("# garden: Tansy Hill\nbeds: [Arch]\n", True),
        ("garden:\nbeds: [Arch]\n", True),
        ("", True),
        ("garden: The garden\n", False),
        ("Name: Hill\n", False),
    ],
)
def test_a_garden_without_a_name_is_told_once(tmp_path: Path, written: str, *, told: bool) -> None:
    (tmp_path / "garden.yaml").write_text(written, encoding="utf-8")
    sentence = (
        'garden.yaml: garden: The garden has no name here, so it is called "The garden". '
        'Write one such as "garden: Tansy Hill".'
    )
    assert [problem.sentence for problem in read_settings(tmp_path).problems] == [sentence] * told
