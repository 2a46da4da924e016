"""Looking back: what grew where and how it did, by any name the garden knows or any word of a note."""

from __future__ import annotations

import json
from datetime import date
from inspect import cleandoc
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import given
from hypothesis import strategies as st

from leafmould.cli import main
from leafmould.garden.load import load
from leafmould.lookup.memory import Memory, has_words
from leafmould.lookup.recollect import recollect
from leafmould.values.names import fold

GARDEN = """\
garden: Tansy Hill
frost: {last: 22 May, first: 25 September}
dates: day first
beds:
  - {name: Long border, also: [LB]}
  - {name: Arch}
  - {name: New border, was: Long border, from: 2025}
"""
NOTES = {
    "2023/04-12-long-border.md": """
        ---
        date: 2023-04-12
        work:
          - sowed beetroot 'Boltardy' in Long border
          - sowed kale 'Nero' in Arch
        ---
        Soil was warm already.
        """,
    "2023/07-20-long-border.md": """
        ---
        date: 2023-07-20
        work:
          - picked 2 kg beetroot from Long border
          - cleared beetroot from Long border
          - saw clubroot on kale in Arch
        ---
        """,
    "2024/05-01.md": """
        ---
        date: 2024-05-01
        work:
          - sowed carrot in Long border
        ---
        Thought about clubroot: lime the Arch next year.
        """,
    "2026/06-01-new-border.md": """
        ---
        date: 2026-06-01
        work:
          - planted 6 cabbage in New border
        ---
        """,
}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    for name, text in NOTES.items():
        (tmp_path / "notes" / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "notes" / name).write_text(cleandoc(text) + "\n", encoding="utf-8")
    return tmp_path


def ask(folder: Path, *words: str) -> Result:
    return CliRunner().invoke(main, ["find", *words, "--garden", str(folder), "--on", "2026-06-20"])


def names(folder: Path, *words: str) -> list[str]:
    answer = json.loads(ask(folder, *words, "--json").output)
    return [line["line"].partition(":")[0] for line in answer["plantings"]]


def notes(folder: Path, *words: str) -> list[str]:
    return [note["file"] for note in json.loads(ask(folder, *words, "--json").output)["notes"]]


def test_a_bed_and_a_year(folder: Path) -> None:
    result = ask(folder, "long", "border", "2023")
    assert result.output == (
        "2023\n"
        "  beetroot 'Boltardy', Long border: sown 12 April 2023, cleared after 99 days, 2 kg\n"
        "\n"
        "20 July 2023  notes/2023/07-20-long-border.md:4\n"
        "  picked 2 kg beetroot from Long border\n"
        "  cleared beetroot from Long border\n"
        "12 April 2023  notes/2023/04-12-long-border.md:4\n"
        "  sowed beetroot 'Boltardy' in Long border\n"
        "\n"
        "1 planting and 2 notes.\n"
    )
    assert result.exit_code == 0


def test_a_bed_keeps_its_history_under_either_name(folder: Path) -> None:
    everything = ["cabbage, New border", "carrot, New border", "beetroot 'Boltardy', Long border"]
    for asked in ("long border", "New Border", "LB"):
        assert names(folder, asked) == everything


@pytest.mark.parametrize(
    "asked",
    ["beetroot", "beetroots", "Beet", "'Boltardy'", "boltardy beetroot", "Amaranthaceae", "beet family"],
)
def test_a_crop_a_variety_or_a_family(folder: Path, asked: str) -> None:
    assert names(folder, *asked.split()) == ["beetroot 'Boltardy', Long border"]


@pytest.mark.parametrize("asked", ["brassicas", "Brassica", "cabbage family", "Brassicaceae", "crucifers"])
def test_a_family_by_any_of_its_names(folder: Path, asked: str) -> None:
    assert names(folder, asked) == ["cabbage, New border", "kale 'Nero', Arch"]


def test_a_word_finds_what_was_done_and_what_was_thought(folder: Path) -> None:
    result = ask(folder, "clubroot")
    assert result.output == (
        "2023\n"
        "  kale 'Nero', Arch: sown 12 April 2023, presumed over 12 April 2025, estimated\n"
        "\n"
        "1 May 2024  notes/2024/05-01.md:1\n"
        "  Thought about clubroot: lime the Arch next year.\n"
        "20 July 2023  notes/2023/07-20-long-border.md:6\n"
        "  saw clubroot on kale in Arch\n"
        "\n"
        "1 planting and 2 notes.\n"
    )


def test_all_terms_must_fit(folder: Path) -> None:
    assert names(folder, "arch", "2023", "brassicas") == ["kale 'Nero', Arch"]
    assert notes(folder, "arch", "clubroot", "2024") == ["notes/2024/05-01.md"]
    assert names(folder, "arch", "beetroot") == []


