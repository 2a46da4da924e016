"""Reads a header or settings file whole if it is sound, else piece by piece, so that one bad line costs
only itself.

A piece is a key or list mark with all that is indented under it. A piece YAML cannot read is cut into
smaller ones; a single line it cannot read is taken as the text it shows, with one sentence about it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

import yaml

from leafmould.notes.tabs import in_spaces, tabs_told
from leafmould.notes.tree import DEEPEST, Branch, Items, Key, Leaf, NotAllowed, Tree, parse
from leafmould.values.problems import Level, Location, Problem

KEY_LINE = re.compile(
    r"(?P<indent>[ \t]*)(?P<key>(?:'[^']*'|\"[^\"]*\"|[^\s:#'\"\[\]{}&*!|>%@`,-][^:#]*?)):(?P<value>[ \t].*|$)"
)
ITEM_LINE = re.compile(r"(?P<indent>[ \t]*)-(?P<value>[ \t].*|$)")
CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff\ud800-\udfff]")
NO_SPACE = re.compile(r"(?P<indent>[ \t]*)(?P<key>[^\W\d][\w -]{0,40}):(?P<value>(?!//)\S.*)")
HASH_WORD = re.compile(r"(?<=\s)#\S")
OPENING_QUOTE = re.compile(r"(?:^|(?<=[\s:,\[{]))([\"'])")
CLOSED = {'"': re.compile(r'(?:[^"\\]|\\.)*"'), "'": re.compile(r"(?:[^']|'')*'(?!')")}
"""What stands from behind an opening quote to the closing one: \\" and \'\' close nothing."""

MOST_LINES = 5_000


