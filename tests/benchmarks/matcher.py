"""Microseconds a work line for the matcher, over the unique lines of a garden, each read once.

python tests/benchmarks/matcher.py GARDEN
"""

from __future__ import annotations

import json
import sys
import time
from datetime import date
from pathlib import Path

from leafmould.facts.tables import crops
from leafmould.garden.vocabulary import build_vocabulary
from leafmould.notes.lines import Defaults, Habits, read_line
from leafmould.notes.settings import read_settings
from leafmould.values.problems import Location
from leafmould.values.when import on


def unique_lines(garden: Path) -> list[str]:
    """Every list line of the notes, each once, in order."""
    texts = (p.read_text(encoding="utf-8") for p in sorted((garden / "notes").rglob("*.md")))
    marked = (line.strip() for text in texts for line in text.splitlines())
    return list(dict.fromkeys(line[2:] for line in marked if line.startswith("- ")))


def main() -> None:
    """Print lines, how many gave an action, and microseconds a line, as JSON."""
    garden = Path(sys.argv[1])
    settings = read_settings(garden)
    habits = Habits(vocabulary=build_vocabulary(settings, crops()), order="day first", decimal="point")
    lines = unique_lines(garden)
    spot, base, nothing = Location(file="notes/a.md", line=1), on(date(2026, 7, 1)), Defaults()
    begun = time.perf_counter()
    readings = [
        read_line(t, at=spot, field="work[1]", base=base, habits=habits, defaults=nothing) for t in lines
    ]
    taken = time.perf_counter() - begun
    found = sum(bool(r.actions) for r in readings)
    sys.stdout.write(json.dumps({"lines": len(lines), "read": found, "us": taken / len(lines) * 1e6}) + "\n")


if __name__ == "__main__":
    main()
