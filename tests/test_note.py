"""What was done is put down in half a minute: kept as typed, in a new file, and answered with the planting."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import given
from hypothesis import strategies as st

from leafmould.cli import main
from leafmould.desk.note import Draft, note_text, typed_lines, write_note
from leafmould.garden.load import load
from leafmould.values.problems import WrongUse
from leafmould.values.when import on

GARDEN = """\
garden: Tansy Hill
frost: {last: 22 May, first: 25 September}
dates: day first
beds:
  - {name: Long border, also: [LB], parts: [north half, south half]}
  - {name: Arch}
  - {name: Cold frame}
"""

Write = Callable[..., Result]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    return tmp_path


@pytest.fixture
def put(folder: Path) -> Write:
    def run(*words: str, typed: str | None = None, day: str = "2026-06-20") -> Result:
        options = ["note", *words, "--garden", str(folder), "--on", day]
        return CliRunner().invoke(main, options, input=typed)

    return run


def written(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted((folder / "notes").rglob("*.md"))
    }


def test_it_answers_with_the_plantings_line(folder: Path, put: Write) -> None:
    result = put("sowed", "beetroot", "Long", "border", day="2026-05-06")
    first, last = result.output.splitlines()
    assert first.startswith("beetroot, Long border: sown today, seedlings about 12 May – 1 June, expected ")
    assert last == "Written in notes/2026/05-06-long-border.md"
    assert result.exit_code == 0
    assert written(folder) == {
        "notes/2026/05-06-long-border.md": (
            "---\ndate: 2026-05-06\nwork:\n  - sowed beetroot Long border\n---\n"
        )
    }


def test_three_actions_in_ninety_characters_without_quotes(folder: Path, put: Write) -> None:
    put("sowed spinach Cold frame", day="2026-04-01")
    put("sowed peas Arch", day="2026-03-20")
    words = "picked 1.2 kg peas from Arch, cleared spinach from Cold frame, weeded Long border"
    assert len(words) <= 90
    result = put(*words.split())
    assert result.output.splitlines() == [
        "pea, Arch: sown 92 days ago, picked today, 1.2 kg so far",
        "spinach, Cold frame: sown 1 April 2026, cleared after 80 days",
        "Long border: weeded",
        "Written in notes/2026/06-20-arch.md",
    ]
    assert result.exit_code == 0


def test_a_dash_reads_many_lines(folder: Path, put: Write) -> None:
    typed = "- sowed peas in Arch\n\n  * sowed kale in LB, north half\r\nweeded Cold frame\n"
    result = put("-", typed=typed)
    assert result.exit_code == 0, result.output
    assert written(folder)["notes/2026/06-20-arch.md"] == (
        "---\ndate: 2026-06-20\nwork:\n"
        "  - sowed peas in Arch\n  - sowed kale in LB, north half\n  - weeded Cold frame\n---\n"
    )


@pytest.mark.parametrize(
    ("words", "typed"), [((), None), (("-",), ""), (("-",), "\n \n"), ((" ", "\t"), None)]
)
def test_nothing_typed_is_wrong_use(
    folder: Path, put: Write, words: tuple[str, ...], typed: str | None
) -> None:
    result = put(*words, typed=typed)
    assert result.output == "Say what was done, such as: leafmould note sowed beetroot Long border\n"
    assert result.exit_code == 2
    assert not (folder / "notes").exists()


def test_an_older_note_is_never_written_over(folder: Path, put: Write) -> None:
    for count in range(3):
        assert put(f"sowed {count + 4} peas in Arch").exit_code == 0
    texts = written(folder)
    assert list(texts) == [
        "notes/2026/06-20-arch-2.md",
        "notes/2026/06-20-arch-3.md",
        "notes/2026/06-20-arch.md",
    ]
    assert "sowed 4 peas" in texts["notes/2026/06-20-arch.md"]
    assert "sowed 6 peas" in texts["notes/2026/06-20-arch-3.md"]


@pytest.mark.parametrize("other", ["06-20-arch.txt", "06-20-ARCH.md", "06-20-Arch.markdown"])
def test_a_name_that_would_be_the_same_address_is_not_taken(folder: Path, put: Write, other: str) -> None:
    (folder / "notes/2026").mkdir(parents=True)
    (folder / "notes/2026" / other).write_text("weeded Arch\n", encoding="utf-8")
    result = put("sowed peas in Arch")
    assert result.output.splitlines()[-1] == "Written in notes/2026/06-20-arch-2.md"
    assert (folder / "notes/2026" / other).read_text(encoding="utf-8") == "weeded Arch\n"


def test_the_note_is_written_with_its_question_beside_the_answer(folder: Path, put: Write) -> None:
    result = put("sowed", "peas", "in", "Acrh")
    *answer, last = result.output.splitlines()
    assert last.startswith("Written in notes/2026/06-20-")
    (question,) = [line for line in answer if line.startswith("question: ")]
    assert question.endswith('No bed is called "Acrh"; read as "Arch".')
    assert "  - sowed peas in Acrh\n" in next(iter(written(folder).values()))
    assert result.exit_code == 0


def test_of_several_lines_a_question_names_its_own(folder: Path, put: Write) -> None:
    result = put("-", typed="weeded Arch\nsowed peas in Acrh\nsowed beans in Lnog border\n")
    questions = [
        line.split(" No ")[0] for line in result.output.splitlines() if line.startswith("question: ")
    ]
    assert questions == ["question: line 5:", "question: line 6:"]


@pytest.mark.parametrize(
    ("typed", "answer"),
    [
        ("weeded Long border", "Long border: weeded\n"),
        ("limed Long border 200 g/m2", "Long border: limed 200 g/m2 (2 plantings there)"),
        ("thinned peas in Arch", "pea, Arch: thinned; sown 50 days ago, "),
        ("frost -3 °C", "Tansy Hill: frost −3 °C"),
        ("rain 12 mm", "Tansy Hill: rain 12 mm"),
        ("collected 9 eggs", "Tansy Hill: collected 9 eggs"),
        ("tested soil in Arch: pH 6.4", "Arch: tested soil pH 6.4"),
        ("saw first swallow", "Tansy Hill: saw first swallow"),
    ],
)
def test_what_is_no_start_and_no_end_is_named(folder: Path, put: Write, typed: str, answer: str) -> None:
    put("sowed leek and kale in Long border, sowed peas in Arch", day="2026-05-01")
    assert put(typed).output.startswith(answer)


def test_an_intention_is_kept_as_text(folder: Path, put: Write) -> None:
    result = put("sow beetroot in Arch")
    assert 'kept as text: "sow beetroot in Arch"' in result.output.splitlines()
    assert result.exit_code == 0


@pytest.mark.parametrize(
    ("dated", "file", "date_line"),
    [
        ("yesterday", "notes/2026/06-19-arch.md", "date: 2026-06-19"),
        ("12 June", "notes/2026/06-12-arch.md", "date: 2026-06-12"),
        ("3/4/2026", "notes/2026/04-03-arch.md", "date: 2026-04-03"),
        ("2025-12-31", "notes/2025/12-31-arch.md", "date: 2025-12-31"),
        ("Thursday", "notes/2026/06-18-arch.md", "date: 2026-06-18"),
        ("spring 2024", "notes/2024/spring-2024-arch.md", "date: spring 2024"),
    ],
)
def test_it_may_have_been_another_day(
    folder: Path, put: Write, dated: str, file: str, date_line: str
) -> None:
    result = put("weeded Arch", "--date", dated)
    assert result.output.splitlines()[-1] == f"Written in {file}"
    assert date_line in written(folder)[file].splitlines()


@pytest.mark.parametrize(
    ("dated", "sentence"),
    [
        ("soon", '"soon" is not a date. Write it like 2026-06-20.'),
        ("30 February", "30 February does not exist. Write it like 2026-06-20."),
    ],
)
def test_a_date_that_is_none_is_refused_before_writing(
    folder: Path, put: Write, dated: str, sentence: str
) -> None:
    result = put("weeded Arch", "--date", dated)
    assert (result.output, result.exit_code) == (sentence + "\n", 2)
    assert not (folder / "notes").exists()


def test_a_numeric_date_is_asked_about_where_the_garden_does_not_say(folder: Path, put: Write) -> None:
    (folder / "garden.yaml").write_text("garden: Hill\n", encoding="utf-8")
    result = put("weeded Arch", "--date", "3/4/2026")
    assert result.output == (
        '"3/4/2026" may be 3 April 2026 or 4 March 2026. Write it like 2026-04-03, '
        'or settle it for good in garden.yaml: "dates: day first" or "dates: month first".\n'
    )
    assert result.exit_code == 2


def test_a_minus_is_no_option(folder: Path, put: Write) -> None:
    result = put("frost", "-3", "°C")
    assert "  - frost -3 °C\n" in next(iter(written(folder).values()))
    assert result.exit_code == 0


def test_a_misspelt_option_is_no_word(folder: Path, put: Write) -> None:
    result = put("weeded Arch", "--dat", "yesterday")
    assert "No such option '--dat'" in result.output.replace(
        "No such option: --dat", "No such option '--dat'"
    )
    assert result.exit_code == 2
    assert not (folder / "notes").exists()


def test_options_may_stand_behind_the_words(folder: Path) -> None:
    words = ["note", "weeded", "Arch", "--on", "2026-06-20", "--garden", str(folder), "--date", "yesterday"]
    result = CliRunner().invoke(main, words)
    assert result.output.splitlines()[-1] == "Written in notes/2026/06-19-arch.md"


def test_it_works_anywhere_below_the_garden(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (folder / "photos/2026").mkdir(parents=True)
    monkeypatch.chdir(folder / "photos/2026")
    result = CliRunner().invoke(main, ["note", "weeded", "Arch", "--on", "2026-06-20"])
    assert result.output.splitlines()[-1] == "Written in notes/2026/06-20-arch.md"
    assert list(written(folder)) == ["notes/2026/06-20-arch.md"]


def test_outside_a_garden_nothing_is_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, ["note", "weeded", "Arch"])
    assert result.output == (
        f'No garden.yaml stands in "{tmp_path}" or in any folder above it. '
        "Make a garden with: leafmould start FOLDER\n"
    )
    assert result.exit_code == 3
    assert list(tmp_path.iterdir()) == []


def test_a_garden_nobody_can_read_does_not_hinder_a_note(folder: Path, put: Write) -> None:
    (folder / "garden.yaml").write_bytes(b"\xff\xfe\x00garden")
    result = put("weeded Arch")
    assert result.output.splitlines()[-1] == "Written in notes/2026/06-20-note.md"
    assert result.output.startswith("garden.yaml")
    assert result.exit_code == 1
    assert "  - weeded Arch\n" in written(folder)["notes/2026/06-20-note.md"]


def test_a_note_without_a_bed_is_named_for_its_crop(folder: Path, put: Write) -> None:
    assert put("ate 3 courgettes").output.splitlines()[-1] == "Written in notes/2026/06-20-courgette.md"
    assert put("rain 12 mm").output.splitlines()[-1] == "Written in notes/2026/06-20-note.md"


def test_a_photo_from_elsewhere_is_copied(
    folder: Path, put: Write, tmp_path_factory: pytest.TempPathFactory
) -> None:
    camera = tmp_path_factory.mktemp("camera") / "IMG 1: #2.jpg"
    camera.write_bytes(b"one")
    for picture in (b"one", b"one", b"two"):
        camera.write_bytes(picture)
        assert put("weeded Arch", "--photo", str(camera)).exit_code == 0
    kept = {path.name: path.read_bytes() for path in (folder / "photos").iterdir()}
    assert kept == {"IMG 1: #2.jpg": b"one", "IMG 1: #2-2.jpg": b"two"}
    texts = list(written(folder).values())
    assert [text.splitlines()[2] for text in texts] == [
        'photo: "IMG 1: #2.jpg"',
        'photo: "IMG 1: #2-2.jpg"',
        'photo: "IMG 1: #2.jpg"',
    ]


def test_photos_that_lie_there_already_are_named(folder: Path, put: Write) -> None:
    (folder / "photos/2026").mkdir(parents=True)
    for name in ("a.jpg", "2026/b.jpg"):
        (folder / "photos" / name).write_bytes(b"picture")
    put("weeded Arch", "--photo", "a.jpg", "--photo", str(folder / "photos/2026/b.jpg"))
    text = written(folder)["notes/2026/06-20-arch.md"]
    assert text.splitlines()[2] == 'photo: ["a.jpg", "2026/b.jpg"]'
    assert len(list((folder / "photos").rglob("*.jpg"))) == 2


def test_a_photo_that_is_not_there_is_refused(folder: Path, put: Write) -> None:
    result = put("weeded Arch", "--photo", "gone.jpg")
    assert (result.output, result.exit_code) == ('There is no picture "gone.jpg".\n', 2)
    assert not (folder / "notes").exists()


def test_a_private_note_says_so_in_its_header(folder: Path, put: Write) -> None:
    put("sowed peas in Arch", "--private")
    assert written(folder)["notes/2026/06-20-arch.md"] == (
        "---\ndate: 2026-06-20\nprivate: yes\nwork:\n  - sowed peas in Arch\n---\n"
    )
    assert load(folder, on=date(2026, 6, 20), household=False, keep=False).garden.plantings == ()


@pytest.mark.parametrize("line", ["private: yes", "Private:yes", "private: true.", "private:"])
def test_a_header_typed_as_a_line_is_refused_with_the_option_for_it(
    folder: Path, put: Write, line: str
) -> None:
    result = put("-", typed=f"sowed peas in Arch\n{line}\n")
    assert result.output == (
        f'"{line}" stands in the header of a note, not among its lines. '
        "To keep a note private, leave that out and add --private. Nothing was written.\n"
    )
    assert (result.exit_code, written(folder)) == (2, {})


def test_only_pictures_are_taken_for_pictures(folder: Path, put: Write) -> None:
    letter = folder.parent / "passwd"
    letter.write_text("secret", encoding="utf-8")
    result = put("weeded Arch", "--photo", str(letter))
    assert result.output == (
        f'"{letter}" is no picture: its name must end in one of '
        ".jpg, .jpeg, .png, .webp, .heic, .heif, .gif, .tif, .tiff, .avif.\n"
    )
    assert (result.exit_code, written(folder)) == (2, {})
    assert not (folder / "photos").exists()


def test_the_answer_as_json(folder: Path, put: Write) -> None:
    result = put("sowed peas in Arch", "--json")
    answer = json.loads(result.output)
    assert answer["version"] == 1
    assert answer["file"] == "notes/2026/06-20-arch.md"
    assert answer["lines"][0].startswith("pea, Arch: sown today")
    assert (answer["problems"], answer["fault"]) == ([], None)


def test_a_note_for_tomorrow_is_written_and_not_counted_yet(folder: Path, put: Write) -> None:
    result = put("sowed peas in Arch", "--date", "2026-06-25")
    assert result.output.splitlines()[-1] == "Written in notes/2026/06-25-arch.md"
    assert result.exit_code == 0


@given(st.lists(st.text(), max_size=4))
def test_whatever_is_typed_is_kept_and_never_breaks_the_note(
    tmp_path_factory: pytest.TempPathFactory, words: list[str]
) -> None:
    folder = tmp_path_factory.mktemp("garden")
    (folder / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    try:
        lines = typed_lines(words, str)
    except WrongUse:
        return
    file = write_note(folder, Draft(lines=lines, when=on(date(2026, 6, 20))), "note")
    kept = (folder / file).read_text(encoding="utf-8").split("\n")
    assert kept == ["---", "date: 2026-06-20", "work:", *(f"  - {line}" for line in lines), "---", ""]
    entries = load(folder, on=date(2026, 6, 20), household=True).garden.entries
    assert [entry.at.file for entry in entries] == [file]


def test_a_line_may_hold_what_headers_are_made_of() -> None:
    draft = Draft(lines=("---", "bed: Arch", "# 3 'x\" : y"), when=on(date(2026, 6, 20)))
    assert note_text(draft) == (
        "---\ndate: 2026-06-20\nwork:\n  - ---\n  - bed: Arch\n  - # 3 'x\" : y\n---\n"
    )
