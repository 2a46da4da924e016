"""Bodies of notes that hold no Markdown but paragraphs and short lists: cut into lines without a parser.

Most notes are such, and a parser takes longer over them than all else about their page. Anything that
could mean something in Markdown is left to the parser; what both read comes out the same.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

MARKS = re.compile(r"""[^\w\n .,;:?'"()/%°=+>–—‘’“”…-]""")
"""Signs that may mean something in Markdown, and all that are not known to mean nothing."""

NUMBERED = re.compile(r"\d+[.)]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A paragraph's lines, or the items of a list."""

    lines: list[str]
    is_list: bool


def plain_blocks(text: str) -> list[Block] | None:
    """The paragraphs and lists of a body; None where only a parser can tell."""
    if "_" in text or MARKS.search(text):
        return None
    blocks: list[Block] = []
    for group in re.split("\n\n+", text.strip("\n")):
        block = _block(group.split("\n"))
        if block is None or (block.is_list and blocks and blocks[-1].is_list):
            return None  # two lists in a row are one, with its items wide apart
        blocks.append(block)
    return blocks


def _block(lines: list[str]) -> Block | None:
    is_list = lines[0].startswith("- ")
    if is_list:
        if not all(line.startswith("- ") for line in lines):
            return None
        lines = [line[2:] for line in lines]
    for line in lines:  # an item with a number first may have its sign before that number
        if (
            not line[:1].isalnum()
            or line[-1] == " "
            or (is_list and line[0].isdigit())
            or NUMBERED.match(line)
        ):
            return None
    return Block(lines=lines, is_list=is_list)
