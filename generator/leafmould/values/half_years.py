"""The months of the two halves of the earth: what is January in the north is July in the south.

Used where something hangs on the time of year and is known for the north.
"""

from __future__ import annotations


def northern_month(month: int, *, is_southern: bool) -> int:
    """The month, 1 to 12, that means the same time of year in the north; and of a northern one the southern."""
    return (month + 5) % 12 + 1 if is_southern else month
