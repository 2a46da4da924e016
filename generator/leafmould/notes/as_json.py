"""Frozen values to plain JSON and back, by their type hints; nothing is lost on the way.

Serves the cache. A value becomes a list of its fields that differ from their defaults, by name.
"""

from __future__ import annotations

import types
from collections.abc import Callable
from dataclasses import MISSING, fields, is_dataclass
from datetime import date
from enum import Enum
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

T = TypeVar("T")
Reader = Callable[[Any], Any]


def to_json(value: Any) -> Any:
    """A value as JSON can hold it."""
    if value is None or isinstance(value, (bool, int, float)):
        return value
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, str):
        return value
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, tuple):
        return [to_json(item) for item in value]
    return {
        name: to_json(held)
        for name, default in _defaults(type(value))
        if (held := getattr(value, name)) != default
    }


def from_json(kind: type[T], held: Any) -> T:
    """The value that `to_json` made.

    Raises:
        KeyError, TypeError, ValueError, AttributeError: it was not made so.
    """
    value: T = _reader(kind)(held)
    return value


_DEFAULTS: dict[Any, tuple[tuple[str, Any], ...]] = {}
_READERS: dict[Any, Reader] = {}


def _defaults(kind: Any) -> tuple[tuple[str, Any], ...]:
    """Field names of a value with their defaults."""
    if kind not in _DEFAULTS:
        _DEFAULTS[kind] = tuple((f.name, f.default) for f in fields(kind))
    return _DEFAULTS[kind]


def _reader(kind: Any) -> Reader:
    """What turns JSON back into one type."""
    if kind not in _READERS:
        _READERS[kind] = _new_reader(kind)
    return _READERS[kind]


def _new_reader(kind: Any) -> Reader:
    origin = get_origin(kind)
    if origin is tuple:
        return _tuple_reader(get_args(kind))
    if origin in (Union, types.UnionType):
        return _optional_reader([k for k in get_args(kind) if k is not types.NoneType])
    if kind is date:
        return date.fromisoformat
    if is_dataclass(kind):
        return _value_reader(kind)
    if isinstance(kind, type) and issubclass(kind, Enum):
        return kind
    return _plain_reader(kind)


def _tuple_reader(kinds: tuple[Any, ...]) -> Reader:
    if len(kinds) == 2 and kinds[1] is Ellipsis:
        read = _reader(kinds[0])
        return lambda held: tuple([read(item) for item in held])
    readers = [_reader(kind) for kind in kinds]
    return lambda held: tuple(read(item) for read, item in zip(readers, held, strict=True))


def _optional_reader(kinds: list[Any]) -> Reader:
    if len(kinds) != 1:
        raise TypeError("a value of several types cannot be kept")
    read = _reader(kinds[0])
    return lambda held: None if held is None else read(held)


def _plain_reader(kind: Any) -> Reader:
    allowed = (int, float) if kind is float else (str,) if get_origin(kind) is not None else (kind,)

    def read(held: Any) -> Any:
        if not isinstance(held, allowed):
            raise TypeError(f"{held!r} is not what was kept")
        return held

    return read


def _value_reader(kind: Any) -> Reader:
    hints = get_type_hints(kind)
    readers = {f.name: _reader(hints[f.name]) for f in fields(kind)}
    needed = {f.name for f in fields(kind) if f.default is MISSING}

    def read(held: Any) -> Any:
        if not needed <= held.keys():
            raise KeyError("a field is missing")
        return kind(**{name: readers[name](item) for name, item in held.items()})

    return read
