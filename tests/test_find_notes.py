"""Finding note files, and names and bytes as disks really hold them."""

from __future__ import annotations

import os
from pathlib import Path

from leafmould.notes.find import find_notes, read_note_file
from leafmould.notes.lines import Habits
from leafmould.notes.read import read_all
from leafmould.values.names import Vocabulary, slug


def put(folder: Path, *names: str) -> None:
    for name in names:
        path = folder / "notes" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("text", encoding="utf-8")


def test_notes_of_any_depth_are_found_in_order_of_their_paths(tmp_path: Path) -> None:
    put(tmp_path, "b.md", "a.txt", "2026/06/20-x.MD", "2026/05-01 y.md")
    assert [file.path for file in find_notes(tmp_path)] == [
        "notes/2026/05-01 y.md", "notes/2026/06/20-x.MD", "notes/a.txt", "notes/b.md",
    ]  # fmt: skip


def test_hidden_files_and_what_editors_leave_are_passed_over(tmp_path: Path) -> None:
    put(
        tmp_path,
        ".a.md",
        ".git/a.md",
        "a.md~",
        ".a.md.swp",
        "a.md.bak",
        "#a.md#",
        ".#a.md",
        "~$a.md",
        "a.tmp",
        "a.docx",
    )
    assert find_notes(tmp_path) == ()
    (tmp_path / "notes" / "folder.md").mkdir()
    (tmp_path / "notes" / "gone.md").symlink_to("nowhere")
    assert find_notes(tmp_path) == ()


def test_a_garden_without_notes_has_none(tmp_path: Path) -> None:
    assert find_notes(tmp_path) == ()


def test_a_link_to_a_note_is_followed_and_a_link_upwards_is_not(tmp_path: Path) -> None:
    put(tmp_path, "a.md")
    (tmp_path / "notes" / "b.md").symlink_to(tmp_path / "notes" / "a.md")
    (tmp_path / "notes" / "up").symlink_to(tmp_path / "notes", target_is_directory=True)
    assert [file.path for file in find_notes(tmp_path)] == ["notes/a.md", "notes/b.md"]


def test_the_digest_is_of_the_bytes(tmp_path: Path) -> None:
    put(tmp_path, "a.md", "b.md")
    (tmp_path / "notes" / "b.md").write_bytes(b"\xef\xbb\xbftext")
    a, b = find_notes(tmp_path)
    assert a.text == b.text == "text"
    assert a.digest != b.digest


def test_a_file_that_cannot_be_opened_is_told(tmp_path: Path) -> None:
    file = read_note_file(tmp_path, "notes/gone.md")
    assert [p.sentence for p in file.problems] == [
        "notes/gone.md: This file cannot be opened: No such file or directory."
    ]
    assert (file.text, file.digest) == ("", "")


def test_a_file_of_reasonless_size_is_told(tmp_path: Path) -> None:
    put(tmp_path, "a.md")
    (tmp_path / "notes" / "a.md").write_bytes(b"x" * 2_000_001)
    assert [p.sentence for p in find_notes(tmp_path)[0].problems] == [
        "notes/a.md: This file is larger than 2 MB, so it is not read."
    ]


def test_f91_names_composed_and_taken_apart_are_opened_as_the_disk_has_them(tmp_path: Path) -> None:
    put(tmp_path, "M\u00f6hre.md", "Mo\u0308hre 2.md")
    assert [file.text for file in find_notes(tmp_path)] == ["text", "text"]
    assert slug("M\u00f6hre") == slug("Mo\u0308hre")


def test_f93_names_of_all_scripts_keep_apart() -> None:
    names = [
        "Möhre",
        "Mohre",
        "Bed 1/2",
        "Bed 1-2",
        "C+",
        "C",
        "トマト",
        "½",
        "12",
        "Weiß",
        "Wei",
        "Ærø",
        "r",
        "!",
        "?",
    ]
    assert len({slug(name) for name in names}) == len(names)
    assert all(slug(name) for name in names)


def test_f95_a_name_that_is_no_text_is_told_and_the_note_is_read(tmp_path: Path) -> None:
    put(tmp_path, "a.md")
    raw = os.fsencode(tmp_path / "notes") + b"/2026-06-20 \xff.md"
    handle = os.open(raw, os.O_WRONLY | os.O_CREAT)
    os.write(handle, b"Fine day.")
    os.close(handle)
    odd = find_notes(tmp_path)[0]
    assert odd.path == "notes/2026-06-20 \\xff.md"
    assert [p.sentence for p in odd.problems] == [
        "notes/2026-06-20 \\xff.md: This file's name cannot be read. Rename it with plain letters."
    ]
    (entry, _) = read_all(find_notes(tmp_path), Habits(vocabulary=Vocabulary([])), None)
    assert entry.body == "Fine day."


def test_f95_a_name_of_255_bytes_is_no_trouble(tmp_path: Path) -> None:
    put(tmp_path, "é" * 120 + ".md")
    assert len(find_notes(tmp_path)) == 1
