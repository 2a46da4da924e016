"""Dataclasses as the standard library has them, made in a third of the time and filled in less than half of it.

A run makes some 300 of these classes before it begins, and half a million values of them. The type checker sees
the standard library's own: that nothing frozen is written to is checked there, once, and not again at each of two
million assignments of a build. What compares, hashes and shows values is shared by all classes instead of being
written out and compiled for each.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:
    import dataclasses
    from operator import attrgetter

    def dataclass(*, frozen=False, eq=True, **how):
        """As `dataclasses.dataclass`, with its arguments."""

        def make(cls):
            made = dataclasses.dataclass(eq=False, repr=False, **how)(cls)
            made.__repr__ = _shown
            if eq:
                _compare(made, is_hashed=frozen)
            return made

        return make

    def _shown(self):
        fields = (f"{name}={getattr(self, name)!r}" for name in self.__dataclass_fields__)
        return f"{type(self).__qualname__}({', '.join(fields)})"

    def _compare(made, *, is_hashed):
        names = [field.name for field in dataclasses.fields(made) if field.compare]
        values = attrgetter(*names) if len(names) > 1 else lambda self: [getattr(self, n) for n in names]

        def equals(self, other):
            return values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented

        def hashed(self):
            return hash(tuple(values(self)))

        made.__eq__ = equals
        made.__hash__ = hashed if is_hashed else None
