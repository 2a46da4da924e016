"""Numbers written in few letters, for the index the browser searches.

No letter needs an escape in a script, and none is small, so that words can stand between numbers. The script
that reads them is `layouts/script/find.js`.
"""

from __future__ import annotations

from collections.abc import Iterable

DIGITS = "".join(
    chr(code) for code in range(33, 127) if chr(code) not in "'\"\\<&" and not chr(code).islower()
)[:62]
"""Letters of a number: the first of them end it, the others go on. None is small, so that words can stand between."""
ENDS = 44
"""How many end a number: most steps are short."""
GO_ON = len(DIGITS) - ENDS


def numbers(sorted_numbers: Iterable[int]) -> str:
    """Numbers that rise, as the steps between them."""
    letters: list[str] = []
    before = -1
    for number in sorted_numbers:
        letters.append(letters_of(number - before - 1))
        before = number
    return "".join(letters)


def letters_of(number: int) -> str:
    """One number."""
    if number < ENDS:
        return DIGITS[number]
    rest, last = divmod(number, ENDS)
    return _more(rest - 1) + DIGITS[last]


def _more(number: int) -> str:
    """What stands before the last letter of a number: letters that say it goes on."""
    rest, last = divmod(number, GO_ON)
    return (_more(rest - 1) if rest else "") + DIGITS[ENDS + last]
