"""Prices, and figures that tell where the garden lies, wherever they stand in a text.

Used by `visible` and its helpers, which put "…" in their place or leave them out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

SIGNS = "£$€¥₤₹₽₺₴"
CODES = "usd|eur|gbp|chf|aud|nzd|cad|sek|nok|dkk|pln|czk|huf|inr|zar|jpy|brl|mxn"
WORDS = (
    "euros?|dollars?|quid|pence|cents?|pounds? sterling|bucks?|francs?|franken|kroner|kronor|kronen|kr|zł|zl|złotych|zloty"
    "|kč|rupees?|yen"
)
NUMBER = r"\d(?:[\d.,'’]*\d)?(?:[.,][-–—]+)?"

PRICE = re.compile(
    rf"(?:\b[a-z]{{1,3}})?[{SIGNS}]\s?{NUMBER}|{NUMBER}\s?(?:[{SIGNS}]|(?:{WORDS}|{CODES})\b)|\b(?:{CODES})\s?{NUMBER}|\b\d+p\b",
    re.IGNORECASE,
)
"""An amount with the sign, the code or the word of its money. "12 pounds" is a weight."""

NUMBER_BEFORE = re.compile(rf"\d[.,]?[-–—]?\s?(?:{WORDS}|{CODES}|p)\b")
CODE_BEFORE = re.compile(rf"\b(?:{CODES})\s?\d")
THREE_DECIMALS = re.compile(r"\d[.,]\d\d\d")

PRICE_COLUMN = re.compile(
    rf"[{SIGNS}]|\b(?:price|prices|costs?|paid|spent|pay|spending|bill|total cost|{CODES}|euros?|dollars?)\b",
    re.IGNORECASE,
)

COORDINATES = re.compile(
    r"-?\d{1,3}[.,]\d{3,}\s*°?\s*[NSns]?\s*[,;/ ]\s*-?\d{1,3}[.,]\d{3,}\s*°?\s*[EWOewo]?\b"
    r"|\d{1,3}\s?°\s?\d{1,2}\s?['′’](?:\s?\d{1,2}(?:[.,]\d+)?\s?(?:[\"″”]|''))?(?:\s?[NSEWO]\b)?"
)
"""A place on the earth, whose ever it is: two figures with three decimals or more, or degrees and minutes."""

UNIT_BEHIND = (
    r"(?!\s*(?:g|kg|mg|l|ml|cl|dl|m|cm|mm|km|ft|in|oz|lb|lbs|%|°\s?[CF]|litres?|h|pm|am|days?|x|×)\b|\s?%)"
)

TELLS_PRICES = frozenset({"price", "prices", "cost", "costs", "paid", "spent", "spending", "bill", "bought"})
TELLS_PLACE = frozenset(
    {
        "place", "latitude", "longitude", "elevation", "altitude", "coordinates", "lat", "lon", "lng", "gps",
        "location", "address", "geo", "position", "coords", "coord", "where", "map",
    }
)  # fmt: skip
"""Keys of the gardener's own whose values are left out with the subject they tell of."""


def may_tell_a_place(text: str, signs: Iterable[str]) -> bool:
    """Whether there may be a figure of a place in a text; `signs` are the first digits of the garden's own."""
    return "°" in text or any(sign in text for sign in signs) or THREE_DECIMALS.search(text) is not None


def place_signs(degrees: Iterable[str], height: str) -> tuple[str, ...]:
    """What stands in every figure of the garden's place."""
    whole = [re.match(r"\d*", re.sub(r"^\D*", "", written)) for written in degrees]
    signs = [f"{m[0]}{point}" for m in whole if m and m[0] for point in ".,"]
    return (*signs, *re.findall(r"\d+", height)[:1])


def tells_prices(block: str) -> bool:
    """Whether a block of prose is a table with a column of prices."""
    first = block.partition("\n")[0]
    return "|" in first and "\n" in block and PRICE_COLUMN.search(first) is not None


def place_pattern(degrees: Iterable[str], height: str | None) -> re.Pattern[str]:
    """What finds coordinates, and the figures of the garden's own place as they are written."""
    patterns = [COORDINATES.pattern]
    for written in degrees:
        number = re.sub(r"[^\d.,]", "", written).strip(".,")
        if not re.search(r"[.,]\d", number):
            continue
        whole, decimals = re.split("[.,]", number, maxsplit=1)
        least = decimals[: max(3, len(decimals) - 1)]
        patterns.append(rf"-?(?<![\d.,]){whole}[.,]{least}\d*{UNIT_BEHIND}")
    digits = re.search(r"\d[\d.,]*", height or "")
    if digits is not None and len(digits[0]) > 1:
        number = re.escape(digits[0].strip(".,"))
        behind = r"(?:m|metres?|meters?|ft|feet|masl|m\.?a\.?s\.?l|above)\b"
        before = r"\b(?:elevation|altitude|height|alt|elev)\b[^\d\n]{0,12}"
        patterns.append(rf"(?i:{before}{number}\b|(?<![\d.,]){number}\s?{behind})")
    return re.compile("|".join(patterns))
