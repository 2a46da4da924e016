"""Typed getters over a tree: text, lists, yes or no, dates, numbers, each with the path to a fault.

Works on what `mending` read. Values are text until a getter is asked; what a getter cannot use is
reported and left out, and a value the gardener has not filled in yet ("?", "TODO", "-") is not recorded.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import get_close_matches

from leafmould.notes.tree import Branch, Items, Key, Leaf, Tree
from leafmould.values.problems import Level, Location, Problem

NOT_RECORDED = re.compile(
    r"(?:~|-|–|—|\?+|todo|tbd|tba|n/?a|not known yet|\((?:still|not yet|to) [^)]*\))?", re.IGNORECASE
)
"""What stands where nothing is known yet; in quotes it is text like any other."""

YES = frozenset({"yes", "y", "true", "on", "ja", "oui", "si", "sí", "1"})
NO = frozenset({"no", "n", "false", "off", "nein", "non", "nee", "0"})


class Fields:
    """The keys of one branch, and what was wrong with them."""

    def __init__(self, branch: Branch, file: str, problems: list[Problem], path: str = "") -> None:
        self.branch = branch
        self.file = file
        self.problems = problems
        self.path = path
        self.lost: set[str] = set()  # keys whose value could not be used
        self.by_name: dict[str, Key] = {}
        for key in branch.keys:
            earlier = self.by_name.setdefault(key.name, key)
            if earlier is not key:
                self._twice(earlier, key)

    def _twice(self, earlier: Key, key: Key) -> None:
        lines = f"on line {earlier.line} and again on line {key.line}"
        if earlier.line == key.line:
            lines = f"twice on line {key.line}"
        message = f'"{key.written}" stands {lines}. Only the first is used; keep one.'
        if earlier.written != key.written:
            message = (
                f'"{earlier.written}" and "{key.written}" are the same word, {lines.replace("again ", "")}. '
            )
            message += "Only the first is used; keep one."
        self.tell(Level.ERROR, message, key, key.name)

    def tell(
        self,
        level: Level,
        message: str,
        at: Key | Tree,
        field: str | None = None,
        suggestion: str | None = None,
    ) -> None:
        """Note a problem with a key or value."""
        place = Location(file=self.file, line=at.line, column=at.column)
        path = f"{self.path}{field}" if field else self.path.rstrip(".") or None
        told = one_line(message)
        self.problems.append(Problem(at=place, level=level, message=told, field=path, suggestion=suggestion))

    def key(self, *names: str) -> Key | None:
        """The first of these keys that is there."""
        for name in names:
            if name in self.by_name:
                return self.by_name[name]
        return None

    def unused(self, known: Iterable[str]) -> list[Key]:
        """Keys that are not among the known ones, in order."""
        names = frozenset(known)
        return [key for key in self.by_name.values() if key.name not in names]

    def leaf(self, *names: str) -> Leaf | None:
        """A single piece of text; None where it is missing, empty, not recorded or not readable."""
        key = self.key(*names)
        if key is None or is_blank(key.value):
            return None
        if not isinstance(key.value, Leaf):
            kind = "a list" if isinstance(key.value, Items) else "keys of its own"
            self.tell(Level.ERROR, f'"{key.written}" has {kind} here; one value was expected.', key, key.name)
            return None
        return None if key.value.is_refused else key.value

    def text(self, *names: str) -> str | None:
        """A single text."""
        leaf = self.leaf(*names)
        return None if leaf is None else one_space(leaf.text)

    def leaves(self, *names: str, split: bool = False, unknown: bool = False) -> tuple[Leaf, ...]:
        """A list of texts, or one.

        Args:
            split: a text without quotes is cut at commas.
            unknown: "?" is a value too, for names that are not known.
        """
        key = self.key(*names)
        if key is None:
            return ()
        found: list[Leaf] = []
        for index, item in enumerate(key.value.items if isinstance(key.value, Items) else (key.value,)):
            if is_blank(item) and not (
                unknown and isinstance(item, Leaf) and item.text.strip("? ") == "" != item.text
            ):
                continue
            if not isinstance(item, Leaf):
                place = f"{key.name}[{index}]" if isinstance(key.value, Items) else key.name
                message = f'"{key.written}" is a list of words; this is more than a word.'
                self.tell(Level.ERROR, message, item, place)
            elif not item.is_refused:
                found += _cut(item) if split else [item]
        return tuple(found)

    def texts(self, *names: str, split: bool = True) -> tuple[str, ...]:
        """The texts of a list, each once."""
        return tuple(dict.fromkeys(one_space(leaf.text) for leaf in self.leaves(*names, split=split)))

    def yes(self, *names: str) -> bool | None:
        """Yes or no; None where nothing is written or it cannot be told."""
        leaf = self.leaf(*names)
        if leaf is None:
            return None
        word = leaf.text.strip().casefold()
        if word in YES or word in NO:
            return word in YES
        self.tell(Level.ERROR, f'"{leaf.text.strip()}" is neither "yes" nor "no".', leaf, self._name(names))
        self.lost.add(self._name(names))
        return None

    def choice(self, known: Iterable[str], *names: str) -> str | None:
        """One of a few words."""
        leaf = self.leaf(*names)
        return None if leaf is None else self.chosen(leaf, tuple(known), self._name(names))

    def chosen(self, leaf: Leaf, known: tuple[str, ...], field: str) -> str | None:
        """One of a few words, by a value at hand."""
        word = " ".join(leaf.text.casefold().replace("-", " ").split())
        if word in known:
            return word
        near = nearest(word, known)
        message = f'"{leaf.text.strip()}" is not known here. Write {either(known)}.'
        self.tell(Level.ERROR, message, leaf, field, near)
        return None

    def branch_of(self, *names: str) -> Fields | None:
        """The keys under a key."""
        key = self.key(*names)
        if key is None or is_blank(key.value):
            return None
        if isinstance(key.value, Branch):
            return Fields(key.value, self.file, self.problems, f"{self.path}{key.name}.")
        self.tell(
            Level.ERROR, f'"{key.written}" needs keys of its own, such as "name: value".', key, key.name
        )
        return None

    def _name(self, names: tuple[str, ...]) -> str:
        key = self.key(*names)
        return key.name if key else names[0]


def one_space(text: str) -> str:
    """A text on one line, without spaces at its ends."""
    return " ".join(text.split("\n")).strip() if "\n" in text else text.strip()


LONGEST_MESSAGE = 400


def one_line(message: str) -> str:
    """A message on one line, the middle of a very long one left out."""
    line = " ".join(message.split())
    return line if len(line) <= LONGEST_MESSAGE else f"{line[: LONGEST_MESSAGE // 2]} … {line[-100:]}"


def is_blank(tree: Tree) -> bool:
    """Whether nothing is recorded there."""
    if isinstance(tree, Leaf):
        return (
            not tree.is_quoted and NOT_RECORDED.fullmatch(tree.text.strip()) is not None
        ) or not tree.text.strip()
    return not (tree.items if isinstance(tree, Items) else tree.keys)


def shown(tree: Tree) -> str:
    """A tree as one line of text, for keys we keep without reading them."""
    if isinstance(tree, Leaf):
        return tree.text.strip()
    if isinstance(tree, Items):
        return ", ".join(filter(None, map(shown, tree.items)))
    return ", ".join(f"{key.written}: {shown(key.value)}" for key in tree.keys)


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word nearest to one that is not."""
    near = get_close_matches(word[:80], sorted(set(known)), n=1, cutoff=0.7)
    return near[0] if near else None


def either(known: Iterable[str]) -> str:
    """Words to choose from: `"a", "b" or "c"`."""
    quoted = [f'"{word}"' for word in known]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} or {quoted[-1]}"


def _cut(leaf: Leaf) -> list[Leaf]:
    if leaf.is_quoted:
        return [leaf]
    parts = [part.strip() for part in leaf.text.split(",")]
    return [Leaf(text=part, line=leaf.line, column=leaf.column) for part in parts if part]