def test_an_action_is_a_term(folder: Path) -> None:
    assert notes(folder, "sowed", "in", "2023") == ["notes/2023/04-12-long-border.md"]
    assert notes(folder, "picked", "beetroot") == ["notes/2023/07-20-long-border.md"]
    assert names(folder, "planted") == ["cabbage, New border"]


def test_a_year_alone(folder: Path) -> None:
    assert names(folder, "2026") == ["cabbage, New border"]
    assert notes(folder, "2024") == ["notes/2024/05-01.md"]


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ("beetrot", 'Nothing is noted about "beetrot". Did you mean "beetroot"?'),
        ("long bordr", 'Nothing is noted about "long bordr". Did you mean "Long border"?'),
        ("Boltrady", 'Nothing is noted about "Boltrady". Did you mean "Boltardy"?'),
        ("zzzz", 'Nothing is noted about "zzzz".'),
        ("Arch 1999", 'Nothing is noted about "Arch 1999".'),
    ],
)
def test_nothing_found_names_the_nearest(folder: Path, asked: str, sentence: str) -> None:
    result = ask(folder, *asked.split())
    assert (result.output, result.exit_code) == (sentence + "\n", 0)


@pytest.mark.parametrize("asked", ["in the", "?", "…"])
def test_words_that_ask_nothing(folder: Path, asked: str) -> None:
    result = ask(folder, *asked.split())
    assert result.exit_code in (0, 2)
    assert "Traceback" not in result.output


def test_no_words_are_wrong_use(folder: Path) -> None:
    assert ask(folder).exit_code == 2


def test_many_notes_are_counted_unless_all_are_asked_for(folder: Path) -> None:
    for day in range(1, 26):
        text = f"---\ndate: 2025-05-{day:02}\nwork:\n  - weeded Arch\n---\n"
        (folder / f"notes/2025-05-{day:02}.md").write_text(text, encoding="utf-8")
    short, long = ask(folder, "weeded"), ask(folder, "weeded", "--all")
    assert "… and 5 older notes: add --all" in short.output.splitlines()
    assert short.output.count("notes/") == 20
    assert long.output.count("notes/") == 25
    assert short.output.splitlines()[-1] == long.output.splitlines()[-1] == "0 plantings and 25 notes."


def test_private_notes_are_found_at_home(folder: Path) -> None:
    text = "---\ndate: 2025-05-01\nprivate: yes\nwork:\n  - sowed rocket in Arch\n---\n"
    (folder / "notes/secret.md").write_text(text, encoding="utf-8")
    assert notes(folder, "rocket") == ["notes/secret.md"]


def test_the_answer_as_json(folder: Path) -> None:
    answer = json.loads(ask(folder, "boltardy", "--json").output)
    assert answer["version"] == 1
    assert answer["on"] == "2026-06-20"
    assert answer["asked"] == ["boltardy"]
    assert answer["plantings"][0]["years"] == [2023]
    assert answer["plantings"][0]["ended_on"] == "2023-07-20"
    assert answer["plantings"][0]["notes"] == [
        "notes/2023/04-12-long-border.md",
        "notes/2023/07-20-long-border.md",
    ]


def noted(folder: Path, day: str, *lines: str, body: str = "") -> None:
    work = "".join(f"  - {line}\n" for line in lines)
    text = f"---\ndate: {day}\nwork:\n{work}---\n{body}\n"
    (folder / f"notes/{day}.md").write_text(text, encoding="utf-8")


def test_plantings_are_of_the_crop_and_not_only_of_its_note(folder: Path) -> None:
    noted(folder, "2025-07-13", "planted leeks where the carrots were (Long border), gave hen manure")
    assert names(folder, "carrots") == ["carrot, New border"]
    assert notes(folder, "carrots")[0] == "notes/2025-07-13.md"
    assert names(folder, "hens") == []
    assert notes(folder, "hens") == ["notes/2025-07-13.md"]


def test_a_number_behind_another_name_is_no_part_of_a_beds_name(folder: Path) -> None:
    settings = GARDEN.replace("- {name: Arch}", "- {name: Arch}\n  - {name: Bed 4}\n  - {name: Kitchen bed}")
    (folder / "garden.yaml").write_text(settings, encoding="utf-8")
    noted(folder, "2025-04-06", "sowed carrots in Kitchen bed, 4 rows")
    noted(folder, "2025-04-07", "sowed peas in Kitchen bed 4 rows")
    noted(folder, "2025-04-08", "weeded Arch", body="Bed 4 is next.")
    assert names(folder, "bed", "4") == []
    assert notes(folder, "bed", "4") == ["notes/2025-04-08.md"]


