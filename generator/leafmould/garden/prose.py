"""The body of a note in blocks: paragraphs, list items, headings with what stands under them.

Used by `visible`, which leaves out whole blocks. Not a Markdown reader: it only has to know what belongs
together, and takes too much rather than too little.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass

HEADING = re.compile(r" {0,3}(#{1,6})(?:\s|$)")
UNDERLINE = re.compile(r" {0,3}(=+|-+)\s*$")
ITEM = re.compile(r"\s*(?:[-*+•–—‣·]|\d{1,9}[.)])\s+\S")
LABEL = re.compile(r"\s*(?:\*\*|__)?[^:|\n]{1,60}?(?::(?:\*\*|__)?|(?:\*\*|__):?)\s*$")
FENCE = re.compile(r"\s*(```+|~~~+)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """Lines that belong together, counted from 0; `end` is the line after the last."""

    start: int
    end: int
    level: int = 0  # of a heading, 1 to 6, or 7 for a line such as "Balcony:"; 0: not a heading
    indent: int = 0  # of its first line
    is_item: bool = False


def without(
    body: str, is_hidden: Callable[[int, str], bool], alone: frozenset[int] = frozenset()
) -> tuple[str, frozenset[int]]:
    """The body with hidden blocks emptied, and the lines emptied, counted from 0.

    Lines stay where they were, so that line numbers go on meaning the same. A hidden heading takes what
    stands under it along, a hidden list item what is set in deeper.

    Args:
        is_hidden: told a block's first line number and its text, says whether it must go.
        alone: work lines without a mark; one stays where only others of its paragraph must go.
    """
    lines = body.split("\n")
    gone: set[int] = set()
    under_level = under_indent = -1
    for block in blocks(lines):
        if under_level >= 0 and block.level and block.level <= under_level:
            under_level = -1
        if under_indent >= 0 and block.indent <= under_indent:
            under_indent = -1
        below = under_level >= 0 or under_indent >= 0
        if not below and not is_hidden(block.start, "\n".join(lines[block.start : block.end])):
            continue
        stays = not (below or block.level or block.is_item)
        gone.update(
            n for n in range(block.start, block.end) if not (stays and n in alone) or is_hidden(n, lines[n])
        )
        under_level = block.level if block.level and under_level < 0 else under_level
        under_indent = block.indent if block.is_item and under_indent < 0 else under_indent
    return "\n".join("" if n in gone else line for n, line in enumerate(lines)), frozenset(gone)


def blocks(lines: list[str]) -> Iterable[Block]:
    """The blocks in order; empty lines belong to none."""
    at = 0
    while at < len(lines):
        if not lines[at].strip():
            at += 1
            continue
        block = _block_at(lines, at)
        yield block
        at = block.end


def _block_at(lines: list[str], at: int) -> Block:
    indent = len(lines[at]) - len(lines[at].lstrip())
    if heading := HEADING.match(lines[at]):
        return Block(start=at, end=at + 1, level=len(heading.group(1)))
    if fence := FENCE.match(lines[at]):
        return Block(start=at, end=_fence_end(lines, at, fence.group(1)), indent=indent)
    is_item = ITEM.match(lines[at]) is not None
    end = _paragraph_end(lines, at)
    if not is_item and end - at > 1 and (line := UNDERLINE.match(lines[end - 1])):
        return Block(start=at, end=end, level=1 if line.group(1)[0] == "=" else 2)
    is_label = not is_item and end - at == 1 and LABEL.match(lines[at]) is not None
    return Block(start=at, end=end, level=7 if is_label else 0, indent=indent, is_item=is_item)


def _paragraph_end(lines: list[str], at: int) -> int:
    end = at + 1
    while end < len(lines) and lines[end].strip() and not _opens(lines[end]):
        end += 1
        if UNDERLINE.match(lines[end - 1]):
            break
    return end


def _opens(line: str) -> bool:
    """Whether the line begins a block of its own even without an empty line before it."""
    return any(p.match(line) for p in (HEADING, FENCE, ITEM))


def _fence_end(lines: list[str], at: int, mark: str) -> int:
    for n in range(at + 1, len(lines)):
        if lines[n].strip().startswith(mark):
            return n + 1
    return len(lines)
