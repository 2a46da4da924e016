"""Measures how reading time grows with a text that was made to be slow; prints, never judges.

How to run it, from the top of the repository, with the package installed:

    python tests/benchmarks/growth.py

Each line shows the seconds for a text and for one eight times as long, and their ratio: about 8 is linear,
64 would be a square.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from leafmould.notes.note import read_note
from notes_as_typed import habits, note_file

SHORT, LONG = 2_000, 16_000
HEADER = "---\ndate: 2026-06-18\n---\n"

TEXTS: dict[str, Callable[[int], str]] = {
    "keys": lambda n: "---\n" + "a: b\n" * n + "---\nx",
    "open brackets in keys": lambda n: "---\n" + "a: [\n" * (n // 10) + "---\nx",
    "brackets": lambda n: "---\nx: " + "[" * n + "\n---\n",
    "work lines": lambda n: "---\nwork:\n" + "  - sowed peas in Arch\n" * (n // 20) + "---\n",
    "list lines": lambda n: "- sowed peas\n  in Arch\n" * (n // 20),
    "dated lines": lambda n: "12 June 2024\n- sowed peas in Arch\n" * (n // 20),
    "comments": lambda n: "<!-- a " * n,
    "signs": lambda n: "x " * n + "\n" + "*" * n + "\n" + "# " * n,
    "colons": lambda n: "---\nbed: " + "a: " * n + "\n---\n",
    "indents": lambda n: "\n".join(" " * (i % 60) + "a: *b" for i in range(n // 20)),
    "depth": lambda n: "---\n" + "\n".join(" " * i + "a:" for i in range(n // 100)) + " *b\n---\n",
    "fine days": lambda n: HEADER + "It was a fine day\n" * n,
    "blank lines": lambda n: HEADER + "\n" * n + "The end.\n",
    "prose lists": lambda n: HEADER + "- It was fine\n" * n,
    "lessons": lambda n: HEADER + "Next year, more peas.\n" * n,
    "paragraphs": lambda n: HEADER + "It was - *fine*\n\n" * n,
}


def seconds(text: str) -> float:
    """The best of three readings, in processor seconds."""
    took = []
    for _ in range(3):
        begun = time.process_time()
        read_note(note_file(text.encode(), "log.md"), habits())
        took.append(time.process_time() - begun)
    return min(took)


def main() -> None:
    """Print a line for each kind of text."""
    print(f"{'text':<24}{SHORT:>10}{LONG:>10}   ratio")
    for name, make in TEXTS.items():
        short, long = seconds(make(SHORT)), seconds(make(LONG))
        print(f"{name:<24}{short:>10.4f}{long:>10.4f}{long / max(short, 1e-6):>8.1f}")


if __name__ == "__main__":
    main()
