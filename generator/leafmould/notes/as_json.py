"""Frozen values to plain JSON and back, by their type hints; nothing is lost on the way.

Serves the cache, so it is quick rather than readable. A value becomes a list: first a number whose bits say
which of its fields differ from their defaults, then those fields in order. What turns a type to JSON and back
is put together once, when the type is first met.
"""

from __future__ import annotations

import types
from collections.abc import Callable
from dataclasses import MISSING, fields, is_dataclass
from datetime import date
from enum import Enum
from itertools import compress
from operator import attrgetter, is_not
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

T = TypeVar("T")
Turn = Callable[[Any], Any]

MOST_KEPT = 50_000
"""So many equal values are made only once; enough for the names and amounts of a large garden."""


def to_json(value: Any) -> Any:
    """A value as JSON can hold it."""
    write = _writer(type(value))
    return write(value) if write else value


def from_json(kind: type[T], held: Any) -> T:
    """The value that `to_json` made.

    Raises:
        LookupError, TypeError, ValueError, AttributeError: it was not made so.
    """
    value: T = _reader(kind)(held)
    return value


_WRITERS: dict[Any, Turn | None] = {}
_READERS: dict[Any, Turn] = {}


def _writer(kind: Any) -> Turn | None:
    """What turns one type to JSON; None where JSON holds it as it is."""
    if kind not in _WRITERS:
        _WRITERS[kind] = _new_writer(kind)
    return _WRITERS[kind]


def _new_writer(kind: Any) -> Turn | None:
    origin = get_origin(kind)
    if origin is tuple:
        return _tuple_writer(get_args(kind))
    if origin in (Union, types.UnionType):
        return _optional_writer(_writer(_only(kind)))
    if kind is date:
        return date.isoformat
    if is_dataclass(kind):
        return _value_writer(kind)
    if isinstance(kind, type) and issubclass(kind, Enum):
        return lambda value: value.value
    return None


def _tuple_writer(kinds: tuple[Any, ...]) -> Turn | None:
    if len(kinds) == 2 and kinds[1] is Ellipsis:
        write = _writer(kinds[0])
        return (lambda value: [write(item) for item in value]) if write else None
    writers = [_writer(kind) for kind in kinds]
    if not any(writers):
        return None
    return lambda value: [w(item) if w else item for w, item in zip(writers, value, strict=True)]


def _optional_writer(write: Turn | None) -> Turn | None:
    return (lambda value: None if value is None else write(value)) if write else None


def _value_writer(kind: Any) -> Turn:
    hints = get_type_hints(kind)
    get = _getter([f.name for f in fields(kind)])
    plan = [(1 << n, f.default, _writer(hints[f.name])) for n, f in enumerate(fields(kind))]
    defaults = [f.default for f in fields(kind)]

    places = range(len(plan))

    def write(value: Any) -> list[Any]:
        out, bits = [0], 0
        held = get(value)
        for n in compress(places, map(is_not, held, defaults)):  # most fields are the very default
            bit, default, turn = plan[n]
            if (item := held[n]) != default:
                bits |= bit
                out.append(turn(item) if turn else item)
        out[0] = bits
        return out

    return write


def _getter(names: list[str]) -> Turn:
    """All fields of a value at once, as a tuple."""
    if len(names) > 1:
        return attrgetter(*names)
    only = attrgetter(names[0])
    return lambda value: (only(value),)


def _reader(kind: Any) -> Turn:
    """What turns JSON back into one type."""
    if kind not in _READERS:
        _READERS[kind] = _new_reader(kind)
    return _READERS[kind]


def _new_reader(kind: Any) -> Turn:
    origin = get_origin(kind)
    if origin is tuple:
        return _tuple_reader(get_args(kind))
    if origin in (Union, types.UnionType):
        read = _reader(_only(kind))
        return lambda held: None if held is None else read(held)
    if kind is date:
        return date.fromisoformat
    if is_dataclass(kind):
        is_flat = not any(_holds_values(hint) for hint in get_type_hints(kind).values())
        return _once(_value_reader(kind)) if is_flat else _value_reader(kind)
    if isinstance(kind, type) and issubclass(kind, Enum):
        return kind
    return _plain_reader(kind)


def _holds_values(kind: Any) -> bool:
    """Whether a type is one of ours, or a tuple or choice with one in it."""
    return is_dataclass(kind) or any(_holds_values(inner) for inner in get_args(kind))


def _only(kind: Any) -> Any:
    """The one type that stands beside None."""
    kinds = [k for k in get_args(kind) if k is not types.NoneType]
    if len(kinds) != 1:
        raise TypeError("a value of several types cannot be kept")
    return kinds[0]


def _tuple_reader(kinds: tuple[Any, ...]) -> Turn:
    if len(kinds) == 2 and kinds[1] is Ellipsis:
        read = _reader(kinds[0])
        return lambda held: tuple([read(item) for item in held])
    if all(kind in (str, int, bool) for kind in kinds):
        return _row_reader(kinds)
    readers = [_reader(kind) for kind in kinds]
    return lambda held: tuple([read(item) for read, item in zip(readers, held, strict=True)])


def _row_reader(kinds: tuple[Any, ...]) -> Turn:
    """A tuple of plain values, checked at one go."""

    def read(held: Any) -> Any:
        row = tuple(held)
        if tuple(map(type, row)) != kinds:
            raise TypeError(f"{held!r} is not what was kept")
        return row

    return read


def _plain_reader(kind: Any) -> Turn:
    allowed = (int, float) if kind is float else (str,) if get_origin(kind) is not None else (kind,)

    def read(held: Any) -> Any:
        if type(held) not in allowed:
            raise TypeError(f"{held!r} is not what was kept")
        return held

    return read


def _value_reader(kind: Any) -> Turn:
    hints = get_type_hints(kind)
    rows = [(f.name, _reader(hints[f.name])) for f in fields(kind)]
    needed = sum(1 << n for n, f in enumerate(fields(kind)) if f.default is MISSING)
    plans: dict[int, list[tuple[str, Turn]]] = {}

    def read(held: Any) -> Any:
        bits = held[0]
        if bits not in plans:
            if bits & needed != needed or bits >> len(rows):
                raise KeyError("a field is missing")
            plans[bits] = [row for n, row in enumerate(rows) if bits >> n & 1]
        plan = plans[bits]
        if len(held) != len(plan) + 1:
            raise ValueError("a field is missing")
        return kind(**{name: turn(item) for (name, turn), item in zip(plan, held[1:], strict=True)})

    return read


def _once(read: Turn) -> Turn:
    """A reader that makes equal values once, where they hold nothing but text and numbers.

    Types are compared too, or 1, 1.0 and true would be one.
    """
    made: dict[Any, Any] = {}

    def read_once(held: Any) -> Any:
        try:
            key = (*held, *map(type, held))
            found = made.get(key)
        except TypeError:  # a list in it
            return read(held)
        if found is None:
            found = read(held)
            if len(made) < MOST_KEPT:
                made[key] = found
        return found

    return read_once
