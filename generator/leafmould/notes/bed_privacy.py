"""Which beds of garden.yaml are private, however that is written; and beds that cannot be read, which are.

Part of reading the beds. A bed lost in a slip would be a public one as soon as a note names it, so what can
be told of its name is kept, as a private bed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from leafmould.notes.fields import Fields, one_space
from leafmould.notes.line_ends import is_private_word, mark_in, strip_ends
from leafmould.notes.meant_private import is_no, is_plain_yes, means_private
from leafmould.notes.tree import Branch, Items, Key, Leaf, Tree
from leafmould.values.problems import Level

NAME = re.compile(r"\bname['\"]?\s*[:=]\s*['\"]?([^,'\"{}\[\]\n]+)", re.IGNORECASE)
PIECE = re.compile(r"\{[^{}]*\}?|[^,{}\[\]\n]+")
WRITE = 'Write "private: yes" as a key of the bed.'


def is_private_bed(name: str, fields: Fields, tree: Tree) -> bool:
    """Whether a bed is private; a word that is neither yes nor no counts as yes, to be safe."""
    if fields.key("private"):
        fields.yes("private")
    meant = [key for key in fields.branch.keys if means_private(key)]
    for key in meant:
        if not is_plain_yes(key):
            fields.tell(Level.WARNING, f'"{key.written}" is taken to mean private. {WRITE}', key, key.name)
    is_open = any(key.name == "private" and is_no(key) for key in fields.branch.keys)
    by_value = isinstance(tree, Leaf) and tree.text != name and mark_in(tree.text) is not None
    if meant or is_open or not (mark_in(name) or by_value):
        return bool(meant)
    fields.tell(Level.WARNING, f'"{name}" is taken as a private bed. {WRITE}', tree)
    return True


def plain_name(name: str) -> str:
    """A bed's name without a "(private)" behind it."""
    return one_space(strip_ends(name)[0]) or name


def is_mark_alone(name: str) -> bool:
    """Whether a name in a list of beds is but a mark for the one before it: "Larch row, private"."""
    return is_private_word(name.strip(" ()[]*\"'"))


def names_in(tree: Tree) -> Iterator[str]:
    """What may be the names of beds in a value that cannot be read as beds."""
    if isinstance(tree, Items):
        for item in tree.items:
            yield from names_in(item)
    elif isinstance(tree, Branch):
        yield from (name for key in tree.keys if key.name not in NEVER_NAMES for name in _of_key(key))
    else:
        yield from _names_in_text(tree.text)


NEVER_NAMES = frozenset(
    {
        "also", "kind", "size", "at", "sun", "water", "soil", "parts", "was", "from", "until", "planted", "crop",
        "variety", "private",
    }
)  # fmt: skip


def _of_key(key: Key) -> Iterator[str]:
    if means_private(key):
        return
    value = key.value.text.strip() if isinstance(key.value, Leaf) else ""
    yield from (name for name in (key.written.strip(), value) if name and name.casefold() != "name")


def _names_in_text(text: str) -> Iterator[str]:
    """Names behind "name:"; of a piece without that, what stands before its first colon."""
    for piece in PIECE.findall(text):
        if m := NAME.search(piece):
            yield one_space(m[1])
            continue
        first = one_space(piece.strip(" {}-*\t\"'").partition(":")[0])
        if first and first.casefold() not in NEVER_NAMES and not is_mark_alone(first):
            yield first
