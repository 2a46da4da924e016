"""Takes the lines under `work:` out of a header before YAML sees them.

One thing done a line, marked "-", "*", "•", "–" or not at all; a deeper indent continues the line.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml

from leafmould.notes.mending import KEY_LINE
from leafmould.notes.tree import Items, Leaf, NotAllowed, parse
from leafmould.values.dates import scan_date

WORK = re.compile(r"(?:work|['\"]work['\"])[ \t]*:(?P<value>.*)$", re.IGNORECASE)
MARK = re.compile(r"[ \t]*[-*•–‣·][ \t]*(?:\[[xX]\][ \t]+)?")
BLOCK_SIGN = re.compile(r"[|>][+-]?\d?[+-]?\s*$")


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkLine:
    """One thing done, as typed."""

    text: str
    line: int
    column: int  # where `text` begins


def take_out_work(lines: list[str], first_line: int) -> tuple[tuple[WorkLine, ...], list[str]]:
    """The work lines, and the header's lines with theirs left empty."""
    found: list[WorkLine] = []
    rest: list[str] = []
    number = 0
    while number < len(lines):
        m = WORK.match(lines[number])
        if m is None:
            rest.append(lines[number])
            number += 1
            continue
        end = _end_of_block(lines, number + 1)
        found.extend(_beside_the_key(m, first_line + number))
        found.extend(_in_block(lines[number + 1 : end], first_line + number + 1))
        rest.extend([""] * (end - number))
        number = end
    return tuple(found), rest


def unquoted(text: str) -> str:
    """A text that is one properly quoted YAML scalar, without its quotes; any other text as it is."""
    if len(text) < 2 or text[0] not in "\"'" or text[-1] != text[0]:
        return text
    try:
        tree = parse(text)
    except (yaml.YAMLError, NotAllowed):
        return text
    return tree.text if isinstance(tree, Leaf) and tree.text.isprintable() else text


def _end_of_block(lines: list[str], start: int) -> int:
    """The first line that is a key of the header again."""
    for number in range(start, len(lines)):
        line = lines[number]
        if line[:1].strip() and not MARK.match(line) and KEY_LINE.match(line) and not _opens_with_date(line):
            return number
    return len(lines)


def _opens_with_date(line: str) -> bool:
    """Whether what stands before the colon is a date: a work line without a mark, no key."""
    found = scan_date(line)
    return found is not None and line[found[1] :].lstrip(" .").startswith(":")


def _beside_the_key(m: re.Match[str], line: int) -> list[WorkLine]:
    """What stands on the same line as `work:`."""
    value = m["value"].strip()
    if not value or BLOCK_SIGN.match(value) or value.startswith("# "):
        return []
    column = m.start("value") + len(m["value"]) - len(m["value"].lstrip()) + 1
    if value.startswith("[") and value.endswith("]"):
        try:
            tree = parse(value, line, column)
        except (yaml.YAMLError, NotAllowed):
            tree = None
        if isinstance(tree, Items):
            leaves = [item for item in tree.items if isinstance(item, Leaf)]
            return [WorkLine(text=leaf.text, line=leaf.line, column=leaf.column) for leaf in leaves]
    return [WorkLine(text=unquoted(value), line=line, column=column)]


@dataclass(slots=True)
class _Open:
    """A work line still being read."""

    texts: list[str]
    line: int
    column: int
    indent: int

    def done(self) -> WorkLine:
        text = " ".join(self.texts)
        plain = unquoted(text)
        return WorkLine(text=plain, line=self.line, column=self.column + (1 if plain != text else 0))


def _in_block(lines: list[str], first_line: int) -> list[WorkLine]:
    """The lines under `work:`, one after the other."""
    found: list[_Open] = []
    for number, line in enumerate(lines, first_line):
        mark = MARK.match(line)
        start = mark.end() if mark else len(line) - len(line.lstrip())
        text = line[start:].rstrip()
        indent = len(line) - len(line.lstrip())
        if not text:
            continue
        if found and indent > found[-1].indent:
            joined = f", {text}" if mark and len(found[-1].texts) > 1 else text
            _append(found[-1].texts, joined)
        else:
            found.append(_Open(texts=[text], line=number, column=start + 1, indent=indent))
    return [line.done() for line in found]


def _append(texts: list[str], text: str) -> None:
    if text.startswith(", "):
        texts[-1] += ","
        text = text[2:]
    texts.append(text)
