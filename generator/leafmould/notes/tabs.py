"""Tabs in a header or settings file: where they stand, and the text with spaces that says what was meant.

Part of mending. A tab has no width of its own: a line that begins with one belongs where the lines around it say.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from leafmould.values.problems import Level

ITEM = re.compile(r"\s*-(?:\s|$)")


def tabs_told(text: str, first_line: int) -> Iterator[tuple[Level, str, int, int]]:
    """Level, sentence, line and column: one for tabs that begin lines, one for those inside them."""
    found: dict[Level, list[tuple[int, int]]] = {Level.WARNING: [], Level.HINT: []}
    for number, line in enumerate(text.split("\n"), first_line):
        if "\t" in line.rstrip():
            is_indent = line.lstrip(" ").startswith("\t")
            found[Level.WARNING if is_indent else Level.HINT].append((number, line.index("\t") + 1))
    for level, places in found.items():
        if len(places) == 1:
            yield (
                level,
                f"A tab stands on line {places[0][0]}. It is read as a space; write spaces.",
                *places[0],
            )
        elif places:
            lines = _listed([number for number, _ in places])
            yield level, f"Tabs stand on {lines}. They are read as spaces; write spaces.", *places[0]


def in_spaces(text: str, is_sound: Callable[[str], bool]) -> str:
    """The text with spaces for tabs; lines that begin with one moved beside their like, where that reads better."""
    plain, beside = text.replace("\t", " "), _beside_their_like(text.split("\n")).replace("\t", " ")
    if plain == beside:
        return plain
    ways = (beside, plain) if _has_item_among_others(text) else (plain, beside)
    return next((way for way in ways if is_sound(way)), ways[0])


def _listed(numbers: Sequence[int]) -> str:
    if len(numbers) > 4:
        return f"{len(numbers)} lines, from line {numbers[0]} on"
    return f"lines {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"


def _has_item_among_others(text: str) -> bool:
    """Whether a list has marks behind spaces, and one behind a tab."""
    marks = [line for line in text.split("\n") if ITEM.match(line)]
    tabbed = [line for line in marks if _begins_with_tab(line)]
    return 0 < len(tabbed) < len(marks)


def _beside_their_like(lines: list[str]) -> str:
    """List marks under the marks around them, all else under what it belongs to."""
    found: list[str] = []
    for number, line in enumerate(lines):
        indent = _indent_of(line, found, lines[number + 1 :]) if _begins_with_tab(line) else None
        found.append(line if indent is None else " " * indent + line.lstrip())
    return "\n".join(found)


def _indent_of(line: str, above: Sequence[str], below: Sequence[str]) -> int:
    before = next((other for other in reversed(above) if other.strip()), "")
    if ITEM.match(line):
        like = next((other for other in reversed(above) if ITEM.match(other)), None)
        like = like or next(
            (other for other in below if ITEM.match(other) and not _begins_with_tab(other)), None
        )
        return _width(like) if like else _width(before) + 2
    return _width(before) + (2 if ITEM.match(before) or before.rstrip().endswith(":") else 0)


def _begins_with_tab(line: str) -> bool:
    return "\t" in line[: _width(line)] and line.strip() != ""


def _width(line: str) -> int:
    return len(line) - len(line.lstrip())
