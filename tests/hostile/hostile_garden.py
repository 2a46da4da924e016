"""A garden whose every word was written by somebody who means harm."""

from __future__ import annotations

import json
from pathlib import Path

from attacks import FILES, RAN, TEXTS, WORDS
from leafmould.build import build
from sites import ON

POLYGLOT = f"GIF89a/*\x01\x00\x01\x00*/=1;{RAN}".encode("latin-1")
DRAWING = f'<svg xmlns="http://www.w3.org/2000/svg" onload="{RAN}"><script>{RAN}</script></svg>'


def hostile_site(top: Path) -> Path:
    """The household's site of that garden, in which everything is shown that ever is."""
    garden = top / "garden"
    for name, text in {**_settings(), **_notes()}.items():
        path = garden / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="")
    (garden / "photos").mkdir()
    (garden / "photos" / "evil.svg").write_text(DRAWING, encoding="utf-8")
    (garden / "photos" / "evil.jpg").write_text(DRAWING, encoding="utf-8")
    (garden / "photos" / "evil.gif").write_bytes(POLYGLOT)
    build(garden, to=top / "site", on=ON, household=True)
    return top / "site"


def _settings() -> dict[str, str]:
    """The files beside the notes; JSON is YAML, and takes any sign."""
    script = WORDS["out of the title"]
    beds = [{"name": words, "also": [f"{words} too"], "parts": [words]} for words in _words()]
    own = {words: {"family": words, "also": [f"{words}s"], "varieties": [words]} for words in _words()}
    rows = "".join(f"{_cell(words)},{_cell(words)},2023\n" for words in _words())
    seeds = "".join(f"{_cell(words)},{_cell(words)},{_cell(words)}\n" for words in _words())
    return {
        "garden.yaml": json.dumps({"garden": script, "measures": {script: "400 g"}, "beds": beds}),
        "crops.yaml": json.dumps(own),
        "records/beforehand.csv": f"bed,crop,year\n{rows}",
        "records/seeds.csv": f"crop,variety,from\n{seeds}",
        **{f"pages/{n}.md": f"# {words}\n\n{words}\n" for n, words in enumerate(_words())},
        **{f"plans/{2027 + n}.md": f"- sow {words} in {words}\n" for n, words in enumerate(_words()[:5])},
    }


def _notes() -> dict[str, str]:
    headed = {
        f"notes/2026/04-{1 + n % 28:02}-{_slug(name)}.md": _headed(n, words)
        for n, (name, words) in _numbered()
    }
    texts = {f"notes/texts/{_slug(name)}.md": f"2026-05-01\n\n{text}\n" for name, text in TEXTS.items()}
    files = {
        f"notes/2026/05-{1 + n:02}/{name}": "---\ndate: 2026-05-02\n---\nPeas.\n"
        for n, name in enumerate(FILES)
    }
    return {**headed, **texts, **files}


def _numbered() -> list[tuple[int, tuple[str, str]]]:
    return list(enumerate(WORDS.items()))


def _words() -> list[str]:
    """What one line can hold."""
    return [words for words in WORDS.values() if "\n" not in words]


def _headed(number: int, words: str) -> str:
    """A note that says the same everywhere; the words' own quotes end lines, so lines are tried without them too."""
    head = {
        "date": f"2026-04-{1 + number % 28:02}",
        "title": words,
        "bed": words,
        "part": words,
        "crop": words,
        "variety": words,
        "did": "picked",
        "amount": f"1 kg {words}",
        "photo": [f"{words}.jpg", "evil.svg", "evil.jpg", "evil.gif"],
        "tags": [words],
        "by": words,
        "lesson": words,
        "again": words,
        words: words,
        "soil": {words: [words]},
    }
    lines = "".join(f"{json.dumps(key)}: {json.dumps(value)}\n" for key, value in head.items())
    return f"---\n{lines}---\n{_body(words)}"


def _body(words: str) -> str:
    quoted = words.replace("'", "’")
    return f"""\
{words}

- picked 2 kg {words} from {words}
- sowed '{quoted}' peas in {words}
- saw {words} on {words}
- bought {words} from {words} for 3.50
- treated {words} with {words}

{words} said: next year {words} earlier.

## {words}

> {words}

[{words}]({words}) ![{words}]({words} "{words}") <{words}> `{words}`
"""


def _cell(words: str) -> str:
    return '"' + words.replace('"', '""') + '"'


def _slug(name: str) -> str:
    return "".join(sign if sign.isalnum() else "-" for sign in name)
