"""YAML text to a tree in which every key and value knows its line, all of it text.

Reads headers and settings files. Types are given later, by field. What stops YAML on one line costs
that line alone: the rest is read piece by piece (`mending`). Anchors, aliases and tags are refused.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import NoReturn, cast

import yaml

Loader = getattr(yaml, "CLoader", yaml.Loader)
"""The C parser where it is there. Only its events are used: nothing is ever constructed."""

DEEPEST = 12
"""Most levels of lists in lists; a garden needs four."""
MOST_EVENTS = 200_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """A piece of text."""

    text: str
    line: int
    column: int
    is_quoted: bool = False  # in quotes or as a block: meant exactly so
    is_refused: bool = False  # not allowed or not readable: kept, not used


@dataclass(frozen=True, slots=True, kw_only=True)
class Items:
    """A list."""

    items: tuple[Tree, ...]
    line: int
    column: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Branch:
    """Keys with their values, in order; a key may stand twice."""

    keys: tuple[Key, ...]
    line: int
    column: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """One key: its words as written and its value."""

    written: str
    line: int
    column: int
    value: Tree

    @property
    def name(self) -> str:
        """The key as it is compared: in lower case, spaces for "-" and "_"."""
        return key_name(self.written)


@lru_cache(maxsize=1_000)
def key_name(written: str) -> str:
    """A key as it is compared."""
    return " ".join(written.casefold().replace("_", " ").replace("-", " ").split())


Tree = Leaf | Items | Branch


class NotAllowed(Exception):
    """Something YAML knows and a garden does not need: the sentence for the gardener, and where."""

    def __init__(self, sentence: str, line: int, column: int) -> None:
        super().__init__(sentence, line, column)
        self.sentence = sentence
        self.line = line
        self.column = column


def parse(text: str, first_line: int = 1, first_column: int = 1) -> Tree | None:
    """The tree of a text; None if nothing stands in it.

    Raises:
        yaml.YAMLError: the text is not YAML.
        NotAllowed: it is, but uses what we refuse.
    """
    if (quick := too_deep(text)) is not None:
        raise NotAllowed("This is nested too deeply.", first_line + quick, first_column)
    return _Builder(text, first_line - 1, first_column - 1).whole()


def too_deep(text: str) -> int | None:
    """The line, from 0, on which brackets or list marks nest beyond reason; None if none do."""
    for number, line in enumerate(text.split("\n")):
        opened = line.count("[") + line.count("{")
        if opened > 2 * DEEPEST and opened - line.count("]") - line.count("}") > DEEPEST:
            return number
        if "- " * DEEPEST in line:
            return number
    return None


class _Builder:
    """Turns parser events into a tree; stops at the first thing refused."""

    def __init__(self, text: str, lines_above: int, columns_before: int) -> None:
        self.above = lines_above
        self.before = columns_before
        self.events: Iterator[yaml.Event] = iter(yaml.parse(text, Loader=Loader))
        self.count = 0

    def whole(self) -> Tree | None:
        tree: Tree | None = None
        for event in self.events:
            if isinstance(event, yaml.DocumentStartEvent) and tree is not None:
                self.refuse(event, "A second part begins here. Leave one part.")
            if isinstance(event, yaml.NodeEvent):
                tree = self.node(event, 0)
        return tree

    def place(self, event: yaml.Event) -> tuple[int, int]:
        mark = event.start_mark
        if mark is None:
            return self.above + 1, 1
        return mark.line + 1 + self.above, mark.column + 1 + (self.before if mark.line == 0 else 0)

    def refuse(self, event: yaml.Event, sentence: str) -> NoReturn:
        raise NotAllowed(sentence, *self.place(event))

    def node(self, event: yaml.NodeEvent, depth: int) -> Tree:
        self.count += 1
        if depth > DEEPEST or self.count > MOST_EVENTS:
            self.refuse(event, "This is nested too deeply." if depth > DEEPEST else "This is too long.")
        if isinstance(event, yaml.AliasEvent):
            self.refuse(event, 'A value cannot begin with "*". Put quotes round it.')
        if event.anchor is not None:
            self.refuse(event, 'A value cannot begin with "&". Put quotes round it.')
        if getattr(event, "tag", None) is not None:
            self.refuse(event, 'A value cannot begin with "!". Put quotes round it.')
        line, column = self.place(event)
        if isinstance(event, yaml.ScalarEvent):
            is_quoted = event.style not in (None, "")
            is_folded = "\n" in event.value and event.style not in ("|", ">")
            text = " ".join(event.value.split()) if is_folded else event.value
            return Leaf(text=text, line=line, column=column, is_quoted=is_quoted)
        if isinstance(event, yaml.SequenceStartEvent):
            return Items(items=tuple(self.items(depth)), line=line, column=column)
        return Branch(keys=tuple(self.keys(depth)), line=line, column=column)

    def items(self, depth: int) -> Iterator[Tree]:
        for event in self.events:
            if isinstance(event, yaml.SequenceEndEvent):
                return
            yield self.node(cast(yaml.NodeEvent, event), depth + 1)

    def keys(self, depth: int) -> Iterator[Key]:
        for event in self.events:
            if isinstance(event, yaml.MappingEndEvent):
                return
            key = self.node(cast(yaml.NodeEvent, event), depth + 1)
            value = self.node(cast(yaml.NodeEvent, next(self.events)), depth + 1)
            if not isinstance(key, Leaf):
                raise NotAllowed("A key must be a word.", key.line, key.column)
            written = " ".join(key.text.split()) if "\n" in key.text else key.text
            yield Key(written=written, line=key.line, column=key.column, value=value)
