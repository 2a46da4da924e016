"""What garden.yaml says to leave out and to blank: `leave out` and `private words`, however they are written.

Part of reading garden.yaml. What cannot be read is told as an error and left out word by word: a slip in
these lists never shows what was meant to be hidden.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from leafmould.notes.fields import NO, YES, Fields, is_blank, nearest, one_space
from leafmould.notes.line_ends import is_private_word
from leafmould.notes.meant_private import SECRET_KEYS
from leafmould.notes.tree import Branch, Items, Key, Leaf, Tree
from leafmould.values.problems import Level

LEAVE_OUT, PRIVATE_WORDS = "leave out", "private words"

MEAN_LEAVE_OUT = frozenset(
    {
        "leave out", "leaveout", "left out", "leave", "leave off", "hide", "hidden", "omit", "exclude", "excluded",
        "do not show", "dont show", "don't show", "not shown", "never show",
    }
)  # fmt: skip

SIGNS = re.compile(r"[\[\]{}\"'“”‘’]")
CUT = re.compile(r"\s*[,;\n]\s*")


def words_to_leave_out(fields: Fields) -> tuple[str, ...]:
    """The words of every key that means `leave out`."""
    return _words(fields, is_leave_out, LEAVE_OUT)


def words_to_blank(fields: Fields) -> tuple[str, ...]:
    """The words of every key that means `private words`."""
    return _words(fields, is_private_words, PRIVATE_WORDS)


def is_leave_out(name: str) -> bool:
    """Whether a key means `leave out`."""
    return name in MEAN_LEAVE_OUT or (
        name[:1] in "lhoe" and nearest(name, (LEAVE_OUT, "leaveout")) is not None
    )


def is_private_words(name: str) -> bool:
    """Whether a key means `private words`."""
    words = name.split()
    return any(map(is_private_word, words)) or (bool(SECRET_KEYS & {*words}) and not is_leave_out(name))


def _words(fields: Fields, is_meant: Callable[[str], bool], plain: str) -> tuple[str, ...]:
    found: list[str] = []
    for key in fields.branch.keys:
        if not is_meant(key.name) or is_blank(key.value):
            continue
        if key.name != plain:
            message = f'"{key.written}" is taken as "{plain}". Write it so.'
            fields.tell(Level.WARNING, message, key, key.name)
        _tell_shape(fields, key, plain)
        found += words_in(key.value)
    return tuple(dict.fromkeys(word for word in found if word.casefold() not in YES | NO))


def _tell_shape(fields: Fields, key: Key, plain: str) -> None:
    """Say so where the value is no list of words. What YAML refused has been told."""
    items = key.value.items if isinstance(key.value, Items) else (key.value,)
    for item in items:
        if not isinstance(item, Leaf):
            message = f'"{key.written}" is a list of words; this is more than a word. '
            fields.tell(Level.ERROR, message + "Every word in it is left out, to be safe.", item, plain)


def words_in(tree: Tree) -> Iterator[str]:
    """Every word or name in a value: those of lists in lists, keys that say yes, and broken text piece by piece."""
    if isinstance(tree, Items):
        for item in tree.items:
            yield from words_in(item)
    elif isinstance(tree, Branch):
        for key in tree.keys:
            yield from _words_of_key(key)
    elif tree.is_refused or (not tree.is_quoted and SIGNS.search(tree.text[:1] + tree.text[-1:])):
        yield from filter(None, map(str.strip, CUT.split(SIGNS.sub("", tree.text))))
    elif tree.is_quoted:
        yield one_space(tree.text)
    else:
        yield from filter(None, map(one_space, tree.text.split(",")))


def _words_of_key(key: Key) -> Iterator[str]:
    """ "{Zinnia bed: yes}" names the bed by its key, "bed: Zinnia" by its value."""
    word = key.value.text.strip().casefold() if isinstance(key.value, Leaf) else ""
    if is_blank(key.value) or word in YES:
        yield one_space(key.written)
    elif word not in NO:
        yield from words_in(key.value)
