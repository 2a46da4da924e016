"""A number in digits as typed: decimal commas and points, fractions, and what is doubtful about them."""

from __future__ import annotations

import re

VALUE_OF = {
    "½": 1 / 2, "⅓": 1 / 3, "⅔": 2 / 3, "¼": 1 / 4, "¾": 3 / 4, "⅕": 1 / 5, "⅖": 2 / 5, "⅗": 3 / 5, "⅘": 4 / 5,
    "⅙": 1 / 6, "⅚": 5 / 6, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8,
}  # fmt: skip


THREE_DIGITS = re.compile(r"(?<=\d)[ '](?=\d{3}(?!\d|/))")
DECIMAL_COMMA = re.compile(r"\d+,\d{1,2}|\d+,\d{4,}|0,\d+")


def to_number(text: str, decimal: str | None) -> tuple[float, str | None]:
    """A number as typed, and a question if its comma may be read two ways."""
    text = THREE_DIGITS.sub("", text.strip().replace(" and ", " ").replace(" & ", " "))
    if text[-1] in VALUE_OF:
        return _whole(text[:-1].strip()) + VALUE_OF[text[-1]], None
    if "/" in text:
        *before, share = re.split(r"[ -]", text)
        over, under = (float(part) for part in share.split("/"))
        return _whole(before[0] if before else "") + (over / under if under else 0.0), None
    return _plain_number(text[:300], decimal)


def _whole(digits: str) -> float:
    return float(digits[:300]) if digits else 0.0


def _plain_number(text: str, decimal: str | None) -> tuple[float, str | None]:
    commas, points = text.count(","), text.count(".")
    if not commas and points <= 1:
        return (
            (float(text), None)
            if decimal != "comma" or not re.fullmatch(r"[1-9]\d{0,2}\.\d{3}", text)
            else (float(text.replace(".", "")), None)
        )
    if commas == 1 and not points:
        if DECIMAL_COMMA.fullmatch(text) or decimal == "comma":
            return float(text.replace(",", ".")), None
        whole = float(text.replace(",", ""))
        if decimal == "point":
            return whole, None
        return (
            whole,
            f'"{text}" may be {_shown(whole)} or {text.replace(",", ".")}; read as {_shown(whole)}. Set `decimal` in garden.yaml.',
        )
    if commas and points:
        mark = max(text.rfind(","), text.rfind("."))
        return float(re.sub("[.,]", "", text[:mark]) + "." + re.sub("[.,]", "", text[mark + 1 :])), None
    return float(re.sub("[.,]", "", text)), None


def _shown(number: float) -> str:
    return f"{number:g}" if number < 1e6 else f"{number:.0f}"
