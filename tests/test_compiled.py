"""Built-in layouts are compiled once for all runs; a garden's own never come from what was kept."""

from __future__ import annotations

import marshal
import sys
from pathlib import Path

import pytest
from jinja2 import ChoiceLoader, Environment, FileSystemLoader

from leafmould.render.compiled import Compiled


@pytest.fixture(autouse=True)
def keeps_compiled(monkeypatch: pytest.MonkeyPatch) -> None:
    """As Python does unless it is told otherwise, where the tests may be run."""
    monkeypatch.setattr(sys, "dont_write_bytecode", False)


@pytest.fixture
def layouts(tmp_path: Path) -> Path:
    (tmp_path / "layouts").mkdir()
    (tmp_path / "layouts/note.html").write_text("Note {{ name }}", "utf-8")
    return tmp_path / "layouts"


def printed(layouts: Path, *, made_with: str = "1") -> str:
    look, place = layouts.parent / "look", layouts.parent / "kept"
    environment = Environment(
        loader=ChoiceLoader([FileSystemLoader(look), FileSystemLoader(layouts)]),
        autoescape=True,
        bytecode_cache=Compiled(layouts, made_with, place),
    )
    return environment.get_template("note.html").render(name="<pea>")


def kept(layouts: Path) -> list[Path]:
    return sorted((layouts.parent / "kept").glob("*"))


def put_other_code_in(path: Path) -> None:
    """What prints something else, under the checksum of what was kept."""
    other = Environment().compile("Other")
    path.write_bytes(path.read_bytes()[:40] + marshal.dumps(other))


def test_a_layout_is_compiled_once(layouts: Path) -> None:
    assert printed(layouts) == "Note &lt;pea&gt;"
    (path,) = kept(layouts)
    assert path.name == f"note.html.{sys.implementation.cache_tag}.pyc"
    put_other_code_in(path)
    assert printed(layouts) == "Other"  # so it is what was kept that ran


def test_a_changed_layout_and_another_program_compile_anew(layouts: Path) -> None:
    printed(layouts)
    put_other_code_in(kept(layouts)[0])
    assert printed(layouts, made_with="2") == "Note &lt;pea&gt;"
    put_other_code_in(kept(layouts)[0])
    (layouts / "note.html").write_text("Page {{ name }}", "utf-8")
    assert printed(layouts, made_with="2") == "Page &lt;pea&gt;"


@pytest.mark.parametrize("spoilt", [b"", b"x" * 30, b"x" * 400])
def test_what_cannot_be_read_is_compiled_anew(layouts: Path, spoilt: bytes) -> None:
    printed(layouts)
    (path,) = kept(layouts)
    path.write_bytes(spoilt)
    assert printed(layouts) == "Note &lt;pea&gt;"
    path.write_bytes(path.read_bytes()[:60])
    assert printed(layouts) == "Note &lt;pea&gt;"


def test_a_layout_of_the_gardens_own_is_not_kept(layouts: Path) -> None:
    look = layouts.parent / "look"
    look.mkdir()
    (look / "note.html").write_text("Mine {{ name }}", "utf-8")
    assert printed(layouts) == "Mine &lt;pea&gt;"
    assert kept(layouts) == []


def test_nothing_is_kept_where_python_keeps_nothing(layouts: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    assert printed(layouts) == "Note &lt;pea&gt;"
    assert kept(layouts) == []


def test_where_nothing_can_be_written_it_works_all_the_same(layouts: Path) -> None:
    (layouts.parent / "kept").write_text("a file in the way", "utf-8")
    assert printed(layouts) == "Note &lt;pea&gt;"