def test_several_years_are_one_or_another(folder: Path) -> None:
    both = ["carrot, New border", "beetroot 'Boltardy', Long border"]
    assert names(folder, "long", "border", "2023", "2024") == both
    assert names(folder, "2023", "long", "border", "2024") == both
    assert names(folder, "long", "border", "2022-2024") == both
    assert names(folder, "long", "border", "2022–2023") == both[1:]
    assert names(folder, "long", "border", "last", "year") == ["carrot, New border"]
    assert names(folder, "long", "border", "this", "year") == ["cabbage, New border"]


@pytest.mark.parametrize(
    "asked",
    [
        "july 2023", "20 july 2023", "20th July 2023", "July 20, 2023", "jul 2023", "july", "2023-07-20",
        "2023-07", "2023 july", "june july",
    ],
)  # fmt: skip
def test_a_month_or_a_day(folder: Path, asked: str) -> None:
    assert notes(folder, *asked.split())[-1] == "notes/2023/07-20-long-border.md"
    assert names(folder, *asked.split())[-2:] == ["kale 'Nero', Arch", "beetroot 'Boltardy', Long border"]


def test_a_day_on_which_nothing_was_noted(folder: Path) -> None:
    assert notes(folder, "21", "july", "2023") == []
    assert names(folder, "21", "july", "2023") == []


def test_what_is_known_by_its_year_is_of_no_month(folder: Path) -> None:
    (folder / "notes/old.md").write_text("---\ndate: 2021\nwork:\n  - planted leek in Arch\n---\n", "utf-8")
    assert notes(folder, "leek", "2021") == ["notes/old.md"]
    assert notes(folder, "leek", "july", "2021") == []


@pytest.mark.parametrize("asked", ["beetr", "bolt", "beetr 2023"])
def test_the_beginning_of_a_name_will_do(folder: Path, asked: str) -> None:
    assert names(folder, *asked.split()) == ["beetroot 'Boltardy', Long border"]


def test_the_beginning_of_a_word_will_do(folder: Path) -> None:
    assert notes(folder, "clubr") == ["notes/2024/05-01.md", "notes/2023/07-20-long-border.md"]


@pytest.mark.parametrize(
    ("text", "asked", "is_there"),
    [
        ("Saw Aphids on beans", "aphid", True),
        ("semé 3 rangs", "seme", True),
        ("a mouse ate it", "mice", True),
        ("mice ate it", "mouse", True),
        ("leaves curled", "leaf", True),
        ("the pear tree", "pea", False),
        ("club root", "clubroot", False),
        ("white fly in the tunnel", "white fly", True),
        ("white butterfly, black fly", "white fly", False),
        ("", "pea", False),
    ],
)
def test_words_are_whole_and_folded(text: str, asked: str, is_there: bool) -> None:
    assert has_words(text, fold(asked)) is is_there


@pytest.fixture(scope="module")
def memory(tmp_path_factory: pytest.TempPathFactory) -> Memory:
    folder = tmp_path_factory.mktemp("garden")
    (folder / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    for name, text in NOTES.items():
        (folder / "notes" / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / "notes" / name).write_text(cleandoc(text) + "\n", encoding="utf-8")
    loaded = load(folder, on=date(2026, 6, 20), household=True)
    return Memory(recollect(loaded))


ASKED = st.lists(
    st.one_of(
        st.text(max_size=12),
        st.sampled_from(
            ["long", "border", "beetroot", "2023", "sowed", "brassicas", "the", "Boltardy", "family"]
        ),
    ),
    min_size=1,
    max_size=5,
)


@given(ASKED)
def test_any_question_has_an_answer_that_fits_all_its_terms(memory: Memory, words: list[str]) -> None:
    found = memory.find(words)
    for count in range(1, len(words)):
        wider = memory.find(words[:count])
        if wider.terms == found.terms[: len(wider.terms)] and wider.terms:
            assert {p.id for p in found.plantings} <= {p.id for p in wider.plantings}
            assert {note.file for note in found.notes} <= {note.file for note in wider.notes}


def test_what_was_raised_first_is_told_with_both_days(folder: Path) -> None:
    for day, done in (
        ("02-14", "sowed tomatoes 'Sungold' on the windowsill"),
        ("05-16", "planted out tomatoes 'Sungold' in Arch"),
    ):
        note = folder / "notes" / f"2022-{day}.md"
        note.write_text(f'---\nwork:\n- "{done}"\n---\n', encoding="utf-8")
    told = "tomato 'Sungold', Arch: started 14 February 2022, planted out 16 May 2022, presumed over"
    assert told in ask(folder, "sungold").output