Group = list[tuple[int, str]]
"""Lines of one piece, each with its number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mended:
    """What could be read, and what to tell."""

    tree: Tree | None
    problems: tuple[Problem, ...] = ()
    stray: tuple[Leaf, ...] = ()  # lines that belong to no key: kept as text


def read_tree(text: str, file: str, first_line: int = 1) -> Mended:
    """The tree of a text, mended where YAML cannot read it."""
    lines = text.split("\n")
    if len(lines) > MOST_LINES:
        message = f"This is longer than {MOST_LINES} lines, so it is not read."
        at = Location(file=file, line=first_line)
        return Mended(tree=None, problems=(Problem(at=at, level=Level.ERROR, message=message),))
    mender = _Mender(file)
    text = mender.without_tabs(mender.without_controls(text, first_line), first_line)
    mender.losses(text.split("\n"), first_line)
    try:
        tree = parse(text, first_line)
    except (yaml.YAMLError, NotAllowed):
        tree = None
    if not isinstance(tree, Branch) and text.strip():
        tree = mender.pieces(text.split("\n"), first_line) if not isinstance(tree, Items) else tree
    return Mended(tree=tree, problems=tuple(mender.problems), stray=tuple(mender.stray))


class _Mender:
    """Gathers problems while a broken text is read in pieces."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.stray: list[Leaf] = []

    def tell(self, level: Level, message: str, line: int, column: int | None = None) -> None:
        at = Location(file=self.file, line=line, column=column)
        self.problems.append(Problem(at=at, level=level, message=message))

    def without_controls(self, text: str, first_line: int) -> str:
        """The text with characters that cannot be printed turned to spaces, each line told once."""
        if not CONTROL.search(text):
            return text
        told = set()
        for m in CONTROL.finditer(text):
            line = first_line + text.count("\n", 0, m.start())
            column = m.start() - text.rfind("\n", 0, m.start())
            if line not in told:
                self.tell(
                    Level.WARNING, "A character here cannot be shown. It is read as a space.", line, column
                )
            told.add(line)
        return CONTROL.sub(" ", text)

    def without_tabs(self, text: str, first_line: int) -> str:
        """The text with spaces for tabs, which only some readers of YAML take."""
        if "\t" not in text:
            return text
        for level, message, line, column in tabs_told(text, first_line):
            self.tell(level, message, line, column)
        return in_spaces(text, _is_sound)

    def losses(self, lines: list[str], first_line: int) -> None:
        """Warn of values cut short by " #", as with bed numbers."""
        for number, line in enumerate(lines, first_line):
            if "#" not in line or (m := HASH_WORD.search(line)) is None:
                continue
            before = line[: m.start()]
            if not before.strip() or _is_in_quotes(before):
                continue
            lost = _short(line[m.start() :].strip())
            message = f'"{lost}" is left out: " #" begins a remark. To keep it, put quotes round the value.'
            self.tell(Level.WARNING, message, number, m.start() + 1)

    def pieces(self, lines: list[str], first_line: int, depth: int = 0) -> Tree | None:
        """A block of lines that YAML could not read, cut at its outermost keys or list marks."""
        keys: list[Key] = []
        listed: list[tuple[Group, re.Match[str]]] = []
        for group in _groups(lines, first_line):
            if (m := ITEM_LINE.match(group[0][1])) is not None:
                listed.append((group, m))
            elif (m := KEY_LINE.match(group[0][1])) is not None:
                keys.extend(self.key(group, m, depth))
            elif (m := NO_SPACE.match(group[0][1])) is not None:
                self.tell(
                    Level.WARNING, 'A space is missing after the ":".', group[0][0], m.start("value") + 1
                )
                keys.extend(self.key(group, m, depth))
            else:
                self.no_key(group)
        if keys:
            for group, _ in listed:
                self.no_key(group)
            return Branch(keys=tuple(keys), line=keys[0].line, column=keys[0].column)
        items = [self.item(group, m, depth) for group, m in listed]
        return Items(items=tuple(items), line=items[0].line, column=items[0].column) if items else None

    def no_key(self, group: Group) -> None:
        """Lines that begin with neither a key nor a list mark: kept as text."""
        for number, line in group:
            if line.strip() and not line.lstrip().startswith("#") and line.strip(" -.\t"):
                self.problems.append(no_key(line, self.file, number))
                self.stray.append(Leaf(text=line.strip(), line=number, column=1, is_refused=True))

    def key(self, group: Group, m: re.Match[str], depth: int) -> list[Key]:
        """One key with all that is indented under it; more, where other keys slipped under it."""
        if (tree := _whole(group)) is not None and isinstance(tree, Branch):
            return list(tree.keys)
        if m["value"].strip() and (slipped := _keys_below(group)):
            message = "This line stands further in than the one above. It is read as a line of its own."
            self.tell(Level.WARNING, message, slipped, 1)
            rest = self.pieces([text for _, text in group[1:]], group[1][0], depth + 1)
            more = list(rest.keys) if isinstance(rest, Branch) else []
            return [*self.key(group[:1], m, depth), *more]
        value = self.value(m["value"], m.start("value"), group, depth)
        written = m["key"].strip(" \t\"'")
        return [Key(written=written, line=group[0][0], column=m.start("key") + 1, value=value)]

    def item(self, group: Group, m: re.Match[str], depth: int) -> Tree:
        """One list item with all that is indented under it."""
        tree = _whole(group)
        if isinstance(tree, Items) and len(tree.items) == 1:
            return tree.items[0]
        opened = " " * m.start("value") + m["value"]
        if len(group) > 1 and KEY_LINE.match(opened) and depth < DEEPEST:
            lines = [opened, *(text for _, text in group[1:])]
            if (inner := self.pieces(lines, group[0][0], depth + 1)) is not None:
                return inner
        return self.value(m["value"], m.start("value"), group, depth)

    def value(self, written: str, before: int, group: Group, depth: int) -> Tree:
        """The value of a piece YAML cannot read."""
        number = group[0][0]
        below = [text for _, text in group[1:]]
        has_below = any(text.strip() for text in below)
        if has_below and not written.strip() and depth < DEEPEST:
            inner = self.pieces(below, number + 1, depth + 1)
            if inner is not None:
                return inner
        column = before + len(written) - len(written.lstrip()) + 1
        if has_below:
            message = "This cannot be read: a bracket or quote may be missing, or a line stands too far in."
            self.tell(Level.ERROR, message, number, column)
            text = "\n".join([written.strip(), *(line.strip() for line in below if line.strip())])
            return Leaf(text=text, line=number, column=column, is_refused=True)
        return self.line(written.strip(), number, column)

    def line(self, written: str, number: int, column: int) -> Leaf:
        """A single value YAML cannot read: the text it shows, where that is plain."""
        if written.startswith(("&", "*", "!")):
            message = f'A value cannot begin with "{written[0]}". Put quotes round it.'
            self.tell(Level.ERROR, message, number, column)
            return Leaf(text=written, line=number, column=column, is_refused=True)
        if written.startswith(("[", "{")):
            self.tell(Level.ERROR, _bracket_fault(written), number, column)
            return Leaf(text=written, line=number, column=column, is_refused=True)
        try:
            if isinstance(tree := parse(written, number, column), Leaf):
                return tree
        except (yaml.YAMLError, NotAllowed):
            pass
        if not written.strip("-–—?~"):
            return Leaf(text=written, line=number, column=column)
        text = written
        if len(written) > 1 and written[0] == written[-1] and written[0] in "\"'":
            text = written[1:-1]
        fault, offset = _line_fault(written)
        self.tell(Level.WARNING, f'{fault} It is read as "{_short(text)}".', number, column + offset)
        return Leaf(text=text, line=number, column=column)


