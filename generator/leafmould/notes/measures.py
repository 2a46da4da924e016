"""Lengths and sizes as settings give them: "1.2 x 6 m", "4 x 8 ft", "8 x 60 l", "620 m".

Used by the readers of settings. Amounts in notes are read elsewhere, with the garden's own words.
"""

from __future__ import annotations

import math
import re

METRES = {
    "m": 1.0, "metre": 1.0, "meter": 1.0, "cm": 0.01, "mm": 0.001, "ft": 0.3048, "foot": 0.3048,
    "feet": 0.3048, "'": 0.3048, "in": 0.0254, "inch": 0.0254, '"': 0.0254,
    "yd": 0.9144, "yard": 0.9144,
}  # fmt: skip
"""Length of one unit [m]. Source: international yard, 0.9144 m exactly (1959); ft and in follow."""

NUMBER = r"[-+−]?\d{1,12}(?:[.,]\d{1,12})?"
UNIT = r"[^\W\d_]*|['’′]|[\"”″]"
PAIR = re.compile(
    rf"({NUMBER})\s*({UNIT})\s*(?:[x×*]|by|mal|sur|per)\s*({NUMBER})\s*({UNIT})\.?", re.IGNORECASE
)
AREA_UNIT = r"m²|m2|sq\.?\s?m(?:et(?:re|er)s?)?|ft²|ft2|sq\.?\s?f(?:oo|ee)?t"
SINGLE = re.compile(rf"(?:about |~|ca\.? )?({NUMBER})\s*({AREA_UNIT}|{UNIT})\.?", re.IGNORECASE)
OTHER_UNITS = frozenset({"l", "litre", "liter", "gallon", "gal", "pot", "bag"})
SQUARE_FOOT = 0.3048**2
"""Square metres in a square foot. Source: international yard (1959)."""


def to_number(text: str) -> float:
    """A plain number with point or comma."""
    return float(text.replace(",", ".").replace("−", "-"))


def read_pair(text: str, default_unit: str) -> tuple[float, float] | None:
    """Two lengths [m]; None if the text is no pair of lengths (a volume, a single length, words).

    Args:
        default_unit: where no unit is written.
    """
    m = PAIR.fullmatch(text.strip())
    if m is None:
        return None
    second = _metres(m[4] or m[2] or default_unit)
    first = _metres(m[2] or m[4] or default_unit)
    if first is None or second is None:
        return None
    return _whole_mm(to_number(m[1]) * first), _whole_mm(to_number(m[3]) * second)


def has_unit(text: str) -> bool:
    """Whether any unit is written behind a pair of numbers."""
    m = PAIR.fullmatch(text.strip())
    return m is None or bool(m[2] or m[4])


def is_other_size(text: str) -> bool:
    """Whether a size is written that gives no width and length: "60 l", "8 x 60 l", "4 m"."""
    if m := PAIR.fullmatch(text.strip()):
        return _plain_unit(m[4]) in OTHER_UNITS
    m = SINGLE.fullmatch(text.strip())
    if m is None:
        return False
    return _plain_unit(m[2]) in OTHER_UNITS or _metres(m[2]) is not None or read_area(text) is not None


def read_area(text: str) -> float | None:
    """An area [m²] written without its sides: "12 m²", "100 sq ft"."""
    m = SINGLE.fullmatch(text.strip())
    if m is None or not re.fullmatch(AREA_UNIT, m[2], re.IGNORECASE) or to_number(m[1]) <= 0:
        return None
    return round(to_number(m[1]) * (SQUARE_FOOT if "f" in m[2].casefold() else 1.0), 2)


def read_length(text: str, default_unit: str = "m") -> float | None:
    """One length [m]."""
    m = SINGLE.fullmatch(text.strip())
    factor = _metres(m[2] or default_unit) if m else None
    return None if m is None or factor is None else to_number(m[1]) * factor


DEGREES = re.compile(rf"({NUMBER})\s*°?\s*(?:(\d{{1,2}})\s*['’′]\s*)?([NSEWnsewOo]?)\.?")


def read_degrees(text: str) -> float | None:
    """Degrees north or east: "46.5", "46.5 N", "44° 30' S"."""
    m = DEGREES.fullmatch(text.strip())
    if m is None:
        return None
    degrees = to_number(m[1]) + math.copysign(int(m[2] or 0) / 60, to_number(m[1]))
    return -degrees if m[3].upper() in ("S", "W") and m[3] else degrees


def _metres(unit: str) -> float | None:
    return METRES.get(_plain_unit(unit))


def _plain_unit(unit: str) -> str:
    plain = unit.casefold().replace("’", "'").replace("′", "'").replace("”", '"').replace("″", '"')
    return plain[:-1] if len(plain) > 3 and plain.endswith("s") else plain


def _whole_mm(metres: float) -> float:
    return round(metres, 3)
