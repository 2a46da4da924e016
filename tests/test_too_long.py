"""What is longer than anybody writes is kept and shown as typed, with one hint, and takes no time."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from gardens import garden_of
from leafmould.build import build
from leafmould.garden.load import load
from leafmould.render.prose import Prose
from pages_garden import hand_made, site_of

DAY = date(2026, 6, 20)
SITE = site_of(hand_made())
PROSE = Prose(SITE.mentions, SITE.note_by_file)
LINE_HINT = (
    "This line is longer than 2,000 characters, so it is kept as text. Write a line for each thing done."
)
BLOCK_HINT = (
    "This paragraph is longer than 20,000 characters or holds more than 1,000 brackets, "
    "so it is shown as typed. "
    "Set an empty line where a thought ends."
)
BODY_HINT = (
    "This text is longer than 200,000 characters, so it is shown as typed. Write several notes instead."
)


def told(note: str) -> list[str]:
    garden = garden_of({"notes/a.md": note})
    return [f"{p.level} {p.at.line}: {p.message}" for p in garden.problems]


def test_a_work_line_too_long_is_kept_as_text_with_one_hint() -> None:
    note = f"---\ndate: 2026-06-18\nwork:\n  - sowed pea in Arch{', pea' * 100_000}\n  - weeded Arch\n---\n"
    garden = garden_of({"notes/a.md": note})
    assert [event.verb for event in garden.events] == ["weeded"]
    assert told(note) == [f"hint 4: {LINE_HINT}"]
    (entry,) = garden.entries
    assert entry.words[0].text.startswith("sowed pea in Arch, pea")


@pytest.mark.parametrize("end", [", private", "; private."])
def test_a_line_too_long_stays_private(end: str) -> None:
    note = f"---\ndate: 2026-06-18\nwork:\n  - sowed{' pea' * 900}{end}\n---\n"
    (entry,) = garden_of({"notes/a.md": note}).entries
    assert [words.is_private for words in entry.words] == [True]


def test_a_line_at_the_limit_is_read() -> None:
    line = "sowed peas in Arch, " + "x" * 1_980
    assert len(line) == 2_000
    garden = garden_of({"notes/a.md": f"---\ndate: 2026-06-18\nwork:\n  - {line}\n---\n"})
    assert [event.verb for event in garden.events] == ["sowed"]


@pytest.mark.parametrize(
    "piece", ["![", "'a' ", "[", "*a ", "`", "<", "&", "_a", "private ", "x private y ", "next year ", "\\"]
)
def test_prose_too_long_is_shown_as_typed_at_once(tmp_path: Path, piece: str) -> None:
    (tmp_path / "notes").mkdir()
    (tmp_path / "garden.yaml").write_text("garden: Tansy Hill\nbeds:\n  - {name: Arch}\n", encoding="utf-8")
    text = "A fine day.\n\n" + piece * (120_000 // len(piece))
    (tmp_path / "notes" / "2026-06-18.md").write_text(f"---\nprivate: no\n---\n{text}\n", encoding="utf-8")
    build(tmp_path, to=tmp_path / "site", on=DAY, household=True)
    problems = load(tmp_path, on=DAY, household=True).problems
    assert BLOCK_HINT in [p.message for p in problems if p.at.line == 6]


def test_prose_too_long_keeps_its_lines_and_letters() -> None:
    text = "<b>peas</b> & *leeks*\n" * 1_000
    shown = str(PROSE.html(text, root="../"))
    assert shown.startswith('<pre class="as-typed">&lt;b&gt;peas&lt;/b&gt; &amp; *leeks*\n&lt;b&gt;')
    assert shown.count("\n") == 1_000
    assert "as-typed" not in str(PROSE.html("*leeks*\n\n" * 4_000, root="../"))


def test_a_paragraph_of_brackets_is_shown_as_typed() -> None:
    text = "A fine day.\n\n" + "![" * 1_001
    assert str(PROSE.html(text, root="../")).startswith('<pre class="as-typed">A fine day.')
    assert told(f"---\ndate: 2026-06-18\n---\n{text}\n") == [f"hint 6: {BLOCK_HINT}"]
    assert "as-typed" not in str(PROSE.html("[peas](https://a.example) and\n\n" * 2_000, root="../"))


def test_a_comment_stays_hidden_in_prose_too_long() -> None:
    assert "secret" not in str(PROSE.html("<!-- secret -->" + "*a* " * 6_000, root="../"))


def test_a_text_too_long_is_told_once() -> None:
    note = "---\ndate: 2026-06-18\n---\n" + "It was *fine*.\n\n" * 14_000
    assert told(note) == [f"hint 4: {BODY_HINT}"]


def test_a_date_that_goes_on_for_ever_is_none() -> None:
    note = f"---\ndate: 2026-06-18\n{'  - ' * 25_000}\n---\nA fine day.\n"
    messages = [p.message for p in garden_of({"notes/a.md": note}).problems]
    assert len(messages) == 1
    assert len(messages[0]) < 400


def test_many_different_lessons_are_all_kept() -> None:
    note = "---\ndate: 2026-06-18\n---\n" + "".join(f"Next year {n} peas.\n\n" for n in range(20_000))
    (entry,) = garden_of({"notes/a.md": note}).entries
    assert len(entry.lesson) == 20_000