def no_key(line: str, file: str, number: int) -> Problem:
    """What to tell of a line of a header that has no key."""
    message = f'"{_short(line.strip())}" is not read: a line here is "key: value".'
    return Problem(at=Location(file=file, line=number), level=Level.ERROR, message=message)


def _whole(group: Group) -> Tree | None:
    """A piece as YAML reads it, or None."""
    try:
        return parse("\n".join(text for _, text in group), group[0][0])
    except (yaml.YAMLError, NotAllowed):
        return None


def _is_sound(text: str) -> bool:
    return isinstance(_whole([(1, text)]), Branch)


def _keys_below(group: Group) -> int | None:
    """The line of the first key that stands indented under a value; None if other text comes first."""
    filled = [(number, line) for number, line in group[1:] if line.strip()]
    return filled[0][0] if filled and KEY_LINE.match(filled[0][1]) else None


def _is_in_quotes(before: str) -> bool:
    """Whether a quote opened in this part of a line is still open at its end."""
    at = 0
    while (m := OPENING_QUOTE.search(before, at)) is not None:
        closed = CLOSED[m[1]].match(before, m.end())
        if closed is None:
            return True
        at = closed.end()
    return False


def leaves(tree: Tree) -> Iterator[Leaf]:
    """All the text in a tree, in order."""
    if isinstance(tree, Leaf):
        yield tree
    elif isinstance(tree, Items):
        for item in tree.items:
            yield from leaves(item)
    else:
        for key in tree.keys:
            yield from leaves(key.value)


def _groups(lines: list[str], first_line: int) -> Iterator[Group]:
    """Cut lines where the outermost indent begins a new key or item; blank lines stay with the last."""
    filled = [line for line in lines if line.strip() and not line.lstrip().startswith("#")]
    indent = min((_indent(line) for line in filled), default=0)
    group: Group = []
    for number, line in enumerate(lines, first_line):
        is_filled = line.strip() != "" and not line.lstrip().startswith("#")
        is_start = is_filled and (_indent(line) <= indent or not group)
        if is_start and group and not _is_list_of(group, line):
            yield group
            group = []
        if group or is_start:
            group.append((number, line))
    if group:
        yield group


def _is_list_of(group: Group, line: str) -> bool:
    """Whether a list mark at the same indent still belongs to the key above it."""
    m = KEY_LINE.match(group[0][1])
    is_open = m is not None and (not m["value"].strip() or m["value"].strip().startswith("#"))
    return is_open and ITEM_LINE.match(line) is not None


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip())


def _bracket_fault(written: str) -> str:
    if written.count("[") != written.count("]") or written.count("{") != written.count("}"):
        return "A bracket is opened here and not closed, or nested too deeply."
    return "What stands in these brackets cannot be read. Put quotes round words with a sign in them."


def _line_fault(written: str) -> tuple[str, int]:
    """What stops YAML in a single value, and how far in."""
    if written.startswith('"') and "\\" in written:
        return (
            'A "\\" has a meaning inside double quotes. Use single quotes, or "/" in a path.',
            written.index("\\"),
        )
    if written[:1] in "\"'" and written:
        closing = written.find(written[0], 1)
        if closing < 0:
            return "A quote is opened here and not closed.", 0
        return "Text stands after a closing quote. Put quotes round the whole value.", closing + 1
    if ": " in written or written.endswith(":"):
        return 'A ":" stands inside the value. Put quotes round it.', (written + " ").index(": ")
    if written[:1] in "@`%|>,]}?-":
        return f'A value cannot begin with "{written[:1]}". Put quotes round it.', 0
    return "This cannot be read as it stands. Put quotes round it.", 0


def _short(text: str) -> str:
    return text if len(text) <= 60 else text[:59] + "…"
