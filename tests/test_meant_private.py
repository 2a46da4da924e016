"""Private things written in other ways than the plain one: each is hidden in a public build, and told.

Where it is in doubt whether something was meant to be private, it is left out and the gardener is told how
to write it.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from leafmould.build import build
from leafmould.garden.load import load
from leafmould.notes.line_ends import PRIVATE, SIGN, may_be_private
from test_secrets import ON, everything, found_in

HEADERS = (
    "private: yes", "private:", "tags: [private]", "tags: tea, private", "private note: yes", "is private: yes",
    "secret: yes", "status: private", "visibility: Private", "privat: yes", "pivate: true", "private",
    "private = yes", "private：yes", "Private - yes", "private: no\nPrivate: yes", "private: yes\nprivate: no",
    "public: no", "private: [yes]", "private: {yes: }", "title: Tea, private", "private: &a yes", "private: !!bool yes",
)  # fmt: skip

LINES = (
    "weeded Arch, zzword, private", "weeded Arch, zzword - private", "weeded Arch, zzword — private",
    "weeded Arch, zzword private", "private: weeded Arch, zzword", "private, weeded Arch, zzword",
    "PRIVATE weeded Arch, zzword", "weeded Arch, zzword, private, later", "weeded Arch, zzword, private?",
    "weeded Arch, zzword, private,", "weeded Arch, zzword, *private*", 'weeded Arch, zzword, "private"',
    "weeded Arch, zzword, private # c", "weeded Arch, zzword, privat", "weeded Arch, zzword, private note",
    "weeded Arch, zzword (private)", "weeded Arch, zzword, private!", "[private] weeded Arch, zzword",
    "zzword was here, private, and left", "**Private:** zzword was here", "zzword was here, priavte",
)  # fmt: skip

PLAIN = {
    "private: yes",
    "weeded Arch, zzword, private",
    "weeded Arch, zzword (private)",
    "weeded Arch, zzword, private!",
}

PARTS = (
    "## 2026-06-02, private\n- weeded Arch, zzword",
    "## 2026-06-02 (private)\nzzword",
    "## 2026-06-02 - private - tea\nzzword",
    "## 2026-06-02\nprivate: yes\n\n- weeded Arch, zzword",
    "## 2026-06-02\nprivate\n\nzzword",
    "2026-06-02, private\n- weeded Arch, zzword",
)

NOT_PRIVATE = (
    "weeded the private lane beside Arch, zzword",
    "a primate in the private lane, zzword",
    "semi-private corner cleared, zzword",
    "cultivated Arch, zzword",
)


def test_every_slip_has_the_sign_of_one() -> None:
    assert [word for word in sorted(PRIVATE) if SIGN.search(word) is None] == []
    assert [word for word in sorted(PRIVATE) if not may_be_private(word)] == []


def public(folder: Path, yaml: str, notes: dict[str, str]) -> tuple[dict[str, str], list[str]]:
    """Every byte of a public build, and what is told of the garden."""
    (folder / "notes").mkdir(exist_ok=True)
    (folder / "garden.yaml").write_text(yaml, "utf-8")
    for name, text in notes.items():
        (folder / "notes" / name).write_text(text, "utf-8")
    build(folder, to=folder / "site", on=ON, household=False)
    told = [p.sentence for p in load(folder, on=ON, household=False).problems]
    return everything(folder / "site"), told


ARCH = "garden: Hill\nbeds: [Arch]\n"


@pytest.mark.parametrize("written", HEADERS)
def test_a_header_that_means_private_hides_its_note(tmp_path: Path, written: str) -> None:
    note = f"---\ndate: 2026-06-01\n{written}\nwork: weeded Arch, zzword\n---\nZzword.\n"
    site, told = public(tmp_path, ARCH, {"2026-06-01.md": note})
    assert found_in(site, "zzword") == []
    assert any("private: yes" in t or "private" in t for t in told) is (written not in PLAIN)


@pytest.mark.parametrize("written", ["private: no", "private note: no", "secret: no", "public: yes"])
def test_a_header_that_says_no_hides_nothing(tmp_path: Path, written: str) -> None:
    note = f"---\ndate: 2026-06-01\n{written}\n---\nZzword.\n"
    assert found_in(public(tmp_path, ARCH, {"2026-06-01.md": note})[0], "zzword")


@pytest.mark.parametrize("is_header", [True, False])
@pytest.mark.parametrize("written", LINES)
def test_a_line_that_means_private_is_hidden(tmp_path: Path, written: str, is_header: bool) -> None:
    line = f"---\ndate: 2026-06-01\nwork:\n  - {written}\n---\n" if is_header else f"- {written}\n"
    site, told = public(tmp_path, ARCH, {"2026-06-01.md": line})
    assert found_in(site, "zzword") == []
    assert any('", private"' in t for t in told) is (written not in PLAIN)


@pytest.mark.parametrize("written", PARTS)
def test_a_dated_part_that_means_private_is_hidden(tmp_path: Path, written: str) -> None:
    site, told = public(
        tmp_path, ARCH, {"june.md": f"## 2026-06-01\nRain.\n\n{written}\n\n## 2026-06-03\nSun.\n"}
    )
    assert found_in(site, "zzword") == []
    assert found_in(site, "rain.")
    assert found_in(site, "sun.")
    assert any("private" in t for t in told)


@pytest.mark.parametrize("written", NOT_PRIVATE)
def test_private_inside_a_sentence_hides_nothing(tmp_path: Path, written: str) -> None:
    site, told = public(tmp_path, ARCH, {"2026-06-01.md": f"It rained.\n\n- {written}\n"})
    assert found_in(site, "zzword")
    assert not any('", private"' in t for t in told)
