"""The bare library floor: what any site maker in Python must at least do with the same notes.

In one process: read every note, YAML of the header with the C parser, markdown-it on the body, one
Jinja2 template of the size of a note page, one HTML file written for each note. No garden, no links
between notes, no check of anything.

    python tests/benchmarks/floor.py GARDEN OUT
"""

from __future__ import annotations

import sys
from pathlib import Path

import jinja2
import yaml
from markdown_it import MarkdownIt

HERE = Path(__file__).parent


def header_and_body(text: str) -> tuple[dict[str, object], str]:
    """The header as YAML gives it, and the rest; a header YAML cannot read counts as prose."""
    if not text.startswith("---\n"):
        return {}, text
    header, fence, body = text[4:].partition("\n---\n")
    if not fence:
        return {}, text
    try:
        read = yaml.load(header, Loader=yaml.CBaseLoader)
    except yaml.YAMLError:
        return {}, text
    return (read if isinstance(read, dict) else {}), body


def build_floor(garden: Path, out: Path) -> int:
    """Write one page a note; how many."""
    markdown = MarkdownIt("commonmark", {"html": False, "breaks": True}).enable("table")
    surroundings = jinja2.Environment(
        loader=jinja2.FileSystemLoader(HERE), autoescape=True, undefined=jinja2.StrictUndefined
    )
    template = surroundings.get_template("floor_note.html")
    notes = garden / "notes"
    paths = sorted(p for p in notes.rglob("*") if p.suffix in {".md", ".txt"})
    names = [p.relative_to(notes).with_suffix("").as_posix() for p in paths]
    for number, (path, name) in enumerate(zip(paths, names, strict=True)):
        header, body = header_and_body(path.read_text(encoding="utf-8"))
        page = template.render(
            garden="Measuring ground",
            name=name,
            header=header,
            work=header.get("work", []),
            body=markdown.render(body),
            before=names[number - 1] if number else None,
            after=names[number + 1] if number + 1 < len(names) else None,
            root="../" * (name.count("/") + 1),
        )
        target = out / "notes" / f"{name}.html"
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(page, encoding="utf-8")
    return len(paths)


if __name__ == "__main__":
    sys.stdout.write(f"{build_floor(Path(sys.argv[1]), Path(sys.argv[2]))} notes\n")
