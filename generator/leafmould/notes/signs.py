"""Signs that stand for words: an arrow for "to", a picture of a crop for its name.

Asked by `typed` for lines that hold one, before anything else is looked up. A picture counts beside a number
only, where the line does not name the crop as well; elsewhere it is an ornament.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from leafmould.values.names import fold_word

if TYPE_CHECKING:
    from leafmould.notes.typed import Typed

SAME_LENGTH = str.maketrans(
    {
        "‘": "'", "’": "'", "‚": "'", "‛": "'", "′": "'", "`": "'", "´": "'", "‹": "'", "›": "'",
        "“": '"', "”": '"', "„": '"', "‟": '"', "″": '"', "«": '"', "»": '"', "−": "-", "–": "-", "—": "-",
        "‐": "-", "‑": "-", "‒": "-", "\u00a0": " ", "\u202f": " ", "\u2009": " ", "\t": " ", "，": ",", "、": ",",
        "：": ":", "×": "x", "⁄": "/", "∕": "/", "\u200b": " ", "\ufeff": " ", "〜": "~", "～": "~", "º": "°", "˚": "°", "µ": "u",
    }
)  # fmt: skip
"""Signs that mean the same are written the same; every position stays what it was."""


ARROW = re.compile(r"-+>|=+>|→|⇒|➜|➔")
PICTURES = {
    "🍅": "tomato", "🥒": "cucumber", "🥕": "carrot", "🌽": "sweetcorn", "🥔": "potato", "🍓": "strawberry", "🧅": "onion",
    "🧄": "garlic", "🥦": "broccoli", "🍆": "aubergine", "🌶": "chilli", "🫛": "pea", "🫑": "pepper", "🎃": "pumpkin",
    "🍎": "apple", "🍏": "apple", "🍐": "pear", "🍒": "cherry", "🫐": "blueberry", "🥚": "egg", "🍑": "peach", "🍇": "grape",
    "🍋": "lemon", "🫘": "bean",
}  # fmt: skip
"""Signs of the Unicode standard by the crop they show."""
PICTURE = re.compile(f"[{''.join(PICTURES)}]")
BESIDE = re.compile(r"\s*\ufe0f?\s*[x×]?\s*$")


def read_signs(typed: Typed) -> None:
    """Arrows and pictures of a line as words."""
    for i in range(typed.count, -1, -1):
        gap = typed.gaps[i]
        if not gap.strip():
            continue
        for found in [*ARROW.finditer(gap)][::-1]:
            if 0 < i < typed.count and typed.words[i].isalpha():
                _insert(typed, i, "to", found)
        if not typed.plain.isascii():
            for found in [*PICTURE.finditer(typed.gaps[i])][::-1]:
                word = fold_word(PICTURES[found[0]])
                if word not in typed.words and _is_counted(typed, i, found):
                    _insert(typed, i, word, found)


def is_arrow(typed: Typed, i: int) -> bool:
    """Whether the word at `i` is an arrow."""
    return i < typed.count and typed.words[i] == "to" and typed.plain[typed.starts[i]] not in "tT"


def _is_counted(typed: Typed, i: int, found: re.Match[str]) -> bool:
    """Whether a number stands beside: "🍅 5", "🥒x3", "5 🥚"."""
    gap, words = typed.gaps[i], typed.words[i : i + 2]
    is_next = BESIDE.match(gap[found.end() :]) is not None and any(
        w.isdigit() for w in (words[1:] if words[:1] == ["x"] else words[:1])
    )
    is_before = not gap[: found.start()].strip() and i > 0 and typed.words[i - 1].isdigit()
    return is_next or is_before


def _insert(typed: Typed, i: int, word: str, found: re.Match[str]) -> None:
    """A word where a sign stands in the gap before word `i`."""
    gap, begin = typed.gaps[i], typed.ends[i - 1] if i else 0
    typed.words.insert(i, word)
    typed.starts.insert(i, begin + found.start())
    typed.ends.insert(i, begin + found.end())
    typed.gaps[i : i + 1] = [gap[: found.start()], gap[found.end() :]]
    typed.count += 1
